//! The shortest walk through ground with holes, exact.
//!
//! The ground is triangulated with its rims as constraints. A shortest walk bends only at
//! corners of the rims that poke into the ground, and there only round them; so A* steps
//! from corner to corner, looking from each through the triangles, and only into the
//! wedge into which a taut string could turn. All decisions are made in whole grid
//! steps and are exact; only lengths are rounded.

use std::cmp::Ordering;
use std::collections::{BTreeMap, BinaryHeap};

use geo::{Coord, MultiPolygon};
use i_overlay::i_float::int::point::IntPoint;
use spade::{ConstrainedDelaunayTriangulation, HasPosition, Point2, Triangulation};

use crate::grid::{Grid, Ring};

/// A triangulated ground.
pub struct Mesh {
    points: Vec<IntPoint>,
    triangles: Vec<Triangle>,
    /// Free triangles round each corner, in fans between two rims.
    fans: Vec<Fan>,
    /// The fan of each corner of each triangle.
    fan_of: Vec<[usize; 3]>,
    ends: [usize; 2],
}

#[derive(Clone, Copy)]
struct Triangle {
    /// Corners, anticlockwise.
    corners: [usize; 3],
    /// The free triangle across the side from corner i to the next, if no rim is between.
    across: [Option<usize>; 3],
}

/// The free triangles round a corner, anticlockwise.
struct Fan {
    corner: usize,
    triangles: Vec<usize>,
    /// Whether more than half a turn is free: only there does a taut string bend.
    pokes: bool,
}

struct Vertex {
    at: Point2<f64>,
    index: usize,
}

impl HasPosition for Vertex {
    type Scalar = f64;
    fn position(&self) -> Point2<f64> {
        self.at
    }
}

/// The shortest walk from one point to another inside `ground`, both ends included;
/// `None` when there is none. Ends outside the ground have no walk.
pub fn shortest(
    grid: &Grid,
    ground: &MultiPolygon<f64>,
    from: Coord<f64>,
    to: Coord<f64>,
) -> Option<Vec<Coord<f64>>> {
    let mesh = Mesh::of(grid, ground, [grid.point(from), grid.point(to)])?;
    let walk = mesh.search()?;
    Some(
        walk.into_iter()
            .map(|corner| grid.metres(mesh.points[corner]))
            .collect(),
    )
}

impl Mesh {
    fn of(grid: &Grid, ground: &MultiPolygon<f64>, ends: [IntPoint; 2]) -> Option<Mesh> {
        let mut points: Vec<IntPoint> = Vec::new();
        let mut known: BTreeMap<(i32, i32), usize> = BTreeMap::new();
        let mut index = |point: IntPoint| {
            *known.entry((point.x, point.y)).or_insert_with(|| {
                points.push(point);
                points.len() - 1
            })
        };
        let mut rims: Vec<[usize; 2]> = Vec::new();
        let rings = ground
            .0
            .iter()
            .flat_map(|polygon| std::iter::once(polygon.exterior()).chain(polygon.interiors()));
        for ring in rings {
            let ring: Ring = grid.ring(ring);
            let ring: Vec<usize> = ring.into_iter().map(&mut index).collect();
            rims.extend((0..ring.len()).map(|i| [ring[i], ring[(i + 1) % ring.len()]]));
        }
        rims.retain(|[a, b]| a != b);
        let ends = ends.map(&mut index);
        let vertices = points.iter().enumerate().map(|(index, point)| Vertex {
            at: Point2::new(f64::from(point.x), f64::from(point.y)),
            index,
        });
        // Rims come out of one overlay and do not cross; should one, it is left out, and
        // the flood below then finds less ground, never more than two sides of it.
        let cdt = ConstrainedDelaunayTriangulation::<Vertex>::try_bulk_load_cdt(
            vertices.collect(),
            rims,
            |_| {},
        )
        .ok()?;
        let (triangles, fan_of, fans) = connect(&cdt, &points);
        Some(Mesh {
            points,
            triangles,
            fans,
            fan_of,
            ends,
        })
    }

    fn search(&self) -> Option<Vec<usize>> {
        let [start, goal] = self.ends;
        if start == goal {
            return self
                .fans
                .iter()
                .any(|fan| fan.corner == start)
                .then(|| vec![start, goal]);
        }
        let mut best: Vec<Option<Reached>> = vec![None; self.fans.len()];
        let mut heap = BinaryHeap::new();
        for (fan, _) in self
            .fans
            .iter()
            .enumerate()
            .filter(|(_, fan)| fan.corner == start)
        {
            best[fan] = Some(Reached {
                walked: 0.0,
                from: None,
                through: None,
                done: false,
            });
            heap.push(Candidate {
                least: self.apart(start, goal),
                fan,
            });
        }
        while let Some(Candidate { fan, .. }) = heap.pop() {
            let Some(reached) = best[fan].filter(|reached| !reached.done) else {
                continue;
            };
            best[fan] = Some(Reached {
                done: true,
                ..reached
            });
            let here = self.fans[fan].corner;
            if here == goal {
                return Some(self.trace(&best, fan));
            }
            for (next, through) in self.seen(fan, reached) {
                let corner = self.fans[next].corner;
                let walked = reached.walked + self.apart(here, corner);
                if best[next].is_none_or(|known| walked < known.walked) {
                    best[next] = Some(Reached {
                        walked,
                        from: Some(fan),
                        through: Some(through),
                        done: false,
                    });
                    heap.push(Candidate {
                        least: walked + self.apart(corner, goal),
                        fan: next,
                    });
                }
            }
        }
        None
    }

