//! The command line: what the program is asked for, and the answers that need no window.

mod arguments;
mod binding;
mod check;
mod compare;
mod drawing;
mod effects;
mod find;
mod fit;
mod history;
mod manual;
mod no_window;
mod output;
mod pit_table;
mod progress;
mod report;
mod servo;
mod sheet;
mod sweep;
mod symmetry;
mod table;
mod tolerance;
mod window;

use std::io::{BufWriter, ErrorKind, Write};
use std::process::ExitCode;

use clap::Parser;

pub use arguments::{Arguments, Command, ThemeArgument, WindowSize};
pub use binding::BindingArguments;
pub use check::CheckArguments;
pub use compare::CompareArguments;
pub use drawing::DrawingArguments;
pub use effects::EffectsArguments;
pub use find::{FindArguments, MatchArguments, SpaceArguments};
pub use fit::FitArguments;
pub use history::HistoryArguments;
pub use output::{OutputArguments, PaperArgument};
pub use pit_table::PitTableArguments;
pub use report::ReportArguments;
pub use servo::ServoArguments;
pub use sheet::SheetArguments;
pub use sweep::{AlongArgument, SweepArguments};
pub use symmetry::SymmetryArguments;
pub use tolerance::ToleranceArguments;

use crate::state::{Document, Shown, Trouble};

/// A setup has a problem, or something could not be done.
const PROBLEM: u8 = 1;

/// The program was used in a way that cannot be: wrong arguments, or a window where none can be.
const WRONG_USE: u8 = 2;

/// Runs the program with the arguments of the process.
#[must_use]
pub fn run() -> ExitCode {
    // A wrong use ends the process with code 2 and its message on the error output.
    let arguments = Arguments::parse();
    let Some(command) = &arguments.command else {
        return window::run(&arguments);
    };
    let mut out = BufWriter::new(std::io::stdout().lock());
    let mut errors = std::io::stderr();
    let done = answer(command, &mut out, &mut errors);
    match done.and_then(|code| out.flush().map(|()| code)) {
        Ok(code) => code,
        // Whoever reads has enough, as `head` has.
        Err(error) if error.kind() == ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(error) => {
            // Nothing is left to be done if the error output is closed too.
            let _ = writeln!(
                errors,
                "The answer could not be written: {error}. Send it to a place with room left."
            );
            ExitCode::from(PROBLEM)
        }
    }
}

/// Answers a command that needs no window. The error is that the answer could not be written.
pub fn answer(
    command: &Command,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> std::io::Result<ExitCode> {
    match command {
        Command::Check(arguments) => check::run(arguments, out, errors),
        Command::Report(arguments) => report::run(arguments, out, errors),
        Command::Compare(arguments) => compare::run(arguments, out, errors),
        Command::Effects(arguments) => effects::run(arguments, out, errors),
        Command::Find(arguments) => find::run(arguments, out, errors),
        Command::Match(arguments) => find::run_match(arguments, out, errors),
        Command::Symmetry(arguments) => symmetry::run(arguments, out, errors),
        Command::Tolerance(arguments) => tolerance::run(arguments, out, errors),
        Command::Fit(arguments) => fit::run(arguments, out, errors),
        Command::Sweep(arguments) => sweep::run(arguments, out, errors),
        Command::Servo(arguments) => servo::run(arguments, out, errors),
        Command::Binding(arguments) => binding::run(arguments, out, errors),
        Command::PitTable(arguments) => pit_table::run(arguments, out, errors),
        Command::History(arguments) => history::run(arguments, out, errors),
        Command::Sheet(arguments) => sheet::run(arguments, out, errors),
        Command::Drawing(arguments) => drawing::run(arguments, out, errors),
        Command::Completions { shell } => manual::completions(*shell, out),
        Command::Manual => manual::page(out),
    }
}

/// Says what came of a command that succeeds or fails as a whole.
fn ended<T>(
    outcome: Result<T, String>,
    errors: &mut impl Write,
    say: impl FnOnce(T) -> std::io::Result<()>,
) -> std::io::Result<ExitCode> {
    match outcome {
        Ok(done) => say(done).map(|()| ExitCode::SUCCESS),
        Err(problem) => {
            writeln!(errors, "{problem}")?;
            Ok(ExitCode::from(PROBLEM))
        }
    }
}

/// Writes a value as JSON, ended by a line break.
fn json(value: &impl serde::Serialize, out: &mut impl Write) -> std::io::Result<()> {
    serde_json::to_writer_pretty(&mut *out, value)?;
    writeln!(out)
}

/// What kept a record of a table from being written, with its own kind, so that a closed pipe is known for one.
fn told(error: csv::Error) -> std::io::Error {
    match error.into_kind() {
        csv::ErrorKind::Io(error) => error,
        other => std::io::Error::other(format!("{other:?}")),
    }
}

/// A number with a decimal point, as programs write it.
fn finite(text: &str) -> Result<f64, String> {
    match text.parse::<f64>() {
        Ok(value) if value.is_finite() => Ok(value),
        _ => Err("expected a number with a decimal point, such as -2.5".to_owned()),
    }
}

/// A setup read from a file and assembled, or why not, with what to do next.
fn assembled(file: &std::path::Path) -> Result<(Document, Shown), String> {
    let document = Document::read(file).map_err(|error| format!("{error}"))?;
    let shown = Shown::at_rest(document.setup()).map_err(|reason| not_assembled(file, &reason))?;
    Ok((document, shown))
}

fn not_assembled(file: &std::path::Path, reason: &Trouble) -> String {
    format!(
        "{}: cannot be assembled: {}. Open it with `steerloft {}` and change what moves that member.",
        file.display(),
        reason.reason(),
        file.display()
    )
}
