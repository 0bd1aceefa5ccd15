//! What the feet do, as yes or no: what an observer marks on a clip.

use children::Skill;

/// One thing that feet do or do not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Criterion {
    /// The skill.
    pub skill: Skill,
    /// Its name, of its own within the skill.
    pub name: &'static str,
    /// The check of the observation sheet that it is part of (children.md 3), where it has one.
    pub check: Option<&'static str>,
    /// Key of its sentence.
    pub says: &'static str,
}

macro_rules! criteria {
    ($($skill:ident $name:literal $check:expr;)*) => {
        &[$(Criterion {
            skill: Skill::$skill,
            name: $name,
            check: $check,
            says: concat!("course-sees-", $name),
        }),*]
    };
}

/// Every criterion, by skill; names tell the skill. The ideas are children.md 3's (textbooks
/// and public pages of education departments), the wording ours, and only what footfalls show.
pub const CRITERIA: &[Criterion] = criteria! {
    Jump "jump-leaves" Some("J2");
    Jump "jump-flies" None;
    Jump "jump-lands" Some("J4");
    Jump "jump-stays" Some("J5");
    Hop "hop-same-foot" Some("H1");
    Hop "hop-free-foot" Some("H3");
    Hop "hop-goes-on" None;
    Hop "hop-beat" None;
    Leap "leap-runs-up" Some("L1");
    Leap "leap-other-foot" Some("L2");
    Leap "leap-floats" Some("L3");
    Leap "leap-runs-on" Some("L5");
    Gallop "gallop-lead" Some("G1");
    Gallop "gallop-behind" Some("G2");
    Gallop "gallop-spring" Some("G3");
    Gallop "gallop-beat" Some("G4");
    Slide "slide-square" Some("S1");
    Slide "slide-uncrossed" Some("S3");
    Slide "slide-spring" Some("S4");
    Slide "slide-flows" Some("S2");
    Skip "skip-step-hop" Some("K1");
    Skip "skip-sides" Some("K2");
    Skip "skip-beat" Some("K3");
    Run "run-floats" Some("R1");
    Run "run-line" Some("R2");
    Run "run-even" None;
};

/// The criteria of a skill, in order; none of the walk.
pub fn criteria(skill: Skill) -> Vec<&'static Criterion> {
    CRITERIA.iter().filter(|row| row.skill == skill).collect()
}
