//! One open setup: its document, its history, its cursor and its selection.

use std::path::PathBuf;

use steerloft_setup::adjustment::PointName;
use steerloft_setup::file::{self, FileError, Stamp};
use steerloft_setup::history::History;
use steerloft_setup::setup::Setup;
use steerloft_solver::frame::Side;

use super::change::label;
use super::{Change, Cursor, Derived, Document};
use crate::units::Units;

/// Tells the setups that are or were open on a bench apart; none is given twice.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SetupId(pub(crate) u64);

impl std::fmt::Display for SetupId {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.0.fmt(f)
    }
}

/// A setup that is open on the bench, with all that belongs to it alone.
#[derive(Debug)]
pub struct OpenSetup {
    id: SetupId,
    document: Document,
    history: History,
    /// The setup as it stood before the change that is being made.
    before: Option<Setup>,
    cursor: Cursor,
    selected: Option<(PointName, Side)>,
    derived: Derived,
}

impl OpenSetup {
    pub(super) fn new(id: SetupId, document: Document) -> Self {
        let derived = Derived::new(&document, Cursor::STATIC);
        Self {
            id,
            document,
            history: History::new(),
            before: None,
            cursor: Cursor::STATIC,
            selected: None,
            derived,
        }
    }

    /// What tells it from the others.
    #[must_use]
    pub fn id(&self) -> SetupId {
        self.id
    }

    /// Its document.
    #[must_use]
    pub fn document(&self) -> &Document {
        &self.document
    }

    /// What follows from the setup and its cursor.
    #[must_use]
    pub fn derived(&self) -> &Derived {
        &self.derived
    }

    /// Where its steering and its suspension stand.
    #[must_use]
    pub fn cursor(&self) -> Cursor {
        self.cursor
    }

    /// Its selected pivot.
    #[must_use]
    pub fn selected(&self) -> Option<(PointName, Side)> {
        self.selected
    }

    /// Whether nothing has been done with it: it came from no file, and no step can be undone or done again.
    #[must_use]
    pub fn is_untouched(&self) -> bool {
        self.document.path().is_none() && self.is_as_opened()
    }

    /// Whether nothing has been done with it since it was put on the bench: no step can be undone or done again.
    #[must_use]
    pub fn is_as_opened(&self) -> bool {
        !self.document.is_changed()
            && self.before.is_none()
            && self.undo_label().is_none()
            && self.redo_label().is_none()
    }

    pub(super) fn undo_label(&self) -> Option<&str> {
        self.history.undo_label()
    }

    pub(super) fn redo_label(&self) -> Option<&str> {
        self.history.redo_label()
    }

    pub(super) fn select(&mut self, pivot: Option<(PointName, Side)>) -> bool {
        std::mem::replace(&mut self.selected, pivot) != pivot
    }

    pub(super) fn set_cursor(&mut self, cursor: Cursor) -> bool {
        let has_travel = self
            .derived
            .shown()
            .is_none_or(|shown| shown.assembly().has_travel());
        let cursor = cursor.within(&self.document.setup().car.ranges, has_travel);
        let moved = std::mem::replace(&mut self.cursor, cursor) != cursor;
        self.refresh();
        moved
    }

    pub(super) fn hold_input(&mut self, input: Option<f64>) {
        self.derived.hold_input(input);
    }

    pub(super) fn preview(&mut self, change: Change) -> bool {
        let mut setup = self.document.setup().clone();
        if change.apply(&mut setup).is_err() || setup == *self.document.setup() {
            return false;
        }
        if self.before.is_none() {
            self.before = Some(self.document.setup().clone());
        }
        self.put(setup);
        true
    }

    pub(super) fn finish(&mut self) -> bool {
        let Some(before) = self.before.take() else {
            return false;
        };
        if before != *self.document.setup() {
            let label = label(&before, self.document.setup(), Units::Millimetres);
            self.note_step(label, &before);
        }
        true
    }

    pub(super) fn cancel(&mut self) -> bool {
        let Some(before) = self.before.take() else {
            return false;
        };
        self.put(before);
        true
    }

    /// Puts another setup in the place of this one, as a step with a name.
    pub(super) fn replace(&mut self, setup: Setup, label: &str) {
        self.finish();
        let before = self.document.setup().clone();
        self.put(setup);
        self.note_step(label.to_owned(), &before);
    }

    pub(super) fn undo(&mut self) {
        self.finish();
        if let Some((setup, _)) = self.history.undo(self.document.setup()) {
            self.put(setup);
        }
    }

    pub(super) fn redo(&mut self) {
        self.finish();
        if let Some((setup, _)) = self.history.redo(self.document.setup()) {
            self.put(setup);
        }
    }

    /// Undoes or does again whatever lies between here and the place after so many steps.
    pub(super) fn jump(&mut self, place: usize) {
        self.finish();
        while self.history.done().len() > place {
            let Some((setup, _)) = self.history.undo(self.document.setup()) else {
                break;
            };
            self.document.replace(setup);
        }
        while self.history.done().len() < place {
            let Some((setup, _)) = self.history.redo(self.document.setup()) else {
                break;
            };
            self.document.replace(setup);
        }
        self.refresh();
    }

    pub(super) fn history(&self) -> &History {
        &self.history
    }

    pub(super) fn save_to(&mut self, path: PathBuf) -> Result<(), FileError> {
        self.finish();
        let text = file::to_text(self.document.setup());
        file::write_text(&path, &text)?;
        self.document.mark_kept(path, Stamp::of(text.as_bytes()));
        Ok(())
    }

    /// Takes over what the file holds now, as a step that can be undone.
    pub(super) fn take_file(&mut self) -> Result<(), FileError> {
        let Some(path) = self.document.path().map(PathBuf::from) else {
            return Ok(());
        };
        let (setup, stamp) = file::read_stamped(&path)?;
        self.replace(setup, "Take over the file");
        self.document.mark_kept(path, stamp);
        Ok(())
    }

    /// Goes on with what is on the bench, whatever the file holds now.
    pub(super) fn keep_bench(&mut self) {
        self.document.mark_adrift();
    }

    fn note_step(&mut self, label: String, before: &Setup) {
        self.history.begin(label, before);
        self.history.commit(self.document.setup());
    }

    fn put(&mut self, setup: Setup) {
        self.document.replace(setup);
        self.refresh();
    }

    fn refresh(&mut self) {
        self.cursor = self.cursor.within(&self.document.setup().car.ranges, true);
        self.derived.update(&self.document, self.cursor);
    }
}
