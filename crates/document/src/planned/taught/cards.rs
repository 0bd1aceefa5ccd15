//! A game on a card of two A6 sides, folded out of half a page: the picture and whom it suits
//! in front, how to play behind.

use games::{Game, LETTERS, LINES, Text as Words};
use geo::Coord;
use marking::Figure;
use note::msg;
use plan::Marking;

use super::Teaching;
use crate::drawing::scene::{Dash, INK, Path, Rect, Scene, Stroke, Text, WHITE, pen};
use crate::face::{self, Weight};
use crate::planned::painter::{self, Extent};
use crate::planned::{Planned, suits, words};
use crate::sheet::{Paper, Sheet};
use crate::typeset::Manuscript;

/// Cap heights of a card, mm: note, name, text, cue, title.
const NOTE: f64 = 1.8;
const NAME: f64 = 2.5;
const TEXT: f64 = 3.3;
const CUE: f64 = 4.2;
const TITLE: f64 = 6.2;

/// Writes all cards, two a page.
pub fn write(paper: &mut Manuscript, sheet: &Sheet, planned: &Planned, teaching: &Teaching) {
    let cards: Vec<(&Game, &Marking, &Figure)> = teaching
        .games
        .iter()
        .filter_map(|game| {
            let on = planned.markings().find(|(marking, _)| {
                let played =
                    |row: &plan::Footfall| row.marking == marking.name && row.gait == game.activity;
                game.families.contains(&marking.family)
                    && planned.record.footfall.iter().flatten().any(played)
            });
            on.map(|(marking, figure)| (game, marking, figure))
        })
        .collect();
    if cards.is_empty() {
        paper.paragraph(&sheet.word("teach-no-game"));
        return;
    }
    let [wide, high] = sheet.paper.upright();
    for pair in cards.chunks(2) {
        let mut scene = Scene::new(wide, high);
        let mut told = Vec::new();
        for (place, (game, marking, figure)) in pair.iter().enumerate() {
            let Some(text) = game.text(sheet.language.tag()) else {
                continue;
            };
            let mut card = Card {
                scene: &mut scene,
                sheet,
                left: (wide - 210.0) / 2.0,
                top: high / 2.0 * place as f64,
                squeeze: match sheet.paper {
                    Paper::A4 => 1.0,
                    Paper::Letter => 0.94,
                },
            };
            card.folds(high / 2.0);
            card.back(text);
            card.front(planned, game, text, marking, figure);
            told.push(says(sheet, text));
        }
        paper.plate(&scene, &told.join(" "));
    }
}

/// A card read aloud.
fn says(sheet: &Sheet, text: &Words) -> String {
    let form = |key: &'static str| sheet.say(msg!("games-form", form = key));
    format!(
        "{}. {} {} {} {} “{}” {}: {} {}: {} {}: {} {}: {} {}: {}",
        text.title,
        text.setup,
        text.steps[0],
        text.steps[1],
        text.steps[2],
        text.cues.join("” “"),
        form("easier"),
        text.easier,
        form("harder"),
        text.harder,
        form("wheels"),
        text.wheels,
        form("low-vision"),
        text.low_vision,
        sheet.word("doc-take-care"),
        text.watch
    )
}

struct Card<'a, 'b> {
    scene: &'a mut Scene,
    sheet: &'a Sheet<'b>,
    left: f64,
    top: f64,
    /// Letter is lower than A4: the lines stand closer.
    squeeze: f64,
}

impl Card<'_, '_> {
    fn at(&self, x: f64, y: f64) -> [f64; 2] {
        [self.left + x, self.top + y * self.squeeze]
    }

    fn write(&mut self, words: &str, x: f64, y: f64, cap: f64, weight: Weight) {
        let mut text = Text::new(words.to_owned(), self.at(x, y), cap);
        text.weight = weight;
        self.scene.text(text);
    }

    /// Lines of a text from a baseline on; returns the last baseline.
    fn lines(&mut self, words: &[String], x: f64, y: f64, cap: f64, line: f64) -> f64 {
        let mut last = y;
        for (number, words) in words.iter().enumerate() {
            last = y + line * number as f64;
            self.write(words, x, last, cap, Weight::Regular);
        }
        last
    }

    /// Where to fold and to cut.
    fn folds(&mut self, tall: f64) {
        let line = Stroke::solid(pen::ZONE);
        let x = self.left + 105.0;
        for [from, to] in [[0.0, 4.0], [tall - 4.0, tall]] {
            let ends = [[x, self.top + from], [x, self.top + to]];
            self.scene.stroke(Path::line(&ends), line);
        }
        if self.top > 0.0 {
            let ends = [[0.0, self.top], [self.scene.width, self.top]];
            let cut = Stroke::dashed(pen::HAIR, Dash::Long);
            self.scene.stroke(Path::line(&ends), cut);
        }
    }

