//! Footprint trails: a skill well done, as its feet fall.
//!
//! A contact of one foot, or of both, stands in an eye; but hops so short that no eye fits
//! between them stand free, their prints as long as they leave room for. Where a contact is
//! two steps of one gait (gallop: lead and close; skip: step and hop) the prints stand free
//! too, the one that lands first in colour, the other in Chalk. Right is one colour, left
//! the other.

use std::f64::consts::PI;

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take};
use crate::figure::{Figure, Takes};
use crate::look::Look;
use crate::print::Foot;
use crate::shape::{Pose, rect};

/// What the prints show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Show {
    Gallop,
    Skip,
    Hop,
    Leap,
    Jump,
}

/// A trail of one gait.
pub struct Prints {
    name: &'static str,
    show: Show,
}

/// Four with the right foot in front, four with the left.
pub const GALLOP_PRINTS: Prints = Prints {
    name: "gallop-prints",
    show: Show::Gallop,
};
/// Step and hop on one foot, then on the other.
pub const SKIP_PRINTS: Prints = Prints {
    name: "skip-prints",
    show: Show::Skip,
};
/// Four on the right foot, four on the left.
pub const HOP_PRINTS: Prints = Prints {
    name: "hop-prints",
    show: Show::Hop,
};
/// From one foot to the other, after a run.
pub const LEAP_PRINTS: Prints = Prints {
    name: "leap-prints",
    show: Show::Leap,
};
/// Both feet together.
pub const JUMP_PRINTS: Prints = Prints {
    name: "jump-prints",
    show: Show::Jump,
};

const fn stride(least: f64, most: f64, default: f64, says: &'static str) -> LengthSpec {
    LengthSpec {
        name: "stride",
        least,
        most,
        default,
        step: 0.01,
        says,
    }
}

const fn spot(least: f64, default: f64) -> LengthSpec {
    LengthSpec {
        name: "spot",
        least,
        most: 0.40,
        default,
        step: 0.01,
        says: "length-spot",
    }
}

const GALLOP: [LengthSpec; 1] = [stride(0.40, 0.95, 0.60, "length-stride-gallop")];
const SKIP: [LengthSpec; 1] = [stride(0.40, 0.80, 0.50, "length-stride-skip")];
const HOP: [LengthSpec; 1] = [stride(0.24, 0.80, 0.45, "length-stride-hop")];
const LEAP: [LengthSpec; 2] = [
    stride(0.45, 1.10, 0.70, "length-stride-leap"),
    spot(0.33, 0.36),
];
const JUMP: [LengthSpec; 2] = [stride(0.40, 1.00, 0.55, "length-jump"), spot(0.35, 0.36)];

/// The look's print, metres.
const PRINT: f64 = 0.22;
/// From the middle of a way to the middle of a foot, metres.
const BESIDE: f64 = 0.0565;
/// Radius of the ground that a free print is aimed at, metres: a print and what sways.
const AIM: f64 = 0.18;
/// A ring whose eye holds a whole print, metres across.
const EYE: f64 = 0.40;
/// How far the closing foot falls behind the lead, metres: half a print.
const CLOSE: f64 = PRINT / 2.0;
/// Bare ground before the swap bar, metres: a child comes to stand there.
const SWAP: f64 = 0.25;
/// Places of the chevrons of a run-up, metres from the start line.
const RUN_UP: [f64; 2] = [-1.45, -0.85];
/// Contacts on one foot before the swap.
const BEFORE_SWAP: u32 = 4;

impl Prints {
    fn contacts(&self) -> u32 {
        match self.show {
            Show::Gallop | Show::Hop => BEFORE_SWAP,
            Show::Skip => 6,
            Show::Leap => 3,
            Show::Jump => 4,
        }
    }

    /// Metres that a contact's paint reaches before its middle and behind it.
    fn reach(&self, spot: f64, stride: f64) -> [f64; 2] {
        match self.show {
            Show::Gallop => [PRINT / 2.0, PRINT / 2.0 + CLOSE],
            Show::Hop if spot < EYE => [PRINT / 2.0; 2],
            Show::Skip => [PRINT / 2.0 + hop_of(stride), PRINT / 2.0],
            Show::Hop | Show::Leap | Show::Jump => [spot / 2.0; 2],
        }
    }

