//! Dew point, heat index, wind chill and air quality index against printed tables and
//! another library.
#![allow(clippy::expect_used, clippy::panic)] // helpers of tests are tests

use proptest::prelude::*;
use weather::Air;

fn air() -> Air {
    Air::of(&ledger::Ledger::shipped().expect("the shipped ledger reads"))
}

/// Source: psychrolib 2.5.0 (ASHRAE formulas), `oracle/dew.py`. Two formulas of one thing
/// differ by up to 0.035 °C; the rule of painting asks for 3 °C.
#[test]
fn dew_points_are_those_of_the_ashrae_formulas() {
    const FORMULAS: f64 = 0.035;
    let text = include_str!("../oracle/dew.json");
    let answers: serde_json::Value = serde_json::from_str(text).expect("the oracle's answers");
    let rows = answers["rows"].as_array().expect("rows");
    assert!(rows.len() > 500, "only {} rows", rows.len());
    let air = air();
    for row in rows {
        let at = |column: usize| row[column].as_f64().expect("a number");
        let ours = air.dew_point(at(0), at(1)).expect("air with water");
        assert!(
            (ours - at(2)).abs() <= FORMULAS,
            "{row}: {ours}, and they differ by {}",
            (ours - at(2)).abs()
        );
    }
}

/// The first column of the reference page's table: the same constants in another program.
/// Tolerance: half the last printed digit.
#[test]
fn dew_points_are_those_of_the_constants() {
    for (t, rh, printed) in [
        (10.0, 50.0, 0.0467),
        (10.0, 85.0, 7.5938),
        (16.0, 71.0, 10.7438),
        (20.0, 85.0, 17.4009),
        (25.0, 60.0, 16.6977),
        (30.0, 40.0, 14.9330),
        (30.0, 70.0, 23.9305),
        (35.0, 80.0, 31.0304),
        (40.0, 20.0, 12.7935),
    ] {
        let ours = air().dew_point(t, rh).expect("air with water");
        assert!((ours - printed).abs() <= 0.000_05, "{t} {rh}: {ours}");
    }
    assert_eq!(air().dew_point(20.0, 0.0), None);
}

/// A published painting example: 16 °C and 71 % make 11 °C, so ground of 13 °C must wait.
#[test]
fn the_painters_example_comes_out() {
    let dew = air().dew_point(16.0, 71.0).expect("air with water");
    assert_eq!(dew.round(), 11.0);
    assert!(13.0 - dew < 3.0);
}

/// Source: the US weather service's printed chart (cells as whole °F) and its equation
/// computed in another program (four digits).
#[test]
fn heat_indices_are_those_of_the_chart() {
    for (t, r, computed, chart) in [
        (70.0, 50.0, 69.5250, None),
        (80.0, 40.0, 79.7900, None),
        (84.0, 90.0, 98.3425, Some(98.0)),
        (90.0, 55.0, 96.9919, Some(97.0)),
        (90.0, 70.0, 105.9220, Some(106.0)),
        (94.0, 60.0, 110.1689, Some(110.0)),
        (100.0, 10.0, 94.1225, None),
        (100.0, 50.0, 118.3158, Some(118.0)),
    ] {
        let ours = air().heat_index(t, r);
        assert!((ours - computed).abs() <= 0.000_05, "{t} {r}: {ours}");
        assert!(
            chart.is_none_or(|cell: f64| ours.round() == cell),
            "{t} {r}: {ours}"
        );
    }
}

/// Source: the US weather service's printed chart and its formula computed in another program.
#[test]
fn wind_chills_are_those_of_the_chart() {
    for (t, v, computed, chart) in [
        (40.0, 5.0, 36.4724, 36.0),
        (30.0, 10.0, 21.2483, 21.0),
        (20.0, 20.0, 4.2428, 4.0),
        (0.0, 15.0, -19.3980, -19.0),
    ] {
        let ours = air().wind_chill(t, v);
        assert!((ours - computed).abs() <= 0.000_05, "{t} {v}: {ours}");
        assert_eq!(ours.round(), chart, "{t} {v}");
    }
    // Outside the formula's range it feels as it is.
    assert_eq!(air().wind_chill(51.0, 30.0), 51.0);
    assert_eq!(air().wind_chill(20.0, 3.0), 20.0);
}

/// Source: the limits of 2024; the values between from another program, the ends from the
/// limits themselves.
#[test]
fn fine_dust_has_its_index() {
    for (dust, index) in [
        (0.0, 0.0),
        (9.0, 50.0),
        (9.09, 50.0),
        (9.1, 51.0),
        (12.0, 56.0),
        (35.4, 100.0),
        (35.5, 101.0),
        (40.0, 112.0),
        (55.4, 150.0),
        (100.0, 182.0),
        (125.5, 201.0),
        (325.4, 500.0),
        (900.0, 500.0),
    ] {
        assert_eq!(air().quality_index(dust), index, "{dust}");
    }
}

proptest! {
    /// Dew point and humidity undo each other, and the dew point is never above the air.
    #[test]
    fn humidity_is_the_dew_points_inverse(t in -30.0..45.0f64, rh in 1.0..100.0f64) {
        const ROUNDING: f64 = 1e-9; // %, of a hundred: a hundred thousand ulps
        let air = air();
        let dew = air.dew_point(t, rh).expect("air with water");
        prop_assert!(dew <= t);
        prop_assert!((air.humidity(t, dew) - rh).abs() <= ROUNDING);
    }

    /// Damper or dustier is never better. From 82 °F on: below, the published index goes over
    /// from one formula to the other and may step down by some tenths.
    #[test]
    fn more_is_never_better(t in 82.0..110.0f64, rh in 14.0..80.0f64, dust in 0.0..400.0f64) {
        let air = air();
        prop_assert!(air.heat_index(t, rh + 4.0) > air.heat_index(t, rh));
        prop_assert!(air.quality_index(dust + 0.1) >= air.quality_index(dust));
    }
}
