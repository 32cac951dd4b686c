//! Servo saver: which moment at a wheel opens it, and how far the wheels then go.

mod blows;

pub use blows::{Blows, blows};

use steerloft_setup::car::ServoSaver;
use steerloft_setup::setup::Setup;
use steerloft_solver::SolveError;
use steerloft_solver::figures::load::holding_effort;
use steerloft_solver::frame::{Side, Sides};

use crate::wheels::Wheels;

/// Why a saver cannot be judged.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SaverError {
    /// The car has none.
    #[error("this car says nothing of a servo saver; give `saver`")]
    NoSaver,
    /// The setup cannot be assembled or posed.
    #[error(transparent)]
    Solve(#[from] SolveError),
}

/// What a saver does to a blow on one wheel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Opening {
    /// Moment about the struck wheel's kingpin at which the saver begins to open, N mm.
    pub opens_at: f64,
    /// How far the arm gives way under the moment asked about, degrees; 0 while the saver holds.
    pub arm: f64,
    /// How far each wheel is turned by that, degrees, positive to the left.
    pub wheels: Sides<f64>,
    /// Whether the linkage meets its lock before the saver balances the moment; arm and wheels are then those at the lock.
    pub at_lock: bool,
}

/// Rounds of the search for balance: each halves what is left.
const HALVINGS: usize = 50;

/// What the saver does when a moment (N mm, positive turning the wheel to the left) acts about one wheel's kingpin, the
/// servo held at a steering input (degrees).
///
/// The arm gives way until its spring balances: breakaway + rate x angle = moment at the arm, which is the wheel's moment
/// over the linkage, by virtual work, in the pose that the arm then has.
///
/// # Errors
/// Where the car has no saver, or the setup cannot be posed at that input.
pub fn opening(
    setup: &Setup,
    input: f64,
    struck: Side,
    moment: f64,
) -> Result<Opening, SaverError> {
    let saver = setup.car.saver.ok_or(SaverError::NoSaver)?;
    let wheels = Wheels::new(setup)?;
    let held = wheels.pose(input)?;
    let per_moment =
        |input: f64| -> Result<f64, SolveError> { Ok(at_arm(&wheels.pose(input)?, struck)) };
    let at_rest = per_moment(input)?;
    let opens_at = saver.breakaway / at_rest.abs();
    // The wheel's moment drives the arm in this direction: opposite to what holds it.
    let direction = -(at_rest * moment).signum();
    let surplus = |angle: f64| -> Option<f64> {
        let arm = per_moment(input + direction * angle).ok()?;
        Some(arm.abs() * moment.abs() - resisted(&saver, angle))
    };
    let (arm, at_lock) = balance(surplus);
    let given = wheels.pose(input + direction * arm)?;
    Ok(Opening {
        opens_at,
        arm,
        wheels: Sides::from_fn(|side| wheels.turn(&given, side) - wheels.turn(&held, side)),
        at_lock,
    })
}

/// Moment at the arm that holds 1 N mm to the left about one kingpin, N mm.
fn at_arm(pose: &steerloft_solver::AxlePose, struck: Side) -> f64 {
    let moments = match struck {
        Side::Left => Sides::new(1.0, 0.0),
        Side::Right => Sides::new(0.0, 1.0),
    };
    holding_effort(pose, &moments)
}

fn resisted(saver: &ServoSaver, angle: f64) -> f64 {
    saver.breakaway + saver.rate * angle
}

/// The angle at which the surplus is used up, and whether a lock comes first. `surplus` has no value beyond the lock.
fn balance(surplus: impl Fn(f64) -> Option<f64>) -> (f64, bool) {
    if surplus(0.0).is_none_or(|surplus| surplus <= 0.0) {
        return (0.0, false);
    }
    let (mut low, mut high) = (0.0, 90.0);
    let mut at_lock = false;
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        match surplus(middle) {
            Some(left) if left > 0.0 => low = middle,
            Some(_) => {
                high = middle;
                at_lock = false;
            }
            None => {
                high = middle;
                at_lock = true;
            }
        }
    }
    (low, at_lock)
}
