//! Moment that it takes to turn a loaded wheel that does not roll.

/// Moment about the kingpin, N mm, that turns a standing wheel on the road.
///
/// Gough's relation, M = mu W sqrt(b^2 / 8 + e^2): W the wheel's load, N; b the width of the tread, mm; e the scrub
/// radius, mm (V. E. Gough; as texts on steering quote it, from memory).
#[must_use]
pub fn static_moment(friction: f64, wheel_load: f64, tread_width: f64, scrub_radius: f64) -> f64 {
    friction * wheel_load * (tread_width * tread_width / 8.0 + scrub_radius * scrub_radius).sqrt()
}
