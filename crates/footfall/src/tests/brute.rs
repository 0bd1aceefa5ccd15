//! Every route of small random figures, one by one, against the kept ones.
//!
//! Written from the page once more: contacts straight from the formula, no tables, no
//! spacings, no dynamic programming, no stored products.

use proptest::prelude::*;

use super::*;
use std::collections::BTreeMap;

use crate::chance::{GRID, HALF_GRID, WEIGHTS, z_at};
use crate::contact::landings;
use crate::gait::{Contact, Flight, Follow, GAITS, Gait, Stand, practice};
use crate::landing::{landing, overlap};
use crate::normal::log_phi;
use crate::tread::go;
use crate::ways::Ways;
use children::Side;

/// Flights: every route up to here is tried.
const LONGEST: usize = 5;

fn phi(x: f64) -> f64 {
    0.5 * libm::erfc(-x / std::f64::consts::SQRT_2)
}

/// One route with the states it passes.
#[derive(Clone)]
struct Walked {
    cells: Vec<usize>,
    states: Vec<Stand>,
    /// Number of the gait's line at each contact.
    lines: Vec<usize>,
}

struct Trial<'a> {
    figure: &'a Figure,
    child: &'a Child,
    gait: &'a Gait,
    foot: Option<Side>,
    /// A by cell.
    landings: Vec<f64>,
}

