//! From what was seen in the yard to children as they now stand.

use std::collections::{BTreeMap, BTreeSet};

use children::{Ability, Child, Expected, Means, Side, Skill};
use footfall::{Gait, Model, Odds, odds};
use ledger::Ledger;
use marking::Figure;
use note::{Note, Noted, msg};
use rayon::prelude::*;

use crate::effects::Shared;
use crate::evidence::{Attempt, Evidence};
use crate::figures::{GROUP_SHARE, REACH_FLOOR, SHOWS, SITE_SHRINK, WEIGHT};
use crate::fit::{Band, Case, Fit, Fitted, Posterior, fit};

/// Tries of one child on one figure.
#[derive(Clone, Debug)]
pub struct Try {
    /// What was tried.
    pub figure: Figure,
    /// How; a court is a try of the hop.
    pub gait: Gait,
    /// The leading foot, where the gait has one.
    pub foot: Option<Side>,
    /// Tries.
    pub n: u32,
    /// Good ones; more than `n` count as `n`.
    pub good: u32,
}

/// Criteria of a skill that an observer looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Check {
    /// The skill.
    pub skill: Skill,
    /// Criteria looked at.
    pub n: u32,
    /// Criteria met.
    pub met: u32,
}

/// Contacts counted until the pattern broke, or the observer stopped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Run {
    /// The skill.
    pub skill: Skill,
    /// Contacts that kept the pattern.
    pub contacts: u32,
    /// Whether it then broke.
    pub broke: bool,
}

/// A child and what it has shown.
#[derive(Clone, Debug)]
pub struct Pupil {
    /// As age and body have it, with its measured bests.
    pub expected: Expected,
    /// Tries.
    pub tries: Vec<Try>,
    /// Checks.
    pub checks: Vec<Check>,
    /// Counted contacts.
    pub runs: Vec<Run>,
}

impl Pupil {
    /// A child of whom nothing more was seen.
    pub fn new(expected: Expected) -> Pupil {
        Pupil {
            expected,
            tries: Vec::new(),
            checks: Vec::new(),
            runs: Vec::new(),
        }
    }
}

/// How much was seen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Seen {
    /// Tries.
    pub tries: u32,
    /// Good ones.
    pub good: u32,
    /// Measured bests.
    pub measured: u32,
    /// Criteria looked at.
    pub checks: u32,
    /// Criteria met.
    pub met: u32,
    /// Counts of contacts.
    pub runs: u32,
    /// Contacts that kept the pattern in them.
    pub contacts: u32,
}

/// What is known of one skill of one child, before and after.
#[derive(Clone, Debug, PartialEq)]
pub struct Told {
    /// The child.
    pub child: String,
    /// Completed years.
    pub years: u32,
    /// The group; empty where the class has none.
    pub group: String,
    /// The skill.
    pub skill: Skill,
    /// As age and body have it.
    pub prior: Ability,
    /// What the child has shown.
    pub seen: Seen,
    /// Children of its age or group who have shown something of the skill, and their tries.
    pub others: (u32, u32),
    /// Whether the hop followed the jump.
    pub follows_jump: bool,
    /// As handed on.
    pub posterior: Ability,
    /// Reach, metres, given that the child can.
    pub reach: Band,
    /// Steadiness, given that the child can.
    pub steady: Band,
    /// The rate at which criteria are met.
    pub form: Band,
}

/// Whose effect it is.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Of {
    /// All children of these completed years.
    Age(u32),
    /// All children of a group; the empty name is the class that has no groups.
    Group(String),
}

/// What children of an age or a group have in common, beyond the age's figures.
#[derive(Clone, Debug, PartialEq)]
pub struct Effect {
    /// The skill.
    pub skill: Skill,
    /// Whose it is.
    pub of: Of,
    /// Children who share it.
    pub children: u32,
    /// Those of them who have shown something of the skill.
    pub told_by: u32,
    /// Their tries.
    pub tries: u32,
    /// Its standard deviation before anything was seen (its mean was 0), metres of reach.
    pub prior_sd: f64,
    /// What is known of it now, metres of reach, by the mean spread of those who share it.
    pub now: Band,
}

/// What a class has shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Learned {
    /// The children as they now stand, in their order.
    pub children: Vec<Child>,
    /// Every skill of a child that something was learned of, by child and skill.
    pub told: Vec<Told>,
    /// What is shared, by skill, ages first.
    pub effects: Vec<Effect>,
}

