//! The page of a plan's markings: who goes how, on the figure as it is painted.

use std::fmt::Write;

use children::Side;
use geo::LineString;
use ledger::Ledger;
use marking::Figure;
use motion::{Clip, Model, adapted, forms};
use note::msg;

use crate::Tongue;
use crate::aid::means;
use crate::data::{Choice, Chosen, WELL, form};
use crate::page::{Page, page};
use crate::svg::{Extent, aloft, number, spot};

/// Millimetres of the figure that are shown round the feet.
const AROUND: f64 = 350.0;

/// A marking and what feet do on it.
pub struct Shown<'a> {
    /// Its name, as the reader knows it.
    pub name: &'a str,
    /// In the frame of the clips.
    pub figure: &'a Figure,
    /// Routes, the one to open with first.
    pub going: Vec<Going>,
}

/// A route done well.
pub struct Going {
    /// Who goes, as the reader knows them: an age, or a child's code.
    pub who: String,
    /// Whether left and right lead differ.
    pub sided: bool,
    /// The route in time.
    pub clip: Clip,
}

/// Feet on the markings of a plan: one page that stands alone. Markings on which nobody goes
/// are left out.
pub fn plan_page(name: &str, shown: &[Shown], tongue: &Tongue, ledger: &Ledger) -> String {
    let model = Model::of(ledger);
    let (mut clips, mut grounds) = (Vec::new(), Vec::new());
    let mut choices = [
        ("marking", "screen-marking"),
        ("gait", "screen-skill"),
        ("who", "screen-who"),
        ("lead", "screen-lead"),
        ("form", "screen-form"),
    ]
    .map(|(name, legend)| Choice {
        name,
        legend: tongue.word(legend),
        options: Vec::new(),
    });
    let [markings, gaits, whos, leads, offered] = &mut choices;
    offered.offer(WELL, || form(None, tongue));
    let mut opens = Vec::new();
    for one in shown.iter().filter(|one| !one.going.is_empty()) {
        let marking = grounds.len().to_string();
        markings.offer(&marking, || one.name.to_owned());
        for going in &one.going {
            let clip = &going.clip;
            let lead = lead(going);
            let by_means = clip.aid.is_some().then(|| means(clip));
            let who = match by_means {
                Some(means) => format!("{} {means}", going.who),
                None => going.who.clone(),
            };
            gaits.offer(clip.gait, || {
                tongue.say(&msg!("page-gait", gait = clip.gait))
            });
            leads.offer(lead, || leads_label(lead, tongue));
            whos.offer(&who, || match by_means {
                Some(means) => tongue.say(&msg!(
                    "screen-who-by",
                    who = &going.who,
                    means = tongue.say(&msg!("screen-means-of", means = means))
                )),
                None => going.who.clone(),
            });
            let by = |form: &str| {
                [&marking, clip.gait, &who, lead, form]
                    .map(str::to_owned)
                    .to_vec()
            };
            // wheels go the same way for either foot
            let well = by(WELL);
            if clips
                .iter()
                .any(|(known, _): &(Chosen, Extent)| known.by == well)
            {
                continue;
            }
            if opens.is_empty() {
                opens = by(WELL);
            }
            // so much of the figure as feet come to: a long lane would make them small
            let Some(feet) = aloft(clip, &model) else {
                continue;
            };
            let near = feet.wider(AROUND);
            let all = painted(one.figure).map_or(feet, |figure| figure.with(feet));
            let room = near.within(all);
            let ground = Some(grounds.len());
            for row in forms(clip) {
                let early = row.of(clip, &model);
                // a row that finds nothing to change in a short route shows nothing
                if early.prints != clip.prints {
                    offered.offer(row.name, || form(Some(row.name), tongue));
                    clips.push((
                        Chosen {
                            by: by(row.name),
                            clip: early,
                            ground,
                        },
                        room,
                    ));
                }
            }
            clips.push((
                Chosen {
                    by: well,
                    clip: clip.clone(),
                    ground,
                },
                room,
            ));
        }
        grounds.push(paint(one.figure));
    }
    let title = tongue.say(&msg!("screen-plan", name = name));
    page(
        &Page {
            title: &title,
            choices: choices.into_iter().collect(),
            opens,
            clips,
            grounds,
        },
        tongue,
        ledger,
        &model,
    )
}

/// Which foot leads, or which hand pushes alone; `none` where that makes no difference.
fn lead(going: &Going) -> &'static str {
    let clip = &going.clip;
    let hand = clip.aid.as_ref().is_some_and(|aid| aid.hands.is_some());
    match (going.sided, hand, clip.lead) {
        (true, true, _) if !adapted(clip.skill).one_hand => "none",
        (true, true, Side::Right) => "hand-R",
        (true, true, Side::Left) => "hand-L",
        (true, false, Side::Right) => "R",
        (true, false, Side::Left) => "L",
        (false, ..) => "none",
    }
}

/// Its label.
pub fn leads_label(lead: &str, tongue: &Tongue) -> String {
    match lead.strip_prefix("hand-") {
        Some(hand) => tongue.say(&msg!("screen-lead-hand", hand = hand)),
        None => tongue.say(&msg!("screen-lead-foot", foot = lead)),
    }
}

fn painted(figure: &Figure) -> Option<Extent> {
    let spots = figure
        .paint
        .iter()
        .flat_map(|paint| paint.polygon.exterior().coords());
    spots
        .map(|at| Extent::round(*at, 60.0))
        .reduce(Extent::with)
}

