//! `survey.toml`: the frame, the readings that are no plain distance, and what stands where.

use std::collections::BTreeMap;

use ground::yard::{Condition, EdgeKind, FixtureKind, RemarkKind, Seat, SurfaceKind};
use jiff::civil::Date;
use ledger::Ledger;
use note::{Note, Place, msg};
use survey::network::{Tape, Walked};
use toml::de::DeValue;

use crate::read::figures as fig;
use crate::read::files::Source;
use crate::read::table::{self, At, Desk, Table};

/// A point named in the file.
pub type Named = At<String>;

/// What `survey.toml` says, names not yet resolved.
#[derive(Clone, Debug)]
pub struct Surveyed {
    /// How good the tape is.
    pub tape: Tape,
    /// Corners in the order walked.
    pub boundary: Vec<Named>,
    /// Where the list stands.
    pub boundary_at: Option<Place>,
    /// Which way.
    pub walked: Walked,
    /// The point at (0, 0).
    pub origin: Option<Named>,
    /// The point on +x.
    pub towards: Option<Named>,
    /// Whether a free datum is wanted.
    pub free: bool,
    /// Rough places, metres.
    pub start: Vec<(Named, [f64; 2])>,
    /// Whose map or drawing it rests on; printed on every sheet.
    pub credit: Option<String>,
    /// What is taken for granted until somebody measures it; printed in the report.
    pub assumed: Vec<String>,
    /// Bearing from origin to towards, degrees clockwise from north.
    pub north: Option<f64>,
    /// Readings other than distances.
    pub readings: Vec<Odd>,
    /// What the sides are.
    pub edges: Vec<Side>,
    /// Surfaces.
    pub surfaces: Vec<Laid>,
    /// Fixtures.
    pub fixtures: Vec<Stood>,
    /// Doors and gates.
    pub openings: Vec<Opening>,
    /// Routes.
    pub routes: Vec<Way>,
    /// Where staff stand.
    pub stands: Vec<Named>,
    /// The surveyor's remarks.
    pub remarks: Vec<Remarked>,
    /// Place on earth.
    pub place: Option<Earth>,
    /// Every point named in a reading of this file, whether the reading could be read or not.
    pub measured: Vec<Named>,
    /// Whether the file's syntax left gaps.
    pub broken: bool,
}

/// A reading that is no plain distance; lengths in metres.
#[derive(Clone, Debug)]
#[allow(missing_docs)]
pub enum Odd {
    Offset {
        line: [Named; 2],
        point: Named,
        along: At<f64>,
        left: At<f64>,
        at: Place,
    },
    Square {
        corner: Named,
        from: Named,
        to: Named,
        at: Place,
    },
    Straight {
        from: Named,
        to: Named,
        point: Named,
        at: Place,
    },
    Known {
        point: Named,
        x: At<f64>,
        y: At<f64>,
        sigma: f64,
        at: Place,
    },
}

/// A stretch of the boundary.
#[derive(Clone, Debug)]
#[allow(missing_docs)]
pub struct Side {
    pub from: Named,
    pub to: Named,
    pub is: EdgeKind,
    pub at: Place,
}

/// A stretch of ground.
#[derive(Clone, Debug)]
#[allow(missing_docs)]
pub struct Laid {
    pub outline: Vec<Named>,
    pub is: SurfaceKind,
    pub since: Option<Date>,
    pub condition: Option<Condition>,
    pub at: Place,
}

/// A fixture.
#[derive(Clone, Debug)]
#[allow(missing_docs)]
pub struct Stood {
    pub name: Named,
    pub is: FixtureKind,
    pub shape: Shape,
    pub height: Option<f64>,
    pub base: Option<f64>,
    pub top: Option<f64>,
    pub exit: Option<[Named; 2]>,
    pub pivot: Option<f64>,
    pub seat: Option<Seat>,
    pub seat_top: Option<f64>,
    pub members: Option<f64>,
    pub standing: bool,
    pub at: Place,
}

/// How a footprint is given.
#[derive(Clone, Debug)]
#[allow(missing_docs)]
pub enum Shape {
    Outline(Vec<Named>),
    Disc(Named, f64),
    Beam([Named; 2]),
}

/// A door or a gate.
#[derive(Clone, Debug)]
#[allow(missing_docs)]
pub struct Opening {
    pub name: Named,
    pub gate: bool,
    pub from: Named,
    pub to: Named,
    pub hinge: Option<Named>,
    /// Into the yard.
    pub inward: bool,
    pub at: Place,
}

