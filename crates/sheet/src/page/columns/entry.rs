//! An entry of a column: a heading, or a row with its value or the box for it.

use crate::drawing::{Anchor, Role, Text};
use crate::page::adjustments::{Group, Row, Value};
use crate::page::furniture::{Block, LEADING, Writing, lines_height};
use crate::text::{ASCENT, DESCENT, width, wrap};

/// Greatest share of a column's width for a row's value; its name has what is left but for a gap.
const VALUE_SHARE: f64 = 0.5;
const VALUE_GAP: f64 = 2.0;

/// Lines that a long name or value may take before it is cut.
const MOST_LINES: usize = 3;

/// Size of what stands under a value, against the value's own.
const SMALL: f64 = 0.86;

/// Least height of a box to write in, and the space under it, mm.
const BOX: f64 = 5.0;
const BOX_GAP: f64 = 0.8;

/// An entry of a column, broken into lines.
pub(super) struct Entry {
    kind: EntryKind,
    /// Height with the space around it, mm.
    pub(super) height: f64,
}

enum EntryKind {
    Heading(&'static str),
    Row {
        name: Vec<String>,
        value: Option<Vec<String>>,
        under: Vec<String>,
        /// Where what stands under a value goes instead, before the value's only line: its right end, mm from the
        /// column's right edge.
        before: Option<f64>,
        changed: bool,
    },
}

/// The entries of groups in a column of a width, mm, at a font size, mm.
pub(super) fn entries(groups: &[Group], column: f64, size: f64) -> Vec<Entry> {
    let mut entries = Vec::new();
    for group in groups {
        entries.push(Entry {
            kind: EntryKind::Heading(group.heading),
            height: lines_height(1, size) * 1.5,
        });
        entries.extend(group.rows.iter().map(|row| row_entry(row, column, size)));
    }
    entries
}

fn row_entry(row: &Row, column: f64, size: f64) -> Entry {
    match &row.value {
        Value::Written(value) => written_entry(row, value, column, size),
        Value::Box => box_entry(row, column, size),
    }
}

fn written_entry(row: &Row, value: &str, column: f64, size: f64) -> Entry {
    let bold = row.changed;
    let value = wrap(value, size, bold, VALUE_SHARE * column, MOST_LINES);
    let widest = value
        .iter()
        .map(|line| width(line, size, bold))
        .fold(0.0, f64::max);
    let room = column - VALUE_GAP - widest;
    let name = wrap(&row.name, size, bold, room, MOST_LINES);
    let under = row.under.as_deref().unwrap_or_default();
    let under = wrap(under, SMALL * size, false, column, MOST_LINES);
    let before = match (&name[..], &value[..], &under[..]) {
        ([name], [_], [under]) => {
            let taken = width(name, size, bold) + width(under, SMALL * size, false) + widest;
            (taken + 2.0 * VALUE_GAP <= column).then_some(widest + VALUE_GAP)
        }
        _ => None,
    };
    let lines_under = if before.is_some() { 0 } else { under.len() };
    Entry {
        height: lines_height(name.len().max(value.len()), size)
            + lines_height(lines_under, SMALL * size),
        kind: EntryKind::Row {
            name,
            value: Some(value),
            under,
            before,
            changed: row.changed,
        },
    }
}

/// A row to be filled in: what can be chosen stands under the name, beside the box.
fn box_entry(row: &Row, column: f64, size: f64) -> Entry {
    let room = (1.0 - VALUE_SHARE) * column - VALUE_GAP;
    let name = wrap(&row.name, size, false, room, MOST_LINES);
    let under = row.under.as_deref().unwrap_or_default();
    let under = wrap(under, SMALL * size, false, room, MOST_LINES);
    let lines = lines_height(name.len(), size) + lines_height(under.len(), SMALL * size);
    Entry {
        height: lines.max(BOX) + BOX_GAP,
        kind: EntryKind::Row {
            name,
            value: None,
            under,
            before: None,
            changed: false,
        },
    }
}

impl Entry {
    pub(super) fn is_heading(&self) -> bool {
        matches!(self.kind, EntryKind::Heading(_))
    }
}

/// Draws an entry with its upper left corner at a point, in a column of a width, mm.
pub(super) fn draw(
    block: &mut Block,
    entry: &Entry,
    [left, top]: [f64; 2],
    column: f64,
    size: f64,
) {
    match &entry.kind {
        EntryKind::Heading(heading) => {
            let base = top - entry.height + (LEADING - 1.0 + DESCENT) * size;
            block.write(
                Role::Caption,
                Text {
                    at: [left, base],
                    anchor: Anchor::Start,
                    size,
                    bold: true,
                    content: (*heading).to_owned(),
                },
            );
            let under = base - DESCENT * size;
            block.rule([left, under], [left + column, under]);
        }
        EntryKind::Row {
            name,
            value,
            under,
            before,
            changed,
        } => {
            let writing = Writing::plain(size).bold(*changed);
            let small = Writing::caption(SMALL * size);
            let first = top - (LEADING - 1.0) * size / 2.0;
            block.write_lines(name, [left, first], &writing);
            let right = left + column;
            if let Some(value) = value {
                block.write_lines(value, [right, first], &writing.to_the_right());
                let [at, below] = if let Some(end) = before {
                    // On one base line with the value.
                    [right - end, first - ASCENT * size * (1.0 - SMALL)]
                } else {
                    let lines = name.len().max(value.len());
                    [right, first - lines_height(lines, size)]
                };
                block.write_lines(under, [at, below], &small.to_the_right());
            } else {
                let below = first - lines_height(name.len(), size);
                block.write_lines(under, [left, below], &small);
                let bottom = top - entry.height + BOX_GAP;
                let corner = [left + (1.0 - VALUE_SHARE) * column, bottom];
                block.rectangle(Role::Rule, corner, [right, top]);
            }
        }
    }
}
