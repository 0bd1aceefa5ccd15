//! Blocks that stand beside a plan: title block, legend, survey inset.

use ground::yard::{EdgeKind, FixtureKind, Yard};
use note::msg;
use survey::network::Kind;
use survey::result::{Adjusted, Survey};

use super::fixture;
use super::hatch::{Rings, hatch};
use super::mark;
use super::scale::Scale;
use super::scene::{Dash, INK, Path, Rect, Scene, Spot, Stroke, Text, WHITE, pen};
use super::taken::{Taken, weight};
use super::view::{View, along, far, way};
use super::yard::{Layer, Plan, edge, layer, on_boundary};
use crate::face::{self, Weight};
use crate::measure;
use crate::sheet::Sheet;

/// What a title block says.
pub struct Title {
    /// What kind of sheet it is.
    pub kind: String,
    /// Rows of name and value.
    pub rows: Vec<(String, String)>,
    /// The scale.
    pub scale: Scale,
    /// The last lines.
    pub caution: String,
}

/// Width of a title block, mm.
pub fn title_width(sheet: &Sheet) -> f64 {
    if sheet.large { 70.0 } else { 54.0 }
}

/// Draws the title block with its upper left corner at `at`; returns its ground.
pub fn title(scene: &mut Scene, at: Spot, sheet: &Sheet, title: &Title) -> Rect {
    let caps = sheet.caps();
    let (w, room) = (title_width(sheet), 3.0);
    let grow = caps.name / 2.5;
    let [x, mut y] = at;
    let inner = w - 2.0 * room;
    let mut below = Scene::new(scene.width, scene.height);
    let rule = |scene: &mut Scene, y: f64| {
        scene.stroke(
            Path::line(&[[x, y], [x + w, y]]),
            Stroke::solid(pen::ELLIPSE),
        );
    };

    // the sign, the house and the kind of sheet, north
    let head = 15.0 * grow;
    mark::sign(
        &mut below,
        [x + room + 4.0 * grow, y + head / 2.0],
        4.0 * grow,
    );
    let words = x + room + 10.5 * grow;
    below.text(Text::new("Chalkyard", [words, y + head / 2.0 - 0.7], caps.name).bold());
    let to_north = if sheet.north.is_some() {
        13.0 * grow
    } else {
        0.0
    };
    let measure = x + w - room - to_north - words;
    for (number, line) in face::wrap(&title.kind, caps.note, Weight::Regular, measure)
        .iter()
        .take(2)
        .enumerate()
    {
        let spot = [
            words,
            y + head / 2.0 + caps.note + 1.0 + number as f64 * caps.note * 1.6,
        ];
        below.text(Text::new(line, spot, caps.note));
    }
    if let Some(bearing) = sheet.north {
        let letter = sheet.word("doc-north-letter");
        mark::north(
            &mut below,
            [x + w - room - 5.6 * grow, y + head / 2.0 + 0.4],
            3.4 * grow,
            bearing,
            &letter,
            caps.note,
        );
    }
    y += head;
    rule(&mut below, y);

    // the yard's name, smaller when it is long
    let cap = [caps.title, caps.head, caps.name]
        .into_iter()
        .find(|&cap| face::width(sheet.name, cap, Weight::Bold) <= inner)
        .unwrap_or(caps.name);
    let lines = face::wrap(sheet.name, cap, Weight::Bold, inner);
    y += cap * 0.7;
    for line in lines.iter().take(3) {
        y += cap;
        below.text(
            Text::new(
                face::fit(line, cap, Weight::Bold, inner),
                [x + room, y],
                cap,
            )
            .bold(),
        );
        y += cap * 0.6;
    }
    y += cap * 0.2;

    // rows
    let column = title
        .rows
        .iter()
        .map(|(name, _)| face::width(name, caps.note, Weight::Regular))
        .fold(0.0, f64::max)
        + 2.5;
    for (name, value) in &title.rows {
        y += caps.name * 1.75;
        below.text(Text::new(name, [x + room, y], caps.note));
        let left = inner - column;
        let cap = if face::width(value, caps.name, Weight::Regular) <= left {
            caps.name
        } else {
            caps.note
        };
        for (number, line) in face::wrap(value, cap, Weight::Regular, left)
            .iter()
            .enumerate()
        {
            if number > 0 {
                y += cap * 1.6;
            }
            below.text(Text::new(
                face::fit(line, cap, Weight::Regular, left),
                [x + room + column, y],
                cap,
            ));
        }
    }
    y += caps.name;
    rule(&mut below, y);

    // the bar, its length told, the caution
    y += 3.5;
    let mut bar = title.scale.bar(inner - 4.0 * grow, sheet.units);
    let mark_of = sheet.language.mark().to_string();
    for text in bar
        .figures
        .iter_mut()
        .chain([&mut bar.told, &mut bar.paper])
    {
        *text = text.replace('.', &mark_of);
    }
    mark::scale_bar(
        &mut below,
        [x + room + 1.0, y],
        bar.step,
        &bar.figures,
        caps.note,
    );
    y += 1.6 + caps.note + 2.2;
    let told = sheet.say(msg!(
        "doc-check-bar",
        length = bar.told.as_str(),
        paper = bar.paper.as_str()
    ));
    for text in [&told, &title.caution] {
        for line in face::wrap(text, caps.note, Weight::Regular, inner) {
            y += caps.note * 1.67;
            below.text(Text::new(line, [x + room, y], caps.note));
        }
    }
    y += room;
    let rect = Rect {
        x,
        y: at[1],
        w,
        h: y - at[1],
    };
    scene.shape(Path::plate(rect, 0.0), WHITE, Stroke::solid(pen::FENCE));
    scene.items.extend(below.items);
    rect
}

