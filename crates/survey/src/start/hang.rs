//! Parts that hang together only as a whole, and points that hang by a thread.
//!
//! Where no point is reached by two readings from placed ones, what is left falls into
//! stiff bodies: clusters that grow among themselves, and single points. A handful of them
//! with enough readings between is posed at once, from many random poses; several answers
//! may fit, and then each becomes a draft.

use chance::Chance;

use super::grow::{candidates, grow_core, ties};
use super::loci::{Locus, loci};
use super::{DRAFTS, Draft, Soft, seeds, spread};
use crate::cholesky::Skyline;
use crate::model::{Place, apart, length, minus, plus, row, scaled, turned, value};
use crate::network::PointId;

/// Bodies posed at once.
const BODIES: usize = 16;

/// Random poses tried.
const POSES: usize = 120;

/// Answers kept of each draft, and drafts that are carried on.
const ANSWERS: usize = 8;

/// An answer may cost so much more than the best.
const AS_GOOD: f64 = 8.0;

/// A cluster, or a single point, in places of its own.
struct Body {
    points: Vec<(PointId, Place)>,
}

impl Body {
    fn freedom(&self) -> usize {
        if self.points.len() > 1 { 3 } else { 2 }
    }
}

/// Where a body stands: shift and turn, and whether it is seen from below.
#[derive(Clone, Copy)]
struct Pose {
    shift: Place,
    turn: f64,
    mirrored: bool,
}

impl Pose {
    /// The place of a body's point, and how it moves when the body turns.
    fn put(self, local: Place) -> (Place, Place) {
        let local = if self.mirrored {
            [local[0], -local[1]]
        } else {
            local
        };
        let (s, c) = libm::sincos(self.turn);
        let arm = [c * local[0] - s * local[1], s * local[0] + c * local[1]];
        (plus(self.shift, arm), turned(arm))
    }
}

/// Poses what growth cannot reach; `false` when nothing could be posed.
pub(crate) fn hang(soft: &Soft, drafts: &mut Vec<Draft>, placed: &mut [bool]) -> bool {
    let bodies = bodies(soft, placed);
    let Some(chosen) = choose(soft, &bodies, placed) else {
        return false;
    };
    let mut with = placed.to_vec();
    for &(p, _) in chosen.iter().flat_map(|&b| &bodies[b].points) {
        with[p] = true;
    }
    let between: Vec<usize> = (0..soft.readings.len())
        .filter(|&n| soft.complete(n, &with) && !soft.complete(n, placed))
        .collect();
    let chosen: Vec<&Body> = chosen.iter().map(|&b| &bodies[b]).collect();
    let mut chance = Chance::new(0x5EED);
    let mut posed: Vec<Draft> = Vec::new();
    for draft in drafts.iter().take(ANSWERS) {
        let mut answers: Vec<Draft> = Vec::new();
        for _ in 0..POSES {
            let answer = posed_once(soft, &chosen, &between, placed, draft, &mut chance);
            let same = |other: &Draft| {
                let points = chosen.iter().flat_map(|b| &b.points);
                points
                    .into_iter()
                    .all(|&(p, _)| apart(other.at[p], answer.at[p]) < 10.0 * soft.readings[0].sigma)
            };
            match answers.iter().position(same) {
                Some(found) if answers[found].cost > answer.cost => answers[found] = answer,
                Some(_) => {}
                None => answers.push(answer),
            }
        }
        answers.sort_by(|a, b| a.cost.total_cmp(&b.cost));
        let best = answers.first().map_or(0.0, |a| a.cost);
        answers.retain(|a| a.cost <= best + AS_GOOD);
        answers.truncate(ANSWERS);
        posed.extend(answers);
    }
    posed.sort_by(|a, b| a.cost.total_cmp(&b.cost));
    posed.truncate(DRAFTS);
    *drafts = posed;
    placed.copy_from_slice(&with);
    for draft in drafts.iter_mut() {
        soft.refine(draft, placed, 20);
    }
    true
}

