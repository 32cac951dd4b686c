//! The table: figures across, steps down.

use eframe::egui::{Align, Button, Label, Layout, RichText, ScrollArea, TextWrapMode, Ui, vec2};
use steerloft_analysis::InputUnit;
use steerloft_analysis::effects::{Column, Effects, Row};
use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::text::NONE;
use steerloft_setup::setup::Setup;

use crate::format;
use crate::state::effects::{change_of_step, step_in_words};
use crate::theme::{Metrics, Tokens};
use crate::ui::{Intents, names, units_of, widgets};
use crate::units::{Shown, Units};

/// Width of the column with the steps, points.
const STEP_WIDTH: f32 = 200.0;

/// Least width of a figure's column, points.
const LEAST_WIDTH: f32 = 74.0;

/// Height of the heading: a name in up to three lines, the value now.
const HEAD_HEIGHT: f32 = 64.0;

/// Draws the table. Its cells take their step, if it is of the setup as it stands.
pub(super) fn show(
    ui: &mut Ui,
    setup: &Setup,
    effects: &Effects,
    is_current: bool,
    intents: &mut Intents,
) {
    let units = units_of(ui.ctx());
    let input = InputUnit::of(&setup.car);
    let columns: Vec<Head<'_>> = effects
        .columns
        .iter()
        .map(|column| Head::of(column, input, units))
        .collect();
    #[allow(clippy::cast_precision_loss, reason = "a few columns")]
    let share = (ui.available_width() - STEP_WIDTH) / columns.len().max(1) as f32;
    let table = Table {
        columns,
        rows: &effects.rows,
        width: share.floor().max(LEAST_WIDTH),
        is_current,
        units,
    };
    table.show(ui, intents);
}

/// A column as it is shown.
struct Head<'a> {
    column: &'a Column,
    label: String,
    unit: Shown,
}

impl<'a> Head<'a> {
    fn of(column: &'a Column, input: InputUnit, units: Units) -> Self {
        let facts = column.measure.figure().map(FigureKind::facts);
        let (sign, decimals) = facts.map_or(("", 2), |facts| (facts.unit(input), facts.decimals));
        Self {
            column,
            label: column.measure.label(),
            unit: units.unit(sign, decimals + 1),
        }
    }

    fn now(&self) -> String {
        self.column.now.map_or_else(
            || NONE.to_owned(),
            |now| {
                let number = format::number(now * self.unit.factor, self.unit.decimals);
                format::with_unit(&number, self.unit.sign)
            },
        )
    }

    fn change(&self, change: Option<f64>) -> String {
        change.map_or_else(
            || NONE.to_owned(),
            |change| format::signed(change * self.unit.factor, self.unit.decimals),
        )
    }
}

struct Table<'a> {
    columns: Vec<Head<'a>>,
    rows: &'a [Row],
    width: f32,
    is_current: bool,
    units: Units,
}

impl Table<'_> {
    fn show(&self, ui: &mut Ui, intents: &mut Intents) {
        ScrollArea::horizontal()
            .auto_shrink([false, false])
            .show(ui, |ui| {
                ui.spacing_mut().item_spacing = vec2(0.0, 0.0);
                self.heads(ui);
                let height = Metrics::CONTROL_HEIGHT;
                ScrollArea::vertical()
                    .id_salt("steps")
                    .auto_shrink([false, false])
                    .show_rows(ui, height, self.rows.len(), |ui, shown| {
                        for index in shown {
                            if let Some(row) = self.rows.get(index) {
                                ui.horizontal(|ui| self.row(ui, index, row, intents));
                            }
                        }
                    });
            });
    }

    fn heads(&self, ui: &mut Ui) {
        ui.horizontal_top(|ui| {
            Self::head(ui, STEP_WIDTH, |ui| {
                ui.label(RichText::new("One step").strong());
                ui.weak(RichText::new("the value now stands over its column").small());
            });
            for head in &self.columns {
                Self::head(ui, self.width, |ui| {
                    ui.add(Label::new(RichText::new(&head.label).small()).wrap());
                    ui.label(RichText::new(head.now()).small().strong());
                });
            }
        });
    }

    /// One heading, at the top of its place.
    fn head(ui: &mut Ui, width: f32, add: impl FnOnce(&mut Ui)) {
        let size = vec2(width, HEAD_HEIGHT);
        ui.allocate_ui_with_layout(size, Layout::top_down(Align::Min), |ui| {
            ui.set_min_size(size);
            ui.set_max_width(width - Metrics::GAP_SMALL);
            add(ui);
        });
    }

    fn row(&self, ui: &mut Ui, index: usize, row: &Row, intents: &mut Intents) {
        let size = vec2(STEP_WIDTH, Metrics::CONTROL_HEIGHT);
        let words = self.units.sentence(&step_in_words(&row.step));
        ui.style_mut().wrap_mode = Some(TextWrapMode::Truncate);
        ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
            ui.set_min_size(size);
            ui.add(Label::new(&words).truncate());
        });
        let changes = match &row.changes {
            Ok(changes) => changes,
            Err(reason) => {
                let reason = names::sentence(&self.units.sentence(&reason.to_string()));
                ui.weak(format!("cannot be assembled: {reason}"));
                return;
            }
        };
        for (head, change) in self.columns.iter().zip(changes) {
            if self.cell(ui, index, &words, head, *change) {
                intents.apply(change_of_step(&row.step));
            }
        }
    }

    /// One change; whether its step is to be taken.
    fn cell(
        &self,
        ui: &mut Ui,
        row: usize,
        words: &str,
        head: &Head<'_>,
        change: Option<f64>,
    ) -> bool {
        let tokens = Tokens::of(ui.ctx());
        let is_strongest = head.column.strongest == Some(row);
        let text = head.change(change);
        let shown = if is_strongest {
            RichText::new(format!("{text} *"))
                .strong()
                .color(tokens.accent)
        } else {
            RichText::new(&text)
        };
        let strongest = if is_strongest { ", strongest" } else { "" };
        let name = format!(
            "{words}; {} {text} {}{strongest}",
            head.label, head.unit.sign
        );
        let button = Button::new(shown)
            .frame_when_inactive(false)
            .min_size(vec2(self.width, Metrics::CONTROL_HEIGHT));
        widgets::named_button(ui, self.is_current, button, &name)
            .on_hover_text(&name)
            .clicked()
    }
}
