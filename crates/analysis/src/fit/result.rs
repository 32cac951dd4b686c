//! What a fit has found.

use nalgebra::DMatrix;
use steerloft_setup::dimension::Dimension;
use steerloft_setup::setup::Setup;

use super::known::{Correlated, Undetermined, correlated};
use super::model::Residual;
use super::problem::Problem;
use super::run::FitError;

/// Normalised residual from which on a reading counts as an outlier: a good one is so far off once in a thousand times
/// (Baarda, "A Testing Procedure for Use in Geodetic Networks", 1968; cited from memory).
pub const OUTLIER: f64 = 3.29;

/// A reading whose residual would have less than this share of its variance says nothing of itself: the fit follows it.
const LEAST_REDUNDANCY: f64 = 0.01;

/// The car that readings tell of.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// The dimensions that were found.
    pub found: Vec<Found>,
    /// Dimensions that were held because the readings leave them open.
    pub undetermined: Vec<Undetermined>,
    /// Dimensions that were found and are hardly told apart.
    pub correlated: Vec<Correlated>,
    /// The readings against the fitted car, in the document's order.
    pub residuals: Vec<Residual>,
    /// Readings more than dimensions found.
    pub redundancy: usize,
    /// The fitted setup, ready to be adopted.
    pub setup: Setup,
}

/// A dimension that was found.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Found {
    /// The dimension.
    pub dimension: Dimension,
    /// How much greater it is than the car's file says, mm or degrees.
    pub change: f64,
    /// Standard uncertainty of that, as it follows from the uncertainties of the readings.
    pub uncertainty: f64,
}

impl Fit {
    pub(super) fn of(
        problem: &Problem<'_>,
        jacobian: &DMatrix<f64>,
        undetermined: Vec<Undetermined>,
    ) -> Result<Self, FitError> {
        let count = problem.dimensions.len();
        let covariance = jacobian
            .tr_mul(jacobian)
            .try_inverse()
            .ok_or(FitError::NotConverged)?;
        let setup = problem
            .changed(&problem.changes)
            .ok_or(FitError::NotConverged)?;
        let fitted = problem.predictions(&setup).ok_or(FitError::NotConverged)?;
        let found = (0..count).map(|place| Found {
            dimension: problem.dimensions[place],
            change: problem.changes[place],
            uncertainty: covariance[(place, place)].sqrt(),
        });
        let readings = problem.readings.iter().zip(fitted).enumerate();
        let residuals = readings.map(|(row, (reading, fitted))| {
            let slope = jacobian.row(row);
            let followed = (slope * &covariance).dot(&slope);
            let free = 1.0 - followed;
            let residual = (reading.value - fitted) / reading.uncertainty;
            Residual {
                reading: *reading,
                fitted,
                normalised: (free >= LEAST_REDUNDANCY).then(|| residual / free.sqrt()),
            }
        });
        Ok(Self {
            found: found.collect(),
            undetermined,
            correlated: correlated(&problem.dimensions, &covariance),
            residuals: residuals.collect(),
            redundancy: problem.readings.len().saturating_sub(count),
            setup,
        })
    }

    /// Root of the mean square of the residuals in units of their uncertainties, for each reading more than needed: about 1
    /// where the readings are as good as they say, 2 where they are twice as far off. None without any to spare.
    #[must_use]
    pub fn misfit(&self) -> Option<f64> {
        let squares = self.residuals.iter().map(|one| {
            let residual = one.residual() / one.reading.uncertainty;
            residual * residual
        });
        #[allow(clippy::cast_precision_loss, reason = "a count of readings")]
        let spare = self.redundancy as f64;
        (self.redundancy > 0).then(|| (squares.sum::<f64>() / spare).sqrt())
    }

    /// Readings that do not go with the others, the farthest off first, by their places.
    #[must_use]
    pub fn outliers(&self) -> Vec<usize> {
        let size = |place: &usize| self.residuals[*place].normalised.unwrap_or_default().abs();
        let mut outliers: Vec<usize> = (0..self.residuals.len())
            .filter(|place| size(place) > OUTLIER)
            .collect();
        outliers.sort_by(|a, b| size(b).total_cmp(&size(a)));
        outliers
    }

    /// Whether what was found for a dimension depends on one that the readings leave open.
    #[must_use]
    pub fn depends_on(&self, dimension: Dimension) -> Option<Dimension> {
        let mut open = self.undetermined.iter();
        open.find(|open| open.with.contains(&dimension))
            .map(|open| open.dimension)
    }
}