impl Trial<'_> {
    fn takes(&self, cell: usize, contact: Contact) -> bool {
        match (self.figure.cells[cell].takes, contact) {
            (Takes::Either, _) => true,
            (Takes::Both, contact) => contact == Contact::B,
            (Takes::One, contact) => contact != Contact::B,
            (Takes::Left, contact) => contact == Contact::L,
            (Takes::Right, contact) => contact == Contact::R,
        }
    }

    fn foot_of(contact: Contact) -> Option<Side> {
        match contact {
            Contact::R => Some(Side::Right),
            Contact::L => Some(Side::Left),
            Contact::B => None,
        }
    }

    /// Displacement from one cell to another.
    fn by(&self, from: usize, to: usize) -> (f64, f64) {
        let (a, b) = (self.figure.cells[from].centre, self.figure.cells[to].centre);
        (b.x - a.x, b.y - a.y)
    }

    /// All routes of up to so many flights.
    fn walks(&self) -> Vec<Walked> {
        let mut done = Vec::new();
        for start in (0..self.figure.cells.len()).filter(|start| self.figure.cells[*start].start) {
            let phase = if self.figure.cells[start].run_up {
                self.gait.free_run_up
            } else {
                0
            };
            for contact in [Contact::R, Contact::L, Contact::B] {
                let bound =
                    self.gait.name != "leap" && self.foot.is_some() && contact != Contact::B;
                let wrong = bound && Trial::foot_of(contact) != self.foot;
                if self.takes(start, contact) && !wrong {
                    let state = Stand { contact, phase };
                    self.lengthen(
                        Walked {
                            cells: vec![start],
                            states: vec![state],
                            lines: Vec::new(),
                        },
                        &mut done,
                    );
                }
            }
        }
        done
    }

    fn lengthen(&self, walked: Walked, done: &mut Vec<Walked>) {
        let here = walked.cells[walked.cells.len() - 1];
        let state = walked.states[walked.states.len() - 1];
        if !walked.lines.is_empty() && self.figure.cells[here].end && state.phase >= self.gait.done
        {
            done.push(walked.clone());
        }
        if walked.lines.len() == LONGEST {
            return;
        }
        for there in 0..self.figure.cells.len() {
            let follows = match &self.figure.cells[here].next {
                Some(next) => next.contains(&there),
                None => true,
            };
            let back = walked.cells.len() >= 2 && walked.cells[walked.cells.len() - 2] == there;
            if !follows || back || there == here || !self.travels(here, there) {
                continue;
            }
            for (line, follow) in self.gait.follows.iter().enumerate() {
                let bound = match (self.gait.name, follow.then.phase, follow.after.phase) {
                    ("leap", 3, before) => before < 3,
                    ("leap", ..) => false,
                    _ => follow.then.contact != Contact::B,
                };
                let wrong = bound
                    && self.foot.is_some()
                    && Trial::foot_of(follow.then.contact) != self.foot;
                if follow.after == state && self.takes(there, follow.then.contact) && !wrong {
                    let mut longer = walked.clone();
                    longer.cells.push(there);
                    longer.states.push(follow.then);
                    longer.lines.push(line);
                    self.lengthen(longer, done);
                }
            }
        }
    }

    fn alpha(&self, from: usize, to: usize) -> Option<f64> {
        let (x, y) = self.by(from, to);
        self.figure.facing.map(|facing| libm::atan2(y, x) - facing)
    }

    /// A slide goes 60 to 120 degrees off the facing.
    fn travels(&self, from: usize, to: usize) -> bool {
        match self.alpha(from, to) {
            Some(alpha) if self.gait.name == "slide" => libm::cos(alpha).abs() <= 0.5 + 1e-9,
            _ => true,
        }
    }

    fn rho(&self, follow: &Follow, z: f64) -> f64 {
        let reach = follow.reach(self.child).expect("a reach");
        (reach.m + reach.tau * z).max(0.3 * reach.m)
    }

    fn d(&self, walked: &Walked, contact: usize) -> f64 {
        let (x, y) = self.by(walked.cells[contact], walked.cells[contact + 1]);
        libm::hypot(x, y)
    }

    /// q, A and Phi's argument of one contact.
    fn contact(&self, walked: &Walked, contact: usize, z: f64) -> (f64, f64, f64) {
        let follow = &self.gait.follows[walked.lines[contact]];
        let (from, to) = (walked.cells[contact], walked.cells[contact + 1]);
        let phi = match contact {
            0 => 0.0,
            _ => {
                let (before, here) = (self.by(walked.cells[contact - 1], from), self.by(from, to));
                libm::atan2(here.1, here.0) - libm::atan2(before.1, before.0)
            }
        };
        let g = match follow.flight {
            Flight::Walk => 0.1,
            Flight::Run | Flight::Gallop => 0.5,
            Flight::Leap => 0.6,
            _ => 0.3,
        };
        let k = match self.alpha(from, to) {
            Some(alpha) if self.gait.name != "slide" => {
                0.75 + 0.25 * libm::cos(alpha) - 0.05 * libm::sin(alpha) * libm::sin(alpha)
            }
            _ => 1.0,
        };
        let rho = self.rho(follow, z);
        let r = rho * (1.0 - g * (1.0 - libm::cos(phi)) / 2.0) * k;
        let q = self.child.skills[&follow.steady].steady;
        let a = self.landings[to];
        (q, a, 1.2816 + (r - self.d(walked, contact)) / (0.1 * rho))
    }

    fn p(&self, walked: &Walked, contact: usize, z: f64) -> f64 {
        let (q, a, x) = self.contact(walked, contact, z);
        q * a * phi(x)
    }

    fn pi(&self, walked: &Walked, z: f64) -> f64 {
        (0..walked.lines.len())
            .map(|contact| self.p(walked, contact, z))
            .product()
    }

    fn log_pi(&self, walked: &Walked) -> f64 {
        let log = |contact| {
            let (q, a, x) = self.contact(walked, contact, 0.0);
            libm::log(q) + libm::log(a) + log_phi(x)
        };
        (0..walked.lines.len()).map(log).sum()
    }

    fn good(&self, walked: &Walked, z: f64) -> f64 {
        let (mut pi, mut good) = (1.0, 0.0);
        for (contact, line) in walked.lines.iter().enumerate() {
            pi *= self.p(walked, contact, z);
            if !practice(self.gait, &self.gait.follows[*line]).is_empty() {
                good += pi;
            }
        }
        good
    }

    fn overlaps(&self, walked: &Walked) -> bool {
        let cells = &self.figure.cells;
        walked
            .cells
            .windows(2)
            .any(|two| overlap(&cells[two[0]], &cells[two[1]], 1e-5))
    }

    /// Apart from cells that share ground.
    fn well_pitched(&self, walked: &Walked, z: f64) -> bool {
        let rounded = (self.pi(walked, z) * 1e6).round() / 1e6;
        let n = walked.lines.len();
        let stretch = (0..n)
            .map(|contact| {
                self.d(walked, contact) / self.rho(&self.gait.follows[walked.lines[contact]], z)
            })
            .sum::<f64>()
            / n as f64;
        (0.5..=0.9).contains(&rounded) && stretch >= 0.6 - 1e-12
    }

    /// The most likely of one start and length; among equals contact by contact the right
    /// foot first, then the smallest cell.
    /// Whether some route is about 1e-12 worse in log than the best of its start and length.
    fn on_the_edge_of_a_tie(&self) -> bool {
        let walks = self.walks();
        let mut by_kind: BTreeMap<(usize, usize), Vec<f64>> = BTreeMap::new();
        for walked in &walks {
            let kind = (walked.cells[0], walked.lines.len());
            by_kind.entry(kind).or_default().push(self.log_pi(walked));
        }
        by_kind.values().any(|logs| {
            let best = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            let edge = 5e-13..2e-12 + 1e-13 * best.abs();
            logs.iter().any(|log| edge.contains(&(best - log)))
        })
    }

    fn kept(&self) -> Vec<Walked> {
        let walks = self.walks();
        let mut kept = Vec::new();
        for start in 0..self.figure.cells.len() {
            for n in 1..=LONGEST {
                let rivals: Vec<(&Walked, f64)> = walks
                    .iter()
                    .filter(|walked| walked.cells[0] == start && walked.lines.len() == n)
                    .map(|walked| (walked, self.log_pi(walked)))
                    .collect();
                let best = rivals
                    .iter()
                    .map(|(_, log)| *log)
                    .fold(f64::NEG_INFINITY, f64::max);
                if best == f64::NEG_INFINITY {
                    continue;
                }
                let order = |walked: &Walked| -> Vec<(Contact, usize)> {
                    walked
                        .states
                        .iter()
                        .map(|state| state.contact)
                        .zip(walked.cells.iter().copied())
                        .collect()
                };
                let first = rivals
                    .into_iter()
                    .filter(|(_, log)| best - log <= 1e-12 + 1e-14 * best.abs())
                    .map(|(walked, _)| walked)
                    .min_by_key(|walked| order(walked));
                kept.extend(first.cloned());
            }
        }
        kept
    }
}

