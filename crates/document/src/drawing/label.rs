//! Labels and dimensions of a plan: each where it covers least, on a white plate, with a
//! leader where it had to move away.

use geo::{BooleanOps, Coord, MultiPolygon};
use ground::yard::{Fixture, FixtureKind, RemarkKind, SurfaceKind, Yard};
use ledger::Ledger;
use note::msg;

use super::fixture;
use super::hatch::Rings;
use super::mark::{self, Dimension, reading_turn, slab_of};
use super::scene::{Path, Rect, Scene, Spot, Stroke, Text, WHITE, pen};
use super::taken::{Slab, Taken, inside, weight};
use super::view::{View, along, far, right_of, way};
use super::yard::{Plan, corners, label_places, on_boundary};
use crate::face::{self, Weight};
use crate::measure;
use crate::sheet::Sheet;

/// Room round a label on its plate, mm.
const ROOM: f64 = 0.5;

struct Label {
    lines: Vec<(String, f64, Weight)>,
}

/// A place offered to a label: its middle, degrees, what it costs before anything else.
struct Offer {
    at: Spot,
    turn: f64,
    bias: f64,
    /// Whether it lies on the very thing it names, which it may.
    within: bool,
}

impl Label {
    fn new(head: impl Into<String>, cap: f64, weight: Weight) -> Label {
        Label {
            lines: vec![(face::printable(&head.into()), cap, weight)],
        }
    }

    fn under(mut self, line: Option<String>, cap: f64) -> Label {
        self.lines
            .extend(line.map(|line| (face::printable(&line), cap, Weight::Regular)));
        self
    }

    fn half(&self) -> Spot {
        let width = self
            .lines
            .iter()
            .map(|(text, cap, weight)| face::width(text, *cap, *weight))
            .fold(0.0, f64::max);
        let height: f64 = self.lines.iter().map(|(_, cap, _)| cap * 1.6).sum();
        let first = self.lines.first().map_or(0.0, |(_, cap, _)| cap * 0.3);
        [width / 2.0 + ROOM, (height - first) / 2.0 + ROOM]
    }

    fn slab(&self, offer: &Offer) -> Slab {
        Slab {
            centre: offer.at,
            half: self.half(),
            turn: offer.turn,
        }
    }

    fn cost(&self, taken: &Taken, offer: &Offer) -> f64 {
        let cost = taken.cost(&self.slab(offer));
        offer.bias
            + if offer.within && cost.is_finite() {
                4.0
            } else {
                cost
            }
    }

    fn draw(&self, scene: &mut Scene, taken: &mut Taken, offer: &Offer) {
        let slab = self.slab(offer);
        let (sin, cos) = libm::sincos(offer.turn.to_radians());
        let put = |x: f64, y: f64| {
            [
                offer.at[0] + x * cos - y * sin,
                offer.at[1] + x * sin + y * cos,
            ]
        };
        let [w, h] = slab.half;
        if taken.cost(&slab) > 0.0 {
            let ring = [put(-w, -h), put(w, -h), put(w, h), put(-w, h)];
            scene.fill(Path::ring(&ring), WHITE);
        }
        let mut y = -h + ROOM;
        for (number, (words, cap, weight)) in self.lines.iter().enumerate() {
            y += if number == 0 { *cap } else { cap * 1.6 };
            let mut text = Text::new(words.clone(), put(0.0, y), *cap)
                .middle()
                .turned(offer.turn);
            text.weight = *weight;
            scene.text(text);
        }
        taken.slab(&slab, weight::NEVER);
    }

