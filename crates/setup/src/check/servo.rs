//! Checks of the servo, its spline and its saver.

use super::values::{length, number, position, whole};
use super::{Fault, Path};
use crate::car::{Car, Servo, ServoAction, ServoSaver, Spline};
use crate::limits::{MAX_ANGLE, MAX_LENGTH, MAX_PULSE, MAX_TEETH, MAX_TORQUE, MIN_TEETH};
use crate::servo::ServoFrame;
use crate::values::short;

/// Checks the servo, where `at` holds it as `Some`.
pub(super) fn check(at: &Path, servo: &Servo, car: &Car) -> Result<(), Fault> {
    if car.drive.servo_axis().is_none() {
        return Err(Fault::new(
            at,
            "a rack has no servo arm that the servo's case could go with",
            "leave `servo` out",
        ));
    }
    // `Some` holds the servo as its only element.
    let at = at.item(0);
    let case_at = at.field("case");
    let size = [servo.case.size.0, servo.case.size.1, servo.case.size.2];
    for (index, edge) in size.into_iter().enumerate() {
        length(&case_at.field("size").item(index), edge)?;
    }
    position(&case_at.field("centre"), servo.case.centre)?;
    if let Some(lug_height) = servo.lug_height {
        check_lugs(&at.field("lug_height").item(0), lug_height, servo, car)?;
    }
    if let Some(spline) = &servo.spline {
        check_spline(&at.field("spline").item(0), spline)?;
    }
    if let Some(action) = &servo.action {
        check_action(&at.field("action").item(0), action)?;
    }
    Ok(())
}

fn check_lugs(at: &Path, lug_height: f64, servo: &Servo, car: &Car) -> Result<(), Fault> {
    number(at, lug_height, 0.0, MAX_LENGTH, "mm")?;
    let Some(frame) = ServoFrame::of(servo, &car.drive) else {
        return Ok(());
    };
    let height = frame.height(&servo.case);
    if lug_height <= height {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!(
            "the lugs seat {} mm up a case that is {} mm high along the arm's axis",
            short(lug_height),
            short(height)
        ),
        "measure it from the case's bottom, the end away from the arm",
    ))
}

fn check_spline(at: &Path, spline: &Spline) -> Result<(), Fault> {
    whole(
        &at.field("teeth"),
        spline.teeth,
        MIN_TEETH,
        MAX_TEETH,
        "teeth",
    )?;
    if spline.tooth.unsigned_abs() > spline.teeth {
        return Err(Fault::new(
            &at.field("tooth"),
            format!(
                "tooth {} lies more than a turn away on a spline of {}",
                spline.tooth, spline.teeth
            ),
            format!("give -{0} to {0}", spline.teeth),
        ));
    }
    for (field, angle) in [("stands_at", spline.stands_at), ("trim", spline.trim)] {
        number(&at.field(field), angle, -MAX_ANGLE, MAX_ANGLE, "degrees")?;
    }
    Ok(())
}

fn check_action(at: &Path, action: &ServoAction) -> Result<(), Fault> {
    number(&at.field("speed"), action.speed, 0.001, 100.0, "s")?;
    number(&at.field("torque"), action.torque, 0.1, MAX_TORQUE, "N mm")?;
    number(&at.field("voltage"), action.voltage, 0.1, 1000.0, "V")?;
    number(&at.field("throw"), action.throw, 1.0, MAX_ANGLE, "degrees")?;
    let at = at.field("pulse");
    let pulse = &action.pulse;
    number(
        &at.field("centre"),
        pulse.centre,
        1.0,
        MAX_PULSE,
        "microseconds",
    )?;
    number(
        &at.field("side"),
        pulse.side,
        1.0,
        MAX_PULSE,
        "microseconds",
    )?;
    if pulse.side < pulse.centre {
        return Ok(());
    }
    Err(Fault::new(
        &at.field("side"),
        format!(
            "the shortest pulse would be {} microseconds",
            short(pulse.centre - pulse.side)
        ),
        "give less than `centre`",
    ))
}

/// Checks the saver.
pub(super) fn check_saver(at: &Path, saver: &ServoSaver) -> Result<(), Fault> {
    number(
        &at.field("breakaway"),
        saver.breakaway,
        0.0,
        MAX_TORQUE,
        "N mm",
    )?;
    number(
        &at.field("rate"),
        saver.rate,
        0.001,
        MAX_TORQUE,
        "N mm per degree",
    )
}
