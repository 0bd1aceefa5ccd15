//! What comes out: routes, shares, the chosen route, practice and time.

use std::collections::{BTreeMap, BTreeSet};

use children::{Child, Side, Skill};
use marking::{Figure, Lane};
use rayon::prelude::*;

use crate::chance::{Chances, GRID, HALF_GRID, Nodes, WEIGHTS};
use crate::contact::{Goer, landings};
use crate::figures::Model;
use crate::gait::{Contact, Gait, practice};
use crate::lane::{Tread, treads};
use crate::routes::{Found, Step, routes};
use crate::verdict::{Pitch, Verdict};
use crate::ways::{Net, Ways};

/// A stretch that is the least but for the last bit is the least.
const SAME_STRETCH: f64 = 1e-12;

/// A kept route.
#[derive(Clone, Debug, PartialEq)]
pub struct Route {
    /// Flights.
    pub n: usize,
    /// Numbers of the cells, the start first; empty on a lane.
    pub cells: Vec<usize>,
    /// Number of the lane, where it runs along one.
    pub lane: Option<usize>,
    /// What stands and lands, the start first.
    pub contacts: Vec<Contact>,
    /// Metres travelled.
    pub length: f64,
    /// P: the chance that the child completes it.
    pub p: f64,
    /// pi at z = 0, given that the child can do the skill.
    pub pi_0: f64,
}

/// Expected good contacts of a skill and foot in one pass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Good {
    /// The skill.
    pub skill: Skill,
    /// The foot, where the skill has sides.
    pub foot: Option<Side>,
    /// How many.
    pub contacts: f64,
}

/// c(z): expected good contacts of the route chosen at each z.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The skill.
    pub skill: Skill,
    /// The foot, where the skill has sides.
    pub foot: Option<Side>,
    /// At each z of the grid (-4 to 4 by .02) with a well-pitched route: its normal weight,
    /// and the contacts.
    pub contacts: Vec<(f64, f64)>,
}

/// What one child's feet do on one figure in one gait.
#[derive(Clone, Debug, PartialEq)]
pub struct Footfall {
    /// The gait's word.
    pub gait: &'static str,
    /// The skill that it serves.
    pub skill: Skill,
    /// The leading foot.
    pub foot: Option<Side>,
    /// Every kept route, by start cell and n, then those of the lanes.
    pub routes: Vec<Route>,
    /// The shares well pitched, too easy and out of reach.
    pub pitch: Pitch,
    /// Number of the route chosen at z = 0, where the child is well pitched there.
    pub chosen: Option<usize>,
    /// Expected good contacts of the chosen route.
    pub good_contacts: Vec<Good>,
    /// Number of the route that a turn's time is taken on: the chosen one, else the one
    /// chosen at the z nearest to 0.
    pub timed: Option<usize>,
    /// Seconds of one pass; `None` where the child is never well pitched.
    pub pass_s: Option<f64>,
    /// Seconds to walk back.
    pub walk_back_s: Option<f64>,
    /// Expected good contacts over z, by skill and foot.
    pub curves: Vec<Curve>,
}

impl Footfall {
    /// e: the mean over z of well pitched(z) x min(1, c(z)/full), with `full` the good
    /// contacts of a turn that count as full practice (turn x par / 60).
    pub fn practice(&self, skill: Skill, foot: Option<Side>, full: f64) -> f64 {
        let curve = self
            .curves
            .iter()
            .find(|curve| (curve.skill, curve.foot) == (skill, foot));
        let share = |(weight, contacts): &(f64, f64)| weight * (contacts / full).min(1.0);
        let e = curve.map_or(0.0, |curve| curve.contacts.iter().map(share).sum());
        if full > 0.0 { millionth(e) } else { 0.0 }
    }

    /// As handed on: probabilities, metres and seconds to 1e-6.
    fn rounded(mut self) -> Footfall {
        for route in &mut self.routes {
            route.length = millionth(route.length);
            route.p = millionth(route.p);
            route.pi_0 = millionth(route.pi_0);
        }
        let Pitch { well, easy, hard } = self.pitch;
        self.pitch = Pitch {
            well: millionth(well),
            easy: millionth(easy),
            hard: millionth(hard),
        };
        for good in &mut self.good_contacts {
            good.contacts = millionth(good.contacts);
        }
        self.pass_s = self.pass_s.map(millionth);
        self.walk_back_s = self.walk_back_s.map(millionth);
        self
    }
}

/// What a child's feet do on a figure: everything that a plan records, rounded to 1e-6.
///
/// A child that lacks a skill the gait needs has no route: the figure is out of reach.
///
/// - `foot`: the leading foot; gaits without sides pay no heed to it
pub fn tread(
    figure: &Figure,
    child: &Child,
    gait: &Gait,
    foot: Option<Side>,
    model: &Model,
) -> Footfall {
    let ways = Ways::of(figure, model);
    go(&ways, child, gait, foot, &landings(&ways, child), model).rounded()
}

/// A gait and the foot that leads it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Activity {
    /// The gait.
    pub gait: Gait,
    /// The leading foot.
    pub foot: Option<Side>,
}