    /// Takes the cheapest offer, or the nearest free place round `target` with a leader.
    /// `false` where neither is to be had for `most`.
    fn place(
        &self,
        scene: &mut Scene,
        taken: &mut Taken,
        offers: &[Offer],
        target: Option<Spot>,
        most: f64,
    ) -> bool {
        let mut best: Option<(f64, Offer, bool)> = None;
        for offer in offers {
            let cost = self.cost(taken, offer);
            if cost.is_finite() && best.as_ref().is_none_or(|(least, ..)| cost < *least) {
                best = Some((cost, Offer { ..*offer }, false));
            }
        }
        const DEAR: f64 = 12.0;
        if let Some(target) = target.filter(|_| best.as_ref().is_none_or(|(cost, ..)| *cost > DEAR))
        {
            for ring in 0..40 {
                let radius = 4.0 + 2.5 * f64::from(ring);
                if best.as_ref().is_some_and(|(cost, ..)| *cost < radius * 0.6) {
                    break;
                }
                for spot in fixture::circle(target, 1.0, 24) {
                    let to = [spot[0] - target[0], spot[1] - target[1]];
                    let [w, h] = self.half();
                    // the label's nearest edge, not its middle, goes round the ring
                    let at = [
                        target[0] + to[0] * (radius + w),
                        target[1] + to[1] * (radius + h),
                    ];
                    let offer = Offer {
                        at,
                        turn: 0.0,
                        bias: 3.0 + radius * 0.6,
                        within: false,
                    };
                    let cost = self.cost(taken, &offer);
                    if cost.is_finite() && best.as_ref().is_none_or(|(least, ..)| cost < *least) {
                        best = Some((cost, offer, true));
                    }
                }
            }
        }
        let Some((_, offer, led)) = best.filter(|(cost, ..)| *cost <= most) else {
            return false;
        };
        if let (true, Some(target)) = (led, target) {
            let [w, h] = self.half();
            let near = [
                target[0].clamp(offer.at[0] - w, offer.at[0] + w),
                target[1].clamp(offer.at[1] - h, offer.at[1] + h),
            ];
            if far(near, target) > 2.5 {
                mark::leader(scene, near, target);
                taken.line(&[near, target], weight::HARD);
            }
        }
        self.draw(scene, taken, &offer);
        true
    }
}

fn level(at: Spot, bias: f64) -> Offer {
    Offer {
        at,
        turn: 0.0,
        bias,
        within: false,
    }
}

/// Whatever the place costs.
const ANY: f64 = f64::MAX;

/// Writes all labels and dimensions.
pub fn write(
    scene: &mut Scene,
    taken: &mut Taken,
    sheet: &Sheet,
    plan: &Plan,
    view: &View,
    ledger: &Ledger,
) {
    dimensions(scene, taken, sheet, plan, view);
    points(scene, taken, sheet, plan, view, true);
    for thing in &plan.yard.fixtures {
        name_fixture(scene, taken, sheet, plan, view, ledger, thing);
    }
    routes(scene, taken, sheet, plan, view);
    openings(scene, taken, sheet, plan.yard, view);
    remarks(scene, taken, sheet, plan.yard, view);
    points(scene, taken, sheet, plan, view, false);
    surfaces(scene, taken, sheet, plan.yard, view);
    let caps = sheet.caps();
    for &stand in &plan.yard.stands {
        let at = view.at(stand);
        let label = Label::new(sheet.word("doc-stand"), caps.note, Weight::Regular);
        let [w, h] = label.half();
        let offers = [
            level([at[0], at[1] + 2.2 + h], 0.0),
            level([at[0], at[1] - 2.8 - h], 1.0),
            level([at[0] + 2.8 + w, at[1]], 1.0),
            level([at[0] - 2.8 - w, at[1]], 1.0),
        ];
        label.place(scene, taken, &offers, Some(at), ANY);
    }
}

