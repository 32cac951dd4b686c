//! Entries flowed into columns of even height.

use std::ops::Range;

use super::Shape;
use super::entry::Entry;

/// Which entries stand in which column.
pub(super) struct Columns {
    pub(super) ranges: Vec<Range<usize>>,
    /// Height of the highest column, mm.
    pub(super) height: f64,
}

impl Columns {
    /// The lowest columns that hold all entries: with every group in one piece, unless breaking groups makes
    /// them much lower.
    pub(super) fn even(entries: &[Entry], shape: Shape) -> Self {
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
        let heading = entry.is_heading();
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
