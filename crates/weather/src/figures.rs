//! The figures of the ledger that this room reads.

ledger::figures! {
    /// b and c of the dew point, 1 and °C.
    pub DEW = "weather.dew";
    /// Below this mean of the plain formula and the air, the mean is the heat index, °F.
    pub HEAT_FROM = "weather.heat_from";
    /// The plain formula of the heat index.
    pub HEAT_PLAIN = "weather.heat_plain";
    /// The regression of the heat index.
    pub HEAT_REGRESSION = "weather.heat_regression";
    /// What dry heat takes off.
    pub HEAT_DRY = "weather.heat_dry";
    /// What damp heat adds.
    pub HEAT_DAMP = "weather.heat_damp";
    /// The formula of the wind chill.
    pub CHILL = "weather.chill";
    /// Up to which temperature (°F) and from which wind (mph) there is a wind chill.
    pub CHILL_WITHIN = "weather.chill_within";
    /// Upper end of good air, µg/m³ of fine dust.
    pub DUST_GOOD = "weather.dust_good";
    /// Upper ends of the further classes.
    pub DUST_REST = "weather.dust_rest";
    /// Upper ends of the classes of the air quality index.
    pub INDEX_ENDS = "weather.index_ends";
}

/// The first `N` numbers of a figure.
pub(crate) fn array<const N: usize>(ledger: &ledger::Ledger, key: ledger::Key) -> [f64; N] {
    let list = ledger.list(key);
    std::array::from_fn(|at| list.get(at).copied().unwrap_or(f64::NAN))
}
