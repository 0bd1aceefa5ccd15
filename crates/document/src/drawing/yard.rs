//! A yard in plan: ground and its zones, edges, openings, fixtures, survey points.

use geo::{BooleanOps, Coord, Distance, Euclidean, LineString, MultiPolygon, Point};
use ground::result::{Blocked, Ground, Why};
use ground::yard::{EdgeKind, Yard};
use survey::result::Survey;

use super::fixture;
use super::hatch::{Hatch, Rings, hatch};
use super::mark;
use super::scene::{Dash, INK, Path, Scene, Spot, Stroke, WHITE, pen};
use super::taken::{Taken, weight};
use super::view::{View, along, far, right_of, way};

/// What a plan is drawn from.
#[derive(Clone, Copy)]
pub struct Plan<'a> {
    /// The yard.
    pub yard: &'a Yard,
    /// Its ground.
    pub ground: &'a Ground,
    /// Its survey, where there is one.
    pub survey: Option<&'a Survey>,
}

/// Layers of zones, the lowest first: what is higher hides the hatch of what is lower.
const LAYERS: [Layer; 9] = [
    Layer::Margin,
    Layer::Soft,
    Layer::Clear,
    Layer::Alone,
    Layer::Remark,
    Layer::Floor,
    Layer::Leaf,
    Layer::Drain,
    Layer::Route,
];

/// A kind of zone as drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Layer {
    Margin,
    Soft,
    Clear,
    Alone,
    Remark,
    Floor,
    Leaf,
    Drain,
    Route,
}

/// The layer of a blocked patch; a footprint is drawn as the fixture itself.
pub fn layer(blocked: &Blocked) -> Option<Layer> {
    Some(match blocked.why {
        Why::Footprint => return None,
        Why::ClearZone if blocked.alone => Layer::Alone,
        Why::ClearZone => Layer::Clear,
        Why::Surface => Layer::Soft,
        Why::EdgeMargin | Why::FixtureMargin => Layer::Margin,
        Why::Drain => Layer::Drain,
        Why::Swing => Layer::Leaf,
        Why::DoorFloor => Layer::Floor,
        Why::Route => Layer::Route,
        Why::Remark => Layer::Remark,
    })
}

impl Layer {
    /// Its hatch; drains have rings and routes chevrons instead.
    pub fn hatch(self) -> Option<Hatch> {
        Some(match self {
            Layer::Margin => Hatch::Margin,
            Layer::Soft => Hatch::Soft,
            Layer::Clear => Hatch::Clear,
            Layer::Alone => Hatch::Alone,
            Layer::Remark => Hatch::Wave,
            Layer::Floor => Hatch::DoorFloor,
            Layer::Leaf => Hatch::Door,
            Layer::Drain | Layer::Route => return None,
        })
    }
}

/// Draws the whole yard and marks on `taken` what labels must keep off.
pub fn draw(scene: &mut Scene, taken: &mut Taken, plan: &Plan, view: &View) {
    surfaces(scene, taken, plan, view);
    zones(scene, taken, plan, view);
    edges(scene, taken, plan.yard, view);
    openings(scene, taken, plan.yard, view);
    for thing in &plan.yard.fixtures {
        fixture::draw(scene, thing, view);
        let ring = fixture::laid(thing, view).ring;
        taken.ground(&vec![ring.clone()], weight::HARD);
        taken.ring(&ring, weight::HARD);
    }
    for &stand in &plan.yard.stands {
        let at = view.at(stand);
        mark::stand(scene, at);
        taken.ground(&vec![fixture::circle(at, 2.2, 12)], weight::HARD);
    }
    if let Some(survey) = plan.survey {
        for point in &survey.points {
            let at = view.at(Coord {
                x: point.x,
                y: point.y,
            });
            mark::point(
                scene,
                at,
                if on_boundary(plan.yard, point.x, point.y) {
                    1.1
                } else {
                    0.7
                },
            );
            taken.ground(&vec![fixture::circle(at, 1.2, 12)], weight::HARD);
        }
    }
}

/// Whether a place is a corner of the yard, to a millimetre.
pub fn on_boundary(yard: &Yard, x: f64, y: f64) -> bool {
    yard.boundary
        .exterior()
        .coords()
        .any(|c| libm::hypot(c.x - x, c.y - y) < 1e-3)
}

