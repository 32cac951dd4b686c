//! Everything that is asked about a servo, answered at once, with the cautions that follow.

use steerloft_setup::setup::Setup;
use steerloft_solver::SolveError;
use steerloft_solver::frame::Side;

use super::{
    Centring, EndPoints, ServoFit, centring, end_points_for_equal_circles, end_points_for_lock,
    servo_fit,
};
use crate::InputUnit;
use crate::loads::{LoadCurve, LoadError, load_curve};
use crate::text;

/// What the end points are to give.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Ends {
    /// Turning circles of one size to both sides.
    EqualCircles,
    /// This lock of the inner wheel to each side, degrees.
    Lock(f64),
}

/// What is asked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Question {
    /// Steering input at which the arm is wanted at the centre pulse, degrees or mm.
    pub arm: f64,
    /// How many teeth beside the nearest are looked at.
    pub next_teeth: usize,
    /// What the end points are to give.
    pub ends: Ends,
}

impl Default for Question {
    fn default() -> Self {
        Self {
            arm: 0.0,
            next_teeth: 2,
            ends: Ends::EqualCircles,
        }
    }
}

/// The servo of a setup: centre, ends, load and fit.
#[derive(Debug, Clone, PartialEq)]
pub struct Survey {
    /// Unit of the steering input.
    pub unit: InputUnit,
    /// The arm on its spline.
    pub centring: Centring,
    /// The end points.
    pub ends: EndPoints,
    /// Load over the throw, where the car gives its loads.
    pub load: Option<LoadCurve>,
    /// How the body lies, where there is a servo.
    pub fit: Option<ServoFit>,
}

/// Points of the load curve.
const LOAD_POINTS: usize = 41;

impl Survey {
    /// Answers a question about a setup.
    ///
    /// # Errors
    /// Where the setup cannot be assembled.
    pub fn new(setup: &Setup, question: &Question) -> Result<Self, SolveError> {
        let load = match load_curve(setup, LOAD_POINTS) {
            Ok(curve) => Some(curve),
            Err(LoadError::NoLoads) => None,
            Err(LoadError::Solve(error)) => return Err(error),
        };
        Ok(Self {
            unit: InputUnit::of(&setup.car),
            centring: centring(setup, question.arm, question.next_teeth)?,
            ends: match question.ends {
                Ends::EqualCircles => end_points_for_equal_circles(setup)?,
                Ends::Lock(lock) => end_points_for_lock(setup, lock)?,
            },
            load,
            fit: servo_fit(setup),
        })
    }

    /// What must not be overlooked; empty where all is well.
    #[must_use]
    pub fn cautions(&self) -> Vec<String> {
        let mut cautions = Vec::new();
        cautions.extend(self.load.as_ref().and_then(overload));
        for side in Side::BOTH {
            let beyond = self.ends.get(side).and_then(|end| end.share);
            if let Some(share) = beyond.filter(|share| *share > 100.0) {
                cautions.push(format!(
                    "The end point to the {side} is {} % of the servo's throw: the servo does not turn so far.",
                    text::number(share, 0)
                ));
            }
        }
        let overlaps = self.fit.iter().flat_map(|fit| &fit.obstacles);
        for obstacle in overlaps.filter(|obstacle| obstacle.clearance < 0.0) {
            cautions.push(format!(
                "The servo's body runs {} mm into {}: it does not fit there.",
                text::number(-obstacle.clearance, 2),
                obstacle.obstacle
            ));
        }
        if let Some(fit) = self.fit.as_ref().filter(|fit| fit.over_chassis < 0.0) {
            cautions.push(format!(
                "The servo's body reaches {} mm below the underside of the chassis plate.",
                text::number(-fit.over_chassis, 2)
            ));
        }
        cautions
    }
}

/// What is said of a servo that is asked for more than it has.
fn overload(load: &LoadCurve) -> Option<String> {
    load.is_overloaded().then(|| {
        format!(
            "The torque is {} times what turning the standing wheels asks for, less than 1: the servo stalls on the way, \
             draws its greatest current and may burn. Take a stronger one, a shorter arm, or less scrub radius.",
            text::number(load.least_margin().unwrap_or(0.0), 2)
        )
    })
}