/// One sign of a legend.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Entry {
    /// A zone.
    Zone(Layer),
    /// An edge of the yard.
    Edge(EdgeKind),
    /// A fixture whose symbol needs a word.
    Fixture(FixtureKind),
    /// Door, gate.
    Gate,
    /// A survey point.
    Corner,
    /// A survey point inside.
    Inner,
    /// Where staff stand.
    Stand,
}

/// What a plan holds, each once, in the order of a legend.
pub fn entries(plan: &Plan) -> Vec<Entry> {
    let mut all: Vec<Entry> = plan
        .ground
        .blocked
        .iter()
        .filter_map(layer)
        .map(Entry::Zone)
        .collect();
    all.extend(plan.yard.edges.iter().map(|edge| Entry::Edge(edge.is)));
    all.extend(
        plan.yard
            .fixtures
            .iter()
            .filter(|f| f.is == FixtureKind::Tree)
            .map(|f| Entry::Fixture(f.is)),
    );
    if !plan.yard.gates.is_empty() {
        all.push(Entry::Gate);
    }
    for point in plan.survey.iter().flat_map(|survey| &survey.points) {
        all.push(if on_boundary(plan.yard, point.x, point.y) {
            Entry::Corner
        } else {
            Entry::Inner
        });
    }
    if !plan.yard.stands.is_empty() {
        all.push(Entry::Stand);
    }
    all.sort();
    all.dedup();
    all
}

