//! What a car may give or leave out: thread, ball joints, sizes that could touch.

use eframe::egui::Ui;
use steerloft_setup::car::{Hands, Thread, TieRodParts};
use steerloft_setup::edit::CarEdit;
use steerloft_solver::frame::Side;

use super::{numbers, vector};
use crate::state::studs::{self, RodEnd};
use crate::state::{Bench, CarEditing, Field, Part, further_number_groups};
use crate::theme::Metrics;
use crate::ui::{Intents, car_change, widgets};

/// Draws it.
pub(super) fn show(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    for group in further_number_groups() {
        let is_given = numbers::group(ui, bench, editing, intents, &group);
        match group.part {
            Some(Part::Thread) if is_given => hands(ui, bench, intents),
            Some(Part::Joints) if is_given => studs(ui, bench, editing, intents),
            _ => {}
        }
    }
}

fn hands(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    let parts = bench.setup().car.tie_rod;
    let Some(thread) = parts.thread else {
        return;
    };
    let all = [Hands::Opposite, Hands::Same];
    let chosen = all.iter().position(|hands| *hands == thread.hands);
    ui.horizontal(|ui| {
        ui.label("Hands").on_hover_text(
            "Opposite: a left- and a right-hand thread, and turning the rod moves both cups. Alike: one cup is taken off its ball and turned.",
        );
        let options = ["opposite", "alike"].into_iter();
        if let Some(index) = widgets::segments(ui, "Hands of the thread", options, chosen) {
            let thread = Some(Thread {
                hands: all[index],
                ..thread
            });
            intents.apply(car_change(CarEdit::TieRod(TieRodParts { thread, ..parts })));
        }
    });
}

fn studs(ui: &mut Ui, bench: &Bench, editing: &mut CarEditing, intents: &mut Intents) {
    let car = &bench.setup().car;
    ui.horizontal(|ui| {
        ui.label("Right studs");
        let options = ["mirror the left", "their own"].into_iter();
        let apart = studs::are_apart(car);
        let clicked = widgets::segments(ui, "Right studs", options, Some(usize::from(apart)));
        let edit = clicked.and_then(|index| studs::set_apart(car, index == 1));
        if let Some(edit) = edit {
            intents.apply(car_change(edit));
        }
    });
    for end in RodEnd::ALL {
        ui.add_space(Metrics::GAP_SMALL);
        ui.label(end.title()).on_hover_text(
            "Which way the ball's stud points, forward, left and up; only the ratio counts.",
        );
        for side in Side::BOTH {
            if studs::stud(car, end, side).is_some() {
                let word = side.to_string();
                let name = format!("{}, {side}", end.title());
                let words = (word.as_str(), name.as_str());
                vector::row(ui, bench, editing, intents, words, |axis| {
                    Field::Stud(end, side, axis)
                });
            }
        }
    }
}
