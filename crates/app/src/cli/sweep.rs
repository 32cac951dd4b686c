//! Figures along steering, wheel travel or roll: as an aligned table, CSV or JSON.

use std::io::{Result, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Args, ValueEnum, ValueHint};
use serde::Serialize;
use steerloft_analysis::sweep_table::{Along, Column, SweepRequest, SweepTable, sweep_table};

use super::progress::Progress;
use super::{PROBLEM, WRONG_USE, assembled, finite, table, told};
use crate::format;

/// What is asked of a sweep.
#[derive(Debug, Clone, Args)]
pub struct SweepArguments {
    /// Setup files
    #[arg(required = true, value_hint = ValueHint::FilePath)]
    pub files: Vec<PathBuf>,
    /// What is moved
    #[arg(long, value_enum)]
    pub along: AlongArgument,
    /// First value: degrees (mm of a rack) along steer, mm along bump, degrees along roll; without it the car's range
    #[arg(long, value_name = "VALUE", allow_negative_numbers = true, value_parser = finite)]
    pub from: Option<f64>,
    /// Last value, likewise
    #[arg(long, value_name = "VALUE", allow_negative_numbers = true, value_parser = finite)]
    pub to: Option<f64>,
    /// Steps from the first value to the last
    #[arg(long, value_name = "COUNT", default_value_t = 20, value_parser = clap::value_parser!(u32).range(1..=100_000))]
    pub steps: u32,
    /// Steering input held along bump and roll, degrees (mm of a rack)
    #[arg(long, value_name = "INPUT", allow_negative_numbers = true, value_parser = finite)]
    pub steer: Option<f64>,
    /// Travel of both wheels held along steer, mm
    #[arg(long, value_name = "MM", allow_negative_numbers = true, value_parser = finite)]
    pub travel: Option<f64>,
    /// Every column, separated by commas, in full precision
    #[arg(long, conflicts_with = "json")]
    pub csv: bool,
    /// Every column as JSON, in full precision
    #[arg(long)]
    pub json: bool,
}

/// What is moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum AlongArgument {
    /// The steering input, wheel travel held
    Steer,
    /// The travel of both wheels, steering held
    Bump,
    /// The roll of the chassis with both tyres on the road, steering held
    Roll,
}

impl From<AlongArgument> for Along {
    fn from(argument: AlongArgument) -> Self {
        match argument {
            AlongArgument::Steer => Self::Steer,
            AlongArgument::Bump => Self::Bump,
            AlongArgument::Roll => Self::Roll,
        }
    }
}

/// The table of one file.
struct Swept<'a> {
    file: &'a Path,
    car: String,
    setup: String,
    table: SweepTable,
}

/// Prints the tables.
pub(super) fn run(
    arguments: &SweepArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    if let Some(wrong) = wrong_use(arguments) {
        writeln!(errors, "error: {wrong}")?;
        return Ok(ExitCode::from(WRONG_USE));
    }
    let mut all = Vec::new();
    let mut good = true;
    let mut progress = Progress::over(arguments.files.len());
    for file in &arguments.files {
        progress.next(file);
        match swept(file, arguments) {
            Ok(swept) => all.push(swept),
            Err(problem) => {
                good = false;
                progress.clear();
                writeln!(errors, "{problem}")?;
            }
        }
    }
    drop(progress);
    if arguments.csv {
        write_csv(&all, arguments.files.len() > 1, out)?;
    } else if arguments.json {
        write_json(&all, arguments.along.into(), out)?;
    } else {
        write_text(&all, out)?;
    }
    Ok(if good {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(PROBLEM)
    })
}

/// Why the options do not go together, if so.
fn wrong_use(arguments: &SweepArguments) -> Option<&'static str> {
    let along_steer = arguments.along == AlongArgument::Steer;
    if along_steer && arguments.steer.is_some() {
        return Some(
            "--steer is what `--along steer` moves; give --from and --to, or sweep along bump or roll",
        );
    }
    if !along_steer && arguments.travel.is_some() {
        return Some("--travel can be held along steer only; along bump and roll it is what moves");
    }
    match (arguments.from, arguments.to) {
        (Some(from), Some(to)) if from >= to => Some("--from must be less than --to"),
        _ => None,
    }
}

