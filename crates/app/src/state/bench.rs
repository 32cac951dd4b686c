//! The bench: the open setups, which of them is worked on, and what it is compared with.

use std::path::{Path, PathBuf};

use steerloft_setup::adjustment::PointName;
use steerloft_setup::file::FileError;
use steerloft_setup::setup::Setup;
use steerloft_solver::frame::Side;

use super::{
    Change, Cursor, Derived, Document, InputUnit, Moment, OpenSetup, Origin, Reference, SetupId,
    Shown,
};

/// Everything open on the bench. There is always one setup at least.
#[derive(Debug)]
pub struct Bench {
    open: Vec<OpenSetup>,
    current: usize,
    next_id: u64,
    reference: Option<Reference>,
}

impl Bench {
    /// A bench with a document open on it.
    #[must_use]
    pub fn new(document: Document) -> Self {
        Self {
            open: vec![OpenSetup::new(SetupId(0), document)],
            current: 0,
            next_id: 1,
            reference: None,
        }
    }

    /// The open setups, in the order in which they are listed.
    #[must_use]
    pub fn open_setups(&self) -> &[OpenSetup] {
        &self.open
    }

    /// The open setup that is worked on.
    #[must_use]
    pub fn current(&self) -> &OpenSetup {
        &self.open[self.current]
    }

    /// An open setup.
    #[must_use]
    pub fn get(&self, id: SetupId) -> Option<&OpenSetup> {
        self.open.iter().find(|open| open.id() == id)
    }

    /// The open setup that is kept in a file, however the path is written.
    #[must_use]
    pub fn in_file(&self, path: &Path) -> Option<SetupId> {
        let wanted = one_path(path);
        let mut open = self.open.iter();
        open.find(|open| open.document().path().map(one_path).as_ref() == Some(&wanted))
            .map(OpenSetup::id)
    }

    /// The document that is worked on.
    #[must_use]
    pub fn document(&self) -> &Document {
        self.current().document()
    }

    /// The setup that is worked on.
    #[must_use]
    pub fn setup(&self) -> &Setup {
        self.document().setup()
    }

    /// The setup that is worked on, as it stands.
    #[must_use]
    pub fn moment(&self) -> Moment {
        Moment {
            setup: self.current().id(),
            revision: self.document().revision(),
        }
    }

    /// What follows from the setup and the cursor.
    #[must_use]
    pub fn derived(&self) -> &Derived {
        self.current().derived()
    }

    /// Where the steering and the suspension stand.
    #[must_use]
    pub fn cursor(&self) -> Cursor {
        self.current().cursor()
    }

    /// The selected pivot.
    #[must_use]
    pub fn selected(&self) -> Option<(PointName, Side)> {
        self.current().selected()
    }

    /// Selects a pivot, or none; whether that is news.
    pub fn select(&mut self, pivot: Option<(PointName, Side)>) -> bool {
        self.current_mut().select(pivot)
    }

    /// Moves the cursor, within how far the car's parts go; whether it went anywhere.
    pub fn set_cursor(&mut self, cursor: Cursor) -> bool {
        let moved = self.current_mut().set_cursor(cursor);
        self.refresh_reference();
        moved
    }

    /// Holds a steering input in the curve over the travel with the wheels turned, in the unit of the car's drive; half of
    /// what the car steers if none is given.
    pub fn hold_input(&mut self, input: Option<f64>) {
        self.current_mut().hold_input(input);
        if let Some(reference) = &mut self.reference {
            reference.hold_input(input);
        }
    }

    /// The reference as it can be drawn and read off, if there is one.
    #[must_use]
    pub fn compared(&self) -> Option<&Shown> {
        self.reference()?.shown()
    }

    /// Makes a change that goes on: the whole run of them up to [`Self::finish`] is one step of the history.
    ///
    /// A value that the parts do not allow is not taken; controls offer allowed values only. The answer is whether
    /// anything is different now.
    pub fn preview(&mut self, change: Change) -> bool {
        self.current_mut().preview(change)
    }

