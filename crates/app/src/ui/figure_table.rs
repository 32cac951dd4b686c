//! Every figure as a table that scrolls, in groups, each with what it means when the pointer rests on it.

use eframe::egui::{Align2, RichText, ScrollArea, Sense, TextStyle, Ui, WidgetInfo, pos2, vec2};
use steerloft_solver::frame::Side;

use super::figures;
use crate::state::{Bench, FigureGroup, FigureRow, Values, figure_table};
use crate::theme::{Metrics, Tokens};

/// Height of a row, points.
const ROW: f32 = 20.0;

/// Width of a column of values, points.
const COLUMN: f32 = 76.0;

/// Draws the table.
pub fn show(ui: &mut Ui, bench: &Bench) {
    let tokens = Tokens::of(ui.ctx());
    let Some(shown) = bench.derived().shown() else {
        ui.colored_label(tokens.text_weak, "No figures: the car cannot be assembled.");
        return;
    };
    let dimmed = bench.derived().trouble().is_some();
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = 0.0;
            for group in figure_table(&shown.figures) {
                heading(ui, &group);
                for row in &group.rows {
                    show_row(ui, row, dimmed);
                }
                ui.add_space(Metrics::GAP_LARGE);
            }
        });
}

/// The group's name with the pose it is taken in, and over the values the sides they belong to.
fn heading(ui: &mut Ui, group: &FigureGroup) {
    let tokens = Tokens::of(ui.ctx());
    ui.horizontal(|ui| {
        ui.label(RichText::new(group.title).heading().strong());
        ui.weak(RichText::new(group.pose).small());
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

fn show_row(ui: &mut Ui, row: &FigureRow, dimmed: bool) {
    let tokens = Tokens::of(ui.ctx());
    let size = vec2(ui.available_width(), ROW);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    if !ui.is_rect_visible(rect) {
        return;
    }
    let spoken = figures::spoken(row);
    response.widget_info(|| WidgetInfo::labeled(eframe::egui::Role::Label, true, &spoken));
    if response.hovered() {
        let ground = rect.expand2(vec2(4.0, 0.0));
        ui.painter()
            .rect_filled(ground, Metrics::CORNER, tokens.grid);
    }
    let body = TextStyle::Body.resolve(ui.style());
    let name = ui
        .painter()
        .layout_no_wrap(row.name.to_owned(), body.clone(), tokens.text);
    let unit_at = pos2(rect.left() + name.size().x + 6.0, rect.center().y + 0.5);
    let small = TextStyle::Small.resolve(ui.style());
    let painter = ui.painter();
    painter.galley(
        pos2(rect.left(), rect.center().y - name.size().y / 2.0),
        name,
        tokens.text,
    );
    painter.text(
        unit_at,
        Align2::LEFT_CENTER,
        row.unit,
        small,
        tokens.text_weak,
    );
    let ink = figures::ink(row, dimmed, tokens);
    let value = |right: f32, text: &str| {
        painter.text(
            pos2(right, rect.center().y),
            Align2::RIGHT_CENTER,
            text,
            body.clone(),
            ink,
        );
    };
    match &row.values {
        Values::Sides(sides) => {
            value(rect.right() - COLUMN, &sides.left);
            value(rect.right(), &sides.right);
        }
        Values::Axle(text) => value(rect.right() - COLUMN / 2.0, text),
    }
    response.on_hover_ui(|ui| figures::meaning(ui, row));
}
