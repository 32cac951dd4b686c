//! Whether the servo's body clears what stands around it.

use steerloft_setup::layout::layout;
use steerloft_setup::setup::Setup;

use crate::binding::clearance::solids_of;

/// How the servo's body lies among its surroundings.
#[derive(Debug, Clone, PartialEq)]
pub struct ServoFit {
    /// Distance of its near side from the chassis centre line, mm; negative by how far it reaches over it.
    pub centre_line: f64,
    /// Height of its lowest side over the underside of the chassis plate, mm.
    pub over_chassis: f64,
    /// Its clearance to each obstacle of the car, in the order of the car's list.
    pub obstacles: Vec<BodyFit>,
}

/// Clearance to one obstacle.
#[derive(Debug, Clone, PartialEq)]
pub struct BodyFit {
    /// Name of the obstacle.
    pub obstacle: String,
    /// Least distance, mm; negative by how far the bodies would have to be taken apart.
    pub clearance: f64,
}

/// How the servo's body lies, with the setup's adjustments; nothing for a car without a servo.
#[must_use]
pub fn servo_fit(setup: &Setup) -> Option<ServoFit> {
    let servo = layout(setup).servo?;
    let obstacles = solids_of(&setup.car.obstacles)
        .map(|(name, solid)| BodyFit {
            obstacle: name,
            clearance: solid.clearance_of_box(&servo.centre, &servo.size),
        })
        .fold(Vec::new(), nearest_of_each);
    Some(ServoFit {
        centre_line: servo.centre.y.abs() - servo.size.y / 2.0,
        over_chassis: servo.centre.z - servo.size.z / 2.0,
        obstacles,
    })
}

/// One entry for both images of a mirrored obstacle: the nearer.
fn nearest_of_each(mut known: Vec<BodyFit>, next: BodyFit) -> Vec<BodyFit> {
    match known.last_mut() {
        Some(last) if last.obstacle == next.obstacle => {
            last.clearance = last.clearance.min(next.clearance);
        }
        _ => known.push(next),
    }
    known
}
