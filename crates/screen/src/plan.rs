//! The page of a plan's markings: who goes how, on the figure as it is painted.

use std::fmt::Write;

use geo::LineString;
use ledger::Ledger;
use marking::Figure;
use motion::{Clip, Model, early};
use note::msg;

use crate::Tongue;
use crate::animated::HEIGHT;
use crate::data::{Choice, Chosen, WELL, form};
use crate::page::{Page, page};
use crate::svg::{Extent, extent, letter, number, spot};

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
        ("lead", "screen-lead"),
        ("form", "screen-form"),
        ("who", "screen-who"),
    ]
    .map(|(name, legend)| Choice {
        name,
        legend: tongue.word(legend),
        options: Vec::new(),
    });
    let [markings, gaits, leads, forms, whos] = &mut choices;
    forms.offer(WELL, || form(None, tongue));
    let mut opens = Vec::new();
    for one in shown.iter().filter(|one| !one.going.is_empty()) {
        let marking = grounds.len().to_string();
        markings.offer(&marking, || one.name.to_owned());
        let room = painted(one.figure)
            .into_iter()
            .chain(one.going.iter().filter_map(|going| extent(&going.clip, HEIGHT, &model)))
            .reduce(Extent::with);
        let Some(room) = room else { continue };
        for going in &one.going {
            let clip = &going.clip;
            let lead = if going.sided { letter(clip.lead).to_string() } else { "none".to_owned() };
            gaits.offer(clip.gait, || tongue.say(&msg!("page-gait", gait = clip.gait)));
            leads.offer(&lead, || tongue.say(&msg!("screen-lead-foot", foot = &lead)));
            whos.offer(&going.who, || going.who.clone());
            let by = |form: &str| {
                [&marking, clip.gait, &lead, form, &going.who].map(str::to_owned).to_vec()
            };
            if opens.is_empty() {
                opens = by(WELL);
            }
            let ground = Some(grounds.len());
            for row in early(clip.skill).filter(|_| clip.gait == clip.skill.word()) {
                let early = row.of(clip, &model);
                // a row that finds nothing to change in a short route shows nothing
                if early.prints != clip.prints {
                    forms.offer(row.name, || form(Some(row.name), tongue));
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
                    by: by(WELL),
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

fn painted(figure: &Figure) -> Option<Extent> {
    let spots = figure
        .paint
        .iter()
        .flat_map(|paint| paint.polygon.exterior().coords());
    spots.map(|at| Extent::round(*at, 60.0)).reduce(Extent::with)
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
