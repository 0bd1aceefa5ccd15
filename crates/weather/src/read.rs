//! Which form a file has, and what is told of the whole of it.

use note::{Note, Noted, Place, msg};

use crate::faults::Faults;
use crate::hour::{Hour, Site, Span, Weather};
use crate::quantity::Quantity;
use crate::{epw, table, tmy3};

/// Reads a file of hourly weather: EPW, TMY3 or our own table, told apart by what stands
/// in it. `name` is what the user calls the file. `None` where no hour could be read; a
/// file with errors gives what could be read, and a note for each slip. Places are bytes of
/// the text without a byte-order mark.
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
    let value = read.and_then(|sheet| sheet.weather(&mut faults));
    Noted {
        value,
        notes: faults.finish(),
    }
}

/// What a form's reader hands on: each line with its hour, where one could be read.
pub(crate) struct Sheet {
    pub place: Site,
    pub span: Span,
    pub rows: Vec<(Place, Option<Hour>)>,
}

impl Sheet {
    fn weather(self, faults: &mut Faults) -> Option<Weather> {
        self.order(faults);
        let mut place = self.place;
        if place.name.is_empty() || place.name == "unknown" {
            place.name = faults.name().to_owned();
        }
        let rows: Vec<Hour> = self.rows.into_iter().filter_map(|(_, hour)| hour).collect();
        missing(&rows, faults);
        if self.span == Span::TypicalYear && YEAR.contains(&rows.len()) {
            never_rains(&rows, faults);
        }
        (!rows.is_empty()).then_some(Weather {
            place,
            span: self.span,
            rows,
        })
    }

    /// Tells hours that are lacking, double or out of order.
    fn order(&self, faults: &mut Faults) {
        if self.rows.is_empty() {
            faults.tell(
                Note::error(faults.whole(), msg!("weather-no-hours"))
                    .mend(msg!("weather-no-hours-mend")),
            );
            return;
        }
        let count = self.rows.len();
        if self.span == Span::TypicalYear && !YEAR.contains(&count) {
            faults.tell(
                Note::warning(faults.whole(), msg!("weather-not-a-year", found = count))
                    .expected(msg!("weather-want-year"))
                    .mend(msg!("weather-header-mend")),
            );
        }
        for pair in self.rows.windows(2) {
            // A line that could not be read was told: the gap it leaves needs no telling.
            let ((_, Some(before)), (at, Some(after))) = (&pair[0], &pair[1]) else {
                continue;
            };
            if after.stamp.follows(before.stamp, self.span) {
                continue;
            }
            let note = Note::warning(
                at.clone(),
                msg!("weather-gap", before = said(before), after = said(after)),
            )
            .mend(msg!("weather-gap-mend"));
            faults.tell_like("time", note);
        }
    }
}

/// Hours of a year without and with 29 February.
const YEAR: [usize; 2] = [8760, 8784];

/// Text of bytes. Files from before UTF-8 hold names of places in Latin-1: bytes that are no
/// UTF-8 are read as that, which no weather value minds. Places in notes are of this text.
pub fn decode(bytes: &[u8]) -> String {
    match std::str::from_utf8(bytes) {
        Ok(text) => text.to_owned(),
        Err(_) => bytes.iter().map(|byte| char::from(*byte)).collect(),
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
fn missing(rows: &[Hour], faults: &mut Faults) {
    let lacking = |test: &dyn Fn(&Hour) -> bool| rows.iter().filter(|h| test(h)).count();
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
                    of = rows.len()
                ),
            ));
        }
    }
}

/// Tells a year without a drop: makers of files write 0 where rain was not measured.
fn never_rains(rows: &[Hour], faults: &mut Faults) {
    let mut known = rows.iter().filter_map(|hour| hour.rain).peekable();
    if known.peek().is_some() && known.all(|rain| rain <= 0.0) {
        faults.tell(
            Note::warning(faults.whole(), msg!("weather-never-rains"))
                .mend(msg!("weather-never-rains-mend")),
        );
    }
}