impl Entry {
    fn key(self) -> &'static str {
        match self {
            Entry::Zone(Layer::Margin) => "doc-legend-margin",
            Entry::Zone(Layer::Soft) => "doc-legend-soft",
            Entry::Zone(Layer::Clear) => "doc-legend-clear",
            Entry::Zone(Layer::Alone) => "doc-legend-alone",
            Entry::Zone(Layer::Remark) => "doc-legend-remark",
            Entry::Zone(Layer::Floor) => "doc-legend-floor",
            Entry::Zone(Layer::Leaf) => "doc-legend-leaf",
            Entry::Zone(Layer::Drain) => "doc-legend-drain",
            Entry::Zone(Layer::Route) => "doc-legend-route",
            Entry::Edge(EdgeKind::Wall) => "doc-legend-wall",
            Entry::Edge(EdgeKind::Fence) => "doc-legend-fence",
            Entry::Edge(EdgeKind::Hedge) => "doc-legend-hedge",
            Entry::Edge(EdgeKind::Kerb) => "doc-legend-kerb",
            Entry::Edge(EdgeKind::Drop) => "doc-legend-drop",
            Entry::Edge(EdgeKind::Open) => "doc-legend-open",
            Entry::Fixture(_) => "doc-legend-tree",
            Entry::Gate => "doc-legend-gate",
            Entry::Corner => "doc-legend-corner",
            Entry::Inner => "doc-legend-inner",
            Entry::Stand => "doc-legend-stand",
        }
    }

    /// Draws the sign in a box of 7 by 5 mm with its upper left corner at `at`.
    fn draw(self, scene: &mut Scene, at: Spot) {
        let [x, y] = at;
        let ring = vec![[x, y], [x + 7.0, y], [x + 7.0, y + 5.0], [x, y + 5.0]];
        let middle = [x + 3.5, y + 2.5];
        let level = [[x, middle[1]], [x + 7.0, middle[1]]];
        match self {
            Entry::Zone(Layer::Drain) => {
                for radius in [2.4, 1.7] {
                    scene.stroke(Path::circle(middle, radius), Stroke::solid(pen::THIN));
                }
                scene.stroke(
                    Path::plate(
                        Rect {
                            x: middle[0] - 0.8,
                            y: middle[1] - 0.8,
                            w: 1.6,
                            h: 1.6,
                        },
                        0.0,
                    ),
                    Stroke::solid(pen::FIXTURE),
                );
            }
            Entry::Zone(Layer::Route) => {
                for y in [y + 0.3, y + 4.7] {
                    scene.stroke(
                        Path::line(&[[x, y], [x + 7.0, y]]),
                        Stroke::dashed(pen::ZONE, Dash::Route),
                    );
                }
                mark::chevron(
                    scene,
                    [x + 4.2, middle[1]],
                    [1.0, 0.0],
                    1.2,
                    Stroke::solid(pen::ZONE),
                );
            }
            Entry::Zone(zone) => {
                if let Some(kind) = zone.hatch() {
                    hatch(scene, kind, &[vec![ring.clone()] as Rings], &[]);
                }
                let stroke = match zone {
                    Layer::Clear | Layer::Alone | Layer::Remark => {
                        Stroke::dashed(pen::ZONE, Dash::Zone)
                    }
                    Layer::Floor => Stroke::dashed(pen::THIN, Dash::Short),
                    _ => Stroke::solid(pen::ZONE),
                };
                scene.stroke(Path::ring(&ring), stroke);
            }
            Entry::Edge(is) => edge(scene, &level, is),
            Entry::Fixture(_) => {
                scene.stroke(
                    fixture::scallops(middle, 2.3),
                    Stroke::dashed(pen::ZONE, Dash::Short),
                );
                scene.shape(
                    Path::circle(middle, 0.9),
                    WHITE,
                    Stroke::solid(pen::FIXTURE),
                );
                scene.fill(Path::circle(middle, 0.4), INK);
            }
            Entry::Gate => {
                scene.stroke(
                    Path::line(&level),
                    Stroke::dashed(pen::ELLIPSE, Dash::Short),
                );
                for spot in level {
                    scene.fill(Path::circle(spot, 0.7), INK);
                }
            }
            Entry::Corner => mark::point(scene, middle, 1.1),
            Entry::Inner => mark::point(scene, middle, 0.7),
            Entry::Stand => mark::stand(scene, middle),
        }
    }
}

/// How a legend is set: its columns, and the width of their words in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Columns {
    /// How many.
    pub count: usize,
    /// mm.
    pub measure: f64,
}

