//! The proof that a plate stays in one piece: the sheet is rebuilt after cutting.

use geo::{Area, BooleanOps, MultiPolygon, Polygon};

use crate::shape::grown;

/// Metres. Openings are widened by so much first: two that meet in a point, or a web that
/// the knife would take along, hold nothing.
const SLIT: f64 = 0.000_5;

/// What falls out of a plate once its openings are cut, largest first; empty where the
/// sheet that is left is one piece.
///
/// - shapes in metres; openings may run over the plate's edge
pub fn falls(plate: &Polygon<f64>, openings: &[Polygon<f64>]) -> Vec<Polygon<f64>> {
    let cut = grown(&MultiPolygon(openings.to_vec()), SLIT);
    let mut left = MultiPolygon(vec![plate.clone()]).difference(&cut).0;
    left.sort_by(|a, b| b.unsigned_area().total_cmp(&a.unsigned_area()));
    if left.is_empty() {
        return left;
    }
    left.split_off(1)
}
