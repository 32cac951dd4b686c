//! What points must satisfy among each other.

use steerloft_solver::frame::{Point, Vector};

use super::{Fault, Path};
use crate::limits::MIN_LENGTH;
use crate::values::short;

/// Refuses what should be apart and is not.
pub(super) fn apart(at: &Path, distance: f64, wrong: &str) -> Result<(), Fault> {
    if distance >= MIN_LENGTH {
        return Ok(());
    }
    let right = format!("place them at least {} mm apart", short(MIN_LENGTH));
    Err(Fault::new(at, wrong, right))
}

/// Refuses a direction along which a ball that moves so does not move.
pub(super) fn leads(
    at: &Path,
    along: &Vector,
    by_turn: &Vector,
    wrong: &str,
    right: &str,
) -> Result<(), Fault> {
    if along.normalize().dot(by_turn).abs() >= MIN_LENGTH {
        return Ok(());
    }
    Err(Fault::new(at, wrong, right))
}

/// Distance of a point from the axis through two others, mm.
pub(super) fn distance_from_axis(point: &Point, on_axis: &Point, further: &Point) -> f64 {
    about_axis(point, on_axis, &(further - on_axis)).norm()
}

/// How a point runs when it turns about an axis, mm per rad.
pub(super) fn about_axis(point: &Point, on_axis: &Point, direction: &Vector) -> Vector {
    direction.normalize().cross(&(point - on_axis))
}
