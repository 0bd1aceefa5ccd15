//! The routes of a child on a figure held against its verdict, one by one.

use std::collections::{BTreeMap, BTreeSet};

use children::{Child, Side, Skill};
use marking::{Figure, Lane};

use crate::chance::{Chances, GRID, HALF_GRID, Nodes, WEIGHTS};
use crate::contact::Goer;
use crate::figures::Model;
use crate::gait::{Contact, practice};
use crate::lane::{Tread, treads};
use crate::net::Net;
use crate::routes::{Found, Step, routes};
use crate::tread::{Activity, Curve, Good, Route};
use crate::verdict::{Pitch, Verdict};
use crate::ways::Ways;

/// A stretch that is the least but for the last bit is the least.
const SAME_STRETCH: f64 = 1e-12;

/// A found route of either kind.
pub(crate) enum Path {
    /// On cells.
    Cells(Vec<Step>),
    /// Along a lane.
    Lane(Vec<Tread>),
}

/// The routes of a child on a figure, and the verdict over them.
pub(crate) struct Judged<'a> {
    paths: Vec<Path>,
    pub routes: Vec<Route>,
    pub verdict: Verdict,
    chances: Chances<'a>,
    /// Routes by whether cells overlap and by their contacts.
    alike: BTreeMap<(bool, Vec<usize>), usize>,
    /// What the contacts of each line of the gait are practice of.
    practice: Vec<Vec<(Skill, Option<Side>, f64)>>,
}

/// A route that a child would take.
pub(crate) struct Taken {
    /// Its number.
    pub number: usize,
    /// How it goes.
    pub path: Path,
    /// The lane that it runs along, if any, and its flights.
    pub lane: Option<usize>,
    pub n: usize,
}

/// The route that a child would take: the one chosen nearest to z = 0, else the longest.
pub(crate) fn route_taken(
    net: &Net,
    goer: &Goer,
    foot: Option<Side>,
    nodes: &Nodes,
    landings: &[f64],
) -> Option<Taken> {
    let longest = goer.model.longest;
    let mut judged = Judged::of(net, goer, foot, nodes, landings, longest);
    let chosen = judged.timed();
    let longest = || {
        let routes = judged.routes.iter().enumerate();
        routes
            .max_by(|(a, one), (b, other)| one.n.cmp(&other.n).then(b.cmp(a)))
            .map(|(number, _)| number)
    };
    let number = chosen.or_else(longest)?;
    let route = judged.routes.get(number)?;
    Some(Taken {
        number,
        lane: route.lane,
        n: route.n,
        path: judged.paths.swap_remove(number),
    })
}

/// h and its fellows alone: what sizing asks for, many times over.
///
/// - `stride`: every how many places of the grid of z are looked at
pub(crate) fn pitch(
    ways: &Ways,
    child: &Child,
    activity: &Activity,
    landings: &[f64],
    model: &Model,
    stride: usize,
) -> Pitch {
    match Goer::new(child, &activity.gait, model) {
        Some(goer) => {
            let nodes = Nodes::of(&goer, false, stride);
            let net = ways.net(&goer, activity.foot, landings);
            let longest = longest_heeded(&goer, landings, &nodes);
            Judged::of(&net, &goer, activity.foot, &nodes, landings, longest)
                .verdict
                .pitch()
        }
        None => Pitch {
            well: 0.0,
            easy: 0.0,
            hard: 1.0,
        },
    }
}

/// Flights of the longest route on cells that a verdict may heed: no contact is likelier than
/// q A.
pub(crate) fn longest_heeded(goer: &Goer, landings: &[f64], nodes: &Nodes) -> usize {
    let q = goer.kinds.iter().map(|kind| kind.q).fold(0.0, f64::max);
    let p = q * landings.iter().copied().fold(0.0, f64::max);
    let verdict = Verdict::new(goer.model, nodes);
    let mut most = 1.0 + 1e-9;
    (0..goer.model.longest)
        .take_while(|_| {
            most *= p;
            verdict.heeds(most)
        })
        .count()
}

