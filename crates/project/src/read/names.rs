//! Names that lead nowhere, stand twice, or differ by a capital only.

use std::collections::{BTreeMap, BTreeSet};

use note::{Note, Place, msg};

use crate::read::surveyed::{Named, Opening, Shape, Surveyed, twice};
use crate::read::tape::Tape;
use note::nearest;

/// Places of one unknown name that are shown beside the first.
const SHOWN: usize = 2;

/// Tells every name of `survey.toml` that leads nowhere. A name in a row or table that
/// could not be read still counts as measured: its fault is told there.
pub fn check(tape: &Tape, surveyed: &Surveyed, notes: &mut Vec<Note>) {
    twice(surveyed.boundary.iter(), notes);
    twice(surveyed.fixtures.iter().map(|fixture| &fixture.name), notes);
    twice(surveyed.openings.iter().map(|opening| &opening.name), notes);
    for outline in outlines(surveyed) {
        twice(outline.iter(), notes);
    }
    surveyed
        .openings
        .iter()
        .for_each(|opening| hinge(opening, notes));
    if surveyed.broken {
        return;
    }
    ends(surveyed, notes);
    let known: BTreeSet<&str> = tape
        .named
        .iter()
        .chain(&surveyed.measured)
        .map(|name| name.value.as_str())
        .collect();
    if tape.sound && !known.is_empty() {
        points(surveyed, &known, notes);
    }
    alike(tape, surveyed, notes);
    if let (1..=2, Some(at)) = (surveyed.boundary.len(), &surveyed.boundary_at) {
        let what = msg!("boundary-short", found = surveyed.boundary.len());
        notes.push(Note::error(at.clone(), what).mend(msg!("boundary-corners")));
    }
    if let (true, Some(at)) = (surveyed.boundary.is_empty(), &surveyed.boundary_at) {
        notes.push(Note::error(at.clone(), msg!("boundary-empty")).mend(msg!("boundary-corners")));
    }
}

fn outlines(surveyed: &Surveyed) -> impl Iterator<Item = &Vec<Named>> {
    let fixtures = surveyed
        .fixtures
        .iter()
        .filter_map(|fixture| match &fixture.shape {
            Shape::Outline(names) => Some(names),
            Shape::Disc(..) | Shape::Beam(_) => None,
        });
    let surfaces = surveyed.surfaces.iter().map(|surface| &surface.outline);
    surfaces
        .chain(fixtures)
        .chain(surveyed.remarks.iter().map(|remark| &remark.outline))
}

/// Every use of a point that is not a reading of it, in the order of the file.
fn uses(surveyed: &Surveyed) -> Vec<&Named> {
    let mut uses: Vec<&Named> = surveyed.boundary.iter().chain(&surveyed.stands).collect();
    uses.extend(surveyed.origin.iter().chain(&surveyed.towards));
    uses.extend(surveyed.start.iter().map(|(name, _)| name));
    uses.extend(outlines(surveyed).flatten());
    uses.extend(
        surveyed
            .edges
            .iter()
            .flat_map(|edge| [&edge.from, &edge.to]),
    );
    uses.extend(
        surveyed
            .openings
            .iter()
            .flat_map(|opening| [&opening.from, &opening.to]),
    );
    for fixture in &surveyed.fixtures {
        match &fixture.shape {
            Shape::Outline(_) => {}
            Shape::Disc(at, _) => uses.push(at),
            Shape::Beam(ends) => uses.extend(ends),
        }
        uses.extend(fixture.exit.iter().flatten());
    }
    uses.sort_by(|a, b| a.at.cmp(&b.at));
    uses
}

/// The names that `told` picks, with the places where each is used.
fn picked(uses: Vec<&Named>, told: impl Fn(&str) -> bool) -> BTreeMap<&str, Vec<&Place>> {
    let mut picked: BTreeMap<&str, Vec<&Place>> = BTreeMap::new();
    for name in uses.into_iter().filter(|name| told(&name.value)) {
        picked.entry(&name.value).or_default().push(&name.at);
    }
    picked
}

