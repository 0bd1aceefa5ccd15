//! A page for one marking: as painted, as used, whom it suits, what it gives, what to mind.

use geo::{Coord, LineString};
use marking::Figure;
use note::{Fact, msg};
use plan::{Child, Footfall, Marking, Way};

use super::footprints::{Told, Trail, trail};
use super::painter::{self, Extent, Manner};
use super::suits;
use super::{Planned, words};
use crate::drawing::hatch::Rings;
use crate::drawing::mark::{self, Dimension};
use crate::drawing::scale::Scale;
use crate::drawing::scene::{Rect, Scene, Text};
use crate::drawing::taken::{Taken, weight};
use crate::drawing::view::View;
use crate::face::{self, Weight};
use crate::measure;
use crate::sheet::Sheet;
use crate::typeset::{Manuscript, string};

/// The text's measure, mm.
const MEASURE: f64 = 175.0;

/// Between what stands side by side, mm.
const GUTTER: f64 = 5.0;

/// Rims, title, captions, heads and what stands between: mm of a page.
const FIXED: f64 = 40.0 + 19.5 + 6.0 + 18.0 + 7.0 + 23.0;

/// What a drawing of a route has besides the figure, mm: rim, caption, space.
const OVER: f64 = 9.5 + 4.5 + 5.0;

/// The least and the greatest height of a figure in use, mm.
const LEAST: f64 = 10.0;
const MOST: f64 = 60.0;

/// A route, and who goes it.
#[derive(Clone, Copy)]
struct Going<'a> {
    row: &'a Footfall,
    route: &'a Way,
    child: &'a Child,
}

/// Writes the page of the marking of this number, from 0.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, number: usize) {
    let Some((marking, figure)) = planned.markings().nth(number) else {
        return;
    };
    let candidate = planned.candidate(marking);
    let name = words::marking(sheet, marking, candidate);
    paper.page_break();
    title(paper, sheet, number + 1, &name);
    let footfall = planned.record.footfall.as_deref().unwrap_or_default();
    let suited = suits::suits(&marking.name, footfall, planned.children());
    let facts = facts(sheet, planned, marking, figure);
    let (scene, scale) = painted(sheet, planned, figure);
    let alt = sheet.say(msg!(
        "page-painted-alt",
        name = name.as_str(),
        colours = colours(sheet, figure)
    ));
    let caption = sheet.say(msg!(
        "page-painted-caption",
        ground = ground_word(planned.surface),
        scale = scale.says(sheet.units)
    ));
    let image = paper.keep(&scene);
    let picture = format!(
        "{{ image({}, width: {}mm, height: {}mm, alt: {}); small({}) }}",
        string(&image),
        scene.width,
        scene.height,
        string(&alt),
        string(&caption)
    );
    if sheet.large {
        paper.code(&format!("#{picture}"));
        words::facts(paper, &facts);
    } else {
        paper.code(&format!(
            "#grid(columns: ({}mm, 1fr), column-gutter: 5mm, {picture}, {})",
            scene.width,
            words::facts_code(&facts)
        ));
    }
    let chart = (!suited.is_empty()).then(|| suits::chart(sheet, &suited, MEASURE));
    let (wide, high) = chart
        .as_ref()
        .map_or((0.0, 0.0), |one| (one.width, one.height));
    let care = sheet.word("doc-take-care");
    let acts = [
        "page-care-clear",
        if figure.lanes.is_empty() {
            "page-care-turn"
        } else {
            "page-care-lane"
        },
        "page-care-watch",
    ]
    .map(|key| sheet.word(key));
    // the caution beside the chart, or under it: whichever takes less of the page
    let (narrow, broad) = (
        care_height(sheet, &acts, MEASURE - wide - GUTTER),
        care_height(sheet, &acts, MEASURE),
    );
    let under = high + 7.5 + broad;
    let beside = !sheet.large && high.max(narrow) < under;
    let foot = if beside { high.max(narrow) } else { under };
    let top = scene
        .height
        .max(facts_height(sheet, &facts, MEASURE - scene.width - GUTTER));
    let trails = trails(planned, marking, figure);
    let left = sheet.paper.upright()[1] - FIXED - top - foot;
    let each = left / trails.drawings() as f64 - OVER;
    // what no page holds goes on a second one, its parts whole
    let one_page = sheet.large || each >= LEAST;
    used(
        paper,
        sheet,
        figure,
        &trails,
        if one_page { each } else { MOST },
    );
    if !one_page {
        paper.page_break();
    }
    heading(paper, &sheet.word("page-suits"));
    match &chart {
        None => paper.paragraph(&sheet.word("page-suits-nobody")),
        Some(_) => words::small(paper, &sheet.word("page-suits-how")),
    }
    match &chart {
        Some(chart) if beside => {
            let image = paper.keep(chart);
            paper.code(&format!(
                "#block(breakable: false, above: row, grid(columns: ({}mm, 1fr), column-gutter: {GUTTER}mm, \
                 image({}, width: {}mm, height: {}mm, alt: {}), [#care({}, ({},))]))",
                chart.width,
                string(&image),
                chart.width,
                chart.height,
                string(&suits::told(sheet, &suited)),
                string(&care),
                acts.map(|act| string(&act)).join(", ")
            ));
        }
        chart => {
            if let Some(chart) = chart {
                paper.figure(chart, &suits::told(sheet, &suited));
            }
            paper.care(&care, &acts);
        }
    }
}