    /// One contact and its cell.
    fn contact(
        &self,
        canvas: &mut Canvas,
        id: String,
        pose: Pose,
        foot: Foot,
        size: [f64; 2],
    ) -> usize {
        let look = canvas.look;
        let [stride, spot] = size;
        let own = match foot {
            Foot::Right => Part::Bright,
            Foot::Left => Part::Cool,
        };
        let beside = |foot: Foot, ahead: f64| Pose {
            at: pose.point(ahead, foot.side() * BESIDE),
            ..pose
        };
        // the web round a print in an eye is the stencil's least
        let long = PRINT.min(spot - 2.0 * (look.band + look.web + look.flat));
        let takes = match foot {
            Foot::Right => Takes::Right,
            Foot::Left => Takes::Left,
        };
        match self.show {
            Show::Hop if spot < EYE => {
                let long = PRINT.min(stride - look.gap);
                canvas.print(own, pose, foot, long);
                canvas.spot(id, pose.at, spot / 2.0, takes)
            }
            Show::Gallop | Show::Skip => {
                canvas.print(own, beside(foot, 0.0), foot, PRINT);
                if self.show == Show::Gallop {
                    canvas.print(
                        Part::Plain,
                        beside(foot.other(), -CLOSE),
                        foot.other(),
                        PRINT,
                    );
                } else {
                    canvas.print(Part::Plain, beside(foot, hop_of(stride)), foot, PRINT);
                }
                canvas.spot(id, beside(foot, 0.0).at, AIM, takes)
            }
            Show::Hop | Show::Leap => {
                let cell = canvas.ring(id, pose, spot, [Part::Plain, Part::HeelBright]);
                canvas.print(own, pose, foot, long);
                if let Some(cell) = canvas.cells.get_mut(cell) {
                    cell.takes = takes;
                }
                cell
            }
            Show::Jump => {
                let cell = canvas.broad(id, pose, spot, [Part::Plain, Part::HeelBright]);
                for (foot, part) in [(Foot::Left, Part::Cool), (Foot::Right, Part::Bright)] {
                    let at = pose.point(0.0, foot.side() * BESIDE * 1.3);
                    canvas.print(part, Pose { at, ..pose }, foot, long);
                }
                cell
            }
        }
    }
}

/// Metres from a skip's step to its hop: under half of the stride, and clear of the step.
fn hop_of(stride: f64) -> f64 {
    (0.42 * stride).max(PRINT + 0.02)
}

impl Family for Prints {
    fn name(&self) -> &'static str {
        self.name
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        match self.show {
            Show::Gallop => &GALLOP,
            Show::Skip => &SKIP,
            Show::Hop => &HOP,
            Show::Leap => &LEAP,
            Show::Jump => &JUMP,
        }
    }

    fn activities(&self) -> &'static [&'static str] {
        match self.show {
            Show::Gallop => &["gallop"],
            Show::Skip => &["skip"],
            Show::Hop => &["hop"],
            Show::Leap => &["leap"],
            Show::Jump => &["jump"],
        }
    }

    fn can_mirror(&self) -> bool {
        true
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let specs = self.lengths();
        let taken = take(specs, lengths)?;
        let stride = taken.first().copied().unwrap_or(PRINT);
        let spot = match (taken.get(1), self.show) {
            (Some(spot), _) => {
                at_least("stride", stride, spot + look.gap)?;
                *spot
            }
            (None, Show::Hop) if stride < EYE + look.gap => (stride - look.joint).min(2.0 * AIM),
            (None, Show::Hop) => EYE,
            (None, _) => 2.0 * AIM,
        };
        let mut canvas = Canvas::new(look);
        let [ahead, behind] = self.reach(spot, stride);
        let mut x = -look.stand;
        let mut last = canvas.start("start", Pose::at(0.0, 0.0), look.start);
        if self.show == Show::Leap {
            for x in RUN_UP {
                canvas.chevron(Part::Bright, Pose::at(x, 0.0));
            }
            if let Some(cell) = canvas.cells.get_mut(last) {
                cell.run_up = true;
            }
        }
        // the first contact is a stride off, and clear of the start
        let first = stride.max(look.stand + look.gap + behind);
        let swaps = matches!(self.show, Show::Gallop | Show::Hop);
        for (half, lead) in [(0, Foot::Right), (1, Foot::Left)] {
            if half == 1 {
                if !swaps {
                    break;
                }
                // the swap bar is stood on: clear of both trails, and again a start
                x += ahead + SWAP + look.roll / 2.0;
                canvas.bar(Pose::at(x, 0.0), 1.0, 0.8);
                last = canvas.spot(
                    "swap",
                    Pose::at(x, 0.0).at,
                    look.brook_start_spot,
                    Takes::Either,
                );
                if let Some(cell) = canvas.cells.get_mut(last) {
                    (cell.start, cell.end) = (true, false);
                }
            }
            let mut trail = vec![last];
            let off = if half == 0 {
                first
            } else {
                stride.max(look.roll / 2.0 + look.gap + behind)
            };
            for number in 0..self.contacts() {
                x += if number == 0 { off } else { stride };
                let foot = if self.show == Show::Gallop || self.show == Show::Hop || number % 2 == 0
                {
                    lead
                } else {
                    lead.other()
                };
                let id = format!("{}", half * BEFORE_SWAP + number + 1);
                trail.push(self.contact(&mut canvas, id, Pose::at(x, 0.0), foot, [stride, spot]));
            }
            canvas.chain(&trail);
        }
        let end = x + ahead;
        let stop = end + 0.15 + look.roll;
        canvas.bar(Pose::at(stop, 0.0), 2.0, 0.9);
        let fast = matches!(self.show, Show::Gallop | Show::Leap);
        let run_out = if fast {
            look.run_out_run
        } else {
            look.run_out_other
        };
        let run_up = if self.show == Show::Leap {
            look.run_up + look.stand
        } else {
            look.start / 2.0 + look.behind
        };
        let aside = 0.45 + look.sway;
        canvas.needs(rect([-run_up, end + run_out], [-aside, aside]));
        let door = Pose::at(
            if self.show == Show::Leap {
                -run_up
            } else {
                0.0
            },
            0.0,
        )
        .at;
        canvas.pebbles(door, 1.05, 0.63 * PI, 1.0, 3, door);
        Ok(canvas.figure(self.name, named(specs, taken), 1))
    }
}
