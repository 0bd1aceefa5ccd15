//! Who a marking suits: counts of children by age, with how unsure they are.
//!
//! A child is well pitched on a marking with the share that footfall gives. The count at an
//! age is then a sum of independent yes-or-no draws, one a child, each with a chance of its
//! own: a Poisson-binomial. Its distribution is built child by child, exactly; the bracket
//! runs from its 5 % to its 95 % quantile.

use std::collections::BTreeMap;

use note::msg;
use plan::{Child, Footfall};

use crate::drawing::hatch::{Hatch, hatch};
use crate::drawing::scene::{INK, Path, Rect, Scene, Spot, Stroke, Text, WHITE, pen};
use crate::face::{self, Weight};
use crate::sheet::Sheet;

/// Shares of the bracket's ends.
const BRACKET: [f64; 2] = [0.05, 0.95];

/// Counts of the children of one age.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Count {
    /// Whole years.
    pub age: u32,
    /// Children.
    pub of: u32,
    /// Expected to be well pitched, too easily and out of reach.
    pub expected: [f64; 3],
    /// The well pitched, at least and at most, 90 times in 100.
    pub bracket: [u32; 2],
}

impl Count {
    /// Whole children who add up to all: each share rounded down, what is left to the
    /// largest remainders.
    pub fn whole(&self) -> [u32; 3] {
        let mut whole = self.expected.map(|share| share.max(0.0).floor() as u32);
        while whole.iter().sum::<u32>() < self.of {
            let left = |at: usize| self.expected[at] - f64::from(whole[at]);
            let most = (0..3).fold(0, |best, at| {
                if left(at) > left(best) + 1e-9 {
                    at
                } else {
                    best
                }
            });
            whole[most] += 1;
        }
        whole
    }
}

/// One way to use a marking, and whom it suits.
#[derive(Clone, Debug, PartialEq)]
pub struct Suits {
    /// The gait's word.
    pub gait: String,
    /// By age, the youngest first.
    pub counts: Vec<Count>,
}

/// Chances of every count of successes, from none to all, of independent draws.
pub fn poisson_binomial(chances: impl IntoIterator<Item = f64>) -> Vec<f64> {
    let mut mass = vec![1.0];
    for chance in chances {
        let chance = chance.clamp(0.0, 1.0);
        mass.push(0.0);
        for count in (0..mass.len()).rev() {
            let before = if count > 0 { mass[count - 1] } else { 0.0 };
            mass[count] = mass[count] * (1.0 - chance) + before * chance;
        }
    }
    mass
}

/// The least count at which the chances so far reach a share.
pub fn quantile(mass: &[f64], share: f64) -> u32 {
    /// Below what a sum of chances loses to rounding.
    const SAME: f64 = 1e-12;
    let mut sum = 0.0;
    let at = mass.iter().position(|chance| {
        sum += chance;
        sum + SAME >= share
    });
    at.unwrap_or(mass.len().saturating_sub(1)) as u32
}

/// Whole years.
pub fn years(child: &Child) -> u32 {
    child.age.max(0.0).floor() as u32
}

/// Whom a marking suits, by gait in the record's order; a gait's two feet are one, by their
/// mean. A child without a row has no route: the marking is out of its reach.
pub fn suits(marking: &str, footfall: &[Footfall], children: &[Child]) -> Vec<Suits> {
    let rows: Vec<&Footfall> = footfall
        .iter()
        .filter(|row| row.marking == marking)
        .collect();
    let mut gaits: Vec<&str> = Vec::new();
    for row in &rows {
        if !gaits.contains(&row.gait.as_str()) {
            gaits.push(&row.gait);
        }
    }
    gaits
        .into_iter()
        .map(|gait| {
            let mut feet: Vec<&Option<String>> = rows
                .iter()
                .filter(|row| row.gait == gait)
                .map(|row| &row.foot)
                .collect();
            feet.sort_unstable();
            feet.dedup();
            let shares = |child: &Child| {
                let mut sum = [0.0, 0.0, 0.0];
                for foot in &feet {
                    let row = rows.iter().find(|row| {
                        row.gait == gait && row.foot == **foot && row.child == child.id
                    });
                    let one = row.map_or([0.0, 0.0, 1.0], |row| [row.well, row.easy, row.hard]);
                    sum.iter_mut()
                        .zip(one)
                        .for_each(|(sum, one)| *sum += one / feet.len() as f64);
                }
                sum
            };
            let mut ages: BTreeMap<u32, Vec<(u32, [f64; 3])>> = BTreeMap::new();
            for child in children {
                ages.entry(years(child))
                    .or_default()
                    .push((child.count, shares(child)));
            }
            Suits {
                gait: gait.to_owned(),
                counts: ages
                    .into_iter()
                    .map(|(age, heads)| count(age, &heads))
                    .collect(),
            }
        })
        .collect()
}

