//! Symmetric systems that may leave some unknowns free.
//!
//! A skyline factorisation in plain loops: without the fused or reordered sums of a tuned
//! library, so that every machine gets the same bits. An unknown that the rows before it
//! already explain (its pivot vanishes) is held where it is; the vectors along which the
//! system is blind are then read off.

/// Lower half of a symmetric matrix, each row from its first filled column to the diagonal.
#[derive(Clone, Debug)]
pub(crate) struct Skyline {
    first: Vec<usize>,
    rows: Vec<Vec<f64>>,
}

impl Skyline {
    /// Zeros in the shape given by each row's first filled column.
    pub(crate) fn zeros(first: Vec<usize>) -> Skyline {
        let rows = first
            .iter()
            .enumerate()
            .map(|(row, &first)| vec![0.0; row - first + 1])
            .collect();
        Skyline { first, rows }
    }

    pub(crate) fn size(&self) -> usize {
        self.rows.len()
    }

    /// Adds at (`row`, `column`), which must lie on or under the diagonal, inside the shape.
    pub(crate) fn add(&mut self, row: usize, column: usize, value: f64) {
        self.rows[row][column - self.first[row]] += value;
    }

    pub(crate) fn diagonal(&self, row: usize) -> f64 {
        self.rows[row][row - self.first[row]]
    }

    /// Element of the symmetric matrix.
    fn get(&self, a: usize, b: usize) -> f64 {
        let (row, column) = (a.max(b), a.min(b));
        if column < self.first[row] {
            0.0
        } else {
            self.rows[row][column - self.first[row]]
        }
    }

    /// Factors it; `vanishing` is the share of its diagonal that a pivot must keep.
    pub(crate) fn factor(&self, vanishing: f64) -> Factor {
        let n = self.size();
        let mut l = self.clone();
        let mut held = vec![false; n];
        for i in 0..n {
            let (above, rest) = l.rows.split_at_mut(i);
            let row = &mut rest[0];
            let start = self.first[i];
            for j in start..i {
                if held[j] {
                    row[j - start] = 0.0;
                    continue;
                }
                let from = start.max(self.first[j]);
                let other = &above[j][from - self.first[j]..];
                let sum = inner(&row[from - start..j - start], &other[..j - from]);
                row[j - start] = (row[j - start] - sum) / other[j - from];
            }
            let (left, pivot) = row.split_at_mut(i - start);
            let whole = pivot[0];
            let kept = whole - inner(left, left);
            if kept > vanishing * whole {
                pivot[0] = kept.sqrt();
            } else {
                held[i] = true;
                left.fill(0.0);
                pivot[0] = 1.0;
            }
        }
        Factor { l, held }
    }
}

/// Sum of products in eight lanes: the same order everywhere.
fn inner(a: &[f64], b: &[f64]) -> f64 {
    let mut lanes = [0.0; 8];
    let (a8, b8) = (a.chunks_exact(8), b.chunks_exact(8));
    let tail: f64 = a8
        .remainder()
        .iter()
        .zip(b8.remainder())
        .map(|(a, b)| a * b)
        .sum();
    for (a, b) in a8.zip(b8) {
        for lane in 0..8 {
            lanes[lane] += a[lane] * b[lane];
        }
    }
    lanes.iter().sum::<f64>() + tail
}

/// The factor, and which unknowns are held.
pub(crate) struct Factor {
    l: Skyline,
    /// Unknowns that the system does not fix.
    pub(crate) held: Vec<bool>,
}

impl Factor {
    /// Solves in place; held unknowns come out as 0.
    pub(crate) fn solve(&self, b: &mut [f64]) {
        self.solve_from(b, 0);
    }

    /// The same where `b` is known to be 0 before `start`.
    fn solve_from(&self, b: &mut [f64], start: usize) {
        let n = self.l.size();
        for i in start..n {
            if self.held[i] {
                b[i] = 0.0;
                continue;
            }
            let from = self.l.first[i].max(start);
            let row = &self.l.rows[i][from - self.l.first[i]..];
            b[i] = (b[i] - inner(&row[..i - from], &b[from..i])) / row[i - from];
        }
        for i in (0..n).rev() {
            if self.held[i] {
                continue;
            }
            let (first, row) = (self.l.first[i], &self.l.rows[i]);
            b[i] /= row[i - first];
            let x = b[i];
            for (b, l) in b[first..i].iter_mut().zip(row) {
                *b -= l * x;
            }
        }
    }

    /// The inverse over the unknowns that are not held, zeros elsewhere; row by row.
    pub(crate) fn inverse(&self) -> Vec<f64> {
        let n = self.l.size();
        let mut inverse = vec![0.0; n * n];
        for (i, row) in inverse.chunks_exact_mut(n.max(1)).enumerate() {
            if !self.held[i] {
                row[i] = 1.0;
                self.solve_from(row, i);
            }
        }
        inverse
    }

    /// One vector for each held unknown, 1 there and 0 at the other held ones, along
    /// which `matrix` (the one that was factored) is blind.
    pub(crate) fn blind(&self, matrix: &Skyline) -> Vec<Vec<f64>> {
        let n = self.l.size();
        (0..n)
            .filter(|&h| self.held[h])
            .map(|h| {
                let mut x: Vec<f64> = (0..n).map(|i| -matrix.get(i, h)).collect();
                self.solve(&mut x);
                x[h] = 1.0;
                x
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn matrix(rows: &[&[f64]]) -> Skyline {
        let mut full = Skyline::zeros(vec![0; rows.len()]);
        for (i, row) in rows.iter().enumerate() {
            for (j, &value) in row.iter().enumerate() {
                full.add(i, j, value);
            }
        }
        full
    }

    #[test]
    fn a_regular_system_is_solved_and_inverted() {
        let m = matrix(&[&[4.0], &[2.0, 5.0], &[0.5, 1.0, 3.0]]);
        let factor = m.factor(1e-12);
        let inverse = factor.inverse();
        for i in 0..3 {
            for j in 0..3 {
                let product: f64 = (0..3).map(|k| m.get(i, k) * inverse[3 * k + j]).sum();
                assert!((product - f64::from(i == j)).abs() < 1e-15);
            }
        }
    }

    #[test]
    fn a_blind_direction_is_found() {
        // Two springs in a row, free in space: blind along (1, 1, 1).
        let m = matrix(&[&[1.0], &[-1.0, 2.0], &[0.0, -1.0, 1.0]]);
        let factor = m.factor(1e-12);
        assert_eq!(factor.held, [false, false, true]);
        let blind = factor.blind(&m);
        assert_eq!(blind.len(), 1);
        assert!(blind[0].iter().all(|x| (x - 1.0).abs() < 1e-15));
    }
}
