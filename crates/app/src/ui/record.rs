//! The record of the setup: what it is for and what was found with it.

use eframe::egui::{CollapsingHeader, Response, RichText, TextEdit, Ui};
use steerloft_setup::setup::{Record, Run};

use super::{Intent, Intents};
use crate::state::{Bench, Change};
use crate::theme::Metrics;

/// The single-line fields: name and where it is in the record.
type Field = (&'static str, fn(&mut Record) -> &mut String);

const FIELDS: [Field; 5] = [
    ("Name", |record| &mut record.name),
    ("Date", |record| &mut record.date),
    ("Event", |record| &mut record.event),
    ("Surface", |record| &mut record.surface),
    ("Grip", |record| &mut record.grip),
];

/// Width of the fields' names.
const NAME_WIDTH: f32 = 56.0;

/// Draws the section, closed at first.
pub fn show(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    ui.add_space(Metrics::GAP);
    CollapsingHeader::new(RichText::new("Record").heading().strong())
        .id_salt("record")
        .show_unindented(ui, |ui| fields(ui, &bench.setup().record, intents));
}

fn fields(ui: &mut Ui, record: &Record, intents: &mut Intents) {
    for (name, of) in FIELDS {
        let mut edited = record.clone();
        ui.horizontal(|ui| {
            field_name(ui, name);
            let text = of(&mut edited);
            let response = ui.add(TextEdit::singleline(text).desired_width(f32::INFINITY));
            let response = response.accessible_name(name);
            follow(&response, edited, intents);
        });
    }
    ui.weak("Notes");
    let mut edited = record.clone();
    let text = TextEdit::multiline(&mut edited.notes)
        .desired_rows(3)
        .desired_width(f32::INFINITY);
    let response = ui.add(text);
    let response = response.accessible_name("Notes");
    follow(&response, edited, intents);
    runs(ui, record, intents);
}

fn runs(ui: &mut Ui, record: &Record, intents: &mut Intents) {
    for index in 0..record.runs.len() {
        ui.push_id(index, |ui| run(ui, record, index, intents));
    }
    if ui.button("Add a run").clicked() {
        let mut edited = record.clone();
        edited.runs.push(Run::default());
        intents.apply(Change::Record(Box::new(edited)));
    }
}

fn run(ui: &mut Ui, record: &Record, index: usize, intents: &mut Intents) {
    let number = index + 1;
    ui.horizontal(|ui| {
        ui.weak(format!("Run {number}"));
        if ui.small_button(format!("Remove run {number}")).clicked() {
            let mut edited = record.clone();
            edited.runs.remove(index);
            intents.apply(Change::Record(Box::new(edited)));
        }
    });
    let mut edited = record.clone();
    let Some(run) = edited.runs.get_mut(index) else {
        return;
    };
    let date = TextEdit::singleline(&mut run.date)
        .hint_text("When")
        .desired_width(f32::INFINITY);
    let date = ui.add(date);
    let notes = TextEdit::multiline(&mut run.notes)
        .hint_text("What was found")
        .desired_rows(2)
        .desired_width(f32::INFINITY);
    let notes = ui.add(notes);
    let date = date.accessible_name(format!("Run {number}: when"));
    let notes = notes.accessible_name(format!("Run {number}: what was found"));
    follow(&(date | notes), edited, intents);
}

fn field_name(ui: &mut Ui, name: &str) {
    let (rect, _) = ui.allocate_exact_size(
        eframe::egui::vec2(NAME_WIDTH, Metrics::CONTROL_HEIGHT),
        eframe::egui::Sense::hover(),
    );
    let font = eframe::egui::TextStyle::Body.resolve(ui.style());
    ui.painter().text(
        rect.left_center(),
        eframe::egui::Align2::LEFT_CENTER,
        name,
        font,
        ui.visuals().weak_text_color(),
    );
}

/// While a text is edited, the change goes on; leaving the field ends it.
fn follow(response: &Response, edited: Record, intents: &mut Intents) {
    if response.changed() {
        intents.push(Intent::Preview(Change::Record(Box::new(edited))));
    }
    if response.lost_focus() {
        intents.push(Intent::Finish);
    }
}
