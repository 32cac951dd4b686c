//! The strip of key figures along the lower edge.

use eframe::egui::{Color32, FontId, Rect, RichText, Sense, TextStyle, Ui, WidgetInfo, pos2, vec2};
use steerloft_analysis::figures::{Figure, FigureKind, Texts};
use steerloft_analysis::text::NONE;
use steerloft_solver::frame::{Side, Sides};

use super::{names, units_of};
use crate::state::{Bench, Shown};
use crate::theme::{Metrics, Tokens};
use crate::units::Units;

/// Least width of a column, and the gap after its title.
const COLUMN_LEAST: f32 = 56.0;
const COLUMN_GAP: f32 = 12.0;

/// Width of the column with the sides' names.
const SIDES_WIDTH: f32 = 40.0;

/// Height of a line of the strip.
const LINE: f32 = 18.0;

/// A figure as it is shown, beside that of the reference.
pub(super) struct Shows<'a> {
    pub(super) figure: &'a Figure,
    /// The unit in which it is shown.
    pub(super) unit: &'static str,
    units: Units,
    pub(super) texts: Texts,
    /// How much more than the reference, if there is one.
    pub(super) differences: Option<Texts>,
}

impl<'a> Shows<'a> {
    pub(super) fn new(figure: &'a Figure, reference: Option<&Shown>, units: Units) -> Self {
        let other = reference.map(|other| other.figure(figure.kind));
        let unit = units.unit(figure.unit, figure.facts().decimals);
        let difference = |other: &Figure| figure.differences_in(other, unit.factor, unit.decimals);
        Self {
            figure,
            unit: unit.sign,
            units,
            texts: figure.texts_in(unit.factor, unit.decimals),
            differences: other.map(difference),
        }
    }

    fn title(&self) -> String {
        let (name, unit) = (self.figure.facts().brief, self.unit);
        if unit.is_empty() {
            name.to_owned()
        } else {
            format!("{name}, {unit}")
        }
    }

    /// Colour of the values.
    pub(super) fn ink(&self, dimmed: bool, tokens: &Tokens) -> Color32 {
        match (&self.figure.caution, dimmed) {
            (Some(_), _) => tokens.warning,
            (None, true) => tokens.text_weak,
            (None, false) => tokens.text_strong,
        }
    }

    /// What the figure means, what about its values needs attention, and how it compares.
    pub(super) fn meaning(&self, ui: &mut Ui) {
        let tokens = Tokens::of(ui.ctx());
        ui.set_max_width(300.0);
        ui.label(RichText::new(self.title()).strong());
        ui.label(self.figure.facts().meaning);
        if let Some(caution) = &self.figure.caution {
            let caution = self.units.sentence(caution.trim_end_matches('.'));
            let caution = names::sentence(&caution);
            ui.colored_label(tokens.warning, format!("{caution}."));
        }
        if let Some(difference) = self.difference_in_words() {
            ui.weak(difference);
        }
    }

    /// The figure as a screen reader says it.
    pub(super) fn spoken(&self) -> String {
        let unit = self.unit;
        let name = self.figure.facts().brief;
        let values = match &self.texts {
            Texts::Sides(sides) => {
                let Sides { left, right } = sides;
                format!("{name}: left {left} {unit}, right {right} {unit}")
            }
            Texts::Axle(value) => format!("{name}: {value} {unit}"),
        };
        match self.difference_in_words() {
            Some(difference) => format!("{values}; {difference}"),
            None => values,
        }
    }

    fn difference_in_words(&self) -> Option<String> {
        let difference = match self.differences.as_ref()? {
            Texts::Sides(sides) => format!("left {}, right {}", sides.left, sides.right),
            Texts::Axle(value) => value.clone(),
        };
        Some(format!("against the reference {difference}"))
    }

    /// The differences to be written beside the values: those that are none are left out.
    pub(super) fn written_differences(&self) -> Option<Texts> {
        let written = |text: &String| {
            let is_none = text == NONE || text.chars().all(|digit| matches!(digit, '0' | '.'));
            if is_none { String::new() } else { text.clone() }
        };
        Some(match self.differences.as_ref()? {
            Texts::Sides(sides) => {
                Texts::Sides(Sides::new(written(&sides.left), written(&sides.right)))
            }
            Texts::Axle(value) => Texts::Axle(written(value)),
        })
    }
}

