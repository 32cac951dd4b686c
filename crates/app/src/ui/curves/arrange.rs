//! Choosing curves and arranging their panels.

use eframe::egui::containers::menu::{MenuButton, MenuConfig};
use eframe::egui::{self, PopupCloseBehavior, Ui, WidgetInfo};
use steerloft_analysis::curves::CurveKind;

use crate::commands::Command;
use crate::state::{Bench, CurveLayout, PanelHeight, Subject};
use crate::ui::widgets::{self, NumberField};
use crate::ui::{Intent, Intents, ViewState, pictures};

/// A change of how the curves are arranged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CurveChange {
    /// One curve to the place before or after its own.
    Shift {
        /// The curve.
        kind: CurveKind,
        /// Whether to the place after.
        later: bool,
    },
    /// One column or two.
    TwoColumns(bool),
    /// Height of the panels.
    Height(PanelHeight),
    /// The steering input of the curve with the wheels turned, in the unit of the car's drive.
    HoldInput(f64),
}

impl CurveChange {
    /// Makes the change.
    pub fn apply(self, layout: &mut CurveLayout) {
        match self {
            Self::Shift { kind, later } => layout.shift(kind, later),
            Self::TwoColumns(two) => layout.two_columns = two,
            Self::Height(height) => layout.height = height,
            Self::HoldInput(input) => layout.held_input = Some(input),
        }
    }
}

/// The list of curves to choose from, with how they are laid out; it stays open while several are chosen.
pub fn chooser(ui: &mut Ui, view: &ViewState, intents: &mut Intents) {
    let stay = MenuConfig::new().close_behavior(PopupCloseBehavior::CloseOnClickOutside);
    let (response, _) = MenuButton::new("Choose\u{2026}").config(stay).ui(ui, |ui| {
        layout_choices(ui, &view.curves, intents);
        ui.separator();
        for kind in CurveKind::ALL {
            let command = Command::Curve(kind);
            let mut on = view.curves.has(kind);
            let tick = widgets::tick(ui, &mut on, command.text());
            if tick.on_hover_text(command.tooltip()).changed() {
                intents.push(Intent::Command(command));
            }
        }
    });
    response.widget_info(|| WidgetInfo::labeled(egui::Role::Button, true, "Choose curves"));
    response.on_hover_text("Choose which curves are shown and how they are laid out");
}

fn layout_choices(ui: &mut Ui, layout: &CurveLayout, intents: &mut Intents) {
    ui.horizontal(|ui| {
        ui.weak("Columns");
        let chosen = usize::from(layout.two_columns);
        let options = ["One", "Two"].into_iter();
        if let Some(index) = widgets::segments(ui, "Columns of curves", options, Some(chosen)) {
            intents.push(Intent::Curves(CurveChange::TwoColumns(index == 1)));
        }
    });
    ui.horizontal(|ui| {
        ui.weak("Height");
        let all = PanelHeight::ALL;
        let chosen = all.iter().position(|height| *height == layout.height);
        let names = all.iter().map(|height| height.name());
        let clicked = widgets::segments(ui, "Height of curves", names, chosen);
        if let Some(height) = clicked.and_then(|index| all.get(index)) {
            intents.push(Intent::Curves(CurveChange::Height(*height)));
        }
    });
}

/// The button in the heading of a panel that moves it or takes it away.
pub(super) fn panel_menu(ui: &mut Ui, kind: CurveKind, view: &ViewState, intents: &mut Intents) {
    let kinds = view.curves.kinds();
    let at = kinds.iter().position(|shown| *shown == kind);
    let (response, _) = MenuButton::new("\u{2026}").ui(ui, |ui| {
        for (later, text, end) in [
            (false, "Move before", Some(0)),
            (true, "Move after", kinds.len().checked_sub(1)),
        ] {
            let button = ui.add_enabled(at != end, egui::Button::new(text));
            if button.clicked() {
                intents.push(Intent::Curves(CurveChange::Shift { kind, later }));
                ui.close();
            }
        }
        if ui.button("Hide").clicked() {
            intents.push(Intent::Command(Command::Curve(kind)));
            ui.close();
        }
        ui.separator();
        pictures::entries(ui, Subject::Curve(kind), intents);
    });
    let name = format!("Arrange: {}", kind.title());
    response.widget_info(|| WidgetInfo::labeled(egui::Role::Button, true, &name));
    response.on_hover_text("Move this curve, hide it, or take a picture of it");
}

/// The field for the steering input of the curve with the wheels turned.
pub(super) fn held_input(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    let Some(shown) = bench.derived().shown() else {
        return;
    };
    let (least, most) = shown.study.ranges().input;
    let mut input = shown.study.sweeps().held().input;
    let field = NumberField {
        name: "Steering input of this curve",
        unit: shown.study.unit().sign(),
        range: least..=most,
        speed: (most - least) * 0.002,
        decimals: 1,
    };
    let response = field.show(ui, &mut input);
    if response.changed() {
        intents.push(Intent::Curves(CurveChange::HoldInput(input)));
    }
    response.on_hover_text("Steering input at which the wheels are pushed up and down");
}
