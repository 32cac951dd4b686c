//! What the steering must be turned with: static moments at the kingpins, torque and speed asked of the servo, margin.

mod curve;
mod static_moment;

pub use curve::{LoadCurve, LoadError, LoadPoint, load_curve};
pub use static_moment::{standing_effort, static_moment, static_moments};
