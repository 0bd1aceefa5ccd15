//! The shopping list: each thing with the rule of the ledger that its quantity follows from.
//!
//! A new thing is an [`Item`], a row of `RULES`, a figure in the ledger and its name in both
//! languages.

use ledger::{Key, Ledger};
use note::Noted;

use crate::cans::{Cover, cheapest};
use crate::figures::{GRIT_DENSITY, GRIT_SHARE, LOSS_FILLED, PRIMER_ON, PRIMER_RATE};
use crate::item::{Item, Unit};
use crate::litres::{ColourPaint, film, on_the_shelf, paints};
use crate::millionth;
use crate::question::{Job, Surface};

/// The figures of the rules.
pub(crate) mod rule {
    ledger::figures! {
        pub TAPE_OVER = "tape.over";
        pub TAPE_STENCIL = "tape.stencil";
        pub TAPE_SHEET = "tape.sheet";
        pub TAPE_ROLL = "tape.roll";
        pub TAPE_WIDTH = "tape.width";
        pub GRIT_BAG = "grit.bag";
        pub GRIT_GRAIN = "grit.grain";
        pub TEAM = "shop.team";
        pub FRAME = "shop.frame";
        pub SLEEVE = "shop.sleeve";
        pub TRAY = "shop.tray";
        pub BRUSH = "shop.brush";
        pub STICK = "shop.stick";
        pub CHALK = "shop.chalk";
        pub STRING = "shop.string";
        pub MEASURE = "shop.measure";
        pub CONE = "shop.cone";
        pub BARRIER = "shop.barrier";
        pub SIGN = "shop.sign";
        pub GLOVE = "shop.glove";
        pub MASK = "shop.mask";
        pub GOGGLES = "shop.goggles";
        pub KNEE = "shop.knee";
        pub KNIFE = "shop.knife";
        pub CUT_GLOVE = "shop.cut_glove";
        pub BROOM = "shop.broom";
        pub BUCKET = "shop.bucket";
        pub RAG = "shop.rag";
        pub SHEET = "shop.sheet";
        pub WASTE_BAG = "shop.waste_bag";
        pub DRINK = "shop.drink";
        pub WASH = "shop.wash";
        pub FIRST_AID = "shop.first_aid";
        pub THERMOMETER = "shop.thermometer";
    }
}

impl Item {
    /// What one unit holds, metres or kilograms, where a unit is more than one of them.
    pub fn pack(self, ledger: &Ledger) -> Option<f64> {
        match self {
            Item::MaskingTape => Some(ledger.number(rule::TAPE_ROLL)),
            Item::Grit => Some(ledger.number(rule::GRIT_BAG)),
            _ => None,
        }
    }
}

/// One line of the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// The thing.
    pub item: Item,
    /// What one unit is.
    pub unit: Unit,
    /// What is needed before rounding up: metres of tape, kilograms of grit, else units.
    pub amount: f64,
    /// Whole units to have.
    pub count: u32,
    /// The figures that the quantity follows from, the rule first.
    pub rules: Vec<Key>,
    /// Price of a unit, if the project named it.
    pub price: Option<f64>,
    /// What the line costs.
    pub cost: Option<f64>,
}

/// The sum of what has a price, and how much has none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Total {
    /// In the project's currency.
    pub known: f64,
    /// Colours, primer and lines without a price: above 0 the total says "at least".
    pub unknown: usize,
}

/// Primer where a surface wants it.
#[derive(Clone, Debug, PartialEq)]
pub struct Primer {
    /// Primed area, m².
    pub area: f64,
    /// Litres, with what is lost.
    pub litres: f64,
    /// What to buy; `None` where no can is sold.
    pub cover: Option<Cover>,
}

/// All that is bought.
#[derive(Clone, Debug, PartialEq)]
pub struct Shopping {
    /// Paint, in the order of the colours.
    pub colours: Vec<ColourPaint>,
    /// Primer, if any surface wants it.
    pub primer: Option<Primer>,
    /// The rest; what is not needed is left out.
    pub lines: Vec<Line>,
    /// What it costs.
    pub total: Total,
}

/// What a quantity goes by.
#[derive(Clone, Copy)]
enum By {
    Job,
    Person,
    PersonDay,
    Team,
    Colour,
    ColourTeam,
    ColourDay,
    ColourTeamDay,
    Day,
    KeyPoint,
    Roped,
    Door,
    Swept,
}

struct Rule(Item, Unit, By, Key);

