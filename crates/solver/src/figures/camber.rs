//! Camber: inclination of the wheel plane against the road normal, positive when the top leans outboard
//! (ISO 8855 inclination, trade sign).

use crate::frame::Vector;

/// Camber of a wheel with outboard unit spin axis `spin_axis`, rad.
#[must_use]
pub fn camber_of(spin_axis: &Vector, up: &Vector) -> f64 {
    // Rounding may carry the product of two unit vectors past one.
    -spin_axis.dot(up).clamp(-1.0, 1.0).asin()
}

/// Rate of camber of a wheel that turns at the given rate. Derived here: sin(camber) = -u . n.
#[must_use]
pub fn camber_rate(spin_axis: &Vector, angular: &Vector, up: &Vector) -> f64 {
    let sine = spin_axis.dot(up);
    -angular.cross(spin_axis).dot(up) / (1.0 - sine * sine).sqrt()
}
