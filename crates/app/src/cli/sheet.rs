//! Sheets to print: of a setup, blank, and for measuring a car.

use std::io::{Result, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::builder::PossibleValuesParser;
use clap::{Args, ValueHint};
use steerloft_analysis::curves::CurveKind;
use steerloft_setup::setup::Setup;
use steerloft_sheet::{Page, SheetError, SheetRequest, blank_sheet, measuring_form, setup_sheet};

use super::ended;
use super::output::{OutputArguments, PaperArgument, say_written};
use crate::state::Document;

/// The word for every curve.
const ALL: &str = "all";

/// What is asked of a sheet.
#[derive(Debug, Clone, Args)]
pub struct SheetArguments {
    /// Setup file
    #[arg(value_hint = ValueHint::FilePath)]
    pub file: PathBuf,
    /// Where the sheet goes
    #[command(flatten)]
    pub output: OutputArguments,
    /// Size of the paper
    #[arg(long, value_enum, default_value_t = PaperArgument::A4)]
    pub paper: PaperArgument,
    /// Setup to compare with: what differs from it is marked
    #[arg(long, value_name = "FILE", value_hint = ValueHint::FilePath)]
    pub reference: Option<PathBuf>,
    /// Further curves on the next page, by name, with commas between them
    #[arg(
        long,
        value_name = "NAMES",
        value_delimiter = ',',
        value_parser = PossibleValuesParser::new(CurveKind::ALL.map(CurveKind::name).into_iter().chain([ALL]))
    )]
    pub curves: Vec<String>,
    /// A sheet of the car with boxes to fill in by hand
    #[arg(long, conflicts_with_all = ["reference", "curves"])]
    pub blank: bool,
    /// A form that shows from where to where each point of the car is measured
    #[arg(long, conflicts_with_all = ["reference", "curves", "blank"])]
    pub measuring: bool,
}

/// Writes the sheet.
pub(super) fn run(
    arguments: &SheetArguments,
    out: &mut impl Write,
    errors: &mut impl Write,
) -> Result<ExitCode> {
    let written = pages(arguments).and_then(|pages| arguments.output.write(&pages));
    ended(written, errors, |files| say_written(&files, out))
}

fn pages(arguments: &SheetArguments) -> std::result::Result<Vec<Page>, String> {
    let setup = read(&arguments.file)?;
    let reference = arguments.reference.as_deref().map(read).transpose()?;
    let paper = arguments.paper.into();
    let pages = if arguments.blank {
        blank_sheet(&setup, paper)
    } else if arguments.measuring {
        measuring_form(&setup, paper)
    } else {
        setup_sheet(&SheetRequest {
            setup: &setup,
            reference: reference.as_ref(),
            paper,
            curves: &curves(&arguments.curves),
        })
    };
    pages.map_err(|error| {
        let file = match error {
            SheetError::Setup(_) => Some(&arguments.file),
            SheetError::Reference(_) => arguments.reference.as_ref(),
        };
        let name = file.map_or(String::new(), |file| file.display().to_string());
        format!(
            "{name}: {error}. Open it with `steerloft {name}` and change what moves that member."
        )
    })
}

fn read(file: &Path) -> std::result::Result<Setup, String> {
    let document = Document::read(file).map_err(|error| error.to_string())?;
    Ok(document.setup().clone())
}

/// The curves of these names, each once, in the order asked for.
fn curves(names: &[String]) -> Vec<CurveKind> {
    if names.iter().any(|name| name == ALL) {
        return CurveKind::ALL.to_vec();
    }
    let mut kinds = Vec::new();
    for kind in names.iter().filter_map(|name| CurveKind::from_name(name)) {
        if !kinds.contains(&kind) {
            kinds.push(kind);
        }
    }
    kinds
}
