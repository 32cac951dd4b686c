//! The application: state, window and file dialogs joined.

mod disk;
mod documents;
mod leave;
mod paper;
mod readings;
mod remember;

use eframe::egui::{self, ViewportCommand};
use steerloft_setup::file::Standing;

use crate::commands::Command;
use crate::dialogs::FileDialogs;
use crate::state::{Bench, CarEditing, Cursor, Document, Preferences, PrintChoices, SetupId};
use crate::theme::{self, Metrics, ThemeChoice};
use crate::ui::car::new_car::NewCar;
use crate::ui::finder::Finder;
use crate::ui::messages::Message;
use crate::ui::tour::Hint;
use crate::ui::{self, Column, Intent, Intents, ViewState};

use disk::Overwrite;
use documents::{Asked, Guard};
use leave::Leave;
use remember::Remembered;

/// The running application.
pub struct Steerloft {
    bench: Bench,
    view: ViewState,
    dialogs: Box<dyn FileDialogs>,
    /// What the open file dialog is for.
    asked: Option<Asked>,
    /// The question about unsaved changes that waits for an answer.
    guard: Option<Guard>,
    /// The setup that the program put on the bench itself: it makes room for the first one that the user asks for.
    placeholder: Option<SetupId>,
    /// Whether the window may close although there are unsaved changes.
    may_close: bool,
    /// The save that waits for an answer, because it would write over what another program has put there.
    overwrite: Option<Overwrite>,
    /// Setups whose files were found changed or gone.
    changed_files: Vec<(SetupId, Standing)>,
    was_in_front: bool,
    remembered: Remembered,
    message: Option<Message>,
    /// The page that lies over everything else, if one does.
    page: Option<Page>,
    /// The choices of the sheet written last.
    last_print: PrintChoices,
    theme: ThemeChoice,
    title: String,
}

