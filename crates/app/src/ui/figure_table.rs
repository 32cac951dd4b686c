//! Every figure as a table that scrolls, in groups, each with what it means when the pointer rests on it.

use eframe::egui::{
    Align2, Color32, Label, Pos2, RichText, ScrollArea, Sense, TextStyle, Ui, WidgetInfo, pos2,
    vec2,
};
use steerloft_analysis::figures::{FigureGroup, Texts};
use steerloft_solver::frame::Side;

use super::figures::Shows;
use super::units_of;
use crate::state::Bench;
use crate::theme::{Metrics, Tokens};

/// Height of a row, points.
const ROW: f32 = 20.0;

/// Height of a row with the differences from a reference under the values, points.
const TALL_ROW: f32 = 34.0;

/// Width of a column of values, points.
const COLUMN: f32 = 76.0;

/// Room for the name of a side over its column, points.
const SIDE_NAME: f32 = 22.0;

/// Draws the table.
pub fn show(ui: &mut Ui, bench: &Bench) {
    let tokens = Tokens::of(ui.ctx());
    let Some(shown) = bench.derived().shown() else {
        ui.colored_label(tokens.text_weak, "No figures: the car cannot be assembled.");
        return;
    };
    let dimmed = bench.derived().trouble().is_some();
    let reference = bench.compared();
    let units = units_of(ui.ctx());
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = 0.0;
            for group in FigureGroup::ALL {
                heading(ui, group);
                for kind in group.kinds() {
                    show_row(
                        ui,
                        &Shows::new(shown.figure(kind), reference, units),
                        dimmed,
                    );
                }
                ui.add_space(Metrics::GAP_LARGE);
            }
        });
}

/// The group's name with the pose it is taken in, and over the values the sides they belong to.
fn heading(ui: &mut Ui, group: FigureGroup) {
    let tokens = Tokens::of(ui.ctx());
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = Metrics::GAP_SMALL;
        ui.set_max_width(ui.available_width() - COLUMN - SIDE_NAME);
        ui.label(RichText::new(group.title()).heading().strong());
        ui.add(Label::new(RichText::new(group.pose()).small().weak()).truncate());
    });
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 4.0), Sense::hover());
    let font = TextStyle::Small.resolve(ui.style());
    for (side, right) in [
        (Side::Left, rect.right() - COLUMN),
        (Side::Right, rect.right()),
    ] {
        ui.painter().text(
            pos2(right, rect.top() - 8.0),
            Align2::RIGHT_CENTER,
            side.to_string(),
            font.clone(),
            tokens.side(side),
        );
    }
    let stroke = ui.visuals().widgets.noninteractive.bg_stroke;
    ui.painter().hline(rect.x_range(), rect.center().y, stroke);
}

fn show_row(ui: &mut Ui, row: &Shows<'_>, dimmed: bool) {
    let tokens = Tokens::of(ui.ctx());
    let differences = row.written_differences();
    let height = if differences.is_some() { TALL_ROW } else { ROW };
    let size = vec2(ui.available_width(), height);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    if !ui.is_rect_visible(rect) {
        return;
    }
    let spoken = row.spoken();
    response.widget_info(|| WidgetInfo::labeled(eframe::egui::Role::Label, true, &spoken));
    if response.hovered() {
        let ground = rect.expand2(vec2(4.0, 0.0));
        ui.painter()
            .rect_filled(ground, Metrics::CORNER, tokens.grid);
    }
    let middle = rect.top() + 0.5 * ROW;
    write_name(ui, row, pos2(rect.left(), middle));
    let ink = row.ink(dimmed, tokens);
    let columns = |texts: &Texts, y: f32, style: &TextStyle, ink: Color32| {
        let value = |right: f32, text: &str| {
            let font = style.resolve(ui.style());
            let at = pos2(right, y);
            ui.painter().text(at, Align2::RIGHT_CENTER, text, font, ink);
        };
        match texts {
            Texts::Sides(sides) => {
                value(rect.right() - COLUMN, &sides.left);
                value(rect.right(), &sides.right);
            }
            Texts::Axle(text) => value(rect.right() - COLUMN / 2.0, text),
        }
    };
    columns(&row.texts, middle, &TextStyle::Body, ink);
    if let Some(differences) = differences {
        let below = rect.bottom() - 0.5 * (TALL_ROW - ROW) - 2.0;
        columns(&differences, below, &TextStyle::Small, tokens.reference);
    }
    response.on_hover_ui(|ui| row.meaning(ui));
}

/// The figure's name and, after it, its unit.
fn write_name(ui: &Ui, row: &Shows<'_>, at: Pos2) {
    let tokens = Tokens::of(ui.ctx());
    let body = TextStyle::Body.resolve(ui.style());
    let painter = ui.painter();
    let name = row.figure.facts().brief;
    let written = painter.text(at, Align2::LEFT_CENTER, name, body, tokens.text);
    let small = TextStyle::Small.resolve(ui.style());
    let unit_at = pos2(written.right() + 6.0, at.y + 0.5);
    painter.text(
        unit_at,
        Align2::LEFT_CENTER,
        row.unit,
        small,
        tokens.text_weak,
    );
}
