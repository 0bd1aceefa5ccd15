//! Whatever stands in a drawing, it is read or told, and never a panic.
#![cfg(test)]

use std::sync::Arc;

use ledger::Ledger;
use marking::{Family, Ground, Look, Palette};
use note::any_error;
use proptest::prelude::*;

const DRAWINGS: [&str; 4] = [
    include_str!("figures/caterpillar.svg"),
    include_str!("figures/lily-pond.svg"),
    include_str!("figures/wind.svg"),
    include_str!("figures/shapes.svg"),
];

fn ledger() -> Ledger {
    Ledger::shipped().expect("the shipped ledger reads")
}

/// Read without a panic; every note lies in the text; what is read can be made.
fn check(text: &str) {
    let ledger = ledger();
    let file: Arc<str> = "f.svg".into();
    let read = drawn::read("f", &file, text, Ground::Asphalt, &ledger);
    assert_eq!(read.value.is_none(), any_error(&read.notes));
    for at in read
        .notes
        .iter()
        .flat_map(|note| note.at.iter().chain(&note.also))
    {
        assert!(
            at.end <= text.len() && text.get(at.start..at.end).is_some(),
            "{at:?}"
        );
    }
    let Some(drawn) = read.value else { return };
    let palette = Palette {
        ground: Ground::Asphalt,
    };
    let look = Look::of(palette, &ledger);
    let mut sizes = vec![drawn.defaults()];
    if let [spec] = drawn.lengths() {
        assert!(spec.least <= spec.default && spec.default <= spec.most);
        sizes.extend([vec![spec.least], vec![spec.most]]);
    }
    for lengths in sizes {
        let figure = drawn.make(&lengths, &look).expect("in range");
        let finite = figure.envelope.exterior().coords();
        assert!(
            finite
                .into_iter()
                .all(|at| at.x.is_finite() && at.y.is_finite())
        );
    }
}

/// A drawing with a few bytes struck out, put in or doubled, cut to valid text.
fn mangled() -> impl Strategy<Value = String> {
    let slip = (
        any::<prop::sample::Index>(),
        0usize..60,
        ".{0,6}|[0-9.eE+-]{1,12}|[<>\"'/&;#()]{1,3}",
    );
    (0..DRAWINGS.len(), prop::collection::vec(slip, 1..6)).prop_map(|(which, slips)| {
        let mut bytes = DRAWINGS[which].as_bytes().to_vec();
        for (at, long, put) in slips {
            let at = at.index(bytes.len().max(1));
            let end = (at + long).min(bytes.len());
            bytes.splice(at..end, put.into_bytes());
        }
        String::from_utf8_lossy(&bytes).into_owned()
    })
}

/// Values of one drawing put where they do not belong.
fn wild() -> impl Strategy<Value = String> {
    let number = prop_oneof![
        Just("1e400".to_owned()),
        Just("-1e308".to_owned()),
        Just("NaN".to_owned()),
        Just("0".to_owned()),
        Just("1e-320".to_owned()),
        any::<f64>().prop_map(|number| number.to_string()),
        (-3000.0..3000.0f64).prop_map(|number| number.to_string()),
    ];
    let shape = (
        prop::sample::select(vec!["cell-1-start", "cell-2-both", "lane-a", "wait-1", "x", "cell-"]),
        prop::collection::vec(number, 12),
        prop::sample::select(vec!["round", "square", "butt", "miter", "bevel"]),
        0u8..6,
    )
        .prop_map(|(id, n, how, which)| {
            let geometry = match which {
                0 => format!("<circle cx='{}' cy='{}' r='{}'", n[0], n[1], n[2]),
                1 => format!("<rect x='{}' y='{}' width='{}' height='{}' rx='{}'", n[0], n[1], n[2], n[3], n[4]),
                2 => format!("<path d='M{} {} C{} {} {} {} {} {} Z'", n[0], n[1], n[2], n[3], n[4], n[5], n[6], n[7]),
                3 => format!("<path d='M{} {} A{} {} {} 1 0 {} {}'", n[0], n[1], n[2], n[3], n[4], n[5], n[6]),
                4 => format!("<polygon points='{}'", n[..8].join(" ")),
                _ => format!("<line x1='{}' y1='{}' x2='{}' y2='{}'", n[0], n[1], n[2], n[3]),
            };
            format!(
                "{geometry} id='{id}' class='paint' stroke='red' stroke-width='{}' stroke-linecap='{how}' \
                 stroke-linejoin='{how}' stroke-miterlimit='{}' stroke-dasharray='{} {}' \
                 transform='matrix({} {} {} {} 0 0)'/>",
                n[8], n[9], n[10], n[11], n[0], n[1], n[2], n[3]
            )
        });
    prop::collection::vec(shape, 1..6).prop_map(|shapes| {
        format!(
            "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 3000 1000'>{}</svg>",
            shapes.join("")
        )
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn slips_in_a_drawing_never_panic(text in mangled()) {
        check(&text);
    }

    #[test]
    fn wild_numbers_never_panic(text in wild()) {
        check(&text);
    }

    #[test]
    fn any_text_never_panics(text in ".{0,200}") {
        check(&text);
    }
}

/// Links to oneself, links to links, and a tower of groups end in a note.
#[test]
fn drawings_without_end_end() {
    let head = "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'>";
    check(&format!("{head}<g id='a'><use href='#a'/></g></svg>"));
    check(&format!(
        "{head}<use id='a' href='#b'/><use id='b' href='#a'/></svg>"
    ));
    let mut laughs = format!("{head}<defs><circle id='l0' r='1'/>");
    for step in 1..30 {
        let one = format!("<use href='#l{}'/>", step - 1);
        laughs.push_str(&format!("<g id='l{step}'>{}</g>", one.repeat(10)));
    }
    check(&format!("{laughs}</defs><use href='#l29'/></svg>"));
    let tower = 3000;
    check(&format!(
        "{head}{}{}</svg>",
        "<g>".repeat(tower),
        "</g>".repeat(tower)
    ));
    check(&format!(
        "{head}<clipPath id='c' clip-path='url(#c)'><rect clip-path='url(#c)' width='1' height='1'/></clipPath><rect clip-path='url(#c)' width='2' height='2'/></svg>"
    ));
    check("<!DOCTYPE svg [<!ENTITY a '&a;&a;'>]><svg xmlns='http://www.w3.org/2000/svg'>&a;</svg>");
    check("\u{feff}<svg xmlns='http://www.w3.org/2000/svg'><circle id='cell-1-x' r='200'/></svg>");
    check("");
}
