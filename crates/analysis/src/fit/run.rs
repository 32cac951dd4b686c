//! Running a fit.

use levenberg_marquardt::{LevenbergMarquardt, TerminationReason};
use steerloft_setup::check::{Fault, check};
use steerloft_setup::dimension::{
    Dimension, DimensionError, Whose, with_rods_fixed, with_sides_apart,
};
use steerloft_setup::layout::assemble;
use steerloft_setup::readings::{Reading, Readings};
use steerloft_setup::setup::Setup;
use steerloft_solver::SolveError;

use super::known::{Undetermined, open};
use super::model::predicted;
use super::problem::Problem;
use super::result::Fit;
use crate::InputUnit;
use crate::find::Progress;

/// Relative change of the sum of squares and of the dimensions at which the fit has come to its end.
const CLOSE: f64 = 1e-12;

/// Why readings cannot be fitted.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum FitError {
    /// The setup cannot be assembled.
    #[error(transparent)]
    Apart(#[from] SolveError),
    /// Nothing was read.
    #[error("there is no reading; give at least as many as uncertain dimensions")]
    NoReading,
    /// Nothing may change.
    #[error("no dimension is named uncertain; name those that the readings are to find")]
    NothingUncertain,
    /// A dimension is not there.
    #[error(transparent)]
    Dimension(#[from] DimensionError),
    /// The axle does not get where something was read.
    #[error(
        "reading {place}, the {reading}, was taken where the setup does not get; check its travel or steering input"
    )]
    NotReached {
        /// Place of the reading, from 1.
        place: usize,
        /// The reading.
        reading: Reading,
    },
    /// No change of the dimensions fits.
    #[error(
        "the fit has not come to an end; check the readings' signs and units, and name fewer dimensions"
    )]
    NotConverged,
    /// The fitted car is none.
    #[error("the fitted car would be none: {0}; check the readings' signs and units")]
    NoCar(#[from] Fault),
    /// It was asked to stop.
    #[error("the fit was stopped")]
    Stopped,
}

/// Fits a setup to readings.
///
/// Rods whose lengths are uncertain are fixed at the lengths that the setup's toe asks for first; otherwise a toe held
/// stays held. A dimension of one side gives the right corner by itself.
///
/// # Errors
/// [`FitError`], which says what would be right.
pub fn fit(setup: &Setup, readings: &Readings, progress: &Progress) -> Result<Fit, FitError> {
    let start = prepared(setup, &readings.uncertain)?;
    let all: Vec<Reading> = readings.all().collect();
    check_readings(&start, &all)?;
    let mut problem = Problem::new(&start, &all, readings.uncertain.clone(), progress);
    let failed = || {
        if progress.is_stopped() {
            FitError::Stopped
        } else {
            FitError::NotConverged
        }
    };
    let mut undetermined = Vec::new();
    loop {
        let jacobian = problem.derivatives().ok_or_else(failed)?;
        problem = hold_open(problem, jacobian, &mut undetermined);
        if !problem.dimensions.is_empty() {
            let (fitted, report) = LevenbergMarquardt::new().with_tol(CLOSE).minimize(problem);
            let has_ended = report.termination.was_successful()
                // Nearer than the derivatives are exact.
                || matches!(report.termination, TerminationReason::NoImprovementPossible(_));
            if !has_ended {
                return Err(failed());
            }
            problem = fitted;
        }
        // Where it has come to, something may be open that was not where it began.
        let jacobian = problem.derivatives().ok_or_else(failed)?;
        if open(&problem, &jacobian).is_none() {
            let fit = Fit::of(&problem, &jacobian, undetermined)?;
            check(&fit.setup)?;
            return Ok(fit);
        }
    }
}

/// Takes dimensions out until the readings tell all that are left.
fn hold_open<'a>(
    mut problem: Problem<'a>,
    mut jacobian: nalgebra::DMatrix<f64>,
    undetermined: &mut Vec<Undetermined>,
) -> Problem<'a> {
    while let Some((held, found)) = open(&problem, &jacobian) {
        undetermined.push(found);
        problem = problem.without(held);
        jacobian = jacobian.remove_column(held);
    }
    problem
}

/// The setup in a form in which the dimensions can be changed.
fn prepared(setup: &Setup, uncertain: &[Dimension]) -> Result<Setup, FitError> {
    if uncertain.is_empty() {
        return Err(FitError::NothingUncertain);
    }
    let mut start = setup.clone();
    if uncertain
        .iter()
        .any(|one| matches!(one, Dimension::Rod { .. }))
    {
        start = with_rods_fixed(&start)?;
    }
    if uncertain.iter().any(|one| one.side() != Whose::Both) {
        start = with_sides_apart(&start);
    }
    for dimension in uncertain {
        dimension.add(&mut start.clone(), 0.0)?;
    }
    Ok(start)
}

fn check_readings(setup: &Setup, readings: &[Reading]) -> Result<(), FitError> {
    if readings.is_empty() {
        return Err(FitError::NoReading);
    }
    let assembly = assemble(setup)?;
    let unit = InputUnit::of(&setup.car);
    let missed = readings
        .iter()
        .position(|reading| predicted(&assembly, unit, reading).is_none());
    match missed {
        Some(index) => Err(FitError::NotReached {
            place: index + 1,
            reading: readings[index],
        }),
        None => Ok(()),
    }
}
