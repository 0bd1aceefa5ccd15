//! From shapes to a figure: what is a cell, a lane, a waiting spot, and what is paint.

use std::sync::Arc;

use geo::{
    Area, Centroid, Contains, Coord, InteriorPoint, MapCoords, MultiPolygon, Point, Polygon, coord,
};
use i_overlay::core::fill_rule::FillRule;
use kurbo::Affine;
use ledger::Ledger;
use marking::{Ground, LaneKind, Takes};
use note::{Fact, Note, Noted, Place, any_error, msg};

use crate::advice;
use crate::colour::{Ink, Inks};
use crate::family::{Bind, Drawn, Layer, Track};
use crate::figures::{
    BEHIND, CORRIDOR, FLAT, GAP, RUN_OUT_OTHER, RUN_OUT_RUN, RUN_UP, SWAY, WAIT_ROUND,
};
use crate::ground::Room;
use crate::lane::middle;
use crate::name::{Kind, Word};
use crate::order;
use crate::outline::{filled, stroked};
use crate::svg::{self, Called, Shape, Taken};

/// A cell as it is drawn.
#[derive(Clone, Debug)]
pub struct Spot {
    /// Its name.
    pub id: String,
    /// Its outline, holes filled.
    pub outline: Polygon<f64>,
    /// Its radius, where it is a disc.
    pub disc: Option<f64>,
    /// The aim point.
    pub centre: Coord<f64>,
    /// What it takes.
    pub takes: Takes,
    /// Whether a route may start here.
    pub start: bool,
    /// Whether a route may end here.
    pub end: bool,
    /// Whether free ground lies before it.
    pub run_up: bool,
    /// Numbers of the cells that may follow.
    pub next: Option<Vec<usize>>,
    /// The same as the drawing lists it, until it is read.
    pub says_next: Option<(String, Place)>,
    /// Where its name stands.
    pub at: Place,
}

/// Reads a drawing. `name` is the figure's name in files, `file` the drawing's; the curves
/// are flattened to `look.flat` of the ledger, in which the other limits stand too.
///
/// `None` where an error is among the notes; each of them points into `text`.
pub fn read(
    name: &str,
    file: &Arc<str>,
    text: &str,
    ground: Ground,
    ledger: &Ledger,
) -> Noted<Option<Drawn>> {
    let mut notes = Vec::new();
    let drawn = svg::take(file, text, ledger.number(FLAT) / 2.0, &mut notes)
        .and_then(|taken| figure(name, taken, ground, ledger, &mut notes));
    notes.sort_by(|a, b| a.at.cmp(&b.at).then(a.what.key.cmp(b.what.key)));
    Noted {
        value: drawn.filter(|_| !any_error(&notes)),
        notes,
    }
}

