//! The door: figures in, plates out.

use geo::{Coord, Polygon, Rect};
use ledger::Ledger;
use marking::{Colour, Figure};
use note::Noted;

use crate::holds::falls;
use crate::island::tied;
use crate::material::{Rules, Setting, TurnOver};
use crate::motif::motifs;
use crate::name::{Glyphs, corners, motif};
use crate::panel::{panels, plate};
use crate::result::{Motif, Opening, Stencil, Stencils, Taped, Use, Weak, Weakness};
use crate::same::Form;
use crate::say;
use crate::shape::{bounds, millionth, moved, outline, settled, snug, turned};
use crate::weak::weak;
use crate::worth::{counts, taped};

/// A figure, and which way its front lies.
#[derive(Clone, Copy, Debug)]
pub struct Laid<'a> {
    /// In its own frame or in the yard's.
    pub figure: &'a Figure,
    /// How its own +x is turned there, radians: 0 where it is not placed.
    pub turn: f64,
}

/// The plates of some markings.
///
/// # Shapes and units
/// - `laid`: metres and radians; uses come back in the coordinates of each figure
/// - stencils and panels lie in their own frame, metres
pub fn stencils(laid: &[Laid], setting: &Setting, ledger: &Ledger) -> Noted<Stencils> {
    let rules = Rules::of(setting, ledger);
    let glyphs = Glyphs::of(&rules);
    let mut drafts: Vec<Draft> = Vec::new();
    let mut left = Vec::new();
    for (number, one) in laid.iter().enumerate() {
        for group in motifs(one.figure, setting.numerals, &rules) {
            let paint: Vec<(Colour, Polygon<f64>)> = group
                .iter()
                .filter_map(|at| one.figure.paint.get(*at))
                .map(|paint| (paint.colour, paint.polygon.clone()))
                .collect();
            let Some(form) = Form::of(&paint) else {
                continue;
            };
            let place = Place {
                marking: number,
                group,
            };
            let shared = drafts
                .iter_mut()
                .find_map(|draft| draft.takes(&form, setting, &rules).map(|how| (draft, how)));
            match shared {
                Some((draft, (turn, over))) => draft.seen(place, &form, turn, over),
                None => drafts.push(Draft::of(place, form, paint, one.turn)),
            }
        }
    }
    let mut made = Vec::new();
    for draft in drafts {
        let shapes: Vec<Polygon<f64>> = draft.paint.iter().map(|(_, one)| one.clone()).collect();
        let Some(room) = bounds(&shapes) else {
            continue;
        };
        let shows = motif(&shapes, &glyphs, &rules);
        match taped(&shapes, &shows, room, &rules) {
            Some(why) => left.extend(draft.uses.iter().flat_map(|one| {
                one.paint.iter().filter_map(move |at| {
                    let paint = laid.get(one.marking)?.figure.paint.get(*at)?;
                    Some(Taped {
                        marking: one.marking,
                        paint: *at,
                        colour: paint.colour,
                        why,
                        outline: millionth(outline(&paint.polygon)),
                        area: millionth(geo::Area::unsigned_area(&paint.polygon)),
                    })
                })
            })),
            None => made.push((draft, shows, room)),
        }
    }
    left.sort_by_key(|one| (one.marking, one.paint));
    let digits = made.len().to_string().len().max(2);
    let stencils: Vec<Stencil> = made
        .into_iter()
        .enumerate()
        .map(|(number, (draft, shows, room))| {
            let id = format!("S{:0digits$}", number + 1);
            draft.stencil(id, shows, room, setting, &rules)
        })
        .collect();
    let value = Stencils {
        stencils,
        taped: left,
    };
    let notes = say::notes(&value, setting, &rules);
    Noted { value, notes }
}

struct Place {
    marking: usize,
    group: Vec<usize>,
}

/// A motif in the frame of its plate, and where it has been seen.
struct Draft {
    form: Form,
    paint: Vec<(Colour, Polygon<f64>)>,
    front: f64,
    uses: Vec<Use>,
}

