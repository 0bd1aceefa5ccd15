//! The ledger figures that this room reads.

ledger::figures! {
    /// Band of a cell, metres.
    pub BAND = "look.band";
    /// Least eye, metres.
    pub EYE = "look.eye";
    /// Joint, metres.
    pub JOINT = "look.joint";
    /// Outer corner, metres.
    pub CORNER = "look.corner";
    /// Outer corner of a broad cell, metres.
    pub CORNER_BROAD = "look.corner-broad";
    /// Inner corner, metres.
    pub CORNER_INNER = "look.corner-inner";
    /// Between cells, metres.
    pub GAP = "look.gap";
    /// Breadth of a broad cell over its depth.
    pub BROAD = "look.broad";
    /// Roller stroke, metres.
    pub STROKE = "look.stroke";
    /// Piece of a stroke, metres.
    pub PIECE = "look.piece";
    /// Between pieces, metres.
    pub PIECE_GAP = "look.piece-gap";
    /// Breadth of a start, metres.
    pub START = "look.start";
    /// Breadth of a lane's start, metres.
    pub START_LANE = "look.start-lane";
    /// Breadth of a chevron, metres.
    pub CHEVRON = "look.chevron";
    /// Its stroke, metres.
    pub CHEVRON_STROKE = "look.chevron-stroke";
    /// One roll, metres.
    pub ROLL = "look.roll";
    /// Pebble, metres across.
    pub PEBBLE = "look.pebble";
    /// Middle to middle of two pebbles, metres.
    pub PEBBLE_APART = "look.pebble-apart";
    /// Teller, metres across.
    pub TELLER = "look.teller";
    /// Ripple: breadth, least and greatest length, metres.
    pub RIPPLE = "look.ripple";
    /// Clear ring for turning, metres across.
    pub TURN = "look.turn";
    /// Cap height of numerals, metres.
    pub CAP = "look.cap";
    /// Tie of a numeral, metres.
    pub TIE = "look.tie";
    /// Narrowest paint that a stencil's opening lets through, metres.
    pub LEAST = "look.least";
    /// Narrowest web between two openings, metres.
    pub WEB = "look.web";
    /// Flattening of arcs, metres.
    pub FLAT = "look.flat";
    /// Greatest share of crumbs.
    pub CRUMBS = "look.crumbs";
    /// From a start's flat side to the middle of the feet, metres.
    pub STAND = "look.stand";
    /// Radius of a place to land, metres.
    pub BROOK_SPOT = "brook.spot";
    /// Radius of a place to stand, metres.
    pub BROOK_START_SPOT = "brook.start-spot";
    /// From one to the next, metres.
    pub BROOK_EVERY = "brook.every";
    /// From the water to the middle of standing feet, metres.
    pub BROOK_STAND = "brook.stand";
    /// From the water to the middle of landed feet, metres.
    pub BROOK_LAND = "brook.land";
    /// Least distance of two starts, metres.
    pub BROOK_START_APART = "brook.start-apart";
    /// Share of the reach by travel against a fixed facing: plain, by cosine, by sine squared.
    pub FACING = "footfall.facing";
    /// Beside cells and lanes, metres.
    pub SWAY = "envelope.sway";
    /// Behind a start, metres.
    pub BEHIND = "envelope.behind";
    /// Round a waiting spot, metres.
    pub WAIT_ROUND = "envelope.wait";
    /// Free ground before a leap, metres.
    pub RUN_UP = "envelope.run-up";
    /// Run-out after a run or a lane, metres.
    pub RUN_OUT_RUN = "layout.run-out-run";
    /// Run-out after all else, metres.
    pub RUN_OUT_OTHER = "layout.run-out-other";
    /// From a waiting spot to a way, metres.
    pub WAIT_CLEAR = "layout.wait-clear";
    /// Luminance of each paint.
    pub CHALK_Y = "paint.chalk.y";
    /// Straw.
    pub STRAW_Y = "paint.straw.y";
    /// Harebell.
    pub HAREBELL_Y = "paint.harebell.y";
    /// Sedge.
    pub SEDGE_Y = "paint.sedge.y";
    /// Hip.
    pub HIP_Y = "paint.hip.y";
    /// Madder.
    pub MADDER_Y = "paint.madder.y";
    /// Sloe.
    pub SLOE_Y = "paint.sloe.y";
    /// Luminance of asphalt.
    pub ASPHALT_Y = "ground.asphalt.y";
    /// Luminance of concrete.
    pub CONCRETE_Y = "ground.concrete.y";
    /// Least difference of luminance.
    pub CONTRAST = "layout.contrast";
    /// Least share of contrast.
    pub CONTRAST_SHARE = "contrast.share";
}
