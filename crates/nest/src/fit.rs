//! Where one part may not lie, seen from another: their no-fit polygon.
//!
//! The polygon is kept as the convex sums of the two parts' convex pieces, never united: a
//! point lies in a union when it lies in a piece. So nothing is clipped and nothing rounded
//! to a grid: each edge of a piece is a corner of one part against an edge of the other, to
//! the last bits of a double.

use crate::convex::{Point, area, difference};

/// Degrees. Round a corner the gap's circle is replaced by edges that touch it, one for each
/// turn of this much: at most 1.0 % of the gap too wide there, and never too narrow.
const ARC: f64 = 16.0;

/// A directed line: n·p < c is inside. The normal has length 1.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Line {
    pub(crate) normal: Point,
    pub(crate) at: f64,
}

impl Line {
    /// How far inside the point lies.
    pub(crate) fn depth(&self, p: Point) -> f64 {
        self.at - self.normal[0] * p[0] - self.normal[1] * p[1]
    }

    /// Where two lines cross. `None` for parallels (sine of their angle below 1e-9, where the
    /// crossing would be a thousand million depths away).
    pub(crate) fn cross(&self, other: &Line) -> Option<Point> {
        let sine = self.normal[0] * other.normal[1] - self.normal[1] * other.normal[0];
        (sine.abs() > 1e-9).then(|| {
            [
                (self.at * other.normal[1] - other.at * self.normal[1]) / sine,
                (other.at * self.normal[0] - self.at * other.normal[0]) / sine,
            ]
        })
    }

    /// The same line seen from an origin that lies at `-by`.
    pub(crate) fn moved(&self, by: Point) -> Line {
        let at = self.at + self.normal[0] * by[0] + self.normal[1] * by[1];
        Line {
            normal: self.normal,
            at,
        }
    }
}

#[derive(Clone, Debug)]
struct Piece {
    low: Point,
    high: Point,
    first: usize,
    end: usize,
}

/// A no-fit polygon: convex pieces, and the box round them all.
#[derive(Clone, Debug)]
pub(crate) struct Fit {
    pub(crate) low: Point,
    pub(crate) high: Point,
    pieces: Vec<Piece>,
    lines: Vec<Line>,
    grid: Grid,
}

/// Which pieces matter where: square by square of the box, those that may have a point deepest.
#[derive(Clone, Debug, Default)]
struct Grid {
    side: usize,
    /// For each square, where its pieces begin in `pieces`; one more at the end.
    begins: Vec<u32>,
    pieces: Vec<u32>,
}

/// Squares along a side of the grid, for up to so many pieces and for more: most squares are then
/// left with one to four pieces.
const SIDES: [(usize, usize); 3] = [(3, 1), (12, 16), (usize::MAX, 32)];

impl Fit {
    /// Of part b seen from part a, both as convex pieces, `gap` kept between them.
    pub(crate) fn new(a: &[Vec<Point>], b: &[Vec<Point>], gap: f64) -> Fit {
        let mut sums: Vec<Vec<Point>> = Vec::with_capacity(a.len() * b.len());
        for p in a {
            sums.extend(b.iter().map(|q| difference(p, q)));
        }
        // the largest first: it swallows most
        sums.sort_by(|p, q| area(q).total_cmp(&area(p)));
        let mut fit = Fit {
            low: [f64::INFINITY; 2],
            high: [f64::NEG_INFINITY; 2],
            pieces: Vec::new(),
            lines: Vec::new(),
            grid: Grid::default(),
        };
        for sum in sums {
            if !fit.pieces.iter().any(|piece| fit.covers(piece, &sum, gap)) {
                fit.add(&sum, gap);
            }
        }
        fit.grid = fit.sorted();
        fit
    }

