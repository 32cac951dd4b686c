//! Checking setups: read, assemble, move over the ranges.

use std::io::{Result, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::{PROBLEM, assembled};
use crate::format;
use crate::state::{InputUnit, Shown};

/// Checks each file; the exit code says whether all are sound.
pub(super) fn run(
    files: &[PathBuf],
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let mut sound = true;
    for file in files {
        match assembled(file) {
            Err(problem) => {
                sound = false;
                writeln!(errors, "{problem}")?;
            }
            Ok((document, shown)) => {
                let unit = InputUnit::of(&document.setup().car);
                sound &= check_ranges(file, &shown, unit, out, errors)?;
            }
        }
    }
    Ok(if sound {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(PROBLEM)
    })
}

/// Whether the car moves over its whole ranges and its rods can be built.
fn check_ranges(
    file: &Path,
    shown: &Shown,
    unit: InputUnit,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<bool> {
    let mut problems = Vec::new();
    for end in &shown.curves.steer.ends {
        let at = format::plain(&format::signed(end.at, 1));
        let unit = unit.word();
        problems.push(format!(
            "steering locks at {at} {unit} of input: {}",
            end.cause
        ));
    }
    if let Some(travel) = &shown.curves.travel {
        for end in &travel.ends {
            let at = format::plain(&format::signed(end.at, 2));
            problems.push(format!(
                "the suspension locks at {at} mm of travel: {}",
                end.cause
            ));
        }
    }
    let rods = &shown.figures.rods;
    for (side, rod) in [("left", rods.left), ("right", rods.right)] {
        if !rod.buildable {
            let length = format::number(rod.length, 2);
            problems.push(format!(
                "the {side} tie rod would be {length} mm long, which its parts cannot be screwed to"
            ));
        }
    }
    if problems.is_empty() {
        writeln!(out, "{}: ok", file.display())?;
        return Ok(true);
    }
    for problem in &problems {
        writeln!(errors, "{}: {problem}.", file.display())?;
    }
    writeln!(
        errors,
        "Open it with `steerloft {}` to see where.",
        file.display()
    )?;
    Ok(false)
}