fn figure(
    name: &str,
    taken: Taken,
    ground: Ground,
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) -> Option<Drawn> {
    let flat = ledger.number(FLAT) / 2.0;
    let Taken {
        root,
        mut shapes,
        groups,
        sayings,
    } = taken;
    gaits(&sayings, &root, notes);
    name_groups(&mut shapes, &groups, flat);
    let mut spots = Vec::new();
    let mut waits = Vec::new();
    let mut named = 0;
    for (number, shape) in shapes.iter().enumerate() {
        let Some(called) = &shape.called else {
            continue;
        };
        named += 1;
        words(called, notes);
        match called.meaning.kind {
            Kind::Cell => spots.extend(spot(shape, called, flat, notes).map(|spot| (number, spot))),
            Kind::Wait => waits.push((number, middle_of(shape, flat))),
            Kind::Lane => {}
        }
    }
    let (numbers, mut spots) = sorted(spots);
    twice(&spots, notes);
    let lanes: Vec<(usize, Track)> = shapes
        .iter()
        .enumerate()
        .filter_map(|(number, shape)| Some((number, track(shape, flat, ledger, notes)?)))
        .collect();
    if named == 0 {
        notes.push(Note::error(root, msg!("drawn-nothing")).mend(msg!("drawn-nothing-mend")));
        return None;
    }
    if spots.is_empty() && lanes.is_empty() {
        if !any_error(notes) {
            notes.push(Note::error(root, msg!("drawn-nothing")).mend(msg!("drawn-nothing-mend")));
        }
        return None;
    }
    starts_and_ends(&mut spots, sayings.free, notes);
    if sayings.free {
        spots.iter_mut().for_each(|spot| spot.next = None);
    } else {
        order::chain(&mut spots);
    }
    order::stated(&mut spots, notes);
    if any_error(notes) {
        return None;
    }

    // the figure's origin is its first start
    let start = spots.iter().find(|spot| spot.start).map(|spot| spot.centre);
    let begin = || {
        lanes
            .first()
            .and_then(|(_, lane)| lane.line.coords().next().copied())
    };
    let origin = start.or_else(begin).unwrap_or_default();
    let shift = |at: Coord<f64>| at - origin;
    for spot in &mut spots {
        spot.centre = shift(spot.centre);
        spot.outline = spot.outline.map_coords(shift);
    }
    let lanes: Vec<(usize, Track)> = lanes
        .into_iter()
        .map(|(number, mut lane)| {
            lane.line = lane.line.map_coords(shift);
            (number, lane)
        })
        .collect();
    let waits: Vec<(usize, Coord<f64>)> = waits
        .into_iter()
        .map(|(number, at)| (number, shift(at)))
        .collect();
    for shape in &mut shapes {
        shape.to = shape
            .to
            .then_translate(kurbo::Vec2::new(-origin.x, -origin.y));
        for clip in &mut shape.clips {
            *clip = Arc::new(clip.map_coords(shift));
        }
    }

    let homes = homes(
        &spots,
        &numbers,
        &waits,
        &shapes,
        &groups,
        ledger.number(GAP),
        flat,
    );
    let mut inks = Inks::default();
    let mut layers = Vec::new();
    for (number, shape) in shapes.iter().enumerate() {
        layers.extend(layers_of(number, shape, &homes, &mut inks, flat));
    }
    inks.told(ground, ledger, notes);
    let metres = |key| ledger.number(key);
    let drawn = Drawn::new(
        name,
        spots,
        lanes.into_iter().map(|(_, lane)| lane).collect(),
        waits.into_iter().map(|(_, at)| at).collect(),
        layers,
        Room {
            sway: metres(SWAY),
            behind: metres(BEHIND),
            wait: metres(WAIT_ROUND),
            run_up: metres(RUN_UP),
            run_out_run: metres(RUN_OUT_RUN),
            run_out_other: metres(RUN_OUT_OTHER),
        },
        &sayings,
        ledger,
    );
    advice::advise(&drawn, &shapes, &root, ledger, notes);
    Some(drawn)
}

/// A named group whose shapes have no name of their own: the largest of them is meant.
fn name_groups(shapes: &mut [Shape], groups: &[Called], flat: f64) {
    for (number, called) in groups.iter().enumerate() {
        let members = || {
            (0..)
                .zip(shapes.iter())
                .filter(|(_, shape)| shape.group == Some(number))
        };
        if members().any(|(_, shape)| shape.called.is_some()) {
            continue;
        }
        let size = |shape: &Shape| match called.meaning.kind {
            Kind::Lane => shape.stroke.as_ref().map_or(0.0, |_| {
                use kurbo::Shape as _;
                (shape.to * shape.path.clone()).perimeter(flat)
            }),
            _ => filled(&shape.path, shape.to, FillRule::NonZero, flat).unsigned_area(),
        };
        // of equals the first drawn
        let largest = members()
            .map(|(at, shape)| (at, size(shape)))
            .reduce(|best, one| if one.1 > best.1 { one } else { best });
        if let Some(shape) = largest.and_then(|(at, _): (usize, f64)| shapes.get_mut(at)) {
            shape.called = Some(called.clone());
        }
    }
}

