//! Checks of the steering drive.

use super::geometry::{apart, distance_from_axis};
use super::links::{CrossLink, DragLink};
use super::values::{direction, length, position};
use super::{Fault, Path};
use crate::car::{Crank, Drive, Position};

pub(super) fn check(at: &Path, drive: &Drive) -> Result<(), Fault> {
    let (left, right) = drive.rod_inner();
    let inner = [("rod_inner_left", left), ("rod_inner_right", right)];
    match drive {
        Drive::SwingArm {
            axis_point,
            axis_direction,
            ..
        } => {
            let arm = Crank {
                axis_point: *axis_point,
                axis_direction: *axis_direction,
            };
            check_axis(at, &arm)?;
            for (field, ball) in inner {
                let words = "this inner tie-rod ball lies on the axis of the arm that carries it";
                check_carried(&at.field(field), ball, &arm, words)?;
            }
            Ok(())
        }
        Drive::TwinCrank {
            crank_left,
            crank_right,
            cross_left,
            cross_right,
            inner_on,
            servo_arm,
            drag_servo,
            drag_crank,
            driven,
            drag_length,
            cross_length,
            ..
        } => {
            let cross = CrossLink {
                cranks: [*crank_left, *crank_right],
                balls: [*cross_left, *cross_right],
                driven: *driven,
            };
            cross.check(at)?;
            cross.check_inner(at, *inner_on, inner)?;
            let drag = DragLink {
                servo_arm: *servo_arm,
                crank: cross.driven_crank(),
                balls: [*drag_servo, *drag_crank],
            };
            drag.check(at)?;
            check_length(&at.field("drag_length"), *drag_length)?;
            check_length(&at.field("cross_length"), *cross_length)
        }
        Drive::Slider {
            direction: along, ..
        } => {
            direction(&at.field("direction"), *along)?;
            for (field, ball) in inner {
                position(&at.field(field), ball)?;
            }
            Ok(())
        }
    }
}

fn check_length(at: &Path, value: Option<f64>) -> Result<(), Fault> {
    match value {
        // `Some` holds the length as its only element.
        Some(value) => length(&at.item(0), value),
        None => Ok(()),
    }
}

/// Checks the axis of a lever.
pub(super) fn check_axis(at: &Path, axis: &Crank) -> Result<(), Fault> {
    position(&at.field("axis_point"), axis.axis_point)?;
    direction(&at.field("axis_direction"), axis.axis_direction)
}

/// Checks a ball that a lever carries about its axis.
pub(super) fn check_carried(
    at: &Path,
    ball: Position,
    lever: &Crank,
    on_axis: &str,
) -> Result<(), Fault> {
    position(at, ball)?;
    let point = lever.axis_point.point();
    let further = point + lever.axis_direction.vector();
    apart(
        at,
        distance_from_axis(&ball.point(), &point, &further),
        on_axis,
    )
}
