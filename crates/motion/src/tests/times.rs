//! Rates, beats and flights.

use children::Skill;
use footfall::{Flight, Gait};

use super::*;
use crate::{Role, Track};

#[test]
fn feet_land_before_they_lift_and_never_fly_too_long() {
    every(sound);
}

/// Contacts a second are footfall's figures, by age.
#[test]
fn contacts_come_at_the_rate_of_the_ledger() {
    let ledger = ledger();
    every(|clip, model| {
        let rate = ledger::by_age(
            ledger.list(ledger::Key(match clip.skill {
                Skill::Jump => "footfall.rate.jump",
                Skill::Hop => "footfall.rate.hop",
                // what a free leap has more than one of is running steps
                Skill::Leap => "footfall.rate.run",
                Skill::Gallop => "footfall.rate.gallop",
                Skill::Slide => "footfall.rate.slide",
                Skill::Skip => "footfall.rate.skip",
                Skill::Run => "footfall.rate.run",
                Skill::Walk => "footfall.rate.walk",
            })),
            clip.body.age,
        );
        let mut lands: Vec<f64> = clip
            .prints
            .iter()
            .filter(|print| print.role == Role::Contact && print.by != Some(Flight::Leap))
            .map(|print| print.lands)
            .collect();
        lands.dedup_by(|a, b| (*a - *b).abs() < ROUNDED);
        for pair in lands.windows(2) {
            let ours = 1.0 / (pair[1] - pair[0]);
            assert!(
                (ours / rate - 1.0).abs() < 1e-4,
                "{}: {ours}, not {rate}",
                clip.gait
            );
        }
        assert!(
            lands.len() >= 2,
            "{} has too few contacts to count",
            clip.gait
        );
        let _ = model;
    });
}

/// A route of leaps one after the other lands at the leap's rate.
#[test]
fn leaps_after_one_another_come_at_their_own_rate() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let gait = Gait::named("leap").expect("the leap");
    let mut path = Path::free(&gait, Side::Right, &child(5.0), &model).expect("a path");
    let run_on = path.stops.pop().expect("the step out of it");
    for step in 1..=3 {
        let mut stop = run_on;
        stop.flight = Some(Flight::Leap);
        stop.counted = true;
        stop.at.x += f64::from(step);
        if step % 2 == 0 {
            stop.contact = path.stops[path.stops.len() - 2].contact;
        }
        path.stops.push(stop);
    }
    let clip = Clip::of(&path, &model).expect("a clip");
    let leaps: Vec<f64> = clip
        .prints
        .iter()
        .filter(|print| print.by == Some(Flight::Leap))
        .map(|print| print.lands)
        .collect();
    assert_eq!(leaps.len(), 4);
    let rate = ledger.at_age(ledger::Key("footfall.rate.leap"), 5.0);
    for pair in leaps.windows(2) {
        assert!((1.0 / (pair[1] - pair[0]) / rate - 1.0).abs() < 1e-4);
    }
}

/// Gallop, slide and skip: the long beat is to the short one as the ledger says.
#[test]
fn the_beat_is_long_and_short_as_in_the_ledger() {
    let ledger = ledger();
    let mut seen = 0;
    every(|clip, _| {
        let key = match clip.skill {
            Skill::Gallop => "motion.beat.gallop",
            Skill::Slide => "motion.beat.slide",
            Skill::Skip => "motion.beat.skip",
            _ => return,
        };
        let wanted = ledger.number(ledger::Key(key));
        let beats: Vec<(Role, f64)> = clip
            .prints
            .iter()
            .filter(|print| matches!(print.role, Role::Contact | Role::Closing | Role::Hop))
            .map(|print| (print.role, print.lands))
            .collect();
        for triple in beats.windows(3) {
            if triple[0].0 != Role::Contact {
                continue;
            }
            let (long, short) = (triple[1].1 - triple[0].1, triple[2].1 - triple[1].1);
            assert!(
                (long / short - wanted).abs() < 1e-4,
                "{}: {long} to {short}",
                clip.gait
            );
            seen += 1;
        }
    });
    assert!(seen > 50, "only {seen} cycles were looked at");
}

