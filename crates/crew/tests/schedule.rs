//! The solver against another solver, a published project, and every order of small ones.

#![allow(
    clippy::expect_used,
    reason = "clippy knows test functions, but not the helpers beside them"
)]

mod common;

use chance::Chance;
use common::rules::broken;
use crew::schedule::{Apart, Clock, Limits, Link, Problem, Wait, Ways, Work, bound, solve};
use serde_json::Value;

const LIMITS: Limits = Limits {
    tries: 300,
    nodes: 200_000,
    seed: 1,
};

/// No moves: branch and bound has to find the plan.
const ALONE: Limits = Limits { tries: 0, ..LIMITS };

fn oracle() -> Value {
    serde_json::from_str(include_str!("../oracle/rcpsp.json")).expect("the answers read")
}

fn whole(value: &Value) -> i64 {
    value.as_i64().expect("a whole number")
}

fn rows(value: &Value) -> &[Value] {
    value.as_array().expect("a list")
}

fn problem(case: &Value) -> Problem<'static> {
    let pair = |row: &Value| (whole(&row[0]) as usize, whole(&row[1]) as usize);
    let mut links: Vec<Link> = Vec::new();
    for row in rows(&case["links"]) {
        let (from, to) = pair(row);
        links.push(Link {
            from,
            to,
            wait: Wait::Dry(whole(&row[2])),
        });
    }
    for row in rows(&case["begun"]) {
        let (from, to) = pair(row);
        links.push(Link {
            from,
            to,
            wait: Wait::Begun,
        });
    }
    Problem {
        works: rows(&case["works"])
            .iter()
            .map(|work| Work {
                seconds: whole(&work["seconds"]),
                needs: rows(&work["needs"])
                    .iter()
                    .map(|need| whole(need) as u32)
                    .collect(),
                place: None,
                wet: None,
            })
            .collect(),
        capacity: rows(&case["capacity"])
            .iter()
            .map(|all| whole(all) as u32)
            .collect(),
        links,
        apart: rows(&case["apart"])
            .iter()
            .map(|row| Apart {
                works: pair(row).into(),
                dry: [whole(&row[2]), whole(&row[3])],
            })
            .collect(),
        windows: rows(&case["windows"])
            .iter()
            .map(|row| (whole(&row[0]), whole(&row[1])))
            .collect(),
        pace: Clock::even(),
        drying: Clock::even(),
        ways: None,
    }
}

/// PSPLIB, project j301_1 of 30 works and four resources (Kolisch and Sprecher 1997, EJOR
/// 96:205-216): optimum 43, longest chain 38, both published; the optimum found again by
/// oracle/rcpsp.py.
#[test]
fn the_first_project_of_the_library_takes_43() {
    let case = &oracle()["j301_1"];
    let problem = problem(case);
    assert_eq!(problem.works.len(), 30);
    let solved = solve(&problem, LIMITS).expect("a plan");
    assert_eq!(broken(&problem, &solved.when), None);
    assert_eq!(solved.end, 43);
    assert!(solved.bound >= 38 && solved.bound <= 43, "{}", solved.bound);
    assert!(solved.proven(), "after {} partial plans", solved.nodes);
}

/// oracle/rcpsp.py: CP-SAT's proven ends.
#[test]
fn sixty_small_projects_end_when_another_solver_ends_them() {
    let oracle = oracle();
    for (nth, case) in rows(&oracle["random"]).iter().enumerate() {
        let problem = problem(case);
        let solved = solve(&problem, LIMITS).expect("a plan");
        assert_eq!(broken(&problem, &solved.when), None, "case {nth}");
        assert_eq!(solved.end, whole(&case["end"]), "case {nth}");
        assert!(solved.proven(), "case {nth}");
        let alone = solve(&problem, ALONE).expect("a plan");
        assert_eq!(
            (alone.end, alone.proven()),
            (solved.end, true),
            "case {nth}"
        );
        // without moves and without the proof there is still a plan and a bound
        let quick = Limits {
            tries: 0,
            nodes: 0,
            seed: 1,
        };
        let first = solve(&problem, quick).expect("a plan");
        assert_eq!(broken(&problem, &first.when), None, "case {nth}");
        assert!(
            first.bound <= solved.end && first.end >= solved.end,
            "case {nth}"
        );
    }
}

/// Two places on either side of a third: with both wet nobody leaves the third, and people
/// at one shut out those at the next.
struct Between;

impl Ways for Between {
    fn open(&self, at: &[usize], wet: &[usize]) -> bool {
        let both = wet.contains(&0) && wet.contains(&2);
        !(both && at.contains(&1)) && wet.len() < 3
    }
}

