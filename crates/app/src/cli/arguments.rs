//! The arguments of the program.

use std::path::PathBuf;
use std::str::FromStr;

use clap::{Parser, Subcommand, ValueEnum, ValueHint};

use super::binding::BindingArguments;
use super::check::CheckArguments;
use super::compare::CompareArguments;
use super::drawing::DrawingArguments;
use super::effects::EffectsArguments;
use super::find::{FindArguments, MatchArguments};
use super::fit::FitArguments;
use super::history::HistoryArguments;
use super::pit_table::PitTableArguments;
use super::report::ReportArguments;
use super::servo::ServoArguments;
use super::sheet::SheetArguments;
use super::sweep::SweepArguments;
use super::symmetry::SymmetryArguments;
use super::tolerance::ToleranceArguments;
use crate::theme::{Metrics, ThemeChoice};

/// A bench for the steering and suspension linkages of small cars.
#[derive(Debug, Clone, Parser)]
#[command(name = "steerloft", version, args_conflicts_with_subcommands = true)]
pub struct Arguments {
    /// Setup files to open in the window, the first in front; without one, a supplied car is opened
    #[arg(value_name = "FILE", value_hint = ValueHint::FilePath)]
    pub files: Vec<PathBuf>,
    /// Size of the window in points, such as 1280x800; without it, as it was the last time
    #[arg(long, value_name = "WIDTHxHEIGHT")]
    pub size: Option<WindowSize>,
    /// Look of the window; without it, as it was the last time
    #[arg(long, value_enum)]
    pub theme: Option<ThemeArgument>,
    /// What to do without a window
    #[command(subcommand)]
    pub command: Option<Command>,
}

/// What can be done without a window.
#[derive(Debug, Clone, Subcommand)]
pub enum Command {
    /// Read setups, assemble them, move them over their ranges and hold them against their parts; say what is wrong
    Check(CheckArguments),
    /// Print the chosen parts and every figure of setups, straight ahead at rest
    Report(ReportArguments),
    /// Print what to change to come from one setup to another, and what that does to each figure
    Compare(CompareArguments),
    /// Print what one step of each adjustment does to each figure
    Effects(EffectsArguments),
    /// Find the parts that give what is wanted, closest first
    Find(FindArguments),
    /// Find the parts that bring the curves of another setup back
    Match(MatchArguments),
    /// Print how alike the two sides are, and what single change would explain a difference
    Symmetry(SymmetryArguments),
    /// Print what build errors do to figures and curves, and which dimensions matter most
    Tolerance(ToleranceArguments),
    /// Find the uncertain dimensions of a car from gauge readings
    Fit(FitArguments),
    /// Print figures along steering, wheel travel or roll as a table
    Sweep(SweepArguments),
    /// Print tooth, trim, end points, torque and fit of the steering servo, and what the servo saver does
    Servo(ServoArguments),
    /// Print where the linkage binds over the whole field of steering and wheel travel
    Binding(BindingArguments),
    /// Print what is usually tried against what was felt, with what it does on this car
    PitTable(PitTableArguments),
    /// Print a folder of setups as a tree of what was made from what, with the differences, or search in it
    History(HistoryArguments),
    /// Write a setup sheet to print, a blank sheet or a measuring form
    Sheet(SheetArguments),
    /// Write a page with drawings of a setup to scale
    Drawing(DrawingArguments),
    /// Print a script that lets a shell complete commands, options and files
    Completions {
        /// The shell
        shell: clap_complete::Shell,
    },
    /// Print the manual page, to be read by man
    Manual,
}

/// Look of the window.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum ThemeArgument {
    /// Dark ink on light paper
    Light,
    /// Light ink on dark ground
    Dark,
    /// As the desktop is set
    System,
}

impl From<ThemeArgument> for ThemeChoice {
    fn from(argument: ThemeArgument) -> Self {
        match argument {
            ThemeArgument::Light => Self::Light,
            ThemeArgument::Dark => Self::Dark,
            ThemeArgument::System => Self::System,
        }
    }
}

/// Reads an angle that a wheel can be turned by, degrees.
pub(super) fn wheel_angle(text: &str) -> Result<f64, String> {
    let angle = text.trim().replace(',', ".").parse::<f64>().ok();
    angle
        .filter(|angle| (0.1..=80.0).contains(angle))
        .ok_or_else(|| "give an angle from 0.1 to 80 degrees".to_owned())
}

/// Size of the window, points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WindowSize {
    /// Width.
    pub width: f32,
    /// Height.
    pub height: f32,
}

impl FromStr for WindowSize {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let [least_width, least_height] = Metrics::WINDOW_LEAST;
        let wrong = || {
            format!(
                "expected WIDTHxHEIGHT, such as 1280x800, from {least_width}x{least_height} up to 16000x16000"
            )
        };
        let (width, height) = text.split_once(['x', 'X']).ok_or_else(wrong)?;
        let number = |text: &str, least: f32| {
            let number = text.trim().parse::<f32>().ok()?;
            (least..=16_000.0).contains(&number).then_some(number)
        };
        Ok(Self {
            width: number(width, least_width).ok_or_else(wrong)?,
            height: number(height, least_height).ok_or_else(wrong)?,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn arguments_are_consistent() {
        Arguments::command().debug_assert();
    }

    #[test]
    fn a_size_is_read_or_refused_with_what_would_be_right() {
        let size: Result<WindowSize, _> = "1024x700".parse();
        assert_eq!(
            size,
            Ok(WindowSize {
                width: 1024.0,
                height: 700.0
            })
        );
        for wrong in ["1024", "x700", "10x10", "infxinf", "1e9x700", "NaNx700"] {
            let refused: Result<WindowSize, String> = wrong.parse();
            assert!(
                refused.is_err_and(|text| text.contains("1280x800")),
                "{wrong}"
            );
        }
    }
}
