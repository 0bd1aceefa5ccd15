//! Reads a drawing, tells what there is to tell and writes the figure as an SVG:
//! `show DRAWING.svg OUT.svg [free length in metres]`.

use std::fmt::Write as _;
use std::sync::Arc;

use geo::{BoundingRect, Polygon};
use marking::{Family, Figure, Ground, Look, Outline, Palette};
use unit::Units;
use words::{Catalogue, Language, Sheaf, render};

fn main() -> Result<(), String> {
    let mut words = std::env::args().skip(1);
    let (Some(from), Some(to)) = (words.next(), words.next()) else {
        return Err("show DRAWING.svg OUT.svg [free length]".into());
    };
    let text = std::fs::read_to_string(&from).map_err(|fault| fault.to_string())?;
    let ledger = ledger::Ledger::shipped()?;
    let file: Arc<str> = Arc::from(from.as_str());
    let read = drawn::read("figure", &file, &text, Ground::Asphalt, &ledger);
    let catalogue = Catalogue::of(Language::En);
    let files = Sheaf::from([(file, Arc::from(text.as_str()))]);
    for note in &read.notes {
        print!("{}", render(note, &files, catalogue, Units::Metres, false));
    }
    let Some(figure) = read.value else {
        return Ok(());
    };
    let palette = Palette {
        ground: Ground::Asphalt,
    };
    let look = Look::of(palette, &ledger);
    let mut lengths = figure.defaults();
    if let (Some(length), Some(first)) = (words.next(), lengths.first_mut()) {
        *first = length.parse().map_err(|_| "no length")?;
    }
    println!("{:?} for {:?}", figure.lengths(), figure.activities());
    match figure.make(&lengths, &look) {
        Ok(made) => std::fs::write(to, svg(&made)).map_err(|fault| fault.to_string()),
        Err(fault) => Err(format!("{fault:?}")),
    }
}

fn path(out: &mut String, polygon: &Polygon<f64>) {
    for ring in std::iter::once(polygon.exterior()).chain(polygon.interiors()) {
        for (index, at) in ring.coords().enumerate() {
            let _ = write!(
                out,
                "{}{:.4} {:.4}",
                if index == 0 { 'M' } else { 'L' },
                at.x,
                -at.y
            );
        }
        out.push('Z');
    }
}

fn svg(figure: &Figure) -> String {
    let mut out = String::new();
    let Some(bounds) = figure.envelope.bounding_rect() else {
        return out;
    };
    let _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1200\" height=\"{:.0}\" viewBox=\"{} {} {} {}\"><rect x=\"{0}\" y=\"{1}\" width=\"{2}\" height=\"{3}\" fill=\"#595959\"/>",
        1200.0 * bounds.height() / bounds.width(),
        bounds.min().x,
        -bounds.max().y,
        bounds.width(),
        bounds.height()
    );
    let mut shape = |style: &str, polygon: &Polygon<f64>| {
        out.push_str("<path d=\"");
        path(&mut out, polygon);
        let _ = write!(out, "\" {style}/>");
    };
    shape(
        "fill=\"#606060\" stroke=\"#fff\" stroke-width=\".01\"",
        &figure.envelope,
    );
    for paint in &figure.paint {
        let [r, g, b] = paint.colour.srgb();
        shape(
            &format!("fill=\"#{r:02X}{g:02X}{b:02X}\" fill-rule=\"evenodd\""),
            &paint.polygon,
        );
    }
    for cell in &figure.cells {
        if let Outline::Polygon(outline) = &cell.outline {
            shape(
                "fill=\"none\" stroke=\"#e11\" stroke-width=\".006\"",
                outline,
            );
        }
    }
    for cell in &figure.cells {
        let Outline::Disc { radius } = cell.outline else {
            continue;
        };
        let _ = write!(
            out,
            "<circle cx=\"{}\" cy=\"{}\" r=\"{radius}\" fill=\"none\" stroke=\"#e11\" stroke-width=\".006\"/>",
            cell.centre.x, -cell.centre.y
        );
    }
    for cell in &figure.cells {
        let _ = write!(
            out,
            "<circle cx=\"{}\" cy=\"{}\" r=\".02\" fill=\"#e11\"/>",
            cell.centre.x, -cell.centre.y
        );
        for next in cell
            .next
            .iter()
            .flatten()
            .filter_map(|next| figure.cells.get(*next))
        {
            let _ = write!(
                out,
                "<path d=\"M{} {}L{} {}\" stroke=\"#e11\" stroke-width=\".006\"/>",
                cell.centre.x, -cell.centre.y, next.centre.x, -next.centre.y
            );
        }
    }
    for lane in &figure.lanes {
        out.push_str("<path fill=\"none\" stroke=\"#e11\" stroke-width=\".01\" d=\"");
        for (index, at) in lane.line.coords().enumerate() {
            let _ = write!(
                out,
                "{}{:.4} {:.4}",
                if index == 0 { 'M' } else { 'L' },
                at.x,
                -at.y
            );
        }
        out.push_str("\"/>");
        println!("{:?} {} {:?}", lane.kind, lane.width, lane.pieces);
    }
    out.push_str("</svg>");
    out
}
