//! The geometry of a figure's cells, worked out once for all children and gaits.

use std::borrow::Cow;
use std::collections::{BTreeMap, HashMap};
use std::hash::{BuildHasherDefault, Hasher};
use std::ops::Range;

use children::Side;
use geo::{Coord, LineString, Polygon};
use marking::{Cell, Figure, Outline};

use crate::contact::Goer;
use crate::figures::Model;
use crate::near::near;
use crate::net::Net;

/// Contacts nearer alike than this are one: metres, and the same number for cosines. Six
/// orders under what is handed on, and it lets a straight row be reckoned once.
const ALIKE: f64 = 1e-12;

/// What a contact's chance depends on, apart from the child: distance, turn, facing and the
/// shape that is landed in.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Spacing {
    /// Metres between the centres.
    pub d: f64,
    /// Of the turn from the displacement before.
    pub cos_phi: f64,
    /// Of travel against the figure's facing.
    pub cos_alpha: Option<f64>,
    /// A cell of the shape that is landed in.
    pub cell: usize,
}

/// A figure of more turns than this is not told whole: each child is told the turns that may
/// matter to it, which is sooner from some twenty spots of a free field on.
const MANY_TURNS: usize = 10_000;

/// All ways over a figure's cells.
#[derive(Debug)]
pub(crate) struct Ways<'a> {
    pub figure: &'a Figure,
    /// By cell of departure, then of arrival.
    pub travels: Vec<Travel>,
    /// The travels out of each cell.
    out: Vec<Range<usize>>,
    /// Where turns are many, the travels out of each cell again, the shortest first.
    pub nearest: Vec<Near>,
    /// The spacings of travels as a route's first.
    pub firsts: Vec<Spacing>,
    /// For each cell the first of its shape.
    pub shape_of: Vec<usize>,
    /// The cells of different shape, each with its outline about its centre in steps of
    /// [`ALIKE`].
    pub shapes: Vec<(usize, Outlined)>,
    /// Every turn, where they are few.
    whole: Option<Net<'a>>,
}

impl<'a> Ways<'a> {
    pub fn of(figure: &'a Figure, model: &Model) -> Ways<'a> {
        Ways::told_up_to(MANY_TURNS, figure, model)
    }

    /// The same, told whole up to so many turns.
    pub fn told_up_to(many: usize, figure: &'a Figure, model: &Model) -> Ways<'a> {
        let cells = &figure.cells;
        let (shape_of, shapes) = shapes(cells);
        let ahead = figure
            .facing
            .map(|facing| (libm::cos(facing), libm::sin(facing)));
        let mut ways = Ways {
            figure,
            travels: Vec::new(),
            out: Vec::new(),
            nearest: Vec::new(),
            firsts: Vec::new(),
            shape_of,
            shapes,
            whole: None,
        };
        let mut firsts = Firsts::default();
        for (from, cell) in cells.iter().enumerate() {
            let start = ways.travels.len();
            let mut followers: Vec<usize> = match &cell.next {
                Some(next) => next
                    .iter()
                    .copied()
                    .filter(|to| *to < cells.len())
                    .collect(),
                None => (0..cells.len()).collect(),
            };
            followers.sort_unstable();
            followers.dedup();
            ways.travels.extend(
                followers
                    .into_iter()
                    .filter(|to| *to != from)
                    .map(|to| Travel::between(from, to, cells, ahead)),
            );
            for travel in &mut ways.travels[start..] {
                travel.first = firsts.number(travel, ways.shape_of[travel.to]);
            }
            ways.out.push(start..ways.travels.len());
        }
        ways.firsts = firsts.spacings;
        let turns: usize = ways
            .travels
            .iter()
            .map(|travel| ways.out[travel.to].len())
            .sum();
        if turns <= many {
            ways.whole = Some(Net::of(&ways, model, |_| true));
        } else {
            ways.tell_nearest();
        }
        ways
    }

    fn tell_nearest(&mut self) {
        for out in &self.out {
            let mut order: Vec<usize> = out.clone().collect();
            order.sort_by(|a, b| self.travels[*a].d.total_cmp(&self.travels[*b].d));
            self.nearest.extend(order.into_iter().map(|travel| {
                let Travel { to, first, .. } = self.travels[travel];
                let [travel, to, first] = [travel, to, first].map(|number| number as u32);
                Near { travel, to, first }
            }));
        }
    }

    /// The travels out of a cell.
    pub fn out(&self, cell: usize) -> Range<usize> {
        self.out[cell].clone()
    }

    /// The ways on which every kept route of a child runs.
    pub fn net(&self, goer: &Goer, foot: Option<Side>, landings: &[f64]) -> Cow<'_, Net<'a>> {
        match &self.whole {
            Some(whole) => Cow::Borrowed(whole),
            None => Cow::Owned(near(self, goer, foot, landings)),
        }
    }
}

/// A travel among those out of its cell, small: a child looks at tens of thousands.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Near {
    /// Its number.
    pub travel: u32,
    pub to: u32,
    /// Number of its spacing among the firsts.
    pub first: u32,
}

/// The spacings of a figure's travels as a route's first, each once.
#[derive(Default)]
struct Firsts {
    numbers: HashMap<[i64; 3], usize, BuildHasherDefault<Mixed>>,
    spacings: Vec<Spacing>,
}

impl Firsts {
    fn number(&mut self, travel: &Travel, cell: usize) -> usize {
        let facing = travel.cos_alpha.map_or(i64::MAX, fine);
        *self
            .numbers
            .entry([fine(travel.d), facing, cell as i64])
            .or_insert_with(|| {
                self.spacings.push(travel.straight_on(cell));
                self.spacings.len() - 1
            })
    }
}

/// Mixes the few words of a spacing: a figure has tens of thousands of turns.
#[derive(Default)]
pub(crate) struct Mixed(u64);

impl Hasher for Mixed {
    fn finish(&self) -> u64 {
        self.0 ^ (self.0 >> 32)
    }

