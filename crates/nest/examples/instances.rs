//! Published instances of strip packing, as a table for docs/nesting.md.
//!
//! `cargo run -p nest --example instances --release > docs/nesting.md` makes the page, with three
//! seeds an instance; after `--`, a number divides the steps and names choose among the
//! instances. Times go to standard error: they are the machine's.

#[path = "../tests/common/mod.rs"]
mod common;

use nest::{Band, Budget, Strip, strip};

/// Walks: one for each of two cores.
const WALKS: usize = 2;

const SEEDS: [u64; 3] = [1, 2, 3];

/// Steps: less than half a minute on two free cores. Then published densities, %: the mean of
/// 50 runs of 20 minutes, and the mean of an older metaheuristic.
const CASES: [(&str, u64, f64, f64); 5] = [
    ("fu", 200_000, 92.249, 87.15),
    ("dagli", 250_000, 89.232, 85.36),
    ("shapes0", 200_000, 68.576, 63.18),
    ("blaz1", 300_000, 84.668, 81.41),
    ("swim", 120_000, 78.302, 72.27),
];

const HEAD: &str = "\
# Nesting: published instances

Made by `cargo run -p nest --example instances --release`; lengths in the instances' own
units, densities in % of height times length. Each of ours is the mean of three seeds, then the
worst. The instances are CC0 (`ESICUP/datasets`; `crates/nest/tests/instances` names each
file's source). *20 minutes* is the mean density of 50 runs of 20 minutes of a strip-packing
heuristic published in 2025, from its run logs; *older* is the mean density of an older
metaheuristic as a paper of 2021 prints it. The first used strips up to 0.01 % higher than the
originals, which are used here and in the second. Steps are counted, so the figures do not
depend on the machine.

| instance | height | parts | steps | bottom-left | length, mean | density, mean | worst | 20 minutes | older |
| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |";

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let divide = args.iter().find_map(|arg| arg.parse().ok()).unwrap_or(1);
    let named = |name: &str| args.iter().any(|arg| arg == name);
    let all = !CASES.iter().any(|case| named(case.0));
    println!("{HEAD}");
    for (name, steps, twenty, older) in CASES {
        if !(all || named(name)) {
            continue;
        }
        let instance = common::instance(name);
        let band = Band {
            height: instance.height,
            margin: 0.0,
            gap: 0.0,
        };
        let run = |seed: &u64| {
            let budget = Budget {
                steps: steps / divide,
                walks: WALKS,
                seed: *seed,
            };
            let clock = std::time::Instant::now();
            let found = strip(&instance.parts, &band, &budget);
            let density = 100.0 * found.density;
            eprintln!("{name} {seed}: {density:.2} in {:.1?}", clock.elapsed());
            found
        };
        let runs: Vec<Strip> = SEEDS.iter().map(run).collect();
        let mean = |of: fn(&Strip) -> f64| runs.iter().map(of).sum::<f64>() / runs.len() as f64;
        let worst = runs.iter().map(|run| run.density).fold(1.0, f64::min);
        println!(
            "| {name} | {} | {} | {} | {:.2} | {:.3} | {:.2} | {:.2} | {twenty:.2} | {older:.2} |",
            instance.height,
            runs[0].placements.len(),
            steps / divide,
            100.0 * runs[0].density * runs[0].length / runs[0].start,
            mean(|run| run.length),
            100.0 * mean(|run| run.density),
            100.0 * worst,
        );
    }
}