/// Draws the strip: a column a figure, a line a side. Where the columns do not fit side by side, the strip has two rows.
pub fn show(ui: &mut Ui, bench: &Bench) {
    let Some(shown) = bench.derived().shown() else {
        ui.label("No figures: the car cannot be assembled.");
        return;
    };
    let reference = bench.compared();
    let units = units_of(ui.ctx());
    let headlines = FigureKind::ALL.into_iter();
    let headlines = headlines.filter(|kind| kind.facts().is_headline);
    let table: Vec<Shows<'_>> = headlines
        .map(|kind| Shows::new(shown.figure(kind), reference, units))
        .collect();
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

/// Width that a figure needs, with its differences where there is a reference.
fn column_need(ui: &Ui, row: &Shows<'_>) -> f32 {
    let width = |text: String, style: &TextStyle| {
        let font = style.resolve(ui.style());
        let laid = ui
            .painter()
            .layout_no_wrap(text, font, Color32::PLACEHOLDER);
        laid.size().x
    };
    let beside = |value: &str, difference: &str| {
        width(value.to_owned(), &TextStyle::Body)
            + Metrics::GAP_SMALL
            + width(difference.to_owned(), &TextStyle::Small)
    };
    let values = match (&row.texts, row.written_differences()) {
        (Texts::Sides(own), Some(Texts::Sides(difference))) => {
            let left = beside(&own.left, &difference.left);
            left.max(beside(&own.right, &difference.right))
        }
        (Texts::Axle(own), Some(Texts::Axle(difference))) => beside(own, &difference),
        _ => 0.0,
    };
    let title = width(row.title(), &TextStyle::Small);
    title.max(values).max(COLUMN_LEAST) + COLUMN_GAP
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

fn show_band(ui: &mut Ui, rows: &[Shows<'_>], width: impl Fn(usize) -> f32, dimmed: bool) {
    let tokens = Tokens::of(ui.ctx());
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 0.0;
        let (rect, _) = ui.allocate_exact_size(vec2(SIDES_WIDTH, 3.0 * LINE), Sense::hover());
        for (line, side) in [(1.0, Side::Left), (2.0, Side::Right)] {
            let text = names::sentence(&side.to_string());
            let at = [rect.left(), rect.top() + line * LINE];
            write(ui, at, &text, &TextStyle::Small, tokens.side(side));
        }
        for (column, row) in rows.iter().enumerate() {
            show_column(ui, row, width(column), dimmed);
        }
    });
}

fn show_column(ui: &mut Ui, row: &Shows<'_>, width: f32, dimmed: bool) {
    let tokens = Tokens::of(ui.ctx());
    let (rect, response) = ui.allocate_exact_size(vec2(width, 3.0 * LINE), Sense::hover());
    let spoken = row.spoken();
    response.widget_info(|| WidgetInfo::labeled(eframe::egui::Role::Label, true, &spoken));
    let ink = row.ink(dimmed, tokens);
    let title_at = [rect.left(), rect.top()];
    write(
        ui,
        title_at,
        &row.title(),
        &TextStyle::Small,
        tokens.text_weak,
    );
    let value = |line: f32, text: &str, difference: &str| {
        let at = [rect.left(), rect.top() + line * LINE];
        let end = write(ui, at, text, &TextStyle::Body, ink);
        let at = [end + Metrics::GAP_SMALL, at[1]];
        write(ui, at, difference, &TextStyle::Small, tokens.reference);
    };
    match (&row.texts, row.written_differences()) {
        (Texts::Sides(own), Some(Texts::Sides(difference))) => {
            value(1.0, &own.left, &difference.left);
            value(2.0, &own.right, &difference.right);
        }
        (Texts::Sides(own), _) => {
            value(1.0, &own.left, "");
            value(2.0, &own.right, "");
        }
        (Texts::Axle(own), Some(Texts::Axle(difference))) => value(1.5, own, &difference),
        (Texts::Axle(own), _) => value(1.5, own, ""),
    }
    response.on_hover_ui(|ui| row.meaning(ui));
}

/// Writes a line; where it ends.
fn write(ui: &Ui, [left, top]: [f32; 2], text: &str, style: &TextStyle, ink: Color32) -> f32 {
    let font: FontId = style.resolve(ui.style());
    let line = Rect::from_min_size(pos2(left, top), vec2(0.0, LINE));
    let written = ui.painter().text(
        line.left_center(),
        eframe::egui::Align2::LEFT_CENTER,
        text,
        font,
        ink,
    );
    written.right()
}
