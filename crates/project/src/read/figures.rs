//! The ledger figures that this room reads.

ledger::figures! {
    /// How many times less sure a cloth tape is.
    pub WORN = "tape.worn_factor";
    /// Standard deviation of an offset's right angle, degrees.
    pub OFFSET_ANGLE = "offset.angle_sigma";
    /// Standard deviation of a corner that looks square, degrees.
    pub SQUARE = "square.angle_sigma";
    /// Standard deviation of a point on a line, metres.
    pub STRAIGHT = "straight.sigma";
    /// Standard deviation of a point traced on an open map, metres.
    pub OUTLINE = "outline.sigma";
    /// A longer reading is doubted, metres.
    pub LONGEST = "tape.doubted";
    /// Clear width of a route where none is said, metres.
    pub ROUTE = "route.play-width";
    /// Sessions a week, where nobody says.
    pub SESSIONS = "programme.sessions";
    /// Minutes of a session, where nobody says.
    pub MINUTES = "programme.minutes";
    /// Weeks, where nobody says.
    pub WEEKS = "programme.weeks";
    /// Members of staff outside, where nobody says.
    pub STAFF = "programme.staff";
    /// People who paint, where nobody says.
    pub PEOPLE = "build.people";
    /// Days of painting, where nobody says.
    pub DAYS = "build.days";
    /// When the crew begins, hours of the clock, where nobody says.
    pub FROM = "build.from";
    /// When it ends.
    pub UNTIL = "build.until";
}
