//! Two real yards (`real/README.md`), and maps that are none.

use super::*;

const PLAY: &str = include_str!("../../real/play-yard.geojson");
const SCHOOL: &str = include_str!("../../real/school-yard.geojson");

fn ledger() -> Ledger {
    Ledger::shipped().expect("the shipped ledger reads")
}

fn trace(text: &str) -> Noted<Option<Traced>> {
    from_outline("yard.geojson", text, &ledger(), Language::En)
}

/// Traces a map, reads the folder that it makes, and walks on to the ground.
fn through(text: &str) -> (Traced, ground::yard::Yard, ground::result::Ground) {
    let traced = trace(text).value.expect("a yard");
    let dir = tempfile::tempdir().expect("a folder");
    let about = "name = \"Traced\"\nunits = \"ft\"\ndate = 2026-09-01\n";
    std::fs::write(dir.path().join("project.toml"), about).expect("a file");
    std::fs::write(dir.path().join("survey.toml"), &traced.survey).expect("a file");
    let read = crate::read(dir.path());
    let errors = |notes: &[Note]| {
        let errors = notes
            .iter()
            .filter(|note| note.severity == note::Severity::Error);
        errors.cloned().collect::<Vec<_>>()
    };
    assert_eq!(errors(&read.notes), [], "{}", traced.survey);
    let project = read.value.expect("a project");
    let network = project.network.as_ref().expect("a network");
    let survey = survey::adjust(network, &project.ledger);
    assert_eq!(errors(&survey.notes), []);
    let yard = crate::yard(&project, &survey.value.expect("a survey"));
    assert_eq!(errors(&yard.notes), []);
    let yard = yard.value.expect("a yard");
    let ground = ground::ground(&yard, project.about.zones, &project.ledger);
    assert_eq!(errors(&ground.notes), []);
    (traced, yard, ground.value)
}

/// Square metres. Corners are rounded to the millimetre: half of that along 200 m of rim.
const AREA: f64 = 0.1;

/// Areas here and below: pyproj 3.7.2 `Geod(ellps="WGS84").polygon_area_perimeter`, on the
/// ellipsoid itself.
#[test]
fn the_play_yard_comes_through_with_all_that_stands_in_it() {
    let (traced, yard, ground) = through(PLAY);
    assert!((traced.area - 429.899).abs() <= AREA, "{}", traced.area);
    assert!((yard.boundary.unsigned_area() - traced.area).abs() < 1e-3);
    let names: Vec<&str> = yard
        .fixtures
        .iter()
        .map(|fixture| fixture.name.as_str())
        .collect();
    // Both trees of the map stand beyond the fence, by 1 m and by 2 m.
    let wanted = [
        "rocker", "house", "sandpit", "building", "slide", "climber", "rocker-2", "lamp",
    ];
    assert_eq!(names, wanted);
    assert_eq!(yard.gates.len(), 1);
    let [from, to] = yard.gates[0].posts;
    assert!((apart(from, to) - 1.2).abs() < 2e-3);
    let hedges = yard
        .edges
        .iter()
        .filter(|edge| edge.is == ground::yard::EdgeKind::Hedge)
        .count();
    assert_eq!(hedges, 3, "the hedge runs along three sides");
    let free = ground.free.unsigned_area();
    assert!(free > 0.0 && free < traced.area);
    assert!(
        traced
            .survey
            .starts_with("# (c) OpenStreetMap contributors, Open Database License")
    );
}

#[test]
fn the_school_keeps_its_building_and_its_walls() {
    let (traced, yard, ground) = through(SCHOOL);
    assert!((traced.area - 2249.033).abs() <= AREA, "{}", traced.area);
    let building = yard
        .fixtures
        .iter()
        .find(|fixture| fixture.name == "building")
        .expect("a building");
    let ground::yard::Footprint::Outline(outline) = &building.shape else {
        panic!("an outline")
    };
    assert!(
        (outline.unsigned_area() - 956.142).abs() <= AREA,
        "{}",
        outline.unsigned_area()
    );
    let free = ground.free.unsigned_area();
    assert!(free < traced.area - outline.unsigned_area(), "{free}");
    assert!(
        yard.edges
            .iter()
            .any(|edge| edge.is == ground::yard::EdgeKind::Wall)
    );
}

