//! Lays the letters of a court for words and tells what becomes of them:
//! `cargo run --release -p marking --example letters -- sol pan luna`.

use std::time::Instant;

use marking::CourtLetters;
use marking::lettering::Verdict;

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let before = Instant::now();
    let court = CourtLetters::of(&words, 1);
    let took = before.elapsed();
    let (columns, _) = court.size();
    let rows: Vec<&[Option<char>]> = court.cells().chunks(columns).collect();
    for row in rows.iter().rev() {
        let letters: Vec<String> = row
            .iter()
            .map(|cell| cell.map_or("·".to_owned(), |letter| letter.to_string()))
            .collect();
        println!("{}", letters.join(" "));
    }
    for word in court.words() {
        match word.verdict {
            Verdict::Jumpable { longest, .. } => println!("{}: {longest:.2} steps", word.word),
            ref why => println!("{}: {why:?}", word.word),
        }
    }
    println!(
        "{} of {} words, longest jump {:.2} steps, {}, {took:?}",
        court.jumpable(),
        words.len(),
        court.longest(1.0).unwrap_or(0.0),
        if court.proven() {
            "proven best"
        } else {
            "as found"
        },
    );
}
