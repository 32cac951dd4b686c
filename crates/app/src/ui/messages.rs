//! Messages: what went wrong with a file, what cannot be assembled, and questions that must be answered.

use std::path::Path;

use eframe::egui::{
    self, Button, Context, Frame, Id, Margin, Modal, Panel, Rect, RichText, Stroke, Ui, UiBuilder,
    vec2,
};
use steerloft_setup::edit::OtherKinds;
use steerloft_setup::file::FileError;

use super::{GuardAnswer, Intent, Intents, names, units_of};
use crate::state::{Bench, Trouble};
use crate::theme::{Metrics, Tokens};

const NOT_OPENED: &str = "The file was not opened";

/// A message at the top of the window, there until it is dismissed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Message {
    /// What happened, in a few words.
    pub title: String,
    /// Where and why, and what would be right.
    pub detail: String,
    /// What it means for the open setup.
    pub consequence: &'static str,
}

impl Message {
    /// A file could not be opened.
    #[must_use]
    pub fn not_opened(error: &FileError) -> Self {
        Self {
            title: NOT_OPENED.to_owned(),
            detail: error.to_string(),
            consequence: "The setup on the bench and its changes are as they were.",
        }
    }

    /// What is told of several files, in one message: of the first few in full.
    #[must_use]
    pub fn together(mut messages: Vec<Self>) -> Option<Self> {
        const TOLD: usize = 4;
        let count = messages.len();
        messages.truncate(TOLD);
        let mut details: Vec<String> = messages.iter().map(|one| one.detail.clone()).collect();
        if count > TOLD {
            details.push(format!("And {} more.", count - TOLD));
        }
        let are_files = messages.iter().all(|one| one.title == NOT_OPENED);
        let first = messages.into_iter().next()?;
        let title = if count > 1 && are_files {
            format!("{count} files were not opened")
        } else {
            first.title
        };
        Some(Self {
            title,
            detail: details.join("\n"),
            consequence: first.consequence,
        })
    }

    /// Gauge readings could not be read.
    #[must_use]
    pub fn readings_not_read(why: &str) -> Self {
        Self {
            title: "The readings were not read".to_owned(),
            detail: why.to_owned(),
            consequence: "The readings in the drawer are as they were.",
        }
    }

    /// Gauge readings could not be written.
    #[must_use]
    pub fn readings_not_written(why: &str) -> Self {
        Self {
            title: "The readings were not saved".to_owned(),
            detail: why.to_owned(),
            consequence: "They are still in the drawer.",
        }
    }

    /// No further setup finds room on the bench.
    #[must_use]
    pub fn bench_full(most: usize) -> Self {
        Self {
            title: "The bench is full".to_owned(),
            detail: format!(
                "{most} setups are open, which is as many as it takes. Close one first."
            ),
            consequence: "Nothing was opened.",
        }
    }

    /// The desktop shows no file dialog.
    #[must_use]
    pub fn no_dialog() -> Self {
        Self {
            title: "No file dialog".to_owned(),
            detail: "The desktop has none to show: it needs a desktop portal (xdg-desktop-portal) or zenity.".to_owned(),
            consequence: "Drop a file on this window to open it, or start with `steerloft FILE`; Save writes back to that file.",
        }
    }

    /// The car has become one of another kind.
    #[must_use]
    pub fn other_kind(other: &OtherKinds) -> Self {
        let told = [
            ("Given up", &other.given_up),
            ("A guess, to be measured", &other.guessed),
            ("To be looked at again", &other.to_check),
        ];
        let told = told.iter().filter(|(_, what)| !what.is_empty());
        let lines: Vec<String> = told
            .map(|(title, what)| format!("{title}: {}.", what.join("; ")))
            .collect();
        Self {
            title: "The car is of another kind now".to_owned(),
            detail: lines.join("\n"),
            consequence: "Undo brings back what it was.",
        }
    }

    /// Something is not remembered, or not as it was.
    #[must_use]
    pub fn remembering(detail: &str) -> Self {
        Self {
            title: "About what is remembered".to_owned(),
            detail: detail.to_owned(),
            consequence: "Everything else works.",
        }
    }

    /// There is nothing to make a picture of.
    #[must_use]
    pub fn no_picture() -> Self {
        Self {
            title: "No picture".to_owned(),
            detail: "The car cannot be assembled as it is set up, so there is no picture of it."
                .to_owned(),
            consequence: "Undo the last change, or change what moves the member that cannot reach.",
        }
    }

    /// A sheet or a picture could not be made or written.
    #[must_use]
    pub fn not_written(reason: &str) -> Self {
        Self {
            title: "Nothing was written".to_owned(),
            detail: format!("{}.", names::sentence(reason)),
            consequence: "The setup on the bench is as it was.",
        }
    }

    /// The file chosen for a setup is that of another open one.
    #[must_use]
    pub fn file_taken(file: &Path, holder: &str) -> Self {
        Self {
            title: "The setup was not saved".to_owned(),
            detail: format!(
                "\u{201c}{holder}\u{201d}, which is open too, is kept in {}. Choose another file, or close that setup first.",
                file.display()
            ),
            consequence: "The file and both setups are as they were.",
        }
    }

    /// The setup could not be saved.
    #[must_use]
    pub fn not_saved(error: &FileError) -> Self {
        Self {
            title: "The setup was not saved".to_owned(),
            detail: error.to_string(),
            consequence: "The old file is as it was, and your changes are still here. Save to another place with Save as\u{2026}",
        }
    }
}

