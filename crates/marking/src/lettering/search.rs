//! The search for the best placing: annealing by swaps, the best of it shaken and polished,
//! then branch and bound.

use std::cmp::Ordering;

use super::{Asked, SAME};

/// Starts of the annealing.
const STARTS: u64 = 12;
/// Times that the best is shaken, by so many swaps, and polished again.
const SHAKES: usize = 800;
const SHAKE: usize = 3;
/// Swaps tried from each start, for each cell.
const SWAPS: usize = 4000;
/// First and last temperature: a word is worth 1, a step of its way some hundredths.
const WARM: f64 = 0.5;
const COLD: f64 = 0.02;
/// Places that the branch and bound looks at, at most: some hundredths of a second.
const NODES: usize = 200_000;

/// Letters as numbers, cells as numbers, and what lies between.
pub(super) struct Board {
    cells: usize,
    letters: usize,
    /// From cell to cell.
    apart: Vec<f64>,
    /// Narrowest first.
    reaches: Vec<f64>,
    /// The flights of each word that has all its letters; a double letter is none.
    words: Vec<Vec<(usize, usize)>>,
    /// The words of each letter.
    words_of: Vec<Vec<usize>>,
}

/// How good a placing is: words within reach, longest jump, way.
#[derive(Clone, Copy, Debug)]
struct Worth {
    words: usize,
    longest: f64,
    path: f64,
}

impl Worth {
    /// Better first.
    fn order(&self, other: &Worth) -> Ordering {
        let near = |a: f64, b: f64| {
            if (a - b).abs() <= SAME {
                Ordering::Equal
            } else {
                a.total_cmp(&b)
            }
        };
        other
            .words
            .cmp(&self.words)
            .then(near(self.longest, other.longest))
            .then(near(self.path, other.path))
    }
}

impl Board {
    /// - `kept`: letters that get a cell, no more than there are cells
    pub fn new(asked: &Asked, kept: &[char], words: &[&Vec<char>]) -> Board {
        let apart = asked.centres.iter().flat_map(|a| {
            let far = |b: &geo::Coord<f64>| libm::hypot(b.x - a.x, b.y - a.y);
            asked.centres.iter().map(far)
        });
        let number = |letter: &char| kept.iter().position(|one| one == letter);
        let flights = |word: &&Vec<char>| -> Option<Vec<(usize, usize)>> {
            let numbers: Option<Vec<usize>> = word.iter().map(number).collect();
            let numbers = numbers?;
            let pairs = numbers.iter().zip(numbers.iter().skip(1));
            Some(
                pairs
                    .map(|(a, b)| (*a, *b))
                    .filter(|(a, b)| a != b)
                    .collect(),
            )
        };
        let words: Vec<Vec<(usize, usize)>> = words
            .iter()
            .filter_map(flights)
            .filter(|flights| !flights.is_empty())
            .collect();
        let holds = |letter: usize| {
            let words = words.iter().enumerate();
            words
                .filter(|(_, word)| word.iter().any(|(a, b)| *a == letter || *b == letter))
                .map(|(number, _)| number)
                .collect()
        };
        let mut reaches = asked.reaches.to_vec();
        reaches.sort_by(f64::total_cmp);
        Board {
            cells: asked.centres.len(),
            letters: kept.len(),
            apart: apart.collect(),
            reaches,
            words_of: (0..kept.len()).map(holds).collect(),
            words,
        }
    }

    /// The cell of each letter, and whether it is proven that none are better.
    pub fn solve(&self, seed: u64) -> (Vec<usize>, bool) {
        let plain: Vec<usize> = (0..self.cells).collect();
        if self.words.is_empty() {
            return (plain.into_iter().take(self.letters).collect(), true);
        }
        let mut best = self.polished(plain);
        for start in 0..STARTS {
            let mut dice = Dice::new(seed, start);
            let found = self.polished(self.annealed(&mut dice));
            if self.worth(&found).order(&self.worth(&best)).is_lt() {
                best = found;
            }
        }
        let mut dice = Dice::new(seed, STARTS);
        for shake in 0..SHAKES {
            let mut shaken = best.clone();
            for _ in 0..=shake % SHAKE {
                shaken.swap(dice.below(self.letters), dice.below(self.cells));
            }
            let found = self.polished(shaken);
            if self.worth(&found).order(&self.worth(&best)).is_le() {
                best = found;
            }
        }
        best.truncate(self.letters);
        let mut tree = Tree::new(self, best);
        tree.grow(0);
        let proven = tree.nodes < NODES;
        (tree.best, proven)
    }

    fn apart(&self, a: usize, b: usize) -> f64 {
        self.apart[a * self.cells + b]
    }