/// Draws a legend in its columns; returns its ground. `None` where nothing is to be told.
pub fn legend(
    scene: &mut Scene,
    at: Spot,
    sheet: &Sheet,
    entries: &[Entry],
    shape: Columns,
) -> Option<Rect> {
    if entries.is_empty() {
        return None;
    }
    let caps = sheet.caps();
    let Columns {
        count: columns,
        measure,
    } = shape;
    let (wide, line) = (9.5 + measure, caps.note * 1.6);
    let mut y = at[1] + caps.name;
    scene.text(Text::new(sheet.word("doc-legend"), [at[0], y], caps.name).bold());
    y += 3.0;
    let rows = entries.len().div_ceil(columns.max(1));
    let (mut deepest, mut used) = (y, 0.0f64);
    for (column, part) in entries.chunks(rows.max(1)).enumerate() {
        let x = at[0] + column as f64 * (wide + 3.0);
        let mut y = y;
        for entry in part {
            let lines = face::wrap(
                &sheet.word(entry.key()),
                caps.note,
                Weight::Regular,
                measure,
            );
            let high = f64::max(5.0, lines.len() as f64 * line);
            entry.draw(scene, [x, y + (high - 5.0) / 2.0]);
            let first = y + (high - lines.len() as f64 * line) / 2.0 + (line + caps.note) / 2.0;
            for (number, text) in lines.iter().enumerate() {
                let text = Text::new(text, [x + 9.5, first + number as f64 * line], caps.note);
                used = used.max(x + 9.5 + text.width() - at[0]);
                scene.text(text);
            }
            y += high + 1.8;
        }
        deepest = deepest.max(y - 1.8);
    }
    let head = face::width(&sheet.word("doc-legend"), caps.name, Weight::Bold);
    Some(Rect {
        x: at[0],
        y: at[1],
        w: used.max(head),
        h: deepest - at[1],
    })
}

/// Times by which ellipses may be enlarged.
const TIMES: [f64; 14] = [
    5.0, 10.0, 20.0, 30.0, 40.0, 50.0, 75.0, 100.0, 150.0, 200.0, 300.0, 500.0, 1000.0, 2000.0,
];

