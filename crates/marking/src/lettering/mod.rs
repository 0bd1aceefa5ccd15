//! Letters on the cells of a court, so that a list of words can be jumped.
//!
//! In at the door: words as people write them, the cells' centres, the reaches of the
//! children. Out: a letter for each cell, and for each word whether it can be jumped, its
//! longest jump, or why not. Best is, in this order: most words (the mean over the reaches
//! of the words whose every next letter is within reach), the shortest longest jump, the
//! shortest way over all words. A double letter is a jump on the spot.
//!
//! The same words, centres, reaches and seed give the same letters on every machine.

mod choose;
mod search;

use geo::Coord;

use crate::letters::{ALPHABET, letters};
use choose::{chosen, spare};
use search::Board;

/// What a lettering is asked for.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// As people write them.
    pub words: &'a [String],
    /// Middles of the cells.
    pub centres: &'a [Coord<f64>],
    /// How far the children jump, in the centres' unit. A word counts once for each reach
    /// that it is within.
    pub reaches: &'a [f64],
    /// Where the search begins.
    pub seed: u64,
}

/// Letters on cells, and what becomes of the words.
#[derive(Clone, Debug, PartialEq)]
pub struct Lettering {
    /// The letter of each cell, in the order of the centres; a cell past the alphabet is
    /// bare.
    pub cells: Vec<Option<char>>,
    /// Each word that was asked for, in its order.
    pub words: Vec<Spelled>,
    /// Words within the widest reach.
    pub jumpable: usize,
    /// The mean over the reaches of the share of words within it; 1 where there are none.
    pub share: f64,
    /// The longest jump of the words within the widest reach, in the centres' unit; `None`
    /// where no word jumps from cell to cell.
    pub longest: Option<f64>,
    /// The way over all these words, in the centres' unit.
    pub path: f64,
    /// Whether no placing is better: every other was held against it.
    pub proven: bool,
}

/// One word on a court.
#[derive(Clone, Debug, PartialEq)]
pub struct Spelled {
    /// As written.
    pub word: String,
    /// Its letters, as the court has them; those before the fault where there is one.
    pub letters: String,
    /// What becomes of it.
    pub verdict: Verdict,
}

/// Whether a word can be jumped.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// Every next letter is within the widest reach.
    Jumpable {
        /// Its longest jump; 0 on one letter.
        longest: f64,
        /// The way over it.
        path: f64,
        /// How many of the reaches it is within.
        reaches: usize,
    },
    /// It has a character that no letter stands for.
    Odd(char),
    /// It has no letter.
    Empty,
    /// A letter of it got no cell: others were used more.
    NoCell(char),
    /// Two letters that follow one another lie too far apart: the farthest such pair.
    TooFar {
        /// One.
        from: char,
        /// The next.
        to: char,
        /// From cell to cell.
        distance: f64,
    },
}

/// Metres, or any unit of that order. A jump as long as the reach is within it.
const SAME: f64 = 1e-9;

/// Letters for the cells.
///
/// # Method
/// Letters beyond the number of cells are dropped, the one whose loss costs fewest words
/// first; spare cells get letters of common use. Then simulated annealing by swaps from
/// several seeded starts, each ended by the best swaps; the best of these shaken by a few
/// swaps and mended again, many times; and a branch and bound that begins with what was found: where it comes to its end the placing is proven best (`proven`),
/// otherwise it is what the search found. Without words: letters of common use in the
/// order of the alphabet.
pub fn place(asked: &Asked) -> Lettering {
    let spelled: Vec<Result<Vec<char>, char>> =
        asked.words.iter().map(|word| letters(word)).collect();
    let whole: Vec<&Vec<char>> = spelled
        .iter()
        .flatten()
        .filter(|word| !word.is_empty())
        .collect();
    let count = asked.centres.len();
    let kept = chosen(&whole, count);
    let board = Board::new(asked, &kept, &whole);
    let (order, proven) = board.solve(asked.seed);
    let mut cells: Vec<Option<char>> = vec![None; count];
    for (letter, cell) in kept.iter().zip(&order) {
        cells[*cell] = Some(*letter);
    }
    fill(&mut cells, &kept);
    report(asked, spelled, cells, proven)
}

