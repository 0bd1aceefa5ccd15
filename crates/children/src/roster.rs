//! Entries to children.

use std::collections::BTreeMap;

use ledger::{Key, Ledger};
use note::{Note, Noted, msg};

use crate::checks::{age_holds, less_used, measured};
use crate::child::{Ability, Child, Means, Skill, Speeds};
use crate::entry::{Date, Entry};
use crate::expected::{Expected, Reading};
use crate::figures::{
    FOOT, HOP_M, HOP_TAU, HOPS_RETEST, JUMP_BEST_SD, JUMP_COMFORT, JUMP_COMFORT_SD, JUMP_M,
    JUMP_RETEST, JUMP_TAU, RUN_SPEED, SCATTER, SITE_SHRINK, STATURE, WALK_SPEED, row,
};
use crate::growth::stature;
use crate::means::{adapted, pace};
use crate::site::{Measured, Site};

/// Stands among the sources of what was measured on the child.
const MEASURED: &str = "measured";

/// A child for each entry that can stand; the notes tell of the others and of doubtful
/// values. Ages are whole months from the birth month to the date's.
pub fn roster(entries: &[Entry], date: Date, ledger: &Ledger) -> Noted<Vec<Child>> {
    each(entries, date, ledger, |entry, known, site| {
        child(entry.id.clone(), 1, known, entry.means, site, ledger)
    })
}

/// The same children as age and body have them, with what was measured of their skills
/// beside: what learning starts from. The notes are those of [`roster`].
pub fn expected(entries: &[Entry], date: Date, ledger: &Ledger) -> Noted<Vec<Expected>> {
    let mut beside = Vec::new();
    let children = each(entries, date, ledger, |entry, known, site| {
        let body = Measured {
            jump: None,
            hops: [None; 2],
            ..*known
        };
        let site = Site {
            stature: site.stature,
            ..Site::NOBODY
        };
        let child = child(entry.id.clone(), 1, &body, entry.means, &site, ledger);
        beside.push((
            entry.group.clone(),
            readings(known, child.foot, ledger),
            cans(known),
        ));
        child
    });
    let value = std::iter::zip(children.value, beside)
        .map(|(child, (group, readings, cans))| Expected {
            child,
            group,
            readings,
            cans,
        })
        .collect();
    Noted {
        value,
        notes: children.notes,
    }
}

/// What a measured best tells of comfortable reach, skill by skill: readings that alone move
/// the age's figures to what [`roster`] has for a child of no class.
fn readings(known: &Measured, foot: f64, ledger: &Ledger) -> BTreeMap<Skill, Reading> {
    let age = known.age();
    let mut readings = BTreeMap::new();
    let jump = Jump::of(known, &Site::NOBODY, ledger);
    if let Some(tau) = jump.tau {
        let before = ledger.at_age(JUMP_TAU, age);
        readings.extend(
            Reading::between((jump.age + foot, before), (jump.child + foot, tau))
                .map(|reading| (Skill::Jump, reading)),
        );
    }
    if let Some(seen) = known.hop(ledger) {
        let (m, tau) = (ledger.at_age(HOP_M, age), ledger.at_age(HOP_TAU, age));
        let weight = ledger.number(HOPS_RETEST);
        let after = (
            weight * seen + (1.0 - weight) * m,
            tau * libm::sqrt(1.0 - weight),
        );
        readings.extend(Reading::between((m, tau), after).map(|reading| (Skill::Hop, reading)));
    }
    readings
}

/// Whether what was measured shows that a skill is there, or that it is not.
fn cans(known: &Measured) -> BTreeMap<Skill, bool> {
    let jump = known.jump.map(|best| (Skill::Jump, best > 0.0));
    let hop = match known.hops {
        [Some(right), Some(left)] => Some(right > 0.0 || left > 0.0),
        [Some(one), None] | [None, Some(one)] => (one > 0.0).then_some(true),
        [None, None] => None,
    };
    jump.into_iter()
        .chain(hop.map(|can| (Skill::Hop, can)))
        .collect()
}

