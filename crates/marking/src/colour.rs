//! Paints, the ground they lie on, and whether one can be seen on the other.

use ledger::{Key, Ledger};

use crate::figure::Colour;
use crate::figures::{
    ASPHALT_Y, CHALK_Y, CONCRETE_Y, CONTRAST, CONTRAST_SHARE, HAREBELL_Y, HIP_Y, MADDER_Y, SEDGE_Y,
    SLOE_Y, STRAW_Y,
};

/// What a yard is paved with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum Ground {
    Asphalt,
    Concrete,
}

/// What a shape is for; the palette says which paint that is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// Cells for one foot, lines to tread on, bars.
    Plain,
    /// Starts, chevrons, cells for both feet.
    Bright,
    /// Heel bars and homes of a warm marking.
    Warm,
    /// Rings and lane edges of a cool marking.
    Cool,
    /// Banks.
    Water,
    /// Heel bars of a warm marking; heel bars lie beside a darker paint on concrete.
    HeelWarm,
    /// Heel bars of a cool marking.
    HeelBright,
    /// Heel bars of bright cells.
    HeelPlain,
    /// Pebbles, tellers, ripples.
    Crumb,
}

/// The paints of a yard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Palette {
    /// What they lie on.
    pub ground: Ground,
}

/// How a paint stands out from its ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contrast {
    /// Luminance of the paint less that of the ground, points of Y.
    pub points: f64,
    /// (light - dark) / light.
    pub share: f64,
}

impl Ground {
    /// The figure that holds its luminance.
    pub fn key(self) -> Key {
        match self {
            Ground::Asphalt => ASPHALT_Y,
            Ground::Concrete => CONCRETE_Y,
        }
    }
}

impl Palette {
    /// Five light paints on asphalt; on concrete two dark ones, and Chalk only as a heel
    /// bar beside a dark.
    pub fn colour(self, part: Part) -> Colour {
        match (self.ground, part) {
            (Ground::Asphalt, Part::Plain | Part::Crumb | Part::HeelPlain) => Colour::Chalk,
            (Ground::Asphalt, Part::Bright | Part::HeelBright) => Colour::Straw,
            (Ground::Asphalt, Part::Warm | Part::HeelWarm) => Colour::Hip,
            (Ground::Asphalt, Part::Cool) => Colour::Harebell,
            (Ground::Asphalt, Part::Water) => Colour::Sedge,
            (Ground::Concrete, Part::Plain | Part::Cool | Part::Water) => Colour::Sloe,
            (Ground::Concrete, Part::Bright | Part::Warm | Part::Crumb) => Colour::Madder,
            (Ground::Concrete, Part::HeelWarm | Part::HeelBright | Part::HeelPlain) => {
                Colour::Chalk
            }
        }
    }
}

impl Colour {
    /// All paints, the lights first.
    pub const ALL: [Colour; 7] = [
        Colour::Chalk,
        Colour::Straw,
        Colour::Harebell,
        Colour::Sedge,
        Colour::Hip,
        Colour::Madder,
        Colour::Sloe,
    ];

    /// The word of files.
    pub fn word(self) -> &'static str {
        match self {
            Colour::Chalk => "chalk",
            Colour::Straw => "straw",
            Colour::Harebell => "harebell",
            Colour::Sedge => "sedge",
            Colour::Hip => "hip",
            Colour::Madder => "madder",
            Colour::Sloe => "sloe",
        }
    }

    /// The aim on a screen, sRGB; what counts on the ground is a dry swatch's luminance.
    pub fn srgb(self) -> [u8; 3] {
        match self {
            Colour::Chalk => [0xF4, 0xF0, 0xE4],
            Colour::Straw => [0xF6, 0xD9, 0x64],
            Colour::Harebell => [0xB4, 0xC3, 0xF0],
            Colour::Sedge => [0x49, 0xC0, 0xAC],
            Colour::Hip => [0xEE, 0x96, 0x7A],
            Colour::Madder => [0x7A, 0x22, 0x33],
            Colour::Sloe => [0x23, 0x2B, 0x5E],
        }
    }

    /// The figure that holds its luminance.
    pub fn key(self) -> Key {
        match self {
            Colour::Chalk => CHALK_Y,
            Colour::Straw => STRAW_Y,
            Colour::Harebell => HAREBELL_Y,
            Colour::Sedge => SEDGE_Y,
            Colour::Hip => HIP_Y,
            Colour::Madder => MADDER_Y,
            Colour::Sloe => SLOE_Y,
        }
    }
}

