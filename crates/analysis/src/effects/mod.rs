//! What one step of each adjustment does, and which adjustments do nearly the same or undo each other.
//!
//! Every step is a setup of its own, laid out, assembled and measured as any other ([`Gauge::values`]): nothing is scaled
//! from a smaller change. A step that cannot be assembled stays in the table with the reason.
//!
//! [`Gauge::values`]: crate::find::Gauge::values

mod alike;
mod step;
mod table;

pub(crate) use table::measures;

pub use alike::{Alike, LEAST, LIKENESS};
pub use step::{Direction, Step, steps};
pub use table::{Column, Effects, INNER, Row, change};
