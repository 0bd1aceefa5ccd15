//! Candidates: every family, sized for every part of the class.

use std::collections::BTreeMap;

use children::{Child, Skill};
use footfall::{Activity, Crowd, Gait, Model, Range, Turn};
use geo::Area;
use ledger::Ledger;
use marking::{Family, Figure, Look};
use rayon::prelude::*;

use crate::candidate::{Candidate, Yield};
use crate::figures::{CAN_LEAST, par};
use crate::millionth;
use crate::week::full_turn;

/// A part of the class that a marking is sized for.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// `all`, `younger`, `middle` or `older`.
    pub name: &'static str,
    /// Numbers of its children.
    pub children: Vec<usize>,
}

/// The whole class, and its thirds by age where there are ages to tell apart.
///
/// Thirds count children, not rows; children of one age stay together.
pub fn parts(children: &[Child]) -> Vec<Part> {
    let mut parts = vec![Part {
        name: "all",
        children: (0..children.len()).collect(),
    }];
    let mut order = parts[0].children.clone();
    order.sort_by(|a, b| children[*a].age.total_cmp(&children[*b].age).then(a.cmp(b)));
    let whole: f64 = children.iter().map(|child| f64::from(child.count)).sum();
    let mut thirds: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    let (mut before, mut from) = (0.0, 0);
    while from < order.len() {
        let age = children[order[from]].age;
        let same: Vec<usize> = order[from..]
            .iter()
            .copied()
            .take_while(|at| children[*at].age == age)
            .collect();
        let count: f64 = same.iter().map(|at| f64::from(children[*at].count)).sum();
        // Those of one age go where the middle of them lies.
        let third = ((before + count / 2.0) / whole * 3.0).clamp(0.0, 2.0) as usize;
        thirds.entry(third).or_default().extend(&same);
        before += count;
        from += same.len();
    }
    if thirds.len() > 1 {
        for (third, children) in thirds {
            parts.push(Part {
                name: ["younger", "middle", "older"][third.min(2)],
                children,
            });
        }
    }
    parts
}

/// What candidates are made from.
pub struct Kit<'a> {
    /// Families that the programme wants or does not refuse.
    pub families: &'a [&'a dyn Family],
    /// Names of families that are refused: they stay among the candidates, marked so.
    pub refused: &'a [String],
    /// Colours and breadths.
    pub look: &'a Look,
    /// Constants of the footfall model.
    pub model: &'a Model,
    /// What a figure costs: paint by the litre, tape, primer.
    pub price: &'a (dyn Fn(&Figure) -> f64 + Sync),
}

/// Every family at the lengths that suit each part of the class best, and what a minute on
/// it gives to each child. Figures that come out the same for two parts stand once, for
/// the larger; those that serve nobody are left out. A child whom no part's size serves with
/// the ledger's `footfall.left-out`, though another size of the family would, gets that size:
/// groups `rest`, `rest-2` and so on.
///
/// - `weights`: of the skills; they weigh no child, but a family of no weighted skill is
///   left out
pub fn candidates(
    children: &[Child],
    weights: &BTreeMap<Skill, f64>,
    kit: &Kit,
    ledger: &Ledger,
) -> Vec<Candidate> {
    let parts = parts(children);
    let bare = &kit.look.clone().bare();
    let made: Vec<Vec<Candidate>> = kit
        .families
        .par_iter()
        .map(|family| {
            let activities = open_to(activities(*family, weights), children, ledger);
            of_family(*family, &activities, &parts, children, kit, bare, ledger)
        })
        .collect();
    let mut kept: Vec<Candidate> = Vec::new();
    for candidate in made.into_iter().flatten() {
        if !kept.iter().any(|other| other.figure == candidate.figure) {
            kept.push(candidate);
        }
    }
    kept
}

/// A figure that may be offered: for whom it was sized, and every child on it.
type Offer = (String, Figure, Vec<Vec<Turn>>);

