//! The points of a car that are measured, with where exactly each is.

use steerloft_solver::axle::FrontAxle;
use steerloft_solver::drive::{Drive, TwinCrank};
use steerloft_solver::frame::{Point, Side, Vector};
use steerloft_solver::suspension::{Arm, Suspension};

/// A point to measure.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Measured {
    /// Plain name.
    pub(super) name: &'static str,
    /// Where exactly it is.
    pub(super) place: &'static str,
    /// Where it is drawn, chassis axes, mm: the left one of a pair.
    pub(super) at: Point,
    /// Whether the right side has one too.
    pub(super) has_pair: bool,
}

fn pair(name: &'static str, place: &'static str, at: Point) -> Measured {
    Measured {
        name,
        place,
        at,
        has_pair: true,
    }
}

fn single(name: &'static str, place: &'static str, at: Point) -> Measured {
    Measured {
        has_pair: false,
        ..pair(name, place, at)
    }
}

/// Every point of an axle, from the wheel inwards.
pub(super) fn points(axle: &FrontAxle) -> Vec<Measured> {
    let knuckle = &axle.corners.left.knuckle;
    let mut points = vec![pair(
        "Wheel centre",
        "middle of the tyre's width, on the axis of the axle",
        knuckle.wheel_centre,
    )];
    points.extend(kingpin(axle));
    points.push(pair(
        "Outer tie-rod ball",
        "centre of the ball on the steering arm",
        knuckle.steering_arm,
    ));
    points.extend(hinges(&axle.corners.left.suspension));
    points.extend(slide_line(axle));
    points.extend(drive(&axle.drive, 0.4 * knuckle.tyre_radius));
    points
}

fn kingpin(axle: &FrontAxle) -> [Measured; 2] {
    let corner = &axle.corners.left;
    let (low, low_place, high, high_place) = match &corner.suspension {
        Suspension::FixedKingpin => (
            "Kingpin, lower",
            "a lower point on the kingpin's axis, such as the centre of the lower bearing",
            "Kingpin, upper",
            "an upper point on the same axis, as far up as it can be measured",
        ),
        Suspension::SlidingKingpin => (
            "Kingpin, lower",
            "a lower point on the axis along which the knuckle slides",
            "Kingpin, upper",
            "an upper point on the same axis, as far up as it can be measured",
        ),
        Suspension::SwingingUpperArm(_) => (
            "Kingpin, lower",
            "centre of the ball in the chassis that the kingpin slides through",
            "Kingpin, upper",
            "centre of the ball in the upper arm",
        ),
        Suspension::DoubleWishbone { .. } => (
            "Lower ball",
            "centre of the ball that joins lower arm and knuckle",
            "Upper ball",
            "centre of the ball that joins upper arm and knuckle",
        ),
        Suspension::Strut { .. } => (
            "Lower ball",
            "centre of the ball that joins lower arm and knuckle",
            "Top mount",
            "centre of the strut's upper mount, which it turns in",
        ),
    };
    let knuckle = &corner.knuckle;
    [
        pair(low, low_place, knuckle.kingpin_lower),
        pair(high, high_place, knuckle.kingpin_upper),
    ]
}

fn hinges(suspension: &Suspension) -> Vec<Measured> {
    let upper = |arm: &Arm| {
        hinge(
            arm,
            ["Upper hinge, front", "Upper hinge, rear"],
            [
                "front end of the upper arm's hinge pin, on the pin's axis",
                "rear end of the same pin, on its axis",
            ],
        )
    };
    let lower = |arm: &Arm| {
        hinge(
            arm,
            ["Lower hinge, front", "Lower hinge, rear"],
            [
                "front end of the lower arm's hinge pin, on the pin's axis",
                "rear end of the same pin, on its axis",
            ],
        )
    };
    match suspension {
        Suspension::FixedKingpin | Suspension::SlidingKingpin => Vec::new(),
        Suspension::SwingingUpperArm(arm) => upper(arm).into(),
        Suspension::DoubleWishbone {
            lower: low,
            upper: high,
        } => [lower(low), upper(high)].concat(),
        Suspension::Strut { lower: low, .. } => lower(low).into(),
    }
}

