//! The gallery of the documentation: every family at the size of three ages, as it is painted.

use std::fmt::Write;

use children::counts;
use layout::candidates::{Kit, candidates};
use ledger::Ledger;
use marking::{Family, Figure, Ground, Look, Palette};
use note::msg;
use unit::Units;
use words::{Catalogue, Language};

use crate::drawing::scale::Scale;
use crate::drawing::scene::{Rect, Scene, Text};
use crate::drawing::svg::{self, Told};
use crate::drawing::view::View;
use crate::planned::painter::{self, Extent};

/// The ages shown, years.
const AGES: [f64; 3] = [3.5, 4.5, 5.5];

/// Children of an age for whom a figure is sized.
const CHILDREN: u32 = 8;

/// Width of a plate, mm.
const WIDE: f64 = 175.0;

/// Words of the letter court: of our own choice.
const WORDS: [&str; 6] = ["sun", "moon", "rain", "star", "tern", "nest"];

/// A file of the gallery.
#[derive(Clone, Debug, PartialEq)]
pub struct File {
    /// Its name in `docs/gallery/`.
    pub name: String,
    /// Its text.
    pub text: String,
}

/// The page and a plate a family; the same text on any machine.
pub fn gallery(ledger: &Ledger) -> Vec<File> {
    let catalogue = Catalogue::of(Language::En);
    let palette = Palette {
        ground: Ground::Asphalt,
    };
    let words = WORDS.map(str::to_owned);
    let look = Look::of(palette, ledger).lettered(&words, 1);
    let mut page = catalogue.say(&msg!("gallery-page"), Units::Metres);
    page.push('\n');
    let mut files = Vec::new();
    for family in marking::families() {
        let sizes: Vec<(f64, Figure)> = AGES
            .into_iter()
            .filter_map(|age| Some((age, sized(*family, age, &look, ledger)?)))
            .collect();
        let name = catalogue.say(&msg!("page-family", family = family.name()), Units::Metres);
        let file = format!("{}.svg", family.name());
        let _ = write!(page, "\n## {name}\n\n`{}`", family.name());
        let skills: Vec<String> = family
            .activities()
            .iter()
            .map(|gait| (*gait).to_owned())
            .collect();
        let _ = writeln!(page, ": {}.\n", skills.join(", "));
        let scene = plate(&sizes, catalogue);
        let told = Told {
            title: name.clone(),
            says: catalogue.say(&msg!("gallery-says", name = name.as_str()), Units::Metres),
            language: "en",
        };
        files.push(File {
            name: file.clone(),
            text: svg::alone(&scene, &told),
        });
        let _ = writeln!(page, "![{name}](gallery/{file})\n");
        lengths(&mut page, *family, &sizes);
    }
    files.push(File {
        name: "../gallery.md".to_owned(),
        text: page,
    });
    files
}

/// The figure that the inverse gives a class of one age.
fn sized(family: &'static dyn Family, age: f64, look: &Look, ledger: &Ledger) -> Option<Figure> {
    let children = counts(&[(age, CHILDREN)], ledger).value;
    let model = footfall::Model::of(ledger);
    let kit = Kit {
        families: &[family],
        refused: &[],
        look,
        model: &model,
        price: &|_| 0.0,
    };
    let weights = children::Skill::ALL
        .into_iter()
        .map(|skill| (skill, 1.0))
        .collect();
    let all = candidates(&children, &weights, &kit, ledger);
    all.into_iter()
        .find(|one| one.group == "all")
        .map(|one| one.figure)
}

/// Three figures side by side at one scale, each over its age.
fn plate(sizes: &[(f64, Figure)], catalogue: &Catalogue) -> Scene {
    const GAP: f64 = 3.0;
    let extents: Vec<Extent> = sizes
        .iter()
        .map(|(_, figure)| Extent::of_envelope(figure).grown(0.1))
        .collect();
    let long: f64 = extents.iter().map(|one| one.size()[0]).sum();
    let high = extents.iter().map(|one| one.size()[1]).fold(0.1, f64::max);
    let room = WIDE - GAP * (sizes.len().max(1) - 1) as f64;
    let scale = Scale::all(Units::Metres)
        .find(|scale| long * scale.mm() <= room)
        .unwrap_or(Scale(500));
    let mm = scale.mm();
    let mut scene = Scene::new(WIDE, high * mm + 8.0);
    let mut x = 0.0;
    for ((age, figure), extent) in sizes.iter().zip(&extents) {
        let [w, h] = extent.size().map(|metres| metres * mm);
        let top = (high * mm - h) / 2.0;
        let view = View {
            mm,
            origin: [x - extent.low[0] * mm, top + extent.high[1] * mm],
        };
        let ground = Rect {
            x,
            y: 0.0,
            w,
            h: high * mm,
        };
        painter::on_ground(&mut scene, figure, &view, ground, Ground::Asphalt);
        let says = catalogue.say(
            &msg!(
                "gallery-age",
                years = note::Fact::Number(age.floor(), 0),
                scale = scale.says(Units::Metres)
            ),
            Units::Metres,
        );
        scene.text(Text::new(says, [x, high * mm + 5.0], 1.8));
        x += w + GAP;
    }
    scene
}

/// The free lengths at each age.
fn lengths(page: &mut String, family: &dyn Family, sizes: &[(f64, Figure)]) {
    if sizes.is_empty() {
        return;
    }
    let heads: Vec<String> = sizes
        .iter()
        .map(|(age, _)| format!("{:.0} years", age.floor()))
        .collect();
    let _ = writeln!(page, "| length, m | {} |", heads.join(" | "));
    let _ = writeln!(page, "|---|{}", "---|".repeat(sizes.len()));
    for (number, spec) in family.lengths().iter().enumerate() {
        let row: Vec<String> = sizes
            .iter()
            .map(|(_, figure)| {
                let length = figure
                    .lengths
                    .get(number)
                    .map_or(f64::NAN, |(_, metres)| *metres);
                format!("{length:.2}")
            })
            .collect();
        let _ = writeln!(page, "| `{}` | {} |", spec.name, row.join(" | "));
    }
}
