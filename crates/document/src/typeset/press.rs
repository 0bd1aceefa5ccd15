//! The typesetter behind a desk of our own: no file system, no network, no clock.
//!
//! Everything that a paper needs lies on the desk: its text, its figures, our face. A
//! warning is a fault, since a paper with a missing letter is not a paper. The same
//! manuscript gives the same bytes.

use std::collections::BTreeMap;
use std::fmt;
use std::sync::LazyLock;

use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards, Timestamp};

use crate::face;

/// Why a paper could not be made: always our fault, never the user's.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault(pub Vec<String>);

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0.join("; "))
    }
}

impl std::error::Error for Fault {}

impl Fault {
    fn of<'a>(told: impl IntoIterator<Item = &'a SourceDiagnostic>) -> Fault {
        Fault(
            told.into_iter()
                .map(|one| one.message.to_string())
                .collect(),
        )
    }
}

/// What every paper shares.
struct Shop {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
}

static SHOP: LazyLock<Shop> = LazyLock::new(|| {
    let fonts: Vec<Font> = face::TRUETYPE
        .iter()
        .filter_map(|bytes| Font::new(Bytes::new(*bytes), 0))
        .collect();
    Shop {
        library: LazyHash::new(Library::default()),
        book: LazyHash::new(FontBook::from_fonts(&fonts)),
        fonts,
    }
});

struct Desk {
    main: Source,
    files: BTreeMap<String, Bytes>,
}

impl World for Desk {
    fn library(&self) -> &LazyHash<Library> {
        &SHOP.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &SHOP.book
    }

    fn main(&self) -> FileId {
        self.main.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.main.id() {
            Ok(self.main.clone())
        } else {
            Err(FileError::AccessDenied)
        }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        self.files
            .get(id.get().vpath().get_without_slash())
            .cloned()
            .ok_or(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        SHOP.fonts.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}

/// Sets a text with its figures and gives the PDF/UA-1 file.
///
/// `ident` names the paper for good; `date` is ISO 8601 and stands in for a clock: where it
/// is no date, the file carries none.
///
/// # Errors
/// [`Fault`] with all that the typesetter found, warnings included.
pub fn press(
    text: String,
    figures: BTreeMap<String, String>,
    ident: &str,
    date: &str,
) -> Result<Vec<u8>, Fault> {
    set(text, figures, ident, date, false)
}

/// The same; `legible` leaves the file's insides unpacked, for the tests to read.
fn set(
    text: String,
    figures: BTreeMap<String, String>,
    ident: &str,
    date: &str,
    legible: bool,
) -> Result<Vec<u8>, Fault> {
    let place = VirtualPath::new("main.typ").map_err(|fault| Fault(vec![format!("{fault:?}")]))?;
    let main = Source::new(RootedPath::new(VirtualRoot::Project, place).intern(), text);
    let files = figures
        .into_iter()
        .map(|(name, svg)| (name, Bytes::from_string(svg)))
        .collect();
    let desk = Desk { main, files };
    let set = typst::compile::<PagedDocument>(&desk);
    let document = set.output.map_err(|told| Fault::of(&told))?;
    if !set.warnings.is_empty() {
        return Err(Fault::of(&set.warnings));
    }
    let standards = PdfStandards::new(&[PdfStandard::Ua_1])
        .map_err(|told| Fault(vec![told.message().to_string()]))?;
    let options = PdfOptions {
        ident: Smart::Custom(ident.to_owned()),
        creator: Smart::Custom(Some("Chalkyard".to_owned())),
        timestamp: timestamp(date),
        standards,
        pretty: legible,
        ..PdfOptions::default()
    };
    let bytes = typst_pdf::pdf(&document, &options).map_err(|told| Fault::of(&told));
    // a desk that stays open all day must not keep every paper it ever set
    typst::comemo::evict(0);
    bytes
}

fn timestamp(date: &str) -> Option<Timestamp> {
    let mut parts = date.splitn(3, '-');
    let year = parts.next()?.parse().ok()?;
    let month = parts.next()?.parse().ok()?;
    let day = parts.next()?.parse().ok()?;
    Datetime::from_ymd_hms(year, month, day, 0, 0, 0).map(Timestamp::new_utc)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::scene::{Path, Scene, Stroke, Text, pen};
    use crate::drawing::svg;

    const A_BAR: &str = "#set document(title: \"Bar\")\n#set text(lang: \"es\", font: \"Atkinson Hyperlegible Next\")\n\
        #set page(width: 210mm, height: 297mm, margin: 0mm)\n\
        #image(\"bar.svg\", width: 210mm, height: 297mm, alt: \"una barra\")";

    fn bar() -> BTreeMap<String, String> {
        let mut scene = Scene::new(210.0, 297.0);
        scene.stroke(
            Path::line(&[[55.0, 100.0], [155.0, 100.0]]),
            Stroke::solid(pen::WALL),
        );
        scene.text(Text::new("100 mm", [55.0, 98.0], 2.5));
        BTreeMap::from([("bar.svg".to_owned(), svg::figure(&scene))])
    }

    /// Lengths in mm of all straight pieces that the pages stroke, by the matrices in force.
    fn strokes(pdf: &str) -> Vec<f64> {
        let (mut lengths, mut numbers, mut stack) = (Vec::new(), Vec::<f64>::new(), Vec::new());
        let mut now = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];
        let mut pen = [0.0; 2];
        let put =
            |m: [f64; 6], x: f64, y: f64| [m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5]];
        for word in pdf.split_whitespace() {
            if let Ok(number) = word.parse() {
                numbers.push(number);
                continue;
            }
            match (word, numbers.as_slice()) {
                ("q", _) => stack.push(now),
                ("Q", _) => now = stack.pop().unwrap_or(now),
                ("cm", &[.., a, b, c, d, e, f]) => {
                    let [x, y] = put(now, e, f);
                    now = [
                        now[0] * a + now[2] * b,
                        now[1] * a + now[3] * b,
                        now[0] * c + now[2] * d,
                        now[1] * c + now[3] * d,
                        x,
                        y,
                    ];
                }
                ("m", &[.., x, y]) => pen = put(now, x, y),
                ("l", &[.., x, y]) => {
                    let to = put(now, x, y);
                    lengths.push(libm::hypot(to[0] - pen[0], to[1] - pen[1]) * 25.4 / 72.0);
                    pen = to;
                }
                ("stream" | "endstream", _) => {
                    (now, stack) = ([1.0, 0.0, 0.0, 1.0, 0.0, 0.0], Vec::new());
                }
                _ => {}
            }
            numbers.clear();
        }
        lengths
    }