/// Draws the message at the top.
pub fn message_bar(ui: &mut Ui, message: &Message, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    Panel::top("message")
        .frame(attention_frame(tokens))
        .show(ui, |ui| {
            ui.horizontal_top(|ui| {
                let button_width = 80.0;
                ui.allocate_ui(
                    egui::vec2((ui.available_width() - button_width).max(0.0), 0.0),
                    |ui| {
                        ui.vertical(|ui| {
                            ui.label(RichText::new(&message.title).color(tokens.warning).strong());
                            ui.label(&message.detail);
                            ui.weak(message.consequence);
                        });
                    },
                );
                ui.with_layout(egui::Layout::right_to_left(egui::Align::Min), |ui| {
                    if ui.button("Dismiss").clicked() {
                        intents.push(Intent::DismissMessage);
                    }
                });
            });
        });
}

/// Says over the views why the car on screen is not the one asked for; nothing while it is.
///
/// It lies over the drawing and takes no room from it, so that the drawing stands still when it comes and goes.
pub fn trouble_banner(ui: &mut Ui, bench: &Bench, area: Rect) {
    let Some(trouble) = bench.derived().trouble() else {
        return;
    };
    let tokens = Tokens::of(ui.ctx());
    let shown = bench.derived().shown().is_some();
    let (title, consequence) = match trouble {
        Trouble::Setup(_) if shown => ("Cannot be assembled", "Dimmed: the last pose that could."),
        Trouble::Setup(_) => ("Cannot be assembled", "Nothing of this car can be shown."),
        Trouble::Pose(_) => (
            "Out of reach",
            "Dimmed: the last pose that could be reached.",
        ),
    };
    let place = Rect::from_min_max(area.min + vec2(8.0, 8.0), area.max - vec2(8.0, 8.0));
    ui.scope_builder(UiBuilder::new().max_rect(place), |ui| {
        let frame = attention_frame(tokens)
            .stroke(Stroke::new(1.0, tokens.warning))
            .corner_radius(Metrics::CORNER);
        frame.show(ui, |ui| {
            ui.set_min_width(ui.available_width());
            ui.horizontal_wrapped(|ui| {
                ui.label(RichText::new(title).color(tokens.warning).strong());
                ui.label(format!(
                    "{}.",
                    names::sentence(&units_of(ui.ctx()).sentence(trouble.reason()))
                ));
                ui.weak(consequence);
            });
        });
    });
}

/// Asks what is to happen to unsaved changes.
pub fn guard(ctx: &Context, name: &str, intents: &mut Intents) {
    let modal = question("unsaved changes", ctx).show(ctx, |ui| {
        ui.set_max_width(380.0);
        ui.heading("Unsaved changes");
        ui.add_space(Metrics::GAP_SMALL);
        ui.label(format!(
            "\u{201c}{name}\u{201d} has changes that are in no file yet. Save them first?"
        ));
        ui.add_space(Metrics::GAP_LARGE);
        ui.horizontal(|ui| {
            let answers = [
                ("Save", GuardAnswer::Save),
                ("Discard", GuardAnswer::Discard),
                ("Cancel", GuardAnswer::Cancel),
            ];
            for (text, answer) in answers {
                if ui
                    .add(Button::new(text).min_size(egui::vec2(84.0, 26.0)))
                    .clicked()
                {
                    intents.push(Intent::Guard(answer));
                }
            }
        });
    });
    if modal.should_close() {
        intents.push(Intent::Guard(GuardAnswer::Cancel));
    }
}

/// What the program is, and what to mind when working on a car.
pub fn about(ctx: &Context, intents: &mut Intents) {
    let modal = question("about", ctx).show(ctx, |ui| {
        ui.set_max_width(460.0);
        ui.heading(format!("Steerloft {}", env!("CARGO_PKG_VERSION")));
        ui.label("A bench for the steering and suspension linkages of small cars.");
        ui.add_space(Metrics::GAP_LARGE);
        ui.label(RichText::new("Mind when you work on a car").strong());
        for caution in CAUTIONS {
            ui.add_space(Metrics::GAP_SMALL);
            ui.label(*caution);
        }
        ui.add_space(Metrics::GAP_LARGE);
        if ui.button("Close").clicked() {
            intents.push(Intent::ClosePage);
        }
    });
    if modal.should_close() {
        intents.push(Intent::ClosePage);
    }
}

/// A window over everything else that is to be answered first.
pub(super) fn question(name: &str, ctx: &Context) -> Modal {
    let style = ctx.global_style();
    Modal::new(Id::unique(name)).frame(Frame::window(&style).inner_margin(Margin::same(18)))
}

/// Short cautions for whoever builds what was drawn.
pub const CAUTIONS: &[&str] = &[
    "Wheels off the ground and power off before you work on linkages. A servo can trap fingers.",
    "Turn the wheels to full lock by hand, both ways, over the whole wheel travel, and look for binding before you switch on.",
    "A kart, or anything that carries a person: have the design and the work checked by someone qualified, and follow the local rules and the scrutineering of the class.",
    "Figures are geometry. They are no promise of how a car handles.",
];

pub(super) fn attention_frame(tokens: &Tokens) -> Frame {
    Frame::new()
        .fill(tokens.warning_soft)
        .inner_margin(Margin::symmetric(Metrics::MARGIN, 6))
}
