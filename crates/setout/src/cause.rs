//! How a mark may have come to lie where its readings say.

use geo::Coord;
use survey::result::Slip;

use crate::cross::crossing;
use crate::hints::stepped;
use crate::judge::{Court, End, JudgedReading, Line};
use crate::keys::{against, between};

/// How a mark comes to lie in the wrong place.
#[derive(Clone, Debug, PartialEq)]
pub enum Cause {
    /// The tapes were crossed on the other side of the line between the bases.
    WrongSide,
    /// Each length was held to the other base.
    Swapped,
    /// One tape was held wrong.
    Held {
        /// Which of the two, from 0.
        tape: usize,
        /// Metres that it was held at.
        at: f64,
        /// How that may have happened.
        slip: Option<Slip>,
    },
}

/// A mark in another place errs otherwise than where it was wanted: a mistake explains
/// readings that lie within so many limits.
const LOOSER: f64 = 2.0;

impl Court<'_> {
    /// Places where a common mistake would have put the point, if all its readings fit one.
    pub(crate) fn causes(
        &self,
        point: usize,
        telling: &[usize],
        lines: &[Line],
        judged: &[JudgedReading],
    ) -> Vec<Cause> {
        let me = &self.setout.points[point];
        let pair = me.tapes.map(|held| held.base);
        let bases = pair.map(|base| self.setout.bases.at[base]);
        let Some(crossing) = crossing(bases, me.at) else {
            return Vec::new();
        };
        let reads: Vec<(Coord<f64>, f64, f64)> = telling
            .iter()
            .map(|&number| {
                let line = &lines[number];
                let other = if line.ends[0] == End::Point(point) {
                    line.ends[1]
                } else {
                    line.ends[0]
                };
                (self.place(other), line.value, judged[number].limit)
            })
            .collect();
        let fits = |at: Coord<f64>| {
            reads
                .iter()
                .all(|(other, read, limit)| (between(*other, at) - read).abs() <= LOOSER * *limit)
        };
        let mirrored = |at: Coord<f64>| {
            let [along, left] = against(bases[0], bases[1], at);
            let way = (bases[1] - bases[0]) / between(bases[0], bases[1]);
            bases[0]
                + way * along
                + Coord {
                    x: way.y,
                    y: -way.x,
                } * left
        };
        let held = me.tapes.map(|held| held.length);
        let mut causes = Vec::new();
        if fits(mirrored(me.lands)) {
            causes.push(Cause::WrongSide);
        }
        let swapped = crossing.meet(bases, [held[1], held[0]]);
        if (held[0] - held[1]).abs() > self.setout.step && swapped.is_some_and(fits) {
            causes.push(Cause::Swapped);
        }
        for tape in [0, 1] {
            let with = |at: f64| {
                let mut lengths = held;
                lengths[tape] = at;
                crossing.meet(bases, lengths)
            };
            let Some((at, within)) = fitted(held[tape], &reads, &with) else {
                continue;
            };
            let slip = told(at, held[tape], within, self.hooks);
            // one reading fits some length of either tape
            let says = slip.is_some() || reads.len() > 1;
            if says && with(at).is_some_and(fits) {
                causes.push(Cause::Held {
                    tape,
                    at: stepped(at, self.setout.step),
                    slip,
                });
            }
        }
        causes
    }
}

/// The length at which a tape was held if all readings are to fit best, and how well it is
/// known (as far as the limits go), both metres: Gauss and Newton's method, from the length
/// that was wanted. `None` where no such length is found.
fn fitted(
    wanted: f64,
    reads: &[(Coord<f64>, f64, f64)],
    with: &impl Fn(f64) -> Option<Coord<f64>>,
) -> Option<(f64, f64)> {
    // steps, and their size in metres
    const STEPS: usize = 30;
    const SMALL: f64 = 1e-5;
    let mut at = wanted;
    for _ in 0..STEPS {
        let (here, ahead) = (with(at)?, with(at + SMALL)?);
        let (mut weight, mut pull) = (0.0, 0.0);
        for (other, read, limit) in reads {
            let long = between(*other, here);
            let slope = (between(*other, ahead) - long) / SMALL / limit;
            weight += slope * slope;
            pull += slope * (read - long) / limit;
        }
        let by = pull / weight;
        if !by.is_finite() {
            return None;
        }
        at += by;
        if by.abs() < SMALL {
            return Some((at, 1.0 / weight.sqrt()));
        }
    }
    None
}

/// The slip behind a length held, where it is known so well that a slip of this kind would
/// seldom fit by chance: whole units stand apart by more than ten times what is known.
fn told(held: f64, wanted: f64, within: f64, hooks: &[f64]) -> Option<Slip> {
    const APART: f64 = 10.0;
    let slip = survey::slip::guess(held, wanted, within, hooks)?;
    let unit = match slip {
        Slip::WholeMetres(_) => 1.0,
        Slip::WholeFeet(_) | Slip::FootForInch(_) => unit::FOOT,
        Slip::Tenths(_) | Slip::SwappedDigits(_) => 0.1,
        Slip::Hook(by) => by.abs(),
    };
    (unit >= APART * within).then_some(slip)
}
