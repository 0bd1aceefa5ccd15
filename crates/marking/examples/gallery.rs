//! Draws every family at three sizes on asphalt, and at its default on concrete, to SVG:
//! `cargo run -p marking --example gallery -- OUT_DIR`. For looking at, not for painting.

use std::fmt::Write as _;
use std::path::Path;

use geo::{BoundingRect, Coord, Polygon};
use ledger::Ledger;
use marking::{Figure, Ground, Look, Outline, Palette, families};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let out = std::env::args()
        .nth(1)
        .ok_or("say where to: gallery OUT_DIR")?;
    let use_marks = std::env::args().nth(2).is_some_and(|word| word == "use");
    std::fs::create_dir_all(&out)?;
    let ledger = Ledger::shipped()?;
    for family in families() {
        for (name, ground, share) in [
            ("small", Ground::Asphalt, 0.15),
            ("default", Ground::Asphalt, f64::NAN),
            ("large", Ground::Asphalt, 0.7),
            ("concrete", Ground::Concrete, f64::NAN),
        ] {
            let look = Look::of(Palette { ground }, &ledger);
            let lengths: Vec<f64> = family
                .lengths()
                .iter()
                .map(|spec| {
                    let length = spec.least + share * (spec.most - spec.least);
                    if share.is_nan() {
                        spec.default
                    } else {
                        (length / spec.step).round() * spec.step
                    }
                })
                .collect();
            let figure = match family.make(&lengths, &look) {
                Ok(figure) => figure,
                Err(fault) => {
                    println!("{} {name}: {fault:?}", family.name());
                    continue;
                }
            };
            let file = Path::new(&out).join(format!("{}-{name}.svg", family.name()));
            std::fs::write(file, svg(&figure, ground, use_marks))?;
        }
    }
    Ok(())
}

fn svg(figure: &Figure, ground: Ground, use_marks: bool) -> String {
    let bounds = figure
        .envelope
        .bounding_rect()
        .map_or((0.0, 0.0, 1.0, 1.0), |rect| {
            (rect.min().x, rect.min().y, rect.width(), rect.height())
        });
    let (x, y, wide, high) = bounds;
    let floor = match ground {
        Ground::Asphalt => "#595959",
        Ground::Concrete => "#A6A6A6",
    };
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{} {} {} {}\"><rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"{floor}\"/>",
        x - 0.1,
        -y - high - 0.1,
        wide + 0.2,
        high + 0.2,
        x - 0.1,
        -y - high - 0.1,
        wide + 0.2,
        high + 0.2
    );
    for paint in &figure.paint {
        let [r, g, b] = paint.colour.srgb();
        let _ = write!(
            text,
            "<path fill=\"rgb({r},{g},{b})\" d=\"{}\"/>",
            path(&paint.polygon)
        );
    }
    if use_marks {
        let line = "fill=\"none\" stroke-width=\".012\"";
        let _ = write!(
            text,
            "<path {line} stroke=\"#fff\" stroke-dasharray=\".06 .03\" d=\"{}\"/>",
            path(&figure.envelope)
        );
        for cell in &figure.cells {
            let Coord { x, y } = cell.centre;
            let _ = write!(
                text,
                "<circle cx=\"{x}\" cy=\"{}\" r=\".02\" fill=\"#f0f\"/>",
                -y
            );
            match &cell.outline {
                Outline::Disc { radius } => {
                    let _ = write!(
                        text,
                        "<circle {line} cx=\"{x}\" cy=\"{}\" r=\"{radius}\" stroke=\"#f0f\"/>",
                        -y
                    );
                }
                Outline::Polygon(outline) => {
                    let _ = write!(
                        text,
                        "<path {line} stroke=\"#f0f\" d=\"{}\"/>",
                        path(outline)
                    );
                }
            }
        }
        for lane in &figure.lanes {
            let points: Vec<String> = lane
                .line
                .coords()
                .map(|at| format!("{},{}", at.x, -at.y))
                .collect();
            let _ = write!(
                text,
                "<polyline {line} stroke=\"#f0f\" points=\"{}\"/>",
                points.join(" ")
            );
        }
    }
    text.push_str("</svg>\n");
    text
}

fn path(polygon: &Polygon<f64>) -> String {
    let mut d = String::new();
    for ring in std::iter::once(polygon.exterior()).chain(polygon.interiors()) {
        for (index, at) in ring.coords().enumerate() {
            let _ = write!(
                d,
                "{}{:.4},{:.4}",
                if index == 0 { "M" } else { "L" },
                at.x,
                -at.y
            );
        }
        d.push('Z');
    }
    d
}
