//! The column on the right: curves, the table of all figures, or what was done.

use eframe::egui::{Align, Button, Layout, Ui, WidgetInfo};

use super::{Intent, Intents, ViewState, curves, figure_table, history, widgets};
use crate::commands::Command;
use crate::state::Bench;
use crate::theme::Metrics;

/// What the column shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Column {
    /// Curves.
    #[default]
    Curves,
    /// Every figure.
    Figures,
    /// What was done, to go back to.
    History,
}

impl Column {
    /// All, in the order of their buttons.
    pub const ALL: [Self; 3] = [Self::Curves, Self::Figures, Self::History];
}

/// Width below which the choice of curves stands in a row of its own, points.
const NARROW: f32 = 340.0;

/// Draws the column.
pub fn show(ui: &mut Ui, bench: &Bench, view: &ViewState, intents: &mut Intents) {
    ui.horizontal(|ui| {
        let titles = Column::ALL.map(|column| Command::Column(column).text());
        let at = Column::ALL.iter().position(|column| *column == view.column);
        let clicked = widgets::segments(ui, "Show", titles.into_iter(), at);
        if let Some(column) = clicked.and_then(|index| Column::ALL.get(index)) {
            intents.push(Intent::Command(Command::Column(*column)));
        }
        if view.column == Column::Curves && ui.max_rect().width() >= NARROW {
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                fit(ui, view, intents);
                curves::chooser(ui, view, intents);
            });
        }
    });
    if view.column == Column::Curves && ui.max_rect().width() < NARROW {
        ui.horizontal(|ui| {
            curves::chooser(ui, view, intents);
            fit(ui, view, intents);
        });
    }
    ui.add_space(Metrics::GAP_SMALL);
    match view.column {
        Column::Curves => curves::show(ui, bench, view, intents),
        Column::Figures => figure_table::show(ui, bench),
        Column::History => history::show(ui, bench, intents),
    }
}

fn fit(ui: &mut Ui, view: &ViewState, intents: &mut Intents) {
    let command = Command::FitCurves;
    let button = Button::selectable(view.curves.fitted, "Fit").frame_when_inactive(true);
    let response = ui.add(button).on_hover_text(command.tooltip());
    response.widget_info(|| {
        let role = eframe::egui::Role::CheckBox;
        WidgetInfo::selected(role, true, view.curves.fitted, command.text())
    });
    if response.clicked() {
        intents.push(Intent::Command(command));
    }
}
