//! What stands over a plot: the curve's title, in which state it is taken, what is amiss, and keys to the lines.

use eframe::egui::{
    Align, FontSelection, Layout, RichText, Sense, Shape, Stroke, TextStyle, TextWrapMode, Ui,
    WidgetText, pos2, vec2,
};
use egui_plot::LineStyle;
use steerloft_analysis::curves::CurveKind;

use super::arrange::panel_menu;
use super::panel::LineInk;
use crate::commands::Command;
use crate::theme::{Metrics, Tokens};
use crate::ui::{Intent, Intents, ViewState};

/// Length of a line's sample, points.
const SAMPLE: f32 = 18.0;

/// Width of the button of a panel's menu, points.
const MENU: f32 = 30.0;

/// What stands over a plot.
pub(super) struct Heading<'a> {
    /// The curve.
    pub(super) kind: CurveKind,
    /// In which state of the car it is taken.
    pub(super) note: &'a str,
    /// Where and why it ends early; empty if it does not.
    pub(super) warning: &'a str,
    /// Whether a part of it lies beyond the axes.
    pub(super) is_cut: bool,
    /// What each line is.
    pub(super) keys: &'a [(&'a str, LineInk)],
}

impl Heading<'_> {
    /// Draws the title, which says on hover what the curve means, the note, what is amiss, and the keys to the lines.
    ///
    /// Where the panel is too narrow for all in one row, the note and what is amiss stand with the keys.
    pub(super) fn show(&self, ui: &mut Ui, view: &ViewState, intents: &mut Intents) {
        let is_wide = self.width_of_row(ui) <= ui.available_width();
        ui.horizontal(|ui| {
            ui.label(RichText::new(self.kind.title()).strong())
                .on_hover_text(self.kind.meaning());
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                panel_menu(ui, self.kind, view, intents);
                if is_wide {
                    self.notes(ui, intents);
                }
            });
        });
        if self.keys.is_empty() && is_wide {
            return;
        }
        ui.horizontal_wrapped(|ui| {
            if !is_wide {
                self.notes(ui, intents);
            }
            ui.spacing_mut().item_spacing = vec2(2.0, 2.0);
            for (name, ink) in self.keys {
                key(ui, name, ink);
            }
        });
    }

    /// The note and what is amiss.
    fn notes(&self, ui: &mut Ui, intents: &mut Intents) {
        let warning = Tokens::of(ui.ctx()).warning;
        ui.weak(RichText::new(self.note).small());
        if !self.warning.is_empty() {
            ui.colored_label(warning, RichText::new(ENDS_EARLY).small())
                .on_hover_text(self.warning);
        }
        if self.is_cut {
            let text = RichText::new(CUT).small().color(warning);
            let link = ui.link(text).on_hover_text(
                "A part of the curve lies beyond the axes. Click to fit them to the curves.",
            );
            if link.clicked() {
                intents.push(Intent::Command(Command::FitCurves));
            }
        }
    }

    /// Width of title, notes and menu in one row, points.
    fn width_of_row(&self, ui: &Ui) -> f32 {
        let amiss = [(!self.warning.is_empty(), ENDS_EARLY), (self.is_cut, CUT)];
        let small = amiss.iter().filter(|(is, _)| *is).map(|(_, text)| *text);
        let small: f32 = std::iter::once(self.note)
            .chain(small)
            .map(|text| width(ui, RichText::new(text).small()) + Metrics::GAP)
            .sum();
        width(ui, RichText::new(self.kind.title()).strong()) + small + MENU + Metrics::GAP
    }
}

const ENDS_EARLY: &str = "ends early";
const CUT: &str = "beyond the axes";

/// Width of a text in one line, points.
pub(super) fn width(ui: &Ui, text: RichText) -> f32 {
    let text = WidgetText::from(text);
    let wrap = Some(TextWrapMode::Extend);
    text.into_galley(ui, wrap, f32::INFINITY, FontSelection::Default)
        .size()
        .x
}

/// A sample of a line with its name, kept together where the row wraps.
fn key(ui: &mut Ui, name: &str, ink: &LineInk) {
    let font = TextStyle::Small.resolve(ui.style());
    let text = ui
        .painter()
        .layout_no_wrap(name.to_owned(), font, ui.visuals().text_color());
    let size = vec2(SAMPLE + 5.0 + text.size().x + 4.0, 16.0);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let ends = [rect.left_center(), rect.left_center() + vec2(SAMPLE, 0.0)];
    let stroke = Stroke::new(ink.width, ink.color);
    let painter = ui.painter();
    match ink.style {
        LineStyle::Solid => {
            painter.line_segment(ends, stroke);
        }
        LineStyle::Dashed { length } => {
            painter.extend(Shape::dashed_line(&ends, stroke, length, length * 0.6));
        }
        LineStyle::Dotted { spacing } => {
            painter.extend(Shape::dotted_line(
                &ends,
                ink.color,
                spacing,
                ink.width * 0.7,
            ));
        }
    }
    let place = pos2(ends[1].x + 5.0, rect.center().y - text.size().y / 2.0);
    painter.galley(place, text, ui.visuals().text_color());
}
