//! Against the same model in plain numpy and scipy (`oracle/plain.py`), stored unrounded.

use geo::Coord;
use serde::Deserialize;

use super::stored::{StoredChild, StoredClass, StoredFigure, side};
use super::*;
use crate::contact::landings;
use crate::gait::Gait;
use crate::landing::landing;
use crate::normal::owens_t;
use crate::tread::{Activity, Footfall, class, go, tread};
use crate::ways::Ways;

/// Two implementations that differ only in the order of their sums.
const SAME: f64 = 1e-9;

#[derive(Deserialize)]
struct Case {
    name: String,
    figure: StoredFigure,
    child: StoredChild,
    gait: String,
    foot: Option<String>,
    out: Out,
}

#[derive(Deserialize)]
struct Out {
    routes: Vec<OutRoute>,
    well: f64,
    easy: f64,
    hard: f64,
    chosen: Option<usize>,
    good_contacts: Vec<OutGood>,
    pass_s: Option<f64>,
    walk_back_s: Option<f64>,
    practice: Vec<OutPractice>,
}

#[derive(Deserialize)]
struct OutRoute {
    n: usize,
    cells: Vec<usize>,
    contacts: String,
    p: f64,
    pi_0: f64,
    length: f64,
}

#[derive(Deserialize)]
struct OutGood {
    skill: String,
    foot: Option<String>,
    contacts: f64,
}

#[derive(Deserialize)]
struct OutPractice {
    skill: String,
    foot: Option<String>,
    full: f64,
    e: f64,
}

fn near(ours: f64, theirs: f64, what: &str) {
    assert!(
        (ours - theirs).abs() <= SAME,
        "{what}: {ours}, not {theirs}"
    );
}

fn check(name: &str, ours: &Footfall, theirs: &Out) {
    let count = |routes: usize| format!("{name}: {routes} routes");
    assert_eq!(count(ours.routes.len()), count(theirs.routes.len()));
    for (ours, theirs) in ours.routes.iter().zip(&theirs.routes) {
        let contacts: String = ours
            .contacts
            .iter()
            .map(|contact| contact.letter())
            .collect();
        let route = format!("{name}, {:?}", theirs.cells);
        assert_eq!(
            (ours.n, &ours.cells, &contacts),
            (theirs.n, &theirs.cells, &theirs.contacts),
            "{route}"
        );
        near(ours.p, theirs.p, &format!("{route} P"));
        near(ours.pi_0, theirs.pi_0, &format!("{route} pi at 0"));
        near(ours.length, theirs.length, &format!("{route} length"));
    }
    near(ours.pitch.well, theirs.well, &format!("{name} well"));
    near(ours.pitch.easy, theirs.easy, &format!("{name} easy"));
    near(ours.pitch.hard, theirs.hard, &format!("{name} hard"));
    assert_eq!(ours.chosen, theirs.chosen, "{name} chosen");
    assert_eq!(
        ours.good_contacts.len(),
        theirs.good_contacts.len(),
        "{name} good contacts"
    );
    for theirs in &theirs.good_contacts {
        let of = (Skill::of_word(&theirs.skill), side(theirs.foot.as_deref()));
        let good = ours
            .good_contacts
            .iter()
            .find(|good| (Some(good.skill), good.foot) == of);
        near(
            good.map_or(0.0, |good| good.contacts),
            theirs.contacts,
            &format!("{name} good contacts"),
        );
    }
    near(
        ours.pass_s.unwrap_or(-1.0),
        theirs.pass_s.unwrap_or(-1.0),
        &format!("{name} pass"),
    );
    near(
        ours.walk_back_s.unwrap_or(-1.0),
        theirs.walk_back_s.unwrap_or(-1.0),
        &format!("{name} walk back"),
    );
    for theirs in &theirs.practice {
        let skill = Skill::of_word(&theirs.skill).expect("a skill");
        let foot = side(theirs.foot.as_deref());
        let curve = ours
            .curves
            .iter()
            .find(|curve| (curve.skill, curve.foot) == (skill, foot));
        let e = curve.map_or(0.0, |curve| curve.practice(theirs.full));
        assert!(
            (e - theirs.e).abs() <= 5e-7 + SAME,
            "{name} e: {e}, not {}",
            theirs.e
        );
    }
}

