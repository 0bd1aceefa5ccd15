//! A job as works that the solver knows.

use geo::{Coord, Distance, Euclidean, Point};
use ledger::{Key, Ledger};
use marking::Colour;

use crate::air::Times;
use crate::figures::*;
use crate::question::{Hands, Job, Marking, Piece, Way};
use crate::result::{Kind, Part, Step};
use crate::schedule::{Apart, Clock, Link, Wait, Work};

/// Resources before the stencils: people, sets of tapes.
pub(crate) const PEOPLE: usize = 0;
pub(crate) const TAPES: usize = 1;
pub(crate) const STENCILS: usize = 2;

/// Coats that anyone gives.
const MOST_COATS: u32 = 10;

/// What a work is in the yard.
pub(crate) struct Meaning {
    pub kind: Kind,
    pub marking: usize,
    pub colour: Option<Colour>,
    pub coat: u32,
    pub stencil: Option<usize>,
    pub parts: Vec<Part>,
}

/// The works of a job and what binds them.
pub(crate) struct Works {
    pub works: Vec<Work>,
    pub meanings: Vec<Meaning>,
    pub links: Vec<Link>,
    pub apart: Vec<Apart>,
    pub capacity: Vec<u32>,
    /// The marking whose last coat begins last.
    pub last: Option<usize>,
}

/// Whole seconds of so many minutes for each of something.
fn seconds(minutes: f64, times: f64) -> i64 {
    let all = minutes * times * 60.0;
    if all.is_finite() && all > 0.0 {
        // A year of minutes is no task; what is longer fits into no day anyhow.
        all.round().min(3.2e7) as i64
    } else {
        0
    }
}

/// A figure in minutes, in whole seconds.
pub(crate) fn minutes(key: Key, ledger: &Ledger) -> i64 {
    seconds(ledger.number(key), 1.0)
}

/// The clock that work goes by, from the first hour on.
pub(crate) fn pace(job: &Job, ledger: &Ledger) -> Clock {
    match (job.hands, job.windows.first()) {
        (Hands::New, Some(first)) => Clock::new(&[
            (first.from_s, ledger.number(NEW_HANDS)),
            (first.from_s + minutes(NEW_FOR, ledger), 1.0),
        ]),
        _ => Clock::even(),
    }
}

struct Maker<'a> {
    job: &'a Job,
    ledger: &'a Ledger,
    works: Works,
}

/// All works of a job.
pub(crate) fn works(job: &Job, ledger: &Ledger) -> Works {
    let mut capacity = vec![job.people, job.tapes.max(1)];
    capacity.extend(job.stencils.iter().map(|stencil| stencil.copies.max(1)));
    let mut maker = Maker {
        job,
        ledger,
        works: Works {
            works: Vec::new(),
            meanings: Vec::new(),
            links: Vec::new(),
            apart: Vec::new(),
            capacity,
            last: None,
        },
    };
    for (number, marking) in job.markings.iter().enumerate() {
        maker.marking(number, marking);
    }
    maker.neighbours();
    maker.nearest_last();
    maker.works
}

