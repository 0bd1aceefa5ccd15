//! A blank tape sheet for one yard: a sketch, the readings to take in walking order with
//! boxes to write in, hints for the tape, cautions. It needs names only.

use std::collections::BTreeSet;

use ledger::Ledger;
use note::{Fact, msg};
use survey::network::{Kind, Network, PointId, Walked};
use survey::result::Survey;

use crate::drawing::block::name_points;
use crate::drawing::fixture::circle;
use crate::drawing::hatch::Rings;
use crate::drawing::mark;
use crate::drawing::scene::{Path, Rect, Scene, Spot, Stroke, pen};
use crate::drawing::taken::{Taken, inside, weight};
use crate::drawing::view::{along, far, way};
use crate::sheet::Sheet;
use crate::typeset::{Fault, Manuscript};

ledger::figures! {
    /// Pull on a steel tape.
    pub PULL_STEEL = "tape.pull-steel";
    /// Pull on a glass-fibre tape.
    pub PULL_GLASS = "tape.pull-glass";
    /// Readings that every point should have.
    pub READINGS_A_POINT = "tape.readings-a-point";
}

/// One place to stand, and the points to tape to from there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stand {
    /// Where the tape is held.
    pub at: PointId,
    /// Where it is read.
    pub to: Vec<PointId>,
}

/// The readings to take, in walking order.
///
/// Each side is taped twice, from opposite ends; two neighbouring corners see all others;
/// every point has at least `least` readings (building.md 2.3 shows what that pays). Points
/// said to be on a line are taped from both its ends; points that are set off a line stay so
/// ([`offsets`]).
pub fn walk(network: &Network, survey: Option<&Survey>, least: usize) -> Vec<Stand> {
    let ring = &network.boundary;
    let count = ring.len();
    let mut pairs: BTreeSet<(PointId, PointId)> = BTreeSet::new();
    let mut to: Vec<Vec<PointId>> = vec![Vec::new(); network.points.len()];
    let known = |id: PointId| id < network.points.len();
    let mut add = |to: &mut Vec<Vec<PointId>>, a: PointId, b: PointId| {
        if a != b && known(a) && known(b) && pairs.insert((a, b)) {
            to[a].push(b);
        }
    };
    for (number, &corner) in ring.iter().enumerate() {
        if count > 1 {
            add(&mut to, corner, ring[(number + 1) % count]);
            add(&mut to, corner, ring[(number + count - 1) % count]);
        }
    }
    for (a, b) in diagonals(network, survey) {
        add(&mut to, a, b);
    }
    let off: Vec<PointId> = offsets(network).iter().map(|(_, point)| *point).collect();
    let inner = |point: &PointId| !ring.contains(point) && !off.contains(point);
    for point in (0..network.points.len()).filter(inner) {
        for corner in fixing(network, survey, point, least) {
            add(&mut to, corner, point);
        }
    }
    ring.iter()
        .copied()
        .chain((0..network.points.len()).filter(|point| !ring.contains(point)))
        .filter(|&at| known(at) && !to[at].is_empty())
        .map(|at| Stand {
            at,
            to: to[at].clone(),
        })
        .collect()
}

/// Points that are measured along a line and off it, with their line, in the order of the
/// readings.
pub fn offsets(network: &Network) -> Vec<([PointId; 2], PointId)> {
    let readings = network.readings.iter();
    readings
        .filter_map(|reading| match reading.kind {
            Kind::Along { from, to, point } => Some(([from, to], point)),
            _ => None,
        })
        .collect()
}

