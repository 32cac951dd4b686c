//! Writing pages to files, and saying what was written or why not.

use std::io::{Result, Write};
use std::path::PathBuf;

use clap::{Args, ValueEnum, ValueHint};
use steerloft_sheet::output::{self, Existing, OutputError};
use steerloft_sheet::{Page, Paper};

/// Resolution where none is asked for, dots per inch.
pub(crate) const RESOLUTION: f64 = 200.0;

/// Where pages go.
#[derive(Debug, Clone, Args)]
pub struct OutputArguments {
    /// File to write; the end of its name decides the format: .pdf, .svg or .png. Where a format holds one page only,
    /// further pages go to OUT-2 and so on
    #[arg(short, long, value_name = "OUT", value_hint = ValueHint::FilePath)]
    pub output: PathBuf,
    /// Resolution of a PNG picture, dots per inch
    #[arg(long, value_name = "DPI", default_value_t = RESOLUTION)]
    pub resolution: f64,
    /// Replace a file that is there already
    #[arg(long)]
    pub force: bool,
}

impl OutputArguments {
    fn existing(&self) -> Existing {
        if self.force {
            Existing::Replace
        } else {
            Existing::Keep
        }
    }

    /// Writes the pages; the files written.
    pub(super) fn write(&self, pages: &[Page]) -> std::result::Result<Vec<PathBuf>, String> {
        output::write(pages, &self.output, self.resolution, self.existing()).map_err(|error| {
            match error {
                OutputError::Exists { .. } => {
                    format!("{error}; give another name, or --force to replace it")
                }
                _ => error.to_string(),
            }
        })
    }
}

/// Says which files were written, except where the pages went down the same way as the words would.
pub(super) fn say_written(files: &[PathBuf], out: &mut impl Write) -> Result<()> {
    for file in files {
        if file.metadata().is_ok_and(|file| file.is_file()) {
            writeln!(out, "{} written", file.display())?;
        }
    }
    Ok(())
}

/// Size of the paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum PaperArgument {
    /// 210 by 297 mm
    A4,
    /// 8.5 by 11 inches
    Letter,
}

impl From<PaperArgument> for Paper {
    fn from(argument: PaperArgument) -> Self {
        match argument {
            PaperArgument::A4 => Self::A4,
            PaperArgument::Letter => Self::Letter,
        }
    }
}
