//! The `build` key.

mod crew;
mod days;
mod paint;
mod setout;
mod stencils;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use crew::{Crew, Task, Waited};
pub use days::{Days, Month, Window};
pub use paint::{Can, ColourPaint, Shopping, Thing, Upkeep};
pub use setout::{KeyPoint, SetOut, Span, Tape, Third};
pub use stencils::{CutPanel, CutSheet, Laid as CutLaid, Opening, Stencil, Taped, Use};

/// What the people who build need.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Build {
    /// How the markings come to lie where they were planned.
    pub setout: SetOut,
    /// The plates that are painted through.
    pub stencils: Vec<Stencil>,
    /// Painted shapes that need no plate.
    pub taped: Vec<Taped>,
    /// The sheets that plates are cut from.
    pub sheets: Vec<CutSheet>,
    /// What is bought, and what the years cost.
    pub paint: Shopping,
    /// Who does what when; left out where no plan was found.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub crew: Option<Crew>,
    /// When the weather lets paint dry, by file; empty where the project holds no weather.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub days: Vec<Days>,
}
