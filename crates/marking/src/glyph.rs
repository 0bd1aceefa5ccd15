//! Numerals and capitals as stencils: outlines of Lexend SemiBold, their counters tied.
//!
//! A counter is bare ground inside a letter; a stencil would drop it. Two ties out of line
//! hold it (8 three; 4 is cut across its slope and through its bar), so that no painted
//! piece of a glyph has a hole.

use geo::algorithm::bool_ops::FillRule;
use geo::{Area, BooleanOps, BoundingRect, Centroid, Coord, Polygon, coord};
use ttf_parser::{Face, OutlineBuilder};

use crate::shape::{arc, ring, unit, without};

/// Lexend SemiBold 1.007 (SIL Open Font License 1.1, `fonts/OFL.txt`).
const FONT: &[u8] = include_bytes!("../fonts/Lexend-SemiBold.ttf");

/// Metres. A child's eye sees no corner of this size; the outline has about 12 sides a bow.
const FLAT: f64 = 0.000_3;

/// The characters that are kept: what courts are numbered and lettered with.
pub fn kept() -> impl Iterator<Item = char> {
    ('0'..='9').chain('A'..='Z').chain(['Ñ'])
}

/// Least ground between a letter and its mark, over the cap height: a web of the stencil.
const MARK_GAP: f64 = 0.13;

/// The pieces of a glyph of cap height `cap` whose ties are `tie` wide, metres: x to the
/// right, y up, its middle at the origin. Empty for a character that is not kept.
pub fn glyph(character: char, cap: f64, tie: f64) -> Vec<Polygon<f64>> {
    if !kept().any(|one| one == character) {
        return Vec::new();
    }
    let Some(whole) = outline(character, cap) else {
        return Vec::new();
    };
    let cuts: Vec<Polygon<f64>> = whole
        .iter()
        .flat_map(|shape| ties(character, shape, cap, tie))
        .collect();
    let mut pieces = Vec::new();
    for shape in &whole {
        pieces.extend(without(shape, &cuts));
    }
    pieces
}

/// The glyph before it is tied.
fn outline(character: char, cap: f64) -> Option<Vec<Polygon<f64>>> {
    let face = Face::parse(FONT, 0).ok()?;
    let scale = cap / f64::from(face.capital_height()?);
    let mut pen = Pen {
        scale,
        contours: Vec::new(),
    };
    face.outline_glyph(face.glyph_index(character)?, &mut pen)?;
    // strokes of a glyph overlap one another and turn back on themselves: what a contour
    // winds round at all is painted, and counters wind the other way
    let contours = pen.contours.into_iter().filter(|contour| contour.len() > 2);
    let wound: Vec<Polygon<f64>> = contours
        .map(|contour| Polygon::new(contour.into(), Vec::new()))
        .collect();
    let nothing = geo::MultiPolygon(Vec::new());
    let all = geo::MultiPolygon(wound).union_with_fill_rule(&nothing, FillRule::NonZero);
    let shapes = lifted(all.0, cap);
    let middle = geo::MultiPolygon(shapes.clone()).bounding_rect()?.center();
    Some(
        shapes
            .iter()
            .map(|shape| crate::shape::map(shape, |at| at - middle))
            .collect(),
    )
}

/// The shapes of a glyph with a mark that hangs over its letter lifted off it, so that the
/// web between them holds.
fn lifted(mut shapes: Vec<Polygon<f64>>, cap: f64) -> Vec<Polygon<f64>> {
    shapes.sort_by(|a, b| b.unsigned_area().total_cmp(&a.unsigned_area()));
    if let [letter, mark] = shapes.as_mut_slice()
        && let (Some(under), Some(over)) = (letter.bounding_rect(), mark.bounding_rect())
    {
        let lift = (MARK_GAP * cap - (over.min().y - under.max().y)).max(0.0);
        *mark = crate::shape::map(mark, |at| at + coord! { x: 0.0, y: lift });
    }
    shapes
}

