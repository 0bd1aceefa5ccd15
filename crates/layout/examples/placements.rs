//! Prints what `oracle/placement.py` checks: the free ground and the envelopes as laid.
//!
//! `cargo run -p layout --example placements > crates/layout/oracle/placement.json`, then
//! the script, which adds shapely's figures to the file.

#[path = "../tests/common/mod.rs"]
mod common;

use ledger::Ledger;
use serde_json::json;

fn main() {
    let Ok(ledger) = Ledger::shipped() else {
        return;
    };
    let ring = |line: &geo::LineString<f64>| -> Vec<[f64; 2]> {
        line.coords().map(|p| [p.x, p.y]).collect()
    };
    let cases: Vec<_> = common::cases()
        .into_iter()
        .map(|(scale, sizes)| {
            let world = common::world(common::STILL, scale, &sizes);
            let plan = world.plan(&ledger);
            let free: Vec<Vec<_>> = world
                .ground
                .free
                .iter()
                .map(|p| std::iter::once(p.exterior()).chain(p.interiors()).map(ring).collect())
                .collect();
            let envelopes: Vec<_> = plan
                .placed
                .iter()
                .map(|placed| {
                    let pose = placed.pose;
                    let figure = &world.candidates[placed.candidate].figure;
                    ring(figure.placed(pose.at, pose.turn, pose.mirrored).envelope.exterior())
                })
                .collect();
            json!({ "free": free, "envelopes": envelopes, "value": plan.dealt.value, "bound": plan.bound })
        })
        .collect();
    println!("{}", json!({ "cases": cases }));
}
