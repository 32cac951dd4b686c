//! What is asked when another program has changed or taken away the file of an open setup.

use eframe::egui::{Context, Panel, RichText, Ui};

use super::messages::{attention_frame, question};
use super::{Intent, Intents};
use crate::state::OpenSetup;
use crate::theme::{Metrics, Tokens};

/// What is to be done about a file that another program has changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DiskAnswer {
    /// Take over what the file holds now, as a step that can be undone.
    TakeFile,
    /// Go on with what is on the bench.
    KeepBench,
}

/// What is to be done when a save would write over what another program has put there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OverwriteAnswer {
    /// Write over it.
    Overwrite,
    /// Save to another file.
    SaveAs,
    /// Do not save.
    Cancel,
}

/// Draws the banner about a file that was changed, or is gone.
pub fn banner(ui: &mut Ui, open: &OpenSetup, gone: bool, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    let name = open.document().name();
    let title = if gone {
        format!("{name} is no longer in its place")
    } else {
        format!("{name} was changed by another program")
    };
    Panel::top("changed on disk")
        .frame(attention_frame(tokens))
        .show(ui, |ui| {
            ui.horizontal_wrapped(|ui| {
                ui.label(RichText::new(title).color(tokens.warning).strong());
                if gone {
                    ui.label("Save writes it there again.");
                } else if ui
                    .button("Take the file's")
                    .on_hover_text(
                        "What is on the bench becomes what the file holds; it can be undone",
                    )
                    .clicked()
                {
                    intents.push(Intent::Disk(open.id(), DiskAnswer::TakeFile));
                }
                if ui
                    .button("Keep the bench's")
                    .on_hover_text("Go on with what is on the bench; it counts as not saved")
                    .clicked()
                {
                    intents.push(Intent::Disk(open.id(), DiskAnswer::KeepBench));
                }
            });
        });
}

/// Asks before writing over what another program has put there.
pub fn overwrite(ctx: &Context, name: &str, intents: &mut Intents) {
    let modal = question("overwrite", ctx).show(ctx, |ui| {
        ui.set_max_width(400.0);
        ui.heading("The file was changed");
        ui.add_space(Metrics::GAP_SMALL);
        ui.label(format!(
            "Another program has changed \u{201c}{name}\u{201d} since it was opened or saved here. Saving writes over that."
        ));
        ui.add_space(Metrics::GAP_LARGE);
        ui.horizontal(|ui| {
            let answers = [
                ("Write over it", OverwriteAnswer::Overwrite),
                ("Save as\u{2026}", OverwriteAnswer::SaveAs),
                ("Cancel", OverwriteAnswer::Cancel),
            ];
            for (text, answer) in answers {
                if ui.button(text).clicked() {
                    intents.push(Intent::Overwrite(answer));
                }
            }
        });
    });
    if modal.should_close() {
        intents.push(Intent::Overwrite(OverwriteAnswer::Cancel));
    }
}
