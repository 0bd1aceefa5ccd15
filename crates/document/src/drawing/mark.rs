//! Marks of the drawing itself: our sign, north, scale bar, arrows, survey points, the
//! lozenge of a doubtful reading, dimension lines.

use super::scene::{Anchor, Dash, INK, Path, Rect, Scene, Spot, Step, Stroke, Text, WHITE, pen};
use super::view::{along, far, right_of, way};

/// Turns a figure given in its own units into a path on the sheet.
fn placed(rings: &[&[Step]], at: Spot, scale: f64, turn: f64) -> Path {
    let (sin, cos) = libm::sincos(turn.to_radians());
    let put = |[x, y]: Spot| {
        [
            at[0] + scale * (x * cos - y * sin),
            at[1] + scale * (x * sin + y * cos),
        ]
    };
    let step = |step: &Step| match *step {
        Step::Move(spot) => Step::Move(put(spot)),
        Step::Line(spot) => Step::Line(put(spot)),
        Step::Arc([a, b], own, long, clockwise, to) => {
            Step::Arc([a * scale, b * scale], own + turn, long, clockwise, put(to))
        }
        Step::Close => Step::Close,
    };
    Path(
        rings
            .iter()
            .flat_map(|ring| ring.iter().map(step))
            .collect(),
    )
}

/// A cell: a band round bare ground with its three slits; radius 200, `bare` within.
fn cell(bare: f64) -> Vec<Step> {
    let slit = 10.0;
    let heel = 64.4;
    let on = |radius: f64, y: f64| libm::sqrt(radius * radius - y * y);
    let arc = |radius: f64, clockwise, to| Step::Arc([radius, radius], 0.0, false, clockwise, to);
    let mut steps = Vec::new();
    for side in [1.0, -1.0] {
        let outer = heel + 20.0;
        steps.extend([
            Step::Move([-on(200.0, outer), side * outer]),
            arc(200.0, side < 0.0, [on(200.0, slit), side * slit]),
            Step::Line([on(bare, slit), side * slit]),
            arc(bare, side > 0.0, [-on(bare, outer), side * outer]),
            Step::Close,
        ]);
    }
    steps.extend([
        Step::Move([-on(200.0, heel), heel]),
        arc(200.0, true, [-on(200.0, heel), -heel]),
        Step::Line([-on(bare, heel), -heel]),
        arc(bare, false, [-on(bare, heel), heel]),
        Step::Close,
    ]);
    steps
}

/// Our sign, a cell that points up; `radius` in mm.
pub fn sign(scene: &mut Scene, at: Spot, radius: f64) {
    scene.fill(placed(&[&cell(120.0)], at, radius / 200.0, -90.0), INK);
}

/// North: a cell with a split needle. `bearing` is that of the sheet's right-hand way.
pub fn north(scene: &mut Scene, at: Spot, radius: f64, bearing: f64, letter: &str, cap: f64) {
    // the right-hand way lies `bearing` clockwise of north: north lies that far anticlockwise of it
    let turn = 90.0 - bearing;
    scene.fill(
        placed(&[&cell(148.0)], at, radius / 200.0, turn - 90.0),
        INK,
    );
    let half = |side: f64| {
        [
            Step::Move([0.0, -270.0]),
            Step::Line([side * 64.0, 82.0]),
            Step::Line([0.0, 45.0]),
            Step::Close,
        ]
    };
    scene.fill(placed(&[&half(1.0)], at, radius / 200.0, turn), INK);
    scene.shape(
        placed(&[&half(-1.0)], at, radius / 200.0, turn),
        WHITE,
        Stroke::solid(pen::ZONE),
    );
    let (sin, cos) = libm::sincos(turn.to_radians());
    let reach = radius * 1.35 + cap * 0.85;
    let spot = [at[0] + reach * sin, at[1] - reach * cos + cap / 2.0];
    scene.text(Text::new(letter, spot, cap).bold().middle());
}

