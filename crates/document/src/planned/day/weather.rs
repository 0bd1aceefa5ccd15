//! When to paint: months of a typical year, windows of a forecast.

use days::{Verdict, Window};
use note::msg;

use super::{Build, Sky};
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

/// Windows that are shown.
const SHOWN: usize = 6;

/// Writes what the weather files say; without any, how to judge the hour.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, build: &Build) {
    paper.heading(2, &sheet.word("day-when"));
    if build.skies.is_empty() {
        paper.paragraph(&sheet.word("day-when-no-file"));
    }
    for sky in build.skies {
        match sky.year {
            Some(year) => months(paper, sheet, sky, year),
            None => windows(paper, sheet, sky),
        }
    }
}

fn months(paper: &mut Manuscript, sheet: &Sheet, sky: &Sky, year: &days::Year) {
    let name = |month: u8| sheet.say(msg!("day-month", month = u64::from(month)));
    let best: Vec<String> = year.best().into_iter().take(3).map(name).collect();
    paper.lead(&sheet.say(msg!("day-when-year", place = sky.place, months = best)));
    let rows: Vec<Vec<String>> = year
        .months
        .iter()
        .map(|month| {
            vec![
                name(month.month),
                month.hours.fine.to_string(),
                month.days.to_string(),
                month.hours.unknown.to_string(),
            ]
        })
        .collect();
    paper.table(
        &[
            Column::prose(sheet.word("day-column-month"), 1),
            Column::figures(sheet.word("day-column-hours")),
            Column::figures(sheet.word("day-column-days")),
            Column::figures(sheet.word("day-column-unknown")),
        ],
        &rows,
        true,
    );
}

fn windows(paper: &mut Manuscript, sheet: &Sheet, sky: &Sky) {
    let fine = sky
        .windows
        .iter()
        .filter(|window| window.verdict == Verdict::Fine)
        .count();
    paper.lead(&sheet.say(msg!("day-when-forecast", place = sky.place, count = fine)));
    if sky.windows.is_empty() {
        return;
    }
    let row = |window: &Window| {
        let day = |time: jiff::civil::DateTime| {
            format!("{} {}:{:02}", time.date(), time.hour(), time.minute())
        };
        vec![
            day(window.start),
            day(window.end),
            day(window.children),
            sheet.word(match window.verdict {
                Verdict::Fine => "day-verdict-fine",
                Verdict::Unknown => "day-verdict-unknown",
                Verdict::Not => "day-verdict-not",
            }),
        ]
    };
    let rows: Vec<Vec<String>> = sky.windows.iter().take(SHOWN).map(row).collect();
    paper.table(
        &[
            Column::words(sheet.word("day-column-from")),
            Column::words(sheet.word("day-column-to")),
            Column::words(sheet.word("day-column-children")),
            Column::prose(sheet.word("day-column-verdict"), 1),
        ],
        &rows,
        false,
    );
}
