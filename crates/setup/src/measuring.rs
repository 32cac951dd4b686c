//! The points of a car that are measured: where exactly each is, and from where to where it is measured.
//!
//! One source for a form on paper and for a guide on the screen.

use steerloft_solver::axle::FrontAxle;
use steerloft_solver::drive::{Drive, TwinCrank};
use steerloft_solver::frame::{Point, Side, Vector};
use steerloft_solver::suspension::{Arm, Suspension};

use crate::adjustment::PointName;
use crate::layout::axle_of;
use crate::setup::Setup;

/// A point to measure.
#[derive(Debug, Clone, PartialEq)]
pub struct Measured {
    /// Plain name, such as "Outer tie-rod ball".
    pub name: &'static str,
    /// Where exactly it is.
    pub place: &'static str,
    /// Where it is drawn, chassis axes, mm: the left one of a pair.
    pub at: Point,
    /// Whether the right side has one too.
    pub has_pair: bool,
    /// The point of the car that it gives, or none for a second point that only gives a direction.
    pub point: Option<PointName>,
}

/// How every point is measured.
pub const HOW: &str = "Stand the chassis level, steering straight, wheels at rest height, every adjustment at its base. All \
     points are measured from the chassis, in mm: x ahead of the design front-axle station (behind it −), y to the left \
     of the centre line (right of it −), z above the underside of the chassis plate (below it −). The station is the \
     axle line that the chassis was designed for; it stays where it is when the front axle is moved. Measure to the \
     centre of a ball or on the axis of a pin, not to the edge of a part. Leave the right side empty where it mirrors \
     the left.";

/// From where to where one coordinate is measured.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// The axis, "x", "y" or "z".
    pub axis: &'static str,
    /// From where to where, and in which direction it counts.
    pub text: String,
}

impl Measured {
    /// From where to where each coordinate is measured, axis by axis.
    #[must_use]
    pub fn steps(&self) -> [Step; 3] {
        let to = self.place;
        [
            Step {
                axis: "x",
                text: format!(
                    "From the design front-axle station forward to the {to}; behind the station −."
                ),
            },
            Step {
                axis: "y",
                text: format!("From the centre line to the left to the {to}; right of the line −."),
            },
            Step {
                axis: "z",
                text: format!(
                    "From the underside of the chassis plate up to the {to}; below it −."
                ),
            },
        ]
    }
}

/// Every point of a setup's car with all adjustments at their base, from the wheel inwards.
#[must_use]
pub fn guide(setup: &Setup) -> Vec<Measured> {
    points(&axle_of(&setup.car, setup.rods, |_, _| None))
}

fn pair(
    point: impl Into<Option<PointName>>,
    name: &'static str,
    place: &'static str,
    at: Point,
) -> Measured {
    Measured {
        name,
        place,
        at,
        has_pair: true,
        point: point.into(),
    }
}

fn single(
    point: impl Into<Option<PointName>>,
    name: &'static str,
    place: &'static str,
    at: Point,
) -> Measured {
    Measured {
        has_pair: false,
        ..pair(point, name, place, at)
    }
}

/// Every point of an axle, from the wheel inwards.
#[must_use]
pub fn points(axle: &FrontAxle) -> Vec<Measured> {
    let knuckle = &axle.corners.left.knuckle;
    let mut points = vec![pair(
        PointName::WheelCentre,
        "Wheel centre",
        "middle of the tyre's width, on the axis of the axle",
        knuckle.wheel_centre,
    )];
    points.extend(kingpin(axle));
    points.push(pair(
        PointName::SteeringArm,
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
        pair(
            PointName::KingpinLower,
            low,
            low_place,
            knuckle.kingpin_lower,
        ),
        pair(
            PointName::KingpinUpper,
            high,
            high_place,
            knuckle.kingpin_upper,
        ),
    ]
}

fn hinges(suspension: &Suspension) -> Vec<Measured> {
    let upper = |arm: &Arm| {
        hinge(
            arm,
            [PointName::UpperHingeFront, PointName::UpperHingeRear],
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
            [PointName::LowerHingeFront, PointName::LowerHingeRear],
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
        None,
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

fn hinge(
    arm: &Arm,
    points: [PointName; 2],
    names: [&'static str; 2],
    places: [&'static str; 2],
) -> [Measured; 2] {
    [0, 1].map(|end| pair(points[end], names[end], places[end], arm.hinge[end]))
}

const INNER_BALL: &str = "Inner tie-rod ball";
const SECOND: &str = "another point on the same axis, as far away as it can be measured";

/// The points of a drive; a second point on an axis is drawn `away` mm from the first.
fn drive(drive: &Drive, away: f64) -> Vec<Measured> {
    match drive {
        Drive::SwingArm(arm) => vec![
            pair(
                PointName::RodInner,
                INNER_BALL,
                "centre of the ball on the servo or column arm, steering straight",
                arm.rod_inner.left,
            ),
            single(
                PointName::DriveAxis,
                "Axis of the steering arm",
                "a point on the axis that the arm turns about, such as the end of the shaft",
                arm.axis_point,
            ),
            single(
                None,
                "Same axis, second point",
                SECOND,
                on_axis(&arm.axis_point, &arm.axis_direction, away),
            ),
        ],
        Drive::TwinCrank(cranks) => of_cranks(cranks, away),
        Drive::Slider(rack) => vec![
            pair(
                PointName::RodInner,
                INNER_BALL,
                "centre of the ball at the rack's end, steering straight",
                rack.rod_inner.left,
            ),
            single(
                None,
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
            PointName::RodInner,
            INNER_BALL,
            "centre of the ball that carries the tie rod's inner end, steering straight",
            cranks.rod_inner.left,
        ),
        pair(
            PointName::CrankAxis,
            "Axis of the crank",
            "a point on the axis that the crank turns about, such as the foot of its post",
            crank.axis_point,
        ),
        pair(
            None,
            "Same axis, second point",
            SECOND,
            on_axis(&crank.axis_point, &crank.axis_direction, away),
        ),
        pair(
            PointName::CrossBall,
            "Cross-link ball",
            "centre of the crank's joint with the link between both cranks",
            cranks.cross_balls.left,
        ),
        single(
            PointName::DriveAxis,
            "Axis of the servo arm",
            "a point on the axis of the servo's shaft, such as its end",
            servo.axis_point,
        ),
        single(
            None,
            "Servo axis, second point",
            SECOND,
            on_axis(&servo.axis_point, &servo.axis_direction, away),
        ),
        single(
            PointName::DragServo,
            "Drag link, at the servo",
            "centre of the ball on the servo arm",
            cranks.drag_servo,
        ),
        single(
            PointName::DragCrank,
            "Drag link, at the crank",
            "centre of the drag link's ball on the crank",
            cranks.drag_crank,
        ),
    ]
}
