//! Works with people, tools, drying and days: as short a plan as can be found, and a bound
//! that no plan can beat.
//!
//! A resource-constrained project whose durations come from a clock, whose works must lie
//! within windows, whose links may wait for drying, and in which some pairs of works must
//! not meet, each keeping the other off until it has dried.
//!
//! # Method
//! Every list of works that respects the links makes a plan: each work in turn at the
//! earliest time that is left for it (serial generation). As works that are done sooner dry
//! sooner, the best plan is among those. Orders come from priority and from moving single
//! works about; then branch and bound over works in the order of their starts, cut by a
//! bound for what is left, by what could have been done before, and by plans for the same
//! works that are nowhere later. Every search is limited by counts.

mod bound;
mod clock;
mod exact;
mod place;
mod search;

pub use bound::bound;
pub use clock::Clock;
pub use search::{Limits, Solved, solve};

/// One work, done without a break.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Work {
    /// Seconds at scale 1 of the pace.
    pub seconds: i64,
    /// How much it takes of each resource; what is missing is 0.
    pub needs: Vec<u32>,
    /// The place where its people are.
    pub place: Option<usize>,
    /// Seconds of drying for which it leaves its place wet.
    pub wet: Option<i64>,
}

/// When one work lets another begin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wait {
    /// So many seconds of drying after its end.
    Dry(i64),
    /// Once it has begun.
    Begun,
}

/// One work before another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Link {
    /// The first.
    pub from: usize,
    /// The second.
    pub to: usize,
    /// What it waits for.
    pub wait: Wait,
}

/// Two works that must not meet, whichever comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Apart {
    /// The two works.
    pub works: [usize; 2],
    /// Seconds of drying that the other waits after each.
    pub dry: [i64; 2],
}

/// Whether people can still get in and out.
pub trait Ways {
    /// Whether all who work at `at` can leave, and all ways that must be open are, while
    /// `wet` are wet; both sorted. With one place at work and wet it has to be so.
    fn open(&self, at: &[usize], wet: &[usize]) -> bool;
}

/// All works with what binds them.
pub struct Problem<'a> {
    /// The works.
    pub works: Vec<Work>,
    /// How much there is of each resource.
    pub capacity: Vec<u32>,
    /// Which goes before which; without circles.
    pub links: Vec<Link>,
    /// Which must not meet.
    pub apart: Vec<Apart>,
    /// From when to when there is work, seconds, in order and apart.
    pub windows: Vec<(i64, i64)>,
    /// How fast work goes.
    pub pace: Clock,
    /// How fast things dry.
    pub drying: Clock,
    /// Ways that must stay open; `None` where nothing can close them.
    pub ways: Option<&'a dyn Ways>,
}

impl Problem<'_> {
    /// How much of a resource a work takes.
    pub fn need(&self, work: usize, resource: usize) -> u32 {
        self.works[work].needs.get(resource).copied().unwrap_or(0)
    }

    /// When a work that begins at `start` ends.
    pub fn end(&self, work: usize, start: i64) -> i64 {
        self.pace.after(start, self.works[work].seconds)
    }

    /// The first time from `from` on at which a work fits into a window.
    pub fn in_window(&self, work: usize, from: i64) -> Option<i64> {
        let first = self.windows.partition_point(|(_, to)| *to < from);
        self.windows[first..].iter().find_map(|(open, shut)| {
            let start = from.max(*open);
            (self.end(work, start) <= *shut).then_some(start)
        })
    }

    /// The works in an order that respects the links; `None` where they go in a circle.
    pub fn order(&self) -> Option<Vec<usize>> {
        let mut open = vec![0; self.works.len()];
        for link in &self.links {
            open[link.to] += 1;
        }
        let mut order: Vec<usize> = (0..open.len()).filter(|work| open[*work] == 0).collect();
        let mut at = 0;
        while let Some(&work) = order.get(at) {
            at += 1;
            for link in self.links.iter().filter(|link| link.from == work) {
                open[link.to] -= 1;
                if open[link.to] == 0 {
                    order.push(link.to);
                }
            }
        }
        (order.len() == self.works.len()).then_some(order)
    }

    /// The earliest start that a link allows.
    pub(crate) fn allowed(&self, wait: Wait, start: i64, end: i64) -> i64 {
        match wait {
            Wait::Dry(seconds) => self.drying.after(end, seconds),
            Wait::Begun => start,
        }
    }
}