    fn trace(&self, best: &[Option<Reached>], last: usize) -> Vec<usize> {
        let mut walk = Vec::new();
        let mut fan = Some(last);
        while let Some(at) = fan {
            walk.push(self.fans[at].corner);
            fan = best[at].and_then(|reached| reached.from);
        }
        walk.reverse();
        walk
    }

    fn apart(&self, a: usize, b: usize) -> f64 {
        let (a, b) = (self.points[a], self.points[b]);
        libm::hypot(
            f64::from(a.x) - f64::from(b.x),
            f64::from(a.y) - f64::from(b.y),
        )
    }

    /// The fans that a taut string can go on to from a fan, each with the triangle
    /// through which it comes.
    fn seen(&self, from: usize, reached: Reached) -> Vec<(usize, usize)> {
        let fan = &self.fans[from];
        let eye = Wide::from(self.points[fan.corner]);
        let before = reached
            .from
            .map(|parent| Wide::from(self.points[self.fans[parent].corner]));
        let came = reached
            .through
            .and_then(|t| fan.triangles.iter().position(|&at| at == t));
        let mut seen = Vec::new();
        for (i, &triangle) in fan.triangles.iter().enumerate() {
            let k = self.corner_in(triangle, fan.corner);
            let [right, left] = [(k + 1) % 3, (k + 2) % 3];
            let corners = self.triangles[triangle].corners;
            let mut cone = [right, left].map(|side| Wide::from(self.points[corners[side]]));
            let mut kept = [true, true];
            // A string that turns left at a rim goes on beyond straight ahead, and so
            // for right: of each wedge only that part is looked into.
            if let Some((before, came)) = before.zip(came) {
                let ahead = eye.beyond(before);
                let taut = cone.map(|side| match i.cmp(&came) {
                    Ordering::Greater => turn(before, eye, side) >= 0,
                    Ordering::Less => turn(before, eye, side) <= 0,
                    Ordering::Equal => false,
                });
                kept = taut;
                match (i.cmp(&came), taut) {
                    (Ordering::Equal, _) | (_, [false, false]) => continue,
                    (Ordering::Greater, [false, true]) => cone[0] = ahead,
                    (Ordering::Less, [true, false]) => cone[1] = ahead,
                    _ => {}
                }
            }
            for (side, corner) in [right, left].into_iter().enumerate() {
                let next = self.fan_of[triangle][corner];
                if kept[side] && self.useful(next) {
                    seen.push((next, triangle));
                }
            }
            if let Some(across) = self.triangles[triangle].across[right] {
                self.look(
                    eye,
                    cone,
                    across,
                    [corners[right], corners[left]],
                    &mut seen,
                );
            }
        }
        seen
    }

    /// Looks from `eye` into a triangle through one of its sides, between two bounds.
    fn look(
        &self,
        eye: Wide,
        cone: [Wide; 2],
        triangle: usize,
        through: [usize; 2],
        seen: &mut Vec<(usize, usize)>,
    ) {
        let mut stack = vec![(triangle, through, cone)];
        while let Some((triangle, [right, left], cone)) = stack.pop() {
            let at = self.triangles[triangle];
            // the far corner follows the side's right end, which is its own left end here
            let k = self.corner_in(triangle, right);
            let (side_right, far) = (k, (k + 1) % 3);
            let corner = at.corners[far];
            let point = Wide::from(self.points[corner]);
            let of_right = turn(eye, cone[0], point);
            let of_left = turn(eye, cone[1], point);
            let next = self.fan_of[triangle][far];
            if of_right >= 0 && of_left <= 0 && self.useful(next) {
                seen.push((next, triangle));
            }
            if of_right > 0
                && let Some(across) = at.across[side_right]
            {
                let bound = if of_left < 0 { point } else { cone[1] };
                stack.push((across, [right, corner], [cone[0], bound]));
            }
            if of_left < 0
                && let Some(across) = at.across[far]
            {
                let bound = if of_right > 0 { point } else { cone[0] };
                stack.push((across, [corner, left], [bound, cone[1]]));
            }
        }
    }

    fn useful(&self, fan: usize) -> bool {
        self.fans[fan].pokes || self.fans[fan].corner == self.ends[1]
    }

    fn corner_in(&self, triangle: usize, corner: usize) -> usize {
        self.triangles[triangle]
            .corners
            .iter()
            .position(|&c| c == corner)
            .unwrap_or(0)
    }
}

#[derive(Clone, Copy)]
struct Reached {
    walked: f64,
    from: Option<usize>,
    /// The triangle through which the string comes.
    through: Option<usize>,
    done: bool,
}

/// A fan to look from, by the least length of a walk over it; ties by number.
struct Candidate {
    least: f64,
    fan: usize,
}

