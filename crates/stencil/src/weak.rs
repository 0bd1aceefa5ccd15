//! Openings too narrow, webs too narrow, tongues too long.

use geo::{BooleanOps, BoundingRect, Centroid, Coord, MultiPolygon, Polygon, Simplify};

use crate::material::Rules;
use crate::result::{Opening, Tie, Weak, Weakness};
use crate::shape::{apart, grown, outline, roughly_grown, strip};

/// Metres: rounding to 1e-6 m moves each of two edges, and rounded corners lie 2e-5 off.
const SLACK: f64 = 1e-4;

/// All that is weak in a plate, of whose openings some have been tied.
pub(crate) fn weak(
    plate: &Polygon<f64>,
    untied: &[Opening],
    openings: &[Opening],
    ties: &[Tie],
    rules: &Rules,
) -> Vec<Weak> {
    let mut found = Vec::new();
    for opening in openings {
        let core = grown(
            &MultiPolygon(vec![opening.polygon.clone()]),
            -(rules.least / 2.0 - SLACK),
        );
        if core.0.len() != 1 {
            found.extend(at(Weakness::Opening, &opening.polygon, rules.least));
        }
        let clear = grown(
            &MultiPolygon(vec![opening.polygon.clone()]),
            -rules.kerf / 2.0,
        );
        if rules.kerf > 0.0 && clear.0.len() != 1 {
            found.extend(at(Weakness::Kerf, &opening.polygon, rules.kerf));
        }
    }
    // added ties are as broad as they must be
    found.extend(webs(untied, rules));
    found.extend(tongue(plate, openings, rules));
    let whole: f64 = untied.iter().map(|one| outline(&one.polygon)).sum();
    let tied: f64 = ties.iter().map(|tie| tie.width).sum();
    if tied > rules.tie_share * whole
        && let Some(tie) = ties.first()
    {
        found.push(Weak {
            what: Weakness::Ties,
            at: tie.at,
            width: tied,
            length: whole,
        });
    }
    found
}

fn at(what: Weakness, shape: &Polygon<f64>, width: f64) -> Option<Weak> {
    Some(Weak {
        what,
        at: shape.centroid()?.0,
        width,
        length: 0.0,
    })
}

/// The narrowest web, and the narrowest strip that a tie of this material would outdo.
fn webs(openings: &[Opening], rules: &Rules) -> Vec<Weak> {
    let mut narrowest: Option<(f64, Coord<f64>)> = None;
    for (index, one) in openings.iter().enumerate() {
        for other in openings.iter().skip(index + 1) {
            let near = rules.tie.max(rules.web) - SLACK;
            if let Some(width) = apart(&one.polygon, &other.polygon, near)
                && narrowest.is_none_or(|(least, _)| width < least)
                && let (Some(a), Some(b)) = (one.polygon.centroid(), other.polygon.centroid())
            {
                narrowest = Some((width, (a.0 + b.0) / 2.0));
            }
        }
    }
    narrowest
        .map(|(width, at)| Weak {
            what: if width < rules.web - SLACK {
                Weakness::Web
            } else {
                Weakness::Thin
            },
            at,
            width,
            length: 0.0,
        })
        .into_iter()
        .collect()
}

/// The strip of plate that is longest for its width, where it is too long.
///
/// A brush of each radius gets into all of the plate but its strips; what it leaves out is
/// measured as a strip.
fn tongue(plate: &Polygon<f64>, openings: &[Opening], rules: &Rules) -> Option<Weak> {
    /// Metres. Each is about 1.4 times the one before; none is half a tie, a joint or a gap
    /// of cells, into which it would just fit or just not.
    const BRUSHES: [f64; 5] = [0.011, 0.0155, 0.0215, 0.0305, 0.043];
    let cut = MultiPolygon(openings.iter().map(|one| one.polygon.clone()).collect());
    let sheet = MultiPolygon(vec![plate.clone()])
        .difference(&cut)
        .simplify(ROUGH);
    /// Metres. A strip is as long and as broad without bends of this size.
    const ROUGH: f64 = 0.000_5;
    let mut worst: Option<Weak> = None;
    let mut before = rules.web / 2.0;
    for brush in BRUSHES {
        let narrower = std::mem::replace(&mut before, brush);
        let core = roughly_grown(&roughly_grown(&sheet, -brush), brush + ROUGH);
        for left in &sheet.difference(&core) {
            let [length, width] = strip(left);
            // what is narrower has been found by the brush before; leavings in corners, and
            // what hangs together through them, are no strips
            let is_strip = width >= 0.8 * 2.0 * narrower && width <= 2.0 * brush;
            if !is_strip || length <= rules.tongue * width {
                continue;
            }
            if worst
                .as_ref()
                .is_none_or(|worst| length / width > worst.length / worst.width)
                && let Some(at) = middle(left)
            {
                worst = Some(Weak {
                    what: Weakness::Tongue,
                    at,
                    width,
                    length,
                });
            }
        }
    }
    worst
}

fn middle(shape: &Polygon<f64>) -> Option<Coord<f64>> {
    shape.bounding_rect().map(|room| room.center())
}
