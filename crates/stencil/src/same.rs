//! Whether two motifs are the same shape, turned or mirrored.

use geo::{Area, Centroid, Coord, MultiPolygon, Polygon};
use marking::Colour;

use crate::shape::{off, outline, sides, turned};

/// A motif about the centroid of its paint.
#[derive(Clone, Debug)]
pub(crate) struct Form {
    /// Where the centroid lies.
    pub(crate) middle: Coord<f64>,
    area: f64,
    outline: f64,
    pieces: usize,
    inks: Vec<Ink>,
}

#[derive(Clone, Debug)]
struct Ink {
    colour: Colour,
    corners: Vec<Coord<f64>>,
    sides: Vec<[Coord<f64>; 2]>,
}

impl Form {
    /// `None` without area.
    pub(crate) fn of(paint: &[(Colour, Polygon<f64>)]) -> Option<Form> {
        let all = MultiPolygon(paint.iter().map(|(_, shape)| shape.clone()).collect());
        let middle = all.centroid()?.0;
        let area = all.unsigned_area();
        if area <= 0.0 {
            return None;
        }
        let mut colours: Vec<Colour> = paint.iter().map(|(colour, _)| *colour).collect();
        colours.sort_unstable();
        colours.dedup();
        let inks = colours
            .into_iter()
            .map(|colour| {
                let own = paint.iter().filter(|(other, _)| *other == colour);
                let sides: Vec<[Coord<f64>; 2]> = sides(own.map(|(_, shape)| shape))
                    .into_iter()
                    .map(|side| side.map(|end| end - middle))
                    .collect();
                Ink {
                    colour,
                    // a corner and the middle of each side: long sides cannot slip through
                    corners: sides
                        .iter()
                        .flat_map(|[from, to]| [*from, (*from + *to) / 2.0])
                        .collect(),
                    sides,
                }
            })
            .collect();
        Some(Form {
            middle,
            area,
            outline: paint.iter().map(|(_, shape)| outline(shape)).sum(),
            pieces: paint.len(),
            inks,
        })
    }

    /// The turn that lays `self`, mirrored across its x first if `over`, on `other`: every
    /// side within `within` metres of one of the other's in the same colour.
    pub(crate) fn onto(&self, other: &Form, over: bool, within: f64) -> Option<f64> {
        let colours = |form: &Form| form.inks.iter().map(|ink| ink.colour).collect::<Vec<_>>();
        // an edge `within` off all along moves the area by no more
        let close = (self.area - other.area).abs() <= self.outline * within
            && (self.outline - other.outline).abs() <= 0.02 * self.outline;
        if !close || self.pieces != other.pieces || colours(self) != colours(other) {
            return None;
        }
        let far = |at: &Coord<f64>| libm::hypot(at.x, at.y);
        let pivot = self
            .inks
            .first()?
            .corners
            .iter()
            .max_by(|a, b| far(a).total_cmp(&far(b)))?;
        let pivot_turn = |at: Coord<f64>| libm::atan2(at.y, at.x);
        let from = pivot_turn(turned(*pivot, 0.0, over));
        let candidates = other
            .inks
            .first()?
            .corners
            .iter()
            .filter(|at| (far(at) - far(pivot)).abs() <= 2.0 * within);
        let mut turns: Vec<f64> = candidates.map(|at| pivot_turn(*at) - from).collect();
        // the least turn first: who is the same unturned stays so
        let pi = std::f64::consts::PI;
        for turn in &mut turns {
            *turn -= ((*turn + pi) / (2.0 * pi)).floor() * 2.0 * pi;
        }
        turns.sort_by(|a, b| a.abs().total_cmp(&b.abs()));
        turns
            .into_iter()
            .find(|turn| self.lies_on(other, *turn, over, within))
    }

    fn lies_on(&self, other: &Form, turn: f64, over: bool, within: f64) -> bool {
        let back = |at: Coord<f64>| {
            let at = turned(at, -turn, false);
            turned(at, 0.0, over)
        };
        self.inks.iter().zip(&other.inks).all(|(mine, theirs)| {
            scattered(&mine.corners).all(|at| off(turned(at, turn, over), &theirs.sides) <= within)
                && scattered(&theirs.corners).all(|at| off(back(at), &mine.sides) <= within)
        })
    }
}

/// All places, those far from one another early: what does not fit shows at once.
fn scattered(places: &[Coord<f64>]) -> impl Iterator<Item = Coord<f64>> {
    const STRIDE: usize = 17;
    (0..STRIDE).flat_map(move |from| places.iter().skip(from).step_by(STRIDE).copied())
}

#[cfg(test)]
mod tests {
    use geo::polygon;

    use super::*;

    /// Metres.
    const WITHIN: f64 = 0.001;

    fn hook(by: impl Fn(Coord<f64>) -> Coord<f64>) -> Form {
        let shape: Polygon<f64> = polygon![
            (x: 0.0, y: 0.0), (x: 0.3, y: 0.0), (x: 0.3, y: 0.1),
            (x: 0.1, y: 0.1), (x: 0.1, y: 0.25), (x: 0.0, y: 0.25),
        ];
        Form::of(&[(Colour::Chalk, crate::shape::moved(&shape, by))]).expect("it has an area")
    }

    #[test]
    fn a_turned_shape_is_the_same_and_a_mirrored_one_is_not() {
        let first = hook(|at| at);
        for step in 0..36 {
            let turn = f64::from(step) * std::f64::consts::TAU / 36.0 - 3.0;
            let second = hook(|at| turned(at, turn, false) + Coord { x: 3.0, y: 4.0 });
            let found = first.onto(&second, false, WITHIN).expect("the same");
            let off = libm::sin((found - turn) / 2.0).abs();
            assert!(off < 1e-6, "{found}, not {turn}");
            assert_eq!(first.onto(&second, true, WITHIN), None);
            let over = hook(|at| turned(at, turn, true));
            assert_eq!(first.onto(&over, false, WITHIN), None);
            assert!(first.onto(&over, true, WITHIN).is_some());
        }
    }

    #[test]
    fn another_size_or_colour_is_another_shape() {
        let first = hook(|at| at);
        assert_eq!(first.onto(&hook(|at| at * 1.02), false, WITHIN), None);
        assert!(first.onto(&hook(|at| at * 1.001), false, WITHIN).is_some());
        let mut red = hook(|at| at);
        red.inks[0].colour = Colour::Hip;
        assert_eq!(first.onto(&red, false, WITHIN), None);
    }
}
