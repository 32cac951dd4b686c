//! Moment that it takes to turn a loaded wheel that does not roll.

use steerloft_setup::car::Loads;
use steerloft_solver::AxlePose;
use steerloft_solver::figures::corner_figures;
use steerloft_solver::figures::load::holding_effort;
use steerloft_solver::frame::{Road, Sides};

/// Moment about the kingpin, N mm, that turns a standing wheel on the road.
///
/// Gough's relation, M = mu W sqrt(b^2 / 8 + e^2): W the wheel's load, N; b the width of the tread, mm; e the scrub
/// radius, mm (V. E. Gough; as texts on steering quote it, from memory).
#[must_use]
pub fn static_moment(friction: f64, wheel_load: f64, tread_width: f64, scrub_radius: f64) -> f64 {
    friction * wheel_load * (tread_width * tread_width / 8.0 + scrub_radius * scrub_radius).sqrt()
}

/// Moments about both kingpins, N mm, that turn the wheels of a car that stands in a pose. Each wheel carries half of the
/// axle's load.
#[must_use]
pub fn static_moments(pose: &AxlePose, road: &Road, loads: &Loads) -> Sides<f64> {
    pose.corners.map(|corner| {
        let scrub = corner_figures(&corner, road).scrub_radius;
        let wheel_load = loads.front_axle / 2.0;
        static_moment(loads.friction, wheel_load, corner.tyre_width, scrub)
    })
}

/// Effort at the drive that turns both wheels of a car that stands in a pose, without sign: N mm at an arm, N at a rack.
#[must_use]
pub fn standing_effort(pose: &AxlePose, road: &Road, loads: &Loads) -> f64 {
    effort_against(pose, &static_moments(pose, road, loads))
}

/// Effort at the drive against moments about both kingpins that oppose its turn, without sign.
pub(super) fn effort_against(pose: &AxlePose, moments: &Sides<f64>) -> f64 {
    // Both wheels turned to the left: the road turns both to the right.
    holding_effort(pose, &moments.map(|moment| -moment)).abs()
}
