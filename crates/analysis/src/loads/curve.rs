//! Torque and speed over the throw.

use steerloft_setup::car::ServoAction;
use steerloft_setup::setup::Setup;
use steerloft_solver::frame::Sides;
use steerloft_solver::{AxlePose, SolveError, sweep::SweepRange};

use super::static_moment::{effort_against, static_moments};
use crate::wheels::Wheels;

/// Why there is no load curve.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LoadError {
    /// Load and friction are not given.
    #[error("this car does not say how its front wheels are loaded; give `loads`")]
    NoLoads,
    /// The setup cannot be assembled.
    #[error(transparent)]
    Solve(#[from] SolveError),
}

/// What one steering input asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadPoint {
    /// Steering input, degrees or mm.
    pub input: f64,
    /// Static moment about each kingpin, N mm.
    pub moments: Sides<f64>,
    /// Effort at the input that turns both wheels against them, without sign: N mm at an arm, N at a rack.
    pub effort: f64,
    /// Moments at both kingpins together for each N mm of that effort (each N, times mm, at a rack).
    pub advantage: f64,
    /// The servo's torque as a multiple of the effort, where the servo is known. Below 1 it stalls.
    pub margin: Option<f64>,
    /// Speed of the arm under that load, degrees a second, where the servo is known; 0 where it stalls.
    pub speed: Option<f64>,
}

/// Load over the throw of a car that stands.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadCurve {
    /// Points in the order of the input, over the car's range as far as the linkage reaches.
    pub points: Vec<LoadPoint>,
    /// Time from one end to the other at the servo's speed without load, s.
    pub unloaded_time: Option<f64>,
    /// The same against the static moments; nothing where the servo stalls on the way.
    pub loaded_time: Option<f64>,
}

impl LoadCurve {
    /// Least margin over the throw.
    #[must_use]
    pub fn least_margin(&self) -> Option<f64> {
        let margins = self.points.iter().filter_map(|point| point.margin);
        margins.min_by(f64::total_cmp)
    }

    /// Whether the servo is asked for more than it has somewhere: a place for a caution.
    #[must_use]
    pub fn is_overloaded(&self) -> bool {
        self.least_margin().is_some_and(|margin| margin < 1.0)
    }
}

/// Load over the car's range of input in so many points (at least 2), wheels at the reference height.
///
/// Each wheel carries half of the axle's load. The effort follows by virtual work. Under load a servo's speed is taken to
/// fall in a straight line from its speed without load to none at its torque, as that of a motor with a steady field does
/// (textbook relation of a direct-current motor).
///
/// # Errors
/// Where the car gives no loads, or the setup cannot be assembled.
pub fn load_curve(setup: &Setup, count: usize) -> Result<LoadCurve, LoadError> {
    let loads = setup.car.loads.ok_or(LoadError::NoLoads)?;
    let wheels = Wheels::new(setup)?;
    let action = setup.car.servo.and_then(|servo| servo.action);
    let range = SweepRange {
        from: wheels.input.0,
        to: wheels.input.1,
        count: count.max(2),
    };
    let mut points = Vec::with_capacity(range.count);
    for input in range.values() {
        let Ok(pose) = wheels.pose(input) else {
            continue;
        };
        let moments = static_moments(&pose, &wheels.assembly.axle().road, &loads);
        points.push(point(input, &pose, moments, action.as_ref()));
    }
    Ok(LoadCurve {
        unloaded_time: action
            .and_then(|action| time(&points, |_| Some(action.degrees_per_second()))),
        loaded_time: time(&points, |point| point.speed),
        points,
    })
}

fn point(
    input: f64,
    pose: &AxlePose,
    moments: Sides<f64>,
    action: Option<&ServoAction>,
) -> LoadPoint {
    let effort = effort_against(pose, &moments);
    let margin = action.map(|action| action.torque / effort);
    LoadPoint {
        input,
        moments,
        effort,
        advantage: (moments.left + moments.right) / effort,
        margin,
        speed: action
            .map(|action| action.degrees_per_second() * (1.0 - effort / action.torque).max(0.0)),
    }
}

/// Time from the first to the last point, s, at the speed told for each; nothing where it stands still.
fn time(points: &[LoadPoint], speed: impl Fn(&LoadPoint) -> Option<f64>) -> Option<f64> {
    let mut time = 0.0;
    for pair in points.windows(2) {
        let [from, to] = pair else { continue };
        let slowness = |point: &LoadPoint| speed(point).map(f64::recip);
        time += (to.input - from.input) * f64::midpoint(slowness(from)?, slowness(to)?);
    }
    (points.len() > 1 && time.is_finite()).then_some(time)
}
