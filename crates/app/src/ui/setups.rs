//! The line of open setups under the menu, and what they are compared with.

use eframe::egui::{
    Align, Button, Layout, Margin, Panel, Response, RichText, Role, ScrollArea, Ui, WidgetInfo,
};

use super::{Intent, Intents, panel_frame, widgets};
use crate::commands::Command;
use crate::state::{Bench, OpenSetup};
use crate::theme::{Metrics, Tokens};

/// Most letters of a name in the line; the rest is in its tooltip.
const MOST_LETTERS: usize = 26;

/// Draws the line.
pub fn show(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    let frame = panel_frame(tokens).inner_margin(Margin::symmetric(Metrics::MARGIN, 3));
    Panel::top("setups").frame(frame).show(ui, |ui| {
        ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
            reference(ui, bench, intents);
            ui.add_space(Metrics::GAP_LARGE);
            ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
                ScrollArea::horizontal()
                    .auto_shrink([false, true])
                    .show(ui, |ui| ui.horizontal(|ui| list(ui, bench, intents)));
            });
        });
    });
}

fn list(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    for open in bench.open_setups() {
        ui.push_id(open.id(), |ui| {
            ui.spacing_mut().item_spacing.x = 1.0;
            entry(ui, bench, open, intents);
        });
    }
}

/// A setup: its name, and when there are others, whether it is the reference and a button to close it.
fn entry(ui: &mut Ui, bench: &Bench, open: &OpenSetup, intents: &mut Intents) {
    let name = open.document().name();
    if name_button(ui, bench, open, &name).clicked() {
        intents.push(Intent::SwitchTo(open.id()));
    }
    if bench.open_setups().len() == 1 {
        return;
    }
    let is_reference = bench.is_reference(open.id());
    let button = Button::selectable(is_reference, RichText::new("ref").small());
    let response = ui
        .add(button.frame_when_inactive(true))
        .on_hover_text(if is_reference {
            "This is the reference. Click to compare with nothing"
        } else {
            "Make this the reference"
        });
    response.widget_info(|| {
        WidgetInfo::selected(
            Role::CheckBox,
            true,
            is_reference,
            format!("Reference: {name}"),
        )
    });
    if response.clicked() {
        intents.push(Intent::ReferTo((!is_reference).then(|| open.id())));
    }
    let button = Button::new(RichText::new("\u{d7}"));
    if widgets::named_button(ui, true, button, &format!("Close {name}"))
        .on_hover_text("Take this setup off the bench")
        .clicked()
    {
        intents.push(Intent::CloseSetup(open.id()));
    }
}

fn name_button(ui: &mut Ui, bench: &Bench, open: &OpenSetup, name: &str) -> Response {
    let tokens = Tokens::of(ui.ctx());
    let current = open.id() == bench.current().id();
    let changed = open.document().is_changed();
    let mark = if changed { " *" } else { "" };
    let mut text = RichText::new(format!("{}{mark}", shortened(name)));
    if current {
        text = text.color(tokens.text_strong).strong();
    }
    let response = ui.add(Button::selectable(current, text).frame_when_inactive(true));
    response
        .widget_info(|| WidgetInfo::selected(Role::Tab, true, current, format!("Setup: {name}")));
    response.on_hover_ui(|ui| {
        ui.label(name);
        match open.document().path() {
            Some(path) => ui.weak(path.display().to_string()),
            None => ui.weak("In no file yet"),
        };
        if changed {
            ui.colored_label(tokens.accent, "There are changes that are in no file yet");
        }
    })
}

fn shortened(name: &str) -> String {
    if name.chars().count() <= MOST_LETTERS {
        return name.to_owned();
    }
    let start: String = name.chars().take(MOST_LETTERS - 1).collect();
    format!("{start}\u{2026}")
}

/// What is compared with, from right to left.
fn reference(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    let commands: &[(Command, &str)] = match (bench.reference(), bench.has_reference()) {
        (Some(_), _) => &[
            (Command::ClearReference, "Clear"),
            (Command::SwapReference, "Swap"),
            (Command::KeepReference, "Keep this"),
        ],
        (None, true) => &[
            (Command::ClearReference, "Clear"),
            (Command::KeepReference, "Keep this"),
        ],
        (None, false) => &[(Command::KeepReference, "Keep this")],
    };
    for (command, text) in commands {
        let response = widgets::named_button(ui, true, Button::new(*text), command.text())
            .on_hover_text(command.tooltip());
        if response.clicked() {
            intents.push(Intent::Command(*command));
        }
    }
    let tokens = Tokens::of(ui.ctx());
    match (bench.reference(), bench.has_reference()) {
        (Some(reference), _) => {
            let name = reference.name();
            ui.label(shortened(&name)).on_hover_text(name);
            ui.colored_label(tokens.text_weak, "Reference:");
        }
        (None, true) => {
            ui.colored_label(tokens.text_weak, "This is the reference");
        }
        (None, false) => {
            ui.colored_label(tokens.text_weak, "No reference");
        }
    }
}
