//! Whether what was written of a child can be.
//!
//! A value that no child of the age has is a slip of the pen: an error, and left out. A
//! value far from what the age expects may be right: a warning, and used.

use ledger::Ledger;
use note::{Fact, Note, msg};

use crate::child::{Means, Side};
use crate::entry::{Date, Entry};
use crate::figures::{
    FAR, FOOT_SD, HOP_M, HOP_TAU, HOPS_ABSURD, HOPS_COUNT, HOPS_SIDE, JUMP_ABSURD, JUMP_BEST_SD,
    YEARS_LEAST, YEARS_MOST,
};
use crate::growth::{stature, z_of};
use crate::roster::foot_of;
use crate::site::{Measured, best_jump};

/// Past these a body is a slip of the pen, whatever the age; metres.
const STATURES: std::ops::RangeInclusive<f64> = 0.5..=1.6;
/// The same for a foot.
const FEET: std::ops::RangeInclusive<f64> = 0.08..=0.30;

/// Whether the figures hold at this age; a note where they do not.
pub fn age_holds(
    child: &str,
    age: f64,
    at: Option<note::Place>,
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) -> bool {
    let (least, most) = (ledger.number(YEARS_LEAST), ledger.number(YEARS_MOST));
    if (least..=most).contains(&age) {
        return true;
    }
    let what = if age < 0.0 {
        msg!("child-born-later", child = child)
    } else {
        msg!(
            "child-age-outside",
            child = child,
            years = Fact::Number(age, 1)
        )
    };
    notes.push(Note::error(at, what).expected(msg!(
        "child-age-expected",
        least = Fact::Number(least, 0),
        most = Fact::Number(most, 0)
    )));
    false
}

/// Checks what was measured; `None` where not even the age can be.
pub fn measured(
    entry: &Entry,
    date: Date,
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) -> Option<Measured> {
    let months = f64::from(date.months_since(entry.born));
    let age = months / 12.0;
    if !age_holds(&entry.id, age, entry.place("born"), ledger, notes) {
        return None;
    }
    let far = ledger.number(FAR);
    let height = entry.height.and_then(|height| {
        let z = z_of(entry.sex, months, height);
        let expected = stature(entry.sex, months, 0.0);
        let doubt = Doubt {
            column: "height",
            value: height,
            expected,
        };
        doubt.hold(entry, STATURES.contains(&height), z.abs() <= far, notes)
    });
    let foot = entry.foot.and_then(|foot| {
        let expected = foot_of(height.unwrap_or(stature(entry.sex, months, 0.0)), ledger);
        let near = (foot - expected).abs() <= far * ledger.number(FOOT_SD);
        Doubt {
            column: "foot",
            value: foot,
            expected,
        }
        .hold(entry, FEET.contains(&foot), near, notes)
    });
    let on_feet = entry.means == Means::Feet;
    if !on_feet && (entry.jump_best.is_some() || entry.hops_right.or(entry.hops_left).is_some()) {
        notes.push(
            Note::warning(
                entry.place("means"),
                msg!("child-measured-on-feet", child = &entry.id),
            )
            .mend(msg!("child-own-means-mend")),
        );
    }
    let jump = entry.jump_best.filter(|_| on_feet).and_then(|best| {
        let expected = best_jump(age, ledger);
        let near = best == 0.0 || (best - expected).abs() <= far * ledger.number(JUMP_BEST_SD);
        let sane = (0.0..=ledger.number(JUMP_ABSURD)).contains(&best);
        Doubt {
            column: "jump_best",
            value: best,
            expected,
        }
        .hold(entry, sane, near, notes)
    });
    let mut hops = [None; 2];
    let sides = [
        ("hops_right", entry.hops_right),
        ("hops_left", entry.hops_left),
    ];
    for (into, (column, series)) in hops.iter_mut().zip(sides) {
        let count = ledger.number(HOPS_COUNT);
        let (m, tau) = (
            count * ledger.at_age(HOP_M, age),
            count * ledger.at_age(HOP_TAU, age),
        );
        *into = series.filter(|_| on_feet).and_then(|series| {
            let near = series <= m + far * tau;
            let sane = (0.0..=ledger.number(HOPS_ABSURD)).contains(&series);
            Doubt {
                column,
                value: series,
                expected: m,
            }
            .hold(entry, sane, near, notes)
        });
    }
    Some(Measured {
        months,
        sex: entry.sex,
        height,
        foot,
        jump,
        hops,
    })
}

/// A measured value against what the age expects.
struct Doubt {
    column: &'static str,
    value: f64,
    expected: f64,
}

impl Doubt {
    /// The value, unless it is a slip of the pen; a note where it is, or where it is far off.
    fn hold(self, entry: &Entry, sane: bool, near: bool, notes: &mut Vec<Note>) -> Option<f64> {
        let at = entry.place(self.column);
        let told = |key| {
            msg!(
                key,
                child = &entry.id,
                column = self.column,
                value = Fact::Length(self.value)
            )
        };
        let expected = msg!(
            "child-measure-expected",
            about = Fact::Length(self.expected)
        );
        if !sane {
            let note = Note::error(at, told("child-measure-impossible"));
            notes.push(note.expected(expected).mend(msg!("child-measure-again")));
        } else if !near {
            let note = Note::warning(at, told("child-measure-far"));
            notes.push(note.expected(expected).mend(msg!("child-measure-again")));
        }
        sane.then_some(self.value)
    }
}

/// The side used less: as written, or as the measured hops show.
pub fn less_used(
    entry: &Entry,
    known: &Measured,
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) -> Option<Side> {
    let [Some(right), Some(left)] = known.hops else {
        return entry.less_used;
    };
    let share = ledger.number(HOPS_SIDE);
    let seen = if right < share * left {
        Side::Right
    } else if left < share * right {
        Side::Left
    } else {
        return entry.less_used;
    };
    if entry.less_used.is_none() {
        let key = match seen {
            Side::Right => "child-right-less-used",
            Side::Left => "child-left-less-used",
        };
        notes.push(Note::advice(
            entry.place("less_used"),
            msg!(key, child = &entry.id),
        ));
    }
    entry.less_used.or(Some(seen))
}
