//! A number that can be dragged and typed: with comma or point, as a sum, in mm or inches.
//!
//! While a sum is typed its result stands below the field; what cannot be read is said there in words, and stays there
//! when the field is left, until something else is pressed.

use std::cell::RefCell;
use std::ops::RangeInclusive;

use eframe::egui::{
    Context, CornerRadius, DragValue, Id, Key, Response, Stroke, StrokeKind, Tooltip, Ui, vec2,
};

use super::units_of;
use crate::entry::{self, Measure};
use crate::format;
use crate::theme::{Metrics, Tokens};
use crate::units::Units;

/// Widest a note below a field gets, points.
const NOTE_WIDTH: f32 = 260.0;

/// A number that can be dragged and typed. It is held in mm or degrees whatever unit is shown.
pub struct NumberField<'a> {
    /// Accessible name.
    pub name: &'a str,
    /// Unit in which it is held: "mm", "\u{b0}", or any other sign, which is shown as it is.
    pub unit: &'static str,
    /// Least and greatest value.
    pub range: RangeInclusive<f64>,
    /// Change per point of dragging and per key.
    pub speed: f64,
    /// Decimals shown at most; zeros at the end are left out.
    pub decimals: usize,
}

/// What has been typed so far, or was refused when the field was left.
#[derive(Debug, Clone, PartialEq)]
enum Note {
    Result(String),
    Refused(String),
}

impl NumberField<'_> {
    /// Draws the field, which changes the value.
    pub fn show(&self, ui: &mut Ui, value: &mut f64) -> Response {
        let units = units_of(ui.ctx());
        let id = ui.next_auto_id();
        let editing = ui.memory(|memory| memory.has_focus(id));
        let given_up = given_up(ui.ctx(), id, editing);
        let before = self.text(*value, units);
        // What the parser was given in this frame, and what it made of it.
        let typed = RefCell::new(None);
        let parser = |text: &str| {
            let read = self.read(text, units);
            let taken = read.as_ref().ok().copied();
            *typed.borrow_mut() = Some((text.to_owned(), read));
            // While it is typed nothing is taken, and what was not touched stays as fine as it was.
            taken.filter(|_| !editing && !given_up && text != before)
        };
        let field = DragValue::new(value)
            .range(self.range.clone())
            .clamp_existing_to_range(false)
            .speed(self.speed)
            .min_size(vec2(Metrics::FIELD_WIDTH, Metrics::CONTROL_HEIGHT))
            .clip_text(true)
            .update_while_editing(true)
            .custom_formatter(|value, _| self.text(value, units))
            .custom_parser(parser)
            .suffix(self.suffix(units));
        let response = ui.add(field).accessible_name(self.name);
        if response.lost_focus() {
            // What was typed is taken in the next frame.
            ui.ctx().request_repaint();
        }
        let typed = typed.into_inner().filter(|_| !given_up);
        let note = self.note(ui.ctx(), &response, editing, typed, units);
        if let Some(note) = note {
            show_note(ui, &response, &note);
        }
        response
    }

    fn text(&self, value: f64, units: Units) -> String {
        let unit = units.unit(self.unit, self.decimals);
        format::short(value * unit.factor, unit.decimals)
    }

    fn suffix(&self, units: Units) -> String {
        format::with_unit("", units.unit(self.unit, 0).sign)
    }

    fn with_unit(&self, value: f64, units: Units) -> String {
        format::with_unit(&self.text(value, units), units.unit(self.unit, 0).sign)
    }

    /// What a text says, within the range.
    fn read(&self, text: &str, units: Units) -> Result<f64, String> {
        let value = entry::read(text, Measure::in_unit(self.unit), units)
            .map_err(|error| error.to_string())?;
        let (least, greatest) = (*self.range.start(), *self.range.end());
        // The ends as they are shown are rounded, and count as the ends.
        let unit = units.unit(self.unit, self.decimals);
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_possible_wrap,
            reason = "a few"
        )]
        let slack = 0.51 * 10_f64.powi(-(unit.decimals as i32)) / unit.factor;
        if value < least - slack || value > greatest + slack {
            return Err(format!(
                "{} is out of range: {} to {}",
                self.with_unit(value, units),
                self.text(least, units),
                self.with_unit(greatest, units)
            ));
        }
        Ok(value.clamp(least, greatest))
    }

    /// What stands below the field, kept from frame to frame.
    fn note(
        &self,
        ctx: &Context,
        response: &Response,
        editing: bool,
        typed: Option<(String, Result<f64, String>)>,
        units: Units,
    ) -> Option<Note> {
        let id = response.id.with("note");
        if response.gained_focus() {
            ctx.data_mut(|data| data.remove::<Note>(id));
        }
        if let Some((text, read)) = typed {
            let note = match read {
                Err(why) => Some(Note::Refused(why)),
                Ok(value) if editing && entry::is_reckoned(&text) => {
                    Some(Note::Result(format!("= {}", self.with_unit(value, units))))
                }
                Ok(_) => None,
            };
            keep(ctx, id, note);
        } else if !editing && !response.lost_focus() && something_pressed(ctx) {
            keep(ctx, id, None);
        }
        ctx.data(|data| data.get_temp::<Note>(id))
            .filter(|note| editing || matches!(note, Note::Refused(_)))
    }
}

/// Whether the field was last left with Escape. The library counts a field as just left for two frames, and the key is seen in
/// the first of them only.
fn given_up(ctx: &Context, id: Id, editing: bool) -> bool {
    let id = id.with("given up");
    if editing {
        ctx.data_mut(|data| data.remove::<bool>(id));
        return false;
    }
    if ctx.input(|input| input.key_pressed(Key::Escape)) {
        ctx.data_mut(|data| {
            data.insert_temp(id, true);
        });
    }
    ctx.data(|data| data.get_temp(id).unwrap_or(false))
}

fn keep(ctx: &Context, id: Id, note: Option<Note>) {
    ctx.data_mut(|data| match note {
        Some(note) => {
            data.insert_temp(id, note);
        }
        None => data.remove::<Note>(id),
    });
}

fn something_pressed(ctx: &Context) -> bool {
    ctx.input(|input| {
        input.pointer.any_pressed()
            || input
                .events
                .iter()
                .any(|event| matches!(event, eframe::egui::Event::Key { pressed: true, .. }))
    })
}

fn show_note(ui: &Ui, response: &Response, note: &Note) {
    let tokens = Tokens::of(ui.ctx());
    let (text, ink) = match note {
        Note::Result(text) => (text, tokens.text),
        Note::Refused(text) => {
            ui.painter().rect_stroke(
                response.rect,
                CornerRadius::same(Metrics::CORNER),
                Stroke::new(1.5, tokens.warning),
                StrokeKind::Outside,
            );
            (text, tokens.warning)
        }
    };
    Tooltip::always_open(
        ui.ctx().clone(),
        response.layer_id,
        response.id.with("note"),
        response.rect,
    )
    .show(|ui| {
        ui.set_max_width(NOTE_WIDTH);
        ui.colored_label(ink, super::names::sentence(text));
    });
}
