//! How the chance of one route hangs on reach and steadiness: what tries are judged by.

use children::{Child, Side};
use marking::Figure;

use crate::chance::{Chances, GRID, HALF_GRID, Nodes, z_at};
use crate::contact::{Goer, landings};
use crate::figures::Model;
use crate::gait::Gait;
use crate::judged::{Path, route_taken};
use crate::lane::treads;
use crate::ways::Ways;

/// pi(z, q) = clears(z) q^contacts of one route, q being the steadiness of the gait's own
/// skill; that of other skills (a run-up's) is in `clears` as the child has it.
#[derive(Clone, Debug, PartialEq)]
pub struct Odds {
    /// Number of the route among those that [`tread`](crate::tread()) lists.
    pub route: usize,
    /// Contacts that must keep the pattern; a bend on a lane counts a contact more than once.
    pub contacts: f64,
    /// The chance that every contact clears and lands, at the places of [`grid`].
    pub clears: Vec<f64>,
}

impl Odds {
    /// pi at a place of the grid.
    pub fn pi(&self, place: usize, steady: f64) -> f64 {
        let clears = self.clears.get(place).copied().unwrap_or(f64::NAN);
        clears * libm::pow(steady, self.contacts)
    }
}

/// The z at which [`Odds`] are given: -4 to 4 by .02.
pub fn grid() -> impl ExactSizeIterator<Item = f64> {
    (0..GRID).map(z_at)
}

/// The odds of the route that a child would take: the one a turn is timed on, and where
/// the figure suits the child at no z, the longest, the first of equals.
///
/// `None` where the child has no route there.
pub fn odds(
    figure: &Figure,
    child: &Child,
    gait: &Gait,
    foot: Option<Side>,
    model: &Model,
) -> Option<Odds> {
    let ways = Ways::of(figure, model);
    let goer = Goer::new(child, gait, model)?;
    let nodes = Nodes::of(&goer, false, 1);
    let landings = landings(&ways, child);
    let net = ways.net(&goer, foot, &landings);
    let taken = route_taken(&net, &goer, foot, &nodes, &landings)?;
    // pi = clears q^contacts: two values of q tell both.
    let at = |q: f64| -> Option<Vec<f64>> {
        let mut goer = Goer::new(child, gait, model)?;
        for (line, kind) in goer.gait.follows.iter().zip(&goer.kind_of) {
            if line.steady == goer.gait.can
                && let Some(kind) = goer.kinds.get_mut(*kind)
            {
                kind.q = q;
            }
        }
        match (&taken.path, taken.lane) {
            (Path::Cells(steps), _) => {
                let mut chances = Chances::new(&net, &goer, &nodes, &landings, 0.0);
                Some(chances.products(steps).last()?.at[..nodes.grid].to_vec())
            }
            (Path::Lane(_), lane) => {
                let (_, treads) = treads(figure, figure.lanes.get(lane?)?, &goer, foot)?;
                let pi = treads.get(..taken.n)?.iter().map(|tread| tread.p).product();
                Some(vec![pi; nodes.grid])
            }
        }
    };
    let (clears, halved) = (at(1.0)?, at(0.5)?);
    let contacts = libm::log2(clears.last()? / halved.last()?);
    Some(Odds {
        route: taken.number,
        // No chance at any z tells nothing of q either.
        contacts: if contacts.is_finite() { contacts } else { 0.0 },
        clears,
    })
}

/// pi of the route that a child would take, at z = 0; `None` as [`odds`].
pub fn chance_now(
    figure: &Figure,
    child: &Child,
    gait: &Gait,
    foot: Option<Side>,
    model: &Model,
) -> Option<f64> {
    let odds = odds(figure, child, gait, foot, model)?;
    let steady = child.skills.get(&gait.can)?.steady;
    Some(odds.pi(HALF_GRID, steady))
}
