//! Checks of loads, clearances, obstacles and build errors.

use super::values::{count, direction, length, number, position};
use super::{Fault, Path, unique_names};
use crate::car::{BuildErrors, Clearances, Loads, Obstacle, Shape};
use crate::limits::{
    MAX_ANGLE_ERROR, MAX_FRICTION, MAX_LENGTH, MAX_LENGTH_ERROR, MAX_LOAD, MAX_OBSTACLES,
};

/// Checks the loads.
pub(super) fn check_loads(at: &Path, loads: &Loads) -> Result<(), Fault> {
    number(
        &at.field("front_axle"),
        loads.front_axle,
        0.001,
        MAX_LOAD,
        "N",
    )?;
    number(
        &at.field("friction"),
        loads.friction,
        0.001,
        MAX_FRICTION,
        "",
    )
}

/// Checks the sizes of parts that could touch.
pub(super) fn check_clearances(at: &Path, clearances: &Clearances) -> Result<(), Fault> {
    if let Some(rim) = &clearances.rim {
        let at = at.field("rim").item(0);
        length(&at.field("inner_radius"), rim.inner_radius)?;
        number(
            &at.field("inboard"),
            rim.inboard,
            -MAX_LENGTH,
            MAX_LENGTH,
            "mm",
        )?;
        number(&at.field("disc"), rim.disc, -MAX_LENGTH, MAX_LENGTH, "mm")?;
        if rim.disc >= rim.inboard {
            return Err(Fault::new(
                &at.field("disc"),
                "the wheel's disc lies inboard of its bore's edge",
                "give less than `inboard`; outboard of the wheel centre is negative",
            ));
        }
    }
    let diameters = [
        ("rod_diameter", clearances.rod_diameter),
        ("knuckle_diameter", clearances.knuckle_diameter),
    ];
    for (field, diameter) in diameters {
        if let Some(diameter) = diameter {
            length(&at.field(field).item(0), diameter)?;
        }
    }
    Ok(())
}

/// Checks the obstacles.
pub(super) fn check_obstacles(at: &Path, obstacles: &[Obstacle]) -> Result<(), Fault> {
    count(at, obstacles.len(), MAX_OBSTACLES, "obstacles")?;
    let names = obstacles.iter().map(|obstacle| obstacle.name.as_str());
    unique_names(names, |index| at.item(index).field("name"), "obstacles")?;
    for (index, obstacle) in obstacles.iter().enumerate() {
        let at = at.item(index).field("shape");
        match obstacle.shape {
            Shape::Box { centre, size } => {
                position(&at.field("centre"), centre)?;
                for (index, edge) in [size.0, size.1, size.2].into_iter().enumerate() {
                    length(&at.field("size").item(index), edge)?;
                }
            }
            Shape::Plane { point, free } => {
                position(&at.field("point"), point)?;
                direction(&at.field("free"), free)?;
            }
        }
    }
    Ok(())
}

/// Checks the build errors.
pub(super) fn check_build_errors(at: &Path, errors: &BuildErrors) -> Result<(), Fault> {
    let lengths = [
        ("points", errors.points),
        ("lengths", errors.lengths),
        ("hole_play", errors.hole_play),
    ];
    for (field, error) in lengths {
        number(&at.field(field), error, 0.0, MAX_LENGTH_ERROR, "mm")?;
    }
    number(
        &at.field("angles"),
        errors.angles,
        0.0,
        MAX_ANGLE_ERROR,
        "degrees",
    )?;
    let at = at.field("own");
    for (index, own) in errors.own.iter().enumerate() {
        let at = at.item(index);
        if errors.own[..index]
            .iter()
            .any(|other| other.point == own.point)
        {
            return Err(Fault::new(
                &at.field("point"),
                format!("an error of the {} is given twice", own.point.label()),
                "give it once",
            ));
        }
        if own.point.is_direction() {
            return Err(Fault::new(
                &at.field("point"),
                format!(
                    "the {} is no point and has no place to be off",
                    own.point.label()
                ),
                "name a point; `angles` holds for directions",
            ));
        }
        number(&at.field("error"), own.error, 0.0, MAX_LENGTH_ERROR, "mm")?;
    }
    Ok(())
}
