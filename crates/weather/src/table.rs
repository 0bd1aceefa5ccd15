//! Our own table: a header row, then an hour a row; the order of columns is free.
//!
//! `time` is the hour's end on the yard's clock, as `2026-09-01 09:00`; rain is that of the
//! hour before it. A typical year has `month`, `day` and `hour` (1 to 24) in its place. Of
//! the rest only a temperature is needed. Comma, semicolon or tab; `#` opens a comment.

use jiff::ToSpan;
use jiff::civil::{Date, DateTime};
use note::{Note, Place, msg};

use crate::cells::{Cell, lines, split};
use crate::faults::Faults;
use crate::hour::{Hour, Site, Span, Stamp};
use crate::quantity::{Column, Quantity};
use crate::read::Sheet;

/// The international foot, inch and mile, and Fahrenheit's degree: exact by definition.
const COLUMNS: [Column; 16] = [
    Column::plain("temperature_c", Quantity::Temperature, None),
    Column::scaled(
        "temperature_f",
        Quantity::Temperature,
        5.0 / 9.0,
        -160.0 / 9.0,
    ),
    Column::plain("dew_point_c", Quantity::DewPoint, None),
    Column::scaled("dew_point_f", Quantity::DewPoint, 5.0 / 9.0, -160.0 / 9.0),
    Column::plain("humidity_percent", Quantity::Humidity, None),
    Column::plain("wind_m_s", Quantity::Wind, None),
    Column::scaled("wind_km_h", Quantity::Wind, 1.0 / 3.6, 0.0),
    Column::scaled("wind_mph", Quantity::Wind, 0.447_04, 0.0),
    Column::plain("rain_mm", Quantity::Rain, None),
    Column::scaled("rain_in", Quantity::Rain, 25.4, 0.0),
    Column::plain("surface_c", Quantity::Surface, None),
    Column::scaled("surface_f", Quantity::Surface, 5.0 / 9.0, -160.0 / 9.0),
    Column::plain("sun_w_m2", Quantity::Sun, None),
    Column::plain("uv_index", Quantity::Uv, None),
    Column::plain("pm25_ug_m3", Quantity::Pm25, None),
    Column::plain("aqi", Quantity::Aqi, None),
];

/// A header that serves most.
const HEADER: &str = "time,temperature_c,dew_point_c,wind_m_s,rain_mm";

/// What only a person reads.
const NOTE: &str = "note";
const TIME: [&str; 1] = ["time"];
const DAY: [&str; 3] = ["month", "day", "hour"];

/// What a header cell stands for.
#[derive(Clone, Copy, PartialEq)]
enum Meaning {
    When(&'static str),
    Value(&'static Column),
    Nothing,
}

/// Every column that the table may have, for the format reference.
pub fn columns() -> Vec<&'static str> {
    let values = COLUMNS.iter().map(|column| column.name);
    TIME.into_iter()
        .chain(DAY)
        .chain(values)
        .chain([NOTE])
        .collect()
}

/// `None` where the header leaves no way to read a row.
pub(crate) fn read(text: &str, faults: &mut Faults) -> Option<Sheet> {
    let mut lines = lines(text, true);
    let Some((start, line)) = lines.next() else {
        let note = Note::error(
            faults.whole(),
            msg!("table-empty", file = faults.name().to_owned()),
        )
        .expected(msg!("table-header", header = HEADER));
        faults.tell(note);
        return None;
    };
    let mark = [';', '\t']
        .into_iter()
        .find(|mark| line.contains(*mark) && !line.contains(','))
        .unwrap_or(',');
    let header = split(line, start, mark);
    let meanings = header_of(&header, faults.line(start, line), faults)?;
    let span = match meanings.contains(&Meaning::When(TIME[0])) {
        true => Span::Dated,
        false => Span::TypicalYear,
    };
    let rows = lines
        .map(|(start, line)| {
            let whole = faults.line(start, line);
            let hour = row(&meanings, &split(line, start, mark), &whole, faults);
            (whole, hour)
        })
        .collect();
    Some(Sheet {
        place: Site::default(),
        span,
        rows,
    })
}

fn header_of(header: &[Cell], whole: Place, faults: &mut Faults) -> Option<Vec<Meaning>> {
    let mut meanings: Vec<Meaning> = Vec::new();
    let mut sound = true;
    for cell in header {
        let name = cell.text.to_lowercase();
        let meaning = meaning(&name);
        if meaning.is_none() {
            let note = Note::error(
                faults.at(cell),
                msg!("column-unknown", column = cell.text.to_owned()),
            );
            faults.tell(match nearest(&name) {
                Some(near) => note.mend(msg!("did-you-mean", near = near)),
                None => note.expected(msg!(
                    "one-of",
                    names = columns().into_iter().map(str::to_owned).collect::<Vec<_>>()
                )),
            });
            sound = false;
        }
        let meaning = meaning.unwrap_or(Meaning::Nothing);
        if meaning != Meaning::Nothing && meanings.iter().any(|other| same(*other, meaning)) {
            let note = Note::error(
                faults.at(cell),
                msg!("column-twice", column = cell.text.to_owned()),
            );
            faults.tell(note);
            sound = false;
        }
        meanings.push(meaning);
    }
    // Where a column has a slip in its name, that is told, and not that it is lacking.
    (sound && complete(&meanings, &whole, faults)).then_some(meanings)
}

/// Whether the header tells the time in one way and the temperature; what it lacks is told.
fn complete(meanings: &[Meaning], whole: &Place, faults: &mut Faults) -> bool {
    let has = |name: &&'static str| meanings.contains(&Meaning::When(name));
    let (dated, typical) = (TIME.iter().any(has), DAY.iter().any(has));
    if dated && typical {
        faults.tell(
            Note::error(whole.clone(), msg!("weather-two-clocks"))
                .mend(msg!("weather-two-clocks-mend")),
        );
    }
    let asked: &[&'static str] = match typical && !dated {
        true => &DAY,
        false => &TIME,
    };
    let mut lacking = asked.to_vec();
    lacking.retain(|name| !has(name));
    let warm = Quantity::Temperature;
    if !meanings
        .iter()
        .any(|meaning| matches!(meaning, Meaning::Value(column) if column.quantity == warm))
    {
        lacking.push(warm.column());
    }
    for name in &lacking {
        faults.tell(
            Note::error(whole.clone(), msg!("column-missing", column = *name))
                .expected(msg!("table-header", header = HEADER)),
        );
    }
    lacking.is_empty() && !(dated && typical)
}

/// One quantity in two units is twice the same.
fn same(a: Meaning, b: Meaning) -> bool {
    match (a, b) {
        (Meaning::Value(a), Meaning::Value(b)) => a.quantity == b.quantity,
        _ => a == b,
    }
}

fn meaning(name: &str) -> Option<Meaning> {
    if name.is_empty() || name == NOTE {
        return Some(Meaning::Nothing);
    }
    if let Some(when) = TIME.into_iter().chain(DAY).find(|when| *when == name) {
        return Some(Meaning::When(when));
    }
    COLUMNS
        .iter()
        .find(|column| column.name == name)
        .map(Meaning::Value)
}

/// The known column nearest to a name, if near enough to be meant: a third of it may differ.
fn nearest(name: &str) -> Option<&'static str> {
    columns()
        .into_iter()
        .map(|known| (strsim::damerau_levenshtein(name, known), known))
        .filter(|(steps, known)| steps * 3 <= known.len())
        .min()
        .map(|(_, known)| known)
}

