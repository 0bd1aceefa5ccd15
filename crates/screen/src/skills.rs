//! The page of all skills: six that are taught, run and walk, at three to six years, on feet,
//! on wheels and with a walker.

use children::{Child, Date, Entry, Means, Side, Skill, counts, roster};
use footfall::Gait;
use ledger::Ledger;
use motion::{Clip, EARLY, Model, Path, adapted, forms};
use note::msg;

use crate::Tongue;
use crate::data::{Choice, Chosen, WELL, form, ground};
use crate::page::{Page, page};
use crate::plan::leads_label;

/// Years of the model children; the page opens on the third.
const AGES: [u32; 4] = [3, 4, 5, 6];
const OPENS: u32 = 5;
/// How the model children go; a held child does what feet do, in the easier form.
const MEANS: [Means; 3] = [Means::Feet, Means::Wheels, Means::Walker];

/// All skills and their early forms on free ground, on feet, on wheels and with a walker: one
/// page that stands alone.
pub fn skills_page(tongue: &Tongue, ledger: &Ledger) -> String {
    let model = Model::of(ledger);
    let mut shown = Vec::new();
    for means in MEANS {
        let clips = going(means, ledger, &model);
        // one scale for all of a kind, so that a leap is seen to be longer than a hop
        let room = ground(clips.iter().map(|chosen| &chosen.clip), &model);
        shown.extend(clips.into_iter().filter_map(|chosen| Some((chosen, room?))));
    }
    let title = tongue.word("screen-skills");
    page(
        &Page {
            title: &title,
            choices: choices(tongue),
            opens: [Skill::Gallop.word(), "feet", "R", WELL, &OPENS.to_string()]
                .map(str::to_owned)
                .to_vec(),
            clips: shown,
            grounds: Vec::new(),
        },
        tongue,
        ledger,
        &model,
    )
}

/// Every skill at every age, by one means.
fn going(means: Means, ledger: &Ledger, model: &Model) -> Vec<Chosen> {
    let mut clips = Vec::new();
    for age in AGES {
        let Some(child) = model_child(means, age, ledger) else {
            continue;
        };
        for skill in Skill::ALL {
            let Some(gait) = Gait::named(skill.word()) else {
                continue;
            };
            for (lead, foot) in leads(means, skill) {
                let path = Path::free(&gait, *lead, &child, model);
                let Some(well) = path.and_then(|path| Clip::of(&path, model)) else {
                    continue;
                };
                let by = |form: &str| {
                    [skill.word(), word(means), foot, form, &age.to_string()]
                        .map(str::to_owned)
                        .to_vec()
                };
                for row in forms(&well) {
                    clips.push(Chosen {
                        by: by(row.name),
                        clip: row.of(&well, model),
                        ground: None,
                    });
                }
                clips.push(Chosen {
                    by: by(WELL),
                    clip: well,
                    ground: None,
                });
            }
        }
    }
    clips
}

/// A child of whole years that goes by these means, and of whom nothing is measured.
fn model_child(means: Means, age: u32, ledger: &Ledger) -> Option<Child> {
    if means == Means::Feet {
        return counts(&[(f64::from(age), 1)], ledger).value.pop();
    }
    // any birth month will do: only the months between count
    let born = 2020;
    let mut entry = Entry::new("model", (born, 1));
    entry.means = means;
    let date = Date {
        year: born + i32::try_from(age).ok()?,
        month: 1,
    };
    roster(&[entry], date, ledger).value.pop()
}

/// The word of the page's choice.
fn word(means: Means) -> &'static str {
    match means {
        Means::Feet | Means::Held => "feet",
        Means::Wheels => "wheels",
        Means::Walker => "walker",
    }
}

/// Which foot leads, and its value; on wheels one hand pushes alone in the hop, and else
/// both do.
fn leads(means: Means, skill: Skill) -> &'static [(Side, &'static str)] {
    match means {
        Means::Wheels if adapted(skill).one_hand => {
            &[(Side::Right, "hand-R"), (Side::Left, "hand-L")]
        }
        Means::Wheels => &[(Side::Right, "none")],
        _ => &[(Side::Right, "R"), (Side::Left, "L")],
    }
}

fn choices(tongue: &Tongue) -> Vec<Choice> {
    let skills = Skill::ALL.map(|skill| {
        let label = tongue.say(&msg!("page-gait", gait = skill.word()));
        (skill.word().to_owned(), label)
    });
    let mut forms = Choice {
        name: "form",
        legend: tongue.word("screen-form"),
        options: Vec::new(),
    };
    forms.offer(WELL, || form(None, tongue));
    for row in EARLY {
        forms.offer(row.name, || form(Some(row.name), tongue));
    }
    let leads = ["R", "L", "hand-R", "hand-L", "none"]
        .map(|lead| (lead.to_owned(), leads_label(lead, tongue)));
    let means = MEANS.map(word).map(|means| {
        let label = tongue.say(&msg!("screen-means-of", means = means));
        (means.to_owned(), label)
    });
    let ages = AGES.map(|age| {
        let label = tongue.say(&msg!("screen-age-of", years = age.to_string()));
        (age.to_string(), label)
    });
    vec![
        Choice {
            name: "skill",
            legend: tongue.word("screen-skill"),
            options: skills.to_vec(),
        },
        Choice {
            name: "means",
            legend: tongue.word("screen-means"),
            options: means.to_vec(),
        },
        Choice {
            name: "lead",
            legend: tongue.word("screen-lead"),
            options: leads.to_vec(),
        },
        forms,
        Choice {
            name: "age",
            legend: tongue.word("screen-age"),
            options: ages.to_vec(),
        },
    ]
}

#[cfg(test)]
mod tests {
    use words::Language;

    use super::*;

    fn tongue(language: Language) -> Tongue<'static> {
        Tongue {
            catalogue: words::Catalogue::of(language),
            units: unit::Units::Metres,
        }
    }

    fn html(language: Language) -> String {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        skills_page(&tongue(language), &ledger)
    }

    #[test]
    fn the_page_stands_alone_and_is_the_same_every_time() {
        for language in Language::ALL {
            let page = html(language);
            assert_eq!(page, html(language));
            // a name space is no request
            let asks = page.replace("http://www.w3.org/2000/svg", "");
            for way in ["http:", "https:", "src=\"", "@import", "url(h", "url(/"] {
                assert!(!asks.contains(way), "the page asks for {way}");
            }
            assert!(page.len() < 1_500_000, "{} bytes", page.len());
        }
    }

    #[test]
    fn no_sentence_is_missing() {
        for language in Language::ALL {
            let page = html(language);
            for key in ["screen-", "motion-", "page-"] {
                assert!(
                    !page.contains(&format!(">{key}")) && !page.contains(&format!("\"{key}")),
                    "{key}"
                );
            }
        }
    }
}