/// Stand among the sources of what was learned from the child itself.
const MEASURED: &str = "measured";
const TRIED: &str = "tried";
const CHECKED: &str = "checked";
const COUNTED: &str = "counted";

/// Learns from what a class has shown.
///
/// Skills that nobody has shown anything of stay as they are; the hop follows a jump that
/// has moved. All tries of a skill count at once, on the routes that the children would
/// have taken before them. Children on wheels or with a walker, or held, learn from their
/// own tries alone: their reach is another thing. A row that stands for several children
/// learns nothing of its own; a note says so.
///
/// # Shapes and units
/// Metres; what is handed on is rounded to 1e-6.
pub fn learn(pupils: &[Pupil], model: &Model, ledger: &Ledger) -> Noted<Learned> {
    let mut notes = Vec::new();
    let many: Vec<String> = pupils
        .iter()
        .filter(|pupil| pupil.expected.child.count != 1 && shows_anything(pupil))
        .map(|pupil| pupil.expected.child.name.clone())
        .collect();
    if !many.is_empty() {
        notes.push(
            Note::warning(None, msg!("learning-of-many", children = many))
                .mend(msg!("learning-of-many-mend")),
        );
    }
    let mut class = Class::of(pupils, ledger);
    // The jump comes before the hop, which follows it.
    for skill in Skill::ALL {
        class.learn(skill, pupils, model);
        if skill == Skill::Jump {
            class.hop_follows(pupils);
        }
    }
    let Class {
        children,
        mut told,
        effects,
        ..
    } = class;
    let place: BTreeMap<&str, usize> = pupils
        .iter()
        .enumerate()
        .map(|(at, pupil)| (pupil.expected.child.name.as_str(), at))
        .collect();
    told.sort_by_key(|told| (place.get(told.child.as_str()).copied(), told.skill));
    Noted {
        value: Learned {
            children,
            told,
            effects,
        },
        notes,
    }
}

fn shows_anything(pupil: &Pupil) -> bool {
    let tries = pupil.tries.iter().any(|tried| tried.n > 0);
    let checks = pupil.checks.iter().any(|check| check.n > 0);
    tries || checks || !pupil.runs.is_empty() || !pupil.expected.readings.is_empty()
}

/// The class while it learns.
struct Class {
    fit: Fit,
    /// As they now stand.
    children: Vec<Child>,
    /// As they stood before what was seen of the skill in hand.
    before: Vec<Child>,
    years: Vec<u32>,
    /// Number of its age and group, where a child shares them.
    shares: Vec<Option<(usize, usize)>>,
    ages: Vec<u32>,
    groups: Vec<String>,
    follows: Vec<bool>,
    told: Vec<Told>,
    effects: Vec<Effect>,
}

impl Class {
    fn of(pupils: &[Pupil], ledger: &Ledger) -> Class {
        let children: Vec<Child> = pupils
            .iter()
            .map(|pupil| pupil.expected.child.clone())
            .collect();
        let years: Vec<u32> = children.iter().map(|child| years(child.age)).collect();
        let group = |pupil: &Pupil| pupil.expected.group.clone().unwrap_or_default();
        let ages: BTreeSet<u32> = years.iter().copied().collect();
        let groups: BTreeSet<String> = pupils.iter().map(group).collect();
        let (ages, groups): (Vec<u32>, Vec<String>) =
            (ages.into_iter().collect(), groups.into_iter().collect());
        let shares = pupils
            .iter()
            .zip(&years)
            .map(|(pupil, years)| {
                let pools = pupil.expected.child.means == Means::Feet;
                let age = ages.binary_search(years).ok()?;
                let group = groups.binary_search(&group(pupil)).ok()?;
                pools.then_some((age, group))
            })
            .collect();
        Class {
            fit: Fit {
                shared: Shared::of(ledger),
                weight: ledger.number(WEIGHT),
                shows: ledger.number(SHOWS),
                floor: ledger.number(REACH_FLOOR),
            },
            before: children.clone(),
            follows: vec![false; children.len()],
            children,
            years,
            shares,
            ages,
            groups,
            told: Vec::new(),
            effects: Vec::new(),
        }
    }

