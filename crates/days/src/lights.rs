//! Go, shorten, shade or stay in: four lights for heat, cold, air and sun.

use jiff::ToSpan;
use jiff::civil::DateTime;
use ledger::Ledger;
use note::{Message, msg};
use weather::{Air, Hour, fahrenheit, mph};

use crate::figures::{self, array};

/// How fit the weather is for play outdoors.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Light {
    /// Go out.
    Green,
    /// Go out with care.
    Yellow,
    /// In, unless the local rule allows a short gentle stay in the shade.
    Orange,
    /// In.
    Red,
}

impl Light {
    /// All, from good to bad.
    pub const ALL: [Light; 4] = [Light::Green, Light::Yellow, Light::Orange, Light::Red];

    /// Its key in the catalogue.
    pub fn word(self) -> &'static str {
        match self {
            Light::Green => "days-light-green",
            Light::Yellow => "days-light-yellow",
            Light::Orange => "days-light-orange",
            Light::Red => "days-light-red",
        }
    }
}

/// What a light is told by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Measure {
    /// Heat index.
    Heat,
    /// Wind chill.
    Chill,
    /// Air quality index.
    Air,
    /// UV index.
    Uv,
}

impl Measure {
    /// All.
    pub const ALL: [Measure; 4] = [Measure::Heat, Measure::Chill, Measure::Air, Measure::Uv];
}

/// Where the lights change, as the ledger has it. A rule of the town, the licence or the
/// centre wins: a project puts its figures in.
#[derive(Clone, Debug, PartialEq)]
pub struct Bands {
    /// Heat index from which it is yellow, orange, red, °F.
    pub heat: [f64; 3],
    /// Wind chill below which it is, °F.
    pub chill: [f64; 3],
    /// Air quality index above which it is.
    pub air: [f64; 3],
    /// UV index, rounded, from which it is.
    pub uv: [f64; 3],
    /// Whether the local rule lets children out for some gentle minutes at orange.
    pub orange_out: bool,
}

impl Bands {
    /// As the ledger has them.
    pub fn of(ledger: &Ledger) -> Bands {
        Bands {
            heat: array(ledger, figures::HEAT),
            chill: array(ledger, figures::CHILL),
            air: array(ledger, figures::AIR),
            uv: array(ledger, figures::UV),
            orange_out: ledger.number(figures::ORANGE_OUT) > 0.0,
        }
    }

    /// The worst light at which children go out.
    pub fn worst_out(&self) -> Light {
        match self.orange_out {
            true => Light::Orange,
            false => Light::Yellow,
        }
    }
}

/// A light for each measure; `None` where it is not known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lights {
    lights: [Option<Light>; 4],
}

impl Lights {
    /// Of one hour.
    pub fn of(hour: &Hour, bands: &Bands, air: &Air) -> Lights {
        let warm = hour.temperature.map(fahrenheit);
        let up = |value: f64, bands: &[f64; 3]| light(bands.map(|band| value >= band));
        let heat = warm.and_then(|warm| {
            let at = |damp| up(air.heat_index(warm, damp), &bands.heat);
            match air.humidity_of(hour) {
                Some(damp) => Some(at(damp)),
                // Cool air is no heat however damp it is.
                None => (at(0.0) == at(100.0)).then(|| at(0.0)),
            }
        });
        let chill = warm.and_then(|warm| {
            let at = |wind| air.wind_chill(warm, wind);
            // Where no wind makes a chill, it need not be known.
            let felt = match hour.wind {
                Some(wind) => at(mph(wind)),
                None if !air.chills(warm) => warm,
                None => return None,
            };
            Some(light(bands.chill.map(|band| felt < band)))
        });
        let index = hour.aqi.or(hour.pm25.map(|dust| air.quality_index(dust)));
        Lights {
            lights: [
                heat,
                chill,
                index.map(|index| light(bands.air.map(|band| index > band))),
                hour.uv.map(|uv| up(uv.round(), &bands.uv)),
            ],
        }
    }

    /// Of one measure.
    pub fn by(&self, measure: Measure) -> Option<Light> {
        self.lights[measure as usize]
    }

    /// The worst. `None` where one that was asked for is not known, unless what is known
    /// keeps the children in anyway.
    pub fn overall(&self, asked: &[Measure]) -> Option<Light> {
        let worst = self.lights.iter().copied().flatten().max();
        let unknown = asked.iter().any(|measure| self.by(*measure).is_none());
        worst.filter(|worst| !unknown || *worst >= Light::Orange)
    }
}

/// The light whose bands are reached: yellow's, orange's, red's.
fn light(reached: [bool; 3]) -> Light {
    match reached {
        [_, _, true] => Light::Red,
        [_, true, _] => Light::Orange,
        [true, ..] => Light::Yellow,
        _ => Light::Green,
    }
}

/// What to do, in plain sentences: the light's own, one for each measure at that light, then
/// those that always hold (thunder, the hand on the paint, whose rule wins).
pub fn advice(lights: &Lights, asked: &[Measure], bands: &Bands, ledger: &Ledger) -> Vec<Message> {
    let count = |key| ledger.number(key).round().max(0.0) as u64;
    let overall = lights.overall(asked);
    let mut say = Vec::new();
    match overall {
        None => say.push(msg!("days-do-unknown")),
        Some(Light::Green) => say.push(msg!("days-do-green")),
        Some(Light::Yellow) => say.push(msg!("days-do-yellow", minutes = count(figures::VIGOROUS))),
        Some(Light::Orange) if bands.orange_out => say.push(msg!(
            "days-do-orange-out",
            minutes = count(figures::VIGOROUS)
        )),
        Some(Light::Orange) => say.push(msg!("days-do-orange")),
        Some(Light::Red) => say.push(msg!("days-do-red")),
    }
    let drink: [f64; 2] = array(ledger, figures::DRINK);
    for measure in Measure::ALL {
        if overall.is_none() || overall <= Some(Light::Green) || lights.by(measure) != overall {
            continue;
        }
        say.push(match measure {
            Measure::Heat => msg!(
                "days-do-heat",
                soonest = drink[0].round() as u64,
                latest = drink[1].round() as u64
            ),
            Measure::Chill => msg!("days-do-chill"),
            Measure::Air => msg!("days-do-air"),
            Measure::Uv => msg!("days-do-uv"),
        });
    }
    say.push(msg!("days-do-thunder", minutes = count(figures::THUNDER)));
    say.push(msg!("days-do-hand", seconds = count(figures::HAND)));
    say.push(msg!("days-do-local"));
    say
}

/// Until when to stay in after the last thunder heard or lightning seen.
pub fn thunder_over(last: DateTime, ledger: &Ledger) -> Option<DateTime> {
    let minutes = ledger.number(figures::THUNDER).ceil() as i64;
    last.checked_add(minutes.minutes()).ok()
}

/// What hot ground does to skin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ground {
    /// Nothing known of harm; the hand still decides.
    Bearable,
    /// It hurts: nobody plays on it.
    Hurts,
    /// It burns.
    Burns,
}

/// What ground of so many °C does to skin. A reading by an infrared thermometer, or none:
/// the air's temperature says nothing of ground in the sun.
pub fn hot_ground(celsius: f64, ledger: &Ledger) -> Ground {
    if celsius >= ledger.number(figures::SKIN_BURN) {
        Ground::Burns
    } else if celsius >= ledger.number(figures::SKIN_PAIN) {
        Ground::Hurts
    } else {
        Ground::Bearable
    }
}
