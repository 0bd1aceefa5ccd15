//! Painted shapes that belong together, so that one plate shows one motif.
//!
//! Shapes a joint apart are one motif: a ring in its three pieces, sole and heel, the halves
//! of an O. What stands in the eye of another motif, as a numeral in its cell, is a motif of
//! its own unless the builder wants it [`Numerals::InCell`]. Two colours go through one plate
//! only where they make one band: a cell and its heel bar.

use std::collections::BTreeMap;

use geo::{Area, Contains, Coord, MultiPolygon, Point, Polygon, Winding};
use marking::{Colour, Figure, Paint};

use crate::material::{Numerals, Rules};
use crate::shape::{apart, bounds, grown, roughly_grown};

/// Numbers of painted shapes, rising.
pub(crate) type Group = Vec<usize>;

/// The motifs of a figure, in the order of their first shape.
pub(crate) fn motifs(figure: &Figure, numerals: Numerals, rules: &Rules) -> Vec<Group> {
    let paint = &figure.paint;
    let mut found = Vec::new();
    for group in joined(paint, (0..paint.len()).collect(), rules.join, |_, _| true) {
        found.extend(match (group.as_slice(), numerals) {
            ([_], _) => vec![group],
            (_, Numerals::Apart) => apart_from_eyes(paint, group, rules),
            (_, Numerals::InCell) => by_colour(paint, group, rules),
        });
    }
    if numerals == Numerals::InCell {
        found = into_eyes(paint, found, rules);
    }
    found.sort();
    found
}

/// Groups of shapes that reach one another in steps of `near` at most.
fn joined(
    paint: &[Paint],
    all: Group,
    near: f64,
    may: impl Fn(&Paint, &Paint) -> bool,
) -> Vec<Group> {
    let mut root: Vec<usize> = (0..all.len()).collect();
    fn top(root: &mut [usize], mut at: usize) -> usize {
        while root[at] != at {
            root[at] = root[root[at]];
            at = root[at];
        }
        at
    }
    for (i, one) in all.iter().enumerate() {
        for (j, other) in all.iter().enumerate().skip(i + 1) {
            let (one, other) = (&paint[*one], &paint[*other]);
            if may(one, other) && apart(&one.polygon, &other.polygon, near).is_some() {
                let (a, b) = (top(&mut root, i), top(&mut root, j));
                root[a.max(b)] = a.min(b);
            }
        }
    }
    let mut groups: BTreeMap<usize, Group> = BTreeMap::new();
    for (index, number) in all.iter().enumerate() {
        groups
            .entry(top(&mut root, index))
            .or_default()
            .push(*number);
    }
    groups.into_values().collect()
}

/// Shapes grown until the joints between them close: what they enclose is an eye.
pub(crate) fn closed(shapes: &[Polygon<f64>], join: f64) -> MultiPolygon<f64> {
    roughly_grown(&MultiPolygon(shapes.to_vec()), join / 2.0)
}

/// The eyes of shapes: bare ground that they enclose but for joints. Where a joint opens, an
/// eye bulges into it by less than half a joint.
pub(crate) fn eyes(shapes: &[Polygon<f64>], join: f64) -> Vec<Polygon<f64>> {
    let half = join / 2.0;
    let closed = grown(&MultiPolygon(shapes.to_vec()), half);
    let inner = closed.iter().flat_map(|shape| shape.interiors());
    inner
        .flat_map(|eye| {
            let mut eye = eye.clone();
            eye.make_ccw_winding();
            grown(&MultiPolygon(vec![Polygon::new(eye, Vec::new())]), half)
        })
        .collect()
}

