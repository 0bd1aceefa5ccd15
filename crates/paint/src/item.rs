//! The things of the shopping list besides paint.

/// A thing to buy or to bring, besides paint and primer.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)]
pub enum Item {
    MaskingTape,
    Grit,
    RollerFrame,
    RollerSleeve,
    Tray,
    Brush,
    StirringStick,
    Chalk,
    String,
    MeasuringTape,
    Cone,
    BarrierTape,
    Sign,
    Gloves,
    Mask,
    Goggles,
    KneePads,
    Knife,
    CutGlove,
    Broom,
    Bucket,
    Rag,
    TestSheet,
    WasteBag,
    DrinkingWater,
    WashingWater,
    FirstAid,
    Thermometer,
}

/// What one unit of a line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Unit {
    Piece,
    Pair,
    Roll,
    Bag,
    Metre,
    Litre,
}

impl Unit {
    /// The word of files; `shop-unit-` and this word is its name in the catalogue.
    pub fn word(self) -> &'static str {
        match self {
            Unit::Piece => "piece",
            Unit::Pair => "pair",
            Unit::Roll => "roll",
            Unit::Bag => "bag",
            Unit::Metre => "metre",
            Unit::Litre => "litre",
        }
    }
}

impl Item {
    /// Every thing.
    pub const ALL: [Item; 28] = [
        Item::MaskingTape,
        Item::Grit,
        Item::RollerFrame,
        Item::RollerSleeve,
        Item::Tray,
        Item::Brush,
        Item::StirringStick,
        Item::Chalk,
        Item::String,
        Item::MeasuringTape,
        Item::Cone,
        Item::BarrierTape,
        Item::Sign,
        Item::Gloves,
        Item::Mask,
        Item::Goggles,
        Item::KneePads,
        Item::Knife,
        Item::CutGlove,
        Item::Broom,
        Item::Bucket,
        Item::Rag,
        Item::TestSheet,
        Item::WasteBag,
        Item::DrinkingWater,
        Item::WashingWater,
        Item::FirstAid,
        Item::Thermometer,
    ];

    /// The word of files; `shop-` and this word is its name in the catalogue.
    pub fn word(self) -> &'static str {
        match self {
            Item::MaskingTape => "masking-tape",
            Item::Grit => "grit",
            Item::RollerFrame => "roller-frame",
            Item::RollerSleeve => "roller-sleeve",
            Item::Tray => "tray",
            Item::Brush => "brush",
            Item::StirringStick => "stirring-stick",
            Item::Chalk => "chalk-stick",
            Item::String => "string",
            Item::MeasuringTape => "measuring-tape",
            Item::Cone => "cone",
            Item::BarrierTape => "barrier-tape",
            Item::Sign => "sign",
            Item::Gloves => "gloves",
            Item::Mask => "mask",
            Item::Goggles => "goggles",
            Item::KneePads => "knee-pads",
            Item::Knife => "knife",
            Item::CutGlove => "cut-glove",
            Item::Broom => "broom",
            Item::Bucket => "bucket",
            Item::Rag => "rag",
            Item::TestSheet => "test-sheet",
            Item::WasteBag => "waste-bag",
            Item::DrinkingWater => "drinking-water",
            Item::WashingWater => "washing-water",
            Item::FirstAid => "first-aid",
            Item::Thermometer => "thermometer",
        }
    }
}