/// A small problem with everything: slow hours, cold air, wet places, ways, days.
fn small(chance: &mut Chance, ways: &'static Between) -> Problem<'static> {
    let many = 3 + chance.below(3);
    let works = (0..many)
        .map(|_| Work {
            seconds: 1 + chance.below(6) as i64,
            needs: vec![1 + chance.below(2) as u32, chance.below(2) as u32],
            place: Some(chance.below(3)),
            wet: (chance.below(2) == 0).then(|| 1 + chance.below(6) as i64),
        })
        .collect();
    let mut links = Vec::new();
    let mut apart = Vec::new();
    for from in 0..many {
        for to in from + 1..many {
            match chance.below(8) {
                0 => links.push(Link {
                    from,
                    to,
                    wait: Wait::Dry(chance.below(5) as i64),
                }),
                1 => links.push(Link {
                    from,
                    to,
                    wait: Wait::Begun,
                }),
                2 => apart.push(Apart {
                    works: [from, to],
                    dry: [chance.below(5) as i64, chance.below(5) as i64],
                }),
                _ => {}
            }
        }
    }
    let day = 12 + chance.below(8) as i64;
    Problem {
        works,
        capacity: vec![2 + chance.below(2) as u32, 1],
        links,
        apart,
        windows: (0..9)
            .map(|nth| (nth * 2 * day, nth * 2 * day + day))
            .collect(),
        pace: Clock::new(&[(0, 1.5), (6, 1.0)]),
        drying: Clock::new(&[(0, 2.0), (9, 0.7), (20, 1.5)]),
        ways: Some(ways),
    }
}

/// Every order of the works, each work at the first second at which nothing is broken: slow,
/// and written without a look at how the solver places.
fn least_end(problem: &Problem) -> Option<i64> {
    let mut best = None;
    let mut list = Vec::new();
    every_order(problem, &mut list, &mut best);
    best
}

fn every_order(problem: &Problem, list: &mut Vec<(usize, i64)>, best: &mut Option<i64>) {
    let many = problem.works.len();
    if list.len() == many {
        let end = list
            .iter()
            .map(|(work, start)| problem.end(*work, *start))
            .max();
        *best = match (*best, end) {
            (Some(best), Some(end)) => Some(best.min(end)),
            (None, end) => end,
            (best, None) => best,
        };
        return;
    }
    for work in 0..many {
        let placed = |other: usize| list.iter().any(|(placed, _)| *placed == other);
        let open = problem
            .links
            .iter()
            .all(|link| link.to != work || placed(link.from));
        if placed(work) || !open {
            continue;
        }
        let horizon = problem.windows.last().map_or(0, |(_, shut)| *shut);
        for start in 0..horizon {
            list.push((work, start));
            if holds(problem, list) {
                every_order(problem, list, best);
                list.pop();
                break;
            }
            list.pop();
        }
    }
}

/// Whether what is placed so far breaks nothing.
fn holds(problem: &Problem, list: &[(usize, i64)]) -> bool {
    let at = |work: usize| list.iter().position(|(placed, _)| *placed == work);
    let part = Problem {
        works: list
            .iter()
            .map(|(work, _)| problem.works[*work].clone())
            .collect(),
        capacity: problem.capacity.clone(),
        links: problem
            .links
            .iter()
            .filter_map(|link| {
                Some(Link {
                    from: at(link.from)?,
                    to: at(link.to)?,
                    wait: link.wait,
                })
            })
            .collect(),
        apart: problem
            .apart
            .iter()
            .filter_map(|apart| {
                let [a, b] = apart.works;
                Some(Apart {
                    works: [at(a)?, at(b)?],
                    dry: apart.dry,
                })
            })
            .collect(),
        windows: problem.windows.clone(),
        pace: problem.pace.clone(),
        drying: problem.drying.clone(),
        ways: problem.ways,
    };
    let when: Vec<(i64, i64)> = list
        .iter()
        .map(|(work, start)| (*start, problem.end(*work, *start)))
        .collect();
    broken(&part, &when).is_none()
}

#[test]
fn small_problems_end_as_the_best_of_all_orders() {
    static BETWEEN: Between = Between;
    let mut chance = Chance::new(20_260_901);
    let (mut hindered, mut many_days) = (0, 0);
    for nth in 0..250 {
        let problem = small(&mut chance, &BETWEEN);
        let wanted = least_end(&problem).expect("a plan");
        let solved = solve(&problem, LIMITS).expect("a plan");
        assert_eq!(broken(&problem, &solved.when), None, "case {nth}");
        assert_eq!(solved.end, wanted, "case {nth}");
        assert!(solved.proven(), "case {nth}");
        assert!(
            bound(&problem).is_some_and(|bound| bound <= wanted),
            "case {nth}"
        );
        let free = Problem {
            ways: None,
            works: problem.works.clone(),
            ..problem
        };
        let at_will = solve(&free, LIMITS).expect("a plan");
        assert!(at_will.end <= solved.end);
        hindered += usize::from(at_will.end < solved.end);
        many_days += usize::from(solved.end > free.windows[0].1);
    }
    assert!(
        hindered > 3,
        "the way out mattered in {hindered} cases only"
    );
    assert!(
        many_days > 50,
        "only {many_days} went on for more than a day"
    );
}

#[test]
fn what_cannot_be_is_no_plan() {
    let work = |seconds: i64, need: u32| Work {
        seconds,
        needs: vec![need],
        ..Work::default()
    };
    let problem = |works: Vec<Work>, links: Vec<Link>| Problem {
        works,
        capacity: vec![2],
        links,
        apart: Vec::new(),
        windows: vec![(0, 10)],
        pace: Clock::even(),
        drying: Clock::even(),
        ways: None,
    };
    let link = |from: usize, to: usize| Link {
        from,
        to,
        wait: Wait::Dry(0),
    };
    assert!(
        solve(&problem(vec![work(11, 1)], vec![]), LIMITS).is_none(),
        "too long"
    );
    assert!(
        solve(&problem(vec![work(1, 3)], vec![]), LIMITS).is_none(),
        "too many"
    );
    let circle = problem(vec![work(1, 1), work(1, 1)], vec![link(0, 1), link(1, 0)]);
    assert!(solve(&circle, LIMITS).is_none(), "a circle");
    assert_eq!(bound(&circle), None);
    let nothing = solve(&problem(vec![], vec![]), LIMITS).expect("nothing is soon done");
    assert_eq!((nothing.end, nothing.bound), (0, 0));
    let full = problem(vec![work(6, 2), work(6, 2)], vec![]);
    assert!(solve(&full, LIMITS).is_none(), "no window is left");
}
