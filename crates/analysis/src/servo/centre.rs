//! What an arm off its centre does to the two locks, and which centre makes them equal.

use steerloft_setup::setup::Setup;
use steerloft_solver::SolveError;
use steerloft_solver::frame::Side;

use crate::wheels::{Wheels, input_where};

/// The locks to both sides when the arm is turned as far each way from its centre.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asymmetry {
    /// Lock of the inner wheel when turning left, degrees.
    pub left: f64,
    /// Lock of the inner wheel when turning right, degrees.
    pub right: f64,
}

impl Asymmetry {
    /// How much more the wheels turn to the left than to the right, degrees.
    #[must_use]
    pub fn difference(&self) -> f64 {
        self.left - self.right
    }
}

/// Farthest centre looked for, degrees of the arm.
const FARTHEST: f64 = 15.0;

/// The locks when the arm's centre stands at a steering input and it turns so far each way; both degrees, or mm of a rack.
///
/// # Errors
/// Where the setup cannot be assembled, or the arm meets a lock on the way.
pub fn lock_asymmetry(setup: &Setup, centre: f64, throw: f64) -> Result<Asymmetry, SolveError> {
    asymmetry(&Wheels::new(setup)?, centre, throw)
}

/// The input of the centre from which the same throw each way gives the same lock of the inner wheel to both sides,
/// degrees or mm; nothing where there is none near straight ahead that both ways can be turned from.
///
/// # Errors
/// Where the setup cannot be assembled.
pub fn equal_lock_centre(setup: &Setup, throw: f64) -> Result<Option<f64>, SolveError> {
    Ok(centre_for_equal_locks(&Wheels::new(setup)?, throw))
}

/// As [`equal_lock_centre`], of a setup that is assembled.
pub(super) fn centre_for_equal_locks(wheels: &Wheels, throw: f64) -> Option<f64> {
    let difference = |centre: f64| {
        asymmetry(wheels, centre, throw)
            .ok()
            .map(|locks| locks.difference())
    };
    // The farther apart the ends may be, the surer the change of sign; but each end must be reached.
    let mut reach = FARTHEST;
    while reach > 0.05 {
        if let Some(centre) = input_where((-reach, reach), 0.0, difference) {
            return Some(centre);
        }
        reach /= 1.5;
    }
    None
}

pub(super) fn asymmetry(wheels: &Wheels, centre: f64, throw: f64) -> Result<Asymmetry, SolveError> {
    let lock = |to: Side| -> Result<f64, SolveError> {
        let pose = wheels.pose(centre + to.sign() * wheels.sign() * throw)?;
        Ok(wheels.inner_turn(&pose, to))
    };
    Ok(Asymmetry {
        left: lock(Side::Left)?,
        right: lock(Side::Right)?,
    })
}