/// The painted shapes: filled with their paint, outlined so that light ones show on paper.
fn paint(figure: &Figure) -> String {
    let mut out = String::new();
    for paint in &figure.paint {
        let mut path = String::new();
        ring(&mut path, paint.polygon.exterior());
        for inner in paint.polygon.interiors() {
            ring(&mut path, inner);
        }
        let [r, g, b] = paint.colour.srgb();
        _ = write!(
            out,
            "<path class=\"{}\" fill=\"#{r:02X}{g:02X}{b:02X}\" d=\"{path}\"/>",
            paint.colour.word()
        );
    }
    out
}

fn ring(path: &mut String, ring: &LineString<f64>) {
    for (at, spot_at) in ring.coords().enumerate() {
        let [x, y] = spot(*spot_at);
        let pen = if at == 0 { 'M' } else { 'L' };
        _ = write!(path, "{pen}{} {}", number(x.round()), number(y.round()));
    }
    path.push('Z');
}

#[cfg(test)]
mod tests {
    use children::counts;
    use footfall::{Contact, Gait};
    use marking::{Ground, Look, Palette};
    use motion::{Path, Way};

    use super::*;

    /// A name is text wherever it stands: in the title, in a label, in the data.
    #[test]
    fn a_name_cannot_become_markup() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let model = Model::of(&ledger);
        let child = counts(&[(5.0, 1)], &ledger).value.remove(0);
        let palette = Palette {
            ground: Ground::Asphalt,
        };
        let family = marking::family("court").expect("the court");
        let look = Look::of(palette, &ledger);
        let figure = family.make(&family.defaults(), &look).expect("a court");
        let gait = Gait::named("hop").expect("the hop");
        let way = Way {
            gait: &gait,
            cells: &[0, 1],
            lane: None,
            contacts: &[Contact::R, Contact::R],
        };
        let path = Path::on(&figure, &way, &child, &model).expect("a path");
        let evil = "</script><img src=x onerror=alert(1)>\"'&";
        let shown = Shown {
            name: evil,
            figure: &figure,
            going: vec![Going {
                who: evil.to_owned(),
                sided: true,
                clip: motion::Clip::of(&path, &model).expect("a clip"),
            }],
        };
        assert_eq!(shown.going[0].clip.lead, Side::Right);
        let tongue = Tongue {
            catalogue: words::Catalogue::of(words::Language::En),
            units: unit::Units::Metres,
        };
        let page = plan_page(evil, &[shown], &tongue, &ledger);
        assert!(!page.contains("<img"));
        assert_eq!(page.matches("</script>").count(), 2, "ours alone");
        assert!(page.contains("&lt;/script&gt;"));
    }

    /// A court with a child on feet and one on wheels: forms, means and legends are said in
    /// both languages, and the second route of wheels for the other foot is not shown again.
    #[test]
    fn every_means_and_every_form_of_a_court_is_said() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let model = Model::of(&ledger);
        let palette = Palette {
            ground: Ground::Asphalt,
        };
        let family = marking::family("court").expect("the court");
        let look = Look::of(palette, &ledger);
        let figure = family.make(&family.defaults(), &look).expect("a court");
        let gait = Gait::named("court").expect("the court's gait");
        let clip = |means, contacts: &[Contact]| {
            let mut entry = children::Entry::new("a", (2021, 1));
            entry.means = means;
            let date = children::Date {
                year: 2026,
                month: 1,
            };
            let child = children::roster(&[entry], date, &ledger).value.remove(0);
            let way = Way {
                gait: &gait,
                cells: &[0, 1, 2, 3],
                lane: None,
                contacts,
            };
            let path = Path::on(&figure, &way, &child, &model).expect("a path");
            motion::Clip::of(&path, &model).expect("a clip")
        };
        let feet = clip(
            children::Means::Feet,
            &[Contact::B, Contact::R, Contact::R, Contact::B],
        );
        let [wheels, walker] = [children::Means::Wheels, children::Means::Walker]
            .map(|means| clip(means, &[Contact::B; 4]));
        for language in words::Language::ALL {
            let tongue = Tongue {
                catalogue: words::Catalogue::of(language),
                units: unit::Units::Metres,
            };
            let going = |clip: &Clip| Going {
                who: "5".to_owned(),
                sided: true,
                clip: clip.clone(),
            };
            let shown = Shown {
                name: "court",
                figure: &figure,
                going: [&feet, &wheels, &wheels, &walker].map(going).into(),
            };
            let page = plan_page("Calle", &[shown], &tongue, &ledger);
            for key in ["screen-", "motion-", "page-"] {
                let bare = [format!(">{key}"), format!("\"{key}")];
                assert!(!bare.iter().any(|bare| page.contains(bare)), "{key}");
            }
            for form in motion::COURT {
                assert!(page.contains(&tongue.word(form.says)), "{}", form.name);
            }
            assert_eq!(page.matches("\"means\":\"wheels\"").count(), 1);
            assert_eq!(page.matches("\"means\":\"walker\"").count(), 1);
        }
    }

    #[test]
    fn a_plan_on_which_nobody_goes_is_still_a_page() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let tongue = Tongue {
            catalogue: words::Catalogue::of(words::Language::Es),
            units: unit::Units::Metres,
        };
        let page = plan_page("Calle", &[], &tongue, &ledger);
        assert!(page.ends_with("</html>\n") && page.contains("\"clips\":[]"));
    }
}