    /// The hop is a share of the jump (`reach.hop.m`, 0.45 of its best) until hops tell more:
    /// it starts from where the jump has gone.
    fn hop_follows(&mut self, pupils: &[Pupil]) {
        for (at, pupil) in pupils.iter().enumerate() {
            let child = &pupil.expected.child;
            let gap = |child: &Child| Some(child.skills.get(&Skill::Jump)?.m - child.foot);
            let (Some(was), Some(now)) = (gap(child), self.children.get(at).and_then(gap)) else {
                continue;
            };
            let moved = now / was;
            if child.means != Means::Feet || now == was || !(moved > 0.0 && moved.is_finite()) {
                continue;
            }
            self.follows[at] = true;
            for child in [&mut self.before[at], &mut self.children[at]] {
                if let Some(hop) = child.skills.get_mut(&Skill::Hop) {
                    hop.m = millionth(hop.m * moved);
                    hop.tau = millionth(hop.tau * moved);
                    source(hop, "reach.jump.m");
                }
            }
        }
    }

    fn learn(&mut self, skill: Skill, pupils: &[Pupil], model: &Model) {
        let evidence: Vec<(Evidence, Seen)> = pupils
            .par_iter()
            .zip(&self.before)
            .map(|(pupil, child)| evidence(pupil, child, skill, model))
            .collect();
        let shown = evidence.iter().any(|(evidence, _)| !evidence.is_empty());
        // A hop that only followed the jump is told too.
        let follows = skill == Skill::Hop && self.follows.contains(&true);
        if !(shown || follows) {
            return;
        }
        let cases: Vec<Case> = evidence
            .iter()
            .zip(self.before.iter().zip(&self.shares))
            .map(|((evidence, _), (child, shares))| {
                let known = child.skills.get(&skill);
                let of = |get: fn(&Ability) -> f64| known.map_or(0.0, get);
                Case {
                    age: shares.map(|(age, _)| age),
                    group: shares.map(|(_, group)| group),
                    m: of(|known| known.m),
                    tau: of(|known| known.tau),
                    can: of(|known| known.can),
                    steady: of(|known| known.steady),
                    evidence: evidence.clone(),
                }
            })
            .collect();
        let fitted = fit(&cases, (self.ages.len(), self.groups.len()), &self.fit);
        if shown {
            self.tell_effects(skill, &cases, &evidence, &fitted);
        }
        for (at, (case, pupil)) in cases.iter().zip(pupils).enumerate() {
            let prior = pupil.expected.child.skills.get(&skill);
            if let (Some(known), Some(prior)) = (fitted.cases.get(at), prior) {
                self.tell(at, skill, case, known, prior, &evidence);
            }
        }
    }

    /// Tells of one child.
    fn tell(
        &mut self,
        at: usize,
        skill: Skill,
        case: &Case,
        known: &Posterior,
        prior: &Ability,
        evidence: &[(Evidence, Seen)],
    ) {
        let follows = self.follows[at] && skill == Skill::Hop;
        let shares = self.shares[at];
        let near = |other: usize| match (shares, self.shares[other]) {
            (Some(one), Some(other)) => one.0 == other.0 || one.1 == other.1,
            _ => false,
        };
        let others = evidence
            .iter()
            .enumerate()
            .filter(|(other, (seen, _))| *other != at && near(*other) && !seen.is_empty())
            .fold((0, 0), |(children, tries), (_, (_, seen))| {
                (children + 1, tries + seen.tries)
            });
        if case.evidence.is_empty() && others.0 == 0 && !follows {
            return;
        }
        let Some(ability) = self.children[at].skills.get_mut(&skill) else {
            return;
        };
        let reach = known.z.moved(case.m, case.tau);
        let mut now = ability.clone();
        // No reach is known to be nothing.
        now.m = millionth(reach.mean.max(self.fit.floor * case.m));
        now.tau = millionth(reach.sd);
        if case.evidence.of_can() {
            now.can = millionth(known.can);
        }
        if case.evidence.of_steady() {
            now.steady = millionth(known.steady.mean);
        }
        let seen = &case.evidence;
        if !seen.readings.is_empty() || seen.can.is_some() {
            source(&mut now, MEASURED);
        }
        for (word, any) in [
            (TRIED, seen.tries.iter().any(|tried| tried.n > 0)),
            (CHECKED, seen.checks > 0),
            (COUNTED, !seen.runs.is_empty()),
            (SITE_SHRINK.0, others.0 > 0),
            (GROUP_SHARE.0, others.0 > 0),
        ] {
            if any {
                source(&mut now, word);
            }
        }
        *ability = now.clone();
        self.told.push(Told {
            child: self.children[at].name.clone(),
            years: self.years[at],
            group: shares.map_or(String::new(), |(_, group)| self.groups[group].clone()),
            skill,
            prior: prior.clone(),
            seen: evidence[at].1,
            others,
            follows_jump: follows,
            posterior: now,
            reach: rounded(reach),
            steady: rounded(known.steady),
            form: rounded(known.form),
        });
    }

