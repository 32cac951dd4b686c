//! How far the tie rods' ball joints may swing.

use crate::error::{Joint, JointLimit};
use crate::figures::linkage::ball_misalignment;
use crate::frame::{Side, Sides, Vector};
use crate::pose::AxlePose;

/// Limits of the tie rods' ball joints.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JointLimits {
    /// Direction of each outer ball's stud in the knuckle as drawn; any length.
    pub outer_studs: Sides<Vector>,
    /// Direction of each inner ball's stud in the body that carries it, as drawn; any length.
    pub inner_studs: Sides<Vector>,
    /// Greatest angle between a rod and the plane square to a stud, rad.
    pub most: f64,
}

impl JointLimits {
    /// The joint that is farthest beyond its limit at a pose, or nothing if none is.
    #[must_use]
    pub fn exceeded(&self, pose: &AxlePose) -> Option<JointLimit> {
        let worst = self.worst(pose);
        (worst.misalignment > self.most).then_some(worst)
    }

    /// The joint that swings farthest at a pose.
    #[must_use]
    pub fn worst(&self, pose: &AxlePose) -> JointLimit {
        let [left, right] = Side::BOTH.map(|side| self.worst_of_side(pose, side));
        if left.misalignment >= right.misalignment {
            left
        } else {
            right
        }
    }

    fn worst_of_side(&self, pose: &AxlePose, side: Side) -> JointLimit {
        let corner = pose.corners.get(side);
        let rod = corner.steering_arm - corner.rod_inner;
        let outer_stud = corner.knuckle.rotation * self.outer_studs.get(side);
        let inner_stud = pose.drive.carrier.get(side).rotation * self.inner_studs.get(side);
        let at = |joint, stud: &Vector| JointLimit {
            side,
            joint,
            misalignment: ball_misalignment(&rod, stud),
            most: self.most,
        };
        let (outer, inner) = (at(Joint::Outer, &outer_stud), at(Joint::Inner, &inner_stud));
        if outer.misalignment >= inner.misalignment {
            outer
        } else {
            inner
        }
    }
}