    /// The grid of this polygon's pieces. Depth changes by no more than the way gone, so from a
    /// square's middle to its corners by half its diagonal: a piece that even so is nowhere
    /// deeper than another, or not entered, is left out.
    fn sorted(&self) -> Grid {
        let enough = |&&(pieces, _): &&(usize, usize)| self.pieces.len() <= pieces;
        let side = SIDES.iter().find(enough).map_or(1, |&(_, side)| side);
        let cell = [0, 1].map(|axis| (self.high[axis] - self.low[axis]) / side as f64);
        // a millionth more, for points that rounding puts into the next square
        let way = libm::hypot(cell[0], cell[1]) / 2.0 * (1.0 + 1e-6);
        let mut begins = vec![0];
        let mut pieces = Vec::new();
        for square in 0..side * side {
            let step = [square % side, square / side];
            let middle = [0, 1].map(|axis| self.low[axis] + (step[axis] as f64 + 0.5) * cell[axis]);
            let mut surely: f64 = 0.0;
            let mut depths: Vec<f64> = Vec::with_capacity(self.pieces.len());
            for piece in &self.pieces {
                let mut depth = f64::INFINITY;
                for line in &self.lines[piece.first..piece.end] {
                    depth = depth.min(line.depth(middle));
                    if depth + way < surely {
                        break;
                    }
                }
                surely = surely.max(depth - way);
                depths.push(depth);
            }
            let may = |(_, depth): &(usize, &f64)| **depth + way >= surely;
            pieces.extend(
                depths
                    .iter()
                    .enumerate()
                    .filter(may)
                    .map(|(piece, _)| piece as u32),
            );
            begins.push(pieces.len() as u32);
        }
        Grid {
            side,
            begins,
            pieces,
        }
    }

    /// The pieces that may have the point deepest; the point lies in the box.
    fn near(&self, p: Point) -> impl Iterator<Item = &Piece> {
        let side = self.grid.side;
        let step = [0, 1].map(|axis| {
            let share = (p[axis] - self.low[axis]) / (self.high[axis] - self.low[axis]);
            ((share * side as f64) as usize).min(side - 1)
        });
        let square = step[1] * side + step[0];
        let list = self.grid.begins[square] as usize..self.grid.begins[square + 1] as usize;
        self.grid.pieces[list]
            .iter()
            .map(|&piece| &self.pieces[piece as usize])
    }

    /// Whether the piece, without its gap, has all of the ring: gaps grow alike.
    fn covers(&self, piece: &Piece, ring: &[Point], gap: f64) -> bool {
        let lines = &self.lines[piece.first..piece.end];
        ring.iter()
            .all(|&p| lines.iter().all(|line| line.depth(p) >= gap))
    }

    fn add(&mut self, ring: &[Point], gap: f64) {
        let first = self.lines.len();
        let edges: Vec<Line> = (0..ring.len()).filter_map(|k| edge(ring, k, gap)).collect();
        for (k, line) in edges.iter().enumerate() {
            let next = edges[(k + 1) % edges.len()];
            self.lines.push(*line);
            if gap > 0.0 {
                self.round(ring, line, &next, gap);
            }
        }
        if gap > 0.0 {
            // the box's own edges, or a point would fall from depth to none in crossing them
            for normal in [[1.0, 0.0], [-1.0, 0.0], [0.0, 1.0], [0.0, -1.0]] {
                let at = support(ring, normal) + gap;
                self.lines.push(Line { normal, at });
            }
        }
        let mut low = [f64::INFINITY; 2];
        let mut high = [f64::NEG_INFINITY; 2];
        for p in ring {
            for axis in 0..2 {
                low[axis] = low[axis].min(p[axis] - gap);
                high[axis] = high[axis].max(p[axis] + gap);
            }
        }
        for axis in 0..2 {
            self.low[axis] = self.low[axis].min(low[axis]);
            self.high[axis] = self.high[axis].max(high[axis]);
        }
        self.pieces.push(Piece {
            low,
            high,
            first,
            end: self.lines.len(),
        });
    }

