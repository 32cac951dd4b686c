//! The figures of a setup as text.

use std::io::{Result, Write};
use std::path::Path;
use std::process::ExitCode;

use steerloft_analysis::figures::{Figure, FigureGroup, Texts};
use steerloft_setup::setup::Chosen;

use super::{PROBLEM, assembled};
use crate::format;
use crate::state::{Document, Shown};

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
    for group in FigureGroup::ALL {
        writeln!(out)?;
        writeln!(
            out,
            "{:<26} {:<8} {:>10} {:>10}",
            group.title(),
            "",
            "left",
            "right"
        )?;
        for kind in group.kinds() {
            print_figure(shown.figure(kind), out)?;
        }
    }
    Ok(())
}

fn print_figure(figure: &Figure, out: &mut impl Write) -> Result<()> {
    let texts = figure.texts();
    let (left, right) = match &texts {
        Texts::Sides(sides) => (sides.left.as_str(), sides.right.as_str()),
        Texts::Axle(value) => (value.as_str(), ""),
    };
    let [unit, left, right] = [figure.unit, left, right].map(format::plain);
    let name = figure.facts().brief;
    let line = format!("{name:<26} {unit:<8} {left:>10} {right:>10}");
    writeln!(out, "{}", line.trim_end())?;
    if let Some(caution) = &figure.caution {
        writeln!(out, "  note: {caution}")?;
    }
    Ok(())
}
