//! Hatches, cut to their ground and drawn as strokes: no pattern that a printer garbles.
//!
//! A hatch line is cut against the rings of its areas by the even-odd rule, so that areas
//! of one kind that overlap are hatched once, and whatever lies on top is left out. All
//! hatches of a kind share one phase on the sheet and run on from area to area.

use super::scene::{Dash, INK, Path, Scene, Spot, Stroke, pen};

/// A polygon on the sheet: its outer ring and its holes.
pub type Rings = Vec<Vec<Spot>>;

/// The kinds of ground that are hatched.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hatch {
    /// Clear zone: single lines at 45 degrees.
    Clear,
    /// Zone shared with nothing: paired heavier lines.
    Alone,
    /// Surface that is not painted: spaced dots.
    Soft,
    /// Margin: short ticks.
    Margin,
    /// Door or gate leaf: uprights.
    Door,
    /// Clear floor at a door: wider uprights.
    DoorFloor,
    /// Puddle, slope, track: level waves.
    Wave,
    /// Paint in black and white: level lines, rising lines, crossed, dense uprights, dots.
    Level,
    /// Rising lines, close.
    Rising,
    /// Crossed lines.
    Crossed,
    /// Dense uprights.
    Dense,
    /// Close dots.
    Dots,
}

/// Pieces of a hatch shorter than this (mm) are left out: a pen would only blot.
const SHORTEST: f64 = 0.25;

/// Draws a hatch over all areas less what lies on top of them.
pub fn hatch(scene: &mut Scene, kind: Hatch, areas: &[Rings], minus: &[Rings]) {
    let thin = Stroke::solid(pen::THIN);
    match kind {
        Hatch::Clear => lines(scene, areas, minus, 45.0, 2.0, 0.0, thin),
        Hatch::Alone => {
            let heavier = Stroke::solid(pen::ZONE);
            lines(scene, areas, minus, 45.0, 3.4, 0.0, heavier);
            lines(scene, areas, minus, 45.0, 3.4, 0.9, heavier);
        }
        Hatch::Door => lines(scene, areas, minus, 90.0, 1.2, 0.0, thin),
        Hatch::DoorFloor => lines(
            scene,
            areas,
            minus,
            90.0,
            2.8,
            0.0,
            Stroke::dashed(pen::THIN, Dash::Short),
        ),
        Hatch::Margin => ticks(scene, areas, minus),
        Hatch::Soft => dots(scene, areas, minus, 3.2, 0.19),
        Hatch::Dots => dots(scene, areas, minus, 1.0, 0.16),
        Hatch::Wave => waves(scene, areas, minus),
        Hatch::Level => lines(scene, areas, minus, 0.0, 0.7, 0.0, Stroke::solid(pen::HAIR)),
        Hatch::Rising => lines(
            scene,
            areas,
            minus,
            45.0,
            0.7,
            0.0,
            Stroke::solid(pen::HAIR),
        ),
        Hatch::Crossed => {
            lines(
                scene,
                areas,
                minus,
                45.0,
                0.9,
                0.0,
                Stroke::solid(pen::HAIR),
            );
            lines(
                scene,
                areas,
                minus,
                135.0,
                0.9,
                0.0,
                Stroke::solid(pen::HAIR),
            );
        }
        Hatch::Dense => lines(
            scene,
            areas,
            minus,
            90.0,
            0.4,
            0.0,
            Stroke::solid(pen::THIN),
        ),
    }
}

/// A family of parallel lines: along `way`, numbered by their distance across.
struct Family {
    way: Spot,
    across: Spot,
}

impl Family {
    /// `rise` in degrees, anticlockwise as the reader sees it.
    fn rising(rise: f64) -> Family {
        let (sin, cos) = libm::sincos(rise.to_radians());
        Family {
            way: [cos, -sin],
            across: [sin, cos],
        }
    }

    fn spot(&self, along: f64, across: f64) -> Spot {
        [
            along * self.way[0] + across * self.across[0],
            along * self.way[1] + across * self.across[1],
        ]
    }

    fn across(&self, spot: Spot) -> f64 {
        spot[0] * self.across[0] + spot[1] * self.across[1]
    }

    fn along(&self, spot: Spot) -> f64 {
        spot[0] * self.way[0] + spot[1] * self.way[1]
    }

