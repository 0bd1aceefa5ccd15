//! Plates cut to what two people carry, with what lays them right again.
//!
//! Panels overlap by the ledger's strip. On a seam each panel keeps a rim, so that no opening
//! runs out of it and its corners hold; what one panel's rim covers is open in its neighbour.
//! Three holes at uneven places: a panel laid on its face does not fit the chalk ticks of
//! the first coat, nor its neighbour's holes.

use geo::{BooleanOps, Coord, MultiPolygon, Rect};

use crate::kerf::cuts;
use crate::material::Rules;
use crate::result::{Opening, Panel};
use crate::shape::{bounds, grown, millionth, moved, off, rect, settled, sides};

/// Shares of an edge at which holes stand: none mirrors another.
const UNEVEN: [f64; 3] = [0.13, 0.31, 0.62];

/// The panels of a plate, lower left first, along x.
///
/// - `room`: the box of the openings, its middle at the origin
pub(crate) fn panels(
    id: &str,
    room: Rect<f64>,
    counts: [usize; 2],
    openings: &[Opening],
    front: f64,
    rules: &Rules,
) -> Vec<Panel> {
    let whole = plate(room, rules);
    let across = windows(whole.min().x, whole.max().x, counts[0], rules.overlap);
    let up = windows(whole.min().y, whole.max().y, counts[1], rules.overlap);
    let rim = rules.tie.min(0.5 * rules.overlap);
    let mut panels = Vec::new();
    let cells: Vec<[usize; 2]> = (0..counts[1])
        .flat_map(|row| (0..counts[0]).map(move |column| [column, row]))
        .collect();
    // what paint goes through in each panel
    let clears: Vec<Rect<f64>> = cells
        .iter()
        .map(|[column, row]| {
            let (x, y) = (across[*column], up[*row]);
            let inset = |window: [f64; 2], at: usize, count: usize| {
                let low = if at > 0 { rim } else { 0.0 };
                let high = if at + 1 < count { rim } else { 0.0 };
                [window[0] + low, window[1] - high]
            };
            let (x, y) = (inset(x, *column, counts[0]), inset(y, *row, counts[1]));
            Rect::new((x[0], y[0]), (x[1], y[1]))
        })
        .collect();
    let shared = seams(&across, &up, openings, rules);
    for (number, [column, row]) in cells.iter().enumerate() {
        let (x, y) = (across[*column], up[*row]);
        let window = Rect::new((x[0], y[0]), (x[1], y[1]));
        let own: Vec<Opening> = if cells.len() == 1 {
            openings.to_vec()
        } else {
            clipped(openings, number, &clears, rules)
        };
        let mut holes: Vec<Coord<f64>> = shared
            .iter()
            .copied()
            .filter(|at| inside(window, *at, rules.hole))
            .collect();
        let mut taken: Vec<[Coord<f64>; 2]> = sides(own.iter().map(|one| &one.polygon));
        let places = border(window, rules.margin / 2.0);
        for place in &places {
            if holes.len() >= 3 {
                break;
            }
            let clear = rules.hole / 2.0 + rules.web;
            if off(*place, &taken) >= clear
                && holes.iter().all(|hole| span(*hole, *place) > 4.0 * clear)
            {
                holes.push(*place);
            }
        }
        let holes: Vec<Coord<f64>> = holes.into_iter().map(settled).collect();
        taken.extend(holes.iter().map(|hole| [*hole, *hole]));
        let arrow = arrow(window, front, &taken, rules);
        taken.push(arrow);
        let (label, label_turn, label_room) = label(window, &taken, rules);
        let letter = char::from_u32('A' as u32 + number as u32).unwrap_or('Z');
        let plate = moved(&rect(window.min(), window.max()), settled);
        panels.push(Panel {
            id: match cells.len() {
                1 => id.to_owned(),
                _ => format!("{id}-{letter}"),
            },
            cuts: cuts(&plate, &own, &holes, rules),
            plate,
            openings: own,
            holes,
            hole: rules.hole,
            arrow: arrow.map(settled),
            label: settled(label),
            label_turn,
            label_room: label_room.map(millionth),
        });
    }
    panels
}

