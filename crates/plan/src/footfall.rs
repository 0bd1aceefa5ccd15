//! The `footfall` key.

use children::Side;
use footfall::Footfall as Told;
use marking::Figure;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::children::side;

/// What one child's feet do on one marking in one gait.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Footfall {
    /// The marking's name.
    pub marking: String,
    /// The gait: a skill, or `court`, `mixed` and the like.
    pub gait: String,
    /// The skill that it serves.
    pub skill: String,
    /// `R` or `L`, the leading foot; null for jump, skip, walk and run.
    pub foot: Option<String>,
    /// The child's id.
    pub child: String,
    /// Every kept route.
    pub routes: Vec<Route>,
    /// Share of what is known of the child at which the marking is well pitched.
    pub well: f64,
    /// Share at which it is too easy.
    pub easy: f64,
    /// Share at which it is out of reach.
    pub hard: f64,
    /// Number of the route chosen at z = 0; null where the child is not well pitched there.
    pub chosen: Option<usize>,
    /// Expected good contacts of the chosen route.
    pub good_contacts: Vec<Good>,
    /// Seconds of one pass.
    pub pass_s: Option<f64>,
    /// Seconds to walk back.
    pub walk_back_s: Option<f64>,
}

/// A kept route.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[schemars(rename = "Footpath")]
pub struct Route {
    /// Flights.
    pub n: usize,
    /// Ids of the cells, the start first; empty on a lane.
    pub cells: Vec<String>,
    /// Number of the lane, where it runs along one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lane: Option<usize>,
    /// What stands and lands, the start first: a letter each of R, L and B.
    pub contacts: String,
    /// Chance that the child completes it.
    pub p: f64,
    /// The same at z = 0, given that the child can do the skill.
    pub pi_0: f64,
}

/// Expected good contacts of a skill and foot in one pass.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Good {
    /// The skill.
    pub skill: String,
    /// `R` or `L`.
    pub foot: Option<String>,
    /// How many.
    pub contacts: f64,
}

impl Footfall {
    /// Copies one answer of the footfall stage.
    pub fn of(marking: &str, figure: &Figure, child: &str, told: &Told) -> Footfall {
        let id = |cell: &usize| figure.cells.get(*cell).map(|cell| cell.id.clone());
        Footfall {
            marking: marking.to_owned(),
            gait: told.gait.to_owned(),
            skill: told.skill.word().to_owned(),
            foot: told.foot.map(letter),
            child: child.to_owned(),
            routes: told
                .routes
                .iter()
                .map(|route| Route {
                    n: route.n,
                    cells: route.cells.iter().filter_map(id).collect(),
                    lane: route.lane,
                    contacts: route
                        .contacts
                        .iter()
                        .map(|contact| contact.letter())
                        .collect(),
                    p: route.p,
                    pi_0: route.pi_0,
                })
                .collect(),
            well: told.pitch.well,
            easy: told.pitch.easy,
            hard: told.pitch.hard,
            chosen: told.chosen,
            good_contacts: told
                .good_contacts
                .iter()
                .map(|good| Good {
                    skill: good.skill.word().to_owned(),
                    foot: good.foot.map(letter),
                    contacts: good.contacts,
                })
                .collect(),
            pass_s: told.pass_s,
            walk_back_s: told.walk_back_s,
        }
    }
}

/// `R` or `L`.
pub(crate) fn letter(foot: Side) -> String {
    side(foot)[..1].to_uppercase()
}