    /// A drawing is true to scale: a 100 mm bar measures 100 mm on paper, to 0.01 mm.
    #[test]
    fn a_bar_is_as_long_on_paper_as_it_says() {
        let bytes = set(A_BAR.to_owned(), bar(), "bar", "2026-09-01", true).expect("sets");
        let pdf = String::from_utf8_lossy(&bytes);
        let lengths = strokes(&pdf);
        assert!(
            lengths.iter().any(|length| (length - 100.0).abs() < 0.01),
            "{lengths:?}"
        );
        let size = format!("{:.3}", 210.0 * 72.0 / 25.4);
        assert!(
            pdf.contains(&format!("/MediaBox [0 0 {}", &size[..6])),
            "A4"
        );
    }

    #[test]
    fn the_file_says_what_a_screen_reader_needs() {
        let bytes = set(A_BAR.to_owned(), bar(), "bar", "2026-09-01", true).expect("sets");
        let pdf = String::from_utf8_lossy(&bytes);
        for wanted in [
            "/StructTreeRoot",
            "/Lang (es)",
            "/Alt (una barra)",
            "/S /Figure",
            "pdfuaid:part",
            "/Marked true",
        ] {
            assert!(pdf.contains(wanted), "{wanted}");
        }
    }

    #[test]
    fn the_same_paper_has_the_same_bytes() {
        let once = press(A_BAR.to_owned(), bar(), "bar", "2026-09-01").expect("sets");
        let twice = press(A_BAR.to_owned(), bar(), "bar", "2026-09-01").expect("sets");
        assert_eq!(once, twice);
    }

    #[test]
    fn a_warning_or_a_missing_word_is_a_fault() {
        let silent = A_BAR.replace(", alt: \"una barra\"", "");
        assert!(
            press(silent, bar(), "bar", "2026-09-01").is_err(),
            "no words for the picture"
        );
        let stranger = A_BAR.replace("Atkinson Hyperlegible Next", "No Such Face");
        assert!(
            press(stranger, bar(), "bar", "2026-09-01").is_err(),
            "an unknown face"
        );
        assert!(
            press("#include \"other.typ\"".into(), bar(), "bar", "").is_err(),
            "a file off the desk"
        );
    }
}
