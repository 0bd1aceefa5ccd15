//! What a drawn figure cannot be used for, told before anybody paints it.

use geo::{Area, BooleanOps, BoundingRect, Buffer, Intersects, MultiPolygon, Polygon};
use ledger::Ledger;
use marking::{LaneKind, Takes};
use note::{Fact, Note, Place, msg};

use crate::family::Drawn;
use crate::figures::{BEND, GAP_MOST, LANE_SINGLE, LEAST, SIZE, SPOT_BOTH, SPOT_LEAST};
use crate::order::reached;
use crate::outline::narrow;
use crate::read::Spot;
use crate::svg::Shape;

/// Notes on the figure as it is drawn.
pub fn advise(
    drawn: &Drawn,
    shapes: &[Shape],
    root: &Place,
    ledger: &Ledger,
    notes: &mut Vec<Note>,
) {
    size(drawn, root, ledger, notes);
    // at the wrong size all else would be told too
    let sizes = ["drawn-pixels", "drawn-size"];
    if notes.iter().any(|note| sizes.contains(&note.what.key)) {
        return;
    }
    for spot in &drawn.spots {
        small(spot, ledger, notes);
    }
    flights(drawn, ledger, notes);
    routes(drawn, notes);
    lanes(drawn, ledger, notes);
    paint(drawn, shapes, root, ledger, notes);
    if drawn.waits_nowhere() {
        notes.push(
            Note::advice(root.clone(), msg!("drawn-no-wait")).mend(msg!("drawn-no-wait-mend")),
        );
    }
}

fn size(drawn: &Drawn, root: &Place, ledger: &Ledger, notes: &mut Vec<Note>) {
    let spots = drawn.spots.iter().map(|spot| spot.outline.clone());
    let all: Vec<Polygon<f64>> = spots
        .chain(drawn.layers.iter().flat_map(|layer| layer.area.0.clone()))
        .collect();
    let mut bounds = MultiPolygon(all).bounding_rect();
    for track in &drawn.tracks {
        bounds = match (bounds, track.line.bounding_rect()) {
            (Some(a), Some(b)) => Some(geo::Rect::new(
                geo::coord! { x: a.min().x.min(b.min().x), y: a.min().y.min(b.min().y) },
                geo::coord! { x: a.max().x.max(b.max().x), y: a.max().y.max(b.max().y) },
            )),
            (a, b) => a.or(b),
        };
    }
    let (Some(bounds), [least, most]) = (bounds, ledger.list(SIZE)) else {
        return;
    };
    let long = bounds.width().max(bounds.height());
    if !(*least..=*most).contains(&long) {
        let what = msg!(
            "drawn-size",
            width = Fact::Length(bounds.width()),
            height = Fact::Length(bounds.height())
        );
        notes.push(Note::warning(root.clone(), what).mend(msg!("drawn-size-mend")));
    }
}

/// The breadth of the largest disc that lies in a shape, to a millimetre.
fn breadth(outline: &Polygon<f64>) -> f64 {
    let Some(bounds) = outline.bounding_rect() else {
        return 0.0;
    };
    let (mut low, mut high) = (0.0, bounds.width().min(bounds.height()));
    while high - low > 1e-3 {
        let middle = (low + high) / 2.0;
        if outline.buffer(-middle / 2.0).0.is_empty() {
            high = middle;
        } else {
            low = middle;
        }
    }
    low
}