fn row(meanings: &[Meaning], cells: &[Cell], whole: &Place, faults: &mut Faults) -> Option<Hour> {
    let mut spare = cells.iter().skip(meanings.len());
    if let Some(spare) = spare.find(|cell| !cell.text.is_empty()) {
        let note = Note::error(
            faults.at(spare),
            msg!(
                "row-too-long",
                cells = cells.len(),
                columns = meanings.len()
            ),
        );
        faults.tell_like("", note);
        return None;
    }
    let cell = |name: &'static str| {
        let at = meanings.iter().position(|m| *m == Meaning::When(name))?;
        cells.get(at)
    };
    let stamp = match cell(TIME[0]) {
        Some(time) => clock(time, faults)?,
        None => {
            let number = |name| cell(name)?.text.parse::<u8>().ok();
            let day = |name| i8::try_from(number(name)?).ok();
            // A leap year, so that 29 February may stand.
            let date = || Date::new(2000, day("month")?, day("day")?).ok();
            match (date(), number("hour")) {
                (Some(date), Some(hour @ 1..=24)) => Stamp { date, hour },
                _ => {
                    let found = DAY.map(|name| cell(name).map_or("", |cell| cell.text));
                    faults.tell_like(
                        "",
                        Note::error(whole.clone(), msg!("weather-date", found = found.join(" ")))
                            .expected(msg!("weather-want-month-day-hour")),
                    );
                    return None;
                }
            }
        }
    };
    let mut hour = Hour::unknown(stamp);
    for (meaning, cell) in meanings.iter().zip(cells) {
        if let Meaning::Value(column) = meaning {
            faults.fill(&mut hour, column, cell);
        }
    }
    Some(hour)
}

/// A time of the yard's clock, on the hour.
fn clock(cell: &Cell, faults: &mut Faults) -> Option<Stamp> {
    let text = cell.text.replacen(' ', "T", 1);
    // The parser would drop an offset, and move the hours without a word.
    let plain = text
        .bytes()
        .all(|b| b.is_ascii_digit() || matches!(b, b'-' | b':' | b'T'))
        && text.bytes().filter(|b| *b == b'-').count() == 2;
    let read = plain
        .then(|| text.parse::<DateTime>().ok())
        .flatten()
        .filter(|_| text.contains('T'));
    let Some(time) = read else {
        let note = Note::error(
            faults.at(cell),
            msg!("weather-date", found = cell.text.to_owned()),
        )
        .expected(msg!("weather-want-time"));
        faults.tell_like("", note);
        return None;
    };
    if (time.minute(), time.second()) != (0, 0) {
        let note = Note::error(
            faults.at(cell),
            msg!("weather-not-hourly", found = cell.text.to_owned()),
        )
        .expected(msg!("weather-want-time"));
        faults.tell_like("", note);
        return None;
    }
    let hour = time.hour().unsigned_abs();
    if hour > 0 {
        return Some(Stamp {
            date: time.date(),
            hour,
        });
    }
    let date = time.date().checked_sub(1.day()).ok()?;
    Some(Stamp { date, hour: 24 })
}
