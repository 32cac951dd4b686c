//! The arm on its spline: which tooth, what is left over, and what that does to the locks.

use steerloft_setup::car::Spline;
use steerloft_setup::setup::Setup;
use steerloft_solver::SolveError;
use steerloft_solver::frame::Side;

use super::centre::{asymmetry, centre_for_equal_locks};
use super::{Asymmetry, Tooth, teeth_near};
use crate::wheels::Wheels;

/// A tooth with the locks that it gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToothChoice {
    /// The tooth.
    pub tooth: Tooth,
    /// The locks with the arm left where the tooth puts it, without trim; none where the linkage does not turn so far.
    pub untrimmed: Option<Asymmetry>,
}

/// How the arm is brought to where it is wanted.
#[derive(Debug, Clone, PartialEq)]
pub struct Centring {
    /// Steering input wanted at the centre pulse, degrees or mm.
    pub wanted: f64,
    /// How far the arm is turned each way from its centre for the locks below, degrees or mm: as far as the linkage
    /// follows on both sides, and the servo's throw where it is known.
    pub throw: f64,
    /// The nearest tooth first, then the next ones; none without a spline.
    pub teeth: Vec<ToothChoice>,
    /// The locks with the arm trimmed to where it is wanted.
    pub trimmed: Option<Asymmetry>,
    /// The centre from which the same throw each way gives the same lock, degrees or mm; none where there is none near
    /// straight ahead.
    pub equal_locks: Option<f64>,
}

/// How the arm comes to stand at a wanted steering input, on the nearest tooth and so many next ones.
///
/// # Errors
/// Where the setup cannot be assembled.
pub fn centring(setup: &Setup, wanted: f64, next_ones: usize) -> Result<Centring, SolveError> {
    let wheels = Wheels::new(setup)?;
    let servo = setup.car.servo;
    let action = servo.and_then(|servo| servo.action);
    let way = Side::BOTH.map(|side| (wheels.end(side) - wanted).abs());
    let throw = action
        .iter()
        .map(|action| action.throw)
        .fold(way[0].min(way[1]), f64::min);
    let locks = |centre: f64| asymmetry(&wheels, centre, throw).ok();
    let teeth = |spline: Spline| teeth_near(&spline, action.as_ref(), wanted, next_ones);
    Ok(Centring {
        wanted,
        throw,
        teeth: servo
            .and_then(|servo| servo.spline)
            .map_or_else(Vec::new, teeth)
            .into_iter()
            .map(|tooth| ToothChoice {
                tooth,
                untrimmed: locks(tooth.stands_at),
            })
            .collect(),
        trimmed: locks(wanted),
        equal_locks: centre_for_equal_locks(&wheels, throw),
    })
}