fn count(age: u32, heads: &[(u32, [f64; 3])]) -> Count {
    let mut expected = [0.0; 3];
    for (times, shares) in heads {
        expected
            .iter_mut()
            .zip(shares)
            .for_each(|(sum, share)| *sum += f64::from(*times) * share);
    }
    let draws = heads
        .iter()
        .flat_map(|(times, shares)| std::iter::repeat_n(shares[0], *times as usize));
    let mass = poisson_binomial(draws);
    Count {
        age,
        of: heads.iter().map(|(times, _)| times).sum(),
        expected,
        bracket: BRACKET.map(|share| quantile(&mass, share)),
    }
}

/// Draws one column an age for every gait, with the counts under the columns; at most so many mm
/// wide. Says in a scene what [`told`] says in words.
pub fn chart(sheet: &Sheet, all: &[Suits], wide: f64) -> Scene {
    let caps = sheet.caps();
    let grow = caps.note / 1.8;
    let names = [
        "page-suits-well",
        "page-suits-bracket",
        "page-suits-easy",
        "page-suits-hard",
    ]
    .map(|key| sheet.word(key));
    let label = names
        .iter()
        .map(|name| face::width(name, caps.note, Weight::Regular))
        .fold(0.0, f64::max)
        + 12.0;
    let brackets = all.iter().flat_map(|suits| &suits.counts).map(bracket);
    let widest = brackets
        .map(|text| face::width(&text, caps.note, Weight::Regular))
        .fold(0.0, f64::max);
    let pitch = (6.5 * grow).max(widest + 1.5 * grow);
    let (high, row) = (20.0 * grow, 4.0 * grow);
    // as many gaits beside each other as there is room for
    let ages = all.first().map_or(1, |one| one.counts.len()).max(1) as f64;
    let block = ages * pitch + 6.0 * grow;
    let title = |suits: &Suits| {
        let title = gait_words(sheet, &suits.gait);
        face::wrap(&title, caps.note, Weight::Bold, block - 2.0)
    };
    let titles = all
        .iter()
        .map(|suits| title(suits).len())
        .max()
        .unwrap_or(1);
    let head = 3.0 * grow + titles as f64 * 1.6 * caps.note;
    let one = head + high + 5.5 * grow + 4.0 * row + 1.5;
    let beside = (((wide - label) / block).floor() as usize).max(1);
    let lines = all.len().div_ceil(beside).max(1);
    let taken = label + all.len().min(beside) as f64 * block;
    let mut scene = Scene::new(taken.min(wide), one * lines as f64);
    for (line, part) in all.chunks(beside).enumerate() {
        let top = one * line as f64;
        let (zero, base) = (top + head + high, top + head + high + 5.0 * grow);
        for (share, figure) in [(0.0, "0"), (0.5, "50"), (1.0, "100")] {
            let y = zero - share * high;
            scene.text(Text::new(figure, [label - 3.0, y + caps.note / 2.0], caps.note).end());
            let end = label + part.len() as f64 * block - 6.0 * grow;
            scene.stroke(
                Path::line(&[[label - 1.5, y], [end, y]]),
                Stroke::solid(pen::HAIR),
            );
        }
        scene.text(
            Text::new(
                "%",
                [label - 3.0, zero - high - 2.0 - caps.note * 0.8],
                caps.note,
            )
            .end(),
        );
        scene.text(Text::new(
            sheet.word("page-suits-age"),
            [9.5, base],
            caps.note,
        ));
        for (number, name) in names.iter().enumerate() {
            let y = base + row * (number as f64 + 1.0);
            sign(&mut scene, [0.0, y - caps.note / 2.0 - 1.4], number);
            scene.text(Text::new(name.clone(), [9.5, y], caps.note));
        }
        for (place, suits) in part.iter().enumerate() {
            let x = label + place as f64 * block;
            // the last line stands on the columns
            let lines = title(suits);
            let first = top + head - 2.5 * grow - (lines.len() as f64 - 1.0) * 1.6 * caps.note;
            for (number, line) in lines.into_iter().enumerate() {
                let y = first + number as f64 * 1.6 * caps.note;
                scene.text(Text::new(line, [x, y], caps.note).bold());
            }
            for (number, count) in suits.counts.iter().enumerate() {
                column(
                    &mut scene,
                    [x + number as f64 * pitch, zero],
                    high,
                    pitch,
                    count,
                );
                let middle = x + (number as f64 + 0.4) * pitch;
                scene.text(
                    Text::new(count.age.to_string(), [middle, base], caps.note)
                        .bold()
                        .middle(),
                );
                let [well, easy, hard] = count.whole();
                for (at, words) in [
                    well.to_string(),
                    bracket(count),
                    easy.to_string(),
                    hard.to_string(),
                ]
                .into_iter()
                .enumerate()
                {
                    scene.text(
                        Text::new(words, [middle, base + row * (at as f64 + 1.0)], caps.note)
                            .middle(),
                    );
                }
            }
        }
    }
    scene
}

