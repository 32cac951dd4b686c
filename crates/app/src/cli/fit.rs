//! The car that gauge readings tell of, as text or JSON.

mod json;

use std::io::{Result, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueHint};
use steerloft_analysis::find::Progress;
use steerloft_analysis::fit::{Fit, Residual, fit};
use steerloft_setup::adjustment::Unit;
use steerloft_setup::file;

use self::json::JsonFit;
use super::{assembled, ended, table};
use crate::format;

/// What is asked of a fit.
#[derive(Debug, Clone, Args)]
pub struct FitArguments {
    /// The setup as it is thought to be
    #[arg(value_hint = ValueHint::FilePath)]
    pub file: PathBuf,
    /// Gauge readings taken on the car, and the dimensions that are uncertain
    #[arg(value_hint = ValueHint::FilePath)]
    pub readings: PathBuf,
    /// Write the fitted car as a setup file
    #[arg(short, long, value_name = "SETUP", value_hint = ValueHint::FilePath)]
    pub output: Option<PathBuf>,
    /// Replace a file that is there already
    #[arg(long)]
    pub force: bool,
    /// As JSON, in full precision
    #[arg(long)]
    pub json: bool,
}

/// Fits a setup to readings.
pub(super) fn run(
    arguments: &FitArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let fitted = fitted(arguments).and_then(|(fit, input)| {
        saved(arguments, &fit)?;
        Ok((fit, input))
    });
    ended(fitted, errors, |(fit, input)| {
        if arguments.json {
            super::json(&JsonFit::of(arguments, &fit, input), out)
        } else {
            print(&fit, input, out)
        }
    })
}

fn fitted(arguments: &FitArguments) -> std::result::Result<(Fit, Unit), String> {
    let (document, _) = assembled(&arguments.file)?;
    let readings = file::read_readings(&arguments.readings).map_err(|error| error.to_string())?;
    let setup = document.setup();
    let fit = fit(setup, &readings, &Progress::default())
        .map_err(|error| format!("{}: {error}.", arguments.readings.display()))?;
    Ok((fit, setup.car.drive.input_unit()))
}

fn saved(arguments: &FitArguments, fit: &Fit) -> std::result::Result<(), String> {
    let Some(path) = &arguments.output else {
        return Ok(());
    };
    if path.exists() && !arguments.force {
        return Err(format!(
            "{}: there is such a file already; give another name, or --force to replace it",
            path.display()
        ));
    }
    file::write(path, &fit.setup).map_err(|error| error.to_string())
}

fn print(fit: &Fit, input: Unit, out: &mut impl Write) -> Result<()> {
    writeln!(
        out,
        "{} readings; {} dimensions found, {} left open",
        fit.residuals.len(),
        fit.found.len(),
        fit.undetermined.len()
    )?;
    writeln!(out, "{}", misfit(fit))?;
    if !fit.found.is_empty() {
        writeln!(out)?;
        writeln!(out, "Against the car's file, with standard uncertainty")?;
        table::aligned(&found_rows(fit, input), 1, out)?;
    }
    print_open(fit, out)?;
    for pair in &fit.correlated {
        let [one, other] = pair.pair;
        writeln!(
            out,
            "Hardly told apart: {one}, and {other} (correlation {:.2})",
            pair.correlation
        )?;
    }
    writeln!(out)?;
    table::aligned(&residual_rows(fit), 1, out)?;
    let outliers = fit.outliers();
    if let Some(first) = outliers.first() {
        writeln!(
            out,
            "* does not go with the others. Take the {} again first, or leave it out.",
            fit.residuals[*first].reading
        )?;
    }
    Ok(())
}

fn misfit(fit: &Fit) -> String {
    match fit.misfit() {
        None => "There is no reading to spare, so nothing shows how good the fit is.".to_owned(),
        Some(misfit) => format!(
            "What is left is {misfit:.2} times what the stated uncertainties lead to expect, with {} readings to spare.",
            fit.redundancy
        ),
    }
}

fn found_rows(fit: &Fit, input: Unit) -> Vec<Vec<String>> {
    let found = fit.found.iter();
    found
        .map(|found| {
            let unit = unit(found.dimension.unit(input));
            let mut row = vec![
                found.dimension.to_string(),
                format::plain(&format::signed(found.change, 3)),
                format!("+-{}", format::plain(&format::number(found.uncertainty, 3))),
                unit.to_owned(),
            ];
            if let Some(open) = fit.depends_on(found.dimension) {
                row.push(format!("if the {open} is as the file says"));
            }
            row
        })
        .collect()
}

const fn unit(unit: Unit) -> &'static str {
    match unit {
        Unit::Degrees => "deg",
        Unit::Millimetres => "mm",
    }
}

fn print_open(fit: &Fit, out: &mut impl Write) -> Result<()> {
    if fit.undetermined.is_empty() {
        return Ok(());
    }
    writeln!(out)?;
    writeln!(out, "Left open by the readings, and left as the file says")?;
    for open in &fit.undetermined {
        writeln!(out, "  {}: {}", open.dimension, open.reason())?;
    }
    Ok(())
}

fn residual_rows(fit: &Fit) -> Vec<Vec<String>> {
    let heading = ["deg", "read", "fitted", "residual", "normalised"];
    let mut rows = vec![heading.map(str::to_owned).to_vec()];
    let outliers = fit.outliers();
    rows.extend(fit.residuals.iter().enumerate().map(|(place, residual)| {
        let mark = if outliers.contains(&place) { "*" } else { " " };
        residual_row(residual, mark)
    }));
    rows
}

fn residual_row(residual: &Residual, mark: &str) -> Vec<String> {
    let number = |value: f64| format::plain(&format::number(value, 3));
    let normalised = residual.normalised.map_or("-".to_owned(), |normalised| {
        format::plain(&format::number(normalised, 1))
    });
    vec![
        residual.reading.to_string(),
        number(residual.reading.value),
        number(residual.fitted),
        number(residual.residual()),
        normalised + mark,
    ]
}
