//! The programme with its figures read: slots, outings, openings, forms; all by number.

use children::{Side, Skill};
use ledger::Ledger;

use crate::figures as fig;
use crate::programme::{Mishap, Play, Programme, When};
use crate::schedule::State;

/// Targets of one child at most: eight skills, two sides.
pub(crate) const MOST_TARGETS: usize = 16;

/// Practice by target of one child, minutes.
pub(crate) type Got = [f64; MOST_TARGETS];

/// A week that never comes.
pub(crate) const NEVER: u32 = u32::MAX;

/// No session is longer, minutes: a longer one is a slip.
const DAY: f64 = 1440.0;

/// Rounding of a quotient that should be whole.
const WHOLE: f64 = 1e-9;

pub(crate) struct Frame {
    /// Minutes of a slot.
    pub(crate) slot: f64,
    /// Slots of a session.
    pub(crate) slots: usize,
    pub(crate) weeks: usize,
    /// Sessions by time.
    pub(crate) sittings: Vec<Sitting>,
    pub(crate) kids: Vec<Kid>,
    /// Activities of all stations.
    pub(crate) acts: Vec<Act>,
    pub(crate) forms: Vec<Form>,
    pub(crate) gaits: Vec<Gait>,
    /// Numbers of each station's forms.
    pub(crate) forms_of: Vec<Vec<usize>>,
    pub(crate) outings: Vec<Vec<usize>>,
    /// Stations in use at a time.
    pub(crate) at_once: usize,
    /// Slots that a child may stay at one station.
    pub(crate) run: usize,
    pub(crate) stale: f64,
    pub(crate) stale_worth: f64,
    pub(crate) worth: [f64; 2],
    /// Sum of all targets over the programme, minutes.
    pub(crate) asked: f64,
}

pub(crate) struct Sitting {
    pub(crate) when: When,
    /// From 0.
    pub(crate) week: usize,
    pub(crate) state: State,
    /// By station.
    pub(crate) usable: Vec<bool>,
}

pub(crate) struct Kid {
    pub(crate) targets: Vec<Want>,
    /// By activity: (target, e); empty where it gives the child nothing.
    pub(crate) gifts: Vec<Vec<(usize, f64)>>,
    /// By activity, the first week in which the child may do it, from 1.
    pub(crate) opens: Vec<u32>,
    /// By form.
    pub(crate) form_opens: Vec<u32>,
}

pub(crate) struct Want {
    pub(crate) skill: Skill,
    pub(crate) side: Option<Side>,
    /// Over the programme.
    pub(crate) minutes: f64,
    pub(crate) opens: u32,
}

pub(crate) struct Act {
    pub(crate) station: usize,
    /// Number at its station.
    pub(crate) number: usize,
    /// Children at the station at a time while this is done.
    pub(crate) places: usize,
}

/// What a child can do in a slot.
pub(crate) struct Form {
    pub(crate) station: usize,
    /// Number in [`Frame::gaits`].
    pub(crate) gait: usize,
    /// Activities (numbers in [`Frame::acts`]) with their shares of the slot.
    pub(crate) parts: Vec<(usize, f64)>,
}

/// What a group can do in a slot: one gait at one station, each child with its own foot.
pub(crate) struct Gait {
    pub(crate) station: usize,
    /// Children at a time.
    pub(crate) places: usize,
    /// Numbers of its forms.
    pub(crate) forms: Vec<usize>,
}

