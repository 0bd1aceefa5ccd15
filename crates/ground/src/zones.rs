//! Clear zones: one function a rule, under either standard.
//!
//! A zone may be larger than its standard asks, never smaller: what is not known is taken
//! at the figure that errs to safety, and said.

use geo::{Coord, Polygon};
use ledger::{Key, Ledger, Standing};
use note::{Note, msg};

use crate::Standard;
use crate::body::{Body, Part, part};
use crate::figures::*;
use crate::grid::Grid;
use crate::shapes::{self, Rectangle};
use crate::yard::{FixtureKind, More, Seat};

/// A piece of a clear zone.
#[derive(Clone, Debug)]
pub struct Zone {
    /// Its ground; pieces may overlap.
    pub shape: Vec<Polygon<f64>>,
    /// The figure that sets its size.
    pub rule: Key,
    /// Whether no neighbour's zone may share it.
    pub alone: bool,
    /// Whether children fly or slide through it, so that no walk may cross it.
    pub moving: bool,
}

impl Zone {
    fn round(shape: Vec<Polygon<f64>>, rule: Key) -> Zone {
        Zone {
            shape,
            rule,
            alone: false,
            moving: false,
        }
    }

    fn alone(self) -> Zone {
        Zone {
            alone: true,
            ..self
        }
    }

    fn moving(self) -> Zone {
        Zone {
            moving: true,
            ..self
        }
    }
}

/// No fixture of a yard is longer or higher (metres): a larger figure is a slip.
const TALLEST: f64 = 50.0;

/// Makes the zones of a yard's fixtures.
pub struct Rules<'a> {
    pub grid: &'a Grid,
    pub ledger: &'a Ledger,
    pub standard: Standard,
    pub notes: &'a mut Vec<Note>,
}

/// Metres of clear ground, and the figure that says so.
type Reach = (f64, Key);

