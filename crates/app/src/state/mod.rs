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
mod input;
mod open_setup;
mod preferences;
mod reference;
mod rods;
mod scales;
mod step_effect;
mod steps;
mod table;

pub use bench::Bench;
pub use change::{Change, rods_in_words};
pub use cursor::Cursor;
pub use curves::{
    CurveKind, Curves, End, Line, RollCurves, SteerCurves, SteerSample, Strand, Sweep, Sweeps,
    TravelCurves, Turn, value_at,
};
pub use derived::{Derived, Shown, Trouble};
pub use document::Document;
pub use figures::{Figures, FullLock, InstantCentre, PoseFigures, RestFigures, RodFigures};
pub use input::InputUnit;
pub use open_setup::{OpenSetup, SetupId};
pub use preferences::Preferences;
pub use reference::{Origin, Reference};
pub use rods::{RodMode, rod_mode, with_mode};
pub use scales::{Range, Scales, round_step};
pub use step_effect::{StepEffect, step_effect};
pub use steps::HistoryStep;
pub use table::{FigureGroup, FigureRow, Values, figure_table, headline_figures};
