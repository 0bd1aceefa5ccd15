//! What a child does in an activity, as the footfall model has it.

use children::{Child, Skill};
use footfall::Footfall;
use layout::week::full_turn;
use ledger::Ledger;

use crate::figures as fig;
use crate::programme::{Activity, Play, Station};

impl Station {
    /// A painted marking as a station, without games.
    ///
    /// - `tracks`: of its figure
    /// - `footfalls`: by activity, then child, as [`footfall::class`] has them for it
    pub fn of(
        name: &str,
        tracks: u32,
        activities: &[footfall::Activity],
        footfalls: &[Vec<Footfall>],
        children: &[Child],
        ledger: &Ledger,
    ) -> Station {
        let below = ledger.number(fig::ALONE_BELOW);
        let trail = |gait: &str| {
            let same = std::iter::zip(activities, footfalls).filter(|it| it.0.gait.name == gait);
            let routes = same
                .flat_map(|it| it.1)
                .filter_map(|it| it.routes.get(it.timed?));
            routes.map(|route| route.length).fold(0.0, f64::max)
        };
        let activities = std::iter::zip(activities, footfalls)
            .map(|(activity, row)| Activity {
                word: layout::candidates::word(activity),
                skill: activity.gait.skill,
                side: activity.foot,
                alone: matches!(activity.gait.skill, Skill::Jump | Skill::Hop)
                    && trail(activity.gait.name) < below,
                plays: std::iter::zip(children, row)
                    .enumerate()
                    .filter_map(|(at, (child, it))| Play::of(at, child.age, it, ledger))
                    .collect(),
            })
            .filter(|activity: &Activity| !activity.plays.is_empty())
            .collect();
        Station {
            name: name.to_owned(),
            tracks,
            activities,
            games: Vec::new(),
        }
    }
}

impl Play {
    /// The play of a child of `years` on a figure; `None` where it gives no practice.
    ///
    /// Yields are e of the layout. Good contacts are those of the chosen route; where the
    /// child is well pitched only away from z = 0, the mean over the z where it is.
    pub fn of(child: usize, years: f64, footfall: &Footfall, ledger: &Ledger) -> Option<Play> {
        let (pass_s, walk_back_s) = footfall.pass_s.zip(footfall.walk_back_s)?;
        let route = footfall.routes.get(footfall.timed?)?;
        let yields: Vec<_> = footfall
            .curves
            .iter()
            .filter_map(|curve| {
                let full = full_turn(curve.skill, years, pass_s, walk_back_s, ledger)?;
                let e = curve.practice(full);
                (e > 0.0).then_some((curve.skill, curve.foot, e))
            })
            .collect();
        let good: f64 = if footfall.good_contacts.is_empty() {
            let means = footfall.curves.iter().map(|curve| {
                let weight: f64 = curve.contacts.iter().map(|it| it.0).sum();
                let sum: f64 = curve.contacts.iter().map(|it| it.0 * it.1).sum();
                if weight > 0.0 { sum / weight } else { 0.0 }
            });
            means.sum()
        } else {
            footfall.good_contacts.iter().map(|it| it.contacts).sum()
        };
        (!yields.is_empty()).then_some(Play {
            child,
            yields,
            flights: route.n as u32,
            good,
            pass_s,
            walk_back_s,
        })
    }
}
