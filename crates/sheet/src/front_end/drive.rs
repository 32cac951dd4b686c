//! The steering drive with the servo's case.

use steerloft_setup::layout::Layout;
use steerloft_solver::drive::Drive;
use steerloft_solver::pose::AxlePose;

use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use super::{linkage, stacks, swing_arm};
use crate::drawing::Role;
use crate::solid::cuboid;

/// Adds the drive, with the servo where the car has one.
pub(super) fn add(parts: &mut Parts, layout: &Layout, pose: &AxlePose, sizes: Proportions) {
    if let Some(servo) = &layout.servo {
        let case = (
            Role::Servo,
            cuboid(parts.sight.view, &servo.centre, &servo.size),
        );
        parts.add(Layer::Case, &servo.centre, None, [case]);
    }
    stacks::add_packing(parts, layout, pose);
    match &layout.axle.drive {
        Drive::SwingArm(arm) => swing_arm::add(parts, layout, arm, &pose.drive, sizes),
        Drive::TwinCrank(_) => linkage::add_cranks(parts, layout, &pose.drive, sizes),
        Drive::Slider(_) => linkage::add_rack(parts, layout, &pose.drive, sizes),
    }
}