/// A route that is wanted.
#[derive(Clone, Debug)]
#[allow(missing_docs)]
pub struct Way {
    pub from: Named,
    pub to: Named,
    pub width: f64,
    pub at: Place,
}

/// A remark.
#[derive(Clone, Debug)]
#[allow(missing_docs)]
pub struct Remarked {
    pub outline: Vec<Named>,
    pub is: RemarkKind,
    pub says: Option<String>,
    pub at: Place,
}

/// Where the yard lies on earth.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)]
pub struct Earth {
    pub latitude: f64,
    pub longitude: f64,
    pub zone: Option<String>,
}

const EDGES: [(&str, EdgeKind); 6] = [
    ("wall", EdgeKind::Wall),
    ("fence", EdgeKind::Fence),
    ("hedge", EdgeKind::Hedge),
    ("kerb", EdgeKind::Kerb),
    ("drop", EdgeKind::Drop),
    ("open", EdgeKind::Open),
];

const SURFACES: [(&str, SurfaceKind); 15] = [
    ("asphalt", SurfaceKind::Asphalt),
    ("concrete", SurfaceKind::Concrete),
    ("paving", SurfaceKind::Paving),
    ("old-paint", SurfaceKind::OldPaint),
    ("sealer", SurfaceKind::Sealer),
    ("rubber", SurfaceKind::Rubber),
    ("mulch", SurfaceKind::Mulch),
    ("carpet", SurfaceKind::Carpet),
    ("loose-fill", SurfaceKind::LooseFill),
    ("sand", SurfaceKind::Sand),
    ("grass", SurfaceKind::Grass),
    ("soil", SurfaceKind::Soil),
    ("wood", SurfaceKind::Wood),
    ("steel", SurfaceKind::Steel),
    ("tactile", SurfaceKind::Tactile),
];

const CONDITIONS: [(&str, Condition); 4] = [
    ("sound", Condition::Sound),
    ("worn", Condition::Worn),
    ("cracked", Condition::Cracked),
    ("spalled", Condition::Spalled),
];

/// The words of a fixture's `is`.
pub const FIXTURES: [(&str, FixtureKind); 21] = [
    ("slide", FixtureKind::Slide),
    ("swing", FixtureKind::Swing),
    ("tyre-swing", FixtureKind::TyreSwing),
    ("climber", FixtureKind::Climber),
    ("seesaw", FixtureKind::Seesaw),
    ("rocker", FixtureKind::Rocker),
    ("roundabout", FixtureKind::Roundabout),
    ("house", FixtureKind::House),
    ("tree", FixtureKind::Tree),
    ("post", FixtureKind::Post),
    ("lamp", FixtureKind::Lamp),
    ("bench", FixtureKind::Bench),
    ("table", FixtureKind::Table),
    ("shed", FixtureKind::Shed),
    ("building", FixtureKind::Building),
    ("planter", FixtureKind::Planter),
    ("sandpit", FixtureKind::Sandpit),
    ("drain", FixtureKind::Drain),
    ("cover", FixtureKind::Cover),
    ("hydrant", FixtureKind::Hydrant),
    ("other", FixtureKind::Other),
];

const REMARKS: [(&str, RemarkKind); 4] = [
    ("puddle", RemarkKind::Puddle),
    ("old paint", RemarkKind::OldPaint),
    ("trike path", RemarkKind::TrikePath),
    ("slope", RemarkKind::Slope),
];