impl Ord for Candidate {
    fn cmp(&self, other: &Candidate) -> Ordering {
        other
            .least
            .total_cmp(&self.least)
            .then(other.fan.cmp(&self.fan))
    }
}
impl PartialOrd for Candidate {
    fn partial_cmp(&self, other: &Candidate) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}
impl PartialEq for Candidate {
    fn eq(&self, other: &Candidate) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}
impl Eq for Candidate {}

/// A grid point with room for what lies beyond the grid.
#[derive(Clone, Copy)]
struct Wide {
    x: i64,
    y: i64,
}

impl From<IntPoint> for Wide {
    fn from(point: IntPoint) -> Wide {
        Wide {
            x: point.x.into(),
            y: point.y.into(),
        }
    }
}

impl Wide {
    /// As far beyond this point as it is from `before`, straight on.
    fn beyond(self, before: Wide) -> Wide {
        Wide {
            x: 2 * self.x - before.x,
            y: 2 * self.y - before.y,
        }
    }
}

/// Positive where the way a, b, c turns left; exact.
fn turn(a: Wide, b: Wide, c: Wide) -> i128 {
    let [ax, ay, bx, by, cx, cy] = [a.x, a.y, b.x, b.y, c.x, c.y].map(i128::from);
    (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
}

type Cdt = ConstrainedDelaunayTriangulation<Vertex>;

/// The free triangles, their neighbours and the fans round their corners.
fn connect(cdt: &Cdt, points: &[IntPoint]) -> (Vec<Triangle>, Vec<[usize; 3]>, Vec<Fan>) {
    let free = flood(cdt);
    let mut number = vec![None; free.len()];
    let mut count = 0;
    for (face, &is_free) in free.iter().enumerate() {
        if is_free {
            number[face] = Some(count);
            count += 1;
        }
    }
    let mut triangles = Vec::with_capacity(count);
    for face in cdt.inner_faces().filter(|face| free[face.fix().index()]) {
        let sides = face.adjacent_edges();
        let corners = sides.map(|side| side.from().data().index);
        let across = sides.map(|side| match side.is_constraint_edge() {
            true => None,
            false => number[side.rev().face().fix().index()],
        });
        triangles.push(Triangle { corners, across });
    }
    let (fan_of, fans) = fan_out(&triangles, points);
    (triangles, fan_of, fans)
}

/// Which faces are ground: crossing a rim changes sides, from outside inwards.
fn flood(cdt: &Cdt) -> Vec<bool> {
    let outer = cdt.outer_face().fix().index();
    let mut free: Vec<Option<bool>> = vec![None; cdt.num_all_faces()];
    free[outer] = Some(false);
    let mut todo: Vec<_> = Vec::new();
    for edge in cdt.convex_hull() {
        for side in [edge, edge.rev()] {
            let face = side.face().fix().index();
            if free[face].is_none() {
                free[face] = Some(side.is_constraint_edge());
                todo.extend(side.face().as_inner());
            }
        }
    }
    while let Some(face) = todo.pop() {
        let here = free[face.fix().index()].unwrap_or(false);
        for side in face.adjacent_edges() {
            let next = side.rev().face();
            let index = next.fix().index();
            if free[index].is_none() {
                free[index] = Some(here != side.is_constraint_edge());
                todo.extend(next.as_inner());
            }
        }
    }
    free.into_iter().map(|free| free.unwrap_or(false)).collect()
}

fn fan_out(triangles: &[Triangle], points: &[IntPoint]) -> (Vec<[usize; 3]>, Vec<Fan>) {
    let mut fans: Vec<Fan> = Vec::new();
    let mut fan_of = vec![[usize::MAX; 3]; triangles.len()];
    let place = |t: usize, corner: usize| {
        triangles[t]
            .corners
            .iter()
            .position(|&c| c == corner)
            .unwrap_or(0)
    };
    for (first, triangle) in triangles.iter().enumerate() {
        for (k, &corner) in triangle.corners.iter().enumerate() {
            if fan_of[first][k] != usize::MAX {
                continue;
            }
            // clockwise to the rim, or once round
            let mut at = first;
            while let Some(next) = triangles[at].across[place(at, corner)] {
                at = next;
                if at == first {
                    break;
                }
            }
            let (start, mut members) = (at, vec![]);
            let closed = loop {
                members.push(at);
                fan_of[at][place(at, corner)] = fans.len();
                match triangles[at].across[(place(at, corner) + 2) % 3] {
                    Some(next) if next == start => break true,
                    Some(next) => at = next,
                    None => break false,
                }
            };
            let side = |t: usize, step: usize| {
                Wide::from(points[triangles[t].corners[(place(t, corner) + step) % 3]])
            };
            let [right, left] = [side(start, 1), side(at, 2)];
            let eye = Wide::from(points[corner]);
            // more than half a turn: more than one triangle, and the ends turn right
            let pokes = !closed && members.len() > 1 && turn(eye, right, left) < 0;
            fans.push(Fan {
                corner,
                triangles: members,
                pokes,
            });
        }
    }
    (fan_of, fans)
}

#[cfg(test)]
mod tests;