#[test]
fn everything_is_as_plain_numpy_has_it() {
    let cases: Vec<Case> = serde_json::from_str(include_str!("../../oracle/figures.json"))
        .expect("the stored figures read");
    assert!(cases.len() > 150);
    let model = model();
    for case in &cases {
        let figure = case.figure.figure();
        let ways = Ways::of(&figure, &model);
        let child = case.child.child();
        let gait = Gait::named(&case.gait).expect("a gait");
        let landings = landings(&ways, &child);
        let ours = go(
            &ways,
            &child,
            &gait,
            side(case.foot.as_deref()),
            &landings,
            &model,
        );
        check(&case.name, &ours, &case.out);
    }
}

#[test]
fn a_class_is_the_same_as_its_children_one_by_one_and_as_plain_numpy_has_it() {
    let stored = StoredClass::read().expect("the stored class reads");
    let model = model();
    let figures: Vec<Figure> = stored.figures.iter().map(StoredFigure::figure).collect();
    let children = stored.children();
    let activities: Vec<Activity> = stored
        .activities
        .iter()
        .map(|(gait, foot)| Activity {
            gait: Gait::named(gait).expect("a gait"),
            foot: side(foot.as_deref()),
        })
        .collect();
    let all = class(&figures, &children, &activities, &model);
    let threads = |n| {
        rayon::ThreadPoolBuilder::new()
            .num_threads(n)
            .build()
            .expect("a pool")
    };
    assert_eq!(
        all,
        threads(1).install(|| class(&figures, &children, &activities, &model))
    );
    assert_eq!(
        all,
        threads(5).install(|| class(&figures, &children, &activities, &model))
    );
    for (f, figure) in figures.iter().enumerate() {
        for (a, activity) in activities.iter().enumerate() {
            for (c, child) in children.iter().enumerate() {
                let ours = &all[f][a][c];
                assert!(
                    (ours.pitch.well - stored.well[f][a][c]).abs() <= 5e-7 + SAME,
                    "{f} {a} {c}"
                );
                if (f + a + c) % 7 == 0 {
                    assert_eq!(
                        *ours,
                        tread(figure, child, &activity.gait, activity.foot, &model)
                    );
                }
            }
        }
    }
}

#[derive(Deserialize)]
struct Tables {
    owens_t: Vec<OwensT>,
    masses: Vec<Mass>,
}

#[derive(Deserialize)]
struct OwensT {
    h: f64,
    a: f64,
    t: f64,
}

#[derive(Deserialize)]
struct Mass {
    corners: Vec<(f64, f64)>,
    sigma: f64,
    mass: f64,
}

fn tables() -> Tables {
    serde_json::from_str(include_str!("../../oracle/owens_t.json")).expect("the stored tables read")
}

/// Source: scipy 1.17.1, `scipy.special.owens_t`.
#[test]
fn owens_t_is_scipys() {
    let tables = tables();
    assert!(tables.owens_t.len() > 200);
    for OwensT { h, a, t } in tables.owens_t {
        let ours = owens_t(h, a);
        assert!((ours - t).abs() <= 2e-15, "T({h}, {a}) is {ours}, not {t}");
    }
    assert!((owens_t(0.7, f64::INFINITY) - 0.5 * 0.241_963_652_223_073_03).abs() < 1e-15);
}

/// Source: scipy 1.17.1, adaptive quadrature of the divergence theorem's line integral.
#[test]
fn landing_masses_are_those_of_quadrature() {
    let tables = tables();
    assert!(tables.masses.len() > 20);
    for Mass {
        corners,
        sigma,
        mass,
    } in tables.masses
    {
        let cell = Cell {
            centre: Coord { x: 0.0, y: 0.0 },
            ..cell((0.0, 0.0), polygon(&corners))
        };
        let ours = landing(&cell, sigma);
        assert!(
            (ours - mass).abs() <= 1e-12,
            "{corners:?}: {ours}, not {mass}"
        );
    }
}
