//! Tables of text: columns aligned by their widest entry.

use std::io::{Result, Write};

/// Space between columns.
const GAP: usize = 2;

/// Writes rows of cells, every column as wide as its widest cell; the first `leading` ones flush left, numbers flush
/// right.
pub(super) fn aligned(rows: &[Vec<String>], leading: usize, out: &mut impl Write) -> Result<()> {
    let width = |cell: &String| cell.chars().count();
    let columns = rows.iter().map(Vec::len).max().unwrap_or_default();
    let widths: Vec<usize> = (0..columns)
        .map(|column| {
            rows.iter()
                .filter_map(|row| row.get(column))
                .map(width)
                .max()
                .unwrap_or_default()
        })
        .collect();
    for row in rows {
        let cells = row.iter().zip(&widths).enumerate();
        let padded: Vec<String> = cells
            .map(|(index, (cell, width))| {
                if index < leading {
                    format!("{cell:<width$}")
                } else {
                    format!("{cell:>width$}")
                }
            })
            .collect();
        writeln!(out, "{}", padded.join(&" ".repeat(GAP)).trim_end())?;
    }
    Ok(())
}
