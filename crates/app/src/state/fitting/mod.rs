//! Fitting the car to gauge readings: what was read, what is uncertain, what came of it.

mod row;

pub use row::{ReadingKind, ReadingRow};

use steerloft_analysis::find::Progress;
use steerloft_analysis::fit::{Fit, fit};
use steerloft_setup::adjustment::Unit;
use steerloft_setup::dimension::{Dimension, Whose, dimensions};
use steerloft_setup::readings::Readings;
use steerloft_setup::setup::Setup;

use super::{Bench, WorkedOut};
use crate::entry::Measure;
use crate::units::Units;

/// The fit of the window.
#[derive(Debug)]
pub struct Fitting {
    /// The readings as they are typed.
    pub rows: Vec<ReadingRow>,
    /// When and with what they were taken.
    pub notes: String,
    /// The dimensions that may differ from the car's file.
    pub uncertain: Vec<Dimension>,
    /// Text that the names of dimensions listed must have in them.
    pub filter: String,
    /// How many fits were asked for: the question that is answered.
    asked: u64,
    answers: WorkedOut<u64, Fitted>,
    /// Why a fit could not be started.
    refused: Option<String>,
}

/// A fit with the setup it started from.
#[derive(Debug, Clone, PartialEq)]
pub struct Fitted {
    /// The setup as it was thought to be.
    pub setup: Setup,
    /// What was found, or why nothing was.
    pub outcome: Result<Fit, String>,
}

impl Default for Fitting {
    fn default() -> Self {
        Self {
            rows: [ReadingKind::Toe, ReadingKind::Turned]
                .map(ReadingRow::new)
                .into(),
            notes: String::new(),
            uncertain: Vec::new(),
            filter: String::new(),
            asked: 0,
            answers: WorkedOut::default(),
            refused: None,
        }
    }
}

impl Fitting {
    /// The dimensions that can be uncertain: those ticked first, then all others of the car. Rods can be uncertain whatever way
    /// they are set.
    #[must_use]
    pub fn dimensions(&self, setup: &Setup) -> Vec<Dimension> {
        let rods = [Whose::Left, Whose::Right].map(|side| Dimension::Rod { side });
        let mut all = self.uncertain.clone();
        for dimension in dimensions(setup).into_iter().chain(rods) {
            if !all.contains(&dimension) {
                all.push(dimension);
            }
        }
        all
    }

    /// The readings that the lines say, or what is wrong with one of them.
    pub fn readings(&self, setup: &Setup, units: Units) -> Result<Readings, String> {
        let mut readings = Readings {
            notes: self.notes.clone(),
            uncertain: self.uncertain.clone(),
            ..Readings::default()
        };
        let input = input_measure(setup);
        for (index, row) in self.rows.iter().enumerate() {
            row.read_into(&mut readings, input, units)
                .map_err(|why| format!("line {}, {why}", index + 1))?;
        }
        Ok(readings)
    }

    /// Takes readings that come from a file in the place of those typed.
    pub fn take_readings(&mut self, readings: &Readings, setup: &Setup, units: Units) {
        self.rows = ReadingRow::of(readings, input_measure(setup), units);
        self.notes.clone_from(&readings.notes);
        self.uncertain.clone_from(&readings.uncertain);
    }

    /// Starts a fit of the setup that is worked on, on a thread of its own, which wakes the window when it has ended.
    pub fn start(&mut self, bench: &Bench, units: Units, wake: impl FnOnce() + Send + 'static) {
        let setup = bench.setup().clone();
        match self.readings(&setup, units) {
            Ok(readings) => {
                self.refused = None;
                self.asked += 1;
                self.answers.ask(self.asked, wake, move || Fitted {
                    outcome: fit(&setup, &readings, &Progress::default())
                        .map_err(|error| error.to_string()),
                    setup,
                });
            }
            Err(why) => self.refused = Some(why),
        }
    }

    /// Takes the answer of a fit that has ended meanwhile.
    pub fn take(&mut self) {
        self.answers.take();
    }

    /// Whether a fit is running.
    #[must_use]
    pub const fn is_working(&self) -> bool {
        self.answers.is_working()
    }

    /// Why the last fit could not be started, if so.
    #[must_use]
    pub fn refused(&self) -> Option<&str> {
        self.refused.as_deref()
    }

    /// What the last fit came to.
    #[must_use]
    pub fn last(&self) -> Option<&Fitted> {
        self.answers.last()
    }
}

/// How a steering input is typed.
fn input_measure(setup: &Setup) -> Measure<'static> {
    match setup.car.drive.input_unit() {
        Unit::Millimetres => Measure::Length,
        Unit::Degrees => Measure::Angle,
    }
}
