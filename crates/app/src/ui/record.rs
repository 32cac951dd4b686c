//! The record of the setup: what it is for and what was found with it.

use eframe::egui::{Button, CollapsingHeader, Response, RichText, TextEdit, Ui};
use steerloft_setup::setup::Record;

use super::{Drawer, Intent, Intents, ViewState};
use crate::commands::Command;
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
pub fn show(ui: &mut Ui, bench: &Bench, view: &ViewState, intents: &mut Intents) {
    let is_open = view.drawers.open == Some(Drawer::Runs);
    ui.add_space(Metrics::GAP);
    CollapsingHeader::new(RichText::new("Record").heading().strong())
        .id_salt("record")
        .show_unindented(ui, |ui| fields(ui, &bench.setup().record, is_open, intents));
}

fn fields(ui: &mut Ui, record: &Record, is_open: bool, intents: &mut Intents) {
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
    runs(ui, record, is_open, intents);
}

/// How many runs are noted, and a way to them.
fn runs(ui: &mut Ui, record: &Record, is_open: bool, intents: &mut Intents) {
    ui.horizontal(|ui| {
        ui.weak(match record.runs.len() {
            0 => "No run noted".to_owned(),
            1 => "1 run".to_owned(),
            runs => format!("{runs} runs"),
        });
        let button = Button::new("Open the run notes");
        if ui.add_enabled(!is_open, button).clicked() {
            intents.push(Intent::Command(Command::Drawer(Drawer::Runs)));
        }
    });
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
