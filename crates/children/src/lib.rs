//! Who will play: sizes, reach, and how sure we are.

mod child;

pub use child::{Ability, Child, Means, Side, Skill, Speeds};
