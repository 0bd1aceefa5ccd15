//! Go, shade, or stay in: the lights of the day, and what to do instead.

use days::{Bands, figures};
use note::{Fact, msg};
use unit::Units;

use super::Teaching;
use crate::measure;
use crate::planned::Planned;
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

/// Writes the page.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, teaching: &Teaching) {
    let ledger = planned.ledger;
    let bands = Bands::of(ledger);
    let count = |key| ledger.number(key).round().max(0.0) as u64;
    paper.page_break();
    paper.heading(2, &sheet.word("fit-title"));
    paper.paragraph(&sheet.word("fit-how"));
    for (place, fit) in teaching.fits {
        paper.paragraph(&sheet.say(msg!(
            "fit-year",
            place = place.as_str(),
            planned = Fact::Number(fit.planned, 0),
            expected = Fact::Number(fit.expected, 0),
            spare = u64::from(fit.spare.unwrap_or_default()),
            known = if fit.spare.is_some() { "yes" } else { "no" }
        )));
    }
    let degrees = |fahrenheit: f64| match sheet.units {
        Units::Metres => measure::plain((fahrenheit - 32.0) / 1.8, 0, sheet),
        Units::Feet => measure::plain(fahrenheit, 0, sheet),
    };
    let whole = |value: f64| measure::plain(value, 0, sheet);
    // up: from each edge on; down: below each edge
    let cell = |edges: [f64; 3], up: bool, light: usize, show: &dyn Fn(f64) -> String| {
        let under = |value: f64| sheet.say(msg!("fit-under", value = show(value)));
        let from = |value: f64| sheet.say(msg!("fit-from", low = show(value)));
        let between = |low: f64, high: f64| {
            sheet.say(msg!("fit-between", low = show(low), high = show(high)))
        };
        match (up, light) {
            (true, 0) => under(edges[0]),
            (true, 3) => from(edges[2]),
            (true, light) => between(edges[light - 1], edges[light]),
            (false, 0) => from(edges[0]),
            (false, 3) => under(edges[2]),
            (false, light) => between(edges[light], edges[light - 1]),
        }
    };
    let minutes = count(figures::VIGOROUS);
    let rows: Vec<Vec<String>> = days::Light::ALL
        .into_iter()
        .enumerate()
        .map(|(at, light)| {
            let what = match light {
                days::Light::Green => sheet.word("days-do-green"),
                days::Light::Yellow => sheet.say(msg!("days-do-yellow", minutes = minutes)),
                days::Light::Orange if bands.orange_out => {
                    sheet.say(msg!("days-do-orange-out", minutes = minutes))
                }
                days::Light::Orange => sheet.word("days-do-orange"),
                days::Light::Red => sheet.word("days-do-red"),
            };
            vec![
                sheet.word(light.word()),
                cell(bands.heat, true, at, &degrees),
                cell(bands.chill, false, at, &degrees),
                cell(bands.air, true, at, &whole),
                cell(bands.uv, true, at, &whole),
                what,
            ]
        })
        .collect();
    let unit = match sheet.units {
        Units::Metres => "C",
        Units::Feet => "F",
    };
    paper.sentences(
        &[
            Column::words(sheet.word("fit-column-light")),
            Column::words(sheet.say(msg!("fit-column-heat", unit = unit))),
            Column::words(sheet.say(msg!("fit-column-chill", unit = unit))),
            Column::words(sheet.word("fit-column-air")),
            Column::words(sheet.word("fit-column-uv")),
            Column::prose(sheet.word("fit-column-do"), 1),
        ],
        &rows,
    );
    let drink = ledger.list(figures::DRINK);
    let sip = |at: usize| drink.get(at).copied().unwrap_or_default().round() as u64;
    paper.list(
        &[
            sheet.say(msg!("days-do-heat", soonest = sip(0), latest = sip(1))),
            sheet.word("days-do-chill"),
            sheet.word("days-do-air"),
            sheet.word("days-do-uv"),
            sheet.say(msg!("days-do-thunder", minutes = count(figures::THUNDER))),
            sheet.say(msg!("days-do-hand", seconds = count(figures::HAND))),
            sheet.word("days-do-local"),
        ],
        false,
    );
    paper.heading(2, &sheet.word("fit-instead"));
    let keys = ["fit-instead-tape", "fit-instead-small", "fit-instead-link"];
    paper.list(&keys.map(|key| sheet.word(key)), false);
}