    fn rule(&mut self, y: f64) {
        let ends = [self.at(9.0, y), self.at(96.0, y)];
        self.scene
            .stroke(Path::line(&ends), Stroke::solid(pen::ZONE));
    }

    /// How to play.
    fn back(&mut self, text: &Words) {
        let head = self.sheet.word("card-how");
        self.write(&head, 9.0, 16.0, CUE, Weight::Bold);
        for (number, step) in text.steps.iter().enumerate() {
            let y = 24.5 + 13.6 * number as f64;
            let disc = self.at(12.0, y - 1.4);
            self.scene.fill(Path::circle(disc, 3.2), INK);
            let mut figure = Text::new(
                (number + 1).to_string(),
                [disc[0], disc[1] + TEXT / 2.0],
                TEXT,
            )
            .bold()
            .middle();
            figure.colour = WHITE;
            self.scene.text(figure);
            self.lines(&games::lines(step, LETTERS), 18.0, y, TEXT, 6.0);
        }
        self.rule(61.5);
        let forms = [
            ("card-easier", &text.easier, 68.0),
            ("card-harder", &text.harder, 80.2),
        ];
        let labels = forms.map(|(key, ..)| face::width(&self.sheet.word(key), NAME, Weight::Bold));
        let column = (9.0 + labels[0].max(labels[1]) + 2.5).max(25.0);
        for (key, words, y) in forms {
            let label = self.sheet.word(key);
            self.write(&label, 9.0, y, NAME, Weight::Bold);
            let lines = face::wrap(words, TEXT, Weight::Regular, 97.0 - column);
            let (cap, lines) = match lines.len() {
                0..=LINES => (TEXT, lines),
                _ => (2.9, face::wrap(words, 2.9, Weight::Regular, 97.0 - column)),
            };
            self.lines(&lines, column, y, cap, 5.8);
        }
        self.rule(89.5);
        for (form, words, y) in [
            ("wheels", &text.wheels, 94.4),
            ("low-vision", &text.low_vision, 103.8),
            ("link", &text.link, 113.2),
        ] {
            let label = match form {
                "link" => self.sheet.word("card-link"),
                _ => self.sheet.say(msg!("games-form", form = form)),
            };
            let all = format!("{label}: {words}");
            let lines = face::wrap(&all, NAME, Weight::Regular, 87.0);
            self.lines(&lines[..lines.len().min(LINES)], 9.0, y, NAME, 4.3);
        }
        self.care(text);
    }

    /// What to take care of, last on the back.
    fn care(&mut self, text: &Words) {
        let [x, y] = self.at(9.0, 119.6);
        let rect = Rect {
            x,
            y,
            w: 87.0,
            h: 24.4 * self.squeeze,
        };
        self.scene
            .shape(Path::plate(rect, 1.5), WHITE, Stroke::solid(0.7));
        let flank = Rect { w: 12.0, ..rect };
        self.scene.fill(Path::plate(flank, 1.5), INK);
        let [cx, cy] = [x + 6.0, y + rect.h / 2.0];
        let triangle = [[cx, cy - 3.4], [cx + 3.8, cy + 3.2], [cx - 3.8, cy + 3.2]];
        self.scene.fill(Path::ring(&triangle), WHITE);
        self.scene.fill(
            Path::plate(
                Rect {
                    x: cx - 0.45,
                    y: cy - 1.4,
                    w: 0.9,
                    h: 2.6,
                },
                0.4,
            ),
            INK,
        );
        self.scene.fill(Path::circle([cx, cy + 2.2], 0.55), INK);
        let head = self.sheet.word("doc-take-care");
        self.write(&head, 24.0, 125.0, TEXT, Weight::Bold);
        // one caution in the size of the cue's neighbours, as many lines as it needs
        let cap = [TEXT, 2.9, NAME]
            .into_iter()
            .find(|cap| face::wrap(&text.watch, *cap, Weight::Regular, 70.0).len() <= 3)
            .unwrap_or(NAME);
        let lines = face::wrap(&text.watch, cap, Weight::Regular, 70.0);
        self.lines(&lines, 24.0, 130.8, cap, 5.4);
    }

