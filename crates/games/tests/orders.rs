//! What comes before what, whether a game suits, and who is ready for it.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use children::Skill;
use games::{
    Available, Before, Equipment, Game, Hindrance, Missing, Node, Offered, Progress, order, ready,
    shipped, suits,
};
use ledger::Ledger;
use note::Place;

fn game(name: &str) -> Game {
    let mut games = shipped().iter();
    games
        .find(|game| game.name == name)
        .expect("a game")
        .clone()
}

fn before(name: &str) -> Before {
    Before {
        name: name.to_owned(),
        at: Place::whole(&"games/x.toml".into()),
    }
}

/// Gallop before slide and skip, a steady hop before skip, run before leap: children.md 2.6,
/// from memory there.
#[test]
fn the_shipped_games_have_an_order_with_each_after_what_comes_before_it() {
    let answer = order(shipped());
    assert!(answer.notes.is_empty(), "{:?}", answer.notes);
    assert_eq!(answer.value.len(), Skill::ALL.len() + shipped().len());
    let place = |node: &Node| {
        answer
            .value
            .iter()
            .position(|other| other == node)
            .expect("placed")
    };
    let skill = |skill| place(&Node::Skill(skill));
    assert!(skill(Skill::Gallop) < skill(Skill::Slide));
    assert!(skill(Skill::Gallop) < skill(Skill::Skip));
    assert!(skill(Skill::Hop) < skill(Skill::Skip));
    assert!(skill(Skill::Run) < skill(Skill::Leap));
    for game in shipped() {
        let here = place(&Node::Game(game.name.clone()));
        for skill in game.skills.iter().chain(&game.needs) {
            assert!(place(&Node::Skill(*skill)) < here, "{}", game.name);
        }
        for other in &game.after {
            assert!(
                place(&Node::Game(other.name.clone())) < here,
                "{}",
                game.name
            );
        }
    }
}

/// A game comes after easier ones: none is for younger children than what comes before it.
#[test]
fn no_game_starts_younger_than_the_games_before_it() {
    for one in shipped() {
        for other in &one.after {
            assert!(game(&other.name).ages[0] <= one.ages[0], "{}", one.name);
        }
    }
}

#[test]
fn a_ring_and_a_game_that_is_not_there_are_told_and_the_rest_is_ordered() {
    let mut games = vec![game("crab-tide"), game("mirror-mirror"), game("two-frogs")];
    games[0].after = vec![before("mirror-mirror")];
    games[2].after = vec![before("crab-tied")];
    let answer = order(&games);
    let keys: Vec<&str> = answer.notes.iter().map(|note| note.what.key).collect();
    assert_eq!(keys, ["games-after-unknown", "games-ring"]);
    assert_eq!(
        answer.notes[0].mend.as_ref().map(|mend| mend.key),
        Some("did-you-mean")
    );
    let named = format!("{:?}", answer.notes[1].what.facts);
    assert!(
        named.contains("crab-tide") && named.contains("mirror-mirror"),
        "{named}"
    );
    assert!(!named.contains("two-frogs"), "{named}");
    assert_eq!(answer.value.len(), Skill::ALL.len() + 1);
}

#[test]
fn a_child_is_ready_when_what_comes_before_is_developing_and_played() {
    let skip = game("step-hop-song");
    let nobody = BTreeMap::new();
    let played: BTreeSet<Arc<str>> = ["right-left-trail", "riding-school"]
        .map(Arc::from)
        .into_iter()
        .collect();
    assert_eq!(
        ready(&nobody, &BTreeSet::new(), &skip),
        [
            Missing::Skill(Skill::Hop),
            Missing::Skill(Skill::Gallop),
            Missing::Game("right-left-trail".to_owned()),
            Missing::Game("riding-school".to_owned()),
        ]
    );
    let mut progress = BTreeMap::from([
        (Skill::Hop, Progress::Developing),
        (Skill::Gallop, Progress::Starting),
    ]);
    assert_eq!(
        ready(&progress, &played, &skip),
        [Missing::Skill(Skill::Gallop)]
    );
    progress.insert(Skill::Gallop, Progress::Secure);
    assert!(ready(&progress, &played, &skip).is_empty());
    // Run and walk come along, until somebody saw that they do not.
    let fox = game("fox-over-the-stream");
    assert!(ready(&nobody, &played, &fox).is_empty());
    progress.insert(Skill::Run, Progress::Starting);
    assert_eq!(
        ready(&progress, &played, &fox),
        [Missing::Skill(Skill::Run)]
    );
}

fn yard(well: f64) -> Available {
    Available {
        offered: vec![
            Offered {
                family: "number-line".to_owned(),
                activity: "hop".to_owned(),
                well: 0.9,
            },
            Offered {
                family: "number-line".to_owned(),
                activity: "jump".to_owned(),
                well,
            },
        ],
        ages: [3.2, 4.7],
        group: 5,
        equipment: BTreeSet::new(),
    }
}

#[test]
fn a_game_suits_a_group_by_figure_pitch_age_number_and_things() {
    let ledger = Ledger::shipped().expect("a ledger");
    let rocket = game("rocket");
    let with = |change: &dyn Fn(&mut Available)| {
        let mut available = yard(0.6);
        change(&mut available);
        suits(&rocket, &available, &ledger)
    };
    assert!(with(&|_| ()).is_empty());
    assert_eq!(with(&|a| a.offered.truncate(1)), [Hindrance::Family]);
    assert_eq!(with(&|a| a.offered[1].well = 0.2), [Hindrance::Pitch(0.2)]);
    assert_eq!(with(&|a| a.ages = [2.1, 2.9]), [Hindrance::Age]);
    assert_eq!(with(&|a| a.ages = [7.0, 7.4]), [Hindrance::Age]);
    assert!(with(&|a| a.ages = [6.9, 7.4]).is_empty());
    assert_eq!(with(&|a| a.group = 1), [Hindrance::Group]);
    assert!(with(&|a| a.group = 40).is_empty());
    let die = suits(&game("roll-and-jump"), &yard(0.6), &ledger);
    assert_eq!(die, [Hindrance::Equipment(vec![Equipment::Die])]);
}

/// Law: a better pitched marking, another marking or another thing never hinders.
#[test]
fn more_never_hinders() {
    let ledger = Ledger::shipped().expect("a ledger");
    let mut more = yard(0.9);
    more.equipment = Equipment::ALL.iter().copied().collect();
    for family in marking::families() {
        for activity in family.activities() {
            more.offered.push(Offered {
                family: family.name().to_owned(),
                activity: (*activity).to_owned(),
                well: 0.7,
            });
        }
    }
    for game in shipped() {
        let (less, more) = (
            suits(game, &yard(0.2), &ledger),
            suits(game, &more, &ledger),
        );
        assert!(
            more.len() <= less.len(),
            "{}: {less:?}, then {more:?}",
            game.name
        );
        // With every family, well pitched, and every thing, only ages hinder.
        assert!(
            more.iter().all(|hindrance| *hindrance == Hindrance::Age),
            "{}",
            game.name
        );
    }
}
