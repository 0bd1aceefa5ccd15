//! Which people do which task.

use crate::result::{Load, Task};

/// Gives each task its people, by start: who was last at the same marking goes on there, then
/// who has done least. The plan never takes more than there are, so there is always somebody.
pub(crate) fn staff(tasks: &mut [Task], hands: &[u32], people: u32) -> Vec<Load> {
    let mut crew: Vec<Person> = (0..people as usize).map(|_| Person::default()).collect();
    for (task, hands) in tasks.iter_mut().zip(hands) {
        let mut free: Vec<usize> = (0..crew.len())
            .filter(|person| crew[*person].busy_to <= task.start_s)
            .collect();
        free.sort_by_key(|person| {
            let one = &crew[*person];
            let elsewhere = task.marking.is_none() || one.marking != task.marking;
            (elsewhere, one.seconds, *person)
        });
        free.truncate(*hands as usize);
        free.sort_unstable();
        for person in &free {
            let one = &mut crew[*person];
            one.busy_to = task.end_s;
            one.marking = task.marking;
            one.seconds += task.end_s - task.start_s;
            one.tasks += 1;
        }
        task.people = free;
    }
    crew.into_iter()
        .map(|one| Load {
            seconds: one.seconds,
            tasks: one.tasks,
        })
        .collect()
}

struct Person {
    busy_to: i64,
    marking: Option<usize>,
    seconds: i64,
    tasks: usize,
}

impl Default for Person {
    fn default() -> Person {
        Person {
            busy_to: i64::MIN,
            marking: None,
            seconds: 0,
            tasks: 0,
        }
    }
}
