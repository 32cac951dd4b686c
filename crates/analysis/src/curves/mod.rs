//! Curves of a front axle as plain series, for the window, for paper and for tables.
//!
//! [`Sweeps`] poses the axle along steering input, wheel travel and roll, each sweep once and only when a curve needs it;
//! [`Sweeps::curve`] reads any curve off those poses with the solver's figures. Millimetres and degrees; signs are those
//! of the solver.

mod curve;
mod end;
mod fixed;
mod kind;
mod meaning;
mod of_roll;
mod of_steer;
mod of_travel;
mod of_turns;
mod quantity;
mod roll_range;
mod sweeps;
mod turn;

pub use curve::{Axis, Curve, Guide, Series, Trace, value_at};
pub use end::{End, Swept};
pub use fixed::FixedRanges;
pub use kind::{Along, CurveKind};
pub(crate) use roll_range::roll_range;
pub use sweeps::{Held, RollPose, SAMPLES, Sweeps};
pub use turn::{Turn, TurnSample};