fn each(
    entries: &[Entry],
    date: Date,
    ledger: &Ledger,
    mut child: impl FnMut(&Entry, &Measured, &Site) -> Child,
) -> Noted<Vec<Child>> {
    let mut notes = Vec::new();
    let known: Vec<(&Entry, Measured)> = entries
        .iter()
        .filter_map(|entry| Some((entry, measured(entry, date, ledger, &mut notes)?)))
        .collect();
    let site = Site::of(
        &known.iter().map(|(_, child)| *child).collect::<Vec<_>>(),
        ledger,
    );
    let value = known
        .iter()
        .map(|(entry, known)| {
            let less_used = less_used(entry, known, ledger, &mut notes);
            Child {
                less_used,
                ..child(entry, known, &site)
            }
        })
        .collect();
    let others: Vec<String> = known
        .iter()
        .filter(|(entry, _)| entry.means != Means::Feet)
        .map(|(entry, _)| entry.id.clone())
        .collect();
    if !others.is_empty() {
        notes.push(
            Note::advice(
                None,
                msg!("child-own-means", count = others.len(), children = others),
            )
            .mend(msg!("child-own-means-mend")),
        );
    }
    Noted { value, notes }
}

/// So many children of each age in years, taken exactly: a class of three-year-olds is
/// 3.5 in the middle. An age given twice is one age.
pub fn counts(ages: &[(f64, u32)], ledger: &Ledger) -> Noted<Vec<Child>> {
    let mut notes = Vec::new();
    let mut value: Vec<Child> = Vec::new();
    for (age, count) in ages.iter().filter(|(_, count)| *count > 0) {
        let months = age * 12.0;
        if !age_holds(&format!("{age}"), *age, None, ledger, &mut notes) {
            continue;
        }
        let name = format!("age-{age}");
        if let Some(same) = value.iter_mut().find(|child| child.name == name) {
            same.count = same.count.saturating_add(*count);
            continue;
        }
        let known = Measured {
            months,
            sex: None,
            height: None,
            foot: None,
            jump: None,
            hops: [None; 2],
        };
        value.push(child(
            name,
            *count,
            &known,
            Means::Feet,
            &Site::NOBODY,
            ledger,
        ));
    }
    Noted { value, notes }
}

/// As values are handed on.
pub(crate) fn millionth(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}

/// Foot length of a stature, metres.
pub(crate) fn foot_of(stature: f64, ledger: &Ledger) -> f64 {
    match ledger.list(FOOT) {
        [slope, intercept] => slope * stature + intercept,
        _ => f64::NAN,
    }
}

fn child(
    name: String,
    count: u32,
    known: &Measured,
    means: Means,
    site: &Site,
    ledger: &Ledger,
) -> Child {
    let age = known.age();
    ledger.cite(STATURE);
    let median = stature(None, known.months, 0.0);
    let tall = known
        .height
        .unwrap_or_else(|| stature(known.sex, known.months, site.stature.unwrap_or(0.0)));
    let foot = known.foot.unwrap_or_else(|| foot_of(tall, ledger));
    // how much the reaches that are shares of stature are moved, and what moved them
    let by_stature = match (known.height, site.stature) {
        (Some(height), _) => (height / median, Some(MEASURED)),
        (None, Some(z)) => (stature(None, known.months, z) / median, Some(SITE_SHRINK.0)),
        (None, None) => (1.0, None),
    };
    let jump = Jump::of(known, site, ledger);
    let skills: BTreeMap<Skill, Ability> = Skill::ALL
        .into_iter()
        .map(|skill| {
            let on_feet = match skill {
                Skill::Jump => jump.ability(known, foot, ledger),
                Skill::Hop => hop(known, site, &jump, ledger),
                _ if row(skill).by_stature => prior(skill, age, by_stature.0, by_stature.1, ledger),
                _ => prior(skill, age, 1.0, None, ledger),
            };
            let ability = adapted(means, skill, age, on_feet, ledger);
            let rounded = Ability {
                m: millionth(ability.m),
                tau: millionth(ability.tau),
                can: millionth(ability.can),
                steady: millionth(ability.steady),
                sources: ability.sources,
            };
            (skill, rounded)
        })
        .collect();
    let on_feet = Speeds {
        walk: ledger.at_age(WALK_SPEED, age),
        run: ledger.at_age(RUN_SPEED, age),
    };
    let speeds = pace(means, on_feet, ledger);
    Child {
        name,
        count,
        age: millionth(age),
        stature: millionth(tall),
        foot: millionth(foot),
        scatter: millionth(ledger.at_age(SCATTER, age)),
        means,
        less_used: None,
        speeds: Speeds {
            walk: millionth(speeds.walk),
            run: millionth(speeds.run),
        },
        skills,
    }
}

