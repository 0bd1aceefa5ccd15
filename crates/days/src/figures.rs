//! The figures of the ledger that this room reads.

ledger::figures! {
    /// Least temperature for painting, °C.
    pub TEMP_MIN = "paint.temp_min";
    /// Greatest temperature for painting, °C.
    pub TEMP_MAX = "paint.temp_max";
    /// No paint on hotter ground, °C.
    pub SURFACE_HOT = "paint.surface_hot";
    /// Ground above the dew point, °C.
    pub DEW_MARGIN = "paint.dew_margin";
    /// Greatest humidity, %.
    pub RH_MAX = "paint.rh_max";
    /// Hours without rain before.
    pub DRY_BEFORE = "paint.dry_before";
    /// Hours without rain after, at the least.
    pub DRY_AFTER = "paint.rain_free_after";
    /// Hours without rain after, better.
    pub DRY_WANTED = "paint.rain_free_wanted";
    /// Hours above the least temperature after.
    pub WARM_AFTER = "paint.warm_after";
    /// Brush and roller below this wind, m/s.
    pub WIND = "paint.wind_roller";
    /// First hour of a working day.
    pub FROM = "paint.from";
    /// Last hour of a working day.
    pub UNTIL = "paint.until";
    /// Dry to the touch, hours.
    pub TOUCH = "dry.touch";
    /// Until the next coat, hours.
    pub RECOAT = "dry.recoat";
    /// Until an adult may step on it, hours.
    pub WALK = "dry.walk";
    /// Until children may play on it, hours.
    pub CHILDREN = "dry.children";
    /// Until wheels may roll on it, hours.
    pub WHEELS = "dry.wheels";
    /// Until it is hard, days.
    pub CURE = "dry.cure";
    /// Cool air slows drying.
    pub COOL = "dry.cool";
    /// Damp air slows drying.
    pub DAMP = "dry.damp";
    /// Sun hastens drying.
    pub SUNNY = "dry.sunny";
    /// From this an hour is sunny, W/m².
    pub SUN = "dry.sun";
    /// Heat index of yellow, orange, red, °F.
    pub HEAT = "play.heat";
    /// Wind chill of yellow, orange, red, °F.
    pub CHILL = "play.chill";
    /// Air quality index of yellow, orange, red.
    pub AIR = "play.air";
    /// UV index of yellow, orange, red.
    pub UV = "play.uv";
    /// Minutes of a fast turn at yellow.
    pub VIGOROUS = "play.vigorous";
    /// Minutes between drinks.
    pub DRINK = "play.drink";
    /// Whether the local rule lets children out at orange.
    pub ORANGE_OUT = "play.orange_out";
    /// Minutes in after thunder.
    pub THUNDER = "play.thunder";
    /// Seconds of the hand on the paint.
    pub HAND = "play.hand";
    /// Ground that hurts, °C.
    pub SKIN_PAIN = "play.skin_pain";
    /// Ground that burns, °C.
    pub SKIN_BURN = "play.skin_burn";
}

/// The first `N` numbers of a figure.
pub(crate) fn array<const N: usize>(ledger: &ledger::Ledger, key: ledger::Key) -> [f64; N] {
    let list = ledger.list(key);
    std::array::from_fn(|at| list.get(at).copied().unwrap_or(f64::NAN))
}
