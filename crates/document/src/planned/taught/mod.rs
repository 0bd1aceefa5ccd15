//! The papers for teachers: game cards, the weeks on the wall, the pocket list of cues, what
//! keeps the work alive.

mod cards;
mod fit;
mod pocket;
mod weeks;

use games::Game;

use super::Planned;
use crate::plan_sheet::Drawn;
use crate::sheet::Sheet;
use crate::typeset::Manuscript;

/// What teachers need, as their papers show it.
#[derive(Clone, Copy)]
pub struct Teaching<'a> {
    /// The weeks of play.
    pub teach: &'a plan::Teach,
    /// Games that this yard and class can play, each before those that wait for it.
    pub games: &'a [Game],
    /// The first day, ISO 8601; empty where nobody says.
    pub starts: &'a str,
    /// What typical years leave of the sessions, with the place of each.
    pub fits: &'a [(String, days::Sessions)],
}

/// One card a game, two a page.
pub fn cards(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, teaching: &Teaching) {
    cards::write(paper, sheet, planned, teaching);
}

/// The weeks on the wall.
pub fn weeks(
    paper: &mut Manuscript,
    sheet: &Sheet,
    planned: &Planned,
    drawn: &Drawn,
    teaching: &Teaching,
) {
    weeks::write(paper, sheet, planned, drawn, teaching);
    fit::write(paper, sheet, planned, teaching);
    pocket::write(paper, sheet, planned);
}