impl<'a> Judged<'a> {
    /// - `longest`: flights of the longest route on cells that is held
    pub fn of(
        net: &'a Net,
        goer: &'a Goer,
        foot: Option<Side>,
        nodes: &'a Nodes,
        landings: &'a [f64],
        longest: usize,
    ) -> Judged<'a> {
        let follows = goer.gait.follows;
        let verdict = Verdict::new(goer.model, nodes);
        let mut judged = Judged {
            paths: Vec::new(),
            routes: Vec::new(),
            chances: Chances::new(net, goer, nodes, landings, verdict.wanted()),
            verdict,
            alike: BTreeMap::new(),
            practice: follows
                .iter()
                .map(|follow| practice(&goer.gait, follow))
                .collect(),
        };
        for found in routes(net, goer, foot, landings, longest) {
            judged.on_cells(net, goer, nodes, found);
        }
        for (number, lane) in net.figure.lanes.iter().enumerate() {
            judged.on_lane(net.figure, number, lane, goer, foot);
        }
        judged
    }

    fn on_cells(&mut self, net: &Net, goer: &Goer, nodes: &Nodes, found: Found) {
        let Found {
            start,
            stand,
            steps,
        } = found;
        let number = self.routes.len();
        let edge = |step: &Step| &net.edges[step.edge];
        let d = |step: &Step| net.spacings[step.spacing].d;
        let mut route = Route {
            n: steps.len(),
            cells: std::iter::once(start)
                .chain(steps.iter().map(|step| edge(step).to))
                .collect(),
            lane: None,
            contacts: contacts(stand, goer, steps.iter().map(|step| step.line)),
            length: steps.iter().map(d).sum(),
            p: 0.0,
            pi_0: 0.0,
        };
        let overlaps = steps.iter().any(|step| edge(step).overlap);

        // A route of the same contacts as one before (from the other side of a ring, say) has
        // its chances, and the tie between them is decided for the earlier.
        let key = (
            overlaps,
            steps
                .iter()
                .map(|step| self.chances.contact(step))
                .collect(),
        );
        if let Some(same) = self.alike.get(&key).and_then(|same| self.routes.get(*same)) {
            (route.p, route.pi_0) = (same.p, same.pi_0);
        } else if self.idle(nodes, &steps) {
            // Nowhere done half the time: it neither pitches well nor makes too easy.
            self.alike.insert(key, number);
        } else {
            let products = self.chances.products(&steps);
            let Some(pi) = products.last() else { return };
            let mut by_kind = vec![0.0; goer.kinds.len()];
            for step in &steps {
                by_kind[goer.kind_of[step.line]] += d(step) / steps.len() as f64;
            }
            let stretch = |place: usize| -> f64 {
                by_kind
                    .iter()
                    .enumerate()
                    .map(|(kind, d)| d * nodes.per_rho(kind)[place])
                    .sum()
            };
            let practised: Vec<&[f64]> = steps
                .iter()
                .zip(products)
                .filter(|(step, _)| !self.practice[step.line].is_empty())
                .map(|(_, product)| &*product.at)
                .collect();
            self.verdict.hold(
                number,
                pi.on_grid(nodes),
                |place| pi.at[place],
                |place| !overlaps && stretch(place) >= goer.model.stretch - SAME_STRETCH,
                |place| practised.iter().map(|product| product[place]).sum(),
            );
            (route.p, route.pi_0) = (goer.can * nodes.mean(pi), pi.now);
            self.alike.insert(key, number);
        }
        self.routes.push(route);
        self.paths.push(Path::Cells(steps));
    }

    /// Whether a route changes no verdict and has no P worth handing on.
    fn idle(&mut self, nodes: &Nodes, steps: &[Step]) -> bool {
        /// A thousandth of what is handed on.
        const NOTHING: f64 = 1e-9;
        let most = self.chances.most(steps);
        !self.verdict.heeds(most) && (!nodes.means() || most < NOTHING)
    }

    /// Every number of whole strides is a route: a child may stop at any.
    fn on_lane(
        &mut self,
        figure: &Figure,
        number: usize,
        lane: &Lane,
        goer: &Goer,
        foot: Option<Side>,
    ) {
        let Some((stand, treads)) = treads(figure, lane, goer, foot) else {
            return;
        };
        let (mut pi, mut good) = (1.0, 0.0);
        for n in 1..=treads.len() {
            let tread = treads[n - 1];
            pi *= tread.p;
            // The run-up alone is no route.
            if self.practice[tread.line].is_empty() {
                continue;
            }
            good += pi;
            let all = self.verdict.places();
            self.verdict
                .hold(self.routes.len(), all, |_| pi, |_| true, |_| good);
            self.routes.push(Route {
                n,
                cells: Vec::new(),
                lane: Some(number),
                contacts: contacts(stand, goer, treads[..n].iter().map(|tread| tread.line)),
                length: tread.along,
                p: goer.can * pi,
                pi_0: pi,
            });
            self.paths.push(Path::Lane(treads[..n].to_vec()));
        }
    }

    /// The route chosen at the z nearest to 0 at which one is.
    pub fn timed(&self) -> Option<usize> {
        let place = self.verdict.nearest()?;
        self.verdict.chosen(place)
    }

    /// c(z) by skill and foot.
    pub fn curves(&mut self) -> Vec<Curve> {
        let chosen: Vec<Option<usize>> =
            (0..GRID).map(|place| self.verdict.chosen(place)).collect();
        let mut curves: BTreeMap<(Skill, Option<Side>), Vec<f64>> = BTreeMap::new();
        let routes: BTreeSet<usize> = chosen.iter().copied().flatten().collect();
        for route in routes {
            let places: Vec<usize> = (0..GRID)
                .filter(|place| chosen[*place] == Some(route))
                .collect();
            let mut credit = |line: usize, product: &dyn Fn(usize) -> f64| {
                for &(skill, foot, share) in &self.practice[line] {
                    let curve = curves
                        .entry((skill, foot))
                        .or_insert_with(|| vec![0.0; GRID]);
                    for &place in &places {
                        curve[place] += share * product(place);
                    }
                }
            };
            match &self.paths[route] {
                Path::Cells(steps) => {
                    for (step, product) in steps.iter().zip(self.chances.products(steps)) {
                        credit(step.line, &|place| product.at[place]);
                    }
                }
                Path::Lane(treads) => {
                    let mut pi = 1.0;
                    for tread in treads {
                        pi *= tread.p;
                        credit(tread.line, &|_| pi);
                    }
                }
            }
        }
        let well: Vec<usize> = (0..GRID).filter(|place| chosen[*place].is_some()).collect();
        curves
            .into_iter()
            .map(|((skill, foot), curve)| Curve {
                skill,
                foot,
                contacts: well
                    .iter()
                    .map(|&place| (WEIGHTS[place], curve[place]))
                    .collect(),
            })
            .collect()
    }

    /// c(0) by skill and foot, where the child is well pitched at z = 0.
    pub fn good_contacts(&self, curves: &[Curve]) -> Vec<Good> {
        if self.verdict.chosen(HALF_GRID).is_none() {
            return Vec::new();
        }
        let before = (0..HALF_GRID)
            .filter(|place| self.verdict.chosen(*place).is_some())
            .count();
        curves
            .iter()
            .filter_map(
                |Curve {
                     skill,
                     foot,
                     contacts,
                 }| {
                    let (_, contacts) = *contacts.get(before)?;
                    (contacts > 0.0).then_some(Good {
                        skill: *skill,
                        foot: *foot,
                        contacts,
                    })
                },
            )
            .collect()
    }
}

/// The start and what lands.
fn contacts(stand: Contact, goer: &Goer, lines: impl Iterator<Item = usize>) -> Vec<Contact> {
    std::iter::once(stand)
        .chain(lines.map(|line| goer.gait.follows[line].then.contact))
        .collect()
}
