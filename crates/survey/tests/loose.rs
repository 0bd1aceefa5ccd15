//! What the readings leave open, and what then helps.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test's helpers fail loudly"
)]

mod common;

use common::{Net, at, ledger, near, tape};
use note::{Fact, Note, Severity};
use survey::network::{Datum, Kind, Walked};
use survey::result::{Help, Survey};

fn both(net: &Net) -> (Survey, Vec<Note>) {
    let noted = survey::adjust(&net.0, &ledger());
    (noted.value.expect("an answer"), noted.notes)
}

fn find<'a>(notes: &'a [Note], key: &str) -> &'a Note {
    let keys: Vec<&str> = notes.iter().map(|n| n.what.key).collect();
    notes
        .iter()
        .find(|n| n.what.key == key)
        .unwrap_or_else(|| panic!("{key} is not among {keys:?}"))
}

fn has(notes: &[Note], key: &str) -> bool {
    notes.iter().any(|n| n.what.key == key)
}

const BRACED: &str = "A-B 12.003 B-C 7.996 C-D 12.002 D-A 8.004 A-C 14.424 B-D 14.421";

fn braced(names: &str) -> Net {
    Net::new(names).distances(BRACED, tape).walk("A B C D")
}

#[test]
fn a_point_taped_from_one_other_is_loose_and_the_next_readings_fix_it() {
    let net = braced("A B C D tree").distances("A-tree 5.000", tape);
    let (survey, notes) = both(&net);
    let tree = &survey.points[4];
    assert!(tree.loose && tree.ellipse.is_none());
    assert_eq!(survey.covariance.order, [0, 1, 2, 3]);
    assert!(survey.area.is_some());
    assert_eq!(
        find(&notes, "survey-point-loose").severity,
        Severity::Warning
    );
    let next = &survey.next_readings[0];
    assert_eq!(next.helps, Help::Fixes(4));
    assert!(next.before.is_infinite() && next.after < 0.05, "{next:?}");

    // Taking it gives the tree two places, the second reading chooses between them.
    let second = &survey.next_readings[1];
    assert_eq!(second.helps, Help::Fixes(4));
    let mut net = net;
    for next in [next, second] {
        let q = &survey.points[next.to];
        let length = libm::hypot(q.x - tree.x, q.y - tree.y);
        net = net.read(
            Kind::Distance {
                from: next.to,
                to: 4,
            },
            length,
            tape(length),
        );
    }
    let (fixed, _) = both(&net);
    at(&fixed, "tree", tree.x, tree.y, 0.01);
    near(
        fixed.points[4].ellipse.expect("fixed").a,
        second.after,
        1e-4,
        "long half-axis",
    );
}

#[test]
fn a_loose_corner_is_an_error_and_leaves_no_area() {
    let net = Net::new("A B C D")
        .distances("A-B 12 B-C 8 A-C 14.422 A-D 8", tape)
        .walk("A B C D");
    let (survey, notes) = both(&net);
    assert!(survey.points[3].loose && survey.area.is_none());
    assert_eq!(find(&notes, "survey-point-loose").severity, Severity::Error);
}

#[test]
fn a_missing_diagonal_swings_and_the_diagonal_is_asked_for() {
    let net = Net::new("A B C D")
        .distances("A-B 12 B-C 8 C-D 12 D-A 8", tape)
        .walk("A B C D");
    let (survey, _) = both(&net);
    assert!(survey.points[2].loose && survey.points[3].loose && !survey.points[1].loose);
    let pair = |n: &survey::result::NextReading| (n.from.min(n.to), n.from.max(n.to));
    assert!(
        [(0, 2), (1, 3)].contains(&pair(&survey.next_readings[0])),
        "{:?}",
        survey.next_readings
    );
}

#[test]
fn two_readings_have_two_places_and_the_boundary_chooses() {
    // A fan of triangles without a spare reading: only the walk tells.
    let net = Net::new("A B C D E").walk("A B C D E").distances(
        "A-B 10.000 B-C 6.000 A-C 11.662 C-D 4.000 A-D 10.000 D-E 5.000 A-E 7.810",
        tape,
    );
    let (survey, _) = both(&net);
    assert_eq!(survey.dof, 0);
    assert!(survey.points.iter().all(|p| !p.loose));
    at(&survey, "C", 10.0, 6.0, 0.01);
    at(&survey, "D", 6.3796, 7.7007, 0.001);
    assert!(survey.points[4].y > 5.0 && survey.points[4].x < survey.points[3].x);
    assert_eq!(survey.readings[0].w, None);
}

#[test]
fn the_walk_settles_the_mirror() {
    let mut net = braced("A B C D");
    let (survey, _) = both(&net);
    assert!(survey.points[2].y > 0.0);
    assert_eq!(survey.boundary, [0, 1, 2, 3]);
    net.0.walked = Walked::Clockwise;
    let (survey, notes) = both(&net);
    assert!(survey.points[2].y < 0.0);
    assert_eq!(survey.boundary, [3, 2, 1, 0]);
    assert!(survey.area.expect("closed").value > 0.0 && !has(&notes, "survey-walked-other-way"));
}

#[test]
fn a_thing_taped_from_one_wall_is_taken_as_inside_and_said_so() {
    let net = braced("A B C D tree").distances("A-tree 5.000 B-tree 9.000", tape);
    let (survey, notes) = both(&net);
    assert!(!survey.points[4].loose && survey.points[4].y > 0.0);
    assert_eq!(
        find(&notes, "survey-side-assumed").severity,
        Severity::Advice
    );
}

