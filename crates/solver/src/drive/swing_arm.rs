//! Both inner balls fixed in one arm that turns about a given axis.

use super::InnerBalls;
use crate::closure::circle::Circle;
use crate::error::{Fault, SolveError};
use crate::frame::{Point, Sides, Vector};
use crate::pose::{DriveJoints, DrivePose, turned_about};

/// A servo saver, a pitman arm or a column lever. The input is the arm's angle, rad, right-handed about
/// `axis_direction`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SwingArm {
    /// A point of the arm's axis, chassis axes, mm.
    pub axis_point: Point,
    /// Direction of the arm's axis; any length.
    pub axis_direction: Vector,
    /// Inner ball centres at input 0, chassis axes, mm.
    pub rod_inner: Sides<Point>,
}

impl SwingArm {
    pub(super) fn kinematics(&self) -> Result<SwingArmKinematics, SolveError> {
        let axis = unit_axis(&self.axis_direction)?;
        Ok(SwingArmKinematics {
            axis,
            axis_point: self.axis_point,
            circles: self
                .rod_inner
                .map(|ball| Circle::about(self.axis_point, axis, ball)),
        })
    }
}

/// The unit vector of a drive's axis or direction.
pub(super) fn unit_axis(direction: &Vector) -> Result<Vector, SolveError> {
    direction
        .try_normalize(f64::MIN_POSITIVE)
        .ok_or(SolveError::Degenerate {
            side: None,
            fault: Fault::DriveAxisHasNoDirection,
        })
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SwingArmKinematics {
    axis: Vector,
    axis_point: Point,
    circles: Sides<Circle>,
}

impl SwingArmKinematics {
    #[inline]
    pub(super) fn inner_balls(&self, angle: f64) -> InnerBalls {
        let (sin, cos) = angle.sin_cos();
        self.turned(cos, sin)
    }

    #[inline]
    fn turned(&self, cos: f64, sin: f64) -> InnerBalls {
        let balls = self.circles.map(|circle| circle.at(cos, sin));
        InnerBalls {
            points: balls.map(|(point, _)| point),
            rates: balls.map(|(_, rate)| rate),
            stay: f64::MAX,
        }
    }

    pub(super) fn inner_bends(&self, angle: f64) -> Sides<Vector> {
        let (sin, cos) = angle.sin_cos();
        self.circles.map(|circle| circle.bend(cos, sin))
    }

    pub(super) fn pose(&self, angle: f64) -> DrivePose {
        let (sin, cos) = angle.sin_cos();
        let InnerBalls {
            points,
            rates,
            stay,
        } = self.turned(cos, sin);
        DrivePose {
            rod_inner: points,
            rod_inner_rate: rates,
            carrier: Sides::both(turned_about(&self.axis_point, &self.axis, cos, sin)),
            carrier_turn: Sides::both(self.axis),
            joints: DriveJoints::None,
            stay,
        }
    }
}
