//! Checking setups: read, assemble, move over the ranges.

use std::io::{Result, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::{PROBLEM, assembled};
use crate::format;
use crate::state::Shown;

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
    for lock in &shown.curves.steer.locks {
        let at = format::signed(lock.at.to_degrees(), 1);
        problems.push(format!(
            "steering locks at {at}\u{b0} of input: {}",
            lock.cause
        ));
    }
    if let Some(bump) = &shown.curves.bump {
        for lock in &bump.locks {
            let at = format::signed(lock.at, 2);
            problems.push(format!(
                "the suspension locks at {at} mm of travel: {}",
                lock.cause
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
