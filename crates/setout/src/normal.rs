//! Normal errors that hang together: what leaving some out explains.

/// Root of a symmetric matrix: lower triangle, row by row. `None` where it is not positive
/// definite.
fn root(matrix: &[Vec<f64>]) -> Option<Vec<Vec<f64>>> {
    let mut lower: Vec<Vec<f64>> = Vec::with_capacity(matrix.len());
    for (i, row) in matrix.iter().enumerate() {
        let mut own = vec![0.0; i + 1];
        for j in 0..=i {
            let above = if j == i { None } else { lower.get(j) };
            let known: f64 = match above {
                Some(above) => above.iter().zip(&own).take(j).map(|(a, b)| a * b).sum(),
                None => own.iter().take(j).map(|a| a * a).sum(),
            };
            let left = row[j] - known;
            own[j] = match above {
                Some(above) => left / above[j],
                None if left > 0.0 => left.sqrt(),
                None => return None,
            };
        }
        lower.push(own);
    }
    Some(lower)
}

/// x with L Lᵀ x = b.
fn solve(lower: &[Vec<f64>], b: &[f64]) -> Vec<f64> {
    let mut x = b.to_vec();
    for (i, row) in lower.iter().enumerate() {
        let known: f64 = row.iter().zip(&x).take(i).map(|(a, b)| a * b).sum();
        x[i] = (x[i] - known) / row[i];
    }
    for (i, row) in lower.iter().enumerate().rev() {
        x[i] /= row[i];
        let found = x[i];
        for (left, share) in x.iter_mut().zip(row).take(i) {
            *left -= share * found;
        }
    }
    x
}

/// Weight of a set of errors against each other: the inverse of their covariance.
pub(crate) struct Weight {
    /// The inverse.
    inverse: Vec<Vec<f64>>,
    /// The inverse times the errors.
    pull: Vec<f64>,
}

impl Weight {
    /// `None` where the covariance is not positive definite.
    pub(crate) fn of(covariance: &[Vec<f64>], errors: &[f64]) -> Option<Weight> {
        let lower = root(covariance)?;
        let inverse = (0..errors.len())
            .map(|at| {
                let mut unit = vec![0.0; errors.len()];
                unit[at] = 1.0;
                solve(&lower, &unit)
            })
            .collect();
        Some(Weight {
            inverse,
            pull: solve(&lower, errors),
        })
    }

    /// By how much the weighted sum of squares falls when these errors are left out.
    pub(crate) fn explained(&self, out: &[usize]) -> f64 {
        let block: Vec<Vec<f64>> = out
            .iter()
            .map(|&i| out.iter().map(|&j| self.inverse[i][j]).collect())
            .collect();
        let pull: Vec<f64> = out.iter().map(|&i| self.pull[i]).collect();
        root(&block).map_or(0.0, |lower| {
            solve(&lower, &pull)
                .iter()
                .zip(&pull)
                .map(|(x, p)| x * p)
                .sum()
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Leaving everything out explains the whole sum; one of two errors with correlation ½,
    /// by hand: eᵀ C⁻¹ e = (4/3)(1 + 4 - 2) = 4; what the other leaves is 2² = 4 or 1.
    #[test]
    fn what_is_left_out_explains_what_the_rest_cannot() {
        let weight = Weight::of(&[vec![1.0, 0.5], vec![0.5, 1.0]], &[1.0, 2.0]).expect("definite");
        for (out, wanted) in [(vec![0, 1], 4.0), (vec![0], 0.0), (vec![1], 3.0)] {
            let ours = weight.explained(&out);
            assert!(
                (ours - wanted).abs() < 1e-12,
                "{out:?}: {ours}, not {wanted}"
            );
        }
        assert!(Weight::of(&[vec![1.0, 2.0], vec![2.0, 1.0]], &[0.0, 0.0]).is_none());
    }
}
