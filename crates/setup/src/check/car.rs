//! Checks of the car's parts and ranges.

use steerloft_solver::frame::Side;

use super::corner::check_corner;
use super::values::{count, length, name, number, range, text};
use super::{Fault, Path, adjustments, drive, servo, stock, surroundings, tie_rod_parts, tie_rods};
use crate::adjustment::Unit;
use crate::car::{Car, Ranges, RightCorner, Suspension};
use crate::limits::{MAX_ADJUSTMENTS, MAX_ANGLE, MAX_LENGTH, MAX_TILT};

pub(super) fn check(at: &Path, car: &Car) -> Result<(), Fault> {
    name(&at.field("name"), &car.name)?;
    text(&at.field("notes"), &car.notes)?;
    check_corner(&at.field("left"), &car.left, Side::Left)?;
    check_right(&at.field("right"), car)?;
    drive::check(&at.field("drive"), &car.drive)?;
    tie_rods::check(&at.field("drive"), car)?;
    if let Some(servo) = &car.servo {
        servo::check(&at.field("servo"), servo, car)?;
    }
    if let Some(saver) = &car.saver {
        servo::check_saver(&at.field("saver").item(0), saver)?;
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
    check_ranges(&at.field("ranges"), &car.ranges, car)?;
    tie_rod_parts::check(&at.field("tie_rod"), &car.tie_rod)?;
    check_optional(at, car)?;
    stock::check(&at.field("stock"), car)?;
    let at = at.field("adjustments");
    count(&at, car.adjustments.len(), MAX_ADJUSTMENTS, "adjustments")?;
    adjustments::check(&at, car)
}

/// Checks what a car need not have.
fn check_optional(at: &Path, car: &Car) -> Result<(), Fault> {
    // `Some` holds its value as its only element.
    if let Some(joints) = &car.joints {
        tie_rod_parts::check_joints(&at.field("joints").item(0), joints)?;
    }
    if let Some(loads) = &car.loads {
        surroundings::check_loads(&at.field("loads").item(0), loads)?;
    }
    if let Some(clearances) = &car.clearances {
        surroundings::check_clearances(&at.field("clearances").item(0), clearances)?;
    }
    surroundings::check_obstacles(&at.field("obstacles"), &car.obstacles)?;
    surroundings::check_build_errors(&at.field("build_errors"), &car.build_errors)
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

fn check_ranges(at: &Path, ranges: &Ranges, car: &Car) -> Result<(), Fault> {
    let input = at.field("input");
    let (most, unit) = match car.drive.input_unit() {
        Unit::Millimetres => (MAX_LENGTH, "mm"),
        Unit::Degrees => (MAX_ANGLE, "degrees"),
    };
    range(&input, ranges.input, (-most, most), unit, false)?;
    holds_zero(&input, ranges.input, "straight ahead")?;
    let travel = at.field("travel");
    range(
        &travel,
        ranges.travel,
        (-MAX_LENGTH, MAX_LENGTH),
        "mm",
        true,
    )?;
    holds_zero(&travel, ranges.travel, "the reference height")?;
    let fixed = matches!(car.left.suspension, Suspension::FixedKingpin);
    if fixed && ranges.travel != (0.0, 0.0) {
        return Err(Fault::new(
            &travel,
            "a wheel on a fixed kingpin has no travel",
            "give (0.0, 0.0)",
        ));
    }
    Ok(())
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
