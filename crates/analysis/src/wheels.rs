//! Poses of a setup at inputs in the car's own unit, and the steer of its wheels in degrees.

use steerloft_setup::layout::assemble;
use steerloft_setup::setup::Setup;
use steerloft_solver::figures::corner_figures;
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::{Assembly, AxlePose, SolveError};

use crate::InputUnit;

/// A setup assembled, with the unit of its input.
#[derive(Debug, Clone)]
pub(crate) struct Wheels {
    pub(crate) assembly: Assembly,
    pub(crate) unit: InputUnit,
    pub(crate) input: (f64, f64),
    pub(crate) travel: (f64, f64),
    rest: Sides<f64>,
}

impl Wheels {
    pub(crate) fn new(setup: &Setup) -> Result<Self, SolveError> {
        let assembly = assemble(setup)?;
        let rest = Sides::from_fn(|side| steer(&assembly, assembly.static_pose(), side));
        Ok(Self {
            assembly,
            unit: InputUnit::of(&setup.car),
            input: setup.car.ranges.input,
            travel: setup.car.ranges.travel,
            rest,
        })
    }

    /// An input in degrees or mm as the solver takes it.
    pub(crate) fn to_solver(&self, input: f64) -> f64 {
        self.unit.to_solver(input)
    }

    /// The pose at an input in degrees or mm, wheels at the reference height.
    pub(crate) fn pose(&self, input: f64) -> Result<AxlePose, SolveError> {
        self.assembly.pose(self.to_solver(input), Sides::both(0.0))
    }

    /// Turn of a wheel from its own straight-ahead position, degrees, positive to the left.
    pub(crate) fn turn(&self, pose: &AxlePose, side: Side) -> f64 {
        steer(&self.assembly, pose, side) - self.rest.get(side)
    }

    /// Turn of the wheel that is inside when turning to a side, degrees, positive into that turn.
    pub(crate) fn inner_turn(&self, pose: &AxlePose, to: Side) -> f64 {
        to.sign() * self.turn(pose, to)
    }

    /// +1 where a positive input turns the wheels to the left, -1 where to the right.
    pub(crate) fn sign(&self) -> f64 {
        let rates = self
            .assembly
            .static_pose()
            .corners
            .map(|corner| corner.per_input.angular.dot(&corner.kingpin_axis()));
        if rates.left + rates.right >= 0.0 {
            1.0
        } else {
            -1.0
        }
    }

    /// How far the input goes when it turns the wheels to a side: the car's range, or the lock before it.
    pub(crate) fn end(&self, to: Side) -> f64 {
        let end = self.range_end(to);
        let (mut reached, mut missed) = (0.0, end);
        if self.is_within(end) {
            return end;
        }
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(reached, missed);
            if self.is_within(middle) {
                reached = middle;
            } else {
                missed = middle;
            }
        }
        reached
    }

    fn range_end(&self, to: Side) -> f64 {
        if to.sign() * self.sign() > 0.0 {
            self.input.1
        } else {
            self.input.0
        }
    }

    /// Whether an input has a pose within the limits of the ball joints.
    pub(crate) fn is_within(&self, input: f64) -> bool {
        self.pose(input).is_ok_and(|pose| {
            self.assembly
                .joint_limits()
                .is_none_or(|limits| limits.exceeded(&pose).is_none())
        })
    }
}

/// Halvings that bring an input to the rounding of its degrees.
pub(crate) const HALVINGS: usize = 60;

/// The input between two at which a quantity has a value, by halving; nothing where it is not between its values at the
/// ends or has none on the way.
pub(crate) fn input_where(
    (from, to): (f64, f64),
    wanted: f64,
    value: impl Fn(f64) -> Option<f64>,
) -> Option<f64> {
    let (mut low, mut high) = (from, to);
    let at_low = value(low)? - wanted;
    let at_high = value(high)? - wanted;
    if at_low == 0.0 {
        return Some(low);
    }
    if at_low.signum() == at_high.signum() {
        return (at_high == 0.0).then_some(high);
    }
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if (value(middle)? - wanted).signum() == at_low.signum() {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(f64::midpoint(low, high))
}

fn steer(assembly: &Assembly, pose: &AxlePose, side: Side) -> f64 {
    corner_figures(pose.corners.get(side), &assembly.axle().road)
        .steer
        .to_degrees()
}
