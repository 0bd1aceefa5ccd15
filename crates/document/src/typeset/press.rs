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
        Fault(told.into_iter().map(|one| one.message.to_string()).collect())
    }
}

/// What every paper shares.
struct Shop {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
}

static SHOP: LazyLock<Shop> = LazyLock::new(|| {
    let fonts: Vec<Font> =
        face::TRUETYPE.iter().filter_map(|bytes| Font::new(Bytes::new(*bytes), 0)).collect();
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
        if id == self.main.id() { Ok(self.main.clone()) } else { Err(FileError::AccessDenied) }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        self.files.get(id.get().vpath().get_without_slash()).cloned().ok_or(FileError::AccessDenied)
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
pub fn press(text: String, figures: BTreeMap<String, String>, ident: &str, date: &str) -> Result<Vec<u8>, Fault> {
    let place = VirtualPath::new("main.typ").map_err(|fault| Fault(vec![format!("{fault:?}")]))?;
    let main = Source::new(RootedPath::new(VirtualRoot::Project, place).intern(), text);
    let files = figures.into_iter().map(|(name, svg)| (name, Bytes::from_string(svg))).collect();
    let desk = Desk { main, files };
    let set = typst::compile::<PagedDocument>(&desk);
    let document = set.output.map_err(|told| Fault::of(&told))?;
    if !set.warnings.is_empty() {
        return Err(Fault::of(&set.warnings));
    }
    let standards = PdfStandards::new(&[PdfStandard::Ua_1]).map_err(|told| Fault(vec![told.message().to_string()]))?;
    let options = PdfOptions {
        ident: Smart::Custom(ident.to_owned()),
        creator: Smart::Custom(Some("Chalkyard".to_owned())),
        timestamp: timestamp(date),
        standards,
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
