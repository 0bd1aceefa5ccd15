//! `weather/*`: hourly files in open forms.

use std::path::Path;
use std::sync::Arc;

use note::{Note, Place, msg};
use weather::Weather;
use words::Sheaf;

/// One file, read.
#[derive(Clone, Debug)]
pub struct Sky {
    /// Its name in the folder, as `weather/town.epw`.
    pub file: String,
    /// Its hours.
    pub weather: Weather,
}

impl Sky {
    /// The place that the file names; a table of one's own names none but the `yard`.
    pub fn place<'a>(&'a self, yard: &'a str) -> &'a str {
        match self.weather.place.name.as_str() {
            name if name.is_empty() || name == self.file => yard,
            name => name,
        }
    }
}

/// Endings of the forms that [`weather::read`] knows.
const ENDINGS: [&str; 2] = ["epw", "csv"];

/// Larger is no year of hours, bytes.
const MOST: u64 = 64 << 20;

/// Reads every weather file; other files in the folder are left alone.
pub fn skies(dir: &Path, files: &mut Sheaf, notes: &mut Vec<Note>) -> Vec<Sky> {
    let entries = std::fs::read_dir(dir.join("weather")).into_iter().flatten();
    let mut names: Vec<String> = entries
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| {
            let ending = name
                .rsplit_once('.')
                .map(|(_, ending)| ending.to_lowercase());
            ending.is_some_and(|ending| ENDINGS.contains(&ending.as_str()))
        })
        .collect();
    names.sort();
    names
        .into_iter()
        .filter_map(|name| {
            let file = format!("weather/{name}");
            let at = Place::whole(&Arc::from(file.as_str()));
            let path = dir.join(&file);
            let fits = std::fs::metadata(&path).is_ok_and(|about| about.len() <= MOST);
            let bytes = if fits {
                std::fs::read(&path).ok()
            } else {
                None
            };
            let Some(bytes) = bytes else {
                notes.push(Note::error(at, msg!("weather-unreadable", file = &file)));
                return None;
            };
            let text = weather::decode(&bytes);
            let weather = weather::read(&file, &text).pour(notes);
            files.insert(Arc::from(file.as_str()), Arc::from(text.as_str()));
            Some(Sky {
                weather: weather?,
                file,
            })
        })
        .collect()
}
