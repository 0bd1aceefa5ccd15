//! What stands in the yard, put on the adjusted coordinates.

use std::collections::{BTreeMap, BTreeSet};

use geo::{Coord, Intersects, LineString, Point, Polygon, Validation, Winding};
use ground::yard::{
    Door, Edge, EdgeKind, Fixture, FixtureKind, Footprint, Gate, More, Remark, Seat, Surface,
    Wanted, Yard,
};
use jiff::civil::Date;
use note::{Note, Noted, Place, msg};
use survey::result::Survey;

use crate::read::surveyed::{Named, Opening, Shape, Side, Stood};
use crate::read::{Project, names};

/// The yard of a project, its outlines on the survey's coordinates. `None` where the
/// boundary cannot be drawn; faults of single things are told, and the thing left out.
pub fn yard(project: &Project, survey: &Survey) -> Noted<Option<Yard>> {
    let mut notes = Vec::new();
    let points = Points::of(survey);
    let corners: Vec<Coord<f64>> = survey
        .boundary
        .iter()
        .filter_map(|id| survey.points.get(*id))
        .map(|point| Coord {
            x: point.x,
            y: point.y,
        })
        .collect();
    if corners.len() < 3 {
        return Noted { value: None, notes };
    }
    let boundary = ring(corners.clone());
    let surveyed = &project.surveyed;
    names::loose(surveyed, &points.loose, &mut notes);
    let edges = edges(&corners, &surveyed.edges, &points, &mut notes);
    let surfaces = surveyed
        .surfaces
        .iter()
        .filter_map(|laid| {
            let outline = points.outline(&laid.outline, &laid.at, &mut notes)?;
            Some(Surface {
                outline,
                is: laid.is,
                age_days: laid.since.and_then(|since| days(since, project.about.date)),
                condition: laid.condition,
                at: Some(laid.at.clone()),
            })
        })
        .collect();
    let fixtures = surveyed
        .fixtures
        .iter()
        .filter_map(|stood| fixture(stood, &points, &mut notes))
        .collect();
    let (mut doors, mut gates) = (Vec::new(), Vec::new());
    for opening in &surveyed.openings {
        let Some((jambs, hinge)) = jambs(opening, &points) else {
            continue;
        };
        let (name, at) = (opening.name.value.clone(), Some(opening.at.clone()));
        if opening.gate {
            gates.push(Gate {
                name,
                posts: jambs,
                hinge,
                opens_in: opening.inward,
                at,
            });
        } else {
            doors.push(Door {
                name,
                jambs,
                hinge,
                opens_out: opening.inward,
                at,
            });
        }
    }
    let known: Vec<&str> = surveyed
        .openings
        .iter()
        .map(|opening| opening.name.value.as_str())
        .chain(
            surveyed
                .fixtures
                .iter()
                .map(|fixture| fixture.name.value.as_str()),
        )
        .collect();
    let leads = |end: &Named| known.contains(&end.value.as_str());
    let routes = surveyed
        .routes
        .iter()
        .filter(|way| leads(&way.from) && leads(&way.to))
        .map(|way| Wanted {
            from: way.from.value.clone(),
            to: way.to.value.clone(),
            width: way.width,
            at: Some(way.at.clone()),
        })
        .collect();
    let stands = surveyed
        .stands
        .iter()
        .filter_map(|stand| points.find(stand))
        .collect();
    let remarks = surveyed
        .remarks
        .iter()
        .filter_map(|remark| {
            let outline = points.outline(&remark.outline, &remark.at, &mut notes)?;
            Some(Remark {
                outline,
                is: remark.is,
                says: remark.says.clone(),
                at: Some(remark.at.clone()),
            })
        })
        .collect();
    let yard = Yard {
        boundary,
        edges,
        surfaces,
        fixtures,
        doors,
        gates,
        routes,
        stands,
        remarks,
    };
    outside(&yard, &surveyed.stands, &mut notes);
    Noted {
        value: Some(yard),
        notes,
    }
}

/// The adjusted points by name.
struct Points<'a> {
    places: BTreeMap<&'a str, Coord<f64>>,
    /// Those whose place is a guess: nothing is put on them.
    loose: BTreeSet<&'a str>,
}

