//! Name and notes of the car, and the way back to the bench.

use eframe::egui::{CollapsingHeader, RichText, TextEdit, Ui};
use steerloft_setup::edit::CarEdit;
use steerloft_setup::measuring::HOW;

use super::new_car::NewCar;
use crate::commands::Command;
use crate::state::{Bench, Change};
use crate::ui::{Intent, Intents, names, widgets};

pub(super) fn show(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    widgets::name_row(
        ui,
        |ui| {
            ui.label(RichText::new("The car itself").heading().strong());
        },
        |ui| {
            if ui
                .button("Done")
                .on_hover_text("Back to the adjustments")
                .clicked()
            {
                intents.push(Intent::Command(Command::EditCar));
            }
        },
    );
    let car = &bench.setup().car;
    kind(ui, bench, intents);
    text(ui, "Car name", &car.name, 1, CarEdit::Name, intents);
    CollapsingHeader::new("Notes")
        .id_salt("car notes")
        .show_unindented(ui, |ui| {
            text(ui, "Car notes", &car.notes, 4, CarEdit::Notes, intents);
        });
    CollapsingHeader::new("How to measure")
        .id_salt("how to measure")
        .default_open(car.adjustments.is_empty())
        .show_unindented(ui, |ui| {
            ui.weak(HOW);
            ui.weak("Click the name of a point to see from where to where each of its numbers is measured.");
        });
}

/// What kind of car it is, and the way to another one.
fn kind(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    let NewCar { suspension, drive } = NewCar::of(bench);
    ui.horizontal_wrapped(|ui| {
        let text = format!("{}, {}", suspension.label(), drive.label());
        ui.weak(names::sentence(&text));
        let button = ui.small_button("Another kind\u{2026}");
        let hint = Command::Kinds.tooltip();
        if button.on_hover_text(hint).clicked() {
            intents.push(Intent::Command(Command::Kinds));
        }
    });
}

fn text(
    ui: &mut Ui,
    name: &str,
    value: &str,
    rows: usize,
    edit: fn(String) -> CarEdit,
    intents: &mut Intents,
) {
    let mut text = value.to_owned();
    let field = if rows == 1 {
        TextEdit::singleline(&mut text)
    } else {
        TextEdit::multiline(&mut text).desired_rows(rows)
    };
    let response = ui
        .add(field.desired_width(f32::INFINITY))
        .accessible_name(name);
    if response.changed() {
        intents.push(Intent::Preview(Change::Car(Box::new(edit(text)))));
    }
    if response.lost_focus() {
        intents.push(Intent::Finish);
    }
}
