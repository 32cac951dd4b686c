//! Checking setups: read, assemble, move over the ranges, hold against the parts.

use std::io::{Result, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{Args, ValueHint};
use serde::Serialize;
use steerloft_analysis::inspection::{Finding, inspect};
use steerloft_setup::file::FileError;

use super::PROBLEM;
use super::progress::Progress;
use crate::format;
use crate::state::Document;

/// Kind of a finding that the file itself is wrong or cannot be read.
const FILE: &str = "file";

/// What is asked of a check.
#[derive(Debug, Clone, Args)]
pub struct CheckArguments {
    /// Setup files
    #[arg(required = true, value_hint = ValueHint::FilePath)]
    pub files: Vec<PathBuf>,
    /// As JSON, in full precision
    #[arg(long)]
    pub json: bool,
}

/// Checks each file; the exit code says whether all are sound.
pub(super) fn run(
    arguments: &CheckArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let mut sound = true;
    let mut checked = Vec::new();
    let mut progress = Progress::over(arguments.files.len());
    for file in &arguments.files {
        progress.next(file);
        let outcome = Document::read(file).map(|document| inspect(document.setup()));
        progress.clear();
        sound &= outcome.as_ref().is_ok_and(Vec::is_empty);
        if arguments.json {
            checked.push(JsonCheck::of(file, &outcome));
        } else {
            print(file, &outcome, out, errors)?;
        }
    }
    if arguments.json {
        super::json(&checked, out)?;
    }
    Ok(if sound {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(PROBLEM)
    })
}

/// A line for each finding, its kind in brackets at the end.
fn print(
    file: &Path,
    outcome: &std::result::Result<Vec<Finding>, FileError>,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<()> {
    let shown = file.display();
    match outcome {
        Err(error) => writeln!(errors, "{error} [{FILE}]"),
        Ok(findings) if findings.is_empty() => writeln!(out, "{shown}: ok"),
        Ok(findings) => {
            for finding in findings {
                let text = format::plain(&finding.text);
                writeln!(errors, "{shown}: {text} [{}]", finding.kind.name())?;
            }
            writeln!(errors, "Open it with `steerloft {shown}` to see where.")
        }
    }
}

/// What was found in a file, as JSON holds it.
#[derive(Serialize)]
struct JsonCheck {
    file: String,
    sound: bool,
    findings: Vec<JsonFinding>,
}

#[derive(Serialize)]
struct JsonFinding {
    kind: &'static str,
    text: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    line: Option<usize>,
    #[serde(skip_serializing_if = "Option::is_none")]
    column: Option<usize>,
    #[serde(skip_serializing_if = "Option::is_none")]
    side: Option<String>,
    /// Steering input, degrees or mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    steering_input: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    wheel_travel_mm: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    value: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    limit: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    unit: Option<&'static str>,
}

impl JsonCheck {
    fn of(file: &Path, outcome: &std::result::Result<Vec<Finding>, FileError>) -> Self {
        let findings = match outcome {
            Ok(findings) => findings.iter().map(JsonFinding::of).collect(),
            Err(error) => vec![JsonFinding::of_file(error)],
        };
        Self {
            file: file.display().to_string(),
            sound: findings.is_empty(),
            findings,
        }
    }
}

impl JsonFinding {
    fn of(finding: &Finding) -> Self {
        Self {
            kind: finding.kind.name(),
            text: format::plain(&finding.text),
            line: None,
            column: None,
            side: finding.side.map(|side| side.to_string()),
            steering_input: finding.input,
            wheel_travel_mm: finding.travel,
            value: finding.measure.map(|measure| measure.value),
            limit: finding.measure.map(|measure| measure.limit),
            unit: finding.measure.map(|measure| measure.unit),
        }
    }

    fn of_file(error: &FileError) -> Self {
        let place = match error {
            FileError::Text { line, column, .. } => Some((*line, *column)),
            FileError::Read { .. } | FileError::Write { .. } => None,
        };
        Self {
            kind: FILE,
            text: error.to_string(),
            line: place.map(|(line, _)| line),
            column: place.map(|(_, column)| column),
            side: None,
            steering_input: None,
            wheel_travel_mm: None,
            value: None,
            limit: None,
            unit: None,
        }
    }
}
