//! What the bench holds, apart from how it is shown: the document, the cursor, and all that follows from them.
//!
//! Nothing here knows the user-interface library, so tests and the command line use it as the window does.

mod bench;
mod change;
mod cursor;
mod curves;
mod derived;
mod document;
mod figures;
mod rods;
mod step_effect;
mod table;

pub use bench::Bench;
pub use change::Change;
pub use cursor::Cursor;
pub use curves::{BumpCurve, Curves, SteerCurve, SteerSample, Turn};
pub use derived::{Derived, Shown, Trouble};
pub use document::Document;
pub use figures::{Figures, FullLock, RodFigures};
pub use rods::{RodMode, rod_mode, with_mode};
pub use step_effect::{StepEffect, step_effect};
pub use table::{FigureRow, Values, figure_table};
