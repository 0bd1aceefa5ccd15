//! A drawn figure as a family: one free length, and a figure for each.

use std::sync::Arc;

use geo::{Coord, Distance, Euclidean, LineString, MapCoords, MultiPolygon, Polygon};
use kurbo::{Affine, BezPath};
use ledger::Ledger;
use marking::{
    Cell, Family, Fault, Figure, Lane, LaneKind, LengthSpec, Look, Outline, Paint, Piece, Takes,
};
use note::Place;

use crate::colour::Ink;
use crate::figures::{BEND, FLAT, GAP, GAP_MOST, SLIVER, STRETCH};
use crate::ground::{Room, envelope};
use crate::order::{followers, reached};
use crate::outline::{Ribbon, seen, stroked};
use crate::read::{Spot, scaled};
use crate::svg::Sayings;

/// With what a layer of paint moves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bind {
    /// With the figure: it is drawn larger or smaller.
    Whole,
    /// With a cell or a waiting spot whose middle this is: it keeps its size.
    With(Coord<f64>),
}

/// A stroke as it was drawn, so that it keeps its breadth: path, frame, ribbon, clips.
type Grow = (BezPath, Affine, Ribbon, Vec<Arc<MultiPolygon<f64>>>);

/// One layer of paint, or of bare ground that cuts what lies under it.
#[derive(Clone, Debug)]
pub struct Layer {
    /// Its colour.
    pub ink: Ink,
    /// With what it moves.
    pub bind: Bind,
    /// Where it lies, as drawn.
    pub area: MultiPolygon<f64>,
    /// Where it is a stroke.
    pub grow: Option<Grow>,
    /// Its shape in the drawing.
    pub at: Place,
}

/// A lane as it is drawn.
#[derive(Clone, Debug)]
pub struct Track {
    /// Its name.
    pub id: String,
    /// What it asks.
    pub kind: LaneKind,
    /// Its middle.
    pub line: LineString<f64>,
    /// Metres.
    pub width: f64,
    /// Straights and bends.
    pub pieces: Vec<Piece>,
    /// Radians of its sharpest corner.
    pub sharpest: f64,
    /// Its shape in the drawing.
    pub at: Place,
}

/// The gaits that a drawing may say it is for.
pub const GAITS: [&str; 9] = [
    "court", "hop", "jump", "leap", "gallop", "slide", "skip", "run", "walk",
];

/// A user's own figure. It is made at its free length by [`Family::make`]; at the default it
/// is as drawn.
#[derive(Clone, Debug)]
pub struct Drawn {
    name: String,
    pub(crate) spots: Vec<Spot>,
    pub(crate) tracks: Vec<Track>,
    waits: Vec<Coord<f64>>,
    pub(crate) layers: Vec<Layer>,
    room: Room,
    facing: Option<f64>,
    mirror: bool,
    side_by_side: u32,
    gaits: Vec<&'static str>,
    lengths: Vec<LengthSpec>,
    /// The free length as drawn, metres.
    usual: f64,
    flat: f64,
    sliver: f64,
}

fn millionth(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}

impl Drawn {
    #[allow(clippy::too_many_arguments)]
    pub(crate) fn new(
        name: &str,
        spots: Vec<Spot>,
        tracks: Vec<Track>,
        waits: Vec<Coord<f64>>,
        layers: Vec<Layer>,
        room: Room,
        sayings: &Sayings,
        ledger: &Ledger,
    ) -> Drawn {
        let mut drawn = Drawn {
            name: name.to_owned(),
            gaits: gaits(&spots, &tracks, sayings),
            spots,
            tracks,
            waits,
            layers,
            room,
            facing: sayings.facing.map(f64::to_radians),
            mirror: sayings.mirror,
            side_by_side: sayings.tracks.unwrap_or(1),
            lengths: Vec::new(),
            usual: 0.0,
            flat: ledger.number(FLAT) / 2.0,
            sliver: ledger.number(SLIVER),
        };
        drawn.free_length(ledger);
        drawn
    }

    /// Distances of every flight, as drawn.
    pub(crate) fn flights(&self) -> Vec<(usize, usize, f64)> {
        let mut flights = Vec::new();
        for (at, spot) in self.spots.iter().enumerate() {
            for next in followers(&self.spots, at) {
                if let Some(to) = self.spots.get(next) {
                    let way = to.centre - spot.centre;
                    flights.push((at, next, libm::hypot(way.x, way.y)));
                }
            }
        }
        flights
    }

