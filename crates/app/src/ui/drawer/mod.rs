//! Drawers below the drawings: answers that need more room than a column has, one open at a time.
//!
//! A drawer is a variant of [`Drawer`] with its words and its key, a file here that draws it, an arm in [`contents`], and,
//! if it holds anything from one frame to the next, a field of [`Drawers`]. Menu, finder, keys and settings follow.

mod changes;

use eframe::egui::{
    Align, Button, Key, Layout, Modifiers, Panel, Role, ScrollArea, Ui, WidgetInfo,
};

use super::{Intent, Intents, ViewState, panel_frame};
use crate::commands::Command;
use crate::state::Bench;
use crate::theme::{Metrics, Tokens};

/// Share of the window's height that an open drawer takes at first, and at most.
const FIRST_SHARE: f32 = 0.36;
const MOST_SHARE: f32 = 0.62;

/// Least height of an open drawer, points.
const LEAST_HEIGHT: f32 = 120.0;

/// One of the drawers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Drawer {
    /// What to change on the car to come from the reference to this setup.
    Changes,
}

/// Which drawer is open, how high, and what the drawers hold.
#[derive(Debug, Default)]
pub struct Drawers {
    /// The open one, if one is.
    pub open: Option<Drawer>,
    /// Height of the open one, points; none before it was first drawn.
    pub height: Option<f32>,
}

impl Drawer {
    /// All, in the order of their fronts.
    pub const ALL: [Self; 1] = [Self::Changes];

    /// What stands on its front.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Changes => "Changes",
        }
    }

    /// What it answers, in a sentence.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Changes => {
                "What to change on the car to come from the reference to this setup, part by part"
            }
        }
    }

    /// The key that opens and shuts it.
    #[must_use]
    pub const fn key(self) -> (Modifiers, Key) {
        match self {
            Self::Changes => (Modifiers::NONE, Key::F8),
        }
    }
}

impl Drawers {
    /// Opens a drawer, or shuts it if it is the open one.
    pub fn toggle(&mut self, drawer: Drawer) {
        self.open = (self.open != Some(drawer)).then_some(drawer);
    }
}

/// Draws the fronts of all drawers, and the open one below them.
pub fn show(ui: &mut Ui, bench: &Bench, view: &mut ViewState, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    let frame = panel_frame(tokens);
    let Some(open) = view.drawers.open else {
        Panel::bottom("drawer fronts")
            .frame(frame)
            .show(ui, |ui| fronts(ui, None, intents));
        return;
    };
    let window = ui.ctx().content_rect().height();
    let first = (window * FIRST_SHARE).round();
    let most = (window * MOST_SHARE).max(1.0);
    let panel = Panel::bottom("drawer")
        .resizable(true)
        .default_size(view.drawers.height.unwrap_or(first).min(most))
        .size_range(LEAST_HEIGHT.min(most)..=most)
        .frame(frame)
        .show(ui, |ui| {
            fronts(ui, Some(open), intents);
            ui.add_space(Metrics::GAP_SMALL);
            contents(ui, open, bench, view, intents);
            // The height is the user's, whatever is in it.
            ui.take_available_space();
        });
    view.drawers.height = Some(panel.response.rect.height());
}

/// What is in a drawer.
fn contents(
    ui: &mut Ui,
    drawer: Drawer,
    bench: &Bench,
    _view: &mut ViewState,
    _intents: &mut Intents,
) {
    match drawer {
        Drawer::Changes => changes::show(ui, bench),
    }
}

/// A button for each drawer; the open one is shut by its own.
fn fronts(ui: &mut Ui, open: Option<Drawer>, intents: &mut Intents) {
    ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
        ui.set_height(Metrics::CONTROL_HEIGHT);
        if let Some(open) = open
            && super::widgets::named_button(ui, true, Button::new("Shut"), "Shut the drawer")
                .clicked()
        {
            intents.push(Intent::Command(Command::Drawer(open)));
        }
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            ScrollArea::horizontal()
                .id_salt("drawer fronts")
                .auto_shrink([false, true])
                .show(ui, |ui| {
                    ui.horizontal(|ui| {
                        ui.spacing_mut().item_spacing.x = Metrics::GAP_SMALL;
                        for drawer in Drawer::ALL {
                            front(ui, drawer, open == Some(drawer), intents);
                        }
                    });
                });
        });
    });
}

fn front(ui: &mut Ui, drawer: Drawer, is_open: bool, intents: &mut Intents) {
    let command = Command::Drawer(drawer);
    let button = Button::selectable(is_open, drawer.title()).frame_when_inactive(true);
    let response =
        ui.add(button)
            .on_hover_text(format!("{} ({})", drawer.meaning(), command.key_names()));
    response.widget_info(|| {
        let name = format!("Drawer: {}", drawer.title());
        WidgetInfo::selected(Role::Button, true, is_open, name)
    });
    if response.clicked() {
        intents.push(Intent::Command(command));
    }
}