/// Tells where something stands on points that the readings leave loose: its place would be
/// a guess, and ground near it could be painted that must stay clear. A loose corner is
/// told by the survey.
pub fn loose(surveyed: &Surveyed, loose: &BTreeSet<&str>, notes: &mut Vec<Note>) {
    let corner = |name: &str| surveyed.boundary.iter().any(|corner| corner.value == name);
    for (name, places) in picked(uses(surveyed), |name| loose.contains(name) && !corner(name)) {
        let Some((first, others)) = places.split_first() else {
            continue;
        };
        let mut note = Note::error((*first).clone(), msg!("point-loose", point = name))
            .mend(msg!("point-loose-mend", point = name));
        note.also = others
            .iter()
            .take(SHOWN)
            .map(|place| (*place).clone())
            .collect();
        notes.push(note);
    }
}

/// One note for one unknown name, however often it is used.
fn points(surveyed: &Surveyed, known: &BTreeSet<&str>, notes: &mut Vec<Note>) {
    let unknown = picked(uses(surveyed), |name| !known.contains(name));
    for (name, places) in unknown {
        let Some((first, others)) = places.split_first() else {
            continue;
        };
        let note = Note::error((*first).clone(), msg!("point-unknown", point = name));
        let mut note = match nearest(name, known.iter().copied()) {
            Some(near) => note.mend(msg!("did-you-mean", near = near)),
            None => note.mend(msg!("point-measure", point = name)),
        };
        note.also = others
            .iter()
            .take(SHOWN)
            .map(|place| (*place).clone())
            .collect();
        notes.push(note);
    }
}

/// `a1` and `A1` are two points, and hardly ever meant as two.
fn alike(tape: &Tape, surveyed: &Surveyed, notes: &mut Vec<Note>) {
    let mut first: BTreeMap<String, &Named> = BTreeMap::new();
    let mut told: BTreeSet<&str> = BTreeSet::new();
    for name in tape.named.iter().chain(&surveyed.measured) {
        let before = first.entry(name.value.to_lowercase()).or_insert(name);
        if before.value != name.value && told.insert(&name.value) {
            let what = msg!("names-alike", here = &name.value, before = &before.value);
            notes.push(
                Note::warning(name.at.clone(), what)
                    .also(before.at.clone())
                    .mend(msg!("names-alike-mend")),
            );
        }
    }
}

fn ends(surveyed: &Surveyed, notes: &mut Vec<Note>) {
    let openings = surveyed.openings.iter().map(|opening| &opening.name);
    let fixtures = surveyed.fixtures.iter().map(|fixture| &fixture.name);
    let known: Vec<&str> = openings
        .chain(fixtures)
        .map(|name| name.value.as_str())
        .collect();
    for end in surveyed.routes.iter().flat_map(|way| [&way.from, &way.to]) {
        if known.contains(&end.value.as_str()) {
            continue;
        }
        let note = Note::error(end.at.clone(), msg!("route-end-nowhere", name = &end.value));
        notes.push(match nearest(&end.value, known.iter().copied()) {
            Some(near) => note.mend(msg!("did-you-mean", near = near)),
            None => note.expected(msg!("route-ends")),
        });
    }
}

fn hinge(opening: &Opening, notes: &mut Vec<Note>) {
    let ends = [&opening.from.value, &opening.to.value];
    if let Some(hinge) = &opening.hinge
        && !ends.contains(&&hinge.value)
    {
        let ends: Vec<String> = ends.into_iter().cloned().collect();
        notes.push(
            Note::error(
                hinge.at.clone(),
                msg!("hinge-elsewhere", hinge = &hinge.value),
            )
            .expected(msg!("one-of", names = ends)),
        );
    }
}
