//! The gallery in the documentation is what the program draws today. `CHALKYARD_BLESS=1`
//! draws it anew: `CHALKYARD_BLESS=1 cargo test --release -p document --test gallery`.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::path::Path;

use ledger::Ledger;

#[test]
fn the_gallery_is_drawn_by_the_program() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/gallery");
    let files = document::gallery::gallery(&Ledger::shipped().expect("a ledger"));
    assert_eq!(files.len(), marking::families().len() + 1);
    let bless = std::env::var_os("CHALKYARD_BLESS").is_some();
    for file in files {
        let path = folder.join(&file.name);
        if bless {
            std::fs::create_dir_all(&folder).expect("a folder");
            std::fs::write(&path, &file.text).expect("written");
        }
        let kept = std::fs::read_to_string(&path).unwrap_or_default();
        assert!(
            kept == file.text,
            "{} is not what the program draws",
            file.name
        );
    }
}