/// Clusters among the points that are not placed, then the single points.
fn bodies(soft: &Soft, placed: &[bool]) -> Vec<Body> {
    let mut taken = placed.to_vec();
    let mut bodies = Vec::new();
    for (a, b, long) in seeds(soft) {
        if taken[a] || taken[b] {
            continue;
        }
        let mut inside = vec![false; soft.points];
        let mut drafts = vec![Draft {
            at: vec![[0.0, 0.0]; soft.points],
            cost: 0.0,
        }];
        drafts[0].at[b] = [long, 0.0];
        inside[a] = true;
        inside[b] = true;
        grow_core(soft, &mut drafts, &mut inside, &taken);
        let points: Vec<(PointId, Place)> = (0..soft.points)
            .filter(|&p| inside[p])
            .map(|p| (p, drafts[0].at[p]))
            .collect();
        if points.len() > 2 {
            for &(p, _) in &points {
                taken[p] = true;
            }
            bodies.push(Body { points });
        }
    }
    bodies.extend((0..soft.points).filter(|&p| !taken[p]).map(|p| Body {
        points: vec![(p, [0.0, 0.0])],
    }));
    bodies
}

/// The bodies to pose together: added one by one, each with most readings to those before
/// over what it needs, until the readings are enough, better one more than enough.
fn choose(soft: &Soft, bodies: &[Body], placed: &[bool]) -> Option<Vec<usize>> {
    let mut with = placed.to_vec();
    let mut chosen = Vec::new();
    let mut enough = None;
    let mut spare = 0_isize;
    while chosen.len() < BODIES {
        let spare_of = |b: usize| {
            let mut with = with.clone();
            for &(p, _) in &bodies[b].points {
                with[p] = true;
            }
            let links: usize = if bodies[b].points.len() == 1 {
                ties(soft, bodies[b].points[0].0, &with).len()
            } else {
                let own = |p: PointId| bodies[b].points.iter().any(|(q, _)| *q == p);
                let crossing = |n: &usize| {
                    let kind = soft.readings[*n].kind;
                    soft.complete(*n, &with) && kind.points().any(own) && !kind.points().all(own)
                };
                (0..soft.readings.len()).filter(crossing).count()
            };
            (links > 0).then(|| links as isize - bodies[b].freedom() as isize)
        };
        let next = (0..bodies.len())
            .filter(|b| !chosen.contains(b))
            .filter_map(|b| Some((spare_of(b)?, b)))
            .fold(None, |best: Option<(isize, usize)>, next| match best {
                Some(best) if best.0 >= next.0 => Some(best),
                _ => Some(next),
            });
        let Some((gain, body)) = next else { break };
        chosen.push(body);
        spare += gain;
        for &(p, _) in &bodies[body].points {
            with[p] = true;
        }
        if spare >= 0 {
            enough = Some(chosen.len());
        }
        if spare >= 1 {
            break;
        }
    }
    enough.map(|count| {
        chosen.truncate(count);
        chosen
    })
}

