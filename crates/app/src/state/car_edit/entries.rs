//! What is typed in the fields of the car's description, and why it is not taken.

use std::collections::HashMap;

use steerloft_setup::edit::{CarEdit, EditError};
use steerloft_setup::setup::Setup;

use super::Field;

/// The fields whose text is not simply the car's value: being typed, or refused.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Entries {
    typed: HashMap<Field, Typed>,
}

#[derive(Debug, Clone, PartialEq)]
struct Typed {
    text: String,
    error: Option<String>,
}

impl Entries {
    /// The text to show in a field instead of the car's value.
    #[must_use]
    pub fn text(&self, field: Field) -> Option<&str> {
        self.typed.get(&field).map(|typed| typed.text.as_str())
    }

    /// Why what stands in a field is not taken, in words.
    #[must_use]
    pub fn error(&self, field: Field) -> Option<&str> {
        self.typed.get(&field)?.error.as_deref()
    }

    /// Takes what has been typed in a field so far; the edit it asks for, if it can be made.
    ///
    /// `edit` turns a text into an edit, or says why it is none.
    pub fn take(
        &mut self,
        field: Field,
        text: String,
        setup: &Setup,
        edit: impl FnOnce(&str) -> Result<CarEdit, String>,
    ) -> Option<CarEdit> {
        let answer = edit(&text).and_then(|edit| match setup.edited(&edit) {
            Ok(_) => Ok(edit),
            Err(error) => Err(in_words(&error)),
        });
        let (edit, error) = match answer {
            Ok(edit) => (Some(edit), None),
            Err(error) => (None, Some(error)),
        };
        self.typed.insert(field, Typed { text, error });
        edit
    }

    /// The field is left: what was taken is shown as the car has it, what was not stays with its error.
    pub fn leave(&mut self, field: Field) {
        if self.error(field).is_none() {
            self.typed.remove(&field);
        }
    }

    /// Shows the car's value again in a field.
    pub fn reset(&mut self, field: Field) {
        self.typed.remove(&field);
    }

    /// Shows the car's values again in the fields of lists, because a list is another now.
    pub fn reset_lists(&mut self) {
        self.typed.retain(|field, _| !field.is_of_list());
    }
}

/// An error without the place in the file, which the field says.
pub(super) fn in_words(error: &EditError) -> String {
    match error {
        EditError::Check(fault) => format!("{}; {}", fault.wrong, fault.right),
        other => other.to_string(),
    }
}