/// Every child on every figure in every activity, on all threads.
///
/// By figure, then activity, then child: the same whatever the number of threads.
pub fn class(
    figures: &[Figure],
    children: &[Child],
    activities: &[Activity],
    model: &Model,
) -> Vec<Vec<Vec<Footfall>>> {
    let ways: Vec<Ways> = figures
        .par_iter()
        .map(|figure| Ways::of(figure, model))
        .collect();
    let pairs: Vec<(&Ways, &Child)> = ways
        .iter()
        .flat_map(|ways| children.iter().map(move |child| (ways, child)))
        .collect();
    // One job is a child on a figure: its landings serve every gait.
    let jobs: Vec<Vec<Footfall>> = pairs
        .into_par_iter()
        .map(|(ways, child)| {
            let landings = landings(ways, child);
            let activities = activities.iter();
            activities
                .map(|Activity { gait, foot }| {
                    go(ways, child, gait, *foot, &landings, model).rounded()
                })
                .collect()
        })
        .collect();
    let mut jobs = jobs.into_iter();
    figures
        .iter()
        .map(|_| {
            let mut by_activity: Vec<Vec<Footfall>> = activities
                .iter()
                .map(|_| Vec::with_capacity(children.len()))
                .collect();
            for job in jobs.by_ref().take(children.len()) {
                for (list, footfall) in by_activity.iter_mut().zip(job) {
                    list.push(footfall);
                }
            }
            by_activity
        })
        .collect()
}

/// A found route of either kind.
pub(crate) enum Path {
    /// On cells.
    Cells(Vec<Step>),
    /// Along a lane.
    Lane(Vec<Tread>),
}

/// The routes of a child on a figure, and the verdict over them.
struct Judged<'a> {
    paths: Vec<Path>,
    routes: Vec<Route>,
    verdict: Verdict,
    chances: Chances<'a>,
    /// Routes by whether cells overlap and by their contacts.
    alike: BTreeMap<(bool, Vec<usize>), usize>,
    /// What the contacts of each line of the gait are practice of.
    practice: Vec<Vec<(Skill, Option<Side>, f64)>>,
}

/// Everything for one figure, child, gait and foot, not yet rounded.
pub(crate) fn go(
    ways: &Ways,
    child: &Child,
    gait: &Gait,
    foot: Option<Side>,
    landings: &[f64],
    model: &Model,
) -> Footfall {
    let mut footfall = Footfall {
        gait: gait.name,
        skill: gait.skill,
        foot,
        routes: Vec::new(),
        pitch: Pitch {
            well: 0.0,
            easy: 0.0,
            hard: 1.0,
        },
        chosen: None,
        good_contacts: Vec::new(),
        timed: None,
        pass_s: None,
        walk_back_s: None,
        curves: Vec::new(),
    };
    let Some(goer) = Goer::new(child, gait, model) else {
        return footfall;
    };
    let nodes = Nodes::of(&goer, true, 1);
    let net = ways.net(&goer, foot, landings);
    let mut judged = Judged::of(&net, &goer, foot, &nodes, landings, model.longest);
    footfall.pitch = judged.verdict.pitch();
    footfall.chosen = judged.verdict.chosen(HALF_GRID);
    if let Some(place) = judged.verdict.nearest() {
        footfall.timed = judged.verdict.chosen(place);
    }
    if let Some(route) = footfall.timed.and_then(|timed| judged.routes.get(timed)) {
        footfall.pass_s = Some(route.n as f64 / model.rate(goer.gait.rate, child.age));
        footfall.walk_back_s = Some(route.length / child.speeds.walk + model.walk_back);
    }
    footfall.curves = judged.curves();
    footfall.good_contacts = judged.good_contacts(&footfall.curves);
    footfall.routes = judged.routes;
    footfall
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
    let chosen = judged
        .verdict
        .nearest()
        .and_then(|place| judged.verdict.chosen(place));
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
fn longest_heeded(goer: &Goer, landings: &[f64], nodes: &Nodes) -> usize {
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
    fn of(
        net: &'a Net,
        goer: &'a Goer,
        foot: Option<Side>,
        nodes: &'a Nodes,
        landings: &'a [f64],
        longest: usize,
    ) -> Judged<'a> {
        let follows = goer.gait.follows;
        let mut judged = Judged {
            paths: Vec::new(),
            routes: Vec::new(),
            verdict: Verdict::new(goer.model, nodes),
            chances: Chances::new(net, goer, nodes, landings),
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
            let practised: Vec<&Vec<f64>> = steps
                .iter()
                .zip(products)
                .filter(|(step, _)| !self.practice[step.line].is_empty())
                .map(|(_, product)| product)
                .collect();
            self.verdict.hold(
                number,
                |place| pi[place],
                |place| !overlaps && stretch(place) >= goer.model.stretch - SAME_STRETCH,
                |place| practised.iter().map(|product| product[place]).sum(),
            );
            (route.p, route.pi_0) = (goer.can * nodes.mean(pi), pi[nodes.grid / 2]);
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
            self.verdict
                .hold(self.routes.len(), |_| pi, |_| true, |_| good);
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

    /// c(z) by skill and foot.
    fn curves(&mut self) -> Vec<Curve> {
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
                        credit(step.line, &|place| product[place]);
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
    fn good_contacts(&self, curves: &[Curve]) -> Vec<Good> {
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

/// Rounded as handed on.
fn millionth(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}