impl Rules<'_> {
    /// The zones of one fixture; none for what only has a margin.
    pub fn zones(&mut self, body: &Body) -> Vec<Zone> {
        let zones = match (part(body.fixture.is), body.fixture.is) {
            (Part::Standing | Part::Drain, _) => return Vec::new(),
            (_, FixtureKind::Slide) => self.slide(body),
            (_, FixtureKind::Swing) => self.swing(body),
            (_, FixtureKind::TyreSwing) => self.tyre_swing(body),
            (_, FixtureKind::Rocker) => self.rocker(body),
            (_, FixtureKind::Roundabout) => self.roundabout(body),
            (_, FixtureKind::Climber | FixtureKind::Seesaw) => {
                let all_round = self.all_round(body);
                vec![self.within(body, all_round)]
            }
            _ => self.widest(body),
        };
        let from_memory = |zone: &Zone| {
            let figure = self.ledger.figure(zone.rule.0);
            figure.is_some_and(|figure| figure.standing == Standing::Memory && !figure.replaced)
        };
        if zones.iter().any(from_memory) {
            self.notes.push(
                Note::advice(
                    body.fixture.at.clone(),
                    msg!("zone-from-memory", fixture = &body.fixture.name),
                )
                .mend(msg!("zone-use-makers-sheet")),
            );
        }
        zones
    }

    fn number(&self, key: Key) -> f64 {
        self.ledger.number(key)
    }

    /// All ground within reach of the body.
    fn within(&self, body: &Body, (reach, rule): Reach) -> Zone {
        Zone::round(body.grown(self.grid, reach), rule)
    }

    /// The zone round what stands still: 6 ft, or the falling space of its height.
    fn all_round(&mut self, body: &Body) -> Reach {
        match self.standard {
            Standard::UsHandbook => (self.number(STATIONARY), STATIONARY),
            Standard::EuropeanNorm => self.falling_space(body),
        }
    }

    /// x(y): `y` the free height of fall; 1.5 m up to 1.5 m, then 2/3 y + 0.5 m.
    fn falling_space(&mut self, body: &Body) -> Reach {
        let most = self.number(EN_HEIGHT_MOST);
        let height = self.height(body, most);
        if height > most {
            self.notes.push(
                Note::warning(
                    body.fixture.at.clone(),
                    msg!(
                        "fall-too-high",
                        fixture = &body.fixture.name,
                        height = note::Fact::Length(height)
                    ),
                )
                .expected(msg!("fall-at-most", most = note::Fact::Length(most)))
                .mend(msg!("fall-ask-inspector")),
            );
        }
        if height <= self.number(EN_KNEE) {
            (self.number(EN_LEAST), EN_LEAST)
        } else {
            (
                self.number(EN_SLOPE) * height + self.number(EN_OFFSET),
                EN_SLOPE,
            )
        }
    }

    /// The height of fall, or the one that errs to safety.
    fn height(&mut self, body: &Body, otherwise: f64) -> f64 {
        if let Some(height) = body
            .fixture
            .height
            .and_then(|height| self.usable(body, height))
        {
            return height;
        }
        self.notes.push(
            Note::advice(
                body.fixture.at.clone(),
                msg!(
                    "zone-height-unknown",
                    fixture = &body.fixture.name,
                    taken = note::Fact::Length(otherwise)
                ),
            )
            .mend(msg!("zone-tell-height")),
        );
        otherwise
    }

    /// A measure that can be one; else nothing, and a note.
    fn usable(&mut self, body: &Body, measure: f64) -> Option<f64> {
        if (0.0..=TALLEST).contains(&measure) {
            return Some(measure);
        }
        self.notes.push(
            Note::warning(
                body.fixture.at.clone(),
                msg!(
                    "zone-measure-odd",
                    fixture = &body.fixture.name,
                    measure = note::Fact::Length(measure)
                ),
            )
            .expected(msg!(
                "zone-measure-between",
                most = note::Fact::Length(TALLEST)
            )),
        );
        None
    }

    /// 6 ft all round; ahead of the exit its height, at least 6 and at most 8 ft.
    fn slide(&mut self, body: &Body) -> Vec<Zone> {
        let all_round = self.all_round(body);
        let ahead = match self.standard {
            Standard::UsHandbook => {
                let most = self.number(SLIDE_EXIT_MOST);
                let least = self.number(SLIDE_EXIT_LEAST);
                let height = self.height(body, most);
                if height <= least {
                    (least, SLIDE_EXIT_LEAST)
                } else {
                    (height.min(most), SLIDE_EXIT_MOST)
                }
            }
            Standard::EuropeanNorm => {
                greater(all_round, (self.number(EN_SLIDE_EXIT), EN_SLIDE_EXIT))
            }
        };
        let exit = match &body.fixture.more {
            More::Slide { exit: Some([p, q]) } => {
                shapes::direction(*p, *q).map(|way| (*p, way, shapes::length(*q - *p)))
            }
            _ => None,
        };
        let Some((p, way, wide)) = exit else {
            self.notes.push(
                Note::warning(
                    body.fixture.at.clone(),
                    msg!("slide-exit-unknown", fixture = &body.fixture.name),
                )
                .mend(msg!("slide-tell-exit")),
            );
            let reach = greater(ahead, all_round);
            return vec![self.within(body, reach).alone().moving()];
        };
        // ahead is away from the body
        let outward = shapes::cross(way, body.middle() - p) < 0.0;
        let across = if outward {
            [0.0, ahead.0]
        } else {
            [-ahead.0, 0.0]
        };
        let strip = |from: f64, to: f64| {
            Rectangle {
                a: p,
                way,
                along: [from, to],
                across,
            }
            .polygon()
        };
        let side = all_round.0;
        vec![
            Zone::round(vec![strip(0.0, wide)], ahead.1)
                .alone()
                .moving(),
            Zone::round(vec![strip(-side, 0.0), strip(wide, wide + side)], ahead.1).moving(),
            self.within(body, all_round),
        ]
    }

    /// Before and behind, twice the height of the pivot (a bucket seat: pivot to the top
    /// of the seat); 6 ft at the sides.
    fn swing(&mut self, body: &Body) -> Vec<Zone> {
        let (pivot, seat, top) = match &body.fixture.more {
            More::Swing {
                pivot,
                seat,
                seat_top,
            } => (Some(*pivot), *seat, *seat_top),
            _ => (None, Seat::Belt, None),
        };
        let pivot = pivot
            .and_then(|pivot| self.usable(body, pivot))
            .unwrap_or_else(|| {
                let taken = self.ledger.number(SWING_PIVOT_MOST);
                self.notes.push(
                    Note::warning(
                        body.fixture.at.clone(),
                        msg!(
                            "swing-pivot-unknown",
                            fixture = &body.fixture.name,
                            taken = note::Fact::Length(taken)
                        ),
                    )
                    .mend(msg!("swing-tell-pivot")),
                );
                taken
            });
        let top = top.filter(|&top| seat == Seat::Bucket && top > 0.0 && top < pivot);
        if seat == Seat::Bucket && top.is_none() {
            self.notes.push(
                Note::advice(
                    body.fixture.at.clone(),
                    msg!("swing-seat-unknown", fixture = &body.fixture.name),
                )
                .mend(msg!("swing-tell-seat")),
            );
        }
        let hangs = pivot - top.unwrap_or(0.0);
        let handbook = (self.number(SWING_FACTOR) * hangs, SWING_FACTOR);
        let (each_way, sides) = match self.standard {
            Standard::UsHandbook => (handbook, (self.number(SWING_SIDES), SWING_SIDES)),
            // the norm's own lengths are from memory: the longer of the two is kept
            Standard::EuropeanNorm => {
                let norm = self.number(EN_SWING_FACTOR) * hangs + self.number(EN_SWING_ADD);
                let sides = self.falling_space(body);
                (greater(handbook, (norm, EN_SWING_ADD)), sides)
            }
        };
        let Some(beam) = Beam::of(body) else {
            let reach = greater(each_way, sides);
            return vec![self.within(body, reach).alone().moving()];
        };
        let deep = each_way.0;
        let strip = |along: [f64; 2]| {
            Rectangle {
                a: beam.a,
                way: beam.way,
                along,
                across: [-deep, deep],
            }
            .polygon()
        };
        let ends = [
            strip([-sides.0, 0.0]),
            strip([beam.long, beam.long + sides.0]),
        ];
        vec![
            Zone::round(vec![strip([0.0, beam.long])], each_way.1)
                .alone()
                .moving(),
            Zone::round(ends.to_vec(), sides.1).moving(),
            self.within(body, sides),
        ]
    }

    /// A disc round the point below the pivot: the members and 6 ft; 6 ft round the frame.
    fn tyre_swing(&mut self, body: &Body) -> Vec<Zone> {
        let members = match &body.fixture.more {
            More::TyreSwing { members } => self.usable(body, *members),
            _ => None,
        };
        let members = members.unwrap_or_else(|| {
            let taken = self.ledger.number(SWING_PIVOT_MOST);
            self.notes.push(
                Note::warning(
                    body.fixture.at.clone(),
                    msg!(
                        "swing-members-unknown",
                        fixture = &body.fixture.name,
                        taken = note::Fact::Length(taken)
                    ),
                )
                .mend(msg!("swing-tell-members")),
            );
            taken
        });
        let handbook = (members + self.number(TYRE_SWING_ADD), TYRE_SWING_ADD);
        let (radius, frame) = match self.standard {
            Standard::UsHandbook => (handbook, (self.number(STATIONARY), STATIONARY)),
            Standard::EuropeanNorm => {
                let norm = self.number(EN_SWING_FACTOR) * members + self.number(EN_SWING_ADD);
                (
                    greater(handbook, (norm, EN_SWING_ADD)),
                    self.falling_space(body),
                )
            }
        };
        let disc = shapes::disc(body.middle(), radius.0);
        vec![
            Zone::round(vec![disc], radius.1).alone().moving(),
            self.within(body, frame),
        ]
    }

    fn rocker(&mut self, body: &Body) -> Vec<Zone> {
        let standing = matches!(body.fixture.more, More::Rocker { standing: true });
        match self.standard {
            Standard::UsHandbook if standing => {
                let reach = (self.number(ROCKER_STANDING), ROCKER_STANDING);
                vec![self.within(body, reach).alone()]
            }
            Standard::UsHandbook => {
                vec![self.within(body, (self.number(ROCKER_SEATED), ROCKER_SEATED))]
            }
            Standard::EuropeanNorm => {
                let reach = self.falling_space(body);
                vec![self.within(body, reach)]
            }
        }
    }

    fn roundabout(&mut self, body: &Body) -> Vec<Zone> {
        let reach = match self.standard {
            Standard::UsHandbook => (self.number(ROUNDABOUT), ROUNDABOUT),
            Standard::EuropeanNorm => {
                let own = (self.number(EN_ROUNDABOUT), EN_ROUNDABOUT);
                greater(own, self.falling_space(body))
            }
        };
        vec![self.within(body, reach).alone()]
    }

    /// No rule covers it: the widest zone that the standard draws round anything still.
    fn widest(&mut self, body: &Body) -> Vec<Zone> {
        let reach = match self.standard {
            Standard::UsHandbook => (self.number(SLIDE_EXIT_MOST), SLIDE_EXIT_MOST),
            Standard::EuropeanNorm => {
                let most = self.number(EN_HEIGHT_MOST);
                (
                    self.number(EN_SLOPE) * most + self.number(EN_OFFSET),
                    EN_SLOPE,
                )
            }
        };
        self.notes.push(
            Note::warning(
                body.fixture.at.clone(),
                msg!(
                    "zone-no-rule",
                    fixture = &body.fixture.name,
                    taken = note::Fact::Length(reach.0)
                ),
            )
            .mend(msg!("zone-name-kind")),
        );
        vec![self.within(body, reach)]
    }
}