/// A second point on the line along which a strut slides; the first is its top mount.
fn slide_line(axle: &FrontAxle) -> Option<Measured> {
    let corner = &axle.corners.left;
    let Suspension::Strut {
        slide_direction, ..
    } = &corner.suspension
    else {
        return None;
    };
    let knuckle = &corner.knuckle;
    let down = -0.5 * (knuckle.kingpin_upper - knuckle.kingpin_lower).norm();
    Some(pair(
        "Strut, second point",
        "another point on the axis along which the strut slides, as low as it can be measured",
        on_axis(&knuckle.kingpin_upper, slide_direction, down),
    ))
}

/// A point on an axis, so far from a given one, mm.
fn on_axis(point: &Point, direction: &Vector, distance: f64) -> Point {
    let along = direction.try_normalize(f64::EPSILON).unwrap_or_default();
    point + along * distance
}

fn hinge(arm: &Arm, names: [&'static str; 2], places: [&'static str; 2]) -> [Measured; 2] {
    [0, 1].map(|end| pair(names[end], places[end], arm.hinge[end]))
}

const INNER_BALL: &str = "Inner tie-rod ball";
const SECOND: &str = "another point on the same axis, as far away as it can be measured";

/// The points of a drive; a second point on an axis is drawn `away` mm from the first.
fn drive(drive: &Drive, away: f64) -> Vec<Measured> {
    match drive {
        Drive::SwingArm(arm) => vec![
            pair(
                INNER_BALL,
                "centre of the ball on the servo or column arm, steering straight",
                arm.rod_inner.left,
            ),
            single(
                "Axis of the steering arm",
                "a point on the axis that the arm turns about, such as the end of the shaft",
                arm.axis_point,
            ),
            single(
                "Same axis, second point",
                SECOND,
                on_axis(&arm.axis_point, &arm.axis_direction, away),
            ),
        ],
        Drive::TwinCrank(cranks) => of_cranks(cranks, away),
        Drive::Slider(rack) => vec![
            pair(
                INNER_BALL,
                "centre of the ball at the rack's end, steering straight",
                rack.rod_inner.left,
            ),
            single(
                "Left ball, rack moved",
                "the same ball with the rack moved to one side, which gives its direction",
                on_axis(&rack.rod_inner.left, &rack.direction, away),
            ),
        ],
    }
}

fn of_cranks(cranks: &TwinCrank, away: f64) -> Vec<Measured> {
    let crank = cranks.cranks.get(Side::Left);
    let servo = &cranks.servo;
    vec![
        pair(
            INNER_BALL,
            "centre of the ball that carries the tie rod's inner end, steering straight",
            cranks.rod_inner.left,
        ),
        pair(
            "Axis of the crank",
            "a point on the axis that the crank turns about, such as the foot of its post",
            crank.axis_point,
        ),
        pair(
            "Same axis, second point",
            SECOND,
            on_axis(&crank.axis_point, &crank.axis_direction, away),
        ),
        pair(
            "Cross-link ball",
            "centre of the crank's joint with the link between both cranks",
            cranks.cross_balls.left,
        ),
        single(
            "Axis of the servo arm",
            "a point on the axis of the servo's shaft, such as its end",
            servo.axis_point,
        ),
        single(
            "Servo axis, second point",
            SECOND,
            on_axis(&servo.axis_point, &servo.axis_direction, away),
        ),
        single(
            "Drag link, at the servo",
            "centre of the ball on the servo arm",
            cranks.drag_servo,
        ),
        single(
            "Drag link, at the crank",
            "centre of the drag link's ball on the crank",
            cranks.drag_crank,
        ),
    ]
}
