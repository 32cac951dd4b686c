//! The banner that offers work which a run that ended without warning has left.

use std::time::SystemTime;

use eframe::egui::{Button, Panel, RichText, ScrollArea, Ui};

use super::messages::attention_frame;
use super::{Intent, Intents, widgets};
use crate::memory::{LeftBehind, LeftWork};
use crate::theme::{Metrics, Tokens};

/// Height beyond which the list scrolls, points.
const MOST_HEIGHT: f32 = 150.0;

/// What is to be done with work that was left.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LeftAnswer {
    /// Put it on the bench.
    Open {
        /// Place of the run in the list.
        run: usize,
        /// Place of the work among those of the run.
        work: usize,
    },
    /// Throw it away.
    Discard {
        /// Place of the run in the list.
        run: usize,
        /// Place of the work among those of the run.
        work: usize,
    },
    /// Leave all where it is, and ask at the next start.
    Later,
}

/// Draws the banner; nothing if nothing was left.
pub fn show(ui: &mut Ui, left: &[LeftBehind], intents: &mut Intents) {
    if left.is_empty() {
        return;
    }
    let tokens = Tokens::of(ui.ctx());
    Panel::top("left behind")
        .frame(attention_frame(tokens))
        .show(ui, |ui| {
            ui.horizontal(|ui| {
                ui.label(
                    RichText::new("Unsaved work was left")
                        .color(tokens.warning)
                        .strong(),
                );
                ui.label("The program ended before it was saved. Your files are as they were.");
                if ui
                    .button("Later")
                    .on_hover_text("Ask again at the next start")
                    .clicked()
                {
                    intents.push(Intent::Left(LeftAnswer::Later));
                }
            });
            ScrollArea::vertical()
                .max_height(MOST_HEIGHT)
                .show(ui, |ui| {
                    for (run, of_run) in left.iter().enumerate() {
                        if let Some(fault) = &of_run.fault {
                            ui.label(format!("It stopped by a fault of its own: {fault}"));
                        }
                        for (index, work) in of_run.works.iter().enumerate() {
                            ui.push_id((run, index), |ui| entry(ui, (run, index), work, intents));
                        }
                    }
                });
        });
}

fn entry(ui: &mut Ui, (run, index): (usize, usize), work: &LeftWork, intents: &mut Intents) {
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = Metrics::GAP;
        let name = match &work.work {
            Ok(unsaved) => unsaved.name.clone(),
            Err(_) => work.path.display().to_string(),
        };
        let open = widgets::named_button(
            ui,
            work.work.is_ok(),
            Button::new("Open"),
            &format!("Open what was left of {name}"),
        );
        if open
            .on_hover_text("Put it on the bench, not saved yet")
            .clicked()
        {
            intents.push(Intent::Left(LeftAnswer::Open { run, work: index }));
        }
        let discard = widgets::named_button(
            ui,
            true,
            Button::new("Discard"),
            &format!("Discard what was left of {name}"),
        );
        if discard.on_hover_text("Throw it away for good").clicked() {
            intents.push(Intent::Left(LeftAnswer::Discard { run, work: index }));
        }
        ui.label(RichText::new(&name).strong());
        if let Some(moment) = work.kept_on {
            ui.weak(ago(moment));
        }
        match &work.work {
            Ok(unsaved) => match &unsaved.file {
                Some(file) => ui.weak(file.display().to_string()),
                None => ui.weak("in no file yet"),
            },
            Err(reason) => ui.label(format!("cannot be read: {reason}")),
        };
    });
}

/// How long ago a moment was.
fn ago(moment: SystemTime) -> String {
    let Ok(since) = moment.elapsed() else {
        return "just now".to_owned();
    };
    let minutes = since.as_secs() / 60;
    let (count, unit) = match minutes {
        0 => return "just now".to_owned(),
        1..120 => (minutes, "minute"),
        120..2880 => (minutes / 60, "hour"),
        _ => (minutes / 1440, "day"),
    };
    let plural = if count == 1 { "" } else { "s" };
    format!("{count} {unit}{plural} ago")
}
