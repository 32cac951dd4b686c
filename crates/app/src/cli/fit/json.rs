//! A fit for programs: every value as a number, in full precision.

use serde::Serialize;
use steerloft_analysis::fit::{Correlated, Fit, Found, Residual, Undetermined};
use steerloft_setup::adjustment::Unit;

use super::{FitArguments, unit};

/// A fit as JSON holds it.
#[derive(Serialize)]
pub(super) struct JsonFit {
    file: String,
    readings: String,
    redundancy: usize,
    misfit: Option<f64>,
    found: Vec<JsonFound>,
    left_open: Vec<JsonOpen>,
    correlated: Vec<JsonPair>,
    residuals: Vec<JsonResidual>,
}

#[derive(Serialize)]
struct JsonFound {
    dimension: String,
    unit: &'static str,
    change: f64,
    uncertainty: f64,
    /// A dimension that is left open and must be as the file says for this one to hold.
    depends_on: Option<String>,
}

#[derive(Serialize)]
struct JsonOpen {
    dimension: String,
    with: Vec<String>,
}

#[derive(Serialize)]
struct JsonPair {
    pair: [String; 2],
    correlation: f64,
}

#[derive(Serialize)]
struct JsonResidual {
    reading: String,
    read: f64,
    uncertainty: f64,
    fitted: f64,
    normalised: Option<f64>,
    is_outlier: bool,
}

impl JsonFit {
    pub(super) fn of(arguments: &FitArguments, fit: &Fit, input: Unit) -> Self {
        let outliers = fit.outliers();
        let residuals = fit.residuals.iter().enumerate();
        let residuals = residuals
            .map(|(place, residual)| JsonResidual::of(residual, outliers.contains(&place)));
        let found = fit.found.iter();
        Self {
            file: arguments.file.display().to_string(),
            readings: arguments.readings.display().to_string(),
            redundancy: fit.redundancy,
            misfit: fit.misfit(),
            found: found
                .map(|found| JsonFound::of(fit, found, input))
                .collect(),
            left_open: fit.undetermined.iter().map(JsonOpen::of).collect(),
            correlated: fit.correlated.iter().map(JsonPair::of).collect(),
            residuals: residuals.collect(),
        }
    }
}

impl JsonFound {
    fn of(fit: &Fit, found: &Found, input: Unit) -> Self {
        let depends_on = fit.depends_on(found.dimension);
        Self {
            dimension: found.dimension.to_string(),
            unit: unit(found.dimension.unit(input)),
            change: found.change,
            uncertainty: found.uncertainty,
            depends_on: depends_on.map(|dimension| dimension.to_string()),
        }
    }
}

impl JsonOpen {
    fn of(open: &Undetermined) -> Self {
        Self {
            dimension: open.dimension.to_string(),
            with: open.with.iter().map(ToString::to_string).collect(),
        }
    }
}

impl JsonPair {
    fn of(pair: &Correlated) -> Self {
        Self {
            pair: pair.pair.map(|dimension| dimension.to_string()),
            correlation: pair.correlation,
        }
    }
}

impl JsonResidual {
    fn of(residual: &Residual, is_outlier: bool) -> Self {
        Self {
            reading: residual.reading.to_string(),
            read: residual.reading.value,
            uncertainty: residual.reading.uncertainty,
            fitted: residual.fitted,
            normalised: residual.normalised,
            is_outlier,
        }
    }
}
