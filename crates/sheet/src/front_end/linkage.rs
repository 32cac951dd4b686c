//! Drives other than a single arm: cranks with drag link and cross link, or a rack.

use steerloft_setup::adjustment::PointName;
use steerloft_setup::layout::Layout;
use steerloft_solver::frame::Side;
use steerloft_solver::pose::{DrivePose, Lever};

use super::parts::{Layer, Parts};
use super::proportions::Proportions;
use super::rods;
use super::shaft::Shaft;
use super::stacks::{self, Seat};
use crate::drawing::Role;
use crate::solid::{cylinder, disc, foot_on_line, hull_of_circles};

/// Adds servo arm, cranks and the links between them.
pub(super) fn add_cranks(
    parts: &mut Parts,
    layout: &Layout,
    drive: &DrivePose,
    sizes: Proportions,
) {
    for (index, lever) in layout.axle.drive.levers(drive).enumerate() {
        let Some(first) = lever.balls().next() else {
            continue;
        };
        let boss = foot_on_line(&first, &lever.axis_point, &lever.axis);
        add_plate(parts, &lever, sizes);
        // The first lever is the one on the servo.
        let shaft = match &layout.servo {
            Some(servo) if index == 0 => Shaft::of_servo(servo, boss, lever.axis),
            _ => Shaft::from_point(&lever.axis_point, boss, lever.axis),
        };
        shaft.add(parts, sizes);
    }
    for link in layout.axle.drive.links(drive) {
        rods::add_link(parts, [link.from, link.to], sizes);
    }
    add_seats(parts, layout, drive, sizes);
}

/// A plate in the plane of the lever's balls, around its axis and each ball.
fn add_plate(parts: &mut Parts, lever: &Lever, sizes: Proportions) {
    let mut circles = Vec::new();
    for ball in lever.balls() {
        let boss = foot_on_line(&ball, &lever.axis_point, &lever.axis);
        circles.extend(disc(boss, lever.axis, 2.0 * sizes.ball, sizes.lever()));
        circles.extend(disc(ball, lever.axis, 1.3 * sizes.ball, sizes.lever()));
        let plate = hull_of_circles(parts.sight, &circles);
        parts.add(Layer::Linkage, &boss, None, [(Role::DriveArm, plate)]);
        circles.clear();
    }
}

/// Adds the bar of a rack between its balls.
pub(super) fn add_rack(parts: &mut Parts, layout: &Layout, drive: &DrivePose, sizes: Proportions) {
    for link in layout.axle.drive.links(drive) {
        let middle = link.from + (link.to - link.from) * 0.5;
        let bar = cylinder(parts.sight, [link.from, link.to], 1.1 * sizes.ball);
        parts.add(Layer::Linkage, &middle, None, [(Role::DriveArm, bar)]);
    }
    add_seats(parts, layout, drive, sizes);
}

/// Adds the studs and spacers of the inner balls that have a stack.
fn add_seats(parts: &mut Parts, layout: &Layout, drive: &DrivePose, sizes: Proportions) {
    for side in Side::BOTH {
        let at = (PointName::RodInner, side);
        let ball = *drive.rod_inner.get(side);
        let carrier = drive.carrier.get(side);
        if let Some(seat) = Seat::with_stacks(layout, at, ball, carrier, sizes.stand_off()) {
            stacks::add_seat(parts, &seat, side, sizes);
        }
    }
}
