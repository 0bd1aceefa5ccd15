//! Which form a file has, and what is told of the whole of it.

use note::{Note, Noted, msg};

use crate::cells::{Cell, lines};
use crate::faults::Faults;
use crate::hour::{Hour, Span, Weather};
use crate::quantity::Quantity;
use crate::{epw, table, tmy3};

/// Reads a file of hourly weather: EPW, TMY3 or our own table, told apart by what stands
/// in it. `name` is what the user calls the file. `None` where no hour could be read; a
/// file with errors gives what could be read, and a note for each slip.
pub fn read(name: &str, text: &str) -> Noted<Option<Weather>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut faults = Faults::new(name);
    let second = text.lines().nth(1).unwrap_or("");
    let read = if text.starts_with("LOCATION,") {
        epw::read(text, &mut faults)
    } else if second.contains(tmy3::DATE) {
        tmy3::read(text, &mut faults)
    } else {
        table::read(text, &mut faults)
    };
    let value = read.map(|mut weather| {
        if weather.place.name.is_empty() || weather.place.name == "unknown" {
            weather.place.name = name.to_owned();
        }
        weather
    });
    if let Some(weather) = &value {
        order(weather, text, &mut faults);
        missing(weather, &mut faults);
    }
    Noted {
        value: value.filter(|weather| !weather.rows.is_empty()),
        notes: faults.finish(),
    }
}

/// Text of bytes. Files from before UTF-8 hold names of places in Latin-1: bytes that are no
/// UTF-8 are read as that, which no weather value minds. Places in notes are of this text.
pub fn decode(bytes: &[u8]) -> String {
    match std::str::from_utf8(bytes) {
        Ok(text) => text.to_owned(),
        Err(_) => bytes.iter().map(|byte| char::from(*byte)).collect(),
    }
}

const YEAR: [usize; 2] = [8760, 8784];

/// Tells hours that are lacking, double or out of order.
fn order(weather: &Weather, text: &str, faults: &mut Faults) {
    let rows = &weather.rows;
    if rows.is_empty() {
        faults.tell(
            Note::error(faults.whole(), msg!("weather-no-hours"))
                .mend(msg!("weather-no-hours-mend")),
        );
        return;
    }
    if weather.span == Span::TypicalYear && !YEAR.contains(&rows.len()) {
        faults.tell(
            Note::warning(
                faults.whole(),
                msg!("weather-not-a-year", found = rows.len()),
            )
            .expected(msg!("weather-want-year"))
            .mend(msg!("weather-header-mend")),
        );
    }
    // Rows that could not be read were told, and leave gaps that need no telling; only where
    // all could be is row `n` the `n`th line from the end.
    let comments = !text.starts_with("LOCATION,");
    let all: Vec<_> = lines(text, comments).collect();
    let Some(head) = all.len().checked_sub(rows.len()) else {
        return;
    };
    for (at, pair) in rows.windows(2).enumerate() {
        if pair[1].stamp.follows(pair[0].stamp, weather.span) {
            continue;
        }
        let whole = Cell { text: "", start: 0 };
        let place = match all.get(head + at + 1) {
            Some((start, line)) if !faults.has_errors() => faults.line(*start, line),
            _ => faults.at(&whole),
        };
        faults.tell_like(
            "time",
            Note::warning(
                place,
                msg!(
                    "weather-gap",
                    before = said(&pair[0]),
                    after = said(&pair[1])
                ),
            )
            .mend(msg!("weather-gap-mend")),
        );
    }
}

fn said(hour: &Hour) -> String {
    let Hour { stamp, .. } = hour;
    format!(
        "{:02}-{:02} {:02}:00",
        stamp.date.month(),
        stamp.date.day(),
        stamp.hour
    )
}

/// Tells what is not known, of that which most questions need.
fn missing(weather: &Weather, faults: &mut Faults) {
    let lacking = |test: &dyn Fn(&Hour) -> bool| weather.rows.iter().filter(|h| test(h)).count();
    let without = |quantity: Quantity| lacking(&|hour| quantity.of(hour).is_none());
    let damp = |hour: &Hour| {
        // Each follows from the other, with the temperature.
        hour.dew_point.is_none() && hour.humidity.is_none()
    };
    for (column, count) in [
        (
            Quantity::Temperature.column(),
            without(Quantity::Temperature),
        ),
        (Quantity::Humidity.column(), lacking(&damp)),
        (Quantity::Wind.column(), without(Quantity::Wind)),
        (Quantity::Rain.column(), without(Quantity::Rain)),
    ] {
        if count > 0 {
            faults.tell(Note::advice(
                faults.whole(),
                msg!(
                    "weather-missing",
                    column = column,
                    count = count,
                    of = weather.rows.len()
                ),
            ));
        }
    }
}