    /// The stretches of the line at `across` that lie in the areas and outside `minus`.
    fn stretches(&self, across: f64, areas: &[Rings], minus: &[Rings]) -> Vec<(f64, f64)> {
        let mut kept = joined(
            areas
                .iter()
                .flat_map(|rings| self.inside(across, rings))
                .collect(),
        );
        if kept.is_empty() {
            return kept;
        }
        for (from, to) in joined(
            minus
                .iter()
                .flat_map(|rings| self.inside(across, rings))
                .collect(),
        ) {
            kept = kept
                .into_iter()
                .flat_map(|(a, b)| [(a, b.min(from)), (a.max(to), b)])
                .filter(|(a, b)| b > a)
                .collect();
        }
        kept
    }

    fn inside(&self, across: f64, rings: &Rings) -> Vec<(f64, f64)> {
        let mut cuts = Vec::new();
        for ring in rings {
            for (number, &a) in ring.iter().enumerate() {
                let b = ring[(number + 1) % ring.len()];
                let (before, after) = (self.across(a) - across, self.across(b) - across);
                if (before > 0.0) != (after > 0.0) {
                    let share = before / (before - after);
                    cuts.push(self.along(a) + share * (self.along(b) - self.along(a)));
                }
            }
        }
        cuts.sort_by(f64::total_cmp);
        cuts.chunks_exact(2)
            .map(|pair| (pair[0], pair[1]))
            .collect()
    }

    /// The numbers of the lines of this pitch that can meet the areas.
    fn range(&self, areas: &[Rings], pitch: f64, shift: f64) -> std::ops::Range<i64> {
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for &spot in areas.iter().flatten().flatten() {
            let across = self.across(spot);
            low = low.min(across);
            high = high.max(across);
        }
        if low > high {
            return 0..0;
        }
        (((low - shift) / pitch).ceil() as i64)..(((high - shift) / pitch).floor() as i64 + 1)
    }
}

/// Overlapping stretches made one.
fn joined(mut stretches: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    stretches.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut out: Vec<(f64, f64)> = Vec::new();
    for (from, to) in stretches {
        match out.last_mut() {
            Some(last) if from <= last.1 => last.1 = last.1.max(to),
            _ => out.push((from, to)),
        }
    }
    out
}

fn lines(
    scene: &mut Scene,
    areas: &[Rings],
    minus: &[Rings],
    rise: f64,
    pitch: f64,
    shift: f64,
    stroke: Stroke,
) {
    let family = Family::rising(rise);
    let mut path = Path::default();
    for number in family.range(areas, pitch, shift) {
        let across = number as f64 * pitch + shift;
        for (from, to) in family.stretches(across, areas, minus) {
            if to - from >= SHORTEST {
                path.add_line(&[family.spot(from, across), family.spot(to, across)]);
            }
        }
    }
    scene.stroke(path, stroke);
}

/// Ticks of 1.1 mm on falling lines, staggered from line to line.
fn ticks(scene: &mut Scene, areas: &[Rings], minus: &[Rings]) {
    const TICK: f64 = 1.1;
    let family = Family::rising(-45.0);
    let mut path = Path::default();
    for number in family.range(areas, 1.3, 0.0) {
        let across = number as f64 * 1.3;
        let phase = if number % 2 == 0 { 0.0 } else { TICK };
        for (from, to) in family.stretches(across, areas, minus) {
            let first = ((from - phase) / (2.0 * TICK)).floor() as i64;
            let last = ((to - phase) / (2.0 * TICK)).ceil() as i64;
            for tick in first..=last {
                let start = tick as f64 * 2.0 * TICK + phase;
                let (a, b) = (start.max(from), (start + TICK).min(to));
                if b - a >= SHORTEST {
                    path.add_line(&[family.spot(a, across), family.spot(b, across)]);
                }
            }
        }
    }
    scene.stroke(path, Stroke::solid(pen::THIN));
}

fn dots(scene: &mut Scene, areas: &[Rings], minus: &[Rings], pitch: f64, radius: f64) {
    let family = Family::rising(0.0);
    let mut path = Path::default();
    let row = pitch / 2.0;
    for number in family.range(areas, row, 0.0) {
        let across = number as f64 * row;
        let phase = if number % 2 == 0 { 0.0 } else { row };
        for (from, to) in family.stretches(across, areas, minus) {
            let first = ((from + radius - phase) / pitch).ceil() as i64;
            let last = ((to - radius - phase) / pitch).floor() as i64;
            for dot in first..=last {
                path.add_circle(family.spot(dot as f64 * pitch + phase, across), radius);
            }
        }
    }
    scene.fill(path, INK);
}

