//! The order of work: a chart of people over hours, and the tasks in words.

use ::crew::{Kind, Plan, Task};
use note::msg;

use super::Build;
use crate::drawing::scene::{Dash, INK, Path, Rect, Scene, Stroke, Text, WHITE, pen};
use crate::planned::{Planned, painter, words};
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

/// Seconds of an hour and of a day.
const HOUR: i64 = 3600;
const DAY: i64 = 86_400;

/// Writes the charts, a day each, and the list.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, build: &Build, plan: &Plan) {
    paper.heading(2, &sheet.word("day-work"));
    paper.paragraph(&sheet.say(msg!(
        "day-work-told",
        people = u64::from(build.people),
        end = clock(sheet, plan.end_s),
        proven = if plan.proven() { "yes" } else { "no" },
        minutes = (plan.gap_s() / 60).unsigned_abs(),
        hours = match plan.gap_s() / HOUR {
            0..=2 => 0,
            hours => hours.unsigned_abs() + 1,
        },
    )));
    if let Some(children) = plan.children_s {
        paper.paragraph(&sheet.say(msg!("day-work-children", when = clock(sheet, children))));
    }
    for (number, day) in plan.days.iter().enumerate().filter(|(_, day)| day.used) {
        let scene = chart(sheet, plan, number, [day.from_s, day.to_s]);
        paper.figure(
            &scene,
            &sheet.say(msg!(
                "day-chart-told",
                day = number + 1,
                people = u64::from(build.people)
            )),
        );
    }
    let rows: Vec<Vec<String>> = plan
        .tasks
        .iter()
        .enumerate()
        .map(|(number, task)| {
            let people: Vec<String> = task
                .people
                .iter()
                .map(|who| (who + 1).to_string())
                .collect();
            let waits: Vec<String> = task
                .waits_for
                .iter()
                .map(|waited| format!("{} {}", waited.task + 1, sheet.word(why(waited.why))))
                .collect();
            vec![
                (number + 1).to_string(),
                what(sheet, planned, build, task),
                people.join(", "),
                clock(sheet, task.start_s),
                clock(sheet, task.end_s),
                waits.join("; "),
            ]
        })
        .collect();
    paper.sentences(
        &[
            Column::figures(sheet.word("page-setout-number")),
            Column::prose(sheet.word("day-column-task"), 5),
            Column::words(sheet.word("day-column-people")),
            Column::figures(sheet.word("day-column-from")),
            Column::figures(sheet.word("day-column-to")),
            Column::prose(sheet.word("day-column-waits"), 4),
        ],
        &rows,
    );
}

fn why(why: ::crew::Why) -> &'static str {
    match why {
        ::crew::Why::Order => "crew-why-order",
        ::crew::Why::Drying => "crew-why-drying",
        ::crew::Why::Beside => "crew-why-beside",
        ::crew::Why::People => "crew-why-people",
        ::crew::Why::Tapes => "crew-why-tapes",
        ::crew::Why::Stencil => "crew-why-stencil",
        ::crew::Why::WayOut => "crew-why-way-out",
    }
}

fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Sweep => "crew-kind-sweep",
        Kind::Prime => "crew-kind-prime",
        Kind::SetOut => "crew-kind-set-out",
        Kind::Mask => "crew-kind-mask",
        Kind::Coat => "crew-kind-coat",
        Kind::Clean => "crew-kind-clean",
    }
}

