//! A front axle written as a case of the reference tables: points in mm, angles in degrees. The format is described
//! in the README of `tests/reference`.

use serde::Serialize;
use steerloft_setup::car::Ranges;
use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod};
use steerloft_solver::drive::{Crank, Drive, InnerBallsOn};
use steerloft_solver::frame::{Point, Side, Sides};
use steerloft_solver::suspension::{Arm, Suspension};

use crate::rounding::{decimals, evenly, is_zero, numbers, place};

/// Points nearer than this, mm, are one, and so are directions whose parts differ by less.
const SAME: f64 = 1e-12;

/// Values of a sweep over the input.
const INPUTS: u32 = 11;

/// Values of a sweep over the travel.
const TRAVELS: u32 = 13;

/// Values of a sweep over the roll, from -2 to 2 degrees.
const ROLLS: u32 = 9;
const MOST_ROLL: f64 = 2.0;

/// A case file.
#[derive(Debug, Serialize)]
pub(crate) struct CaseFile {
    /// Also the stem of the file's name.
    pub(crate) id: String,
    note: String,
    suspension: SuspensionCase,
    drive: DriveCase,
    wheelbase: f64,
    #[serde(skip_serializing_if = "is_zero")]
    station: f64,
    ride_height: f64,
    pitch: f64,
    roll: f64,
    rods: RodsCase,
    input_sweep: Vec<f64>,
    travel_sweep: Vec<f64>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    roll_sweep: Vec<f64>,
    bump_input: f64,
}

#[derive(Debug, Serialize)]
struct SuspensionCase {
    kind: &'static str,
    left: CornerCase,
    /// Nothing where it is the mirror image of the left one.
    right: Option<CornerCase>,
}

#[derive(Debug, PartialEq, Serialize)]
struct CornerCase {
    wheel_centre: [f64; 3],
    kingpin_lower: [f64; 3],
    kingpin_upper: [f64; 3],
    steering_arm: [f64; 3],
    camber: f64,
    /// Where camber alone does not say it: the wheel as drawn does not point straight ahead.
    #[serde(skip_serializing_if = "Option::is_none")]
    spin_axis: Option<[f64; 3]>,
    tyre_radius: f64,
    tyre_width: f64,
    #[serde(flatten)]
    carried: CarriedCase,
}

/// The points that only some kinds have.
#[derive(Debug, Default, PartialEq, Serialize)]
struct CarriedCase {
    #[serde(skip_serializing_if = "Option::is_none")]
    lower_hinge: Option<[[f64; 3]; 2]>,
    #[serde(skip_serializing_if = "Option::is_none")]
    lower_ball: Option<[f64; 3]>,
    #[serde(skip_serializing_if = "Option::is_none")]
    upper_hinge: Option<[[f64; 3]; 2]>,
    #[serde(skip_serializing_if = "Option::is_none")]
    upper_ball: Option<[f64; 3]>,
    #[serde(skip_serializing_if = "Option::is_none")]
    slide_dir: Option<[f64; 3]>,
}

#[derive(Debug, Serialize)]
struct InnerBallsCase {
    left: [f64; 3],
    right: [f64; 3],
}

#[derive(Debug, Serialize)]
struct AxisCase {
    axis_point: [f64; 3],
    axis_dir: [f64; 3],
}

#[derive(Debug, Serialize)]
#[serde(tag = "kind")]
#[allow(clippy::large_enum_variant, reason = "there is one for a file")]
enum DriveCase {
    SwingArm {
        axis_point: [f64; 3],
        axis_dir: [f64; 3],
        rod_inner: InnerBallsCase,
    },
    Slider {
        direction: [f64; 3],
        rod_inner: InnerBallsCase,
    },
    TwinCrank {
        crank_left: AxisCase,
        crank_right: AxisCase,
        cross_left: [f64; 3],
        cross_right: [f64; 3],
        rod_inner: InnerBallsCase,
        inner_on: &'static str,
        servo: AxisCase,
        drag_servo: [f64; 3],
        drag_crank: [f64; 3],
        driven: String,
        #[serde(skip_serializing_if = "Option::is_none")]
        cross_length: Option<f64>,
        #[serde(skip_serializing_if = "Option::is_none")]
        drag_length: Option<f64>,
    },
}

#[derive(Debug, Serialize)]
#[serde(tag = "kind")]
enum RodsCase {
    HoldToe { angle: f64 },
    FixedLength { left: f64, right: f64 },
}

impl CaseFile {
    /// The case of an axle, with sweeps over the car's ranges.
    pub(crate) fn new(id: &str, note: &str, axle: &FrontAxle, ranges: &Ranges) -> Self {
        let has_travel = axle.corners.left.suspension.has_travel();
        Self {
            id: id.to_owned(),
            note: note.to_owned(),
            suspension: suspension(&axle.corners),
            drive: drive(&axle.drive),
            wheelbase: decimals(axle.wheelbase),
            station: decimals(axle.station),
            ride_height: decimals(axle.road.ride_height),
            pitch: decimals(axle.road.pitch.to_degrees()),
            roll: decimals(axle.road.roll.to_degrees()),
            rods: rods(&axle.rods),
            input_sweep: evenly(ranges.input, INPUTS),
            travel_sweep: if has_travel {
                evenly(ranges.travel, TRAVELS)
            } else {
                vec![0.0]
            },
            roll_sweep: if has_travel {
                evenly((-MOST_ROLL, MOST_ROLL), ROLLS)
            } else {
                Vec::new()
            },
            bump_input: decimals(0.5 * ranges.input.1),
        }
    }
}

