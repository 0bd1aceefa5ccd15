//! One contact of one child: p = q F A.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use children::Child;
use marking::Outline;

use crate::figures::Model;
use crate::gait::{Flight, Gait, Reach};
use crate::landing::landing;
use crate::normal::{Phi, log_phi};
use crate::ways::{Outlined, Spacing, Ways, drawn};

/// One kind of contact in a gait: a flight, and whose q goes with it.
#[derive(Clone, Debug)]
pub(crate) struct Kind {
    pub flight: Flight,
    pub q: f64,
    pub reach: Reach,
}

/// A child in a gait.
#[derive(Debug)]
pub(crate) struct Goer<'a> {
    pub model: &'a Model,
    pub child: &'a Child,
    pub gait: Gait,
    pub kinds: Vec<Kind>,
    /// For each line of the gait, the number of its kind.
    pub kind_of: Vec<usize>,
    pub can: f64,
}

impl<'a> Goer<'a> {
    /// `None` when the child lacks a skill that the gait needs.
    pub fn new(child: &'a Child, gait: &Gait, model: &'a Model) -> Option<Goer<'a>> {
        let gait = gait.by(child.means);
        let mut lines = Vec::new();
        let mut kinds = Vec::new();
        let mut kind_of = Vec::new();
        for follow in gait.follows {
            let line = (follow.flight, follow.steady);
            let number = lines.iter().position(|known| *known == line);
            kind_of.push(number.unwrap_or(lines.len()));
            if number.is_none() {
                lines.push(line);
                let q = child.skills.get(&follow.steady)?.steady;
                kinds.push(Kind {
                    flight: follow.flight,
                    q,
                    reach: follow.reach(child)?,
                });
            }
        }
        let can = child.skills.get(&gait.can)?.can;
        Some(Goer {
            model,
            child,
            gait,
            kinds,
            kind_of,
            can,
        })
    }
}

/// A on every cell that stands for a shape; 0 on the others, which are never asked.
pub(crate) fn landings(ways: &Ways, child: &Child) -> Vec<f64> {
    let sigma = scatter(child);
    let mut masses = vec![0.0; ways.figure.cells.len()];
    for (cell, _) in &ways.shapes {
        masses[*cell] = landing(&ways.figure.cells[*cell], sigma);
    }
    masses
}

/// One child's A on outlines, remembered from figure to figure.
#[derive(Debug, Default)]
pub(crate) struct Masses(Mutex<BTreeMap<Outlined, f64>>);

impl Masses {
    /// As [`landings`]. A is that of the outline as it is remembered, to
    /// 1e-12 m, so that it does not hang on which figure came first.
    pub fn landings(&self, ways: &Ways, child: &Child) -> Vec<f64> {
        let sigma = scatter(child);
        let mut masses = vec![0.0; ways.figure.cells.len()];
        for (number, outlined) in &ways.shapes {
            let cell = &ways.figure.cells[*number];
            masses[*number] = match cell.outline {
                Outline::Disc { .. } => landing(cell, sigma),
                Outline::Polygon(_) => {
                    // A poisoned lock holds whole masses all the same.
                    let lock = || self.0.lock().unwrap_or_else(PoisonError::into_inner);
                    let known = lock().get(outlined).copied();
                    known.unwrap_or_else(|| {
                        let mass = landing(&drawn(cell, outlined), sigma);
                        lock().insert(outlined.clone(), mass);
                        mass
                    })
                }
            };
        }
        masses
    }
}

/// A scatter of nothing would be divided by.
fn scatter(child: &Child) -> f64 {
    child.scatter.max(1e-9)
}

/// A contact with all but z filled in: p(z) = q A Phi(u - v / rho(z)).
///
/// From the model's page: reach here r = rho (1 - g (1 - cos phi)/2) k(alpha), clears
/// F = Phi(1.2816 + (r - d)/(w rho)). Here r/rho = `share` does not depend on z, so
/// u = 1.2816 + share/w and v = d/w.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Chance {
    u: f64,
    v: f64,
    q: f64,
    a: f64,
}

impl Chance {
    pub fn of(goer: &Goer, kind: &Kind, spacing: &Spacing, landings: &[f64]) -> Chance {
        let (u, v) = clears(goer, kind, spacing);
        let a = landings.get(spacing.cell).copied().unwrap_or(0.0);
        Chance { u, v, q: kind.q, a }
    }

    /// p, for the inverse of a reach.
    #[inline]
    pub fn p(&self, phi: Phi, per_rho: f64) -> f64 {
        self.p_each(phi, [per_rho])[0]
    }

    /// p for the inverses of several reaches.
    #[inline]
    pub fn p_each<const N: usize>(&self, phi: Phi, per_rho: [f64; N]) -> [f64; N] {
        phi.at(per_rho.map(|per_rho| self.u - self.v * per_rho))
            .map(|clears| self.q * self.a * clears)
    }
}

/// u and v of a [`Chance`].
fn clears(goer: &Goer, kind: &Kind, spacing: &Spacing) -> (f64, f64) {
    let model = goer.model;
    let turned = 1.0 - model.g(kind.flight) * (1.0 - spacing.cos_phi) / 2.0;
    let k = match spacing.cos_alpha {
        Some(cos_alpha) if !kind.flight.sideways() => model.k(cos_alpha),
        _ => 1.0,
    };
    let share = turned * k;
    (model.nine_in_ten + share / model.w, spacing.d / model.w)
}

/// log p of a kind's contacts at z = 0, without underflow.
pub(crate) struct LogP<'a> {
    goer: &'a Goer<'a>,
    kind: &'a Kind,
    rho: f64,
    /// log(q A), by cell that stands for a shape.
    lands: Vec<f64>,
}

impl<'a> LogP<'a> {
    pub fn of(goer: &'a Goer, kind: &'a Kind, landings: &[f64]) -> LogP<'a> {
        let q = libm::log(kind.q);
        // Most cells stand for no shape, and the logarithm of nought needs no reckoning.
        let log = |a: &f64| {
            if *a > 0.0 {
                q + libm::log(*a)
            } else {
                f64::NEG_INFINITY
            }
        };
        LogP {
            goer,
            kind,
            rho: kind.reach.at(0.0, goer.model),
            lands: landings.iter().map(log).collect(),
        }
    }

    pub fn at(&self, spacing: &Spacing) -> f64 {
        let (u, v) = clears(self.goer, self.kind, spacing);
        let lands = self.lands.get(spacing.cell).copied();
        lands.unwrap_or(f64::NEG_INFINITY) + log_phi(u - v / self.rho)
    }
}