/// Draws the survey with its readings and enlarged 95 % ellipses in a box; returns its ground.
/// A reading of less redundancy than `limit` is drawn as unchecked.
pub fn inset(scene: &mut Scene, room: Rect, sheet: &Sheet, survey: &Survey, limit: f64) -> Rect {
    let caps = sheet.caps();
    let bounds = Rect::round(survey.points.iter().map(|p| [p.x, -p.y]));
    let bounds = bounds.unwrap_or(Rect {
        x: 0.0,
        y: 0.0,
        w: 1.0,
        h: 1.0,
    });
    let (sx, sy) = (bounds.w.max(1e-3), bounds.h.max(1e-3));
    // room for the two lines of words above and for letters and ellipses all round
    let rim = 6.0 + caps.note;
    let mm = ((room.w - 2.0 * rim) / sx).min((room.h - 2.0 * rim - 3.0 * caps.name) / sy);
    let reach = survey
        .points
        .iter()
        .filter_map(|point| point.ellipse)
        .map(|ellipse| ellipse.a)
        .fold(0.0, f64::max)
        * measure::ellipse_95();
    let times = TIMES
        .into_iter()
        .rev()
        .find(|times| reach * times * mm <= rim)
        .unwrap_or(1.0);

    scene.text(
        Text::new(
            sheet.word("doc-inset"),
            [room.x, room.y + caps.name],
            caps.name,
        )
        .bold(),
    );
    let told = sheet.say(msg!("doc-inset-ellipses", times = format!("{times}")));
    let mut y = room.y + caps.name;
    for line in face::wrap(&told, caps.note, Weight::Regular, room.w) {
        y += caps.note * 1.6 + 0.4;
        scene.text(Text::new(line, [room.x, y], caps.note));
    }
    let top = y + rim;
    let origin = [
        room.x + (room.w - sx * mm) / 2.0 - bounds.x * mm,
        top - bounds.y * mm,
    ];
    let view = View { mm, origin };
    let place = |number: usize| {
        survey.points.get(number).map(|point| {
            view.at(geo::Coord {
                x: point.x,
                y: point.y,
            })
        })
    };
    readings(scene, survey, limit, &place);
    let middle = [
        origin[0] + (bounds.x + sx / 2.0) * mm,
        origin[1] + (bounds.y + sy / 2.0) * mm,
    ];
    let mut taken = Taken::new(scene.width, scene.height);
    for reading in &survey.readings {
        if let Some((a, b)) = ends(reading.kind) {
            let spots: Vec<Spot> = [a, b].into_iter().filter_map(place).collect();
            taken.line(&spots, weight::LINE);
        }
    }
    let grow = times * mm * measure::ellipse_95();
    for (number, point) in survey.points.iter().enumerate() {
        let Some(at) = place(number) else { continue };
        match point.ellipse {
            Some(ellipse) if ellipse.b * grow > 0.1 => {
                let half = [ellipse.a * grow, ellipse.b * grow];
                scene.stroke(
                    Path::ellipse(at, half, -ellipse.theta_deg),
                    Stroke::solid(pen::ELLIPSE),
                );
                let (sin, cos) = libm::sincos(ellipse.theta_deg.to_radians());
                let ring: Vec<Spot> = fixture::circle([0.0; 2], 1.0, 32)
                    .into_iter()
                    .map(|[u, v]| {
                        let (u, v) = (u * half[0], v * half[1]);
                        [at[0] + u * cos + v * sin, at[1] - u * sin + v * cos]
                    })
                    .collect();
                taken.ring(&ring, weight::HARD);
            }
            Some(ellipse) => bar(scene, &mut taken, at, ellipse.theta_deg, ellipse.a * grow),
            None if point.sx > 0.0 && point.sy <= 0.0 => {
                bar(
                    scene,
                    &mut taken,
                    at,
                    0.0,
                    point.sx * times * mm * measure::HALF_95,
                );
            }
            None if point.sy > 0.0 && point.sx <= 0.0 => {
                bar(
                    scene,
                    &mut taken,
                    at,
                    90.0,
                    point.sy * times * mm * measure::HALF_95,
                );
            }
            None => {}
        }
        scene.shape(
            Path::circle(at, 0.7),
            WHITE,
            Stroke::solid(if point.loose { pen::HAIR } else { pen::ZONE }),
        );
        taken.ground(&vec![fixture::circle(at, 0.9, 12)], weight::HARD);
    }
    let named: Vec<(&str, Spot)> = survey
        .points
        .iter()
        .enumerate()
        .filter_map(|(number, point)| Some((point.name.as_str(), place(number)?)))
        .collect();
    name_points(scene, &mut taken, &named, middle, caps.note);
    let mut y = top + sy * mm + rim + caps.note;
    let mut key = |scene: &mut Scene, draw: &dyn Fn(&mut Scene, Spot), word: &'static str| {
        draw(scene, [room.x, y - caps.note / 2.0]);
        scene.text(Text::new(sheet.word(word), [room.x + 9.0, y], caps.note));
        y += caps.note * 2.0;
    };
    if survey
        .suspects
        .iter()
        .any(|suspect| !suspect.readings.is_empty())
    {
        key(
            scene,
            &|scene, at| mark::lozenge(scene, [at[0] + 3.5, at[1]], 1.8),
            "doc-inset-doubtful",
        );
    }
    if survey
        .readings
        .iter()
        .any(|reading| unchecked(reading, limit))
    {
        key(
            scene,
            &|scene, at| {
                scene.stroke(
                    Path::line(&[at, [at[0] + 7.0, at[1]]]),
                    Stroke::dashed(pen::ELLIPSE, Dash::Dots),
                )
            },
            "doc-inset-unchecked",
        );
    }
    Rect {
        x: room.x,
        y: room.y,
        w: room.w,
        h: y - caps.note * 2.0 + 1.0 - room.y,
    }
}

