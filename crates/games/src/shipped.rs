//! The games that come with the program.

use std::sync::OnceLock;

use crate::game::Game;
use crate::read::read;

/// Files of a folder of this room, by name. A test holds each list against its folder.
macro_rules! files {
    ($folder:literal: $($name:literal)*) => {
        &[$(($name, include_str!(concat!("../", $folder, "/", $name, ".toml")))),*]
    };
}
pub(crate) use files;

/// Name and text of each file in `games/`, in alphabetical order: a new game is a file there
/// and a name here.
pub const SHIPPED: &[(&str, &str)] = files!("games":
    "bee-garden" "bells-on-the-bar" "big-cat-walk" "carriage-pair" "catch-the-leaf"
    "clap-the-court" "cloud-steps" "colour-islands" "copy-frog" "crab-tide" "fox-over-the-stream"
    "grasshopper-switch" "island-picnic" "jump-the-word" "kangaroo-pouch" "kite-tail"
    "ladybug-frog" "lamp-lighter" "lantern-labyrinth" "leaf-hurdles" "letter-bugs" "lighthouse"
    "lightning-corners" "long-road" "market-basket" "mirror-mirror" "mountain-pass"
    "my-own-record" "one-leg-market" "one-ring-two-rings" "pick-your-river" "pony-post"
    "post-round" "puddle-parade" "quiet-crocodile" "rail-crossing" "riding-school"
    "right-bank-left-bank" "right-left-trail" "river-raft" "rocket" "roll-and-jump" "sea-horses"
    "sea-weed" "shape-shop" "sleepy-stork" "snail-shell" "statue-park" "statue-stop"
    "step-hop-song" "toss-and-pass" "tray-cafe" "two-frogs" "weather-vane" "window-washers"
);

/// The games that come with the program, in the order of their names. One with a fault would
/// be left out; the tests of this room read them all.
pub fn shipped() -> &'static [Game] {
    static GAMES: OnceLock<Vec<Game>> = OnceLock::new();
    GAMES.get_or_init(|| {
        let read = |(name, text): &(&str, &str)| read(text, &format!("games/{name}.toml"), &[]);
        SHIPPED.iter().filter_map(|file| read(file).value).collect()
    })
}