/// Whether a shape lies in an eye of what is left when it is taken out of its group.
fn in_an_eye(paint: &[Paint], group: &[usize], one: usize, join: f64) -> bool {
    // what reaches the group's box is in no eye of it
    let all = bounds(group.iter().map(|at| &paint[*at].polygon));
    let own = bounds([&paint[one].polygon]);
    let (Some(all), Some(own)) = (all, own) else {
        return false;
    };
    let inside = own.min().x > all.min().x + join
        && own.min().y > all.min().y + join
        && own.max().x < all.max().x - join
        && own.max().y < all.max().y - join;
    if !inside {
        return false;
    }
    let others: Vec<Polygon<f64>> = group
        .iter()
        .filter(|other| **other != one)
        .map(|other| paint[*other].polygon.clone())
        .collect();
    let Some(corner) = paint[one].polygon.exterior().0.first() else {
        return false;
    };
    eye_round(&closed(&others, join), *corner)
}

fn eye_round(shapes: &MultiPolygon<f64>, at: Coord<f64>) -> bool {
    shapes.iter().any(|shape| {
        shape
            .interiors()
            .iter()
            .any(|eye| Polygon::new(eye.clone(), Vec::new()).contains(&Point(at)))
    })
}

/// The motifs that some shapes would be, each on its own.
pub(crate) fn parts(paint: &[Paint], rules: &Rules) -> Vec<Group> {
    let all = joined(paint, (0..paint.len()).collect(), rules.join, |_, _| true);
    all.into_iter()
        .flat_map(|group| apart_from_eyes(paint, group, rules))
        .collect()
}

/// What stands in eyes parts from what is round them.
fn apart_from_eyes(paint: &[Paint], group: Group, rules: &Rules) -> Vec<Group> {
    let (inner, outer): (Group, Group) = group
        .iter()
        .partition(|one| in_an_eye(paint, &group, **one, rules.join));
    [inner, outer]
        .into_iter()
        .flat_map(|part| joined(paint, part, rules.join, |_, _| true))
        .flat_map(|part| by_colour(paint, part, rules))
        .collect()
}

/// A group of two colours stays whole where both make one band round an eye.
fn by_colour(paint: &[Paint], group: Group, rules: &Rules) -> Vec<Group> {
    let mut areas: BTreeMap<Colour, f64> = BTreeMap::new();
    for one in &group {
        *areas.entry(paint[*one].colour).or_default() += paint[*one].polygon.unsigned_area();
    }
    let bands = |group: &[usize]| -> usize {
        let shapes: Vec<Polygon<f64>> = group.iter().map(|at| paint[*at].polygon.clone()).collect();
        closed(&shapes, rules.join)
            .iter()
            .map(|shape| shape.interiors().len())
            .sum()
    };
    let one_band = match areas.len() {
        1 => true,
        2 => {
            let alone = |colour: &Colour| -> usize {
                let own: Group = group
                    .iter()
                    .copied()
                    .filter(|at| paint[*at].colour == *colour)
                    .collect();
                bands(&own)
            };
            bands(&group) > areas.keys().map(alone).sum()
        }
        _ => false,
    };
    if one_band {
        return vec![group];
    }
    joined(paint, group, rules.join, |a, b| a.colour == b.colour)
}

/// What stands in an eye joins what is round it.
fn into_eyes(paint: &[Paint], mut groups: Vec<Group>, rules: &Rules) -> Vec<Group> {
    let around: Vec<MultiPolygon<f64>> = groups
        .iter()
        .map(|group| {
            let shapes: Vec<Polygon<f64>> =
                group.iter().map(|at| paint[*at].polygon.clone()).collect();
            closed(&shapes, rules.join)
        })
        .collect();
    for inner in 0..groups.len() {
        let Some(first) = groups[inner].first() else {
            continue;
        };
        let (colour, corner) = (
            paint[*first].colour,
            paint[*first].polygon.exterior().0.first().copied(),
        );
        let Some(corner) = corner else { continue };
        let home = (0..groups.len()).find(|outer| {
            *outer != inner
                && groups[*outer]
                    .iter()
                    .any(|other| paint[*other].colour == colour)
                && eye_round(&around[*outer], corner)
        });
        if let Some(home) = home {
            let moved = std::mem::take(&mut groups[inner]);
            groups[home].extend(moved);
            groups[home].sort_unstable();
        }
    }
    groups.retain(|group| !group.is_empty());
    groups
}
