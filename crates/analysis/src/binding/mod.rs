//! Where the linkage binds: ball joints, dead centres, rim, chassis and thread over the whole field of steer and travel.

pub(crate) mod clearance;
mod limit_line;
mod map;
mod thread;

pub use limit_line::Piece;
pub use map::{BindingMap, Cell, Concern, LEAST_SHARE, WorstPoint, binding_map};
pub use thread::{ThreadCheck, thread_check};