impl Draft {
    /// The frame is the marking's own, or the one in which the plate is smallest where
    /// that saves sheet; the middle of the paint's box is its origin.
    fn of(place: Place, form: Form, paint: Vec<(Colour, Polygon<f64>)>, turn: f64) -> Draft {
        /// A turned plate must save this share of the box.
        const SAVES: f64 = 0.05;
        let shapes: Vec<Polygon<f64>> = paint.iter().map(|(_, one)| one.clone()).collect();
        let points: Vec<Coord<f64>> = corners(&shapes)
            .into_iter()
            .map(|at| turned(at, -turn, false))
            .collect();
        let own = geo::MultiPoint::from(points.clone());
        let upright = geo::BoundingRect::bounding_rect(&own)
            .map_or(f64::INFINITY, |room| room.width() * room.height());
        let front = match snug(&points) {
            Some((by, area)) if area < (1.0 - SAVES) * upright => -by,
            _ => 0.0,
        };
        let frame = wrapped(turn - front);
        let into = |at: Coord<f64>| turned(at, -frame, false);
        let middle = shapes
            .iter()
            .map(|one| moved(one, into))
            .collect::<Vec<_>>();
        let middle = bounds(&middle).map_or(Coord::default(), |room: Rect<f64>| room.center());
        let own: Vec<(Colour, Polygon<f64>)> = paint
            .iter()
            .map(|(colour, one)| (*colour, moved(one, |at| settled(into(at) - middle))))
            .collect();
        let form = Form::of(&own).unwrap_or(form);
        Draft {
            form,
            paint: own,
            front,
            uses: vec![Use {
                marking: place.marking,
                paint: place.group,
                at: settled(turned(middle, frame, false)),
                turn: millionth(frame),
                over: false,
            }],
        }
    }

    /// How its plate must be turned for a motif, and whether it lies on its face.
    fn takes(&self, form: &Form, setting: &Setting, rules: &Rules) -> Option<(f64, bool)> {
        if let Some(turn) = self.form.onto(form, false, rules.same) {
            return Some((turn, false));
        }
        match setting.turn_over {
            TurnOver::Never => None,
            TurnOver::Allowed => {
                let turn = self.form.onto(form, true, rules.same)?;
                Some((turn, true))
            }
        }
    }

    fn seen(&mut self, place: Place, form: &Form, turn: f64, over: bool) {
        self.uses.push(Use {
            marking: place.marking,
            paint: place.group,
            at: settled(form.middle - turned(self.form.middle, turn, over)),
            turn: millionth(wrapped(turn)),
            over,
        });
    }

    fn stencil(
        self,
        id: String,
        motif: Motif,
        room: Rect<f64>,
        setting: &Setting,
        rules: &Rules,
    ) -> Stencil {
        let untied: Vec<Opening> = self
            .paint
            .iter()
            .map(|(colour, polygon)| Opening {
                colour: *colour,
                polygon: polygon.clone(),
            })
            .collect();
        let (openings, ties) = tied(untied.clone(), rules);
        let openings: Vec<Opening> = openings
            .into_iter()
            .map(|one| Opening {
                polygon: moved(&one.polygon, settled),
                ..one
            })
            .collect();
        let board = plate(room, rules);
        let board = moved(&board.to_polygon(), settled);
        let mut weak = weak(&board, &untied, &openings, &ties, rules);
        let panels = panels(&id, room, counts(room, rules), &openings, self.front, rules);
        for panel in &panels {
            let open: Vec<Polygon<f64>> = panel
                .openings
                .iter()
                .map(|one| one.polygon.clone())
                .collect();
            weak.extend(falls(&panel.plate, &open).iter().filter_map(|loose| {
                Some(Weak {
                    what: Weakness::Falls,
                    at: bounds([loose])?.center(),
                    width: 0.0,
                    length: outline(loose),
                })
            }));
        }
        Stencil {
            motif,
            colours: colours(&self.paint),
            material: setting.material,
            tool: setting.tool,
            plate: board,
            openings,
            ties: ties
                .into_iter()
                .map(|tie| crate::result::Tie {
                    at: settled(tie.at),
                    way: millionth(tie.way),
                    width: millionth(tie.width),
                    length: millionth(tie.length),
                })
                .collect(),
            front: millionth(wrapped(self.front)),
            panels,
            uses: self.uses,
            weak: weak
                .into_iter()
                .map(|one| Weak {
                    at: settled(one.at),
                    width: millionth(one.width),
                    length: millionth(one.length),
                    ..one
                })
                .collect(),
            id,
        }
    }
}

/// The colours of a motif, that of most of its paint first.
fn colours(paint: &[(Colour, Polygon<f64>)]) -> Vec<Colour> {
    let mut areas: std::collections::BTreeMap<Colour, f64> = std::collections::BTreeMap::new();
    for (colour, shape) in paint {
        *areas.entry(*colour).or_default() += geo::Area::unsigned_area(shape);
    }
    let mut areas: Vec<(Colour, f64)> = areas.into_iter().collect();
    areas.sort_by(|a, b| b.1.total_cmp(&a.1));
    areas.into_iter().map(|(colour, _)| colour).collect()
}

/// A turn in (-pi, pi].
fn wrapped(turn: f64) -> f64 {
    let pi = std::f64::consts::PI;
    let turns = ((turn + pi) / (2.0 * pi)).ceil() - 1.0;
    turn - turns * 2.0 * pi
}
