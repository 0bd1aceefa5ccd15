//! How far two observers, or an observer and the truth, agree.
//!
//! Sources: Cohen 1960 (kappa); Fleiss, Cohen and Everitt 1969 (its variance); Gwet 2008
//! (AC1 and its variance); Fleiss 1971 and Fleiss, Nee and Landis 1979 (several observers, and the
//! variance under chance); Wilson 1927. Formulas from memory, held against other programs
//! in `oracle/` and the numbers of the papers.

/// The 0.975 quantile of the standard normal law: intervals are of 95 %.
pub const Z95: f64 = 1.959_963_984_540_054;
/// Shares and variances below this are nought in floating point.
const NOUGHT: f64 = 1e-12;

/// Yes/no marks of two observers; the second may be the truth.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Table {
    /// Both say yes.
    pub both: u32,
    /// Only the first says yes.
    pub first: u32,
    /// Only the second says yes.
    pub second: u32,
    /// Neither says yes.
    pub neither: u32,
}

impl Table {
    /// Counts pairs of marks: the first observer's, the second's.
    pub fn of(pairs: impl IntoIterator<Item = (bool, bool)>) -> Table {
        let mut table = Table::default();
        for pair in pairs {
            let cell = match pair {
                (true, true) => &mut table.both,
                (true, false) => &mut table.first,
                (false, true) => &mut table.second,
                (false, false) => &mut table.neither,
            };
            *cell = cell.saturating_add(1);
        }
        table
    }

    /// Both tables as one.
    pub fn with(self, other: Table) -> Table {
        Table {
            both: self.both.saturating_add(other.both),
            first: self.first.saturating_add(other.first),
            second: self.second.saturating_add(other.second),
            neither: self.neither.saturating_add(other.neither),
        }
    }

    /// Number of pairs.
    pub fn pairs(&self) -> f64 {
        [self.both, self.first, self.second, self.neither]
            .map(f64::from)
            .iter()
            .sum()
    }

    /// Share of all marks, of both observers, that say yes; 0 of none.
    pub fn yes(&self) -> f64 {
        let ones = 2.0 * f64::from(self.both) + f64::from(self.first) + f64::from(self.second);
        ones / (2.0 * self.pairs()).max(1.0)
    }

    fn rows(&self) -> Vec<Vec<f64>> {
        vec![
            vec![f64::from(self.both), f64::from(self.first)],
            vec![f64::from(self.second), f64::from(self.neither)],
        ]
    }
}

/// A figure with its 95 % interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The figure.
    pub value: f64,
    /// Its standard error; 0 where all agree, and then the interval comes from the agreement's.
    pub se: f64,
    /// Lower end, at least -1.
    pub low: f64,
    /// Upper end, at most 1.
    pub high: f64,
}

/// Wilson's 95 % interval of a share: `met` of `of`.
///
/// # Source
/// Wilson 1927, from memory; checks of programme.md 10.
pub fn wilson(met: f64, of: f64) -> (f64, f64) {
    if of <= 0.0 {
        return (0.0, 1.0);
    }
    let (share, z2) = (met / of, Z95 * Z95);
    let middle = (share + z2 / (2.0 * of)) / (1.0 + z2 / of);
    let half = Z95 * (share * (1.0 - share) / of + z2 / (4.0 * of * of)).sqrt() / (1.0 + z2 / of);
    ((middle - half).max(0.0), (middle + half).min(1.0))
}

/// Share of marks that agree, with Wilson's interval. `None` of no pairs.
pub fn agreement(table: &Table) -> Option<Estimate> {
    let pairs = table.pairs();
    if pairs <= 0.0 {
        return None;
    }
    let met = f64::from(table.both) + f64::from(table.neither);
    let value = met / pairs;
    let (low, high) = wilson(met, pairs);
    Some(Estimate {
        value,
        se: (value * (1.0 - value) / pairs).sqrt(),
        low,
        high,
    })
}

