//! Cells in columns and rows that are gone over freely.

use std::f64::consts::PI;

use geo::{Coord, coord};

use crate::canvas::Canvas;
use crate::shape::{Pose, rect};

/// Columns across the way, rows ahead. Cells are counted row by row from the start, each
/// row from the left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grid {
    /// Across the way.
    pub columns: usize,
    /// Ahead.
    pub rows: usize,
}

/// In steps: a jump to any of the eight cells around, no farther.
pub const AROUND: f64 = 1.5;

impl Grid {
    /// How many cells.
    pub fn cells(self) -> usize {
        self.columns * self.rows
    }

    /// The middles, in steps, from the middle of the first row.
    pub fn steps(self) -> Vec<Coord<f64>> {
        let left = (self.columns as f64 - 1.0) / 2.0;
        let row = |row: usize| {
            (0..self.columns).map(move |column| coord! { x: row as f64, y: left - column as f64 })
        };
        (0..self.rows).flat_map(row).collect()
    }

    /// The middles on the ground, the start's flat side at the origin.
    ///
    /// A child's feet are a step from the first row, or as far as its cells leave room.
    pub fn middles(self, canvas: &Canvas, step: f64, deep: f64) -> Vec<Pose> {
        let first = (step - canvas.look.stand).max(deep / 2.0 + canvas.look.gap);
        let place = |at: Coord<f64>| Pose::at(first + step * at.x, step * at.y);
        self.steps().into_iter().map(place).collect()
    }

    /// Cells that lie no farther than so many steps from one.
    fn near(self, from: Coord<f64>, steps: f64) -> Vec<usize> {
        let places = self.steps().into_iter().enumerate();
        let near = places.filter(|(_, at)| {
            let far = libm::hypot(at.x - from.x, at.y - from.y);
            far > 0.0 && far <= steps
        });
        near.map(|(cell, _)| cell).collect()
    }

    /// Lets routes begin at `start`, enter by the cells of the first row ahead of it, and
    /// go on from each cell to those within so many steps.
    ///
    /// - `cells`: numbers of the cells, in their order
    pub fn roam(self, canvas: &mut Canvas, start: usize, cells: &[usize], steps: f64) {
        let numbers = |near: Vec<usize>| -> Vec<usize> {
            near.iter()
                .filter_map(|cell| cells.get(*cell).copied())
                .collect()
        };
        let before = coord! { x: -1.0, y: 0.0 };
        canvas.follow(start, numbers(self.near(before, AROUND)));
        for (cell, from) in cells.iter().zip(self.steps()) {
            canvas.follow(*cell, numbers(self.near(from, steps)));
        }
    }

    /// Pebbles off the first row's left corner, past every run-out, and the ground of it all.
    pub fn surround(self, canvas: &mut Canvas, middles: &[Pose]) {
        let look = canvas.look;
        canvas.needs_about();
        canvas.needs(rect(
            [-look.start / 2.0 - look.behind, 0.0],
            [-look.start / 2.0 - look.sway, look.start / 2.0 + look.sway],
        ));
        let corner = middles.first().map_or(Coord::default(), |pose| pose.at);
        wait_aslant(canvas, corner);
    }
}

/// Three pebbles aslant behind a cell on the left, past its run-out.
pub fn wait_aslant(canvas: &mut Canvas, corner: Coord<f64>) {
    let look = canvas.look;
    // a cell's half diagonal and a run-out lie inside
    let radius = look.run_out_other + look.start / 2.0 + look.pebble;
    let step = 2.0 * libm::asin((look.pebble_apart / 2.0 / radius).min(1.0));
    let door = Pose::at(0.0, 0.0).at;
    canvas.pebbles(corner, radius, 0.75 * PI - step, 1.0, 3, door);
}
