//! Paint by colour, and the list to take to the shop.

use ::paint::{Cans, Cover, Item, Unit};
use note::{Fact, msg};

use super::Build;
use crate::measure;
use crate::planned::{Planned, painter, words};
use crate::sheet::Sheet;
use crate::typeset::{Column, Manuscript};

/// Writes the pages.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, build: &Build) {
    let litres = |litres: f64| measure::plain(litres, 2, sheet);
    paper.heading(2, &sheet.word("day-paint"));
    paper.lead(&sheet.word("day-paint-how"));
    let rows: Vec<Vec<String>> = build
        .shopping
        .colours
        .iter()
        .map(|paint| {
            let coats: Vec<String> = paint.coats.iter().map(|coat| litres(*coat)).collect();
            vec![
                sheet.word(painter::paint_key(paint.colour)),
                measure::area_figure(paint.area, sheet),
                coats.join(" + "),
                litres(paint.need),
                cans(sheet, paint.cover.as_ref()),
                litres(paint.over.max(0.0)),
            ]
        })
        .collect();
    paper.table(
        &[
            Column::prose(sheet.word("day-column-colour"), 1),
            Column::figures(sheet.say(msg!(
                "office-column-painted",
                unit = measure::unit(sheet.units)
            ))),
            Column::figures(sheet.word("day-column-coats")),
            Column::figures(sheet.word("day-column-need")),
            Column::prose(sheet.word("day-column-cans"), 1),
            Column::figures(sheet.word("day-column-over")),
        ],
        &rows,
        false,
    );
    paper.heading(2, &sheet.word("day-shop"));
    paper.paragraph(&total(sheet, planned, build));
    let mut lines: Vec<String> = build
        .shopping
        .colours
        .iter()
        .map(|paint| {
            sheet.say(msg!(
                "day-shop-paint",
                cans = cans(sheet, paint.cover.as_ref()),
                colour = sheet.word(painter::paint_key(paint.colour)),
                price = cost(
                    sheet,
                    planned,
                    paint.cover.as_ref().and_then(|cover| cover.cost)
                )
            ))
        })
        .collect();
    if let Some(primer) = &build.shopping.primer {
        lines.push(sheet.say(msg!(
            "day-shop-primer",
            cans = cans(sheet, primer.cover.as_ref()),
            price = cost(
                sheet,
                planned,
                primer.cover.as_ref().and_then(|cover| cover.cost)
            )
        )));
    }
    if build.sheets > 0 {
        lines.push(sheet.say(msg!("day-shop-sheets", count = build.sheets)));
    }
    lines.extend(build.shopping.lines.iter().map(|line| {
        sheet.say(msg!(
            "day-shop-line",
            count = u64::from(line.count),
            unit = sheet.say(msg!(unit(line.unit), count = u64::from(line.count))),
            piece = if line.unit == Unit::Piece {
                "yes"
            } else {
                "no"
            },
            thing = sheet.word(thing(line.item)),
            price = cost(sheet, planned, line.cost)
        ))
    }));
    words::ticks(paper, &lines);
    words::small(paper, &sheet.word("day-shop-how"));
}

/// `2 × 2.5 L`, the smallest first.
fn cans(sheet: &Sheet, cover: Option<&Cover>) -> String {
    let size = |cans: &Cans| {
        let litres = cans.size.litres;
        let whole = (litres * 100.0).round() / 100.0;
        let decimals = if whole.fract() == 0.0 { 0 } else { 2 };
        format!(
            "{} × {} L",
            cans.count,
            measure::plain(litres, decimals, sheet)
        )
    };
    cover.map_or_else(
        || sheet.word("day-no-can"),
        |cover| cover.cans.iter().map(size).collect::<Vec<_>>().join(" + "),
    )
}

fn cost(sheet: &Sheet, planned: &Planned, cost: Option<f64>) -> String {
    cost.map_or_else(
        || sheet.word("day-price-unknown"),
        |cost| words::money(sheet, cost, planned.money),
    )
}

fn total(sheet: &Sheet, planned: &Planned, build: &Build) -> String {
    let total = &build.shopping.total;
    sheet.say(msg!(
        "day-shop-total",
        known = words::money(sheet, total.known, planned.money),
        unknown = total.unknown,
        years = u64::from(build.upkeep.years),
        months = Fact::Number(build.upkeep.every, 0)
    ))
}

fn unit(unit: Unit) -> &'static str {
    match unit {
        Unit::Piece => "shop-unit-piece",
        Unit::Pair => "shop-unit-pair",
        Unit::Roll => "shop-unit-roll",
        Unit::Bag => "shop-unit-bag",
        Unit::Metre => "shop-unit-metre",
        Unit::Litre => "shop-unit-litre",
    }
}

/// The key of a thing's name.
pub fn thing(item: Item) -> &'static str {
    match item {
        Item::MaskingTape => "shop-masking-tape",
        Item::Grit => "shop-grit",
        Item::RollerFrame => "shop-roller-frame",
        Item::RollerSleeve => "shop-roller-sleeve",
        Item::Tray => "shop-tray",
        Item::Brush => "shop-brush",
        Item::StirringStick => "shop-stirring-stick",
        Item::Chalk => "shop-chalk-stick",
        Item::String => "shop-string",
        Item::MeasuringTape => "shop-measuring-tape",
        Item::Cone => "shop-cone",
        Item::BarrierTape => "shop-barrier-tape",
        Item::Sign => "shop-sign",
        Item::Gloves => "shop-gloves",
        Item::Mask => "shop-mask",
        Item::Goggles => "shop-goggles",
        Item::KneePads => "shop-knee-pads",
        Item::Knife => "shop-knife",
        Item::CutGlove => "shop-cut-glove",
        Item::Broom => "shop-broom",
        Item::Bucket => "shop-bucket",
        Item::Rag => "shop-rag",
        Item::TestSheet => "shop-test-sheet",
        Item::WasteBag => "shop-waste-bag",
        Item::DrinkingWater => "shop-drinking-water",
        Item::WashingWater => "shop-washing-water",
        Item::FirstAid => "shop-first-aid",
        Item::Thermometer => "shop-thermometer",
    }
}