/// Cohen's kappa of yes/no marks. `None` where chance alone would always agree: no pairs, or
/// all marks alike.
pub fn kappa(table: &Table) -> Option<Estimate> {
    kappa_of(&table.rows())
}

/// Cohen's kappa of marks in any number of classes.
///
/// # Shapes
/// - `counts`: square; first observer's class by row, second's by column
/// - returns `None` for what is not square, has no pairs, or only one class
pub fn kappa_of(counts: &[Vec<f64>]) -> Option<Estimate> {
    let classes = counts.len();
    let pairs: f64 = counts.iter().flatten().sum();
    if counts.iter().any(|row| row.len() != classes) || pairs <= 0.0 {
        return None;
    }
    let share = |i: usize, j: usize| counts[i][j] / pairs;
    let rows: Vec<f64> = (0..classes)
        .map(|i| (0..classes).map(|j| share(i, j)).sum())
        .collect();
    let columns: Vec<f64> = (0..classes)
        .map(|j| (0..classes).map(|i| share(i, j)).sum())
        .collect();
    let seen: f64 = (0..classes).map(|i| share(i, i)).sum();
    let chance: f64 = rows.iter().zip(&columns).map(|(r, c)| r * c).sum();
    let room = 1.0 - chance;
    if room <= NOUGHT {
        return None;
    }
    let miss = 1.0 - seen;
    let mut sum = 0.0;
    for i in 0..classes {
        for j in 0..classes {
            let term = if i == j {
                room - (columns[i] + rows[i]) * miss
            } else {
                miss * (columns[i] + rows[j])
            };
            sum += share(i, j) * term * term;
        }
    }
    let last = seen * chance - 2.0 * chance + seen;
    let variance = (sum - last * last) / (pairs * room * room * room * room);
    Some(estimate(
        (seen - chance) / room,
        variance,
        seen,
        chance,
        pairs,
    ))
}

/// Gwet's AC1 of yes/no marks: steadier than kappa where nearly all marks are alike. `None` of
/// no pairs.
pub fn ac1(table: &Table) -> Option<Estimate> {
    let pairs = table.pairs();
    if pairs <= 0.0 {
        return None;
    }
    let rows = table.rows();
    let share = |i: usize, j: usize| rows[i][j] / pairs;
    let seen = share(0, 0) + share(1, 1);
    let mean: Vec<f64> = (0..2)
        .map(|k| ((0..2).map(|l| share(k, l) + share(l, k)).sum::<f64>()) / 2.0)
        .collect();
    // two classes: the divisor q - 1 is 1
    let chance: f64 = mean.iter().map(|p| p * (1.0 - p)).sum();
    let room = 1.0 - chance;
    let value = (seen - chance) / room;
    let own: f64 = (0..2).map(|k| share(k, k) * (1.0 - mean[k])).sum();
    let mut cross = 0.0;
    for k in 0..2 {
        for l in 0..2 {
            let term = 1.0 - (mean[k] + mean[l]) / 2.0;
            cross += share(k, l) * term * term;
        }
    }
    let left = 1.0 - value;
    let variance = (seen * (1.0 - seen) - 4.0 * left * (own - seen * chance)
        + 4.0 * left * left * (cross - chance * chance))
        / (pairs * room * room);
    Some(estimate(value, variance, seen, chance, pairs))
}

/// With its interval: 1.96 standard errors to either side. Where the variance is nought (all
/// agree) that would claim certainty from a few marks, so the lower end is then what the
/// lower end of the agreement's interval would give.
fn estimate(value: f64, variance: f64, seen: f64, chance: f64, pairs: f64) -> Estimate {
    let se = if variance > NOUGHT {
        variance.sqrt()
    } else {
        0.0
    };
    let (low, high) = if se > 0.0 {
        (value - Z95 * se, value + Z95 * se)
    } else {
        let (low, high) = wilson(seen * pairs, pairs);
        (
            (low - chance) / (1.0 - chance),
            (high - chance) / (1.0 - chance),
        )
    };
    Estimate {
        value,
        se,
        low: low.min(value).max(-1.0),
        high: high.max(value).min(1.0),
    }
}