/// A skill as the age's figures have it, its reach times `factor`.
fn prior(skill: Skill, age: f64, factor: f64, by: Option<&str>, ledger: &Ledger) -> Ability {
    let row = row(skill);
    let keys: [Key; 4] = [row.m, row.tau, row.can, row.steady];
    Ability {
        m: ledger.at_age(row.m, age) * factor,
        tau: ledger.at_age(row.tau, age) * factor,
        can: ledger.at_age(row.can, age),
        steady: ledger.at_age(row.steady, age),
        sources: keys
            .iter()
            .map(|key| key.0)
            .chain(by)
            .map(str::to_owned)
            .collect(),
    }
}

/// The comfortable gap of the jump, metres: of the age, of the site, of the child.
struct Jump {
    age: f64,
    site: f64,
    child: f64,
    tau: Option<f64>,
}

impl Jump {
    /// The best jump is known as Normal(age + site, sd); one measured best has the retest
    /// correlation's weight. What is comfortable is a share of it that differs by child.
    fn of(known: &Measured, site: &Site, ledger: &Ledger) -> Jump {
        let comfort = ledger.number(JUMP_COMFORT);
        let age = ledger.at_age(JUMP_M, known.age());
        let of_site = (age + comfort * site.jump.unwrap_or(0.0)).max(age / 2.0);
        let Some(best) = known.jump.filter(|best| *best > 0.0) else {
            return Jump {
                age,
                site: of_site,
                child: of_site,
                tau: None,
            };
        };
        let weight = ledger.number(JUMP_RETEST);
        let of_best = comfort * ledger.number(JUMP_BEST_SD) * libm::sqrt(1.0 - weight);
        let of_share = ledger.number(JUMP_COMFORT_SD) * best;
        Jump {
            age,
            site: of_site,
            child: weight * comfort * best + (1.0 - weight) * of_site,
            tau: Some(libm::hypot(of_best, of_share)),
        }
    }

    fn ability(&self, known: &Measured, foot: f64, ledger: &Ledger) -> Ability {
        let by = match (self.tau, self.site == self.age) {
            (Some(_), _) => Some(MEASURED),
            (None, false) => Some(SITE_SHRINK.0),
            (None, true) => None,
        };
        let age = prior(Skill::Jump, known.age(), 1.0, by, ledger);
        Ability {
            m: self.child + foot,
            // a measurement never makes us less sure
            tau: self.tau.map_or(age.tau, |tau| tau.min(age.tau)),
            can: known
                .jump
                .map_or(age.can, |best| if best > 0.0 { 1.0 } else { 0.0 }),
            ..age
        }
    }
}

/// The hop follows the jump (0.45 of its best) until hops are measured.
fn hop(known: &Measured, site: &Site, jump: &Jump, ledger: &Ledger) -> Ability {
    let of_class = site.hop.unwrap_or(jump.site / jump.age);
    let of_child = jump.child / jump.site;
    let seen = known.hop(ledger);
    let by = match (seen.is_some() || jump.tau.is_some(), of_class == 1.0) {
        (true, _) => Some(MEASURED),
        (false, false) => Some(SITE_SHRINK.0),
        (false, true) => None,
    };
    let age = prior(Skill::Hop, known.age(), of_class * of_child, by, ledger);
    let weight = ledger.number(HOPS_RETEST);
    match (seen, known.hops) {
        (Some(seen), _) => Ability {
            m: weight * seen + (1.0 - weight) * age.m,
            tau: age.tau * libm::sqrt(1.0 - weight),
            can: 1.0,
            ..age
        },
        // tried on both feet, and neither came off
        (None, [Some(_), Some(_)]) => Ability { can: 0.0, ..age },
        (None, _) => age,
    }
}
