//! The foot of a sheet: how to read it, and the cautions.

use crate::page::furniture::{Block, Writing, lines_height};
use crate::text::wrap;

const CAUTIONS: [&str; 4] = [
    "Wheels off the ground and power off before you work on linkages: a servo can trap fingers.",
    "Check full lock by hand for binding before you power the steering.",
    "Karts and anything that carries a person: have the design and the work checked by someone qualified; follow \
     local rules and scrutineering.",
    "Figures are geometry, not a promise of handling.",
];

const SIZE: f64 = 2.3;
const MOST_LINES: usize = 8;

/// Share of the width that lines take: long lines of small letters are hard to follow, and a reader that takes another,
/// wider font still has room.
const LINE: f64 = 0.86;

/// A note that stands over the cautions.
pub(crate) struct Note {
    content: String,
    /// Whether it is about something that needs attention.
    is_warning: bool,
}

impl Note {
    pub(crate) fn plain(content: impl Into<String>) -> Self {
        Self {
            content: content.into(),
            is_warning: false,
        }
    }

    pub(crate) fn warning(content: impl Into<String>) -> Self {
        Self {
            content: content.into(),
            is_warning: true,
        }
    }
}

/// How the cautions are given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Cautions {
    /// One a line, under a heading.
    Listed,
    /// One after another.
    InBrief,
}

/// The warnings in bold, the other notes, and the cautions, under a line across the page.
pub(crate) fn lay_out(notes: &[Note], cautions: Cautions, width: f64) -> Block {
    let mut block = Block::default();
    block.rule([0.0, 0.0], [width, 0.0]);
    block.height = 1.4;
    let contents = |warnings: bool| {
        let notes = notes.iter().filter(move |note| note.is_warning == warnings);
        let contents: Vec<&str> = notes.map(|note| note.content.as_str()).collect();
        contents.join(" ")
    };
    let caption = Writing::caption(SIZE);
    let strong = Writing::plain(SIZE).bold(true);
    add(&mut block, &contents(true), width, &strong);
    let others = contents(false);
    match cautions {
        Cautions::InBrief => {
            let all = format!("{others} {}", CAUTIONS.join(" "));
            add(&mut block, &all, width, &caption);
        }
        Cautions::Listed => {
            add(&mut block, &others, width, &caption);
            block.height += 0.6;
            add(&mut block, "Before you work on the car", width, &strong);
            for caution in CAUTIONS {
                add(&mut block, caution, width, &Writing::plain(SIZE));
            }
        }
    }
    block
}

fn add(block: &mut Block, content: &str, width: f64, writing: &Writing) {
    let lines = wrap(
        content,
        writing.size,
        writing.bold,
        LINE * width,
        MOST_LINES,
    );
    block.write_lines(&lines, [0.0, -block.height], writing);
    block.height += lines_height(lines.len(), writing.size);
}
