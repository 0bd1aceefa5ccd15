//! What no plan can pass: the linear programme over child-minutes, by prices.
//!
//! Slots may be cut as finely as one likes, groups need not be whole, and sessions in which
//! the same is open are taken together (a *phase*; exact, for the worth is concave). What
//! ties the children is the stations' time and how many stations the staff keep in sight.
//! At any prices of these two the children part, each with a small programme of its own, and
//! their sum with what the prices earn is a bound (Lagrange). Prices are raised by Kelley's
//! planes, one for each child and round, until the planes meet the bound.
//!
//! Invariant: every round's bound holds by itself; more rounds only lower it.

use layout::programme::Unsolved;
use microlp::{ComparisonOp, OptimizationDirection, Problem, Solution, Variable};
use rayon::prelude::*;

use crate::frame::{Frame, Got, MOST_TARGETS, NEVER};
use crate::schedule::State;

/// The planes have met the bound when they are this near, as a share of it: a thirtieth of
/// the gap that a plan may have.
const MET: f64 = 2e-4;

/// Minutes; less is the solver's dust, and dust in a plane is what it stumbles over.
const DUST: f64 = 1e-6;

/// No station minute is worth more: both halves' dearer one, for two skills at once.
const DEAREST: f64 = 2.5;

/// Sessions in which the same is open.
#[derive(Debug)]
struct Phase {
    usable: Vec<bool>,
    /// From 0, of its first sitting: openings are the same in all of them.
    week: usize,
    /// Station minutes of a child.
    minutes: f64,
    /// Weeks that it touches.
    weeks: Vec<usize>,
}

/// The bound, the prices that prove it, and where the children would be at them.
pub(crate) struct Bound {
    /// Worth of all children, minutes.
    pub(crate) worth: f64,
    /// By station: whether its time has a price in some phase.
    pub(crate) priced: Vec<bool>,
    /// Whether what the staff keep in sight has one.
    pub(crate) sight_priced: bool,
    /// By child: practice at the prices, minutes.
    pub(crate) aim: Vec<Got>,
    pub(crate) programmes: u32,
}

/// One child's answer to prices.
struct Answer {
    /// Worth without the prices.
    worth: f64,
    /// Station time used, by phase and station, in shares of the station.
    uses: Vec<f64>,
    got: Got,
}

