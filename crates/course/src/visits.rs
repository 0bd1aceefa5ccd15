//! When a coach comes.

use jiff::ToSpan;
use jiff::civil::Date;
use ledger::Ledger;

use crate::figures;

/// What a visit is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The first session, led together.
    Together,
    /// A visit in this week of the programme, the first being 1.
    Week(u32),
    /// A visit so many months after the start.
    Month(u32),
}

/// A visit with its day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Visit {
    /// What it is.
    pub kind: Kind,
    /// The day.
    pub date: Date,
}

/// The visits of a programme that starts on a day: the first session led together, then in the
/// ledger's weeks, then some months later, all on the start's weekday (a later visit moves
/// on to it), which is a day on which the programme is held. Closed days are the centre's to
/// move. A day past the calendar's end is left out.
pub fn visits(start: Date, ledger: &Ledger) -> Vec<Visit> {
    let mut all = vec![Visit {
        kind: Kind::Together,
        date: start,
    }];
    for week in ledger.list(figures::COACH_WEEKS) {
        let week = week.round().clamp(1.0, 1000.0);
        if let Ok(date) = start.checked_add((7 * (week as i64 - 1)).days()) {
            let kind = Kind::Week(week as u32);
            all.push(Visit { kind, date });
        }
    }
    let months = ledger
        .number(figures::COACH_MONTH)
        .round()
        .clamp(0.0, 1000.0);
    if let Ok(date) = start.checked_add((months as i64).months()) {
        let on = start.weekday().since(date.weekday());
        if let Ok(date) = date.checked_add(i64::from(on).days()) {
            let kind = Kind::Month(months as u32);
            all.push(Visit { kind, date });
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use jiff::civil::date;

    use super::*;

    /// By a paper calendar of 2026 and 2027.
    #[test]
    fn visits_fall_on_the_weekday_of_the_start() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let days: Vec<Date> = visits(date(2026, 9, 7), &ledger)
            .iter()
            .map(|visit| visit.date)
            .collect();
        assert_eq!(
            days,
            [
                date(2026, 9, 7),
                date(2026, 9, 14),
                date(2026, 9, 28),
                date(2026, 10, 26),
                date(2027, 3, 8),
            ]
        );
        // the last of August has no like day in February
        let last = visits(date(2026, 8, 31), &ledger).pop().expect("a visit");
        assert_eq!(last.date, date(2027, 3, 1));
        assert_eq!(visits(Date::MAX, &ledger).len(), 1);
    }
}
