//! What follows from readings given as lines on the standard input, one answer a line:
//! `dew T RH` (°C, %), `heat T RH` (°F, %), `chill T V` (°F, mph), `index PM25` (µg/m³).

use std::io::BufRead;

fn main() {
    let Ok(ledger) = ledger::Ledger::shipped() else {
        return;
    };
    let air = weather::Air::of(&ledger);
    for line in std::io::stdin().lock().lines().map_while(Result::ok) {
        let mut words = line.split_whitespace();
        let what = words.next();
        let numbers: Vec<f64> = words.filter_map(|word| word.parse().ok()).collect();
        match (what, numbers.as_slice()) {
            (Some("dew"), [t, rh]) => match air.dew_point(*t, *rh) {
                Some(dew) => println!("{dew}"),
                None => println!("none"),
            },
            (Some("heat"), [t, rh]) => println!("{}", air.heat_index(*t, *rh)),
            (Some("chill"), [t, v]) => println!("{}", air.wind_chill(*t, *v)),
            (Some("index"), [dust]) => println!("{}", air.quality_index(*dust)),
            _ => println!("?"),
        }
    }
}