fn words(called: &Called, notes: &mut Vec<Note>) {
    let known = called.meaning.kind.words();
    for odd in &called.meaning.odd {
        let near = known
            .iter()
            .map(|(word, _)| (strsim::damerau_levenshtein(word, odd), *word))
            .min()
            .filter(|(far, _)| *far <= 2);
        let all: Vec<String> = known.iter().map(|(word, _)| (*word).to_owned()).collect();
        let note = Note::error(called.at.clone(), msg!("drawn-word", word = odd))
            .expected(msg!("drawn-word-expected", words = all));
        notes.push(match near {
            Some((_, near)) => note.mend(msg!("drawn-word-near", near = near)),
            None => note.mend(msg!("drawn-word-mend")),
        });
    }
    if called.meaning.name.is_empty() {
        notes.push(
            Note::error(called.at.clone(), msg!("drawn-nameless"))
                .mend(msg!("drawn-nameless-mend")),
        );
    }
}

fn spot(shape: &Shape, called: &Called, flat: f64, notes: &mut Vec<Note>) -> Option<Spot> {
    let id = &called.meaning.name;
    let pieces = filled(&shape.path, shape.to, shape.rule, flat).0;
    let mut outer: Vec<Polygon<f64>> = pieces
        .into_iter()
        .map(|piece| Polygon::new(piece.exterior().clone(), Vec::new()))
        .collect();
    outer.sort_by(|a, b| b.unsigned_area().total_cmp(&a.unsigned_area()));
    let mut outer = outer.into_iter();
    let Some(outline) = outer.next() else {
        notes.push(
            Note::error(shape.at.clone(), msg!("drawn-cell-flat", cell = id))
                .mend(msg!("drawn-cell-flat-mend")),
        );
        return None;
    };
    // what lies inside the largest piece is its own hole or numeral
    if outer.any(|other| !outline.contains(&other)) {
        notes.push(
            Note::warning(shape.at.clone(), msg!("drawn-cell-pieces", cell = id))
                .mend(msg!("drawn-cell-pieces-mend")),
        );
    }
    let disc = disc(&outline, flat);
    let middle = outline.centroid().filter(|at| outline.contains(at));
    let centre: Point<f64> = disc
        .map(|(at, _)| Point(at))
        .or(middle)
        .or_else(|| outline.interior_point())?;
    Some(Spot {
        id: id.clone(),
        outline,
        disc: disc.map(|(_, radius)| radius),
        centre: centre.0,
        takes: called.meaning.takes().unwrap_or(Takes::Either),
        start: called.meaning.says(Word::Start),
        end: called.meaning.says(Word::End),
        run_up: called.meaning.says(Word::RunUp),
        next: Some(Vec::new()),
        says_next: called.next.clone(),
        at: called.at.clone(),
    })
}

/// Centre and radius, where every corner and the middle of every side lies on one circle.
fn disc(outline: &Polygon<f64>, flat: f64) -> Option<(Coord<f64>, f64)> {
    /// How far a circle of four Beziers is off a circle, as a share of its radius.
    const BEZIER: f64 = 5e-4;
    let centre = outline.centroid()?.0;
    let far = |at: Coord<f64>| libm::hypot(at.x - centre.x, at.y - centre.y);
    let corners: Vec<f64> = outline.exterior().coords().map(|at| far(*at)).collect();
    let count = corners.len() as f64;
    let mean = corners.iter().sum::<f64>() / count;
    let off = flat + BEZIER * mean;
    let on = corners.iter().all(|radius| (radius - mean).abs() <= off)
        && outline
            .exterior()
            .lines()
            .all(|side| far((side.start + side.end) / 2.0) >= mean - 2.0 * off);
    (on && count > 8.0).then_some((centre, mean))
}

