//! Writes the course for staff, to be looked at and tested.
//!
//! `cargo run --release -p screen --example course -- [en|es] > out.html`
//!
//! Yard, markings and texts are invented; in a plan they come from the project and the
//! pages of cues.

use std::io::Write;

use children::Skill;
use course::{Painted, Stand, Unled};
use ledger::Ledger;
use screen::{Course, SkillText, Tongue, course_page};
use unit::Units;
use words::{Catalogue, Language};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let language = match std::env::args().nth(1).as_deref() {
        None | Some("en") => Language::En,
        Some("es") => Language::Es,
        Some(other) => return Err(format!("{other} is neither en nor es").into()),
    };
    let ledger = Ledger::shipped()?;
    let tongue = Tongue {
        catalogue: Catalogue::of(language),
        units: Units::Metres,
    };
    let texts: Vec<SkillText> = Skill::ALL
        .into_iter()
        .filter(|skill| *skill != Skill::Walk)
        .map(|skill| text(skill, language))
        .collect();
    let yard = [
        ("court", Skill::Jump, 0.7),
        ("spots", Skill::Hop, 0.4),
        ("brook", Skill::Leap, 0.5),
        ("trail", Skill::Gallop, 0.8),
        ("wave", Skill::Skip, 0.3),
    ];
    let markings: Vec<Painted> = yard
        .iter()
        .map(|(name, skill, well_pitched)| Painted {
            name: (*name).to_owned(),
            skill: *skill,
            well_pitched: *well_pitched,
        })
        .collect();
    let unled: Vec<Unled> = yard
        .iter()
        .map(|(name, skill, _)| Unled {
            name: (*name).to_owned(),
            fast: matches!(skill, Skill::Leap | Skill::Gallop),
            run_out: true,
            meets: *skill == Skill::Gallop,
            hard: *skill == Skill::Leap,
        })
        .collect();
    let stand = |name: &str, sees: [bool; 5]| Stand {
        name: name.to_owned(),
        sees: sees.map(|sees| vec![true, true, sees]).to_vec(),
    };
    let page = course_page(
        &Course {
            yard: "Tern Street",
            seed: 1,
            texts: &texts,
            markings: &markings,
            unled: &unled,
            stands: &[
                stand("B", [true, false, true, true, false]),
                stand("D", [true, true, true, true, false]),
            ],
            start: Some(jiff::civil::Date::constant(2026, 9, 7)),
        },
        &tongue,
        &ledger,
    );
    std::io::stdout().write_all(page.as_bytes())?;
    Ok(())
}

/// Short texts of the example's own.
fn text(skill: Skill, language: Language) -> SkillText {
    let pick = |en: &str, es: &str| match language {
        Language::En => en.to_owned(),
        Language::Es => es.to_owned(),
    };
    SkillText {
        skill,
        what: pick("An example text of what it is.", "Un texto de ejemplo."),
        early: vec![pick("Uneven, with stops.", "Desigual, con paradas.")],
        later: vec![pick("Even and soft.", "Parejo y suave.")],
        cue: pick("Soft and quiet.", "Suave y sin ruido."),
        cues: motion::early(skill)
            .map(|row| (row.name.to_owned(), pick("Once more", "Una vez más")))
            .collect(),
        easier: pick("On the spot.", "En el lugar."),
        harder: pick("Three in a row.", "Tres seguidos."),
        figures: match skill {
            Skill::Jump => vec!["court".to_owned()],
            _ => Vec::new(),
        },
    }
}
