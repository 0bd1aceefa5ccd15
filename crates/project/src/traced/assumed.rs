//! What open maps call things, and the footprints that they leave out.

use ledger::Key;

ledger::figures! {
    /// Standard deviation of a point traced on an open map, metres.
    pub SIGMA = "outline.sigma";
    /// Radius of a footprint that is only a point on the map, metres.
    pub SLIDE = "traced.slide_radius";
    /// The same of a climber.
    pub CLIMBER = "traced.climber_radius";
    /// Of a rocker.
    pub ROCKER = "traced.rocker_radius";
    /// Of a roundabout.
    pub ROUNDABOUT = "traced.roundabout_radius";
    /// Of a seesaw.
    pub SEESAW = "traced.seesaw_radius";
    /// Of a playhouse.
    pub HOUSE = "traced.house_radius";
    /// Of a sandpit.
    pub SANDPIT = "traced.sandpit_radius";
    /// Of a roof or a small building.
    pub ROOF = "traced.roof_radius";
    /// Of a tree's trunk.
    pub TREE = "traced.tree_radius";
    /// Of a lamp, a post or a hydrant.
    pub POST = "traced.post_radius";
    /// Of a bench or a table.
    pub BENCH = "traced.bench_radius";
    /// Of anything else.
    pub OTHER = "traced.other_radius";
    /// Width of a gate that is only a point on the map, metres.
    pub GATE = "traced.gate_width";
}

/// What a point on the map is to a yard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Thing {
    /// A fixture: the word of `is`, and the figure that its radius is.
    Fixture(&'static str, Key),
    Gate,
    /// Not a thing of the yard.
    Nothing,
}

/// The thing that tags mean. A swing needs its beam, which a point has not: it becomes
/// `other`, whose clear zone is the widest.
pub(super) fn thing<'a>(tag: impl Fn(&str) -> Option<&'a str>) -> Thing {
    use Thing::{Fixture, Gate, Nothing};
    match tag("playground") {
        Some("slide") => return Fixture("slide", SLIDE),
        Some("climbingframe" | "structure" | "climbing" | "climbing_slope" | "climbingwall") => {
            return Fixture("climber", CLIMBER);
        }
        Some("springy") => return Fixture("rocker", ROCKER),
        Some("roundabout") => return Fixture("roundabout", ROUNDABOUT),
        Some("seesaw") => return Fixture("seesaw", SEESAW),
        Some("playhouse") => return Fixture("house", HOUSE),
        Some("sandpit") => return Fixture("sandpit", SANDPIT),
        Some(_) => return Fixture("other", OTHER),
        None => {}
    }
    let any = |key: &str, words: &[&str]| tag(key).is_some_and(|found| words.contains(&found));
    if any(
        "barrier",
        &[
            "gate",
            "swing_gate",
            "kissing_gate",
            "entrance",
            "lift_gate",
        ],
    ) {
        Gate
    } else if any("barrier", &["bollard", "block"])
        || any("power", &["pole"])
        || tag("man_made").is_some()
    {
        Fixture("post", POST)
    } else if any("natural", &["tree"]) {
        Fixture("tree", TREE)
    } else if any("highway", &["street_lamp"]) {
        Fixture("lamp", POST)
    } else if any("emergency", &["fire_hydrant"]) {
        Fixture("hydrant", POST)
    } else if any("amenity", &["bench"]) {
        Fixture("bench", BENCH)
    } else if any("leisure", &["picnic_table"]) {
        Fixture("table", BENCH)
    } else if any("amenity", &["shelter"]) || tag("building").is_some() {
        Fixture("building", ROOF)
    } else {
        Nothing
    }
}

/// The word of an edge's `is` for a barrier; a wall that holds ground back is a drop.
pub(super) fn edge(barrier: &str) -> Option<&'static str> {
    match barrier {
        "wall" | "city_wall" => Some("wall"),
        "retaining_wall" => Some("drop"),
        "hedge" => Some("hedge"),
        "kerb" => Some("kerb"),
        "fence" | "handrail" | "guard_rail" | "railing" | "chain" => Some("fence"),
        _ => None,
    }
}

/// The word of a surface's `is`; what is not said is what may not be painted.
pub(super) fn surface<'a>(tag: impl Fn(&str) -> Option<&'a str>) -> &'static str {
    match tag("surface") {
        Some("asphalt" | "paved") => "asphalt",
        Some("concrete" | "concrete:plates") => "concrete",
        Some("paving_stones" | "sett" | "concrete:lanes" | "bricks") => "paving",
        Some("rubber" | "tartan") => "rubber",
        Some("artificial_turf" | "carpet") => "carpet",
        Some("woodchips" | "bark" | "gravel" | "fine_gravel" | "pebblestone") => "loose-fill",
        Some("sand") => "sand",
        Some("wood") => "wood",
        Some("unpaved" | "ground" | "dirt" | "earth" | "compacted" | "clay" | "mud") => "soil",
        _ => match tag("natural") {
            Some("sand" | "beach") => "sand",
            Some("bare_rock" | "scrub") => "soil",
            _ => "grass",
        },
    }
}
