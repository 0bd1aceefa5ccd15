//! The cheapest cans that hold what is needed.
//!
//! # Method
//! Sizes and prices become whole numbers (1e-6 L, 1e-6 of the currency), so that equal means
//! equal. What is still needed is taken from the greatest amount down; from each, one can of
//! each size leads on to a smaller one, and only the best way to each amount is kept
//! (dynamic programme over the amounts that sums of cans can leave, which are few). An amount
//! is dropped when its price and the least that the rest can cost are above a price already
//! found. Best is: least price, then least left over, then fewest cans; then most of the
//! greater cans, so that the answer is one.

use std::collections::BTreeMap;

use crate::millionth;

/// A can as it is sold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Size {
    /// Litres.
    pub litres: f64,
    /// In the project's currency, if anyone named it.
    pub price: Option<f64>,
}

/// So many cans of a size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cans {
    /// The can.
    pub size: Size,
    /// How many.
    pub count: u32,
}

/// Cans that hold what is needed.
#[derive(Clone, Debug, PartialEq)]
pub struct Cover {
    /// Smallest size first; only what is bought.
    pub cans: Vec<Cans>,
    /// Litres bought.
    pub litres: f64,
    /// What they cost; `None` where no price was named.
    pub cost: Option<f64>,
    /// Whether nothing better exists. Only amounts far beyond a yard's come without proof.
    pub proven: bool,
}

/// Amounts looked at before the search stops: every need of a yard ends long before.
const AMOUNTS: usize = 400_000;

/// Litres above which no need is taken, and the price of a can above which it is no price:
/// slips of units. With the smallest can, no sum of prices leaves 64 bits.
const MOST_LITRES: f64 = 10_000.0;
const MOST_PRICE: f64 = 1e6;
const LEAST_CAN: f64 = 0.01;

/// Millionths; `None` outside what it can be.
fn whole(value: f64, least: f64, most: f64) -> Option<i64> {
    (least..=most)
        .contains(&value)
        .then_some((value * 1e6).round() as i64)
}

/// The best way found to an amount still needed.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Way {
    price: i64,
    cans: u32,
    /// The size that was taken last; greater sizes compare first.
    by: std::cmp::Reverse<usize>,
}

/// The cheapest cans that hold `need` litres: least price, then least left over, then fewest
/// cans. Sizes without a price count only where none has one; then the least left over wins
/// and the cost stays unknown.
///
/// `None` where no can holds 0.01 L or more, or `need` is not between 0 and 10 000 L.
pub fn cheapest(need: f64, sizes: &[Size]) -> Option<Cover> {
    let need = whole(need, 0.0, MOST_LITRES)?;
    let priced = sizes.iter().any(|size| size.price.is_some());
    let mut shelf: Vec<(i64, i64, Size)> = sizes
        .iter()
        .filter(|size| size.price.is_some() == priced)
        .filter_map(|size| {
            let litres = whole(size.litres, LEAST_CAN, MOST_LITRES)?;
            let price = match size.price {
                Some(price) => whole(price, 0.0, MOST_PRICE)?,
                None => litres,
            };
            Some((litres, price, *size))
        })
        .collect();
    shelf.sort_by_key(|(litres, price, _)| (*litres, *price));
    shelf.dedup_by_key(|(litres, _, _)| *litres);
    if shelf.is_empty() {
        return None;
    }
    let search = Search::run(need, &shelf);
    let cans: Vec<Cans> = shelf
        .iter()
        .zip(&search.counts)
        .filter(|(_, count)| **count > 0)
        .map(|((_, _, size), count)| Cans {
            size: *size,
            count: *count,
        })
        .collect();
    let sum = |of: &dyn Fn(&Size) -> f64| {
        millionth(
            cans.iter()
                .map(|cans| of(&cans.size) * f64::from(cans.count))
                .sum(),
        )
    };
    Some(Cover {
        litres: sum(&|size| size.litres),
        cost: priced.then(|| sum(&|size| size.price.unwrap_or(0.0))),
        proven: search.proven,
        cans,
    })
}

/// What the search found.
struct Search {
    counts: Vec<u32>,
    proven: bool,
}

impl Search {
    fn run(need: i64, shelf: &[(i64, i64, Size)]) -> Search {
        let mut best = only_one_size(need, shelf);
        if need == 0 {
            return Search {
                counts: vec![0; shelf.len()],
                proven: true,
            };
        }
        let mut ways: BTreeMap<i64, Way> = BTreeMap::new();
        let start = Way {
            price: 0,
            cans: 0,
            by: std::cmp::Reverse(0),
        };
        ways.insert(need, start);
        let mut here = Some(need);
        let mut seen = 0;
        let mut end = None;
        while let Some(rest) = here.filter(|rest| *rest > 0 && seen < AMOUNTS) {
            seen += 1;
            let way = ways.get(&rest).copied().unwrap_or(start);
            for (at, &(litres, price, _)) in shelf.iter().enumerate() {
                let left = rest - litres;
                let next = Way {
                    price: way.price + price,
                    cans: way.cans + 1,
                    by: std::cmp::Reverse(at),
                };
                if next.price + least(left, shelf) > best.0 {
                    continue;
                }
                let better = ways.get(&left).is_none_or(|known| next < *known);
                if better {
                    ways.insert(left, next);
                }
                let reached = (next.price, -left, next.cans);
                if left <= 0 && better && (reached < best || (reached == best && end.is_none())) {
                    best = reached;
                    end = Some(left);
                }
            }
            here = ways.range(..rest).next_back().map(|(rest, _)| *rest);
        }
        let proven = here.is_none_or(|rest| rest <= 0);
        match end {
            Some(end) => Search {
                counts: taken(need, end, &ways, shelf),
                proven,
            },
            None => Search {
                counts: single(need, shelf, best),
                proven,
            },
        }
    }
}

/// The least that an amount can cost, at the best price a litre: no rounding up to cans.
fn least(rest: i64, shelf: &[(i64, i64, Size)]) -> i64 {
    if rest <= 0 {
        return 0;
    }
    shelf
        .iter()
        .map(|&(litres, price, _)| {
            (i128::from(rest) * i128::from(price) / i128::from(litres)) as i64
        })
        .min()
        .unwrap_or(0)
}

/// The best cover by cans of one size: a price to begin with.
fn only_one_size(need: i64, shelf: &[(i64, i64, Size)]) -> (i64, i64, u32) {
    shelf
        .iter()
        .map(|&(litres, price, _)| {
            let count = (need + litres - 1) / litres;
            (count * price, count * litres - need, count as u32)
        })
        .min()
        .unwrap_or((0, 0, 0))
}

/// The counts of the cover by one size that costs `best`.
fn single(need: i64, shelf: &[(i64, i64, Size)], best: (i64, i64, u32)) -> Vec<u32> {
    let mut counts = vec![0; shelf.len()];
    for (at, &(litres, price, _)) in shelf.iter().enumerate().rev() {
        let count = (need + litres - 1) / litres;
        if (count * price, count * litres - need, count as u32) == best {
            counts[at] = count as u32;
            break;
        }
    }
    counts
}

/// Which cans were taken on the way from `need` down to `end`.
fn taken(need: i64, end: i64, ways: &BTreeMap<i64, Way>, shelf: &[(i64, i64, Size)]) -> Vec<u32> {
    let mut counts = vec![0; shelf.len()];
    let mut rest = end;
    while rest < need {
        let Some(way) = ways.get(&rest) else { break };
        counts[way.by.0] += 1;
        rest += shelf[way.by.0].0;
    }
    counts
}
