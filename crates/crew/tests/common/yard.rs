//! Made-up jobs.

use crew::{Door, Hands, Job, Light, Marking, Piece, Spell, Stencil, Way, Window};
use geo::{Coord, Polygon, Rect, coord};
use marking::Colour;

/// Seconds of an hour of the first day.
pub fn at(hours: f64) -> i64 {
    (hours * 3600.0).round() as i64
}

pub fn rect(x: f64, y: f64, width: f64, height: f64) -> Polygon<f64> {
    Rect::new(
        Coord { x, y },
        Coord {
            x: x + width,
            y: y + height,
        },
    )
    .to_polygon()
}

pub fn stencilled(colour: Colour, stencil: usize, area: f64, placed: u32) -> Piece {
    Piece {
        colour,
        area,
        coats: 2,
        way: Way::Stencil { stencil, placed },
    }
}

/// A marking of one stencilled colour: 6 m² swept, 5 key points, 2 m² in 3 placements.
pub fn marking(name: &str, x: f64, y: f64) -> Marking {
    Marking {
        name: name.to_owned(),
        outline: rect(x, y, 2.0, 1.0),
        swept: 6.0,
        primed: 0.0,
        key_points: 5,
        pieces: vec![stencilled(Colour::Chalk, 0, 2.0, 3)],
    }
}

pub fn job(markings: Vec<Marking>) -> Job {
    Job {
        markings,
        stencils: vec![Stencil {
            name: "spot".to_owned(),
            copies: 1,
        }],
        people: 2,
        hands: Hands::Practised,
        tapes: 1,
        windows: vec![Window {
            from_s: at(8.0),
            to_s: at(17.0),
        }],
        air: vec![Spell {
            from_s: 0,
            temperature: 20.0,
            humidity: 50.0,
            light: Light::Shade,
        }],
        doors: vec![Door {
            name: "hall".to_owned(),
            at: coord! { x: 0.0, y: 1.0 },
        }],
        ground: Some(rect(0.0, 0.0, 20.0, 20.0)),
        children_s: None,
        seed: 1,
    }
}

/// Eight markings as a yard has them: three stencils among six, a masked court, a free figure.
pub fn yard(people: u32) -> Job {
    let mut markings: Vec<Marking> = (0..6_usize)
        .map(|nth| {
            let mut one = marking(
                "",
                2.0 + 5.0 * (nth % 3) as f64,
                3.0 + 6.0 * (nth / 3) as f64,
            );
            one.name = format!("spots{}", nth + 1);
            one.key_points = 4 + nth as u32;
            one.pieces = vec![
                stencilled(Colour::Chalk, nth % 3, 1.0 + 0.3 * nth as f64, 4),
                stencilled(Colour::Straw, (nth + 1) % 3, 0.4, 2),
            ];
            one
        })
        .collect();
    markings.push(Marking {
        name: "court1".to_owned(),
        outline: rect(3.0, 14.0, 3.0, 3.0),
        swept: 12.0,
        primed: 0.0,
        key_points: 6,
        pieces: vec![Piece {
            colour: Colour::Harebell,
            area: 2.5,
            coats: 2,
            way: Way::Masked { length: 24.0 },
        }],
    });
    markings.push(Marking {
        name: "brook1".to_owned(),
        outline: rect(12.0, 14.0, 4.0, 2.0),
        swept: 10.0,
        primed: 0.0,
        key_points: 8,
        pieces: vec![Piece {
            colour: Colour::Sedge,
            area: 1.8,
            coats: 2,
            way: Way::Free { edge: 14.0 },
        }],
    });
    let mut job = job(markings);
    job.people = people;
    job.hands = Hands::New;
    job.stencils = ["ring", "foot", "star"]
        .map(|name| Stencil {
            name: name.to_owned(),
            copies: 1,
        })
        .to_vec();
    job.windows.push(Window {
        from_s: at(24.0 + 8.0),
        to_s: at(24.0 + 17.0),
    });
    job
}
