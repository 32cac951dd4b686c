//! The column on the right: curves, the table of all figures, or what was done.

use eframe::egui::containers::menu::{MenuButton, MenuConfig};
use eframe::egui::{Align, Button, Layout, PopupCloseBehavior, Ui, WidgetInfo};

use super::{Intent, Intents, ViewState, curves, figure_table, history, widgets};
use crate::commands::Command;
use crate::state::{Bench, CurveKind};
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

/// Draws the column.
pub fn show(ui: &mut Ui, bench: &Bench, view: &ViewState, intents: &mut Intents) {
    ui.horizontal(|ui| {
        let titles = Column::ALL.map(|column| Command::Column(column).text());
        let at = Column::ALL.iter().position(|column| *column == view.column);
        let clicked = widgets::segments(ui, "Show", titles.into_iter(), at);
        if let Some(column) = clicked.and_then(|index| Column::ALL.get(index)) {
            intents.push(Intent::Command(Command::Column(*column)));
        }
        if view.column == Column::Curves {
            ui.with_layout(Layout::right_to_left(Align::Center), |ui| {
                fit(ui, view, intents);
                chooser(ui, view, intents);
            });
        }
    });
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

/// The list of curves to choose from; it stays open while several are chosen.
fn chooser(ui: &mut Ui, view: &ViewState, intents: &mut Intents) {
    let stay = MenuConfig::new().close_behavior(PopupCloseBehavior::CloseOnClickOutside);
    let (response, _) = MenuButton::new("Choose\u{2026}").config(stay).ui(ui, |ui| {
        for kind in CurveKind::ALL {
            let command = Command::Curve(kind);
            let mut on = view.curves.has(kind);
            let tick = ui.checkbox(&mut on, command.text());
            if tick.on_hover_text(command.tooltip()).changed() {
                intents.push(Intent::Command(command));
            }
        }
    });
    response.widget_info(|| WidgetInfo::labeled(eframe::egui::Role::Button, true, "Choose curves"));
    response.on_hover_text("Choose which curves are shown");
}
