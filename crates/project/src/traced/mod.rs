//! A yard traced on an open map becomes a survey to start from.
//!
//! In comes GeoJSON in degrees; out goes the text of a `survey.toml` whose points are
//! `known`, each with the sigma of a traced point, to be taped over later. What the map
//! does not record is assumed so that it errs to safety, and every assumption is told, in
//! a note and in the file. Whose map it is stays in the first line.

mod assumed;
mod geojson;
mod text;

use std::sync::Arc;

use geo::{
    Area, BooleanOps, Centroid, Contains, Coord, Distance, Euclidean, LineString, Point, Polygon,
    Validation,
};
use ledger::Ledger;
use note::{Fact, Message, Note, Noted, Place, msg};
use words::Language;

use crate::globe::{Degrees, Plane};
use assumed::Thing;
use geojson::{Feature, Role, Shape};

pub use assumed::FIGURES;

/// A survey made of a map.
#[derive(Clone, Debug, PartialEq)]
pub struct Traced {
    /// The whole text of `survey.toml`.
    pub survey: String,
    /// The place at (0, 0): the yard's middle; x runs east and y north.
    pub origin: Degrees,
    /// Square metres of the yard.
    pub area: f64,
    /// Whose map it is.
    pub attribution: Option<String>,
}

/// What was noticed that the sheet must say for as long as nobody has measured it.
const ASSUMED: [&str; 5] = [
    "traced-sides",
    "traced-surface",
    "traced-sigma",
    "traced-footprints",
    "traced-gates",
];

/// Metres; a wider outline is no yard.
const WIDEST: f64 = 2_000.0;
/// Square metres; a smaller outline is no yard.
const LEAST: f64 = 10.0;
/// Metres between two places of a map that are meant to be one.
const SAME: f64 = 0.05;
/// Metres that a barrier, a gate or a fixture may lie off the boundary and still belong to it.
const NEAR: f64 = 0.5;
/// Metres that a gate may lie off: people draw it where the path crosses.
const GATE_NEAR: f64 = 2.0;
/// Square metres; less of a building or a surface within the yard is a slip of the drawing.
const SLIVER: f64 = 1.0;

/// Makes a survey of the yard in a GeoJSON text; `file` is the name for notes.
pub fn from_outline(
    file: &str,
    text: &str,
    ledger: &Ledger,
    language: Language,
) -> Noted<Option<Traced>> {
    let mut notes = Vec::new();
    let value = traced(&Arc::from(file), text, ledger, language, &mut notes);
    Noted { value, notes }
}

