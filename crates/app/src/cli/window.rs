//! The window.

use std::io::Write;
use std::panic::{AssertUnwindSafe, catch_unwind, resume_unwind};
use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use eframe::egui::ViewportBuilder;
use steerloft_setup::supplied::SUPPLIED;

use super::{Arguments, WRONG_USE, no_window};
use crate::app::Steerloft;
use crate::dialogs::NativeDialogs;
use crate::heap::keep_freed_memory;
use crate::memory::{Memory, WindowPlace, keeper};
use crate::state::Document;
use crate::theme::{Metrics, ThemeChoice};
use crate::ui::messages::Message;
use crate::ui::tour::Hint;

/// Opens the window and stays until it is closed.
pub(super) fn run(arguments: &Arguments) -> ExitCode {
    keep_freed_memory();
    let (document, message) = document(arguments);
    message.iter().for_each(tell);
    let memory = Memory::of_user();
    memory.notices.iter().for_each(|notice| say(notice));
    let further: Vec<PathBuf> = arguments.files.iter().skip(1).cloned().collect();
    let options = options(arguments, memory.settings.window);
    let theme = arguments.theme.map(ThemeChoice::from);
    let running = Arc::new(AtomicBool::new(false));
    let starting = Arc::clone(&running);
    let create = move |context: &eframe::CreationContext<'_>| {
        // From here on a fault is one of this program.
        let _ = std::panic::take_hook();
        starting.store(true, Ordering::Relaxed);
        let ctx = &context.egui_ctx;
        let dialogs = Box::new(NativeDialogs::default());
        let mut app = Steerloft::new(ctx, document, dialogs, ThemeChoice::System);
        app = app.remember(memory, keeper::PACE, ctx);
        app.take_care_of_faults();
        if !app.view().preferences.hints_seen {
            app.view_mut().tour = Some(Hint::Drawings);
        }
        if let Some(theme) = theme {
            app.choose_theme(theme, ctx);
        }
        if let Some(message) = message {
            app.set_message(message);
        }
        app.open_behind(&further).iter().for_each(tell);
        let app: Box<dyn eframe::App> = Box::new(app);
        Ok(app)
    };
    // What the window library says of its own faults comes in the one line below.
    std::panic::set_hook(Box::new(|_| {}));
    let opened = catch_unwind(AssertUnwindSafe(|| {
        eframe::run_native("Steerloft", options, Box::new(create))
    }));
    match opened {
        Ok(Ok(())) => ExitCode::SUCCESS,
        Ok(Err(error)) => {
            say(&no_window::reason(&error));
            ExitCode::from(WRONG_USE)
        }
        Err(fault) if running.load(Ordering::Relaxed) => resume_unwind(fault),
        Err(fault) => {
            let words = fault
                .downcast_ref::<String>()
                .map(String::as_str)
                .or_else(|| fault.downcast_ref::<&str>().copied());
            say(&no_window::fault(words.unwrap_or("no reason given")));
            ExitCode::from(WRONG_USE)
        }
    }
}

/// How the window comes up: as asked for, or else as it was the last time.
fn options(arguments: &Arguments, last: Option<WindowPlace>) -> eframe::NativeOptions {
    let [least_width, least_height] = Metrics::WINDOW_LEAST;
    let asked = arguments.size.map(|size| [size.width, size.height]);
    let last = last.filter(|_| asked.is_none());
    let last_size = last.map(|place| {
        let (width, height) = place.size;
        [within(width, least_width), within(height, least_height)]
    });
    let size = asked.or(last_size).unwrap_or(Metrics::WINDOW_DEFAULT);
    let mut viewport = ViewportBuilder::default()
        .with_title("Steerloft")
        .with_app_id("steerloft")
        .with_inner_size(size)
        .with_min_inner_size(Metrics::WINDOW_LEAST)
        .with_drag_and_drop(true);
    if let Some(place) = last {
        viewport = viewport.with_maximized(place.maximized);
        if let Some((x, y)) = place
            .position
            .filter(|at| at.0.is_finite() && at.1.is_finite())
        {
            viewport = viewport.with_position([x, y]);
        }
    }
    eframe::NativeOptions {
        viewport,
        renderer: eframe::Renderer::Glow,
        ..eframe::NativeOptions::default()
    }
}

/// A remembered length that a window can have.
fn within(length: f32, least: f32) -> f32 {
    if length.is_finite() {
        length.clamp(least, 16_000.0)
    } else {
        least
    }
}

/// The document to start with, and why it is not the one asked for, if so.
fn document(arguments: &Arguments) -> (Document, Option<Message>) {
    let supplied = || Document::unnamed(SUPPLIED[0].setup());
    match arguments.files.first() {
        None => (supplied(), None),
        Some(file) => match Document::read(file) {
            Ok(document) => (document, None),
            Err(error) => (supplied(), Some(Message::not_opened(&error))),
        },
    }
}

fn tell(message: &Message) {
    say(&format!("{}: {}", message.title, message.detail));
}

fn say(text: &str) {
    // Nothing is left to be done if the error output is closed.
    let _ = writeln!(std::io::stderr(), "{text}");
}
