//! The bytes of cut files: the same for the same stencils, no letter among the cuts. What
//! other programs read in them stands in `outside/test_cut.py`.
#![cfg(test)]

use cutfile::{CutFile, Placed, Sheet, Texts, Version, files};
use ledger::Ledger;
use marking::{Ground, Look, Palette, family};
use stencil::{Applied, Laid, Material, Numerals, Setting, Stencils, Tool, TurnOver, stencils};

fn made(name: &str) -> Stencils {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let ground = Ground::Asphalt;
    let look = Look::of(Palette { ground }, &ledger);
    let family = family(name).expect("a family of the house");
    let lengths: Vec<f64> = family.lengths().iter().map(|one| one.default).collect();
    let figure = family.make(&lengths, &look).expect("defaults fit");
    let setting = Setting {
        material: Material::Film,
        tool: Tool::Laser,
        applied: Applied::Brush,
        turn_over: TurnOver::Never,
        numerals: Numerals::Apart,
    };
    let laid = Laid {
        figure: &figure,
        turn: 0.0,
    };
    stencils(&[laid], &setting, &ledger).value
}

fn written(stencils: &Stencils, version: Version, side_up: &str) -> Vec<CutFile> {
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let sheet = Sheet {
        width: 2.4384,
        height: 1.2192,
        parts: (0..2)
            .map(|stencil| Placed {
                stencil,
                panel: 0,
                turn: 90.0 * stencil as f64,
                x: 0.5 + stencil as f64,
                y: 0.5,
            })
            .collect(),
    };
    let names = stencils.stencils.iter().map(|one| one.motif.slug());
    let texts = Texts {
        units: "Units: mm".to_owned(),
        square: "100 mm".to_owned(),
        side_up: side_up.to_owned(),
        names: names.collect(),
    };
    files(stencils, &[sheet], &texts, version, &ledger)
}

fn text(file: &CutFile) -> &str {
    std::str::from_utf8(&file.bytes).expect("text")
}

#[test]
fn the_same_stencils_give_the_same_bytes() {
    let stencils = made("leap-prints");
    for version in [Version::R2000, Version::R12] {
        let first = written(&stencils, version, "up");
        assert_eq!(first, written(&stencils, version, "up"));
    }
}

#[test]
fn one_file_a_sheet_and_one_a_stencil_whose_names_sort() {
    let files = written(&made("brook"), Version::R2000, "up");
    let names: Vec<&str> = files.iter().map(|file| file.name.as_str()).collect();
    let wanted = [
        "sheet-01",
        "stencil-S01-half-moon-straw",
        "stencil-S02-disc-chalk",
        "stencil-S03-stroke-chalk",
        "stencil-S04-stroke-chalk",
        "stencil-S05-disc-chalk",
    ];
    let wanted: Vec<String> = wanted
        .iter()
        .flat_map(|name| [format!("{name}.dxf"), format!("{name}.svg")])
        .collect();
    assert_eq!(names, wanted);
    let old = written(&made("brook"), Version::R12, "up");
    assert_eq!(old[0].name, "sheet-01-r12-mm.dxf");
}

/// Groups are pairs of lines: a text with a line end would break all that follow.
#[test]
fn a_text_cannot_break_the_groups() {
    let stencils = made("brook");
    let plain = written(&stencils, Version::R2000, "up");
    let odd = written(&stencils, Version::R2000, "up\n0\nEOF\r\n<&\">");
    for (plain, odd) in plain.iter().zip(&odd) {
        if plain.name.ends_with(".dxf") {
            assert_eq!(text(plain).lines().count(), text(odd).lines().count());
            assert_eq!(text(odd).matches("\nEOF\n").count(), 1);
            assert!(odd.bytes.is_ascii());
        } else {
            assert!(text(odd).contains("&lt;&amp;&quot;&gt;"));
        }
    }
}

#[test]
fn no_time_and_no_random_mark_is_written() {
    for file in written(&made("brook"), Version::R2000, "up") {
        for word in ["$TDCREATE", "$TDUPDATE", "$FINGERPRINTGUID", "$VERSIONGUID"] {
            assert!(!text(&file).contains(word), "{}", file.name);
        }
    }
}

/// A sheet may name a part that is not there: the rest is drawn.
#[test]
fn a_part_that_is_missing_is_left_out() {
    let mut stencils = made("brook");
    let whole = written(&stencils, Version::R2000, "up");
    stencils.stencils.truncate(1);
    let files = written(&stencils, Version::R2000, "up");
    assert_eq!(files.len(), 4);
    let parts = |file: &CutFile| text(file).matches("\n1\nup\n").count();
    assert_eq!([parts(&whole[0]), parts(&files[0])], [2, 1]);
}

/// Rounded places of a figure turned in its yard hide no arc: as many sides are arcs.
#[test]
fn arcs_are_found_however_a_figure_lies() {
    use geo::Coord;
    let ledger = Ledger::shipped().expect("the shipped ledger reads");
    let ground = Ground::Asphalt;
    let look = Look::of(Palette { ground }, &ledger);
    let setting = Setting {
        material: Material::Film,
        tool: Tool::Knife,
        applied: Applied::Roller,
        turn_over: TurnOver::Never,
        numerals: Numerals::Apart,
    };
    for name in ["court", "spots", "straight-lane", "leap-prints"] {
        let family = family(name).expect("a family of the house");
        let lengths: Vec<f64> = family.lengths().iter().map(|one| one.default).collect();
        let figure = family.make(&lengths, &look).expect("defaults fit");
        let sides = |turn: f64| -> Vec<[usize; 2]> {
            let figure = figure.placed(Coord { x: 3.0, y: 1.7 }, turn, false);
            let laid = Laid {
                figure: &figure,
                turn,
            };
            let made = stencils(&[laid], &setting, &ledger).value;
            let each = made.stencils.iter();
            each.map(|one| {
                let cuts = one.panels.iter().flat_map(|panel| &panel.cuts);
                cuts.fold([0, 0], |[bent, all], ring| {
                    let corners: Vec<[f64; 2]> = ring
                        .coords()
                        .skip(1)
                        .map(|at| [1000.0 * at.x, 1000.0 * at.y])
                        .collect();
                    let arcs = cutfile::arcs(&corners);
                    let found = arcs.iter().filter(|corner| corner.bulge != 0.0).count();
                    [bent + found, all + corners.len()]
                })
            })
            .collect()
        };
        let still = sides(0.0);
        // a disc, a half-moon and a ring are arcs for the most part
        let first = still.first().expect("a stencil");
        assert!(2 * first[0] > first[1], "{name}: {first:?}");
        for turn in [0.3, 1.9, -2.4] {
            for (ours, wanted) in sides(turn).iter().zip(&still) {
                let off = ours[0].abs_diff(wanted[0]);
                assert!(
                    off <= wanted[0] / 20,
                    "{name} at {turn}: {ours:?}, not {wanted:?}"
                );
            }
        }
    }
}