    fn write(&mut self, bytes: &[u8]) {
        for word in bytes.chunks(8) {
            let mut whole = [0; 8];
            whole[..word.len()].copy_from_slice(word);
            self.write_u64(u64::from_le_bytes(whole));
        }
    }

    fn write_u64(&mut self, word: u64) {
        // 2^64 over the golden ratio.
        self.0 = (self.0.rotate_left(23) ^ word).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    }

    fn write_usize(&mut self, word: usize) {
        self.write_u64(word as u64);
    }
}

/// In steps of [`ALIKE`], halves away from nought.
pub(crate) fn fine(value: f64) -> i64 {
    let steps = value / ALIKE;
    (steps + 0.5_f64.copysign(steps)) as i64
}

/// One displacement.
#[derive(Debug)]
pub(crate) struct Travel {
    pub to: usize,
    pub d: f64,
    /// Unit vector; zero where the centres coincide.
    heading: Coord<f64>,
    pub cos_alpha: Option<f64>,
    /// Number of its spacing as a route's first.
    pub first: usize,
}

impl Travel {
    /// - `ahead`: cosine and sine of the figure's facing
    fn between(from: usize, to: usize, cells: &[Cell], ahead: Option<(f64, f64)>) -> Travel {
        let by = cells[to].centre - cells[from].centre;
        let d = libm::hypot(by.x, by.y);
        let heading = if d > 0.0 {
            by / d
        } else {
            Coord { x: 0.0, y: 0.0 }
        };
        let cos_alpha =
            ahead.map(|(cos, sin)| (heading.x * cos + heading.y * sin).clamp(-1.0, 1.0));
        Travel {
            to,
            d,
            heading,
            cos_alpha,
            first: 0,
        }
    }

    /// Its spacing as a route's first.
    pub fn straight_on(&self, cell: usize) -> Spacing {
        Spacing {
            d: self.d,
            cos_phi: 1.0,
            cos_alpha: self.cos_alpha,
            cell,
        }
    }

    /// cos phi of the turn into the next displacement.
    pub fn turn(&self, next: &Travel) -> f64 {
        let (a, b) = (self.heading, next.heading);
        if (a.x == 0.0 && a.y == 0.0) || (b.x == 0.0 && b.y == 0.0) {
            return 1.0;
        }
        (a.x * b.x + a.y * b.y).clamp(-1.0, 1.0)
    }
}

/// An outline about its centre, in steps of [`ALIKE`]: the coordinates of its rings.
pub(crate) type Outlined = Vec<Vec<[i64; 2]>>;

/// A cell of an outline about its centre.
pub(crate) fn drawn(cell: &Cell, rings: &Outlined) -> Cell {
    let mut rings = rings.iter().map(|ring| {
        let corners = ring.iter().map(|[x, y]| Coord {
            x: *x as f64 * ALIKE,
            y: *y as f64 * ALIKE,
        });
        LineString::new(corners.collect())
    });
    let mut drawn = cell.clone();
    if let Outline::Polygon(polygon) = &mut drawn.outline {
        drawn.centre = Coord { x: 0.0, y: 0.0 };
        let exterior = rings.next().unwrap_or_else(|| LineString::new(Vec::new()));
        *polygon = Polygon::new(exterior, rings.collect());
    }
    drawn
}

/// For each cell the first of its shape, and the list of these.
fn shapes(cells: &[Cell]) -> (Vec<usize>, Vec<(usize, Outlined)>) {
    let mut known: BTreeMap<Outlined, usize> = BTreeMap::new();
    let shape_of: Vec<usize> = cells
        .iter()
        .enumerate()
        .map(|(number, cell)| {
            let outlined: Outlined = match &cell.outline {
                Outline::Disc { radius } => vec![vec![[fine(*radius); 2]]],
                Outline::Polygon(polygon) => std::iter::once(polygon.exterior())
                    .chain(polygon.interiors())
                    .map(|ring| {
                        let corners = ring.coords().map(|at| *at - cell.centre);
                        corners.map(|at| [fine(at.x), fine(at.y)]).collect()
                    })
                    .collect(),
            };
            *known.entry(outlined).or_insert(number)
        })
        .collect();
    let mut shapes: Vec<(usize, Outlined)> = known
        .into_iter()
        .map(|(outlined, cell)| (cell, outlined))
        .collect();
    shapes.sort_unstable();
    (shape_of, shapes)
}
