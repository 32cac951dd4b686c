//! Checks of what adjustments do.

use steerloft_solver::frame::Side;

use super::values::{coordinate, count, direction, number, position};
use super::{Fault, Path};
use crate::adjustment::{Effect, EffectSides, Member, PointName, Scalar};
use crate::car::{Car, Drive, Position, Suspension};
use crate::limits::{MAX_ANGLE, MAX_EFFECTS, MAX_LENGTH};

/// How an adjustment uses its effects.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Use {
    /// Times how far it is from base.
    Scaled,
    /// Whole, or not at all.
    Whole,
}

pub(super) fn check(at: &Path, effects: &[Effect], used: Use, car: &Car) -> Result<(), Fault> {
    if effects.is_empty() && used == Use::Scaled {
        return Err(Fault::new(
            at,
            "this adjustment has no effect",
            "say what one unit of it does",
        ));
    }
    count(at, effects.len(), MAX_EFFECTS, "effects")?;
    for (index, effect) in effects.iter().enumerate() {
        check_effect(&at.item(index), effect, used, car)?;
    }
    Ok(())
}

fn check_effect(at: &Path, effect: &Effect, used: Use, car: &Car) -> Result<(), Fault> {
    match effect {
        Effect::Move { points, by, sides } => {
            check_points(&at.field("points"), points, car)?;
            check_has_place(&at.field("points"), points, "moved")?;
            position(&at.field("by"), *by)?;
            check_shared(at, points, *sides, in_centre_plane(*by))
        }
        Effect::Turn {
            points,
            through,
            about,
            degrees,
            sides,
        } => {
            check_points(&at.field("points"), points, car)?;
            check_through(&at.field("through"), *through, car)?;
            direction(&at.field("about"), *about)?;
            number(
                &at.field("degrees"),
                *degrees,
                -MAX_ANGLE,
                MAX_ANGLE,
                "degrees",
            )?;
            check_shared(at, points, *sides, across(*about) && through.is_shared())
        }
        Effect::Reflect {
            points,
            through,
            normal,
            sides,
        } => {
            if used == Use::Scaled {
                return Err(Fault::new(
                    at,
                    "a reflection applies whole, so a slide or stack cannot hold it",
                    "put it into an option of a `Choice`",
                ));
            }
            check_points(&at.field("points"), points, car)?;
            check_has_place(&at.field("points"), points, "reflected")?;
            check_through(&at.field("through"), *through, car)?;
            direction(&at.field("normal"), *normal)?;
            check_shared(
                at,
                points,
                *sides,
                in_centre_plane(*normal) && through.is_shared(),
            )
        }
        Effect::Lengthen { member, by, sides } => {
            check_member(&at.field("member"), *member, car)?;
            check_member_sides(at, *member, *sides)?;
            coordinate(&at.field("by"), *by)
        }
        Effect::Add { scalar, by } => {
            let (most, unit) = match scalar {
                Scalar::Wheelbase
                | Scalar::FrontStation
                | Scalar::RideHeight
                | Scalar::TyreRadius
                | Scalar::TyreWidth => (MAX_LENGTH, "mm"),
                Scalar::Camber | Scalar::Pitch | Scalar::Roll => (MAX_ANGLE, "degrees"),
            };
            number(&at.field("by"), *by, -most, most, unit)
        }
    }
}

fn check_points(at: &Path, points: &[PointName], car: &Car) -> Result<(), Fault> {
    if points.is_empty() {
        return Err(Fault::new(
            at,
            "no points are named",
            "name at least one point",
        ));
    }
    for (index, point) in points.iter().enumerate() {
        check_exists(&at.item(index), *point, car)?;
        if points[..index].contains(point) {
            return Err(Fault::new(
                &at.item(index),
                "this point is named twice",
                "name each point once",
            ));
        }
    }
    Ok(())
}