/// A rounded strip of solid and open steps with a figure at every step.
pub fn scale_bar(scene: &mut Scene, at: Spot, step: f64, figures: &[String], cap: f64) {
    let steps = figures.len().saturating_sub(1);
    let strip = Rect {
        x: at[0],
        y: at[1],
        w: step * steps as f64,
        h: 1.6,
    };
    scene.fill(Path::plate(strip, 0.8), WHITE);
    for number in (0..steps).step_by(2) {
        let (x, end) = (
            at[0] + step * number as f64,
            at[0] + step * (number + 1) as f64,
        );
        let piece = if number == 0 {
            Path(vec![
                Step::Move([x + 0.8, at[1]]),
                Step::Line([end, at[1]]),
                Step::Line([end, at[1] + 1.6]),
                Step::Line([x + 0.8, at[1] + 1.6]),
                Step::Arc([0.8, 0.8], 0.0, false, true, [x + 0.8, at[1]]),
                Step::Close,
            ])
        } else {
            Path::ring(&[
                [x, at[1]],
                [end, at[1]],
                [end, at[1] + 1.6],
                [x, at[1] + 1.6],
            ])
        };
        scene.fill(piece, INK);
    }
    scene.stroke(Path::plate(strip, 0.8), Stroke::solid(pen::ZONE));
    for (number, figure) in figures.iter().enumerate() {
        let spot = [at[0] + step * number as f64, at[1] + 1.6 + cap + 1.0];
        scene.text(Text::new(figure, spot, cap).middle());
    }
}

/// An open arrow head with its point at `tip`.
pub fn chevron(scene: &mut Scene, tip: Spot, to: Spot, size: f64, stroke: Stroke) {
    let side = right_of(to);
    let back = along(tip, to, -size);
    scene.stroke(
        Path::line(&[along(back, side, size), tip, along(back, side, -size)]),
        stroke,
    );
}

/// A survey point.
pub fn point(scene: &mut Scene, at: Spot, radius: f64) {
    scene.shape(Path::circle(at, radius), WHITE, Stroke::solid(pen::ELLIPSE));
    scene.fill(Path::circle(at, radius * 0.32), INK);
}

/// A question mark in a lozenge.
pub fn lozenge(scene: &mut Scene, at: Spot, half: f64) {
    let [x, y] = at;
    let ring = Path::ring(&[[x, y - half], [x + half, y], [x, y + half], [x - half, y]]);
    scene.shape(ring, WHITE, Stroke::solid(pen::ELLIPSE));
    let cap = half * 0.8;
    scene.text(Text::new("?", [x, y + cap / 2.0], cap).bold().middle());
}

/// A triangle where staff stand.
pub fn stand(scene: &mut Scene, at: Spot) {
    let [x, y] = at;
    let ring = Path::ring(&[[x, y - 2.1], [x + 2.0, y + 1.5], [x - 2.0, y + 1.5]]);
    scene.shape(ring, WHITE, Stroke::solid(pen::ELLIPSE));
}

/// A number in a solid disc.
pub fn number(scene: &mut Scene, at: Spot, figure: &str, cap: f64) {
    // more than one figure widens the disc: no text may be smaller than a note
    let (half, more) = (cap * 0.92, figure.chars().count().saturating_sub(1) as f64);
    let wide = half + 0.3 * cap * more;
    let plate = Rect {
        x: at[0] - wide,
        y: at[1] - half,
        w: 2.0 * wide,
        h: 2.0 * half,
    };
    scene.fill(Path::plate(plate, half), INK);
    let mut text = Text::new(figure, [at[0], at[1] + cap / 2.0], cap)
        .bold()
        .middle();
    text.colour = WHITE;
    scene.text(text);
}

/// Degrees clockwise at which a text along `to` is read from below or from the right.
pub fn reading_turn(to: Spot) -> f64 {
    /// A wall this near to upright is read from the right, whichever way it leans.
    const UPRIGHT: f64 = 85.0;
    let turn = libm::atan2(to[1], to[0]).to_degrees();
    let turn = if turn > UPRIGHT { turn - 180.0 } else { turn };
    if turn < UPRIGHT - 180.0 {
        turn + 180.0
    } else {
        turn
    }
}

/// A dimension line from `a` to `b`, `off` mm out along `out`.
#[derive(Clone, Debug)]
pub struct Dimension {
    /// The line's ends.
    pub ends: [Spot; 2],
    /// Where the figure stands, on its baseline.
    pub figure: Text,
    extensions: [[Spot; 2]; 2],
}

impl Dimension {
    /// Lays it out: dots at the ends, gapped extensions, the figure above.
    pub fn new(a: Spot, b: Spot, out: Spot, off: f64, figure: &str, cap: f64) -> Dimension {
        let ends = [along(a, out, off), along(b, out, off)];
        let turn = reading_turn(way(a, b));
        let (sin, cos) = libm::sincos(turn.to_radians());
        let middle = [
            (ends[0][0] + ends[1][0]) / 2.0,
            (ends[0][1] + ends[1][1]) / 2.0,
        ];
        // above, as the text is read
        let at = along(middle, [sin, -cos], 1.0);
        Dimension {
            ends,
            figure: Text::new(figure, at, cap).middle().turned(turn),
            extensions: [
                [along(a, out, 1.2), along(ends[0], out, 1.2)],
                [along(b, out, 1.2), along(ends[1], out, 1.2)],
            ],
        }
    }

