//! The command line: what the program is asked for, and the answers that need no window.

mod arguments;
mod check;
mod drawing;
mod no_window;
mod report;
mod window;

use std::io::Write;
use std::process::ExitCode;

use clap::Parser;

pub use arguments::{Arguments, Command, ThemeArgument, WindowSize};

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
    let mut out = std::io::stdout().lock();
    let mut errors = std::io::stderr();
    let done = match &arguments.command {
        None => {
            drop(out);
            return window::run(&arguments);
        }
        Some(command) => answer(command, &mut out, &mut errors),
    };
    done.unwrap_or_else(|_| ExitCode::from(PROBLEM))
}

/// Answers a command that needs no window. The error is that the answer could not be written.
pub fn answer(
    command: &Command,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> std::io::Result<ExitCode> {
    match command {
        Command::Check { files } => check::run(files, out, errors),
        Command::Report { file } => report::run(file, out, errors),
        Command::Drawing {
            file,
            output,
            force,
        } => drawing::run(file, output, *force, out, errors),
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
