//! What a column can hold, in which units, and what cannot be.

use crate::hour::Hour;

/// What is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Quantity {
    /// Air.
    Temperature,
    /// Dew point.
    DewPoint,
    /// Relative humidity.
    Humidity,
    /// Wind.
    Wind,
    /// Rain.
    Rain,
    /// The ground.
    Surface,
    /// Sun on level ground.
    Sun,
    /// UV index.
    Uv,
    /// Fine dust.
    Pm25,
    /// Air quality index.
    Aqi,
}

impl Quantity {
    /// Its column in our table, in the unit that the house keeps.
    pub fn column(self) -> &'static str {
        match self {
            Quantity::Temperature => "temperature_c",
            Quantity::DewPoint => "dew_point_c",
            Quantity::Humidity => "humidity_percent",
            Quantity::Wind => "wind_m_s",
            Quantity::Rain => "rain_mm",
            Quantity::Surface => "surface_c",
            Quantity::Sun => "sun_w_m2",
            Quantity::Uv => "uv_index",
            Quantity::Pm25 => "pm25_ug_m3",
            Quantity::Aqi => "aqi",
        }
    }

    /// Least and greatest value that is believed: a little wider than anything ever
    /// measured (from memory), so that a code for "missing" or a wrong unit stands out.
    pub(crate) fn believed(self) -> (f64, f64) {
        match self {
            Quantity::Temperature => (-90.0, 60.0),
            Quantity::DewPoint => (-100.0, 40.0),
            Quantity::Humidity => (0.0, 110.0),
            Quantity::Wind => (0.0, 115.0),
            Quantity::Rain => (0.0, 900.0),
            Quantity::Surface => (-90.0, 100.0),
            Quantity::Sun => (-20.0, 1800.0),
            Quantity::Uv => (0.0, 45.0),
            Quantity::Pm25 => (0.0, 5000.0),
            Quantity::Aqi => (0.0, 2000.0),
        }
    }

    pub(crate) fn of(self, hour: &Hour) -> Option<f64> {
        match self {
            Quantity::Temperature => hour.temperature,
            Quantity::DewPoint => hour.dew_point,
            Quantity::Humidity => hour.humidity,
            Quantity::Wind => hour.wind,
            Quantity::Rain => hour.rain,
            Quantity::Surface => hour.surface,
            Quantity::Sun => hour.sun,
            Quantity::Uv => hour.uv,
            Quantity::Pm25 => hour.pm25,
            Quantity::Aqi => hour.aqi,
        }
    }

    pub(crate) fn set(self, hour: &mut Hour, value: Option<f64>) {
        *match self {
            Quantity::Temperature => &mut hour.temperature,
            Quantity::DewPoint => &mut hour.dew_point,
            Quantity::Humidity => &mut hour.humidity,
            Quantity::Wind => &mut hour.wind,
            Quantity::Rain => &mut hour.rain,
            Quantity::Surface => &mut hour.surface,
            Quantity::Sun => &mut hour.sun,
            Quantity::Uv => &mut hour.uv,
            Quantity::Pm25 => &mut hour.pm25,
            Quantity::Aqi => &mut hour.aqi,
        } = value;
    }
}

/// A column that a file may have: whose value `v` is `v * times + plus` in the house's unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Column {
    pub name: &'static str,
    pub quantity: Quantity,
    pub times: f64,
    pub plus: f64,
    /// At this value and beyond, or at just this one below zero, the file means "missing".
    pub missing: Option<f64>,
}

impl Column {
    pub(crate) const fn plain(
        name: &'static str,
        quantity: Quantity,
        missing: Option<f64>,
    ) -> Column {
        Column {
            name,
            quantity,
            times: 1.0,
            plus: 0.0,
            missing,
        }
    }

    pub(crate) const fn scaled(
        name: &'static str,
        quantity: Quantity,
        times: f64,
        plus: f64,
    ) -> Column {
        Column {
            name,
            quantity,
            times,
            plus,
            missing: None,
        }
    }

    pub(crate) fn is_missing(&self, value: f64) -> bool {
        self.missing.is_some_and(|code| {
            if code < 0.0 {
                value <= code
            } else {
                value >= code
            }
        })
    }
}
