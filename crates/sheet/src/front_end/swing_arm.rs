//! A drive with both inner balls on one arm: the arm as a plate that carries the balls on studs and spacers.

use steerloft_setup::adjustment::PointName;
use steerloft_setup::layout::Layout;
use steerloft_solver::drive::SwingArm;
use steerloft_solver::frame::{Side, Sides, Vector};
use steerloft_solver::pose::DrivePose;

use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use super::shaft::Shaft;
use super::stacks::{self, Seat};
use crate::drawing::Role;
use crate::solid::{disc, foot_on_line, hull_of_circles};

/// Adds arm, shaft, studs and spacers.
pub(super) fn add(
    parts: &mut Parts,
    layout: &Layout,
    arm: &SwingArm,
    drive: &DrivePose,
    sizes: Proportions,
) {
    let Some(axis) = arm.axis_direction.try_normalize(f64::EPSILON) else {
        return;
    };
    let seats = Sides::from_fn(|side| seat(layout, arm, &axis, drive, side, sizes));
    // The plate lies behind the faces that the studs stand on.
    let tips = Sides::from_fn(|side| {
        let seat = seats.get(side);
        seat.face - seat.towards_ball * (sizes.lever() / 2.0)
    });
    let middle = tips.left + (tips.right - tips.left) * 0.5;
    let boss = foot_on_line(&middle, &arm.axis_point, &axis);
    let plate: Vec<_> = [(boss, 2.3), (tips.left, 1.3), (tips.right, 1.3)]
        .into_iter()
        .flat_map(|(centre, balls)| disc(centre, axis, balls * sizes.ball, sizes.lever()))
        .collect();
    let plate = (Role::DriveArm, hull_of_circles(parts.sight, &plate));
    parts.add(Layer::Linkage, &boss, None, [plate]);
    let shaft = match &layout.servo {
        Some(servo) => Shaft::of_servo(servo, boss, axis),
        None => Shaft::from_point(&arm.axis_point, boss, axis),
    };
    shaft.add(parts, sizes);
    for side in Side::BOTH {
        stacks::add_seat(parts, seats.get(side), side, sizes);
    }
}

/// How an inner ball stands on the plate.
///
/// Without spacers the plate is taken to lie in the plane of the axis point where the ball is near that plane
/// (balls on a face of a servo's arm), else right behind the ball.
fn seat(
    layout: &Layout,
    arm: &SwingArm,
    axis: &Vector,
    drive: &DrivePose,
    side: Side,
    sizes: Proportions,
) -> Seat {
    let ball = *drive.rod_inner.get(side);
    let carrier = drive.carrier.get(side);
    let at = (PointName::RodInner, side);
    let stacked = Seat::with_stacks(layout, at, ball, carrier, sizes.stand_off());
    stacked.unwrap_or_else(|| {
        let offset = (ball - arm.axis_point).dot(axis);
        let outward = if offset < 0.0 { -*axis } else { *axis };
        let near = offset.abs() < 5.0 * sizes.ball;
        let stand_off = if near {
            offset.abs()
        } else {
            sizes.stand_off()
        };
        Seat::plain(ball, outward, (stand_off - sizes.lever() / 2.0).max(0.0))
    })
}
