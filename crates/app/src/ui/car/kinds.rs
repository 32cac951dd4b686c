//! Another suspension or drive for the car that is worked on.

use eframe::egui::{Button, Context, RichText, ScrollArea, Ui, vec2};
use steerloft_setup::edit::{DriveKind, EditError, OtherKinds, SuspensionKind};

use super::new_car::{NewCar, choices};
use crate::state::Bench;
use crate::theme::{Metrics, Tokens};
use crate::ui::messages::question;
use crate::ui::{Intent, Intents, names};

/// Height of everything but what is told, points.
const REST: f32 = 510.0;

impl NewCar {
    /// The kinds of the car that is worked on.
    #[must_use]
    pub fn of(bench: &Bench) -> Self {
        let car = &bench.setup().car;
        Self {
            suspension: SuspensionKind::of(&car.left.suspension),
            drive: DriveKind::of(&car.drive),
        }
    }
}

/// Asks what the car is to become, and says what that would mean.
pub fn show(ctx: &Context, bench: &Bench, kinds: &mut NewCar, intents: &mut Intents) {
    let modal = question("another kind", ctx).show(ctx, |ui| {
        ui.set_max_width(600.0);
        ui.heading("Another kind of car");
        choices(ui, kinds);
        ui.add_space(Metrics::GAP);
        let differs = *kinds != NewCar::of(bench);
        let outcome = bench.setup().with_kinds(kinds.suspension, kinds.drive);
        // As high whatever is told, so that nothing jumps while kinds are tried.
        let room = (ctx.content_rect().height() - REST).clamp(120.0, 300.0);
        ScrollArea::vertical()
            .max_height(room)
            .min_scrolled_height(room)
            .auto_shrink([false, false])
            .show(ui, |ui| {
                if differs {
                    tell(ui, &outcome);
                } else {
                    ui.weak("This is what the car is. Choose another suspension or drive to see what that would mean.");
                }
            });
        ui.add_space(Metrics::GAP_LARGE);
        ui.horizontal(|ui| {
            let button = |text| Button::new(text).min_size(vec2(84.0, 26.0));
            let can = differs && outcome.is_ok();
            if ui.add_enabled(can, button("Change")).clicked() {
                intents.push(Intent::ChangeKinds(*kinds));
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

fn tell(ui: &mut Ui, outcome: &Result<OtherKinds, EditError>) {
    let tokens = Tokens::of(ui.ctx());
    let other = match outcome {
        Ok(other) => other,
        Err(error) => {
            ui.colored_label(tokens.warning, format!("It cannot be: {error}."));
            return;
        }
    };
    part(
        ui,
        "Stays",
        "Wheels, kingpins, steering arms and inner tie-rod balls, so the rods keep their lengths; wheelbase, tyres, notes, spacers and all else that is not named here.",
    );
    for (title, told) in [
        ("Given up", &other.given_up),
        ("A guess, to be measured", &other.guessed),
        ("To be looked at again", &other.to_check),
    ] {
        if !told.is_empty() {
            part(
                ui,
                title,
                &format!("{}.", names::sentence(&told.join("; "))),
            );
        }
    }
}

fn part(ui: &mut Ui, title: &str, text: &str) {
    ui.label(RichText::new(title).strong());
    ui.label(text);
    ui.add_space(Metrics::GAP_SMALL);
}