impl Points<'_> {
    fn of(survey: &Survey) -> Points<'_> {
        let place = |point: &survey::result::Point| Coord {
            x: point.x,
            y: point.y,
        };
        let (loose, fixed): (Vec<_>, Vec<_>) = survey.points.iter().partition(|point| point.loose);
        Points {
            loose: loose.into_iter().map(|point| point.name.as_str()).collect(),
            places: fixed
                .into_iter()
                .map(|point| (point.name.as_str(), place(point)))
                .collect(),
        }
    }

    /// Names that lead nowhere are told when the files are read, loose ones by `names::loose`.
    fn find(&self, name: &Named) -> Option<Coord<f64>> {
        self.places.get(name.value.as_str()).copied()
    }

    /// An outline through named points, turned anticlockwise.
    fn outline(&self, names: &[Named], at: &Place, notes: &mut Vec<Note>) -> Option<Polygon<f64>> {
        let corners: Vec<Option<Coord<f64>>> = names.iter().map(|name| self.find(name)).collect();
        let polygon = ring(corners.into_iter().collect::<Option<Vec<_>>>()?);
        if polygon.is_valid() {
            return Some(polygon);
        }
        notes.push(
            Note::error(
                stretch(names).unwrap_or_else(|| at.clone()),
                msg!("outline-crosses"),
            )
            .mend(msg!("outline-order")),
        );
        None
    }
}

/// From the first name of a list to the last.
fn stretch(names: &[Named]) -> Option<Place> {
    let (first, last) = (names.first()?, names.last()?);
    Some(Place::new(&first.at.file, first.at.start, last.at.end))
}

fn ring(corners: Vec<Coord<f64>>) -> Polygon<f64> {
    let mut ring = LineString::new(corners);
    ring.close();
    ring.make_ccw_winding();
    Polygon::new(ring, Vec::new())
}

fn days(since: Date, today: Option<Date>) -> Option<i64> {
    let gap = today?.since(since).ok()?;
    Some(i64::from(gap.get_days()))
}

/// Ground, remarks and stands wholly outside the yard are told; fixtures are, with how far,
/// where clear zones are drawn.
fn outside(yard: &Yard, stands: &[Named], notes: &mut Vec<Note>) {
    let inside = |shape: &Polygon<f64>| yard.boundary.intersects(shape);
    let mut tell = |name: &str, at: &Option<Place>| {
        notes.push(
            Note::warning(at.clone(), msg!("outside-yard", name = name))
                .mend(msg!("outside-yard-mend")),
        );
    };
    for surface in yard
        .surfaces
        .iter()
        .filter(|surface| !inside(&surface.outline))
    {
        tell("surface", &surface.at);
    }
    for remark in yard
        .remarks
        .iter()
        .filter(|remark| !inside(&remark.outline))
    {
        tell("note", &remark.at);
    }
    for (at, stand) in yard.stands.iter().zip(stands) {
        if !yard.boundary.intersects(&Point::from(*at)) {
            tell(&stand.value, &Some(stand.at.clone()));
        }
    }
}

fn fixture(stood: &Stood, points: &Points, notes: &mut Vec<Note>) -> Option<Fixture> {
    let shape = match &stood.shape {
        Shape::Outline(names) => Footprint::Outline(points.outline(names, &stood.at, notes)?),
        Shape::Disc(at, radius) => Footprint::Disc {
            centre: points.find(at)?,
            radius: *radius,
        },
        Shape::Beam([from, to]) => {
            let (from, to) = (points.find(from), points.find(to));
            Footprint::Beam(from?, to?)
        }
    };
    let more = match stood.is {
        FixtureKind::Slide => {
            let exit = stood.exit.as_ref().and_then(|[from, to]| {
                let (from, to) = (points.find(from), points.find(to));
                Some([from?, to?])
            });
            More::Slide { exit }
        }
        FixtureKind::Swing => match stood.pivot {
            Some(pivot) => More::Swing {
                pivot,
                seat: stood.seat.unwrap_or(Seat::Belt),
                seat_top: stood.seat_top,
            },
            None => More::Nothing,
        },
        FixtureKind::TyreSwing => stood
            .members
            .map_or(More::Nothing, |members| More::TyreSwing { members }),
        FixtureKind::Rocker => More::Rocker {
            standing: stood.standing,
        },
        _ => More::Nothing,
    };
    Some(Fixture {
        name: stood.name.value.clone(),
        is: stood.is,
        shape,
        height: stood.height,
        base: stood.base,
        top: stood.top,
        more,
        at: Some(stood.at.clone()),
    })
}

type Jambs = ([Coord<f64>; 2], Option<usize>);

fn jambs(opening: &Opening, points: &Points) -> Option<Jambs> {
    let ends = [&opening.from, &opening.to];
    let hinge = opening
        .hinge
        .as_ref()
        .and_then(|hinge| ends.iter().position(|end| end.value == hinge.value));
    Some((
        [points.find(&opening.from)?, points.find(&opening.to)?],
        hinge,
    ))
}

/// How far (metres) a named end of an edge may stand off the boundary and still be on it.
const ON_BOUNDARY: f64 = 0.25;

