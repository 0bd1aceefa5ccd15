//! Which motifs are worth a plate.
//!
//! The rule: a single shape that is a long stroke is rolled along chalk lines; a single big
//! solid is taped, both where they have no hole and are no letter; a motif whose plate would take more panels than the ledger allows is drawn
//! by string and taped. All else is stencilled.

use geo::{Area, Polygon, Rect};

use crate::material::Rules;
use crate::result::{Motif, Why};
use crate::shape::strip;

/// `None`: it is worth one. `room` is the box of its paint in the plate's frame.
pub(crate) fn taped(
    shapes: &[Polygon<f64>],
    shows: &Motif,
    room: Rect<f64>,
    rules: &Rules,
) -> Option<Why> {
    if let [one] = shapes
        && one.interiors().is_empty()
        && !matches!(shows, Motif::Glyph(_))
    {
        let [long, broad] = strip(one);
        if long >= rules.stroke_long && long >= rules.stroke_slim * broad {
            return Some(Why::Stroke);
        }
        if one.unsigned_area() > rules.solid {
            return Some(Why::Solid);
        }
    }
    let [across, up] = counts(room, rules);
    (across * up > rules.panels).then_some(Why::Large)
}

/// Panels along x and y.
pub(crate) fn counts(room: Rect<f64>, rules: &Rules) -> [usize; 2] {
    /// Metres: a plate of just the longest side is one panel for all its rounding.
    const SLACK: f64 = 1e-6;
    [room.width(), room.height()].map(|size| {
        let size = size + 2.0 * rules.margin - SLACK;
        if size <= rules.longest {
            1
        } else {
            let more = (size - rules.overlap) / (rules.longest - rules.overlap);
            more.ceil() as usize
        }
    })
}