fn heading(paper: &mut Manuscript, words: &str) {
    paper.code(&format!("#heading(level: 3, {})", string(words)));
}

/// The sign, the name and the number, over a rule.
fn title(paper: &mut Manuscript, sheet: &Sheet, number: usize, name: &str) {
    let mut sign = Scene::new(9.0, 9.0);
    mark::sign(&mut sign, [4.5, 4.5], 4.2);
    let sign = paper.keep(&sign);
    let mut disc = Scene::new(9.0, 9.0);
    mark::number(&mut disc, [4.5, 4.5], &number.to_string(), 3.5);
    let disc = paper.keep(&disc);
    let says = sheet.say(msg!("page-number", number = number));
    paper.code(&format!(
        "#block(below: 0.7 * row, width: 100%, stroke: (bottom: 0.5mm + ink), inset: (bottom: 2.5mm), \
         grid(columns: (auto, 1fr, auto), column-gutter: 3mm, align: horizon, \
         pdf.artifact(image({}, width: 9mm)), heading(level: 2, text(size: em(peak), {})), image({}, width: 9mm, alt: {})))",
        string(&sign),
        string(name),
        string(&disc),
        string(&says)
    ));
}

fn ground_word(ground: marking::Ground) -> &'static str {
    match ground {
        marking::Ground::Asphalt => "asphalt",
        marking::Ground::Concrete => "concrete",
    }
}

fn colours(sheet: &Sheet, figure: &Figure) -> Vec<String> {
    painter::colours([figure])
        .into_iter()
        .map(|colour| sheet.word(painter::paint_key(colour)))
        .collect()
}

