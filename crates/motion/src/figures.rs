//! The constants of this room, read from the ledger once.

use children::Skill;
use footfall::Flight;
use ledger::{Ledger, by_age, figures};

figures! {
    FLIGHT_JUMP = "motion.flight.jump";
    FLIGHT_HOP = "motion.flight.hop";
    FLIGHT_LEAP = "motion.flight.leap";
    FLIGHT_GALLOP = "motion.flight.gallop";
    FLIGHT_SLIDE = "motion.flight.slide";
    FLIGHT_SKIP = "motion.flight.skip";
    FLIGHT_RUN = "motion.flight.run";
    FLIGHT_MOST_RUN = "motion.flight-most.run";
    FLIGHT_MOST = "motion.flight-most";
    STANCE_WALK = "motion.stance.walk";
    BEAT_GALLOP = "motion.beat.gallop";
    BEAT_SLIDE = "motion.beat.slide";
    BEAT_SKIP = "motion.beat.skip";
    BOTH_DOWN = "motion.both-down";
    BESIDE = "motion.beside";
    BESIDE_WALK = "motion.beside.walk";
    CLOSING = "motion.closing";
    SKIP_HOP = "motion.skip-hop";
    GRAVITY = "motion.gravity";
    SWING_WALK = "motion.swing.walk";
    SWING = "motion.swing";
    CARRY = "motion.carry";
    CARRY_BEHIND = "motion.carry-behind";
    PATH = "motion.path";
    PATH_FLIGHTS = "motion.path-flights";
    READY = "motion.ready";
    PUSH_LEAST = "motion.push.least";
    PUSH_HOLD = "motion.push.hold";
    PUSH_FADE = "motion.push.fade";
    PUSH_GRIP = "motion.push.grip";
    PUSH_WAIT = "motion.push.wait";
    PUSH_STILL = "motion.push.still";
    WHEEL = "motion.wheel";
    WALKER_BEAT = "motion.walker.beat";
    WALKER_MOVE = "motion.walker.move";
    WALKER_AHEAD = "motion.walker.ahead";
    pub(crate) LATE = "motion.early.late";
    pub(crate) BEHIND = "motion.early.behind";
    pub(crate) PAST = "motion.early.past";
    pub(crate) CROSS = "motion.early.cross";
    pub(crate) CROSS_BEHIND = "motion.early.cross-behind";
    pub(crate) TURN = "motion.early.turn";
    pub(crate) PAUSE = "motion.early.pause";
    pub(crate) TAP = "motion.early.tap";
    pub(crate) TAP_TIME = "motion.early.tap-time";
    pub(crate) WIDE = "motion.early.wide";
    pub(crate) EVEN = "motion.early.even";
}

/// The constants, from one ledger; `feet` are footfall's own, which give rate and stride.
#[derive(Debug)]
#[allow(missing_docs)]
pub struct Model<'a> {
    pub feet: footfall::Model,
    /// Seconds.
    pub flight_most: f64,
    /// Share of a running cycle.
    pub flight_most_run: f64,
    /// Share of the cycle.
    pub stance_walk: f64,
    /// Seconds.
    pub both_down: f64,
    /// Share of the foot.
    pub beside: f64,
    /// Metres.
    pub beside_walk: f64,
    /// Share of the foot.
    pub closing: f64,
    /// Share of stature.
    pub skip_hop: f64,
    /// m/s².
    pub gravity: f64,
    /// Metres.
    pub swing_walk: f64,
    /// Metres.
    pub swing: f64,
    /// Metres.
    pub carry: f64,
    /// Share of the foot.
    pub carry_behind: f64,
    /// Metres.
    pub path: f64,
    /// Least and greatest count.
    pub path_flights: [usize; 2],
    /// Seconds.
    pub ready: f64,
    /// Seconds.
    pub push_least: f64,
    /// Share of the push.
    pub push_hold: f64,
    /// Share of the speed.
    pub push_fade: f64,
    /// Radians from the top of the wheel, forward: takes the rim, lets go of it.
    pub push_grip: [f64; 2],
    /// Seconds.
    pub push_wait: f64,
    /// Seconds.
    pub push_still: f64,
    /// Metres.
    pub wheel: f64,
    /// Seconds.
    pub walker_beat: f64,
    /// Share of the beat.
    pub walker_move: f64,
    /// Metres.
    pub walker_ahead: f64,
    ledger: &'a Ledger,
}

