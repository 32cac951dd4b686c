//! The readings as a problem of least squares.

use levenberg_marquardt::LeastSquaresProblem;
use nalgebra::{DMatrix, DVector, Dyn, storage::Owned};
use steerloft_setup::dimension::{Dimension, put_back};
use steerloft_setup::layout::assemble;
use steerloft_setup::readings::Reading;
use steerloft_setup::setup::Setup;

use super::model::predicted;
use crate::InputUnit;
use crate::find::Progress;

/// Step of a derivative, mm or degrees: far above rounding, and so small that curves are straight over it.
const STEP: f64 = 1e-3;

/// Readings, and the dimensions that are changed to meet them.
#[derive(Clone)]
pub(super) struct Problem<'a> {
    pub(super) setup: &'a Setup,
    pub(super) readings: &'a [Reading],
    pub(super) dimensions: Vec<Dimension>,
    /// How much each dimension is changed, mm or degrees.
    pub(super) changes: DVector<f64>,
    pub(super) progress: &'a Progress,
}

impl<'a> Problem<'a> {
    pub(super) fn new(
        setup: &'a Setup,
        readings: &'a [Reading],
        dimensions: Vec<Dimension>,
        progress: &'a Progress,
    ) -> Self {
        let changes = DVector::zeros(dimensions.len());
        Self {
            setup,
            readings,
            dimensions,
            changes,
            progress,
        }
    }

    /// The same with one dimension fewer.
    pub(super) fn without(&self, dimension: usize) -> Self {
        let mut fewer = self.clone();
        fewer.dimensions.remove(dimension);
        fewer.changes = fewer.changes.remove_row(dimension);
        fewer
    }

    /// The setup with the dimensions changed so.
    pub(super) fn changed(&self, changes: &DVector<f64>) -> Option<Setup> {
        let mut changed = self.setup.clone();
        self.change(&mut changed, changes)?;
        Some(changed)
    }

    fn change(&self, setup: &mut Setup, changes: &DVector<f64>) -> Option<()> {
        put_back(setup, self.setup);
        let pairs = self.dimensions.iter().zip(changes.iter());
        for (dimension, change) in pairs {
            dimension.add(setup, *change).ok()?;
        }
        Some(())
    }

    /// What the car does at each reading; none where it does not get there.
    pub(super) fn predictions(&self, setup: &Setup) -> Option<Vec<f64>> {
        let assembly = assemble(setup).ok()?;
        let unit = InputUnit::of(&setup.car);
        let readings = self.readings.iter();
        readings
            .map(|reading| predicted(&assembly, unit, reading))
            .collect()
    }

    fn residuals_at(&self, scratch: &mut Setup, changes: &DVector<f64>) -> Option<DVector<f64>> {
        if self.progress.is_stopped() {
            return None;
        }
        self.change(scratch, changes)?;
        let predictions = self.predictions(scratch)?;
        let pairs = self.readings.iter().zip(predictions);
        let residuals = pairs.map(|(reading, does)| (does - reading.value) / reading.uncertainty);
        Some(DVector::from_iterator(self.readings.len(), residuals))
    }

    /// Derivatives of the residuals, in units of their uncertainties, per mm or degree: central differences.
    pub(super) fn derivatives(&self) -> Option<DMatrix<f64>> {
        let mut scratch = self.setup.clone();
        let mut jacobian = DMatrix::zeros(self.readings.len(), self.dimensions.len());
        for index in 0..self.dimensions.len() {
            let mut at = |by: f64| {
                let mut changes = self.changes.clone();
                changes[index] += by;
                self.residuals_at(&mut scratch, &changes)
            };
            let slope = (at(STEP)? - at(-STEP)?) / (2.0 * STEP);
            jacobian.set_column(index, &slope);
        }
        Some(jacobian)
    }
}

impl LeastSquaresProblem<f64, Dyn, Dyn> for Problem<'_> {
    type ResidualStorage = Owned<f64, Dyn>;
    type JacobianStorage = Owned<f64, Dyn, Dyn>;
    type ParameterStorage = Owned<f64, Dyn>;

    fn set_params(&mut self, changes: &DVector<f64>) {
        self.changes.copy_from(changes);
    }

    fn params(&self) -> DVector<f64> {
        self.changes.clone()
    }

    fn residuals(&self) -> Option<DVector<f64>> {
        self.residuals_at(&mut self.setup.clone(), &self.changes)
    }

    fn jacobian(&self) -> Option<DMatrix<f64>> {
        self.derivatives()
    }
}