fn points(
    scene: &mut Scene,
    taken: &mut Taken,
    sheet: &Sheet,
    plan: &Plan,
    view: &View,
    corner: bool,
) {
    let Some(survey) = plan.survey else { return };
    let rings = vec![corners(plan.yard, view)];
    let caps = sheet.caps();
    for point in &survey.points {
        if on_boundary(plan.yard, point.x, point.y) != corner {
            continue;
        }
        let at = view.at(Coord {
            x: point.x,
            y: point.y,
        });
        let cap = if corner { caps.name } else { caps.note };
        let label = Label::new(point.name.clone(), cap, Weight::Bold);
        let [w, h] = label.half();
        let mut offers = Vec::new();
        for ring in [0.6, 2.0, 3.6] {
            for spot in fixture::circle([0.0; 2], 1.0, 16) {
                // so far out that the label clears the point's own ring
                let clear =
                    ((w + 0.8 + ring) / spot[0].abs()).min((h + 0.8 + ring) / spot[1].abs());
                let near = along(at, spot, clear);
                let out = !inside(&rings, near);
                // corners are named outside, on the diagonal; what stands inside, inside
                let diagonal = (spot[0].abs() - spot[1].abs()).abs();
                let bias = ring * 1.5 + diagonal + if out == corner { 0.0 } else { 6.0 };
                offers.push(level(near, bias));
            }
        }
        label.place(scene, taken, &offers, Some(at), ANY);
    }
}

fn dimensions(scene: &mut Scene, taken: &mut Taken, sheet: &Sheet, plan: &Plan, view: &View) {
    let caps = sheet.caps();
    let grow = caps.name / 2.5;
    let ring: Vec<Coord<f64>> = plan.yard.boundary.exterior().coords().copied().collect();
    // one size of figure on a sheet: the smaller where the larger would not stand at every side
    let stands = |side: &[Coord<f64>], cap: f64| {
        let metres = libm::hypot(side[1].x - side[0].x, side[1].y - side[0].y);
        let figure = measure::dimension(metres, sheet);
        face::width(&figure, cap, Weight::Regular) - 2.0 <= metres * view.mm
    };
    let all = ring.windows(2).all(|side| stands(side, caps.name));
    let sizes: &[f64] = if all {
        &[caps.name, caps.note]
    } else {
        &[caps.note]
    };
    for side in ring.windows(2) {
        let metres = libm::hypot(side[1].x - side[0].x, side[1].y - side[0].y);
        let (a, b) = (view.at(side[0]), view.at(side[1]));
        let figure = measure::dimension(metres, sheet);
        // the ring runs anticlockwise as read, so outside is to the right of its way
        let out = right_of(way(a, b));
        let mut best: Option<(f64, Dimension)> = None;
        for &cap in sizes {
            for off in [7.5, 9.5, 12.0, 5.5, 15.0, 18.0] {
                let one = Dimension::new(a, b, out, off * grow.min(1.2), &figure, cap);
                let wide = one.figure.width() + 2.0;
                if wide > one.length() + 4.0 {
                    continue;
                }
                let line = Slab {
                    centre: [
                        (one.ends[0][0] + one.ends[1][0]) / 2.0,
                        (one.ends[0][1] + one.ends[1][1]) / 2.0,
                    ],
                    half: [one.length() / 2.0, 0.4],
                    turn: reading_turn(way(a, b)),
                };
                let lies =
                    taken.cost(&line) + off * 0.3 + if wide > one.length() { 3.0 } else { 0.0 };
                // the figure stands in the middle, or slides along where something is in its way
                for (lie, dear) in [(one.clone(), 0.0), (one.under(), 3.0)] {
                    for share in [0.0, -0.15, 0.15, -0.3, 0.3] {
                        let slid = lie.slid(way(a, b), share * (one.length() - wide).max(0.0));
                        let cost = lies
                            + dear
                            + taken.cost(&slab_of(&slid.figure, 0.4))
                            + f64::abs(share) * 6.0;
                        if cost.is_finite() && best.as_ref().is_none_or(|(least, _)| cost < *least)
                        {
                            best = Some((cost, slid));
                        }
                    }
                }
            }
            if best.is_some() {
                break;
            }
        }
        if let Some((_, one)) = best {
            taken.slab(&slab_of(&one.figure, 0.5), weight::NEVER);
            taken.line(&one.ends, weight::HARD);
            taken.line(&[a, one.ends[0]], weight::LINE);
            taken.line(&[b, one.ends[1]], weight::LINE);
            one.draw(scene);
        }
    }
}

