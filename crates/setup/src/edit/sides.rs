//! Corners mirrored or given by themselves.

use crate::car::{Car, CornerPoints, Position, RightCorner, Suspension};

/// A position's mirror image in the car's centre plane.
pub(super) fn mirrored(position: Position) -> Position {
    Position(position.0, -position.1, position.2)
}

/// Gives the right corner by itself, if it is not, as the mirror image that it was.
pub(crate) fn separate(car: &mut Car) {
    if car.right == RightCorner::Mirrored {
        car.right = RightCorner::Given(mirrored_corner(&car.left));
    }
}

/// Makes the right corner the mirror image of the left one.
pub(super) fn mirror(car: &mut Car) {
    car.right = RightCorner::Mirrored;
}

fn mirrored_corner(corner: &CornerPoints) -> CornerPoints {
    CornerPoints {
        wheel_centre: mirrored(corner.wheel_centre),
        kingpin_lower: mirrored(corner.kingpin_lower),
        kingpin_upper: mirrored(corner.kingpin_upper),
        steering_arm: mirrored(corner.steering_arm),
        suspension: mirrored_suspension(&corner.suspension),
        ..*corner
    }
}

fn mirrored_suspension(suspension: &Suspension) -> Suspension {
    match suspension {
        Suspension::FixedKingpin => Suspension::FixedKingpin,
        Suspension::SlidingKingpin => Suspension::SlidingKingpin,
        Suspension::SwingingUpperArm {
            upper_hinge_front,
            upper_hinge_rear,
        } => Suspension::SwingingUpperArm {
            upper_hinge_front: mirrored(*upper_hinge_front),
            upper_hinge_rear: mirrored(*upper_hinge_rear),
        },
        Suspension::DoubleWishbone {
            lower_hinge_front,
            lower_hinge_rear,
            upper_hinge_front,
            upper_hinge_rear,
        } => Suspension::DoubleWishbone {
            lower_hinge_front: mirrored(*lower_hinge_front),
            lower_hinge_rear: mirrored(*lower_hinge_rear),
            upper_hinge_front: mirrored(*upper_hinge_front),
            upper_hinge_rear: mirrored(*upper_hinge_rear),
        },
        Suspension::Strut {
            lower_hinge_front,
            lower_hinge_rear,
            slide_direction,
        } => Suspension::Strut {
            lower_hinge_front: mirrored(*lower_hinge_front),
            lower_hinge_rear: mirrored(*lower_hinge_rear),
            slide_direction: slide_direction.map(mirrored),
        },
    }
}