impl<'a> Model<'a> {
    /// Reads the constants.
    pub fn of(ledger: &'a Ledger) -> Model<'a> {
        let number = |key| ledger.number(key);
        // A path of a thousand flights is a slip of the pen.
        let count = |at: usize| {
            let flights = ledger.list(PATH_FLIGHTS).get(at).copied().unwrap_or(1.0);
            flights.clamp(1.0, 1000.0) as usize
        };
        let degrees = |at: usize| ledger.list(PUSH_GRIP).get(at).copied().unwrap_or(0.0);
        let takes = degrees(0).clamp(-80.0, 0.0);
        let grip = [takes, degrees(1).clamp(takes + 10.0, 90.0)].map(f64::to_radians);
        Model {
            feet: footfall::Model::of(ledger),
            flight_most: number(FLIGHT_MOST),
            flight_most_run: number(FLIGHT_MOST_RUN),
            stance_walk: number(STANCE_WALK),
            both_down: number(BOTH_DOWN),
            beside: number(BESIDE),
            beside_walk: number(BESIDE_WALK),
            closing: number(CLOSING),
            skip_hop: number(SKIP_HOP),
            gravity: number(GRAVITY),
            swing_walk: number(SWING_WALK),
            swing: number(SWING),
            carry: number(CARRY),
            carry_behind: number(CARRY_BEHIND),
            path: number(PATH),
            path_flights: [count(0), count(1)],
            ready: number(READY),
            // a project may replace any of them: time and hold stay above nought
            push_least: number(PUSH_LEAST).max(0.1),
            push_hold: number(PUSH_HOLD).clamp(0.1, 0.9),
            push_fade: number(PUSH_FADE).clamp(0.0, 0.5),
            push_grip: grip,
            push_wait: number(PUSH_WAIT).max(0.0),
            push_still: number(PUSH_STILL).max(0.1),
            wheel: number(WHEEL).max(0.1),
            walker_beat: number(WALKER_BEAT).max(0.1),
            walker_move: number(WALKER_MOVE).clamp(0.1, 0.95),
            walker_ahead: number(WALKER_AHEAD),
            ledger,
        }
    }

    /// A figure that a row of early forms names.
    pub(crate) fn size(&self, key: ledger::Key) -> f64 {
        self.ledger.number(key)
    }

    /// Seconds from contact to contact, when all are of this flight.
    ///
    /// - `gait`: the skill whose contacts a second the gait has; a run-up's are the run's
    pub fn interval(&self, flight: Flight, gait: Skill, age: f64) -> f64 {
        let skill = if flight == Flight::Run {
            Skill::Run
        } else {
            gait
        };
        1.0 / self.feet.rate(skill, age)
    }

    /// Seconds with no foot on the ground before a landing; negative where both feet are
    /// down together. Never longer than the interval leaves.
    pub fn flight(&self, flight: Flight, gait: Skill, age: f64) -> f64 {
        let interval = self.interval(flight, gait, age);
        let at = |key| by_age(self.ledger.list(key), age);
        let seconds = match flight {
            Flight::Walk | Flight::Push => return -(2.0 * self.stance_walk - 1.0) * interval,
            Flight::Run => at(FLIGHT_RUN) * interval,
            Flight::Jump => at(FLIGHT_JUMP),
            Flight::Hop => at(FLIGHT_HOP),
            Flight::Mixed => (at(FLIGHT_HOP) + at(FLIGHT_JUMP)) / 2.0,
            Flight::Leap => at(FLIGHT_LEAP),
            Flight::Gallop => at(FLIGHT_GALLOP),
            Flight::Slide => at(FLIGHT_SLIDE),
            Flight::Skip => at(FLIGHT_SKIP),
        };
        // A project may replace either figure: a foot needs a third of the time on the ground.
        let room = match self.beat(flight) {
            Some(beat) if flight == Flight::Skip => interval * beat / (1.0 + beat),
            Some(beat) => interval / (1.0 + beat),
            None => interval,
        };
        seconds.clamp(0.0, room * 2.0 / 3.0)
    }

    /// Long to short, of a flight whose cycle has two beats.
    pub fn beat(&self, flight: Flight) -> Option<f64> {
        let key = match flight {
            Flight::Gallop => BEAT_GALLOP,
            Flight::Slide => BEAT_SLIDE,
            Flight::Skip => BEAT_SKIP,
            _ => return None,
        };
        Some(self.size(key).clamp(0.1, 10.0))
    }
}