/// One family for each part that it suits in its own way, and for those whom these sizes
/// leave out though another would serve them.
fn of_family(
    family: &dyn Family,
    activities: &[Activity],
    parts: &[Part],
    children: &[Child],
    kit: &Kit,
    bare: &Look,
    ledger: &Ledger,
) -> Vec<Candidate> {
    let mut known: Vec<Vec<f64>> = Vec::new();
    let mut offers: Vec<Offer> = Vec::new();
    let mut offer = |group: String, lengths: Vec<f64>, offers: &mut Vec<Offer>| {
        if known.contains(&lengths) {
            return;
        }
        let Ok(figure) = family.make(&lengths, kit.look) else {
            return;
        };
        let told = footfall::turns(&figure, children, activities, kit.model);
        offers.push((group, figure, told));
        known.push(lengths);
    };
    for (part, lengths) in std::iter::zip(
        parts,
        sizes(family, activities, children, parts, bare, kit.model),
    ) {
        if let Some(lengths) = lengths {
            offer(part.name.to_owned(), lengths, &mut offers);
        }
    }
    let least = ledger.number(CAN_LEAST);
    let serves = |told: &[Vec<Turn>], at: usize, child: &Child| {
        std::iter::zip(activities, told).any(|(activity, row)| {
            let can = child.skills.get(&activity.gait.skill).map(|own| own.can);
            can.is_some_and(|can| millionth(can) >= least)
                && row
                    .get(at)
                    .is_some_and(|one| one.pitch.well >= kit.model.left_out)
        })
    };
    let mut rest = 0;
    let sized = one_foot(activities);
    for (number, child) in children.iter().enumerate() {
        for activity in &sized {
            if offers
                .iter()
                .any(|(_, _, told)| serves(told, number, child))
            {
                break;
            }
            let alone = Part {
                name: "rest",
                children: vec![0],
            };
            let own = std::slice::from_ref(child);
            let size = sizes(
                family,
                std::slice::from_ref(activity),
                own,
                &[alone],
                bare,
                kit.model,
            );
            let Some(lengths) = size.into_iter().flatten().next() else {
                continue;
            };
            let Ok(figure) = family.make(&lengths, bare) else {
                continue;
            };
            let told = footfall::turns(&figure, own, activities, kit.model);
            if serves(&told, 0, child) {
                rest += 1;
                let group = if rest == 1 {
                    "rest".to_owned()
                } else {
                    format!("rest-{rest}")
                };
                offer(group, lengths, &mut offers);
            }
        }
    }
    offers
        .into_iter()
        .filter_map(|(group, figure, told)| {
            let yields = yields_of(&told, activities, children, ledger);
            let used = yields.iter().any(|gift| gift.e > 0.0);
            used.then(|| Candidate {
                name: format!("{}-{group}", family.name()),
                family: family.name().to_owned(),
                group,
                cost: millionth((kit.price)(&figure)),
                area: millionth(figure.envelope.unsigned_area()),
                locked: None,
                refused: kit.refused.iter().any(|name| name == family.name()),
                mirrors: family.can_mirror(),
                yields,
                figure,
            })
        })
        .collect()
}

/// One foot stands for both: no default tells them apart.
fn one_foot(activities: &[Activity]) -> Vec<Activity> {
    activities
        .iter()
        .filter(|activity| activity.foot != Some(children::Side::Left))
        .copied()
        .collect()
}

/// The activities whose skill is a target of some child: what nobody can do is no target,
/// so no practice of it counts. Walking, which is no target, stays.
fn open_to(activities: Vec<Activity>, children: &[Child], ledger: &Ledger) -> Vec<Activity> {
    let least = ledger.number(CAN_LEAST);
    let can = |skill: Skill| {
        let mut known = children.iter().filter_map(|child| child.skills.get(&skill));
        known.any(|ability| millionth(ability.can) >= least)
    };
    activities
        .into_iter()
        .filter(|activity| {
            let gait = &activity.gait;
            par(gait.skill).is_none() || can(gait.skill) || gait.name == "court" && can(Skill::Jump)
        })
        .collect()
}

/// A family's gaits with each foot that may lead, where they serve a weighted skill.
pub fn activities(family: &dyn Family, weights: &BTreeMap<Skill, f64>) -> Vec<Activity> {
    let wanted = |skill: Skill| weights.get(&skill).is_some_and(|weight| *weight > 0.0);
    let gaits = family
        .activities()
        .iter()
        .filter_map(|name| Gait::named(name));
    gaits
        .filter(|gait| wanted(gait.skill) || gait.name == "court" && wanted(Skill::Jump))
        .flat_map(|gait| {
            let feet = if footfall::sided(gait.skill) {
                vec![Some(children::Side::Right), Some(children::Side::Left)]
            } else {
                vec![None]
            };
            feet.into_iter().map(move |foot| Activity { gait, foot })
        })
        .collect()
}

