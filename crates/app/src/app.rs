//! The application: state, window and file dialogs joined.

mod leave;

use std::path::{Path, PathBuf};
use std::sync::Arc;

use eframe::egui::{self, ViewportCommand};
use steerloft_setup::supplied::SUPPLIED;

use crate::commands::Command;
use crate::dialogs::{FileAnswer, FileDialogs, FileRequest};
use crate::state::{Bench, Cursor, Document};
use crate::theme::{self, Metrics, ThemeChoice};
use crate::ui::{self, Column, GuardAnswer, Intent, Intents, ViewState, messages::Message};

use leave::Leave;

/// The running application.
pub struct Steerloft {
    bench: Bench,
    view: ViewState,
    dialogs: Box<dyn FileDialogs>,
    /// What the open file dialog is for.
    asked: Option<Asked>,
    /// What waits for an answer about unsaved changes.
    leaving: Option<Leave>,
    /// Whether the window may close although there are unsaved changes.
    may_close: bool,
    message: Option<Message>,
    about: bool,
    theme: ThemeChoice,
    title: String,
}

/// What an open file dialog is for.
#[derive(Debug, Clone, PartialEq)]
enum Asked {
    Open,
    Save { then: Option<Leave> },
}

impl Steerloft {
    /// An application with a document open, asking for files through the given dialogs.
    #[must_use]
    pub fn new(
        ctx: &egui::Context,
        document: Document,
        dialogs: Box<dyn FileDialogs>,
        theme: ThemeChoice,
    ) -> Self {
        theme::install(ctx);
        ctx.set_theme(theme.preference());
        ctx.options_mut(|options| options.input_options.max_click_dist = Metrics::DRAG_THRESHOLD);
        Self {
            bench: Bench::new(document),
            view: ViewState::default(),
            dialogs,
            asked: None,
            leaving: None,
            may_close: false,
            message: None,
            about: false,
            theme,
            title: String::new(),
        }
    }

    /// The bench.
    #[must_use]
    pub fn bench(&self) -> &Bench {
        &self.bench
    }

    /// The bench, to set up a state without the window.
    pub fn bench_mut(&mut self) -> &mut Bench {
        &mut self.bench
    }

    /// The message at the top of the window, if there is one.
    #[must_use]
    pub fn message(&self) -> Option<&Message> {
        self.message.as_ref()
    }

    /// Shows a message at the top of the window.
    pub fn set_message(&mut self, message: Message) {
        self.message = Some(message);
    }

    /// Whether the question about unsaved changes is open.
    #[must_use]
    pub fn is_asking_to_save(&self) -> bool {
        self.leaving.is_some()
    }

    /// What the window remembers beside the document.
    #[must_use]
    pub fn view(&self) -> &ViewState {
        &self.view
    }

    /// What the window remembers beside the document, to set up a state without the window.
    pub fn view_mut(&mut self) -> &mut ViewState {
        &mut self.view
    }

    /// Carries out a command.
    pub fn command(&mut self, command: Command, ctx: &egui::Context, window: &eframe::Frame) {
        match command {
            Command::New(index) => self.leave(Leave::New(index), ctx, window),
            Command::Open => self.leave(Leave::ChooseFile, ctx, window),
            Command::Quit => self.leave(Leave::Quit, ctx, window),
            Command::Save => self.save(None, ctx, window),
            Command::SaveAs => self.ask_where_to_save(None, ctx, window),
            Command::Undo => self.bench.undo(),
            Command::Redo => self.bench.redo(),
            Command::FitViews => self.view.views.fit(),
            Command::FitCurves => self.view.curves.fitted = !self.view.curves.fitted,
            Command::Column(column) => self.view.column = column,
            Command::Curve(kind) => {
                self.view.curves.toggle(kind);
                self.view.column = Column::Curves;
            }
            Command::SideView => self.view.views.toggle_side(),
            Command::ResetCursor => {
                self.bench.set_cursor(Cursor::STATIC);
            }
            Command::Theme(choice) => {
                self.theme = choice;
                ctx.set_theme(choice.preference());
            }
            Command::About => self.about = true,
        }
    }

    /// Leaves the open document for something else, after asking about unsaved changes.
    fn leave(&mut self, leave: Leave, ctx: &egui::Context, window: &eframe::Frame) {
        self.bench.finish();
        if self.bench.document().is_changed() {
            self.leaving = Some(leave);
        } else {
            self.go(leave, ctx, window);
        }
    }

