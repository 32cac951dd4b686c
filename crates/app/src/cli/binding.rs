//! Where the linkage binds over the whole field of steer and travel.

mod field;
mod json;

use std::io::{Result, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueHint};
use steerloft_analysis::InputUnit;
use steerloft_analysis::binding::{BindingMap, Concern, LEAST_SHARE, ThreadCheck, binding_map};
use steerloft_solver::frame::Side;

use self::json::JsonBinding;
use super::{PROBLEM, assembled, table};
use crate::format;

/// What is asked of the field.
#[derive(Debug, Clone, Args)]
pub struct BindingArguments {
    /// Setup file
    #[arg(value_hint = ValueHint::FilePath)]
    pub file: PathBuf,
    /// Poses over the steering
    #[arg(long, value_name = "COUNT", default_value_t = 23, value_parser = clap::value_parser!(u16).range(2..=500))]
    pub columns: u16,
    /// Poses over the wheel travel
    #[arg(long, value_name = "COUNT", default_value_t = 13, value_parser = clap::value_parser!(u16).range(2..=500))]
    pub rows: u16,
    /// Every pose of the field, separated by commas, in full precision
    #[arg(long, conflicts_with = "json")]
    pub csv: bool,
    /// As JSON, in full precision
    #[arg(long)]
    pub json: bool,
}

/// Prints the field; the exit code says whether the car is free over all of it.
pub(super) fn run(
    arguments: &BindingArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let outcome = assembled(&arguments.file).and_then(|(document, _)| {
        let setup = document.setup();
        binding_map(setup, arguments.columns.into(), arguments.rows.into())
            .map(|map| (map, InputUnit::of(&setup.car), setup.car.name.clone()))
            .map_err(|error| format!("{}: {error}", arguments.file.display()))
    });
    let (map, unit, car) = match outcome {
        Ok(done) => done,
        Err(problem) => {
            writeln!(errors, "{problem}")?;
            return Ok(ExitCode::from(PROBLEM));
        }
    };
    if arguments.csv {
        field::write_csv(&map, unit, out)?;
    } else if arguments.json {
        super::json(&JsonBinding::of(&arguments.file, &car, unit, &map), out)?;
    } else {
        writeln!(out, "{car}")?;
        print(&map, unit, out)?;
    }
    if map.is_free() {
        return Ok(ExitCode::SUCCESS);
    }
    writeln!(
        errors,
        "{}: the linkage binds, or a rod cannot be made. Open it with `steerloft {}` and look at the binding map.",
        arguments.file.display(),
        arguments.file.display()
    )?;
    Ok(ExitCode::from(PROBLEM))
}

fn print(map: &BindingMap, unit: InputUnit, out: &mut impl Write) -> Result<()> {
    field::print(map, unit, out)?;
    writeln!(out)?;
    writeln!(out, "Nearest to binding")?;
    let heads = ["", "value", "limit", "left", "input", "travel"];
    let units = ["", "", "", "", unit.word(), "mm"];
    let mut rows: Vec<Vec<String>> = [heads, units]
        .map(|row| row.map(str::to_owned).to_vec())
        .into();
    for concern in Concern::ALL {
        rows.push(worst_row(map, concern));
    }
    table::aligned(&rows, 1, out)?;
    writeln!(out)?;
    writeln!(out, "Tie rods")?;
    for side in Side::BOTH {
        writeln!(out, "  {side:<5} {}", rod_in_words(map.threads.get(side)))?;
    }
    writeln!(out)?;
    writeln!(
        out,
        "Check full lock by hand for binding before you power the steering."
    )
}

fn worst_row(map: &BindingMap, concern: Concern) -> Vec<String> {
    let name = format!("  {} ({})", concern.label(), unit_of(concern));
    let Some(worst) = map.worst(concern) else {
        return vec![name, "not known or never near".to_owned()];
    };
    let decimals = if concern == Concern::DeadCentre { 3 } else { 2 };
    let number = |value: f64| format::plain(&format::number(value, decimals));
    let signed = |value: f64| format::plain(&format::signed(value, 2));
    let limit = match concern {
        Concern::BallJoint => map.joint_limit.map_or("-".to_owned(), number),
        Concern::DeadCentre => number(LEAST_SHARE),
        Concern::Rim | Concern::Chassis => number(0.0),
    };
    let binds = if worst.margin < 0.0 { "BINDS" } else { "" };
    vec![
        name,
        number(worst.value),
        limit,
        number(worst.margin),
        signed(worst.input),
        signed(worst.travel),
        binds.to_owned(),
    ]
}

const fn unit_of(concern: Concern) -> &'static str {
    match concern {
        Concern::BallJoint => "swing, deg",
        Concern::DeadCentre => "share of pull, 0 to 1",
        Concern::Rim | Concern::Chassis => "gap, mm",
    }
}

fn rod_in_words(thread: &ThreadCheck) -> String {
    let number = |value: f64| format::plain(&format::number(value, 2));
    let mut words = vec![format!("{} mm from ball to ball", number(thread.length))];
    words.push(if thread.to_longest < 0.0 {
        format!(
            "{} mm LONGER than its parts make",
            number(-thread.to_longest)
        )
    } else {
        format!("{} mm to the longest", number(thread.to_longest))
    });
    words.push(if thread.to_shortest < 0.0 {
        format!(
            "{} mm SHORTER than its parts make",
            number(-thread.to_shortest)
        )
    } else {
        format!("{} mm to the shortest", number(thread.to_shortest))
    });
    if let Some(engagement) = thread.engagement {
        words.push(format!("thread in each cup {} mm", number(engagement)));
    }
    match thread.spare_engagement {
        Some(spare) if spare < 0.0 => words.push(format!(
            "{} mm LESS than there must be: the cup may come off",
            number(-spare)
        )),
        Some(spare) => words.push(format!("{} mm more than there must be", number(spare))),
        None => {}
    }
    words.join(", ")
}
