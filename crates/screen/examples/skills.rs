//! Writes the page of all skills, or another thing of this room, to be looked at.
//!
//! `cargo run --release -p screen --example skills -- [en|es] [skills|plan] > out.html`, or
//! `-- [en|es] [animated|strip] SKILL [feet|wheels|walker] > out.svg`
//!
//! The plan is a few markings of the families at their own lengths, and children of five, on
//! feet, on wheels and with a walker: of our own invention.

use std::io::Write;

use children::{Child, Date, Entry, Means, Side, Skill, roster};
use footfall::Gait;
use ledger::Ledger;
use marking::{Figure, Ground, Look, Palette};
use motion::{Clip, Model, Path, Way};
use screen::{Going, Shown, Tongue, animated, plan_page, skills_page, strip};
use unit::Units;
use words::{Catalogue, Language};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut words = std::env::args().skip(1);
    let language = match words.next().as_deref() {
        None | Some("en") => Language::En,
        Some("es") => Language::Es,
        Some(other) => return Err(format!("{other} is neither en nor es").into()),
    };
    let ledger = Ledger::shipped()?;
    let tongue = Tongue {
        catalogue: Catalogue::of(language),
        units: Units::Metres,
    };
    let what = words.next().unwrap_or_else(|| "skills".into());
    let skill = words.next().unwrap_or_else(|| "gallop".into());
    let model = Model::of(&ledger);
    let means = match words.next().as_deref() {
        None | Some("feet") => Means::Feet,
        Some("wheels") => Means::Wheels,
        Some("walker") => Means::Walker,
        Some(other) => return Err(format!("{other} is none of feet, wheels, walker").into()),
    };
    let child = child(means, &ledger).ok_or("no child")?;
    let clip = || -> Option<Clip> {
        let gait = Gait::named(&skill)?;
        Clip::of(&Path::free(&gait, Side::Right, &child, &model)?, &model)
    };
    let text = match what.as_str() {
        "skills" => skills_page(&tongue, &ledger),
        "plan" => {
            let figures = figures(&ledger)?;
            let shown: Vec<Shown> = figures
                .iter()
                .map(|(name, figure)| Shown {
                    name,
                    figure,
                    going: [Means::Feet, Means::Wheels, Means::Walker]
                        .into_iter()
                        .filter_map(|means| {
                            Some(going(figure, &self::child(means, &ledger)?, &model))
                        })
                        .flatten()
                        .collect(),
                })
                .collect();
            plan_page("Tern Street", &shown, &tongue, &ledger)
        }
        "animated" => animated(&clip().ok_or("no such skill")?, &skill, &tongue, &model),
        "strip" => strip(
            &clip().ok_or("no such skill")?,
            170.0,
            &skill,
            &tongue,
            &model,
        ),
        other => return Err(format!("{other} is none of skills, plan, animated, strip").into()),
    };
    std::io::stdout().write_all(text.as_bytes())?;
    Ok(())
}

/// A child of five by these means.
fn child(means: Means, ledger: &Ledger) -> Option<Child> {
    let mut entry = Entry::new("five", (2020, 1));
    entry.means = means;
    let date = Date {
        year: 2025,
        month: 1,
    };
    roster(&[entry], date, ledger).value.pop()
}

fn figures(ledger: &Ledger) -> Result<Vec<(&'static str, Figure)>, Box<dyn std::error::Error>> {
    let palette = Palette {
        ground: Ground::Asphalt,
    };
    let look = Look::of(palette, ledger);
    ["court", "brook", "spots", "pair", "wave-lane"]
        .into_iter()
        .map(|name| {
            let family = marking::family(name).ok_or("no such family")?;
            let figure = family
                .make(&family.defaults(), &look)
                .map_err(|fault| format!("{fault:?}"))?;
            Ok((name, figure))
        })
        .collect()
}

/// The longest likely route of every gait that goes there.
fn going(figure: &Figure, child: &Child, model: &Model) -> Vec<Going> {
    let mut all = Vec::new();
    for gait in footfall::GAITS {
        let sides = if footfall::sided(gait.skill) {
            vec![Side::Right, Side::Left]
        } else {
            vec![Side::Right]
        };
        for side in &sides {
            let told = footfall::tread(figure, child, &gait, Some(*side), &model.feet);
            let likely = told
                .routes
                .iter()
                .filter(|route| route.pi_0 >= 0.3 && route.n > 1);
            let Some(route) = likely.max_by_key(|route| route.n.min(12)) else {
                continue;
            };
            let way = Way {
                gait: &gait,
                cells: &route.cells,
                lane: route.lane,
                contacts: &route.contacts,
            };
            let path = Path::on(figure, &way, child, model);
            if let Some(clip) = path.and_then(|path| Clip::of(&path, model)) {
                all.push(Going {
                    who: "5".into(),
                    sided: sides.len() > 1,
                    clip,
                });
            }
        }
    }
    all.sort_by_key(|going| {
        Skill::ALL
            .iter()
            .position(|skill| *skill == going.clip.skill)
    });
    all
}
