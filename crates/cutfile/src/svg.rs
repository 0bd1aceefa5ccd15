//! SVG 1.1 in millimetres: one unit of the view box is one millimetre.

use std::fmt::Write;

use crate::curve::{Corner, centre};
use crate::drawing::{Drawing, Layer, Mark, fine};

/// A drawing as SVG 1.1; y goes down in the file, so that it shows as it lies.
pub fn svg(drawing: &Drawing) -> Vec<u8> {
    let [width, height] = drawing.size.map(fine);
    let mut text = String::new();
    // writing to a String cannot fail
    let _ = write!(
        text,
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" \
         version=\"1.1\" width=\"{width}mm\" height=\"{height}mm\" \
         viewBox=\"0 0 {width} {height}\">\n<title>{}</title>\n",
        escaped(&drawing.title)
    );
    for layer in Layer::ALL {
        let stroke = match layer {
            Layer::Cut => "#ff0000",
            Layer::Mark => "#0000ff",
            Layer::Sheet => "#808080",
            Layer::Scale => "#000000",
        };
        let _ = writeln!(
            text,
            "<g id=\"{}\" fill=\"none\" stroke=\"{stroke}\" stroke-width=\"0.1\">",
            layer.name()
        );
        if layer == Layer::Cut {
            for cut in &drawing.cuts {
                let _ = writeln!(text, "<path d=\"{}\"/>", path(cut, height));
            }
        }
        for mark in &drawing.marks {
            mark_text(&mut text, mark, layer, stroke, height);
        }
        text.push_str("</g>\n");
    }
    text.push_str("</svg>\n");
    text.into_bytes()
}

fn mark_text(text: &mut String, mark: &Mark, layer: Layer, stroke: &str, height: f64) {
    let points = |line: &[[f64; 2]]| {
        let points = line
            .iter()
            .map(|[x, y]| format!("{x},{}", fine(height - y)));
        points.collect::<Vec<_>>().join(" ")
    };
    let _ = match mark {
        Mark::Line(own, line) if *own == layer => {
            writeln!(text, "<polyline points=\"{}\"/>", points(line))
        }
        Mark::Ring(own, line) if *own == layer => {
            writeln!(text, "<polygon points=\"{}\"/>", points(line))
        }
        Mark::Text {
            layer: own,
            at,
            high,
            turn,
            text: words,
        } if *own == layer => {
            let [x, y] = [at[0], fine(height - at[1])];
            // a capital is about 0.7 of the type size in common faces
            let size = fine(high / 0.7);
            let turn = fine(-turn);
            writeln!(
                text,
                "<text x=\"{x}\" y=\"{y}\" font-family=\"sans-serif\" font-size=\"{size}\" \
                 text-anchor=\"middle\" fill=\"{stroke}\" stroke=\"none\" \
                 transform=\"rotate({turn} {x} {y})\">{}</text>",
                escaped(words)
            )
        }
        _ => Ok(()),
    };
}

fn path(cut: &[Corner], height: f64) -> String {
    let mut path = String::new();
    for (index, corner) in cut.iter().enumerate() {
        let Some(next) = cut.get((index + 1) % cut.len()) else {
            continue;
        };
        if index == 0 {
            let _ = write!(path, "M{},{}", corner.x, fine(height - corner.y));
        }
        let (x, y) = (next.x, fine(height - next.y));
        if corner.bulge == 0.0 {
            if index + 1 < cut.len() {
                let _ = write!(path, "L{x},{y}");
            }
        } else {
            let (_, radius) = centre(*corner, *next, corner.bulge);
            let radius = fine(radius);
            // y is turned over, so anticlockwise sweeps the other way
            let sweep = u8::from(corner.bulge < 0.0);
            let _ = write!(path, "A{radius},{radius} 0 0 {sweep} {x},{y}");
        }
    }
    path.push('Z');
    path
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}
