//! Groups of rows flowed into columns of even height.

mod entry;
mod flow;

use self::entry::{Entry, entries};
use self::flow::Columns;
use crate::page::adjustments::Group;
use crate::page::furniture::{Block, Writing, lines_height};

/// Gap between two columns, mm.
const GAP: f64 = 6.0;

/// Font sizes tried, mm: the first with which everything goes into the room.
const SIZES: [f64; 5] = [2.7, 2.4, 2.1, 1.8, 1.5];

/// How a table is made up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Shape {
    /// Number of columns.
    pub(crate) columns: u8,
    /// Groups stay in one piece if that makes the columns no more than this much higher, mm.
    pub(crate) whole_groups_cost: f64,
    /// Smallest writing, mm.
    pub(crate) least_size: f64,
}

/// A table and what did not go on it.
pub(crate) struct Laid {
    pub(crate) block: Block,
    /// The rows that did not go on it, under their headings.
    pub(crate) rest: Vec<Group>,
}

/// The groups in so many columns, as large as the room (width and height, mm) allows; as high as needed.
pub(crate) fn lay_out(groups: &[Group], shape: Shape, room: [f64; 2]) -> Laid {
    let column = (room[0] + GAP) / f64::from(shape.columns.max(1)) - GAP;
    let sizes = SIZES.into_iter().filter(|size| *size >= shape.least_size);
    for size in sizes {
        let entries = entries(groups, column, size);
        let columns = Columns::even(&entries, shape);
        if columns.height <= room[1] {
            return Laid {
                block: draw(&entries, &columns, column, size),
                rest: Vec::new(),
            };
        }
    }
    let size = shape.least_size;
    let mut entries = entries(groups, column, size);
    let kept = cut_to(&mut entries, shape, room[1]);
    Laid {
        block: draw(&entries, &Columns::even(&entries, shape), column, size),
        rest: after(groups, kept),
    }
}

/// As [`lay_out`]; what is left out is counted in a last line.
pub(crate) fn lay_out_all(groups: &[Group], shape: Shape, room: [f64; 2]) -> Block {
    let laid = lay_out(groups, shape, room);
    if laid.rest.is_empty() {
        return laid.block;
    }
    let size = shape.least_size;
    let note = lines_height(1, size);
    let Laid { mut block, rest } = lay_out(groups, shape, [room[0], room[1] - note]);
    let left_out: usize = rest.iter().map(|group| group.rows.len()).sum();
    let content = format!("and {left_out} more, which the setup file holds");
    block.write_lines(&[content], [0.0, -block.height], &Writing::caption(size));
    block.height += note;
    block
}

/// The groups after so many rows.
fn after(groups: &[Group], mut rows: usize) -> Vec<Group> {
    let mut rest = Vec::new();
    for group in groups {
        let here = rows.min(group.rows.len());
        rows -= here;
        if here < group.rows.len() {
            rest.push(Group {
                heading: group.heading,
                rows: group.rows[here..].to_vec(),
            });
        }
    }
    rest
}

/// Drops entries from the end until the rest goes into columns of that height; how many rows are left.
fn cut_to(entries: &mut Vec<Entry>, shape: Shape, height: f64) -> usize {
    while !entries.is_empty() && Columns::even(entries, shape).height > height {
        entries.pop();
    }
    // A heading goes on with its first row.
    if entries.last().is_some_and(Entry::is_heading) {
        entries.pop();
    }
    entries.iter().filter(|entry| !entry.is_heading()).count()
}

fn draw(entries: &[Entry], columns: &Columns, width: f64, size: f64) -> Block {
    let mut block = Block::of_height(columns.height);
    let mut left = 0.0;
    for range in &columns.ranges {
        let mut top = 0.0;
        for entry in &entries[range.clone()] {
            entry::draw(&mut block, entry, [left, top], width, size);
            top -= entry.height;
        }
        left += width + GAP;
    }
    block
}