/// Which gaits fly, from the sequences of children.md 4 (memory): a walk never, all else
/// once a contact; in a gallop and slide after the closing foot, in a skip in the hop.
#[test]
fn each_gait_flies_where_its_sequence_says() {
    every(|clip, _| {
        let flights = clip.flights();
        let contacts = clip.contacts().len();
        match clip.skill {
            Skill::Walk => assert!(flights.is_empty(), "a walk flies: {flights:?}"),
            // the step out of the leap flies too
            Skill::Leap => assert_eq!(flights.len(), contacts + 1),
            _ => assert_eq!(flights.len(), contacts, "{}", clip.gait),
        }
        for (_, to) in flights {
            let landing = clip
                .prints
                .iter()
                .find(|print| (print.lands - to).abs() < ROUNDED);
            let role = landing.map(|print| print.role);
            match clip.skill {
                Skill::Skip => assert_eq!(role, Some(Role::Hop)),
                Skill::Leap => assert!(matches!(role, Some(Role::Contact | Role::Run))),
                _ => assert_eq!(role, Some(Role::Contact), "{}", clip.gait),
            }
        }
    });
}

/// Bach, Daffertshofer and Dominici 2021 (BACH21, abstract): in children of 2-9 years the
/// flight grew with age and did not reach 20 % of the running cycle.
#[test]
fn running_flight_grows_with_age_and_stays_under_what_was_seen() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let mut before = 0.0;
    for years in AGES {
        let clip = free(Skill::Run, Side::Right, years, &model);
        let lands: Vec<f64> = clip
            .prints
            .iter()
            .filter(|print| print.role == Role::Contact)
            .map(|print| print.lands)
            .collect();
        let (from, to) = (lands[0], lands[2]);
        let flown: f64 = clip
            .flights()
            .iter()
            .filter(|(a, b)| *a >= from && *b <= to + ROUNDED)
            .map(|(a, b)| b - a)
            .sum();
        let share = flown / (to - from);
        assert!(
            share > before && share < model.flight_most_run,
            "{share} at {years}"
        );
        before = share;
    }
}

/// A left-led clip is a right-led one in the mirror.
#[test]
fn left_is_right_in_the_mirror() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    for skill in Skill::ALL {
        let [right, left] = SIDES.map(|lead| free(skill, lead, 5.0, &model));
        if skill == Skill::Jump {
            continue;
        }
        let key = |clip: &Clip, flip: bool| {
            let mut list: Vec<String> = clip
                .prints
                .iter()
                .map(|p| {
                    let side = if flip {
                        crate::clip::opposite(p.side)
                    } else {
                        p.side
                    };
                    let sign = if flip { -1.0 } else { 1.0 };
                    // adding nought makes -0 nought
                    let (y, toes) = (sign * p.at.y + 0.0, sign * p.toes + 0.0);
                    format!("{:?} {side:?} {} {y} {toes} {:?}", p.lands, p.at.x, p.lifts)
                })
                .collect();
            list.sort();
            list
        };
        assert_eq!(key(&right, false), key(&left, true), "{}", skill.word());
    }
}

/// Tracks rest on the prints, and in a flight of time T rise by g T²/8 (thrown bodies).
#[test]
fn a_foot_rests_on_its_prints_and_flies_as_thrown() {
    every(|clip, model| {
        let clip_flights = clip.flights();
        for side in SIDES {
            let track = Track::of(clip, side, model);
            for pair in track.keys.windows(2) {
                assert!(pair[0].time < pair[1].time);
            }
            for key in &track.keys {
                assert!(key.height >= 0.0 && key.height < 0.5, "{key:?}");
                let inside = clip.down(side, key.time) && key.time < clip.end;
                if inside {
                    assert!(key.height == 0.0, "{} {side:?} floats: {key:?}", clip.gait);
                }
            }
            assert_eq!(track.keys.first().map(|key| key.time), Some(0.0));
            assert_eq!(track.keys.last().map(|key| key.time), Some(clip.end));
            if clip.skill == Skill::Jump {
                let (from, to) = clip_flights[0];
                let most = model.gravity * (to - from) * (to - from) / 8.0;
                let high = track.keys.iter().map(|key| key.height).fold(0.0, f64::max);
                assert!(
                    high <= most + 1e-6 && high > 0.9 * most,
                    "{high}, not {most}"
                );
            }
        }
    });
}

/// Any age, also one that no table has.
#[test]
fn any_age_makes_sound_clips() {
    use proptest::prelude::*;
    let ledger = ledger();
    proptest!(ProptestConfig::with_cases(64), |(years in 2.0_f64..8.0, skill in 0_usize..8)| {
        let model = Model::of(&ledger);
        let mut child = child(4.0);
        child.age = years;
        let gait = Gait::named(Skill::ALL[skill].word()).expect("a gait");
        let path = Path::free(&gait, Side::Left, &child, &model).expect("a path");
        let clip = Clip::of(&path, &model).expect("a clip");
        sound(&clip, &model);
        for row in crate::early(Skill::ALL[skill]) {
            sound(&row.of(&clip, &model), &model);
        }
    });
}
