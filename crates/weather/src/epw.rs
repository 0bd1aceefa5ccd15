//! EPW: eight header lines, then 35 fields an hour without a header.
//!
//! Source: the EnergyPlus weather file format, as `building.md` of the project's reference
//! read it in open files: fields counted from 0, hour 1 to 24 at its end, 999 and its like
//! for "missing".

use jiff::civil::Date;
use note::{Note, msg};

use crate::cells::{lines, split};
use crate::faults::Faults;
use crate::hour::{Hour, Site, Span, Stamp};
use crate::quantity::{Column, Quantity};
use crate::read::Sheet;

const LAST_OF_HEADER: &str = "DATA PERIODS";

/// Each field that is read; the last of them may be lacking in old files.
const FIELDS: [(usize, Column); 6] = [
    (
        6,
        Column::plain("dry bulb", Quantity::Temperature, Some(99.9)),
    ),
    (
        7,
        Column::plain("dew point", Quantity::DewPoint, Some(99.9)),
    ),
    (
        8,
        Column::plain("relative humidity", Quantity::Humidity, Some(999.0)),
    ),
    (
        13,
        Column::plain("global horizontal radiation", Quantity::Sun, Some(9999.0)),
    ),
    (21, Column::plain("wind speed", Quantity::Wind, Some(999.0))),
    (
        33,
        Column::plain("liquid precipitation", Quantity::Rain, Some(999.0)),
    ),
];

/// Fields that a row must have: up to the wind.
const LEAST: usize = 22;

/// `None` where the header does not end.
pub(crate) fn read(text: &str, faults: &mut Faults) -> Option<Sheet> {
    let mut lines = lines(text, false);
    let place = lines
        .next()
        .map(|(start, line)| site(&split(line, start, ',')))
        .unwrap_or_default();
    if !lines.any(|(_, line)| line.starts_with(LAST_OF_HEADER)) {
        let note = Note::error(
            faults.whole(),
            msg!("weather-epw-header", line = LAST_OF_HEADER),
        )
        .mend(msg!("weather-header-mend"));
        faults.tell(note);
        return None;
    }
    let rows = lines
        .map(|(start, line)| (faults.line(start, line), row(start, line, faults)))
        .collect();
    Some(Sheet {
        place,
        span: Span::TypicalYear,
        rows,
    })
}

/// `LOCATION,name,state,country,kind,number,latitude,longitude,zone,elevation`
fn site(cells: &[crate::cells::Cell]) -> Site {
    let number = |at: usize| cells.get(at).and_then(|cell| cell.text.parse().ok());
    Site {
        name: cells.get(1).map_or("", |cell| cell.text).to_owned(),
        latitude: number(6),
        longitude: number(7),
        zone: number(8),
        elevation: number(9),
    }
}

fn row(start: usize, line: &str, faults: &mut Faults) -> Option<Hour> {
    let cells = split(line, start, ',');
    if cells.len() < LEAST {
        let note = Note::error(
            faults.line(start, line),
            msg!("weather-row-short", found = cells.len(), wanted = LEAST),
        )
        .mend(msg!("weather-row-mend"));
        faults.tell_like("", note);
        return None;
    }
    let whole = |at: usize| cells[at].text.parse::<f64>().ok().map(|v: f64| v as i64);
    let date = || {
        let part = |at| i8::try_from(whole(at)?).ok();
        let year = i16::try_from(whole(0)?).ok()?;
        Date::new(year, part(1)?, part(2)?).ok()
    };
    let hour = whole(3).and_then(|hour| u8::try_from(hour).ok());
    let (Some(date), Some(hour @ 1..=24)) = (date(), hour) else {
        let (first, last) = (cells[0].bytes().start, cells[3].bytes().end);
        let written = &line[first - start..last - start];
        let note = Note::error(
            faults.line(first, written),
            msg!("weather-date", found = written.to_owned()),
        )
        .expected(msg!("weather-want-epw-date"));
        faults.tell_like("", note);
        return None;
    };
    let mut read = Hour::unknown(Stamp { date, hour });
    for (at, column) in &FIELDS {
        if let Some(cell) = cells.get(*at) {
            faults.fill(&mut read, column, cell);
        }
    }
    Some(read)
}
