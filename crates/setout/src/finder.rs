//! Which tapes serve a point, and how well it lands.

use geo::{Coord, Line};
use ledger::Ledger;
use survey::result::Ellipse;

use crate::bases::Bases;
use crate::cross::{Crossing, axes, crossing, times};
use crate::figures::*;
use crate::hints::stepped;
use crate::keys::{against, between};
use crate::millionth;
use crate::question::{Question, step};
use crate::result::{Barred, Held, Instead, KeyPoint, Third};
use crate::spread::{Ray, Spread};

/// So many pairs of tapes, and so many third tapes to each, are offered to the walk.
const OFFERED: (usize, usize) = (4, 2);

/// What there is to find tapes with.
pub(crate) struct Finder<'a> {
    pub(crate) question: &'a Question<'a>,
    pub(crate) bases: &'a Bases,
    pub(crate) step: f64,
    pub(crate) level: f64,
    pub(crate) apart: f64,
    pub(crate) off_line: f64,
    pub(crate) moving: f64,
    pub(crate) angle_min: f64,
    angle_good: f64,
    near_best: f64,
    tape_long: f64,
    slack: f64,
    check: Check,
}

/// How far a check reading may be off.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Check {
    times: f64,
    least: f64,
}

impl Check {
    pub(crate) fn of(ledger: &Ledger) -> Check {
        Check {
            times: ledger.number(CHECK_TIMES),
            least: ledger.number(CHECK_MIN),
        }
    }

    pub(crate) fn limit(self, sigma: f64) -> f64 {
        (self.times * sigma).max(self.least)
    }
}

/// Whether a tape from a base gets to a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Sight {
    Clear,
    /// Number of the obstacle.
    Barred(usize),
    /// Farther than the tape is long, or at the base itself.
    Out,
}

/// Two tapes and a third that serve a point.
#[derive(Clone, Debug)]
pub(crate) struct Choice {
    /// Ordered so that the point lies left of the way from the first to the second.
    pub(crate) pair: [usize; 2],
    pub(crate) crossing: Crossing,
    /// Root of the mean squared distance between mark and place, metres.
    pub(crate) rms: f64,
    pub(crate) third: Option<usize>,
}

impl Choice {
    /// Bases that its tapes are hooked to.
    pub(crate) fn set(&self) -> Vec<usize> {
        self.pair.iter().copied().chain(self.third).collect()
    }
}