/// The sides of the boundary by what they are; what nobody names is a wall.
fn edges(
    corners: &[Coord<f64>],
    sides: &[Side],
    points: &Points,
    notes: &mut Vec<Note>,
) -> Vec<Edge> {
    let rim = Rim::of(corners);
    let mut stretches: Vec<(f64, f64, EdgeKind)> = Vec::new();
    for side in sides {
        let mut end = |name: &Named| {
            let at = points.find(name)?;
            let (along, off) = rim.nearest(at);
            if off <= ON_BOUNDARY {
                return Some(along);
            }
            notes.push(
                Note::error(
                    name.at.clone(),
                    msg!("edge-off-boundary", point = &name.value),
                )
                .mend(msg!("edge-corners")),
            );
            None
        };
        let (from, to) = (end(&side.from), end(&side.to));
        let (Some(from), Some(to)) = (from, to) else {
            continue;
        };
        // Either way of writing a side is understood: the shorter way round is meant.
        let ahead = (to - from).rem_euclid(rim.length);
        let (start, length) = if 2.0 * ahead <= rim.length {
            (from, ahead)
        } else {
            (to, rim.length - ahead)
        };
        if length <= 0.0 {
            notes.push(Note::error(side.to.at.clone(), msg!("edge-no-length")));
            continue;
        }
        if start + length > rim.length {
            stretches.push((start, rim.length, side.is));
            stretches.push((0.0, start + length - rim.length, side.is));
        } else {
            stretches.push((start, start + length, side.is));
        }
    }
    rim.cut(&stretches)
}

/// The boundary as one line with lengths along it.
struct Rim {
    /// Corners, the first repeated at the end.
    corners: Vec<Coord<f64>>,
    /// Metres to each of them.
    along: Vec<f64>,
    length: f64,
}

impl Rim {
    fn of(corners: &[Coord<f64>]) -> Rim {
        let closed: Vec<Coord<f64>> = corners.iter().chain(corners.first()).copied().collect();
        let mut along = vec![0.0];
        let mut length = 0.0;
        for side in closed.windows(2) {
            length += libm::hypot(side[1].x - side[0].x, side[1].y - side[0].y);
            along.push(length);
        }
        Rim {
            corners: closed,
            along,
            length,
        }
    }

    /// Metres along to the place nearest to `at`, and how far off it is.
    fn nearest(&self, at: Coord<f64>) -> (f64, f64) {
        let mut best = (0.0, f64::INFINITY);
        for (side, start) in self.corners.windows(2).zip(&self.along) {
            let (dx, dy) = (side[1].x - side[0].x, side[1].y - side[0].y);
            let square = dx * dx + dy * dy;
            let share = if square > 0.0 {
                (((at.x - side[0].x) * dx + (at.y - side[0].y) * dy) / square).clamp(0.0, 1.0)
            } else {
                0.0
            };
            let off = libm::hypot(side[0].x + share * dx - at.x, side[0].y + share * dy - at.y);
            if off < best.1 - 1e-9 {
                best = (start + share * libm::sqrt(square), off);
            }
        }
        (best.0 % self.length, best.1)
    }

    fn at(&self, along: f64) -> Coord<f64> {
        let side = self
            .along
            .partition_point(|start| *start <= along)
            .clamp(1, self.corners.len() - 1);
        let (from, to) = (self.corners[side - 1], self.corners[side]);
        let span = self.along[side] - self.along[side - 1];
        let share = if span > 0.0 {
            ((along - self.along[side - 1]) / span).clamp(0.0, 1.0)
        } else {
            0.0
        };
        Coord {
            x: from.x + share * (to.x - from.x),
            y: from.y + share * (to.y - from.y),
        }
    }

    /// The whole rim in pieces of one kind and one side each; later stretches win.
    fn cut(&self, stretches: &[(f64, f64, EdgeKind)]) -> Vec<Edge> {
        let mut cuts: Vec<f64> = self.along.clone();
        cuts.extend(stretches.iter().flat_map(|(from, to, _)| [*from, *to]));
        cuts.sort_by(f64::total_cmp);
        // Ends within a millimetre of a corner are the corner.
        cuts.dedup_by(|later, earlier| *later - *earlier < 1e-3);
        cuts.windows(2)
            .map(|pair| {
                let middle = (pair[0] + pair[1]) / 2.0;
                let is = stretches
                    .iter()
                    .rev()
                    .find(|(from, to, _)| (*from..=*to).contains(&middle))
                    .map_or(EdgeKind::Wall, |(_, _, is)| *is);
                Edge {
                    line: LineString::new(vec![self.at(pair[0]), self.at(pair[1])]),
                    is,
                }
            })
            .collect()
    }
}