/// Pairs of marks from which on kappa's 95 % interval reaches no further than `half` to
/// either side, were kappa `kappa` and both observers to say yes with share `yes`.
/// `None` where a figure is out of range: `half` above 0, `yes` inside 0..1, `kappa` such
/// that no share is negative.
///
/// # Source
/// The variance of Fleiss, Cohen and Everitt 1969; checks of programme.md 3.1.
pub fn pairs_needed(kappa: f64, yes: f64, half: f64) -> Option<u32> {
    let no = 1.0 - yes;
    let apart = yes * no * (1.0 - kappa);
    let shares = vec![
        vec![yes * yes + kappa * yes * no, apart],
        vec![apart, no * no + kappa * yes * no],
    ];
    let sound = half > 0.0 && yes > 0.0 && yes < 1.0;
    if !sound || shares.iter().flatten().any(|share| *share < 0.0) {
        return None;
    }
    let one = kappa_of(&shares)?.se;
    let wide = Z95 * one / half;
    // a whole number that floating point has pushed up stays what it is
    Some((wide * wide - 1e-9).ceil().clamp(0.0, f64::from(u32::MAX)) as u32)
}

/// What a kappa is called (Fleiss's bands).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Band {
    /// Poor.
    Poor,
    /// Fair to good.
    Good,
    /// Excellent.
    Excellent,
}

impl Band {
    /// The word of sentences.
    pub fn word(self) -> &'static str {
        match self {
            Band::Poor => "poor",
            Band::Good => "good",
            Band::Excellent => "excellent",
        }
    }
}

/// The band of a kappa; `bounds` as the ledger's `course.bands`.
pub fn band(kappa: f64, bounds: &[f64]) -> Band {
    let bound = |at: usize| bounds.get(at).copied().unwrap_or(f64::INFINITY);
    if kappa < bound(0) {
        Band::Poor
    } else if kappa <= bound(1) {
        Band::Good
    } else {
        Band::Excellent
    }
}

/// Fleiss' kappa of several observers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fleiss {
    /// Kappa.
    pub value: f64,
    /// Its standard error were all marks by chance (Fleiss, Nee and Landis 1979).
    pub se_chance: f64,
    /// How many of them it lies above 0.
    pub z: f64,
}

/// Fleiss' kappa.
///
/// # Shapes
/// - `counts`: a row a subject, how many observers chose each class; every row adds up to the
///   same number of observers, two or more
/// - returns `None` for other shapes, and where only one class was chosen
pub fn fleiss(counts: &[Vec<u32>]) -> Option<Fleiss> {
    let first = counts.first()?;
    let observers = f64::from(first.iter().sum::<u32>());
    let even = counts
        .iter()
        .all(|row| row.len() == first.len() && f64::from(row.iter().sum::<u32>()) == observers);
    if !even || observers < 2.0 {
        return None;
    }
    let subjects = counts.len() as f64;
    let classes: Vec<f64> = (0..first.len())
        .map(|k| counts.iter().map(|row| f64::from(row[k])).sum::<f64>() / (subjects * observers))
        .collect();
    let pairs = observers * (observers - 1.0);
    let same = |row: &Vec<u32>| {
        row.iter()
            .map(|n| f64::from(*n) * (f64::from(*n) - 1.0))
            .sum::<f64>()
    };
    let seen = counts.iter().map(same).sum::<f64>() / (subjects * pairs);
    let chance: f64 = classes.iter().map(|p| p * p).sum();
    let room = 1.0 - chance;
    if room <= NOUGHT {
        return None;
    }
    let value = (seen - chance) / room;
    let skew: f64 = classes
        .iter()
        .map(|p| p * (1.0 - p) * (1.0 - 2.0 * p))
        .sum();
    let variance = 2.0 * (room * room - skew) / (subjects * pairs * room * room);
    let se_chance = variance.max(0.0).sqrt();
    Some(Fleiss {
        value,
        se_chance,
        z: value / se_chance,
    })
}