/// Diagonals that fix the shape: from two neighbouring corners to all others in sight, then,
/// where a wall hides some, between the corners that have fewest, until there are as many
/// distances as the shape needs (2 n − 3) and every corner has three neighbours.
fn diagonals(network: &Network, survey: Option<&Survey>) -> Vec<(PointId, PointId)> {
    let ring = &network.boundary;
    let count = ring.len();
    let shape: Option<Rings> = ring
        .iter()
        .map(|&id| {
            survey?
                .points
                .get(id)
                .filter(|point| !point.loose)
                .map(|point| [point.x, point.y])
        })
        .collect::<Option<Vec<Spot>>>()
        .map(|corners| vec![corners]);
    let apart = |a: usize, b: usize| a != b && (a + 1) % count != b && (b + 1) % count != a;
    let sees = |a: usize, b: usize| {
        let Some(shape) = &shape else { return true };
        let (from, to) = (shape[0][a], shape[0][b]);
        (1..24).all(|step| {
            inside(
                shape,
                along(
                    from,
                    [to[0] - from[0], to[1] - from[1]],
                    f64::from(step) / 24.0,
                ),
            )
        })
    };
    let mut chosen: Vec<(usize, usize)> = Vec::new();
    let has = |chosen: &[(usize, usize)], a: usize, b: usize| {
        chosen.contains(&(a, b)) || chosen.contains(&(b, a))
    };
    for base in 0..count.min(2) {
        for other in 0..count {
            if apart(base, other) && sees(base, other) && !has(&chosen, base, other) {
                chosen.push((base, other));
            }
        }
    }
    let met = |chosen: &[(usize, usize)], corner: usize| {
        chosen
            .iter()
            .filter(|(a, b)| *a == corner || *b == corner)
            .count()
    };
    loop {
        let enough = count + chosen.len() + 3 >= 2 * count;
        let next = (0..count)
            .flat_map(|a| (a + 1..count).map(move |b| (a, b)))
            .filter(|&(a, b)| apart(a, b) && sees(a, b) && !has(&chosen, a, b))
            .filter(|&(a, b)| !enough || met(&chosen, a).min(met(&chosen, b)) == 0)
            .min_by_key(|&(a, b)| {
                (
                    met(&chosen, a).min(met(&chosen, b)),
                    met(&chosen, a) + met(&chosen, b),
                    a,
                    b,
                )
            });
        match next {
            Some(pair) => chosen.push(pair),
            None => break,
        }
    }
    chosen
        .into_iter()
        .map(|(a, b)| (ring[a], ring[b]))
        .collect()
}

/// The corners from which to tape to a point inside.
fn fixing(
    network: &Network,
    survey: Option<&Survey>,
    point: PointId,
    least: usize,
) -> Vec<PointId> {
    let on_line = network
        .readings
        .iter()
        .find_map(|reading| match reading.kind {
            Kind::Left {
                from,
                to,
                point: on,
            } if on == point && reading.value == 0.0 => Some(vec![from, to]),
            _ => None,
        });
    if let Some(ends) = on_line {
        return ends;
    }
    let ring = &network.boundary;
    let place = |id: PointId| {
        survey
            .and_then(|survey| survey.points.get(id))
            .filter(|p| !p.loose)
            .map(|p| [p.x, p.y])
    };
    let Some(here) = place(point) else {
        // nothing is known yet: corners spread round the walk
        return (0..least.min(ring.len()))
            .map(|k| ring[k * ring.len() / least.min(ring.len()).max(1)])
            .collect();
    };
    // one corner from each quarter round the point, the nearest, then the nearest of the rest
    let mut corners: Vec<(f64, usize, PointId)> = ring
        .iter()
        .filter_map(|&corner| {
            let there = place(corner)?;
            let quarter = usize::from(there[0] < here[0]) + 2 * usize::from(there[1] < here[1]);
            Some((far(here, there), quarter, corner))
        })
        .collect();
    corners.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut chosen: Vec<PointId> = Vec::new();
    for quarter in 0..4 {
        chosen.extend(
            corners
                .iter()
                .find(|corner| corner.1 == quarter)
                .map(|corner| corner.2),
        );
    }
    for corner in &corners {
        if chosen.len() >= least {
            break;
        }
        if !chosen.contains(&corner.2) {
            chosen.push(corner.2);
        }
    }
    chosen
}

/// Where to draw the points, x right and y down, in no unit: as surveyed, as roughly given,
/// or, before anything is measured, in the order of the walk.
fn places(network: &Network, survey: Option<&Survey>) -> (Vec<Spot>, bool) {
    if let Some(survey) = survey.filter(|survey| survey.points.len() == network.points.len()) {
        return (
            survey
                .points
                .iter()
                .map(|point| [point.x, -point.y])
                .collect(),
            true,
        );
    }
    if network
        .points
        .iter()
        .enumerate()
        .all(|(id, _)| network.start.contains_key(&id))
        && !network.points.is_empty()
    {
        let rough = network.start.values().map(|[x, y]| [*x, -*y]).collect();
        return (rough, true);
    }
    let count = network.boundary.len().max(1) as f64;
    let sense = if network.walked == Walked::Anticlockwise {
        1.0
    } else {
        -1.0
    };
    let on = |share: f64, reach: f64| {
        // the first corner stands lower left, as on a drawing whose first side is level
        let turn = core::f64::consts::PI * (1.0 + 1.0 / count) + core::f64::consts::TAU * share;
        let (sin, cos) = libm::sincos(if sense > 0.0 {
            turn
        } else {
            core::f64::consts::PI - turn
        });
        [1.35 * reach * cos, -reach * sin]
    };
    let inner = network
        .points
        .len()
        .saturating_sub(network.boundary.len())
        .max(1) as f64;
    let mut seen = 0.0;
    let spots = (0..network.points.len())
        .map(
            |id| match network.boundary.iter().position(|&corner| corner == id) {
                Some(corner) => on(corner as f64 / count, 1.0),
                None => {
                    seen += 1.0;
                    on(seen / inner, 0.45)
                }
            },
        )
        .collect();
    (spots, false)
}

