//! Which cell follows which: by their numbers, or as the drawing says.

use std::collections::{BTreeMap, BTreeSet};

use note::{Fact, Note, msg};

use crate::read::Spot;

/// A name as letters, number, letters: `a12b` is the second form of the twelfth of track a.
fn parted(name: &str) -> Option<(&str, u64)> {
    let letters = name
        .bytes()
        .take_while(|byte| !byte.is_ascii_digit())
        .count();
    let (track, rest) = name.split_at_checked(letters)?;
    let digits = rest.bytes().take_while(u8::is_ascii_digit).count();
    let number = rest.get(..digits)?.parse().ok()?;
    Some((track, number))
}

/// Puts the cells in their order: starts without a number, the tracks by their numbers,
/// then what has no number, as drawn.
pub fn sort(spots: &mut [Spot]) {
    spots.sort_by_cached_key(|spot| match parted(&spot.id) {
        Some((track, number)) => (1, track.to_owned(), number, spot.id.clone()),
        None => (
            if spot.start { 0 } else { 2 },
            String::new(),
            0,
            String::new(),
        ),
    });
}

/// Cells of one number are alternatives; each leads to those of the next.
pub fn chain(spots: &mut [Spot]) {
    let mut heads = Vec::new();
    let mut tails = Vec::new();
    let mut tracks: BTreeMap<String, BTreeMap<u64, Vec<usize>>> = BTreeMap::new();
    for (at, spot) in spots.iter().enumerate() {
        match parted(&spot.id) {
            Some((track, number)) => {
                let track = tracks.entry(track.to_owned()).or_default();
                track.entry(number).or_default().push(at);
            }
            None if spot.start => heads.push(at),
            None => tails.push(at),
        }
    }
    let mut ways: Vec<Vec<Vec<usize>>> = Vec::new();
    for track in tracks.into_values() {
        let mut way: Vec<Vec<usize>> = track.into_values().collect();
        let starts = way
            .iter()
            .flatten()
            .any(|at| spots.get(*at).is_some_and(|spot| spot.start));
        if !starts && !heads.is_empty() {
            way.insert(0, heads.clone());
        }
        ways.push(way);
    }
    if ways.is_empty() {
        ways.push(if heads.is_empty() {
            Vec::new()
        } else {
            vec![heads]
        });
    }
    for way in &mut ways {
        way.extend(tails.iter().map(|at| vec![*at]));
    }
    let mut next: BTreeMap<usize, BTreeSet<usize>> = BTreeMap::new();
    for way in ways {
        for pair in way.windows(2) {
            if let [from, to] = pair {
                for one in from {
                    next.entry(*one).or_default().extend(to);
                }
            }
        }
    }
    for (at, spot) in spots.iter_mut().enumerate() {
        spot.next = Some(next.remove(&at).unwrap_or_default().into_iter().collect());
    }
}

/// What the drawing says itself: `data-next="4 5"`, `any` or `none`.
pub fn stated(spots: &mut [Spot], notes: &mut Vec<Note>) {
    let names: Vec<String> = spots.iter().map(|spot| spot.id.clone()).collect();
    for spot in spots {
        let Some((text, at)) = spot.says_next.take() else {
            continue;
        };
        if text.trim() == "any" {
            spot.next = None;
            continue;
        }
        let mut next = BTreeSet::new();
        let listed = text
            .split([' ', ',', ';'])
            .filter(|word| !word.is_empty() && *word != "none");
        for word in listed {
            let word = word.strip_prefix("cell-").unwrap_or(word);
            match names.iter().position(|name| name == word) {
                Some(found) => {
                    next.insert(found);
                }
                None => notes.push(
                    Note::error(
                        at.clone(),
                        msg!("drawn-next-unknown", cell = &spot.id, next = word),
                    )
                    .expected(msg!(
                        "drawn-next-expected",
                        names = Fact::Names(names.clone())
                    )),
                ),
            }
        }
        spot.next = Some(next.into_iter().collect());
    }
}

/// Numbers of the cells that may follow one.
pub fn followers(spots: &[Spot], at: usize) -> Vec<usize> {
    match spots.get(at).and_then(|spot| spot.next.as_ref()) {
        Some(next) => next.clone(),
        None => (0..spots.len()).filter(|other| *other != at).collect(),
    }
}

/// The cells that can be come to from these, themselves among them, through cells that
/// `open` lets in.
pub fn reached(spots: &[Spot], from: Vec<usize>, open: impl Fn(&Spot) -> bool) -> BTreeSet<usize> {
    let mut seen = BTreeSet::new();
    let mut left: Vec<usize> = from;
    while let Some(at) = left.pop() {
        if spots.get(at).is_some_and(&open) && seen.insert(at) {
            left.extend(followers(spots, at));
        }
    }
    seen
}
