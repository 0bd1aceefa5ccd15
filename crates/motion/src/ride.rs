//! The way of wheels or a walker, and the pushes by which it does what a skill asks.

use children::{Child, Means, Skill, Speeds};
use geo::Coord;
use marking::Lane;

use crate::path::Stop;

/// Metres between two spots of a lane's middle, as the way of wheels has it.
const EVERY: f64 = 0.05;
/// Straight pieces that the arc of a turn is cut into; its aim lies at half of them.
const PIECES: usize = 16;
/// Tangent of half a turn below which there is none.
const STRAIGHT: f64 = 1e-6;
/// No yard holds a lane of more spots; a slip of the pen must not fill the memory.
const MOST: usize = 20_000;

/// How a child that does not go on its feet alone covers a route.
#[derive(Clone, Debug, PartialEq)]
pub struct Ride {
    /// Wheels or a walker.
    pub means: Means,
    /// The child's own speeds by these means.
    pub speeds: Speeds,
    /// Spots along the way, and the way there, radians from +x.
    spots: Vec<(Coord<f64>, f64)>,
    /// Metres along the way at each spot.
    along: Vec<f64>,
    /// Metres along the way at each stop, the start first.
    pub marks: Vec<f64>,
}

/// How long a stretch of an adapted form is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stretch {
    /// As the others.
    Whole,
    /// The long one of a long and a short one.
    Long,
    /// The short one.
    Short,
}

/// What comes after the stretches of one contact.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Then {
    /// The next.
    On,
    /// A wait, still rolling, before the next.
    Wait,
    /// A coast to the mark, and standing still on it.
    Still,
}

/// An adapted form: what stands in for one contact of a skill.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Adapted {
    /// The skill.
    pub skill: Skill,
    /// Pushes, or steps with the walker, from mark to mark.
    pub stretches: &'static [Stretch],
    /// Whether only the leading hand pushes.
    pub one_hand: bool,
    /// Whether it goes at the child's quick speed.
    pub quick: bool,
    /// What follows.
    pub then: Then,
}

use Stretch::{Long, Short, Whole};

const PLAIN: Adapted = Adapted {
    skill: Skill::Walk,
    stretches: &[Whole],
    one_hand: false,
    quick: false,
    then: Then::On,
};

/// The adapted form of every skill (programme.md 4; common practice, no source). How far each
/// carries is `push.form.*` of the ledger.
pub const ADAPTED: [Adapted; 8] = [
    Adapted {
        skill: Skill::Jump,
        stretches: &[Whole, Whole],
        then: Then::Still,
        ..PLAIN
    },
    Adapted {
        skill: Skill::Hop,
        one_hand: true,
        ..PLAIN
    },
    Adapted {
        skill: Skill::Leap,
        quick: true,
        ..PLAIN
    },
    Adapted {
        skill: Skill::Gallop,
        stretches: &[Long, Short],
        ..PLAIN
    },
    Adapted {
        skill: Skill::Slide,
        ..PLAIN
    },
    Adapted {
        skill: Skill::Skip,
        then: Then::Wait,
        ..PLAIN
    },
    Adapted {
        skill: Skill::Run,
        quick: true,
        ..PLAIN
    },
    PLAIN,
];

/// The adapted form of a skill.
pub fn adapted(skill: Skill) -> Adapted {
    ADAPTED
        .into_iter()
        .find(|row| row.skill == skill)
        .unwrap_or(PLAIN)
}

impl Ride {
    /// Straight ahead over stops that lie on a line.
    pub(crate) fn straight(child: &Child, stops: &[Stop]) -> Ride {
        let spots = stops.iter().map(|stop| (stop.at, stop.travel)).collect();
        Ride::over(child, spots, Some, stops.len())
    }

    /// Along a lane, whose stops lie so many metres along it.
    pub(crate) fn along(child: &Child, lane: &Lane, marks: &[f64]) -> Ride {
        let end = marks.last().copied().unwrap_or(0.0);
        let pieces = ((end / EVERY).ceil() as usize).clamp(1, MOST);
        let mut at: Vec<f64> = (0..=pieces)
            .map(|piece| end * piece as f64 / pieces as f64)
            .chain(marks.iter().copied())
            .collect();
        at.sort_by(f64::total_cmp);
        at.dedup();
        let places: Vec<usize> = marks
            .iter()
            .filter_map(|mark| at.iter().position(|known| known == mark))
            .collect();
        let spots = at.iter().map(|metres| lane.along(*metres)).collect();
        Ride::over(child, spots, |nth| places.get(nth).copied(), marks.len())
    }