/// The 90 % interval of a count.
fn bracket(count: &Count) -> String {
    format!("{}–{}", count.bracket[0], count.bracket[1])
}

/// The sign before a row's name.
fn sign(scene: &mut Scene, at: Spot, row: usize) {
    let rect = Rect {
        x: at[0],
        y: at[1],
        w: 6.0,
        h: 2.8,
    };
    match row {
        0 => scene.shape(Path::plate(rect, 0.0), INK, Stroke::solid(pen::ZONE)),
        1 => {
            let y = at[1] + 1.4;
            let mut path = Path::line(&[[at[0], y], [at[0] + 6.0, y]]);
            path.add_line(&[[at[0], y - 0.9], [at[0], y + 0.9]]);
            path.add_line(&[[at[0] + 6.0, y - 0.9], [at[0] + 6.0, y + 0.9]]);
            scene.stroke(path, Stroke::solid(pen::ELLIPSE));
            scene.fill(Path::circle([at[0] + 3.0, y], 0.7), INK);
        }
        _ => part(
            scene,
            rect,
            if row == 2 { Hatch::Dots } else { Hatch::Rising },
        ),
    }
}

fn part(scene: &mut Scene, rect: Rect, kind: Hatch) {
    if rect.h <= 0.02 {
        return;
    }
    scene.shape(Path::plate(rect, 0.0), WHITE, Stroke::solid(pen::ZONE));
    let Rect { x, y, w, h } = rect;
    hatch(
        scene,
        kind,
        &[vec![vec![[x, y], [x + w, y], [x + w, y + h], [x, y + h]]]],
        &[],
    );
}

fn column(scene: &mut Scene, foot: Spot, high: f64, pitch: f64, count: &Count) {
    let of = f64::from(count.of.max(1));
    let breadth = pitch * 0.46;
    let mut y = foot[1];
    for (number, expected) in count.expected.iter().enumerate() {
        let h = expected / of * high;
        y -= h;
        let rect = Rect {
            x: foot[0],
            y,
            w: breadth,
            h,
        };
        match number {
            0 if h > 0.02 => scene.shape(Path::plate(rect, 0.0), INK, Stroke::solid(pen::ZONE)),
            0 => {}
            _ => part(
                scene,
                rect,
                if number == 1 {
                    Hatch::Dots
                } else {
                    Hatch::Rising
                },
            ),
        }
    }
    let x = foot[0] + breadth + pitch * 0.16;
    let at = |value: f64| foot[1] - value / of * high;
    let [low, most] = count.bracket.map(f64::from);
    let mut path = Path::line(&[[x, at(low)], [x, at(most)]]);
    for end in [low, most] {
        path.add_line(&[[x - 0.8, at(end)], [x + 0.8, at(end)]]);
    }
    scene.stroke(path, Stroke::solid(pen::ELLIPSE));
    scene.fill(Path::circle([x, at(count.expected[0])], 0.7), INK);
}