    fn tell_effects(
        &mut self,
        skill: Skill,
        cases: &[Case],
        evidence: &[(Evidence, Seen)],
        fitted: &Fitted,
    ) {
        let mut tell = |of: Of, prior: f64, now: Band, shares: &dyn Fn(&Case) -> bool| {
            let who = || cases.iter().zip(evidence).filter(|(case, _)| shares(case));
            let children = who().count();
            if children == 0 {
                return;
            }
            let metres = who().map(|(case, _)| case.tau).sum::<f64>() / children as f64;
            let told = || who().filter(|(case, _)| !case.evidence.is_empty());
            self.effects.push(Effect {
                skill,
                of,
                children: children as u32,
                told_by: told().count() as u32,
                tries: told().map(|(_, (_, seen))| seen.tries).sum(),
                prior_sd: millionth(libm::sqrt(prior) * metres),
                now: rounded(now.moved(0.0, metres)),
            });
        };
        for (number, (years, band)) in self.ages.iter().zip(&fitted.ages).enumerate() {
            tell(Of::Age(*years), self.fit.shared.age, *band, &|case| {
                case.age == Some(number)
            });
        }
        for (number, (name, band)) in self.groups.iter().zip(&fitted.groups).enumerate() {
            let of = Of::Group(name.clone());
            tell(of, self.fit.shared.group, *band, &|case| {
                case.group == Some(number)
            });
        }
    }
}

/// What a child has shown of a skill.
fn evidence(pupil: &Pupil, child: &Child, skill: Skill, model: &Model) -> (Evidence, Seen) {
    let mut evidence = Evidence::default();
    let mut seen = Seen::default();
    if child.count != 1 || !child.skills.contains_key(&skill) {
        return (evidence, seen);
    }
    let expected = &pupil.expected;
    evidence.readings.extend(expected.readings.get(&skill));
    evidence.can = expected.cans.get(&skill).copied();
    seen.measured = u32::from(evidence.can.is_some() || !evidence.readings.is_empty());
    for tried in pupil
        .tries
        .iter()
        .filter(|tried| tried.n > 0 && tried.gait.can == skill)
    {
        let Some(Odds {
            contacts, clears, ..
        }) = odds(&tried.figure, child, &tried.gait, tried.foot, model)
        else {
            continue;
        };
        let good = tried.good.min(tried.n);
        seen.tries = seen.tries.saturating_add(tried.n);
        seen.good = seen.good.saturating_add(good);
        evidence.tries.push(Attempt {
            clears,
            contacts,
            n: tried.n,
            good,
        });
    }
    for check in pupil.checks.iter().filter(|check| check.skill == skill) {
        evidence.checks = evidence.checks.saturating_add(check.n);
        evidence.met = evidence.met.saturating_add(check.met.min(check.n));
    }
    (seen.checks, seen.met) = (evidence.checks, evidence.met);
    for run in pupil.runs.iter().filter(|run| run.skill == skill) {
        evidence.runs.push((run.contacts, run.broke));
        seen.runs += 1;
        seen.contacts = seen.contacts.saturating_add(run.contacts);
    }
    (evidence, seen)
}

fn source(ability: &mut Ability, word: &str) {
    if !ability.sources.iter().any(|known| known == word) {
        ability.sources.push(word.to_owned());
    }
}

/// Completed years; ages are from 2 to 7.
fn years(age: f64) -> u32 {
    age.clamp(0.0, 120.0) as u32
}

/// As values are handed on.
pub(crate) fn millionth(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}

fn rounded(band: Band) -> Band {
    Band {
        mean: millionth(band.mean),
        sd: millionth(band.sd),
        half: band.half.map(millionth),
        nine_tenths: band.nine_tenths.map(millionth),
    }
}
