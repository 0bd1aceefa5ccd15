//! What the person who cuts and paints should hear.

use note::{Fact, Note, msg};

use crate::material::{Rules, Setting, TurnOver};
use crate::result::{Stencil, Stencils, Weakness, Why};

pub(crate) fn notes(made: &Stencils, setting: &Setting, rules: &Rules) -> Vec<Note> {
    let mut notes = Vec::new();
    if !setting.material.tools().contains(&setting.tool) {
        let tools = setting.material.tools().iter();
        notes.push(
            Note::warning(
                None,
                msg!(
                    "stencil-tool-unfit",
                    tool = setting.tool.word(),
                    material = setting.material.word()
                ),
            )
            .mend(msg!(
                "stencil-tool-fits",
                tool = tools.map(|tool| tool.word()).next().unwrap_or_default(),
                material = setting.material.word()
            )),
        );
    }
    let named = |of: &dyn Fn(&Stencil) -> bool| -> Vec<String> {
        let with = made.stencils.iter().filter(|one| of(one));
        with.map(|one| one.id.clone()).collect()
    };
    let weak =
        |what: Weakness| named(&move |one: &Stencil| one.weak.iter().any(|weak| weak.what == what));
    let falls = weak(Weakness::Falls);
    if !falls.is_empty() {
        notes.push(
            Note::warning(None, msg!("stencil-falls", stencils = falls))
                .mend(msg!("stencil-falls-mend")),
        );
    }
    for (what, key, mend) in [
        (Weakness::Kerf, "stencil-kerf", "stencil-kerf-mend"),
        (Weakness::Opening, "stencil-opening", "stencil-opening-mend"),
        (Weakness::Web, "stencil-web", "stencil-web-mend"),
        (Weakness::Thin, "stencil-thin", "stencil-thin-mend"),
        (Weakness::Tongue, "stencil-tongue", "stencil-tongue-mend"),
        (Weakness::Ties, "stencil-ties", "stencil-ties-mend"),
    ] {
        let ids = weak(what);
        if ids.is_empty() {
            continue;
        }
        let count = ids.len();
        let least = match what {
            Weakness::Thin => rules.tie,
            Weakness::Kerf => rules.kerf,
            Weakness::Web => rules.web,
            _ => rules.least,
        };
        notes.push(
            Note::advice(
                None,
                msg!(
                    key,
                    stencils = ids,
                    count = count,
                    least = Fact::Length(least),
                    times = Fact::Number(rules.tongue, 0),
                    share = Fact::Number(100.0 * rules.tie_share, 0)
                ),
            )
            .mend(msg!(mend)),
        );
    }
    if setting.turn_over == TurnOver::Allowed {
        let over = named(&|one| one.uses.iter().any(|used| used.over));
        if !over.is_empty() {
            notes.push(
                Note::advice(None, msg!("stencil-turned-over", stencils = over))
                    .mend(msg!("stencil-turned-over-mend")),
            );
        }
    }
    let split = named(&|one| one.panels.len() > 1);
    if !split.is_empty() {
        let count = split.len();
        notes.push(Note::advice(
            None,
            msg!(
                "stencil-split",
                stencils = split,
                count = count,
                longest = Fact::Length(rules.longest)
            ),
        ));
    }
    let large = made.taped.iter().filter(|one| one.why == Why::Large);
    let count = large.clone().count();
    if count > 0 {
        let metres: f64 = large.map(|one| one.outline).sum();
        notes.push(Note::advice(
            None,
            msg!(
                "stencil-too-large",
                count = count,
                outline = Fact::Length(metres)
            ),
        ));
    }
    notes
}