    /// The same with its figure below the line.
    pub fn under(&self) -> Dimension {
        let mut under = self.clone();
        let (sin, cos) = libm::sincos(self.figure.turn.to_radians());
        under.figure.at = along(self.figure.at, [-sin, cos], 2.0 + self.figure.cap);
        under
    }

    /// The same without its extensions: a chain between places that are drawn anyway.
    pub fn bare(mut self) -> Dimension {
        self.extensions = self.ends.map(|end| [end, end]);
        self
    }

    /// The same with its figure moved along the line.
    pub fn slid(&self, to: Spot, by: f64) -> Dimension {
        let mut slid = self.clone();
        slid.figure.at = along(self.figure.at, to, by);
        slid
    }

    /// Length on the sheet, mm.
    pub fn length(&self) -> f64 {
        far(self.ends[0], self.ends[1])
    }

    /// Draws it.
    pub fn draw(self, scene: &mut Scene) {
        let mut path = Path::line(&self.ends);
        for extension in &self.extensions {
            path.add_line(extension);
        }
        scene.stroke(path, Stroke::solid(pen::THIN));
        let mut dots = Path::circle(self.ends[0], 0.5);
        dots.add_circle(self.ends[1], 0.5);
        scene.fill(dots, INK);
        scene.text(self.figure);
    }
}

/// The slab of a text, with room round it.
pub fn slab_of(text: &Text, room: f64) -> super::taken::Slab {
    let width = text.width();
    let tail = text.cap * 0.3;
    let shift = match text.anchor {
        Anchor::Start => width / 2.0,
        Anchor::Middle => 0.0,
        Anchor::End => -width / 2.0,
    };
    let (sin, cos) = libm::sincos(text.turn.to_radians());
    let down = (tail - text.cap) / 2.0;
    super::taken::Slab {
        centre: [
            text.at[0] + shift * cos - down * sin,
            text.at[1] + shift * sin + down * cos,
        ],
        half: [width / 2.0 + room, (text.cap + tail) / 2.0 + room],
        turn: text.turn,
    }
}

/// A leader: a thin line from a label to what it names, with a dot there.
pub fn leader(scene: &mut Scene, from: Spot, to: Spot) {
    scene.stroke(
        Path::line(&[from, to]),
        Stroke {
            dash: Dash::Solid,
            ..Stroke::solid(pen::THIN)
        },
    );
    scene.fill(Path::circle(to, 0.45), INK);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dimensions_are_read_from_below_or_from_the_right() {
        for (to, turn) in [
            ([1.0, 0.0], 0.0),
            ([-1.0, 0.0], 0.0),
            ([0.0, 1.0], -90.0),
            ([0.0, -1.0], -90.0),
            ([0.6, 0.8], 53.130_102),
            ([-0.6, -0.8], 53.130_102),
            ([-0.6, 0.8], -53.130_102),
            ([0.001, 1.0], -90.057_296),
            ([-0.001, 1.0], -89.942_704),
        ] {
            assert!(
                (reading_turn(to) - turn).abs() < 1e-5,
                "{to:?}: {}",
                reading_turn(to)
            );
        }
    }

    /// Worked by hand: the frame's x axis bears 90 (east), so north is up the sheet; at 312
    /// north lies 312 degrees anticlockwise of x, which is 48 clockwise: down to the right,
    /// three quarters past.
    #[test]
    fn north_points_where_the_bearing_says() {
        let tip = |bearing: f64| {
            let mut scene = Scene::new(50.0, 50.0);
            north(&mut scene, [25.0, 25.0], 4.0, bearing, "N", 2.5);
            let Some(super::super::scene::Item::Path(path, ..)) = scene.items.get(1) else {
                return [0.0; 2];
            };
            let Some(Step::Move(spot)) = path.0.first() else {
                return [0.0; 2];
            };
            way([25.0, 25.0], *spot)
        };
        let near = |a: Spot, b: Spot| far(a, b) < 1e-9;
        assert!(near(tip(90.0), [0.0, -1.0]));
        assert!(near(tip(0.0), [1.0, 0.0]));
        assert!(near(tip(180.0), [-1.0, 0.0]));
        let (sin, cos) = libm::sincos(312f64.to_radians());
        assert!(near(tip(312.0), [cos, -sin]));
    }
}