/// What is said beside the picture, name and value.
fn facts(
    sheet: &Sheet,
    planned: &Planned,
    marking: &Marking,
    figure: &Figure,
) -> Vec<(String, String)> {
    let candidate = planned.candidate(marking);
    let mut all = Vec::new();
    let mut add = |key: &'static str, value: String| {
        if !value.is_empty() {
            all.push((sheet.word(key), value));
        }
    };
    if let Some(one) = candidate {
        add("page-fact-for", words::group(sheet, &one.group));
        let mut skills: Vec<(&str, Option<&str>)> = one
            .e
            .iter()
            .map(|gift| (gift.skill.as_str(), gift.foot.as_deref()))
            .collect();
        skills.sort_by_key(|(skill, foot)| (order(skill), std::cmp::Reverse(*foot)));
        skills.dedup();
        let mut said: Vec<String> = Vec::new();
        for (skill, _) in &skills {
            let feet: Vec<&str> = skills
                .iter()
                .filter(|(other, _)| other == skill)
                .filter_map(|(_, foot)| *foot)
                .collect();
            let line = match feet.as_slice() {
                [foot] => words::skill(sheet, skill, Some(foot)),
                [_, ..] => sheet.say(msg!(
                    "page-both-feet",
                    skill = suits::gait_words(sheet, skill)
                )),
                [] => words::skill(sheet, skill, None),
            };
            if !said.contains(&line) {
                said.push(line);
            }
        }
        add("page-fact-skills", said.join("; "));
    }
    let lengths: Vec<String> = figure
        .lengths
        .iter()
        .map(|(name, metres)| {
            let spec = marking::family(&marking.family).and_then(|family| {
                family
                    .lengths()
                    .iter()
                    .find(|spec| spec.name == name)
                    .map(|spec| spec.says)
            });
            let says = spec.map_or_else(|| name.clone(), |says| sheet.word(says));
            format!("{says} {}", words::length(sheet, *metres))
        })
        .collect();
    add("page-fact-lengths", lengths.join("; "));
    if !figure.cells.is_empty() {
        add(
            "page-fact-cells",
            sheet.say(msg!(
                "page-cells",
                cells = figure.cells.len(),
                tracks = u64::from(figure.tracks)
            )),
        );
    } else {
        add(
            "page-fact-cells",
            sheet.say(msg!("page-tracks", tracks = u64::from(figure.tracks))),
        );
    }
    if let Some(spelt) = &marking.words {
        add(
            "page-fact-words",
            sheet.say(msg!(
                "page-words",
                words = spelt.jumpable.clone(),
                many = spelt.jumpable.len(),
                of = spelt.jumpable.len() + spelt.other.len(),
                longest = words::length(sheet, spelt.longest.unwrap_or(0.0))
            )),
        );
        add("page-fact-words-not", spelt.other.join(", "));
    }
    let minutes = minutes(planned, marking);
    if minutes > 0.0 {
        add(
            "page-fact-gives",
            sheet.say(msg!("page-gives", minutes = Fact::Number(minutes, 1))),
        );
    }
    if let Some(one) = candidate {
        add(
            "page-fact-cost",
            sheet.say(msg!(
                "page-cost",
                cost = words::money(sheet, one.cost, planned.money)
            )),
        );
    }
    let [x, y] = marking.at;
    add(
        "page-fact-lies",
        sheet.say(msg!(
            "page-lies",
            x = words::length(sheet, x),
            y = words::length(sheet, y),
            turn = Fact::Number(marking.turn.rem_euclid(360.0), 0),
            mirrored = if marking.mirrored { "yes" } else { "no" }
        )),
    );
    if let Some(one) = candidate {
        add("page-fact-ground", measure::area(one.area, sheet));
    }
    all
}

/// How high a caution of this width is, mm; endless where no words fit in.
fn care_height(sheet: &Sheet, acts: &[String], wide: f64) -> f64 {
    let cap = sheet.caps().name;
    // flank, insets, dash
    let measure = wide - 12.0 - 8.0 - 5.0;
    if measure < 30.0 {
        return f64::INFINITY;
    }
    let lines = acts
        .iter()
        .map(|act| face::wrap(act, cap, Weight::Regular, measure).len());
    let row = 2.0 * cap;
    9.5 + row + lines.sum::<usize>() as f64 * row + acts.len() as f64 * 1.2
}

/// How high the facts stand beside the picture, mm.
fn facts_height(sheet: &Sheet, facts: &[(String, String)], wide: f64) -> f64 {
    let cap = sheet.caps().note;
    let names = facts
        .iter()
        .map(|(name, _)| face::width(name, cap, Weight::Bold))
        .fold(0.0, f64::max);
    let lines = |value: &String| face::wrap(value, cap, Weight::Regular, wide - names - 3.0).len();
    // the leading and the gutter of the typesetter's `facts`
    let row = |value| cap + (lines(value).max(1) - 1) as f64 * (1.62 * cap + 0.4) + 1.1 * cap + 0.3;
    facts.iter().map(|(_, value)| row(value)).sum()
}

/// The taught skills' own order.
fn order(skill: &str) -> usize {
    ["jump", "hop", "leap", "gallop", "slide", "skip"]
        .iter()
        .position(|one| *one == skill)
        .unwrap_or(9)
}

/// Minutes a week that an average child of the class spends on a marking.
fn minutes(planned: &Planned, marking: &Marking) -> f64 {
    let Some(layout) = &planned.record.layout else {
        return 0.0;
    };
    let name = marking.candidate.as_deref().unwrap_or(&marking.name);
    let count = |id: &str| {
        planned
            .children()
            .iter()
            .find(|child| child.id == id)
            .map_or(0.0, |child| f64::from(child.count))
    };
    let sum: f64 = layout
        .minutes
        .iter()
        .filter(|one| one.candidate == name)
        .map(|one| one.minutes * count(&one.child))
        .sum();
    sum / f64::from(planned.heads().max(1))
}