    /// From aim to aim, each corner rounded by an arc of the radius in which wheels turn,
    /// which touches both displacements: footfall's own rule for what they can turn. So they
    /// pass inside an aim by radius x (1/cos(turn/2) - 1), a hand's breadth at most.
    pub(crate) fn through(child: &Child, stops: &[Stop], radius: f64) -> Ride {
        let mut spots: Vec<(Coord<f64>, f64)> = Vec::new();
        let mut places = Vec::new();
        for (nth, stop) in stops.iter().enumerate() {
            let leg = |from: Option<usize>, to: usize| {
                let by = stops.get(to)?.at - stops.get(from?)?.at;
                let length = libm::hypot(by.x, by.y);
                (length > 0.0).then(|| (length, libm::atan2(by.y, by.x)))
            };
            let (before, after) = (leg(nth.checked_sub(1), nth), leg(Some(nth), nth + 1));
            let (Some((d1, from)), Some((d2, to))) = (before, after) else {
                places.push(spots.len());
                let way = before.or(after).map_or(stop.travel, |(_, way)| way);
                spots.push((stop.at, way));
                continue;
            };
            let turn = libm::remainder(to - from, std::f64::consts::TAU);
            let half = libm::tan(turn.abs() / 2.0);
            // a project may let wheels turn tighter than a leg has room for
            let cut = (radius * half).min(d1 / 2.0).min(d2 / 2.0);
            if half < STRAIGHT {
                places.push(spots.len());
                spots.push((stop.at, from));
                continue;
            }
            let radius = cut / half;
            let (sin, cos) = libm::sincos(from);
            let side = turn.signum();
            let middle = stop.at - Coord { x: cos, y: sin } * cut
                + Coord { x: -sin, y: cos } * (side * radius);
            places.push(spots.len() + PIECES / 2);
            for piece in 0..=PIECES {
                let way = from + turn * piece as f64 / PIECES as f64;
                let (sin, cos) = libm::sincos(way);
                let at = middle + Coord { x: sin, y: -cos } * (side * radius);
                spots.push((at, way));
            }
        }
        Ride::over(child, spots, |nth| places.get(nth).copied(), stops.len())
    }

    fn over(
        child: &Child,
        spots: Vec<(Coord<f64>, f64)>,
        place: impl Fn(usize) -> Option<usize>,
        stops: usize,
    ) -> Ride {
        let mut along = Vec::with_capacity(spots.len());
        let mut metres = 0.0;
        let mut last: Option<Coord<f64>> = None;
        for (at, _) in &spots {
            metres += last.map_or(0.0, |from| libm::hypot(at.x - from.x, at.y - from.y));
            along.push(metres);
            last = Some(*at);
        }
        let marks = (0..stops)
            .filter_map(|nth| along.get(place(nth)?).copied())
            .collect();
        Ride {
            means: child.means,
            speeds: child.speeds,
            spots,
            along,
            marks,
        }
    }

    /// The place so many metres along the way, and the way there, radians; past an end, the
    /// end.
    pub fn place(&self, metres: f64) -> (Coord<f64>, f64) {
        let after = self.along.partition_point(|along| *along < metres);
        let at = |nth: usize| Some((*self.spots.get(nth)?, *self.along.get(nth)?));
        match (after.checked_sub(1).and_then(at), at(after)) {
            (Some(((from, turn), a)), Some(((to, end), b))) if b > a => {
                let share = (metres - a) / (b - a);
                let by = libm::remainder(end - turn, std::f64::consts::TAU);
                (from + (to - from) * share, turn + by * share)
            }
            (_, Some((spot, _))) | (Some((spot, _)), None) => spot,
            (None, None) => (Coord { x: 0.0, y: 0.0 }, 0.0),
        }
    }
}
