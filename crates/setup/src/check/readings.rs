//! Checks of gauge readings.

use super::values::{count, number, text};
use super::{Fault, Path};
use crate::limits::{MAX_ANGLE, MAX_ANGLE_ERROR, MAX_LENGTH, MAX_READINGS, MAX_UNCERTAIN};
use crate::readings::{AtHeight, Height, Readings};

/// Least uncertainty of a reading, degrees: nothing is read exactly.
const LEAST_UNCERTAINTY: f64 = 0.001;

/// Checks readings; the first fault in the document's order.
pub fn check_readings(readings: &Readings) -> Result<(), Fault> {
    let root = Path::root();
    text(&root.field("notes"), &readings.notes)?;
    at_heights(&root.field("toe"), &readings.toe)?;
    at_heights(&root.field("camber"), &readings.camber)?;
    let turned = root.field("turned");
    count(&turned, readings.turned.len(), MAX_READINGS, "readings")?;
    for (index, one) in readings.turned.iter().enumerate() {
        let at = turned.item(index);
        number(&at.field("input"), one.input, -MAX_LENGTH, MAX_LENGTH, "")?;
        values(&at, one.left, one.right, one.uncertainty)?;
    }
    let uncertain = root.field("uncertain");
    count(
        &uncertain,
        readings.uncertain.len(),
        MAX_UNCERTAIN,
        "uncertain dimensions",
    )?;
    for (index, dimension) in readings.uncertain.iter().enumerate() {
        if readings.uncertain[..index].contains(dimension) {
            return Err(Fault::new(
                &uncertain.item(index),
                format!("the {dimension} is named twice"),
                "name it once",
            ));
        }
    }
    Ok(())
}

fn at_heights(at: &Path, all: &[AtHeight]) -> Result<(), Fault> {
    count(at, all.len(), MAX_READINGS, "readings")?;
    for (index, one) in all.iter().enumerate() {
        let at = at.item(index);
        let (Height::Travel(height) | Height::RideHeight(height)) = one.at;
        number(
            &at.field("at").item(0),
            height,
            -MAX_LENGTH,
            MAX_LENGTH,
            "mm",
        )?;
        values(&at, one.left, one.right, one.uncertainty)?;
    }
    Ok(())
}

fn values(at: &Path, left: Option<f64>, right: Option<f64>, uncertainty: f64) -> Result<(), Fault> {
    if left.is_none() && right.is_none() {
        return Err(Fault::new(
            at,
            "nothing is read here",
            "give `left: Some(...)`, `right: Some(...)` or both, or leave the reading out",
        ));
    }
    for (field, value) in [("left", left), ("right", right)] {
        if let Some(value) = value {
            number(
                &at.field(field).item(0),
                value,
                -MAX_ANGLE,
                MAX_ANGLE,
                "degrees",
            )?;
        }
    }
    number(
        &at.field("uncertainty"),
        uncertainty,
        LEAST_UNCERTAINTY,
        MAX_ANGLE_ERROR,
        "degrees",
    )
}
