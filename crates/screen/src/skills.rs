//! The page of all skills: six that are taught, run and walk, at three to six years.

use children::{Side, Skill, counts};
use footfall::Gait;
use ledger::Ledger;
use motion::{Clip, EARLY, Model, Path, early};
use note::msg;

use crate::Tongue;
use crate::data::{Choice, Chosen, WELL, form, ground};
use crate::page::{Page, page};

/// Years of the model children; the page opens on the third.
const AGES: [u32; 4] = [3, 4, 5, 6];
const OPENS: u32 = 5;

/// All skills and their early forms on free ground: one page that stands alone.
pub fn skills_page(tongue: &Tongue, ledger: &Ledger) -> String {
    let model = Model::of(ledger);
    let mut clips = Vec::new();
    for age in AGES {
        let children = counts(&[(f64::from(age), 1)], ledger).value;
        let Some(child) = children.first() else {
            continue;
        };
        for skill in Skill::ALL {
            let Some(gait) = Gait::named(skill.word()) else {
                continue;
            };
            for lead in [Side::Right, Side::Left] {
                let path = Path::free(&gait, lead, child, &model);
                let Some(well) = path.and_then(|path| Clip::of(&path, &model)) else {
                    continue;
                };
                let by = |form: &str| {
                    let foot = if lead == Side::Right { "R" } else { "L" };
                    [skill.word(), foot, form, &age.to_string()]
                        .map(str::to_owned)
                        .to_vec()
                };
                for row in early(skill) {
                    clips.push(Chosen {
                        by: by(row.name),
                        clip: row.of(&well, &model),
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
    // one scale for all, so that a leap is seen to be longer than a hop
    let room = ground(clips.iter().map(|chosen| &chosen.clip), &model);
    let title = tongue.word("screen-skills");
    page(
        &Page {
            title: &title,
            choices: choices(tongue),
            opens: vec![
                Skill::Gallop.word().into(),
                "R".into(),
                WELL.into(),
                OPENS.to_string(),
            ],
            clips: clips
                .into_iter()
                .filter_map(|chosen| Some((chosen, room?)))
                .collect(),
            grounds: Vec::new(),
        },
        tongue,
        ledger,
        &model,
    )
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
    let leads = ["R", "L"].map(|foot| {
        let label = tongue.say(&msg!("screen-lead-foot", foot = foot));
        (foot.to_owned(), label)
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