fn greater(one: Reach, other: Reach) -> Reach {
    if other.0 > one.0 { other } else { one }
}

/// The line below a swing's beam.
struct Beam {
    a: Coord<f64>,
    way: Coord<f64>,
    long: f64,
}

impl Beam {
    /// A beam as it is given, or the middle line of an outline along its longest side.
    fn of(body: &Body) -> Option<Beam> {
        if let [a, b] = body.ring.as_slice() {
            let way = shapes::direction(*a, *b)?;
            return Some(Beam {
                a: *a,
                way,
                long: shapes::length(*b - *a),
            });
        }
        let sides = body.ring.iter().zip(body.ring.iter().cycle().skip(1));
        let (a, b) = sides.fold(
            None,
            |longest: Option<(Coord<f64>, Coord<f64>)>, (&a, &b)| match longest {
                Some((p, q)) if shapes::length(q - p) >= shapes::length(b - a) => longest,
                _ => Some((a, b)),
            },
        )?;
        let way = shapes::direction(a, b)?;
        let spread = |axis: Coord<f64>| {
            body.ring
                .iter()
                .map(|&at| shapes::dot(at - a, axis))
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
                    (low.min(at), high.max(at))
                })
        };
        let ((begin, end), (right, left)) = (spread(way), spread(shapes::left(way)));
        let start = a + way * begin + shapes::left(way) * ((left + right) / 2.0);
        Some(Beam {
            a: start,
            way,
            long: end - begin,
        })
    }
}