    fn go(&mut self, leave: Leave, ctx: &egui::Context, window: &eframe::Frame) {
        match leave {
            Leave::New(index) => {
                if let Some(car) = SUPPLIED.get(index) {
                    self.put_on_bench(Document::unnamed(car.setup()));
                }
            }
            Leave::ChooseFile => {
                let folder = self.folder();
                self.ask(Asked::Open, FileRequest::Open { folder }, ctx, window);
            }
            Leave::OpenFile(path) => self.open_file(&path),
            Leave::Quit => {
                self.may_close = true;
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
        }
    }

    fn put_on_bench(&mut self, document: Document) {
        self.bench.open(document);
        self.view.views.let_go();
        self.view.views.fit();
        self.view.last_adjustment = None;
        self.message = None;
    }

    fn open_file(&mut self, path: &Path) {
        match Document::read(path) {
            Ok(document) => self.put_on_bench(document),
            Err(error) => self.message = Some(Message::not_opened(&error)),
        }
    }

    fn save(&mut self, then: Option<Leave>, ctx: &egui::Context, window: &eframe::Frame) {
        match self.bench.document().path() {
            Some(path) => {
                let path = path.to_owned();
                self.save_to(path, then, ctx, window);
            }
            None => self.ask_where_to_save(then, ctx, window),
        }
    }

    fn ask_where_to_save(
        &mut self,
        then: Option<Leave>,
        ctx: &egui::Context,
        window: &eframe::Frame,
    ) {
        let request = FileRequest::Save {
            folder: self.folder(),
            name: self.bench.document().suggested_file_name(),
        };
        self.ask(Asked::Save { then }, request, ctx, window);
    }

    fn save_to(
        &mut self,
        path: PathBuf,
        then: Option<Leave>,
        ctx: &egui::Context,
        window: &eframe::Frame,
    ) {
        match self.bench.save_to(path) {
            Ok(()) => {
                self.message = None;
                if let Some(leave) = then {
                    self.go(leave, ctx, window);
                }
            }
            Err(error) => self.message = Some(Message::not_saved(&error)),
        }
    }

    fn ask(
        &mut self,
        asked: Asked,
        request: FileRequest,
        ctx: &egui::Context,
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

    fn answered(&mut self, answer: FileAnswer, ctx: &egui::Context, window: &eframe::Frame) {
        let asked = self.asked.take();
        match (asked, answer) {
            (Some(Asked::Open), FileAnswer::Chosen(path)) => self.open_file(&path),
            (Some(Asked::Save { then }), FileAnswer::Chosen(path)) => {
                self.save_to(path, then, ctx, window);
            }
            (Some(_), FileAnswer::Unavailable) => self.message = Some(Message::no_dialog()),
            (Some(_), FileAnswer::Closed) | (None, _) => {}
        }
    }

    /// The folder of the open file.
    fn folder(&self) -> Option<PathBuf> {
        let folder = self.bench.document().path()?.parent()?;
        (!folder.as_os_str().is_empty()).then(|| folder.to_owned())
    }

    /// Carries out what the user wants; whether that changed anything that is shown.
    fn carry_out(&mut self, intent: Intent, ctx: &egui::Context, window: &eframe::Frame) -> bool {
        match intent {
            Intent::Preview(change) => return self.bench.preview(change),
            Intent::Finish => return self.bench.finish(),
            Intent::Cancel => return self.bench.cancel(),
            Intent::Cursor(cursor) => return self.bench.set_cursor(cursor),
            Intent::Select(pivot) => return self.bench.select(pivot),
            Intent::Command(command) => self.command(command, ctx, window),
            Intent::DismissMessage => self.message = None,
            Intent::CloseAbout => self.about = false,
            Intent::Guard(answer) => self.answer_guard(answer, ctx, window),
        }
        true
    }

    fn answer_guard(&mut self, answer: GuardAnswer, ctx: &egui::Context, window: &eframe::Frame) {
        let Some(leave) = self.leaving.take() else {
            return;
        };
        match answer {
            GuardAnswer::Save => self.save(Some(leave), ctx, window),
            GuardAnswer::Discard => self.go(leave, ctx, window),
            GuardAnswer::Cancel => {}
        }
    }

    /// Takes what came from outside the window's own controls: keys, answers of dialogs, dropped files, a wish to close.
    fn take_requests(
        &mut self,
        ctx: &egui::Context,
        window: &eframe::Frame,
        intents: &mut Intents,
    ) {
        if let Some(answer) = self.dialogs.answer() {
            self.answered(answer, ctx, window);
        }
        if ctx.input(|input| input.viewport().close_requested()) && !self.may_close {
            self.bench.finish();
            if self.bench.document().is_changed() {
                ctx.send_viewport_cmd(ViewportCommand::CancelClose);
                self.leaving = Some(Leave::Quit);
            }
        }
        if self.is_modal() {
            return;
        }
        if let Some(path) = ui::drop::dropped_file(ctx) {
            self.leave(Leave::OpenFile(path), ctx, window);
        }
        ui::menu::take_keys(ctx, intents);
    }

    /// Whether a question must be answered before anything else.
    fn is_modal(&self) -> bool {
        self.leaving.is_some() || self.about
    }

    fn update_title(&mut self, ctx: &egui::Context) {
        let document = self.bench.document();
        let mark = if document.is_changed() {
            " (changed)"
        } else {
            ""
        };
        let title = format!("{}{mark} \u{2013} Steerloft", document.name());
        if title != self.title {
            ctx.send_viewport_cmd(ViewportCommand::Title(title.clone()));
            self.title = title;
        }
    }
}

impl eframe::App for Steerloft {
    fn ui(&mut self, ui: &mut egui::Ui, window: &mut eframe::Frame) {
        let ctx = ui.ctx().clone();
        let mut intents = Intents::default();
        self.take_requests(&ctx, window, &mut intents);
        ui::menu::show(ui, &self.bench, &self.view, self.theme, &mut intents);
        if let Some(message) = &self.message {
            ui::messages::message_bar(ui, message, &mut intents);
        }
        ui::show(ui, &self.bench, &mut self.view, &mut intents);
        if self.leaving.is_some() {
            ui::messages::guard(&ctx, &self.bench.document().name(), &mut intents);
        }
        if self.about {
            ui::messages::about(&ctx, &mut intents);
        }
        ui::drop::overlay(&ctx);
        let mut changed = false;
        for intent in intents {
            changed |= self.carry_out(intent, &ctx, window);
        }
        if changed {
            // The controls drawn in this frame show the state before it.
            ctx.request_repaint();
        }
        self.update_title(&ctx);
    }

    fn clear_color(&self, visuals: &egui::Visuals) -> [f32; 4] {
        visuals.panel_fill.to_normalized_gamma_f32()
    }
}
