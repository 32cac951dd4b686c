//! Documents: opening, saving, closing, and the questions that go with it.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use eframe::egui::{Context, ViewportCommand};
use steerloft_setup::car::Car;
use steerloft_setup::edit::{CarEdit, new_car};
use steerloft_setup::supplied::SUPPLIED;

use super::{Leave, Overwrite, Steerloft};
use crate::dialogs::{FileAnswer, FileRequest};
use crate::state::{CarEditing, Change, Cursor, Document, PrintChoices, SetupId, Subject};
use crate::ui::car::new_car::NewCar;
use crate::ui::{GuardAnswer, car_change, messages::Message};

/// Most setups open at a time.
const MOST_OPEN: usize = 24;

/// What an open file dialog is for.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Asked {
    Open,
    OpenReadings,
    SaveReadings,
    OpenReference,
    Save { id: SetupId, then: Option<Leave> },
    Picture(Subject),
    Sheet(PrintChoices),
}

/// A question about the changes of a setup that is to be left.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Guard {
    pub(super) id: SetupId,
    leave: Leave,
}

impl Steerloft {
    /// Leaves open setups, after asking about unsaved changes of each.
    pub(super) fn leave(&mut self, leave: Leave, ctx: &Context) {
        self.bench.finish();
        if let Some(id) = leave.unsaved(&self.bench) {
            self.switch_to(id);
            self.guard = Some(Guard { id, leave });
            return;
        }
        match leave {
            Leave::Close(id) => self.close_setup(id),
            Leave::Quit { .. } => {
                self.may_close = true;
                self.let_all_go();
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
        }
    }

    pub(super) fn answer_guard(
        &mut self,
        answer: GuardAnswer,
        ctx: &Context,
        window: &eframe::Frame,
    ) {
        let Some(Guard { id, mut leave }) = self.guard.take() else {
            return;
        };
        match answer {
            GuardAnswer::Save => self.save(id, Some(leave), ctx, window),
            GuardAnswer::Discard if leave == Leave::Close(id) => self.close_setup(id),
            GuardAnswer::Discard => {
                leave.let_go(id);
                self.leave(leave, ctx);
            }
            GuardAnswer::Cancel => {}
        }
    }

    /// Takes a setup off the bench; in the place of the last one comes a supplied car.
    fn close_setup(&mut self, id: SetupId) {
        if self.bench.open_setups().len() == 1 {
            let new = self.bench.open(Document::unnamed(SUPPLIED[0].setup()));
            self.placeholder = Some(new);
        }
        self.bench.close(id);
        self.look_anew();
    }

    /// Works on another open setup.
    pub(super) fn switch_to(&mut self, id: SetupId) {
        let car = self.bench.setup().car.clone();
        if self.bench.switch_to(id) {
            self.turned_to_another(&car);
        }
    }

    /// Works on the reference and compares it with what was worked on.
    pub(super) fn swap_with_reference(&mut self) {
        let car = self.bench.setup().car.clone();
        if self.bench.swap_with_reference() {
            self.turned_to_another(&car);
        }
    }

    /// Forgets what belonged to the setup before; the views stay where they are if the car is the same.
    fn turned_to_another(&mut self, before: &Car) {
        self.view.views.let_go();
        self.view.begin_anew();
        if self.bench.setup().car != *before {
            self.view.views.fit();
        }
    }

    /// Shows what is on the bench from the beginning.
    fn look_anew(&mut self) {
        self.view.views.let_go();
        self.view.views.fit();
        self.view.begin_anew();
    }

    /// A new setup of the supplied car at this place in the list.
    pub(super) fn new_from(&mut self, index: usize) {
        if let Some(car) = SUPPLIED.get(index) {
            self.put_on_bench(Document::unnamed(car.setup()));
        }
    }

    /// A new setup made from the current one, which is given an identity so that it can be remembered.
    pub(super) fn new_from_current(&mut self) {
        self.bench.finish();
        if self.is_full() {
            return;
        }
        let mut parent = self.bench.setup().clone();
        parent.give_id();
        let child = parent.child(&next_name(&parent.record.name));
        self.bench.apply(Change::Record(Box::new(parent.record)));
        self.put_on_bench(Document::unnamed(child));
    }

    /// Puts a new car on the bench, to be described.
    pub(super) fn create_car(&mut self, kinds: NewCar) {
        self.page = None;
        let setup = new_car(kinds.suspension, kinds.drive);
        if self.put_on_bench(Document::unnamed(setup)) {
            self.view.car_editing = Some(CarEditing::default());
        }
    }

    /// Makes the car that is worked on one of other kinds, says what is to be measured now, and goes on describing it.
    pub(super) fn change_kinds(&mut self, NewCar { suspension, drive }: NewCar) {
        self.page = None;
        self.bench.finish();
        if let Ok(other) = self.bench.setup().with_kinds(suspension, drive) {
            self.bench
                .apply(car_change(CarEdit::Kinds { suspension, drive }));
            self.bench.select(None);
            self.bench.set_cursor(Cursor::STATIC);
            self.look_anew();
            self.view.car_editing = Some(CarEditing::default());
            self.message = Some(Message::other_kind(&other));
        }
    }

    /// Puts a document on the bench beside the others, and works on it; whether there was room.
    pub(super) fn put_on_bench(&mut self, document: Document) -> bool {
        if self.is_full() {
            return false;
        }
        self.bench.open(document);
        self.clear_placeholder();
        self.look_anew();
        self.message = None;
        true
    }

    /// Takes away the setup that the program put on the bench itself, if nothing was done with it.
    fn clear_placeholder(&mut self) {
        let Some(id) = self.placeholder.take() else {
            return;
        };
        let open = self.bench.get(id);
        if open.is_some_and(crate::state::OpenSetup::is_untouched) && !self.bench.is_reference(id) {
            self.bench.close(id);
        }
    }

    /// Whether no further setup can be opened, which is said then.
    fn is_full(&mut self) -> bool {
        let full = self.bench.open_setups().len() >= MOST_OPEN;
        if full {
            self.message = Some(Message::bench_full(MOST_OPEN));
        }
        full
    }

    /// Opens a file, or goes to it if it is open.
    pub(super) fn open_file(&mut self, path: &Path) {
        if let Some(id) = self.bench.in_file(path) {
            self.switch_to(id);
            return;
        }
        match Document::read(path) {
            Ok(document) => {
                if self.put_on_bench(document) {
                    self.note_use(path);
                }
            }
            Err(error) => self.message = Some(Message::not_opened(&error)),
        }
    }

    /// Opens files behind the setup that is worked on, which stays in front; what stands on the strip of messages stays too.
    /// Returns what is to be told of those that were not opened, which the strip tells too.
    pub fn open_behind(&mut self, files: &[PathBuf]) -> Vec<Message> {
        let front = self.bench.current().id();
        let before = self.message.take();
        let mut not_opened = Vec::new();
        for file in files {
            self.open_file(file);
            not_opened.extend(self.message.take());
        }
        if self.bench.get(front).is_some() {
            self.switch_to(front);
        }
        let told = before.into_iter().chain(not_opened.iter().cloned());
        self.message = Message::together(told.collect());
        not_opened
    }

    /// Opens a file beside the current setup and makes it the reference.
    fn open_reference(&mut self, path: &Path) {
        if let Some(id) = self.bench.in_file(path) {
            self.bench.set_reference(id);
            return;
        }
        match Document::read(path) {
            Ok(document) => {
                if !self.is_full() {
                    let id = self.bench.add(document);
                    self.bench.set_reference(id);
                    self.message = None;
                    self.note_use(path);
                }
            }
            Err(error) => self.message = Some(Message::not_opened(&error)),
        }
    }

    pub(super) fn ask_what_to_open(&mut self, asked: Asked, ctx: &Context, window: &eframe::Frame) {
        let folder = self.folder();
        self.ask(asked, FileRequest::Open { folder }, ctx, window);
    }

    /// Saves a setup to its file, or asks where to.
    pub(super) fn save(
        &mut self,
        id: SetupId,
        then: Option<Leave>,
        ctx: &Context,
        window: &eframe::Frame,
    ) {
        let path = self.bench.get(id).and_then(|open| open.document().path());
        match path.map(Path::to_owned) {
            Some(_) if self.would_overwrite(id) => self.overwrite = Some(Overwrite { id, then }),
            Some(path) => self.save_to(id, &path, then, ctx),
            None => self.ask_where_to_save(id, then, ctx, window),
        }
    }

    pub(super) fn ask_where_to_save(
        &mut self,
        id: SetupId,
        then: Option<Leave>,
        ctx: &Context,
        window: &eframe::Frame,
    ) {
        let Some(open) = self.bench.get(id) else {
            return;
        };
        let request = FileRequest::Save {
            folder: self.folder(),
            name: open.document().suggested_file_name(),
        };
        self.ask(Asked::Save { id, then }, request, ctx, window);
    }

    /// Saves a setup to the file that was chosen for it, unless another open one is kept there.
    fn save_to_chosen(&mut self, id: SetupId, path: &Path, then: Option<Leave>, ctx: &Context) {
        let holder = self.bench.in_file(path).filter(|holder| *holder != id);
        match holder.and_then(|holder| self.bench.get(holder)) {
            Some(open) => {
                let name = &open.document().setup().record.name;
                self.message = Some(Message::file_taken(path, name));
            }
            None => self.save_to(id, path, then, ctx),
        }
    }

    pub(super) fn save_to(&mut self, id: SetupId, path: &Path, then: Option<Leave>, ctx: &Context) {
        match self.bench.save_to(id, path.to_owned()) {
            Ok(()) => {
                self.message = None;
                self.changed_files.retain(|(other, _)| *other != id);
                self.note_use(path);
                if let Some(leave) = then {
                    self.leave(leave, ctx);
                }
            }
            Err(error) => self.message = Some(Message::not_saved(&error)),
        }
    }

    pub(super) fn ask(
        &mut self,
        asked: Asked,
        request: FileRequest,
        ctx: &Context,
        window: &eframe::Frame,
    ) {
        if self.dialogs.is_open() {
            return;
        }
        self.asked = Some(asked);
        let ctx = ctx.clone();
        self.dialogs
            .ask(request, window, Arc::new(move || ctx.request_repaint()));
    }

    pub(super) fn answered(&mut self, answer: FileAnswer, ctx: &Context) {
        let asked = self.asked.take();
        match (asked, answer) {
            (Some(Asked::Open), FileAnswer::Chosen(path)) => self.open_file(&path),
            (Some(Asked::OpenReadings), FileAnswer::Chosen(path)) => self.read_readings(&path),
            (Some(Asked::SaveReadings), FileAnswer::Chosen(path)) => self.write_readings(&path),
            (Some(Asked::OpenReference), FileAnswer::Chosen(path)) => self.open_reference(&path),
            (Some(Asked::Save { id, then }), FileAnswer::Chosen(path)) => {
                self.save_to_chosen(id, &path, then, ctx);
            }
            (Some(Asked::Picture(subject)), FileAnswer::Chosen(path)) => {
                self.write_picture(subject, &path);
            }
            (Some(Asked::Sheet(choices)), FileAnswer::Chosen(path)) => {
                self.write_sheet(choices, &path);
            }
            (Some(_), FileAnswer::Unavailable) => self.message = Some(Message::no_dialog()),
            (Some(_), FileAnswer::Closed) | (None, _) => {}
        }
    }

    /// The folder of the current setup's file.
    pub(super) fn folder(&self) -> Option<PathBuf> {
        let folder = self.bench.document().path()?.parent()?;
        (!folder.as_os_str().is_empty()).then(|| folder.to_owned())
    }
}

/// A name for what is made from a setup: its number one higher, or a second of its kind.
fn next_name(name: &str) -> String {
    let name = name.trim();
    let stem = name.trim_end_matches(|c: char| c.is_ascii_digit());
    match name[stem.len()..].parse::<u32>() {
        Ok(number) => format!("{stem}{}", number.saturating_add(1)),
        Err(_) if name.is_empty() => String::new(),
        Err(_) => format!("{name} 2"),
    }
}

#[cfg(test)]
mod tests {
    use super::next_name;

    #[test]
    fn names_count_on() {
        assert_eq!(next_name("Base setup"), "Base setup 2");
        assert_eq!(next_name("Base setup 2"), "Base setup 3");
        assert_eq!(next_name("Heat 09"), "Heat 10");
        assert_eq!(next_name(" "), "");
    }
}
