//! A second look at places that do not fit: points and parts that flipped the wrong way.

use super::grow::{candidates, ties};
use super::{Soft, WILD};
use crate::mirror::{across, cut_off};
use crate::model::{Place, value};
use crate::network::{PointId, Reading};
use crate::solve::{Pull, System};

/// Points times tries: large networks get fewer second looks, so that the time is bounded.
const WORK: usize = 8_000;

/// Other places tried of each point.
const OTHERS: usize = 5;

/// Advantage in bounded vTPv by which another place is better.
const BETTER: f64 = 8.0;

/// Moves what fits badly to where it fits better, and settles everything again. Nothing is
/// tried where vTPv is within `limit`.
pub(crate) fn repair(soft: &Soft, readings: &[&Reading], limit: f64, at: &mut Vec<Place>) {
    let system = System::new(readings.to_vec(), soft.held);
    let fits = |at: &[Place]| {
        let mut settled = at.to_vec();
        system.settle(&mut settled, Pull::Full, 40) <= limit
    };
    if fits(at) {
        return;
    }
    let mut cost = system.settle(at, WILD, 60);
    let mut left = (WORK / soft.points.max(1)).clamp(20, 400);
    let all = vec![true; soft.points];
    let free = |p: PointId| !soft.held[2 * p] && !soft.held[2 * p + 1];
    let parts = cut_off(&[], &near(soft));
    let mut moved = true;
    while moved {
        moved = false;
        let mut tries: Vec<Vec<(PointId, Place)>> = Vec::new();
        for (part, line) in parts
            .iter()
            .filter(|(part, _)| part.iter().all(|&p| free(p)))
        {
            let flip =
                |&p: &PointId| across(at[p], at[line[0]], at[line[1]]).map(|place| (p, place));
            tries.push(part.iter().filter_map(flip).collect());
        }
        for p in worst(soft, readings, at).into_iter().filter(|&p| free(p)) {
            let ties = ties(soft, p, &all);
            let mut there = at.clone();
            let others = candidates(soft, &ties, p, &mut there);
            let other = |place: &Place| {
                (place[0] - at[p][0]).abs() + (place[1] - at[p][1]).abs() > soft.readings[0].sigma
            };
            tries.extend(
                others
                    .into_iter()
                    .map(|o| o.0)
                    .filter(other)
                    .take(OTHERS)
                    .map(|place| vec![(p, place)]),
            );
        }
        for change in tries {
            if left == 0 {
                return;
            }
            left -= 1;
            let mut there = at.clone();
            for (p, place) in change {
                there[p] = place;
            }
            // Full pull brings the rest along, however far; the bounded one then judges.
            system.settle(&mut there, Pull::Full, 20);
            let cost_there = system.settle(&mut there, WILD, 20);
            if cost_there < cost - BETTER {
                *at = there;
                cost = cost_there;
                moved = true;
                break;
            }
        }
        if moved && fits(at) {
            return;
        }
    }
}

/// Points by their worst reading, the worst first.
fn worst(soft: &Soft, readings: &[&Reading], at: &[Place]) -> Vec<PointId> {
    let z =
        |n: usize| ((value(readings[n].kind, at) - readings[n].value) / readings[n].sigma).abs();
    let mut points: Vec<(f64, PointId)> = (0..soft.points)
        .map(|p| {
            (
                soft.touching[p].iter().map(|&n| z(n)).fold(0.0, f64::max),
                p,
            )
        })
        .filter(|(worst, _)| *worst > 1.5)
        .collect();
    points.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    points.into_iter().map(|(_, p)| p).collect()
}

/// Points that share a reading with each point, in order.
fn near(soft: &Soft) -> Vec<Vec<PointId>> {
    let of = |p: PointId| {
        let touched = soft.touching[p]
            .iter()
            .flat_map(|&n| soft.readings[n].kind.points());
        let mut list: Vec<PointId> = touched.filter(|&q| q != p).collect();
        list.sort_unstable();
        list.dedup();
        list
    };
    (0..soft.points).map(of).collect()
}
