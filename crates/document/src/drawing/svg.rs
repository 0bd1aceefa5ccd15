//! A scene as SVG: alone with its letters inside, or as a figure of a paper.

use std::fmt::Write as _;

use base64::Engine as _;

use super::scene::{Anchor, Colour, Dash, Item, Path, Scene, Step, Stroke};
use crate::face::{self, Weight};

/// What a drawing is called and what it shows, for those who do not see it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// Its name.
    pub title: String,
    /// What it shows, in a sentence or two.
    pub says: String,
    /// Language of both: "en", "es".
    pub language: &'static str,
}

/// A drawing that stands alone: true to scale, the letters embedded, title and description.
pub fn alone(scene: &Scene, told: &Told) -> String {
    let mut text = String::new();
    for item in &scene.items {
        if let Item::Text(line) = item {
            text.push_str(&line.words);
        }
    }
    let files = if face::needs_rest_of_latin(&text) {
        4
    } else {
        2
    };
    let mut style = String::from("<style>");
    for (number, bytes) in face::WOFF2.iter().take(files).enumerate() {
        let data = base64::engine::general_purpose::STANDARD.encode(bytes);
        let weight = if number % 2 == 0 { 400 } else { 700 };
        let range = if number < 2 {
            ""
        } else {
            "unicode-range:U+100-2CF,U+1E80-1EFF,U+2020,U+20B9,U+2113;"
        };
        let _ = write!(
            style,
            "@font-face{{font-family:'{}';font-weight:{weight};{range}\
             src:url(data:font/woff2;base64,{data}) format('woff2')}}",
            face::FAMILY
        );
    }
    style.push_str("</style>");
    let head = format!(
        " role=\"img\" aria-labelledby=\"t d\" lang=\"{}\"><title id=\"t\">{}</title><desc id=\"d\">{}</desc>{style}",
        told.language,
        escape(&told.title),
        escape(&told.says),
    );
    write(scene, &head)
}

/// A drawing for a paper, which brings the letters and the words about it.
pub fn figure(scene: &Scene) -> String {
    write(scene, ">")
}

fn write(scene: &Scene, head: &str) -> String {
    let mut out = String::with_capacity(64 * scene.items.len() + head.len());
    let (w, h) = (number(scene.width), number(scene.height));
    let _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\"{head}"
    );
    let _ = write!(
        out,
        "\n<rect width=\"{w}\" height=\"{h}\" fill=\"#FFFFFF\"/><g fill=\"none\" stroke-linejoin=\"round\" font-family=\"'{}', sans-serif\">",
        face::FAMILY
    );
    for item in &scene.items {
        out.push('\n');
        match item {
            Item::Path(path, fill, stroke) => {
                let _ = write!(out, "<path d=\"{}\"", data(path));
                if let Some(colour) = fill {
                    let _ = write!(out, " fill=\"{}\"", hex(*colour));
                }
                if let Some(stroke) = stroke {
                    out.push_str(&pen(stroke));
                }
                out.push_str("/>");
            }
            Item::Text(line) => {
                let [x, y] = line.at.map(number);
                let size = number(line.cap / face::CAP);
                let _ = write!(
                    out,
                    "<text x=\"{x}\" y=\"{y}\" font-size=\"{size}\" fill=\"{}\"",
                    hex(line.colour)
                );
                if line.weight == Weight::Bold {
                    out.push_str(" font-weight=\"700\"");
                }
                match line.anchor {
                    Anchor::Start => {}
                    Anchor::Middle => out.push_str(" text-anchor=\"middle\""),
                    Anchor::End => out.push_str(" text-anchor=\"end\""),
                }
                if line.turn != 0.0 {
                    let _ = write!(out, " transform=\"rotate({} {x} {y})\"", number(line.turn));
                }
                let _ = write!(out, ">{}</text>", escape(&line.words));
            }
        }
    }
    out.push_str("\n</g></svg>\n");
    out
}

fn pen(stroke: &Stroke) -> String {
    let mut out = format!(
        " stroke=\"{}\" stroke-width=\"{}\"",
        hex(stroke.colour),
        number(stroke.width)
    );
    out.push_str(match stroke.dash {
        Dash::Solid => "",
        Dash::Long => " stroke-dasharray=\"3 1\"",
        Dash::Zone => " stroke-dasharray=\"2 1\"",
        Dash::Route => " stroke-dasharray=\"4 1\"",
        Dash::Chain => " stroke-dasharray=\"2.5 0.8 0.4 0.8\"",
        Dash::Dots => " stroke-dasharray=\"0.01 0.99\" stroke-linecap=\"round\"",
        Dash::Short => " stroke-dasharray=\"1 0.6\"",
    });
    out
}

fn data(path: &Path) -> String {
    let mut out = String::with_capacity(12 * path.0.len());
    let mut last = ' ';
    for step in &path.0 {
        match *step {
            Step::Move([x, y]) => {
                let _ = write!(out, "M{} {}", number(x), number(y));
                last = 'M';
            }
            Step::Line([x, y]) => {
                let _ = write!(
                    out,
                    "{}{} {}",
                    if last == 'L' { " " } else { "L" },
                    number(x),
                    number(y)
                );
                last = 'L';
            }
            Step::Arc([a, b], turn, long, clockwise, [x, y]) => {
                let _ = write!(
                    out,
                    "A{} {} {} {} {} {} {}",
                    number(a),
                    number(b),
                    number(turn),
                    u8::from(long),
                    u8::from(clockwise),
                    number(x),
                    number(y)
                );
                last = 'A';
            }
            Step::Close => {
                out.push('Z');
                last = 'Z';
            }
        }
    }
    out
}

/// To a thousandth of a millimetre, without idle zeros.
fn number(value: f64) -> String {
    let mut text = format!("{value:.3}");
    text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    if text == "-0" { "0".to_owned() } else { text }
}

fn hex(colour: Colour) -> String {
    format!("#{:06X}", colour.0 & 0xFF_FFFF)
}

/// Text as XML text.
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            letter if letter.is_control() => out.push(' '),
            letter => out.push(letter),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::scene::{Text, pen};

    #[test]
    fn names_cannot_break_out_of_their_text() {
        let mut scene = Scene::new(50.0, 20.0);
        scene.text(Text::new("</text><script>&", [5.0, 10.0], 2.5));
        let told = Told {
            title: "a<b".into(),
            says: "\"c\"".into(),
            language: "en",
        };
        let svg = alone(&scene, &told);
        assert!(!svg.contains("<script>") && svg.contains("&lt;/text&gt;&lt;script&gt;&amp;"));
        assert!(svg.contains("<title id=\"t\">a&lt;b</title>") && svg.contains("lang=\"en\""));
    }

    #[test]
    fn a_path_is_written_in_thousandths_without_idle_zeros() {
        let mut scene = Scene::new(297.0, 210.0);
        scene.stroke(
            Path::line(&[[10.0, 20.000_4], [110.0, 20.25], [-0.000_1, 1.0]]),
            Stroke::solid(pen::THIN),
        );
        let svg = figure(&scene);
        assert!(svg.contains("d=\"M10 20L110 20.25 0 1\""), "{svg}");
        assert!(svg.contains("width=\"297mm\" height=\"210mm\" viewBox=\"0 0 297 210\""));
    }
}