fn surfaces(scene: &mut Scene, taken: &mut Taken, plan: &Plan, view: &View) {
    for surface in &plan.yard.surfaces {
        for ring in view.rings(&surface.outline) {
            taken.ring(&ring, weight::LINE);
            scene.stroke(Path::ring(&ring), Stroke::solid(pen::HAIR));
        }
    }
}

fn zones(scene: &mut Scene, taken: &mut Taken, plan: &Plan, view: &View) {
    let of = |wanted: Layer| -> Vec<Rings> {
        plan.ground
            .blocked
            .iter()
            .filter(|blocked| layer(blocked) == Some(wanted))
            .map(|blocked| view.rings(&blocked.polygon))
            .collect()
    };
    let layers: Vec<(Layer, Vec<Rings>)> = LAYERS.iter().map(|&one| (one, of(one))).collect();
    for (number, (one, areas)) in layers.iter().enumerate() {
        let above: Vec<Rings> = layers
            .iter()
            .skip(number + 1)
            .flat_map(|(_, areas)| areas.clone())
            .collect();
        if let Some(kind) = one.hatch() {
            hatch(scene, kind, areas, &above);
        }
        for rings in areas {
            taken.ground(rings, weight::HATCH);
        }
    }
    for (one, areas) in &layers {
        let stroke = match one {
            Layer::Margin | Layer::Leaf => continue,
            Layer::Soft => Stroke::solid(pen::ZONE),
            Layer::Clear | Layer::Alone => Stroke::dashed(pen::ZONE, Dash::Zone),
            Layer::Remark => Stroke::dashed(pen::THIN, Dash::Zone),
            Layer::Floor => Stroke::dashed(pen::THIN, Dash::Short),
            Layer::Drain => Stroke::solid(pen::THIN),
            Layer::Route => Stroke::dashed(pen::ZONE, Dash::Route),
        };
        for rings in areas {
            for ring in rings {
                taken.ring(ring, weight::LINE);
                scene.stroke(Path::ring(ring), stroke);
                if *one == Layer::Drain {
                    scene.stroke(Path::ring(&toward_middle(ring, 0.72)), stroke);
                }
            }
        }
    }
    margin_edges(scene, taken, plan, view);
}

fn toward_middle(ring: &[Spot], share: f64) -> Vec<Spot> {
    let count = ring.len().max(1) as f64;
    let sum = ring
        .iter()
        .fold([0.0, 0.0], |sum, spot| [sum[0] + spot[0], sum[1] + spot[1]]);
    let middle = [sum[0] / count, sum[1] / count];
    ring.iter()
        .map(|spot| along(middle, [spot[0] - middle[0], spot[1] - middle[1]], share))
        .collect()
}

/// The inner edge of all margins together, where it does not run along the yard's own edge.
fn margin_edges(scene: &mut Scene, taken: &mut Taken, plan: &Plan, view: &View) {
    /// Metres: an edge nearer than this to the yard's own is the yard's own.
    const SAME: f64 = 0.02;
    let margins: Vec<_> = plan
        .ground
        .blocked
        .iter()
        .filter(|blocked| layer(blocked) == Some(Layer::Margin))
        .map(|blocked| blocked.polygon.clone())
        .collect();
    let Some((first, rest)) = margins.split_first() else {
        return;
    };
    let one = rest
        .iter()
        .fold(MultiPolygon(vec![first.clone()]), |sum, next| {
            sum.union(&MultiPolygon(vec![next.clone()]))
        });
    let edge = plan.yard.boundary.exterior();
    let mut path = Path::default();
    for polygon in &one {
        for ring in std::iter::once(polygon.exterior()).chain(polygon.interiors()) {
            for line in ring.lines() {
                let middle: Point<f64> = ((line.start + line.end) / 2.0).into();
                if Euclidean.distance(&middle, edge) > SAME {
                    let ends = [view.at(line.start), view.at(line.end)];
                    taken.line(&ends, weight::LINE);
                    path.add_line(&ends);
                }
            }
        }
    }
    scene.stroke(path, Stroke::solid(pen::HAIR));
}

