//! Wheels and walkers on free ground: times add up, hands and feet do what they can.

use geo::Coord;

use super::*;
use crate::{ADAPTED, Aid, Key, MOMENTS, Role, Track, adapted, line};

pub(super) const MEANS: [Means; 2] = [Means::Wheels, Means::Walker];
const YEARS: [i32; 4] = [3, 4, 5, 6];

fn ride(means: Means, skill: Skill, lead: Side, years: i32, model: &Model) -> (Clip, Aid) {
    let gait = Gait::named(skill.word()).expect("every skill is a gait");
    let path = Path::free(&gait, lead, &by(means, years), model).expect("a free path");
    let clip = Clip::of(&path, model).expect("a clip");
    let aid = clip.aid.clone().expect("what carries");
    (clip, aid)
}

fn each(means: Means, mut check: impl FnMut(&Clip, &Aid, &Child, &Model)) {
    let ledger = ledger();
    let model = Model::of(&ledger);
    for skill in Skill::ALL {
        for years in YEARS {
            for lead in SIDES {
                let (clip, aid) = ride(means, skill, lead, years, &model);
                check(&clip, &aid, &by(means, years), &model);
            }
        }
    }
}

pub(super) fn far(from: Coord<f64>, to: Coord<f64>) -> f64 {
    libm::hypot(to.x - from.x, to.y - from.y)
}

pub(super) fn at(keys: &[Key], time: f64) -> Key {
    let after = keys.partition_point(|key| key.time <= time);
    let (Some(a), Some(b)) = (keys.get(after - 1), keys.get(after)) else {
        return *keys.last().expect("a key");
    };
    let share = (time - a.time) / (b.time - a.time);
    Key {
        at: a.at + (b.at - a.at) * share,
        toes: a.toes + (b.toes - a.toes) * share,
        ..*a
    }
}

/// What holds for any clip by other means, on free ground or on a figure.
pub(super) fn carried(clip: &Clip, model: &Model) {
    let aid = clip.aid.as_ref().expect("what carries");
    let told = format!("{:?} {} at {}", aid.means, clip.gait, clip.body.age);
    for side in SIDES {
        let own: Vec<_> = clip.prints.iter().filter(|p| p.side == side).collect();
        for pair in own.windows(2) {
            let lifts = pair[0].lifts.expect("only the last stays");
            assert!(
                pair[0].lands < lifts && lifts < pair[1].lands,
                "{told}: {pair:?}"
            );
        }
        assert!(own.last().expect("a print").lifts.is_none(), "{told}");
    }
    for pair in aid.events.windows(2) {
        assert!(pair[0].lands < pair[1].lands, "{told}: {pair:?}");
    }
    assert!(aid.events.last().expect("an event").lands < clip.end);
    assert_eq!(aid.keys.first().map(|key| key.time), Some(0.0));
    assert_eq!(aid.keys.last().map(|key| key.time), Some(clip.end));
    for pair in aid.keys.windows(2) {
        assert!(pair[0].time < pair[1].time);
    }
    for stand in &aid.stands {
        let to = stand.lifts.unwrap_or(clip.end);
        assert!(stand.lands < to, "{told}: {stand:?}");
        for time in [stand.lands, (stand.lands + to) / 2.0, to] {
            assert!(
                far(at(&aid.keys, time).at, stand.at) < 1e-4,
                "{told}: {stand:?} drifts"
            );
        }
    }
    for (_, word) in aid.moments(clip) {
        let known = MOMENTS.contains(&word) || crate::Down::ALL.iter().any(|d| d.word() == word);
        assert!(known, "{word}");
    }
    for (from, to) in clip.flights() {
        assert!(from < to, "{told}");
    }
    assert_eq!(clip.contacts().len(), aid.marks.len());
    let _ = model;
}

#[test]
fn every_skill_goes_by_every_means() {
    for means in MEANS {
        each(means, |clip, _, _, model| carried(clip, model));
    }
    let words: Vec<Skill> = ADAPTED.iter().map(|row| row.skill).collect();
    assert_eq!(words, Skill::ALL, "one row a skill");
}

/// Push, glide and stand fill the clip without a gap: their times add up to it.
#[test]
fn times_add_up_on_wheels() {
    each(Means::Wheels, |clip, aid, _, _| {
        let glides: f64 = aid.glides().iter().map(|(from, to)| to - from).sum();
        let stands: f64 = aid
            .stands
            .iter()
            .map(|stand| stand.lifts.unwrap_or(clip.end) - stand.lands)
            .sum();
        let lead = clip.lead;
        let pushes: f64 = clip
            .prints
            .iter()
            .filter(|p| p.side == lead && matches!(p.role, Role::Push | Role::Short))
            .filter_map(|p| Some(p.lifts? - p.lands))
            .sum();
        let all = glides + stands + pushes;
        assert!(
            (all - clip.end).abs() < 1e-4,
            "{}: {all}, not {}",
            clip.gait,
            clip.end
        );
    });
}

