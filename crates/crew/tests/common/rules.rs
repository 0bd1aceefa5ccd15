//! What a plan must keep to, looked at from scratch.

use crew::schedule::{Problem, Wait};

/// The first thing that a plan breaks.
pub fn broken(problem: &Problem, when: &[(i64, i64)]) -> Option<String> {
    for (work, &(start, end)) in when.iter().enumerate() {
        if end != problem.pace.after(start, problem.works[work].seconds) {
            return Some(format!("{work} does not take its time"));
        }
        let inside = |window: &(i64, i64)| window.0 <= start && end <= window.1;
        if !problem.windows.iter().any(inside) {
            return Some(format!("{work} is outside the windows"));
        }
    }
    for link in &problem.links {
        let allowed = match link.wait {
            Wait::Dry(seconds) => problem.drying.after(when[link.from].1, seconds),
            Wait::Begun => when[link.from].0,
        };
        if when[link.to].0 < allowed {
            return Some(format!("{} comes too soon after {}", link.to, link.from));
        }
    }
    for apart in &problem.apart {
        let [a, b] = apart.works;
        let after = |first: usize, dry: i64, second: usize| {
            problem.drying.after(when[first].1, dry) <= when[second].0
        };
        if !(after(a, apart.dry[0], b) || after(b, apart.dry[1], a)) {
            return Some(format!("{a} and {b} meet"));
        }
    }
    let dried = |work: usize| {
        let wet = problem.works[work].wet.unwrap_or(0);
        problem.drying.after(when[work].1, wet)
    };
    // What holds changes only where something begins.
    for at in when.iter().map(|(start, _)| *start) {
        let now: Vec<usize> = (0..when.len())
            .filter(|work| when[*work].0 <= at && at < when[*work].1)
            .collect();
        for (resource, capacity) in problem.capacity.iter().enumerate() {
            let taken: u32 = now.iter().map(|work| problem.need(*work, resource)).sum();
            if taken > *capacity {
                return Some(format!("{taken} of resource {resource} taken at {at}"));
            }
        }
        if let Some(ways) = problem.ways {
            let mut places: Vec<usize> = now
                .iter()
                .filter_map(|work| problem.works[*work].place)
                .collect();
            let mut wet: Vec<usize> = (0..when.len())
                .filter(|work| problem.works[*work].wet.is_some())
                .filter(|work| when[*work].0 <= at && at < dried(*work))
                .filter_map(|work| problem.works[work].place)
                .collect();
            for list in [&mut places, &mut wet] {
                list.sort_unstable();
                list.dedup();
            }
            if !ways.open(&places, &wet) {
                return Some(format!("somebody is shut in at {at}"));
            }
        }
    }
    None
}
