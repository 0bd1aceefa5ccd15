//! The traced yard as the text of `survey.toml`.

use std::fmt::Write;

use note::{Fact, Message, msg};
use unit::Units;
use words::{Catalogue, Language};

use super::Yard;
use crate::globe::Degrees;
use crate::remark::{list, quoted, remark};

/// The whole file. Lengths carry their unit, whatever the project's is.
pub(super) fn survey(
    yard: &Yard,
    origin: Degrees,
    credit: Option<&str>,
    assumed: &[&Message],
    sigma: f64,
    language: Language,
) -> String {
    let mut out = String::new();
    let words = Catalogue::of(language);
    let say = |out: &mut String, message: Message| remark(out, &words.say(&message, Units::Metres));
    if let Some(whose) = credit {
        remark(&mut out, whose);
    }
    say(&mut out, msg!("traced-file-head"));
    let degrees = |value: f64| Fact::Number(value, 6);
    say(
        &mut out,
        msg!(
            "traced-file-frame",
            latitude = degrees(origin.latitude),
            longitude = degrees(origin.longitude),
        ),
    );
    out.push('\n');
    if let Some(whose) = credit {
        _ = writeln!(out, "credit = {}", quoted(whose));
    }
    if !assumed.is_empty() {
        say(&mut out, msg!("traced-file-assumed"));
        out.push_str("assumed = [\n");
        for message in assumed {
            _ = writeln!(out, "    {},", quoted(&words.say(message, Units::Metres)));
        }
        out.push_str("]\n");
    }
    _ = writeln!(out, "boundary = {}", list(&yard.boundary));
    _ = writeln!(
        out,
        "walked = \"{}\"",
        if yard.clockwise {
            "clockwise"
        } else {
            "anticlockwise"
        }
    );
    if let [(_, first), (_, second), ..] = yard.points.as_slice() {
        let bearing = libm::atan2(second.x - first.x, second.y - first.y)
            .to_degrees()
            .rem_euclid(360.0);
        _ = writeln!(out, "north = {:.1}", bearing);
    }
    out.push('\n');
    say(
        &mut out,
        msg!("traced-file-known", sigma = Fact::Length(sigma)),
    );
    for (name, at) in &yard.points {
        _ = writeln!(
            out,
            "[[known]]\npoint = \"{name}\"\nx = \"{:.3} m\"\ny = \"{:.3} m\"\nsigma = \"{sigma} m\"\n",
            at.x, at.y
        );
    }
    if !yard.edges.is_empty() {
        say(&mut out, msg!("traced-file-edges"));
    }
    for (from, to, is) in &yard.edges {
        _ = writeln!(
            out,
            "[[edge]]\nfrom = \"{from}\"\nto = \"{to}\"\nis = \"{is}\"\n"
        );
    }
    say(&mut out, msg!("traced-file-surface"));
    _ = writeln!(
        out,
        "[[surface]]\noutline = {}\nis = \"asphalt\"\n",
        list(&yard.boundary)
    );
    for (is, outline) in &yard.surfaces {
        _ = writeln!(
            out,
            "[[surface]]\noutline = {}\nis = \"{is}\"\n",
            list(outline)
        );
    }
    if !yard.fixtures.is_empty() {
        say(&mut out, msg!("traced-file-fixtures"));
    }
    for (name, is, at, radius) in &yard.fixtures {
        _ = writeln!(
            out,
            "[[fixture]]\nname = \"{name}\"\nis = \"{is}\"\nat = \"{at}\"\nradius = \"{radius} m\"\n"
        );
    }
    for (name, outline) in &yard.buildings {
        _ = writeln!(
            out,
            "[[fixture]]\nname = \"{name}\"\nis = \"building\"\noutline = {}\n",
            list(outline)
        );
    }
    if !yard.gates.is_empty() {
        say(&mut out, msg!("traced-file-gates"));
    }
    for (name, from, to) in &yard.gates {
        _ = writeln!(
            out,
            "[[gate]]\nname = \"{name}\"\nfrom = \"{from}\"\nto = \"{to}\"\n"
        );
    }
    _ = writeln!(
        out,
        "[place]\nlatitude = {:.6}\nlongitude = {:.6}",
        origin.latitude, origin.longitude
    );
    out
}
