//! Checking setups: read, assemble, move over the ranges.

use std::io::{Result, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::{PROBLEM, assembled};
use crate::format;
use crate::state::{CurveKind, Shown};

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
            Ok((_, shown)) => sound &= check_ranges(file, &shown, out, errors)?,
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
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<bool> {
    let mut problems = Vec::new();
    for end in shown.study.sweeps().steering_ends() {
        let at = format::plain(&format::signed(end.at, 1));
        problems.push(format!(
            "steering locks at {at} {} of input: {}",
            end.unit, end.cause
        ));
    }
    for end in &shown.curve(CurveKind::ToeTravel).ends {
        let at = format::plain(&format::signed(end.at, 2));
        problems.push(format!(
            "the suspension locks at {at} mm of travel: {}",
            end.cause
        ));
    }
    let rods = shown.study.tie_rods();
    for (side, rod) in [("left", rods.left), ("right", rods.right)] {
        if !rod.is_buildable() {
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
