//! The chance of a whole route, at each z and over all of them.
//!
//! The same z serves a whole route: pi(z) is the product of p, and P = can x mean of pi.

use std::ops::Range;
use std::sync::LazyLock;

use crate::contact::{Chance, Goer};
use crate::net::Net;
use crate::normal::{PANEL, POINTS, Phi, density};
use crate::routes::Step;

/// z is cut here, either way.
const CUT: f64 = 4.0;
/// Equal panels of the quadrature, before the kinks.
const PANELS: usize = 16;
/// Steps of the grid on each side of 0: z in -4 to 4 by .02.
pub(crate) const HALF_GRID: usize = 200;
/// Places of the grid.
pub(crate) const GRID: usize = 2 * HALF_GRID + 1;

/// Of pi: what is less is lost in the last bit of every P that is handed on.
const FADED: f64 = 1e-40;

/// z at a place of the grid.
pub(crate) fn z_at(place: usize) -> f64 {
    (place as f64 - HALF_GRID as f64) * (CUT / HALF_GRID as f64)
}

/// Normal weights on the grid; they add up to 1.
pub(crate) static WEIGHTS: LazyLock<Vec<f64>> = LazyLock::new(|| {
    let densities: Vec<f64> = (0..GRID).map(|place| density(z_at(place))).collect();
    let sum: f64 = densities.iter().sum();
    densities.into_iter().map(|density| density / sum).collect()
});

/// Where pi is wanted: the grid first, then the nodes of the quadrature.
#[derive(Debug)]
pub(crate) struct Nodes {
    /// Places of the grid that are looked at.
    pub grid: usize,
    /// How many steps of the grid lie between them.
    pub stride: usize,
    /// 1/rho at every node, kind by kind.
    per_rho: Vec<Vec<f64>>,
    /// Weights of the quadrature's nodes; they add up to 1.
    weights: Vec<f64>,
}

impl Nodes {
    /// - `with_mean`: whether P is wanted, or the grid alone
    /// - `stride`: every how many places of the grid are looked at; a divisor of
    ///   [`HALF_GRID`], so that z = 0 is among them
    pub fn of(goer: &Goer, with_mean: bool, stride: usize) -> Nodes {
        let mut z: Vec<f64> = (0..GRID).step_by(stride).map(z_at).collect();
        let grid = z.len();
        let mut weights = Vec::new();
        if with_mean {
            let mut cuts: Vec<f64> = (0..=PANELS)
                .map(|cut| 2.0 * CUT * cut as f64 / PANELS as f64 - CUT)
                .collect();
            let kinks = goer.kinds.iter().map(|kind| kind.reach.kink(goer.model));
            cuts.extend(kinks.filter(|kink| kink.abs() < CUT));
            cuts.sort_unstable_by(f64::total_cmp);
            cuts.dedup();
            z.reserve(cuts.len() * POINTS);
            for panel in cuts.windows(2) {
                let (middle, half) = ((panel[0] + panel[1]) / 2.0, (panel[1] - panel[0]) / 2.0);
                for &(node, weight) in PANEL.iter() {
                    let here = middle + half * node;
                    z.push(here);
                    weights.push(half * weight * density(here));
                }
            }
            let sum: f64 = weights.iter().sum();
            weights.iter_mut().for_each(|weight| *weight /= sum);
        }
        let per_rho = goer
            .kinds
            .iter()
            .map(|kind| {
                z.iter()
                    .map(|z| 1.0 / kind.reach.at(*z, goer.model))
                    .collect()
            })
            .collect();
        Nodes {
            grid,
            stride,
            per_rho,
            weights,
        }
    }

    /// Whether P is wanted.
    pub fn means(&self) -> bool {
        !self.weights.is_empty()
    }

    /// 1/rho of a kind on the grid.
    pub fn per_rho(&self, kind: usize) -> &[f64] {
        &self.per_rho[kind][..self.grid]
    }

    /// The mean over z of a chance given at the nodes. Four sums side by side: one alone
    /// would wait for each addition.
    pub fn mean(&self, pi: &Told) -> f64 {
        let faded = (pi.from[1] - self.grid) / 4;
        let (pi, weights) = (
            pi.at[self.grid..].as_chunks::<4>().0,
            self.weights.as_chunks::<4>().0,
        );
        let mut sums = [0.0; 4];
        for (pi, weights) in pi.iter().zip(weights).skip(faded) {
            for ((sum, pi), weight) in sums.iter_mut().zip(pi).zip(weights) {
                *sum += pi * weight;
            }
        }
        sums.iter().sum()
    }

    /// Where the grid ends, and where the quadrature does.
    fn ends(&self) -> [usize; 2] {
        [self.grid, self.grid + self.weights.len()]
    }
}

/// A chance at the nodes, from the least z on at which it is wanted.
///
/// A longer reach makes every contact likelier, and every contact makes pi less: what is too
/// little here is so at each lower z and after each further contact.
#[derive(Clone, Debug)]
pub(crate) struct Told {
    /// At every node; told from `from` on.
    pub at: Vec<f64>,
    /// Where it begins on the grid, and where among the nodes of the quadrature.
    pub from: [usize; 2],
    /// At z = 0.
    pub now: f64,
}

impl Told {
    /// Told nowhere.
    fn nowhere(nodes: &Nodes) -> Told {
        let ends = nodes.ends();
        Told {
            at: vec![0.0; ends[1]],
            from: ends,
            now: 0.0,
        }
    }

