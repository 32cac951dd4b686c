//! The front axle as the car's file gives it, before any adjustment.

use solver::axle::{Corner, FrontAxle, Knuckle, Rod, spin_axis_at_camber};
use solver::drive::{Drive as AxleDrive, Slider, SwingArm, TwinCrank};
use solver::frame::{Point, Road, Side, Sides, mirrored_vector};
use solver::joints::JointLimits;
use solver::suspension::{Arm, Suspension as Carrier};
use steerloft_solver as solver;

use crate::car::{Car, CornerPoints, Drive, Position, RightCorner, Suspension};
use crate::setup::Rods;

/// The front axle as the car's file gives it.
pub(super) fn axle_at_base(car: &Car, rods: Rods) -> FrontAxle {
    let left = corner(&car.left, Side::Left);
    let right = match &car.right {
        RightCorner::Mirrored => left.mirrored(),
        RightCorner::Given(points) => corner(points, Side::Right),
    };
    FrontAxle {
        corners: Sides::new(left, right),
        drive: drive(&car.drive),
        rods: rods_of(rods),
        wheelbase: car.wheelbase,
        station: 0.0,
        road: Road {
            ride_height: car.ride_height,
            pitch: car.pitch.to_radians(),
            roll: car.roll.to_radians(),
        },
    }
}

/// The ball joints' limits as the car's file gives them.
pub(super) fn joints_at_base(car: &Car) -> Option<JointLimits> {
    let joints = car.joints?;
    let studs = |left: Position, right: Option<Position>| {
        let left = left.vector();
        let right = right.map_or_else(|| mirrored_vector(&left), |right| right.vector());
        Sides::new(left, right)
    };
    Some(JointLimits {
        outer_studs: studs(joints.outer_stud, joints.outer_stud_right),
        inner_studs: studs(joints.inner_stud, joints.inner_stud_right),
        most: joints.most.to_radians(),
    })
}

fn corner(points: &CornerPoints, side: Side) -> Corner {
    let kingpin_lower = points.kingpin_lower.point();
    let kingpin_upper = points.kingpin_upper.point();
    Corner {
        knuckle: Knuckle {
            wheel_centre: points.wheel_centre.point(),
            spin_axis: spin_axis_at_camber(side, points.camber.to_radians()),
            kingpin_lower,
            kingpin_upper,
            steering_arm: points.steering_arm.point(),
            tyre_radius: points.tyre_radius,
            tyre_width: points.tyre_width,
        },
        suspension: match &points.suspension {
            Suspension::FixedKingpin => Carrier::FixedKingpin,
            Suspension::SlidingKingpin => Carrier::SlidingKingpin,
            Suspension::SwingingUpperArm {
                upper_hinge_front,
                upper_hinge_rear,
            } => Carrier::SwingingUpperArm(arm(upper_hinge_front, upper_hinge_rear, kingpin_upper)),
            Suspension::DoubleWishbone {
                lower_hinge_front,
                lower_hinge_rear,
                upper_hinge_front,
                upper_hinge_rear,
            } => Carrier::DoubleWishbone {
                lower: arm(lower_hinge_front, lower_hinge_rear, kingpin_lower),
                upper: arm(upper_hinge_front, upper_hinge_rear, kingpin_upper),
            },
            Suspension::Strut {
                lower_hinge_front,
                lower_hinge_rear,
                slide_direction,
            } => Carrier::Strut {
                lower: arm(lower_hinge_front, lower_hinge_rear, kingpin_lower),
                slide_direction: slide_direction
                    .map_or(kingpin_upper - kingpin_lower, |direction| {
                        direction.vector()
                    }),
            },
        },
    }
}

fn arm(hinge_front: &Position, hinge_rear: &Position, ball: Point) -> Arm {
    Arm {
        hinge: [hinge_front.point(), hinge_rear.point()],
        ball,
    }
}

/// Lays the slide line of struts that have none of their own along the steering axis as adjusted.
pub(super) fn align_slides(axle: &mut FrontAxle, car: &Car) {
    for side in Side::BOTH {
        let corner = axle.corners.get_mut(side);
        let (
            Carrier::Strut {
                slide_direction, ..
            },
            Suspension::Strut {
                slide_direction: None,
                ..
            },
        ) = (&mut corner.suspension, &car.corner(side).suspension)
        else {
            continue;
        };
        *slide_direction = corner.knuckle.kingpin_upper - corner.knuckle.kingpin_lower;
    }
}

fn drive(drive: &Drive) -> AxleDrive {
    let (left, right) = drive.rod_inner();
    let rod_inner = Sides::new(left.point(), right.point());
    match drive {
        Drive::SwingArm {
            axis_point,
            axis_direction,
            ..
        } => AxleDrive::SwingArm(SwingArm {
            axis_point: axis_point.point(),
            axis_direction: axis_direction.vector(),
            rod_inner,
        }),
        Drive::TwinCrank {
            crank_left,
            crank_right,
            cross_left,
            cross_right,
            inner_on,
            servo_arm,
            drag_servo,
            drag_crank,
            driven,
            drag_length,
            cross_length,
            ..
        } => AxleDrive::TwinCrank(TwinCrank {
            cranks: Sides::new(crank_left.to_solver(), crank_right.to_solver()),
            cross_balls: Sides::new(cross_left.point(), cross_right.point()),
            rod_inner,
            inner_on: (*inner_on).into(),
            servo: servo_arm.to_solver(),
            drag_servo: drag_servo.point(),
            drag_crank: drag_crank.point(),
            driven: (*driven).into(),
            drag_length: *drag_length,
            cross_length: *cross_length,
        }),
        Drive::Slider { direction, .. } => AxleDrive::Slider(Slider {
            direction: direction.vector(),
            rod_inner,
        }),
    }
}

fn rods_of(rods: Rods) -> Sides<Rod> {
    match rods {
        Rods::HoldToe(toe) => Sides::both(Rod::HoldToe(toe.to_radians())),
        Rods::FixedLength(length) => Sides::both(Rod::FixedLength(length)),
        Rods::FixedLengths { left, right } => {
            Sides::new(Rod::FixedLength(left), Rod::FixedLength(right))
        }
    }
}