fn check_exists(at: &Path, point: PointName, car: &Car) -> Result<(), Fault> {
    let suspension = &car.left.suspension;
    match point {
        PointName::UpperHingeFront | PointName::UpperHingeRear if !suspension.has_upper_arm() => {
            lacks(at, "suspension", point)
        }
        PointName::LowerHingeFront | PointName::LowerHingeRear if !suspension.has_lower_arm() => {
            lacks(at, "suspension", point)
        }
        PointName::SlideDirection => check_slides(at, car),
        PointName::CrankAxis
        | PointName::CrankDirection
        | PointName::CrossBall
        | PointName::DragServo
        | PointName::DragCrank
            if !matches!(car.drive, Drive::TwinCrank { .. }) =>
        {
            lacks(at, "drive", point)
        }
        PointName::DriveAxis if car.drive.servo_axis().is_none() => lacks(at, "drive", point),
        _ => Ok(()),
    }
}

fn lacks(at: &Path, part: &str, point: PointName) -> Result<(), Fault> {
    Err(Fault::new(
        at,
        format!("this car's {part} has no {}", point.label()),
        format!("name a point that the {part} has"),
    ))
}

fn check_slides(at: &Path, car: &Car) -> Result<(), Fault> {
    let has_own = |side| match car.corner(side).suspension {
        Suspension::Strut {
            slide_direction, ..
        } => slide_direction.is_some(),
        _ => false,
    };
    match car.left.suspension {
        Suspension::Strut { .. } if Side::BOTH.into_iter().any(has_own) => Ok(()),
        Suspension::Strut { .. } => Err(Fault::new(
            at,
            "this car's struts slide along the steering axis and turn with it",
            "give the strut a `slide_direction` of its own, or leave this name out",
        )),
        _ => lacks(at, "suspension", PointName::SlideDirection),
    }
}

fn check_has_place(at: &Path, points: &[PointName], what: &str) -> Result<(), Fault> {
    match points.iter().position(|point| point.is_direction()) {
        None => Ok(()),
        Some(index) => Err(Fault::new(
            &at.item(index),
            format!(
                "the {} is a direction and cannot be {what}",
                points[index].label()
            ),
            "directions can only be turned",
        )),
    }
}

fn check_through(at: &Path, through: PointName, car: &Car) -> Result<(), Fault> {
    check_exists(at, through, car)?;
    if !through.is_direction() {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!("the {} is a direction and has no place", through.label()),
        "name a point",
    ))
}

fn check_member(at: &Path, member: Member, car: &Car) -> Result<(), Fault> {
    let suspension = &car.left.suspension;
    let (part, is_there) = match member {
        Member::UpperArm => ("suspension", suspension.has_upper_arm()),
        Member::LowerArm => ("suspension", suspension.has_lower_arm()),
        Member::DragLink | Member::CrossLink => {
            ("drive", matches!(car.drive, Drive::TwinCrank { .. }))
        }
    };
    if is_there {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!("this car's {part} has no {}", member.label()),
        format!("name a member that the {part} has"),
    ))
}

/// What both sides share has one length.
fn check_member_sides(at: &Path, member: Member, sides: EffectSides) -> Result<(), Fault> {
    let one_side = matches!(sides, EffectSides::Left | EffectSides::Right);
    if !(one_side && member.is_shared()) {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!("the {} belongs to both sides", member.label()),
        "leave `sides` out",
    ))
}

/// What both sides share cannot go two ways at once: if the mirror image of what is given differs, the sides
/// must go together.
fn check_shared(
    at: &Path,
    points: &[PointName],
    sides: EffectSides,
    mirror_image_is_same: bool,
) -> Result<(), Fault> {
    let Some(shared) = points.iter().find(|point| point.is_shared()) else {
        return Ok(());
    };
    let fits = match sides {
        EffectSides::Together => true,
        EffectSides::Mirrored => mirror_image_is_same,
        EffectSides::Left | EffectSides::Right => false,
    };
    if fits {
        return Ok(());
    }
    Err(Fault::new(
        at,
        format!(
            "the {} belongs to both sides and cannot go two ways",
            shared.label()
        ),
        "write `sides: Together`",
    ))
}

/// Whether a displacement or normal has no part across the car.
fn in_centre_plane(vector: Position) -> bool {
    vector.1 == 0.0
}

/// Whether an axis lies straight across the car, so that the mirror image of a turn about it is itself.
fn across(axis: Position) -> bool {
    axis.0 == 0.0 && axis.2 == 0.0
}
