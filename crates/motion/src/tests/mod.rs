//! Laws of clips, held against the ledger, against routes, and against what others saw.

mod court;
mod early;
mod rides;
mod rolling;
mod routes;
mod times;

use children::{Child, Date, Entry, Means, Side, Skill, counts, roster};
use footfall::Gait;
use ledger::Ledger;
use marking::{Figure, Ground, Look, Palette, families};

use crate::{Clip, Model, Path};

const AGES: [f64; 4] = [3.0, 4.0, 5.0, 6.0];
const SIDES: [Side; 2] = [Side::Right, Side::Left];
/// Seconds and metres: a clip is rounded to 1e-6, a difference of two of its figures to this.
const ROUNDED: f64 = 2.1e-6;

fn ledger() -> Ledger {
    Ledger::shipped().expect("the shipped ledger reads")
}

fn child(years: f64) -> Child {
    let mut children = counts(&[(years, 1)], &ledger()).value;
    children.pop().expect("a child of that age")
}

/// A child of whole years, by these means.
fn by(means: Means, years: i32) -> Child {
    let mut entry = Entry::new("model", (2020, 1));
    entry.means = means;
    let date = Date {
        year: 2020 + years,
        month: 1,
    };
    let mut children = roster(&[entry], date, &ledger()).value;
    children.pop().expect("a child of that age")
}

fn figures() -> Vec<Figure> {
    let palette = Palette {
        ground: Ground::Asphalt,
    };
    let look = Look::of(palette, &ledger());
    families()
        .iter()
        .filter_map(|family| family.make(&family.defaults(), &look).ok())
        .collect()
}

fn free(skill: Skill, lead: Side, years: f64, model: &Model) -> Clip {
    let gait = Gait::named(skill.word()).expect("every skill is a gait");
    let path = Path::free(&gait, lead, &child(years), model).expect("a free path");
    Clip::of(&path, model).expect("a clip")
}

/// Every skill, age and leading foot on free ground.
fn every(mut check: impl FnMut(&Clip, &Model)) {
    let ledger = ledger();
    let model = Model::of(&ledger);
    for skill in Skill::ALL {
        for years in AGES {
            for lead in SIDES {
                check(&free(skill, lead, years, &model), &model);
            }
        }
    }
}

/// What holds for any clip, well done or not.
fn sound(clip: &Clip, model: &Model) {
    let told = format!("{} {:?} at {}", clip.gait, clip.early, clip.body.age);
    for side in SIDES {
        let mut prints = clip
            .prints
            .iter()
            .filter(|print| print.side == side)
            .peekable();
        while let Some(print) = prints.next() {
            let lifts = print.lifts.unwrap_or(clip.end);
            assert!(
                print.lands < lifts,
                "{told}: {print:?} lifts before it lands"
            );
            match prints.peek() {
                Some(next) => assert!(
                    lifts < next.lands,
                    "{told}: {side:?} is in two places: {print:?} {next:?}"
                ),
                None => assert!(
                    print.lifts.is_none(),
                    "{told}: {side:?} ends in the air: {print:?}"
                ),
            }
        }
    }
    for pair in clip.prints.windows(2) {
        assert!(pair[0].lands <= pair[1].lands, "{told}: out of order");
    }
    for (from, to) in clip.flights() {
        assert!(
            from < to && to - from <= model.flight_most,
            "{told}: flies from {from} to {to}"
        );
    }
}
