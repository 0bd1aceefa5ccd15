//! Tiling of a drawing for pages at 1:1.

use ledger::Ledger;

use crate::figures::{A4, LETTER, OVERLAP};

/// Paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Page {
    A4,
    Letter,
}

/// Pages of a drawing, metres.
#[derive(Clone, Debug, PartialEq)]
pub struct Tiling {
    /// Whether pages lie on their long side.
    pub landscape: bool,
    /// What is printed of a page, along x and y.
    pub reach: [f64; 2],
    /// What two pages share.
    pub overlap: f64,
    /// Pages along x.
    pub columns: usize,
    /// Pages along y.
    pub rows: usize,
    /// From the upper left on, row by row.
    pub pages: Vec<Tile>,
}

/// One page.
#[derive(Clone, Debug, PartialEq)]
pub struct Tile {
    /// Row and column, as `B3`.
    pub label: String,
    /// What of the drawing it shows: least x and y, greatest x and y; it may reach past the
    /// drawing on the right and below.
    pub window: [f64; 4],
    /// The label of the page to the left.
    pub left: Option<String>,
    /// The label of the page to the right.
    pub right: Option<String>,
    /// The label of the page above.
    pub above: Option<String>,
    /// The label of the page below.
    pub below: Option<String>,
}

/// Pages for a drawing of a size, metres: upright or lying, whichever takes fewer; upright
/// where both take as many. Pages along a direction: max(1, ceil((S - o) / (p - o))) for a
/// size S, a reach p and an overlap o.
pub fn tiles(size: [f64; 2], page: Page, ledger: &Ledger) -> Tiling {
    let reach = match ledger.list(match page {
        Page::A4 => A4,
        Page::Letter => LETTER,
    }) {
        [x, y] => [*x, *y],
        _ => [f64::NAN; 2],
    };
    let overlap = ledger.number(OVERLAP);
    let upright = tiling(size, reach, overlap, false);
    let lying = tiling(size, [reach[1], reach[0]], overlap, true);
    if lying.columns * lying.rows < upright.columns * upright.rows {
        lying
    } else {
        upright
    }
}

/// Pages of one reach.
pub(crate) fn tiling(size: [f64; 2], reach: [f64; 2], overlap: f64, landscape: bool) -> Tiling {
    let count = |axis: usize| {
        /// Of a page: a drawing that just fits takes no more for its rounding.
        const SLACK: f64 = 1e-9;
        let pages = (size[axis] - overlap) / (reach[axis] - overlap) - SLACK;
        pages.ceil().max(1.0) as usize
    };
    let (columns, rows) = (count(0), count(1));
    let name = |row: usize, column: usize| {
        (row < rows && column < columns).then(|| format!("{}{}", letters(row), column + 1))
    };
    let mut pages = Vec::new();
    for row in 0..rows {
        for column in 0..columns {
            let x = column as f64 * (reach[0] - overlap);
            let y = size[1] - row as f64 * (reach[1] - overlap);
            let fine = |value: f64| (value * 1e6).round() / 1e6 + 0.0;
            pages.push(Tile {
                label: name(row, column).unwrap_or_default(),
                window: [x, y - reach[1], x + reach[0], y].map(fine),
                left: column.checked_sub(1).and_then(|left| name(row, left)),
                right: name(row, column + 1),
                above: row.checked_sub(1).and_then(|above| name(above, column)),
                below: name(row + 1, column),
            });
        }
    }
    Tiling {
        landscape,
        reach,
        overlap,
        columns,
        rows,
        pages,
    }
}

/// A, B ... Z, AA, AB.
fn letters(row: usize) -> String {
    let letter = char::from(b'A' + (row % 26) as u8);
    match row / 26 {
        0 => letter.to_string(),
        more => format!("{}{letter}", letters(more - 1)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// building.md, section 5 (derived there): 1200 x 800 mm. A4 upright 7 x 3, lying 5 x 5;
    /// letter upright 7 x 4, lying 5 x 5.
    #[test]
    fn the_worked_counts() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let size = [1.2, 0.8];
        for (page, upright, lying) in [(Page::A4, [7, 3], [5, 5]), (Page::Letter, [7, 4], [5, 5])] {
            let best = tiles(size, page, &ledger);
            let reach = match page {
                Page::A4 => [0.190, 0.277],
                Page::Letter => [0.1959, 0.2594],
            };
            let one = tiling(size, reach, 0.010, false);
            assert_eq!([one.columns, one.rows], upright, "{page:?} upright");
            let other = tiling(size, [reach[1], reach[0]], 0.010, true);
            assert_eq!([other.columns, other.rows], lying, "{page:?} lying");
            assert_eq!(best.landscape, page == Page::Letter);
            assert_eq!(best.pages.len(), best.columns * best.rows);
        }
    }

    /// Every place of the drawing is on some page, and neighbours share the overlap.
    #[test]
    fn pages_cover_the_drawing_and_name_their_neighbours() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        for size in [
            [0.05, 0.05],
            [0.19, 0.277],
            [0.1901, 0.277],
            [1.2, 0.8],
            [2.4384, 1.2192],
        ] {
            for page in [Page::A4, Page::Letter] {
                let tiling = tiles(size, page, &ledger);
                let find = |label: &Option<String>| {
                    let label = label.as_ref()?;
                    tiling.pages.iter().find(|page| page.label == *label)
                };
                let last = tiling.pages.last().expect("one page at least");
                assert!(
                    last.window[2] >= size[0] - 1e-6 && last.window[1] <= 1e-6,
                    "{size:?}"
                );
                for one in &tiling.pages {
                    if let Some(right) = find(&one.right) {
                        let shared = one.window[2] - right.window[0];
                        assert!((shared - tiling.overlap).abs() < 2e-6, "{shared}");
                        assert_eq!(right.left.as_ref(), Some(&one.label));
                    } else {
                        assert!(one.window[2] >= size[0] - 1e-6);
                    }
                    if let Some(below) = find(&one.below) {
                        assert_eq!(below.above.as_ref(), Some(&one.label));
                        let shared = below.window[3] - one.window[1];
                        assert!((shared - tiling.overlap).abs() < 2e-6, "{shared}");
                    }
                }
            }
        }
        assert_eq!(tiles([0.19, 0.277], Page::A4, &ledger).pages.len(), 1);
        assert_eq!(tiles([0.1901, 0.277], Page::A4, &ledger).pages.len(), 2);
    }

    #[test]
    fn rows_past_z_go_on() {
        assert_eq!(
            ["A", "Z", "AA", "AB", "BA"].map(str::to_owned),
            [0, 25, 26, 27, 52].map(letters)
        );
    }
}
