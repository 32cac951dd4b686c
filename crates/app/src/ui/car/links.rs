//! The links of twin cranks: which crank is driven, what carries the inner balls, how long the links are.

use eframe::egui::{Button, Ui};
use steerloft_setup::adjustment::Member;
use steerloft_setup::car::{Drive, DrivenCrank, InnerBallsOn};
use steerloft_setup::edit::CarEdit;

use super::{field, numbers};
use crate::state::{Bench, CarEditing, CarNumber, edit_refused};
use crate::ui::{Intents, car_change, names, widgets};

/// Draws them; nothing for other drives.
pub(super) fn show(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    let Drive::TwinCrank {
        driven,
        inner_on,
        drag_length,
        cross_length,
        ..
    } = bench.setup().car.drive
    else {
        return;
    };
    widgets::group_heading(ui, "Cranks and links");
    let cranks = [DrivenCrank::Left, DrivenCrank::Right];
    let chosen = cranks.iter().position(|crank| *crank == driven);
    let hint = "The crank that the drag link turns. For the other one, the link's ball goes to the mirror image place there; the servo stays.";
    if let Some(index) = choice(ui, "Driven crank", hint, ["left", "right"], chosen) {
        try_edit(editing, bench, intents, CarEdit::DrivenCrank(cranks[index]));
    }
    let carriers = [InnerBallsOn::Cranks, InnerBallsOn::CrossLink];
    let chosen = carriers.iter().position(|carrier| *carrier == inner_on);
    let hint = "What carries the inner tie-rod balls. On the cross link they go to the nearest place on its line.";
    if let Some(index) = choice(ui, "Inner balls on", hint, ["cranks", "cross link"], chosen) {
        let edit = CarEdit::InnerBallsOn(carriers[index]);
        try_edit(editing, bench, intents, edit);
    }
    if let Some(refused) = &editing.refused {
        field::complain(ui, &format!("{}.", names::sentence(refused)));
    }
    for (link, length) in [
        (Member::DragLink, drag_length),
        (Member::CrossLink, cross_length),
    ] {
        let number = CarNumber::Link(link);
        numbers::row(ui, bench, editing, intents, number);
        ui.horizontal(|ui| {
            let button = Button::new("as drawn").small();
            let name = format!("{} as drawn", number.title());
            let drawn = widgets::named_button(ui, length.is_some(), button, &name);
            if drawn.clicked() {
                let edit = CarEdit::LinkLength { link, to: None };
                intents.apply(car_change(edit));
            }
            ui.weak(if length.is_some() {
                "a length of its own"
            } else {
                "as far as its balls are apart"
            });
        });
    }
}

fn choice(
    ui: &mut Ui,
    title: &str,
    hint: &str,
    options: [&str; 2],
    chosen: Option<usize>,
) -> Option<usize> {
    ui.horizontal(|ui| {
        ui.label(title).on_hover_text(hint);
        widgets::segments(ui, title, options.into_iter(), chosen)
    })
    .inner
}

/// Makes an edit, or keeps why it cannot be made.
fn try_edit(editing: &mut CarEditing, bench: &Bench, intents: &mut Intents, edit: CarEdit) {
    editing.refused = edit_refused(bench.setup(), &edit);
    if editing.refused.is_none() {
        intents.apply(car_change(edit));
    }
}
