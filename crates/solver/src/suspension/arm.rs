//! An arm that swings about a hinge and carries a ball.

use crate::closure::circle::Circle;
use crate::error::Fault;
use crate::frame::{Point, Vector, mirrored_point};
use crate::pose::ArmPose;

/// An arm that swings about a hinge fixed in the chassis and carries a ball.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Arm {
    /// Front and rear point of the hinge axis, chassis axes, mm.
    pub hinge: [Point; 2],
    /// Ball centre with the arm as drawn, chassis axes, mm. Only its place against the hinge counts, so an
    /// arm made longer than drawn has it away from the knuckle's own point.
    pub ball: Point,
}

impl Arm {
    pub(crate) fn mirrored(&self) -> Self {
        Self {
            hinge: self.hinge.map(|point| mirrored_point(&point)),
            ball: mirrored_point(&self.ball),
        }
    }

    /// The arm swung so that its ball is at a place.
    pub(super) fn with_ball_at(&self, ball: Point) -> ArmPose {
        ArmPose {
            hinge: self.hinge,
            ball,
        }
    }

    pub(crate) fn swing(&self) -> Result<Swing, Fault> {
        let along = self.hinge[1] - self.hinge[0];
        let axis = along
            .try_normalize(f64::MIN_POSITIVE)
            .ok_or(Fault::HingePointsCoincide)?;
        let circle = Circle::about(self.hinge[0], axis, self.ball);
        if circle.radius() <= 1e-9 * along.norm() {
            return Err(Fault::BallOnHinge);
        }
        Ok(Swing { circle })
    }
}

/// An arm made ready to swing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Swing {
    circle: Circle,
}

impl Swing {
    /// The ball and its velocity per rad, at an angle from its place as drawn.
    #[inline]
    pub(crate) fn ball(&self, angle: f64) -> (Point, Vector) {
        let (sin, cos) = angle.sin_cos();
        self.circle.at(cos, sin)
    }

    /// The ball's acceleration per rad squared, at an angle from its place as drawn.
    pub(crate) fn bend(&self, angle: f64) -> Vector {
        let (sin, cos) = angle.sin_cos();
        self.circle.bend(cos, sin)
    }

    /// The circle the ball runs on.
    pub(crate) fn circle(&self) -> &Circle {
        &self.circle
    }
}
