//! The generated classes of the oracle as JSON lines, for `oracle/bound.py`.
//!
//! `cargo run --release -p sessions --example dump -- 0 3 8 14 20`

#[path = "../tests/common/mod.rs"]
mod common;

use serde_json::json;

fn main() {
    for n in std::env::args()
        .skip(1)
        .filter_map(|word| word.parse().ok())
    {
        let programme = common::programme(n, &common::case(n));
        let foot = |side: &Option<children::Side>| match side {
            None => "",
            Some(children::Side::Right) => "R",
            Some(children::Side::Left) => "L",
        };
        let line = json!({
            "class": n,
            "weeks": programme.weeks,
            "sessions": programme.week.sessions,
            "minutes": programme.week.minutes,
            "staff": programme.week.staff,
            "children": programme.children.iter().map(|child| json!({
                "age": child.age,
                "known": child.known.iter().map(|it| it.word()).collect::<Vec<_>>(),
            })).collect::<Vec<_>>(),
            "targets": programme.targets.iter().map(|it| {
                json!([it.child, it.skill.word(), foot(&it.side), it.minutes])
            }).collect::<Vec<_>>(),
            "stations": programme.stations.iter().map(|it| json!({
                "tracks": it.tracks,
                "activities": it.activities.iter().map(|activity| json!({
                    "word": activity.word,
                    "skill": activity.skill.word(),
                    "alone": activity.alone,
                    "plays": activity.plays.iter().map(|play| json!({
                        "child": play.child,
                        "pass": play.pass_s,
                        "back": play.walk_back_s,
                        "yields": play.yields.iter().map(|it| json!([it.0.word(), foot(&it.1), it.2])).collect::<Vec<_>>(),
                    })).collect::<Vec<_>>(),
                })).collect::<Vec<_>>(),
            })).collect::<Vec<_>>(),
        });
        println!("{line}");
    }
}
