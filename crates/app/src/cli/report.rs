//! The figures of a setup as text.

use std::io::{Result, Write};
use std::path::Path;
use std::process::ExitCode;

use steerloft_setup::setup::Chosen;

use super::{PROBLEM, assembled};
use crate::format;
use crate::state::{Document, FigureRow, Shown, Values, figure_table};

/// Prints the chosen parts and every figure, straight ahead at rest.
pub(super) fn run(file: &Path, out: &mut impl Write, errors: &mut impl Write) -> Result<ExitCode> {
    match assembled(file) {
        Ok((document, shown)) => {
            print(&document, &shown, out)?;
            Ok(ExitCode::SUCCESS)
        }
        Err(problem) => {
            writeln!(errors, "{problem}")?;
            Ok(ExitCode::from(PROBLEM))
        }
    }
}

fn print(document: &Document, shown: &Shown, out: &mut impl Write) -> Result<()> {
    let setup = document.setup();
    writeln!(out, "{}", setup.car.name)?;
    if !setup.record.name.is_empty() {
        writeln!(out, "{}", setup.record.name)?;
    }
    writeln!(out)?;
    for (index, adjustment) in setup.car.adjustments.iter().enumerate() {
        let value = match setup.value(index) {
            Chosen::Choice(name) => name,
            amount => format::plain(&adjustment.label_of(&amount)),
        };
        let base = if setup.value(index) == adjustment.base() {
            " (base)"
        } else {
            ""
        };
        writeln!(out, "{:<32} {value}{base}", adjustment.name)?;
    }
    writeln!(out)?;
    writeln!(out, "Steering straight ahead, wheels at rest")?;
    for group in figure_table(&shown.figures) {
        writeln!(out)?;
        writeln!(
            out,
            "{:<26} {:<8} {:>10} {:>10}",
            group.title, "", "left", "right"
        )?;
        for row in &group.rows {
            print_row(row, out)?;
        }
    }
    Ok(())
}

fn print_row(row: &FigureRow, out: &mut impl Write) -> Result<()> {
    let (left, right) = match &row.values {
        Values::Sides(sides) => (sides.left.as_str(), sides.right.as_str()),
        Values::Axle(value) => (value.as_str(), ""),
    };
    let [unit, left, right] = [row.unit, left, right].map(format::plain);
    let line = format!("{:<26} {unit:<8} {left:>10} {right:>10}", row.name);
    writeln!(out, "{}", line.trim_end())?;
    if let Some(caution) = &row.caution {
        writeln!(out, "  note: {caution}")?;
    }
    Ok(())
}
