//! Edits of twin cranks: which crank is driven, what carries the inner balls, how long the links are.

use super::EditError;
use super::sides::mirrored;
use crate::adjustment::{Member, PointName};
use crate::car::{Car, Drive, DrivenCrank, InnerBallsOn};
use crate::dimension::keep_on_cross_link;

impl Car {
    /// Length of the drag or cross link, mm: as it is set, or else as it is drawn. Nothing for other members and without cranks.
    #[must_use]
    pub fn link_length(&self, link: Member) -> Option<f64> {
        let Drive::TwinCrank {
            cross_left,
            cross_right,
            drag_servo,
            drag_crank,
            drag_length,
            cross_length,
            ..
        } = &self.drive
        else {
            return None;
        };
        let (set, from, to) = match link {
            Member::DragLink => (drag_length, drag_servo, drag_crank),
            Member::CrossLink => (cross_length, cross_left, cross_right),
            Member::UpperArm | Member::LowerArm => return None,
        };
        Some(set.unwrap_or_else(|| (to.point() - from.point()).norm()))
    }
}

/// Sets a link's length, or lets it be as drawn.
pub(super) fn set_length(car: &mut Car, link: Member, to: Option<f64>) -> Result<(), EditError> {
    match (&mut car.drive, link) {
        (Drive::TwinCrank { drag_length, .. }, Member::DragLink) => *drag_length = to,
        (Drive::TwinCrank { cross_length, .. }, Member::CrossLink) => *cross_length = to,
        _ => return Err(EditError::NoSuchLink { link }),
    }
    Ok(())
}

/// Lets the drag link turn the other crank: its ball goes to the mirror image place there, and the link is as long as drawn.
pub(super) fn drive_crank(car: &mut Car, to: DrivenCrank) -> Result<(), EditError> {
    let Drive::TwinCrank {
        driven,
        drag_crank,
        drag_length,
        ..
    } = &mut car.drive
    else {
        return Err(NO_CRANKS);
    };
    if *driven != to {
        *driven = to;
        *drag_crank = mirrored(*drag_crank);
        *drag_length = None;
    }
    Ok(())
}

/// Puts the inner balls on the cranks, where they are, or on the cross link, at the nearest place on its line.
pub(super) fn carry_inner(car: &mut Car, on: InnerBallsOn) -> Result<(), EditError> {
    let Drive::TwinCrank { inner_on, .. } = &mut car.drive else {
        return Err(NO_CRANKS);
    };
    *inner_on = on;
    keep_on_cross_link(&mut car.drive);
    Ok(())
}

const NO_CRANKS: EditError = EditError::NoSuchPoint {
    point: PointName::CrankAxis,
};
