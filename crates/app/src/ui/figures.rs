//! The strip of key figures along the lower edge.

use eframe::egui::{Color32, FontId, Rect, RichText, Sense, TextStyle, Ui, WidgetInfo, pos2, vec2};
use steerloft_solver::frame::Side;

use super::names;
use crate::state::{Bench, FigureRow, Values, headline_figures};
use crate::theme::{Metrics, Tokens};

/// Least width of a column, and the gap after its title.
const COLUMN_LEAST: f32 = 56.0;
const COLUMN_GAP: f32 = 12.0;

/// Width of the column with the sides' names.
const SIDES_WIDTH: f32 = 40.0;

/// Height of a line of the strip.
const LINE: f32 = 18.0;

/// Draws the strip: a column a figure, a line a side. Where the columns do not fit side by side, the strip has two rows.
pub fn show(ui: &mut Ui, bench: &Bench) {
    let Some(shown) = bench.derived().shown() else {
        ui.label("No figures: the car cannot be assembled.");
        return;
    };
    let table = headline_figures(&shown.figures);
    let room = ui.available_width() - SIDES_WIDTH;
    let needs: Vec<f32> = table.iter().map(|row| column_need(ui, row)).collect();
    let columns = columns_that_fit(&needs, room);
    ui.spacing_mut().item_spacing.y = Metrics::GAP_SMALL;
    let dimmed = bench.derived().trouble().is_some();
    for (band, needs) in table.chunks(columns).zip(needs.chunks(columns)) {
        #[allow(clippy::cast_precision_loss, reason = "a small number of columns")]
        let spare = (room - needs.iter().sum::<f32>()) / columns as f32;
        show_band(ui, band, |column| needs[column] + spare.max(0.0), dimmed);
    }
}

/// Width that a figure needs.
fn column_need(ui: &Ui, row: &FigureRow) -> f32 {
    let font = TextStyle::Small.resolve(ui.style());
    let title = ui
        .painter()
        .layout_no_wrap(title(row), font, Color32::PLACEHOLDER);
    title.size().x.max(COLUMN_LEAST) + COLUMN_GAP
}

/// The greatest number of columns a band with which every band fits into the room.
fn columns_that_fit(needs: &[f32], room: f32) -> usize {
    let fits = |columns: usize| {
        needs
            .chunks(columns)
            .all(|band| band.iter().sum::<f32>() <= room)
    };
    let most = needs.len().max(1);
    (1..=most)
        .map(|bands| most.div_ceil(bands))
        .find(|columns| fits(*columns))
        .unwrap_or(1)
}

fn title(row: &FigureRow) -> String {
    if row.unit.is_empty() {
        row.name.to_owned()
    } else {
        format!("{}, {}", row.name, row.unit)
    }
}

fn show_band(ui: &mut Ui, rows: &[FigureRow], width: impl Fn(usize) -> f32, dimmed: bool) {
    let tokens = Tokens::of(ui.ctx());
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 0.0;
        let (rect, _) = ui.allocate_exact_size(vec2(SIDES_WIDTH, 3.0 * LINE), Sense::hover());
        for (line, side) in [(1.0, Side::Left), (2.0, Side::Right)] {
            let text = names::sentence(&side.to_string());
            write(
                ui,
                rect.left(),
                rect.top() + line * LINE,
                &text,
                &TextStyle::Small,
                tokens.side(side),
            );
        }
        for (column, row) in rows.iter().enumerate() {
            show_column(ui, row, width(column), dimmed);
        }
    });
}

fn show_column(ui: &mut Ui, row: &FigureRow, width: f32, dimmed: bool) {
    let tokens = Tokens::of(ui.ctx());
    let (rect, response) = ui.allocate_exact_size(vec2(width, 3.0 * LINE), Sense::hover());
    let spoken = spoken(row);
    response.widget_info(|| WidgetInfo::labeled(eframe::egui::Role::Label, true, &spoken));
    let ink = ink(row, dimmed, tokens);
    write(
        ui,
        rect.left(),
        rect.top(),
        &title(row),
        &TextStyle::Small,
        tokens.text_weak,
    );
    match &row.values {
        Values::Sides(sides) => {
            write(
                ui,
                rect.left(),
                rect.top() + LINE,
                &sides.left,
                &TextStyle::Body,
                ink,
            );
            write(
                ui,
                rect.left(),
                rect.top() + 2.0 * LINE,
                &sides.right,
                &TextStyle::Body,
                ink,
            );
        }
        Values::Axle(value) => write(
            ui,
            rect.left(),
            rect.top() + 1.5 * LINE,
            value,
            &TextStyle::Body,
            ink,
        ),
    }
    response.on_hover_ui(|ui| meaning(ui, row));
}

/// Colour of a figure's values.
pub(super) fn ink(row: &FigureRow, dimmed: bool, tokens: &Tokens) -> Color32 {
    match (&row.caution, dimmed) {
        (Some(_), _) => tokens.warning,
        (None, true) => tokens.text_weak,
        (None, false) => tokens.text_strong,
    }
}

/// What a figure means, and what about its values needs attention.
pub(super) fn meaning(ui: &mut Ui, row: &FigureRow) {
    let tokens = Tokens::of(ui.ctx());
    ui.set_max_width(300.0);
    ui.label(RichText::new(title(row)).strong());
    ui.label(row.meaning);
    if let Some(caution) = &row.caution {
        let caution = names::sentence(caution.trim_end_matches('.'));
        ui.colored_label(tokens.warning, format!("{caution}."));
    }
}

/// The figure as a screen reader says it.
pub(super) fn spoken(row: &FigureRow) -> String {
    match &row.values {
        Values::Sides(sides) => format!(
            "{}: left {} {}, right {} {}",
            row.name, sides.left, row.unit, sides.right, row.unit
        ),
        Values::Axle(value) => format!("{}: {value} {}", row.name, row.unit),
    }
}

fn write(ui: &Ui, left: f32, top: f32, text: &str, style: &TextStyle, ink: Color32) {
    let font: FontId = style.resolve(ui.style());
    let line = Rect::from_min_size(pos2(left, top), vec2(0.0, LINE));
    ui.painter().text(
        line.left_center(),
        eframe::egui::Align2::LEFT_CENTER,
        text,
        font,
        ink,
    );
}
