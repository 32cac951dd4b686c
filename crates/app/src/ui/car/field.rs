//! A field of the car's description, with what is wrong with its text beside it.

use eframe::egui::{Color32, Id, Key, Modifiers, Response, RichText, TextEdit, Ui};
use steerloft_setup::car::Car;
use steerloft_setup::edit::CarEdit;
use steerloft_setup::setup::Setup;

use crate::entry::{self, Measure};
use crate::format;
use crate::state::{Bench, Entries, Field, TextField};
use crate::theme::Tokens;
use crate::ui::{Intent, Intents, car_change, units_of};
use crate::units::Units;

/// Decimals shown at most.
const DECIMALS: usize = 3;

/// Draws a field of a width and takes what is typed; whether it has the focus.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    entries: &mut Entries,
    intents: &mut Intents,
    (field, name, width): (Field, &str, f32),
) -> bool {
    let units = units_of(ui.ctx());
    let setup = bench.setup();
    let Some(value) = field.value(&setup.car) else {
        return false;
    };
    if let Some(by) = nudge(ui, name, field.unit(&setup.car), units) {
        let to = format::without_dust(value + by);
        let text = shown(to, field, &setup.car, units);
        let edit = |_: &str| edit_of(field, setup, to);
        if let Some(edit) = entries.take(field, text, setup, edit) {
            intents.push(Intent::Preview(car_change(edit)));
        }
    }
    let mut text = entries
        .text(field)
        .map_or_else(|| shown(value, field, &setup.car, units), str::to_owned);
    let wrong = entries.error(field).is_some();
    let tokens = Tokens::of(ui.ctx());
    let ink = wrong.then_some(tokens.warning);
    let response = text_field(ui, &mut text, name, width, ink);
    if response.changed() {
        let measure = Measure::in_unit(field.unit(&setup.car));
        let edit = |text: &str| {
            let value = entry::read(text, measure, units).map_err(|error| error.to_string())?;
            edit_of(field, setup, value)
        };
        if let Some(edit) = entries.take(field, text, setup, edit) {
            intents.push(Intent::Preview(car_change(edit)));
        }
    }
    left(ui, &response, entries, intents, field);
    response.has_focus()
}

/// The edit that gives a field a value.
fn edit_of(field: Field, setup: &Setup, value: f64) -> Result<CarEdit, String> {
    let edit = field.edit(&setup.car, value);
    edit.ok_or_else(|| "this car has no such part".to_owned())
}

/// What the arrow keys add to the value of the field that has the focus, mm or degrees: a tenth of either for each press, five
/// thousandths of an inch, a hundredth of a part of a direction.
fn nudge(ui: &Ui, name: &str, unit: &'static str, units: Units) -> Option<f64> {
    if !ui.memory(|memory| memory.has_focus(id_of(name))) {
        return None;
    }
    let presses = |key| {
        let count = ui.input_mut(|input| input.count_and_consume_key(Modifiers::NONE, key));
        u16::try_from(count).map_or(0.0, f64::from)
    };
    let steps = presses(Key::ArrowUp) - presses(Key::ArrowDown);
    let step = match (unit, units) {
        ("", _) => 0.01,
        ("mm", Units::Inches) => units.millimetres(0.005),
        _ => 0.1,
    };
    (steps.abs() > 0.0).then_some(steps * step)
}

/// Draws a field for a text, as wide as there is room, and takes what is typed.
pub(super) fn show_text(
    ui: &mut Ui,
    bench: &Bench,
    entries: &mut Entries,
    intents: &mut Intents,
    (text_of, name): (TextField, &str),
) {
    let units = units_of(ui.ctx());
    let setup = bench.setup();
    let Some(held) = text_of.text(&setup.car, units) else {
        return;
    };
    let field = Field::Text(text_of);
    let mut text = entries.text(field).map_or(held, str::to_owned);
    let tokens = Tokens::of(ui.ctx());
    let ink = entries.error(field).map(|_| tokens.warning);
    let width = ui.available_width();
    let response = text_field(ui, &mut text, name, width, ink);
    if response.changed() {
        let edit = |text: &str| text_of.edit(&setup.car, text, units);
        if let Some(edit) = entries.take(field, text, setup, edit) {
            intents.push(Intent::Preview(car_change(edit)));
        }
    }
    left(ui, &response, entries, intents, field);
}

/// Ends what was typed when its field is left: with Escape it is taken back.
fn left(ui: &Ui, response: &Response, entries: &mut Entries, intents: &mut Intents, field: Field) {
    if !response.lost_focus() {
        return;
    }
    if ui.input(|input| input.key_pressed(Key::Escape)) {
        entries.reset(field);
        intents.push(Intent::Cancel);
    } else {
        entries.leave(field);
        intents.push(Intent::Finish);
    }
}

fn id_of(name: &str) -> Id {
    Id::unique(("car", name))
}

/// A text field that keeps the focus while lines come and go around it.
pub(super) fn text_field(
    ui: &mut Ui,
    text: &mut String,
    name: &str,
    width: f32,
    ink: Option<Color32>,
) -> Response {
    let field = TextEdit::singleline(text)
        .id(id_of(name))
        .desired_width(width)
        .text_color_opt(ink);
    ui.add(field).accessible_name(name)
}

/// Says beside a field what is wrong with its text.
pub(super) fn error(ui: &mut Ui, entries: &Entries, field: Field, name: &str) {
    if let Some(error) = entries.error(field) {
        complain(ui, &format!("{name}: {error}."));
    }
}

/// Words about something that is wrong.
pub(super) fn complain(ui: &mut Ui, text: &str) {
    let tokens = Tokens::of(ui.ctx());
    let text = units_of(ui.ctx()).sentence(text);
    ui.label(RichText::new(text).small().color(tokens.warning));
}

/// The unit as it is written behind a field.
pub(super) fn unit(field: Field, car: &Car, units: Units) -> &'static str {
    units.unit(field.unit(car), DECIMALS).sign
}

fn shown(value: f64, field: Field, car: &Car, units: Units) -> String {
    let unit = units.unit(field.unit(car), DECIMALS);
    format::short(value * unit.factor, unit.decimals)
}
