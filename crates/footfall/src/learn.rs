//! What tries say of a child: reach, updated on a grid over z.
//!
//! The same z serves a whole route, so n tries of it of which k are good have the likelihood
//! Binomial(k; n, pi(z)). The prior is z ~ N(0, 1); the posterior's mean and standard
//! deviation move m and tau. Steadiness and `can` are left as they are: a try tells of
//! them only together with the reach.

use std::collections::BTreeMap;

use children::{Child, Side, Skill};
use marking::Figure;

use crate::chance::{GRID, HALF_GRID, Nodes, WEIGHTS, z_at};
use crate::contact::{Goer, landings};
use crate::figures::Model;
use crate::gait::Gait;
use crate::tread::route_taken;
use crate::ways::Ways;

/// Tries of one child on one figure.
#[derive(Clone, Copy, Debug)]
pub struct Try<'a> {
    /// What was tried.
    pub figure: &'a Figure,
    /// How.
    pub gait: Gait,
    /// The leading foot, where the gait has one.
    pub foot: Option<Side>,
    /// Tries.
    pub n: u32,
    /// Good ones; more than `n` count as `n`.
    pub good: u32,
}

/// z and pi(z) of one route, from -4 to 4 by .02.
#[derive(Clone, Debug, PartialEq)]
pub struct Chances {
    /// Number of the route among those that [`tread`](crate::tread) lists.
    pub route: usize,
    /// (z, pi): the chance that the child completes it, given that it can do the skill.
    pub over_z: Vec<(f64, f64)>,
}

/// The chance of the route that a child would take: the one a turn is timed on, and where
/// the figure suits the child at no z, the longest, the first of equals.
///
/// `None` where the child has no route there.
pub fn chances(
    figure: &Figure,
    child: &Child,
    gait: &Gait,
    foot: Option<Side>,
    model: &Model,
) -> Option<Chances> {
    let ways = Ways::of(figure, model);
    let goer = Goer::new(child, gait, model)?;
    let nodes = Nodes::of(&goer, false, 1);
    let (route, pi) = route_taken(&ways, &goer, foot, &nodes, &landings(&ways, child))?;
    let over_z = pi.into_iter().enumerate();
    Some(Chances {
        route,
        over_z: over_z.map(|(place, pi)| (z_at(place), pi)).collect(),
    })
}

/// pi of the route that a child would take, at z = 0; `None` as [`chances`].
pub fn chance_now(
    figure: &Figure,
    child: &Child,
    gait: &Gait,
    foot: Option<Side>,
    model: &Model,
) -> Option<f64> {
    let chances = chances(figure, child, gait, foot, model)?;
    chances.over_z.get(HALF_GRID).map(|(_, pi)| *pi)
}

/// The child as it stands after tries: for each skill that was tried, m and tau moved to
/// the posterior's mean and standard deviation, rounded to 1e-6 m. All tries of a skill
/// count at once, on the routes that the child would have taken before them.
///
/// A court is a try of the hop.
///
/// # Method
/// The trapezoid rule over z from -4 to 4 by .02. pi is kept from 0 and 1 by 1e-6, as it is handed on: no
/// slip of a record makes a child impossible.
///
/// # Source
/// Bayes; checked against scipy's quadrature (`oracle/learn.py`).
pub fn learn(child: &Child, tries: &[Try], model: &Model) -> Child {
    let mut logs: BTreeMap<Skill, Vec<f64>> = BTreeMap::new();
    for tried in tries.iter().filter(|tried| tried.n > 0) {
        let Try {
            figure,
            gait,
            foot,
            n,
            good,
        } = *tried;
        let Some(chances) = chances(figure, child, &gait, foot, model) else {
            continue;
        };
        let (good, bad) = (f64::from(good.min(n)), f64::from(n - good.min(n)));
        let log = logs.entry(gait.skill).or_insert_with(|| vec![0.0; GRID]);
        for (log, (_, pi)) in log.iter_mut().zip(chances.over_z) {
            let pi = pi.clamp(1e-6, 1.0 - 1e-6);
            *log += good * libm::log(pi) + bad * libm::log1p(-pi);
        }
    }
    let mut learned = child.clone();
    for (skill, log) in logs {
        let most = log.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let weights = log
            .iter()
            .zip(WEIGHTS.iter())
            .map(|(log, weight)| weight * libm::exp(log - most));
        let (mut whole, mut first, mut second) = (0.0, 0.0, 0.0);
        for (place, weight) in weights.enumerate() {
            let z = z_at(place);
            // The two ends stand for half a step each.
            let end = place == 0 || place == GRID - 1;
            let weight = if end { weight / 2.0 } else { weight };
            whole += weight;
            first += weight * z;
            second += weight * z * z;
        }
        let mean = first / whole;
        let spread = libm::sqrt((second / whole - mean * mean).max(0.0));
        if let Some(ability) = learned.skills.get_mut(&skill)
            && mean.is_finite()
        {
            let millionth = |metres: f64| (metres * 1e6).round() / 1e6;
            // No reach is known to be nothing.
            let least = model.floor * ability.m;
            ability.m = millionth((ability.m + ability.tau * mean).max(least));
            ability.tau = millionth(ability.tau * spread);
        }
    }
    learned
}
