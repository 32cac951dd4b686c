//! The window.

use std::io::Write;
use std::process::ExitCode;

use eframe::egui::ViewportBuilder;
use steerloft_setup::supplied::SUPPLIED;

use super::{Arguments, PROBLEM};
use crate::app::Steerloft;
use crate::dialogs::NativeDialogs;
use crate::state::Document;
use crate::theme::Metrics;
use crate::ui::messages::Message;

/// Opens the window and stays until it is closed.
pub(super) fn run(arguments: &Arguments) -> ExitCode {
    let (document, message) = document(arguments);
    if let Some(message) = &message {
        say(&format!("{}: {}", message.title, message.detail));
    }
    let size = [arguments.size.width, arguments.size.height];
    let options = eframe::NativeOptions {
        viewport: ViewportBuilder::default()
            .with_title("Steerloft")
            .with_app_id("steerloft")
            .with_inner_size(size)
            .with_min_inner_size(Metrics::WINDOW_LEAST)
            .with_drag_and_drop(true),
        renderer: eframe::Renderer::Glow,
        ..eframe::NativeOptions::default()
    };
    let theme = arguments.theme.into();
    let opened = eframe::run_native(
        "Steerloft",
        options,
        Box::new(move |context| {
            let dialogs = Box::new(NativeDialogs::default());
            let mut app = Steerloft::new(&context.egui_ctx, document, dialogs, theme);
            if let Some(message) = message {
                app.set_message(message);
            }
            Ok(Box::new(app))
        }),
    );
    match opened {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            say(&format!(
                "No window could be opened: {error}. Start it from a desktop session; `steerloft report FILE` needs none."
            ));
            ExitCode::from(PROBLEM)
        }
    }
}

/// The document to start with, and why it is not the one asked for, if so.
fn document(arguments: &Arguments) -> (Document, Option<Message>) {
    let supplied = || Document::unnamed(SUPPLIED[0].setup());
    match &arguments.file {
        None => (supplied(), None),
        Some(file) => match Document::read(file) {
            Ok(document) => (document, None),
            Err(error) => (supplied(), Some(Message::not_opened(&error))),
        },
    }
}

fn say(text: &str) {
    // Nothing is left to be done if the error output is closed.
    let _ = writeln!(std::io::stderr(), "{text}");
}
