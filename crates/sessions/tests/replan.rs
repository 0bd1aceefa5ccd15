//! After a rained-out day and a broken marking.

mod common;

use ledger::Ledger;
use sessions::*;

fn at(week: u32, session: u32) -> When {
    When { week, session }
}

#[test]
fn what_was_held_stays_and_the_rest_is_mended() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    for n in [4, 19] {
        let mut programme = common::programme(n, &common::case(n));
        programme.work.exchanges = 100;
        let before = plan(&programme, &ledger).expect("solves").value;
        let mishaps = [
            Mishap::Lost(at(2, 3)),
            Mishap::Broken {
                station: 1,
                from: at(3, 1),
                through: Some(at(4, 3)),
            },
        ];
        let again = replan(&programme, &before, at(3, 1), &mishaps, &ledger).expect("solves");
        let Replan { plan, changes } = again.value;
        assert!(plan.value <= plan.bound);
        let mut held = 0;
        for (old, new) in std::iter::zip(&before.sessions, &plan.sessions) {
            assert_eq!((old.when, old.outing), (new.when, new.outing));
            let change = changes
                .iter()
                .find(|it| (it.when, it.outing) == (new.when, new.outing));
            if new.when == at(2, 3) {
                assert_eq!(new.state, State::Lost);
                assert!(new.slots.is_empty() && change.is_some_and(|it| it.lost));
            } else if new.when < at(3, 1) {
                assert_eq!((new.state, &new.slots), (State::Held, &old.slots));
                assert!(change.is_none());
                held += 1;
            } else {
                assert_eq!(new.state, State::Planned);
                let broken = new.when <= at(4, 3);
                let used = new.slots.iter().flatten().any(|group| group.station == 1);
                assert!(!(broken && used), "a broken marking is used");
            }
        }
        assert!(held > 0);
        // As good as planned anew with the same losses, to what changing must be worth.
        let fell = before.value - plan.value;
        assert!(
            (-0.005..0.12).contains(&fell),
            "{n}: from {} to {}",
            before.value,
            plan.value
        );
        assert!(plan.gap < 0.05, "{n}: {}", plan.gap);
        // Most of what lies ahead is as people know it.
        let moved: usize = changes
            .iter()
            .filter(|it| !it.lost)
            .map(|it| it.moved.len())
            .sum();
        let ahead: usize = plan
            .sessions
            .iter()
            .filter(|it| it.state == State::Planned)
            .map(|it| plan.outings[it.outing].len() * plan.slots as usize)
            .sum();
        assert!(moved * 2 < ahead, "{n}: {moved} of {ahead} seats");
        assert!(
            again
                .notes
                .iter()
                .any(|note| note.what.key == "sessions-changed")
        );
    }
}

#[test]
fn nothing_happened_nothing_changes() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let programme = common::programme(21, &common::case(21));
    let before = plan(&programme, &ledger).expect("solves").value;
    let again = replan(&programme, &before, at(1, 1), &[], &ledger)
        .expect("solves")
        .value;
    let moved: usize = again.changes.iter().map(|it| it.moved.len()).sum();
    assert!(again.plan.value >= before.value - 0.002);
    assert!(moved < 40, "{moved} seats");
}

#[test]
fn all_is_lost() {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let mut programme = common::programme(1, &common::case(1));
    programme.work.exchanges = 1;
    let before = plan(&programme, &ledger).expect("solves").value;
    let mut mishaps = Vec::new();
    for week in 1..=programme.weeks {
        for session in 1..=3 {
            mishaps.push(Mishap::Lost(at(week, session)));
        }
    }
    let again = replan(&programme, &before, at(1, 1), &mishaps, &ledger)
        .expect("solves")
        .value;
    assert_eq!((again.plan.value, again.plan.bound), (0.0, 0.0));
    let lost = again
        .plan
        .misses
        .iter()
        .filter(|it| it.why == Why::Lost)
        .count();
    assert!(lost > 10, "{lost}");
}
