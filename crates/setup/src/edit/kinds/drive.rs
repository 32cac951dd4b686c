//! Another drive for the same inner tie-rod balls.

use super::{OtherKinds, carried, rounded, scale};
use crate::adjustment::Unit;
use crate::car::{Crank, Drive, DrivenCrank, InnerBallsOn, Position};
use crate::edit::DriveKind;
use crate::layout::assemble;
use crate::setup::Setup;
use crate::values::short;

/// Farthest that a guessed arm or crank is turned either way, degrees.
const MOST_INPUT: f64 = 40.0;

/// Height of the inner balls over the axis of an upright arm, mm of a 1:10 car.
const UPRIGHT_ARM: f64 = 14.5;

/// Least length of a lying arm, mm of a 1:10 car.
const LYING_ARM: f64 = 20.0;

/// How far the inner balls lie ahead of their cranks' axes, mm of a 1:10 car.
const CRANK: f64 = 14.0;

/// Length of the servo arm and of the levers that the links hold, mm of a 1:10 car.
const LEVER: f64 = 12.0;

/// Across the car from the servo arm to the driven crank, mm of a 1:10 car.
const DRAG_LINK: f64 = 51.0;

/// Gives the car another drive that moves its inner balls about as far as the one it has.
pub(super) fn change(other: &mut OtherKinds, to: DriveKind) {
    let rate = sideways_rate(&other.setup);
    let setup = &mut other.setup;
    let guess = Guess {
        inner: setup.car.drive.rod_inner(),
        scale: scale(&setup.car),
        way: if rate > 0.0 { 1.0 } else { -1.0 },
    };
    let (old_unit, had_lengths) = (setup.car.drive.input_unit(), has_lengths(&setup.car.drive));
    let (drive, new_rate) = match to {
        DriveKind::SwingArm => guess.swing_arm(),
        DriveKind::TwinCrank => guess.twin_crank(),
        DriveKind::Slider => guess.slider(),
    };
    let old = std::mem::replace(&mut setup.car.drive, drive);
    if had_lengths {
        other.given_up.push("lengths of the links".to_owned());
    }
    input_range(other, rate.abs() / new_rate, old_unit);
    carried::servo(other, &old);
    inner_studs(other);
}

/// Lays the inner balls' studs along the axis about which they turn now: so they swing out least.
fn inner_studs(other: &mut OtherKinds) {
    let car = &mut other.setup.car;
    let Some(joints) = &mut car.joints else {
        return;
    };
    let studs = "directions of the inner balls' studs".to_owned();
    let Some(axis) = car.drive.inner_axis_direction() else {
        other.to_check.push(studs);
        return;
    };
    joints.inner_stud = axis;
    joints.inner_stud_right = None;
    other.guessed.push(studs);
}

fn has_lengths(drive: &Drive) -> bool {
    match drive {
        Drive::TwinCrank {
            drag_length,
            cross_length,
            ..
        } => drag_length.is_some() || cross_length.is_some(),
        Drive::SwingArm { .. } | Drive::Slider { .. } => false,
    }
}

/// How fast the inner balls go to the left at rest, mm per degree or per mm of the input; what is usual where the car cannot be
/// assembled.
fn sideways_rate(setup: &Setup) -> f64 {
    let base = Setup {
        chosen: std::collections::BTreeMap::new(),
        ..setup.clone()
    };
    let rate = assemble(&base).ok().map(|assembly| {
        let rates = assembly.static_pose().drive.rod_inner_rate;
        f64::midpoint(rates.left.y, rates.right.y)
    });
    let (usual, unit) = match setup.car.drive.input_unit() {
        Unit::Degrees => (-UPRIGHT_ARM * scale(&setup.car), 1_f64.to_radians()),
        Unit::Millimetres => (-1.0, 1.0),
    };
    rate.filter(|rate| rate.abs() > 1e-3).unwrap_or(usual) * unit
}

