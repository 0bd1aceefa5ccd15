//! The yard in plan on one sheet: drawn, labelled, with its title block and legend.

use ledger::Ledger;
use note::msg;
use unit::Units;

use crate::drawing::block::{self, Title};
use crate::drawing::compose::{Layout, compose};
use crate::drawing::label;
use crate::drawing::scale::Scale;
use crate::drawing::scene::Scene;
use crate::drawing::svg::Told;
use crate::drawing::taken::{Slab, Taken, weight};
use crate::drawing::yard::{self, Plan};
use crate::measure;
use crate::sheet::Sheet;

/// A drawn sheet and what it shows.
pub struct Drawn {
    /// The drawing.
    pub scene: Scene,
    /// Its name and description.
    pub told: Told,
    /// How it was laid out.
    pub layout: Layout,
}

/// Draws the yard on one sheet.
pub fn draw(sheet: &Sheet, plan: &Plan, ledger: &Ledger) -> Drawn {
    let entries = block::entries(plan);
    let areas = areas(sheet, plan);
    let title = |scale: Scale| Title {
        kind: sheet.word("doc-kind-survey"),
        rows: vec![
            (
                sheet.word("doc-row-scale"),
                sheet.say(msg!(
                    "doc-scale-on",
                    scale = scale.says(sheet.units),
                    paper = sheet.paper.name()
                )),
            ),
            (sheet.word("doc-row-date"), sheet.date.to_owned()),
            (sheet.word("doc-row-yard"), areas.yard.clone()),
            (sheet.word("doc-row-free"), areas.free.clone()),
            (
                sheet.word("doc-row-lengths"),
                sheet.word(match sheet.units {
                    Units::Metres => "doc-lengths-metres",
                    Units::Feet => "doc-lengths-feet",
                }),
            ),
        ],
        scale,
        caution: match sheet.credit {
            Some(credit) => format!("{} {credit}", sheet.word("doc-caution-plan")),
            None => sheet.word("doc-caution-plan"),
        },
    };
    let layout = compose(sheet, plan, &entries, &title);
    let [width, height] = layout.size;
    let mut scene = Scene::new(width, height);
    let mut taken = Taken::new(width, height);
    for block in [
        Some(layout.title),
        layout.legend.map(|(rect, _)| rect),
        layout.inset,
    ]
    .into_iter()
    .flatten()
    {
        taken.slab(&Slab::level(block.grown(1.0)), weight::NEVER);
    }
    yard::draw(&mut scene, &mut taken, plan, &layout.view);
    label::write(&mut scene, &mut taken, sheet, plan, &layout.view, ledger);
    block::title(
        &mut scene,
        [layout.title.x, layout.title.y],
        sheet,
        &title(layout.scale),
    );
    if let Some((rect, columns)) = layout.legend {
        block::legend(&mut scene, [rect.x, rect.y], sheet, &entries, columns);
    }
    if let (Some(rect), Some(survey)) = (layout.inset, plan.survey) {
        block::inset(
            &mut scene,
            rect,
            sheet,
            survey,
            ledger.number(survey::figures::UNCHECKED),
        );
    }
    let bounds = crate::drawing::scene::Rect::round(
        plan.yard.boundary.exterior().coords().map(|c| [c.x, c.y]),
    );
    let (w, h) = bounds.map_or((0.0, 0.0), |rect| (rect.w, rect.h));
    let told = Told {
        title: sheet.say(msg!(
            "doc-told-title",
            name = sheet.name,
            kind = sheet.word("doc-kind-survey")
        )),
        says: sheet.say(msg!(
            "doc-told-yard",
            name = sheet.name,
            scale = layout.scale.says(sheet.units),
            width = measure::length(w, sheet),
            height = measure::length(h, sheet),
            area = areas.yard.as_str(),
            fixtures = plan.yard.fixtures.len(),
            doors = plan.yard.doors.len(),
            gates = plan.yard.gates.len()
        )),
        language: sheet.language.tag(),
    };
    Drawn {
        scene,
        told,
        layout,
    }
}

/// The two areas of a title block, each with half its 95 % interval where it is known.
pub struct Areas {
    /// The whole yard.
    pub yard: String,
    /// What may be painted.
    pub free: String,
}

/// The areas in words. What is blocked is laid out from the edges, so that the free ground
/// is as sure as the yard: both carry the survey's doubt.
pub fn areas(sheet: &Sheet, plan: &Plan) -> Areas {
    use geo::Area as _;
    let show = |value: f64| match plan.survey.and_then(|survey| survey.area) {
        Some(area) => measure::area_and_doubt(value, area.sigma, sheet),
        None => measure::area(value, sheet),
    };
    let whole = plan
        .survey
        .and_then(|survey| survey.area)
        .map_or(plan.ground.yard.unsigned_area(), |area| area.value);
    Areas {
        yard: show(whole),
        free: show(plan.ground.free.unsigned_area()),
    }
}
