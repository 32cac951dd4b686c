//! Groups of rows flowed into columns of even height.

use std::ops::Range;

use crate::drawing::{Anchor, Role, Text};
use crate::page::adjustments::{Group, Row};
use crate::page::furniture::{Block, LEADING, Writing, lines_height};
use crate::text::{DESCENT, width, wrap};

/// Gap between two columns, mm.
const GAP: f64 = 6.0;

/// Font sizes tried, mm: the first with which everything goes into the room.
const SIZES: [f64; 5] = [2.7, 2.4, 2.1, 1.8, 1.5];

/// Greatest share of a column's width for a row's value; its name has what is left but for a gap.
const VALUE_SHARE: f64 = 0.5;
const VALUE_GAP: f64 = 2.0;

/// Lines that a long name or value may take before it is cut.
const MOST_LINES: usize = 3;

/// How a table is made up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Shape {
    /// Number of columns.
    pub(super) columns: u8,
    /// Groups stay in one piece if that makes the columns no more than this much higher, mm.
    pub(super) whole_groups_cost: f64,
}

/// An entry of a column, broken into lines.
struct Entry {
    kind: EntryKind,
    height: f64,
}

enum EntryKind {
    Heading(&'static str),
    Row {
        name: Vec<String>,
        value: Vec<String>,
        changed: bool,
    },
}

/// The groups in so many columns, as large as the room (width and height, mm) allows; as high as needed.
///
/// Where even the smallest writing does not go in, what is left out is counted in a last line.
pub(super) fn lay_out(groups: &[Group], shape: Shape, room: [f64; 2]) -> Block {
    let column = (room[0] + GAP) / f64::from(shape.columns.max(1)) - GAP;
    for size in SIZES {
        let entries = entries(groups, column, size);
        let columns = Columns::even(&entries, shape);
        if columns.height <= room[1] {
            return draw(&entries, &columns, column, size);
        }
    }
    let size = SIZES[SIZES.len() - 1];
    let mut entries = entries(groups, column, size);
    let note = lines_height(1, size);
    let left_out = cut_to(&mut entries, shape, room[1] - note);
    let mut block = draw(&entries, &Columns::even(&entries, shape), column, size);
    let content = format!("and {left_out} more, which the setup file holds");
    block.write_lines(&[content], [0.0, -block.height], &Writing::caption(size));
    block.height += note;
    block
}

fn entries(groups: &[Group], column: f64, size: f64) -> Vec<Entry> {
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
    let bold = row.changed;
    let value = wrap(&row.value, size, bold, VALUE_SHARE * column, MOST_LINES);
    let widest = value
        .iter()
        .map(|line| width(line, size, bold))
        .fold(0.0, f64::max);
    let name = wrap(
        &row.name,
        size,
        bold,
        column - VALUE_GAP - widest,
        MOST_LINES,
    );
    Entry {
        height: lines_height(name.len().max(value.len()), size),
        kind: EntryKind::Row {
            name,
            value,
            changed: row.changed,
        },
    }
}

/// Which entries stand in which column.
struct Columns {
    ranges: Vec<Range<usize>>,
    height: f64,
}

impl Columns {
    /// The lowest columns that hold all entries: with every group in one piece, unless breaking groups makes
    /// them much lower.
    fn even(entries: &[Entry], shape: Shape) -> Self {
        let whole = Self::of_units(entries, &units(entries, true), shape.columns);
        let broken = Self::of_units(entries, &units(entries, false), shape.columns);
        if whole.height <= broken.height + shape.whole_groups_cost {
            whole
        } else {
            broken
        }
    }

    /// The lowest columns that keep each unit in one piece.
    fn of_units(entries: &[Entry], units: &[Range<usize>], count: u8) -> Self {
        let mut limit = height_of(entries) / f64::from(count.max(1));
        let mut ranges = flow(entries, units, limit);
        while ranges.len() > usize::from(count.max(1)) {
            limit *= 1.02;
            ranges = flow(entries, units, limit);
        }
        let heights = ranges
            .iter()
            .map(|range| height_of(&entries[range.clone()]));
        Self {
            height: heights.fold(0.0, f64::max),
            ranges,
        }
    }
}

/// Runs of entries that stay together: groups, or single rows with the heading over the first.
fn units(entries: &[Entry], whole_groups: bool) -> Vec<Range<usize>> {
    let mut units: Vec<Range<usize>> = Vec::new();
    let mut after_heading = false;
    for (index, entry) in entries.iter().enumerate() {
        let heading = matches!(entry.kind, EntryKind::Heading(_));
        match units.last_mut() {
            Some(unit) if after_heading || (whole_groups && !heading) => unit.end = index + 1,
            _ => units.push(index..index + 1),
        }
        after_heading = heading;
    }
    units
}

/// Fills columns with units, none higher than the limit unless it holds one unit only.
fn flow(entries: &[Entry], units: &[Range<usize>], limit: f64) -> Vec<Range<usize>> {
    let mut columns: Vec<Range<usize>> = Vec::new();
    let mut used = 0.0;
    for unit in units {
        let height = height_of(&entries[unit.clone()]);
        match columns.last_mut() {
            Some(column) if used + height <= limit => {
                column.end = unit.end;
                used += height;
            }
            _ => {
                columns.push(unit.clone());
                used = height;
            }
        }
    }
    columns
}

fn height_of(entries: &[Entry]) -> f64 {
    entries.iter().map(|entry| entry.height).sum()
}

/// Drops entries from the end until the rest goes into columns of that height; how many rows were dropped.
fn cut_to(entries: &mut Vec<Entry>, shape: Shape, height: f64) -> usize {
    let mut dropped = 0;
    while !entries.is_empty() && Columns::even(entries, shape).height > height {
        if let Some(Entry {
            kind: EntryKind::Row { .. },
            ..
        }) = entries.pop()
        {
            dropped += 1;
        }
    }
    dropped
}

fn draw(entries: &[Entry], columns: &Columns, width: f64, size: f64) -> Block {
    let mut block = Block::of_height(columns.height);
    let mut left = 0.0;
    for range in &columns.ranges {
        let mut top = 0.0;
        for entry in &entries[range.clone()] {
            draw_entry(&mut block, entry, [left, top], width, size);
            top -= entry.height;
        }
        left += width + GAP;
    }
    block
}

fn draw_entry(block: &mut Block, entry: &Entry, [left, top]: [f64; 2], column: f64, size: f64) {
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
            changed,
        } => {
            let writing = Writing::plain(size).bold(*changed);
            let top = top - (LEADING - 1.0) * size / 2.0;
            block.write_lines(name, [left, top], &writing);
            block.write_lines(value, [left + column, top], &writing.to_the_right());
        }
    }
}