/// The sketch: sides heavy with the way walked, readings thin, points named.
fn sketch(
    sheet: &Sheet,
    network: &Network,
    survey: Option<&Survey>,
    stands: &[Stand],
    high: f64,
) -> (Scene, bool) {
    let caps = sheet.caps();
    let (raw, true_shape) = places(network, survey);
    let rim = 9.0 + caps.name;
    let mut scene = Scene::new(175.0, high);
    let bounds = Rect::round(raw.iter().copied()).unwrap_or(Rect {
        x: 0.0,
        y: 0.0,
        w: 1.0,
        h: 1.0,
    });
    let mm = ((scene.width - 2.0 * rim) / bounds.w.max(1e-6))
        .min((high - 2.0 * rim) / bounds.h.max(1e-6));
    let middle = [scene.width / 2.0, high / 2.0];
    let spots: Vec<Spot> = raw
        .iter()
        .map(|spot| {
            along(
                middle,
                [spot[0] - bounds.centre()[0], spot[1] - bounds.centre()[1]],
                mm,
            )
        })
        .collect();
    let mut taken = Taken::new(scene.width, scene.height);
    let mut thin = Path::default();
    let mut drawn = BTreeSet::new();
    for stand in stands {
        for &to in &stand.to {
            let pair = (stand.at.min(to), stand.at.max(to));
            if let (true, Some(&a), Some(&b)) =
                (drawn.insert(pair), spots.get(stand.at), spots.get(to))
            {
                thin.add_line(&[a, b]);
                taken.line(&[a, b], weight::LINE);
            }
        }
    }
    scene.stroke(thin, Stroke::solid(pen::THIN));
    let ring: Vec<Spot> = network
        .boundary
        .iter()
        .filter_map(|&corner| spots.get(corner).copied())
        .collect();
    if ring.len() > 2 {
        scene.stroke(Path::ring(&ring), Stroke::solid(pen::FENCE));
        taken.ring(&ring, weight::HARD);
        for (number, &a) in ring.iter().enumerate() {
            let b = ring[(number + 1) % ring.len()];
            mark::chevron(
                &mut scene,
                along(a, way(a, b), far(a, b) * 0.55),
                way(a, b),
                1.5,
                Stroke::solid(pen::ELLIPSE),
            );
        }
    }
    for &spot in &spots {
        mark::point(&mut scene, spot, 1.3);
        taken.ground(&vec![circle(spot, 1.6, 12)], weight::HARD);
    }
    let named: Vec<(&str, Spot)> = network
        .points
        .iter()
        .map(String::as_str)
        .zip(spots)
        .collect();
    name_points(&mut scene, &mut taken, &named, middle, caps.name);
    (scene, true_shape)
}

