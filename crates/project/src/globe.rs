//! Degrees on the globe to metres in the yard.
//!
//! A transverse Mercator projection on the WGS 84 ellipsoid with its origin at the yard and
//! scale 1 there, by Krüger's series to the fourth order: x runs east, y north. The series
//! is good to 1e-6 m within 100 km. The plane itself stretches lengths by x²/2R²: 3e-9 at
//! 500 m, 3 µm over a kilometre. Held against PROJ in `oracle/globe.py`.
//!
//! Source: Krüger 1912 as given by Karney 2011 (J. Geod. 85, 475), equations 7 to 35; from
//! memory, checked by the oracle.

/// WGS 84: half the long axis, metres, and the flattening. They define the ellipsoid.
const AXIS: f64 = 6_378_137.0;
const FLATTENING: f64 = 1.0 / 298.257_223_563;

/// A place on the globe, degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Degrees {
    /// North of the equator.
    pub latitude: f64,
    /// East of Greenwich.
    pub longitude: f64,
}

/// A plane that touches the globe at one place.
#[derive(Clone, Copy, Debug)]
pub struct Plane {
    origin: Degrees,
    /// Northing of the origin from the equator, metres.
    northing: f64,
}

impl Plane {
    /// The plane at a place; nearer to a pole than 85 degrees nobody plays.
    pub fn at(origin: Degrees) -> Option<Plane> {
        let sound = origin.latitude.abs() <= 85.0 && origin.longitude.abs() <= 180.0;
        let northing = kruger(origin.latitude, 0.0)[1];
        sound.then_some(Plane { origin, northing })
    }

    /// East and north of the origin, metres.
    pub fn metres(&self, at: Degrees) -> [f64; 2] {
        // A yard on the date line has both signs.
        let turn = at.longitude - self.origin.longitude;
        let turn = turn - 360.0 * (turn / 360.0).round();
        let [east, north] = kruger(at.latitude, turn);
        [east, north - self.northing]
    }
}

/// Easting and northing from the equator, metres, of a latitude and a longitude from the
/// middle meridian, degrees.
fn kruger(latitude: f64, longitude: f64) -> [f64; 2] {
    let n = FLATTENING / (2.0 - FLATTENING);
    let (n2, n3, n4) = (n * n, n * n * n, n * n * n * n);
    let radius = AXIS / (1.0 + n) * (1.0 + n2 / 4.0 + n4 / 64.0);
    let series = [
        n / 2.0 - 2.0 / 3.0 * n2 + 5.0 / 16.0 * n3 + 41.0 / 180.0 * n4,
        13.0 / 48.0 * n2 - 3.0 / 5.0 * n3 + 557.0 / 1440.0 * n4,
        61.0 / 240.0 * n3 - 103.0 / 140.0 * n4,
        49_561.0 / 161_280.0 * n4,
    ];
    let e = libm::sqrt(FLATTENING * (2.0 - FLATTENING));
    let (sin, (sin_turn, cos_turn)) = (
        libm::sin(latitude.to_radians()),
        libm::sincos(longitude.to_radians()),
    );
    // The conformal latitude's tangent, then the sphere's transverse projection.
    let t = libm::sinh(libm::atanh(sin) - e * libm::atanh(e * sin));
    let xi = libm::atan2(t, cos_turn);
    let eta = libm::asinh(sin_turn / libm::hypot(t, cos_turn));
    let (mut north, mut east) = (xi, eta);
    for (at, share) in series.iter().enumerate() {
        let twice = 2.0 * (at + 1) as f64;
        let (sin, cos) = libm::sincos(twice * xi);
        north += share * sin * libm::cosh(twice * eta);
        east += share * cos * libm::sinh(twice * eta);
    }
    [radius * east, radius * north]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Metres. PROJ's exact method prints to 1e-9; a yard needs 1e-3; the series promises
    /// 1e-6.
    const SAME: f64 = 1e-6;

    #[test]
    fn another_program_finds_the_same_metres() {
        let text = include_str!("../oracle/globe.json");
        let all: serde_json::Value = serde_json::from_str(text).expect("the oracle's figures");
        let number = |value: &serde_json::Value, key: &str| value[key].as_f64().expect("a number");
        let degrees = |value| Degrees {
            latitude: number(value, "lat"),
            longitude: number(value, "lon"),
        };
        let mut seen = 0;
        for case in all["cases"].as_array().expect("cases") {
            let plane = Plane::at(degrees(case)).expect("a plane");
            let points = case["points"].as_array().expect("points");
            let ours: Vec<[f64; 2]> = points
                .iter()
                .map(|point| plane.metres(degrees(point)))
                .collect();
            for (point, [x, y]) in points.iter().zip(&ours) {
                let off = libm::hypot(x - number(point, "x"), y - number(point, "y"));
                assert!(off <= SAME, "{point}: {x} {y}, {off} m off");
                seen += 1;
            }
            // The plane keeps lengths: within 1e-6 of the geodesic over a kilometre or two.
            for (pair, geodesic) in ours
                .windows(2)
                .zip(case["geodesic"].as_array().expect("lengths"))
            {
                let flat = libm::hypot(pair[1][0] - pair[0][0], pair[1][1] - pair[0][1]);
                let true_length = geodesic.as_f64().expect("a length");
                assert!(
                    (flat - true_length).abs() <= 1e-6 * true_length + SAME,
                    "{flat}, not {true_length}"
                );
            }
        }
        assert!(seen >= 90, "only {seen} points");
    }

    #[test]
    fn the_origin_is_nought_and_the_poles_are_refused() {
        let here = Degrees {
            latitude: -33.9,
            longitude: 151.2,
        };
        let [x, y] = Plane::at(here).expect("a plane").metres(here);
        assert!(x.abs() < 1e-9 && y.abs() < 1e-9);
        for latitude in [86.0, -90.0, f64::NAN] {
            assert!(Plane::at(Degrees { latitude, ..here }).is_none());
        }
    }
}