/// The figure in its colours on its ground, with the ground that it needs.
fn painted(sheet: &Sheet, planned: &Planned, figure: &Figure) -> (Scene, Scale) {
    let wide = if sheet.large { MEASURE } else { 108.0 };
    let extent = Extent::of_envelope(figure).grown(0.1);
    let room = [wide - 4.0, if sheet.large { 70.0 } else { 44.0 }];
    let (scale, view) = extent.fit(room, [0.0; 2], sheet);
    let high = extent.size()[1] * scale.mm() + 4.0;
    let view = View {
        origin: [view.origin[0] + wide / 2.0, view.origin[1] + high / 2.0],
        ..view
    };
    let mut scene = Scene::new(wide, high);
    painter::on_ground(
        &mut scene,
        figure,
        &view,
        Rect {
            x: 0.0,
            y: 0.0,
            w: wide,
            h: high,
        },
        planned.surface,
    );
    (scene, scale)
}

/// The routes that are shown.
enum Trails<'a> {
    /// Nobody has one.
    None,
    One(Going<'a>, Trail),
    /// The easiest and the hardest.
    Two([(Going<'a>, Trail); 2]),
}

impl Trails<'_> {
    /// Two routes that share no cell stand in one drawing.
    fn apart(&self) -> bool {
        let Trails::Two([(easy, _), (hard, _)]) = self else {
            return false;
        };
        let other = &hard.route.cells;
        !easy.route.cells.is_empty() && easy.route.cells.iter().all(|id| !other.contains(id))
    }

    fn drawings(&self) -> usize {
        match self {
            Trails::Two(_) if !self.apart() => 2,
            _ => 1,
        }
    }
}

fn trails<'a>(planned: &Planned<'a>, marking: &Marking, figure: &Figure) -> Trails<'a> {
    let mut all = goings(planned, marking)
        .into_iter()
        .filter_map(|going| Some((going, going.trail(planned, figure)?)));
    match (all.next(), all.next()) {
        (Some(easy), Some(hard)) => Trails::Two([easy, hard]),
        (Some((going, trail)), None) => Trails::One(going, trail),
        _ => Trails::None,
    }
}

/// As used: the easiest and the hardest way, as footprints; each figure at most so many mm
/// high.
fn used(paper: &mut Manuscript, sheet: &Sheet, figure: &Figure, trails: &Trails, most: f64) {
    heading(paper, &sheet.word("page-used"));
    let mut show = |text: &str, trails: &[&Trail], extent: Extent, whole: bool| {
        words::small(paper, text);
        paper.figure(&drawn(sheet, figure, trails, extent, whole, most), text);
    };
    match trails {
        Trails::None => show(
            &sheet.word("page-no-route"),
            &[],
            extent_of(figure, &[]),
            true,
        ),
        Trails::One(going, trail) => {
            let extent = extent_of(figure, &[trail]);
            show(&says(sheet, "page-only", going), &[trail], extent, true);
        }
        Trails::Two([easy, hard]) => {
            let told = [
                says(sheet, "page-easiest", &easy.0),
                says(sheet, "page-hardest", &hard.0),
            ];
            let extent = extent_of(figure, &[&easy.1, &hard.1]);
            if trails.apart() {
                show(&told.join(" "), &[&easy.1, &hard.1], extent, true);
            } else {
                show(&told[0], &[&easy.1], extent, false);
                show(&told[1], &[&hard.1], extent, true);
            }
        }
    }
}

fn says(sheet: &Sheet, key: &'static str, going: &Going) -> String {
    let facts = vec![
        (
            "years",
            Fact::Number(f64::from(suits::years(going.child)), 0),
        ),
        (
            "skill",
            Fact::Text(words::skill(
                sheet,
                &going.row.gait,
                going.row.foot.as_deref(),
            )),
        ),
        ("contacts", Fact::Count(going.route.n as u64)),
        ("share", words::percent(going.route.pi_0)),
    ];
    sheet.say(note::Message { key, facts })
}

