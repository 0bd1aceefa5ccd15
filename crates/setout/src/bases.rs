//! The survey points that tapes may be hooked to.

use geo::Coord;
use survey::result::Survey;

/// Survey points with their covariance.
#[derive(Clone, Debug, PartialEq)]
pub struct Bases {
    /// As the user spells them, in the order of the survey; none is loose.
    pub names: Vec<String>,
    /// Metres.
    pub at: Vec<Coord<f64>>,
    /// Row by row, x then y of each, m².
    covariance: Vec<f64>,
}

impl Bases {
    /// All but the loose points. A point that the covariance leaves out is exact.
    pub(crate) fn of(survey: &Survey) -> Bases {
        let sound = |point: &survey::result::Point| {
            !point.loose && point.x.is_finite() && point.y.is_finite()
        };
        let kept: Vec<usize> = (0..survey.points.len())
            .filter(|&id| survey.points.get(id).is_some_and(sound))
            .collect();
        let order = &survey.covariance.order;
        let wide = 2 * order.len();
        let places: Vec<Option<usize>> = kept
            .iter()
            .map(|id| order.iter().position(|other| other == id))
            .collect();
        let value = |i: usize, j: usize| -> f64 {
            match (places.get(i / 2), places.get(j / 2)) {
                (Some(Some(row)), Some(Some(column))) => {
                    let at = (2 * row + i % 2) * wide + 2 * column + j % 2;
                    survey.covariance.values.get(at).copied().unwrap_or(0.0)
                }
                _ => 0.0,
            }
        };
        let size = 2 * kept.len();
        Bases {
            names: kept
                .iter()
                .map(|&id| survey.points[id].name.clone())
                .collect(),
            at: kept
                .iter()
                .map(|&id| Coord {
                    x: survey.points[id].x,
                    y: survey.points[id].y,
                })
                .collect(),
            covariance: (0..size * size)
                .map(|at| value(at / size, at % size))
                .collect(),
        }
    }

    /// How many.
    pub fn len(&self) -> usize {
        self.at.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.at.is_empty()
    }

    /// Covariance of two of them, m².
    pub(crate) fn block(&self, i: usize, j: usize) -> [[f64; 2]; 2] {
        let size = 2 * self.len();
        let value = |row: usize, column: usize| self.covariance[row * size + column];
        [
            [value(2 * i, 2 * j), value(2 * i, 2 * j + 1)],
            [value(2 * i + 1, 2 * j), value(2 * i + 1, 2 * j + 1)],
        ]
    }
}
