//! Remembering: unsaved work and settings go to the keeper after each frame, and what was left comes back.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use eframe::egui::{Context, ViewportCommand, pos2};

use super::Steerloft;
use crate::commands::Command;
use crate::memory::{Keeper, LeftBehind, LeftWork, Memory, Settings, Unsaved, WindowPlace};
use crate::state::{Document, SetupId};
use crate::theme::ThemeChoice;
use crate::ui::{Column, Drawer, LeftAnswer, messages::Message};

/// How much of a window must be on a screen to be taken hold of, pixels.
const IN_SIGHT: i64 = 64;

/// What the window knows of remembering.
#[derive(Debug, Default)]
pub(super) struct Remembered {
    keeper: Option<Keeper>,
    /// The settings as they were last handed over.
    settings: Settings,
    /// Whether they have changed since.
    new_settings: bool,
    /// What other runs have left and has not been decided about.
    left: Vec<LeftBehind>,
    /// What was handed over of each setup: the state of its document.
    handed_over: Vec<(SetupId, Handed)>,
    /// Whether the window was put where it was the last time, and nobody has looked whether that can be seen.
    may_be_out_of_sight: bool,
    /// Whether all that is unsaved has been let go.
    is_over: bool,
}

/// The state of a document for which its unsaved work was handed over.
#[derive(Debug, Clone, PartialEq)]
struct Handed {
    edition: u64,
    path: Option<PathBuf>,
}

impl Steerloft {
    /// Takes over what is remembered, and remembers from now on. Changes go to the disk within such a time.
    #[must_use]
    pub fn remember(mut self, mut memory: Memory, pace: Duration, ctx: &Context) -> Self {
        let wake = ctx.clone();
        let keeper = memory.keeper(pace, Arc::new(move || wake.request_repaint()));
        self.apply_settings(&memory.settings, ctx);
        self.remembered = Remembered {
            may_be_out_of_sight: memory.settings.window.is_some(),
            keeper,
            settings: memory.settings,
            new_settings: false,
            left: memory.left,
            ..Remembered::default()
        };
        if !memory.notices.is_empty() {
            self.message = Some(Message::remembering(&memory.notices.join("\n")));
        }
        self
    }

    /// Makes a fault on this thread put unsaved work on the disk before the program stops.
    pub fn take_care_of_faults(&self) {
        if let Some(keeper) = &self.remembered.keeper {
            keeper.take_care_of_faults();
        }
    }

    /// Waits until all unsaved work and the settings are on the disk.
    pub fn flush_memory(&mut self, ctx: &Context) {
        self.hand_over(ctx);
        if let Some(keeper) = &self.remembered.keeper {
            keeper.flush();
        }
    }

    /// What other runs have left and has not been decided about.
    #[must_use]
    pub fn left_behind(&self) -> &[LeftBehind] {
        &self.remembered.left
    }

    /// Files used last, the last one first.
    #[must_use]
    pub fn recent_files(&self) -> &[String] {
        &self.remembered.settings.recent
    }

    /// Hands over what has changed since it was done last.
    pub(super) fn hand_over(&mut self, ctx: &Context) {
        let Some(keeper) = &self.remembered.keeper else {
            return;
        };
        if let Some(trouble) = keeper.trouble() {
            self.message = Some(Message::remembering(&trouble));
        }
        self.hand_over_work();
        self.hand_over_settings(ctx);
    }

    fn hand_over_work(&mut self) {
        let Remembered {
            keeper: Some(keeper),
            handed_over,
            is_over: false,
            ..
        } = &mut self.remembered
        else {
            return;
        };
        let before = std::mem::take(handed_over);
        for open in self.bench.open_setups() {
            let document = open.document();
            if !document.is_changed() {
                continue;
            }
            let state = Handed {
                edition: document.edition(),
                path: document.path().map(PathBuf::from),
            };
            let entry = (open.id(), state);
            if !before.contains(&entry) {
                keeper.keep(open.id(), unsaved(document));
            }
            handed_over.push(entry);
        }
        for (id, _) in before {
            if !handed_over.iter().any(|(other, _)| *other == id) {
                keeper.forget(id);
            }
        }
    }

    /// The window closes, and what is unsaved is to be let go.
    pub(super) fn let_all_go(&mut self) {
        self.remembered.is_over = true;
        if let Some(keeper) = &self.remembered.keeper {
            let handed_over = std::mem::take(&mut self.remembered.handed_over);
            for (id, _) in handed_over {
                keeper.forget(id);
            }
        }
    }

    /// Moves the window to the first screen if no screen shows it, because one is gone that was there the last time.
    pub(super) fn bring_into_sight(&mut self, ctx: &Context, window: &eframe::Frame) {
        if !std::mem::take(&mut self.remembered.may_be_out_of_sight) {
            return;
        }
        let Some(window) = window.winit_window() else {
            return;
        };
        // Some desktops do not tell, and put windows where they can be seen.
        let Ok(at) = window.outer_position() else {
            return;
        };
        let mut screens = window.available_monitors().peekable();
        let any = screens.peek().is_some();
        let in_sight = screens.any(|screen| {
            let (corner, size) = (screen.position(), screen.size());
            let between = |at: i32, from: i32, length: u32| {
                let along = i64::from(at) - i64::from(from);
                (-IN_SIGHT..i64::from(length) - IN_SIGHT).contains(&along)
            };
            between(at.x, corner.x, size.width) && between(at.y, corner.y, size.height)
        });
        if any && !in_sight {
            ctx.send_viewport_cmd(ViewportCommand::OuterPosition(pos2(0.0, 0.0)));
        }
    }

