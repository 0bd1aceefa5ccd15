//! One least-squares fit and what it says of each reading.

use crate::model::{Place, Row, row, value};
use crate::network::{Kind, Reading};
use crate::solve::{Pull, System};

/// Movement (metres where another point moves one) under which a point counts as fixed.
const STILL: f64 = 1e-6;

/// Redundancy under which a reading has nothing to be held against.
const NO_CHECK: f64 = 1e-6;

/// A fit of some readings, in a frame where some coordinates are held.
pub(crate) struct Fit<'a> {
    pub(crate) at: Vec<Place>,
    pub(crate) system: System<'a>,
    /// Cofactors of the unknowns at the stated sigmas: their covariance, m². Zero where
    /// nothing fixes an unknown.
    pub(crate) q: Vec<f64>,
    /// Motions that no reading sees, by unknown.
    pub(crate) blind: Vec<Vec<f64>>,
    pub(crate) vtpv: f64,
    pub(crate) dof: usize,
}

/// What a fit says of one reading.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Verdict {
    pub(crate) r: f64,
    pub(crate) w: Option<f64>,
    pub(crate) tau: Option<f64>,
    pub(crate) mdb: Option<f64>,
}

impl<'a> Fit<'a> {
    /// Settles `at` and takes stock.
    pub(crate) fn new(readings: Vec<&'a Reading>, held: &[bool], mut at: Vec<Place>) -> Fit<'a> {
        let system = System::new(readings, held);
        system.settle(&mut at, Pull::Full, usize::MAX);
        Fit::stock(system, at)
    }

    /// Takes stock at places that are final.
    pub(crate) fn stock(system: System<'a>, at: Vec<Place>) -> Fit<'a> {
        let (factor, blind) = system.rank(&at);
        let vtpv = system.cost(&at, Pull::Full);
        let dof = system
            .readings()
            .len()
            .saturating_sub(system.size() - blind.len());
        Fit {
            q: factor.inverse(),
            at,
            system,
            blind,
            vtpv,
            dof,
        }
    }

    /// Only what the readings are blind to.
    pub(crate) fn rank_only(system: System<'a>, at: Vec<Place>) -> Fit<'a> {
        let (_, blind) = system.rank(&at);
        Fit {
            q: Vec::new(),
            at,
            system,
            blind,
            vtpv: 0.0,
            dof: 0,
        }
    }

    /// A-posteriori over a-priori sigma.
    pub(crate) fn s0(&self) -> f64 {
        if self.dof == 0 {
            0.0
        } else {
            (self.vtpv / self.dof as f64).sqrt()
        }
    }

    /// Points that can move in the frame while every reading stays the same.
    pub(crate) fn loose(&self) -> Vec<bool> {
        let mut loose = vec![false; self.at.len()];
        for (point, loose) in loose.iter_mut().enumerate() {
            let slots = [self.system.slot(2 * point), self.system.slot(2 * point + 1)];
            *loose = self.blind.iter().any(|motion| {
                let most = motion.iter().fold(0.0_f64, |most, m| most.max(m.abs()));
                slots
                    .iter()
                    .flatten()
                    .any(|&s| motion[s].abs() > STILL * most)
            });
        }
        loose
    }

    /// Derivatives of a reading over its sigma, by unknown.
    pub(crate) fn terms(&self, kind: Kind, sigma: f64) -> ([(usize, f64); 6], usize) {
        self.weigh(&row(kind, &self.at), sigma)
    }

    fn weigh(&self, row: &Row, sigma: f64) -> ([(usize, f64); 6], usize) {
        self.system.weighted(row, sigma)
    }

    /// Covariance of two whitened rows.
    pub(crate) fn between(&self, a: &[(usize, f64)], b: &[(usize, f64)]) -> f64 {
        let n = self.system.size();
        a.iter()
            .map(|&(i, x)| {
                b.iter()
                    .map(|&(j, y)| x * y * self.q[i * n + j])
                    .sum::<f64>()
            })
            .sum()
    }

    /// Share of a reading's sigma² that the adjusted points leave it: 1 - r where it is in
    /// the fit.
    pub(crate) fn leverage(&self, reading: &Reading) -> f64 {
        let (terms, count) = self.terms(reading.kind, reading.sigma);
        self.between(&terms[..count], &terms[..count])
    }

    /// (adjusted - reading) / sigma.
    pub(crate) fn z(&self, reading: &Reading) -> f64 {
        (value(reading.kind, &self.at) - reading.value) / reading.sigma
    }

    /// Judges a reading of the fit; `shift` is δ0.
    pub(crate) fn judge(&self, reading: &Reading, shift: f64) -> Verdict {
        let r = (1.0 - self.leverage(reading)).clamp(0.0, 1.0);
        if r < NO_CHECK {
            return Verdict {
                r,
                ..Verdict::default()
            };
        }
        let w = self.z(reading) / r.sqrt();
        let s0 = self.s0();
        Verdict {
            r,
            w: Some(w),
            tau: (self.dof >= 2 && s0 > 0.0).then(|| w / s0),
            mdb: Some(shift * reading.sigma / r.sqrt()),
        }
    }

    /// Covariance of two coordinates (2 · point + axis), m²; 0 for a held one.
    pub(crate) fn covariance(&self, a: usize, b: usize) -> f64 {
        match (self.system.slot(a), self.system.slot(b)) {
            (Some(i), Some(j)) => self.q[i * self.system.size() + j],
            _ => 0.0,
        }
    }

    /// For each reading of the fit, those (by place in the fit) whose w correlate with its
    /// own by more than `alike`, itself left out. Readings without check are in none.
    pub(crate) fn alike(&self, alike: f64) -> Vec<Vec<usize>> {
        let readings = self.system.readings();
        let rows: Vec<_> = readings
            .iter()
            .map(|r| self.terms(r.kind, r.sigma))
            .collect();
        let n = self.system.size();
        let spare: Vec<f64> = rows
            .iter()
            .map(|(terms, count)| 1.0 - self.between(&terms[..*count], &terms[..*count]))
            .collect();
        let mut groups = vec![Vec::new(); readings.len()];
        for a in (0..readings.len()).filter(|&a| spare[a] > NO_CHECK) {
            let (terms, count) = &rows[a];
            // One row of Q·a serves all partners.
            let mut qa = vec![0.0; n];
            for &(i, x) in &terms[..*count] {
                for (sum, q) in qa.iter_mut().zip(&self.q[i * n..(i + 1) * n]) {
                    *sum += x * q;
                }
            }
            for b in (0..a).filter(|&b| spare[b] > NO_CHECK) {
                let (others, count) = &rows[b];
                let shared: f64 = others[..*count].iter().map(|&(j, y)| y * qa[j]).sum();
                if shared.abs() > alike * (spare[a] * spare[b]).sqrt() {
                    groups[a].push(b);
                    groups[b].push(a);
                }
            }
        }
        groups
    }
}