/// A page over everything else.
#[derive(Debug)]
enum Page {
    About,
    NewCar(NewCar),
    Kinds(NewCar),
    Keys,
    Find(Finder),
    Print(PrintChoices),
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
        ctx.options_mut(|options| {
            options.input_options.max_click_dist = Metrics::DRAG_THRESHOLD;
            // Scale has commands of its own.
            options.zoom_with_keyboard = false;
        });
        let from_file = document.path().is_some();
        let bench = Bench::new(document);
        Self {
            placeholder: (!from_file).then(|| bench.current().id()),
            bench,
            view: ViewState::default(),
            dialogs,
            asked: None,
            guard: None,
            may_close: false,
            overwrite: None,
            changed_files: Vec::new(),
            was_in_front: true,
            remembered: Remembered::default(),
            message: None,
            page: None,
            last_print: PrintChoices::default(),
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
        self.guard.is_some()
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
            Command::New(index) => self.new_from(index),
            Command::Recent(index) => self.open_recent(index),
            Command::Continue => self.new_from_current(),
            Command::NewCar => self.page = Some(Page::NewCar(NewCar::default())),
            Command::EditCar => self.toggle_car_editing(),
            Command::Kinds => self.page = Some(Page::Kinds(NewCar::of(&self.bench))),
            Command::Open => self.ask_what_to_open(Asked::Open, ctx, window),
            Command::CloseSetup => self.leave(Leave::Close(self.bench.current().id()), ctx),
            Command::NextSetup => self.switch_to(self.bench.neighbour(1)),
            Command::PreviousSetup => self.switch_to(self.bench.neighbour(-1)),
            Command::Quit => self.leave(Leave::quit(), ctx),
            Command::Save => self.save(self.bench.current().id(), None, ctx, window),
            Command::SaveAs => {
                self.ask_where_to_save(self.bench.current().id(), None, ctx, window);
            }
            Command::KeepReference => self.bench.keep_reference(),
            Command::OpenReference => self.ask_what_to_open(Asked::OpenReference, ctx, window),
            Command::SwapReference => self.swap_with_reference(),
            Command::ClearReference => self.bench.clear_reference(),
            Command::Undo => self.bench.undo(),
            Command::Redo => self.bench.redo(),
            Command::FitViews => self.view.views.fit(),
            Command::FitCurves => self.view.curves.fitted = !self.view.curves.fitted,
            Command::Column(column) => self.view.column = column,
            Command::Drawer(drawer) => self.view.drawers.toggle(drawer),
            Command::Curve(kind) => {
                self.view.curves.toggle(kind);
                self.view.column = Column::Curves;
            }
            Command::SideView => self.view.views.toggle_side(),
            Command::Show(overlay) => self.view.views.toggle(overlay),
            Command::FitTurn => self.view.views.fit_turn(),
            Command::Measure => self.view.views.toggle_measuring(),
            Command::ResetCursor => {
                self.bench.set_cursor(Cursor::STATIC);
            }
            Command::Theme(choice) => self.choose_theme(choice, ctx),
            Command::Units(units) => self.view.preferences.units = units,
            Command::Larger => self.view.preferences.enlarge(),
            Command::Smaller => self.view.preferences.reduce(),
            Command::FullSize => self.view.preferences.scale = Preferences::LEAST_SCALE,
            Command::Find => self.page = Some(Page::Find(Finder::default())),
            Command::Keys => self.page = Some(Page::Keys),
            Command::Hints => self.view.tour = Some(Hint::Drawings),
            Command::About => self.page = Some(Page::About),
            Command::Print => self.page = Some(Page::Print(self.last_print)),
            Command::CopyPicture(subject) => self.copy_picture(subject, ctx),
            Command::CopyDrawing(subject) => self.copy_drawing(subject, ctx),
            Command::SavePicture(subject) => self.ask_where_to_save_picture(subject, ctx, window),
        }
    }

    /// The theme that the user wants.
    #[must_use]
    pub fn theme(&self) -> ThemeChoice {
        self.theme
    }

    /// Shows the window in a theme.
    pub fn choose_theme(&mut self, choice: ThemeChoice, ctx: &egui::Context) {
        self.theme = choice;
        ctx.set_theme(choice.preference());
    }

    /// Opens the description of the car, at rest so that its points stand where they are given, or closes it.
    fn toggle_car_editing(&mut self) {
        self.bench.finish();
        self.view.views.let_go();
        self.view.car_editing = match self.view.car_editing {
            None => Some(CarEditing::default()),
            Some(_) => None,
        };
        self.bench.set_cursor(Cursor::STATIC);
    }

    /// Carries out what the user wants; whether that changed anything that is shown.
    fn carry_out(&mut self, intent: Intent, ctx: &egui::Context, window: &eframe::Frame) -> bool {
        match intent {
            Intent::Preview(change) => return self.bench.preview(change),
            Intent::Finish => return self.bench.finish(),
            Intent::Cancel => return self.bench.cancel(),
            Intent::Cursor(cursor) => return self.bench.set_cursor(cursor),
            Intent::Select(pivot) => return self.bench.select(pivot),
            Intent::Curves(change) => change.apply(&mut self.view.curves),
            Intent::Command(command) => self.command(command, ctx, window),
            Intent::Adopt(setup, name) => return self.bench.adopt(*setup, &name),
            Intent::OpenSetup(setup) => {
                self.put_on_bench(Document::unnamed(*setup));
            }
            Intent::ReferToSetup(setup) => self.bench.refer_to_setup(*setup),
            Intent::OpenReadings => self.ask_which_readings(ctx, window),
            Intent::SaveReadings => self.ask_where_to_save_readings(ctx, window),
            Intent::SwitchTo(id) => self.switch_to(id),
            Intent::OpenFile(path) => self.open_file(&path),
            Intent::CloseSetup(id) => self.leave(Leave::Close(id), ctx),
            Intent::ReferTo(Some(id)) => self.bench.set_reference(id),
            Intent::ReferTo(None) => self.bench.clear_reference(),
            Intent::Left(answer) => self.answer_left(answer, ctx),
            Intent::Disk(id, answer) => self.answer_disk(id, answer),
            Intent::Overwrite(answer) => self.answer_overwrite(answer, ctx, window),
            Intent::DismissMessage => self.message = None,
            Intent::Jump(place) => self.bench.jump(place),
            Intent::CreateCar(kinds) => self.create_car(kinds),
            Intent::ChangeKinds(kinds) => self.change_kinds(kinds),
            Intent::ClosePage => self.page = None,
            Intent::Print(choices) => self.page = Some(Page::Print(choices)),
            Intent::WriteSheet(choices) => {
                self.page = None;
                self.last_print = choices;
                self.ask_where_to_save_sheet(choices, ctx, window);
            }
            Intent::Guard(answer) => self.answer_guard(answer, ctx, window),
        }
        true
    }

    /// Takes what came from outside the window's own controls: keys, answers of dialogs, dropped files, a wish to close.
    fn take_requests(&mut self, ctx: &egui::Context, intents: &mut Intents) {
        if let Some(answer) = self.dialogs.answer() {
            self.answered(answer, ctx);
        }
        if ctx.input(|input| input.viewport().close_requested()) && !self.may_close {
            self.leave(Leave::quit(), ctx);
            if !self.may_close {
                ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            }
        }
        if self.is_modal() {
            return;
        }
        if let [first, others @ ..] = ui::drop::dropped_files(ctx).as_slice() {
            self.open_file(first);
            self.open_behind(others);
        }
        ui::menu::take_keys(ctx, intents);
    }

    /// Whether a question must be answered before anything else.
    fn is_modal(&self) -> bool {
        self.guard.is_some() || self.overwrite.is_some() || self.page.is_some()
    }

    /// Brings what is drawn into line with the preferences.
    fn follow_preferences(&self, ctx: &egui::Context) {
        let preferences = &self.view.preferences;
        ui::show_units(ctx, preferences.units);
        if (ctx.zoom_factor() - preferences.factor()).abs() > 1e-3 {
            ctx.set_zoom_factor(preferences.factor());
        }
    }

    fn show_page(&mut self, ctx: &egui::Context, intents: &mut Intents) {
        match &mut self.page {
            Some(Page::About) => ui::messages::about(ctx, intents),
            Some(Page::NewCar(kinds)) => ui::car::new_car::show(ctx, kinds, intents),
            Some(Page::Kinds(kinds)) => {
                ui::car::kinds::show(ctx, &self.bench, kinds, intents);
            }
            Some(Page::Keys) => ui::keys::show(ctx, intents),
            Some(Page::Print(choices)) => ui::print::show(ctx, &self.bench, *choices, intents),
            Some(Page::Find(finder)) => {
                let look =
                    |command| ui::menu::look_of(command, &self.bench, &self.view, self.theme);
                ui::finder::show(ctx, finder, &look, intents);
            }
            None => {}
        }
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
        self.follow_preferences(&ctx);
        self.look_after_files(&ctx);
        self.bring_into_sight(&ctx, window);
        self.take_requests(&ctx, &mut intents);
        let menu = ui::menu::show(
            ui,
            &self.bench,
            &self.view,
            self.theme,
            self.recent_files(),
            &mut intents,
        );
        ui::setups::show(ui, &self.bench, &mut intents);
        ui::left::show(ui, self.left_behind(), &mut intents);
        if let Some((open, gone)) = self.changed_file() {
            ui::disk::banner(ui, open, gone, &mut intents);
        }
        if let Some(message) = &self.message {
            ui::messages::message_bar(ui, message, &mut intents);
        }
        self.bench.hold_input(self.view.curves.held_input);
        let places = ui::show(ui, menu, &self.bench, &mut self.view, &mut intents);
        ui::tour::show(&ctx, &mut self.view, &places);
        self.show_page(&ctx, &mut intents);
        if let Some(open) = self
            .guard
            .as_ref()
            .and_then(|guard| self.bench.get(guard.id))
        {
            ui::messages::guard(&ctx, &open.document().name(), &mut intents);
        }
        if let Some(open) = self
            .overwrite
            .as_ref()
            .and_then(|save| self.bench.get(save.id))
        {
            ui::disk::overwrite(&ctx, &open.document().name(), &mut intents);
        }
        ui::drop::overlay(&ctx);
        let mut changed = false;
        let drawn = self.bench.current().id();
        for intent in intents {
            // What was done with a setup is for that one, not for one that took its place in this frame.
            if self.bench.current().id() != drawn && intent.is_for_current() {
                continue;
            }
            changed |= self.carry_out(intent, &ctx, window);
        }
        if changed {
            // The controls drawn in this frame show the state before it.
            ctx.request_repaint();
        }
        self.update_title(&ctx);
        self.hand_over(&ctx);
    }

    fn clear_color(&self, visuals: &egui::Visuals) -> [f32; 4] {
        visuals.panel_fill.to_normalized_gamma_f32()
    }
}
