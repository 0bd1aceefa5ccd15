//! Sizes and paints that every family draws with.

use std::collections::BTreeMap;

use geo::Polygon;
use ledger::Ledger;

use crate::colour::Palette;
use crate::families::letter_court::CourtLetters;
use crate::figures as key;
use crate::glyph::{self, glyph};

/// What a generator draws with: the paints, and the sizes of the ledger, in metres.
#[derive(Clone, Debug, PartialEq)]
#[allow(missing_docs)]
pub struct Look {
    pub palette: Palette,
    pub band: f64,
    pub eye: f64,
    pub joint: f64,
    pub corner: f64,
    pub corner_broad: f64,
    pub corner_inner: f64,
    pub gap: f64,
    pub broad: f64,
    pub stroke: f64,
    pub piece: f64,
    pub piece_gap: f64,
    pub start: f64,
    pub start_lane: f64,
    pub chevron: f64,
    pub chevron_stroke: f64,
    pub roll: f64,
    pub pebble: f64,
    pub pebble_apart: f64,
    pub teller: f64,
    /// Breadth, least and greatest length.
    pub ripple: [f64; 3],
    pub turn: f64,
    pub cap: f64,
    pub tie: f64,
    pub web: f64,
    pub flat: f64,
    pub stand: f64,
    pub brook_spot: f64,
    pub brook_start_spot: f64,
    pub brook_every: f64,
    pub brook_stand: f64,
    pub brook_land: f64,
    pub brook_start_apart: f64,
    /// Share of the reach by travel against a fixed facing: plain, by cosine, by sine squared.
    pub facing: [f64; 3],
    pub sway: f64,
    pub behind: f64,
    pub wait_round: f64,
    pub run_up: f64,
    pub run_out_run: f64,
    pub run_out_other: f64,
    pub wait_clear: f64,
    /// Whether figures are made without paint and envelope: see [`Look::bare`].
    pub bare: bool,
    /// Numerals and capitals, drawn once and kept.
    pub glyphs: BTreeMap<char, Vec<Polygon<f64>>>,
    /// The letters of a letter court.
    pub letters: CourtLetters,
}

impl Look {
    /// The look on a ground, as the ledger has it.
    pub fn of(palette: Palette, ledger: &Ledger) -> Look {
        let size = |key| ledger.number(key);
        let ripple = match ledger.list(key::RIPPLE) {
            [breadth, least, most] => [*breadth, *least, *most],
            _ => [f64::NAN; 3],
        };
        let facing = match ledger.list(key::FACING) {
            [plain, along, across] => [*plain, *along, *across],
            _ => [f64::NAN; 3],
        };
        Look {
            palette,
            band: size(key::BAND),
            eye: size(key::EYE),
            joint: size(key::JOINT),
            corner: size(key::CORNER),
            corner_broad: size(key::CORNER_BROAD),
            corner_inner: size(key::CORNER_INNER),
            gap: size(key::GAP),
            broad: size(key::BROAD),
            stroke: size(key::STROKE),
            piece: size(key::PIECE),
            piece_gap: size(key::PIECE_GAP),
            start: size(key::START),
            start_lane: size(key::START_LANE),
            chevron: size(key::CHEVRON),
            chevron_stroke: size(key::CHEVRON_STROKE),
            roll: size(key::ROLL),
            pebble: size(key::PEBBLE),
            pebble_apart: size(key::PEBBLE_APART),
            teller: size(key::TELLER),
            ripple,
            turn: size(key::TURN),
            cap: size(key::CAP),
            tie: size(key::TIE),
            web: size(key::WEB),
            flat: size(key::FLAT),
            stand: size(key::STAND),
            brook_spot: size(key::BROOK_SPOT),
            brook_start_spot: size(key::BROOK_START_SPOT),
            brook_every: size(key::BROOK_EVERY),
            brook_stand: size(key::BROOK_STAND),
            brook_land: size(key::BROOK_LAND),
            brook_start_apart: size(key::BROOK_START_APART),
            facing,
            sway: size(key::SWAY),
            behind: size(key::BEHIND),
            wait_round: size(key::WAIT_ROUND),
            run_up: size(key::RUN_UP),
            run_out_run: size(key::RUN_OUT_RUN),
            run_out_other: size(key::RUN_OUT_OTHER),
            wait_clear: size(key::WAIT_CLEAR),
            bare: false,
            glyphs: glyph::kept()
                .map(|character| (character, glyph(character, size(key::CAP), size(key::TIE))))
                .collect(),
            letters: CourtLetters::of(&[], 0),
        }
    }

    /// The same look for figures that are trodden by hundreds and painted nowhere, as when
    /// lengths are looked for: cells, lanes, facing and waiting spots are those of the painted
    /// figure, `paint` and `envelope` are empty. The same lengths make a figure.
    pub fn bare(self) -> Look {
        Look { bare: true, ..self }
    }

    /// The same look with letter courts for these words.
    pub fn lettered(self, words: &[String], seed: u64) -> Look {
        Look {
            letters: CourtLetters::of(words, seed),
            ..self
        }
    }
}