    /// Edges between two neighbours that keep the corner between them about a circle.
    fn round(&mut self, ring: &[Point], line: &Line, next: &Line, gap: f64) {
        let (u, v) = (line.normal, next.normal);
        let angle = libm::atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]);
        let parts = libm::ceil(angle.max(0.0).to_degrees() / ARC) as usize;
        for k in 1..parts {
            let (sin, cos) = libm::sincos(angle * k as f64 / parts as f64);
            let normal = [u[0] * cos - u[1] * sin, u[0] * sin + u[1] * cos];
            let at = support(ring, normal) + gap;
            self.lines.push(Line { normal, at });
        }
    }

    /// How deep the point lies in the piece that has it deepest; 0 outside of all.
    pub(crate) fn depth(&self, p: Point) -> f64 {
        let mut deepest = 0.0;
        if outside(self.low, self.high, p) {
            return deepest;
        }
        for piece in self.near(p) {
            if outside(piece.low, piece.high, p) {
                continue;
            }
            let mut depth = f64::INFINITY;
            for line in &self.lines[piece.first..piece.end] {
                depth = depth.min(line.depth(p));
                if depth <= deepest {
                    break;
                }
            }
            deepest = deepest.max(depth);
        }
        deepest
    }

    /// The nearest edge of every piece that has the point deeper than `touch`.
    pub(crate) fn ways_out(&self, p: Point, touch: f64, out: &mut Vec<(f64, Line)>) {
        if outside(self.low, self.high, p) {
            return;
        }
        for piece in &self.pieces {
            if outside(piece.low, piece.high, p) {
                continue;
            }
            let lines = &self.lines[piece.first..piece.end];
            let nearest = lines
                .iter()
                .map(|line| (line.depth(p), *line))
                .min_by(|a, b| a.0.total_cmp(&b.0));
            out.extend(nearest.filter(|(depth, _)| *depth > touch));
        }
    }

    /// On the line where the other coordinate is `across`, the open stretches along `axis`
    /// that lie in a piece; pieces that the line only touches are left out. All moved by `by`.
    pub(crate) fn blocked(
        &self,
        axis: usize,
        across: f64,
        by: Point,
        touch: f64,
        out: &mut Vec<[f64; 2]>,
    ) {
        let other = 1 - axis;
        let across = across - by[other];
        if across <= self.low[other] || across >= self.high[other] {
            return;
        }
        for piece in &self.pieces {
            if across <= piece.low[other] + touch || across >= piece.high[other] - touch {
                continue;
            }
            let mut stretch = [piece.low[axis], piece.high[axis]];
            for line in &self.lines[piece.first..piece.end] {
                let (along, rest) = (line.normal[axis], line.at - line.normal[other] * across);
                if along > 0.0 {
                    stretch[1] = stretch[1].min(rest / along);
                } else if along < 0.0 {
                    stretch[0] = stretch[0].max(rest / along);
                } else if rest <= touch {
                    stretch[1] = f64::NEG_INFINITY;
                }
            }
            if stretch[1] - stretch[0] > touch {
                out.push([stretch[0] + by[axis], stretch[1] + by[axis]]);
            }
        }
    }

    /// The lowest and highest of each piece along an axis: where something may come to rest on it.
    pub(crate) fn rests(&self, axis: usize) -> impl Iterator<Item = f64> + '_ {
        self.pieces
            .iter()
            .flat_map(move |piece| [piece.low[axis], piece.high[axis]])
    }
}

fn outside(low: Point, high: Point, p: Point) -> bool {
    p[0] <= low[0] || p[0] >= high[0] || p[1] <= low[1] || p[1] >= high[1]
}

/// How far a ring reaches along a direction.
fn support(ring: &[Point], normal: Point) -> f64 {
    let along = ring.iter().map(|p| normal[0] * p[0] + normal[1] * p[1]);
    along.fold(f64::NEG_INFINITY, f64::max)
}

/// Share of a ring's reach. A corner may lie so far outside an edge by rounding alone.
const NOISE: f64 = 1e-14;

/// The line of the ring's edge from corner `k`, the ring inside, `gap` further out. Where two
/// sums all but coincide the edge between them points anywhere: its line is then moved out till
/// the ring is inside.
fn edge(ring: &[Point], k: usize, gap: f64) -> Option<Line> {
    let (a, b) = (ring[k], ring[(k + 1) % ring.len()]);
    let along = [b[0] - a[0], b[1] - a[1]];
    let length = libm::hypot(along[0], along[1]);
    (length > 0.0).then(|| {
        let normal = [along[1] / length, -along[0] / length];
        let through = normal[0] * a[0] + normal[1] * a[1];
        let reach = support(ring, normal);
        let sound = reach - through <= NOISE * reach.abs();
        Line {
            normal,
            at: if sound { through } else { reach } + gap,
        }
    })
}
