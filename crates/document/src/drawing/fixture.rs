//! Plan symbols of what stands in a yard: true outlines, original insides.

use geo::Coord;
use ground::yard::{Fixture, FixtureKind, Footprint, More};

use super::hatch::{Hatch, Rings, hatch};
use super::mark::chevron;
use super::scene::{Dash, INK, Path, Rect, Scene, Spot, Step, Stroke, WHITE, pen};
use super::view::{Frame, View, along, far, right_of, way};

const BODY: Stroke = Stroke::solid(pen::FIXTURE);
const INNER: Stroke = Stroke::solid(pen::ZONE);
const FINE: Stroke = Stroke::solid(pen::THIN);

/// The footprint on the sheet: a ring, and for a disc its middle and radius.
pub struct Laid {
    /// Outline; for a beam its two ends.
    pub ring: Vec<Spot>,
    /// Middle and radius of a disc.
    pub disc: Option<(Spot, f64)>,
}

/// A fixture's footprint on the sheet.
pub fn laid(fixture: &Fixture, view: &View) -> Laid {
    match &fixture.shape {
        Footprint::Outline(outline) => Laid {
            ring: view.ring(outline.exterior()),
            disc: None,
        },
        Footprint::Disc { centre, radius } => {
            let (at, r) = (view.at(*centre), radius * view.mm);
            Laid {
                ring: circle(at, r, 48),
                disc: Some((at, r)),
            }
        }
        Footprint::Beam(a, b) => Laid {
            ring: vec![view.at(*a), view.at(*b)],
            disc: None,
        },
    }
}

/// Spots on a circle.
pub fn circle(at: Spot, radius: f64, count: usize) -> Vec<Spot> {
    (0..count)
        .map(|number| {
            let (sin, cos) = libm::sincos(core::f64::consts::TAU * number as f64 / count as f64);
            [at[0] + radius * cos, at[1] + radius * sin]
        })
        .collect()
}

/// Half length of a tree's crown on the sheet, mm: a sign, not a survey.
pub fn crown(trunk: f64) -> f64 {
    (trunk * 2.6).clamp(5.0, 14.0)
}