fn middle_of(shape: &Shape, flat: f64) -> Coord<f64> {
    use kurbo::Shape as _;
    let area = filled(&shape.path, shape.to, FillRule::NonZero, flat);
    match area.centroid() {
        Some(at) => at.0,
        None => {
            let middle = (shape.to * shape.path.clone()).bounding_box().center();
            coord! { x: middle.x, y: middle.y }
        }
    }
}

fn sorted(spots: Vec<(usize, Spot)>) -> (Vec<usize>, Vec<Spot>) {
    let mut only: Vec<Spot> = spots.iter().map(|(_, spot)| spot.clone()).collect();
    order::sort(&mut only);
    let number = |spot: &Spot| {
        let mut all = spots.iter();
        all.find(|(_, known)| known.at == spot.at && known.centre == spot.centre)
            .map_or(usize::MAX, |(number, _)| *number)
    };
    (only.iter().map(number).collect(), only)
}

fn twice(spots: &[Spot], notes: &mut Vec<Note>) {
    for (at, spot) in spots.iter().enumerate() {
        let first = spots.iter().take(at).find(|other| other.id == spot.id);
        if let Some(first) = first {
            notes.push(
                Note::error(spot.at.clone(), msg!("drawn-twice", cell = &spot.id))
                    .mend(msg!("drawn-twice-mend"))
                    .also(first.at.clone()),
            );
        }
    }
}

fn track(shape: &Shape, flat: f64, ledger: &Ledger, notes: &mut Vec<Note>) -> Option<Track> {
    let called = shape.called.as_ref()?;
    if called.meaning.kind != Kind::Lane {
        return None;
    }
    let lane = &called.meaning.name;
    let [a, b, c, d, ..] = shape.to.as_coeffs();
    let size = libm::sqrt((a * d - b * c).abs());
    let width = shape.stroke.as_ref().map(|(_, ribbon)| ribbon.width * size);
    let Some(width) = width.filter(|width| *width > 0.0) else {
        notes.push(
            Note::error(shape.at.clone(), msg!("drawn-lane-width", lane = lane))
                .mend(msg!("drawn-lane-width-mend")),
        );
        return None;
    };
    let Some(middle) = middle(&(shape.to * shape.path.clone()), flat) else {
        notes.push(
            Note::error(shape.at.clone(), msg!("drawn-lane-flat", lane = lane))
                .mend(msg!("drawn-lane-flat-mend")),
        );
        return None;
    };
    if middle.broken {
        notes.push(
            Note::warning(shape.at.clone(), msg!("drawn-lane-broken", lane = lane))
                .mend(msg!("drawn-lane-broken-mend")),
        );
    }
    let kind = if called.meaning.says(Word::Corridor) {
        LaneKind::Corridor
    } else if called.meaning.says(Word::Line) || width < ledger.number(CORRIDOR) {
        LaneKind::Line
    } else {
        LaneKind::Corridor
    };
    Some(Track {
        id: lane.clone(),
        kind,
        line: middle.line,
        width,
        pieces: middle.pieces,
        sharpest: middle.sharpest,
        at: shape.at.clone(),
    })
}

/// Where nothing says where a route begins, the first cell is taken; where nothing says
/// where it ends, every landing may end it, as in the house's own families.
fn starts_and_ends(spots: &mut [Spot], free: bool, notes: &mut Vec<Note>) {
    if spots.is_empty() {
        return;
    }
    if !spots.iter().any(|spot| spot.start)
        && let Some(first) = spots.first_mut()
    {
        first.start = true;
        notes.push(
            Note::advice(first.at.clone(), msg!("drawn-no-start", cell = &first.id))
                .mend(msg!("drawn-no-start-mend", cell = &first.id)),
        );
    }
    if !spots.iter().any(|spot| spot.end) {
        let only = spots.len() == 1;
        for spot in spots {
            spot.end = !spot.start || free || only;
        }
    }
}

/// Where paint is at home: with which middle it moves.
struct Home {
    /// The shape that is named, by its number.
    shape: usize,
    /// The group that bears the name.
    group: Option<usize>,
    centre: Coord<f64>,
    /// The outline and a little more.
    reach: MultiPolygon<f64>,
    area: f64,
}