/// The easiest and the hardest route of the child that the marking suits best; one where
/// there is but one.
fn goings<'a>(planned: &Planned<'a>, marking: &Marking) -> Vec<Going<'a>> {
    /// A way that comes off less than once in ten is nobody's route yet.
    const TRIED: f64 = 0.1;
    let footfall = planned.record.footfall.as_deref().unwrap_or_default();
    let on_feet = |id: &str| {
        planned
            .children()
            .iter()
            .find(|child| child.id == id && matches!(child.means.as_str(), "feet" | "held"))
    };
    let rows: Vec<(&Footfall, &Child)> = footfall
        .iter()
        .filter(|row| row.marking == marking.name && !row.routes.is_empty())
        .filter_map(|row| Some((row, on_feet(&row.child)?)))
        .collect();
    let best = rows
        .iter()
        .fold(None, |best: Option<&(&Footfall, &Child)>, row| match best {
            Some(known) if known.0.well >= row.0.well => Some(known),
            _ => Some(row),
        });
    let Some((_, child)) = best else {
        return Vec::new();
    };
    let mut all: Vec<Going> = rows
        .iter()
        .filter(|(row, _)| row.child == child.id)
        .flat_map(|(row, child)| {
            row.routes
                .iter()
                .map(move |route| Going { row, route, child })
        })
        .collect();
    all.sort_by(|a, b| {
        b.route
            .pi_0
            .total_cmp(&a.route.pi_0)
            .then(b.route.n.cmp(&a.route.n))
    });
    let tried = all
        .iter()
        .filter(|going| going.route.pi_0 >= TRIED)
        .count()
        .max(1);
    all.truncate(tried);
    match (all.first(), all.last()) {
        (Some(easy), Some(hard)) if all.len() > 1 => vec![*easy, *hard],
        (Some(only), _) => vec![*only],
        _ => Vec::new(),
    }
}

impl Going<'_> {
    fn trail(&self, planned: &Planned, figure: &Figure) -> Option<Trail> {
        let stride = self
            .child
            .skills
            .get(&self.row.gait)
            .map_or(0.5, |ability| ability.m)
            * footfall::Model::of(planned.ledger).stride;
        trail(
            figure,
            &Told {
                gait: &self.row.gait,
                cells: &self.route.cells,
                lane: self.route.lane,
                contacts: &self.route.contacts,
                foot: self.child.foot,
                stride,
            },
        )
    }
}

fn extent_of(figure: &Figure, trails: &[&Trail]) -> Extent {
    let way = Extent::of_way(figure);
    trails
        .iter()
        .filter_map(|trail| trail.extent())
        .fold(way, Extent::with)
}

/// The figure in ink with routes on it, at most so many mm high; `whole` with its
/// dimensions, paints and scale.
fn drawn(
    sheet: &Sheet,
    figure: &Figure,
    trails: &[&Trail],
    extent: Extent,
    whole: bool,
    most: f64,
) -> Scene {
    let caps = sheet.caps();
    let grow = caps.note / 1.8;
    let rim = 6.5 * grow;
    let left = 10.0 * grow;
    let most = if sheet.large { 90.0 } else { most.min(MOST) };
    let (scale, view) = extent.fit([MEASURE - 2.0 * left, most], [0.0; 2], sheet);
    let [w, h] = extent.size().map(|metres| metres * scale.mm());
    let foot = if whole { 23.0 * grow } else { 0.0 };
    let mut scene = Scene::new(MEASURE, rim + h + 3.0 + foot);
    let view = View {
        origin: [
            view.origin[0] + MEASURE / 2.0,
            view.origin[1] + rim + h / 2.0,
        ],
        ..view
    };
    let mut taken = Taken::new(scene.width, rim + h + 3.0);
    painter::draw(&mut scene, figure, &view, Manner::Drawn, false);
    for (rings, _) in painter::pieces(figure, &view, false) {
        taken.ground(&rings as &Rings, weight::HATCH * 3);
        rings
            .iter()
            .for_each(|ring| taken.ring(ring, weight::LINE / 2));
    }
    if whole {
        own_widths(&mut scene, &mut taken, sheet, figure, &view);
    }
    for trail in trails {
        trail.draw(&mut scene, &mut taken, &view, caps.note, true);
    }
    if whole {
        let base = rim + h + 1.0;
        let middle = (MEASURE - w) / 2.0;
        chain(&mut scene, sheet, trails, &view, base + 6.0 * grow);
        let (a, b) = ([middle, base], [middle + w, base]);
        let way = Extent::of_way(figure);
        let ends = [way.low[0], way.high[0]].map(|x| view.at(Coord { x, y: way.low[1] })[0]);
        let (a, b) = ([ends[0], a[1]], [ends[1], b[1]]);
        let figure_text = measure::dimension(way.size()[0], sheet);
        Dimension::new(a, b, [0.0, 1.0], 12.5 * grow, &figure_text, caps.name).draw(&mut scene);
        let y = base + 18.0 * grow;
        painter::legend(
            &mut scene,
            [0.0, y],
            sheet,
            &painter::colours([figure]),
            Manner::Drawn,
        );
        let mut bar = scale.bar(50.0, sheet.units);
        let mark_of = sheet.language.mark().to_string();
        bar.figures
            .iter_mut()
            .for_each(|text| *text = text.replace('.', &mark_of));
        let at = MEASURE - 4.0 * bar.step - 8.0 * grow;
        mark::scale_bar(&mut scene, [at, y], bar.step, &bar.figures, caps.note);
        let says = sheet.say(msg!(
            "page-drawn-at",
            scale = scale.says(sheet.units),
            unit = measure::unit(sheet.units)
        ));
        scene.text(Text::new(says, [at - 4.0, y + 2.0 + caps.note / 2.0], caps.note).end());
    }
    scene
}

