//! Files become text, with every fault of the file itself told.

use std::path::Path;
use std::sync::Arc;

use note::{Note, Place, msg};

/// A file that was read.
#[derive(Clone, Debug)]
pub struct Source {
    /// Its name as the user knows it.
    pub name: Arc<str>,
    /// Its text, without a byte-order mark.
    pub text: Arc<str>,
}

impl Source {
    /// A text under a name, a byte-order mark taken off.
    pub fn new(name: &str, text: &str) -> Source {
        Source {
            name: name.into(),
            text: text.strip_prefix('\u{feff}').unwrap_or(text).into(),
        }
    }

    /// A stretch of it.
    pub fn place(&self, start: usize, end: usize) -> Place {
        Place::new(&self.name, start, end)
    }

    /// The whole of it.
    pub fn whole(&self) -> Place {
        Place::whole(&self.name)
    }
}

/// No file that people write by hand is longer: 8 MiB.
const LONGEST: u64 = 8 << 20;

/// Reads one file of the folder; `None` where it is not there, or where a note says why it
/// cannot be read.
pub fn load(dir: &Path, name: &str, notes: &mut Vec<Note>) -> Option<Source> {
    let path = dir.join(name);
    let file: Arc<str> = name.into();
    let fault = |what| Note::error(Place::whole(&file), what);
    let length = match std::fs::metadata(&path) {
        Ok(facts) if facts.is_file() => facts.len(),
        Ok(_) => {
            notes.push(fault(msg!("file-no-file", file = &file)));
            return None;
        }
        Err(fault) if fault.kind() == std::io::ErrorKind::NotFound => return None,
        Err(why) => {
            notes.push(fault(msg!(
                "file-unreadable",
                file = &file,
                why = why.to_string()
            )));
            return None;
        }
    };
    if length > LONGEST {
        notes.push(fault(msg!("file-too-long", file = &file)));
        return None;
    }
    let bytes = match std::fs::read(&path) {
        Ok(bytes) => bytes,
        Err(why) => {
            notes.push(fault(msg!(
                "file-unreadable",
                file = &file,
                why = why.to_string()
            )));
            return None;
        }
    };
    text(name, &bytes, notes)
}

/// Bytes become a text; UTF-16 with its mark is understood, anything else is told.
pub fn text(name: &str, bytes: &[u8], notes: &mut Vec<Note>) -> Option<Source> {
    let wide = |order: fn([u8; 2]) -> u16| -> Option<String> {
        let units: Vec<u16> = bytes[2..]
            .chunks_exact(2)
            .map(|pair| order([pair[0], pair[1]]))
            .collect();
        String::from_utf16(&units).ok()
    };
    let read = match bytes {
        [0xff, 0xfe, ..] => wide(u16::from_le_bytes).ok_or(0),
        [0xfe, 0xff, ..] => wide(u16::from_be_bytes).ok_or(0),
        _ => std::str::from_utf8(bytes)
            .map(str::to_owned)
            .map_err(|fault| fault.valid_up_to()),
    };
    match read {
        Ok(text) => Some(Source::new(name, &text)),
        Err(at) => {
            let line = bytes[..at].iter().filter(|byte| **byte == b'\n').count() + 1;
            let file: Arc<str> = name.into();
            notes.push(
                Note::error(
                    Place::whole(&file),
                    msg!("file-not-utf8", file = &file, line = line),
                )
                .mend(msg!("file-save-as-utf8")),
            );
            None
        }
    }
}