fn homes(
    spots: &[Spot],
    numbers: &[usize],
    waits: &[(usize, Coord<f64>)],
    shapes: &[Shape],
    groups: &[Called],
    gap: f64,
    flat: f64,
) -> Vec<Home> {
    use geo::Buffer;
    let of = |number: usize, centre: Coord<f64>, outline: MultiPolygon<f64>| {
        let shape = shapes.get(number);
        let group = shape.and_then(|shape| {
            let own = shape.group?;
            let bears = groups.get(own)?.at == shape.called.as_ref()?.at;
            bears.then_some(own)
        });
        Home {
            shape: number,
            group,
            centre,
            area: outline.unsigned_area(),
            reach: outline.buffer(gap / 2.0),
        }
    };
    let cells = spots.iter().zip(numbers).map(|(spot, number)| {
        of(
            *number,
            spot.centre,
            MultiPolygon(vec![spot.outline.clone()]),
        )
    });
    let waiting = waits.iter().map(|(number, at)| {
        let outline = shapes
            .get(*number)
            .map_or(MultiPolygon(Vec::new()), |shape| {
                filled(&shape.path, shape.to, FillRule::NonZero, flat)
            });
        of(*number, *at, outline)
    });
    cells.chain(waiting).collect()
}

fn layers_of(
    number: usize,
    shape: &Shape,
    homes: &[Home],
    inks: &mut Inks,
    flat: f64,
) -> Vec<Layer> {
    let painted = shape
        .called
        .as_ref()
        .is_none_or(|called| called.meaning.says(Word::Paint));
    if !painted {
        return Vec::new();
    }
    let cut = |mut area: MultiPolygon<f64>| {
        use geo::BooleanOps;
        for clip in &shape.clips {
            area = area.intersection(clip.as_ref());
        }
        area
    };
    let bind = |area: &MultiPolygon<f64>| {
        let own = homes
            .iter()
            .find(|home| home.shape == number || home.group.is_some() && home.group == shape.group);
        let inside = || {
            let holds = |home: &&Home| home.reach.contains(area);
            let all = homes.iter().filter(holds);
            all.min_by(|a, b| a.area.total_cmp(&b.area))
        };
        own.or_else(inside)
            .map_or(Bind::Whole, |home| Bind::With(home.centre))
    };
    let mut layers = Vec::new();
    let mut put = |ink: Ink, area: MultiPolygon<f64>, grow: Option<_>| {
        if !area.0.is_empty() {
            layers.push(Layer {
                ink,
                bind: bind(&area),
                area,
                grow,
                at: shape.at.clone(),
            });
        }
    };
    if let Some(stated) = shape.fill {
        let ink = inks.of(stated, &shape.at);
        put(
            ink,
            cut(filled(&shape.path, shape.to, shape.rule, flat)),
            None,
        );
    }
    if let Some((stated, ribbon)) = &shape.stroke {
        let ink = inks.of(*stated, &shape.at);
        let area = cut(stroked(&shape.path, shape.to, ribbon, flat));
        let grow = (
            shape.path.clone(),
            shape.to,
            ribbon.clone(),
            shape.clips.clone(),
        );
        put(ink, area, Some(grow));
    }
    layers
}

fn gaits(sayings: &svg::Sayings, root: &Place, notes: &mut Vec<Note>) {
    let known = crate::family::GAITS;
    for word in sayings.gaits.iter().flatten() {
        if !known.contains(&word.as_str()) {
            let all: Vec<String> = known.iter().map(|gait| (*gait).to_owned()).collect();
            notes.push(
                Note::error(root.clone(), msg!("drawn-gait", word = word))
                    .expected(msg!("drawn-gait-expected", gaits = Fact::Names(all))),
            );
        }
    }
}

/// A frame scaled about the origin.
pub fn scaled(to: Affine, by: f64) -> Affine {
    Affine::scale(by) * to
}
