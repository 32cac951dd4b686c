//! How alike the two sides are, as text or JSON.

use std::io::{Result, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueHint};
use serde::Serialize;
use steerloft_analysis::effects::INNER;
use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::symmetry::{Difference, Explanation, Symmetry};

use super::arguments::wheel_angle;
use super::{assembled, ended, table};
use crate::format;

/// What is asked about the two sides.
#[derive(Debug, Clone, Args)]
pub struct SymmetryArguments {
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

/// Prints how alike the sides are.
pub(super) fn run(
    arguments: &SymmetryArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let symmetry = assembled(&arguments.file).and_then(|(document, _)| {
        Symmetry::of(document.setup(), arguments.steer)
            .map_err(|reason| format!("{}: {reason}.", arguments.file.display()))
    });
    ended(symmetry, errors, |symmetry| {
        if arguments.json {
            super::json(&JsonSymmetry::of(arguments, &symmetry), out)
        } else {
            print(&symmetry, out)
        }
    })
}

fn print(symmetry: &Symmetry, out: &mut impl Write) -> Result<()> {
    let mut rows = vec![
        ["", "left", "right", "difference"]
            .map(str::to_owned)
            .to_vec(),
    ];
    rows.extend(symmetry.differences.iter().map(row));
    table::aligned(&rows, 1, out)?;
    writeln!(out)?;
    let Some(finding) = symmetry.finding() else {
        return writeln!(
            out,
            "The sides are alike: no difference is one that a builder notices."
        );
    };
    writeln!(out, "{}.", format::plain(&finding))?;
    for (place, explanation) in symmetry.explanations.iter().enumerate() {
        if place == 1 {
            writeln!(out, "Single changes that would explain it as well:")?;
        }
        if place > 0 {
            writeln!(out, "  {}", explained(explanation))?;
        }
    }
    Ok(())
}

fn row(difference: &Difference) -> Vec<String> {
    let kind = difference.measure.figure();
    let decimals = kind.map_or(2, |kind| kind.facts().decimals);
    let text = |value: Option<f64>| {
        value.map_or("-".to_owned(), |value| {
            format::plain(&format::number(value, decimals))
        })
    };
    let mark = if difference.is_noticeable() { "*" } else { " " };
    vec![
        format::plain(&difference.title()),
        text(difference.left),
        text(difference.right),
        text(difference.difference()) + mark,
    ]
}

fn explained(explanation: &Explanation) -> String {
    format::plain(&format!(
        "{} ({:.0} % of it)",
        explanation.words,
        100.0 * explanation.share
    ))
}

/// The symmetry as JSON holds it.
#[derive(Serialize)]
struct JsonSymmetry {
    file: String,
    inner_deg: f64,
    finding: Option<String>,
    differences: Vec<JsonDifference>,
    explanations: Vec<JsonExplanation>,
}

#[derive(Serialize)]
struct JsonDifference {
    name: &'static str,
    title: String,
    left: Option<f64>,
    right: Option<f64>,
    in_noticeable: f64,
}

#[derive(Serialize)]
struct JsonExplanation {
    words: String,
    off: f64,
    build_errors: f64,
    share: f64,
}

impl JsonSymmetry {
    fn of(arguments: &SymmetryArguments, symmetry: &Symmetry) -> Self {
        let differences = symmetry.differences.iter().map(|difference| {
            let facts = difference.measure.figure().map(FigureKind::facts);
            JsonDifference {
                name: facts.map_or("", |facts| facts.name),
                title: format::plain(&difference.title()),
                left: difference.left,
                right: difference.right,
                in_noticeable: difference.in_noticeable(),
            }
        });
        let explanations = symmetry.explanations.iter();
        Self {
            file: arguments.file.display().to_string(),
            inner_deg: arguments.steer,
            finding: symmetry.finding().map(|finding| format::plain(&finding)),
            differences: differences.collect(),
            explanations: explanations
                .map(|explanation| JsonExplanation {
                    words: format::plain(&explanation.words),
                    off: explanation.off,
                    build_errors: explanation.size,
                    share: explanation.share,
                })
                .collect(),
        }
    }
}