/// A task in words.
fn what(sheet: &Sheet, planned: &Planned, build: &Build, task: &Task) -> String {
    let marking = task
        .marking
        .and_then(|number| planned.markings().nth(number));
    let name = marking.map_or_else(String::new, |(marking, _)| {
        words::marking(sheet, marking, planned.candidate(marking))
    });
    let all = &build.stencils.stencils;
    let shared = |one: &::stencil::Stencil| {
        one.uses
            .iter()
            .any(|used| Some(used.marking) != task.marking)
    };
    let of_all = task
        .stencil
        .and_then(|number| all.get(number))
        .is_some_and(shared);
    let plates: Vec<String> = all
        .iter()
        .enumerate()
        .filter(|(number, one)| match task.stencil {
            Some(stencil) if of_all => stencil == *number,
            Some(_) => !shared(one),
            None => false,
        })
        .map(|(_, one)| one)
        .filter(|one| {
            task.colour
                .is_some_and(|colour| one.colours.contains(&colour))
        })
        .filter(|one| {
            one.uses
                .iter()
                .any(|used| Some(used.marking) == task.marking)
        })
        .map(|one| one.id.clone())
        .collect();
    let colour = task
        .colour
        .map_or_else(String::new, |colour| sheet.word(painter::paint_key(colour)));
    match task.kind {
        Kind::Clean => sheet.word(kind(task.kind)),
        Kind::Coat => sheet.say(msg!(
            "day-task-coat",
            name = name,
            colour = colour,
            coat = u64::from(task.coat),
            any = if plates.is_empty() { "no" } else { "yes" },
            through = plates,
        )),
        _ => sheet.say(msg!(
            "day-task",
            name = name,
            what = sheet.word(kind(task.kind))
        )),
    }
}

/// A time of the clock; the day before it from the second on.
fn clock(sheet: &Sheet, seconds: i64) -> String {
    let (day, within) = (seconds.div_euclid(DAY), seconds.rem_euclid(DAY));
    let minutes = (within + 30) / 60;
    let time = format!("{}:{:02}", minutes / 60, minutes % 60);
    match day {
        0 => time,
        _ => sheet.say(msg!(
            "day-clock",
            day = (day + 1).unsigned_abs(),
            time = time
        )),
    }
}

/// People down, hours across; each bar has its task's number.
fn chart(sheet: &Sheet, plan: &Plan, day: usize, [from, to]: [i64; 2]) -> Scene {
    let caps = sheet.caps();
    let grow = caps.note / 1.8;
    let (row, left, top) = (6.5 * grow, 9.0 * grow, 6.0 * grow);
    let people = plan.load.len();
    let mut scene = Scene::new(175.0, top + row * people as f64 + 1.0);
    let last = plan
        .tasks
        .iter()
        .filter(|task| task.day == day)
        .map(|task| task.end_s)
        .fold(to, i64::max);
    let span = (last - from).max(1) as f64;
    // half an hour's figure stands beyond the last line
    let right = 175.0 - 2.0 * grow;
    let x = |seconds: i64| left + (seconds - from) as f64 / span * (right - left);
    let foot = top + row * people as f64;
    let mut hour = from.div_euclid(HOUR) * HOUR;
    while hour <= last {
        if hour >= from {
            let line = Path::line(&[[x(hour), top - 1.0], [x(hour), foot]]);
            scene.stroke(line, Stroke::dashed(pen::HAIR, Dash::Short));
            let label = format!("{}", hour.rem_euclid(DAY) / HOUR);
            scene.text(Text::new(label, [x(hour), top - 2.0], caps.note).middle());
        }
        hour += HOUR;
    }
    for person in 0..people {
        let y = top + row * person as f64;
        let label = Text::new(
            (person + 1).to_string(),
            [left - 3.0, y + row / 2.0 + caps.name / 2.0],
            caps.name,
        );
        scene.text(label.bold().end());
        scene.stroke(
            Path::line(&[[left, y + row], [right, y + row]]),
            Stroke::solid(pen::HAIR),
        );
    }
    for (number, task) in plan
        .tasks
        .iter()
        .enumerate()
        .filter(|(_, task)| task.day == day)
    {
        let (a, b) = (x(task.start_s), x(task.end_s));
        for person in &task.people {
            let y = top + row * *person as f64;
            let rect = Rect {
                x: a,
                y: y + 0.8,
                w: (b - a).max(0.4),
                h: row - 1.6,
            };
            let (fill, words) = if task.kind == Kind::Coat {
                (INK, WHITE)
            } else {
                (WHITE, INK)
            };
            scene.shape(Path::plate(rect, 0.6), fill, Stroke::solid(pen::ZONE));
            let label = (number + 1).to_string();
            let mut text = Text::new(
                label,
                [(a + b) / 2.0, y + row / 2.0 + caps.note / 2.0],
                caps.note,
            )
            .middle();
            if text.width() + 0.6 <= b - a {
                text.colour = words;
                scene.text(text);
            }
        }
    }
    scene
}