    fn free_length(&mut self, ledger: &Ledger) {
        /// Metres.
        const STEP: f64 = 0.01;
        /// Metres. What lies so near a step is on it.
        const SLACK: f64 = 1e-6;
        let [small, large] = match ledger.list(STRETCH) {
            [small, large] => [*small, *large],
            _ => [1.0, 1.0],
        };
        let mut flights: Vec<f64> = self.flights().into_iter().map(|(_, _, far)| far).collect();
        flights.sort_by(f64::total_cmp);
        let (name, says, usual, most) = match (flights.get(flights.len() / 2), self.tracks.first())
        {
            (Some(middle), _) => ("flight", "length-flight", *middle, ledger.number(GAP_MOST)),
            (None, Some(track)) => {
                let long: f64 = track.pieces.iter().map(|piece| piece.length).sum();
                ("length", "length-lane", long, f64::INFINITY)
            }
            (None, None) => return,
        };
        if usual <= 0.0 {
            return;
        }
        self.usual = millionth(usual);
        let least = self.tightest(small, ledger.number(GAP));
        // a bend that can be run stays one
        let bends = self.tracks.iter().flat_map(|track| &track.pieces);
        let least = bends
            .filter_map(|piece| piece.radius)
            .map(|radius| (ledger.number(BEND) / radius).min(1.0))
            .fold(least, f64::max);
        // whole steps, so that what is drawn on one is looked at when it is sized
        let steps = |length: f64, to: fn(f64) -> f64| millionth(to(length / STEP) * STEP);
        let [least, most] = [millionth(usual * least), (usual * large).min(most)];
        self.lengths = vec![LengthSpec {
            name,
            least: steps(least - SLACK, f64::ceil).min(self.usual),
            most: steps(most + SLACK, f64::floor).max(self.usual),
            default: self.usual,
            step: STEP,
            says,
        }];
    }

    /// The least share at which no two cells come nearer than the gap, or than they are.
    fn tightest(&self, small: f64, gap: f64) -> f64 {
        /// Halvings: to a thousandth of the whole.
        const HALVINGS: u32 = 10;
        let apart = |a: &Spot, b: &Spot, share: f64| {
            let by = (b.centre - a.centre) * (share - 1.0);
            Euclidean.distance(&a.outline, &b.outline.map_coords(|at| at + by))
        };
        let mut least = small;
        for (at, a) in self.spots.iter().enumerate() {
            for b in self.spots.iter().skip(at + 1) {
                let wanted = gap.min(apart(a, b, 1.0));
                if apart(a, b, least) >= wanted {
                    continue;
                }
                let (mut low, mut high) = (least, 1.0);
                for _ in 0..HALVINGS {
                    let middle = (low + high) / 2.0;
                    if apart(a, b, middle) >= wanted {
                        high = middle;
                    } else {
                        low = middle;
                    }
                }
                least = high;
            }
        }
        least
    }

    /// The paint at a share of the drawn distances, and how many slivers were left out.
    pub(crate) fn paint(&self, share: f64) -> (Vec<Paint>, usize) {
        let as_drawn = share == 1.0;
        let areas: Vec<(Ink, MultiPolygon<f64>)> = self
            .layers
            .iter()
            .map(|layer| {
                let area = match (&layer.bind, &layer.grow) {
                    _ if as_drawn => layer.area.clone(),
                    (Bind::With(centre), _) => {
                        let by = *centre * (share - 1.0);
                        layer.area.map_coords(|at| at + by)
                    }
                    (Bind::Whole, None) => layer.area.map_coords(|at| at * share),
                    (Bind::Whole, Some((path, to, ribbon, clips))) => {
                        let thin = Ribbon {
                            width: ribbon.width / share,
                            ..ribbon.clone()
                        };
                        let mut area = stroked(path, scaled(*to, share), &thin, self.flat);
                        for clip in clips {
                            use geo::BooleanOps;
                            area = area.intersection(&clip.map_coords(|at| at * share));
                        }
                        area
                    }
                };
                (layer.ink, area)
            })
            .collect();
        let layers: Vec<(Ink, &MultiPolygon<f64>)> =
            areas.iter().map(|(ink, area)| (*ink, area)).collect();
        let (pieces, slivers) = seen(&layers, self.sliver, 2.0 * self.flat);
        let paint = pieces.into_iter().filter_map(|(ink, polygon)| match ink {
            Ink::Paint(colour) => Some(Paint { colour, polygon }),
            Ink::Bare => None,
        });
        (paint.collect(), slivers)
    }

