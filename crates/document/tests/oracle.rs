//! What two other programs read out of our papers (`oracle/check_papers.py`), held against
//! what the drawing office meant.

mod common;

use document::drawing::yard::Plan;
use document::plan_sheet;
use document::sheet::{Paper, Sheet};
use ledger::Ledger;
use unit::Units;
use words::Language;

struct Read {
    name: String,
    cells: Vec<String>,
}

fn read() -> Vec<Read> {
    include_str!("../oracle/papers.csv")
        .lines()
        .filter(|line| !line.starts_with('#'))
        .skip(1)
        .map(|line| {
            let mut cells = line.split(',').map(str::to_owned);
            Read {
                name: cells.next().unwrap_or_default(),
                cells: cells.collect(),
            }
        })
        .collect()
}

fn size(paper: [f64; 2]) -> String {
    format!("{:.1}x{:.1}", paper[0], paper[1])
}

/// Millimetres: a hundredth, a tenth of the finest line.
const TRUE: f64 = 0.01;

#[test]
fn papers_are_tagged_in_their_language_on_their_paper_and_true_to_scale() {
    let ledger = Ledger::shipped().expect("the ledger reads");
    let survey = survey::adjust(&common::network(true), &ledger)
        .value
        .expect("a survey");
    let yard = common::yard(&survey);
    let ground = ground::ground(&yard, ground::Standard::UsHandbook, &ledger).value;
    let plan = Plan {
        yard: &yard,
        ground: &ground,
        survey: Some(&survey),
    };
    let first = &survey.points[1];
    let mut reports = 0;
    for paper in read() {
        let [
            language,
            ua,
            pages,
            first_mm,
            other_mm,
            h1,
            h2,
            tables,
            heads,
            figures,
            side,
        ] = paper.cells.as_slice()
        else {
            panic!("{} has other columns", paper.name);
        };
        assert_eq!((ua.as_str(), h1.as_str()), ("1", "1"), "{}", paper.name);
        for (count, least) in [(pages, 2), (h2, 4), (tables, 2), (heads, 8), (figures, 1)] {
            assert!(
                count.parse::<u32>().is_ok_and(|count| count >= least),
                "{}: {count}",
                paper.name
            );
        }
        let Some(tag) = paper.name.strip_prefix("report-") else {
            continue;
        };
        reports += 1;
        let [tongue, paper_name, type_size] = tag.split('-').collect::<Vec<_>>()[..] else {
            panic!("{tag}");
        };
        assert_eq!(language, tongue);
        let on = if paper_name == "a4" {
            Paper::A4
        } else {
            Paper::Letter
        };
        let sheet = Sheet {
            name: "Tern Street",
            language: if tongue == "en" {
                Language::En
            } else {
                Language::Es
            },
            units: if on == Paper::A4 {
                Units::Metres
            } else {
                Units::Feet
            },
            paper: on,
            date: "2026-09-01",
            large: type_size == "large",
            north: Some(38.0),
            credit: None,
            assumed: &[],
        };
        assert_eq!(*other_mm, size(on.upright()), "{tag}");
        let layout = plan_sheet::draw(&sheet, &plan, &ledger).layout;
        assert_eq!(*first_mm, size(layout.size), "{tag}: run the oracle again");
        let wanted = libm::hypot(first.x, first.y) * 1000.0 / f64::from(layout.scale.0);
        let measured: f64 = side.parse().expect("a number");
        assert!(
            (measured - wanted).abs() <= TRUE,
            "{tag}: {measured}, not {wanted}"
        );
    }
    assert_eq!(reports, 5);
}
