//! What a shape inherits: its wash, its stroke, and whether it is seen.

use i_overlay::core::fill_rule::FillRule;
use kurbo::{Cap, Join};
use svgtypes::{Color, Length, LengthListParser, PaintFallback};

use crate::colour::{Stated, word};
use crate::page::{Of, View};

/// What fills a shape or a stroke.
#[derive(Clone, Debug, PartialEq)]
pub enum Wash {
    /// Nothing.
    None,
    /// One colour.
    Stated(Stated),
    /// A gradient or pattern of this id, and what stands in for it.
    Server(String, Option<Stated>),
}

/// The properties that shapes inherit.
#[derive(Clone, Debug)]
pub struct Pen {
    colour: [u8; 3],
    /// Inside.
    pub fill: Wash,
    fill_clear: bool,
    /// Along the outline.
    pub stroke: Wash,
    stroke_clear: bool,
    /// In the units of the shape.
    pub width: f64,
    /// Ends.
    pub cap: Cap,
    /// Corners.
    pub join: Join,
    /// How long a pointed corner may be.
    pub miter: f64,
    /// What is inside of a path.
    pub rule: FillRule,
    /// As `rule`, in a clip path.
    pub clip_rule: FillRule,
    /// Lengths of dashes and gaps.
    pub dashes: Vec<f64>,
    /// Where along the first dash it begins.
    pub dash_offset: f64,
    /// Whether it is seen.
    pub visible: bool,
}

impl Default for Pen {
    fn default() -> Pen {
        Pen {
            colour: [0; 3],
            fill: Wash::Stated(Stated::Rgb([0; 3])),
            fill_clear: false,
            stroke: Wash::None,
            stroke_clear: false,
            width: 1.0,
            cap: Cap::Butt,
            join: Join::Miter,
            miter: 4.0,
            rule: FillRule::NonZero,
            clip_rule: FillRule::NonZero,
            dashes: Vec::new(),
            dash_offset: 0.0,
            visible: true,
        }
    }
}

/// What holds for one element alone, and for all in it.
#[derive(Clone, Debug, Default)]
pub struct Own<'n> {
    /// `display: none`, or wholly clear.
    pub gone: bool,
    /// The clip path's id.
    pub clip: Option<&'n str>,
    /// A filter or a mask.
    pub effect: bool,
    /// A transform that stands among the styles.
    pub transform: Option<&'n str>,
    /// The first property that cannot be read, with its value.
    pub odd: Option<(&'n str, &'n str)>,
}

fn rgb(colour: Color) -> [u8; 3] {
    [colour.red, colour.green, colour.blue]
}

/// The id in `url(#id)`.
pub fn link(text: &str) -> Option<&str> {
    let inner = text.trim().strip_prefix("url(")?;
    let inner = inner.split(')').next()?.trim().trim_matches(['"', '\'']);
    inner.strip_prefix('#')
}

