//! `build.crew`: who does what when.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::stencils::name;

/// The painting days. Times are seconds from the first midnight.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Crew {
    /// The tasks, by start.
    pub tasks: Vec<Task>,
    /// From when to when there is work, by day.
    pub days: Vec<[i64; 2]>,
    /// When all is done and cleaned up.
    pub end_s: i64,
    /// No plan for these works, people and days is done before.
    pub bound_s: i64,
    /// From when children may play on all of it.
    pub children_s: Option<i64>,
    /// From when wheels may roll on all of it.
    pub wheels_s: Option<i64>,
}

/// One bar of the chart.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Task {
    /// `sweep`, `prime`, `set-out`, `mask`, `coat` or `clean`.
    pub kind: String,
    /// The marking; null for cleaning up.
    pub marking: Option<String>,
    /// The colour of a coat or of its masking.
    pub colour: Option<String>,
    /// Which coat, from 1; 0 for what is no coat.
    pub coat: u32,
    /// The stencil.
    pub stencil: Option<String>,
    /// Who does it: numbers from 0.
    pub people: Vec<usize>,
    /// When it begins.
    pub start_s: i64,
    /// When it ends.
    pub end_s: i64,
    /// What held it up.
    pub waits_for: Vec<Waited>,
}

/// A task that another waits for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Waited {
    /// Its number in `tasks`, from 0.
    pub task: usize,
    /// `order`, `drying`, `beside`, `people`, `tapes`, `stencil` or `way-out`.
    pub why: String,
}

impl Crew {
    /// Copies the crew's plan; `markings` and `stencils` are names.
    pub fn of(plan: &crew::Plan, markings: &[&str], stencils: &[&str]) -> Crew {
        Crew {
            tasks: plan
                .tasks
                .iter()
                .map(|task| Task {
                    kind: task.kind.word().to_owned(),
                    marking: task.marking.map(|number| name(markings, number)),
                    colour: task.colour.map(|colour| colour.word().to_owned()),
                    coat: task.coat,
                    stencil: task.stencil.map(|number| name(stencils, number)),
                    people: task.people.clone(),
                    start_s: task.start_s,
                    end_s: task.end_s,
                    waits_for: task
                        .waits_for
                        .iter()
                        .map(|waited| Waited {
                            task: waited.task,
                            why: waited.why.word().to_owned(),
                        })
                        .collect(),
                })
                .collect(),
            days: plan.days.iter().map(|day| [day.from_s, day.to_s]).collect(),
            end_s: plan.end_s,
            bound_s: plan.bound_s,
            children_s: plan.children_s,
            wheels_s: plan.wheels_s,
        }
    }
}