/// A row for each thing that is simply so many for each of something.
const RULES: &[Rule] = &[
    Rule(Item::RollerFrame, Unit::Piece, By::Team, rule::FRAME),
    Rule(
        Item::RollerSleeve,
        Unit::Piece,
        By::ColourTeamDay,
        rule::SLEEVE,
    ),
    Rule(Item::Tray, Unit::Piece, By::ColourTeam, rule::TRAY),
    Rule(Item::Brush, Unit::Piece, By::Colour, rule::BRUSH),
    Rule(Item::StirringStick, Unit::Piece, By::Colour, rule::STICK),
    Rule(Item::Chalk, Unit::Piece, By::KeyPoint, rule::CHALK),
    Rule(Item::String, Unit::Metre, By::Team, rule::STRING),
    Rule(Item::MeasuringTape, Unit::Piece, By::Job, rule::MEASURE),
    Rule(Item::Cone, Unit::Piece, By::Roped, rule::CONE),
    Rule(Item::BarrierTape, Unit::Metre, By::Roped, rule::BARRIER),
    Rule(Item::Sign, Unit::Piece, By::Door, rule::SIGN),
    Rule(Item::Gloves, Unit::Pair, By::PersonDay, rule::GLOVE),
    Rule(Item::Mask, Unit::Piece, By::PersonDay, rule::MASK),
    Rule(Item::Goggles, Unit::Piece, By::Person, rule::GOGGLES),
    Rule(Item::KneePads, Unit::Pair, By::Person, rule::KNEE),
    Rule(Item::Knife, Unit::Piece, By::Team, rule::KNIFE),
    Rule(Item::CutGlove, Unit::Piece, By::Team, rule::CUT_GLOVE),
    Rule(Item::Broom, Unit::Piece, By::Person, rule::BROOM),
    Rule(Item::Bucket, Unit::Piece, By::Team, rule::BUCKET),
    Rule(Item::Rag, Unit::Piece, By::ColourDay, rule::RAG),
    Rule(Item::WasteBag, Unit::Piece, By::Day, rule::WASTE_BAG),
    Rule(Item::DrinkingWater, Unit::Litre, By::PersonDay, rule::DRINK),
    Rule(Item::WashingWater, Unit::Litre, By::Swept, rule::WASH),
    Rule(Item::FirstAid, Unit::Piece, By::Job, rule::FIRST_AID),
    Rule(Item::Thermometer, Unit::Piece, By::Job, rule::THERMOMETER),
];

impl Total {
    /// Whether the true total is higher than what is known.
    pub fn at_least(&self) -> bool {
        self.unknown > 0
    }
}

/// All that is bought for a job, and what the buyer should hear.
pub fn shop(job: &Job, ledger: &Ledger) -> Noted<Shopping> {
    let colours = paints(job, ledger);
    let primer = primer(job, ledger);
    let lines = lines(job, &colours, ledger);
    let covers = colours
        .iter()
        .map(|paint| &paint.cover)
        .chain(primer.iter().map(|primer| &primer.cover));
    let costs: Vec<Option<f64>> = covers
        .map(|cover| cover.as_ref().and_then(|cover| cover.cost))
        .chain(lines.iter().map(|line| line.cost))
        .collect();
    let shopping = Shopping {
        total: Total {
            known: millionth(costs.iter().flatten().sum()),
            unknown: costs.iter().filter(|cost| cost.is_none()).count(),
        },
        colours,
        primer,
        lines,
    };
    Noted {
        notes: crate::say::notes(job, &shopping),
        value: shopping,
    }
}

/// Primer under all that lies on a surface which wants it.
fn primer(job: &Job, ledger: &Ledger) -> Option<Primer> {
    let on = ledger.list(PRIMER_ON);
    let wants = |surface: Surface| on.get(surface as usize).is_some_and(|on| *on > 0.0);
    let area: f64 = job
        .painted
        .iter()
        .map(|painted| {
            let share: f64 = painted
                .shares()
                .into_iter()
                .filter(|(surface, _)| wants(*surface))
                .map(|(_, share)| share)
                .sum();
            share * painted.area()
        })
        .filter(|area| area.is_finite())
        .sum();
    if area <= 0.0 {
        return None;
    }
    let litres = film(area, ledger.number(PRIMER_RATE), ledger.number(LOSS_FILLED));
    let litres = millionth(litres);
    Some(Primer {
        area: millionth(area),
        litres,
        cover: cheapest(
            litres,
            &on_the_shelf(job.system, &job.prices.primer, ledger),
        ),
    })
}

