//! `lost.csv`: sessions that fell out, and markings that cannot be used.

use note::{Note, msg};

use crate::read::cells;
use crate::read::files::Source;
use note::nearest;

/// One row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lost {
    /// The week, from 1.
    pub week: u32,
    /// The session of the week, from 1.
    pub session: u32,
    /// The marking that cannot be used from then on; without one the session fell out.
    pub marking: Option<String>,
}

/// Reads the rows; those that cannot be read are told and left out.
pub fn lost(source: &Source, markings: Option<&[String]>, notes: &mut Vec<Note>) -> Vec<Lost> {
    let Some(cells) = cells::read(source, &["week", "session"], &["marking", "note"], notes) else {
        return Vec::new();
    };
    cells
        .rows
        .iter()
        .filter_map(|row| {
            let mut count = |column: &'static str, most: u32| {
                let cell = row.need(column, notes)?;
                match cell.value.parse::<u32>() {
                    Ok(number) if (1..=most).contains(&number) => Some(number),
                    _ => {
                        let what = msg!("trial-count", column = column, found = &cell.value);
                        notes.push(Note::error(cell.at.clone(), what).expected(msg!(
                            "trial-want-count",
                            low = note::Fact::Number(1.0, 0),
                            high = note::Fact::Number(f64::from(most), 0)
                        )));
                        None
                    }
                }
            };
            let (week, session) = (count("week", WEEKS), count("session", SESSIONS));
            let marking = row.get("marking");
            if let (Some(marking), Some(known)) = (marking, markings)
                && !known.contains(&marking.value)
            {
                let what = msg!("trial-marking", marking = &marking.value);
                let note = Note::error(marking.at.clone(), what);
                notes.push(
                    match nearest(&marking.value, known.iter().map(String::as_str)) {
                        Some(near) => note.mend(msg!("did-you-mean", near = near)),
                        None => note,
                    },
                );
                return None;
            }
            Some(Lost {
                week: week?,
                session: session?,
                marking: marking.map(|marking| marking.value.clone()),
            })
        })
        .collect()
}

/// No programme is longer, weeks.
const WEEKS: u32 = 104;
/// Nor has more sessions a week.
const SESSIONS: u32 = 14;
