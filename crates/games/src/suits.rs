//! Whether a game suits what a yard and a group have.

use std::collections::BTreeSet;

use ledger::Ledger;

use crate::figures::WELL;
use crate::game::{Equipment, Game};

/// What a group finds on one marking.
#[derive(Clone, Debug, PartialEq)]
pub struct Offered {
    /// The marking's family.
    pub family: String,
    /// What feet do there: a skill, or `court`.
    pub activity: String,
    /// Share of the group that is well pitched at it.
    pub well: f64,
}

/// What is at hand.
#[derive(Clone, Debug, PartialEq)]
pub struct Available {
    /// Every activity on every marking.
    pub offered: Vec<Offered>,
    /// Years of the youngest and the oldest of the group.
    pub ages: [f64; 2],
    /// Children of the group.
    pub group: u32,
    /// Things at hand.
    pub equipment: BTreeSet<Equipment>,
}

/// Why a game does not suit.
#[derive(Clone, Debug, PartialEq)]
pub enum Hindrance {
    /// No marking of a family that it can be played on serves its activity.
    Family,
    /// Too few of the group are well pitched at any such marking; the greatest share.
    Pitch(f64),
    /// Nobody of the group is of its ages.
    Age,
    /// Fewer children than it takes.
    Group,
    /// Things that are not at hand.
    Equipment(Vec<Equipment>),
}

/// All that keeps a game from suiting a group; nothing where it suits.
///
/// A group larger than the game's most does not hinder: it plays in turns of groups, and the
/// plan counts them. A child is of an age until its next birthday.
pub fn suits(game: &Game, available: &Available, ledger: &Ledger) -> Vec<Hindrance> {
    let mut hindrances = Vec::new();
    let best = available
        .offered
        .iter()
        .filter(|offered| {
            offered.activity == game.activity && game.families.contains(&offered.family)
        })
        .map(|offered| offered.well)
        .max_by(f64::total_cmp);
    match best {
        None => hindrances.push(Hindrance::Family),
        Some(well) if well < ledger.number(WELL) => hindrances.push(Hindrance::Pitch(well)),
        Some(_) => {}
    }
    let [youngest, oldest] = available.ages;
    if oldest < f64::from(game.ages[0]) || youngest >= f64::from(game.ages[1]) + 1.0 {
        hindrances.push(Hindrance::Age);
    }
    if available.group < game.group[0] {
        hindrances.push(Hindrance::Group);
    }
    let lacking: Vec<Equipment> = game
        .equipment
        .iter()
        .copied()
        .filter(|thing| !available.equipment.contains(thing))
        .collect();
    if !lacking.is_empty() {
        hindrances.push(Hindrance::Equipment(lacking));
    }
    hindrances
}
