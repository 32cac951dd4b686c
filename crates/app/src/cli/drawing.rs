//! A page with drawings of a setup.

use std::io::{Result, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Args, ValueHint};

use super::output::{OutputArguments, say_written};
use super::{assembled, ended};

/// What is asked of a page with drawings.
#[derive(Debug, Clone, Args)]
pub struct DrawingArguments {
    /// Setup file
    #[arg(value_hint = ValueHint::FilePath)]
    pub file: PathBuf,
    /// Where the page goes
    #[command(flatten)]
    pub output: OutputArguments,
}

/// Writes the page.
pub(super) fn run(
    arguments: &DrawingArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let written = assembled(&arguments.file).and_then(|(document, shown)| {
        let page = steerloft_sheet::drawing_page(document.setup(), shown.layout(), &shown.pose);
        arguments.output.write(&[page])
    });
    ended(written, errors, |files| say_written(&files, out))
}