/// Puts spare letters on the cells that are left.
fn fill(cells: &mut [Option<char>], kept: &[char]) {
    let bare = cells.iter().filter(|cell| cell.is_none()).count();
    let mut spare = spare(kept, bare).into_iter();
    for cell in cells.iter_mut().filter(|cell| cell.is_none()) {
        *cell = spare.next();
    }
}

/// What becomes of words on a court that is lettered already.
///
/// - `cells`: letters in the order of the centres
pub fn held_against(asked: &Asked, cells: &[Option<char>]) -> Lettering {
    let spelled = asked.words.iter().map(|word| letters(word)).collect();
    report(asked, spelled, cells.to_vec(), false)
}

fn report(
    asked: &Asked,
    spelled: Vec<Result<Vec<char>, char>>,
    cells: Vec<Option<char>>,
    proven: bool,
) -> Lettering {
    let widest = asked.reaches.iter().copied().fold(0.0, f64::max);
    let at = |letter: char| {
        let cell = cells.iter().position(|cell| *cell == Some(letter))?;
        asked.centres.get(cell).copied()
    };
    let verdict = |letters: &[char]| {
        if letters.is_empty() {
            return Verdict::Empty;
        }
        let mut places = Vec::new();
        for letter in letters {
            match at(*letter) {
                Some(place) => places.push(place),
                None => return Verdict::NoCell(*letter),
            }
        }
        let (mut longest, mut path, mut far) = (0.0_f64, 0.0, 0);
        for (jump, pair) in places.windows(2).enumerate() {
            let distance = match pair {
                [a, b] => libm::hypot(b.x - a.x, b.y - a.y),
                _ => 0.0,
            };
            if distance > longest + SAME {
                (longest, far) = (distance, jump);
            }
            path += distance;
        }
        if longest > widest + SAME {
            return Verdict::TooFar {
                from: letters.get(far).copied().unwrap_or_default(),
                to: letters.get(far + 1).copied().unwrap_or_default(),
                distance: longest,
            };
        }
        let within = |reach: &&f64| longest <= **reach + SAME;
        Verdict::Jumpable {
            longest,
            path,
            reaches: asked.reaches.iter().filter(within).count(),
        }
    };
    let words: Vec<Spelled> = asked
        .words
        .iter()
        .zip(spelled)
        .map(|(word, spelled)| Spelled {
            word: word.clone(),
            letters: spelled.iter().flatten().collect(),
            verdict: match spelled {
                Ok(letters) => verdict(&letters),
                Err(odd) => Verdict::Odd(odd),
            },
        })
        .collect();
    let (mut jumpable, mut within, mut path, mut longest) = (0, 0, 0.0, 0.0_f64);
    for word in &words {
        if let Verdict::Jumpable {
            longest: own,
            path: way,
            reaches,
        } = word.verdict
        {
            jumpable += 1;
            within += reaches;
            path += way;
            longest = longest.max(own);
        }
    }
    let all = words.len() * asked.reaches.len();
    Lettering {
        cells,
        jumpable,
        share: if all > 0 {
            within as f64 / all as f64
        } else {
            1.0
        },
        longest: (longest > 0.0).then_some(longest),
        path,
        proven,
        words,
    }
}

impl Lettering {
    /// Better than another by what is wanted: words, then the longest jump, then the way.
    pub fn beats(&self, other: &Lettering) -> bool {
        let longest = |one: &Lettering| one.longest.unwrap_or(0.0);
        if (self.share - other.share).abs() > SAME {
            return self.share > other.share;
        }
        if (longest(self) - longest(other)).abs() > SAME {
            return longest(self) < longest(other);
        }
        self.path < other.path - SAME
    }

    /// The letters that have a cell, in the order of the alphabet.
    pub fn alphabet(&self) -> Vec<char> {
        ALPHABET
            .into_iter()
            .filter(|letter| self.cells.contains(&Some(*letter)))
            .collect()
    }
}
