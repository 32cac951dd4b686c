//! What a setup does where something was read.

use steerloft_setup::readings::{Height, Quantity, Reading};
use steerloft_solver::Assembly;
use steerloft_solver::figures::camber::camber_of;
use steerloft_solver::figures::toe::{leftward_axis, steer_of, toe_of};
use steerloft_solver::frame::Sides;

use crate::InputUnit;

/// A reading against what the fitted car does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Residual {
    /// What was read.
    pub reading: Reading,
    /// What the fitted car does there, degrees.
    pub fitted: f64,
    /// Its residual in units of the standard deviation that it should have; none where the fit follows the reading so closely
    /// that nothing can be told.
    pub normalised: Option<f64>,
}

impl Residual {
    /// The reading less what the fitted car does, degrees.
    #[must_use]
    pub fn residual(&self) -> f64 {
        self.reading.value - self.fitted
    }
}

/// What an axle does where something was read, degrees; none where it does not get there.
pub(super) fn predicted(assembly: &Assembly, unit: InputUnit, reading: &Reading) -> Option<f64> {
    let Reading { what, side, .. } = *reading;
    let road = assembly.axle().road.axes();
    let at_height = |height: Height| {
        let travel = match height {
            Height::Travel(travel) => travel,
            Height::RideHeight(height) => assembly.axle().road.ride_height - height,
        };
        if travel == 0.0 {
            return Some(*assembly.static_pose());
        }
        assembly.pose(0.0, Sides::both(travel)).ok()
    };
    let value = match what {
        Quantity::Toe(height) => {
            let pose = at_height(height)?;
            let corner = pose.corners.get(side);
            toe_of(side, steer_of(&leftward_axis(corner), &road))
        }
        Quantity::Camber(height) => {
            let pose = at_height(height)?;
            camber_of(&pose.corners.get(side).spin_axis, &road.up)
        }
        Quantity::Turn(input) => {
            let pose = assembly
                .pose(unit.to_solver(input), Sides::both(0.0))
                .ok()?;
            let steer = |corner| steer_of(&leftward_axis(corner), &road);
            let rest = assembly.static_pose().corners.get(side);
            steer(pose.corners.get(side)) - steer(rest)
        }
    };
    value.is_finite().then_some(value.to_degrees())
}