/// Reads the file; what cannot be read is told and left out.
pub fn surveyed(
    source: &Source,
    units: unit::Units,
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) -> Surveyed {
    let (root, broken) = table::parse(source, notes);
    let mut desk = Desk {
        source,
        units,
        notes,
    };
    let desk = &mut desk;
    let table = Table::new(root.get_ref(), source.whole(), &source.name);
    let walked = [
        ("anticlockwise", Walked::Anticlockwise),
        ("clockwise", Walked::Clockwise),
    ];
    let boundary = table.names("boundary", desk);
    if boundary.is_none() && !table.has("boundary") && !broken {
        table.missing("boundary", desk);
    }
    let surveyed = Surveyed {
        tape: tape(&table, ledger, desk),
        boundary_at: boundary.as_ref().map(|names| names.at.clone()),
        boundary: boundary.map(|names| open(names.value)).unwrap_or_default(),
        walked: table
            .word("walked", &walked, desk)
            .map_or(Walked::Anticlockwise, |way| way.value),
        origin: table.text("origin", desk),
        towards: table.text("towards", desk),
        free: table.word("datum", &[("free", true)], desk).is_some(),
        start: start(&table, desk),
        credit: table.text("credit", desk).map(|credit| credit.value),
        assumed: table.names("assumed", desk).map_or_else(Vec::new, |list| {
            list.value.into_iter().map(|text| text.value).collect()
        }),
        north: table
            .within("north", (0.0, 360.0), desk)
            .map(|north| north.value),
        readings: readings(&table, ledger, desk),
        edges: each(&table, "edge", desk, edge),
        surfaces: each(&table, "surface", desk, surface),
        fixtures: each(&table, "fixture", desk, fixture),
        openings: [
            each(&table, "door", desk, |table, desk| {
                opening(table, false, desk)
            }),
            each(&table, "gate", desk, |table, desk| {
                opening(table, true, desk)
            }),
        ]
        .concat(),
        routes: each(&table, "route", desk, |table, desk| {
            way(table, ledger, desk)
        }),
        stands: each(&table, "stand", desk, |table, desk| need(table, "at", desk)),
        remarks: each(&table, "note", desk, remark),
        place: table
            .table("place", desk)
            .and_then(|place| earth(place, desk)),
        measured: measured(&table, desk),
        broken,
    };
    if !broken {
        table.finish(desk);
    }
    surveyed
}

/// Every `[[key]]` through one reader; its unknown keys are told.
pub fn each<T>(
    table: &Table,
    key: &'static str,
    desk: &mut Desk,
    read: impl Fn(&Table, &mut Desk) -> Option<T>,
) -> Vec<T> {
    table
        .tables(key, desk)
        .into_iter()
        .filter_map(|one| {
            let value = read(&one, desk);
            one.finish(desk);
            value
        })
        .collect()
}

/// A text that must be there.
pub fn need(table: &Table, key: &'static str, desk: &mut Desk) -> Option<Named> {
    let found = table.text(key, desk);
    if found.is_none() && !table.has(key) {
        table.missing(key, desk);
    }
    found
}

fn tape(table: &Table, ledger: &Ledger, desk: &mut Desk) -> Tape {
    let plain = Tape {
        constant: ledger.number(survey::figures::TAPE_CONSTANT),
        per_metre: ledger.number(survey::figures::TAPE_PER_METRE),
    };
    let worn = ledger.number(fig::WORN);
    let cloth = Tape {
        constant: plain.constant * worn,
        per_metre: plain.per_metre * worn,
    };
    let place = table.place("tape", desk);
    if !table.has("tape") {
        return plain;
    }
    // A word, or a table with the tape's own figures.
    if let Some(own) = table.table_quietly("tape", desk) {
        let constant = own
            .width("sigma", desk)
            .map_or(plain.constant, |sigma| sigma.value);
        let per_metre = own
            .length("per_metre", desk)
            .map_or(0.0, |sigma| sigma.value);
        if per_metre < 0.0 {
            desk.notes.push(Note::error(
                place,
                msg!("length-not-positive", key = "per_metre"),
            ));
        }
        own.finish(desk);
        return Tape {
            constant,
            per_metre: per_metre.max(0.0),
        };
    }
    let words = [("steel", plain), ("fibreglass", plain), ("cloth", cloth)];
    table
        .word("tape", &words, desk)
        .map_or(plain, |tape| tape.value)
}

/// Points of the readings, from whatever of them is text.
fn measured(table: &Table, desk: &Desk) -> Vec<Named> {
    let mut named = Vec::new();
    for kind in ["offset", "square", "straight", "known"] {
        let Some(DeValue::Array(readings)) = table.value(kind) else {
            continue;
        };
        for (key, value) in readings
            .iter()
            .filter_map(|one| one.get_ref().as_table())
            .flatten()
        {
            let items: Vec<_> = match (key.get_ref().as_ref(), value.get_ref()) {
                ("line", DeValue::Array(ends)) => ends.iter().collect(),
                ("point" | "at" | "from" | "to", DeValue::String(_)) => vec![value],
                _ => continue,
            };
            named.extend(items.into_iter().filter_map(|item| {
                let value = item.get_ref().as_str()?.to_owned();
                Some(At {
                    value,
                    at: table::place(desk.source, item.span()),
                })
            }));
        }
    }
    named.sort_by(|a, b| a.at.cmp(&b.at));
    named
}