fn small(spot: &Spot, ledger: &Ledger, notes: &mut Vec<Note>) {
    let least = ledger.number(SPOT_LEAST);
    let across = match spot.disc {
        Some(radius) => 2.0 * radius,
        None => breadth(&spot.outline),
    };
    if across < least {
        let what = msg!(
            "drawn-spot-small",
            cell = &spot.id,
            across = Fact::Length(across)
        );
        notes.push(
            Note::warning(spot.at.clone(), what)
                .expected(msg!("drawn-spot-expected", least = Fact::Length(least)))
                .mend(msg!("drawn-spot-mend")),
        );
        return;
    }
    let both = ledger.number(SPOT_BOTH);
    let hull = || {
        use geo::MinimumRotatedRect;
        let rect = spot.outline.minimum_rotated_rect();
        let sides = rect
            .iter()
            .flat_map(|rect| rect.exterior().lines().collect::<Vec<_>>());
        sides
            .map(|side| libm::hypot(side.dx(), side.dy()))
            .fold(0.0, f64::max)
    };
    let long = spot.disc.map_or_else(hull, |radius| 2.0 * radius);
    if spot.takes == Takes::Both && long < both {
        let what = msg!(
            "drawn-spot-both",
            cell = &spot.id,
            across = Fact::Length(long)
        );
        notes.push(
            Note::warning(spot.at.clone(), what)
                .expected(msg!("drawn-spot-both-expected", least = Fact::Length(both)))
                .mend(msg!("drawn-spot-mend")),
        );
    }
}

fn flights(drawn: &Drawn, ledger: &Ledger, notes: &mut Vec<Note>) {
    let most = ledger.number(GAP_MOST);
    let named = |at: usize| drawn.spots.get(at);
    for (from, to, far) in drawn.flights() {
        let (Some(a), Some(b)) = (named(from), named(to)) else {
            continue;
        };
        // where any cell may follow, the far ones are simply not chosen
        if far > most && a.next.is_some() {
            let what = msg!(
                "drawn-gap",
                from = &a.id,
                to = &b.id,
                far = Fact::Length(far)
            );
            notes.push(
                Note::warning(b.at.clone(), what)
                    .expected(msg!("drawn-gap-expected", most = Fact::Length(most)))
                    .mend(msg!("drawn-gap-mend"))
                    .also(a.at.clone()),
            );
        }
        let over = a.outline.intersects(&b.outline)
            && a.outline.intersection(&b.outline).unsigned_area() > 1e-6;
        let first = a.next.is_some() || from < to;
        if over && first {
            let what = msg!("drawn-overlap", from = &a.id, to = &b.id);
            notes.push(
                Note::warning(b.at.clone(), what)
                    .mend(msg!("drawn-overlap-mend"))
                    .also(a.at.clone()),
            );
        }
    }
}

fn routes(drawn: &Drawn, notes: &mut Vec<Note>) {
    let spots = &drawn.spots;
    let starts: Vec<usize> = (0..spots.len())
        .filter(|at| spots.get(*at).is_some_and(|spot| spot.start))
        .collect();
    let seen = reached(spots, starts, |_| true);
    let lost: Vec<&Spot> = (0..spots.len())
        .filter(|at| !seen.contains(at))
        .filter_map(|at| spots.get(at))
        .collect();
    if let Some(first) = lost.first() {
        let names: Vec<String> = lost.iter().map(|spot| spot.id.clone()).collect();
        notes.push(
            Note::warning(first.at.clone(), msg!("drawn-unreached", cells = names))
                .mend(msg!("drawn-unreached-mend")),
        );
    }
    let dead: Vec<&Spot> = seen
        .iter()
        .filter(|at| {
            let on = reached(spots, vec![**at], |_| true);
            !on.iter()
                .any(|to| spots.get(*to).is_some_and(|spot| spot.end))
        })
        .filter_map(|at| spots.get(*at))
        .collect();
    if let Some(first) = dead.first() {
        let names: Vec<String> = dead.iter().map(|spot| spot.id.clone()).collect();
        notes.push(
            Note::warning(first.at.clone(), msg!("drawn-dead-end", cells = names))
                .mend(msg!("drawn-dead-end-mend")),
        );
    }
}

