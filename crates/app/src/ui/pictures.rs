//! What can be done with a view or a curve as a picture, in the menu that opens on it.

use eframe::egui::{Response, Ui};

use super::{Intent, Intents};
use crate::commands::Command;
use crate::state::Subject;

/// Offers the picture in a menu on what was drawn.
pub fn context_menu(response: &Response, subject: Subject, intents: &mut Intents) {
    response.context_menu(|ui| entries(ui, subject, intents));
}

/// What can be done with the picture, as the entries of a menu.
pub fn entries(ui: &mut Ui, subject: Subject, intents: &mut Intents) {
    for (text, command) in [
        ("Copy picture", Command::CopyPicture(subject)),
        ("Copy as SVG", Command::CopyDrawing(subject)),
        ("Save picture\u{2026}", Command::SavePicture(subject)),
    ] {
        if ui.button(text).on_hover_text(command.tooltip()).clicked() {
            intents.push(Intent::Command(command));
            ui.close();
        }
    }
}
