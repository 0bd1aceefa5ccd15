//! From a job to the plan of its days.

use ledger::Ledger;
use note::{Noted, any_error};

use crate::air::{Times, drying};
use crate::figures::*;
use crate::question::Job;
use crate::result::{Day, Kind, Plan, Task, Waited, Wet, Why};
use crate::say;
use crate::schedule::{Clock, Limits, Problem, Solved, Wait, Ways, solve};
use crate::staff::staff;
use crate::tasks::{PEOPLE, STENCILS, TAPES, Works, minutes, pace, works};
use crate::ways::Walks;

/// Seconds from one day to the next.
const DAY: i64 = 86_400;

/// The plan of a job, and what the crew should hear. No plan where the notes hold an error.
pub fn crew(job: &Job, ledger: &Ledger) -> Noted<Option<Plan>> {
    let mut notes = say::faults(job);
    if any_error(&notes) {
        return Noted { value: None, notes };
    }
    let made = works(job, ledger);
    let clock = pace(job, ledger);
    let days = days(job, &clock, ledger);
    let short = days
        .iter()
        .filter(|(day, shut)| !day.added && day.from_s >= *shut);
    let short = short.count();
    notes.extend(say::windows(job, short, ledger));
    let windows: Vec<(i64, i64)> = days
        .iter()
        .filter(|(day, shut)| day.from_s < *shut)
        .map(|(day, shut)| (day.from_s, *shut))
        .collect();
    let walks = Walks::new(job, ledger);
    notes.extend(say::ways(
        job,
        walks.as_ref().map(|(_, shut)| shut.as_slice()),
    ));
    let problem = Problem {
        works: made.works.clone(),
        capacity: made.capacity.clone(),
        links: made.links.clone(),
        apart: made.apart.clone(),
        windows,
        pace: clock,
        drying: drying(&job.air, ledger),
        ways: walks
            .as_ref()
            .map(|(walks, _)| walks)
            .filter(|walks| !walks.always())
            .map(|walks| walks as &dyn Ways),
    };
    notes.extend(say::unfit(job, &made, &problem));
    if any_error(&notes) {
        return Noted { value: None, notes };
    }
    let limits = Limits {
        tries: ledger.number(TRIES).max(0.0) as usize,
        nodes: ledger.number(NODES).max(0.0) as usize,
        seed: job.seed,
    };
    let Some(solved) = solve(&problem, limits) else {
        notes.push(say::no_plan());
        return Noted { value: None, notes };
    };
    let plan = Laid {
        made: &made,
        problem: &problem,
        solved: &solved,
        ledger,
    }
    .plan(job, days);
    notes.extend(say::plan(job, &plan));
    Noted {
        value: Some(plan),
        notes,
    }
}

/// The days with the time by which work must stop for cleaning up: those given, and more like
/// the last of them.
fn days(job: &Job, clock: &Clock, ledger: &Ledger) -> Vec<(Day, i64)> {
    let clean = minutes(CLEAN, ledger);
    let day = |from_s: i64, to_s: i64, added: bool| {
        let mut shut = to_s - clean;
        // Where cleaning up goes slowly it begins sooner.
        while shut > from_s && clock.after(shut, clean) > to_s {
            shut -= clock.after(shut, clean) - to_s;
        }
        let day = Day {
            from_s,
            to_s,
            used: false,
            added,
        };
        (day, shut)
    };
    let mut days: Vec<(Day, i64)> = job
        .windows
        .iter()
        .map(|window| day(window.from_s, window.to_s, false))
        .collect();
    if let Some(last) = job.windows.last() {
        let more = ledger.number(MORE_DAYS).clamp(0.0, 365.0) as i64;
        for nth in 1..=more {
            days.push(day(last.from_s + nth * DAY, last.to_s + nth * DAY, true));
        }
    }
    days
}