/// How a paint of luminance `paint` stands out from `ground`, both as Y x 100.
pub fn contrast(paint: f64, ground: f64) -> Contrast {
    let (light, dark) = (paint.max(ground), paint.min(ground));
    Contrast {
        points: paint - ground,
        share: (light - dark) / light,
    }
}

/// Whether a paint can be seen on a ground of luminance `ground` (BS8300-2: 30 points; and
/// a share of .70).
pub fn seen(colour: Colour, ground: f64, ledger: &Ledger) -> bool {
    let contrast = contrast(ledger.number(colour.key()), ground);
    contrast.points.abs() >= ledger.number(CONTRAST)
        && contrast.share >= ledger.number(CONTRAST_SHARE)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// CIE Y of an sRGB colour, IEC 61966-2-1.
    fn luminance([r, g, b]: [u8; 3]) -> f64 {
        let linear = |value: u8| {
            let value = f64::from(value) / 255.0;
            if value <= 0.040_45 {
                value / 12.92
            } else {
                libm::pow((value + 0.055) / 1.055, 2.4)
            }
        };
        100.0 * (0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b))
    }

    /// The look's section 2 prints Y to one decimal.
    #[test]
    fn the_screen_aims_have_the_luminance_of_the_ledger() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        for colour in Colour::ALL {
            let (screen, kept) = (luminance(colour.srgb()), ledger.number(colour.key()));
            assert!(
                (screen - kept).abs() < 0.06,
                "{colour:?}: {screen:.2}, not {kept}"
            );
        }
    }

    /// The look's table: difference and share on each ground, as printed. Half the last
    /// printed digit, and what Y's own last digit moves it: 0.05, and 0.05 of 38.
    #[test]
    fn contrasts_are_those_of_the_table() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let printed = [
            (Colour::Chalk, 77.0, 0.89, 49.0, 0.56),
            (Colour::Straw, 60.0, 0.86, 32.0, 0.46),
            (Colour::Harebell, 45.0, 0.82, 17.0, 0.31),
            (Colour::Sedge, 32.0, 0.76, 4.0, 0.10),
            (Colour::Hip, 31.0, 0.76, 3.0, 0.08),
            (Colour::Madder, -4.0, 0.45, -33.0, 0.85),
            (Colour::Sloe, -7.0, 0.71, -35.0, 0.92),
        ];
        for (colour, asphalt, asphalt_share, concrete, concrete_share) in printed {
            for (ground, points, share) in [
                (Ground::Asphalt, asphalt, asphalt_share),
                (Ground::Concrete, concrete, concrete_share),
            ] {
                let ours = contrast(ledger.number(colour.key()), ledger.number(ground.key()));
                assert!(
                    (ours.points - points).abs() <= 0.55,
                    "{colour:?} on {ground:?}: {ours:?}"
                );
                assert!(
                    (ours.share - share).abs() <= 0.006_5,
                    "{colour:?} on {ground:?}: {ours:?}"
                );
            }
        }
    }

    /// Every part is seen, save a heel bar on concrete, which lies beside a dark.
    #[test]
    fn each_ground_has_paints_that_are_seen_on_it() {
        let ledger = Ledger::shipped().expect("the shipped ledger reads");
        let parts = [
            Part::Plain,
            Part::Bright,
            Part::Warm,
            Part::Cool,
            Part::Water,
            Part::Crumb,
        ];
        for ground in [Ground::Asphalt, Ground::Concrete] {
            for part in parts {
                let colour = Palette { ground }.colour(part);
                assert!(
                    seen(colour, ledger.number(ground.key()), &ledger),
                    "{colour:?} on {ground:?}"
                );
            }
        }
        let heel = ledger.number(
            Palette {
                ground: Ground::Concrete,
            }
            .colour(Part::HeelWarm)
            .key(),
        );
        assert!(contrast(heel, ledger.number(SLOE_Y)).share >= ledger.number(CONTRAST_SHARE));
    }
}