#[test]
fn a_thing_with_two_places_inside_is_loose_until_a_third_reading() {
    let net = braced("A B C D tree").distances("A-tree 8.000 C-tree 8.000", tape);
    let (survey, notes) = both(&net);
    assert!(survey.points[4].loose);
    find(&notes, "survey-two-places");
    assert_eq!(survey.next_readings[0].helps, Help::Fixes(4));
    // A rough place is enough to choose.
    let told = net
        .start("A", 0.0, 0.0)
        .start("B", 12.0, 0.0)
        .start("D", 0.0, 8.0)
        .start("tree", 4.0, 6.5);
    let (survey, _) = both(&told);
    assert!(
        !survey.points[4].loose && survey.points[4].x < 6.0,
        "{:?}",
        survey.points[4]
    );
}

#[test]
fn an_island_is_named() {
    let net = braced("A B C D p q r").distances("p-q 3 q-r 4 p-r 5", tape);
    let (survey, notes) = both(&net);
    assert!(
        survey.points[4..].iter().all(|p| p.loose) && survey.points[..4].iter().all(|p| !p.loose)
    );
    let note = find(&notes, "survey-not-joined");
    assert_eq!(
        note.what.facts[0].1,
        Fact::Names(vec!["p".into(), "q".into(), "r".into()])
    );
    assert!(!has(&notes, "survey-point-loose"));
    // The island's own readings are still judged: a braced one has its spare reading.
    assert_eq!(survey.dof, 1);
}

#[test]
fn a_loose_line_gives_way_to_a_firm_one() {
    let mut net = braced("pole A B C D").distances("A-pole 3", tape);
    net.0.datum = Datum::Line {
        origin: 1,
        towards: 0,
    };
    let (survey, notes) = both(&net);
    assert_eq!(
        survey.datum,
        Datum::Line {
            origin: 1,
            towards: 2
        }
    );
    assert!(survey.points[0].loose && survey.points[1..].iter().all(|p| !p.loose));
    find(&notes, "survey-line-loose");
}

#[test]
fn what_cannot_be_is_an_error_and_all_of_it_is_told() {
    let net = braced("A B C D")
        .read(Kind::Distance { from: 0, to: 0 }, 3.0, 0.01)
        .read(Kind::Distance { from: 0, to: 1 }, -3.0, 0.01)
        .read(Kind::Distance { from: 0, to: 2 }, 3.0, 0.0)
        .read(
            Kind::Square {
                at: 0,
                from: 1,
                to: 2,
            },
            4.0,
            0.01,
        )
        .read(Kind::Distance { from: 0, to: 9 }, 3.0, 0.01)
        .read(Kind::Distance { from: 0, to: 2 }, f64::NAN, 0.01);
    let noted = survey::adjust(&net.0, &ledger());
    assert!(noted.value.is_none());
    assert_eq!(noted.notes.len(), 6);
    assert!(noted.notes.iter().all(|n| n.severity == Severity::Error));
    assert!(
        survey::adjust(&Net::new("A B").0, &ledger())
            .value
            .is_none()
    );
}

#[test]
fn a_boundary_in_the_wrong_order_crosses_itself() {
    let net = braced("A B C D").walk("A C B D");
    let (_, notes) = both(&net);
    assert_eq!(
        find(&notes, "survey-boundary-crosses").severity,
        Severity::Error
    );
}

#[test]
fn a_reading_longer_than_the_way_round_is_told() {
    let net = Net::new("A B C")
        .distances("A-B 5 B-C 4 A-C 12", tape)
        .walk("A B C");
    let (_, notes) = both(&net);
    find(&notes, "survey-longer-than-round");
}

#[test]
fn known_points_carry_the_frame() {
    let known = braced("A B C D")
        .known("A", 100.0, 50.0, 0.01)
        .known("B", 100.0, 62.0, 0.01);
    let (survey, _) = both(&known);
    at(&survey, "A", 100.0, 50.0, 0.02);
    at(&survey, "C", 92.0, 62.0, 0.05);
    assert!(survey.points[0].sx > 0.0 && !survey.points[0].fixed);
    // One alone cannot, and is not used.
    let (survey, notes) = both(&braced("A B C D").known("A", 100.0, 50.0, 0.01));
    at(&survey, "A", 0.0, 0.0, 0.0);
    find(&notes, "survey-known-too-few");
}

#[test]
fn next_readings_do_what_they_promise() {
    let net = Net::new("A B C D E F")
        .distances(
            "A-B 23.997 B-C 9.996 C-D 10.002 D-E 8.002 E-F 13.998 F-A 17.999 A-C 25.985 A-D 17.199 \
             A-E 22.805 B-D 14.145 B-F 30.000 D-F 16.120",
            tape,
        )
        .walk("A B C D E F");
    let (survey, notes) = both(&net);
    find(&notes, "survey-unchecked");
    let next = survey.next_readings[0].clone();
    let (p, q) = (&survey.points[next.from], &survey.points[next.to]);
    let length = libm::hypot(p.x - q.x, p.y - q.y);
    let sigma = survey
        .readings
        .iter()
        .find(|r| r.kind.points().all(|p| p == next.from || p == next.to))
        .map_or(tape(length), |r| r.sigma);
    let (after, _) = both(&net.read(
        Kind::Distance {
            from: next.from,
            to: next.to,
        },
        length,
        sigma,
    ));
    match next.helps {
        Help::Checks(n) => near(after.readings[n].r, next.after, 2e-3, "redundancy"),
        Help::Separates(group) => {
            let members = &survey.groups[group];
            assert!(
                !after
                    .groups
                    .iter()
                    .any(|g| members.iter().all(|m| g.contains(m))),
                "{next:?}"
            );
        }
        Help::Fixes(_) => panic!("nothing is loose"),
    }
}