    /// Tells it from certain nodes on, p of a contact.
    fn tell(&mut self, from: [usize; 2], chance: Chance, phi: Phi, per_rho: &[f64]) {
        for (known, from) in self.from.iter_mut().zip(from) {
            let more = from..(*known).max(from);
            let (p, rest) = self.at[more.clone()].as_chunks_mut::<4>();
            let (per_rho, rest_rho) = per_rho[more].as_chunks::<4>();
            for (p, per_rho) in p.iter_mut().zip(per_rho) {
                *p = chance.p_each(phi, *per_rho);
            }
            for (p, per_rho) in rest.iter_mut().zip(rest_rho) {
                *p = chance.p(phi, *per_rho);
            }
            *known = from.min(*known);
        }
    }

    /// The places of the grid on which it is told.
    pub fn on_grid(&self, nodes: &Nodes) -> Range<usize> {
        self.from[0]..nodes.grid
    }
}

/// The chances of a child's contacts on a figure, each worked out once, when first asked.
pub(crate) struct Chances<'a> {
    net: &'a Net<'a>,
    goer: &'a Goer<'a>,
    nodes: &'a Nodes,
    landings: &'a [f64],
    phi: Phi,
    /// pi that is too little to be wanted, on the grid and for the mean.
    little: [f64; 2],
    /// p at the nodes, by spacing and kind.
    tables: Vec<Option<Told>>,
    /// p at the greatest z, likewise.
    tops: Vec<Option<f64>>,
    /// The contacts of the route last asked, and the products up to each.
    contacts: Vec<usize>,
    products: Vec<Told>,
}

impl<'a> Chances<'a> {
    /// - `least`: pi that is wanted on the grid
    pub fn new(
        net: &'a Net,
        goer: &'a Goer,
        nodes: &'a Nodes,
        landings: &'a [f64],
        least: f64,
    ) -> Chances<'a> {
        let tables = vec![None; net.spacings.len() * goer.kinds.len()];
        let phi = Phi::new();
        Chances {
            net,
            goer,
            nodes,
            landings,
            phi,
            little: [least, FADED],
            tops: vec![None; tables.len()],
            tables,
            contacts: Vec::new(),
            products: Vec::new(),
        }
    }

    /// The number of a route's contact: contacts of one number have one chance.
    pub fn contact(&self, step: &Step) -> usize {
        step.spacing * self.goer.kinds.len() + self.goer.kind_of[step.line]
    }

    /// pi at the greatest z of the grid, where reach is greatest and so pi is; never less than
    /// what its products give.
    pub fn most(&mut self, steps: &[Step]) -> f64 {
        let last = self.nodes.grid - 1;
        let mut most = 1.0 + 1e-12;
        for step in steps {
            let number = self.contact(step);
            let top = match self.tops[number] {
                Some(top) => top,
                None => {
                    let kind = self.goer.kind_of[step.line];
                    let top = self
                        .chance(step)
                        .p(self.phi, self.nodes.per_rho[kind][last]);
                    *self.tops[number].insert(top)
                }
            };
            most *= top;
        }
        most
    }

    /// The product of p up to each contact, where it is wanted. Kept routes of one start share
    /// long beginnings, and what is shared is not multiplied again.
    pub fn products(&mut self, steps: &[Step]) -> &[Told] {
        let known = self.contacts.iter();
        let shared = steps
            .iter()
            .zip(known)
            .take_while(|(step, known)| self.contact(step) == **known);
        let shared = shared.count();
        self.contacts.truncate(shared);
        let ends = self.nodes.ends();
        for (done, step) in steps.iter().enumerate().skip(shared) {
            let number = self.contact(step);
            self.contacts.push(number);
            if self.products.len() == done {
                self.products.push(Told::nowhere(self.nodes));
            }
            let from = match done {
                0 => [0, self.nodes.grid],
                _ => self.products[done - 1].from,
            };
            let chance = self.chance(step);
            let per_rho = &self.nodes.per_rho[self.goer.kind_of[step.line]];
            let p = self.tables[number].get_or_insert_with(|| Told {
                now: chance.p(self.phi, per_rho[self.nodes.grid / 2]),
                ..Told::nowhere(self.nodes)
            });
            p.tell(from, chance, self.phi, per_rho);

            let (before, here) = self.products.split_at_mut(done);
            let (before, here) = (before.last(), &mut here[0]);
            here.now = before.map_or(1.0, |before| before.now) * p.now;
            for (part, little) in self.little.into_iter().enumerate() {
                let wanted = from[part]..ends[part];
                let (here_at, p) = (&mut here.at[wanted.clone()], &p.at[wanted.clone()]);
                match before {
                    None => here_at.copy_from_slice(p),
                    Some(before) => {
                        let before = &before.at[wanted];
                        for ((product, before), p) in here_at.iter_mut().zip(before).zip(p) {
                            *product = before * p;
                        }
                    }
                }
                // By fours, as the mean adds them up.
                let fours = here_at.as_chunks::<4>().0.iter();
                let less = fours.take_while(|four| four[3] < little).count();
                here.from[part] = from[part] + 4 * less;
            }
        }
        &self.products[..steps.len()]
    }

    fn chance(&self, step: &Step) -> Chance {
        let kind = self.goer.kind_of[step.line];
        let spacing = &self.net.spacings[step.spacing];
        Chance::of(self.goer, &self.goer.kinds[kind], spacing, self.landings)
    }
}