    fn widest(&self) -> f64 {
        self.reaches.last().copied().unwrap_or(0.0)
    }

    /// How many of the reaches a jump is within.
    fn within(&self, jump: f64) -> usize {
        let near = |reach: &&f64| jump <= **reach + SAME;
        self.reaches.iter().filter(near).count()
    }

    /// - `at`: the cell of each letter
    fn worth(&self, at: &[usize]) -> Worth {
        let mut worth = Worth {
            words: 0,
            longest: 0.0,
            path: 0.0,
        };
        for word in &self.words {
            let (mut longest, mut path) = (0.0_f64, 0.0);
            for (a, b) in word {
                let jump = self.apart(at[*a], at[*b]);
                longest = longest.max(jump);
                path += jump;
            }
            let within = self.within(longest);
            if within > 0 {
                worth.words += within;
                worth.longest = worth.longest.max(longest);
                worth.path += path;
            }
        }
        worth
    }

    /// What a word costs while it is annealed: 1 for each reach that it is not within, and
    /// less for the ways that lead there.
    fn cost(&self, word: usize, at: &[usize]) -> f64 {
        const EXCESS: f64 = 0.04;
        const LONGEST: f64 = 0.04;
        const PATH: f64 = 0.01;
        let widest = self.widest().max(SAME);
        let (mut longest, mut path, mut excess) = (0.0_f64, 0.0, 0.0);
        for (a, b) in &self.words[word] {
            let jump = self.apart(at[*a], at[*b]);
            longest = longest.max(jump);
            path += jump;
            excess += (jump - widest).max(0.0);
        }
        let missed = self.reaches.len() - self.within(longest);
        missed as f64 + (EXCESS * excess + LONGEST * longest + PATH * path) / widest
    }

    /// The cell of each letter, then those left bare, from a start by chance.
    fn annealed(&self, dice: &mut Dice) -> Vec<usize> {
        let mut at: Vec<usize> = (0..self.cells).collect();
        for last in (1..at.len()).rev() {
            at.swap(last, dice.below(last + 1));
        }
        let mut costs: Vec<f64> = (0..self.words.len())
            .map(|word| self.cost(word, &at))
            .collect();
        let (mut now, mut best) = (costs.iter().sum::<f64>(), at.clone());
        let mut least = now;
        let swaps = SWAPS * self.cells;
        let cooling = libm::pow(COLD / WARM, 1.0 / swaps as f64);
        let mut warmth = WARM;
        let mut touched: Vec<(usize, f64)> = Vec::new();
        for _ in 0..swaps {
            warmth *= cooling;
            // one of the two has to be a letter, or nothing changes
            let (a, b) = (dice.below(self.letters), dice.below(self.cells));
            if a == b {
                continue;
            }
            at.swap(a, b);
            touched.clear();
            let mut more = 0.0;
            for letter in [a, b] {
                for word in self.words_of.get(letter).into_iter().flatten() {
                    if touched.iter().all(|(other, _)| other != word) {
                        let cost = self.cost(*word, &at);
                        more += cost - costs[*word];
                        touched.push((*word, cost));
                    }
                }
            }
            if more <= 0.0 || dice.uniform() < libm::exp(-more / warmth) {
                now += more;
                for (word, cost) in &touched {
                    costs[*word] = *cost;
                }
                if now < least - SAME {
                    least = now;
                    best.clone_from(&at);
                }
            } else {
                at.swap(a, b);
            }
        }
        best
    }

    /// The best swap, then again, while one helps.
    fn polished(&self, mut at: Vec<usize>) -> Vec<usize> {
        let mut worth = self.worth(&at);
        loop {
            let mut better: Option<(usize, usize, Worth)> = None;
            for a in 0..self.letters {
                for b in a + 1..self.cells {
                    at.swap(a, b);
                    let swapped = self.worth(&at);
                    at.swap(a, b);
                    let best = better.as_ref().map_or(&worth, |(_, _, best)| best);
                    if swapped.order(best).is_lt() {
                        better = Some((a, b, swapped));
                    }
                }
            }
            match better {
                Some((a, b, best)) => {
                    at.swap(a, b);
                    worth = best;
                }
                None => return at,
            }
        }
    }
}