/// The second line of a fixture's label: what keeps the ground round it clear.
fn zone_words(sheet: &Sheet, plan: &Plan, ledger: &Ledger, thing: &Fixture) -> Option<String> {
    if let ground::yard::More::Swing { pivot, .. } = thing.more {
        return Some(sheet.say(msg!(
            "doc-label-swing",
            pivot = measure::length(pivot, sheet)
        )));
    }
    let rule = plan.ground.blocked.iter().find(|blocked| {
        blocked.of == thing.name
            && blocked.why == ground::result::Why::ClearZone
            && blocked.rule.is_some()
    })?;
    let figure = ledger.figure(rule.rule?.0)?;
    let clear = figure.values.first().filter(|_| figure.unit == "m")?;
    Some(sheet.say(msg!(
        "doc-label-clear",
        clear = measure::length(*clear, sheet)
    )))
}

fn name_fixture(
    scene: &mut Scene,
    taken: &mut Taken,
    sheet: &Sheet,
    plan: &Plan,
    view: &View,
    ledger: &Ledger,
    thing: &Fixture,
) {
    let caps = sheet.caps();
    let ring = fixture::laid(thing, view).ring;
    let Some(bounds) = Rect::round(ring.iter().copied()) else {
        return;
    };
    let small = matches!(
        thing.is,
        FixtureKind::Drain
            | FixtureKind::Cover
            | FixtureKind::Hydrant
            | FixtureKind::Post
            | FixtureKind::Lamp
            | FixtureKind::Bench
    );
    let (cap, heavy) = if small {
        (caps.note, Weight::Regular)
    } else {
        (caps.name, Weight::Bold)
    };
    let label = Label::new(thing.name.clone(), cap, heavy)
        .under(zone_words(sheet, plan, ledger, thing), caps.note);
    let [w, h] = label.half();
    let middle = bounds.centre();
    let (bw, bh) = (bounds.w / 2.0 + 1.2, bounds.h / 2.0 + 1.2);
    let mut offers = Vec::new();
    if matches!(
        thing.is,
        FixtureKind::Shed
            | FixtureKind::Building
            | FixtureKind::House
            | FixtureKind::Sandpit
            | FixtureKind::Other
    ) {
        offers.extend(places_within(&ring, bounds, [w, h]));
    }
    for gap in [0.0, 1.5, 3.5] {
        for slide in [0.0, -0.5, 0.5, -1.0, 1.0] {
            let (sx, sy) = (slide * (bw + w) * 0.8, slide * (bh + h) * 0.8);
            let bias = gap * 1.2 + f64::abs(slide) * 2.0;
            offers.push(level([middle[0] + sx, middle[1] - bh - h - gap], bias));
            offers.push(level(
                [middle[0] + sx, middle[1] + bh + h + gap],
                bias + 0.5,
            ));
            offers.push(level(
                [middle[0] + bw + w + gap, middle[1] + sy],
                bias + 1.0,
            ));
            offers.push(level(
                [middle[0] - bw - w - gap, middle[1] + sy],
                bias + 1.0,
            ));
        }
    }
    label.place(scene, taken, &offers, Some(middle), ANY);
}

/// Places at which a label of half-size `half` lies wholly within a ring, the middle of its
/// bounds first: a building round a corner has none there.
fn places_within(ring: &[Spot], bounds: Rect, half: [f64; 2]) -> Vec<Offer> {
    const STEPS: i32 = 4;
    let middle = bounds.centre();
    let rings = vec![ring.to_vec()];
    let mut offers = Vec::new();
    for (x, y) in (-STEPS..=STEPS).flat_map(|x| (-STEPS..=STEPS).map(move |y| (x, y))) {
        let share = |step: i32, span: f64| f64::from(step) / f64::from(STEPS) * span / 2.0;
        let at = [
            middle[0] + share(x, bounds.w),
            middle[1] + share(y, bounds.h),
        ];
        let corners = [
            [-1.0, -1.0],
            [1.0, -1.0],
            [1.0, 1.0],
            [-1.0, 1.0],
            [0.0, -1.0],
            [0.0, 1.0],
        ];
        let fits = corners
            .iter()
            .all(|way| inside(&rings, [at[0] + way[0] * half[0], at[1] + way[1] * half[1]]));
        if fits {
            let off = libm::hypot(at[0] - middle[0], at[1] - middle[1]);
            offers.push(Offer {
                at,
                turn: 0.0,
                bias: -4.0 + 0.02 * off,
                within: true,
            });
        }
    }
    offers
}

