//! Seats are exchanged until the practice is worth no more: simulated annealing with a
//! counted number of tries, the best seating kept.

use chance::Chance;

use crate::frame::{Frame, Got};
use crate::schedule::State;
use crate::seats::{FREE, Seats};
use crate::vary;

/// A child alone at a station costs as much as this much practice less, minutes.
const ALONE: f64 = 0.5;

/// An exchange that loses so many minutes is taken once in e times at the start; the heat
/// falls to nothing along a parabola (found best of a few on the generated classes).
const HEAT: f64 = 0.5;

pub(crate) struct Exchanged {
    pub(crate) tried: u64,
    pub(crate) taken: u64,
}

/// Practice that comes in the week it is due in is worth so much more of itself: what is
/// spread over the weeks is learnt better than what is massed.
const EVEN: f64 = 0.05;

struct Search<'a> {
    frame: &'a Frame,
    seats: &'a mut Seats,
    /// Practice by child and week.
    weeks: Vec<Vec<Got>>,
    total: Vec<Got>,
    value: Vec<f64>,
    used: Vec<f64>,
    /// Sessions that take place.
    running: Vec<usize>,
    /// Slots that may be changed.
    slots: Vec<usize>,
    chance: Chance,
    heat: f64,
    least: f64,
    /// Weight of all that is wished for beside practice.
    wishes: f64,
}

/// Improves the planned slots of one outing. With `least` above 0 no exchange is taken that
/// gains less, minutes, and none that loses. `wishes` weighs what is wished for beside
/// practice: company, other pairs, even weeks.
pub(crate) fn exchange(
    frame: &Frame,
    seats: &mut Seats,
    per_seat: u32,
    least: f64,
    wishes: f64,
    chance: Chance,
) -> Exchanged {
    let slots: Vec<usize> = (0..frame.all_slots())
        .filter(|slot| frame.sittings[slot / frame.slots].state == State::Planned)
        .collect();
    let tries = slots.len() as u64 * seats.kids.len() as u64 * u64::from(per_seat);
    let mut done = Exchanged { tried: 0, taken: 0 };
    if tries == 0 || frame.gaits.is_empty() {
        return done;
    }
    let mut search = Search::new(frame, seats, slots, chance);
    search.least = least;
    search.wishes = wishes;
    let mut best = (search.sum(), search.seats.clone());
    for _ in 0..tries {
        if least == 0.0 {
            let left = 1.0 - done.tried as f64 / tries as f64;
            search.heat = HEAT * left * left;
        }
        done.tried += 1;
        let taken = match search.chance.below(8) {
            0..4 => search.relocate(),
            4..6 => search.swap(),
            _ => search.regroup(),
        };
        if taken {
            done.taken += 1;
        }
        // Looked at now and then: a clone costs as much as many tries.
        if done.tried.is_multiple_of(tries / 50 + 1) || done.tried == tries {
            let sum = search.sum();
            if sum > best.0 {
                best = (sum, search.seats.clone());
            }
        }
    }
    *seats = best.1;
    done
}

