//! Spatial steering and suspension linkages of a front axle: poses and figures.
//!
//! [`axle::FrontAxle`] holds the geometry as plain points; [`Assembly`] makes it ready and sets the tie rods;
//! [`Assembly::pose`] closes the linkage at a steering input and wheel travels; [`figures`] says what a pose means
//! in the trade's terms; [`sweep`] follows poses to their locks.
//!
//! Millimetres and radians throughout; axes and signs are those of [`frame`]. The crate knows no file, no screen
//! and no adjustment. Whatever finite or non-finite numbers it is given, it answers with a pose that closes or
//! with a [`SolveError`] that names what is wrong; no number that leaves it is infinite or not a number.

pub mod assembly;
pub mod axle;
mod check;
mod closure;
pub mod drive;
pub mod error;
pub mod figures;
pub mod frame;
pub mod joints;
mod on_road;
mod pace;
pub mod pose;
pub mod suspension;
pub mod sweep;
pub mod twist;

pub use assembly::Assembly;
pub use axle::FrontAxle;
pub use error::SolveError;
pub use frame::{Point, Side, Sides, Vector};
pub use nalgebra::Isometry3;
pub use pose::{AxlePose, CornerPose};