/// A level strip for a card: nought to all children of an age, with the bracket under it.
pub fn strip(scene: &mut Scene, at: Spot, wide: f64, count: &Count) {
    const TALL: f64 = 4.0;
    let of = f64::from(count.of.max(1));
    let mut x = at[0];
    for (number, expected) in count.expected.iter().enumerate() {
        let w = expected / of * wide;
        let rect = Rect {
            x,
            y: at[1],
            w,
            h: TALL,
        };
        x += w;
        match number {
            _ if w <= 0.02 => {}
            0 => scene.shape(Path::plate(rect, 0.0), INK, Stroke::solid(pen::ZONE)),
            1 => part(scene, rect, Hatch::Dots),
            _ => part(scene, rect, Hatch::Rising),
        }
    }
    let y = at[1] + TALL + 1.8;
    let to = |value: f64| at[0] + value / of * wide;
    let [low, most] = count.bracket.map(f64::from);
    let mut path = Path::line(&[[to(low), y], [to(most), y]]);
    for end in [low, most] {
        path.add_line(&[[to(end), y - 0.7], [to(end), y + 0.7]]);
    }
    scene.stroke(path, Stroke::solid(pen::ELLIPSE));
    scene.fill(Path::circle([to(count.expected[0]), y], 0.7), INK);
}

/// The word of a gait.
pub fn gait_words(sheet: &Sheet, gait: &str) -> String {
    sheet.say(msg!("page-gait", gait = gait))
}

/// The chart in words, for those who do not see it.
pub fn told(sheet: &Sheet, all: &[Suits]) -> String {
    let mut out = Vec::new();
    for suits in all {
        let ages: Vec<String> = suits
            .counts
            .iter()
            .map(|count| {
                let [well, easy, hard] = count.whole();
                sheet.say(msg!(
                    "page-suits-told",
                    age = u64::from(count.age),
                    of = u64::from(count.of),
                    well = u64::from(well),
                    low = u64::from(count.bracket[0]),
                    high = u64::from(count.bracket[1]),
                    easy = u64::from(easy),
                    hard = u64::from(hard)
                ))
            })
            .collect();
        out.push(format!(
            "{}: {}",
            gait_words(sheet, &suits.gait),
            ages.join("; ")
        ));
    }
    format!("{}.", out.join(". "))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Equal chances make a binomial: 10 draws at 0.3, worked with scipy 1.17
    /// (`scipy.stats.binom.pmf(k, 10, 0.3)`, `ppf(0.05)` 1, `ppf(0.95)` 5).
    #[test]
    fn equal_chances_make_a_binomial() {
        let mass = poisson_binomial([0.3; 10]);
        for (count, wanted) in [(0, 0.028_247_524_9), (3, 0.266_827_932), (10, 5.904_9e-6)] {
            assert!(
                (mass[count] - wanted).abs() < 1e-12,
                "{count}: {}",
                mass[count]
            );
        }
        assert_eq!((quantile(&mass, 0.05), quantile(&mass, 0.95)), (1, 5));
    }

    /// Worked by hand: chances of 1/2 and 1/4 give 3/8, 4/8, 1/8.
    #[test]
    fn unequal_chances_are_convolved() {
        assert_eq!(poisson_binomial([0.5, 0.25]), vec![0.375, 0.5, 0.125]);
        assert_eq!(poisson_binomial([]), vec![1.0]);
        assert_eq!(quantile(&[0.375, 0.5, 0.125], 0.375), 0);
        assert_eq!(quantile(&[0.375, 0.5, 0.125], 0.876), 2);
    }

    #[test]
    fn whole_children_add_up() {
        for expected in [
            [2.4, 1.3, 4.3],
            [0.0, 0.0, 8.0],
            [2.666_667, 2.666_667, 2.666_666],
        ] {
            let count = Count {
                age: 4,
                of: 8,
                expected,
                bracket: [0, 8],
            };
            assert_eq!(count.whole().iter().sum::<u32>(), 8, "{expected:?}");
        }
    }
}
