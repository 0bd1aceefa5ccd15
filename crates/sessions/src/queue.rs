//! Closed forms of waiting: what the simulation must agree with where they hold.
//!
//! A *gap* is the time between two starts on a track, *away* the time from a start until the
//! child is back in line, seconds.

/// Longest wait where all stand in line at once: the last of the longest line.
///
/// Source: children.md 5.5, wait = (n/k - 1) t for n children on k tracks released every t
/// seconds; a line that does not divide evenly is counted at its longest.
pub fn line(children: usize, tracks: usize, gap: f64) -> f64 {
    let longest = children.div_ceil(tracks.max(1));
    longest.saturating_sub(1) as f64 * gap
}

/// Seconds from start to start, and the wait in it, of children who take turns on one track
/// and are away equally long, every time: the longer of the round and the line.
pub fn turns(children: usize, gap: f64, away: f64) -> (f64, f64) {
    let cycle = away.max(children as f64 * gap);
    (cycle, cycle - away)
}

/// Mean wait of children who come by chance, `rate` a second, to one track: M/D/1. `None`
/// where they come faster than they can start.
///
/// Source: Pollaczek and Khinchine's mean, rho gap / (2 (1 - rho)); memory, held against a
/// simulation in `oracle/`.
pub fn open(rate: f64, gap: f64) -> Option<f64> {
    let load = rate * gap;
    (0.0..1.0)
        .contains(&load)
        .then(|| load * gap / (2.0 * (1.0 - load)))
}

/// Mean wait of `children` who take turns on one track with a fixed gap and come back, after
/// their gap has passed, in a time by chance (exponential, mean `out`): M/D/1 with a finite
/// source, exact.
///
/// By the number left in line at each end of a gap: while the gap runs each child that is out
/// comes back with chance 1 - exp(-gap/out). Turns are then N to a cycle, which gives the wait.
pub fn closed(children: usize, gap: f64, out: f64) -> f64 {
    if children < 2 || out <= 0.0 {
        return turns(children, gap, gap + out.max(0.0)).1;
    }
    let back = 1.0 - libm::exp(-gap / out);
    let step: Vec<Vec<f64>> = (0..children)
        .map(|left| {
            // With nobody left the track stands empty until the first comes.
            let starts = left.max(1);
            let mut row = vec![0.0; children];
            for (came, chance) in binomial(children - starts, back).into_iter().enumerate() {
                row[starts - 1 + came] += chance;
            }
            row
        })
        .collect();
    let empty = stationary(step)[0];
    let between = gap + empty * out / children as f64;
    children as f64 * between - gap - out
}

/// The same with a gap by chance as well (exponential): mean value analysis of the closed
/// queue, exact. Waits with a fixed gap are never longer.
pub fn closed_by_chance(children: usize, gap: f64, out: f64) -> f64 {
    let mut in_line = 0.0;
    let mut stay = gap;
    for many in 1..=children {
        stay = gap * (1.0 + in_line);
        in_line = many as f64 * stay / (stay + out);
    }
    stay - gap
}

/// Chances of 0 to `many` out of `many`, each with chance `each`.
fn binomial(many: usize, each: f64) -> Vec<f64> {
    let mut chances = vec![1.0];
    for _ in 0..many {
        let mut next = vec![0.0; chances.len() + 1];
        for (at, chance) in chances.iter().enumerate() {
            next[at] += chance * (1.0 - each);
            next[at + 1] += chance * each;
        }
        chances = next;
    }
    chances
}

/// Long-run shares of the states of a chain, by Grassmann, Taksar and Heyman's elimination,
/// which subtracts nothing and so loses nothing.
fn stationary(mut step: Vec<Vec<f64>>) -> Vec<f64> {
    let many = step.len();
    for last in (1..many).rev() {
        let leaves: f64 = step[last][..last].iter().sum();
        for from in 0..last {
            step[from][last] /= leaves;
            for to in 0..last {
                step[from][to] += step[from][last] * step[last][to];
            }
        }
    }
    let mut shares = vec![1.0; many];
    for at in 1..many {
        shares[at] = (0..at).map(|from| shares[from] * step[from][at]).sum();
    }
    let all: f64 = shares.iter().sum();
    shares.iter_mut().for_each(|share| *share /= all);
    shares
}