    /// Ends the change that goes on and keeps it; whether there was one.
    pub fn finish(&mut self) -> bool {
        self.current_mut().finish()
    }

    /// Ends the change that goes on and takes it back; whether there was one.
    pub fn cancel(&mut self) -> bool {
        self.current_mut().cancel()
    }

    /// Makes a change as a step of its own.
    pub fn apply(&mut self, change: Change) {
        self.finish();
        self.preview(change);
        self.finish();
    }

    /// Puts another setup in the place of the one that is worked on, as a step with a name; whether it is another.
    pub fn adopt(&mut self, setup: Setup, name: &str) -> bool {
        self.finish();
        let differs = setup != *self.setup();
        if differs {
            self.current_mut().replace(setup, name);
            self.refresh_reference();
        }
        differs
    }

    /// Name of the step that undo would take back.
    #[must_use]
    pub fn undo_label(&self) -> Option<&str> {
        self.current().undo_label()
    }

    /// Name of the step that redo would make again.
    #[must_use]
    pub fn redo_label(&self) -> Option<&str> {
        self.current().redo_label()
    }

    /// Takes the last step back.
    pub fn undo(&mut self) {
        self.current_mut().undo();
    }

    /// Makes the step again that was taken back last.
    pub fn redo(&mut self) {
        self.current_mut().redo();
    }

    /// Puts one more document on the bench, with a history of its own, and works on it.
    pub fn open(&mut self, document: Document) -> SetupId {
        let id = self.add(document);
        self.switch_to(id);
        id
    }

    /// Puts one more document on the bench and goes on with the current one.
    pub fn add(&mut self, document: Document) -> SetupId {
        let id = SetupId(self.next_id);
        self.next_id += 1;
        self.open.push(OpenSetup::new(id, document));
        id
    }

    /// Works on an open setup; whether that is another one than before.
    pub fn switch_to(&mut self, id: SetupId) -> bool {
        let Some(index) = self.open.iter().position(|open| open.id() == id) else {
            return false;
        };
        self.finish();
        let switched = std::mem::replace(&mut self.current, index) != index;
        self.refresh_reference();
        switched
    }

    /// The open setup so many places after the current one, going round at the ends.
    #[must_use]
    pub fn neighbour(&self, places: isize) -> SetupId {
        let count = self.open.len();
        let step = places.unsigned_abs() % count;
        let index = if places < 0 {
            self.current + count - step
        } else {
            self.current + step
        };
        self.open[index % count].id()
    }

    /// Takes a setup off the bench, with whatever was changed in it; the last one stays. Of a reference that it was, the last
    /// state is kept. Whether it was taken off.
    pub fn close(&mut self, id: SetupId) -> bool {
        let Some(index) = self.open.iter().position(|open| open.id() == id) else {
            return false;
        };
        if self.open.len() == 1 {
            return false;
        }
        self.finish();
        if self.is_reference(id) {
            let document = self.open[index].document().clone();
            self.reference = Some(Reference::new(Origin::Moment(id), document));
        }
        self.open.remove(index);
        if self.current > index || self.current == self.open.len() {
            self.current -= 1;
        }
        self.refresh_reference();
        true
    }

    /// Writes an open setup to a file and keeps it there from now on. On an error the old file and the unsaved work stay.
    pub fn save_to(&mut self, id: SetupId, path: PathBuf) -> Result<(), FileError> {
        self.get_mut(id).map_or(Ok(()), |open| open.save_to(path))
    }

    /// Takes over what the file of an open setup holds now, as a step that can be undone.
    pub fn take_file(&mut self, id: SetupId) -> Result<(), FileError> {
        let taken = self.get_mut(id).map_or(Ok(()), OpenSetup::take_file);
        self.refresh_reference();
        taken
    }

