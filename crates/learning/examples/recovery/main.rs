//! Four hundred simulated classes: does what is learned hold the truth as often as it says?
//! `cargo run --release -p learning --example recovery` prints the tables of `docs/learning.md`.

use children::Skill;
use footfall::Model;
use learning::learn;
use ledger::Ledger;

mod recovered;
mod simulated;

use recovered::Recovered;

/// Classes of each skill.
const CLASSES: u64 = 400;

fn main() {
    let Ok(ledger) = Ledger::shipped() else {
        return;
    };
    let model = Model::of(&ledger);
    for (skill, what) in [
        (Skill::Hop, "hop: tries, checks, counted contacts"),
        (Skill::Jump, "jump: the same and measured bests"),
    ] {
        let mut recovered = Recovered::default();
        for seed in 0..CLASSES {
            let (pupils, truths) = simulated::class(skill, seed, &model, &ledger);
            recovered.hold(
                skill,
                &pupils,
                &truths,
                &learn(&pupils, &model, &ledger).value,
            );
        }
        println!("{}", recovered.table(what));
    }
}