/// From middle to middle of the contacts along the way, under the figure.
fn chain(scene: &mut Scene, sheet: &Sheet, trails: &[&Trail], view: &View, y: f64) {
    let [trail] = trails else { return };
    let caps = sheet.caps();
    let middles: Vec<Coord<f64>> = trail
        .landings
        .iter()
        .map(|one| {
            one.feet
                .iter()
                .fold(Coord { x: 0.0, y: 0.0 }, |sum, foot| sum + foot.at)
                / one.feet.len().max(1) as f64
        })
        .collect();
    let forward = middles.windows(2).all(|pair| pair[1].x > pair[0].x);
    let legible = middles.windows(2).all(|pair| {
        let apart = libm::hypot(pair[1].x - pair[0].x, pair[1].y - pair[0].y);
        Text::new(measure::dimension(apart, sheet), [0.0; 2], caps.note).width() + 1.0
            < (pair[1].x - pair[0].x) * view.mm
    });
    if !forward || !legible {
        return;
    }
    for pair in middles.windows(2) {
        let apart = libm::hypot(pair[1].x - pair[0].x, pair[1].y - pair[0].y);
        let ends = [pair[0], pair[1]].map(|at| [view.at(at)[0], y]);
        let mut one = Dimension::new(
            ends[0],
            ends[1],
            [0.0, 1.0],
            0.0,
            &measure::dimension(apart, sheet),
            caps.note,
        );
        one = one.bare();
        one.draw(scene);
    }
}

/// Clear widths that a figure has besides its cells: the water at both ends, a lane.
fn own_widths(scene: &mut Scene, taken: &mut Taken, sheet: &Sheet, figure: &Figure, view: &View) {
    let caps = sheet.caps();
    let length = |name: &str| {
        figure
            .lengths
            .iter()
            .find(|(one, _)| one == name)
            .map(|(_, metres)| *metres)
    };
    let mut upright = |x: f64, y: f64, breadth: f64| {
        let (a, b) = (
            Coord {
                x,
                y: y - breadth / 2.0,
            },
            Coord {
                x,
                y: y + breadth / 2.0,
            },
        );
        let text = measure::dimension(breadth, sheet);
        let one = Dimension::new(view.at(a), view.at(b), [1.0, 0.0], 0.0, &text, caps.note).bare();
        taken.line(&one.ends, weight::HARD);
        taken.slab(&mark::slab_of(&one.figure, 0.4), weight::NEVER);
        one.draw(scene);
    };
    if let (Some(narrow), Some(wide), Some(long)) =
        (length("narrow"), length("wide"), length("length"))
    {
        upright(0.04, 0.0, narrow);
        upright(long - 0.04, 0.0, wide);
    }
    if let (Some(lane), Some(width)) = (figure.lanes.first(), length("width")) {
        let start = LineString(lane.line.coords().copied().collect());
        if let Some(first) = start.coords().next() {
            upright(first.x + 0.25, first.y, width);
        }
    }
}
