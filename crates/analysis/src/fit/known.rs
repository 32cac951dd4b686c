//! What readings can tell apart, and what they cannot.

use nalgebra::{DMatrix, DVector, SymmetricEigen};
use steerloft_setup::dimension::Dimension;

use super::problem::Problem;

/// A dimension, or a combination of several, counts as found only where the readings tell it to within this standard
/// uncertainty, mm or degrees: anybody measures better with a rule.
pub const KNOWN_WITHIN: f64 = 1.0;

/// Correlation of two dimensions that were found from which on they are named together.
pub const CORRELATED: f64 = 0.9;

/// Share of the greatest part of a combination from which on a dimension belongs to it.
const BELONGS: f64 = 0.3;

/// A dimension that the readings leave open.
#[derive(Debug, Clone, PartialEq)]
pub struct Undetermined {
    /// The dimension, which was held as it is.
    pub dimension: Dimension,
    /// The dimensions from which the readings cannot tell it: what was found for those holds only if this one is as the car's
    /// file says. None where no reading depends on it.
    pub with: Vec<Dimension>,
}

impl Undetermined {
    /// Why the readings leave it open, in words.
    #[must_use]
    pub fn reason(&self) -> String {
        if self.with.is_empty() {
            return "no reading depends on it".to_owned();
        }
        let with: Vec<String> = self.with.iter().map(ToString::to_string).collect();
        format!("not told from {}", with.join("; "))
    }
}

/// Two dimensions that were found, though the readings can hardly tell them apart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Correlated {
    /// The two.
    pub pair: [Dimension; 2],
    /// Their correlation, from -1 to 1: with a positive one both are too great, or both too small.
    pub correlation: f64,
}

/// The dimension to be held, by its place, with those that it cannot be told from; none where all can be told.
pub(super) fn open(
    problem: &Problem<'_>,
    jacobian: &DMatrix<f64>,
) -> Option<(usize, Undetermined)> {
    let information = jacobian.tr_mul(jacobian);
    if information.is_empty() {
        return None;
    }
    let eigen = SymmetricEigen::new(information);
    let weakest = eigen.eigenvalues.imin();
    let known_within = 1.0 / eigen.eigenvalues[weakest].max(0.0).sqrt();
    if known_within <= KNOWN_WITHIN {
        return None;
    }
    let combination: DVector<f64> = eigen.eigenvectors.column(weakest).abs();
    let held = combination.imax();
    let belongs =
        |place: &usize| *place != held && combination[*place] >= BELONGS * combination[held];
    let with = (0..combination.len()).filter(belongs);
    let undetermined = Undetermined {
        dimension: problem.dimensions[held],
        with: with.map(|place| problem.dimensions[place]).collect(),
    };
    Some((held, undetermined))
}

/// The pairs whose correlation is great, the greatest first.
pub(super) fn correlated(dimensions: &[Dimension], covariance: &DMatrix<f64>) -> Vec<Correlated> {
    let mut pairs = Vec::new();
    for (one, first) in dimensions.iter().enumerate() {
        for (other, second) in dimensions.iter().enumerate().skip(one + 1) {
            let both = (covariance[(one, one)] * covariance[(other, other)]).sqrt();
            let correlation = covariance[(one, other)] / both;
            if correlation.abs() >= CORRELATED {
                pairs.push(Correlated {
                    pair: [*first, *second],
                    correlation,
                });
            }
        }
    }
    pairs.sort_by(|a, b| b.correlation.abs().total_cmp(&a.correlation.abs()));
    pairs
}
