//! What comes before what: skills and games as a graph without a ring.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use children::Skill;
use note::{Note, Noted, Place, msg};

use crate::cue::page;
use crate::desk::{At, unknown};
use crate::game::Game;

/// How far a skill has come: checks met on most tries, of five (children.md 3).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Progress {
    /// None or one.
    Starting,
    /// Two or three.
    Developing,
    /// Four or five.
    Secure,
}

/// A skill or a game.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Node {
    /// A skill.
    Skill(Skill),
    /// A game, by its name.
    Game(String),
}

/// What still comes before a game.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Missing {
    /// This skill has to be developing.
    Skill(Skill),
    /// This game has to have been played.
    Game(String),
}

/// The skills that come right before a skill.
fn before(skill: Skill) -> &'static [Skill] {
    page(skill).map_or(&[], |page| &page.after)
}

/// The skills that come right before a game: those that its own skills ask for, and those
/// that it names, each once.
fn skills_before(game: &Game) -> BTreeSet<Skill> {
    let own = game.skills.iter().flat_map(|skill| before(*skill).iter());
    own.chain(&game.needs)
        .copied()
        .filter(|skill| !game.skills.contains(skill))
        .collect()
}

/// Every skill and every game, each after all that comes before it; skills as early as they
/// may, then games, in the order given.
///
/// A game that comes before another and is not there is told with the nearest name; so is a
/// ring, with the names on it. What lies on a ring, or after one, is left out.
pub fn order(games: &[Game]) -> Noted<Vec<Node>> {
    let mut notes = Vec::new();
    let names: Vec<&str> = games.iter().map(|game| game.name.as_str()).collect();
    let mut waits: Vec<(Node, BTreeSet<Node>)> = Skill::ALL
        .iter()
        .map(|skill| {
            let before = before(*skill).iter().copied().map(Node::Skill);
            (Node::Skill(*skill), before.collect())
        })
        .collect();
    for game in games {
        let mut before: BTreeSet<Node> = skills_before(game).into_iter().map(Node::Skill).collect();
        before.extend(game.skills.iter().copied().map(Node::Skill));
        for other in &game.after {
            if names.contains(&other.name.as_str()) {
                before.insert(Node::Game(other.name.clone()));
            } else {
                let text = At {
                    value: other.name.clone(),
                    at: other.at.clone(),
                };
                notes.push(unknown(
                    &text,
                    msg!("games-after-unknown", game = &other.name),
                    &names,
                ));
            }
        }
        waits.push((Node::Game(game.name.clone()), before));
    }
    let mut order = Vec::new();
    let mut done = BTreeSet::new();
    while let Some(next) = waits.iter().position(|(_, before)| before.is_subset(&done)) {
        let (node, _) = waits.remove(next);
        done.insert(node.clone());
        order.push(node);
    }
    notes.extend(ring(&waits, games));
    Noted {
        value: order,
        notes,
    }
}

/// The ring among what could not be put in order: from any of it, back and back.
fn ring(waits: &[(Node, BTreeSet<Node>)], games: &[Game]) -> Option<Note> {
    let waits: BTreeMap<&Node, &BTreeSet<Node>> =
        waits.iter().map(|(node, before)| (node, before)).collect();
    let mut way: Vec<&Node> = Vec::new();
    let mut here = *waits.keys().next()?;
    while !way.contains(&here) {
        way.push(here);
        here = waits
            .get(here)?
            .iter()
            .find(|before| waits.contains_key(before))?;
    }
    let from = way.iter().position(|node| *node == here)?;
    let mut names: Vec<String> = way[from..].iter().map(|node| name(node)).collect();
    names.reverse();
    let at: Option<Place> = games
        .iter()
        .find(|game| names.contains(&game.name))
        .and_then(|game| game.after.iter().find(|other| names.contains(&other.name)))
        .map(|other| other.at.clone());
    Some(Note::error(at, msg!("games-ring", names = names)).mend(msg!("games-ring-mend")))
}

fn name(node: &Node) -> String {
    match node {
        Node::Skill(skill) => skill.word().to_owned(),
        Node::Game(name) => name.clone(),
    }
}

/// What still comes before a game; nothing where the child, or the group, is ready for it.
///
/// - `progress`: how far each skill has come; one that is not there is starting. Run and walk
///   need not be there: they come along.
/// - `played`: names of the games that have been played
pub fn ready(
    progress: &BTreeMap<Skill, Progress>,
    played: &BTreeSet<Arc<str>>,
    game: &Game,
) -> Vec<Missing> {
    let starting = |skill: &Skill| {
        let far = progress.get(skill);
        match skill {
            Skill::Run | Skill::Walk => far == Some(&Progress::Starting),
            _ => far.is_none_or(|far| *far < Progress::Developing),
        }
    };
    let skills = skills_before(game).into_iter().filter(|s| starting(s));
    let games = game
        .after
        .iter()
        .filter(|other| !played.contains(other.name.as_str()));
    skills
        .map(Missing::Skill)
        .chain(games.map(|other| Missing::Game(other.name.clone())))
        .collect()
}
