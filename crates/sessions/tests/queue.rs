//! Waiting: the closed forms against other ways to the same, and the simulated track against
//! the closed forms where they hold.

#![allow(
    clippy::expect_used,
    reason = "clippy knows test functions, but not the helpers beside them"
)]

use chance::Chance;
use sessions::Play;
use sessions::queue;
use sessions::simulate::{Player, Tally, track};
use sessions::turn::{Failing, contact};

fn oracle() -> serde_json::Value {
    serde_json::from_str(include_str!("../oracle/queue.json")).expect("the answers read")
}

fn number(value: &serde_json::Value, key: &str) -> f64 {
    value[key].as_f64().unwrap_or(f64::NAN)
}

fn play(flights: u32, good: f64, pass_s: f64, walk_back_s: f64) -> Play {
    Play {
        child: 0,
        yields: Vec::new(),
        flights,
        good,
        pass_s,
        walk_back_s,
    }
}

/// Many runs of one track: means and standard errors of the mean wait (s) and of good
/// contacts a minute.
fn runs(plays: &[Play], seconds: f64, alone: bool, failing: Failing, dawdle: f64) -> [[f64; 2]; 2] {
    const RUNS: u64 = 60;
    let players: Vec<Player> = plays
        .iter()
        .map(|play| Player {
            plays: vec![(play, 1.0)],
        })
        .collect();
    let mut each = [Vec::new(), Vec::new()];
    for run in 0..RUNS {
        let mut chance = Chance::stream(11, run);
        let (tallies, waits) = track(&players, seconds, 5.0, alone, failing, dawdle, &mut chance);
        each[0].push(waits.iter().sum::<f64>() / waits.len() as f64);
        let good: u64 = tallies.iter().map(|it| it.contacts).sum();
        each[1].push(good as f64 / seconds * 60.0);
    }
    each.map(|values| {
        let mean = values.iter().sum::<f64>() / RUNS as f64;
        let squares: f64 = values.iter().map(|it| (it - mean) * (it - mean)).sum();
        [mean, (squares / (RUNS - 1) as f64 / RUNS as f64).sqrt()]
    })
}

/// The finite-source M/D/1 by numpy's eigenvector, the exponential one by its balance.
#[test]
fn closed_forms_are_those_of_the_chains() {
    let oracle = oracle();
    let rows = oracle["closed"].as_array().expect("rows");
    assert_eq!(rows.len(), 7);
    for row in rows {
        let n = row["n"].as_u64().expect("n") as usize;
        let (gap, out) = (number(row, "gap"), number(row, "out"));
        let fixed = queue::closed(n, gap, out);
        let by_chance = queue::closed_by_chance(n, gap, out);
        // Seconds; both sides are exact but for rounding.
        assert!(
            (fixed - number(row, "fixed")).abs() < 1e-8,
            "{row}: {fixed}"
        );
        assert!(
            (by_chance - number(row, "by_chance")).abs() < 1e-8,
            "{row}: {by_chance}"
        );
        // A gap that varies makes longer lines; a round that does not, shorter ones.
        let steady = queue::turns(n, gap, gap + out).1;
        assert!(steady <= fixed + 1e-12 && fixed <= by_chance + 1e-12);
    }
}

/// Pollaczek and Khinchine against numpy's simulation of the line (four standard errors),
/// and as what many children who are long away come to.
#[test]
fn open_line_is_m_d_1() {
    for row in oracle()["open"].as_array().expect("rows") {
        let (rate, gap) = (number(row, "rate"), number(row, "gap"));
        let wait = queue::open(rate, gap).expect("a line that does not grow");
        assert!(
            (wait - number(row, "wait")).abs() < 4.0 * number(row, "error"),
            "{row}: {wait}"
        );
        let many = 400;
        let closed = queue::closed(many, gap, many as f64 / rate - gap - wait);
        // The source is finite: 1/n off, some times over near saturation.
        assert!((closed - wait).abs() < 0.05 * wait, "{closed} and {wait}");
    }
    assert_eq!(queue::open(0.2, 5.0), None);
}