    fn cells(&self, share: f64) -> Vec<Cell> {
        let cell = |spot: &Spot| {
            let by = spot.centre * (share - 1.0);
            Cell {
                id: spot.id.clone(),
                outline: match spot.disc {
                    Some(radius) => Outline::Disc {
                        radius: millionth(radius),
                    },
                    None => Outline::Polygon(spot.outline.map_coords(|at| at + by)),
                },
                centre: spot.centre + by,
                takes: spot.takes,
                start: spot.start,
                end: spot.end,
                next: spot.next.clone(),
                run_up: spot.run_up,
            }
        };
        self.spots.iter().map(cell).collect()
    }

    fn lanes(&self, share: f64) -> Vec<Lane> {
        let lane = |track: &Track| Lane {
            kind: track.kind,
            line: track.line.map_coords(|at| at * share),
            width: millionth(track.width),
            pieces: track
                .pieces
                .iter()
                .map(|piece| Piece {
                    length: millionth(piece.length * share),
                    radius: piece.radius.map(|radius| millionth(radius * share)),
                })
                .collect(),
        };
        self.tracks.iter().map(lane).collect()
    }

    /// Whether nobody waits anywhere.
    pub(crate) fn waits_nowhere(&self) -> bool {
        self.waits.is_empty()
    }

    fn at(&self, share: f64, lengths: Vec<(String, f64)>, bare: bool) -> Figure {
        let (cells, lanes) = (self.cells(share), self.lanes(share));
        let wait: Vec<Coord<f64>> = self.waits.iter().map(|at| *at * share).collect();
        let (paint, envelope) = if bare {
            (Vec::new(), Polygon::new(LineString(Vec::new()), Vec::new()))
        } else {
            let (paint, _) = self.paint(share);
            let envelope = envelope(&paint, &cells, &lanes, &wait, &self.room);
            (paint, envelope)
        };
        Figure {
            family: self.name.clone(),
            lengths,
            paint,
            cells,
            facing: self.facing,
            lanes,
            tracks: self.side_by_side,
            wait,
            envelope,
        }
        .rounded()
    }
}

/// What the drawing says it is for, or else every gait that its cells and lanes let
/// through; how far it serves anybody, the footfall model says.
fn gaits(spots: &[Spot], tracks: &[Track], sayings: &Sayings) -> Vec<&'static str> {
    let starts = |open: fn(&Spot) -> bool| {
        let all = spots.iter().enumerate();
        let from: Vec<usize> = all
            .filter(|(_, spot)| spot.start && open(spot))
            .map(|(at, _)| at)
            .collect();
        let seen = reached(spots, from.clone(), open);
        seen.iter().any(|at| {
            spots.get(*at).is_some_and(|spot| spot.end) && (!from.contains(at) || seen.len() > 1)
        })
    };
    let one = starts(|spot| spot.takes != Takes::Both);
    let both = starts(|spot| matches!(spot.takes, Takes::Both | Takes::Either));
    let mixed = starts(|_| true);
    let fits = |gait: &str| {
        let on_lane = |kind: LaneKind| tracks.iter().any(|track| track.kind == kind);
        let (corridor, line) = (on_lane(LaneKind::Corridor), on_lane(LaneKind::Line));
        match gait {
            "court" => mixed && spots.len() > 2,
            "jump" => both,
            "hop" => one || line,
            "leap" => one,
            "run" => corridor,
            "walk" => corridor || line,
            _ => one || corridor || line,
        }
    };
    GAITS
        .into_iter()
        .filter(|gait| match &sayings.gaits {
            Some(said) => said.iter().any(|word| word == gait),
            None => fits(gait),
        })
        .collect()
}

impl Family for Drawn {
    fn name(&self) -> &str {
        &self.name
    }

    fn lengths(&self) -> &[LengthSpec] {
        &self.lengths
    }

    fn activities(&self) -> &[&'static str] {
        &self.gaits
    }

    fn can_mirror(&self) -> bool {
        self.mirror
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        /// Metres. A length that went through text and back is still the drawn one.
        const SAME: f64 = 1e-6;
        let taken = marking::take(&self.lengths, lengths)?;
        let share = match taken.first() {
            Some(free) if (free - self.usual).abs() > SAME => free / self.usual,
            _ => 1.0,
        };
        let lengths = marking::named(&self.lengths, taken);
        Ok(self.at(share, lengths, look.bare))
    }
}
