//! Random corners of the sizes in use, as left corners of a 1:12 pan car; and an axle made larger or smaller.

use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod, spin_axis_at_camber};
use steerloft_solver::frame::{Road, Side};
use steerloft_solver::suspension::{Arm, Suspension};
use steerloft_solver::{Point, Vector};

use super::drives;
use super::trial::Draw;

/// A suspension kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    FixedKingpin,
    SlidingKingpin,
    SwingingUpperArm,
    DoubleWishbone,
    Strut,
}

/// A random left corner.
pub(crate) fn corner(kind: Kind, draw: &mut Draw) -> Corner {
    let tyre_radius = draw.between(20.0, 23.0);
    let wheel_centre = Point::new(
        draw.between(-1.0, 1.0),
        draw.between(66.0, 76.0),
        tyre_radius - draw.between(3.0, 6.0),
    );
    // Blocks and kick-up lean an axis on wishbones far back, a swinging arm's kingpin never.
    let most_caster = if kind == Kind::SwingingUpperArm {
        12.0
    } else {
        30.0
    };
    let caster = draw.between(-5.0, most_caster).to_radians();
    let inclination = draw.between(-2.0, 14.0).to_radians();
    let axis = Vector::new(-caster.tan(), -inclination.tan(), 1.0).normalize();
    let at_hub =
        wheel_centre + Vector::new(draw.between(-3.0, 3.0), draw.between(-20.0, -8.0), 0.0);
    let kingpin_lower = at_hub - axis * draw.between(6.0, 14.0);
    let upward = if kind == Kind::Strut {
        draw.between(22.0, 45.0)
    } else {
        draw.between(6.0, 14.0)
    };
    let kingpin_upper = at_hub + axis * upward;
    let camber = draw.between(-4.0, 2.0).to_radians();
    let steering_arm = steering_arm(&at_hub, &axis, draw);
    let suspension = suspension(kind, &kingpin_lower, &kingpin_upper, draw);
    Corner {
        knuckle: Knuckle {
            wheel_centre,
            spin_axis: spin_axis_at_camber(Side::Left, camber) * draw.between(0.5, 2.0),
            kingpin_lower,
            kingpin_upper,
            steering_arm,
            tyre_radius,
            tyre_width: draw.between(18.0, 30.0),
        },
        suspension,
    }
}

/// An arm behind or ahead of the axle, splayed up to 30 degrees either way.
fn steering_arm(at_hub: &Point, axis: &Vector, draw: &mut Draw) -> Point {
    let length = draw.between(9.0, 17.0);
    let (sin, cos) = draw.between(-0.55, 0.55).sin_cos();
    let back = if draw.flip() { 1.0 } else { -1.0 };
    let across = Vector::y().cross(axis).normalize();
    let outboard = axis.cross(&across);
    at_hub + (across * (back * cos) + outboard * sin) * length + axis * draw.between(-6.0, 8.0)
}

fn suspension(kind: Kind, lower: &Point, upper: &Point, draw: &mut Draw) -> Suspension {
    match kind {
        Kind::FixedKingpin => Suspension::FixedKingpin,
        Kind::SlidingKingpin => Suspension::SlidingKingpin,
        Kind::SwingingUpperArm => Suspension::SwingingUpperArm(arm(upper, draw)),
        Kind::DoubleWishbone => Suspension::DoubleWishbone {
            lower: arm(lower, draw),
            upper: arm(upper, draw),
        },
        Kind::Strut => Suspension::Strut {
            lower: arm(lower, draw),
            slide_direction: (upper - lower).normalize()
                + Vector::new(draw.about_zero(0.15), draw.about_zero(0.15), 0.0),
        },
    }
}

/// An arm to a ball, inboard of it, its hinge skewed and the arm set somewhat longer or shorter than drawn.
fn arm(ball: &Point, draw: &mut Draw) -> Arm {
    let middle = ball
        + Vector::new(
            draw.between(-4.0, 4.0),
            draw.between(-34.0, -18.0),
            draw.between(-6.0, 6.0),
        );
    let half = Vector::new(
        draw.between(8.0, 15.0),
        draw.between(-3.0, 3.0),
        draw.between(-3.0, 3.0),
    );
    let set = Vector::new(
        draw.about_zero(0.4),
        draw.about_zero(0.4),
        draw.about_zero(0.4),
    );
    Arm {
        hinge: [middle + half, middle - half],
        ball: ball + set,
    }
}

/// The axle with every length multiplied.
pub(crate) fn scaled(axle: &FrontAxle, scale: f64) -> FrontAxle {
    let rod = |rod: Rod| match rod {
        Rod::HoldToe(toe) => Rod::HoldToe(toe),
        Rod::FixedLength(length) => Rod::FixedLength(length * scale),
    };
    FrontAxle {
        corners: axle
            .corners
            .map(|corner| mapped(&corner, &|point| point * scale, scale)),
        drive: drives::mapped(&axle.drive, &|point| point * scale, &|axis| axis, scale),
        rods: axle.rods.map(rod),
        wheelbase: axle.wheelbase * scale,
        station: 0.0,
        road: Road {
            ride_height: axle.road.ride_height * scale,
            ..axle.road
        },
    }
}

/// A corner with every point mapped and every length multiplied.
pub(crate) fn mapped(corner: &Corner, point: &dyn Fn(Point) -> Point, scale: f64) -> Corner {
    let arm = |arm: &Arm| Arm {
        hinge: arm.hinge.map(point),
        ball: point(arm.ball),
    };
    let knuckle = corner.knuckle;
    Corner {
        knuckle: Knuckle {
            wheel_centre: point(knuckle.wheel_centre),
            spin_axis: knuckle.spin_axis,
            kingpin_lower: point(knuckle.kingpin_lower),
            kingpin_upper: point(knuckle.kingpin_upper),
            steering_arm: point(knuckle.steering_arm),
            tyre_radius: knuckle.tyre_radius * scale,
            tyre_width: knuckle.tyre_width * scale,
        },
        suspension: match &corner.suspension {
            Suspension::FixedKingpin => Suspension::FixedKingpin,
            Suspension::SlidingKingpin => Suspension::SlidingKingpin,
            Suspension::SwingingUpperArm(upper) => Suspension::SwingingUpperArm(arm(upper)),
            Suspension::DoubleWishbone { lower, upper } => Suspension::DoubleWishbone {
                lower: arm(lower),
                upper: arm(upper),
            },
            Suspension::Strut {
                lower,
                slide_direction,
            } => Suspension::Strut {
                lower: arm(lower),
                slide_direction: *slide_direction,
            },
        },
    }
}
