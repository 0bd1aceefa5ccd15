//! What the buyer should hear.

use note::{Note, msg};

use crate::question::Job;
use crate::shop::Shopping;

pub(crate) fn notes(job: &Job, shopping: &Shopping) -> Vec<Note> {
    let mut notes = Vec::new();
    let bare: Vec<String> = job
        .painted
        .iter()
        .filter(|painted| !painted.says_its_surface())
        .map(|painted| painted.name.clone())
        .collect();
    if !bare.is_empty() {
        notes.push(
            Note::warning(None, msg!("paint-no-surface", markings = bare))
                .mend(msg!("paint-name-surface")),
        );
    }
    let quantity = |value: f64| value.is_finite() && value >= 0.0;
    let odd: Vec<String> = job
        .painted
        .iter()
        .filter(|painted| {
            let areas = painted.areas.iter().all(|(_, area)| quantity(*area));
            !(areas && quantity(painted.masked))
        })
        .map(|painted| painted.name.clone())
        .collect();
    if !odd.is_empty() {
        notes.push(Note::error(None, msg!("paint-no-area", markings = odd)));
    }
    if !(quantity(job.swept) && quantity(job.roped)) {
        notes.push(Note::error(None, msg!("paint-no-ground")));
    }
    if job.people == 0 {
        notes.push(Note::warning(None, msg!("paint-nobody")).mend(msg!("paint-name-people")));
    }
    let covers: Vec<_> = shopping
        .colours
        .iter()
        .map(|paint| (paint.colour.word(), paint.need, &paint.cover))
        .chain(
            shopping
                .primer
                .iter()
                .map(|primer| ("primer", primer.litres, &primer.cover)),
        )
        .collect();
    for (what, need, cover) in covers {
        match cover {
            None => notes.push(
                Note::error(
                    None,
                    msg!(
                        "paint-no-can",
                        what = what,
                        litres = note::Fact::Number(need, 2)
                    ),
                )
                .mend(msg!("paint-name-can")),
            ),
            Some(cover) if !cover.proven => {
                notes.push(Note::advice(None, msg!("paint-not-proven", what = what)));
            }
            Some(_) => {}
        }
    }
    let unknown = shopping.total.unknown;
    if unknown > 0 {
        notes.push(
            Note::advice(None, msg!("paint-price-unknown", count = unknown))
                .mend(msg!("paint-name-price")),
        );
    }
    notes
}