/// Sets the tape sheet.
///
/// # Errors
/// [`Fault`]: ours, never the user's.
pub fn tape_sheet(
    sheet: &Sheet,
    network: &Network,
    survey: Option<&Survey>,
    ledger: &Ledger,
) -> Result<Vec<u8>, Fault> {
    let least = ledger.number(READINGS_A_POINT).clamp(3.0, 12.0) as usize;
    let stands = walk(network, survey, least);
    let kind = sheet.word("doc-kind-tape");
    let title = sheet.say(msg!(
        "doc-told-title",
        name = sheet.name,
        kind = kind.as_str()
    ));
    let mut paper = Manuscript::new(sheet, "tape-sheet", &title, &sheet.word("doc-page-of"));
    paper.heading(1, &sheet.say(msg!("doc-tape-title", name = sheet.name)));
    paper.fields(&["doc-field-who", "doc-field-date", "doc-field-tape"].map(|key| sheet.word(key)));
    paper.heading(2, &sheet.word("doc-tape-sketch"));
    let (scene, true_shape) = sketch(
        sheet,
        network,
        survey,
        &stands,
        if sheet.large { 90.0 } else { 100.0 },
    );
    paper.figure(
        &scene,
        &sheet.say(msg!("doc-tape-sketch-alt", names = network.points.clone())),
    );
    paper.remark(&sheet.word(if true_shape {
        "doc-tape-sketch-rough"
    } else {
        "doc-tape-sketch-order"
    }));
    paper.heading(2, &sheet.word("doc-before-you-tape"));
    paper.care(
        &sheet.word("doc-take-care"),
        &[
            "doc-care-tapes",
            "doc-care-traffic",
            "doc-care-hot",
            "doc-care-doors-taping",
        ]
        .map(|key| sheet.word(key)),
    );
    let newton = |key| Fact::Number(ledger.number(key), 0);
    paper.list(
        &[
            sheet.say(note::Message {
                key: "doc-hint-pull",
                facts: vec![("glass", newton(PULL_GLASS)), ("steel", newton(PULL_STEEL))],
            }),
            sheet.word("doc-hint-flat"),
            sheet.word("doc-hint-zero"),
            sheet.word("doc-hint-aloud"),
            sheet.word("doc-hint-spot"),
            sheet.word("doc-hint-hidden"),
        ],
        false,
    );
    let name = |id: PointId| network.points.get(id).cloned().unwrap_or_default();
    let heads = [
        "doc-column-at",
        "doc-column-to",
        "doc-column-write",
        "doc-column-note",
    ]
    .map(|key| sheet.word(key));
    let next: Vec<Vec<String>> = survey
        .iter()
        .flat_map(|survey| &survey.next_readings)
        .map(|next| vec![name(next.from), name(next.to)])
        .collect();
    if !next.is_empty() {
        paper.heading(2, &sheet.word("doc-tape-first"));
        paper.form(&heads, &next, sheet.units);
    }
    paper.heading(2, &sheet.word("doc-tape-readings"));
    paper.lead(&sheet.say(msg!("doc-tape-how", least = least)));
    let rows: Vec<Vec<String>> = stands
        .iter()
        .flat_map(|stand| stand.to.iter().map(|&to| vec![name(stand.at), name(to)]))
        .collect();
    paper.form(&heads, &rows, sheet.units);
    let off = offsets(network);
    if !off.is_empty() {
        let heads = [
            "doc-column-line",
            "doc-column-point",
            "doc-column-measure",
            "doc-column-write",
            "doc-column-note",
        ]
        .map(|key| sheet.word(key));
        paper.heading(2, &sheet.word("doc-tape-offsets"));
        paper.lead(&sheet.word("doc-tape-offsets-how"));
        let rows: Vec<Vec<String>> = off
            .iter()
            .flat_map(|([from, to], point)| {
                let line = sheet.say(msg!("doc-line", from = name(*from), to = name(*to)));
                ["doc-measure-along", "doc-measure-left"]
                    .map(|key| vec![line.clone(), name(*point), sheet.word(key)])
            })
            .collect();
        paper.form(&heads, &rows, sheet.units);
    }
    paper.heading(2, &sheet.word("doc-tape-more"));
    paper.form(
        &heads,
        &vec![vec![String::new(), String::new()]; 8],
        sheet.units,
    );
    paper.remark(&sheet.word("doc-tape-file"));
    paper.press()
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use survey::network::Datum;

    use super::*;

    fn named(corners: usize, inner: usize) -> Network {
        Network {
            points: (0..corners + inner).map(|n| format!("P{n}")).collect(),
            readings: Vec::new(),
            datum: Datum::Line {
                origin: 0,
                towards: 1,
            },
            boundary: (0..corners).collect(),
            walked: Walked::Anticlockwise,
            start: BTreeMap::new(),
            at: None,
        }
    }

    /// Source: building.md 2.3: each side twice from opposite ends, at least four readings
    /// at every corner; and enough distances to fix the shape: 2 n − 3.
    #[test]
    fn every_side_is_taped_twice_and_every_point_four_times() {
        for (corners, inner) in [(3, 0), (4, 0), (4, 2), (6, 3), (9, 1), (20, 5)] {
            let network = named(corners, inner);
            let stands = walk(&network, None, 4);
            let pairs: Vec<(usize, usize)> = stands
                .iter()
                .flat_map(|stand| stand.to.iter().map(|&to| (stand.at, to)))
                .collect();
            for side in 0..corners {
                let next = (side + 1) % corners;
                assert!(
                    pairs.contains(&(side, next)) && pairs.contains(&(next, side)),
                    "{corners}: side {side}"
                );
            }
            for point in 0..corners + inner {
                let met = pairs
                    .iter()
                    .filter(|(a, b)| *a == point || *b == point)
                    .count();
                assert!(
                    met >= 4.min(if point < corners { 4 } else { corners }),
                    "{corners} {inner}: {point} has {met}"
                );
            }
            let distinct: BTreeSet<_> = pairs.iter().map(|&(a, b)| (a.min(b), a.max(b))).collect();
            assert!(
                distinct.len() >= 2 * (corners + inner) - 3,
                "{corners} {inner}: {}",
                distinct.len()
            );
        }
    }

    #[test]
    fn nothing_named_gives_an_empty_walk() {
        assert!(walk(&named(0, 0), None, 4).is_empty());
        assert!(walk(&named(1, 0), None, 4).is_empty());
    }
}
