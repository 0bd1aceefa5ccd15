//! Clips of routes on figures: what footfall keeps is what is shown.

use footfall::{Activity, Contact, class};
use marking::{Ground, Look, Palette};

use super::*;
use crate::{Role, Way};

/// Every family at its default lengths, every gait, both feet: the contacts of a clip are
/// the route's, and land where the route does.
#[test]
fn the_contacts_of_a_clip_are_those_of_the_route() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let figures = figures();
    let children = [child(5.0)];
    let activities: Vec<Activity> = footfall::GAITS
        .iter()
        .flat_map(|gait| {
            SIDES.map(|side| Activity {
                gait: *gait,
                foot: Some(side),
            })
        })
        .collect();
    let all = class(&figures, &children, &activities, &model.feet);
    let (mut clips, mut run_ups) = (0, 0);
    for (figure, by_activity) in figures.iter().zip(&all) {
        for (activity, footfalls) in activities.iter().zip(by_activity) {
            let routes = footfalls.iter().flat_map(|footfall| &footfall.routes);
            // the longest and a few others: a hundred of one kind teach nothing
            for route in routes.filter(|route| route.n > 0).step_by(7).take(12) {
                let way = Way {
                    gait: &activity.gait,
                    cells: &route.cells,
                    lane: route.lane,
                    contacts: &route.contacts,
                };
                let path = Path::on(figure, &way, &children[0], &model)
                    .expect("the route is the figure's");
                let clip = Clip::of(&path, &model).expect("a clip");
                sound(&clip, &model);
                for row in crate::forms(&clip) {
                    sound(&row.of(&clip, &model), &model);
                }
                assert_eq!(
                    clip.contacts(),
                    route.contacts[1..],
                    "{} {}",
                    figure.family,
                    activity.gait.name
                );
                for (count, cell) in route.cells.iter().enumerate().skip(1) {
                    let (mut sum, mut feet) = (geo::Coord { x: 0.0, y: 0.0 }, 0.0);
                    for print in clip.prints.iter().filter(|print| {
                        print.count == count && matches!(print.role, Role::Contact | Role::Hop)
                    }) {
                        sum = sum + print.at;
                        feet += 1.0;
                    }
                    let off = sum / feet - figure.cells[*cell].centre;
                    // a leading foot keeps to its side of the aim
                    let aside = libm::hypot(off.x, off.y);
                    let most = model.beside * clip.body.foot + ROUNDED;
                    assert!(
                        aside <= most,
                        "{} {}: {aside}",
                        figure.family,
                        activity.gait.name
                    );
                    if !matches!(activity.gait.name, "gallop" | "slide") {
                        assert!(
                            aside < ROUNDED,
                            "{} {}: {aside}",
                            figure.family,
                            activity.gait.name
                        );
                    }
                }
                clips += 1;
                run_ups += usize::from(clip.prints.iter().any(|print| print.role == Role::Run));
            }
        }
    }
    assert!(clips > 100, "only {clips} clips");
    assert!(run_ups > 0, "no leap was run up to");
}

/// The time from the start of the first flight to the last landing is the model's own
/// n / rate, but for the half stances at both ends.
#[test]
fn a_pass_takes_as_long_as_footfall_says() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    for skill in [
        Skill::Jump,
        Skill::Hop,
        Skill::Gallop,
        Skill::Slide,
        Skill::Skip,
    ] {
        for years in AGES {
            let clip = free(skill, Side::Right, years, &model);
            let lands: Vec<f64> = (1..=clip.contacts().len())
                .filter_map(|count| {
                    let mut prints = clip.prints.iter();
                    prints
                        .find(|p| p.count == count && p.role == Role::Contact)
                        .map(|p| p.lands)
                })
                .collect();
            let n = lands.len();
            let ours = lands[n - 1] - lands[0];
            let wanted = (n - 1) as f64 / model.feet.rate(skill, years);
            assert!(
                (ours - wanted).abs() < ROUNDED * n as f64,
                "{}: {ours}, not {wanted}",
                skill.word()
            );
        }
    }
}

#[test]
fn what_the_figure_has_not_makes_no_path() {
    let ledger = ledger();
    let model = Model::of(&ledger);
    let palette = Palette {
        ground: Ground::Asphalt,
    };
    let look = Look::of(palette, &ledger);
    let court = marking::family("court").expect("the court");
    let figure = court.make(&court.defaults(), &look).expect("a court");
    let hop = footfall::Gait::named("hop").expect("the hop");
    let way = |cells, contacts, lane| Way {
        gait: &hop,
        cells,
        lane,
        contacts,
    };
    let path = |way: &Way| Path::on(&figure, way, &child(5.0), &model);
    let good = [Contact::R, Contact::R];
    assert!(path(&way(&[0, 1], &good, None)).is_some());
    assert!(path(&way(&[0, 999], &good, None)).is_none(), "no such cell");
    assert!(path(&way(&[0], &good, None)).is_none(), "a cell is missing");
    assert!(path(&way(&[], &good, Some(7))).is_none(), "no such lane");
    assert!(
        path(&way(&[0, 1], &[Contact::R, Contact::L], None)).is_none(),
        "not a hop"
    );
    assert!(path(&way(&[], &[], None)).is_none(), "nothing");
    let mut child = child(5.0);
    child.means = children::Means::Wheels;
    assert!(Path::on(&figure, &way(&[0, 1], &good, None), &child, &model).is_none());
}
