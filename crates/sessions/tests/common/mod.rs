//! Generated classes and yards: invented, from fixed seeds. Yields and times are shaped like
//! those of the footfall model (a share well pitched that falls off on both sides of the
//! fitting age, full practice where the turn is short enough), not taken from it.
#![allow(dead_code)]

use chance::Chance;
use children::{Side, Skill};
use sessions::*;

/// A figure of the trade: gaits, and the age that its lengths suit.
struct Figure {
    name: &'static str,
    gaits: &'static [(&'static str, Skill, Skill)],
    tracks: u32,
    alone: bool,
    flights: u32,
    pass_s: f64,
    walk_back_s: f64,
}

const FIGURES: &[Figure] = &[
    Figure {
        name: "court",
        gaits: &[
            ("court", Skill::Hop, Skill::Jump),
            ("hop", Skill::Hop, Skill::Hop),
        ],
        tracks: 1,
        alone: false,
        flights: 6,
        pass_s: 4.5,
        walk_back_s: 6.5,
    },
    Figure {
        name: "brook",
        gaits: &[
            ("jump", Skill::Jump, Skill::Jump),
            ("leap", Skill::Leap, Skill::Leap),
        ],
        tracks: 3,
        alone: true,
        flights: 1,
        pass_s: 1.5,
        walk_back_s: 5.0,
    },
    Figure {
        name: "spots",
        gaits: &[
            ("jump", Skill::Jump, Skill::Jump),
            ("hop", Skill::Hop, Skill::Hop),
            ("leap", Skill::Leap, Skill::Leap),
        ],
        tracks: 1,
        alone: false,
        flights: 7,
        pass_s: 5.0,
        walk_back_s: 7.0,
    },
    Figure {
        name: "straight",
        gaits: &[
            ("gallop", Skill::Gallop, Skill::Gallop),
            ("skip", Skill::Skip, Skill::Skip),
            ("leap", Skill::Leap, Skill::Leap),
        ],
        tracks: 2,
        alone: false,
        flights: 9,
        pass_s: 6.0,
        walk_back_s: 10.0,
    },
    Figure {
        name: "wave",
        gaits: &[
            ("gallop", Skill::Gallop, Skill::Gallop),
            ("slide", Skill::Slide, Skill::Slide),
        ],
        tracks: 1,
        alone: false,
        flights: 8,
        pass_s: 6.0,
        walk_back_s: 9.0,
    },
    Figure {
        name: "rings",
        gaits: &[
            ("hop", Skill::Hop, Skill::Hop),
            ("jump", Skill::Jump, Skill::Jump),
        ],
        tracks: 2,
        alone: false,
        flights: 5,
        pass_s: 3.5,
        walk_back_s: 5.5,
    },
    Figure {
        name: "trail",
        gaits: &[
            ("skip", Skill::Skip, Skill::Skip),
            ("slide", Skill::Slide, Skill::Slide),
        ],
        tracks: 1,
        alone: false,
        flights: 8,
        pass_s: 6.5,
        walk_back_s: 9.5,
    },
    Figure {
        name: "star",
        gaits: &[("jump", Skill::Jump, Skill::Jump)],
        tracks: 2,
        alone: true,
        flights: 2,
        pass_s: 3.0,
        walk_back_s: 3.0,
    },
    Figure {
        name: "zigzag",
        gaits: &[
            ("leap", Skill::Leap, Skill::Leap),
            ("slide", Skill::Slide, Skill::Slide),
            ("gallop", Skill::Gallop, Skill::Gallop),
        ],
        tracks: 1,
        alone: false,
        flights: 6,
        pass_s: 5.5,
        walk_back_s: 8.0,
    },
];

pub fn sided(skill: Skill) -> bool {
    matches!(
        skill,
        Skill::Hop | Skill::Leap | Skill::Gallop | Skill::Slide
    )
}

/// How likely a child can do a skill: children.md 2.6, by straight lines, roughly.
fn can(skill: Skill, age: f64) -> f64 {
    let (three, six): (f64, f64) = match skill {
        Skill::Jump => (0.85, 1.0),
        Skill::Hop => (0.45, 0.97),
        Skill::Leap => (0.5, 0.95),
        Skill::Gallop => (0.5, 0.97),
        Skill::Slide => (0.35, 0.95),
        _ => (0.05, 0.85),
    };
    three + (six - three) * (age - 3.0) / 3.0
}

pub struct Case {
    pub children: usize,
    pub stations: usize,
    pub staff: u32,
    pub weeks: u32,
}

/// The n-th of thirty: 10 to 40 children, 3 to 9 stations.
pub fn case(n: u64) -> Case {
    let mut dice = Chance::stream(2026, n);
    let children = 10 + dice.below(31);
    Case {
        children,
        stations: 3 + (n as usize) % 7,
        staff: 2 + dice.below(2) as u32,
        weeks: 6 + dice.below(5) as u32,
    }
}