/// An outline without its first point repeated at the end, as some people close it.
fn open(mut names: Vec<Named>) -> Vec<Named> {
    let closed = names.len() > 3
        && names.first().map(|name| &name.value) == names.last().map(|name| &name.value);
    if closed {
        names.pop();
    }
    names
}

fn start(table: &Table, desk: &mut Desk) -> Vec<(Named, [f64; 2])> {
    let Some(start) = table.table("start", desk) else {
        return Vec::new();
    };
    start
        .all(desk)
        .into_iter()
        .filter_map(|(name, value)| {
            let pair = table::pair(value, &name.value, desk)?;
            Some((name, pair.value))
        })
        .collect()
}

fn readings(table: &Table, ledger: &Ledger, desk: &mut Desk) -> Vec<Odd> {
    let known = ledger.number(fig::OUTLINE);
    let mut all = each(table, "offset", desk, |table, desk| {
        let line = table.names_of::<2>("line", desk);
        if line.is_none() && !table.has("line") {
            table.missing("line", desk);
        }
        let point = need(table, "point", desk);
        let along = need_length(table, "along", desk);
        let left = need_length(table, "left", desk);
        Some(Odd::Offset {
            line: line?,
            point: point?,
            along: along?,
            left: left?,
            at: table.at.clone(),
        })
    });
    all.extend(each(table, "square", desk, |table, desk| {
        let (corner, from, to) = (
            need(table, "at", desk),
            need(table, "from", desk),
            need(table, "to", desk),
        );
        Some(Odd::Square {
            corner: corner?,
            from: from?,
            to: to?,
            at: table.at.clone(),
        })
    }));
    all.extend(each(table, "straight", desk, |table, desk| {
        let (from, to, point) = (
            need(table, "from", desk),
            need(table, "to", desk),
            need(table, "point", desk),
        );
        Some(Odd::Straight {
            from: from?,
            to: to?,
            point: point?,
            at: table.at.clone(),
        })
    }));
    all.extend(each(table, "known", desk, |table, desk| {
        let point = need(table, "point", desk);
        let (x, y) = (need_length(table, "x", desk), need_length(table, "y", desk));
        let sigma = table.length("sigma", desk);
        if let Some(sigma) = &sigma
            && sigma.value < 0.0
        {
            desk.notes.push(
                Note::error(sigma.at.clone(), msg!("length-not-positive", key = "sigma"))
                    .expected(msg!("want-positive-length")),
            );
            return None;
        }
        let sigma = sigma.map_or(known, |sigma| sigma.value);
        Some(Odd::Known {
            point: point?,
            x: x?,
            y: y?,
            sigma,
            at: table.at.clone(),
        })
    }));
    all
}

fn need_length(table: &Table, key: &'static str, desk: &mut Desk) -> Option<At<f64>> {
    let found = table.length(key, desk);
    if found.is_none() && !table.has(key) {
        table.missing(key, desk);
    }
    found
}

fn need_word<T: Copy>(
    table: &Table,
    key: &'static str,
    words: &[(&str, T)],
    desk: &mut Desk,
) -> Option<T> {
    let found = table.word(key, words, desk);
    if found.is_none() && !table.has(key) {
        table.missing(key, desk);
    }
    found.map(|found| found.value)
}

fn outline(table: &Table, desk: &mut Desk) -> Option<Vec<Named>> {
    let names = table.names("outline", desk);
    match names {
        Some(names) if names.value.len() < 3 => {
            desk.notes.push(Note::error(
                names.at,
                msg!("outline-short", found = names.value.len()),
            ));
            None
        }
        Some(names) => Some(open(names.value)),
        None => {
            if !table.has("outline") {
                table.missing("outline", desk);
            }
            None
        }
    }
}

fn edge(table: &Table, desk: &mut Desk) -> Option<Side> {
    let (from, to) = (need(table, "from", desk), need(table, "to", desk));
    let is = need_word(table, "is", &EDGES, desk);
    Some(Side {
        from: from?,
        to: to?,
        is: is?,
        at: table.at.clone(),
    })
}

fn surface(table: &Table, desk: &mut Desk) -> Option<Laid> {
    let outline = outline(table, desk);
    let is = need_word(table, "is", &SURFACES, desk);
    let since = table.date("since", desk).map(|date| date.value);
    let condition = table
        .word("condition", &CONDITIONS, desk)
        .map(|word| word.value);
    Some(Laid {
        outline: outline?,
        is: is?,
        since,
        condition,
        at: table.at.clone(),
    })
}

