//! Numerals and capitals as stencils: outlines of Lexend SemiBold, their counters tied.
//!
//! A counter is bare ground inside a letter; a stencil would drop it. Two ties out of line
//! hold it (8 three; 4 is cut across its slope and through its bar), so that no painted
//! piece of a glyph has a hole.

use geo::{Area, BoundingRect, Centroid, Coord, Polygon, coord};
use ttf_parser::{Face, OutlineBuilder};

use crate::shape::{arc, ring, together, without};

/// Lexend SemiBold 1.007 (SIL Open Font License 1.1, `fonts/OFL.txt`).
const FONT: &[u8] = include_bytes!("../fonts/Lexend-SemiBold.ttf");

/// Metres. A child's eye sees no corner of this size; the outline has about 12 sides a bow.
const FLAT: f64 = 0.000_3;

/// The pieces of a glyph of cap height `cap` whose ties are `tie` wide, metres: x to the
/// right, y up, its middle at the origin. Empty for a character that is not kept.
pub fn glyph(character: char, cap: f64, tie: f64) -> Vec<Polygon<f64>> {
    if !character.is_ascii_digit() && !character.is_ascii_uppercase() {
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
    // outer contours run clockwise in this format, counters the other way
    let (outer, counters): (Vec<_>, Vec<_>) = pen
        .contours
        .into_iter()
        .filter(|c| c.len() > 2)
        .partition(|contour| doubled_area(contour) < 0.0);
    let solid = together(&outer.into_iter().map(ring).collect::<Vec<_>>());
    let counters: Vec<Polygon<f64>> = counters.into_iter().map(ring).collect();
    let shapes: Vec<Polygon<f64>> = solid
        .iter()
        .flat_map(|shape| without(shape, &counters))
        .collect();
    let all = geo::MultiPolygon(shapes);
    let middle = all.bounding_rect()?.center();
    Some(
        all.0
            .iter()
            .map(|shape| crate::shape::map(shape, |at| at - middle))
            .collect(),
    )
}

fn doubled_area(contour: &[Coord<f64>]) -> f64 {
    let next = contour.iter().cycle().skip(1);
    contour
        .iter()
        .zip(next)
        .map(|(a, b)| a.x * b.y - b.x * a.y)
        .sum()
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
    match (character, counters.as_slice()) {
        ('4', [only]) => {
            let slope = crate::shape::unit(coord! { x: -0.80, y: 0.60 });
            vec![bar(only.middle, slope, 0.42 * cap, tie), down(only, aside)]
        }
        (_, [only]) => vec![up(only, aside), down(only, -aside)],
        (_, [low, high]) => {
            let waist = bar(
                low.middle + coord! { x: -aside, y: 0.0 },
                coord! { x: 0.0, y: 1.0 },
                high.middle.y - low.middle.y,
                tie,
            );
            vec![up(high, aside), waist, down(low, aside)]
        }
        _ => Vec::new(),
    }
}

/// A counter's middle, and how far it opens above and below.
struct Counter {
    middle: Coord<f64>,
    above: f64,
    below: f64,
}

impl Counter {
    fn of(ring: &geo::LineString<f64>) -> Option<Counter> {
        let shape = Polygon::new(ring.clone(), Vec::new());
        let (middle, bounds) = (shape.centroid()?.0, shape.bounding_rect()?);
        (shape.unsigned_area() > 0.0).then(|| Counter {
            middle,
            above: bounds.max().y - middle.y,
            below: middle.y - bounds.min().y,
        })
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
