//! Laws that hold for any programme, the odd ones too; and that everything told has words.

mod common;

use ledger::Ledger;
use proptest::prelude::*;
use sessions::*;

/// Small programmes, with what people get wrong: no staff, no time, no stations, no yard, a
/// week without sessions, targets that are not numbers.
fn any_programme() -> impl Strategy<Value = Programme> {
    let shape = (0_u64..40, 1_usize..9, 0_usize..5, 0_u32..4, 0_u32..5);
    let odd = (
        0_u32..4,
        prop_oneof![Just(0.0), Just(8.0), Just(20.0), Just(45.0)],
        0_u8..6,
    );
    (shape, odd).prop_map(
        |((n, children, stations, staff, weeks), (sessions, minutes, slip))| {
            let case = common::Case {
                children,
                stations,
                staff,
                weeks,
            };
            let mut programme = common::programme(n, &case);
            programme.week.sessions = sessions;
            programme.week.minutes = minutes;
            programme.work = Work {
                rounds: 6,
                exchanges: 5,
            };
            match slip {
                0 => programme.week.yard_area = 6.0,
                1 => programme
                    .targets
                    .iter_mut()
                    .for_each(|it| it.minutes = f64::NAN),
                2 => programme
                    .children
                    .iter_mut()
                    .for_each(|it| it.age = f64::NAN),
                3 => programme.stations.iter_mut().for_each(|it| it.tracks = 0),
                4 => programme.week.minutes = f64::INFINITY,
                _ => (),
            }
            programme
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Nothing panics; no plan is worth more than its bound; nobody is in two places; what is
    /// planned comes out of the simulation, and what is told has words in both languages.
    #[test]
    fn any_programme_is_planned(programme in any_programme()) {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let noted = plan(&programme, &ledger).expect("solves");
        let plan = &noted.value;
        prop_assert!(plan.value >= 0.0 && plan.value <= plan.bound);
        prop_assert!(plan.bound <= 1.0 + 1e-6, "all targets met are worth 1: {}", plan.bound);
        for session in &plan.sessions {
            for groups in &session.slots {
                let mut here: Vec<usize> =
                    groups.iter().flat_map(|it| it.seats.iter().map(|seat| seat.child)).collect();
                let all = here.len();
                here.sort_unstable();
                here.dedup();
                prop_assert_eq!(all, here.len());
            }
        }
        let told = simulate(&programme, plan, &Manner { runs: 2, ..Manner::usual(&ledger) }, &ledger);
        prop_assert_eq!(told.children.len(), programme.children.len());
        for child in &told.children {
            prop_assert!(child.contacts.mean.is_finite() && child.waiting.mean >= 0.0);
        }
        let mishaps = [
            Mishap::Lost(When { week: 1, session: 1 }),
            Mishap::Broken { station: 0, from: When { week: 1, session: 2 }, through: None },
        ];
        let from = When { week: 1, session: 2 };
        let again = replan(&programme, plan, from, &mishaps, &ledger).expect("solves");
        prop_assert!(again.value.plan.value <= again.value.plan.bound);
        for language in words::Language::ALL {
            let catalogue = words::Catalogue::of(language);
            for note in noted.notes.iter().chain(&again.notes) {
                for message in [Some(&note.what), note.mend.as_ref()].into_iter().flatten() {
                    let said = catalogue.say(message, unit::Units::Metres);
                    prop_assert!(!said.contains("sessions-") && !said.contains('{'), "{}", said);
                    prop_assert!(said.len() > 10);
                }
            }
        }
    }

    /// One more week of the same cannot make the best share of the targets worse, and twice
    /// the staff neither.
    #[test]
    fn more_is_not_worse(n in 0_u64..30) {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let case = common::Case { children: 8, stations: 4, staff: 1, weeks: 4 };
        let mut programme = common::programme(n, &case);
        programme.work.exchanges = 0;
        // Of the bound: what the planes leave open on either side.
        const OPEN: f64 = 1e-3;
        let bound = |programme: &Programme| plan(programme, &ledger).expect("solves").value.bound;
        let before = bound(&programme);
        programme.week.staff = 2;
        let staff = bound(&programme);
        // Two adults may take all out at once: then the stations are shared, but so is time.
        programme.weeks = 5;
        let weeks = bound(&programme);
        prop_assert!(weeks >= staff * (1.0 - OPEN), "{} then {}", staff, weeks);
        prop_assert!(before <= 1.0 && staff <= 1.0);
    }
}