/// Where the counters of one shape are tied.
fn ties(character: char, shape: &Polygon<f64>, cap: f64, tie: f64) -> Vec<Polygon<f64>> {
    // a stem is 0.20 of the cap height and swells in the bows; this passes through one
    let through = 0.27 * cap;
    let aside = 0.09 * cap;
    let mut counters: Vec<Counter> = shape.interiors().iter().filter_map(Counter::of).collect();
    counters.sort_by(|a, b| a.middle.y.total_cmp(&b.middle.y));
    let up = |counter: &Counter, aside: f64| {
        bar(
            counter.middle + coord! { x: aside, y: 0.0 },
            coord! { x: 0.0, y: 1.0 },
            counter.above + through,
            tie,
        )
    };
    let down = |counter: &Counter, aside: f64| {
        bar(
            counter.middle + coord! { x: aside, y: 0.0 },
            coord! { x: 0.0, y: -1.0 },
            counter.below + through,
            tie,
        )
    };
    // across a leaning stroke, from a counter's middle moved along that stroke
    let across = |counter: &Counter, lean: Coord<f64>, along: f64| {
        let lean = unit(lean);
        let normal = if lean.x > 0.0 {
            coord! { x: -lean.y, y: lean.x }
        } else {
            coord! { x: lean.y, y: -lean.x }
        };
        bar(counter.middle + lean * along, normal, 0.42 * cap, tie)
    };
    match (character, counters.as_slice()) {
        ('4', [only]) => {
            let slope = coord! { x: 0.60, y: 0.80 };
            vec![across(only, slope, 0.07 * cap), down(only, -0.02 * cap)]
        }
        ('A', [only]) => vec![
            across(only, coord! { x: -0.37, y: 0.93 }, 0.0),
            down(only, 0.0),
        ],
        (_, [only]) => vec![
            up(only, only.aside(tie, aside)),
            down(only, -only.aside(tie, aside)),
        ],
        (_, [low, high]) => {
            let waist = bar(
                low.middle,
                coord! { x: 0.0, y: 1.0 },
                high.middle.y - low.middle.y,
                tie,
            );
            vec![
                up(high, high.aside(tie, aside)),
                waist,
                down(low, low.aside(tie, aside)),
            ]
        }
        _ => Vec::new(),
    }
}

/// A counter's middle, and how far it opens above, below and to its narrower side.
struct Counter {
    middle: Coord<f64>,
    above: f64,
    below: f64,
    half: f64,
}

impl Counter {
    fn of(ring: &geo::LineString<f64>) -> Option<Counter> {
        let shape = Polygon::new(ring.clone(), Vec::new());
        let (middle, bounds) = (shape.centroid()?.0, shape.bounding_rect()?);
        (shape.unsigned_area() > 0.0).then(|| Counter {
            middle,
            above: bounds.max().y - middle.y,
            below: middle.y - bounds.min().y,
            half: (middle.x - bounds.min().x).min(bounds.max().x - middle.x),
        })
    }

    /// How far aside a tie may stand, `wanted` at most: clear of the upright beside it.
    fn aside(&self, tie: f64, wanted: f64) -> f64 {
        (self.half - 0.55 * tie).clamp(0.0, wanted)
    }
}

/// A slit from a point along a unit.
fn bar(from: Coord<f64>, way: Coord<f64>, length: f64, breadth: f64) -> Polygon<f64> {
    let aside = coord! { x: -way.y, y: way.x } * (breadth / 2.0);
    let to = from + way * length;
    ring(vec![from - aside, to - aside, to + aside, from + aside])
}

/// Draws a glyph's outline as points.
struct Pen {
    scale: f64,
    contours: Vec<Vec<Coord<f64>>>,
}

impl Pen {
    fn at(&self, x: f32, y: f32) -> Coord<f64> {
        coord! { x: f64::from(x) * self.scale, y: f64::from(y) * self.scale }
    }

    fn last(&self) -> Coord<f64> {
        self.contours
            .last()
            .and_then(|contour| contour.last())
            .copied()
            .unwrap_or_default()
    }

    /// Sides of a curve of this control polygon's length; a bow flatter than [`FLAT`]. The
    /// length over a circle's worth of sides errs to more of them.
    fn sides(length: f64) -> usize {
        let radius = length.max(FLAT) / std::f64::consts::FRAC_PI_2;
        arc(
            Coord::default(),
            [radius; 2],
            0.0,
            std::f64::consts::PI,
            FLAT,
        )
        .len()
    }

    fn curve(&mut self, length: f64, at: impl Fn(f64) -> Coord<f64>) {
        let sides = Pen::sides(length);
        let points = (1..=sides).map(|side| at(side as f64 / sides as f64));
        if let Some(contour) = self.contours.last_mut() {
            contour.extend(points);
        }
    }
}

