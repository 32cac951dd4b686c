//! The menu bar, and the keys that ask for the same commands.

use eframe::egui::{self, Align, Button, Context, Layout, MenuBar, Panel, Rect, Ui};
use steerloft_setup::supplied::SUPPLIED;

use super::{Column, Drawer, Intent, Intents, ViewState, panel_frame};
use crate::commands::Command;
use crate::state::{Bench, CurveKind, Overlay, Preferences, Subject};
use crate::theme::{ThemeChoice, Tokens};
use crate::units::Units;

/// What menus need to know beside the command.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Look {
    /// Whether it can be asked for at present.
    pub enabled: bool,
    /// Whether what it switches is on; none for what is no switch.
    pub ticked: Option<bool>,
    /// Its text, with the step's name for undo and redo.
    pub text: String,
}

/// Draws the menu bar with undo and redo at its end, and says where it lies.
pub fn show(
    ui: &mut Ui,
    bench: &Bench,
    view: &ViewState,
    theme: ThemeChoice,
    recent: &[String],
    intents: &mut Intents,
) -> Rect {
    let tokens = Tokens::of(ui.ctx());
    let frame = panel_frame(tokens).inner_margin(egui::Margin::symmetric(8, 3));
    let look = |command| look_of(command, bench, view, theme);
    let menu = Panel::top("menu").frame(frame).show(ui, |ui| {
        MenuBar::new().ui(ui, |ui| {
            ui.menu_button("File", |ui| file_menu(ui, &look, recent, intents));
            ui.menu_button("Edit", |ui| {
                items(ui, &[Command::Undo, Command::Redo], &look, intents);
                ui.separator();
                items(ui, &[Command::EditCar, Command::Kinds], &look, intents);
                ui.separator();
                ui.menu_button("Copy a picture", |ui| {
                    pictures(ui, Command::CopyPicture, &look, intents);
                });
                ui.menu_button("Copy as SVG", |ui| {
                    pictures(ui, Command::CopyDrawing, &look, intents);
                });
            });
            ui.menu_button("Reference", |ui| reference_menu(ui, &look, intents));
            ui.menu_button("View", |ui| view_menu(ui, &look, intents));
            ui.menu_button("Drawers", |ui| {
                items(ui, &Drawer::ALL.map(Command::Drawer), &look, intents);
            });
            ui.menu_button("Help", |ui| {
                let help = [Command::Find, Command::Keys, Command::Hints, Command::About];
                items(ui, &help, &look, intents);
            });
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                for command in [Command::Redo, Command::Undo] {
                    let look = look(command);
                    let button = ui.add_enabled(look.enabled, Button::new(command.text()));
                    if super::note(button, &hint(command, &look.text)).clicked() {
                        intents.push(Intent::Command(command));
                    }
                }
            });
        });
    });
    menu.response.rect
}

/// Takes the keys pressed in this frame, those with most modifiers first.
pub fn take_keys(ctx: &Context, intents: &mut Intents) {
    let editing_text = ctx.text_edit_focused();
    for (shortcut, command) in Command::keys() {
        if editing_text && command.yields_to_text() {
            continue;
        }
        let presses = ctx.input_mut(|input| {
            input.count_and_consume_key(shortcut.modifiers, shortcut.logical_key)
        });
        let times = if command.goes_step_by_step() {
            presses
        } else {
            presses.min(1)
        };
        for _ in 0..times {
            intents.push(Intent::Command(command));
        }
    }
}

fn file_menu(
    ui: &mut Ui,
    look: &impl Fn(Command) -> Look,
    recent: &[String],
    intents: &mut Intents,
) {
    ui.menu_button("New from supplied car", |ui| {
        for index in 0..SUPPLIED.len() {
            item(ui, Command::New(index), look, intents);
        }
    });
    items(
        ui,
        &[Command::Continue, Command::NewCar, Command::Open],
        look,
        intents,
    );
    ui.add_enabled_ui(!recent.is_empty(), |ui| {
        ui.menu_button("Open recent", |ui| {
            for (index, path) in recent.iter().enumerate() {
                if ui.button(path).clicked() {
                    intents.push(Intent::Command(Command::Recent(index)));
                    ui.close();
                }
            }
        });
    });
    ui.separator();
    items(ui, &[Command::Save, Command::SaveAs], look, intents);
    ui.separator();
    items(ui, &[Command::Print], look, intents);
    ui.menu_button("Save a picture", |ui| {
        pictures(ui, Command::SavePicture, look, intents);
    });
    ui.separator();
    items(ui, &[Command::CloseSetup, Command::Quit], look, intents);
}

fn reference_menu(ui: &mut Ui, look: &impl Fn(Command) -> Look, intents: &mut Intents) {
    items(
        ui,
        &[Command::KeepReference, Command::OpenReference],
        look,
        intents,
    );
    ui.separator();
    items(
        ui,
        &[Command::SwapReference, Command::ClearReference],
        look,
        intents,
    );
}