/// An opening's ends in the yard, and whether its stretch of edge is left out.
fn gaps(yard: &Yard) -> Vec<[Coord<f64>; 2]> {
    yard.doors
        .iter()
        .map(|door| door.jambs)
        .chain(yard.gates.iter().map(|gate| gate.posts))
        .collect()
}

/// The stretches of one side that stand between its openings.
fn standing(a: Coord<f64>, b: Coord<f64>, gaps: &[[Coord<f64>; 2]]) -> Vec<[Coord<f64>; 2]> {
    /// Metres that an opening may lie off its wall: a wall is as thick as that.
    const OFF: f64 = 0.35;
    let length = libm::hypot(b.x - a.x, b.y - a.y);
    if length <= 0.0 {
        return Vec::new();
    }
    let way = Coord {
        x: (b.x - a.x) / length,
        y: (b.y - a.y) / length,
    };
    let mut kept = vec![(0.0, length)];
    for gap in gaps {
        let put = gap.map(|p| {
            let from = p - a;
            (
                from.x * way.x + from.y * way.y,
                (from.y * way.x - from.x * way.y).abs(),
            )
        });
        let (low, high) = (put[0].0.min(put[1].0), put[0].0.max(put[1].0));
        if put.iter().any(|p| p.1 > OFF) || high < 0.0 || low > length {
            continue;
        }
        kept = kept
            .into_iter()
            .flat_map(|(from, to)| [(from, f64::min(to, low)), (f64::max(from, high), to)])
            .filter(|(from, to)| to - from > 1e-6)
            .collect();
    }
    let at = |t: f64| a + way * t;
    kept.into_iter()
        .map(|(from, to)| [at(from), at(to)])
        .collect()
}

fn edges(scene: &mut Scene, taken: &mut Taken, yard: &Yard, view: &View) {
    let gaps = gaps(yard);
    for edge in &yard.edges {
        for side in edge.line.lines() {
            for piece in standing(side.start, side.end, &gaps) {
                let spots = piece.map(|place| view.at(place));
                self::edge(scene, &spots, edge.is);
                taken.line(&spots, weight::HARD);
                let out = right_of(way(spots[0], spots[1]));
                taken.line(&spots.map(|spot| along(spot, out, 0.7)), weight::HARD);
                taken.line(&spots.map(|spot| along(spot, out, -0.7)), weight::HARD);
            }
        }
    }
}

/// One stretch of the yard's edge; the yard lies to its left.
pub fn edge(scene: &mut Scene, line: &[Spot; 2], is: EdgeKind) {
    let (to, length) = (way(line[0], line[1]), far(line[0], line[1]));
    let out = right_of(to);
    match is {
        EdgeKind::Wall => scene.stroke(Path::line(line), Stroke::solid(pen::WALL)),
        EdgeKind::Fence => {
            scene.stroke(Path::line(line), Stroke::solid(pen::FENCE));
            let count = (length / 12.0).round().max(1.0);
            let mut rings = Path::default();
            for number in 0..(count as usize) {
                rings.add_circle(
                    along(line[0], to, length / count * (number as f64 + 0.5)),
                    0.55,
                );
            }
            scene.shape(rings, WHITE, Stroke::solid(pen::ZONE));
        }
        EdgeKind::Hedge => {
            scene.stroke(Path::line(line), Stroke::solid(pen::HAIR));
            scene.stroke(fixture::hedge(line), Stroke::solid(pen::FIXTURE));
        }
        EdgeKind::Kerb => {
            let mut path = Path::line(line);
            path.add_line(&line.map(|spot| along(spot, out, 0.9)));
            scene.stroke(path, Stroke::solid(pen::ELLIPSE));
        }
        EdgeKind::Drop => {
            scene.stroke(Path::line(line), Stroke::solid(pen::FIXTURE));
            let mut teeth = Path::default();
            let count = (length / 1.6) as usize;
            for number in 0..=count {
                let foot = along(line[0], to, 1.6 * number as f64);
                let deep = if number % 2 == 0 { 2.2 } else { 1.2 };
                teeth.add_line(&[foot, along(foot, out, deep)]);
            }
            scene.stroke(teeth, Stroke::solid(pen::THIN));
        }
        EdgeKind::Open => scene.stroke(Path::line(line), Stroke::dashed(pen::ELLIPSE, Dash::Long)),
    }
}