fn routes(scene: &mut Scene, taken: &mut Taken, sheet: &Sheet, plan: &Plan, view: &View) {
    let caps = sheet.caps();
    for route in &plan.ground.routes {
        let Some(line) = &route.line else { continue };
        let words = sheet.say(msg!(
            "doc-label-route",
            from = route.from.as_str(),
            to = route.to.as_str(),
            width = measure::reading(route.width, sheet)
        ));
        let places = label_places(line, view);
        for cap in [caps.name, caps.note] {
            let label = Label::new(words.clone(), cap, Weight::Regular);
            let width = label.half()[0] * 2.0;
            let offers: Vec<Offer> = places
                .iter()
                .filter(|(.., length)| *length >= width)
                .enumerate()
                .map(|(number, &(at, to, _))| Offer {
                    at,
                    turn: reading_turn(to),
                    bias: number as f64 * 0.3,
                    within: false,
                })
                .collect();
            let last = cap == caps.note;
            let target = places.first().map(|(at, ..)| *at).filter(|_| last);
            if label.place(scene, taken, &offers, target, if last { ANY } else { 60.0 }) {
                break;
            }
        }
        chevrons(
            scene,
            taken,
            &view.line(line),
            (route.width * view.mm * 0.16).clamp(0.9, 2.6),
        );
    }
}

/// Chevrons along a walk, from its start to its end, where no label stands.
fn chevrons(scene: &mut Scene, taken: &mut Taken, line: &[Spot], size: f64) {
    const PITCH: f64 = 14.0;
    let mut next = PITCH / 2.0;
    for pair in line.windows(2) {
        let (length, to) = (far(pair[0], pair[1]), way(pair[0], pair[1]));
        while next < length {
            let tip = along(pair[0], to, next);
            let slab = Slab {
                centre: along(tip, to, -size / 2.0),
                half: [size * 1.2, size * 1.2],
                turn: 0.0,
            };
            if taken.cost(&slab) < f64::from(weight::LINE) {
                mark::chevron(scene, tip, to, size, Stroke::solid(pen::ZONE));
                taken.slab(&slab, weight::LINE);
            }
            next += PITCH;
        }
        next -= length;
    }
}

fn openings(scene: &mut Scene, taken: &mut Taken, sheet: &Sheet, yard: &Yard, view: &View) {
    let doors = yard
        .doors
        .iter()
        .map(|door| ("doc-label-door", &door.name, door.jambs));
    let gates = yard
        .gates
        .iter()
        .map(|gate| ("doc-label-gate", &gate.name, gate.posts));
    let rings = vec![corners(yard, view)];
    for (key, name, ends) in doors.chain(gates) {
        let caps = sheet.caps();
        let width = libm::hypot(ends[1].x - ends[0].x, ends[1].y - ends[0].y);
        let label = Label::new(
            sheet.say(note::Message {
                key,
                facts: vec![("name", name.into())],
            }),
            caps.note,
            Weight::Bold,
        )
        .under(
            Some(sheet.say(msg!(
                "doc-label-opening",
                width = measure::dimension(width, sheet)
            ))),
            caps.note,
        );
        let spots = ends.map(|end| view.at(end));
        let middle = along(
            spots[0],
            way(spots[0], spots[1]),
            far(spots[0], spots[1]) / 2.0,
        );
        let mut into = right_of(way(spots[0], spots[1]));
        if !inside(&rings, along(middle, into, 0.5)) {
            into = [-into[0], -into[1]];
        }
        let [w, h] = label.half();
        let leaf = far(spots[0], spots[1]);
        let mut offers = Vec::new();
        for deep in [1.2, leaf + 1.0, leaf + 4.0] {
            for side in [0.0, 0.9, -0.9, 1.6, -1.6] {
                let along_wall = way(spots[0], spots[1]);
                let reach = side * (leaf / 2.0 + w * along_wall[0].abs() + h * along_wall[1].abs());
                let depth = deep + w * into[0].abs() + h * into[1].abs();
                offers.push(level(
                    along(along(middle, into, depth), along_wall, reach),
                    deep * 0.25 + f64::abs(side) * 0.6,
                ));
            }
        }
        label.place(scene, taken, &offers, Some(middle), ANY);
    }
}

