//! How large the drawing is: from its own units to metres, y up.

use kurbo::Affine;
use note::{Fact, Note, Place, msg};
use roxmltree::Node;
use svgtypes::{Align, AspectRatio, Length, LengthUnit, ViewBox};

/// Millimetres of a CSS pixel: 96 to the inch.
const PIXEL: f64 = 25.4 / 96.0;

/// A viewport, in the units of what stands in it: percentages are of it.
#[derive(Clone, Copy, Debug)]
pub struct View {
    /// Its breadth.
    pub width: f64,
    /// Its height.
    pub height: f64,
}

/// What a percentage is of.
#[derive(Clone, Copy)]
pub enum Of {
    /// The viewport's breadth.
    Width,
    /// Its height.
    Height,
    /// Its diagonal over the root of two.
    Both,
}

impl View {
    /// A length in the units of the viewport.
    pub fn units(self, length: Length, of: Of) -> f64 {
        let whole = match of {
            Of::Width => self.width,
            Of::Height => self.height,
            Of::Both => libm::hypot(self.width, self.height) / std::f64::consts::SQRT_2,
        };
        /// Units of an em: no drawing of ours has text, and a browser starts from 16.
        const EM: f64 = 16.0;
        length.number
            * match length.unit {
                LengthUnit::None | LengthUnit::Px => 1.0,
                LengthUnit::Percent => whole / 100.0,
                LengthUnit::Em => EM,
                LengthUnit::Ex => EM / 2.0,
                LengthUnit::In => 96.0,
                LengthUnit::Cm => 10.0 / PIXEL,
                LengthUnit::Mm => 1.0 / PIXEL,
                LengthUnit::Pt => 96.0 / 72.0,
                LengthUnit::Pc => 16.0,
            }
    }
}

/// What a size of the document is stated in.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Measure {
    /// Not at all, or as a share of the window.
    Open,
    /// A bare number.
    Bare,
    /// Pixels.
    Pixels,
    /// A unit with a size on paper.
    Paper,
}

fn side(text: Option<&str>) -> (f64, Measure) {
    let Some(length) = text.and_then(|text| text.trim().parse::<Length>().ok()) else {
        return (0.0, Measure::Open);
    };
    if length.number.is_nan() || length.number <= 0.0 {
        return (0.0, Measure::Open);
    }
    let measure = match length.unit {
        LengthUnit::Percent | LengthUnit::Em | LengthUnit::Ex => Measure::Open,
        LengthUnit::None => Measure::Bare,
        LengthUnit::Px => Measure::Pixels,
        _ => Measure::Paper,
    };
    let millimetres = match measure {
        // the convention of this house: a number without a unit is millimetres
        Measure::Bare => length.number,
        Measure::Open => 0.0,
        _ => {
            let any = View {
                width: 0.0,
                height: 0.0,
            };
            any.units(length, Of::Both) * PIXEL
        }
    };
    (millimetres, measure)
}

/// From a box to a viewport, as `preserveAspectRatio` has it.
pub fn fit(node: Node, view: ViewBox, width: f64, height: f64) -> Affine {
    let aspect: AspectRatio = node
        .attribute("preserveAspectRatio")
        .and_then(|text| text.parse().ok())
        .unwrap_or_default();
    let (sx, sy) = (width / view.w, height / view.h);
    let (sx, sy) = match (aspect.align, aspect.slice) {
        (Align::None, _) => (sx, sy),
        (_, false) => (sx.min(sy), sx.min(sy)),
        (_, true) => (sx.max(sy), sx.max(sy)),
    };
    use Align::{XMaxYMax, XMaxYMid, XMaxYMin, XMidYMax, XMidYMid, XMidYMin};
    let across = match aspect.align {
        XMidYMin | XMidYMid | XMidYMax => 0.5,
        XMaxYMin | XMaxYMid | XMaxYMax => 1.0,
        _ => 0.0,
    };
    use Align::{XMinYMax, XMinYMid};
    let down = match aspect.align {
        XMinYMid | XMidYMid | XMaxYMid => 0.5,
        XMinYMax | XMidYMax | XMaxYMax => 1.0,
        _ => 0.0,
    };
    let move_x = (width - view.w * sx) * across - view.x * sx;
    let move_y = (height - view.h * sy) * down - view.y * sy;
    Affine::new([sx, 0.0, 0.0, sy, move_x, move_y])
}

/// A view box with sides that can be reckoned with.
pub fn view_box(node: Node) -> Option<ViewBox> {
    let view: ViewBox = node.attribute("viewBox")?.parse().ok()?;
    let finite = [view.x, view.y, view.w, view.h]
        .iter()
        .all(|side| side.is_finite());
    (finite && view.w > 0.0 && view.h > 0.0).then_some(view)
}

/// The document's own units to metres, y up, and its viewport.
///
/// The size on paper decides. Where none is stated one unit is a millimetre. `data-scale`
/// (`1:10`, or the 10 alone) makes a small drawing as large as it is meant.
pub fn page(root: Node, at: impl Fn(&str) -> Place, notes: &mut Vec<Note>) -> (Affine, View) {
    let view = view_box(root);
    let (mut width, broad) = side(root.attribute("width"));
    let (mut height, high) = side(root.attribute("height"));
    let shape = view.map_or(1.0, |view| view.h / view.w);
    match (broad, high) {
        (Measure::Open, Measure::Open) => {}
        (Measure::Open, _) => width = height / shape,
        (_, Measure::Open) => height = width * shape,
        _ => {}
    }
    let measure = if broad == Measure::Open { high } else { broad };
    let scale = scale(root, &at, notes);
    let inner = match (view, measure) {
        (Some(_), Measure::Open) | (None, Measure::Open | Measure::Bare) => Affine::IDENTITY,
        (Some(view), _) => fit(root, view, width, height),
        (None, _) => Affine::scale(PIXEL),
    };
    let seen = view.map_or(
        View {
            width: width.max(1.0),
            height: height.max(1.0),
        },
        |view| View {
            width: view.w,
            height: view.h,
        },
    );
    if measure == Measure::Pixels {
        let across = width * scale / 1000.0;
        let drawn = seen.width;
        let note = Note::warning(
            at(if broad == Measure::Open {
                "height"
            } else {
                "width"
            }),
            msg!(
                "drawn-pixels",
                width = Fact::Length(across),
                height = Fact::Length(height * scale / 1000.0)
            ),
        );
        notes.push(note.mend(msg!("drawn-pixels-mend", units = Fact::Number(drawn, 0))));
    }
    let to_metres = Affine::scale_non_uniform(scale / 1000.0, -scale / 1000.0);
    (to_metres * inner, seen)
}

fn scale(root: Node, at: &impl Fn(&str) -> Place, notes: &mut Vec<Note>) -> f64 {
    let Some(text) = root.attribute("data-scale") else {
        return 1.0;
    };
    let number = match text.split_once(':') {
        Some((one, number)) if one.trim() == "1" => number,
        Some(_) => "",
        None => text,
    };
    match number.trim().parse::<f64>() {
        Ok(scale) if (0.01..=1000.0).contains(&scale) => scale,
        _ => {
            notes.push(
                Note::error(at("data-scale"), msg!("drawn-scale", text = text))
                    .expected(msg!("drawn-scale-expected")),
            );
            1.0
        }
    }
}