/// Once it rolls, the wheels go at the speed that the children's figures give such a child
/// (push.walk-speed, push.run-speed), unless its pushes would follow too fast.
#[test]
fn wheels_go_at_the_childs_own_speed() {
    let mut own = 0;
    each(Means::Wheels, |clip, aid, child, model| {
        let row = adapted(clip.skill);
        let most = if row.quick {
            child.speeds.run
        } else {
            child.speeds.walk
        };
        // no speed above its mean and what a push adds
        for pair in aid.keys.windows(2) {
            let speed = far(pair[0].at, pair[1].at) / (pair[1].time - pair[0].time);
            assert!(
                speed <= most * (1.0 + model.push_fade) + 1e-3,
                "{}: {speed}",
                clip.gait
            );
        }
        if row.stretches.len() > 1 {
            return;
        }
        // the second contact neither starts nor stops
        let (from, to) = (aid.marks[0].lands, aid.marks[1].lands);
        let way = far(aid.marks[0].at, aid.marks[1].at);
        let wait = if clip.skill == Skill::Skip {
            model.push_wait
        } else {
            0.0
        };
        let wanted = (way / most).max(model.push_least) + wait;
        assert!(
            ((to - from) / wanted - 1.0).abs() < 1e-3,
            "{}: {} s, not {wanted}",
            clip.gait,
            to - from
        );
        own += usize::from(way / most > model.push_least);
    });
    assert!(own > 10, "only {own} at their own speed");
}

/// A hand that holds the rim goes round with it: over the wheel's middle by r sin(angle), the
/// angle grown by way over radius, and never past its reach (a rolling wheel).
#[test]
fn a_hand_goes_round_with_the_rim_it_holds() {
    let mut seen = 0;
    each(Means::Wheels, |clip, aid, _, model| {
        let radius = model.wheel / 2.0;
        let [grip, release] = model.push_grip;
        for print in &clip.prints {
            if !matches!(print.role, Role::Push | Role::Short) {
                continue;
            }
            let hand = Track::of(clip, print.side, model);
            let lifts = print.lifts.expect("a push ends");
            let start = at(&aid.keys, print.lands);
            for key in hand
                .keys
                .iter()
                .filter(|k| k.time >= print.lands && k.time <= lifts)
            {
                let axle = at(&aid.keys, key.time);
                let angle = grip + far(start.at, axle.at) / radius;
                assert!(
                    angle <= release + 1e-3,
                    "{}: {angle} is out of reach",
                    clip.gait
                );
                let ahead = key.at.x - axle.at.x;
                assert!(
                    (ahead - radius * libm::sin(angle)).abs() < 1e-4,
                    "{}: {ahead} at {angle}",
                    clip.gait
                );
                seen += 1;
            }
        }
    });
    assert!(seen > 1000);
}

/// A jump is two pushes, a coast and a stop; a hop is pushed by one hand; a gallop's long push
/// carries as much further as the beat of the gallop says.
#[test]
fn adapted_forms_are_what_they_say() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let words = |clip: &Clip| -> Vec<String> {
        line(clip)
            .iter()
            .map(|message| {
                let facts = message.facts.iter().map(|(_, fact)| match fact {
                    note::Fact::Text(text) => text.clone(),
                    _ => String::new(),
                });
                facts.collect::<Vec<_>>().join(" ")
            })
            .collect()
    };
    let begins = |means, skill, lead| {
        let (clip, _) = ride(means, skill, lead, 5, &model);
        words(&clip).into_iter().take(6).collect::<Vec<_>>()
    };
    let [right, left] = SIDES;
    assert_eq!(
        begins(Means::Wheels, Skill::Walk, right),
        [
            "push B",
            "glide air",
            "push B",
            "glide air",
            "push B",
            "glide air"
        ]
    );
    assert_eq!(
        begins(Means::Wheels, Skill::Jump, right)[..5],
        ["push B", "glide air", "push B", "glide air", "still B"]
    );
    assert_eq!(
        begins(Means::Wheels, Skill::Hop, left)[..2],
        ["push L", "glide air"]
    );
    assert_eq!(
        begins(Means::Wheels, Skill::Gallop, right)[..4],
        ["push B", "glide air", "short B", "glide air"]
    );
    assert_eq!(
        begins(Means::Wheels, Skill::Skip, right)[..4],
        ["push B", "glide air", "wait air", "push B"]
    );
    assert_eq!(
        begins(Means::Walker, Skill::Walk, left)[..4],
        ["frame air", "L", "R", "frame air"]
    );
    let (clip, aid) = ride(Means::Wheels, Skill::Gallop, right, 5, &model);
    let pushes: Vec<f64> = clip
        .prints
        .iter()
        .filter(|p| p.side == right && matches!(p.role, Role::Push | Role::Short))
        .map(|p| at(&aid.keys, p.lands).at.x)
        .collect();
    let beat = ledger.number(ledger::Key("motion.beat.gallop"));
    for three in pushes.windows(3).step_by(2) {
        let ratio = (three[1] - three[0]) / (three[2] - three[1]);
        assert!((ratio - beat).abs() < 1e-4, "{ratio}");
    }
}

