//! What the bench holds, apart from how it is shown: the document, the cursor, and all that follows from them.
//!
//! Nothing here knows the user-interface library, so tests and the command line use it as the window does.

mod bench;
mod car_edit;
mod change;
mod cursor;
mod curve_layout;
mod derived;
mod document;
pub mod effects;
mod equipment;
pub mod fitting;
mod open_setup;
mod overlay;
mod paper;
mod preferences;
mod reference;
mod rods;
pub mod search;
mod setup_tree;
pub mod sides;
mod step_effect;
mod steps;
pub mod tolerance;
mod worked_out;

pub use bench::Bench;
pub use car_edit::{
    AdjustmentDraft, Axis, CarEditing, DraftFault, DraftKind, DraftPart, EffectDraft, EffectKind,
    Entries, Field, Group as NumberGroup, NumberField as CarNumber, ObstacleField, OptionDraft,
    TextField, TypedNumber, edit_refused, further_groups as further_number_groups,
    groups as number_groups, obstacles, stocks, studs,
};
pub use change::{Change, rods_in_words};
pub use cursor::Cursor;
pub use curve_layout::{CurveLayout, PanelHeight};
pub use derived::{Derived, Shown, Trouble};
pub use document::Document;
pub use equipment::{BodySize, Equipment, Part};
pub use open_setup::{OpenSetup, SetupId};
pub use overlay::{Overlay, Switches};
pub use paper::{FurtherCurves, PrintChoices, RESOLUTIONS, SheetKind, Subject};
pub use preferences::Preferences;
pub use reference::{Origin, Reference};
pub use rods::{RodMode, rod_mode, with_mode};
pub use setup_tree::{SetupTree, TreeRow};
pub use steerloft_analysis::InputUnit;
pub use steerloft_analysis::curves::CurveKind;
pub use step_effect::{StepEffect, step_effect};
pub use steps::HistoryStep;
pub use worked_out::{Moment, WorkedOut};
