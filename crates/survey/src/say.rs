//! What the person who taped should hear.

use note::{Fact, Note, msg};

use crate::check::{self, name, names, shown};
use crate::frame::Frame;
use crate::mirror::{Image, Settled};
use crate::network::{Datum, Kind, Network, PointId, Walked};
use crate::result::{Help, Slip, Survey};
use crate::shape;

/// A note names so many readings at most, and counts the rest.
const NAMED: usize = 8;

/// Everything beside the answer that the notes draw on.
pub(crate) struct Heard<'a> {
    pub(crate) network: &'a Network,
    pub(crate) frame: &'a Frame,
    pub(crate) images: &'a [Image],
    /// Points of each part that no reading joins to the first.
    pub(crate) islands: &'a [Vec<PointId>],
    pub(crate) survey: &'a Survey,
    /// A reading of less redundancy is unchecked.
    pub(crate) unchecked: f64,
    /// A longer ellipse is weak, metres.
    pub(crate) weak: f64,
}

pub(crate) fn notes(heard: &Heard) -> Vec<Note> {
    let mut notes = Vec::new();
    heard.frame(&mut notes);
    heard.loose(&mut notes);
    heard.images(&mut notes);
    heard.readings(&mut notes);
    heard.boundary(&mut notes);
    notes
}