fn lanes(drawn: &Drawn, ledger: &Ledger, notes: &mut Vec<Note>) {
    /// Radians. A corner that no child notices.
    const CORNER: f64 = 0.26;
    let least = ledger.number(BEND);
    for track in &drawn.tracks {
        let tightest = track.pieces.iter().filter_map(|piece| piece.radius);
        let tightest = tightest.min_by(f64::total_cmp);
        // arcs are fitted to the millimetre
        if let Some(radius) = tightest.filter(|radius| *radius < least - 0.002) {
            let what = msg!(
                "drawn-bend",
                lane = &track.id,
                radius = Fact::Length(radius)
            );
            notes.push(
                Note::advice(track.at.clone(), what)
                    .expected(msg!("drawn-bend-expected", least = Fact::Length(least))),
            );
        }
        if track.sharpest > CORNER {
            notes.push(
                Note::advice(track.at.clone(), msg!("drawn-corner", lane = &track.id))
                    .mend(msg!("drawn-corner-mend", least = Fact::Length(least))),
            );
        }
        let single = ledger.number(LANE_SINGLE);
        if track.kind == LaneKind::Corridor && track.width < single - 1e-6 {
            let what = msg!(
                "drawn-corridor",
                lane = &track.id,
                width = Fact::Length(track.width)
            );
            notes.push(Note::advice(track.at.clone(), what).expected(msg!(
                "drawn-corridor-expected",
                least = Fact::Length(single)
            )));
        }
    }
}

fn paint(drawn: &Drawn, shapes: &[Shape], root: &Place, ledger: &Ledger, notes: &mut Vec<Note>) {
    let (paint, slivers) = drawn.paint(1.0);
    if slivers > 0 {
        notes.push(
            Note::advice(root.clone(), msg!("drawn-slivers", count = slivers))
                .mend(msg!("drawn-slivers-mend")),
        );
    }
    let least = ledger.number(LEAST);
    let mut thin: Vec<Place> = Vec::new();
    for one in &paint {
        for piece in narrow(&one.polygon, least) {
            // the topmost layer there is the one that shows
            let holds = drawn
                .layers
                .iter()
                .rev()
                .find(|layer| layer.area.intersects(&piece));
            let at = holds.map_or_else(|| root.clone(), |layer| layer.at.clone());
            if !thin.contains(&at) {
                thin.push(at);
            }
        }
    }
    thin.sort();
    let many = thin.len();
    let mut thin = thin.into_iter();
    if let Some(first) = thin.next() {
        let note = Note::warning(first, msg!("drawn-narrow", count = many))
            .expected(msg!("drawn-narrow-expected", least = Fact::Length(least)))
            .mend(msg!("drawn-narrow-mend"));
        notes.push(thin.take(8).fold(note, Note::also));
    }
    webs(&paint, root, least, notes);
    let bare: Vec<&Spot> = drawn
        .spots
        .iter()
        .filter(|spot| {
            let near = spot.outline.buffer(least);
            !paint.iter().any(|paint| near.intersects(&paint.polygon))
        })
        .collect();
    if let Some(first) = bare.first() {
        let washed = shapes.iter().any(|shape| {
            shape
                .called
                .as_ref()
                .is_some_and(|called| called.at == first.at)
                && (shape.fill.is_some() || shape.stroke.is_some())
        });
        let names: Vec<String> = bare.iter().map(|spot| spot.id.clone()).collect();
        let note = Note::advice(first.at.clone(), msg!("drawn-unpainted", cells = names));
        notes.push(if washed {
            note.mend(msg!("drawn-unpainted-mend"))
        } else {
            note
        });
    }
}

/// Bare ground between two paints that no web of a stencil can hold.
fn webs(paint: &[marking::Paint], root: &Place, least: f64, notes: &mut Vec<Note>) {
    let all: Vec<Polygon<f64>> = paint.iter().map(|one| one.polygon.clone()).collect();
    let whole = geo::unary_union(&all);
    let closed = whole.buffer(least / 2.0).buffer(-least / 2.0);
    let webs = closed
        .difference(&whole)
        .0
        .iter()
        .filter(|web| web.unsigned_area() > least * least)
        .count();
    if webs > 0 {
        notes.push(
            Note::advice(
                root.clone(),
                msg!("drawn-web", count = webs, least = Fact::Length(least)),
            )
            .mend(msg!("drawn-web-mend")),
        );
    }
}
