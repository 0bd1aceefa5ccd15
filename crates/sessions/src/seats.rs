//! Who sits where in every slot of one outing, and what it gives.

use crate::frame::{Frame, Got, MOST_TARGETS};
use crate::schedule::State;

/// In no group.
pub(crate) const FREE: u16 = u16::MAX;

/// The seats of one outing. A *slot* is numbered over the whole programme.
#[derive(Clone)]
pub(crate) struct Seats {
    /// Numbers of the children.
    pub(crate) kids: Vec<usize>,
    /// Form, by child (its place in `kids`) and slot.
    pub(crate) form: Vec<Vec<u16>>,
    /// Gait that is played, by slot and station.
    pub(crate) played: Vec<Vec<u16>>,
    /// Children, by slot and station.
    pub(crate) count: Vec<Vec<u8>>,
    /// Stations in use, by slot.
    pub(crate) open: Vec<usize>,
}

impl Seats {
    pub(crate) fn new(frame: &Frame, kids: &[usize]) -> Seats {
        let (slots, stations) = (frame.all_slots(), frame.forms_of.len());
        Seats {
            kids: kids.to_vec(),
            form: vec![vec![FREE; slots]; kids.len()],
            played: vec![vec![FREE; stations]; slots],
            count: vec![vec![0; stations]; slots],
            open: vec![0; slots],
        }
    }

    /// Moves a child to a form, or out of every group. The caller has seen to the rules.
    pub(crate) fn seat(&mut self, frame: &Frame, kid: usize, slot: usize, form: u16) {
        let old = self.form[kid][slot];
        if old != FREE {
            let station = frame.forms[old as usize].station;
            self.count[slot][station] -= 1;
            if self.count[slot][station] == 0 {
                self.played[slot][station] = FREE;
                self.open[slot] -= 1;
            }
        }
        if form != FREE {
            let station = frame.forms[form as usize].station;
            if self.count[slot][station] == 0 {
                self.open[slot] += 1;
            }
            self.count[slot][station] += 1;
            self.played[slot][station] = frame.forms[form as usize].gait as u16;
        }
        self.form[kid][slot] = form;
    }

    /// The station of a child in a slot.
    pub(crate) fn station(&self, frame: &Frame, kid: usize, slot: usize) -> Option<usize> {
        let form = self.form[kid][slot];
        (form != FREE).then(|| frame.forms[form as usize].station)
    }

    /// Whether a child stays at no station longer than it should, near a slot.
    pub(crate) fn changes(&self, frame: &Frame, kid: usize, slot: usize) -> bool {
        let Some(station) = self.station(frame, kid, slot) else {
            return true;
        };
        let first = slot - slot % frame.slots;
        let here = |slot: &usize| self.station(frame, kid, *slot) == Some(station);
        let before = (first..slot).rev().take_while(here).count();
        let after = (slot + 1..first + frame.slots).take_while(here).count();
        before + 1 + after <= frame.run
    }

    /// What a week gives to a child. Lost sessions give nothing.
    pub(crate) fn week(&self, frame: &Frame, kid: usize, week: usize, used: &mut [f64]) -> Got {
        let mut got = [0.0; MOST_TARGETS];
        used.fill(0.0);
        let per_week = frame.sittings.len() / frame.weeks.max(1);
        for sitting in week * per_week..(week + 1) * per_week {
            if frame.sittings[sitting].state == State::Lost {
                continue;
            }
            for slot in sitting * frame.slots..(sitting + 1) * frame.slots {
                let form = self.form[kid][slot];
                if form == FREE {
                    continue;
                }
                let form = &frame.forms[form as usize];
                for (act, share) in &form.parts {
                    frame.play(
                        self.kids[kid],
                        *act,
                        frame.slot * share,
                        &mut used[form.station],
                        &mut got,
                    );
                }
            }
        }
        got
    }
}