/// Writes the names of points, each outward from `middle` and clear of what is taken.
pub fn name_points(
    scene: &mut Scene,
    taken: &mut Taken,
    points: &[(&str, Spot)],
    middle: Spot,
    cap: f64,
) {
    for &(name, at) in points {
        let out = way(middle, at);
        let mut best: Option<(f64, Text)> = None;
        for reach in 0..14 {
            for to in fixture::circle([0.0; 2], 1.0, 16) {
                let spot = along(at, to, cap * 1.35 + 0.7 * f64::from(reach));
                let text = Text::new(name, [spot[0], spot[1] + cap / 2.0], cap)
                    .bold()
                    .middle();
                let aside = 1.0 - (to[0] * out[0] + to[1] * out[1]);
                let cost = taken.cost(&mark::slab_of(&text, 0.3)) + aside * 1.5 + f64::from(reach);
                if cost.is_finite() && best.as_ref().is_none_or(|(least, _)| cost < *least) {
                    best = Some((cost, text));
                }
            }
        }
        if let Some((_, text)) = best {
            taken.slab(&mark::slab_of(&text, 0.3), weight::NEVER);
            scene.text(text);
        }
    }
}

fn bar(scene: &mut Scene, taken: &mut Taken, at: Spot, theta: f64, half: f64) {
    let (sin, cos) = libm::sincos(theta.to_radians());
    let to = [cos * half, -sin * half];
    let spots = [
        [at[0] - to[0], at[1] - to[1]],
        [at[0] + to[0], at[1] + to[1]],
    ];
    taken.line(&spots, weight::HARD);
    scene.stroke(Path::line(&spots), Stroke::solid(pen::FIXTURE));
}

/// Whether no other reading checks this one: its redundancy number is below `limit`.
pub fn unchecked(reading: &Adjusted, limit: f64) -> bool {
    reading.r < limit
}

/// The ends of a reading that is a length along a line.
pub fn ends(kind: Kind) -> Option<(usize, usize)> {
    match kind {
        Kind::Distance { from, to } => Some((from, to)),
        Kind::Along { from, point, .. } => Some((from, point)),
        Kind::Left { .. } | Kind::Square { .. } | Kind::KnownX { .. } | Kind::KnownY { .. } => None,
    }
}

fn readings(scene: &mut Scene, survey: &Survey, limit: f64, place: &dyn Fn(usize) -> Option<Spot>) {
    let doubtful: Vec<usize> = survey
        .suspects
        .iter()
        .flat_map(|suspect| suspect.readings.iter().copied())
        .collect();
    let mut lozenges = Vec::new();
    // a side taped twice is one line: the better checked of its readings says how it is drawn
    let mut drawn: std::collections::BTreeMap<(usize, usize), (bool, bool)> =
        std::collections::BTreeMap::new();
    for (number, reading) in survey.readings.iter().enumerate() {
        let Some((a, b)) = ends(reading.kind) else {
            continue;
        };
        let state = drawn.entry((a.min(b), a.max(b))).or_insert((true, false));
        state.0 &= unchecked(reading, limit);
        state.1 |= doubtful.contains(&number);
    }
    for (&(a, b), &(loose, doubt)) in &drawn {
        let (Some(from), Some(to)) = (place(a), place(b)) else {
            continue;
        };
        let stroke = match (doubt, loose) {
            (true, _) => Stroke::dashed(pen::ELLIPSE, Dash::Long),
            (_, true) => Stroke::dashed(pen::ELLIPSE, Dash::Dots),
            _ => Stroke::solid(pen::THIN),
        };
        scene.stroke(Path::line(&[from, to]), stroke);
        if doubt {
            lozenges.push(along(from, way(from, to), far(from, to) * 0.45));
        }
    }
    for at in lozenges {
        mark::lozenge(scene, at, 2.2);
    }
}

/// The yard's corners that have a name, for dimensions and tables.
pub fn name_at<'a>(survey: Option<&'a Survey>, yard: &Yard, corner: usize) -> Option<&'a str> {
    let place = yard.boundary.exterior().coords().nth(corner)?;
    survey?
        .points
        .iter()
        .find(|point| libm::hypot(point.x - place.x, point.y - place.y) < 1e-3)
        .map(|point| point.name.as_str())
}