fn suspension(corners: &Sides<Corner>) -> SuspensionCase {
    let right = corner(&corners.right, Side::Right);
    let mirrored = corner(&corners.left.mirrored(), Side::Right);
    SuspensionCase {
        kind: kind(&corners.left.suspension),
        left: corner(&corners.left, Side::Left),
        right: (right != mirrored).then_some(right),
    }
}

const fn kind(suspension: &Suspension) -> &'static str {
    match suspension {
        Suspension::FixedKingpin => "FixedKingpin",
        Suspension::SlidingKingpin => "SlidingKingpin",
        Suspension::SwingingUpperArm(_) => "SwingingUpperArm",
        Suspension::DoubleWishbone { .. } => "DoubleWishbone",
        Suspension::Strut { .. } => "Strut",
    }
}

fn corner(corner: &Corner, side: Side) -> CornerCase {
    let knuckle = &corner.knuckle;
    let axis = knuckle.spin_axis.normalize();
    let straight = axis.x.abs() <= SAME && axis.y * side.sign() > 0.0;
    CornerCase {
        wheel_centre: place(&knuckle.wheel_centre),
        kingpin_lower: place(&knuckle.kingpin_lower),
        kingpin_upper: place(&knuckle.kingpin_upper),
        steering_arm: place(&knuckle.steering_arm),
        camber: decimals(-axis.z.asin().to_degrees()),
        spin_axis: (!straight).then(|| numbers(&axis)),
        tyre_radius: decimals(knuckle.tyre_radius),
        tyre_width: decimals(knuckle.tyre_width),
        carried: carried(&corner.suspension, knuckle),
    }
}

fn carried(suspension: &Suspension, knuckle: &Knuckle) -> CarriedCase {
    let hinge = |arm: &Arm| Some(arm.hinge.map(|point| place(&point)));
    let upper_ball = |arm: &Arm| ball_away_from(arm, &knuckle.kingpin_upper);
    let lower_ball = |arm: &Arm| ball_away_from(arm, &knuckle.kingpin_lower);
    match suspension {
        Suspension::FixedKingpin | Suspension::SlidingKingpin => CarriedCase::default(),
        Suspension::SwingingUpperArm(upper) => CarriedCase {
            upper_hinge: hinge(upper),
            upper_ball: upper_ball(upper),
            ..CarriedCase::default()
        },
        Suspension::DoubleWishbone { lower, upper } => CarriedCase {
            lower_hinge: hinge(lower),
            lower_ball: lower_ball(lower),
            upper_hinge: hinge(upper),
            upper_ball: upper_ball(upper),
            slide_dir: None,
        },
        Suspension::Strut {
            lower,
            slide_direction,
        } => CarriedCase {
            lower_hinge: hinge(lower),
            lower_ball: lower_ball(lower),
            slide_dir: Some(numbers(slide_direction)),
            ..CarriedCase::default()
        },
    }
}

/// The ball of an arm that is longer or shorter than drawn.
fn ball_away_from(arm: &Arm, drawn: &Point) -> Option<[f64; 3]> {
    ((arm.ball - drawn).norm() > SAME).then(|| place(&arm.ball))
}

fn drive(drive: &Drive) -> DriveCase {
    match drive {
        Drive::SwingArm(arm) => DriveCase::SwingArm {
            axis_point: place(&arm.axis_point),
            axis_dir: numbers(&arm.axis_direction),
            rod_inner: inner_balls(&arm.rod_inner),
        },
        Drive::Slider(slider) => DriveCase::Slider {
            direction: numbers(&slider.direction),
            rod_inner: inner_balls(&slider.rod_inner),
        },
        Drive::TwinCrank(cranks) => DriveCase::TwinCrank {
            crank_left: axis(&cranks.cranks.left),
            crank_right: axis(&cranks.cranks.right),
            cross_left: place(&cranks.cross_balls.left),
            cross_right: place(&cranks.cross_balls.right),
            rod_inner: inner_balls(&cranks.rod_inner),
            inner_on: match cranks.inner_on {
                InnerBallsOn::Cranks => "crank",
                InnerBallsOn::CrossLink => "cross_link",
            },
            servo: axis(&cranks.servo),
            drag_servo: place(&cranks.drag_servo),
            drag_crank: place(&cranks.drag_crank),
            driven: cranks.driven.to_string(),
            cross_length: cranks.cross_length.map(decimals),
            drag_length: cranks.drag_length.map(decimals),
        },
    }
}

fn inner_balls(balls: &Sides<Point>) -> InnerBallsCase {
    InnerBallsCase {
        left: place(&balls.left),
        right: place(&balls.right),
    }
}

fn axis(crank: &Crank) -> AxisCase {
    AxisCase {
        axis_point: place(&crank.axis_point),
        axis_dir: numbers(&crank.axis_direction),
    }
}

fn rods(rods: &Sides<Rod>) -> RodsCase {
    match (rods.left, rods.right) {
        (Rod::HoldToe(left), Rod::HoldToe(right)) if (left - right).abs() <= SAME => {
            RodsCase::HoldToe {
                angle: decimals(left.to_degrees()),
            }
        }
        (Rod::FixedLength(left), Rod::FixedLength(right)) => RodsCase::FixedLength {
            left: decimals(left),
            right: decimals(right),
        },
        other => panic!("a case holds one toe for both wheels or two lengths, not {other:?}"),
    }
}