/// Draws a fixture.
pub fn draw(scene: &mut Scene, fixture: &Fixture, view: &View) {
    let laid = laid(fixture, view);
    let Some(frame) = Frame::round(&laid.ring) else {
        return;
    };
    let outline = match laid.disc {
        Some((at, radius)) => Path::circle(at, radius.max(0.4)),
        None if laid.ring.len() > 2 => Path::ring(&laid.ring),
        None => Path::line(&laid.ring),
    };
    let rings: Rings = vec![laid.ring.clone()];
    let beam = laid.ring.len() == 2;
    let body = |scene: &mut Scene| match beam {
        true => scene.stroke(outline.clone(), Stroke::solid(pen::WALL)),
        false => scene.shape(outline.clone(), WHITE, BODY),
    };
    match fixture.is {
        FixtureKind::Slide => {
            body(scene);
            slide(scene, &frame, &fixture.more, view);
        }
        FixtureKind::Swing => {
            if !beam {
                scene.stroke(outline.clone(), Stroke::dashed(pen::ZONE, Dash::Short));
            }
            swing(scene, &frame);
        }
        FixtureKind::TyreSwing => {
            if beam {
                body(scene);
            } else {
                scene.stroke(outline.clone(), Stroke::dashed(pen::ZONE, Dash::Short));
            }
            let tyre = (0.55 * view.mm).max(1.6);
            scene.shape(Path::circle(frame.centre, tyre), WHITE, BODY);
            scene.stroke(Path::circle(frame.centre, tyre * 0.5), BODY);
            let mut ropes = Path::default();
            for spot in circle(frame.centre, tyre * 0.75, 3) {
                ropes.add_line(&[frame.centre, spot]);
            }
            scene.stroke(ropes, FINE);
        }
        FixtureKind::Climber => {
            body(scene);
            if !beam {
                climber(scene, &frame, &rings);
            }
        }
        FixtureKind::Seesaw => seesaw(scene, &frame),
        FixtureKind::Rocker => {
            body(scene);
            let r = frame.b.max(1.0) * 0.5;
            let mut spring = Path::default();
            spring.add_line(&[-1.0, -0.5, 0.0, 0.5, 1.0].map(|x: f64| {
                let up = if (x * 2.0) as i64 % 2 == 0 { 0.6 } else { -0.6 };
                frame.off(x * r, up * r)
            }));
            scene.stroke(spring, INNER);
        }
        FixtureKind::Roundabout => {
            body(scene);
            let r = frame.b;
            scene.stroke(Path::circle(frame.centre, r * 0.3), INNER);
            let mut spokes = Path::default();
            for (inner, outer) in
                circle(frame.centre, r * 0.3, 6)
                    .into_iter()
                    .zip(circle(frame.centre, r, 6))
            {
                spokes.add_line(&[inner, outer]);
            }
            scene.stroke(spokes, INNER);
        }
        FixtureKind::House => {
            body(scene);
            let ridge = [
                frame.at(-1.0 + frame.b / frame.a.max(1e-9), 0.0),
                frame.at(1.0 - frame.b / frame.a.max(1e-9), 0.0),
            ];
            let mut roof = Path::line(&ridge);
            for (s, end) in [(-1.0, ridge[0]), (1.0, ridge[1])] {
                roof.add_line(&[frame.at(s, -1.0), end, frame.at(s, 1.0)]);
            }
            scene.stroke(roof, INNER);
        }
        FixtureKind::Tree => tree(scene, &laid, &frame),
        FixtureKind::Post => {
            scene.shape(outline.clone(), WHITE, BODY);
            scene.fill(Path::circle(frame.centre, (frame.b * 0.55).max(0.35)), INK);
        }
        FixtureKind::Lamp => {
            scene.shape(outline.clone(), WHITE, BODY);
            let r = frame.b.max(0.7);
            let mut rays = Path::default();
            for (from, to) in
                circle(frame.centre, r + 0.5, 8)
                    .into_iter()
                    .zip(circle(frame.centre, r + 1.5, 8))
            {
                rays.add_line(&[from, to]);
            }
            scene.stroke(rays, INNER);
        }
        FixtureKind::Bench => {
            body(scene);
            let mut slats = Path::default();
            for t in [-0.35, 0.3] {
                slats.add_line(&[frame.at(-1.0, t), frame.at(1.0, t)]);
            }
            scene.stroke(slats, INNER);
        }
        FixtureKind::Table => {
            body(scene);
            let inner = [[-0.7, -0.55], [0.7, -0.55], [0.7, 0.55], [-0.7, 0.55]]
                .map(|[s, t]| frame.at(s, t));
            scene.stroke(Path::ring(&inner), INNER);
        }
        FixtureKind::Shed => {
            body(scene);
            let mut cross = Path::line(&[frame.at(-1.0, -1.0), frame.at(1.0, 1.0)]);
            cross.add_line(&[frame.at(-1.0, 1.0), frame.at(1.0, -1.0)]);
            scene.stroke(cross, FINE);
        }
        FixtureKind::Building => {
            scene.shape(outline.clone(), WHITE, Stroke::solid(pen::WALL));
            hatch(scene, Hatch::Rising, &[rings], &[]);
        }
        FixtureKind::Planter => {
            body(scene);
            inner_ring(scene, &laid, &frame, 0.7);
            let mut leaves = Path::default();
            for s in [-0.55, 0.0, 0.55] {
                for spot in circle(frame.at(s, 0.0), frame.b * 0.35, 5) {
                    leaves.add_line(&[frame.at(s, 0.0), spot]);
                }
            }
            scene.stroke(leaves, FINE);
        }
        FixtureKind::Sandpit => {
            body(scene);
            inner_ring(scene, &laid, &frame, 0.8);
            hatch(
                scene,
                Hatch::Dots,
                &[shrunk(&rings, frame.centre, 0.7)],
                &[],
            );
        }
        FixtureKind::Drain => {
            body(scene);
            let mut bars = Path::default();
            for s in [-0.5, 0.0, 0.5] {
                bars.add_line(&[frame.at(s, -0.7), frame.at(s, 0.7)]);
            }
            scene.stroke(bars, INNER);
        }
        FixtureKind::Cover => {
            body(scene);
            let mut cross = Path::line(&[frame.at(-0.7, 0.0), frame.at(0.7, 0.0)]);
            cross.add_line(&[frame.at(0.0, -0.7), frame.at(0.0, 0.7)]);
            scene.stroke(cross, INNER);
        }
        FixtureKind::Hydrant => {
            body(scene);
            scene.fill(
                Path::ring(&circle(frame.centre, frame.b.max(0.6) * 0.7, 3)),
                INK,
            );
        }
        FixtureKind::Other => {
            body(scene);
            scene.stroke(
                Path::line(&[frame.at(-1.0, 1.0), frame.at(1.0, -1.0)]),
                FINE,
            );
        }
    }
}

