//! What a car may give or leave out: a button that gives it, and one that leaves it out again.

use eframe::egui::{Button, Ui};

use super::{Intents, car_change, widgets};
use crate::state::{Bench, Part};

/// Draws the one of both buttons that has a use; whether the car gives the part.
pub fn give_or_leave_out(ui: &mut Ui, bench: &Bench, part: Part, intents: &mut Intents) -> bool {
    let car = &bench.setup().car;
    if part.is_given(car) {
        leave_out(ui, bench, part, intents);
        return true;
    }
    let Some(edit) = part.given(car) else {
        return false;
    };
    let button = ui.button(format!("Give the {}", part.title()));
    let hint = "With round values to start from: put in those of your own.";
    if button.on_hover_text(hint).clicked() {
        intents.apply(car_change(edit));
    }
    false
}

/// Draws the button that leaves the part out.
fn leave_out(ui: &mut Ui, bench: &Bench, part: Part, intents: &mut Intents) {
    let name = format!("Leave out the {}", part.title());
    let button = Button::new("Leave out").small();
    let clicked = widgets::named_button(ui, true, button, &name)
        .on_hover_text(&name)
        .clicked();
    if clicked && let Some(edit) = part.left_out(&bench.setup().car) {
        intents.apply(car_change(edit));
    }
}
