//! The car that gauge readings tell of: uncertain dimensions found by least squares.
//!
//! Each reading is compared with what the setup does at the same height or steering input, in units of its uncertainty, and
//! the dimensions named uncertain are changed until the sum of the squares is least (Levenberg and Marquardt's method, in the
//! library `levenberg-marquardt`; derivatives from solved setups). What the readings cannot tell is not guessed: a
//! dimension, or a combination of several, that they leave open is held as it is and named.
//!
//! With the Jacobian J of the residuals in units of their uncertainties, the covariance of what is found is (J'J)^-1, and a
//! reading's residual has the standard deviation sqrt(1 - h) with h on the diagonal of J (J'J)^-1 J' (standard theory of
//! linear least squares; Draper and Smith, "Applied Regression Analysis", 1998, chapters 5 and 8; cited from memory).

mod known;
mod model;
mod problem;
mod result;
mod run;

pub use known::{CORRELATED, Correlated, KNOWN_WITHIN, Undetermined};
pub use model::Residual;
pub use result::{Fit, Found, OUTLIER};
pub use run::{FitError, fit};