fn swept<'a>(file: &'a Path, arguments: &SweepArguments) -> std::result::Result<Swept<'a>, String> {
    let (document, shown) = assembled(file)?;
    let setup = document.setup();
    let request = SweepRequest {
        along: arguments.along.into(),
        from: arguments.from,
        to: arguments.to,
        steps: usize::try_from(arguments.steps).unwrap_or(usize::MAX),
        steer: arguments.steer.unwrap_or(0.0),
        travel: arguments.travel.unwrap_or(0.0),
    };
    let table = sweep_table(shown.assembly(), &setup.car, &request).map_err(|error| {
        format!(
            "{}: no sweep along {}: {error}. Choose another sweep, or values within the car's ranges.",
            file.display(),
            request.along.name()
        )
    })?;
    Ok(Swept {
        file,
        car: setup.car.name.clone(),
        setup: setup.record.name.clone(),
        table,
    })
}

fn write_text(all: &[Swept<'_>], out: &mut impl Write) -> Result<()> {
    for (index, swept) in all.iter().enumerate() {
        if index > 0 {
            writeln!(out)?;
        }
        let name = if swept.setup.is_empty() {
            swept.car.clone()
        } else {
            format!("{}, {}", swept.setup, swept.car)
        };
        writeln!(out, "{}: {name}", swept.file.display())?;
        table::aligned(&text_rows(&swept.table), 0, out)?;
        for end in &swept.table.ends {
            writeln!(out, "{}.", format::plain(end))?;
        }
    }
    Ok(())
}

/// The first two lines of a column's heading: quantity and side, or the quantity of both sides in two lines, which keeps
/// the column narrow.
fn heads(column: &Column) -> [String; 2] {
    match (column.side, column.quantity.rsplit_once(' ')) {
        (Some(side), _) => [column.quantity.to_owned(), side.to_string()],
        (None, Some((first, last))) => [first.to_owned(), last.to_owned()],
        (None, None) => [column.quantity.to_owned(), String::new()],
    }
}

/// The main columns, under three lines of heading: quantity, side, unit.
fn text_rows(table: &SweepTable) -> Vec<Vec<String>> {
    let main = |row: &[Option<f64>]| -> Vec<String> {
        let cells = table.columns.iter().zip(row);
        cells
            .filter(|(column, _)| column.is_main)
            .map(|(column, value)| {
                value.map_or("-".to_owned(), |value| {
                    format::plain(&format::number(value, column.decimals))
                })
            })
            .collect()
    };
    let heading = |text: fn(&Column) -> String| -> Vec<String> {
        let columns = table.columns.iter().filter(|column| column.is_main);
        columns.map(text).collect()
    };
    let mut rows = vec![
        heading(|column| heads(column)[0].clone()),
        heading(|column| heads(column)[1].clone()),
        heading(|column| column.unit.to_owned()),
    ];
    rows.extend(table.rows.iter().map(|row| main(row)));
    rows
}

/// One table with one line of names; with several files, each row begins with its file.
fn write_csv(all: &[Swept<'_>], several: bool, out: &mut impl Write) -> Result<()> {
    let mut writer = csv::Writer::from_writer(out);
    let file = |swept: &Swept<'_>| several.then(|| swept.file.display().to_string());
    let mut names: Option<Vec<String>> = None;
    for swept in all {
        let columns: Vec<String> = swept.table.columns.iter().map(Column::name).collect();
        // Cars whose input has another unit have other columns: their table starts anew.
        if names.as_ref() != Some(&columns) {
            writer
                .write_record(
                    several
                        .then(|| "file".to_owned())
                        .into_iter()
                        .chain(columns.clone()),
                )
                .map_err(told)?;
            names = Some(columns);
        }
        for row in &swept.table.rows {
            let cells = row
                .iter()
                .map(|value| value.map_or(String::new(), |value| value.to_string()));
            writer
                .write_record(file(swept).into_iter().chain(cells))
                .map_err(told)?;
        }
    }
    writer.flush()
}

/// A sweep as JSON holds it.
#[derive(Serialize)]
struct JsonSweep<'a> {
    file: String,
    car: &'a str,
    setup: &'a str,
    along: &'static str,
    columns: Vec<String>,
    rows: &'a [Vec<Option<f64>>],
    ends: &'a [String],
}

fn write_json(all: &[Swept<'_>], along: Along, out: &mut impl Write) -> Result<()> {
    let sweeps: Vec<JsonSweep<'_>> = all
        .iter()
        .map(|swept| JsonSweep {
            file: swept.file.display().to_string(),
            car: &swept.car,
            setup: &swept.setup,
            along: along.name(),
            columns: swept.table.columns.iter().map(Column::name).collect(),
            rows: &swept.table.rows,
            ends: &swept.table.ends,
        })
        .collect();
    super::json(&sweeps, out)
}