/// The whole plate.
pub(crate) fn plate(room: Rect<f64>, rules: &Rules) -> Rect<f64> {
    let by = Coord {
        x: rules.margin,
        y: rules.margin,
    };
    Rect::new(room.min() - by, room.max() + by)
}

/// Equal windows that overlap.
fn windows(low: f64, high: f64, count: usize, overlap: f64) -> Vec<[f64; 2]> {
    let size = (high - low + (count as f64 - 1.0) * overlap) / count as f64;
    (0..count)
        .map(|at| {
            let from = low + at as f64 * (size - overlap);
            [from, from + size]
        })
        .collect()
}

/// The openings of one panel; a shred narrower than a roller fills is left to a neighbour
/// that has all of it.
fn clipped(
    openings: &[Opening],
    panel: usize,
    clears: &[Rect<f64>],
    rules: &Rules,
) -> Vec<Opening> {
    let clear = clears[panel].to_polygon();
    let mut own = Vec::new();
    for opening in openings {
        for part in &opening.polygon.intersection(&clear) {
            let core = grown(
                &MultiPolygon(vec![part.clone()]),
                -(rules.least / 2.0 - 1e-4),
            );
            let elsewhere = bounds([part]).is_some_and(|room| {
                clears.iter().enumerate().any(|(other, clear)| {
                    other != panel
                        && inside(*clear, room.min(), 0.0)
                        && inside(*clear, room.max(), 0.0)
                })
            });
            if core.0.is_empty() && elsewhere {
                continue;
            }
            own.push(Opening {
                colour: opening.colour,
                polygon: moved(part, settled),
            });
        }
    }
    own
}

/// Holes on the middle lines of the overlaps: two on a seam that is the only one of its
/// panels' kind, one on each where panels meet at a cross.
fn seams(
    across: &[[f64; 2]],
    up: &[[f64; 2]],
    openings: &[Opening],
    rules: &Rules,
) -> Vec<Coord<f64>> {
    let taken = sides(openings.iter().map(|one| &one.polygon));
    let clear = rules.hole / 2.0 + rules.web;
    let each = if across.len() > 1 && up.len() > 1 {
        1
    } else {
        2
    };
    let mut holes = Vec::new();
    let middles = |windows: &[[f64; 2]]| -> Vec<f64> {
        windows
            .windows(2)
            .filter_map(|pair| match pair {
                [a, b] => Some((a[1] + b[0]) / 2.0),
                _ => None,
            })
            .collect()
    };
    let mut along = |line: [f64; 2], at: &dyn Fn(f64) -> Coord<f64>| {
        /// Places along a seam that are tried.
        const TRIED: u32 = 60;
        let mut found = Vec::new();
        for from in UNEVEN.into_iter().take(each) {
            let place = (0..TRIED)
                .map(|step| (from + f64::from(step) / f64::from(TRIED)) % 1.0)
                .filter(|share| (0.06..0.94).contains(share))
                .map(|share| at(line[0] + share * (line[1] - line[0])))
                .find(|place| {
                    let solid = openings
                        .iter()
                        .all(|one| !geo::Contains::contains(&one.polygon, &geo::Point(*place)));
                    solid
                        && off(*place, &taken) >= clear
                        && found.iter().all(|hole| span(*hole, *place) > 4.0 * clear)
                });
            found.extend(place);
        }
        holes.extend(found);
    };
    for x in middles(across) {
        for line in up {
            along(*line, &|y| Coord { x, y });
        }
    }
    for y in middles(up) {
        for line in across {
            along(*line, &|x| Coord { x, y });
        }
    }
    holes
}

