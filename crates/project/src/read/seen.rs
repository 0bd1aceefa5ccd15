//! `seen.csv`: criteria of a skill that were looked at and met, and counts of contacts before
//! the pattern broke.

use children::Skill;
use learning::{Check, Run};
use note::{Fact, Note, msg};

use crate::read::cells::{self, Row};
use crate::read::class::known;
use crate::read::files::Source;
use crate::read::table::At;
use note::nearest;

/// One row.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// The child's code.
    pub child: String,
    /// What was seen of it.
    pub what: Sight,
}

/// What a row says.
#[derive(Clone, Debug, PartialEq)]
pub enum Sight {
    /// Criteria looked at and met.
    Looks(Check),
    /// Contacts counted in a row.
    Count(Run),
}

/// Reads the rows; those that cannot be read are told and left out.
pub fn seen(source: &Source, codes: Option<&[String]>, notes: &mut Vec<Note>) -> Vec<Seen> {
    let may = ["looks", "met", "contacts", "broke", "note"];
    let Some(cells) = cells::read(source, &["child", "skill"], &may, notes) else {
        return Vec::new();
    };
    let rows = cells.rows.iter();
    rows.filter_map(|row| sight(row, codes, notes)).collect()
}

fn sight(row: &Row, codes: Option<&[String]>, notes: &mut Vec<Note>) -> Option<Seen> {
    let before = notes.len();
    let child = row.need("child", notes);
    if let Some(child) = child {
        known(child, codes, notes);
    }
    let skill = row.need("skill", notes).and_then(|cell| skill(cell, notes));
    let what = match (row.get("looks"), row.get("contacts")) {
        (Some(looks), None) => {
            let n = count(looks, "looks", 1, MOST, notes);
            let met = row
                .need("met", notes)
                .and_then(|cell| count(cell, "met", 0, n.unwrap_or(MOST), notes));
            n.zip(met)
                .zip(skill)
                .map(|((n, met), skill)| Sight::Looks(Check { skill, n, met }))
        }
        (None, Some(contacts)) => {
            let contacts = count(contacts, "contacts", 0, MOST, notes);
            let broke = row.need("broke", notes).and_then(|cell| truth(cell, notes));
            contacts
                .zip(broke)
                .zip(skill)
                .map(|((contacts, broke), skill)| {
                    Sight::Count(Run {
                        skill,
                        contacts,
                        broke,
                    })
                })
        }
        _ => {
            notes.push(
                Note::error(row.at.clone(), msg!("seen-one")).expected(msg!("seen-want-one")),
            );
            None
        }
    };
    if notes.len() > before {
        return None;
    }
    Some(Seen {
        child: child?.value.clone(),
        what: what?,
    })
}

fn skill(cell: &At<String>, notes: &mut Vec<Note>) -> Option<Skill> {
    let found = Skill::ALL
        .into_iter()
        .find(|skill| skill.word() == cell.value);
    if found.is_none() {
        let note = Note::error(cell.at.clone(), msg!("seen-skill", found = &cell.value));
        notes.push(
            match nearest(&cell.value, Skill::ALL.iter().map(|skill| skill.word())) {
                Some(near) => note.mend(msg!("did-you-mean", near = near)),
                None => note.expected(msg!(
                    "one-of",
                    names = Skill::ALL.map(|skill| skill.word().to_owned()).to_vec()
                )),
            },
        );
    }
    found
}

/// Looks and contacts of one row; more is a slip.
const MOST: u32 = 1000;

fn count(
    cell: &At<String>,
    column: &'static str,
    low: u32,
    high: u32,
    notes: &mut Vec<Note>,
) -> Option<u32> {
    match cell.value.parse::<u32>() {
        Ok(count) if (low..=high).contains(&count) => Some(count),
        _ => {
            let what = msg!("trial-count", column = column, found = &cell.value);
            notes.push(Note::error(cell.at.clone(), what).expected(msg!(
                "trial-want-count",
                low = Fact::Number(f64::from(low), 0),
                high = Fact::Number(f64::from(high), 0)
            )));
            None
        }
    }
}

/// `yes` or `no`.
fn truth(cell: &At<String>, notes: &mut Vec<Note>) -> Option<bool> {
    match cell.value.to_lowercase().as_str() {
        "yes" => Some(true),
        "no" => Some(false),
        _ => {
            let what = msg!("seen-yes-no", found = &cell.value);
            notes.push(Note::error(cell.at.clone(), what).expected(msg!(
                "one-of",
                names = vec!["yes".to_owned(), "no".to_owned()]
            )));
            None
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> (Vec<Seen>, Vec<&'static str>) {
        let source = Source::new("seen.csv", text);
        let codes = ["wren".to_owned(), "rail".to_owned()];
        let mut notes = Vec::new();
        let seen = seen(&source, Some(&codes), &mut notes);
        (seen, notes.iter().map(|note| note.what.key).collect())
    }

    #[test]
    fn criteria_and_counts_are_told_apart() {
        let (seen, notes) =
            read("child,skill,looks,met,contacts,broke\nwren,skip,4,1,,\nrail,hop,,,6,Yes\n");
        assert_eq!(notes, Vec::<&str>::new());
        let check = Check {
            skill: Skill::Skip,
            n: 4,
            met: 1,
        };
        let run = Run {
            skill: Skill::Hop,
            contacts: 6,
            broke: true,
        };
        let what: Vec<Sight> = seen.into_iter().map(|seen| seen.what).collect();
        assert_eq!(what, [Sight::Looks(check), Sight::Count(run)]);
    }

    #[test]
    fn every_slip_is_told_and_its_row_left_out() {
        let (seen, notes) = read(
            "child,skill,looks,met,contacts,broke\nwern,skip,4,1,,\nwren,skpi,4,1,,\n\
             wren,skip,4,5,,\nwren,skip,4,1,3,yes\nwren,skip,,,3,perhaps\nwren,skip,,,,\n",
        );
        assert_eq!(seen, Vec::new());
        assert_eq!(
            notes,
            [
                "child-nobody",
                "seen-skill",
                "trial-count",
                "seen-one",
                "seen-yes-no",
                "seen-one"
            ]
        );
    }
}