/// All that is taken from the map, metres, points by name.
#[derive(Default)]
struct Yard {
    points: Vec<(String, Coord<f64>)>,
    boundary: Vec<String>,
    clockwise: bool,
    /// Side from, to, and what it is.
    edges: Vec<(String, String, &'static str)>,
    /// Kind and outline.
    surfaces: Vec<(&'static str, Vec<String>)>,
    /// Name, kind and outline of a building.
    buildings: Vec<(String, Vec<String>)>,
    /// Name, kind, point and radius.
    fixtures: Vec<(String, &'static str, String, f64)>,
    /// Name and posts.
    gates: Vec<(String, String, String)>,
}

fn traced(
    file: &Arc<str>,
    text: &str,
    ledger: &Ledger,
    language: Language,
    notes: &mut Vec<Note>,
) -> Option<Traced> {
    let root: serde_json::Value = match serde_json::from_str(text.trim_start_matches('\u{feff}')) {
        Ok(root) => root,
        Err(fault) => {
            let at = spot(text, fault.line(), fault.column());
            let what = msg!("traced-not-json", says = fault.to_string());
            notes.push(
                Note::error(Place::new(file, at, at + 1), what).expected(msg!("traced-want-yard")),
            );
            return None;
        }
    };
    let whole = || Place::whole(file);
    let (features, odd) = geojson::features(&root);
    if odd > 0 {
        notes.push(
            Note::warning(whole(), msg!("traced-odd", count = odd))
                .expected(msg!("traced-want-degrees")),
        );
    }
    let Some((number, rings)) = yard_of(&features) else {
        notes.push(
            Note::error(whole(), msg!("traced-no-yard", file = file))
                .expected(msg!("traced-want-yard")),
        );
        return None;
    };
    let origin = middle(rings)?;
    let Some(plane) = Plane::at(origin) else {
        notes.push(Note::error(whole(), msg!("traced-pole")));
        return None;
    };
    let metres = |at: &Degrees| {
        let [x, y] = plane.metres(*at);
        Coord {
            x: millimetre(x),
            y: millimetre(y),
        }
    };
    let ring = cleaned(rings.first()?.iter().map(metres).collect());
    let polygon = Polygon::new(LineString::new(ring.clone()), Vec::new());
    if !sound(&polygon, file, notes) {
        return None;
    }
    if rings.len() > 1 {
        notes.push(Note::warning(
            whole(),
            msg!("traced-holes", count = rings.len() - 1),
        ));
    }

    let mut yard = Yard {
        clockwise: polygon.signed_area() < 0.0,
        ..Yard::default()
    };
    let letters = ring.len() <= 26;
    for (at, corner) in ring.iter().enumerate() {
        let name = if letters {
            char::from(b'A' + at as u8).to_string()
        } else {
            format!("P{}", at + 1)
        };
        yard.points.push((name.clone(), *corner));
        yard.boundary.push(name);
    }
    let others = || {
        features
            .iter()
            .enumerate()
            .filter(move |(at, _)| *at != number)
            .map(|(_, one)| one)
    };
    edges(
        &features[number],
        others(),
        &ring,
        &metres,
        &mut yard,
        &whole(),
        notes,
    );
    areas(others(), &polygon, &metres, &mut yard);
    things(
        others(),
        &polygon,
        &metres,
        ledger,
        &mut yard,
        &whole(),
        notes,
    );
    notes.push(Note::advice(whole(), msg!("traced-surface")).mend(msg!("traced-surface-mend")));
    let sigma = ledger.number(assumed::SIGMA);
    notes.push(
        Note::advice(whole(), msg!("traced-sigma", sigma = Fact::Length(sigma)))
            .mend(msg!("traced-tape")),
    );
    let attribution = geojson::attribution(&root);
    let area = polygon.unsigned_area();
    let assumed: Vec<&Message> = notes
        .iter()
        .map(|note| &note.what)
        .filter(|what| ASSUMED.contains(&what.key))
        .collect();
    let credit = attribution.as_deref();
    let survey = text::survey(&yard, origin, credit, &assumed, sigma, language);
    Some(Traced {
        survey,
        origin,
        area,
        attribution,
    })
}

/// The number and the rings of the yard: the largest that is said to be one, or the
/// largest polygon where none is.
fn yard_of(features: &[Feature]) -> Option<(usize, &[Vec<Degrees>])> {
    let polygons = || {
        features
            .iter()
            .enumerate()
            .filter_map(|(at, feature)| match &feature.shape {
                Shape::Polygon(rings) => Some((at, feature.role, rings.as_slice())),
                _ => None,
            })
    };
    let largest = |wanted: Option<Role>| {
        polygons()
            .filter(|(_, role, _)| *role == wanted)
            .max_by(|a, b| size(a.2).total_cmp(&size(b.2)).then(b.0.cmp(&a.0)))
            .map(|(at, _, rings)| (at, rings))
    };
    largest(Some(Role::Yard)).or_else(|| largest(None))
}

/// In square degrees, to compare with.
fn size(rings: &[Vec<Degrees>]) -> f64 {
    rings.first().map_or(0.0, |ring| flat(ring).unsigned_area())
}

fn flat(ring: &[Degrees]) -> Polygon<f64> {
    // About the first corner, so that a yard on the date line stays in one piece.
    let first = ring.first().map_or(0.0, |at| at.longitude);
    let turn = |longitude: f64| {
        let turn = longitude - first;
        turn - 360.0 * (turn / 360.0).round()
    };
    let corners = ring.iter().map(|at| Coord {
        x: turn(at.longitude),
        y: at.latitude,
    });
    Polygon::new(LineString::new(corners.collect()), Vec::new())
}

/// The middle of the outer ring, to 1e-6 degrees, some 0.1 m.
fn middle(rings: &[Vec<Degrees>]) -> Option<Degrees> {
    let ring = rings.first()?;
    let centre = flat(ring).centroid()?;
    let longitude = centre.x() + ring.first()?.longitude;
    let round = |degrees: f64| (degrees * 1e6).round() / 1e6;
    Some(Degrees {
        latitude: round(centre.y()),
        longitude: round(longitude - 360.0 * (longitude / 360.0).round()),
    })
}

fn millimetre(value: f64) -> f64 {
    (value * 1e3).round() / 1e3 + 0.0
}

/// A ring without its repeated end and without corners that fall on one another.
fn cleaned(mut ring: Vec<Coord<f64>>) -> Vec<Coord<f64>> {
    ring.dedup_by(|later, earlier| apart(*later, *earlier) < SAME);
    while ring.len() > 1 && apart(ring[0], ring[ring.len() - 1]) < SAME {
        ring.pop();
    }
    ring
}

fn apart(a: Coord<f64>, b: Coord<f64>) -> f64 {
    libm::hypot(a.x - b.x, a.y - b.y)
}

fn sound(polygon: &Polygon<f64>, file: &Arc<str>, notes: &mut Vec<Note>) -> bool {
    let at = || Place::whole(file);
    let corners = &polygon.exterior().0;
    let reach = corners
        .iter()
        .map(|corner| libm::hypot(corner.x, corner.y))
        .fold(0.0, f64::max);
    let area = polygon.unsigned_area();
    let note = if reach > WIDEST / 2.0 {
        Note::error(
            at(),
            msg!(
                "traced-too-wide",
                reach = Fact::Length(reach.min(unit::LONGEST))
            ),
        )
        .expected(msg!(
            "traced-want-width",
            width = Fact::Length(WIDEST / 2.0)
        ))
    } else if area < LEAST {
        Note::error(at(), msg!("traced-too-small", area = Fact::Area(area)))
            .expected(msg!("traced-want-yard"))
    } else if !polygon.is_valid() {
        Note::error(at(), msg!("traced-crosses")).mend(msg!("traced-redraw"))
    } else {
        return true;
    };
    notes.push(note);
    false
}

impl Yard {
    /// The name of a place: that of a point already there, or the next of a stem.
    fn point(&mut self, at: Coord<f64>, stem: &str) -> String {
        if let Some((name, _)) = self
            .points
            .iter()
            .find(|(_, known)| apart(*known, at) < SAME)
        {
            return name.clone();
        }
        let taken = self.points.iter().filter(|(name, _)| {
            name.strip_prefix(stem)
                .is_some_and(|rest| rest.parse::<u32>().is_ok())
        });
        let name = format!("{stem}{}", taken.count() + 1);
        self.points.push((name.clone(), at));
        name
    }

    fn outline(&mut self, polygon: &Polygon<f64>, stem: &str) -> Vec<String> {
        let round = |at: &Coord<f64>| Coord {
            x: millimetre(at.x),
            y: millimetre(at.y),
        };
        let ring = cleaned(polygon.exterior().0.iter().map(round).collect());
        let mut names: Vec<String> = ring.into_iter().map(|at| self.point(at, stem)).collect();
        names.dedup();
        names
    }

    /// `slide`, or `slide-2` where there is one already.
    fn name(&self, kind: &str) -> String {
        let like = |name: &str| {
            name == kind
                || name
                    .strip_prefix(kind)
                    .is_some_and(|rest| rest.starts_with('-'))
        };
        let fixtures = self.fixtures.iter().map(|(name, ..)| name);
        let others = self
            .buildings
            .iter()
            .map(|(name, _)| name)
            .chain(self.gates.iter().map(|(name, ..)| name));
        match fixtures.chain(others).filter(|name| like(name)).count() {
            0 => kind.to_owned(),
            taken => format!("{kind}-{}", taken + 1),
        }
    }
}

/// Sides that a barrier runs along for the whole of their length, else what the yard's own
/// outline is said to be.
fn edges<'a>(
    own: &Feature,
    others: impl Iterator<Item = &'a Feature>,
    ring: &[Coord<f64>],
    metres: &impl Fn(&Degrees) -> Coord<f64>,
    yard: &mut Yard,
    whole: &Place,
    notes: &mut Vec<Note>,
) {
    let barriers: Vec<(&'static str, LineString<f64>)> = others
        .filter(|feature| feature.role == Some(Role::Barrier))
        .filter_map(|feature| {
            let Shape::Line(line) = &feature.shape else {
                return None;
            };
            let is = assumed::edge(feature.tag("barrier")?)?;
            Some((is, LineString::new(line.iter().map(metres).collect())))
        })
        .collect();
    let own = own.tag("barrier").and_then(assumed::edge);
    let mut unknown = Vec::new();
    for (at, from) in ring.iter().enumerate() {
        let to = ring[(at + 1) % ring.len()];
        let (from_name, to_name) = (
            yard.boundary[at].clone(),
            yard.boundary[(at + 1) % ring.len()].clone(),
        );
        let along = |line: &LineString<f64>| {
            (0..=8).map(|eighth| f64::from(eighth) / 8.0).all(|share| {
                let spot = Point::new(
                    from.x + share * (to.x - from.x),
                    from.y + share * (to.y - from.y),
                );
                Euclidean.distance(&spot, line) <= NEAR
            })
        };
        match barriers
            .iter()
            .find(|(_, line)| along(line))
            .map(|(is, _)| *is)
            .or(own)
        {
            Some(is) => yard.edges.push((from_name, to_name, is)),
            None => unknown.push(format!("{from_name}-{to_name}")),
        }
    }
    if !unknown.is_empty() {
        notes.push(
            Note::advice(whole.clone(), msg!("traced-sides", sides = unknown))
                .mend(msg!("traced-sides-mend")),
        );
    }
}

/// Buildings and surfaces, cut to the yard.
fn areas<'a>(
    others: impl Iterator<Item = &'a Feature>,
    polygon: &Polygon<f64>,
    metres: &impl Fn(&Degrees) -> Coord<f64>,
    yard: &mut Yard,
) {
    for feature in others {
        let Shape::Polygon(rings) = &feature.shape else {
            continue;
        };
        let Some(ring) = rings.first() else { continue };
        let building = match feature.role {
            Some(Role::Building) => true,
            Some(Role::Surface) => false,
            _ => continue,
        };
        let ring = cleaned(ring.iter().map(metres).collect());
        let shape = Polygon::new(LineString::new(ring), Vec::new());
        if shape.exterior().0.len() < 4 || !shape.is_valid() {
            continue;
        }
        for piece in polygon.intersection(&shape) {
            if piece.unsigned_area() < SLIVER {
                continue;
            }
            if building {
                let name = yard.name("building");
                let outline = yard.outline(&piece, "K");
                if outline.len() >= 3 {
                    yard.buildings.push((name, outline));
                }
            } else {
                let outline = yard.outline(&piece, "S");
                if outline.len() >= 3 {
                    yard.surfaces
                        .push((assumed::surface(|key| feature.tag(key)), outline));
                }
            }
        }
    }
}

/// Fixtures and gates that are points on the map.
fn things<'a>(
    others: impl Iterator<Item = &'a Feature>,
    polygon: &Polygon<f64>,
    metres: &impl Fn(&Degrees) -> Coord<f64>,
    ledger: &Ledger,
    yard: &mut Yard,
    whole: &Place,
    notes: &mut Vec<Note>,
) {
    let (mut round, mut outside, mut unknown) = (Vec::new(), Vec::new(), Vec::new());
    let width = ledger.number(assumed::GATE);
    for feature in others {
        let (Some(Role::Fixture), Shape::Point(at)) = (feature.role, &feature.shape) else {
            continue;
        };
        let at = metres(at);
        let off = Euclidean.distance(&Point::from(at), polygon.exterior());
        match assumed::thing(|key| feature.tag(key)) {
            Thing::Nothing => unknown.push(says(feature)),
            Thing::Gate if off > GATE_NEAR => outside.push(says(feature)),
            Thing::Gate => gate(at, width, yard),
            Thing::Fixture(kind, _) if !polygon.contains(&Point::from(at)) && off > NEAR => {
                outside.push(kind.to_owned());
            }
            Thing::Fixture(kind, radius) => {
                let name = yard.name(kind);
                let point = yard.point(at, "F");
                round.push(name.clone());
                yard.fixtures
                    .push((name, kind, point, ledger.number(radius)));
            }
        }
    }
    let gates: Vec<String> = yard.gates.iter().map(|(name, ..)| name.clone()).collect();
    if !round.is_empty() {
        notes.push(
            Note::advice(whole.clone(), msg!("traced-footprints", names = round))
                .mend(msg!("traced-footprints-mend")),
        );
    }
    if !gates.is_empty() {
        let what = msg!("traced-gates", names = gates, width = Fact::Length(width));
        notes.push(Note::advice(whole.clone(), what).mend(msg!("traced-gates-mend")));
    }
    if !outside.is_empty() {
        notes.push(Note::advice(
            whole.clone(),
            msg!("traced-outside", names = outside),
        ));
    }
    if !unknown.is_empty() {
        notes.push(Note::advice(
            whole.clone(),
            msg!("traced-unknown", names = unknown),
        ));
    }
}

/// What the map calls a thing, as `amenity=parking`.
fn says(feature: &Feature) -> String {
    let tags = feature.tags.iter().filter(|(key, _)| *key != "role");
    tags.map(|(key, value)| format!("{key}={value}"))
        .collect::<Vec<_>>()
        .join(" ")
}

/// Two posts on the side nearest to the gate; of equals the longer one, so that a gate at a
/// corner stands where there is room.
fn gate(at: Coord<f64>, width: f64, yard: &mut Yard) {
    let ring: Vec<Coord<f64>> = yard.points[..yard.boundary.len()]
        .iter()
        .map(|(_, at)| *at)
        .collect();
    let side = |number: usize| (ring[number], ring[(number + 1) % ring.len()]);
    let off = |number: usize| {
        let (from, to) = side(number);
        Euclidean.distance(&Point::from(at), &LineString::new(vec![from, to]))
    };
    let nearest = (0..ring.len()).map(off).fold(f64::INFINITY, f64::min);
    let best = (0..ring.len())
        .filter(|number| off(*number) <= nearest + SAME)
        .max_by(|a, b| {
            let length = |number: usize| apart(side(number).0, side(number).1);
            length(*a).total_cmp(&length(*b)).then(b.cmp(a))
        });
    let Some((from, to)) = best.map(side) else {
        return;
    };
    let length = apart(from, to);
    let width = width.min(length);
    let along = ((at.x - from.x) * (to.x - from.x) + (at.y - from.y) * (to.y - from.y)) / length;
    let start = (along - width / 2.0).clamp(0.0, length - width);
    let spot = |along: f64| Coord {
        x: millimetre(from.x + along / length * (to.x - from.x)),
        y: millimetre(from.y + along / length * (to.y - from.y)),
    };
    let name = yard.name("entry");
    let posts = (
        yard.point(spot(start), "G"),
        yard.point(spot(start + width), "G"),
    );
    yard.gates.push((name, posts.0, posts.1));
}

/// The byte of a line and column from 1.
fn spot(text: &str, line: usize, column: usize) -> usize {
    let start = text
        .split_inclusive('\n')
        .take(line.saturating_sub(1))
        .map(str::len)
        .sum::<usize>();
    (start + column.saturating_sub(1)).min(text.len().saturating_sub(1))
}

#[cfg(test)]
mod tests;
