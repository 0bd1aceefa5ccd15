//! Colours of a drawing, matched to the paints there are.

use ledger::Ledger;
use marking::{Colour, Ground, seen};
use note::{Fact, Note, Place, msg};
use palette::color_difference::Ciede2000;
use palette::{FromColor, Lab, Srgb};

use crate::figures::COLOUR_FAR;

/// What a colour is on the ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ink {
    /// A paint.
    Paint(Colour),
    /// Bare ground: what lies under it is cut away.
    Bare,
}

/// A colour as the drawing states it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stated {
    /// sRGB.
    Rgb([u8; 3]),
    /// By a paint's word, or `ground`.
    Ink(Ink),
}

/// The word that means bare ground.
pub const BARE: &str = "ground";

/// Greys that a screen shows the ground in (look: section 5).
const SWATCHES: [[u8; 3]; 2] = [[0x59, 0x59, 0x59], [0xA6, 0xA6, 0xA6]];

/// The paint, or the bare ground, that a word names.
pub fn word(text: &str) -> Option<Ink> {
    if text.eq_ignore_ascii_case(BARE) {
        return Some(Ink::Bare);
    }
    let mut all = Colour::ALL.into_iter();
    all.find(|colour| text.eq_ignore_ascii_case(colour.word()))
        .map(Ink::Paint)
}

fn lab([r, g, b]: [u8; 3]) -> Lab<palette::white_point::D65, f64> {
    Lab::from_color(Srgb::new(r, g, b).into_format::<f64>())
}

/// CIEDE2000 between two sRGB colours.
pub fn difference(a: [u8; 3], b: [u8; 3]) -> f64 {
    lab(a).difference(lab(b))
}

/// The nearest of the paints and the two grounds, with its CIEDE2000.
pub fn nearest(rgb: [u8; 3]) -> (Ink, f64) {
    let paints = Colour::ALL.map(|colour| (Ink::Paint(colour), colour.srgb()));
    let grounds = SWATCHES.map(|grey| (Ink::Bare, grey));
    let all = paints.into_iter().chain(grounds);
    let by = all.map(|(ink, aim)| (ink, difference(rgb, aim)));
    by.min_by(|a, b| a.1.total_cmp(&b.1))
        .unwrap_or((Ink::Bare, f64::INFINITY))
}

/// The colours of one drawing so far, each with where it stands first.
#[derive(Default)]
pub struct Inks(Vec<(Stated, Ink, Place)>);

impl Inks {
    /// What a stated colour is.
    pub fn of(&mut self, stated: Stated, at: &Place) -> Ink {
        if let Some((_, ink, _)) = self.0.iter().find(|(known, ..)| *known == stated) {
            return *ink;
        }
        let ink = match stated {
            Stated::Ink(ink) => ink,
            Stated::Rgb(rgb) => nearest(rgb).0,
        };
        self.0.push((stated, ink, at.clone()));
        ink
    }

    /// One note for each colour that is no paint, or that its ground hides.
    pub fn told(self, ground: Ground, ledger: &Ledger, notes: &mut Vec<Note>) {
        let far = ledger.number(COLOUR_FAR);
        let mut hidden = Vec::new();
        for (stated, ink, at) in self.0 {
            let Ink::Paint(paint) = ink else {
                if let Stated::Rgb(rgb) = stated {
                    notes.push(
                        Note::advice(at, msg!("drawn-bare", colour = hex(rgb)))
                            .mend(msg!("drawn-bare-mend")),
                    );
                }
                continue;
            };
            if let Stated::Rgb(rgb) = stated {
                let off = difference(rgb, paint.srgb());
                if off > far {
                    let what = msg!(
                        "drawn-colour-far",
                        colour = hex(rgb),
                        paint = paint.word(),
                        off = Fact::Number(off, 0)
                    );
                    let names =
                        Colour::ALL.map(|one| format!("{} {}", one.word(), hex(one.srgb())));
                    notes.push(
                        Note::warning(at.clone(), what)
                            .expected(msg!("drawn-colour-expected", paints = names.to_vec()))
                            .mend(msg!("drawn-colour-mend", paint = paint.word())),
                    );
                    continue;
                }
            }
            let luminance = ledger.number(ground.key());
            if !seen(paint, luminance, ledger) && !hidden.contains(&paint) {
                hidden.push(paint);
                notes.push(
                    Note::warning(at, msg!("drawn-colour-unseen", paint = paint.word())).mend(
                        msg!(
                            "drawn-colour-unseen-mend",
                            paints = shown(luminance, ledger)
                        ),
                    ),
                );
            }
        }
    }
}

fn shown(luminance: f64, ledger: &Ledger) -> Vec<String> {
    let all = Colour::ALL.into_iter();
    all.filter(|paint| seen(*paint, luminance, ledger))
        .map(|paint| paint.word().to_owned())
        .collect()
}

fn hex([r, g, b]: [u8; 3]) -> String {
    format!("#{r:02X}{g:02X}{b:02X}")
}
