//! The ledger figures that this room reads, and the model that they make.

use children::Skill;
use ledger::{Ledger, by_age};

use crate::gait::Flight;

ledger::figures! {
    /// Normal quantile of nine in ten.
    pub NINE_IN_TEN = "footfall.nine-in-ten";
    /// w, spread from try to try.
    pub SPREAD = "footfall.spread";
    /// Least reach, share of its mean.
    pub REACH_FLOOR = "footfall.reach-floor";
    /// g of each flight.
    pub TURN_WALK = "footfall.turn.walk";
    /// The same for the run.
    pub TURN_RUN = "footfall.turn.run";
    /// The same for the jump.
    pub TURN_JUMP = "footfall.turn.jump";
    /// The same for the hop.
    pub TURN_HOP = "footfall.turn.hop";
    /// The same for the leap.
    pub TURN_LEAP = "footfall.turn.leap";
    /// The same from one foot to both and back.
    pub TURN_MIXED = "footfall.turn.mixed";
    /// The same for the gallop.
    pub TURN_GALLOP = "footfall.turn.gallop";
    /// The same for the slide.
    pub TURN_SLIDE = "footfall.turn.slide";
    /// The same for the skip.
    pub TURN_SKIP = "footfall.turn.skip";
    /// The same for a push.
    pub TURN_PUSH = "footfall.turn.push";
    /// The three coefficients of k.
    pub FACING = "footfall.facing";
    /// Degrees off the facing between which a slide is sideways.
    pub SIDEWAYS = "footfall.sideways";
    /// Longest route on cells.
    pub LONGEST = "footfall.longest";
    /// Shares between which a route is well pitched.
    pub WELL = "footfall.well";
    /// Least stretch of a well-pitched route.
    pub STRETCH = "footfall.stretch";
    /// Depth from which cells overlap.
    pub OVERLAP = "footfall.overlap";
    /// Own stride on a lane.
    pub STRIDE = "footfall.stride";
    /// Scatter across a lane.
    pub LANE_SCATTER = "footfall.lane-scatter";
    /// Pull to the side that costs nothing.
    pub GRIP = "footfall.grip";
    /// Breadth of a foot, share of stature.
    pub FOOT_BREADTH = "footfall.foot-breadth";
    /// Breadth of a chair or walker.
    pub WHEELS_BREADTH = "footfall.wheels-breadth";
    /// Radius at which it turns.
    pub WHEELS_TURN = "push.turn";
    /// Time on top of the walk back.
    pub WALK_BACK = "footfall.walk-back";
    /// Least chance at which a child counts as served.
    pub LEFT_OUT = "footfall.left-out";
    /// Contacts a second.
    pub RATE_JUMP = "footfall.rate.jump";
    /// The same for the hop, and for courts.
    pub RATE_HOP = "footfall.rate.hop";
    /// The same for the leap.
    pub RATE_LEAP = "footfall.rate.leap";
    /// Cycles a second of the gallop.
    pub RATE_GALLOP = "footfall.rate.gallop";
    /// Cycles a second of the slide.
    pub RATE_SLIDE = "footfall.rate.slide";
    /// The same for the skip.
    pub RATE_SKIP = "footfall.rate.skip";
    /// The same for the run.
    pub RATE_RUN = "footfall.rate.run";
    /// The same for the walk.
    pub RATE_WALK = "footfall.rate.walk";
}

/// The model's constants, read once from a project's ledger.
#[derive(Clone, Debug, PartialEq)]
pub struct Model {
    /// Normal quantile of nine in ten.
    pub nine_in_ten: f64,
    /// w: spread from try to try, share of the reach.
    pub w: f64,
    /// Least reach, share of its mean.
    pub floor: f64,
    /// Coefficients of k.
    pub facing: [f64; 3],
    /// Greatest cosine, either way, between a sideways travel and the facing: for more than
    /// the first angle and for less than the second.
    pub sideways: [f64; 2],
    /// Longest route on cells, flights.
    pub longest: usize,
    /// Least and greatest share of a well-pitched route.
    pub well: [f64; 2],
    /// Least mean of distance over reach.
    pub stretch: f64,
    /// Metres of shared ground from which cells overlap.
    pub overlap: f64,
    /// Stride on a lane, share of the mean reach.
    pub stride: f64,
    /// Scatter across a lane, share of the landing's.
    pub lane_scatter: f64,
    /// m/s².
    pub grip: f64,
    /// Share of stature.
    pub foot_breadth: f64,
    /// Metres.
    pub wheels_breadth: f64,
    /// Metres.
    pub wheels_turn: f64,
    /// Seconds.
    pub walk_back: f64,
    /// Chance under which a child is left out.
    pub left_out: f64,
    turn: [f64; Flight::ALL.len()],
    rate: [Vec<f64>; Skill::ALL.len()],
}