impl Pen {
    /// The pen after an element's declarations.
    pub fn under<'n>(&self, declared: &[(&'n str, &'n str)], view: View) -> (Pen, Own<'n>) {
        let mut pen = self.clone();
        let mut own = Own::default();
        // the colour first: others may speak of it
        for (_, value) in declared.iter().filter(|(name, _)| *name == "color") {
            if let Ok(colour) = value.parse::<Color>() {
                pen.colour = rgb(colour);
            }
        }
        for (name, value) in declared {
            let value = value.trim();
            if value == "inherit" {
                continue;
            }
            if pen.set(name, value, view, &mut own).is_none() {
                own.odd = own.odd.or(Some((name, value)));
                // one slip, one note: what colour was meant nobody knows
                match *name {
                    "fill" => pen.fill = Wash::None,
                    "stroke" => pen.stroke = Wash::None,
                    _ => {}
                }
            }
        }
        if pen.fill_clear {
            pen.fill = Wash::None;
        }
        if pen.stroke_clear {
            pen.stroke = Wash::None;
        }
        (pen, own)
    }

    /// `None` where the value cannot be read.
    fn set<'n>(&mut self, name: &str, value: &'n str, view: View, own: &mut Own<'n>) -> Option<()> {
        let length = |text: &str| {
            let length = text.parse::<Length>().ok()?;
            let units = view.units(length, Of::Both);
            units.is_finite().then_some(units)
        };
        let share = |text: &str| {
            let length = text.parse::<Length>().ok()?;
            let whole = if length.unit == svgtypes::LengthUnit::Percent {
                100.0
            } else {
                1.0
            };
            Some(length.number / whole)
        };
        let rule = |text: &str| match text {
            "nonzero" => Some(FillRule::NonZero),
            "evenodd" => Some(FillRule::EvenOdd),
            _ => None,
        };
        match name {
            "fill" => self.fill = self.wash(value)?,
            "stroke" => self.stroke = self.wash(value)?,
            "fill-opacity" => self.fill_clear = share(value)? <= 0.0,
            "stroke-opacity" => self.stroke_clear = share(value)? <= 0.0,
            "opacity" => own.gone |= share(value)? <= 0.0,
            "stroke-width" => self.width = length(value).filter(|width| *width >= 0.0)?,
            "stroke-miterlimit" => self.miter = value.parse().ok().filter(|m| *m >= 1.0)?,
            "stroke-dashoffset" => self.dash_offset = length(value)?,
            "stroke-linecap" => {
                self.cap = match value {
                    "butt" => Cap::Butt,
                    "round" => Cap::Round,
                    "square" => Cap::Square,
                    _ => return None,
                }
            }
            "stroke-linejoin" => {
                self.join = match value {
                    "round" => Join::Round,
                    "bevel" => Join::Bevel,
                    "miter" | "miter-clip" | "arcs" => Join::Miter,
                    _ => return None,
                }
            }
            "stroke-dasharray" => {
                self.dashes = if value == "none" {
                    Vec::new()
                } else {
                    let all: Result<Vec<Length>, _> = LengthListParser::from(value).collect();
                    let all = all.ok()?.into_iter().map(|one| view.units(one, Of::Both));
                    let all: Vec<f64> = all.collect();
                    let useful = all.iter().all(|dash| *dash >= 0.0 && dash.is_finite())
                        && all.iter().sum::<f64>() > 0.0;
                    if useful { all } else { Vec::new() }
                }
            }
            "fill-rule" => self.rule = rule(value)?,
            "clip-rule" => self.clip_rule = rule(value)?,
            "visibility" => self.visible = value == "visible",
            "display" => own.gone |= value == "none",
            "clip-path" => own.clip = link(value),
            "filter" | "mask" => own.effect |= value != "none",
            "marker" | "marker-start" | "marker-mid" | "marker-end" => {
                own.effect |= value != "none";
            }
            "transform" => own.transform = Some(value),
            _ => {}
        }
        Some(())
    }

    fn wash(&self, value: &str) -> Option<Wash> {
        if let Some(ink) = word(value) {
            return Some(Wash::Stated(Stated::Ink(ink)));
        }
        let plain = |colour: Color| {
            if colour.alpha == 0 {
                Wash::None
            } else {
                Wash::Stated(Stated::Rgb(rgb(colour)))
            }
        };
        let own = Stated::Rgb(self.colour);
        Some(match svgtypes::Paint::from_str(value).ok()? {
            svgtypes::Paint::None => Wash::None,
            svgtypes::Paint::Color(colour) => plain(colour),
            svgtypes::Paint::FuncIRI(id, instead) => Wash::Server(
                id.to_owned(),
                match instead {
                    Some(PaintFallback::Color(colour)) => Some(Stated::Rgb(rgb(colour))),
                    Some(PaintFallback::CurrentColor) => Some(own),
                    _ => None,
                },
            ),
            _ => Wash::Stated(own),
        })
    }
}
