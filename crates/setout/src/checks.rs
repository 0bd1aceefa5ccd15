//! The readings to take before anyone paints: what the sheet asks for and `judge` hears.

use std::collections::BTreeSet;

use crate::result::SetOut;

/// One line of the sheet. Lengths in metres.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// One end: a surveyed point, or a key point set out before.
    pub from: String,
    /// The other: a key point.
    pub to: String,
    /// What it should read, a multiple of the step.
    pub length: f64,
    /// Farther off than this: measure again, then redo.
    pub limit: f64,
}

/// All check readings in the order of the walk: at each stop its third tape, and then what
/// lies between it and the key points of its marking that are there already.
pub fn checks(setout: &SetOut) -> Vec<Asked> {
    let mut there = BTreeSet::new();
    let mut asked = Vec::new();
    for stop in &setout.walk {
        let Some(point) = setout.points.get(stop.point) else {
            continue;
        };
        if let Some(third) = point.third
            && let Some(base) = setout.bases.names.get(third.base)
        {
            asked.push(Asked {
                from: base.clone(),
                to: point.name.clone(),
                length: third.length,
                limit: third.limit,
            });
        }
        let spans = setout
            .markings
            .get(point.marking)
            .map(|marking| &marking.spans);
        for span in spans.into_iter().flatten() {
            let [a, b] = span.between;
            let other = if a == stop.point {
                b
            } else if b == stop.point {
                a
            } else {
                continue;
            };
            if let (true, Some(other)) = (there.contains(&other), setout.points.get(other)) {
                asked.push(Asked {
                    from: other.name.clone(),
                    to: point.name.clone(),
                    length: span.length,
                    limit: span.limit,
                });
            }
        }
        there.insert(stop.point);
    }
    asked
}