impl Frame {
    pub(crate) fn new(programme: &Programme, mishaps: &[Mishap], ledger: &Ledger) -> Frame {
        let minutes = programme.week.minutes.min(DAY) - ledger.number(fig::WARM_UP);
        let minutes = minutes.max(0.0);
        let slots = (minutes / ledger.number(fig::SLOT_MOST) - WHOLE)
            .ceil()
            .max(0.0) as usize;
        let slot = if slots > 0 {
            minutes / slots as f64
        } else {
            0.0
        };
        let run = (ledger.number(fig::TASK_CHANGE) / slot.max(WHOLE) + WHOLE) as usize;
        let acts = acts(programme, ledger);
        let (forms, gaits) = forms(programme, &acts);
        let kids = kids(programme, &acts, &forms, ledger);
        Frame {
            slot,
            slots,
            weeks: programme.weeks as usize,
            sittings: sittings(programme, mishaps),
            outings: outings(programme, ledger),
            forms_of: (0..programme.stations.len())
                .map(|station| {
                    (0..forms.len())
                        .filter(|form| forms[*form].station == station)
                        .collect()
                })
                .collect(),
            at_once: (ledger.number(fig::STATIONS_PER_ADULT) * f64::from(programme.week.staff))
                .max(0.0) as usize,
            run: run.max(1),
            stale: ledger.number(fig::STALE),
            stale_worth: ledger.number(fig::STALE_WORTH),
            worth: [
                ledger.number(fig::FIRST_HALF),
                ledger.number(fig::SECOND_HALF),
            ],
            asked: kids
                .iter()
                .flat_map(|kid| &kid.targets)
                .map(|want| want.minutes)
                .sum(),
            kids,
            acts,
            forms,
            gaits,
        }
    }

    /// Slots of the whole programme.
    pub(crate) fn all_slots(&self) -> usize {
        self.sittings.len() * self.slots
    }

    /// Whether a child may do a form in a sitting.
    pub(crate) fn open(&self, kid: usize, form: usize, sitting: usize) -> bool {
        let at = &self.sittings[sitting];
        at.usable[self.forms[form].station]
            && self.kids[kid].form_opens[form] as usize <= at.week + 1
    }

    /// Worth of a child's practice, minutes.
    pub(crate) fn value(&self, kid: usize, got: &Got) -> f64 {
        let wants = &self.kids[kid].targets;
        std::iter::zip(wants, got)
            .map(|(want, got)| {
                let half = want.minutes / 2.0;
                self.worth[0] * got.min(half) + self.worth[1] * (got - half).clamp(0.0, half)
            })
            .sum()
    }

    /// Adds to `got` what `minutes` of an activity give, of which `used` were spent at the
    /// station this week before. The minutes spent are counted on.
    pub(crate) fn play(&self, kid: usize, act: usize, minutes: f64, used: &mut f64, got: &mut Got) {
        let fresh = (self.stale - *used).clamp(0.0, minutes);
        let second = (2.0 * self.stale - *used - fresh).clamp(0.0, minutes - fresh);
        *used += minutes;
        let counted = fresh + self.stale_worth * second;
        for (target, e) in &self.kids[kid].gifts[act] {
            got[*target] += e * counted;
        }
    }
}

fn sittings(programme: &Programme, mishaps: &[Mishap]) -> Vec<Sitting> {
    let mut all = Vec::new();
    for week in 0..programme.weeks {
        for session in 0..programme.week.sessions {
            let when = When {
                week: week + 1,
                session: session + 1,
            };
            let lost = mishaps
                .iter()
                .any(|mishap| matches!(mishap, Mishap::Lost(at) if *at == when));
            let usable = (0..programme.stations.len())
                .map(|number| {
                    !mishaps.iter().any(|mishap| {
                        matches!(mishap, Mishap::Broken { station, from, through }
                            if *station == number && *from <= when
                                && through.is_none_or(|last| when <= last))
                    })
                })
                .collect();
            all.push(Sitting {
                when,
                week: week as usize,
                state: if lost { State::Lost } else { State::Planned },
                usable,
            });
        }
    }
    all
}

