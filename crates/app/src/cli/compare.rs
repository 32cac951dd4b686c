//! What differs between two setups: in parts to change, and in what that does to each figure.

mod json;

use std::io::{Result, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueHint};
use steerloft_analysis::figures::{FigureGroup, Texts};
use steerloft_setup::adjustment::Unit;
use steerloft_setup::compare::{Comparison, RodsDifference, Work, compare};
use steerloft_solver::frame::Side;

use self::json::JsonComparison;
use super::{PROBLEM, assembled, table};
use crate::format;
use crate::state::Shown;

/// What is asked of a comparison.
#[derive(Debug, Clone, Args)]
pub struct CompareArguments {
    /// The setup on the car
    #[arg(value_hint = ValueHint::FilePath)]
    pub from: PathBuf,
    /// The setup to come to
    #[arg(value_hint = ValueHint::FilePath)]
    pub to: PathBuf,
    /// As JSON, in full precision
    #[arg(long)]
    pub json: bool,
}

/// Prints what to change to come from one setup to another, and what becomes of each figure, straight ahead at rest.
pub(super) fn run(
    arguments: &CompareArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let (from, to) = match (assembled(&arguments.from), assembled(&arguments.to)) {
        (Ok(from), Ok(to)) => (from, to),
        (from, to) => {
            for problem in [from.err(), to.err()].into_iter().flatten() {
                writeln!(errors, "{problem}")?;
            }
            return Ok(ExitCode::from(PROBLEM));
        }
    };
    let comparison = compare(from.0.setup(), to.0.setup());
    if arguments.json {
        super::json(
            &JsonComparison::of(arguments, &comparison, &from.1, &to.1),
            out,
        )?;
    } else {
        print_parts(&comparison, out)?;
        print_figures(&from.1, &to.1, out)?;
    }
    Ok(ExitCode::SUCCESS)
}

fn print_parts(comparison: &Comparison, out: &mut impl Write) -> Result<()> {
    if comparison.is_empty() {
        return writeln!(out, "The setups have the same parts, settings and car.");
    }
    writeln!(out, "To change")?;
    let mut rows: Vec<Vec<String>> = Vec::new();
    for difference in &comparison.adjustments {
        rows.push(vec![
            difference.name.clone(),
            format!("{} to {}", difference.from, difference.to),
            work_in_words(&difference.work),
        ]);
    }
    if let Some(rods) = &comparison.rods {
        rows.extend(rod_rows(rods));
    }
    let plain: Vec<Vec<String>> = rows
        .iter()
        .map(|row| row.iter().map(|cell| format::plain(cell)).collect())
        .collect();
    table::aligned(&plain, 3, out)?;
    for only in &comparison.only_in_one {
        let which = if only.in_first { "first" } else { "second" };
        writeln!(
            out,
            "Only the {which} car has \"{}\": {}",
            only.name,
            format::plain(&only.value)
        )?;
    }
    for data in &comparison.data {
        let value =
            |value: &Option<String>| value.clone().unwrap_or_else(|| "not given".to_owned());
        writeln!(
            out,
            "Of the car, {}: {} to {}",
            data.at,
            format::plain(&value(&data.from)),
            format::plain(&value(&data.to))
        )?;
    }
    Ok(())
}

/// What to do to come from one value to the other.
fn work_in_words(work: &Work) -> String {
    match work {
        Work::Slide { by, unit } => {
            let unit = match unit {
                Unit::Degrees => "\u{b0}",
                Unit::Millimetres => " mm",
            };
            format!("move by {}{unit}", format::signed(*by, 2))
        }
        Work::Spacers {
            add,
            remove,
            places,
        } => {
            let pieces = |pieces: &[f64]| {
                let pieces: Vec<String> = pieces.iter().map(f64::to_string).collect();
                format!("{} mm", pieces.join(" + "))
            };
            let mut words = Vec::new();
            if !add.is_empty() {
                words.push(format!("put in {}", pieces(add)));
            }
            if !remove.is_empty() {
                words.push(format!("take out {}", pieces(remove)));
            }
            let words = words.join(", ");
            match places {
                Some(places) if *places > 1 => format!("{words}, in {places} places"),
                _ => words,
            }
        }
        Work::Choose => "fit the other".to_owned(),
    }
}

fn rod_rows(rods: &RodsDifference) -> Vec<Vec<String>> {
    let Some(lengths) = &rods.lengths else {
        return Vec::new();
    };
    Side::BOTH
        .map(|side| {
            let rod = lengths.get(side);
            let turns = rod.turns.map_or(String::new(), |turns| {
                format!(", {} turns", format::signed(turns, 2))
            });
            vec![
                format!("Tie rod, {side}"),
                format!(
                    "{} to {} mm",
                    format::number(rod.from, 2),
                    format::number(rod.to, 2)
                ),
                format!(
                    "gap between the cups {} mm{turns}",
                    format::number(rod.gap, 2)
                ),
            ]
        })
        .into()
}

/// Every figure that differs as it is shown: its value in the second setup and how much more that is.
fn print_figures(from: &Shown, to: &Shown, out: &mut impl Write) -> Result<()> {
    let mut rows = Vec::new();
    for kind in FigureGroup::ALL.into_iter().flat_map(FigureGroup::kinds) {
        let (was, is) = (from.figure(kind), to.figure(kind));
        if was.texts() == is.texts() {
            continue;
        }
        let sides = |texts: Texts| match texts {
            Texts::Sides(sides) => [sides.left, sides.right],
            Texts::Axle(value) => [value, String::new()],
        };
        let [left, right] = sides(is.texts());
        let [left_more, right_more] = sides(is.differences(was));
        let cells = [
            is.facts().brief,
            is.unit,
            &left,
            &left_more,
            &right,
            &right_more,
        ];
        rows.push(cells.map(format::plain).to_vec());
    }
    writeln!(out)?;
    if rows.is_empty() {
        return writeln!(out, "No figure differs, straight ahead at rest.");
    }
    writeln!(out, "Figures that differ, straight ahead at rest")?;
    let heads = ["", "", "left", "change", "right", "change"];
    rows.insert(0, heads.map(str::to_owned).to_vec());
    table::aligned(&rows, 2, out)
}