fn remarks(scene: &mut Scene, taken: &mut Taken, sheet: &Sheet, yard: &Yard, view: &View) {
    let caps = sheet.caps();
    for remark in &yard.remarks {
        let key = match remark.is {
            RemarkKind::Puddle => "doc-remark-puddle",
            RemarkKind::OldPaint => "doc-remark-old-paint",
            RemarkKind::TrikePath => "doc-remark-trike-path",
            RemarkKind::Slope => "doc-remark-slope",
        };
        let label = Label::new(sheet.word(key), caps.note, Weight::Regular)
            .under(remark.says.clone(), caps.note);
        let rings = view.rings(&remark.outline);
        let offers = within(&rings, 1.0);
        let target = offers.first().map(|offer| offer.at);
        label.place(scene, taken, &offers, target, ANY);
    }
}

/// Places spread over a polygon, the middle first.
fn within(rings: &super::hatch::Rings, bias: f64) -> Vec<Offer> {
    let Some(bounds) = Rect::round(rings.iter().flatten().copied()) else {
        return Vec::new();
    };
    let mut offers = Vec::new();
    for i in 0..11 {
        for j in 0..11 {
            let share = [f64::from(i) / 10.0, f64::from(j) / 10.0];
            let at = [
                bounds.x + bounds.w * share[0],
                bounds.y + bounds.h * share[1],
            ];
            if inside(rings, at) {
                offers.push(level(at, bias + 4.0 * far(share, [0.5, 0.5])));
            }
        }
    }
    offers.sort_by(|a, b| a.bias.total_cmp(&b.bias));
    offers
}

/// The word of a surface.
pub fn surface_key(is: SurfaceKind) -> &'static str {
    match is {
        SurfaceKind::Asphalt => "doc-surface-asphalt",
        SurfaceKind::Concrete => "doc-surface-concrete",
        SurfaceKind::Paving => "doc-surface-paving",
        SurfaceKind::OldPaint => "doc-surface-old-paint",
        SurfaceKind::Sealer => "doc-surface-sealer",
        SurfaceKind::Rubber => "doc-surface-rubber",
        SurfaceKind::Mulch => "doc-surface-mulch",
        SurfaceKind::Carpet => "doc-surface-carpet",
        SurfaceKind::LooseFill => "doc-surface-loose-fill",
        SurfaceKind::Sand => "doc-surface-sand",
        SurfaceKind::Grass => "doc-surface-grass",
        SurfaceKind::Soil => "doc-surface-soil",
        SurfaceKind::Wood => "doc-surface-wood",
        SurfaceKind::Steel => "doc-surface-steel",
        SurfaceKind::Tactile => "doc-surface-tactile",
    }
}

fn surfaces(scene: &mut Scene, taken: &mut Taken, sheet: &Sheet, yard: &Yard, view: &View) {
    let caps = sheet.caps();
    for (number, surface) in yard.surfaces.iter().enumerate() {
        // what lies on top of it is another surface
        let above = yard.surfaces.iter().skip(number + 1);
        let seen = above.fold(
            MultiPolygon::new(vec![surface.outline.clone()]),
            |seen, above| seen.difference(&above.outline),
        );
        let rings: Rings = seen.iter().flat_map(|piece| view.rings(piece)).collect();
        let label = Label::new(
            sheet.word(surface_key(surface.is)),
            caps.note,
            Weight::Regular,
        );
        label.place(scene, taken, &within(&rings, 0.0), None, 45.0);
    }
}