fn shrunk(rings: &Rings, centre: Spot, share: f64) -> Rings {
    rings
        .iter()
        .map(|ring| {
            ring.iter()
                .map(|spot| {
                    [
                        centre[0] + share * (spot[0] - centre[0]),
                        centre[1] + share * (spot[1] - centre[1]),
                    ]
                })
                .collect()
        })
        .collect()
}

fn inner_ring(scene: &mut Scene, laid: &Laid, frame: &Frame, share: f64) {
    match laid.disc {
        Some((at, radius)) => scene.stroke(Path::circle(at, radius * share), INNER),
        None => {
            for ring in shrunk(&vec![laid.ring.clone()], frame.centre, share) {
                scene.stroke(Path::ring(&ring), INNER);
            }
        }
    }
}

/// Steps at the top, side walls, an arrow down the chute to the exit.
fn slide(scene: &mut Scene, frame: &Frame, more: &More, view: &View) {
    let exit = match more {
        More::Slide { exit: Some([a, b]) } => {
            let (a, b) = (view.at(*a), view.at(*b));
            Some([(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0])
        }
        _ => None,
    };
    // which end of the long way the exit is at
    let sign = exit.map_or(1.0, |spot: Spot| {
        let [x, y] = [spot[0] - frame.centre[0], spot[1] - frame.centre[1]];
        if x * frame.u[0] + y * frame.u[1] >= 0.0 {
            1.0
        } else {
            -1.0
        }
    });
    let platform = -0.42 * sign;
    let mut lines = Path::line(&[frame.at(platform, -1.0), frame.at(platform, 1.0)]);
    for t in [-0.72, 0.72] {
        lines.add_line(&[frame.at(platform, t), frame.at(sign, t)]);
    }
    for step in [0.62, 0.81] {
        lines.add_line(&[frame.at(-step * sign, -1.0), frame.at(-step * sign, 1.0)]);
    }
    scene.stroke(lines, INNER);
    let (from, to) = (
        frame.at(platform + 0.15 * sign, 0.0),
        frame.at(0.86 * sign, 0.0),
    );
    if far(from, to) > 2.0 {
        scene.stroke(Path::line(&[from, to]), Stroke::solid(pen::ELLIPSE));
        chevron(
            scene,
            to,
            way(from, to),
            (frame.b * 0.4).clamp(0.6, 1.4),
            Stroke::solid(pen::ELLIPSE),
        );
    }
}

/// Beam, splayed legs, seats hanging below.
fn swing(scene: &mut Scene, frame: &Frame) {
    let splay = (frame.a * 0.42).clamp(2.0, 8.0);
    scene.stroke(
        Path::line(&[frame.at(-1.0, 0.0), frame.at(1.0, 0.0)]),
        Stroke::solid(pen::WALL),
    );
    let mut legs = Path::default();
    for s in [-1.0, 1.0] {
        let foot = frame.at(s, 0.0);
        legs.add_line(&[along(foot, frame.v, splay), along(foot, frame.v, -splay)]);
    }
    scene.stroke(legs, BODY);
    let seat = (frame.a * 0.14).clamp(0.8, 2.4);
    for s in [-0.42, 0.42] {
        let at = |x: f64, y: f64| frame.off(s * frame.a + x, y);
        let ring = [
            at(-seat, -seat * 0.5),
            at(seat, -seat * 0.5),
            at(seat, seat * 0.5),
            at(-seat, seat * 0.5),
        ];
        scene.shape(Path::ring(&ring), WHITE, BODY);
    }
}

/// A net of bars with a knot at every crossing that lies inside.
fn climber(scene: &mut Scene, frame: &Frame, rings: &Rings) {
    let count = |half: f64| ((2.0 * half / 2.6) as usize).clamp(1, 12);
    let (nu, nv) = (count(frame.a), count(frame.b));
    let place =
        |number: usize, count: usize| -1.0 + 2.0 * (number as f64 + 1.0) / (count as f64 + 1.0);
    let mut knots = Path::default();
    let mut bars = Path::default();
    for i in 0..nu {
        for j in 0..nv {
            let here = (place(i, nu), place(j, nv));
            let spot = frame.at(here.0, here.1);
            if !super::taken::inside(rings, spot) {
                continue;
            }
            knots.add_circle(spot, 0.35);
            for (other, last) in [((i + 1, j), i + 1 >= nu), ((i, j + 1), j + 1 >= nv)] {
                if last {
                    continue;
                }
                let next = frame.at(place(other.0, nu), place(other.1, nv));
                if super::taken::inside(rings, next) {
                    bars.add_line(&[spot, next]);
                }
            }
        }
    }
    scene.stroke(bars, INNER);
    scene.fill(knots, INK);
}

/// A plank over its bar, a seat at either end.
fn seesaw(scene: &mut Scene, frame: &Frame) {
    let half = frame.b.clamp(0.5, 1.4);
    let plank = [
        frame.off(-frame.a, -half),
        frame.off(frame.a, -half),
        frame.off(frame.a, half),
        frame.off(-frame.a, half),
    ];
    scene.shape(Path::ring(&plank), WHITE, BODY);
    scene.stroke(
        Path::line(&[frame.off(0.0, -half - 1.2), frame.off(0.0, half + 1.2)]),
        Stroke::solid(pen::FENCE),
    );
    let mut grips = Path::default();
    for s in [-0.72, 0.72] {
        grips.add_line(&[frame.off(s * frame.a, -half), frame.off(s * frame.a, half)]);
    }
    scene.stroke(grips, INNER);
}

/// A trunk true to size; the crown is a sign only.
fn tree(scene: &mut Scene, laid: &Laid, frame: &Frame) {
    let radius = laid.disc.map_or(frame.b, |(_, radius)| radius);
    scene.stroke(
        scallops(frame.centre, crown(radius)),
        Stroke::dashed(pen::ZONE, Dash::Short),
    );
    let trunk = match laid.disc {
        Some((at, radius)) => Path::circle(at, radius.max(0.6)),
        None => Path::ring(&laid.ring),
    };
    scene.shape(trunk, WHITE, BODY);
    scene.fill(
        Path::circle(frame.centre, (radius * 0.35).clamp(0.4, 1.2)),
        INK,
    );
}

/// A ring of scallops.
pub fn scallops(at: Spot, radius: f64) -> Path {
    let count = ((core::f64::consts::TAU * radius / 4.2) as usize).max(8);
    let spots = circle(at, radius, count);
    let bow = far(spots[0], spots[1 % count]) * 0.55;
    let mut steps = vec![Step::Move(spots[0])];
    for number in 1..=count {
        steps.push(Step::Arc(
            [bow, bow],
            0.0,
            false,
            true,
            spots[number % count],
        ));
    }
    Path(steps)
}

/// A line of scallops from spot to spot, on the left hand of the way.
pub fn hedge(line: &[Spot]) -> Path {
    let mut steps = Vec::new();
    for pair in line.windows(2) {
        let count = (far(pair[0], pair[1]) / 3.0).round().max(1.0);
        let each = far(pair[0], pair[1]) / count;
        let to = way(pair[0], pair[1]);
        if steps.is_empty() {
            steps.push(Step::Move(pair[0]));
        }
        for number in 1..=(count as usize) {
            let spot = along(pair[0], to, each * number as f64);
            steps.push(Step::Arc([each / 2.0, each / 2.0], 0.0, false, true, spot));
        }
    }
    Path(steps)
}

/// The middle of a fixture's footprint in the yard.
pub fn middle(fixture: &Fixture) -> Coord<f64> {
    let spots: Vec<Coord<f64>> = match &fixture.shape {
        Footprint::Outline(outline) => outline.exterior().coords().copied().collect(),
        Footprint::Disc { centre, .. } => vec![*centre],
        Footprint::Beam(a, b) => vec![*a, *b],
    };
    let bounds = Rect::round(spots.iter().map(|c| [c.x, c.y])).unwrap_or(Rect {
        x: 0.0,
        y: 0.0,
        w: 0.0,
        h: 0.0,
    });
    let [x, y] = bounds.centre();
    Coord { x, y }
}

/// A swinging leaf: quarter disc from the open leaf to the closed one.
pub fn leaf(hinge: Spot, closed: Spot, into: Spot) -> (Rings, Path) {
    let radius = far(hinge, closed);
    let shut = way(hinge, closed);
    // the leaf stands open at a right angle, on the side of `into`
    let side = right_of(shut);
    let toward = [into[0] - hinge[0], into[1] - hinge[1]];
    let sign = if side[0] * toward[0] + side[1] * toward[1] >= 0.0 {
        1.0
    } else {
        -1.0
    };
    let open = along(hinge, side, sign * radius);
    let mut ring = vec![hinge];
    for number in 0..=12 {
        let (sin, cos) = libm::sincos(core::f64::consts::FRAC_PI_2 * f64::from(number) / 12.0);
        ring.push([
            hinge[0] + radius * (shut[0] * cos + sign * side[0] * sin),
            hinge[1] + radius * (shut[1] * cos + sign * side[1] * sin),
        ]);
    }
    let path = Path(vec![
        Step::Move(closed),
        Step::Arc([radius, radius], 0.0, false, sign > 0.0, open),
        Step::Line(hinge),
    ]);
    (vec![ring], path)
}