/// Places: as many children to a track as start within the wait that is allowed, with either
/// foot of the gait. Where all stand in line the last waits (n - 1) gaps; in the round, who is
/// away for the shortest time and finds all others in line waits n gaps less that time.
fn acts(programme: &Programme, ledger: &Ledger) -> Vec<Act> {
    let release = ledger.number(fig::RELEASE);
    let wait = ledger.number(fig::WAIT_MOST);
    let dawdle = ledger.number(fig::DAWDLE);
    let youngest = programme
        .children
        .iter()
        .map(|child| child.age)
        .fold(f64::INFINITY, f64::min);
    let most = ledger
        .at_age(fig::GROUP_MOST, youngest)
        .clamp(1.0, f64::from(u8::MAX)) as usize;
    let mut acts = Vec::new();
    for (station, it) in programme.stations.iter().enumerate() {
        for (number, activity) in it.activities.iter().enumerate() {
            let word = gait(&activity.word);
            let same = it
                .activities
                .iter()
                .filter(|other| gait(&other.word) == word);
            let plays: Vec<&Play> = same.flat_map(|it| &it.plays).collect();
            let gap = if activity.alone {
                plays.iter().map(|play| play.pass_s).fold(release, f64::max)
            } else {
                release
            };
            let away = plays
                .iter()
                .map(|play| play.pass_s + (play.walk_back_s - dawdle).max(0.0))
                .fold(f64::INFINITY, f64::min);
            let gap = gap.max(WHOLE);
            let line = (wait / gap + WHOLE) as usize + 1;
            let round = ((wait + away) / gap + WHOLE) as usize;
            acts.push(Act {
                station,
                number,
                places: (line.min(round).max(1) * it.tracks.max(1) as usize).min(most),
            });
        }
    }
    acts
}

/// Every activity for a whole slot, and both feet of a gait for half a slot each.
fn forms(programme: &Programme, acts: &[Act]) -> (Vec<Form>, Vec<Gait>) {
    let activity = |act: usize| {
        let act = &acts[act];
        &programme.stations[act.station].activities[act.number]
    };
    let (mut forms, mut gaits): (Vec<Form>, Vec<Gait>) = (Vec::new(), Vec::new());
    let mut seen = vec![false; acts.len()];
    for first in 0..acts.len() {
        if seen[first] {
            continue;
        }
        let station = acts[first].station;
        let same: Vec<usize> = (first..acts.len())
            .filter(|act| acts[*act].station == station)
            .filter(|act| gait(&activity(*act).word) == gait(&activity(first).word))
            .collect();
        same.iter().for_each(|act| seen[*act] = true);
        let with = |side: Side| same.iter().find(|act| activity(**act).side == Some(side));
        let both = with(Side::Right).zip(with(Side::Left));
        let from = forms.len();
        let ways = same
            .iter()
            .map(|act| vec![(*act, 1.0)])
            .chain(both.map(|(right, left)| vec![(*right, 0.5), (*left, 0.5)]));
        forms.extend(ways.map(|parts| Form {
            station,
            gait: gaits.len(),
            parts,
        }));
        gaits.push(Gait {
            station,
            places: acts[first].places,
            forms: (from..forms.len()).collect(),
        });
    }
    (forms, gaits)
}

/// The gait of an activity's word.
pub(crate) fn gait(word: &str) -> &str {
    word.split(':').next().unwrap_or(word)
}