    /// Goes on with what is on the bench of an open setup, whatever its file holds now; it counts as not saved.
    pub fn keep_bench(&mut self, id: SetupId) {
        if let Some(open) = self.get_mut(id) {
            open.keep_bench();
        }
    }

    /// What the current setup is compared with, posed where the current one is; none also while the reference itself is worked
    /// on.
    #[must_use]
    pub fn reference(&self) -> Option<&Reference> {
        let reference = self.reference.as_ref()?;
        (reference.origin() != Origin::Open(self.current().id())).then_some(reference)
    }

    /// Whether there is a reference, be it the current setup itself.
    #[must_use]
    pub fn has_reference(&self) -> bool {
        self.reference.is_some()
    }

    /// Whether an open setup is the reference.
    #[must_use]
    pub fn is_reference(&self, id: SetupId) -> bool {
        let reference = self.reference.as_ref();
        reference.is_some_and(|reference| reference.origin() == Origin::Open(id))
    }

    /// Keeps the current setup as it stands as the reference.
    pub fn keep_reference(&mut self) {
        self.finish();
        let moment = self.document().clone();
        let origin = Origin::Moment(self.current().id());
        self.refer_to(Reference::new(origin, moment));
    }

    /// Makes a setup that is not open the reference, beside the current one.
    pub fn refer_to_setup(&mut self, setup: Setup) {
        self.finish();
        let origin = Origin::Moment(self.current().id());
        self.refer_to(Reference::new(origin, Document::unnamed(setup)));
    }

    /// Makes an open setup the reference.
    pub fn set_reference(&mut self, id: SetupId) {
        if let Some(open) = self.get(id) {
            let document = open.document().clone();
            self.refer_to(Reference::new(Origin::Open(id), document));
        }
    }

    /// Compares with nothing.
    pub fn clear_reference(&mut self) {
        self.reference = None;
    }

    /// Works on the reference and compares it with what was worked on.
    ///
    /// With an open setup as the reference, the two change places. With a kept moment of the current setup, the current setup
    /// goes back to that moment, as a step that can be undone. With a kept moment of another one, that moment is put on the
    /// bench as a setup in no file. Whether there was anything to swap with.
    pub fn swap_with_reference(&mut self) -> bool {
        let Some(reference) = self.reference() else {
            return false;
        };
        let (origin, current) = (reference.origin(), self.current().id());
        match origin {
            Origin::Open(id) => {
                self.switch_to(id);
                self.set_reference(current);
            }
            Origin::Moment(id) if id == current => {
                let moment = reference.setup().clone();
                self.keep_reference();
                self.current_mut().replace(moment, "Swap with reference");
                self.refresh_reference();
            }
            Origin::Moment(_) => {
                let moment = Document::unnamed(reference.setup().clone());
                self.open(moment);
                self.set_reference(current);
            }
        }
        true
    }

    pub(super) fn current_mut(&mut self) -> &mut OpenSetup {
        &mut self.open[self.current]
    }

    fn get_mut(&mut self, id: SetupId) -> Option<&mut OpenSetup> {
        self.open.iter_mut().find(|open| open.id() == id)
    }

    fn refer_to(&mut self, reference: Reference) {
        self.reference = Some(reference);
        self.refresh_reference();
    }

    /// Lets the reference follow the open setup it is, and the current setup's cursor.
    fn refresh_reference(&mut self) {
        let current = &self.open[self.current];
        let Some(reference) = &mut self.reference else {
            return;
        };
        if let Origin::Open(id) = reference.origin()
            && let Some(open) = self.open.iter().find(|open| open.id() == id)
        {
            reference.follow(open.document());
        }
        let unit = InputUnit::of(&current.document().setup().car);
        reference.pose(current.cursor(), unit);
    }
}

/// The one path of a file: absolute, without symbolic links. Of a file that is not there, as much of it as can be told.
fn one_path(path: &Path) -> PathBuf {
    std::fs::canonicalize(path)
        .or_else(|_| std::path::absolute(path))
        .unwrap_or_else(|_| path.to_owned())
}
