//! The table of readings.

use eframe::egui::{ComboBox, RichText, TextEdit, Ui};
use steerloft_setup::adjustment::Unit;

use crate::state::Bench;
use crate::state::fitting::{Fitting, ReadingKind, ReadingRow};
use crate::theme::Metrics;
use crate::ui::{Intent, Intents, widgets};
use crate::units::Units;

/// Width of a field, points.
const FIELD: f32 = 44.0;

/// Draws the lines, and what can be done with all of them.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    fitting: &mut Fitting,
    units: Units,
    intents: &mut Intents,
) {
    ui.label(RichText::new("Readings").strong()).on_hover_text(
        "Toe-in and camber with the top outboard are positive, degrees; angles of turned wheels from straight ahead, to the left positive. Leave a side empty that was not read.",
    );
    let input = match bench.setup().car.drive.input_unit() {
        Unit::Millimetres => units.sign(),
        Unit::Degrees => "\u{b0}",
    };
    let mut taken = None;
    for (index, row) in fitting.rows.iter_mut().enumerate() {
        ui.push_id(index, |ui| {
            if line(ui, &format!("Reading {}", index + 1), row, input, units) {
                taken = Some(index);
            }
        });
    }
    if let Some(index) = taken {
        fitting.rows.remove(index);
    }
    ui.horizontal_wrapped(|ui| {
        if ui.button("Add a reading").clicked() {
            let kind = fitting.rows.last().map_or(ReadingKind::Toe, |row| row.kind);
            fitting.rows.push(ReadingRow::new(kind));
        }
        let open = ui.button("Read from a file\u{2026}");
        let hint = "Take the readings and the uncertain dimensions of a file in the place of these";
        if open.on_hover_text(hint).clicked() {
            intents.push(Intent::OpenReadings);
        }
        let save = ui.button("Save readings\u{2026}");
        if save.on_hover_text("Write them to a file").clicked() {
            intents.push(Intent::SaveReadings);
        }
    });
    ui.add_space(Metrics::GAP_SMALL);
    let notes = TextEdit::singleline(&mut fitting.notes)
        .hint_text("when and with what they were taken")
        .desired_width(f32::INFINITY);
    ui.add(notes).accessible_name("Notes on the readings");
}

/// One line; whether it is to be taken away.
fn line(ui: &mut Ui, name: &str, row: &mut ReadingRow, input: &str, units: Units) -> bool {
    let mut taken = false;
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = Metrics::GAP_SMALL;
        kind(ui, name, row);
        field(ui, &format!("{name}: where"), &mut row.at, "");
        let place = if row.kind.is_at_length() {
            units.sign()
        } else {
            input
        };
        ui.label(place);
        field(ui, &format!("{name}: left"), &mut row.left, "left");
        field(ui, &format!("{name}: right"), &mut row.right, "right");
        ui.label("\u{b1}");
        field(
            ui,
            &format!("{name}: uncertainty"),
            &mut row.uncertainty,
            "",
        );
        ui.label("\u{b0}");
        taken = widgets::take_away(ui, name, "Do without this reading");
    });
    taken
}

fn field(ui: &mut Ui, name: &str, text: &mut String, hint: &str) {
    let field = TextEdit::singleline(text)
        .desired_width(FIELD)
        .hint_text(hint);
    ui.add(field).accessible_name(name);
}

fn kind(ui: &mut Ui, name: &str, row: &mut ReadingRow) {
    let list = ComboBox::from_id_salt("kind")
        .selected_text(row.kind.title())
        .width(136.0);
    let response = list.show_ui(ui, |ui| {
        for kind in ReadingKind::ALL {
            ui.selectable_value(&mut row.kind, kind, kind.title());
        }
    });
    response.response.accessible_name(format!("{name}: what"));
}
