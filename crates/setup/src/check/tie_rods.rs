//! Checks of the tie rods as the points place them.

use steerloft_solver::frame::{Side, mirrored_point};

use super::geometry::{about_axis, apart, leads};
use super::{Fault, Path};
use crate::car::{Car, RightCorner};

/// Checks that both rods have a length and turn their wheels; the fault is placed in the drive.
pub(super) fn check(at: &Path, car: &Car) -> Result<(), Fault> {
    let (left, right) = car.drive.rod_inner();
    let rods = [
        (Side::Left, "rod_inner_left", left),
        (Side::Right, "rod_inner_right", right),
    ];
    for (side, field, inner) in rods {
        let at = at.field(field);
        let corner = car.corner(side);
        // Points of the left corner stand for a mirrored right one.
        let mirrored = side == Side::Right && matches!(car.right, RightCorner::Mirrored);
        let inner = if mirrored {
            mirrored_point(&inner.point())
        } else {
            inner.point()
        };
        let rod = corner.steering_arm.point() - inner;
        apart(
            &at,
            rod.norm(),
            "this inner tie-rod ball coincides with the outer ball",
        )?;
        let lower = corner.kingpin_lower.point();
        leads(
            &at,
            &rod,
            &about_axis(
                &corner.steering_arm.point(),
                &lower,
                &(corner.kingpin_upper.point() - lower),
            ),
            "the tie rod points straight at the steering axis and cannot turn the wheel",
            "place this ball beside the line from the steering axis to the outer ball",
        )?;
    }
    Ok(())
}