impl<'a> Search<'a> {
    fn new(
        frame: &'a Frame,
        seats: &'a mut Seats,
        slots: Vec<usize>,
        chance: Chance,
    ) -> Search<'a> {
        let mut used = vec![0.0; frame.forms_of.len()];
        let weeks: Vec<Vec<Got>> = (0..seats.kids.len())
            .map(|kid| {
                (0..frame.weeks)
                    .map(|week| seats.week(frame, kid, week, &mut used))
                    .collect()
            })
            .collect();
        let total: Vec<Got> = weeks.iter().map(|weeks| sum(weeks)).collect();
        let value = std::iter::zip(&seats.kids, &total)
            .map(|(kid, got)| frame.value(*kid, got))
            .collect();
        Search {
            frame,
            seats,
            weeks,
            total,
            value,
            used,
            running: vary::running(frame),
            slots,
            chance,
            heat: 0.0,
            least: 0.0,
            wishes: 1.0,
        }
    }

    fn sum(&self) -> f64 {
        let alone = self
            .seats
            .count
            .iter()
            .flatten()
            .filter(|count| **count == 1);
        let even: f64 = std::iter::zip(&self.seats.kids, &self.weeks)
            .flat_map(|(kid, weeks)| weeks.iter().map(|got| even(self.frame, *kid, got)))
            .sum();
        let pairs = f64::from(vary::pairs(self.frame, self.seats));
        let beside = even - ALONE * alone.count() as f64 - vary::PAIR * pairs;
        self.value.iter().sum::<f64>() + self.wishes * beside
    }

    fn alone(&self, slot: usize) -> f64 {
        let alone = self.seats.count[slot].iter().filter(|count| **count == 1);
        ALONE * alone.count() as f64
    }

    fn pairs(&self, slot: usize, moves: &[(usize, u16)]) -> f64 {
        let sitting = slot / self.frame.slots;
        let of = |kid: usize| vary::near(self.frame, self.seats, kid, sitting, &self.running);
        vary::PAIR * f64::from(moves.iter().map(|it| of(it.0)).sum::<u32>())
    }

    /// Makes the moves, and takes them back unless the rules and the heat allow them.
    fn judge(&mut self, slot: usize, moves: &[(usize, u16)]) -> bool {
        let frame = self.frame;
        let olds: Vec<u16> = moves.iter().map(|it| self.seats.form[it.0][slot]).collect();
        let mut beside = self.alone(slot) + self.pairs(slot, moves);
        for (kid, form) in moves {
            self.seats.seat(frame, *kid, slot, *form);
        }
        beside -= self.alone(slot) + self.pairs(slot, moves);
        let mut gain = self.wishes * beside;
        let mut may = self.seats.open[slot] <= frame.at_once
            && moves.iter().all(|it| self.seats.changes(frame, it.0, slot));
        let per_week = frame.sittings.len() / frame.weeks.max(1);
        let week = slot / frame.slots / per_week;
        let mut after: Vec<(Got, Got, f64)> = Vec::with_capacity(moves.len());
        if may {
            for (kid, _) in moves {
                let now = self.seats.week(frame, *kid, week, &mut self.used);
                let mut total = self.total[*kid];
                for (at, total) in total.iter_mut().enumerate() {
                    *total += now[at] - self.weeks[*kid][week][at];
                }
                let child = self.seats.kids[*kid];
                let value = frame.value(child, &total);
                gain += value - self.value[*kid];
                let due = even(frame, child, &now) - even(frame, child, &self.weeks[*kid][week]);
                gain += self.wishes * due;
                after.push((now, total, value));
            }
            may = gain >= self.least
                || self.heat > 0.0 && gain > self.heat * libm::log(self.chance.above_zero());
        }
        if !may {
            for ((kid, _), old) in std::iter::zip(moves, olds) {
                self.seats.seat(frame, *kid, slot, old);
            }
            return false;
        }
        for ((kid, _), (now, total, value)) in std::iter::zip(moves, after) {
            self.weeks[*kid][week] = now;
            self.total[*kid] = total;
            self.value[*kid] = value;
        }
        true
    }

    fn slot(&mut self) -> usize {
        self.slots[self.chance.below(self.slots.len())]
    }

    /// One child to another group, to a station of its own, or to its other foot.
    fn relocate(&mut self) -> bool {
        let frame = self.frame;
        let slot = self.slot();
        let kid = self.chance.below(self.seats.kids.len());
        let station = self.chance.below(frame.forms_of.len());
        let old = self.seats.form[kid][slot];
        let played = self.seats.played[slot][station];
        let forms = if played == FREE {
            &frame.forms_of[station]
        } else {
            &frame.gaits[played as usize].forms
        };
        if forms.is_empty() {
            return false;
        }
        let form = forms[self.chance.below(forms.len())];
        let gait = &frame.gaits[frame.forms[form].gait];
        let there = self.seats.station(frame, kid, slot) == Some(station);
        let room = there || usize::from(self.seats.count[slot][station]) < gait.places;
        let may = frame.open(self.seats.kids[kid], form, slot / frame.slots);
        old as usize != form && room && may && self.judge(slot, &[(kid, form as u16)])
    }

    /// Two children change places.
    fn swap(&mut self) -> bool {
        let frame = self.frame;
        let slot = self.slot();
        let a = self.chance.below(self.seats.kids.len());
        let b = self.chance.below(self.seats.kids.len());
        let (of_a, of_b) = (self.seats.form[a][slot], self.seats.form[b][slot]);
        if of_a == of_b {
            return false;
        }
        let sitting = slot / frame.slots;
        let may = |kid: usize, form: u16| {
            form == FREE || frame.open(self.seats.kids[kid], form as usize, sitting)
        };
        may(a, of_b) && may(b, of_a) && self.judge(slot, &[(a, of_b), (b, of_a)])
    }

    /// A whole group does something else, there or at a station that is not in use.
    fn regroup(&mut self) -> bool {
        let frame = self.frame;
        let slot = self.slot();
        let some = self.chance.below(self.seats.kids.len());
        let gait = self.chance.below(frame.gaits.len());
        let to = &frame.gaits[gait];
        let Some(old) = self.seats.station(frame, some, slot) else {
            return false;
        };
        let same = self.seats.played[slot][old] as usize == gait;
        let taken = old != to.station && self.seats.count[slot][to.station] > 0;
        if same || taken || usize::from(self.seats.count[slot][old]) > to.places {
            return false;
        }
        let mut moves = Vec::new();
        for kid in 0..self.seats.kids.len() {
            if self.seats.station(frame, kid, slot) != Some(old) {
                continue;
            }
            let form = to.forms[self.chance.below(to.forms.len())];
            if !frame.open(self.seats.kids[kid], form, slot / frame.slots) {
                return false;
            }
            moves.push((kid, form as u16));
        }
        self.judge(slot, &moves)
    }
}

/// What practice in its week is worth beside the whole, minutes.
fn even(frame: &Frame, kid: usize, got: &Got) -> f64 {
    let wants = &frame.kids[kid].targets;
    let due = |minutes: f64| minutes / frame.weeks as f64;
    let all = std::iter::zip(wants, got).map(|(want, got)| got.min(due(want.minutes)));
    EVEN * all.sum::<f64>()
}

/// Of all weeks.
pub(crate) fn sum(weeks: &[Got]) -> Got {
    let mut total = [0.0; crate::frame::MOST_TARGETS];
    for week in weeks {
        for (total, got) in std::iter::zip(&mut total, week) {
            *total += got;
        }
    }
    total
}