/// Branch and bound: letters get cells one after another, the most used first, and a branch
/// is cut where it cannot end better than the best so far.
///
/// The bound: a word whose jumps so far are within reach may stay so. Where the words left
/// are only as many as the best has, all of them have to stay, so that their longest jump
/// so far and their way, each jump to come as short as the nearest two cells, bound too.
struct Tree<'a> {
    board: &'a Board,
    /// Letters in the order in which they are placed.
    order: Vec<usize>,
    /// For each letter of that order: flights to letters placed before, with their words.
    back: Vec<Vec<(usize, usize)>>,
    nearest: f64,
    /// Jumps to come in each word.
    to_come: Vec<usize>,
    at: Vec<usize>,
    taken: Vec<bool>,
    /// Of each word so far.
    longest: Vec<f64>,
    path: Vec<f64>,
    best: Vec<usize>,
    worth: Worth,
    nodes: usize,
}

impl<'a> Tree<'a> {
    fn new(board: &'a Board, best: Vec<usize>) -> Tree<'a> {
        let mut order: Vec<usize> = (0..board.letters).collect();
        order.sort_by_key(|letter| std::cmp::Reverse(board.words_of[*letter].len()));
        let place = |letter: usize| order.iter().position(|one| *one == letter);
        let back = order.iter().map(|letter| {
            let flights = board.words.iter().enumerate().flat_map(|(number, word)| {
                let own = word.iter().filter_map(move |(a, b)| match *letter {
                    one if one == *a => Some(*b),
                    one if one == *b => Some(*a),
                    _ => None,
                });
                own.map(move |other| (number, other))
            });
            flights
                .filter(|(_, other)| place(*other) < place(*letter))
                .collect()
        });
        let nearest = (0..board.cells)
            .flat_map(|a| (0..a).map(move |b| (a, b)))
            .map(|(a, b)| board.apart(a, b))
            .fold(f64::INFINITY, f64::min);
        Tree {
            back: back.collect(),
            nearest,
            to_come: board.words.iter().map(Vec::len).collect(),
            at: vec![usize::MAX; board.letters],
            taken: vec![false; board.cells],
            longest: vec![0.0; board.words.len()],
            path: vec![0.0; board.words.len()],
            worth: board.worth(&best),
            best,
            nodes: 0,
            order,
            board,
        }
    }

    fn grow(&mut self, depth: usize) {
        let Some(letter) = self.order.get(depth).copied() else {
            let worth = self.board.worth(&self.at);
            if worth.order(&self.worth).is_lt() {
                self.worth = worth;
                self.best.clone_from(&self.at);
            }
            return;
        };
        let kept = (
            self.longest.clone(),
            self.path.clone(),
            self.to_come.clone(),
        );
        for cell in 0..self.board.cells {
            if self.taken[cell] {
                continue;
            }
            self.nodes += 1;
            if self.nodes >= NODES {
                return;
            }
            self.at[letter] = cell;
            for (word, other) in &self.back[depth] {
                let jump = self.board.apart(cell, self.at[*other]);
                self.longest[*word] = self.longest[*word].max(jump);
                self.path[*word] += jump;
                self.to_come[*word] -= 1;
            }
            if self.hopeful() {
                self.taken[cell] = true;
                self.grow(depth + 1);
                self.taken[cell] = false;
            }
            self.longest.clone_from(&kept.0);
            self.path.clone_from(&kept.1);
            self.to_come.clone_from(&kept.2);
        }
    }

    /// Whether what is placed so far may still end better than the best.
    fn hopeful(&self) -> bool {
        let mut bound = Worth {
            words: 0,
            longest: 0.0,
            path: 0.0,
        };
        for (word, longest) in self.longest.iter().enumerate() {
            let within = self.board.within(*longest);
            if within > 0 {
                bound.words += within;
                bound.longest = bound.longest.max(*longest);
                bound.path += self.path[word] + self.nearest * self.to_come[word] as f64;
            }
        }
        bound.words > self.worth.words || bound.order(&self.worth).is_lt()
    }
}

/// PCG-XSH-RR 64/32 (O'Neill 2014; constants from memory): a generator of our own, so that
/// the same seed gives the same letters on every machine.
struct Dice(u64);

impl Dice {
    fn new(seed: u64, start: u64) -> Dice {
        let mut dice = Dice(seed.wrapping_add(start.wrapping_mul(0x9e37_79b9_7f4a_7c15)));
        dice.next();
        dice
    }

    fn next(&mut self) -> u32 {
        let state = self.0;
        self.0 = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        let mixed = (((state >> 18) ^ state) >> 27) as u32;
        mixed.rotate_right((state >> 59) as u32)
    }

    /// 0 to 1, neither.
    fn uniform(&mut self) -> f64 {
        (f64::from(self.next()) + 0.5) / 4_294_967_296.0
    }

    /// 0 to below `count`.
    fn below(&mut self, count: usize) -> usize {
        ((u64::from(self.next()) * count as u64) >> 32) as usize
    }
}
