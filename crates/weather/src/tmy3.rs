//! TMY3: a line on the site, a header, then 8760 hours.
//!
//! Source: the TMY3 user's manual as `building.md` of the project's reference read it in open
//! files: times 01:00 to 24:00 at the hour's end, -9900 for "missing".

use jiff::civil::Date;
use note::{Note, msg};

use crate::cells::{Cell, lines, split};
use crate::faults::Faults;
use crate::hour::{Hour, Site, Span, Stamp};
use crate::quantity::{Column, Quantity};
use crate::read::Sheet;

pub(crate) const DATE: &str = "Date (MM/DD/YYYY)";
const TIME: &str = "Time (HH:MM)";
const MISSING: Option<f64> = Some(-9900.0);

const COLUMNS: [Column; 6] = [
    Column::plain("Dry-bulb (C)", Quantity::Temperature, MISSING),
    Column::plain("Dew-point (C)", Quantity::DewPoint, MISSING),
    Column::plain("RHum (%)", Quantity::Humidity, MISSING),
    Column::plain("Wspd (m/s)", Quantity::Wind, MISSING),
    Column::plain("GHI (W/m^2)", Quantity::Sun, MISSING),
    Column::plain("Lprecip depth (mm)", Quantity::Rain, MISSING),
];

/// `None` where the header leaves no way to read a row.
pub(crate) fn read(text: &str, faults: &mut Faults) -> Option<Sheet> {
    let mut lines = lines(text, false);
    let (start, line) = lines.next()?;
    let place = site(&split(line, start, ','));
    let (start, line) = lines.next()?;
    let header = split(line, start, ',');
    let find = |name: &str| header.iter().position(|cell| cell.text == name);
    let at: Vec<Option<usize>> = COLUMNS.iter().map(|column| find(column.name)).collect();
    let mut lacking: Vec<&str> = Vec::new();
    for (column, at) in COLUMNS.iter().zip(&at) {
        // Rain was not kept everywhere; without it the file still says much.
        if at.is_none() && column.quantity != Quantity::Rain {
            lacking.push(column.name);
        }
    }
    if find(TIME).is_none() {
        lacking.push(TIME);
    }
    for name in &lacking {
        let note = Note::error(
            faults.line(start, line),
            msg!("column-missing", column = *name),
        )
        .mend(msg!("weather-header-mend"));
        faults.tell(note);
    }
    let (date, time) = (find(DATE)?, find(TIME)?);
    if !lacking.is_empty() {
        return None;
    }
    let row = |start: usize, line: &str, faults: &mut Faults| {
        let cells = split(line, start, ',');
        if cells.len() < header.len() {
            let note = Note::error(
                faults.line(start, line),
                msg!(
                    "weather-row-short",
                    found = cells.len(),
                    wanted = header.len()
                ),
            )
            .mend(msg!("weather-row-mend"));
            faults.tell_like("", note);
            return None;
        }
        let stamp = stamp(&cells[date], &cells[time], faults)?;
        let mut hour = Hour::unknown(stamp);
        for (column, at) in COLUMNS.iter().zip(&at) {
            if let Some(at) = at {
                faults.fill(&mut hour, column, &cells[*at]);
            }
        }
        Some(hour)
    };
    let rows = lines
        .map(|(start, line)| {
            let hour = row(start, line, faults);
            (faults.line(start, line), hour)
        })
        .collect();
    Some(Sheet {
        place,
        span: Span::TypicalYear,
        rows,
    })
}

/// `number,"name",state,zone,latitude,longitude,elevation`
fn site(cells: &[Cell]) -> Site {
    let number = |at: usize| cells.get(at).and_then(|cell| cell.text.parse().ok());
    Site {
        name: cells.get(1).map_or("", |cell| cell.text).to_owned(),
        zone: number(3),
        latitude: number(4),
        longitude: number(5),
        elevation: number(6),
    }
}

fn stamp(date: &Cell, time: &Cell, faults: &mut Faults) -> Option<Stamp> {
    let day = || {
        let mut parts = date.text.split('/');
        let (month, day, year) = (parts.next()?, parts.next()?, parts.next()?);
        let (year, month, day) = (year.parse().ok()?, month.parse().ok()?, day.parse().ok()?);
        Date::new(year, month, day).ok()
    };
    let hour = || {
        let (hour, minute) = time.text.split_once(':')?;
        let hour: u8 = hour.parse().ok()?;
        (minute == "00" && (1..=24).contains(&hour)).then_some(hour)
    };
    let (read, at) = match (day(), hour()) {
        (Some(date), Some(hour)) => return Some(Stamp { date, hour }),
        (None, _) => (date, faults.at(date)),
        (_, None) => (time, faults.at(time)),
    };
    let note = Note::error(at, msg!("weather-date", found = read.text.to_owned()))
        .expected(msg!("weather-want-tmy-date"));
    faults.tell_like("", note);
    None
}
