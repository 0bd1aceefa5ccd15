//! Tern Street, the demo, from its files to its ground.

use std::path::Path;

use geo::Area;
use ground::yard::FixtureKind;

#[test]
fn the_demo_comes_through_with_its_one_misreading_found() {
    let dir = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let read = project::read(&dir);
    assert_eq!(read.notes, [], "the files are sound");
    let project = read.value.expect("a project");
    let network = project.network.as_ref().expect("a network");
    let survey = survey::adjust(network, &project.ledger);
    assert!(!note::any_error(&survey.notes), "{:?}", survey.notes);
    let survey = survey.value.expect("a survey");
    // The demo was drawn as an L of 24 by 18 m with a corner of 10 by 8 m taken out.
    let area = survey.area.expect("an area").value;
    assert!((area - 352.0).abs() < 0.5, "{area}");
    let [suspect] = survey.suspects.as_slice() else {
        panic!("one suspect: {:?}", survey.suspects)
    };
    assert!((survey.readings[suspect.readings[0]].reading - 17.3).abs() < 1e-9);
    assert!(survey.points.iter().all(|point| !point.loose));

    let yard = project::yard(&project, &survey);
    assert_eq!(yard.notes, []);
    let yard = yard.value.expect("a yard");
    assert!((yard.boundary.unsigned_area() - area).abs() < 1e-3);
    let kinds: Vec<FixtureKind> = yard.fixtures.iter().map(|fixture| fixture.is).collect();
    assert_eq!(kinds.len(), 7, "{kinds:?}");
    assert_eq!(
        (yard.doors.len(), yard.gates.len(), yard.routes.len()),
        (2, 1, 2)
    );
    let ground = ground::ground(&yard, project.about.zones, &project.ledger);
    assert!(!note::any_error(&ground.notes), "{:?}", ground.notes);
    let outside = ground
        .notes
        .iter()
        .filter(|note| note.what.key.contains("outside"))
        .count();
    assert_eq!(outside, 0, "everything stands in the yard");
    let free = ground.value.free.unsigned_area();
    assert!(free > 80.0 && free < 250.0, "{free}");
}
