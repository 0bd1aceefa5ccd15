//! The figures of the ledger that this room reads.

ledger::figures! {
    /// Least share of marks that agree.
    pub AGREEMENT = "course.agreement";
    /// Least kappa.
    pub KAPPA = "course.kappa";
    /// Rounds in a row.
    pub IN_ROW = "course.in-row";
    /// Half of kappa's interval from which on it is known well enough.
    pub HALF_WIDTH = "course.half-width";
    /// Hours with clips.
    pub CLIPS_HOURS = "course.clips-hours";
    /// Sessions beside a trained observer.
    pub BESIDE = "course.beside";
    /// Share of sessions that two observers watch.
    pub DOUBLE = "course.double";
    /// Pairs that tell of drift.
    pub DRIFT_PAIRS = "course.drift-pairs";
    /// Months away after which one practises again.
    pub AWAY = "course.away";
    /// Where kappa stops being poor, and where it begins to be excellent.
    pub BANDS = "course.bands";
    /// Rounds of the practice.
    pub ROUNDS = "course.rounds";
    /// Clips of a round.
    pub CLIPS = "course.clips";
    pub(crate) LEAVE = "course.fault.leave";
    pub(crate) STEP_ON = "course.fault.step-on";
    pub(crate) STEP_ON_AFTER = "course.fault.step-on-after";
    pub(crate) SHORT = "course.fault.short";
    pub(crate) REST = "course.fault.rest";
    pub(crate) HOP_OFF = "course.fault.hop-off";
    pub(crate) LIMP = "course.fault.limp";
    pub(crate) TOGETHER = "course.met.together";
    pub(crate) FLOAT = "course.met.float";
    pub(crate) ADVANCE = "course.met.advance";
    pub(crate) EVEN = "course.met.even";
    pub(crate) LONG_SHORT = "course.met.long-short";
    pub(crate) LINE = "course.met.line";
    pub(crate) STOP = "course.met.stop";
    pub(crate) SQUARE = "course.met.square";
    /// Children who took part, of those present.
    pub GREEN_REACH = "course.green.reach";
    /// Held, of those planned.
    pub GREEN_ADHERENCE = "course.green.adherence";
    /// Core items met, of those asked.
    pub GREEN_CORE = "course.green.core";
    /// Visited sessions with every item met.
    pub GREEN_STRICT = "course.green.strict";
    /// All move within these seconds.
    pub MOVING = "course.moving";
    /// Nobody waits longer, seconds.
    pub WAIT = "course.wait";
    /// Weeks in which a coach visits.
    pub COACH_WEEKS = "course.coach-weeks";
    /// Months after which a coach visits again.
    pub COACH_MONTH = "course.coach-month";
    /// Minutes of watching.
    pub COACH_WATCH = "course.coach-watch";
    /// Minutes of talk.
    pub COACH_TALK = "course.coach-talk";
    /// Minutes of the induction's steps.
    pub INDUCTION = "course.induction";
}