fn fixture(table: &Table, desk: &mut Desk) -> Option<Stood> {
    let name = need(table, "name", desk);
    let is = need_word(table, "is", &FIXTURES, desk);
    let mut metres = |key| table.width(key, desk).map(|length| length.value);
    let (height, base, top) = (metres("height"), metres("base"), metres("top"));
    let (pivot, seat_top, members) = (metres("pivot"), metres("seat_top"), metres("members"));
    let radius = table.width("radius", desk);
    let exit = table.names_of::<2>("exit", desk);
    let seat = table.word(
        "seat",
        &[("belt", Seat::Belt), ("bucket", Seat::Bucket)],
        desk,
    );
    let standing = table
        .truth("standing", desk)
        .is_some_and(|truth| truth.value);
    let shape = if table.has("beam") {
        table.names_of::<2>("beam", desk).map(Shape::Beam)
    } else if table.has("at") {
        if radius.is_none() && !table.has("radius") {
            table.missing("radius", desk);
        }
        let at = table.text("at", desk);
        at.zip(radius)
            .map(|(at, radius)| Shape::Disc(at, radius.value))
    } else {
        outline(table, desk).map(Shape::Outline)
    };
    Some(Stood {
        name: name?,
        is: is?,
        shape: shape?,
        height,
        base,
        top,
        exit,
        pivot,
        seat: seat.map(|seat| seat.value),
        seat_top,
        members,
        standing,
        at: table.at.clone(),
    })
}

fn opening(table: &Table, gate: bool, desk: &mut Desk) -> Option<Opening> {
    let name = need(table, "name", desk);
    let (from, to) = (need(table, "from", desk), need(table, "to", desk));
    let hinge = table.text("hinge", desk);
    // A door opens out of its building, which is into the yard; a gate in, into it too.
    // Unsaid errs to safety: over the yard.
    let inward = table
        .word("opens", &[("out", !gate), ("in", gate)], desk)
        .is_none_or(|way| way.value);
    Some(Opening {
        name: name?,
        gate,
        from: from?,
        to: to?,
        hinge,
        inward,
        at: table.at.clone(),
    })
}

fn way(table: &Table, ledger: &Ledger, desk: &mut Desk) -> Option<Way> {
    let (from, to) = (need(table, "from", desk), need(table, "to", desk));
    let width = table
        .width("width", desk)
        .map_or(ledger.number(fig::ROUTE), |width| width.value);
    Some(Way {
        from: from?,
        to: to?,
        width,
        at: table.at.clone(),
    })
}

fn remark(table: &Table, desk: &mut Desk) -> Option<Remarked> {
    let outline = outline(table, desk);
    let is = need_word(table, "is", &REMARKS, desk);
    let says = table.text("says", desk).map(|says| says.value);
    Some(Remarked {
        outline: outline?,
        is: is?,
        says,
        at: table.at.clone(),
    })
}

fn earth(table: Table, desk: &mut Desk) -> Option<Earth> {
    let latitude = table.within("latitude", (-90.0, 90.0), desk);
    let longitude = table.within("longitude", (-180.0, 180.0), desk);
    let zone = table.text("zone", desk).map(|zone| zone.value);
    table.finish(desk);
    Some(Earth {
        latitude: latitude?.value,
        longitude: longitude?.value,
        zone,
    })
}

/// Names that are used twice in one kind are told; the map leads to the first.
pub fn twice<'a>(names: impl Iterator<Item = &'a Named>, notes: &mut Vec<Note>) {
    let mut first: BTreeMap<&str, &Place> = BTreeMap::new();
    for name in names {
        match first.get(name.value.as_str()) {
            Some(before) => notes.push(
                Note::error(name.at.clone(), msg!("name-twice", name = &name.value))
                    .also((*before).clone()),
            ),
            None => _ = first.insert(&name.value, &name.at),
        }
    }
}

/// A value that is a table, for keys that may also hold a word.
impl<'t> Table<'t> {
    fn table_quietly(&self, key: &'static str, desk: &mut Desk) -> Option<Table<'t>> {
        let is_table = self
            .value(key)
            .is_some_and(|value| matches!(value, DeValue::Table(_)));
        if is_table {
            self.table(key, desk)
        } else {
            None
        }
    }
}