impl Heard<'_> {
    fn names(&self, points: &[PointId]) -> Vec<String> {
        points.iter().map(|&p| name(self.network, p)).collect()
    }

    fn frame(&self, notes: &mut Vec<Note>) {
        let network = self.network;
        let known: Vec<_> = network
            .readings
            .iter()
            .filter(|r| r.kind.is_known())
            .collect();
        if let (false, Some(first)) = (self.frame.known_rules, known.first()) {
            notes.push(
                Note::warning(first.at.clone(), msg!("survey-known-too-few"))
                    .expected(msg!("survey-known-two"))
                    .mend(msg!("survey-known-add-or-strike")),
            );
        }
        if let (
            Datum::Line { origin, towards },
            Datum::Line {
                origin: o,
                towards: t,
            },
        ) = (network.datum, self.survey.datum)
            && (origin, towards) != (o, t)
        {
            let line = self.names(&[origin, towards]);
            notes.push(
                Note::warning(network.at.clone(), msg!("survey-line-loose", line = line))
                    .expected(msg!("survey-line-used", line = self.names(&[o, t])))
                    .mend(msg!("survey-line-tape-or-choose")),
            );
        }
        for island in self.islands {
            notes.push(
                Note::warning(
                    self.first_mention(island),
                    msg!("survey-not-joined", points = self.names(island)),
                )
                .mend(msg!("survey-join-by-three")),
            );
        }
    }

    /// Where the first reading of any of the points stands.
    fn first_mention(&self, points: &[PointId]) -> Option<note::Place> {
        let mentions = |r: &&crate::network::Reading| r.kind.points().any(|p| points.contains(&p));
        let reading = self.network.readings.iter().find(mentions);
        reading
            .and_then(|r| r.at.clone())
            .or_else(|| self.network.at.clone())
    }

    fn is_corner(&self, points: &[PointId]) -> bool {
        points.iter().any(|p| self.network.boundary.contains(p))
    }

    /// A loose corner stops the plan; another loose point is for its user to mind.
    fn severe(&self, points: &[PointId], what: note::Message) -> Note {
        let at = self.first_mention(points);
        if self.is_corner(points) {
            Note::error(at, what)
        } else {
            Note::warning(at, what)
        }
    }

    fn loose(&self, notes: &mut Vec<Note>) {
        let told = |p: PointId| {
            self.islands.iter().any(|i| i.contains(&p))
                || self.images.iter().any(|i| i.part.contains(&p))
        };
        let loose = |p: &PointId| self.survey.points[*p].loose && !told(*p);
        for p in (0..self.network.points.len()).filter(loose) {
            let what = msg!("survey-point-loose", point = name(self.network, p));
            let fix = self
                .survey
                .next_readings
                .iter()
                .find(|n| n.helps == Help::Fixes(p));
            let mend = match fix {
                Some(next) => msg!("survey-tape-next", line = self.names(&[next.from, next.to])),
                None => msg!("survey-tape-to-two-more"),
            };
            notes.push(self.severe(&[p], what).mend(mend));
        }
        self.weak(notes);
    }

    /// All weak points in one note: a yard traced from a map has no others.
    fn weak(&self, notes: &mut Vec<Note>) {
        let axis = |point: &crate::result::Point| point.ellipse.map_or(0.0, |e| e.a);
        let weak: Vec<PointId> = (0..self.survey.points.len())
            .filter(|&p| axis(&self.survey.points[p]) > self.weak)
            .collect();
        let worst = weak
            .iter()
            .map(|&p| axis(&self.survey.points[p]))
            .fold(0.0, f64::max);
        let named = self.names(&weak[..weak.len().min(NAMED)]);
        let what = match weak.len() - named.len() {
            _ if weak.is_empty() => return,
            0 => msg!(
                "survey-points-weak",
                points = named,
                count = weak.len(),
                axis = Fact::Length(worst)
            ),
            others => msg!(
                "survey-points-weak-and",
                points = named.join(", "),
                others = others,
                axis = Fact::Length(worst)
            ),
        };
        notes.push(Note::warning(self.first_mention(&weak), what).mend(msg!("survey-tape-across")));
    }

    fn images(&self, notes: &mut Vec<Note>) {
        for image in self.images {
            let (points, line) = (self.names(&image.part), self.names(&image.across));
            match image.settled {
                Settled::Told => {}
                Settled::Assumed => notes.push(
                    Note::advice(
                        self.first_mention(&image.part),
                        msg!("survey-side-assumed", points = points, line = line),
                    )
                    .mend(msg!("survey-tape-from-elsewhere")),
                ),
                Settled::Open => notes.push(
                    self.severe(
                        &image.part,
                        msg!("survey-two-places", points = points, line = line),
                    )
                    .mend(msg!("survey-tape-from-elsewhere")),
                ),
            }
        }
    }

    fn readings(&self, notes: &mut Vec<Note>) {
        let network = self.network;
        let mut told = vec![false; network.readings.len()];
        for suspect in &self.survey.suspects {
            let Some(&first) = suspect.readings.first() else {
                continue;
            };
            let reading = &network.readings[first];
            let reads = shown(reading.kind, reading.value);
            let mut note = if suspect.set_aside {
                let should = shown(reading.kind, suspect.should_read);
                let points = names(network, reading.kind).join("-");
                let what = msg!(
                    "survey-reading-doubtful",
                    points = points,
                    reads = reads,
                    should = should
                );
                Note::warning(reading.at.clone(), what)
            } else {
                let lines = suspect
                    .readings
                    .iter()
                    .map(|&n| names(network, network.readings[n].kind).join("-"));
                let what = msg!(
                    "survey-readings-doubtful",
                    lines = lines.collect::<Vec<_>>()
                );
                Note::warning(reading.at.clone(), what)
            };
            if let Some(slip) = suspect.guess.filter(|_| suspect.set_aside) {
                note = note.expected(guess(slip));
            }
            let mend = if suspect.set_aside {
                "survey-tape-again"
            } else {
                "survey-tape-one-more"
            };
            note = note.mend(note::Message {
                key: mend,
                facts: Vec::new(),
            });
            for &other in &suspect.readings {
                told[other] = true;
                if other != first {
                    note = note.also(network.readings[other].at.clone());
                }
            }
            notes.push(note);
        }
        for (number, round, via) in check::longer_than_round(network) {
            if told[number] {
                continue;
            }
            let reading = &network.readings[number];
            let what = msg!(
                "survey-longer-than-round",
                points = names(network, reading.kind),
                reads = shown(reading.kind, reading.value),
                via = name(network, via),
                round = Fact::Length(round)
            );
            notes.push(Note::warning(reading.at.clone(), what).mend(msg!("survey-tape-again")));
        }
        let test = self.survey.global_test;
        if !test.passed && self.survey.suspects.is_empty() {
            let what = msg!(
                "survey-readings-disagree",
                times = Fact::Number(self.survey.s0, 1),
                alpha = Fact::Number(test.alpha * 100.0, 1)
            );
            notes.push(
                Note::warning(network.at.clone(), what).mend(msg!("survey-check-sigma-or-tape")),
            );
        }
        let unchecked = self.unchecked_lengths();
        if let Some(&first) = unchecked.first() {
            let mut lines: Vec<String> = unchecked
                .iter()
                .map(|&n| names(network, network.readings[n].kind).join("-"))
                .collect();
            let count = lines.len();
            lines.truncate(NAMED);
            let more = count - lines.len();
            let what = msg!(
                "survey-unchecked",
                count = count,
                lines = lines,
                more = more
            );
            let mut note = Note::advice(network.readings[first].at.clone(), what);
            if let Some(next) = self.survey.next_readings.first() {
                note = note.mend(msg!(
                    "survey-tape-next",
                    line = self.names(&[next.from, next.to])
                ));
            }
            notes.push(note);
        }
    }

    /// Taped lengths that hardly any other reading checks. Offsets and the like are left
    /// out: nothing ever checks a point that is only offset, and whoever sets it knows.
    fn unchecked_lengths(&self) -> Vec<usize> {
        let readings = &self.network.readings;
        (0..readings.len())
            .filter(|&n| {
                let adjusted = &self.survey.readings[n];
                let taped = matches!(readings[n].kind, Kind::Distance { .. });
                taped && !adjusted.set_aside && adjusted.r < self.unchecked && !self.fixed(n)
            })
            .collect()
    }

    /// Whether a reading only fixes a known coordinate, or took no part.
    fn fixed(&self, number: usize) -> bool {
        let reading = &self.network.readings[number];
        reading.kind.is_known() && !self.frame.uses(reading)
            || matches!(reading.kind, Kind::KnownX { .. } | Kind::KnownY { .. })
    }

    fn boundary(&self, notes: &mut Vec<Note>) {
        let network = self.network;
        let boundary = &network.boundary;
        if boundary.len() < 3 {
            let what = msg!("survey-boundary-short", count = boundary.len());
            notes.push(Note::warning(network.at.clone(), what).mend(msg!("survey-boundary-three")));
            return;
        }
        let points = &self.survey.points;
        let ring: Vec<[f64; 2]> = boundary
            .iter()
            .map(|&p| [points[p].x, points[p].y])
            .collect();
        let side = |i: usize| self.names(&[boundary[i], boundary[(i + 1) % boundary.len()]]);
        if let Some(&(i, j)) = shape::crossings(&ring).first() {
            let what = msg!("survey-boundary-crosses", first = side(i), second = side(j));
            notes.push(Note::error(network.at.clone(), what).mend(msg!("survey-boundary-order")));
        } else if (shape::signed_area(&ring) > 0.0) != (network.walked == Walked::Anticlockwise) {
            notes.push(
                Note::warning(network.at.clone(), msg!("survey-walked-other-way"))
                    .mend(msg!("survey-check-walked")),
            );
        }
    }
}

fn guess(slip: Slip) -> note::Message {
    let signed = |count: i32| Fact::Number(f64::from(count), 0);
    match slip {
        Slip::WholeMetres(count) => msg!("survey-slip-metres", count = signed(count)),
        Slip::WholeFeet(count) => msg!("survey-slip-feet", count = signed(count)),
        Slip::Tenths(count) => msg!("survey-slip-tenths", count = signed(count)),
        Slip::SwappedDigits(should) => msg!("survey-slip-digits", should = Fact::Length(should)),
        Slip::FootForInch(should) => msg!("survey-slip-foot-inch", should = Fact::Length(should)),
        Slip::Hook(length) => msg!("survey-slip-hook", length = Fact::Length(length.abs())),
    }
}
