//! Both inner balls move along a given direction, as on a rack.

use nalgebra::{Isometry3, Translation3, UnitQuaternion};

use super::InnerBalls;
use super::swing_arm::unit_axis;
use crate::error::SolveError;
use crate::frame::{Point, Sides, Vector};
use crate::pose::{DriveJoints, DrivePose};

/// A rack. The input is its displacement along `direction`, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slider {
    /// Direction of a positive input; any length.
    pub direction: Vector,
    /// Inner ball centres at input 0, chassis axes, mm.
    pub rod_inner: Sides<Point>,
}

impl Slider {
    pub(super) fn kinematics(&self) -> Result<SliderKinematics, SolveError> {
        Ok(SliderKinematics {
            direction: unit_axis(&self.direction)?,
            rod_inner: self.rod_inner,
        })
    }
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SliderKinematics {
    direction: Vector,
    rod_inner: Sides<Point>,
}

impl SliderKinematics {
    #[inline]
    pub(super) fn inner_balls(&self, displacement: f64) -> InnerBalls {
        InnerBalls {
            points: self
                .rod_inner
                .map(|ball| ball + self.direction * displacement),
            rates: Sides::both(self.direction),
            stay: f64::MAX,
        }
    }

    pub(super) fn pose(&self, displacement: f64) -> DrivePose {
        let InnerBalls {
            points,
            rates,
            stay,
        } = self.inner_balls(displacement);
        let shift = Translation3::from(self.direction * displacement);
        DrivePose {
            rod_inner: points,
            rod_inner_rate: rates,
            carrier: Sides::both(Isometry3::from_parts(shift, UnitQuaternion::identity())),
            carrier_turn: Sides::both(Vector::zeros()),
            joints: DriveJoints::None,
            stay,
        }
    }
}
