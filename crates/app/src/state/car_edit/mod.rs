//! Describing the car itself: its fields with what is typed in them, adjustments being written, and what each change is
//! called.

mod adjustment_draft;
mod draft_fault;
mod effect_draft;
mod entries;
mod field;
mod label;
mod spacer_list;

pub use adjustment_draft::{AdjustmentDraft, DraftKind, OptionDraft};
pub use draft_fault::{DraftFault, DraftPart};
pub use effect_draft::{EffectDraft, EffectKind};
pub use entries::Entries;
pub use field::{Axis, Field, NUMBERS, NumberField as CarNumber};

pub(super) use label::label;

use steerloft_setup::adjustment::PointName;
use steerloft_solver::frame::Side;

/// The state of the car's description on screen: nothing of it is in the document.
#[derive(Debug, Clone, Default)]
pub struct CarEditing {
    /// What is typed in the fields.
    pub entries: Entries,
    /// The point whose measuring is explained and shown in the views.
    pub guide: Option<(PointName, Side)>,
    /// The adjustment being written.
    pub draft: Option<AdjustmentDraft>,
}
