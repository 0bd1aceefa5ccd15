//! Works put down one by one, each as early as those before it allow.

use super::{Link, Problem};

/// Everything about a problem that does not change while works are placed.
pub(crate) struct Table<'a> {
    pub problem: &'a Problem<'a>,
    /// Links by the work that waits.
    pub before: Vec<Vec<Link>>,
    /// Links by the work that is waited for.
    pub after: Vec<Vec<Link>>,
    /// For each work the works that it must not meet: (other, own drying, other's drying).
    pub apart: Vec<Vec<(usize, i64, i64)>>,
    /// For each work the longest that anything waits for its drying.
    pub lingers: Vec<i64>,
}

impl<'a> Table<'a> {
    pub fn new(problem: &'a Problem<'a>) -> Table<'a> {
        let many = problem.works.len();
        let mut table = Table {
            problem,
            before: vec![Vec::new(); many],
            after: vec![Vec::new(); many],
            apart: vec![Vec::new(); many],
            lingers: vec![0; many],
        };
        for link in &problem.links {
            table.before[link.to].push(*link);
            table.after[link.from].push(*link);
            if let super::Wait::Dry(seconds) = link.wait {
                table.lingers[link.from] = table.lingers[link.from].max(seconds);
            }
        }
        for apart in &problem.apart {
            let ([a, b], [dry_a, dry_b]) = (apart.works, apart.dry);
            table.apart[a].push((b, dry_a, dry_b));
            table.apart[b].push((a, dry_b, dry_a));
            table.lingers[a] = table.lingers[a].max(dry_a);
            table.lingers[b] = table.lingers[b].max(dry_b);
        }
        for (work, lingers) in problem.works.iter().zip(&mut table.lingers) {
            *lingers = (*lingers).max(work.wet.unwrap_or(0));
        }
        table
    }
}

/// Works placed so far.
#[derive(Clone, Debug)]
pub(crate) struct Placed {
    /// Start and end of each work that is placed.
    pub when: Vec<Option<(i64, i64)>>,
    /// The placed works, in the order of placing.
    pub works: Vec<usize>,
}

impl Placed {
    pub fn none(many: usize) -> Placed {
        Placed {
            when: vec![None; many],
            works: Vec::with_capacity(many),
        }
    }

    pub fn put(&mut self, work: usize, start: i64, end: i64) {
        self.when[work] = Some((start, end));
        self.works.push(work);
    }

    pub fn take_back(&mut self) {
        if let Some(work) = self.works.pop() {
            self.when[work] = None;
        }
    }

    /// Start and end of all works.
    pub fn all(&self) -> Option<Vec<(i64, i64)>> {
        self.when.iter().copied().collect()
    }
}

impl Table<'_> {
    /// The earliest start of a work from `from` on beside what is placed; `None` where its
    /// predecessors are not placed or no window is left.
    pub fn earliest(&self, work: usize, placed: &Placed, from: i64) -> Option<i64> {
        let problem = self.problem;
        let mut from = from;
        for link in &self.before[work] {
            let (start, end) = placed.when[link.from]?;
            from = from.max(problem.allowed(link.wait, start, end));
        }
        loop {
            let start = problem.in_window(work, from)?;
            let end = problem.end(work, start);
            match self.hindered(work, start, end, placed) {
                Some(later) => from = later,
                None => return Some(start),
            }
        }
    }

    /// The next time worth trying, if a work cannot lie here.
    fn hindered(&self, work: usize, start: i64, end: i64, placed: &Placed) -> Option<i64> {
        self.too_near(work, start, end, placed)
            .or_else(|| self.too_much(work, start, end, placed))
            .or_else(|| self.shut_in(work, start, end, placed))
    }

    /// Works that must not meet.
    fn too_near(&self, work: usize, start: i64, end: i64, placed: &Placed) -> Option<i64> {
        let drying = &self.problem.drying;
        self.apart[work].iter().find_map(|&(other, own, others)| {
            let (from, to) = placed.when[other]?;
            let later = drying.after(to, others);
            (start < later && drying.after(end, own) > from).then_some(later)
        })
    }

    /// More taken of a resource than there is.
    fn too_much(&self, work: usize, start: i64, end: i64, placed: &Placed) -> Option<i64> {
        let problem = self.problem;
        let meeting: Vec<(usize, i64, i64)> = placed
            .works
            .iter()
            .filter_map(|&other| {
                let (from, to) = placed.when[other]?;
                (from < end && start < to && from < to).then_some((other, from, to))
            })
            .collect();
        for (resource, capacity) in problem.capacity.iter().enumerate() {
            let need = problem.need(work, resource);
            if need == 0 || end <= start {
                continue;
            }
            let taken = |at: i64| -> u32 {
                meeting
                    .iter()
                    .filter(|(_, from, to)| *from <= at && at < *to)
                    .map(|(other, _, _)| problem.need(*other, resource))
                    .sum()
            };
            let full = std::iter::once(start)
                .chain(meeting.iter().map(|(_, from, _)| *from))
                .filter(|at| *at >= start)
                .find(|at| taken(*at) + need > *capacity);
            if let Some(at) = full {
                // Something that takes of this has to end first.
                return meeting
                    .iter()
                    .filter(|(other, from, to)| {
                        *from <= at && at < *to && problem.need(*other, resource) > 0
                    })
                    .map(|(_, _, to)| *to)
                    .min();
            }
        }
        None
    }

    /// Somebody who could not leave, or a way that would be closed.
    fn shut_in(&self, work: usize, start: i64, end: i64, placed: &Placed) -> Option<i64> {
        let problem = self.problem;
        let ways = problem.ways?;
        problem.works[work].place?;
        let dry = |work: usize, end: i64| {
            let wet = problem.works[work].wet;
            wet.map_or(end, |seconds| problem.drying.after(end, seconds))
        };
        // (work, start, end, dry) of all that is there with this work
        let until = dry(work, end);
        let mut there = vec![(work, start, end, until)];
        there.extend(placed.works.iter().filter_map(|&other| {
            let (from, to) = placed.when[other]?;
            let dried = dry(other, to);
            problem.works[other].place?;
            (from < until && start < dried).then_some((other, from, to, dried))
        }));
        let mut times: Vec<i64> = there.iter().map(|(_, from, _, _)| *from).collect();
        times.retain(|at| (start..until.max(start + 1)).contains(at));
        times.sort_unstable();
        times.dedup();
        let shut = times.into_iter().any(|at| {
            let place = |inside: &dyn Fn(i64, i64, i64) -> bool, wet: bool| {
                let mut places: Vec<usize> = there
                    .iter()
                    .filter(|(work, from, to, dried)| {
                        inside(*from, *to, *dried) && (!wet || problem.works[*work].wet.is_some())
                    })
                    .filter_map(|(work, _, _, _)| problem.works[*work].place)
                    .collect();
                places.sort_unstable();
                places.dedup();
                places
            };
            let working = place(&|from, to, _| from <= at && at < to, false);
            let wet = place(&|from, _, dried| from <= at && at < dried, true);
            !ways.open(&working, &wet)
        });
        if !shut {
            return None;
        }
        there
            .iter()
            .skip(1)
            .flat_map(|(_, _, to, dried)| [*to, *dried])
            .filter(|at| *at > start)
            .min()
    }

    /// A plan by a list of works that respects the links; `None` where a work finds no window.
    pub fn serial(&self, list: &[usize]) -> Option<Placed> {
        let mut placed = Placed::none(list.len());
        for &work in list {
            let start = self.earliest(work, &placed, i64::MIN)?;
            placed.put(work, start, self.problem.end(work, start));
        }
        Some(placed)
    }
}
