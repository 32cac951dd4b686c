//! The log of runs on further pages.

use steerloft_analysis::text::{number, short};
use steerloft_setup::setup::{Laps, Run};

use crate::page::furniture::{Block, Writing, lines_height};
use crate::text::{on_one_line, wrap};

/// Size of a run's heading, of its texts, and of what they are about, mm.
const HEADING: f64 = 2.9;
const SIZE: f64 = 2.5;
/// Width of what a text is about, mm.
const ABOUT: f64 = 22.0;
/// Lines that one text may take before it is cut: a run always goes on a page.
const MOST_LINES: usize = 8;
/// Space under a run, mm.
const BETWEEN: f64 = 2.4;

/// A run as a block of a width, mm.
pub(crate) fn block(place: usize, run: &Run, width: f64) -> Block {
    let mut block = Block::default();
    let heading = wrap(&heading(place, run), HEADING, true, width, 3);
    block.write_lines(&heading, [0.0, 0.0], &Writing::plain(HEADING).bold(true));
    block.height = lines_height(heading.len(), HEADING);
    for (about, text) in texts(run) {
        let lines = wrap(&text, SIZE, false, width - ABOUT, MOST_LINES);
        let top = -block.height;
        block.write_lines(&[about.to_owned()], [0.0, top], &Writing::caption(SIZE));
        block.write_lines(&lines, [ABOUT, top], &Writing::plain(SIZE));
        block.height += lines_height(lines.len(), SIZE);
    }
    block.height += BETWEEN / 2.0;
    block.rule([0.0, -block.height], [width, -block.height]);
    block.height += BETWEEN / 2.0;
    block
}

fn heading(place: usize, run: &Run) -> String {
    let temperature = run
        .temperature
        .map_or(String::new(), |degrees| format!("{} °C", short(degrees, 1)));
    let grip = on_one_line(&run.grip);
    let grip = if grip.is_empty() {
        grip
    } else {
        format!("grip {grip}")
    };
    let words = [&run.date, &run.surface, &grip, &temperature].map(|word| on_one_line(word));
    let words: Vec<String> = words.into_iter().filter(|word| !word.is_empty()).collect();
    format!("Run {place}  {}", words.join(", "))
}

/// What was written about a run, with what it is about.
fn texts(run: &Run) -> Vec<(&'static str, String)> {
    let texts = [
        ("Tyres", run.tyres.clone()),
        ("Turning in", run.felt.entry.clone()),
        ("Mid-corner", run.felt.middle.clone()),
        ("Coming out", run.felt.exit.clone()),
        ("Laps", laps(&run.laps)),
        ("Found", run.notes.clone()),
        ("Next", run.next_idea.clone()),
    ];
    let written = texts.into_iter();
    written
        .filter(|(_, text)| !on_one_line(text).is_empty())
        .collect()
}

fn laps(laps: &Laps) -> String {
    let seconds =
        |what: &str, time: Option<f64>| time.map(|time| format!("{what} {} s", number(time, 3)));
    let words = [
        laps.count.map(|count| format!("{count} laps")),
        seconds("best", laps.best),
        seconds("mean", laps.mean),
    ];
    let words: Vec<String> = words.into_iter().flatten().collect();
    words.join(", ")
}
