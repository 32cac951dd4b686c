//! The chosen parts and figures of setups, as text or JSON.

mod json;

use std::io::{Result, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueHint};
use steerloft_analysis::figures::{Figure, FigureGroup, Texts};
use steerloft_setup::setup::Chosen;

use self::json::JsonReport;
use super::progress::Progress;
use super::{PROBLEM, assembled};
use crate::format;
use crate::state::{Document, Shown};

/// What is asked of a report.
#[derive(Debug, Clone, Args)]
pub struct ReportArguments {
    /// Setup files
    #[arg(required = true, value_hint = ValueHint::FilePath)]
    pub files: Vec<PathBuf>,
    /// As JSON, in full precision
    #[arg(long)]
    pub json: bool,
}

/// Prints the chosen parts and every figure of each setup, straight ahead at rest.
pub(super) fn run(
    arguments: &ReportArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let mut good = true;
    let mut reports = Vec::new();
    let mut progress = Progress::over(arguments.files.len());
    for (index, file) in arguments.files.iter().enumerate() {
        progress.next(file);
        let outcome = assembled(file);
        progress.clear();
        match outcome {
            Ok((document, shown)) if arguments.json => {
                reports.push(JsonReport::of(file, document.setup(), &shown));
            }
            Ok((document, shown)) => {
                if index > 0 {
                    writeln!(out)?;
                }
                print(&document, &shown, out)?;
            }
            Err(problem) => {
                good = false;
                writeln!(errors, "{problem}")?;
            }
        }
    }
    if arguments.json {
        super::json(&reports, out)?;
    }
    Ok(if good {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(PROBLEM)
    })
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
