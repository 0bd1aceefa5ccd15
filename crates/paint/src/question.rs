//! What is to be painted, by whom, and what the project knows of prices.

use std::collections::BTreeMap;

use ledger::Key;
use marking::{Colour, Figure};

use crate::figures::{RATE_CONCRETE, RATE_DENSE, RATE_WORN};
use crate::item::Item;

/// What paint is rolled on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Surface {
    /// Smooth concrete.
    Concrete,
    /// Dense asphalt.
    Dense,
    /// Open or worn asphalt.
    Worn,
}

impl Surface {
    /// All, in the order of `primer.on`.
    pub const ALL: [Surface; 3] = [Surface::Concrete, Surface::Dense, Surface::Worn];

    /// The figure that holds the spreading rate of a first coat.
    pub fn rate(self) -> Key {
        match self {
            Surface::Concrete => RATE_CONCRETE,
            Surface::Dense => RATE_DENSE,
            Surface::Worn => RATE_WORN,
        }
    }
}

/// How dark the ground is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Shade {
    /// Weathered asphalt or concrete.
    Grey,
    /// New or sealed asphalt: light paints want a coat more.
    Black,
}

/// One marking as paint.
#[derive(Clone, Debug, PartialEq)]
pub struct Painted {
    /// The marking's name.
    pub name: String,
    /// Painted area by colour, m².
    pub areas: Vec<(Colour, f64)>,
    /// Metres of painted edge that are masked with tape.
    pub masked: f64,
    /// How often a stencil is laid down for one coat; 0: shapes are filled without one.
    pub stencilled: u32,
    /// Key points of its set-out.
    pub key_points: u32,
    /// Shares of the surfaces that it lies on; they need not sum to 1.
    pub surfaces: Vec<(Surface, f64)>,
}

impl Painted {
    /// A figure on one surface. Without a stencil all its edge is masked.
    pub fn of(
        name: &str,
        figure: &Figure,
        surface: Surface,
        stencilled: u32,
        key_points: u32,
    ) -> Painted {
        Painted {
            name: name.to_owned(),
            areas: figure.paint_area(),
            masked: if stencilled == 0 {
                figure.outline_length()
            } else {
                0.0
            },
            stencilled,
            key_points,
            surfaces: vec![(surface, 1.0)],
        }
    }

    /// Painted area in all, m².
    pub fn area(&self) -> f64 {
        self.areas.iter().map(|(_, area)| area).sum()
    }
}

/// Which cans are sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CanSystem {
    /// Quarts and gallons.
    Us,
    /// Litres.
    Metric,
}

/// What the project knows of prices, in its currency. What is missing is unknown.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Prices {
    /// Size of a can in litres and its price, for every colour that has no row of its own.
    /// Sizes that the ledger does not list are taken as sold, too.
    pub cans: Vec<(f64, f64)>,
    /// The same for single colours.
    pub colours: BTreeMap<Colour, Vec<(f64, f64)>>,
    /// The same for primer.
    pub primer: Vec<(f64, f64)>,
    /// Price of one unit of a thing.
    pub items: BTreeMap<Item, f64>,
}

/// What wears the paint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Wear {
    /// Feet only.
    Feet,
    /// Wheels, too.
    Wheels,
}

/// All that is painted at once.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// The markings.
    pub painted: Vec<Painted>,
    /// How dark the ground is.
    pub shade: Shade,
    /// Coats of a colour where the project has chosen.
    pub coats: BTreeMap<Colour, u32>,
    /// Which cans are sold.
    pub system: CanSystem,
    /// What is known of prices.
    pub prices: Prices,
    /// People who paint.
    pub people: u32,
    /// Days of painting.
    pub days: u32,
    /// Ground swept and washed, m².
    pub swept: f64,
    /// Metres roped off.
    pub roped: f64,
    /// Doors and gates onto the yard.
    pub doors: u32,
}