fn waves(scene: &mut Scene, areas: &[Rings], minus: &[Rings]) {
    const LONG: f64 = 4.8;
    const HIGH: f64 = 0.45;
    let family = Family::rising(0.0);
    let mut path = Path::default();
    for number in family.range(areas, 2.2, 1.1) {
        let across = number as f64 * 2.2 + 1.1;
        for (from, to) in family.stretches(across, areas, minus) {
            if to - from < LONG / 4.0 {
                continue;
            }
            let pieces = ((to - from) / 0.4).ceil().max(1.0) as usize;
            let spots: Vec<Spot> = (0..=pieces)
                .map(|piece| {
                    let along = from + (to - from) * piece as f64 / pieces as f64;
                    let lift = HIGH * libm::sin(along / LONG * core::f64::consts::TAU);
                    family.spot(along, across + lift)
                })
                .collect();
            path.add_line(&spots);
        }
    }
    scene.stroke(path, Stroke::solid(pen::THIN));
}

#[cfg(test)]
mod tests {
    use super::super::scene::{Item, Step};
    use super::*;

    fn square(x: f64, y: f64, side: f64) -> Rings {
        vec![vec![
            [x, y],
            [x + side, y],
            [x + side, y + side],
            [x, y + side],
        ]]
    }

    fn drawn(kind: Hatch, areas: &[Rings], minus: &[Rings]) -> (f64, Vec<Spot>) {
        let mut scene = Scene::new(100.0, 100.0);
        hatch(&mut scene, kind, areas, minus);
        let (mut length, mut spots) = (0.0, Vec::new());
        for item in &scene.items {
            let Item::Path(path, ..) = item else { continue };
            let mut last = [0.0; 2];
            for step in &path.0 {
                if let Step::Line(spot) = step {
                    length += libm::hypot(spot[0] - last[0], spot[1] - last[1]);
                }
                if let Step::Move(spot) | Step::Line(spot) = *step {
                    last = spot;
                    spots.push(spot);
                }
            }
        }
        (length, spots)
    }

    /// Law: lines of pitch p over an area A are about A / p long, wherever the area lies.
    #[test]
    fn hatch_length_is_area_over_pitch() {
        for shift in [0.0, 0.37, 1.11] {
            let (length, _) = drawn(Hatch::Clear, &[square(10.0 + shift, 10.0, 60.0)], &[]);
            assert!((length - 3600.0 / 2.0).abs() < 30.0, "{length}");
        }
    }

    #[test]
    fn overlapping_areas_are_hatched_once_and_what_lies_on_top_is_left_out() {
        let one = square(10.0, 10.0, 40.0);
        let (alone, _) = drawn(Hatch::Clear, std::slice::from_ref(&one), &[]);
        let (twice, _) = drawn(Hatch::Clear, &[one.clone(), one.clone()], &[]);
        assert!((alone - twice).abs() < 1e-9);
        let (less, spots) = drawn(Hatch::Clear, &[one], &[square(20.0, 20.0, 10.0)]);
        assert!((alone - less - 50.0).abs() < 6.0, "{}", alone - less);
        let within = |s: &Spot| s[0] > 20.01 && s[0] < 29.99 && s[1] > 20.01 && s[1] < 29.99;
        assert!(!spots.iter().any(within));
    }

    #[test]
    fn a_hole_stays_open_and_nothing_leaves_the_ring() {
        let mut rings = square(10.0, 10.0, 40.0);
        rings.push(vec![[20.0, 20.0], [20.0, 40.0], [40.0, 40.0], [40.0, 20.0]]);
        for kind in [
            Hatch::Clear,
            Hatch::Alone,
            Hatch::Margin,
            Hatch::Door,
            Hatch::Soft,
            Hatch::Dense,
        ] {
            let (_, spots) = drawn(kind, std::slice::from_ref(&rings), &[]);
            assert!(!spots.is_empty(), "{kind:?}");
            for s in spots {
                let outer = s.iter().all(|v| (9.999..=50.001).contains(v));
                let hole = s.iter().all(|v| (20.001..=39.999).contains(v));
                assert!(outer && !hole, "{kind:?} at {s:?}");
            }
        }
    }
}