/// - `had`: by child, practice that was held already
/// - `spent`: by child, week and station, minutes held already
pub(crate) fn bound(
    frame: &Frame,
    had: &[Got],
    spent: &[Vec<f64>],
    rounds: u32,
) -> Result<Bound, Unsolved> {
    let phases = phases(frame);
    let stations = frame.forms_of.len();
    let turns = frame.outings.len() as f64;
    // By phase the stations, then what the staff keep in sight.
    let supply: Vec<f64> = phases
        .iter()
        .flat_map(|phase| {
            let time = phase.minutes * turns;
            (0..stations)
                .map(move |_| time)
                .chain([time * frame.at_once as f64])
        })
        .collect();
    let out: Vec<bool> = (0..frame.kids.len())
        .map(|kid| frame.outings.iter().any(|outing| outing.contains(&kid)))
        .collect();
    let mut prices = vec![0.0; supply.len()];
    let mut planes: Vec<Vec<Answer>> = Vec::new();
    let mut best: Option<Bound> = None;
    let mut programmes = 0;
    for _ in 0..rounds.max(1) {
        let answers: Result<Vec<Answer>, Unsolved> = (0..frame.kids.len())
            .into_par_iter()
            .map(|kid| {
                if out[kid] {
                    answer(frame, kid, &phases, &prices, &had[kid], &spent[kid])
                } else {
                    Ok(Answer {
                        worth: frame.value(kid, &had[kid]),
                        uses: vec![0.0; supply.len()],
                        got: had[kid],
                    })
                }
            })
            .collect();
        // What is proven stays so where the solver stumbles over later prices.
        let answers = match answers {
            Ok(answers) => answers,
            Err(_) if best.is_some() => break,
            Err(fault) => return Err(fault),
        };
        programmes += answers.len() as u32;
        let earned: f64 = std::iter::zip(&prices, &supply).map(|(p, s)| p * s).sum();
        let worth: f64 = earned
            + answers
                .iter()
                .map(|it| it.worth - dot(&prices, &it.uses))
                .sum::<f64>();
        if best.as_ref().is_none_or(|best| worth < best.worth) {
            let priced = |at: usize| prices[at] > MET;
            best = Some(Bound {
                worth,
                priced: (0..stations)
                    .map(|station| {
                        (0..phases.len()).any(|phase| priced(phase * (stations + 1) + station))
                    })
                    .collect(),
                sight_priced: (0..phases.len())
                    .any(|phase| priced(phase * (stations + 1) + stations)),
                aim: answers.iter().map(|it| it.got).collect(),
                programmes,
            });
        }
        let within = (0..supply.len()).all(|at| {
            let used: f64 = answers.iter().map(|it| it.uses[at]).sum();
            used <= supply[at] * (1.0 + MET)
        });
        if within && planes.is_empty() {
            break;
        }
        planes.push(answers);
        let Ok((height, next)) = master(&planes, &supply, frame) else {
            break;
        };
        programmes += 1;
        let reached = best.as_ref().map_or(0.0, |best| best.worth);
        if reached - height <= MET * reached {
            break;
        }
        prices = next;
    }
    let mut best = best.unwrap_or(Bound {
        worth: 0.0,
        priced: vec![false; stations],
        sight_priced: false,
        aim: had.to_vec(),
        programmes,
    });
    best.programmes = programmes;
    Ok(best)
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    std::iter::zip(a, b).map(|(a, b)| a * b).sum()
}

fn phases(frame: &Frame) -> Vec<Phase> {
    let mut phases: Vec<Phase> = Vec::new();
    let open = |week: usize| -> Vec<bool> {
        frame
            .kids
            .iter()
            .flat_map(|kid| {
                kid.opens
                    .iter()
                    .map(move |opens| *opens as usize <= week + 1)
            })
            .collect()
    };
    let time = frame.slot * frame.slots as f64;
    for sitting in frame
        .sittings
        .iter()
        .filter(|it| it.state == State::Planned)
    {
        let same = phases.iter_mut().find(|phase| {
            phase.usable == sitting.usable
                && (phase.week == sitting.week || open(phase.week) == open(sitting.week))
        });
        match same {
            Some(phase) => {
                phase.minutes += time;
                if !phase.weeks.contains(&sitting.week) {
                    phase.weeks.push(sitting.week);
                }
            }
            None => phases.push(Phase {
                usable: sitting.usable.clone(),
                week: sitting.week,
                minutes: time,
                weeks: vec![sitting.week],
            }),
        }
    }
    phases
}

