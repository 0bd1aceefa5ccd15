//! What follows from an hour's readings: dew point, humidity, heat index, wind chill and
//! the air quality index of fine dust.

use ledger::Ledger;

use crate::figures::{self, array};
use crate::hour::Hour;

/// °F of °C: exact by definition.
pub fn fahrenheit(celsius: f64) -> f64 {
    celsius * 9.0 / 5.0 + 32.0
}

/// Miles an hour of m/s: exact by definition.
pub fn mph(metres_a_second: f64) -> f64 {
    metres_a_second / 0.447_04
}

/// The formulas with the ledger's figures.
#[derive(Clone, Debug, PartialEq)]
pub struct Air {
    dew: [f64; 2],
    heat_from: f64,
    plain: [f64; 5],
    regression: [f64; 9],
    dry: [f64; 6],
    damp: [f64; 5],
    chill: [f64; 5],
    chill_within: [f64; 2],
    dust_ends: [f64; 6],
    index_ends: [f64; 6],
}

impl Air {
    /// As the ledger has it.
    pub fn of(ledger: &Ledger) -> Air {
        let [good] = array(ledger, figures::DUST_GOOD);
        let [a, b, c, d, e] = array(ledger, figures::DUST_REST);
        Air {
            dew: array(ledger, figures::DEW),
            heat_from: ledger.number(figures::HEAT_FROM),
            plain: array(ledger, figures::HEAT_PLAIN),
            regression: array(ledger, figures::HEAT_REGRESSION),
            dry: array(ledger, figures::HEAT_DRY),
            damp: array(ledger, figures::HEAT_DAMP),
            chill: array(ledger, figures::CHILL),
            chill_within: array(ledger, figures::CHILL_WITHIN),
            dust_ends: [good, a, b, c, d, e],
            index_ends: array(ledger, figures::INDEX_ENDS),
        }
    }

    /// Dew point, °C, of air at °C and % relative humidity; `None` for air without water.
    ///
    /// # Source
    /// The Magnus form over water, ledger `weather.dew`.
    pub fn dew_point(&self, temperature: f64, humidity: f64) -> Option<f64> {
        let [b, c] = self.dew;
        if humidity <= 0.0 {
            return None;
        }
        let g = libm::log(humidity / 100.0) + b * temperature / (c + temperature);
        Some(c * g / (b - g))
    }

    /// Relative humidity, %, of air at °C with a dew point, °C: the inverse of
    /// [`dew_point`](Air::dew_point), at most 100.
    pub fn humidity(&self, temperature: f64, dew_point: f64) -> f64 {
        let [b, c] = self.dew;
        let g = |t: f64| b * t / (c + t);
        (100.0 * libm::exp(g(dew_point) - g(temperature))).min(100.0)
    }

    /// The hour's dew point, °C: the file's, or what follows from its humidity.
    pub fn dew_point_of(&self, hour: &Hour) -> Option<f64> {
        hour.dew_point
            .or_else(|| self.dew_point(hour.temperature?, hour.humidity?))
    }

    /// The hour's relative humidity, %: the file's, or what follows from its dew point.
    pub fn humidity_of(&self, hour: &Hour) -> Option<f64> {
        hour.humidity
            .or_else(|| Some(self.humidity(hour.temperature?, hour.dew_point?)))
    }

    /// Heat index, °F, of air at °F and % relative humidity.
    ///
    /// # Source
    /// The US weather service's equation with its two adjustments (ledger
    /// `weather.heat_*`). Made for adults in the shade.
    pub fn heat_index(&self, t: f64, r: f64) -> f64 {
        let [share, b, slope, d, damp] = self.plain;
        let mean = (share * (t + b + slope * (t - d) + damp * r) + t) / 2.0;
        if mean < self.heat_from {
            return mean;
        }
        let terms = [
            1.0,
            t,
            r,
            t * r,
            t * t,
            r * r,
            t * t * r,
            t * r * r,
            t * t * r * r,
        ];
        let index: f64 = terms.iter().zip(self.regression).map(|(x, c)| x * c).sum();
        let [under, low, high, over, span, middle] = self.dry;
        if r < under && (low..=high).contains(&t) {
            let bell = (span - (t - middle).abs()) / span;
            return index - (under - r) / over * libm::sqrt(bell.max(0.0));
        }
        let [above, low, high, over, span] = self.damp;
        if r > above && (low..=high).contains(&t) {
            return index + (r - above) / over * ((high - t) / span);
        }
        index
    }

    /// Whether wind can make a chill at all in air at °F.
    pub fn chills(&self, t: f64) -> bool {
        t <= self.chill_within[0]
    }

    /// Wind chill, °F, of air at °F and wind in mph; outside the formula's range the air's
    /// own temperature.
    pub fn wind_chill(&self, t: f64, v: f64) -> f64 {
        if !self.chills(t) || v <= self.chill_within[1] {
            return t;
        }
        let [a, b, c, d, power] = self.chill;
        let v = libm::pow(v, power);
        a + b * t + c * v + d * t * v
    }

    /// Air quality index of fine dust in µg/m³: rounded, as it is told. The index is made for
    /// a mean of 24 hours; of one hour it is a hint. Past the last class its end is given:
    /// there the true index is that or more.
    pub fn quality_index(&self, dust: f64) -> f64 {
        // The rule cuts to tenths first; the nudge keeps 35.4 from being cut to 35.3.
        let dust = ((dust * 10.0 + 1e-6).floor() / 10.0).max(0.0);
        let (mut low, mut from) = (0.0, 0.0);
        for (end, to) in self.dust_ends.into_iter().zip(self.index_ends) {
            if dust <= end {
                return ((to - from) / (end - low) * (dust - low) + from).round();
            }
            // The next class opens a tenth and a point further on.
            (low, from) = (end + 0.1, to + 1.0);
        }
        self.index_ends[5]
    }
}