fn kids(programme: &Programme, acts: &[Act], forms: &[Form], ledger: &Ledger) -> Vec<Kid> {
    let lead = ledger.number(fig::LEAD).max(0.0) as u32;
    (0..programme.children.len())
        .map(|number| {
            let open = openings(programme, number, lead);
            let opens = |skill: Skill| open.iter().find(|it| it.0 == skill).map_or(1, |it| it.1);
            let targets: Vec<Want> = programme
                .targets
                .iter()
                .filter(|target| target.child == number)
                .filter(|target| target.minutes > 0.0 && target.minutes.is_finite())
                .take(MOST_TARGETS)
                .map(|target| Want {
                    skill: target.skill,
                    side: target.side,
                    minutes: target.minutes * f64::from(programme.weeks),
                    opens: opens(target.skill),
                })
                .collect();
            let mut gifts = Vec::new();
            let mut act_opens = Vec::new();
            for act in acts {
                let activity = &programme.stations[act.station].activities[act.number];
                let play = activity.plays.iter().find(|play| play.child == number);
                let gift: Vec<(usize, f64)> = play
                    .into_iter()
                    .flat_map(|play| &play.yields)
                    .filter(|(.., e)| *e > 0.0)
                    .filter_map(|(skill, side, e)| {
                        let at = targets
                            .iter()
                            .position(|want| (want.skill, want.side) == (*skill, *side))?;
                        Some((at, e.min(1.0)))
                    })
                    .collect();
                act_opens.push(if gift.is_empty() {
                    NEVER
                } else {
                    opens(activity.skill)
                });
                gifts.push(gift);
            }
            Kid {
                form_opens: forms
                    .iter()
                    .map(|form| {
                        let parts = form.parts.iter().map(|part| act_opens[part.0]);
                        parts.max().unwrap_or(NEVER)
                    })
                    .collect(),
                targets,
                gifts,
                opens: act_opens,
            }
        })
        .collect()
}

/// The week in which each skill opens to a child. What a skill needs and the child has no
/// target of is not taught, and nothing waits for it.
fn openings(programme: &Programme, child: usize, lead: u32) -> Vec<(Skill, u32)> {
    let known = |skill: Skill| programme.children[child].known.contains(&skill);
    let taught = |skill: Skill| {
        programme
            .targets
            .iter()
            .any(|it| it.child == child && it.skill == skill && it.minutes > 0.0)
    };
    let rules = |skill: Skill| programme.order.iter().filter(move |it| it.skill == skill);
    let mut settled: Vec<(Skill, u32)> = Vec::new();
    // Each round settles at least one skill, or the rest wait for one another in a ring.
    for _ in Skill::ALL {
        for skill in Skill::ALL {
            if settled.iter().any(|it| it.0 == skill) {
                continue;
            }
            let week = if known(skill) {
                Some(1)
            } else {
                rules(skill).try_fold(1_u32, |week, rule| {
                    let needs = rule.needs.filter(|it| taught(*it) && !known(*it));
                    let after = match needs {
                        None => 1,
                        Some(needs) => {
                            let opens = settled.iter().find(|it| it.0 == needs)?.1;
                            opens.saturating_add(lead)
                        }
                    };
                    Some(week.max(rule.first_week).max(after))
                })
            };
            if let Some(week) = week {
                let within = week <= programme.weeks;
                settled.push((skill, if within { week } else { NEVER }));
            }
        }
    }
    for skill in Skill::ALL {
        if !settled.iter().any(|it| it.0 == skill) {
            settled.push((skill, NEVER));
        }
    }
    settled
}

/// The class dealt out by age into as few parts as ratio and yard allow, so that each has all
/// ages and no figure that suits one age has all who want it in one outing; none where nobody
/// may be out.
fn outings(programme: &Programme, ledger: &Ledger) -> Vec<Vec<usize>> {
    let children = &programme.children;
    let adults = f64::from(programme.week.staff);
    let by_area =
        (programme.week.yard_area / ledger.number(fig::AREA_PER_CHILD) + WHOLE).max(0.0) as usize;
    let share = |child: usize| 1.0 / ledger.at_age(fig::RATIO, children[child].age);
    let mut order: Vec<usize> = (0..children.len()).collect();
    order.sort_by(|a, b| children[*a].age.total_cmp(&children[*b].age).then(a.cmp(b)));
    for parts in 1..=children.len() {
        let mut outings: Vec<Vec<usize>> = (0..parts)
            .map(|part| order.iter().copied().skip(part).step_by(parts).collect())
            .collect();
        let fits = outings.iter().all(|outing| {
            let need: f64 = outing.iter().map(|child| share(*child)).sum();
            need <= adults + WHOLE && outing.len() <= by_area
        });
        if fits {
            outings.iter_mut().for_each(|outing| outing.sort_unstable());
            return outings;
        }
    }
    Vec::new()
}