/// Scales the input's range so that the inner balls go as far as before.
fn input_range(other: &mut OtherKinds, factor: f64, old_unit: Unit) {
    let car = &mut other.setup.car;
    let new_unit = car.drive.input_unit();
    let most = match new_unit {
        Unit::Degrees => MOST_INPUT,
        Unit::Millimetres => f64::INFINITY,
    };
    let before = car.ranges.input;
    let scaled = |end: f64| (end * factor * 2.0).round().clamp(-2.0 * most, 2.0 * most) / 2.0;
    car.ranges.input = (scaled(before.0), scaled(before.1));
    let told = |(from, to): (f64, f64), unit| {
        let unit = match unit {
            Unit::Degrees => "degrees",
            Unit::Millimetres => "mm",
        };
        let minus = |value| short(value).replace('-', "\u{2212}");
        format!("{} to {} {unit}", minus(from), minus(to))
    };
    other.guessed.push(format!(
        "steering input from {}; it was {}",
        told(car.ranges.input, new_unit),
        told(before, old_unit)
    ));
}

/// What a drive is guessed from.
struct Guess {
    /// Inner balls, the left one first; they stay.
    inner: (Position, Position),
    scale: f64,
    /// Which way a positive input moves them: 1 to the left, -1 to the right.
    way: f64,
}

impl Guess {
    /// A rack across the car, and how far the balls go for a mm.
    fn slider(&self) -> (Drive, f64) {
        let drive = Drive::Slider {
            direction: Position(0.0, self.way, 0.0),
            rod_inner_left: self.inner.0,
            rod_inner_right: self.inner.1,
        };
        (drive, 1.0)
    }

    /// An arm upright over a lengthwise axis if the balls are close together, and one that lies ahead of an upright axis if not;
    /// and how far the balls go for a degree.
    fn swing_arm(&self) -> (Drive, f64) {
        let (left, right) = self.inner;
        let half = (left.1 - right.1).abs() / 2.0;
        let middle = |a: f64, b: f64| f64::midpoint(a, b);
        let (x, y, z) = (
            middle(left.0, right.0),
            middle(left.1, right.1),
            middle(left.2, right.2),
        );
        let upright = UPRIGHT_ARM * self.scale;
        let (axis_point, axis_direction, arm) = if half <= upright {
            let direction = Position(-self.way, 0.0, 0.0);
            (rounded(x, y, z - upright), direction, upright)
        } else {
            let arm = half.max(LYING_ARM * self.scale);
            let direction = Position(0.0, 0.0, self.way);
            (rounded(x - arm, y, z), direction, arm)
        };
        let drive = Drive::SwingArm {
            axis_point,
            axis_direction,
            rod_inner_left: left,
            rod_inner_right: right,
        };
        (drive, arm * 1_f64.to_radians())
    }

    /// Upright cranks behind the balls, their cross link, and a servo arm at the side of the right one that turns the left one;
    /// and how far the balls go for a degree.
    fn twin_crank(&self) -> (Drive, f64) {
        let (left, right) = self.inner;
        let size = |millimetres: f64| millimetres * self.scale;
        let crank = |ball: Position| Crank {
            axis_point: rounded(ball.0 - size(CRANK), ball.1, ball.2 - size(6.0)),
            axis_direction: Position(0.0, 0.0, 1.0),
        };
        let (crank_left, crank_right) = (crank(left), crank(right));
        let cross = |crank: &Crank| {
            let Position(x, y, z) = crank.axis_point;
            rounded(x + size(LEVER), y, z)
        };
        let Position(x, y, z) = crank_left.axis_point;
        let servo = rounded(x - size(LEVER), y - size(DRAG_LINK), z - size(1.5));
        let drive = Drive::TwinCrank {
            cross_left: cross(&crank_left),
            cross_right: cross(&crank_right),
            crank_left,
            crank_right,
            rod_inner_left: left,
            rod_inner_right: right,
            inner_on: InnerBallsOn::Cranks,
            servo_arm: Crank {
                axis_point: servo,
                axis_direction: Position(self.way, 0.0, 0.0),
            },
            drag_servo: rounded(servo.0, servo.1, servo.2 + size(LEVER)),
            drag_crank: rounded(x - size(LEVER), y, servo.2 + size(LEVER)),
            driven: DrivenCrank::Left,
            drag_length: None,
            cross_length: None,
        };
        (drive, size(CRANK) * 1_f64.to_radians())
    }
}