    fn hand_over_settings(&mut self, ctx: &Context) {
        let mut settings = self.remembered.settings.clone();
        settings.theme = Some(Command::Theme(self.theme).text().to_owned());
        settings.window = window_place(ctx).or(settings.window);
        settings.preferences = self.view.preferences;
        let layout = &mut settings.layout;
        layout.column = Some(Command::Column(self.view.column).text().to_owned());
        let drawer = self.view.drawers.open.map(Command::Drawer);
        layout.drawer = drawer.map(|drawer| drawer.text().to_owned());
        layout.drawer_height = self.view.drawers.height;
        layout.curves = self.view.curves.clone();
        layout.switches = self.view.views.switches();
        layout.adjustments_width = self.view.widths.adjustments;
        layout.results_width = self.view.widths.results;
        if settings != self.remembered.settings || self.remembered.new_settings {
            if let Some(keeper) = &self.remembered.keeper {
                keeper.settings(settings.to_text());
            }
            self.remembered.settings = settings;
            self.remembered.new_settings = false;
        }
    }

    fn apply_settings(&mut self, settings: &Settings, ctx: &Context) {
        let themes = [ThemeChoice::Light, ThemeChoice::Dark, ThemeChoice::System];
        let theme = themes
            .into_iter()
            .find(|choice| settings.theme.as_deref() == Some(Command::Theme(*choice).text()));
        if let Some(theme) = theme {
            self.choose_theme(theme, ctx);
        }
        self.view.preferences = settings.preferences;
        let layout = &settings.layout;
        let column = Column::ALL
            .into_iter()
            .find(|column| layout.column.as_deref() == Some(Command::Column(*column).text()));
        self.view.column = column.unwrap_or_default();
        self.view.drawers.open = Drawer::ALL
            .into_iter()
            .find(|drawer| layout.drawer.as_deref() == Some(Command::Drawer(*drawer).text()));
        self.view.drawers.height = layout.drawer_height.filter(|height| height.is_finite());
        self.view.curves = layout.curves.clone();
        self.view.views.set_switches(layout.switches);
        self.view.widths.adjustments = layout.adjustments_width.filter(|width| width.is_finite());
        self.view.widths.results = layout.results_width.filter(|width| width.is_finite());
    }

    /// Notes that a file was used.
    pub(super) fn note_use(&mut self, path: &Path) {
        self.remembered.settings.used(path);
        self.remembered.new_settings = true;
    }

    /// Opens the file used at this place of the list.
    pub(super) fn open_recent(&mut self, index: usize) {
        if let Some(path) = self.remembered.settings.recent.get(index) {
            self.open_file(&PathBuf::from(path));
        }
    }

    /// Does with work that was left what the user says.
    pub(super) fn answer_left(&mut self, answer: LeftAnswer, ctx: &Context) {
        match answer {
            LeftAnswer::Open { run, work } => self.open_left(run, work, ctx),
            LeftAnswer::Discard { run, work } => self.clear_left(run, work),
            LeftAnswer::Later => {
                let left = std::mem::take(&mut self.remembered.left);
                left.into_iter().for_each(LeftBehind::end);
            }
        }
    }

    /// Puts work that was left on the bench; it stays where it lies until this run has kept it too.
    fn open_left(&mut self, run: usize, work: usize, ctx: &Context) {
        let left = self.remembered.left.get(run);
        let found = left.and_then(|left| left.works.get(work));
        let Some(LeftWork {
            work: Ok(unsaved), ..
        }) = found
        else {
            return;
        };
        let document = Document::restored(unsaved.setup.clone(), unsaved.file.clone());
        let saved = unsaved.file.as_deref().and_then(|file| self.as_saved(file));
        if self.put_on_bench(document) {
            if let Some(saved) = saved {
                // A file is on the bench once; the file itself still holds what this did.
                self.bench.close(saved);
            }
            self.flush_memory(ctx);
            self.clear_left(run, work);
        }
    }

    /// The setup on the bench as its file holds it, if nothing was done with it and nothing is compared with it.
    fn as_saved(&self, file: &Path) -> Option<SetupId> {
        let open = self.bench.get(self.bench.in_file(file)?)?;
        let is_free = open.is_as_opened() && !self.bench.is_reference(open.id());
        is_free.then(|| open.id())
    }

    fn clear_left(&mut self, run: usize, work: usize) {
        let left = &mut self.remembered.left;
        if let Some(of_run) = left.get_mut(run) {
            of_run.clear(work);
            if of_run.works.is_empty() {
                left.remove(run).end();
            }
        }
    }
}

fn unsaved(document: &Document) -> Unsaved {
    Unsaved {
        name: document.name(),
        file: document.path().map(absolute),
        setup: document.setup().clone(),
    }
}

fn absolute(path: &Path) -> PathBuf {
    std::path::absolute(path).unwrap_or_else(|_| path.to_owned())
}

/// Where the window is, in points at full scale; nothing while that is of no use for the next start.
fn window_place(ctx: &Context) -> Option<WindowPlace> {
    let scale = ctx.zoom_factor();
    ctx.input(|input| {
        let viewport = input.viewport();
        let inner = viewport.inner_rect?;
        let small = viewport.minimized == Some(true) || viewport.fullscreen == Some(true);
        if small || inner.width() < 1.0 || inner.height() < 1.0 {
            return None;
        }
        let position = viewport
            .outer_rect
            .map(|outer| (outer.min.x * scale, outer.min.y * scale));
        Some(WindowPlace {
            position,
            size: (inner.width() * scale, inner.height() * scale),
            maximized: viewport.maximized == Some(true),
        })
    })
}