/// Places along a panel's edge, so far in: the uneven ones first.
fn border(window: Rect<f64>, inset: f64) -> Vec<Coord<f64>> {
    let inset = inset.min(0.25 * window.width()).min(0.25 * window.height());
    let (low, high) = (
        Coord {
            x: window.min().x + inset,
            y: window.min().y + inset,
        },
        Coord {
            x: window.max().x - inset,
            y: window.max().y - inset,
        },
    );
    let wide = high - low;
    let [a, b, c] = UNEVEN;
    let mut places = vec![
        Coord {
            x: low.x,
            y: low.y + a * wide.y,
        },
        Coord {
            x: low.x + b * wide.x,
            y: low.y,
        },
        Coord {
            x: high.x,
            y: low.y + c * wide.y,
        },
        Coord {
            x: low.x + c * wide.x,
            y: high.y,
        },
    ];
    for step in 1..40 {
        let share = (f64::from(step) * 0.382) % 1.0;
        places.push(Coord {
            x: low.x,
            y: low.y + share * wide.y,
        });
        places.push(Coord {
            x: low.x + share * wide.x,
            y: low.y,
        });
        places.push(Coord {
            x: high.x,
            y: low.y + share * wide.y,
        });
        places.push(Coord {
            x: low.x + share * wide.x,
            y: high.y,
        });
    }
    places
}

fn inside(window: Rect<f64>, at: Coord<f64>, by: f64) -> bool {
    at.x >= window.min().x + by
        && at.x <= window.max().x - by
        && at.y >= window.min().y + by
        && at.y <= window.max().y - by
}

fn span(a: Coord<f64>, b: Coord<f64>) -> f64 {
    libm::hypot(a.x - b.x, a.y - b.y)
}

/// An arrow in the margin, towards the front.
fn arrow(
    window: Rect<f64>,
    front: f64,
    taken: &[[Coord<f64>; 2]],
    rules: &Rules,
) -> [Coord<f64>; 2] {
    let half = 0.4 * rules.margin;
    let (sin, cos) = libm::sincos(front);
    let way = Coord { x: cos, y: sin } * half;
    let places = border(window, rules.margin / 2.0);
    let room = |at: &Coord<f64>| off(*at, taken);
    let best = places
        .iter()
        .find(|at| room(at) >= half)
        .or_else(|| places.iter().max_by(|a, b| room(a).total_cmp(&room(b))));
    let at = best.copied().unwrap_or(window.center());
    [at - way, at + way]
}

/// The middle of the longest run of margin that nothing takes, the way of its lines, and
/// the room they have.
fn label(
    window: Rect<f64>,
    taken: &[[Coord<f64>; 2]],
    rules: &Rules,
) -> (Coord<f64>, f64, [f64; 2]) {
    let (low, high) = (window.min(), window.max());
    let half = (rules.margin / 2.0)
        .min(0.25 * window.width())
        .min(0.25 * window.height());
    let tall = 0.6 * half;
    let mut best = (window.center(), 0.0, [0.0, tall]);
    let sides = [
        (
            low + Coord { x: 0.0, y: half },
            Coord { x: 1.0, y: 0.0 },
            window.width(),
        ),
        (
            Coord {
                x: low.x,
                y: high.y - half,
            },
            Coord { x: 1.0, y: 0.0 },
            window.width(),
        ),
        (
            low + Coord { x: half, y: 0.0 },
            Coord { x: 0.0, y: 1.0 },
            window.height(),
        ),
        (
            Coord {
                x: high.x - half,
                y: low.y,
            },
            Coord { x: 0.0, y: 1.0 },
            window.height(),
        ),
    ];
    for (from, way, long) in sides {
        /// Metres between the places that are looked at.
        const STEP: f64 = 0.005;
        let mut begun = None;
        let last = (long / STEP) as usize;
        for step in 0..=last {
            let at = step as f64 * STEP;
            let free = at >= tall && at <= long - tall && off(from + way * at, taken) > tall;
            match (begun, free && step < last) {
                (None, true) => begun = Some(at),
                (Some(start), false) => {
                    let run = (at - STEP - start) / 2.0;
                    if run > best.2[0] {
                        let turn = libm::atan2(way.y, way.x);
                        best = (from + way * (start + run), turn, [run, tall]);
                    }
                    begun = None;
                }
                _ => {}
            }
        }
    }
    (best.0, millionth(best.1), best.2)
}
