//! The figures of the ledger that this room reads, but for those of the shopping rules,
//! which stand with their rows in `shop`.

ledger::figures! {
    /// Coats of a colour.
    pub COATS = "paint.coats";
    /// Coats of straw, and of a light paint on black ground.
    pub COATS_MORE = "paint.coats_more";
    /// First coat on smooth concrete, m²/L.
    pub RATE_CONCRETE = "paint.rate_concrete";
    /// First coat on dense asphalt, m²/L.
    pub RATE_DENSE = "paint.rate_asphalt";
    /// First coat on open or worn asphalt, m²/L.
    pub RATE_WORN = "paint.rate_worn";
    /// Spreading rate of a coat on paint over that of the first.
    pub SECOND_COAT = "paint.second_coat";
    /// Share lost where a shape is filled.
    pub LOSS_FILLED = "paint.loss_filled";
    /// Share lost where a figure is stencilled.
    pub LOSS_STENCIL = "paint.loss_stencil";
    /// Lost for each colour, litres.
    pub LOSS_COLOUR = "paint.loss_colour";
    /// Share kept for touching up.
    pub RESERVE = "paint.reserve";
    /// US cans, litres.
    pub CAN_US = "can.us";
    /// Metric cans, litres.
    pub CAN_METRIC = "can.metric";
    /// Whether a surface is primed, by surface.
    pub PRIMER_ON = "primer.on";
    /// Primer, m²/L.
    pub PRIMER_RATE = "primer.rate";
    /// Sand for each volume of paint in the last coat.
    pub GRIT_SHARE = "grit.share";
    /// Poured sand, kg/L.
    pub GRIT_DENSITY = "grit.density";
    /// Time constant of wear under feet, months.
    pub TAU_FEET = "keep.tau_feet";
    /// Time constant of wear with wheels, months.
    pub TAU_WHEELS = "keep.tau_wheels";
    /// Share seen below which a marking is refreshed.
    pub KEEP_LEAST = "keep.least";
    /// Coats of a refresh.
    pub KEEP_COATS = "keep.coats";
    /// Years planned for.
    pub KEEP_YEARS = "keep.years";
    /// Interest of a year.
    pub INTEREST = "keep.interest";
}
