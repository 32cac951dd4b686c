//! A new car from nothing: which suspension, which drive.

use eframe::egui::{Button, Context, RichText, Ui, vec2};
use steerloft_setup::edit::{DriveKind, SuspensionKind};

use crate::theme::Metrics;
use crate::ui::messages::question;
use crate::ui::{Intent, Intents, names, widgets};

/// What has been chosen so far.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NewCar {
    /// The suspension.
    pub suspension: SuspensionKind,
    /// The drive.
    pub drive: DriveKind,
}

impl Default for NewCar {
    fn default() -> Self {
        Self {
            suspension: SuspensionKind::DoubleWishbone,
            drive: DriveKind::SwingArm,
        }
    }
}

const fn about_suspension(kind: SuspensionKind) -> &'static str {
    match kind {
        SuspensionKind::FixedKingpin => {
            "The knuckle turns on a pin fixed in the chassis; no travel. Karts."
        }
        SuspensionKind::SlidingKingpin => "The knuckle turns on a fixed pin and slides along it.",
        SuspensionKind::SwingingUpperArm => {
            "The kingpin slides through a ball in the chassis, and an upper arm swings its top."
        }
        SuspensionKind::DoubleWishbone => {
            "A lower and an upper arm carry the knuckle by two balls."
        }
        SuspensionKind::Strut => "A lower arm, and a strut that turns in a mount above.",
    }
}

const fn about_drive(kind: DriveKind) -> &'static str {
    match kind {
        DriveKind::SwingArm => "Both tie rods on one arm: on the servo, or a column.",
        DriveKind::TwinCrank => {
            "Two cranks joined by a cross link, one of them pushed by a drag link."
        }
        DriveKind::Slider => "Both tie rods on a rack that slides across.",
    }
}

/// Asks what the new car is to have.
pub fn show(ctx: &Context, new: &mut NewCar, intents: &mut Intents) {
    let modal = question("new car", ctx).show(ctx, |ui| {
        ui.set_max_width(440.0);
        ui.heading("New car");
        ui.weak("It starts with guessed points of a 1:10 car; type or drag your own.");
        choices(ui, new);
        ui.add_space(Metrics::GAP_LARGE);
        ui.horizontal(|ui| {
            let button = |text| Button::new(text).min_size(vec2(84.0, 26.0));
            if ui.add(button("Create")).clicked() {
                intents.push(Intent::CreateCar(*new));
            }
            if ui.add(button("Cancel")).clicked() {
                intents.push(Intent::ClosePage);
            }
        });
    });
    if modal.should_close() {
        intents.push(Intent::ClosePage);
    }
}

/// The kinds to choose from.
pub(super) fn choices(ui: &mut Ui, new: &mut NewCar) {
    ui.add_space(Metrics::GAP);
    ui.label(RichText::new("Suspension").strong());
    for kind in SuspensionKind::ALL {
        let about = about_suspension(kind);
        option(ui, &mut new.suspension, kind, kind.label(), about);
    }
    ui.add_space(Metrics::GAP);
    ui.label(RichText::new("Steering drive").strong());
    for kind in DriveKind::ALL {
        option(ui, &mut new.drive, kind, kind.label(), about_drive(kind));
    }
}

fn option<T: Copy + PartialEq>(ui: &mut Ui, chosen: &mut T, kind: T, name: &str, about: &str) {
    ui.horizontal_wrapped(|ui| {
        widgets::radio(ui, chosen, kind, names::sentence(name));
        ui.weak(about);
    });
}