fn check(figure: &Figure, child: &Child, gait: &Gait, foot: Option<Side>) {
    let mut short = model();
    short.longest = LONGEST;
    let masses = figure
        .cells
        .iter()
        .map(|cell| landing(cell, child.scatter))
        .collect();
    let trial = Trial {
        figure,
        child,
        gait,
        foot,
        landings: masses,
    };
    // Whether two routes tie must not hang on the last bits of two sums of logs.
    if trial.on_the_edge_of_a_tie() {
        return;
    }
    let kept = trial.kept();
    let ways = Ways::of(figure, &short);
    let ours = go(&ways, child, gait, foot, &landings(&ways, child), &short);
    let cells: Vec<&Vec<usize>> = ours.routes.iter().map(|route| &route.cells).collect();
    assert_eq!(
        cells,
        kept.iter().map(|walked| &walked.cells).collect::<Vec<_>>()
    );
    for (ours, walked) in ours.routes.iter().zip(&kept) {
        let contacts: Vec<Contact> = walked.states.iter().map(|state| state.contact).collect();
        assert_eq!(ours.contacts, contacts, "{:?}", walked.cells);
        assert!((ours.pi_0 - trial.pi(walked, 0.0)).abs() < 1e-9);
    }
    let (mut well, mut hard) = (0.0, 0.0);
    let apart: Vec<bool> = kept.iter().map(|walked| !trial.overlaps(walked)).collect();
    for place in 0..GRID {
        let z = z_at(place);
        let fit: Vec<usize> = (0..kept.len())
            .filter(|walked| apart[*walked] && trial.well_pitched(&kept[*walked], z))
            .collect();
        let half = kept
            .iter()
            .any(|walked| (trial.pi(walked, z) * 1e6).round() / 1e6 >= 0.5);
        if fit.is_empty() {
            hard += if half { 0.0 } else { WEIGHTS[place] };
        } else {
            well += WEIGHTS[place];
        }
        if place == HALF_GRID {
            let goods: Vec<f64> = fit
                .iter()
                .map(|walked| trial.good(&kept[*walked], z))
                .collect();
            let most = goods.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            match ours.chosen {
                None => assert!(fit.is_empty()),
                Some(chosen) => {
                    assert!(fit.contains(&chosen));
                    assert!((trial.good(&kept[chosen], z) - most).abs() < 1e-9);
                    let sum: f64 = ours.good_contacts.iter().map(|good| good.contacts).sum();
                    assert!((sum - most).abs() < 1e-9, "{sum} good contacts, not {most}");
                }
            }
        }
    }
    assert!(
        (ours.pitch.well - well).abs() < 1e-9,
        "well {} not {well}",
        ours.pitch.well
    );
    assert!(
        (ours.pitch.hard - hard).abs() < 1e-9,
        "hard {} not {hard}",
        ours.pitch.hard
    );
}

