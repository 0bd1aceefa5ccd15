//! The model played out: z drawn, then each flight, each landing and each slip of the
//! pattern, as many children many times. The share that comes through must be P.

use children::Side;

use super::*;
use crate::gait::{Gait, practice};
use crate::tread::tread;
use marking::Outline;

/// Plays of each figure. Chance allows four standard errors of their share.
const PLAYS: u32 = 200_000;

/// PCG-XSH-RR 64/32 (O'Neill 2014; constants from memory): a generator of our own, so that
/// the test is the same on every machine.
struct Dice(u64);

impl Dice {
    fn uniform(&mut self) -> f64 {
        let state = self.0;
        self.0 = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        let mixed = (((state >> 18) ^ state) >> 27) as u32;
        (f64::from(mixed.rotate_right((state >> 59) as u32)) + 0.5) / 4_294_967_296.0
    }

    /// Box and Muller.
    fn normal(&mut self) -> f64 {
        let (u, v) = (self.uniform(), self.uniform());
        libm::sqrt(-2.0 * libm::log(u)) * libm::cos(std::f64::consts::TAU * v)
    }
}

fn inside(cell: &Cell, x: f64, y: f64) -> bool {
    match &cell.outline {
        Outline::Disc { radius } => libm::hypot(x - cell.centre.x, y - cell.centre.y) <= *radius,
        Outline::Polygon(polygon) => {
            use geo::Contains;
            polygon.contains(&geo::Coord { x, y })
        }
    }
}

/// Plays one kept route; whether it came through, and the good contacts on the way.
fn play(
    dice: &mut Dice,
    figure: &Figure,
    child: &Child,
    gait: &Gait,
    route: &[usize],
    lines: &[usize],
    z: f64,
) -> (bool, f64) {
    let mut good = 0.0;
    let mut before: Option<(f64, f64)> = None;
    for (two, line) in route.windows(2).zip(lines) {
        let follow = &gait.follows[*line];
        let (here, there) = (&figure.cells[two[0]], &figure.cells[two[1]]);
        let (x, y) = (
            there.centre.x - here.centre.x,
            there.centre.y - here.centre.y,
        );
        let d = libm::hypot(x, y);
        let reach = follow.reach(child).expect("a reach");
        let rho = (reach.m + reach.tau * z).max(0.3 * reach.m);
        let turn = before.map_or(0.0, |(bx, by)| libm::atan2(y, x) - libm::atan2(by, bx));
        let g = match gait.name {
            "leap" => 0.6,
            _ => 0.3,
        };
        let r = rho * (1.0 - g * (1.0 - libm::cos(turn)) / 2.0);
        // One flight carries Normal(r + 1.2816 w rho, (w rho)²): nine in ten reach r.
        let flown = r + 0.1 * rho * (1.2816 + dice.normal());
        let sx = there.centre.x + child.scatter * dice.normal();
        let sy = there.centre.y + child.scatter * dice.normal();
        let kept = dice.uniform() < child.skills[&follow.steady].steady;
        if !(flown >= d && inside(there, sx, sy) && kept) {
            return (false, good);
        }
        good += practice(gait, follow)
            .iter()
            .map(|(_, _, share)| share)
            .sum::<f64>();
        before = Some((x, y));
    }
    (true, good)
}

fn check(figure: &Figure, gait: &str, foot: Option<Side>, years: f64, seed: u64) {
    let child = child(years);
    let gait = Gait::named(gait).expect("a gait");
    let footfall = tread(figure, &child, &gait, foot, &model());
    let route = footfall.routes.last().expect("a route");
    // The contacts name the gait's lines.
    let mut state = gait
        .starts(figure.cells[route.cells[0]].run_up)
        .find(|state| state.contact == route.contacts[0])
        .expect("a start");
    let mut lines = Vec::new();
    for contact in &route.contacts[1..] {
        let line = gait
            .follows
            .iter()
            .position(|follow| follow.after == state && follow.then.contact == *contact)
            .expect("a line");
        state = gait.follows[line].then;
        lines.push(line);
    }
    let mut dice = Dice(seed);
    let (mut through, mut at_middle, mut good, mut good_squared) = (0u32, 0u32, 0.0, 0.0);
    for _ in 0..PLAYS {
        let z = loop {
            let z = dice.normal();
            if z.abs() <= 4.0 {
                break z;
            }
        };
        let can = dice.uniform() < child.skills[&gait.can].can;
        let (done, _) = play(&mut dice, figure, &child, &gait, &route.cells, &lines, z);
        through += u32::from(done && can);
        let (done, contacts) = play(&mut dice, figure, &child, &gait, &route.cells, &lines, 0.0);
        at_middle += u32::from(done);
        good += contacts;
        good_squared += contacts * contacts;
    }
    let plays = f64::from(PLAYS);
    for (what, count, wanted) in [("P", through, route.p), ("pi at 0", at_middle, route.pi_0)] {
        let share = f64::from(count) / plays;
        let error = libm::sqrt(wanted * (1.0 - wanted) / plays);
        assert!(
            wanted > 0.05,
            "{} {what} {wanted} is too small to tell",
            gait.name
        );
        assert!(
            (share - wanted).abs() <= 4.0 * error,
            "{} {what}: played {share}, reckoned {wanted}",
            gait.name
        );
    }
    if footfall.chosen == Some(footfall.routes.len() - 1) {
        let (mean, square) = (good / plays, good_squared / plays);
        let error = libm::sqrt((square - mean * mean) / plays);
        let wanted: f64 = footfall
            .good_contacts
            .iter()
            .map(|good| good.contacts)
            .sum();
        assert!(
            (mean - wanted).abs() <= 4.0 * error,
            "{}: played {mean} good, reckoned {wanted}",
            gait.name
        );
    }
}

#[test]
fn played_out_the_children_come_through_as_often_as_reckoned() {
    let row = chain(
        (0..5)
            .map(|i| disc((0.3 * f64::from(i), 0.0), 0.15))
            .collect(),
    );
    check(&row, "hop", Some(Side::Left), 5.0, 1);
    check(&row, "hop", None, 6.0, 2);
    let zigzag = chain(
        (0..6)
            .map(|i| {
                disc(
                    (0.4 * f64::from(i), if i % 2 == 0 { 0.0 } else { 0.3 }),
                    0.2,
                )
            })
            .collect(),
    );
    check(&zigzag, "jump", None, 5.5, 3);
    let mut leaps = chain(
        [(0.0, 0.0), (0.7, 0.0), (1.2, 0.4), (1.9, 0.4)]
            .map(|at| disc(at, 0.2))
            .to_vec(),
    );
    leaps.cells[0].run_up = true;
    check(&leaps, "leap", Some(Side::Right), 5.0, 4);
    let square = |x, deep, takes| Cell {
        takes,
        ..upright((x, 0.0), 0.3, deep)
    };
    let court = chain(vec![
        square(0.0, 0.3, Takes::One),
        square(0.35, 0.3, Takes::One),
        square(0.7, 0.6, Takes::Both),
        square(1.05, 0.3, Takes::One),
        square(1.4, 0.6, Takes::Both),
    ]);
    check(&court, "court", Some(Side::Right), 5.6, 5);
}
