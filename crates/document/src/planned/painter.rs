//! Figures as they are painted: in colour on a swatch of their ground, or outlined and
//! hatched on paper, true to scale.

use geo::{BoundingRect, Centroid};
use marking::{Colour, Figure, Ground};

use crate::drawing::figure::{self, Cover, Paint, paint};
use crate::drawing::hatch::{Rings, hatch};
use crate::drawing::scale::Scale;
use crate::drawing::scene::{
    Colour as Ink, Dash, INK, Path, Rect, Scene, Spot, Stroke, Text, WHITE, pen,
};
use crate::drawing::view::View;
use crate::face::{self, Weight};
use crate::sheet::Sheet;

/// How a figure is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Manner {
    /// In its colours.
    Painted,
    /// In ink, each paint by its hatch.
    Drawn,
}

/// How a paint looks.
pub fn paint_of(colour: Colour) -> Paint {
    match colour {
        Colour::Chalk => paint::CHALK,
        Colour::Straw => paint::STRAW,
        Colour::Harebell => paint::HAREBELL,
        Colour::Sedge => paint::SEDGE,
        Colour::Hip => paint::HIP,
        Colour::Madder => paint::MADDER,
        Colour::Sloe => paint::SLOE,
    }
}

/// The paint of a word of files; `None` for a stranger.
pub fn paint_named(word: &str) -> Option<Colour> {
    Colour::ALL.into_iter().find(|colour| colour.word() == word)
}

/// The ground on a screen (look, section 5).
pub fn ground_colour(ground: Ground) -> Ink {
    match ground {
        Ground::Asphalt => Ink(0x59_59_59),
        Ground::Concrete => Ink(0xA6_A6_A6),
    }
}

/// The key of a paint's name.
pub fn paint_key(colour: Colour) -> &'static str {
    match colour {
        Colour::Chalk => "page-paint-chalk",
        Colour::Straw => "page-paint-straw",
        Colour::Harebell => "page-paint-harebell",
        Colour::Sedge => "page-paint-sedge",
        Colour::Hip => "page-paint-hip",
        Colour::Madder => "page-paint-madder",
        Colour::Sloe => "page-paint-sloe",
    }
}

/// Whether a painted piece is a pebble to wait on.
fn waits(figure: &Figure, piece: &marking::Paint) -> bool {
    /// Metres: a pebble's middle is its waiting spot.
    const ON: f64 = 0.05;
    piece.polygon.centroid().is_some_and(|at| {
        let apart = |spot: &geo::Coord<f64>| libm::hypot(spot.x - at.x(), spot.y - at.y());
        figure.wait.iter().any(|spot| apart(spot) < ON)
    })
}

/// The ground of a figure in its own frame, metres, y up: least and greatest corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extent {
    /// Least x and y.
    pub low: [f64; 2],
    /// Greatest x and y.
    pub high: [f64; 2],
}

impl Extent {
    fn of(rects: impl Iterator<Item = geo::Rect<f64>>) -> Option<Extent> {
        rects
            .map(|rect| Extent {
                low: rect.min().into(),
                high: rect.max().into(),
            })
            .reduce(Extent::with)
    }

    /// What holds both.
    pub fn with(self, other: Extent) -> Extent {
        Extent {
            low: [self.low[0].min(other.low[0]), self.low[1].min(other.low[1])],
            high: [
                self.high[0].max(other.high[0]),
                self.high[1].max(other.high[1]),
            ],
        }
    }

    /// Wider by so many metres on every side.
    pub fn grown(self, by: f64) -> Extent {
        Extent {
            low: self.low.map(|v| v - by),
            high: self.high.map(|v| v + by),
        }
    }

    /// Metres along x and y.
    pub fn size(self) -> [f64; 2] {
        [self.high[0] - self.low[0], self.high[1] - self.low[1]]
    }

    /// All the ground that a figure needs.
    pub fn of_envelope(figure: &Figure) -> Extent {
        let paint = figure
            .paint
            .iter()
            .filter_map(|one| one.polygon.bounding_rect());
        Extent::of(paint.chain(figure.envelope.bounding_rect())).unwrap_or(EMPTY)
    }

    /// The cells, lanes and paint but for the pebbles.
    pub fn of_way(figure: &Figure) -> Extent {
        let paint = figure
            .paint
            .iter()
            .filter(|one| !waits(figure, one))
            .filter_map(|one| one.polygon.bounding_rect());
        let cells = figure.cells.iter().filter_map(|cell| match &cell.outline {
            marking::Outline::Disc { radius } => {
                let reach = geo::Coord {
                    x: *radius,
                    y: *radius,
                };
                Some(geo::Rect::new(cell.centre - reach, cell.centre + reach))
            }
            marking::Outline::Polygon(outline) => outline.bounding_rect(),
        });
        Extent::of(paint.chain(cells)).unwrap_or(EMPTY)
    }

