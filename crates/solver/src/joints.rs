//! How far the tie rods' ball joints may swing.

use nalgebra::UnitQuaternion;

use crate::error::{Joint, JointLimit};
use crate::figures::linkage::ball_misalignment;
use crate::frame::{Side, Sides, Vector, mirrored_vector};
use crate::pose::AxlePose;
use crate::sweep::{Margin, Swept};

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
    /// Whether the right side's studs are the mirror image of the left side's.
    pub(crate) fn is_mirror_symmetrical(&self) -> bool {
        let mirrors = |studs: &Sides<Vector>| studs.right == mirrored_vector(&studs.left);
        mirrors(&self.outer_studs) && mirrors(&self.inner_studs)
    }

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

    /// How much each ball may still swing at a pose of a sweep, as a sine, and how fast that changes.
    pub(crate) fn margins(&self, pose: &AxlePose, swept: Swept) -> [Margin; 4] {
        let [left, right] = Side::BOTH.map(|side| self.margins_of_side(pose, side, swept));
        [left[0], left[1], right[0], right[1]]
    }

    /// Margins of the outer and the inner ball. Derived here: the sine of the misalignment is the product of the two unit
    /// vectors along rod and stud.
    fn margins_of_side(&self, pose: &AxlePose, side: Side, swept: Swept) -> [Margin; 2] {
        let corner = pose.corners.get(side);
        let rod = corner.steering_arm - corner.rod_inner;
        let along = rod / rod.norm();
        let motion = swept.knuckle(corner);
        let outer_rate = motion.velocity_of(&corner.steering_arm);
        let inner_rate = swept.drive(pose.drive.rod_inner_rate.get(side));
        let along_rate = (outer_rate - inner_rate) / rod.norm();
        let margin = |stud: Vector, turn: &Vector| {
            let stud = stud.try_normalize(f64::MIN_POSITIVE).unwrap_or_default();
            let sine = along.dot(&stud);
            let rate = along_rate.dot(&stud) + along.dot(&turn.cross(&stud));
            Margin {
                left: self.greatest_sine() - sine.abs(),
                rate: -rate * sine.signum(),
            }
        };
        let carrier_turn = swept.drive(pose.drive.carrier_turn.get(side));
        [
            margin(
                corner.knuckle.rotation * self.outer_studs.get(side),
                &motion.angular,
            ),
            margin(
                pose.drive.carrier.get(side).rotation * self.inner_studs.get(side),
                &carrier_turn,
            ),
        ]
    }

    /// By how much the ends of a side's unit studs, outer and inner, lie apart in two poses.
    pub(crate) fn stud_turns(&self, from: &AxlePose, to: &AxlePose, side: Side) -> [f64; 2] {
        let apart = |stud: &Vector, from: &UnitQuaternion<f64>, to: &UnitQuaternion<f64>| {
            let stud = stud.try_normalize(f64::MIN_POSITIVE).unwrap_or_default();
            (to * stud - from * stud).norm()
        };
        let knuckle = |pose: &AxlePose| pose.corners.get(side).knuckle.rotation;
        let carrier = |pose: &AxlePose| pose.drive.carrier.get(side).rotation;
        [
            apart(self.outer_studs.get(side), &knuckle(from), &knuckle(to)),
            apart(self.inner_studs.get(side), &carrier(from), &carrier(to)),
        ]
    }

    /// Sine of the greatest misalignment; beyond any sine where the limit is a right angle or more.
    fn greatest_sine(&self) -> f64 {
        if self.most < std::f64::consts::FRAC_PI_2 {
            self.most.sin()
        } else {
            f64::MAX
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
