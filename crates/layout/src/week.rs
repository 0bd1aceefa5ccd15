//! A week's time, and what each child should get of it.

use std::collections::BTreeMap;

use children::{Child, Side, Skill};
use ledger::Ledger;

use crate::figures as fig;
use crate::millionth;

/// What the programme plans for a week.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Week {
    /// Sessions a week.
    pub sessions: u32,
    /// Minutes of one session, warm-up and cool-down among them.
    pub minutes: f64,
    /// Members of staff outside.
    pub staff: u32,
    /// The whole yard, m².
    pub yard_area: f64,
}

/// The time that the choice may deal out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Time {
    /// M: station minutes a week of each child.
    pub each: f64,
    /// A: children out together.
    pub out: u32,
    /// Outings that a class needs: 1 where all go out together, 0 where none can.
    pub outings: u32,
}

impl Week {
    /// M, A and the outings of a class of `children`.
    pub fn time(&self, children: u32, ledger: &Ledger) -> Time {
        let station = (self.minutes - ledger.number(fig::WARM_UP)).max(0.0);
        let by_staff = ledger.number(fig::RATIO) * f64::from(self.staff);
        // An area is rounded when it is handed on; a yard of exactly 7 m2 a child must not
        // lose a child to the last bit.
        let by_area =
            (millionth(self.yard_area) / ledger.number(fig::AREA_PER_CHILD) + 1e-9).floor();
        let out = by_staff.min(by_area).max(0.0).min(f64::from(u32::MAX)) as u32;
        Time {
            each: millionth(f64::from(self.sessions) * station),
            out,
            outings: if out == 0 { 0 } else { children.div_ceil(out) },
        }
    }
}

/// Minutes a week that one child should practise one skill with one foot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Target {
    /// Number of the child.
    pub child: usize,
    /// The skill.
    pub skill: Skill,
    /// The foot, where the skill has sides.
    pub side: Option<Side>,
    /// Minutes.
    pub minutes: f64,
}

/// T_isf of every child, by child, skill and side; zeros left out.
///
/// Weights that are negative or not finite count as zero. A child to whom no weighted skill
/// is open has no target.
pub fn targets(
    children: &[Child],
    weights: &BTreeMap<Skill, f64>,
    each: f64,
    ledger: &Ledger,
) -> Vec<Target> {
    let can_least = ledger.number(fig::CAN_LEAST);
    let less_used = ledger.number(fig::LESS_USED);
    let mut targets = Vec::new();
    for (number, child) in children.iter().enumerate() {
        let pull = |skill: Skill| {
            let weight = weights
                .get(&skill)
                .copied()
                .filter(|w| w.is_finite())
                .unwrap_or(0.0);
            let can = child
                .skills
                .get(&skill)
                .map_or(0.0, |ability| millionth(ability.can));
            if can < can_least {
                0.0
            } else {
                weight.max(0.0) * can
            }
        };
        let whole: f64 = Skill::TAUGHT.into_iter().map(pull).sum();
        for skill in Skill::TAUGHT {
            let minutes = each * pull(skill) / whole;
            if minutes.is_nan() || minutes <= 0.0 {
                continue;
            }
            let shares: &[(Option<Side>, f64)] = match (fig::sided(skill), child.less_used) {
                (false, _) => &[(None, 1.0)],
                (true, None) => &[(Some(Side::Right), 0.5), (Some(Side::Left), 0.5)],
                (true, Some(Side::Right)) => &[
                    (Some(Side::Right), less_used),
                    (Some(Side::Left), 1.0 - less_used),
                ],
                (true, Some(Side::Left)) => &[
                    (Some(Side::Right), 1.0 - less_used),
                    (Some(Side::Left), less_used),
                ],
            };
            for &(side, share) in shares {
                let minutes = millionth(minutes * share);
                if minutes > 0.0 {
                    targets.push(Target {
                        child: number,
                        skill,
                        side,
                        minutes,
                    });
                }
            }
        }
    }
    targets
}

/// Good contacts of one turn that count as full practice: t par / 60, with t the longer of
/// pass and walk back, and the release of the children who share the track; e is then the
/// mean over z of min(1, c(z) / full).
///
/// - `pass_s`, `walk_back_s`: seconds
/// - `years`: the child's age
///
/// `None` for a skill without par.
pub fn full_turn(
    skill: Skill,
    years: f64,
    pass_s: f64,
    walk_back_s: f64,
    ledger: &Ledger,
) -> Option<f64> {
    let par = fig::par(skill)?;
    let share = ledger.number(fig::RELEASE) * ledger.number(fig::TRACK_CHILDREN);
    Some((pass_s + walk_back_s).max(share) * ledger.at_age(par, years) / 60.0)
}
