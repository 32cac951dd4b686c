//! What stands in the way: boxes and planes that rods and knuckles must stay clear of.

use eframe::egui::Ui;
use steerloft_setup::car::{Obstacle, Shape};

use super::{field, removable, vector};
use crate::state::{Bench, CarEditing, Field, ObstacleField, TextField, obstacles};
use crate::theme::Metrics;
use crate::ui::{Intents, car_change, widgets};

/// Draws the list.
pub(super) fn show(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    widgets::group_heading(ui, "Obstacles");
    let car = &bench.setup().car;
    if car.obstacles.is_empty() {
        ui.weak("None yet: a battery, a post, a deck. The drawer Binding tells how near rods and knuckles come.");
    }
    for (index, obstacle) in car.obstacles.iter().enumerate() {
        ui.push_id(("obstacle", index), |ui| {
            one(ui, bench, editing, intents, (index, obstacle));
        });
    }
    ui.add_space(Metrics::GAP_SMALL);
    if ui.button("Add an obstacle").clicked() {
        intents.apply(car_change(obstacles::added(car)));
    }
}

fn one(
    ui: &mut Ui,
    bench: &Bench,
    editing: &mut CarEditing,
    intents: &mut Intents,
    (index, obstacle): (usize, &Obstacle),
) {
    let car = &bench.setup().car;
    let owner = format!("Obstacle {}", index + 1);
    ui.add_space(Metrics::GAP_SMALL);
    let name = format!("{owner} name");
    let text = TextField::ObstacleName(index);
    let removed = removable(ui, (true, &owner, ""), |ui| {
        field::show_text(ui, bench, &mut editing.entries, intents, (text, &name));
    });
    if removed {
        editing.entries.reset_lists();
        intents.apply(car_change(obstacles::without(car, index)));
    }
    field::error(ui, &editing.entries, Field::Text(text), &name);
    let is_plane = matches!(obstacle.shape, Shape::Plane { .. });
    ui.horizontal(|ui| {
        let options = ["box", "plane"].into_iter();
        let shape = widgets::segments(
            ui,
            &format!("{owner} shape"),
            options,
            Some(usize::from(is_plane)),
        );
        let edit = shape.and_then(|index_of| obstacles::reshaped(car, index, index_of == 1));
        let mut mirrored = obstacle.mirrored;
        let both = widgets::tick(ui, &mut mirrored, "on both sides")
            .accessible_name(format!("{owner} on both sides"))
            .on_hover_text("Its mirror image stands on the other side too.");
        let edit = edit.or_else(|| {
            let both = both.changed();
            both.then(|| obstacles::changed(car, index, |one| one.mirrored = mirrored))?
        });
        if let Some(edit) = edit {
            editing.entries.reset_lists();
            intents.apply(car_change(edit));
        }
    });
    let (place, extent) = if is_plane {
        ("point", "free to")
    } else {
        ("centre", "size")
    };
    let words = (place, format!("{owner} {place}"));
    vector::row(ui, bench, editing, intents, (words.0, &words.1), |axis| {
        Field::Obstacle(index, ObstacleField::Place(axis))
    });
    let words = (extent, format!("{owner} {extent}"));
    vector::row(ui, bench, editing, intents, (words.0, &words.1), |axis| {
        Field::Obstacle(index, ObstacleField::Extent(axis))
    });
}