/// A view or a curve to choose for a picture.
fn pictures(
    ui: &mut Ui,
    command: fn(Subject) -> Command,
    look: &impl Fn(Command) -> Look,
    intents: &mut Intents,
) {
    for subject in Subject::all() {
        item(ui, command(subject), look, intents);
    }
}

fn view_menu(ui: &mut Ui, look: &impl Fn(Command) -> Look, intents: &mut Intents) {
    let views = [
        Command::FitViews,
        Command::FitCurves,
        Command::FitTurn,
        Command::SideView,
        Command::Measure,
        Command::ResetCursor,
    ];
    items(ui, &views, look, intents);
    ui.menu_button("Show in the views", |ui| {
        items(ui, &Overlay::ALL.map(Command::Show), look, intents);
    });
    ui.separator();
    items(ui, &Column::ALL.map(Command::Column), look, intents);
    ui.menu_button("Choose curves", |ui| {
        items(ui, &CurveKind::ALL.map(Command::Curve), look, intents);
    });
    ui.separator();
    items(
        ui,
        &[Command::NextSetup, Command::PreviousSetup],
        look,
        intents,
    );
    ui.separator();
    ui.menu_button("Theme", |ui| {
        let themes = [ThemeChoice::Light, ThemeChoice::Dark, ThemeChoice::System];
        items(ui, &themes.map(Command::Theme), look, intents);
    });
    ui.menu_button("Lengths", |ui| {
        items(ui, &Units::ALL.map(Command::Units), look, intents);
    });
    ui.menu_button("Scale", |ui| {
        let scales = [Command::Larger, Command::Smaller, Command::FullSize];
        items(ui, &scales, look, intents);
    });
}

fn items(
    ui: &mut Ui,
    commands: &[Command],
    look: &impl Fn(Command) -> Look,
    intents: &mut Intents,
) {
    for command in commands {
        item(ui, *command, look, intents);
    }
}

fn item(ui: &mut Ui, command: Command, look: &impl Fn(Command) -> Look, intents: &mut Intents) {
    let look = look(command);
    let mut button = Button::new(look.text);
    if let Some(ticked) = look.ticked {
        button = button.selected(ticked);
    }
    if let Some(shortcut) = command.shortcut() {
        button = button.shortcut_text(ui.ctx().format_shortcut(&shortcut));
    }
    let response = ui
        .add_enabled(look.enabled, button)
        .on_hover_text(command.tooltip());
    if response.clicked() {
        intents.push(Intent::Command(command));
        ui.close();
    }
}

/// How a command looks at present.
#[must_use]
pub fn look_of(command: Command, bench: &Bench, view: &ViewState, theme: ThemeChoice) -> Look {
    let mut look = Look {
        enabled: true,
        ticked: None,
        text: command.text().to_owned(),
    };
    let units = view.preferences.units;
    match command {
        Command::Undo => name_step(&mut look, bench.undo_name(units).as_deref()),
        Command::Redo => name_step(&mut look, bench.redo_name(units).as_deref()),
        Command::SwapReference => look.enabled = bench.reference().is_some(),
        Command::ClearReference => look.enabled = bench.has_reference(),
        Command::NextSetup | Command::PreviousSetup => {
            look.enabled = bench.open_setups().len() > 1;
        }
        Command::FitCurves => look.ticked = Some(view.curves.fitted),
        Command::Column(column) => look.ticked = Some(view.column == column),
        Command::Drawer(drawer) => look.ticked = Some(view.drawers.open == Some(drawer)),
        Command::Curve(kind) => look.ticked = Some(view.curves.has(kind)),
        Command::Show(overlay) => look.ticked = Some(view.views.switches().has(overlay)),
        Command::EditCar => look.ticked = Some(view.car_editing.is_some()),
        Command::Measure => look.ticked = Some(view.views.measuring().is_some()),
        Command::SideView => look.ticked = Some(view.views.has_side()),
        Command::Theme(choice) => look.ticked = Some(choice == theme),
        Command::Units(choice) => look.ticked = Some(choice == units),
        Command::Larger => look.enabled = view.preferences.scale < Preferences::GREATEST_SCALE,
        Command::Smaller | Command::FullSize => {
            look.enabled = view.preferences.scale > Preferences::LEAST_SCALE;
        }
        _ => {}
    }
    look
}

fn name_step(look: &mut Look, step: Option<&str>) {
    look.enabled = step.is_some();
    if let Some(step) = step {
        look.text = format!("{}: {step}", look.text);
    }
}

fn hint(command: Command, text: &str) -> String {
    command.shortcut().map_or_else(
        || text.to_owned(),
        |shortcut| {
            format!(
                "{text} ({})",
                shortcut.format(&egui::ModifierNames::NAMES, false)
            )
        },
    )
}
