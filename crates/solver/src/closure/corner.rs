//! A corner made ready to close, and its bodies placed at given coordinates.

use crate::axle::{Corner, Knuckle};
use crate::error::{Fault, SolveError};
use crate::frame::{Point, Side, Vector};
use crate::pose::Coordinates;
use crate::suspension::Kinematics;
use crate::suspension::axis_frame::AxisFrame;
use crate::twist::Twist;

/// A corner made ready to close.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct CornerClosure {
    pub(crate) side: Side,
    pub(crate) knuckle: Knuckle,
    pub(crate) kinematics: Kinematics,
    pub(crate) has_travel: bool,
    /// A typical length of the corner, mm: turns angles into lengths where the two are compared.
    pub(crate) lever: f64,
    /// Sign of the determinant with a rod as the steering condition: which of the two ways the linkage can be
    /// put together is meant.
    pub(crate) branch: f64,
    /// What a residual must come below, mm: a few roundings of the largest coordinate.
    pub(crate) tolerance: f64,
}

/// The knuckle placed at given coordinates.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Placed {
    /// The steering axis with the knuckle turned about it.
    pub(crate) frame: AxisFrame,
    /// The steering axis in the knuckle as drawn.
    pub(crate) drawn: AxisFrame,
    pub(crate) wheel_centre: Point,
    pub(crate) steering_arm: Point,
    /// Motion of the knuckle per unit of the suspension coordinate.
    pub(crate) by_suspension: Twist,
    /// Motion of the knuckle per rad of the steering coordinate.
    pub(crate) by_steering: Twist,
    /// Rate of the unit steering axis per unit of the suspension coordinate.
    pub(crate) axis_rate: Vector,
    /// Rotation of the steering axis in the knuckle as drawn, per unit of the suspension coordinate.
    pub(crate) drawn_turn: Vector,
}

impl Placed {
    /// The knuckle's direction `drawn`, as it points now.
    pub(crate) fn direction(&self, drawn: &Vector) -> Vector {
        self.frame.direction(&self.drawn.components(drawn))
    }
}

impl CornerClosure {
    pub(crate) fn new(side: Side, corner: &Corner) -> Result<Self, SolveError> {
        let degenerate = |fault| SolveError::Degenerate {
            side: Some(side),
            fault,
        };
        let spin_axis = corner
            .knuckle
            .spin_axis
            .try_normalize(f64::MIN_POSITIVE)
            .ok_or(degenerate(Fault::SpinAxisHasNoDirection))?;
        let knuckle = Knuckle {
            spin_axis,
            ..corner.knuckle
        };
        let kinematics = corner.suspension.kinematics(&knuckle).map_err(degenerate)?;
        let lever = steering_lever(&knuckle);
        let magnitude = [
            knuckle.wheel_centre,
            knuckle.steering_arm,
            knuckle.kingpin_upper,
            knuckle.kingpin_lower,
        ]
        .iter()
        .fold(0.0_f64, |most, point| most.max(point.coords.amax()));
        if lever <= 1e-9 * magnitude {
            return Err(degenerate(Fault::SteeringArmOnKingpin));
        }
        Ok(Self {
            side,
            knuckle,
            kinematics,
            has_travel: corner.suspension.has_travel(),
            lever,
            branch: 1.0,
            tolerance: 16.0 * f64::EPSILON * magnitude,
        })
    }

    /// Places the knuckle, or nothing where the suspension cannot be put together.
    #[inline]
    pub(crate) fn place(&self, at: &Coordinates) -> Option<Placed> {
        let carriage = self.kinematics.carriage(at.suspension)?;
        let (sin, cos) = at.steering.sin_cos();
        let frame = carriage.frame.turned(cos, sin);
        let drawn = carriage.drawn;
        let mut by_suspension = carriage.motion;
        by_suspension.angular -= frame.direction(&drawn.components(&carriage.drawn_turn));
        Some(Placed {
            wheel_centre: frame.point(&drawn.local(&self.knuckle.wheel_centre)),
            steering_arm: frame.point(&drawn.local(&self.knuckle.steering_arm)),
            by_suspension,
            by_steering: Twist::rotation(frame.axis, frame.origin),
            axis_rate: carriage.axis_rate,
            drawn_turn: carriage.drawn_turn,
            frame,
            drawn,
        })
    }
}

/// Distance of the outer ball from the steering axis as drawn, mm.
fn steering_lever(knuckle: &Knuckle) -> f64 {
    let axis = knuckle.kingpin_upper - knuckle.kingpin_lower;
    let to_ball = knuckle.steering_arm - knuckle.kingpin_lower;
    axis.cross(&to_ball).norm() / axis.norm()
}