/// The child's best minutes at prices.
fn answer(
    frame: &Frame,
    kid: usize,
    phases: &[Phase],
    prices: &[f64],
    had: &Got,
    spent: &[f64],
) -> Result<Answer, Unsolved> {
    let stations = frame.forms_of.len();
    let wants = &frame.kids[kid].targets;
    if wants.is_empty() {
        return Ok(Answer {
            worth: 0.0,
            uses: vec![0.0; prices.len()],
            got: *had,
        });
    }
    let mut problem = Problem::new(OptimizationDirection::Maximize);
    let halves: Vec<[Variable; 2]> = wants
        .iter()
        .map(|want| {
            frame
                .worth
                .map(|worth| problem.add_var(worth, (0.0, want.minutes / 2.0)))
        })
        .collect();
    // Practice less what minutes give is at most what was had.
    let mut practice: Vec<Vec<(Variable, f64)>> = halves
        .iter()
        .map(|halves| halves.iter().map(|half| (*half, 1.0)).collect())
        .collect();
    let mut minutes: Vec<(usize, f64, Variable)> = Vec::new();
    for (number, phase) in phases.iter().enumerate() {
        let mut time = Vec::new();
        for station in (0..stations).filter(|station| phase.usable[*station]) {
            let row = number * (stations + 1);
            let price = prices[row + station] + prices[row + stations];
            let mut stretches: [Vec<(Variable, f64)>; 2] = [Vec::new(), Vec::new()];
            for (act, it) in frame.acts.iter().enumerate() {
                let opens = frame.kids[kid].opens[act];
                if it.station != station || opens == NEVER || opens as usize > phase.week + 1 {
                    continue;
                }
                let share = 1.0 / it.places as f64;
                for (stretch, worth) in [1.0, frame.stale_worth].into_iter().enumerate() {
                    let u = problem.add_var(-price * share, (0.0, f64::INFINITY));
                    time.push((u, 1.0));
                    stretches[stretch].push((u, 1.0));
                    minutes.push((row + station, share, u));
                    for (target, e) in &frame.kids[kid].gifts[act] {
                        practice[*target].push((u, -e * worth));
                    }
                }
            }
            for (stretch, row) in stretches.into_iter().enumerate() {
                if row.is_empty() {
                    continue;
                }
                let left: f64 = phase
                    .weeks
                    .iter()
                    .map(|week| {
                        let used = spent[week * stations + station];
                        (frame.stale * (stretch + 1) as f64 - used).clamp(0.0, frame.stale)
                    })
                    .sum();
                problem.add_constraint(row, ComparisonOp::Le, left);
            }
        }
        if !time.is_empty() {
            problem.add_constraint(time, ComparisonOp::Le, phase.minutes);
        }
    }
    for (target, row) in practice.into_iter().enumerate() {
        problem.add_constraint(row, ComparisonOp::Le, had[target]);
    }
    let solution = solve(&problem)?;
    let mut uses = vec![0.0; prices.len()];
    for (at, share, u) in minutes {
        let spent = solution.var_value(u);
        let used = if spent > DUST { spent * share } else { 0.0 };
        uses[at] += used;
        uses[at / (stations + 1) * (stations + 1) + stations] += used;
    }
    let mut got = [0.0; MOST_TARGETS];
    for (target, halves) in halves.iter().enumerate() {
        got[target] = halves.iter().map(|half| solution.var_value(*half)).sum();
    }
    Ok(Answer {
        worth: solution.objective() + dot(prices, &uses),
        uses,
        got,
    })
}

fn solve(problem: &Problem) -> Result<Solution, Unsolved> {
    problem
        .solve()
        .map_err(|fault| Unsolved(fault.to_string()))?
        .into_solution()
        .map_err(|_| Unsolved("a linear programme without limits was interrupted".to_owned()))
}

/// The lowest point above all planes so far, and its prices.
fn master(
    planes: &[Vec<Answer>],
    supply: &[f64],
    frame: &Frame,
) -> Result<(f64, Vec<f64>), Unsolved> {
    let stations = frame.forms_of.len();
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let prices: Vec<Variable> = supply
        .iter()
        .enumerate()
        .map(|(at, supply)| {
            let station = at % (stations + 1);
            let gaits = frame.gaits.iter();
            let of = gaits.filter(|gait| station == stations || gait.station == station);
            let places = of.map(|gait| gait.places).max();
            let most = DEAREST * places.unwrap_or(1) as f64;
            problem.add_var(*supply, (0.0, most))
        })
        .collect();
    for kid in 0..frame.kids.len() {
        let height = problem.add_var(1.0, (0.0, f64::INFINITY));
        for answers in planes {
            let answer = &answers[kid];
            let mut row = vec![(height, 1.0)];
            row.extend(
                std::iter::zip(&prices, &answer.uses)
                    .filter(|(_, uses)| **uses > 0.0)
                    .map(|(price, uses)| (*price, *uses)),
            );
            problem.add_constraint(row, ComparisonOp::Ge, answer.worth);
        }
    }
    let solution = solve(&problem)?;
    let prices = prices
        .iter()
        .map(|price| solution.var_value(*price).max(0.0));
    Ok((solution.objective(), prices.collect()))
}
