//! Wheels and walkers on figures: what footfall keeps of them is what is shown.

use footfall::{Activity, Contact, class};
use geo::Coord;

use super::rides::{MEANS, at, carried, far};
use super::*;
use crate::{Key, Way};

/// The tightest turn of a way, metres, over a third of a metre at least: a lane's middle is a
/// line of short straight pieces, and turns from one to the next.
fn radius(keys: &[Key]) -> f64 {
    let (mut least, mut from, mut way) = (f64::INFINITY, 0, 0.0);
    for to in 1..keys.len() {
        way += far(keys[to - 1].at, keys[to].at);
        while way - far(keys[from].at, keys[from + 1].at) > 1.0 / 3.0 {
            way -= far(keys[from].at, keys[from + 1].at);
            from += 1;
        }
        let turn = (keys[to].toes - keys[from].toes).abs();
        if way > 1.0 / 3.0 && turn > 1e-3 {
            least = least.min(way / turn);
        }
    }
    least
}

/// Every family at its default lengths: whatever route footfall keeps for a child on wheels or
/// with a walker is shown, comes to each of its aims, and turns no tighter than wheels turn.
#[test]
fn routes_of_wheels_and_walkers_are_shown() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let figures = figures();
    let children = MEANS.map(|means| by(means, 5));
    let activities: Vec<Activity> = footfall::GAITS
        .iter()
        .map(|gait| Activity {
            gait: *gait,
            foot: footfall::sided(gait.skill).then_some(Side::Left),
        })
        .collect();
    let all = class(&figures, &children, &activities, &model.feet);
    let (mut clips, mut chosen) = ([0, 0], [0, 0]);
    let mut tightest = f64::INFINITY;
    for (figure, by_activity) in figures.iter().zip(&all) {
        for (activity, footfalls) in activities.iter().zip(by_activity) {
            for (nth, footfall) in footfalls.iter().enumerate() {
                let timed = footfall.timed.and_then(|nth| footfall.routes.get(nth));
                chosen[nth] += usize::from(timed.is_some());
                let routes = footfall.routes.iter().filter(|route| route.n > 0);
                for route in routes.step_by(7).take(6).chain(timed) {
                    let way = Way {
                        gait: &activity.gait,
                        cells: &route.cells,
                        lane: route.lane,
                        contacts: &route.contacts,
                    };
                    let told = format!("{} {} {way:?}", figure.family, activity.gait.name);
                    let path = Path::on(figure, &way, &children[nth], &model).expect(&told);
                    let clip = Clip::of(&path, &model).expect(&told);
                    carried(&clip, &model);
                    let aid = clip.aid.as_ref().expect(&told);
                    assert_eq!(clip.contacts(), route.contacts[1..]);
                    assert!(clip.contacts().iter().all(|one| *one == Contact::B));
                    for (step, (mark, stop)) in aid.marks.iter().zip(&path.stops[1..]).enumerate() {
                        // an arc that touches both ways passes inside their corner
                        let inside = match path.stops.get(step + 2) {
                            Some(next) if route.lane.is_none() => {
                                let way = |a: Coord<f64>, b: Coord<f64>| {
                                    libm::atan2(b.y - a.y, b.x - a.x)
                                };
                                let turn =
                                    way(stop.at, next.at) - way(path.stops[step].at, stop.at);
                                let half = libm::remainder(turn, std::f64::consts::TAU) / 2.0;
                                model.feet.wheels_turn * (1.0 / libm::cos(half) - 1.0)
                            }
                            _ => 0.0,
                        };
                        let off = far(mark.at, stop.at);
                        assert!((off - inside).abs() < 1e-4, "{told}: {off}, not {inside}");
                        assert!(off < 0.12, "{told}: {off} off the aim");
                        if nth == 0 {
                            let comes = at(&aid.keys, mark.lands).at;
                            assert!(far(comes, mark.at) < 1e-3, "{told}: {comes:?}");
                        }
                    }
                    if nth == 0 {
                        tightest = tightest.min(radius(&aid.keys));
                    }
                    clips[nth] += 1;
                }
            }
        }
    }
    assert!(
        clips.iter().all(|clips| *clips > 100),
        "only {clips:?} clips"
    );
    // keys lie on chords of the arc, and what an arc is cut into is a little shorter than it
    assert!(
        tightest > 0.97 * model.feet.wheels_turn,
        "turns at {tightest} m"
    );
    assert!(
        tightest < 1.5 * model.feet.wheels_turn,
        "nothing turned: {tightest} m"
    );
}
