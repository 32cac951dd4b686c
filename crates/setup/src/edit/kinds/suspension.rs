//! Another suspension on the same kingpins.

use super::{OtherKinds, rounded, scale};
use crate::car::{Car, CornerPoints, Position, RightCorner, Suspension};
use crate::edit::SuspensionKind;

/// Gives both corners another suspension, and the car travel or none.
pub(super) fn change(other: &mut OtherKinds, to: SuspensionKind) {
    let car = &mut other.setup.car;
    let was = SuspensionKind::of(&car.left.suspension);
    let scale = scale(car);
    car.left.suspension = suspension(&car.left, to, scale);
    if let RightCorner::Given(right) = &mut car.right {
        right.suspension = suspension(right, to, scale);
    }
    travel(other, to, scale);
    let meaning = |kind| match kind {
        SuspensionKind::FixedKingpin | SuspensionKind::SlidingKingpin => "a point of the kingpin",
        SuspensionKind::SwingingUpperArm | SuspensionKind::DoubleWishbone => {
            "the ball of the upper arm"
        }
        SuspensionKind::Strut => "the strut's mount above",
    };
    if meaning(was) != meaning(to) {
        let text = format!(
            "the upper kingpin point, which was {} and is now {}",
            meaning(was),
            meaning(to)
        );
        other.to_check.push(text);
    }
}

fn travel(other: &mut OtherKinds, to: SuspensionKind, scale: f64) {
    let travel = &mut other.setup.car.ranges.travel;
    if to == SuspensionKind::FixedKingpin {
        if *travel != (0.0, 0.0) {
            other.given_up.push("wheel travel".to_owned());
        }
        *travel = (0.0, 0.0);
    } else if *travel == (0.0, 0.0) {
        let half = |value: f64| (value * 2.0 * scale).round() / 2.0;
        *travel = (half(-2.0), half(3.0));
        other.guessed.push("full droop and full bump".to_owned());
    }
}

/// A suspension of a kind for a corner, with the hinges that it has.
fn suspension(corner: &CornerPoints, to: SuspensionKind, scale: f64) -> Suspension {
    let lower = || lower_hinge(corner).unwrap_or_else(|| LOWER.beside(corner.kingpin_lower, scale));
    let upper = || upper_hinge(corner).unwrap_or_else(|| UPPER.beside(corner.kingpin_upper, scale));
    match to {
        SuspensionKind::FixedKingpin => Suspension::FixedKingpin,
        SuspensionKind::SlidingKingpin => Suspension::SlidingKingpin,
        SuspensionKind::SwingingUpperArm => {
            let [upper_hinge_front, upper_hinge_rear] = upper();
            Suspension::SwingingUpperArm {
                upper_hinge_front,
                upper_hinge_rear,
            }
        }
        SuspensionKind::DoubleWishbone => {
            let [lower_hinge_front, lower_hinge_rear] = lower();
            let [upper_hinge_front, upper_hinge_rear] = upper();
            Suspension::DoubleWishbone {
                lower_hinge_front,
                lower_hinge_rear,
                upper_hinge_front,
                upper_hinge_rear,
            }
        }
        SuspensionKind::Strut => {
            let [lower_hinge_front, lower_hinge_rear] = lower();
            Suspension::Strut {
                lower_hinge_front,
                lower_hinge_rear,
                slide_direction: None,
            }
        }
    }
}

/// A usual arm of the size of a 1:10 car: where its hinge lies from its ball, mm.
struct ArmGuess {
    half_base: f64,
    inboard: f64,
    down: f64,
}

const LOWER: ArmGuess = ArmGuess {
    half_base: 22.0,
    inboard: 49.0,
    down: 1.0,
};

const UPPER: ArmGuess = ArmGuess {
    half_base: 12.0,
    inboard: 36.0,
    down: 2.5,
};

impl ArmGuess {
    /// A hinge along the car inboard of a ball, front point first.
    fn beside(&self, ball: Position, scale: f64) -> [Position; 2] {
        let y = ball.1 - self.inboard * scale * ball.1.signum();
        let z = ball.2 - self.down * scale;
        [self.half_base, -self.half_base].map(|ahead| rounded(ball.0 + ahead * scale, y, z))
    }
}

fn lower_hinge(corner: &CornerPoints) -> Option<[Position; 2]> {
    match corner.suspension {
        Suspension::DoubleWishbone {
            lower_hinge_front,
            lower_hinge_rear,
            ..
        }
        | Suspension::Strut {
            lower_hinge_front,
            lower_hinge_rear,
            ..
        } => Some([lower_hinge_front, lower_hinge_rear]),
        _ => None,
    }
}

fn upper_hinge(corner: &CornerPoints) -> Option<[Position; 2]> {
    match corner.suspension {
        Suspension::DoubleWishbone {
            upper_hinge_front,
            upper_hinge_rear,
            ..
        }
        | Suspension::SwingingUpperArm {
            upper_hinge_front,
            upper_hinge_rear,
        } => Some([upper_hinge_front, upper_hinge_rear]),
        _ => None,
    }
}

/// Gives struts slide lines of their own, along their steering axes if they had none, or takes those away.
pub(in super::super) fn set_slide_lines(car: &mut Car, own: bool) {
    let right = match &mut car.right {
        RightCorner::Given(right) => Some(right),
        RightCorner::Mirrored => None,
    };
    for corner in std::iter::once(&mut car.left).chain(right) {
        let axis = corner.kingpin_upper.vector() - corner.kingpin_lower.vector();
        if let Suspension::Strut {
            slide_direction, ..
        } = &mut corner.suspension
        {
            let along = axis / axis.norm();
            let along = Position(along.x, along.y, along.z);
            *slide_direction = own.then(|| slide_direction.unwrap_or(along));
        }
    }
}