/// children.md 5.5: "With t = 5 s and a 15 s limit, at most 4 children per trail; 16 children
/// need 4 trails."
#[test]
fn a_line_waits_as_the_reference_says() {
    assert_eq!(queue::line(4, 1, 5.0), 15.0);
    assert_eq!(queue::line(16, 4, 5.0), 15.0);
    assert_eq!(queue::line(5, 1, 5.0), 20.0);
    for children in 1..=6 {
        let plays = vec![play(6, 6.0, 4.0, 6.0); children];
        let players: Vec<Player> = plays
            .iter()
            .map(|play| Player {
                plays: vec![(play, 1.0)],
            })
            .collect();
        let (tallies, _) = track(
            &players,
            440.0,
            5.0,
            false,
            Failing::GoOn,
            0.0,
            &mut Chance::new(1),
        );
        let longest = tallies
            .iter()
            .map(|it: &Tally| it.longest)
            .fold(0.0, f64::max);
        assert!(
            (longest - queue::line(children, 1, 5.0)).abs() < 1e-9,
            "{children}"
        );
    }
}

/// Without chance the round is the longer of what a child needs and what the line needs.
#[test]
fn steady_turns_are_exact() {
    for (children, pass, back) in [(4, 4.5, 6.5), (4, 9.0, 14.0), (2, 3.0, 4.0), (3, 6.0, 9.0)] {
        let plays = vec![play(6, 4.0, pass, back); children];
        let players: Vec<Player> = plays
            .iter()
            .map(|play| Player {
                plays: vec![(play, 1.0)],
            })
            .collect();
        let (cycle, wait) = queue::turns(children, 5.0, pass + back);
        let seconds = 200.0 * cycle;
        let (tallies, waits) = track(
            &players,
            seconds,
            5.0,
            false,
            Failing::GoOn,
            0.0,
            &mut Chance::new(2),
        );
        for tally in &tallies {
            assert_eq!(tally.turns, 200);
            let parts = tally.active + tally.walking + tally.waiting;
            assert!((parts - seconds).abs() < 1e-6, "{parts} of {seconds}");
        }
        // After the first round, in which all stand in line.
        let later = &waits[children..];
        assert!(
            later.iter().all(|it| (it - wait).abs() < 1e-9),
            "{children}: {wait}"
        );
    }
}

/// A track that holds one child for its pass of 5 s, and a way back by chance: M/D/1 with a
/// finite source. Four standard errors; the first lap, in which all stand in line, is a
/// thousandth of the time.
#[test]
fn ways_back_by_chance_wait_as_the_finite_source_says() {
    for (children, out) in [(2, 6.0), (4, 6.0), (4, 15.0), (4, 40.0), (12, 30.0)] {
        let plays = vec![play(1, 1.0, 5.0, out); children];
        let [[wait, error], _] = runs(&plays, 30_000.0, true, Failing::GoOn, out);
        let wanted = queue::closed(children, 5.0, out);
        assert!(
            (wait - wanted).abs() < 4.0 * error + 1e-3 * wanted,
            "{children} {out}: {wait} {wanted} {error}"
        );
    }
}

/// Children of different skill who go back where a contact fails: numpy's own event loop.
#[test]
fn mixed_lines_wait_as_an_independent_simulation() {
    let oracle = oracle();
    let kids = oracle["kids"].as_array().expect("kids");
    let plays: Vec<Play> = kids
        .iter()
        .map(|kid| {
            let at = |n: usize| kid[n].as_f64().expect("a number");
            let flights = at(0) as u32;
            let good: f64 = (1..=flights).map(|j| libm::pow(at(1), f64::from(j))).sum();
            let p = contact(flights, good);
            assert!(
                (p - at(1)).abs() < 1e-9,
                "the chance of a contact comes back"
            );
            play(flights, good, at(2), at(3))
        })
        .collect();
    for row in oracle["mixed"].as_array().expect("rows") {
        let alone = row["alone"].as_bool().expect("alone");
        let [[wait, error], [good, good_error]] =
            runs(&plays, 20_000.0, alone, Failing::GoBack, 2.0);
        let spread = |ours: f64, theirs: f64| 4.0 * libm::hypot(ours, theirs);
        let wanted = number(row, "wait");
        assert!(
            (wait - wanted).abs() < spread(error, number(row, "wait_error")),
            "{row}: {wait}"
        );
        let wanted = number(row, "good");
        assert!(
            (good - wanted).abs() < spread(good_error, number(row, "good_error")),
            "{row}: {good}"
        );
    }
}
