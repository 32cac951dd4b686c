//! The bench: the open document, its history, the cursor and the selection.

use std::path::PathBuf;

use steerloft_setup::adjustment::PointName;
use steerloft_setup::file::{self, FileError};
use steerloft_setup::history::History;
use steerloft_setup::setup::Setup;
use steerloft_solver::frame::Side;

use super::change::label;
use super::{Change, Cursor, Derived, Document};

/// Everything open on the bench.
#[derive(Debug)]
pub struct Bench {
    document: Document,
    history: History,
    /// The setup as it stood before the change that is being made.
    before: Option<Setup>,
    cursor: Cursor,
    selected: Option<(PointName, Side)>,
    derived: Derived,
}

impl Bench {
    /// A bench with a document open on it.
    #[must_use]
    pub fn new(document: Document) -> Self {
        let derived = Derived::new(&document, Cursor::STATIC);
        Self {
            document,
            history: History::new(),
            before: None,
            cursor: Cursor::STATIC,
            selected: None,
            derived,
        }
    }

    /// The open document.
    #[must_use]
    pub fn document(&self) -> &Document {
        &self.document
    }

    /// The open setup.
    #[must_use]
    pub fn setup(&self) -> &Setup {
        self.document.setup()
    }

    /// What follows from the setup and the cursor.
    #[must_use]
    pub fn derived(&self) -> &Derived {
        &self.derived
    }

    /// Where the steering and the suspension stand.
    #[must_use]
    pub fn cursor(&self) -> Cursor {
        self.cursor
    }

    /// The selected pivot.
    #[must_use]
    pub fn selected(&self) -> Option<(PointName, Side)> {
        self.selected
    }

    /// Selects a pivot, or none; whether that is news.
    pub fn select(&mut self, pivot: Option<(PointName, Side)>) -> bool {
        std::mem::replace(&mut self.selected, pivot) != pivot
    }

    /// Moves the cursor, within how far the car's parts go; whether it went anywhere.
    pub fn set_cursor(&mut self, cursor: Cursor) -> bool {
        let has_travel = self
            .derived
            .shown()
            .is_none_or(|shown| shown.assembly.has_travel());
        let cursor = cursor.within(&self.setup().car.ranges, has_travel);
        let moved = std::mem::replace(&mut self.cursor, cursor) != cursor;
        self.refresh();
        moved
    }

    /// Makes a change that goes on: the whole run of them up to [`Self::finish`] is one step of the history.
    ///
    /// A value that the parts do not allow is not taken; controls offer allowed values only. The answer is whether
    /// anything is different now.
    pub fn preview(&mut self, change: Change) -> bool {
        let mut setup = self.setup().clone();
        if change.apply(&mut setup).is_err() || setup == *self.setup() {
            return false;
        }
        if self.before.is_none() {
            self.before = Some(self.setup().clone());
        }
        self.document.replace(setup);
        self.refresh();
        true
    }

    /// Ends the change that goes on and keeps it; whether there was one.
    pub fn finish(&mut self) -> bool {
        let Some(before) = self.before.take() else {
            return false;
        };
        if before != *self.setup() {
            let after = self.document.setup();
            self.history.begin(label(&before, after), &before);
            self.history.commit(after);
        }
        true
    }

    /// Ends the change that goes on and takes it back; whether there was one.
    pub fn cancel(&mut self) -> bool {
        let Some(before) = self.before.take() else {
            return false;
        };
        self.document.replace(before);
        self.refresh();
        true
    }

    /// Makes a change as a step of its own.
    pub fn apply(&mut self, change: Change) {
        self.finish();
        self.preview(change);
        self.finish();
    }

    /// Name of the step that undo would take back.
    #[must_use]
    pub fn undo_label(&self) -> Option<&str> {
        self.history.undo_label()
    }

    /// Name of the step that redo would make again.
    #[must_use]
    pub fn redo_label(&self) -> Option<&str> {
        self.history.redo_label()
    }

    /// Takes the last step back.
    pub fn undo(&mut self) {
        self.finish();
        if let Some((setup, _)) = self.history.undo(self.document.setup()) {
            self.document.replace(setup);
            self.refresh();
        }
    }

    /// Makes the step again that was taken back last.
    pub fn redo(&mut self) {
        self.finish();
        if let Some((setup, _)) = self.history.redo(self.document.setup()) {
            self.document.replace(setup);
            self.refresh();
        }
    }

    /// Puts another document on the bench, with a history of its own.
    pub fn open(&mut self, document: Document) {
        *self = Self::new(document);
    }

    /// Writes the setup to a file and keeps it there from now on. On an error the old file and the unsaved work stay.
    pub fn save_to(&mut self, path: PathBuf) -> Result<(), FileError> {
        self.finish();
        file::write(&path, self.setup())?;
        self.document.mark_kept(path);
        Ok(())
    }

    fn refresh(&mut self) {
        self.derived.update(&self.document, self.cursor);
    }
}
