//! Early forms of a court: what the feet of a child who still learns it do on its squares.

use footfall::Contact::{self, B, R};

use super::*;
use crate::early::Which;
use crate::{COURT, Early, Role, Way, forms, line};

/// Start, 1, 2, 3 and 4, 5, 6 and 7, 8, home; or only a part of it.
const WHOLE: [Contact; 8] = [B, R, R, B, R, B, R, B];

fn court(contacts: &[Contact], model: &Model) -> Clip {
    let figure = figures()
        .into_iter()
        .find(|figure| figure.family == "court")
        .expect("the court");
    let gait = Gait::named("court").expect("the court's gait");
    let cells: Vec<usize> = (0..contacts.len()).collect();
    let way = Way {
        gait: &gait,
        cells: &cells,
        lane: None,
        contacts,
    };
    let path = Path::on(&figure, &way, &child(5.0), model).expect("a way over the court");
    Clip::of(&path, model).expect("a clip")
}

fn row(name: &str) -> &'static Early {
    COURT.iter().find(|row| row.name == name).expect("a row")
}

fn feet(clip: &Clip) -> String {
    let word = |message: &note::Message| match message.facts.first() {
        Some((_, note::Fact::Text(text))) => text.clone(),
        _ => String::new(),
    };
    line(clip).iter().map(word).collect::<Vec<_>>().join("")
}

#[test]
fn a_court_has_forms_of_its_own_and_a_hop_keeps_its_own() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let names = |clip: &Clip| forms(clip).map(|row| row.name).collect::<Vec<_>>();
    let clip = court(&WHOLE, &model);
    assert_eq!(names(&clip), ["taps", "one-after-the-other", "two-on-one"]);
    let hop = free(Skill::Hop, Side::Right, 5.0, &model);
    assert_eq!(names(&hop), ["taps", "changes-foot"]);
}

#[test]
fn feet_land_in_the_order_of_the_form() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let clip = court(&WHOLE, &model);
    assert_eq!(feet(&clip), "RRBRBRB");
    for (name, order) in [
        ("taps", "RLRLBRLBRLB"),
        ("one-after-the-other", "RRRLRRLRRL"),
        ("two-on-one", "BBBBBBB"),
    ] {
        let form = row(name).of(&clip, &model);
        sound(&form, &model);
        assert_eq!(feet(&form), order, "{name}");
    }
}

/// Wherever a child stops, also on one foot, both feet come to rest and none is twice there.
#[test]
fn every_part_of_the_way_is_a_sound_clip() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    for most in 2..=WHOLE.len() {
        let clip = court(&WHOLE[..most], &model);
        for row in COURT {
            let form = row.of(&clip, &model);
            sound(&form, &model);
            let resting = form.prints.iter().filter(|print| print.lifts.is_none());
            assert_eq!(resting.count(), 2, "{} after {most}", row.name);
        }
    }
}

/// Both feet stand on the square for one, each to its side of the aim, no wider than the
/// square allows: the court's squares are 0.35 m.
#[test]
fn two_feet_on_a_square_for_one_lie_on_it() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let clip = court(&WHOLE, &model);
    let form = row("two-on-one").of(&clip, &model);
    for print in clip.prints.iter().filter(|p| p.role == Role::Contact) {
        let twins: Vec<_> = form
            .prints
            .iter()
            .filter(|p| p.role == Role::Contact && p.count == print.count)
            .collect();
        let [one, other] = twins.as_slice() else {
            panic!("{twins:?} are not two");
        };
        assert_eq!((one.lands, one.lifts), (other.lands, other.lifts));
        assert!(one.at.y * other.at.y < 0.0, "the feet stand on each other");
    }
    let square = form.prints.iter().filter(|p| p.count == 1);
    let widest = square.map(|p| p.at.y.abs()).fold(0.0, f64::max);
    assert!(widest > 0.04 && widest + 0.05 < 0.35 / 2.0, "{widest}");
    // pairs are as they were
    let pair = |clip: &Clip| {
        let own = clip.prints.iter().filter(|p| p.count == 3);
        own.map(|p| p.at).collect::<Vec<_>>()
    };
    assert_eq!(pair(&clip), pair(&form));
}

#[test]
fn alone_and_second_are_what_they_say() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let clip = court(&WHOLE, &model);
    let meant = |which: Which| {
        let scope = crate::Scope {
            roles: &[Role::Contact],
            which,
            by: None,
            counts: (0, 1, usize::MAX),
        };
        let own = clip.prints.iter().filter(|print| scope.holds(print, &clip));
        own.map(|print| (print.count, print.side))
            .collect::<Vec<_>>()
    };
    let [r, l] = SIDES;
    assert_eq!(meant(Which::Alone), [(1, r), (2, r), (4, r), (6, r)]);
    assert_eq!(meant(Which::Second), [(3, l), (5, l), (7, l)]);
}
