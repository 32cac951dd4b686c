//! Describing the car itself: its fields with what is typed in them, adjustments being written, and what each change is
//! called.

mod adjustment_draft;
mod draft_fault;
mod effect_draft;
mod entries;
mod field;
mod label;
pub mod obstacles;
mod spacer_list;
pub mod stocks;
pub mod studs;
mod typed_number;

pub use adjustment_draft::{AdjustmentDraft, DraftKind, OptionDraft};
pub use draft_fault::{DraftFault, DraftPart};
pub use effect_draft::{EffectDraft, EffectKind};
pub use entries::Entries;
pub use field::{
    Axis, Field, Group, NumberField, ObstacleField, TextField, further_groups, groups,
};
pub use typed_number::TypedNumber;

pub(super) use label::label;

use steerloft_setup::adjustment::PointName;
use steerloft_setup::edit::CarEdit;
use steerloft_setup::setup::Setup;
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
    /// Why the cranks and links were not changed when that was asked for last.
    pub refused: Option<String>,
}

/// Why an edit cannot be made, in words; nothing if it can.
#[must_use]
pub fn edit_refused(setup: &Setup, edit: &CarEdit) -> Option<String> {
    let refused = setup.edited(edit).err();
    refused.map(|error| entries::in_words(&error))
}

/// A name that nothing in a list has: a word and a number.
fn fresh_name(word: &str, names: &[&str]) -> String {
    let numbered = (names.len() + 1..).map(|number| format!("{word} {number}"));
    numbered
        .filter(|name| !names.contains(&name.as_str()))
        .take(1)
        .collect()
}