impl Model {
    /// Reads the constants.
    pub fn of(ledger: &Ledger) -> Model {
        let list = |key, at: usize| ledger.list(key).get(at).copied().unwrap_or(f64::NAN);
        let cosine = |degrees: f64| libm::cos(degrees.to_radians());
        Model {
            nine_in_ten: ledger.number(NINE_IN_TEN),
            w: ledger.number(SPREAD),
            floor: ledger.number(REACH_FLOOR),
            facing: [list(FACING, 0), list(FACING, 1), list(FACING, 2)],
            sideways: [cosine(list(SIDEWAYS, 0)), cosine(list(SIDEWAYS, 1))],
            // No route of a child is longer than a thousand flights; the cap bounds the search.
            longest: ledger.number(LONGEST).clamp(0.0, 1000.0) as usize,
            well: [list(WELL, 0), list(WELL, 1)],
            stretch: ledger.number(STRETCH),
            overlap: ledger.number(OVERLAP),
            stride: ledger.number(STRIDE),
            lane_scatter: ledger.number(LANE_SCATTER),
            grip: ledger.number(GRIP),
            foot_breadth: ledger.number(FOOT_BREADTH),
            wheels_breadth: ledger.number(WHEELS_BREADTH),
            wheels_turn: ledger.number(WHEELS_TURN),
            walk_back: ledger.number(WALK_BACK),
            left_out: ledger.number(LEFT_OUT),
            turn: Flight::ALL.map(|flight| ledger.number(turn_of(flight))),
            rate: Skill::ALL.map(|skill| ledger.list(rate_of(skill)).to_vec()),
        }
    }

    /// g: the share of a flight's reach that is lost when it turns right about.
    pub fn g(&self, flight: Flight) -> f64 {
        self.turn[flight as usize]
    }

    /// Contacts a second at an age.
    pub fn rate(&self, skill: Skill, years: f64) -> f64 {
        by_age(&self.rate[skill as usize], years)
    }

    /// k: the share of the reach that is left when travel leaves the facing by an angle.
    pub fn k(&self, cos_alpha: f64) -> f64 {
        let [all, along, across] = self.facing;
        all + along * cos_alpha - across * (1.0 - cos_alpha * cos_alpha)
    }
}

fn turn_of(flight: Flight) -> ledger::Key {
    match flight {
        Flight::Walk => TURN_WALK,
        Flight::Run => TURN_RUN,
        Flight::Jump => TURN_JUMP,
        Flight::Hop => TURN_HOP,
        Flight::Leap => TURN_LEAP,
        Flight::Mixed => TURN_MIXED,
        Flight::Gallop => TURN_GALLOP,
        Flight::Slide => TURN_SLIDE,
        Flight::Skip => TURN_SKIP,
        Flight::Push => TURN_PUSH,
    }
}

fn rate_of(skill: Skill) -> ledger::Key {
    match skill {
        Skill::Jump => RATE_JUMP,
        Skill::Hop => RATE_HOP,
        Skill::Leap => RATE_LEAP,
        Skill::Gallop => RATE_GALLOP,
        Skill::Slide => RATE_SLIDE,
        Skill::Skip => RATE_SKIP,
        Skill::Run => RATE_RUN,
        Skill::Walk => RATE_WALK,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The model's page: 1 forward, .70 sideways, .5 backward.
    #[test]
    fn k_is_one_forward_seven_tenths_sideways_half_backward() {
        let model = Model::of(&Ledger::shipped().expect("the shipped ledger reads"));
        for (cos_alpha, wanted) in [(1.0, 1.0), (0.0, 0.7), (-1.0, 0.5)] {
            assert!((model.k(cos_alpha) - wanted).abs() < 1e-15);
        }
    }
}