    /// The title, the picture, the cue, whom it suits.
    fn front(
        &mut self,
        planned: &Planned,
        game: &Game,
        text: &Words,
        marking: &Marking,
        figure: &Figure,
    ) {
        let (x, wide) = (114.0, 87.0);
        let cap = [TITLE, 5.4, CUE]
            .into_iter()
            .find(|cap| face::width(&text.title, *cap, Weight::Bold) <= wide)
            .unwrap_or(CUE);
        self.write(&text.title, x, 19.4, cap, Weight::Bold);
        let name = words::marking(self.sheet, marking, planned.candidate(marking));
        let gait = suits::gait_words(self.sheet, &game.activity);
        let under = face::fit(&format!("{gait} · {name}"), NAME, Weight::Regular, wide);
        self.write(&under, x, 26.4, NAME, Weight::Regular);
        self.picture(planned, figure);
        for (number, cue) in text.cues.iter().take(2).enumerate() {
            let cue = format!("“{cue}”");
            self.write(&cue, x, 81.5 + 7.2 * number as f64, CUE, Weight::Bold);
        }
        let things: Vec<String> = game
            .equipment
            .iter()
            .map(|thing| {
                self.sheet
                    .say(msg!("games-equipment", thing = thing.word()))
            })
            .collect();
        let things = self.sheet.say(msg!(
            "card-things",
            things = things.clone(),
            count = things.len()
        ));
        for (key, words, y) in [
            ("card-need", things, 97.4),
            (
                "card-children",
                self.sheet.say(msg!(
                    "card-group",
                    least = u64::from(game.group[0]),
                    most = u64::from(game.group[1]),
                    from = u64::from(game.ages[0]),
                    to = u64::from(game.ages[1])
                )),
                103.8,
            ),
        ] {
            let label = self.sheet.word(key);
            self.write(&label, x, y, TEXT, Weight::Bold);
            let room = wide - 27.0;
            let words = face::fit(&words, TEXT, Weight::Regular, room);
            self.write(&words, x + 27.0, y, TEXT, Weight::Regular);
        }
        let lines = face::wrap(&text.setup, NAME, Weight::Regular, wide);
        self.lines(&lines[..lines.len().min(LINES)], x, 109.6, NAME, 4.3);
        self.suits(planned, game, marking);
    }

    fn picture(&mut self, planned: &Planned, figure: &Figure) {
        let [x, y] = self.at(114.0, 31.0);
        let rect = Rect {
            x,
            y,
            w: 87.0,
            h: 41.0 * self.squeeze,
        };
        let extent = Extent::of_way(figure);
        let [long, broad] = extent.size();
        let mm = ((rect.w - 6.0) / long.max(1e-6)).min((rect.h - 6.0) / broad.max(1e-6));
        let middle = rect.centre();
        let centre = [
            (extent.low[0] + extent.high[0]) / 2.0,
            (extent.low[1] + extent.high[1]) / 2.0,
        ];
        let view = crate::drawing::view::View {
            mm,
            origin: [middle[0] - centre[0] * mm, middle[1] + centre[1] * mm],
        };
        self.scene.fill(
            Path::plate(rect, 1.5),
            painter::ground_colour(planned.surface),
        );
        let inside = |at: Coord<f64>| {
            let [px, py] = view.at(at);
            px >= rect.x && px <= rect.x + rect.w && py >= rect.y && py <= rect.y + rect.h
        };
        for paint in &figure.paint {
            // pebbles that lie off the way may lie off the picture
            if !paint.polygon.exterior().coords().all(|at| inside(*at)) {
                continue;
            }
            let mut path = Path::default();
            for ring in view.rings(&paint.polygon) {
                path.add_ring(&ring);
            }
            self.scene
                .fill(path, painter::paint_of(paint.colour).colour);
        }
    }

    /// A strip an age.
    fn suits(&mut self, planned: &Planned, game: &Game, marking: &Marking) {
        let footfall = planned.record.footfall.as_deref().unwrap_or_default();
        let all = suits::suits(&marking.name, footfall, planned.children());
        let Some(one) = all.iter().find(|one| one.gait == game.activity) else {
            return;
        };
        let x = 114.0;
        let head = self.sheet.word("page-suits");
        self.write(&head, x, 121.0, TEXT, Weight::Bold);
        let ages = one.counts.len().max(1) as f64;
        let pitch = (87.0 / ages).min(22.2);
        for (number, count) in one.counts.iter().enumerate() {
            let at = self.at(x + pitch * number as f64, 124.0);
            suits::strip(self.scene, at, pitch - 4.2, count);
            let label = self
                .sheet
                .say(msg!("card-years", age = u64::from(count.age)));
            let middle = [at[0] + (pitch - 4.2) / 2.0, at[1] + 10.6];
            self.scene
                .text(Text::new(label, middle, NAME).bold().middle());
        }
        let legend = self.sheet.word("card-legend");
        let lines = face::wrap(&legend, NOTE, Weight::Regular, 87.0);
        self.lines(&lines, x, 140.0, NOTE, 3.2);
    }
}