/// Frame, foot, foot: one alone moves at a time, each in its own beat of the ledger or slower.
#[test]
fn with_a_walker_one_moves_at_a_time() {
    each(Means::Walker, |clip, aid, child, model| {
        assert!(clip.flights().is_empty());
        let moves: Vec<(f64, f64)> = {
            let frame = aid.stands.windows(2);
            let mut all: Vec<(f64, f64)> = frame
                .map(|pair| (pair[0].lifts.expect("it moves on"), pair[1].lands))
                .collect();
            for side in SIDES {
                let own: Vec<_> = clip.prints.iter().filter(|p| p.side == side).collect();
                let swings = own.windows(2);
                all.extend(swings.map(|pair| (pair[0].lifts.expect("a step"), pair[1].lands)));
            }
            all.sort_by(|a, b| a.0.total_cmp(&b.0));
            all
        };
        for pair in moves.windows(2) {
            assert!(
                pair[0].1 < pair[1].0,
                "{}: {pair:?} move together",
                clip.gait
            );
        }
        let row = adapted(clip.skill);
        let speed = if row.quick {
            child.speeds.run
        } else {
            child.speeds.walk
        };
        for three in aid.events.chunks(3) {
            let roles: Vec<Role> = three.iter().map(|event| event.role).collect();
            assert_eq!(roles[0], Role::Frame);
            let beat = three[1].lands - three[0].lands;
            assert!(beat >= model.walker_beat - ROUNDED);
            assert!((three[2].lands - three[1].lands - beat).abs() < 2.0 * ROUNDED);
            let way = aid.stands[1].at.x - aid.stands[0].at.x;
            let wanted = (way / speed / 3.0).max(model.walker_beat);
            if row.stretches.len() == 1 {
                assert!(
                    (beat - wanted).abs() < 1e-3,
                    "{}: {beat}, not {wanted}",
                    clip.gait
                );
            }
        }
    });
}

/// The hand, or the foot, of the other side: the same in the mirror.
#[test]
fn left_is_right_in_the_mirror() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    for means in MEANS {
        let list = |lead: Side, flip: f64| {
            let (clip, _) = ride(means, Skill::Hop, lead, 5, &model);
            let mut all: Vec<String> = clip
                .prints
                .iter()
                .map(|p| {
                    format!(
                        "{:?} {} {:?} {}",
                        p.lands,
                        p.at.x,
                        p.lifts,
                        flip * p.at.y + 0.0
                    )
                })
                .collect();
            all.sort();
            all
        };
        assert_eq!(list(Side::Right, 1.0), list(Side::Left, -1.0));
    }
}

/// A project may replace any figure, also by nonsense: a clip stays sound.
#[test]
fn any_figures_make_sound_rides() {
    use proptest::prelude::*;
    let shipped = ledger();
    let base = Model::of(&shipped);
    proptest!(ProptestConfig::with_cases(64), |(
        years in 3_i32..7, skill in 0_usize..8, hold in 0.1_f64..0.9, fade in 0.0_f64..0.5,
        least in 0.1_f64..3.0, wheel in 0.1_f64..2.0, wait in 0.0_f64..3.0, moves in 0.1_f64..0.95,
    )| {
        let _ = &base;
        let mut model = Model::of(&shipped);
        (model.push_hold, model.push_fade, model.push_least) = (hold, fade, least);
        (model.wheel, model.push_wait, model.walker_move) = (wheel, wait, moves);
        for means in MEANS {
            let (clip, _) = ride(means, Skill::ALL[skill], Side::Left, years, &model);
            carried(&clip, &model);
        }
    });
}