/// Settles the bodies from one random pose.
fn posed_once(
    soft: &Soft,
    bodies: &[&Body],
    between: &[usize],
    placed: &[bool],
    draft: &Draft,
    chance: &mut Chance,
) -> Draft {
    let (centre, wide) = spread(&draft.at, placed);
    let longest = between
        .iter()
        .map(|&n| soft.readings[n].value.abs())
        .fold(0.0, f64::max);
    let reach = wide.max(longest);
    let mut signed = || 2.0 * chance.share() - 1.0;
    let mut poses: Vec<Pose> = bodies
        .iter()
        .map(|_| Pose {
            shift: plus(centre, [reach * signed(), reach * signed()]),
            turn: std::f64::consts::PI * signed(),
            mirrored: signed() < 0.0,
        })
        .collect();
    // Unknowns of each body, and the body of each point.
    let mut first = Vec::new();
    let mut size = 0;
    let mut body_of = vec![None; soft.points];
    for (b, body) in bodies.iter().enumerate() {
        first.push(size);
        size += body.freedom();
        for &(p, local) in &body.points {
            body_of[p] = Some((b, local));
        }
    }
    let put = |poses: &[Pose]| {
        let mut at = draft.at.clone();
        for (p, body) in body_of.iter().enumerate() {
            if let Some((b, local)) = body {
                at[p] = poses[*b].put(*local).0;
            }
        }
        at
    };
    let misfit = |at: &[Place]| -> f64 {
        let z = |n: usize| {
            (value(soft.readings[n].kind, at) - soft.readings[n].value) / soft.readings[n].sigma
        };
        between.iter().map(|&n| z(n) * z(n)).sum()
    };
    let mut at = put(&poses);
    let mut cost = misfit(&at);
    let mut damping = 1e-2;
    for _ in 0..80 {
        let mut matrix = Skyline::zeros(vec![0; size]);
        let mut right = vec![0.0; size];
        for &n in between {
            let reading = &soft.readings[n];
            let z = (value(reading.kind, &at) - reading.value) / reading.sigma;
            let mut terms = Vec::with_capacity(9);
            for &(p, d) in row(reading.kind, &at).terms() {
                if let Some((b, local)) = body_of[p] {
                    terms.push((first[b], d[0] / reading.sigma));
                    terms.push((first[b] + 1, d[1] / reading.sigma));
                    if bodies[b].freedom() == 3 {
                        let turn = poses[b].put(local).1;
                        terms.push((
                            first[b] + 2,
                            (d[0] * turn[0] + d[1] * turn[1]) / reading.sigma,
                        ));
                    }
                }
            }
            for &(i, a) in &terms {
                right[i] -= a * z;
                for &(j, b) in terms.iter().filter(|(j, _)| *j <= i) {
                    matrix.add(i, j, a * b);
                }
            }
        }
        for i in 0..size {
            matrix.add(i, i, damping * matrix.diagonal(i));
        }
        matrix.factor(1e-14).solve(&mut right);
        let mut there = poses.clone();
        for (b, pose) in there.iter_mut().enumerate() {
            pose.shift = plus(pose.shift, [right[first[b]], right[first[b] + 1]]);
            if bodies[b].freedom() == 3 {
                pose.turn += right[first[b] + 2];
            }
        }
        let at_there = put(&there);
        let cost_there = misfit(&at_there);
        if cost_there < cost {
            let done = cost - cost_there < 1e-4 * cost + 1e-9;
            (poses, at, cost) = (there, at_there, cost_there);
            damping = (damping * 0.2).max(1e-9);
            if done {
                break;
            }
        } else {
            damping *= 8.0;
            if damping > 1e8 {
                break;
            }
        }
    }
    let bounded: f64 = between.iter().map(|&n| soft.cost(n, &at)).sum();
    Draft {
        at,
        cost: draft.cost + bounded,
    }
}

/// Gives every point that is not fixed a place to draw it at.
pub(crate) fn dangle(soft: &Soft, at: &mut [Place], placed: &mut [bool]) {
    while let Some(p) = (0..soft.points)
        .rev()
        .filter(|&p| !placed[p])
        .max_by_key(|&p| ties(soft, p, placed).len())
    {
        let (centre, wide) = spread(at, placed);
        let ties = ties(soft, p, placed);
        let (s, c) = libm::sincos(2.4 * p as f64);
        let crossed = candidates(soft, &ties, p, at)
            .first()
            .map(|(place, _)| *place);
        let on_one = || {
            let first = *ties.first()?;
            let locus =
                *loci(soft.readings[first].kind, soft.readings[first].value, p, at).first()?;
            Some(match locus {
                Locus::Circle {
                    centre: from,
                    radius,
                } => {
                    let out = minus(from, centre);
                    let out = if length(out) > 1e-6 {
                        scaled(out, 1.0 / length(out))
                    } else {
                        [c, s]
                    };
                    let swung = [out[0] + 0.3 * c, out[1] + 0.3 * s];
                    plus(from, scaled(swung, radius / length(swung)))
                }
                Locus::Line { point, along } => plus(point, scaled(along, 0.5 * wide)),
            })
        };
        let aside = plus(centre, scaled([c, s], 2.5 * wide.max(1.0)));
        at[p] = crossed.or_else(on_one).unwrap_or(aside);
        placed[p] = true;
    }
}
