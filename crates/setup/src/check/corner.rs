//! Checks of one corner's points.

use steerloft_solver::frame::{Point, Side, Vector};

use super::geometry::{about_axis, apart, distance_from_axis, leads};
use super::values::{direction, length, number, position};
use super::{Fault, Path};
use crate::car::{CornerPoints, Position, Suspension};
use crate::limits::{MAX_CAMBER, MAX_KINGPIN_LEAN, MAX_SLIDE_LEAN};
use crate::values::short;

/// Checks one corner.
pub(super) fn check_corner(at: &Path, corner: &CornerPoints, side: Side) -> Result<(), Fault> {
    let places = [
        ("wheel_centre", corner.wheel_centre),
        ("kingpin_lower", corner.kingpin_lower),
        ("kingpin_upper", corner.kingpin_upper),
        ("steering_arm", corner.steering_arm),
    ];
    for (field, place) in places {
        position(&at.field(field), place)?;
    }
    if corner.wheel_centre.1 * side.sign() <= 0.0 {
        let sign = if side == Side::Left {
            "positive"
        } else {
            "negative"
        };
        return Err(Fault::new(
            &at.field("wheel_centre").item(1),
            format!("this wheel centre is not on the {side} of the car"),
            format!("y is to the left of the centre line: give a {sign} number"),
        ));
    }
    number(
        &at.field("camber"),
        corner.camber,
        -MAX_CAMBER,
        MAX_CAMBER,
        "degrees",
    )?;
    length(&at.field("tyre_radius"), corner.tyre_radius)?;
    length(&at.field("tyre_width"), corner.tyre_width)?;
    let lower = corner.kingpin_lower.point();
    let upper = corner.kingpin_upper.point();
    apart(
        &at.field("kingpin_upper"),
        (upper - lower).norm(),
        "the upper kingpin point coincides with the lower",
    )?;
    check_upright(&at.field("kingpin_upper"), &lower, &upper)?;
    apart(
        &at.field("steering_arm"),
        distance_from_axis(&corner.steering_arm.point(), &lower, &upper),
        "the outer tie-rod ball lies on the steering axis",
    )?;
    check_suspension(&at.field("suspension"), &corner.suspension, &lower, &upper)
}

fn check_upright(at: &Path, lower: &Point, upper: &Point) -> Result<(), Fault> {
    let axis = upper - lower;
    let lean = axis.xy().norm().atan2(axis.z).to_degrees();
    if lean <= MAX_KINGPIN_LEAN {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!("the steering axis leans {lean:.0} degrees from upright"),
        format!(
            "place the upper kingpin point above the lower, leaning at most {} degrees",
            short(MAX_KINGPIN_LEAN)
        ),
    ))
}

fn check_suspension(
    at: &Path,
    suspension: &Suspension,
    lower_ball: &Point,
    upper_ball: &Point,
) -> Result<(), Fault> {
    match suspension {
        Suspension::FixedKingpin | Suspension::SlidingKingpin => Ok(()),
        Suspension::SwingingUpperArm {
            upper_hinge_front,
            upper_hinge_rear,
        } => check_arm(
            at,
            &UPPER,
            [*upper_hinge_front, *upper_hinge_rear],
            upper_ball,
        ),
        Suspension::DoubleWishbone {
            lower_hinge_front,
            lower_hinge_rear,
            upper_hinge_front,
            upper_hinge_rear,
        } => {
            let upper_hinge = [*upper_hinge_front, *upper_hinge_rear];
            check_arm(
                at,
                &LOWER,
                [*lower_hinge_front, *lower_hinge_rear],
                lower_ball,
            )?;
            check_arm(at, &UPPER, upper_hinge, upper_ball)?;
            let kingpin = upper_ball - lower_ball;
            leads(
                &at.field(UPPER.hinge_front),
                &kingpin,
                &circling(upper_ball, upper_hinge),
                "the upper arm lies in line with the steering axis and cannot hold it",
                "place the hinge beside the steering axis",
            )
        }
        Suspension::Strut {
            lower_hinge_front,
            lower_hinge_rear,
            slide_direction,
        } => {
            check_arm(
                at,
                &LOWER,
                [*lower_hinge_front, *lower_hinge_rear],
                lower_ball,
            )?;
            match slide_direction {
                None => Ok(()),
                // `Some` holds the direction as its only element.
                Some(slide) => check_slide(
                    &at.field("slide_direction").item(0),
                    *slide,
                    &(upper_ball - lower_ball),
                ),
            }
        }
    }
}

/// An arm's words: its fields and what it is called.
struct ArmWords {
    hinge_front: &'static str,
    hinge_rear: &'static str,
    coincident: &'static str,
    ball_on_hinge: &'static str,
    upright: &'static str,
}

const LOWER: ArmWords = ArmWords {
    hinge_front: "lower_hinge_front",
    hinge_rear: "lower_hinge_rear",
    coincident: "the rear hinge point of the lower arm coincides with the front one",
    ball_on_hinge: "the lower kingpin point lies on the hinge axis of the arm that carries it",
    upright: "the lower arm swings its ball straight sideways, so the wheel has no travel",
};

const UPPER: ArmWords = ArmWords {
    hinge_front: "upper_hinge_front",
    hinge_rear: "upper_hinge_rear",
    coincident: "the rear hinge point of the upper arm coincides with the front one",
    ball_on_hinge: "the upper kingpin point lies on the hinge axis of the arm that carries it",
    upright: "the upper arm swings its ball straight sideways, so the wheel has no travel",
};

fn check_arm(at: &Path, words: &ArmWords, hinge: [Position; 2], ball: &Point) -> Result<(), Fault> {
    let front_at = at.field(words.hinge_front);
    let rear_at = at.field(words.hinge_rear);
    position(&front_at, hinge[0])?;
    position(&rear_at, hinge[1])?;
    let [front, rear] = hinge.map(|place| place.point());
    apart(&rear_at, (front - rear).norm(), words.coincident)?;
    apart(
        &front_at,
        distance_from_axis(ball, &front, &rear),
        words.ball_on_hinge,
    )?;
    leads(
        &front_at,
        &Vector::z(),
        &circling(ball, hinge),
        words.upright,
        "place the hinge inboard of the ball",
    )
}

/// How a ball runs about its arm's hinge, mm per rad.
fn circling(ball: &Point, hinge: [Position; 2]) -> Vector {
    let [front, rear] = hinge.map(|place| place.point());
    about_axis(ball, &front, &(rear - front))
}

fn check_slide(at: &Path, slide: Position, steering_axis: &Vector) -> Result<(), Fault> {
    direction(at, slide)?;
    let slide = slide.vector();
    let along = slide.dot(steering_axis).abs();
    let lean = slide.cross(steering_axis).norm().atan2(along).to_degrees();
    if lean <= MAX_SLIDE_LEAN {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!("the strut's slide line leans {lean:.0} degrees from the steering axis"),
        format!(
            "give a direction at most {} degrees from it",
            short(MAX_SLIDE_LEAN)
        ),
    ))
}