impl OutlineBuilder for Pen {
    fn move_to(&mut self, x: f32, y: f32) {
        let at = self.at(x, y);
        self.contours.push(vec![at]);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        let at = self.at(x, y);
        if let Some(contour) = self.contours.last_mut() {
            contour.push(at);
        }
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let (a, b, c) = (self.last(), self.at(x1, y1), self.at(x, y));
        self.curve(span(a, b) + span(b, c), |t| {
            let s = 1.0 - t;
            a * (s * s) + b * (2.0 * s * t) + c * (t * t)
        });
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let (a, b, c, d) = (self.last(), self.at(x1, y1), self.at(x2, y2), self.at(x, y));
        self.curve(span(a, b) + span(b, c) + span(c, d), |t| {
            let s = 1.0 - t;
            a * (s * s * s) + b * (3.0 * s * s * t) + c * (3.0 * s * t * t) + d * (t * t * t)
        });
    }

    fn close(&mut self) {
        if let Some(contour) = self.contours.last_mut()
            && contour.len() > 1
            && contour.first() == contour.last()
        {
            contour.pop();
        }
    }
}

fn span(a: Coord<f64>, b: Coord<f64>) -> f64 {
    libm::hypot(b.x - a.x, b.y - a.y)
}

#[cfg(test)]
mod tests {
    use geo::{Area, BooleanOps, BoundingRect, Buffer, Validation};

    use super::*;

    const CAP: f64 = 0.15;
    const TIE: f64 = 0.016;
    /// Ledger `look.least` and `look.web`.
    const LEAST: f64 = 0.015;

    #[test]
    fn each_kept_glyph_is_a_stencil() {
        for character in kept() {
            let pieces = glyph(character, CAP, TIE);
            assert!(!pieces.is_empty(), "{character} is missing");
            for piece in &pieces {
                assert!(
                    piece.is_valid() && piece.interiors().is_empty(),
                    "{character}"
                );
                let brush = LEAST / 2.0 - 1e-6;
                assert_eq!(piece.buffer(-brush).0.len(), 1, "{character} is pinched");
            }
            for (index, piece) in pieces.iter().enumerate() {
                for other in pieces.iter().skip(index + 1) {
                    use geo::{Distance, Euclidean};
                    let tie = Euclidean.distance(piece, other);
                    assert!(tie >= LEAST, "{character}: a tie of {tie}");
                }
            }
        }
    }

    /// Two ties part a counter's ring in two, three part an 8; the rest stays whole.
    #[test]
    fn counters_get_their_ties_and_other_glyphs_none() {
        for (character, pieces) in [
            ('0', 2),
            ('1', 1),
            ('2', 1),
            ('3', 1),
            ('4', 2),
            ('5', 1),
            ('6', 2),
            ('7', 1),
            ('8', 2),
            ('9', 2),
        ] {
            assert_eq!(glyph(character, CAP, TIE).len(), pieces, "{character}");
        }
        for character in kept() {
            let whole: f64 = outline(character, CAP)
                .expect("kept")
                .iter()
                .map(Area::unsigned_area)
                .sum();
            let tied: f64 = glyph(character, CAP, TIE)
                .iter()
                .map(Area::unsigned_area)
                .sum();
            let cut = (whole - tied) / (CAP * 0.20 * TIE);
            let counters: usize = outline(character, CAP)
                .expect("kept")
                .iter()
                .map(|shape| shape.interiors().len())
                .sum();
            match counters {
                0 => assert!(cut.abs() < 1e-6, "{character} was cut"),
                // each tie goes through about a stem
                1 => assert!(
                    (1.4..=3.6).contains(&cut),
                    "{character}: {cut:.2} stems cut"
                ),
                _ => assert!(
                    (2.2..=5.0).contains(&cut),
                    "{character}: {cut:.2} stems cut"
                ),
            }
        }
    }

    /// The look (section 1): an even stem of 0.20 cap height, to its last digit and the
    /// capitals' own extra; measured on the L.
    #[test]
    fn a_stem_is_a_fifth_of_the_cap() {
        let [stem] = glyph('L', CAP, TIE).try_into().expect("L is one piece");
        let bounds = stem.bounding_rect().expect("it has corners");
        assert!((bounds.height() - CAP).abs() < 0.002);
        let across = crate::shape::rect([-1.0, 1.0], [0.02, 0.021]);
        let breadth = stem.intersection(&across).unsigned_area() / 0.001;
        assert!((breadth / CAP - 0.20).abs() < 0.02, "{}", breadth / CAP);
    }

    #[test]
    fn what_is_not_kept_is_nothing() {
        for character in ['a', ' ', 'é', '?'] {
            assert!(glyph(character, CAP, TIE).is_empty());
        }
    }
}
