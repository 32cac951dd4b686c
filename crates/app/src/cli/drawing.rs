//! A page with drawings of a setup, as an SVG file.

use std::io::{Result, Write};
use std::path::Path;
use std::process::ExitCode;

use super::{PROBLEM, assembled};

/// Writes the page. A file that is there already is kept unless `force`.
pub(super) fn run(
    file: &Path,
    output: &Path,
    force: bool,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    match write_page(file, output, force) {
        Ok(()) => {
            writeln!(out, "{} written", output.display())?;
            Ok(ExitCode::SUCCESS)
        }
        Err(problem) => {
            writeln!(errors, "{problem}")?;
            Ok(ExitCode::from(PROBLEM))
        }
    }
}

fn write_page(file: &Path, output: &Path, force: bool) -> std::result::Result<(), String> {
    let (document, shown) = assembled(file)?;
    let page = steerloft_sheet::drawing_page(document.setup(), shown.layout(), &shown.pose);
    let text = steerloft_sheet::svg::page(&page);
    let mut options = std::fs::OpenOptions::new();
    options.write(true);
    if force {
        options.create(true).truncate(true);
    } else {
        options.create_new(true);
    }
    let mut written = options
        .open(output)
        .map_err(|error| cannot_write(output, &error))?;
    written
        .write_all(text.as_bytes())
        .map_err(|error| cannot_write(output, &error))
}

fn cannot_write(output: &Path, error: &std::io::Error) -> String {
    if error.kind() == std::io::ErrorKind::AlreadyExists {
        return format!(
            "{} is there already; give another name, or --force to replace it",
            output.display()
        );
    }
    format!(
        "{} cannot be written: {error}. Choose a folder you may write to, with room left.",
        output.display()
    )
}
