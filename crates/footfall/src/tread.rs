//! What comes out: routes, shares, the chosen route, practice and time.

use children::{Child, Side, Skill};
use marking::Figure;
use rayon::prelude::*;

use crate::chance::{HALF_GRID, Nodes};
use crate::contact::{Goer, landings};
use crate::figures::Model;
use crate::gait::{Contact, Gait};
use crate::judged::{Judged, longest_heeded};
use crate::verdict::Pitch;
use crate::ways::Ways;

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

/// What a turn on a figure in one gait gives a child: all of a [`Footfall`] that a choice of
/// figures asks for, and sooner told.
#[derive(Clone, Debug, PartialEq)]
pub struct Turn {
    /// The shares well pitched, too easy and out of reach.
    pub pitch: Pitch,
    /// Seconds of one pass; `None` where the child is never well pitched.
    pub pass_s: Option<f64>,
    /// Seconds to walk back.
    pub walk_back_s: Option<f64>,
    /// Expected good contacts over z, by skill and foot.
    pub curves: Vec<Curve>,
}

impl Curve {
    /// e: the mean over z of well pitched(z) x min(1, c(z)/full), with `full` the good
    /// contacts of a turn that count as full practice (turn x par / 60).
    pub fn practice(&self, full: f64) -> f64 {
        let share = |(weight, contacts): &(f64, f64)| weight * (contacts / full).min(1.0);
        let e: f64 = self.contacts.iter().map(share).sum();
        if full > 0.0 { millionth(e) } else { 0.0 }
    }
}

impl Turn {
    fn rounded(mut self) -> Turn {
        self.pitch = self.pitch.rounded();
        self.pass_s = self.pass_s.map(millionth);
        self.walk_back_s = self.walk_back_s.map(millionth);
        self
    }
}

impl Pitch {
    /// Nobody comes to the end.
    const OUT_OF_REACH: Pitch = Pitch {
        well: 0.0,
        easy: 0.0,
        hard: 1.0,
    };

    fn rounded(self) -> Pitch {
        let Pitch { well, easy, hard } = self;
        Pitch {
            well: millionth(well),
            easy: millionth(easy),
            hard: millionth(hard),
        }
    }
}

impl Footfall {
    /// As handed on: probabilities, metres and seconds to 1e-6.
    fn rounded(mut self) -> Footfall {
        for route in &mut self.routes {
            route.length = millionth(route.length);
            route.p = millionth(route.p);
            route.pi_0 = millionth(route.pi_0);
        }
        self.pitch = self.pitch.rounded();
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

/// What a turn on a figure gives each child, by activity, then child, rounded to 1e-6: as
/// [`class`] tells it, without the routes and their P.
pub fn turns(
    figure: &Figure,
    children: &[Child],
    activities: &[Activity],
    model: &Model,
) -> Vec<Vec<Turn>> {
    let ways = &Ways::of(figure, model);
    let of_child = |child: &Child| -> Vec<Turn> {
        let landings = landings(ways, child);
        let activities = activities.iter();
        activities
            .map(|Activity { gait, foot }| turn(ways, child, gait, *foot, &landings, model))
            .map(Turn::rounded)
            .collect()
    };
    let by_child: Vec<Vec<Turn>> = children.par_iter().map(of_child).collect();
    let mut by_activity: Vec<Vec<Turn>> = activities.iter().map(|_| Vec::new()).collect();
    for turns in by_child {
        for (list, turn) in by_activity.iter_mut().zip(turns) {
            list.push(turn);
        }
    }
    by_activity
}

fn turn(
    ways: &Ways,
    child: &Child,
    gait: &Gait,
    foot: Option<Side>,
    landings: &[f64],
    model: &Model,
) -> Turn {
    let Some(goer) = Goer::new(child, gait, model) else {
        return Turn {
            pitch: Pitch::OUT_OF_REACH,
            pass_s: None,
            walk_back_s: None,
            curves: Vec::new(),
        };
    };
    // No P is asked for, so neither are routes that no verdict heeds.
    let nodes = Nodes::of(&goer, false, 1);
    let net = ways.net(&goer, foot, landings);
    let longest = longest_heeded(&goer, landings, &nodes);
    let mut judged = Judged::of(&net, &goer, foot, &nodes, landings, longest);
    let timed = judged.timed();
    let (pass_s, walk_back_s) = seconds(&judged, timed, &goer, child, model);
    Turn {
        pitch: judged.verdict.pitch(),
        pass_s,
        walk_back_s,
        curves: judged.curves(),
    }
}

/// Seconds of one pass on a route, and to walk back.
fn seconds(
    judged: &Judged,
    timed: Option<usize>,
    goer: &Goer,
    child: &Child,
    model: &Model,
) -> (Option<f64>, Option<f64>) {
    let route = timed.and_then(|timed| judged.routes.get(timed));
    let pass = route.map(|route| route.n as f64 / model.rate(goer.gait.rate, child.age));
    let back = route.map(|route| route.length / child.speeds.walk + model.walk_back);
    (pass, back)
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
        pitch: Pitch::OUT_OF_REACH,
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
    footfall.timed = judged.timed();
    (footfall.pass_s, footfall.walk_back_s) = seconds(&judged, footfall.timed, &goer, child, model);
    footfall.curves = judged.curves();
    footfall.good_contacts = judged.good_contacts(&footfall.curves);
    footfall.routes = judged.routes;
    footfall
}

/// Rounded as handed on.
fn millionth(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}
