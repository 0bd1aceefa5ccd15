//! A figure in the making. The parts of the look (section 1) are laid on it one by one: cells
//! in `cells`, everything that leads, waits or decorates in `signs`.

use geo::{Coord, Polygon, coord};

use crate::colour::Part;
use crate::figure::{Cell, Figure, Lane, LaneKind, Outline, Paint, Takes};
use crate::look::Look;
use crate::shape::{Pose, ring, together, unit};
use crate::way::Way;

/// What a family draws on.
pub struct Canvas<'a> {
    /// Sizes and paints.
    pub look: &'a Look,
    paint: Vec<Paint>,
    /// Cells so far.
    pub cells: Vec<Cell>,
    lanes: Vec<Lane>,
    pub(crate) wait: Vec<Coord<f64>>,
    needs: Vec<Polygon<f64>>,
}

impl<'a> Canvas<'a> {
    /// A bare one.
    pub fn new(look: &'a Look) -> Canvas<'a> {
        Canvas {
            look,
            paint: Vec::new(),
            cells: Vec::new(),
            lanes: Vec::new(),
            wait: Vec::new(),
            needs: Vec::new(),
        }
    }

    /// Paints a shape of the part's frame, which is not drawn where nothing is painted.
    pub fn lay(&mut self, part: Part, pose: Pose, shape: impl FnOnce(&Look) -> Polygon<f64>) {
        if self.look.bare {
            return;
        }
        let colour = self.look.palette.colour(part);
        self.paint.push(Paint {
            colour,
            polygon: pose.polygon(&shape(self.look)),
        });
    }

    /// A lane that is travelled.
    pub fn lane(&mut self, kind: LaneKind, way: &Way, width: f64) {
        let line = way.line(0.0, 0.0, way.length(0.0), self.look.flat);
        self.lanes.push(Lane {
            kind,
            line: geo::LineString(line),
            width,
            pieces: way.pieces(),
        });
    }

    /// A cell that may end a route and that nothing follows yet.
    pub(crate) fn cell(
        &mut self,
        id: impl Into<String>,
        outline: Outline,
        centre: Coord<f64>,
        takes: Takes,
    ) -> usize {
        self.cells.push(Cell {
            id: id.into(),
            outline,
            centre,
            takes,
            start: false,
            end: true,
            next: Some(Vec::new()),
            run_up: false,
        });
        self.cells.len() - 1
    }

    /// A cell that is no painted thing of its own, as along a bank.
    pub fn spot(
        &mut self,
        id: impl Into<String>,
        centre: Coord<f64>,
        radius: f64,
        takes: Takes,
    ) -> usize {
        self.cell(id, Outline::Disc { radius }, centre, takes)
    }

    /// Lets each of these cells follow the one before.
    pub fn chain(&mut self, cells: &[usize]) {
        for pair in cells.windows(2) {
            if let [from, to] = pair
                && let Some(cell) = self.cells.get_mut(*from)
            {
                cell.next = Some(vec![*to]);
            }
        }
    }

    /// Lets these cells follow one.
    pub fn follow(&mut self, cell: usize, next: Vec<usize>) {
        if let Some(cell) = self.cells.get_mut(cell) {
            cell.next = Some(next);
        }
    }

    /// Lets a cell be landed on with one foot or with both, as one likes.
    pub fn either(&mut self, cell: usize) -> usize {
        if let Some(cell) = self.cells.get_mut(cell) {
            cell.takes = Takes::Either;
        }
        cell
    }

    /// Makes a cell the place where every route begins and none ends.
    pub fn begin(&mut self, cell: usize) {
        if let Some(cell) = self.cells.get_mut(cell) {
            (cell.start, cell.end) = (true, false);
        }
    }

    /// Ground of cells that are gone over freely: sway round each, and the run-out of every
    /// flight that may be a route's last, straight on.
    pub fn needs_about(&mut self) {
        let look = self.look;
        if look.bare {
            return;
        }
        let mut ground = Vec::new();
        for cell in &self.cells {
            ground.extend(around(
                cell.centre,
                cell.outline.out(cell.centre) + look.sway,
            ));
            let next = cell.next.iter().flatten();
            for last in next.filter_map(|next| self.cells.get(*next)) {
                if !last.end {
                    continue;
                }
                let way = unit(last.centre - cell.centre);
                let past = last.outline.ahead(last.centre, way) + look.run_out_other;
                let aside = coord! { x: -way.y, y: way.x } * look.sway;
                let stop = last.centre + way * past;
                ground.extend([stop - aside, stop + aside]);
            }
        }
        self.needs(hull(ground));
    }

    /// Ground that the figure needs in use.
    pub fn needs(&mut self, shape: Polygon<f64>) {
        if !self.look.bare {
            self.needs.push(shape);
        }
    }

    /// The figure, rounded as it is handed on.
    pub fn figure(self, family: &str, lengths: Vec<(String, f64)>, tracks: u32) -> Figure {
        let envelope = together(&self.needs)
            .into_iter()
            .next()
            .map(|largest| Polygon::new(largest.exterior().clone(), Vec::new()))
            .unwrap_or_else(|| ring(Vec::new()));
        Figure {
            family: family.to_owned(),
            lengths,
            paint: self.paint,
            cells: self.cells,
            facing: None,
            lanes: self.lanes,
            tracks,
            wait: self.wait,
            envelope,
        }
        .rounded()
    }
}

/// Eight corners round a spot, none nearer than `radius`.
pub(crate) fn around(spot: Coord<f64>, radius: f64) -> Vec<Coord<f64>> {
    let eighth = std::f64::consts::FRAC_PI_4;
    let out = radius / libm::cos(eighth / 2.0);
    (0..8)
        .map(|corner| {
            let (sin, cos) = libm::sincos(eighth * (f64::from(corner) + 0.5));
            coord! { x: spot.x + out * cos, y: spot.y + out * sin }
        })
        .collect()
}

/// The least convex shape round points.
pub(crate) fn hull(points: Vec<Coord<f64>>) -> Polygon<f64> {
    use geo::ConvexHull;
    geo::MultiPoint::from(points).convex_hull()
}
