//! The letter court: letters laid so that the words of a programme can be jumped.

use crate::canvas::Canvas;
use crate::colour::Part;
use crate::families::grid::{AROUND, Grid};
use crate::families::number_court::LENGTHS;
use crate::family::{Family, Fault, LengthSpec, at_least, named, take_all};
use crate::figure::Figure;
use crate::lettering::{Asked, Lettering, Spelled, place};
use crate::letters::letters;
use crate::look::Look;
use crate::shape::Pose;

/// A start and as many squares as the words have letters, up to twenty.
pub struct LetterCourt;

/// The sizes of the court, the smallest first.
const GRIDS: [Grid; 4] = [
    Grid {
        columns: 3,
        rows: 3,
    },
    Grid {
        columns: 4,
        rows: 3,
    },
    Grid {
        columns: 4,
        rows: 4,
    },
    Grid {
        columns: 5,
        rows: 4,
    },
];

/// A court's letters: how many columns and rows, what stands where, and which words can be
/// jumped. Made once for a programme's words; lengths in it are steps of the court.
///
/// One child's step is another's: jumps go to the eight cells around, so that the same
/// letters serve a court of any step.
#[derive(Clone, Debug, PartialEq)]
pub struct CourtLetters {
    grid: Grid,
    lettering: Lettering,
}

impl CourtLetters {
    /// Letters for these words. Without words, the sixteen letters most used in English and
    /// Spanish in the order of the alphabet.
    pub fn of(words: &[String], seed: u64) -> CourtLetters {
        let mut used: Vec<char> = words
            .iter()
            .flat_map(|word| letters(word))
            .flatten()
            .collect();
        used.sort_unstable();
        used.dedup();
        let [_, _, plain, largest] = GRIDS;
        let grid = if used.is_empty() {
            plain
        } else {
            let holds = |grid: &&Grid| grid.cells() >= used.len();
            GRIDS.iter().find(holds).copied().unwrap_or(largest)
        };
        let lettering = place(&Asked {
            words,
            centres: &grid.steps(),
            reaches: &[AROUND],
            seed,
        });
        CourtLetters { grid, lettering }
    }

    /// Columns across the way and rows ahead.
    pub fn size(&self) -> (usize, usize) {
        (self.grid.columns, self.grid.rows)
    }

    /// The letters row by row from the start, each row from the left.
    pub fn cells(&self) -> &[Option<char>] {
        &self.lettering.cells
    }

    /// What becomes of each word; distances in steps.
    pub fn words(&self) -> &[Spelled] {
        &self.lettering.words
    }

    /// How many words can be jumped.
    pub fn jumpable(&self) -> usize {
        self.lettering.jumpable
    }

    /// The share of the words that can be jumped.
    pub fn share(&self) -> f64 {
        self.lettering.share
    }

    /// The longest jump of these words on a court of this step, metres.
    pub fn longest(&self, step: f64) -> Option<f64> {
        self.lettering.longest.map(|steps| steps * step)
    }

    /// Whether it is proven that no other placing is better.
    pub fn proven(&self) -> bool {
        self.lettering.proven
    }
}

impl Family for LetterCourt {
    fn name(&self) -> &'static str {
        "letter-court"
    }

    fn lengths(&self) -> &'static [LengthSpec] {
        &LENGTHS
    }

    fn activities(&self) -> &'static [&'static str] {
        &["jump", "hop"]
    }

    fn can_mirror(&self) -> bool {
        false
    }

    fn make(&self, lengths: &[f64], look: &Look) -> Result<Figure, Fault> {
        let taken = take_all(&LENGTHS, lengths)?;
        let [step, side] = taken;
        at_least("step", step, side + look.gap)?;
        let mut canvas = Canvas::new(look);
        let CourtLetters { grid, lettering } = &look.letters;
        let start = canvas.start("start", Pose::at(0.0, 0.0), look.start);
        canvas.begin(start);
        let middles = grid.middles(&canvas, step, side);
        let cells: Vec<usize> = lettering
            .cells
            .iter()
            .zip(&middles)
            .map(|(letter, pose)| {
                let letter = letter.unwrap_or_default();
                let parts = if "AEIOU".contains(letter) {
                    [Part::Bright, Part::HeelPlain]
                } else {
                    [Part::Plain, Part::HeelBright]
                };
                let cell = canvas.square(letter, *pose, side, parts, letter);
                canvas.either(cell)
            })
            .collect();
        grid.roam(&mut canvas, start, &cells, AROUND);
        grid.surround(&mut canvas, &middles);
        Ok(canvas.figure(self.name(), named(&LENGTHS, &taken), 1))
    }
}