    /// The largest scale of the rulers at which it fits, and the way to the sheet for its
    /// middle to lie at `middle`.
    pub fn fit(self, room: [f64; 2], middle: Spot, sheet: &Sheet) -> (Scale, View) {
        let [w, h] = self.size();
        let fits = |scale: &Scale| w * scale.mm() <= room[0] && h * scale.mm() <= room[1];
        let scale = Scale::all(sheet.units).find(fits).unwrap_or(Scale(5000));
        (scale, self.at(scale, middle))
    }

    /// The way to the sheet at a scale.
    pub fn at(self, scale: Scale, middle: Spot) -> View {
        let mm = scale.mm();
        let centre = [
            (self.low[0] + self.high[0]) / 2.0,
            (self.low[1] + self.high[1]) / 2.0,
        ];
        View {
            mm,
            origin: [middle[0] - centre[0] * mm, middle[1] + centre[1] * mm],
        }
    }
}

const EMPTY: Extent = Extent {
    low: [0.0; 2],
    high: [1.0; 2],
};

/// The painted pieces on the sheet; pebbles on demand.
pub fn pieces(figure: &Figure, view: &View, pebbles: bool) -> Vec<(Rings, Paint)> {
    figure
        .paint
        .iter()
        .filter(|piece| pebbles || !waits(figure, piece))
        .map(|piece| (view.rings(&piece.polygon), paint_of(piece.colour)))
        .collect()
}

/// Draws a figure; `pebbles`: where children wait too.
pub fn draw(scene: &mut Scene, figure: &Figure, view: &View, manner: Manner, pebbles: bool) {
    let outline = if view.mm > 15.0 { pen::ZONE } else { pen::HAIR };
    figure::painted(
        scene,
        &pieces(figure, view, pebbles),
        manner == Manner::Painted,
        outline,
    );
}

/// Draws a figure on a swatch of its ground, without outlines: they are for paper.
pub fn on_ground(scene: &mut Scene, figure: &Figure, view: &View, rect: Rect, ground: Ground) {
    scene.fill(Path::plate(rect, 1.5), ground_colour(ground));
    let ring = view.ring(figure.envelope.exterior());
    let line = Stroke {
        width: pen::ELLIPSE,
        colour: light_on(ground),
        dash: Dash::Long,
    };
    scene.stroke(Path::ring(&ring), line);
    for (rings, paint) in pieces(figure, view, true) {
        let mut path = Path::default();
        rings.iter().for_each(|ring| path.add_ring(ring));
        scene.fill(path, paint.colour);
    }
}

/// What is read on a swatch.
pub fn light_on(ground: Ground) -> Ink {
    match ground {
        Ground::Asphalt => WHITE,
        Ground::Concrete => INK,
    }
}

/// Draws the envelope, dashed.
pub fn envelope(scene: &mut Scene, ring: &[Spot]) {
    scene.stroke(Path::ring(ring), Stroke::dashed(pen::ELLIPSE, Dash::Long));
}

/// A paint's box of a legend, 7 by 4 mm.
pub fn swatch(scene: &mut Scene, at: Spot, colour: Colour, manner: Manner) {
    let Rect { x, y, w, h } = Rect {
        x: at[0],
        y: at[1],
        w: 7.0,
        h: 4.0,
    };
    let ring = vec![[x, y], [x + w, y], [x + w, y + h], [x, y + h]];
    let paint = paint_of(colour);
    let fill = match (manner, paint.cover) {
        (Manner::Painted, _) => paint.colour,
        (Manner::Drawn, Cover::Solid) => INK,
        (Manner::Drawn, _) => WHITE,
    };
    scene.shape(Path::ring(&ring), fill, Stroke::solid(pen::ZONE));
    if let (Manner::Drawn, Cover::Hatched(kind)) = (manner, paint.cover) {
        hatch(scene, kind, &[vec![ring]], &[]);
    }
}

/// The colours of some figures, each once, the lights first.
pub fn colours<'a>(figures: impl IntoIterator<Item = &'a Figure>) -> Vec<Colour> {
    let mut all: Vec<Colour> = figures
        .into_iter()
        .flat_map(|figure| figure.paint.iter().map(|piece| piece.colour))
        .collect();
    all.sort_unstable();
    all.dedup();
    all
}

/// A row of paints with their names from `at` on; returns where it ends.
pub fn legend(
    scene: &mut Scene,
    at: Spot,
    sheet: &Sheet,
    colours: &[Colour],
    manner: Manner,
) -> f64 {
    let cap = sheet.caps().note;
    let mut x = at[0];
    for &colour in colours {
        swatch(scene, [x, at[1]], colour, manner);
        let name = sheet.word(paint_key(colour));
        scene.text(Text::new(
            name.clone(),
            [x + 9.0, at[1] + 2.0 + cap / 2.0],
            cap,
        ));
        x += 9.0 + face::width(&name, cap, Weight::Regular) + 5.0;
    }
    x
}
