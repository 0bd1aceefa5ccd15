//! A clock that runs faster or slower: work in the first hour, drying in cold air.

/// How long things take, by the time at which they go on: a stretch of the clock whose scale
/// is 2 takes two seconds for one.
#[derive(Clone, Debug, PartialEq)]
pub struct Clock {
    /// From when which scale holds; the first one also before.
    spells: Vec<(i64, f64)>,
}

/// Seconds. Less than this over a whole second is rounding.
const HAIR: f64 = 1e-6;

impl Clock {
    /// A clock by spells (from when, scale), sorted by time here. Scales that are not above
    /// zero, and no spells at all, count as 1.
    pub fn new(spells: &[(i64, f64)]) -> Clock {
        let mut spells: Vec<(i64, f64)> = spells
            .iter()
            .map(|(from, scale)| {
                let fit = scale.is_finite() && *scale > 0.0;
                (*from, if fit { *scale } else { 1.0 })
            })
            .collect();
        if spells.is_empty() {
            spells.push((0, 1.0));
        }
        spells.sort_by_key(|(from, _)| *from);
        Clock { spells }
    }

    /// The clock that always runs as it should.
    pub fn even() -> Clock {
        Clock::new(&[])
    }

    /// When something is done that takes `seconds` at scale 1 and is begun at `start`. What
    /// is begun later is never done sooner.
    pub fn after(&self, start: i64, seconds: i64) -> i64 {
        self.done(start, seconds as f64)
    }

    /// The same for parts of seconds, up to the next whole one.
    pub(crate) fn done(&self, start: i64, seconds: f64) -> i64 {
        let mut left = seconds;
        let mut here = start as f64;
        let mut at = self.spells.partition_point(|(from, _)| *from <= start);
        at = at.saturating_sub(1);
        loop {
            let scale = self.spells[at].1;
            let done = here + left * scale;
            match self.spells.get(at + 1) {
                Some((next, _)) if (*next as f64) < done => {
                    left -= (*next as f64 - here) / scale;
                    here = *next as f64;
                    at += 1;
                }
                _ => return (done - HAIR).ceil() as i64,
            }
        }
    }

    /// Seconds at scale 1 that fit between two times.
    pub fn between(&self, start: i64, end: i64) -> f64 {
        let mut sum = 0.0;
        for (at, (from, scale)) in self.spells.iter().enumerate() {
            let from = if at == 0 { start } else { start.max(*from) };
            let to = self
                .spells
                .get(at + 1)
                .map_or(end, |(next, _)| end.min(*next));
            if from < to {
                sum += (to - from) as f64 / scale;
            }
        }
        sum
    }

    /// The least scale that ever holds: nothing is done faster.
    pub fn fastest(&self) -> f64 {
        self.spells
            .iter()
            .map(|(_, scale)| *scale)
            .fold(f64::INFINITY, f64::min)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: one and a half times as long for an hour, then as it should.
    #[test]
    fn work_slows_down_while_it_is_slow() {
        let clock = Clock::new(&[(0, 1.5), (3600, 1.0)]);
        assert_eq!(clock.after(0, 600), 900);
        assert_eq!(clock.after(0, 2400), 3600);
        assert_eq!(clock.after(0, 2500), 3700);
        assert_eq!(clock.after(3300, 600), 3600 + 400);
        assert_eq!(clock.after(5000, 600), 5600);
        assert_eq!(clock.after(-100, 10), -85);
        assert_eq!(Clock::even().after(7, 3), 10);
        assert_eq!(clock.between(0, 3900), 2400.0 + 300.0);
        assert_eq!(clock.between(-300, 0), 200.0);
    }

    #[test]
    fn what_is_begun_later_is_not_done_sooner() {
        let clock = Clock::new(&[(0, 2.0), (100, 0.7), (150, 1.5), (400, 1.05)]);
        for seconds in [0, 1, 7, 60, 333] {
            let ends: Vec<i64> = (0..600).map(|start| clock.after(start, seconds)).collect();
            assert!(ends.windows(2).all(|two| two[0] <= two[1]));
        }
    }
}