pub fn programme(n: u64, case: &Case) -> Programme {
    let mut dice = Chance::stream(77, n);
    let sessions = 3;
    let minutes = [26.0, 30.0, 34.0, 40.0][dice.below(4)];
    let each = f64::from(sessions) * (minutes - 8.0);
    let children: Vec<Pupil> = (0..case.children)
        .map(|number| {
            let age = 3.0 + 3.0 * dice.share();
            Pupil {
                code: format!("c{number:02}"),
                age: (age * 12.0).round() / 12.0,
                known: Skill::TAUGHT
                    .into_iter()
                    .filter(|skill| can(*skill, age) > 0.8)
                    .collect(),
            }
        })
        .collect();
    let mut order: Vec<usize> = (0..FIGURES.len()).collect();
    for at in (1..order.len()).rev() {
        order.swap(at, dice.below(at + 1));
    }
    let stations: Vec<Station> = order[..case.stations.min(FIGURES.len())]
        .iter()
        .map(|at| station(&FIGURES[*at], &children, &mut dice))
        .collect();
    let mut targets = Vec::new();
    for (number, child) in children.iter().enumerate() {
        let open: Vec<(Skill, f64)> = Skill::TAUGHT
            .into_iter()
            .map(|skill| (skill, can(skill, child.age)))
            .filter(|it| it.1 >= 0.2)
            .collect();
        let whole: f64 = open.iter().map(|it| it.1).sum();
        let less = [0.5, 0.5, 0.5, 0.6, 0.4][dice.below(5)];
        for (skill, can) in open {
            let minutes = each * can / whole;
            if sided(skill) {
                for (side, share) in [(Side::Right, less), (Side::Left, 1.0 - less)] {
                    targets.push(Target {
                        child: number,
                        skill,
                        side: Some(side),
                        minutes: minutes * share,
                    });
                }
            } else {
                targets.push(Target {
                    child: number,
                    skill,
                    side: None,
                    minutes,
                });
            }
        }
    }
    Programme {
        weeks: case.weeks,
        week: Week {
            sessions,
            minutes,
            staff: case.staff,
            yard_area: 400.0,
        },
        children,
        targets,
        stations,
        order: usual_order(),
        seed: n,
        work: Work::default(),
    }
}

fn station(figure: &Figure, children: &[Pupil], dice: &mut Chance) -> Station {
    let fits = 3.7 + 1.6 * dice.share();
    let width = 1.0 + dice.share();
    let mut activities = Vec::new();
    let mut games = Vec::new();
    for (gait, first, second) in figure.gaits {
        let feet: &[Option<Side>] = if sided(*first) {
            &[Some(Side::Right), Some(Side::Left)]
        } else {
            &[None]
        };
        for side in feet {
            let word = match side {
                None => (*gait).to_owned(),
                Some(Side::Right) => format!("{gait}:R"),
                Some(Side::Left) => format!("{gait}:L"),
            };
            let mut plays = Vec::new();
            for (number, child) in children.iter().enumerate() {
                let off = (child.age - fits + 0.3 * dice.normal()) / width;
                let well = libm::exp(-0.5 * off * off);
                let p = (0.82 + 0.05 * (child.age - 3.0)).min(0.97);
                let good: f64 = (1..=figure.flights)
                    .map(|j| libm::pow(p, f64::from(j)))
                    .sum();
                let turn = (figure.pass_s + figure.walk_back_s).max(20.0);
                let par = 3.0 + 3.0 * (child.age - 3.0);
                let e = well * (60.0 * good / (turn * par.max(3.0))).min(1.0);
                if e < 0.05 || can(*first, child.age) < 0.2 {
                    continue;
                }
                let foot = |skill: Skill| side.filter(|_| sided(skill));
                let mut yields = vec![(*first, foot(*first), e)];
                if second != first {
                    yields = vec![
                        (*first, foot(*first), 0.7 * e),
                        (*second, foot(*second), 0.6 * e),
                    ];
                }
                plays.push(Play {
                    child: number,
                    yields,
                    flights: figure.flights,
                    good,
                    pass_s: figure.pass_s,
                    walk_back_s: figure.walk_back_s,
                });
            }
            activities.push(Activity {
                word,
                skill: *first,
                side: *side,
                alone: figure.alone,
                plays,
            });
        }
        for level in 1..=3_u8 {
            for letter in ["a", "b"] {
                games.push(Game {
                    name: format!("{}-{gait}-{level}{letter}", figure.name),
                    gait: (*gait).to_owned(),
                    level,
                    after: Vec::new(),
                });
            }
        }
    }
    Station {
        name: figure.name.to_owned(),
        tracks: figure.tracks,
        activities,
        games,
    }
}