/// Tasks with their people in the order of their starts, and where each went.
fn by_start(tasks: Vec<Task>, hands: &[u32]) -> (Vec<Task>, Vec<u32>, Vec<usize>) {
    let mut order: Vec<usize> = (0..tasks.len()).collect();
    order.sort_by_key(|task| (tasks[*task].start_s, *task));
    let mut moved = vec![0; tasks.len()];
    for (to, from) in order.iter().enumerate() {
        moved[*from] = to;
    }
    let mut sorted: Vec<Task> = order.iter().map(|from| tasks[*from].clone()).collect();
    for waited in sorted.iter_mut().flat_map(|task| &mut task.waits_for) {
        waited.task = moved[waited.task];
    }
    let hands = order.iter().map(|from| hands[*from]).collect();
    (sorted, hands, moved)
}

/// A solved problem on its way to a plan.
struct Laid<'a> {
    made: &'a Works,
    problem: &'a Problem<'a>,
    solved: &'a Solved,
    ledger: &'a Ledger,
}

impl Laid<'_> {
    fn plan(&self, job: &Job, days: Vec<(Day, i64)>) -> Plan {
        let mut order: Vec<usize> = (0..self.made.works.len()).collect();
        order.sort_by_key(|work| (self.solved.when[*work], *work));
        // by work: the number of its task
        let mut number = vec![0; order.len()];
        for (task, work) in order.iter().enumerate() {
            number[*work] = task;
        }
        let mut days: Vec<Day> = days.into_iter().map(|(day, _)| day).collect();
        let on = |start: i64| {
            days.iter()
                .position(|day| (day.from_s..day.to_s).contains(&start))
                .unwrap_or(0)
        };
        let mut tasks: Vec<Task> = order
            .iter()
            .map(|&work| {
                let meaning = &self.made.meanings[work];
                let (start_s, end_s) = self.solved.when[work];
                let mut waits_for = self.waits(work);
                for waited in &mut waits_for {
                    waited.task = number[waited.task];
                }
                waits_for.sort_unstable();
                waits_for.dedup();
                Task {
                    kind: meaning.kind,
                    marking: Some(meaning.marking),
                    colour: meaning.colour,
                    coat: meaning.coat,
                    stencil: meaning.stencil,
                    people: Vec::new(),
                    day: on(start_s),
                    start_s,
                    end_s,
                    parts: meaning.parts.clone(),
                    waits_for,
                }
            })
            .collect();
        let mut hands: Vec<u32> = order
            .iter()
            .map(|work| self.problem.need(*work, PEOPLE))
            .collect();
        let mut wet = self.wet(&order);
        for task in &tasks {
            days[task.day].used = true;
        }
        let cleaned = self.cleaning(&days, &tasks, job);
        hands.extend(cleaned.iter().map(|(_, hands)| *hands));
        tasks.extend(cleaned.into_iter().map(|(task, _)| task));
        let (mut tasks, hands, moved) = by_start(tasks, &hands);
        for wet in &mut wet {
            wet.task = moved[wet.task];
        }
        let load = staff(&mut tasks, &hands, job.people);
        days.retain(|day| day.used || !day.added);
        let clean = minutes(CLEAN, self.ledger);
        let done = |end: i64| {
            if tasks.is_empty() {
                end
            } else {
                self.problem.pace.after(end, clean)
            }
        };
        Plan {
            days,
            load,
            last: self.made.last,
            end_s: done(self.solved.end),
            bound_s: done(self.solved.bound),
            tries: self.solved.tries,
            nodes: self.solved.nodes,
            children_s: wet.iter().map(|wet| wet.children_s).max(),
            wheels_s: wet.iter().map(|wet| wet.wheels_s).max(),
            wet,
            tasks,
        }
    }

    /// Cleaning up after the last task of each day, with its people.
    fn cleaning(&self, days: &[Day], tasks: &[Task], job: &Job) -> Vec<(Task, u32)> {
        let clean = minutes(CLEAN, self.ledger);
        let hands = self.ledger.number(HANDS_CLEAN).round().clamp(1.0, 1000.0) as u32;
        days.iter()
            .enumerate()
            .filter(|_| clean > 0)
            .filter_map(|(day, _)| {
                let of_day = tasks.iter().enumerate().filter(|(_, task)| task.day == day);
                let (last, start_s) = of_day
                    .map(|(number, task)| (number, task.end_s))
                    .max_by_key(|(number, end)| (*end, std::cmp::Reverse(*number)))?;
                let task = Task {
                    kind: Kind::Clean,
                    marking: None,
                    colour: None,
                    coat: 0,
                    stencil: None,
                    people: Vec::new(),
                    day,
                    start_s,
                    end_s: self.problem.pace.after(start_s, clean),
                    parts: Vec::new(),
                    waits_for: vec![Waited {
                        task: last,
                        why: Why::Order,
                    }],
                };
                Some((task, hands.min(job.people)))
            })
            .collect()
    }

    /// What ends, or dries, last before a work begins; works, not yet tasks. A work that
    /// begins a day waits for what did not dry in time on the day before.
    fn waits(&self, work: usize) -> Vec<Waited> {
        let problem = self.problem;
        let (start, _) = self.solved.when[work];
        if problem.in_window(work, i64::MIN) == Some(start) {
            return Vec::new();
        }
        let mut held: Vec<(i64, Waited)> = Vec::new();
        for link in problem.links.iter().filter(|link| link.to == work) {
            let (from, to) = self.solved.when[link.from];
            let why = match link.wait {
                Wait::Dry(seconds) if seconds > 0 => Why::Drying,
                Wait::Dry(_) | Wait::Begun => Why::Order,
            };
            let task = link.from;
            held.push((problem.allowed(link.wait, from, to), Waited { task, why }));
        }
        for apart in &problem.apart {
            let (task, dry) = match apart.works {
                [a, b] if a == work => (b, apart.dry[1]),
                [a, b] if b == work => (a, apart.dry[0]),
                _ => continue,
            };
            let same = problem.works[task].place == problem.works[work].place;
            let why = if same { Why::Drying } else { Why::Beside };
            let dried = problem.drying.after(self.solved.when[task].1, dry);
            held.push((dried, Waited { task, why }));
        }
        held.retain(|(allowed, _)| {
            *allowed <= start && problem.in_window(work, *allowed) == Some(start)
        });
        let latest = held.iter().map(|(allowed, _)| *allowed).max();
        let mut waits: Vec<Waited> = held
            .into_iter()
            .filter(|(allowed, _)| Some(*allowed) == latest)
            .map(|(_, waited)| waited)
            .collect();
        if waits.is_empty() {
            self.waits_for_hands(work, start, &mut waits);
        }
        if waits.is_empty() && problem.ways.is_some() {
            let dried = (0..problem.works.len()).filter(|other| {
                let wet = problem.works[*other].wet;
                let end = self.solved.when[*other].1;
                *other != work && wet.is_some_and(|dry| problem.drying.after(end, dry) == start)
            });
            waits.extend(dried.map(|task| Waited {
                task,
                why: Why::WayOut,
            }));
        }
        waits
    }

    /// Works that end as this one begins and leave it what it takes.
    fn waits_for_hands(&self, work: usize, start: i64, waits: &mut Vec<Waited>) {
        let problem = self.problem;
        for other in 0..problem.works.len() {
            if other == work || self.solved.when[other].1 != start {
                continue;
            }
            let shared = (0..problem.capacity.len())
                .rev()
                .find(|at| problem.need(work, *at) > 0 && problem.need(other, *at) > 0);
            let why = match shared {
                Some(PEOPLE) => Why::People,
                Some(TAPES) => Why::Tapes,
                Some(STENCILS..) => Why::Stencil,
                None => continue,
            };
            waits.push(Waited { task: other, why });
        }
    }

    /// What is wet when; tasks by the order given.
    fn wet(&self, order: &[usize]) -> Vec<Wet> {
        let drying = &self.problem.drying;
        let times = Times::of(self.ledger);
        order
            .iter()
            .enumerate()
            .filter(|(_, work)| self.problem.works[**work].wet.is_some())
            .map(|(task, work)| {
                let (from_s, end) = self.solved.when[*work];
                let dry = |seconds| drying.after(end, seconds);
                Wet {
                    task,
                    marking: self.made.meanings[*work].marking,
                    from_s,
                    touch_s: dry(times.touch),
                    recoat_s: dry(times.recoat),
                    foot_s: dry(times.foot),
                    children_s: dry(times.children),
                    wheels_s: dry(times.wheels),
                }
            })
            .collect()
    }
}
