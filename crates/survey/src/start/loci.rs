//! Where a point may lie by one reading, and where two of these cross.

use std::f64::consts::PI;

use crate::model::{Place, apart, cross, dot, length, minus, plus, scaled, turned};
use crate::network::{Kind, PointId};

/// All places that one reading allows.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Locus {
    Circle {
        centre: Place,
        radius: f64,
    },
    /// Through `point` along the unit vector `along`.
    Line {
        point: Place,
        along: Place,
    },
}

/// The one or two loci of `p` by a reading whose other points are placed. Empty for the
/// few kinds whose locus is no circle or line, and where the value is out of reach.
pub(crate) fn loci(kind: Kind, reads: f64, p: PointId, at: &[Place]) -> Vec<Locus> {
    match kind {
        Kind::Distance { from, to } => {
            let centre = at[if from == p { to } else { from }];
            vec![Locus::Circle {
                centre,
                radius: reads,
            }]
        }
        Kind::KnownX { .. } => vec![Locus::Line {
            point: [reads, 0.0],
            along: [0.0, 1.0],
        }],
        Kind::KnownY { .. } => vec![Locus::Line {
            point: [0.0, reads],
            along: [1.0, 0.0],
        }],
        Kind::Along { from, to, point } if point == p => unit(at[from], at[to])
            .map(|u| Locus::Line {
                point: plus(at[from], scaled(u, reads)),
                along: turned(u),
            })
            .into_iter()
            .collect(),
        Kind::Left { from, to, point } if point == p => unit(at[from], at[to])
            .map(|u| Locus::Line {
                point: plus(at[from], scaled(turned(u), reads)),
                along: u,
            })
            .into_iter()
            .collect(),
        Kind::Along { from, to, point } if to == p => {
            let cosine = reads / apart(at[from], at[point]);
            if cosine.is_nan() || cosine.abs() > 1.1 {
                return Vec::new();
            }
            let angle = libm::acos(cosine.clamp(-1.0, 1.0));
            rays(at[from], at[point], [angle, -angle])
        }
        Kind::Left { from, to, point } => {
            // The line passes the end that is placed at an angle to the way to `point`.
            let end = if to == p { at[from] } else { at[to] };
            let sine = reads / apart(end, at[point]);
            if sine.is_nan() || sine.abs() > 1.1 {
                return Vec::new();
            }
            let angle = libm::asin(sine.clamp(-1.0, 1.0));
            rays(end, at[point], [-angle, PI + angle])
        }
        Kind::Along { .. } => Vec::new(),
        Kind::Square {
            at: corner,
            from,
            to,
        } if corner == p => {
            let chord = minus(at[to], at[from]);
            let (middle, half) = (scaled(plus(at[from], at[to]), 0.5), 0.5 * length(chord));
            let (sine, cosine) = libm::sincos(reads);
            let rise = scaled(turned(chord), 0.5 * cosine / sine);
            let radius = half / sine;
            vec![
                Locus::Circle {
                    centre: plus(middle, rise),
                    radius,
                },
                Locus::Circle {
                    centre: minus(middle, rise),
                    radius,
                },
            ]
        }
        Kind::Square {
            at: corner,
            from,
            to,
        } => {
            let other = if from == p { to } else { from };
            rays(at[corner], at[other], [reads, -reads])
        }
    }
}

fn unit(a: Place, b: Place) -> Option<Place> {
    let way = minus(b, a);
    let long = length(way);
    (long > 1e-9).then(|| scaled(way, 1.0 / long))
}

/// Lines through `from`, turned from the way to `towards` by the angles.
fn rays(from: Place, towards: Place, angles: [f64; 2]) -> Vec<Locus> {
    let Some(u) = unit(from, towards) else {
        return Vec::new();
    };
    angles
        .into_iter()
        .map(|angle| {
            let (s, c) = libm::sincos(angle);
            Locus::Line {
                point: from,
                along: [c * u[0] - s * u[1], s * u[0] + c * u[1]],
            }
        })
        .collect()
}

/// Where two loci cross: at most two places. Circles that miss each other by a little
/// give the place between them: the readings are never exact.
pub(crate) fn crossings(a: Locus, b: Locus) -> Vec<Place> {
    match (a, b) {
        (
            Locus::Circle {
                centre: c,
                radius: r,
            },
            Locus::Circle {
                centre: d,
                radius: s,
            },
        ) => {
            let Some(u) = unit(c, d) else {
                return Vec::new();
            };
            let long = apart(c, d);
            let along = 0.5 * (long + (r - s) * (r + s) / long);
            let square = r * r - along * along;
            if square > 0.0 {
                let foot = plus(c, scaled(u, along));
                let side = scaled(turned(u), square.sqrt());
                vec![plus(foot, side), minus(foot, side)]
            } else {
                // Between the nearest places of the two, on the line of the centres.
                let on_c = plus(c, scaled(u, if along < 0.0 { -r } else { r }));
                let on_d = plus(d, scaled(u, if along > long { s } else { -s }));
                vec![scaled(plus(on_c, on_d), 0.5)]
            }
        }
        (Locus::Circle { centre, radius }, Locus::Line { point, along })
        | (Locus::Line { point, along }, Locus::Circle { centre, radius }) => {
            let foot = plus(point, scaled(along, dot(along, minus(centre, point))));
            let off = apart(foot, centre);
            let square = radius * radius - off * off;
            if square > 0.0 {
                let side = scaled(along, square.sqrt());
                vec![plus(foot, side), minus(foot, side)]
            } else {
                vec![foot]
            }
        }
        (Locus::Line { point: p, along: u }, Locus::Line { point: q, along: v }) => {
            let turn = cross(u, v);
            if turn.abs() < 1e-6 {
                return Vec::new();
            }
            vec![plus(p, scaled(u, cross(minus(q, p), v) / turn))]
        }
    }
}
