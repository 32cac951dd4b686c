//! What one step of each adjustment does to each figure, as text or JSON.

mod json;

use std::io::{Result, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueHint};
use steerloft_analysis::InputUnit;
use steerloft_analysis::effects::{Column, Effects, INNER, Step};
use steerloft_analysis::figures::FigureKind;
use steerloft_setup::setup::Setup;

use self::json::JsonEffects;
use super::arguments::wheel_angle;
use super::{assembled, ended, table};
use crate::format;
use crate::state::effects::{alike_in_words, missing_in_words, step_in_words};

/// What is asked of a table of effects.
#[derive(Debug, Clone, Args)]
pub struct EffectsArguments {
    /// The setup
    #[arg(value_hint = ValueHint::FilePath)]
    pub file: PathBuf,
    /// Angle of the inner wheel at which the Ackermann share is taken, degrees
    #[arg(long, value_name = "ANGLE", default_value_t = INNER, value_parser = wheel_angle)]
    pub steer: f64,
    /// As JSON, in full precision
    #[arg(long)]
    pub json: bool,
}

/// Prints what each step does.
pub(super) fn run(
    arguments: &EffectsArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let effects = assembled(&arguments.file).and_then(|(document, _)| {
        let setup = document.setup().clone();
        match Effects::of(&setup, arguments.steer) {
            Ok(effects) => Ok((setup, effects)),
            Err(reason) => Err(format!("{}: {reason}.", arguments.file.display())),
        }
    });
    ended(effects, errors, |(setup, effects)| {
        if arguments.json {
            super::json(&JsonEffects::of(arguments, &setup, &effects), out)
        } else {
            print(&setup, &effects, out)
        }
    })
}

fn print(setup: &Setup, effects: &Effects, out: &mut impl Write) -> Result<()> {
    writeln!(out, "{}", setup.car.name)?;
    writeln!(out)?;
    writeln!(out, "Figures now, and the step that changes each most")?;
    let unit = InputUnit::of(&setup.car);
    let columns = effects.columns.iter().enumerate();
    let legend: Vec<Vec<String>> = columns
        .clone()
        .map(|(index, column)| legend_row(index, column, unit, effects))
        .collect();
    table::aligned(&legend, 5, out)?;
    if let Some(missing) = missing_in_words(setup) {
        writeln!(out, "{}", format::plain(&missing))?;
    }
    writeln!(out)?;
    writeln!(
        out,
        "Change by one step; * is the strongest step for that figure"
    )?;
    let mut rows = vec![vec![String::new()]];
    rows[0].extend(columns.map(|(index, _)| letter(index)));
    rows.extend(effects.rows.iter().enumerate().filter_map(|(index, row)| {
        let changes = row.changes.as_ref().ok()?;
        let cells = changes.iter().zip(&effects.columns);
        let mut cells: Vec<String> = cells
            .map(|(change, column)| change_text(*change, column, index))
            .collect();
        cells.insert(0, step_text(&row.step));
        Some(cells)
    }));
    table::aligned(&rows, 1, out)?;
    for row in &effects.rows {
        if let Err(reason) = &row.changes {
            let step = step_text(&row.step);
            writeln!(out, "{step}: cannot be assembled: {reason}")?;
        }
    }
    if !effects.alike.is_empty() {
        writeln!(out)?;
    }
    for alike in &effects.alike {
        writeln!(
            out,
            "{}",
            format::plain(&alike_in_words(alike, &effects.rows))
        )?;
    }
    Ok(())
}

/// The sign of a column: a, b, ... z, aa, ab.
fn letter(index: usize) -> String {
    let last = ('a'..='z').nth(index % 26).unwrap_or_default();
    if index < 26 {
        last.to_string()
    } else {
        letter(index / 26 - 1) + &last.to_string()
    }
}

fn legend_row(index: usize, column: &Column, unit: InputUnit, effects: &Effects) -> Vec<String> {
    let facts = column.measure.figure().map(FigureKind::facts);
    let now = column.now.map_or("-".to_owned(), |now| {
        format::number(now, decimals(column) + 1)
    });
    let strongest = column.strongest.and_then(|row| effects.rows.get(row));
    vec![
        letter(index),
        format::plain(&column.measure.label()),
        format::plain(&now),
        format::plain(facts.map_or("", |facts| facts.unit(unit))),
        strongest.map_or("no step changes it".to_owned(), |row| step_text(&row.step)),
    ]
}

fn decimals(column: &Column) -> usize {
    let kind = column.measure.figure();
    kind.map_or(2, |kind| kind.facts().decimals)
}

fn change_text(change: Option<f64>, column: &Column, row: usize) -> String {
    let mark = if column.strongest == Some(row) {
        "*"
    } else {
        " "
    };
    let text = change.map_or("-".to_owned(), |change| {
        format::plain(&format::signed(change, decimals(column) + 1))
    });
    text + mark
}

fn step_text(step: &Step) -> String {
    format::plain(&step_in_words(step))
}