impl<'a> Finder<'a> {
    pub(crate) fn new(question: &'a Question<'a>, bases: &'a Bases, ledger: &Ledger) -> Finder<'a> {
        let usual = step(question.units, ledger);
        Finder {
            question,
            bases,
            step: if question.step > 0.0 && question.step.is_finite() {
                question.step
            } else {
                usual
            },
            level: ledger.number(LEVEL),
            apart: ledger.number(APART),
            off_line: ledger.number(OFF_LINE),
            moving: ledger.number(MOVE),
            angle_min: ledger.number(ANGLE_MIN),
            angle_good: ledger.number(ANGLE_GOOD),
            near_best: ledger.number(NEAR_BEST),
            tape_long: ledger.number(TAPE_LONG),
            slack: ledger.number(SLACK),
            check: Check::of(ledger),
        }
    }

    /// How far a reading of this standard deviation may be off, metres.
    pub(crate) fn limit(&self, sigma: f64) -> f64 {
        self.check.limit(sigma)
    }

    /// For each base, whether a tape gets from it to a point.
    pub(crate) fn sight(&self, at: Coord<f64>) -> Vec<Sight> {
        self.bases
            .at
            .iter()
            .map(|&base| {
                let long = between(base, at);
                if !(long > self.slack && long <= self.tape_long) {
                    return Sight::Out;
                }
                self.question
                    .obstacles
                    .iter()
                    .position(|obstacle| obstacle.bars(Line::new(base, at), self.slack))
                    .map_or(Sight::Clear, Sight::Barred)
            })
            .collect()
    }

    fn sigmas(&self, crossing: &Crossing, printed: bool) -> [f64; 2] {
        let printed = if printed { self.rounding() } else { 0.0 };
        crossing
            .lengths
            .map(|length| libm::hypot(self.question.tape.sigma(length), printed))
    }

    /// Standard deviation of what rounding to a whole step takes or gives, metres: even
    /// over one step.
    fn rounding(&self) -> f64 {
        self.step / 12.0_f64.sqrt()
    }

    /// The pair from bases that `usable` lets pass, if it fixes the point.
    fn pair(&self, i: usize, j: usize, at: Coord<f64>) -> Option<Choice> {
        let [a, b] = [self.bases.at[i], self.bases.at[j]];
        let pair = if against(a, b, at)[1] >= 0.0 {
            [i, j]
        } else {
            [j, i]
        };
        let crossing = crossing(pair.map(|base| self.bases.at[base]), at)?;
        let angle = crossing.angle_deg;
        if !(angle >= self.angle_min && angle <= 180.0 - self.angle_min) {
            return None;
        }
        let spread = Spread::mark(0, pair, &crossing, self.sigmas(&crossing, true));
        let [[xx, _], [_, yy]] = spread.with(&spread, self.bases);
        Some(Choice {
            pair,
            crossing,
            rms: (xx + yy).sqrt(),
            third: None,
        })
    }

    /// All pairs of such bases that fix the point, the best first.
    fn pairs(&self, at: Coord<f64>, usable: impl Fn(usize) -> bool) -> Vec<Choice> {
        let usable: Vec<usize> = (0..self.bases.len()).filter(|&base| usable(base)).collect();
        let mut pairs = Vec::new();
        for (nth, &i) in usable.iter().enumerate() {
            pairs.extend(
                usable[nth + 1..]
                    .iter()
                    .filter_map(|&j| self.pair(i, j, at)),
            );
        }
        pairs.sort_by(|a, b| a.rms.total_cmp(&b.rms));
        pairs
    }

    /// Pairs as good as the best but for what is allowed, each with third tapes that find
    /// slips as well as the best third tape but for the same. The best first; empty where no
    /// two tapes fix the point.
    pub(crate) fn choices(&self, at: Coord<f64>, sight: &[Sight]) -> Vec<Choice> {
        let clear = |base: usize| sight.get(base) == Some(&Sight::Clear);
        let pairs = self.pairs(at, clear);
        let Some(most) = pairs.first().map(|best| best.rms * self.near_best) else {
            return Vec::new();
        };
        let near = pairs.into_iter().take_while(|pair| pair.rms <= most);
        near.take(OFFERED.0)
            .flat_map(|pair| {
                let mut thirds: Vec<(usize, f64)> = (0..self.bases.len())
                    .filter(|&base| clear(base) && !pair.pair.contains(&base))
                    .map(|base| (base, self.finds(&pair, base, at)))
                    .filter(|(_, finds)| finds.is_finite())
                    .collect();
                thirds.sort_by(|a, b| a.1.total_cmp(&b.1));
                let most = thirds.first().map_or(0.0, |best| best.1 * self.near_best);
                let mut offered: Vec<Choice> = thirds
                    .into_iter()
                    .take_while(|third| third.1 <= most)
                    .take(OFFERED.1)
                    .map(|(base, _)| Choice {
                        third: Some(base),
                        ..pair.clone()
                    })
                    .collect();
                if offered.is_empty() {
                    offered.push(pair);
                }
                offered
            })
            .collect()
    }

    /// The smallest slip in either tape that carries a third tape past its limit, metres.
    fn finds(&self, choice: &Choice, base: usize, at: Coord<f64>) -> f64 {
        let (sigma, way) = self.seen_from(choice, base, at);
        let [[p, q], [r, s]] = choice.crossing.inverse;
        let shows = [way.x * p + way.y * r, way.x * q + way.y * s].map(f64::abs);
        self.limit(sigma) / shows[0].min(shows[1])
    }

    /// Predicted standard deviation of a third tape, and its unit from base to mark.
    fn seen_from(&self, choice: &Choice, base: usize, at: Coord<f64>) -> (f64, Coord<f64>) {
        let here = self.bases.at[base];
        let long = between(here, at).max(f64::MIN_POSITIVE);
        let way = (at - here) / long;
        let [mark, from] = [
            Spread::mark(
                0,
                choice.pair,
                &choice.crossing,
                self.sigmas(&choice.crossing, false),
            ),
            Spread::base(base),
        ];
        let ray = Ray {
            ends: [&from, &mark],
            way,
        };
        (self.reading_sigma(&ray, long), way)
    }

    /// Predicted standard deviation of a reading along a ray of so many metres: what was
    /// expected is rounded when printed, and what is read is rounded when read.
    pub(crate) fn reading_sigma(&self, ray: &Ray, long: f64) -> f64 {
        let tape = self.question.tape.sigma(long);
        let rounding = 2.0 * self.rounding() * self.rounding();
        (ray.with(ray, self.bases).max(0.0) + tape * tape + rounding).sqrt()
    }

    pub(crate) fn third(&self, choice: &Choice, base: usize, lands: Coord<f64>) -> Third {
        let (sigma, _) = self.seen_from(choice, base, lands);
        Third {
            base,
            length: stepped(between(self.bases.at[base], lands), self.step),
            sigma: millionth(sigma),
            limit: millionth(self.limit(sigma)),
            finds: millionth(self.finds(choice, base, lands)),
        }
    }

    /// The tapes with their printed lengths.
    pub(crate) fn held(&self, choice: &Choice) -> [Held; 2] {
        [0, 1].map(|tape| Held {
            base: choice.pair[tape],
            length: stepped(choice.crossing.lengths[tape], self.step),
        })
    }

    /// Where the printed lengths meet.
    pub(crate) fn lands(&self, choice: &Choice, tapes: [Held; 2], at: Coord<f64>) -> Coord<f64> {
        let bases = choice.pair.map(|base| self.bases.at[base]);
        choice
            .crossing
            .meet(bases, tapes.map(|held| held.length))
            .unwrap_or(at)
    }

    pub(crate) fn is_good(&self, crossing: &Crossing) -> bool {
        (self.angle_good..=180.0 - self.angle_good).contains(&crossing.angle_deg)
    }

    pub(crate) fn ellipse(&self, choice: &Choice) -> Ellipse {
        let sigmas = self.sigmas(&choice.crossing, true);
        let spread = Spread::mark(0, choice.pair, &choice.crossing, sigmas);
        let Ellipse { a, b, theta_deg } =
            axes(&spread.with(&spread, self.bases), times(self.level));
        Ellipse {
            a: millionth(a),
            b: millionth(b),
            theta_deg: millionth(theta_deg),
        }
    }

    /// What moves a key point that is set out, the printed lengths being exact or not.
    pub(crate) fn spread(&self, number: usize, point: &KeyPoint, printed: bool) -> Spread {
        spread(self.bases, number, point, |crossing| {
            self.sigmas(crossing, printed)
        })
    }

    /// For each of the two bases, the best pair without it.
    pub(crate) fn instead(&self, choice: &Choice, at: Coord<f64>, sight: &[Sight]) -> Vec<Instead> {
        choice
            .pair
            .iter()
            .filter_map(|&without| {
                let clear = |base| base != without && sight.get(base) == Some(&Sight::Clear);
                let other = self.pairs(at, clear).into_iter().next()?;
                Some(Instead {
                    without,
                    tapes: self.held(&other),
                    angle_deg: millionth(other.crossing.angle_deg),
                    ellipse: self.ellipse(&other),
                })
            })
            .collect()
    }

    /// Barred bases that would have been in the best pair.
    pub(crate) fn barred(&self, choice: &Choice, at: Coord<f64>, sight: &[Sight]) -> Vec<Barred> {
        let reaches = |base: usize| sight.get(base).is_some_and(|sight| *sight != Sight::Out);
        let Some(best) = self.pairs(at, reaches).into_iter().next() else {
            return Vec::new();
        };
        if best.rms >= choice.rms {
            return Vec::new();
        }
        best.pair
            .iter()
            .filter_map(|&base| match sight.get(base) {
                Some(Sight::Barred(by)) => Some(Barred {
                    base,
                    by: self.question.obstacles.get(*by)?.name.clone(),
                }),
                _ => None,
            })
            .collect()
    }
}

/// What moves a key point, with the standard deviations that `sigmas` gives its tapes. A key
/// point that was not made here and whose tapes do not cross stays where it is.
pub(crate) fn spread(
    bases: &Bases,
    number: usize,
    point: &KeyPoint,
    sigmas: impl Fn(&Crossing) -> [f64; 2],
) -> Spread {
    let pair = point.tapes.map(|held| held.base);
    match crossing(pair.map(|base| bases.at[base]), point.at) {
        Some(crossing) => Spread::mark(number, pair, &crossing, sigmas(&crossing)),
        None => Spread::still(),
    }
}