impl Maker<'_> {
    fn marking(&mut self, number: usize, marking: &Marking) {
        let figure = |key: Key| self.ledger.number(key);
        let foot = Times::of(self.ledger).foot;
        let sweep = seconds(figure(SWEEP), marking.swept);
        let prime = seconds(figure(PRIME), marking.primed);
        let points = seconds(figure(SETOUT), f64::from(marking.key_points));
        // What comes before all paint, each after the one before.
        let mut before: Option<(usize, i64)> = None;
        let washed = minutes(DRY_WASH, self.ledger);
        for (kind, long, hands, dry) in [
            (Kind::Sweep, sweep, HANDS_SWEEP, washed),
            (Kind::Prime, prime, HANDS_PRIME, foot),
            (Kind::SetOut, points, HANDS_SETOUT, 0),
        ] {
            if long == 0 {
                continue;
            }
            let made = self.work(number, kind, long, hands);
            if kind == Kind::Prime {
                self.works.works[made].wet = Some(foot);
            }
            if kind == Kind::SetOut {
                self.take(made, TAPES);
            }
            self.link(before, made);
            before = Some((made, dry));
        }
        let mut coats: Vec<(Colour, Vec<usize>)> = Vec::new();
        for piece in &marking.pieces {
            let made = self.piece(number, piece, before);
            // Another colour only beside paint that is dry to the touch.
            let touch = Times::of(self.ledger).touch;
            let others = coats.iter().filter(|(colour, _)| *colour != piece.colour);
            for other in others.flat_map(|(_, works)| works) {
                for coat in &made {
                    self.works.apart.push(Apart {
                        works: [*other, *coat],
                        dry: [touch, touch],
                    });
                }
            }
            coats.push((piece.colour, made));
        }
    }

    /// All coats of a colour, the first first.
    fn piece(&mut self, number: usize, piece: &Piece, before: Option<(usize, i64)>) -> Vec<usize> {
        let figure = |key: Key| self.ledger.number(key);
        let recoat = Times::of(self.ledger).recoat;
        let foot = Times::of(self.ledger).foot;
        let mut before = before;
        if let Way::Masked { length } = piece.way {
            let long = seconds(figure(MASK), length);
            if long > 0 {
                let made = self.work(number, Kind::Mask, long, HANDS_MASK);
                self.works.meanings[made].colour = Some(piece.colour);
                self.link(before, made);
                before = Some((made, 0));
            }
        }
        let many = piece.coats.clamp(1, MOST_COATS);
        let mut coats = Vec::new();
        for coat in 1..=many {
            let roll = (Step::Roll, seconds(figure(ROLL), piece.area));
            let parts: Vec<(Step, i64)> = match piece.way {
                Way::Stencil { placed, .. } => vec![
                    (Step::Place, seconds(figure(PLACE), f64::from(placed))),
                    roll,
                    (Step::Lift, seconds(figure(LIFT), f64::from(placed))),
                ],
                Way::Masked { length } if coat == many => {
                    vec![roll, (Step::Pull, seconds(figure(PULL), length))]
                }
                Way::Masked { .. } => vec![roll],
                Way::Free { edge } => vec![(Step::Edge, seconds(figure(EDGE), edge)), roll],
            };
            let long = parts.iter().map(|(_, seconds)| seconds).sum();
            if long == 0 {
                continue;
            }
            let hands = match piece.way {
                Way::Stencil { .. } => HANDS_STENCIL,
                Way::Masked { .. } | Way::Free { .. } => HANDS_FILL,
            };
            let made = self.work(number, Kind::Coat, long, hands);
            self.works.works[made].wet = Some(foot);
            let meaning = &mut self.works.meanings[made];
            meaning.colour = Some(piece.colour);
            meaning.coat = coat;
            meaning.parts = parts
                .into_iter()
                .filter(|(_, seconds)| *seconds > 0)
                .map(|(step, seconds)| Part { step, seconds })
                .collect();
            if let Way::Stencil { stencil, .. } = piece.way {
                meaning.stencil = Some(stencil);
                self.take(made, STENCILS + stencil);
            }
            self.link(before, made);
            before = Some((made, recoat));
            coats.push(made);
        }
        coats
    }

    /// A work with its people.
    fn work(&mut self, marking: usize, kind: Kind, seconds: i64, hands: Key) -> usize {
        let people = self.ledger.number(hands).round().clamp(1.0, 1000.0) as u32;
        let mut needs = vec![0; self.works.capacity.len()];
        needs[PEOPLE] = people;
        self.works.works.push(Work {
            seconds,
            needs,
            place: Some(marking),
            wet: None,
        });
        self.works.meanings.push(Meaning {
            kind,
            marking,
            colour: None,
            coat: 0,
            stencil: None,
            parts: Vec::new(),
        });
        self.works.works.len() - 1
    }

    fn take(&mut self, work: usize, resource: usize) {
        if let Some(need) = self.works.works[work].needs.get_mut(resource) {
            *need = 1;
        }
    }

    fn link(&mut self, before: Option<(usize, i64)>, to: usize) {
        if let Some((from, dry)) = before {
            self.works.links.push(Link {
                from,
                to,
                wait: Wait::Dry(dry),
            });
        }
    }

    /// Nobody works beside paint of another marking that feet may not cross.
    fn neighbours(&mut self) {
        let room = self.ledger.number(BESIDE);
        let markings = &self.job.markings;
        let near = |a: usize, b: usize| {
            Euclidean.distance(&markings[a].outline, &markings[b].outline) < room
        };
        let pairs: Vec<(usize, usize)> = (0..markings.len())
            .flat_map(|a| (a + 1..markings.len()).map(move |b| (a, b)))
            .filter(|(a, b)| near(*a, *b))
            .collect();
        let works = &self.works;
        let mut apart = Vec::new();
        for (a, b) in pairs {
            for (first, one) in works.works.iter().enumerate() {
                for (second, other) in works.works.iter().enumerate() {
                    let here = one.place == Some(a) && other.place == Some(b);
                    if here && (one.wet.is_some() || other.wet.is_some()) {
                        apart.push(Apart {
                            works: [first, second],
                            dry: [one.wet.unwrap_or(0), other.wet.unwrap_or(0)],
                        });
                    }
                }
            }
        }
        self.works.apart.extend(apart);
    }

    /// The marking by the way out: the last coat of its last colour begins after those of all
    /// other markings have.
    fn nearest_last(&mut self) {
        let doors: Vec<Coord<f64>> = self.job.doors.iter().map(|door| door.at).collect();
        let off = |marking: usize| {
            doors
                .iter()
                .map(|door| Euclidean.distance(&Point(*door), &self.job.markings[marking].outline))
                .fold(f64::INFINITY, f64::min)
        };
        let finals = |works: &Works, of: &dyn Fn(usize) -> bool| -> Vec<usize> {
            (0..works.works.len())
                .filter(|work| of(works.meanings[*work].marking))
                .filter(|work| works.meanings[*work].kind == Kind::Coat)
                .filter(|work| {
                    let coat = |to: usize| works.meanings[to].kind == Kind::Coat;
                    !works
                        .links
                        .iter()
                        .any(|link| link.from == *work && coat(link.to))
                })
                .collect()
        };
        let painted: Vec<usize> = (0..self.job.markings.len())
            .filter(|marking| !finals(&self.works, &|of| of == *marking).is_empty())
            .collect();
        if doors.is_empty() || painted.len() < 2 {
            return;
        }
        let nearest = painted
            .into_iter()
            .min_by(|a, b| off(*a).total_cmp(&off(*b)));
        let Some(nearest) = nearest else { return };
        let before = finals(&self.works, &|of| of != nearest);
        let after = finals(&self.works, &|of| of == nearest).pop();
        let links = before.into_iter().zip(after.iter().cycle());
        self.works.links.extend(links.map(|(from, &to)| Link {
            from,
            to,
            wait: Wait::Begun,
        }));
        self.works.last = Some(nearest);
    }
}