fn any_cell(count: usize) -> impl Strategy<Value = Cell> {
    let takes = prop_oneof![
        3 => Just(Takes::Either),
        2 => Just(Takes::One),
        1 => Just(Takes::Both),
        1 => Just(Takes::Left),
        1 => Just(Takes::Right),
    ];
    // Half of the figures lie on a grid of 25 cm, so that routes tie.
    let at = prop_oneof![
        (0.0..1.2, 0.0..1.2),
        (0..5i32, 0..5i32).prop_map(|(x, y)| (f64::from(x) * 0.25, f64::from(y) * 0.25)),
    ];
    let shape = (0.1..0.25, 0.2..0.5, 0.2..0.5, any::<bool>());
    let next = prop::option::of(prop::collection::vec(0..count, 0..count));
    (at, takes, shape, next, any::<[bool; 3]>()).prop_map(
        |(at, takes, shape, next, [start, end, run_up])| {
            let (radius, wide, deep, round) = shape;
            let cell = if round {
                disc(at, radius)
            } else {
                upright(at, wide, deep)
            };
            Cell {
                takes,
                next,
                start,
                end,
                run_up,
                ..cell
            }
        },
    )
}

fn any_figure() -> impl Strategy<Value = Figure> {
    (2..6usize)
        .prop_flat_map(|count| {
            (
                prop::collection::vec(any_cell(count), count),
                prop::option::of(0.0..std::f64::consts::TAU),
            )
        })
        .prop_map(|(cells, facing)| Figure {
            facing,
            ..figure(cells)
        })
        .prop_filter("no two centres coincide", |figure| {
            let cells = &figure.cells;
            (0..cells.len()).all(|a| (0..a).all(|b| cells[a].centre != cells[b].centre))
        })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, ..ProptestConfig::default() })]

    /// Two thousand small figures, every gait and side.
    #[test]
    fn the_kept_routes_are_the_best_of_all(
        figure in any_figure(),
        years in 3.0..6.5,
        gait in 0..GAITS.len(),
        side in 0..3usize,
    ) {
        let gait = GAITS[gait];
        let sides = [None, Some(Side::Right), Some(Side::Left)];
        let sided = matches!(gait.name, "hop" | "leap" | "gallop" | "slide" | "court");
        check(&figure, &child(years), &gait, if sided { sides[side] } else { None });
    }
}
