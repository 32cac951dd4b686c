//! Checks of the car's points, parts and ranges.

use steerloft_solver::frame::{Point, Side, mirrored_point};

use super::values::{coordinate, count, direction, length, name, number, position, range, text};
use super::{Fault, Path, adjustments};
use crate::car::{
    Car, CornerPoints, Drive, Ranges, RightCorner, ServoCase, Suspension, TieRodParts,
};
use crate::limits::{
    MAX_ADJUSTMENTS, MAX_ANGLE, MAX_CAMBER, MAX_KINGPIN_LEAN, MAX_LENGTH, MAX_TILT, MIN_LENGTH,
};
use crate::values::short;

pub(super) fn check(at: &Path, car: &Car) -> Result<(), Fault> {
    name(&at.field("name"), &car.name)?;
    text(&at.field("notes"), &car.notes)?;
    check_corner(&at.field("left"), &car.left, Side::Left)?;
    check_right(&at.field("right"), car)?;
    check_drive(&at.field("drive"), &car.drive)?;
    check_rods_have_length(at, car)?;
    if let Some(servo) = &car.servo {
        // `Some` holds the case as its only element.
        check_servo(&at.field("servo").item(0), servo)?;
    }
    length(&at.field("wheelbase"), car.wheelbase)?;
    number(
        &at.field("ride_height"),
        car.ride_height,
        0.0,
        MAX_LENGTH,
        "mm",
    )?;
    number(
        &at.field("pitch"),
        car.pitch,
        -MAX_TILT,
        MAX_TILT,
        "degrees",
    )?;
    number(&at.field("roll"), car.roll, -MAX_TILT, MAX_TILT, "degrees")?;
    check_ranges(&at.field("ranges"), &car.ranges)?;
    check_tie_rod(&at.field("tie_rod"), &car.tie_rod)?;
    let at = at.field("adjustments");
    count(&at, car.adjustments.len(), MAX_ADJUSTMENTS, "adjustments")?;
    adjustments::check(&at, car)
}

fn check_right(at: &Path, car: &Car) -> Result<(), Fault> {
    let RightCorner::Given(right) = &car.right else {
        return Ok(());
    };
    // `Given` holds the corner as its only element.
    let at = at.item(0);
    check_corner(&at, right, Side::Right)?;
    if std::mem::discriminant(&right.suspension) == std::mem::discriminant(&car.left.suspension) {
        return Ok(());
    }
    Err(Fault::new(
        &at.field("suspension"),
        "the right corner has another kind of suspension than the left",
        "give both corners the same kind",
    ))
}

fn check_corner(at: &Path, corner: &CornerPoints, side: Side) -> Result<(), Fault> {
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
    check_suspension(&at.field("suspension"), &corner.suspension, &upper)
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

fn check_suspension(at: &Path, suspension: &Suspension, ball: &Point) -> Result<(), Fault> {
    let Suspension::SwingingUpperArm {
        upper_hinge_front,
        upper_hinge_rear,
    } = suspension
    else {
        return Ok(());
    };
    position(&at.field("upper_hinge_front"), *upper_hinge_front)?;
    position(&at.field("upper_hinge_rear"), *upper_hinge_rear)?;
    let front = upper_hinge_front.point();
    let rear = upper_hinge_rear.point();
    apart(
        &at.field("upper_hinge_rear"),
        (front - rear).norm(),
        "the rear hinge point of the upper arm coincides with the front one",
    )?;
    apart(
        &at.field("upper_hinge_front"),
        distance_from_axis(ball, &front, &rear),
        "the upper kingpin point lies on the hinge axis of the arm that carries it",
    )
}

fn check_drive(at: &Path, drive: &Drive) -> Result<(), Fault> {
    let Drive::SwingArm {
        axis_point,
        axis_direction,
        rod_inner_left,
        rod_inner_right,
    } = drive;
    position(&at.field("axis_point"), *axis_point)?;
    direction(&at.field("axis_direction"), *axis_direction)?;
    let on_axis = axis_point.point();
    let further = on_axis + axis_direction.vector();
    let balls = [
        ("rod_inner_left", rod_inner_left),
        ("rod_inner_right", rod_inner_right),
    ];
    for (field, ball) in balls {
        position(&at.field(field), *ball)?;
        apart(
            &at.field(field),
            distance_from_axis(&ball.point(), &on_axis, &further),
            "this inner tie-rod ball lies on the axis of the arm that carries it",
        )?;
    }
    Ok(())
}

fn check_rods_have_length(at: &Path, car: &Car) -> Result<(), Fault> {
    let Drive::SwingArm {
        rod_inner_left,
        rod_inner_right,
        ..
    } = &car.drive;
    let left_outer = car.left.steering_arm.point();
    let right_outer = match &car.right {
        RightCorner::Mirrored => mirrored_point(&left_outer),
        RightCorner::Given(right) => right.steering_arm.point(),
    };
    let rods = [
        ("rod_inner_left", rod_inner_left, left_outer),
        ("rod_inner_right", rod_inner_right, right_outer),
    ];
    for (field, inner, outer) in rods {
        apart(
            &at.field("drive").field(field),
            (outer - inner.point()).norm(),
            "this inner tie-rod ball coincides with the outer ball",
        )?;
    }
    Ok(())
}

fn check_servo(at: &Path, servo: &ServoCase) -> Result<(), Fault> {
    let size = [servo.size.0, servo.size.1, servo.size.2];
    for (index, edge) in size.into_iter().enumerate() {
        length(&at.field("size").item(index), edge)?;
    }
    position(&at.field("centre"), servo.centre)
}

fn check_ranges(at: &Path, ranges: &Ranges) -> Result<(), Fault> {
    let input = at.field("input");
    range(
        &input,
        ranges.input,
        (-MAX_ANGLE, MAX_ANGLE),
        "degrees",
        false,
    )?;
    holds_zero(&input, ranges.input, "straight ahead")?;
    let travel = at.field("travel");
    range(
        &travel,
        ranges.travel,
        (-MAX_LENGTH, MAX_LENGTH),
        "mm",
        true,
    )?;
    holds_zero(&travel, ranges.travel, "the reference height")
}

fn holds_zero(at: &Path, value: (f64, f64), what: &str) -> Result<(), Fault> {
    if value.0 <= 0.0 && 0.0 <= value.1 {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!("this range leaves out 0, {what}"),
        "give a range from below 0 to above it",
    ))
}

fn check_tie_rod(at: &Path, tie_rod: &TieRodParts) -> Result<(), Fault> {
    number(
        &at.field("cup_length"),
        tie_rod.cup_length,
        0.0,
        MAX_LENGTH,
        "mm",
    )?;
    length(&at.field("shortest"), tie_rod.shortest)?;
    coordinate(&at.field("longest"), tie_rod.longest)?;
    if tie_rod.longest > tie_rod.shortest {
        return Ok(());
    }
    Err(Fault::new(
        &at.field("longest"),
        "the longest tie rod is not longer than the shortest",
        "give a length greater than `shortest`",
    ))
}

/// Refuses what should be apart and is not.
fn apart(at: &Path, distance: f64, wrong: &str) -> Result<(), Fault> {
    if distance >= MIN_LENGTH {
        return Ok(());
    }
    let right = format!("place them at least {} mm apart", short(MIN_LENGTH));
    Err(Fault::new(at, wrong, right))
}

fn distance_from_axis(point: &Point, on_axis: &Point, further: &Point) -> f64 {
    let axis = (further - on_axis).normalize();
    (point - on_axis).cross(&axis).norm()
}