/// The middle of the yard as its ring has it: a way to tell in from out.
fn inward(yard: &Yard, a: Coord<f64>, b: Coord<f64>) -> Coord<f64> {
    let middle = (a + b) / 2.0;
    let length = libm::hypot(b.x - a.x, b.y - a.y).max(1e-9);
    let side = Coord {
        x: -(b.y - a.y) / length,
        y: (b.x - a.x) / length,
    };
    let probe = middle + side * 0.05;
    let within = super::taken::inside(
        &vec![
            yard.boundary
                .exterior()
                .coords()
                .map(|c| [c.x, c.y])
                .collect(),
        ],
        [probe.x, probe.y],
    );
    if within { middle + side } else { middle - side }
}

fn openings(scene: &mut Scene, taken: &mut Taken, yard: &Yard, view: &View) {
    for door in &yard.doors {
        let [a, b] = door.jambs;
        let into = inward(yard, a, b);
        let toward = if door.opens_out { into } else { (a + b) - into };
        opening(
            scene,
            taken,
            view,
            door.jambs,
            door.hinge,
            toward,
            Stroke::solid(pen::THIN),
        );
        let spots = door.jambs.map(|jamb| view.at(jamb));
        let across = right_of(way(spots[0], spots[1]));
        let mut jambs = Path::default();
        for spot in spots {
            jambs.add_line(&[along(spot, across, 0.9), along(spot, across, -0.9)]);
        }
        scene.stroke(jambs, Stroke::solid(pen::FIXTURE));
    }
    for gate in &yard.gates {
        let [a, b] = gate.posts;
        let into = inward(yard, a, b);
        let toward = if gate.opens_in { into } else { (a + b) - into };
        opening(
            scene,
            taken,
            view,
            gate.posts,
            gate.hinge,
            toward,
            Stroke::dashed(pen::ELLIPSE, Dash::Short),
        );
        for post in gate.posts {
            scene.fill(Path::circle(view.at(post), 0.7), INK);
        }
    }
}

fn opening(
    scene: &mut Scene,
    taken: &mut Taken,
    view: &View,
    ends: [Coord<f64>; 2],
    hinge: Option<usize>,
    toward: Coord<f64>,
    sill: Stroke,
) {
    let spots = ends.map(|end| view.at(end));
    scene.stroke(Path::line(&spots), sill);
    taken.line(&spots, weight::HARD);
    match hinge {
        Some(hinge) => {
            let hinge = hinge.min(1);
            let (rings, path) = fixture::leaf(spots[hinge], spots[1 - hinge], view.at(toward));
            scene.shape(path, WHITE, Stroke::solid(pen::ZONE));
            hatch(scene, Hatch::Door, std::slice::from_ref(&rings), &[]);
            if let Some(ring) = rings.first() {
                taken.ring(ring, weight::HARD);
                if let (Some(&at), Some(&open)) = (ring.first(), ring.last()) {
                    scene.stroke(Path::line(&[at, open]), Stroke::solid(pen::FIXTURE));
                }
            }
            taken.ground(&rings, weight::HARD);
        }
        None => {
            let out = right_of(way(spots[0], spots[1]));
            scene.stroke(
                Path::line(&spots.map(|spot| along(spot, out, 0.8))),
                Stroke::solid(pen::ZONE),
            );
        }
    }
}

/// Corners of the yard on the sheet, anticlockwise as the reader sees them.
pub fn corners(yard: &Yard, view: &View) -> Vec<Spot> {
    view.ring(yard.boundary.exterior())
}

/// The place of a route where its label stands best, and its way there: the middle of its
/// longest straight piece first.
pub fn label_places(line: &LineString<f64>, view: &View) -> Vec<(Spot, Spot, f64)> {
    let spots = view.line(line);
    let mut pieces: Vec<(f64, Spot, Spot)> = spots
        .windows(2)
        .map(|pair| (far(pair[0], pair[1]), pair[0], way(pair[0], pair[1])))
        .collect();
    pieces.sort_by(|a, b| b.0.total_cmp(&a.0));
    pieces
        .into_iter()
        .flat_map(|(length, from, to)| {
            [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8]
                .map(|share| (along(from, to, length * share), to, length))
        })
        .collect()
}