/// The lines, in the order of [`Item::ALL`].
fn lines(job: &Job, colours: &[ColourPaint], ledger: &Ledger) -> Vec<Line> {
    let mut lines = vec![
        tape(job, colours, ledger),
        grit(colours, ledger),
        Asked {
            item: Item::TestSheet,
            unit: Unit::Piece,
            amount: 1.0,
            pack: 1.0,
            rules: vec![rule::SHEET],
        },
    ];
    for Rule(item, unit, by, figure) in RULES {
        lines.push(Asked {
            item: *item,
            unit: *unit,
            amount: ledger.number(*figure) * times(*by, job, colours.len(), ledger),
            pack: 1.0,
            rules: vec![*figure],
        });
    }
    lines.sort_by_key(|line| line.item);
    lines
        .into_iter()
        .filter_map(|line| line.priced(job, ledger))
        .collect()
}

/// How many there are of what a quantity goes by.
fn times(by: By, job: &Job, colours: usize, ledger: &Ledger) -> f64 {
    let people = f64::from(job.people);
    let days = f64::from(job.days.max(1));
    let colours = colours as f64;
    let teams = (people / ledger.number(rule::TEAM).max(1.0)).ceil();
    let key_points: f64 = job
        .painted
        .iter()
        .map(|painted| f64::from(painted.key_points))
        .sum();
    match by {
        By::Job => 1.0,
        By::Person => people,
        By::PersonDay => people * days,
        By::Team => teams,
        By::Colour => colours,
        By::ColourTeam => colours * teams,
        By::ColourDay => colours * days,
        By::ColourTeamDay => colours * teams * days,
        By::Day => days,
        By::KeyPoint => key_points,
        By::Roped => job.roped,
        By::Door => f64::from(job.doors),
        By::Swept => job.swept,
    }
}

/// A line before its price.
struct Asked {
    item: Item,
    unit: Unit,
    amount: f64,
    /// What one unit holds.
    pack: f64,
    rules: Vec<Key>,
}

impl Asked {
    /// `None` where nothing is needed.
    fn priced(self, job: &Job, ledger: &Ledger) -> Option<Line> {
        // A line that goes a hair over a whole unit by rounding does not ask for one more.
        const HAIR: f64 = 1e-9;
        if !(self.amount.is_finite() && self.amount > 0.0 && self.pack > 0.0) {
            return None;
        }
        let count = ((self.amount / self.pack) - HAIR).ceil().max(1.0) as u32;
        for rule in &self.rules {
            ledger.cite(*rule);
        }
        let price = job
            .prices
            .items
            .get(&self.item)
            .copied()
            .filter(|price| price.is_finite() && *price >= 0.0);
        Some(Line {
            item: self.item,
            unit: self.unit,
            amount: millionth(self.amount),
            count,
            rules: self.rules,
            price,
            cost: price.map(|price| millionth(price * f64::from(count))),
        })
    }
}

/// Masking tape along edges, round stencils and round the sheet of the damp test.
fn tape(job: &Job, colours: &[ColourPaint], ledger: &Ledger) -> Asked {
    let edges: f64 = job.painted.iter().map(|painted| painted.masked).sum();
    let laid: f64 = job
        .painted
        .iter()
        .map(|painted| {
            let most = colours
                .iter()
                .filter(|paint| painted.areas.iter().any(|(has, _)| *has == paint.colour))
                .map(|paint| paint.coats.len())
                .max()
                .unwrap_or(0);
            f64::from(painted.stencilled) * most as f64
        })
        .sum();
    Asked {
        item: Item::MaskingTape,
        unit: Unit::Roll,
        amount: edges * ledger.number(rule::TAPE_OVER)
            + laid * ledger.number(rule::TAPE_STENCIL)
            + ledger.number(rule::TAPE_SHEET),
        pack: ledger.number(rule::TAPE_ROLL),
        rules: vec![
            rule::TAPE_OVER,
            rule::TAPE_STENCIL,
            rule::TAPE_SHEET,
            rule::TAPE_ROLL,
            rule::TAPE_WIDTH,
        ],
    }
}

/// Fine sand in the last coat of every colour, kilograms.
fn grit(colours: &[ColourPaint], ledger: &Ledger) -> Asked {
    let last: f64 = colours.iter().filter_map(|paint| paint.coats.last()).sum();
    Asked {
        item: Item::Grit,
        unit: Unit::Bag,
        amount: last * ledger.number(GRIT_SHARE) * ledger.number(GRIT_DENSITY),
        pack: ledger.number(rule::GRIT_BAG),
        rules: vec![GRIT_SHARE, GRIT_DENSITY, rule::GRIT_BAG, rule::GRIT_GRAIN],
    }
}