#[test]
fn every_assumption_is_told() {
    let keys =
        |text: &str| -> Vec<&str> { trace(text).notes.iter().map(|note| note.what.key).collect() };
    let play = [
        "traced-footprints",
        "traced-gates",
        "traced-outside",
        "traced-surface",
        "traced-sigma",
    ];
    assert_eq!(keys(PLAY), play);
    let school = [
        "traced-sides",
        "traced-gates",
        "traced-unknown",
        "traced-surface",
        "traced-sigma",
    ];
    assert_eq!(keys(SCHOOL), school);
}

#[test]
fn a_bare_polygon_is_a_yard_too() {
    let square = r#"{"type": "Polygon", "coordinates": [[[179.9999, -16.5], [-179.9999, -16.5],
        [-179.9999, -16.4998], [179.9999, -16.4998], [179.9999, -16.5]]]}"#;
    let traced = trace(square).value.expect("a yard");
    // 0.0002 degrees each way at 16.5 degrees south: 21.35 m by 22.13 m on the ellipsoid
    // (WGS 84 radii of curvature, from memory).
    assert!((traced.area - 472.5).abs() < 1.0, "{}", traced.area);
    assert!(
        traced
            .survey
            .contains("boundary = [\"A\", \"B\", \"C\", \"D\"]\nwalked = \"anticlockwise\"")
    );
}

#[test]
fn what_is_no_yard_is_told_and_nothing_is_made() {
    let polygon = |corners: &str| format!(r#"{{"type": "Polygon", "coordinates": [[{corners}]]}}"#);
    for (text, key) in [
        (String::new(), "traced-not-json"),
        (
            "{\"type\": \"Polygon\",\n \"coordinates\": [[}".to_owned(),
            "traced-not-json",
        ),
        ("[1, 2, 3]".to_owned(), "traced-odd"),
        (
            r#"{"type": "Point", "coordinates": [1, 2]}"#.to_owned(),
            "traced-no-yard",
        ),
        (
            polygon(
                "[2500000, 6700000], [2500010, 6700000], [2500010, 6700010], [2500000, 6700000]",
            ),
            "traced-odd",
        ),
        (polygon("[0, 0], [1, 0], [1, 1], [0, 0]"), "traced-too-wide"),
        (
            polygon("[0, 0], [0.00001, 0], [0.00001, 0.00001], [0, 0]"),
            "traced-too-small",
        ),
        (
            polygon("[0, 0], [0.0003, 0.0003], [0.0003, 0], [0, 0.0002], [0, 0]"),
            "traced-crosses",
        ),
        (
            polygon("[0, 89], [0.01, 89], [0.01, 89.0002], [0, 89]"),
            "traced-pole",
        ),
        (
            polygon("[0, 0], [0, 0], [0, 0], [0, 0]"),
            "traced-too-small",
        ),
    ] {
        let noted = trace(&text);
        assert_eq!(noted.value, None, "{text}");
        assert_eq!(
            noted.notes.first().map(|note| note.what.key),
            Some(key),
            "{text}"
        );
    }
}

#[test]
fn the_fault_of_a_broken_file_is_pointed_at() {
    let text = "{\"type\": \"Polygon\",\n \"coordinates\": [[}";
    let noted = trace(text);
    let at = noted.notes[0].at.as_ref().expect("a place");
    assert_eq!(&text[at.start..at.end], "}");
}

#[test]
fn a_comment_never_ends_its_line() {
    let hostile = PLAY.replacen(
        "(c) OpenStreetMap",
        "evil\\nboundary = []\\r\\u0007 OpenStreetMap",
        1,
    );
    let (traced, ..) = through(&hostile);
    assert!(
        traced
            .survey
            .starts_with("# evil boundary = [] OpenStreetMap")
    );
}