/// The word of files: `hop:R`, `jump`.
pub fn word(activity: &Activity) -> String {
    match activity.foot {
        None => activity.gait.name.to_owned(),
        Some(children::Side::Right) => format!("{}:R", activity.gait.name),
        Some(children::Side::Left) => format!("{}:L", activity.gait.name),
    }
}

/// For each part the family's lengths at which the free ones suit most of it, or its defaults
/// where it leaves none free.
///
/// - `bare`: a look that paints nothing, for no paint is looked at
fn sizes(
    family: &dyn Family,
    activities: &[Activity],
    children: &[Child],
    parts: &[Part],
    bare: &Look,
    model: &Model,
) -> Vec<Option<Vec<f64>>> {
    /// Free lengths that are searched; the others keep their defaults. A brook's banks, a
    /// court's two gaps and a spot's size are the first of their families.
    const SEARCHED: usize = 2;
    let defaults = family.defaults();
    let one_foot = one_foot(activities);
    if one_foot.iter().all(|activity| activity.gait.name == "walk") {
        return vec![Some(defaults); parts.len()];
    }
    let ranges: Vec<Range> = family
        .lengths()
        .iter()
        .take(SEARCHED)
        .map(Range::from)
        .collect();
    let (pupils, crowds) = faces(children, parts);
    let pupils: Vec<&Child> = pupils.into_iter().map(|at| &children[at]).collect();
    let with = |lengths: &[f64]| {
        let mut all = defaults.clone();
        all.iter_mut()
            .zip(lengths)
            .for_each(|(have, given)| *have = *given);
        all
    };
    let make = |lengths: &[f64]| family.make(&with(lengths), bare).ok();
    footfall::size_for(make, &ranges, &pupils, &crowds, &one_foot, model)
        .into_iter()
        .map(|lengths| Some(with(&lengths?)))
        .collect()
}

/// A few children who stand for the class while lengths are searched, and for each part
/// those who stand for it, each with the weight of those it stands for: by age, evenly.
fn faces(children: &[Child], parts: &[Part]) -> (Vec<usize>, Vec<Crowd>) {
    /// Of each third: enough to tell the ends of a class from its middle.
    const FACES: usize = 3;
    let mut pupils = Vec::new();
    let mut crowds: Vec<Crowd> = vec![Crowd::new(); parts.len()];
    let thirds = if parts.len() > 1 { 1 } else { 0 };
    let many = if parts.len() > 1 { FACES } else { 2 * FACES };
    for (number, part) in parts.iter().enumerate().skip(thirds) {
        let mut order = part.children.clone();
        order.sort_by(|a, b| children[*a].age.total_cmp(&children[*b].age).then(a.cmp(b)));
        for chunk in order.chunks(order.len().div_ceil(many).max(1)) {
            let count: f64 = chunk.iter().map(|at| f64::from(children[*at].count)).sum();
            crowds[number].push((pupils.len(), count));
            if number > 0 {
                // The whole class is its thirds.
                crowds[0].push((pupils.len(), count));
            }
            pupils.push(chunk[chunk.len() / 2]);
        }
    }
    (pupils, crowds)
}

/// e of every child and activity, rounded to 1e-6; zeros left out.
pub fn yields(
    figure: &Figure,
    activities: &[Activity],
    children: &[Child],
    model: &Model,
    ledger: &Ledger,
) -> Vec<Yield> {
    let told = footfall::turns(figure, children, activities, model);
    yields_of(&told, activities, children, ledger)
}

/// The same of turns, by activity and child.
fn yields_of(
    told: &[Vec<Turn>],
    activities: &[Activity],
    children: &[Child],
    ledger: &Ledger,
) -> Vec<Yield> {
    let mut yields = Vec::new();
    for (activity, row) in std::iter::zip(activities, told) {
        for (number, turn) in row.iter().enumerate() {
            let (Some(pass), Some(back)) = (turn.pass_s, turn.walk_back_s) else {
                continue;
            };
            for curve in &turn.curves {
                let age = children[number].age;
                let Some(full) = full_turn(curve.skill, age, pass, back, ledger) else {
                    continue;
                };
                let e = curve.practice(full);
                if e > 0.0 {
                    yields.push(Yield {
                        child: number,
                        activity: word(activity),
                        skill: curve.skill,
                        side: curve.foot,
                        e,
                    });
                }
            }
        }
    }
    yields
}
