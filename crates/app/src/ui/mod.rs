//! The window: panels, views and curves. They draw the state and gather what the user wants; nothing here changes it.

pub mod adjustments;
pub mod car;
pub mod cursors;
pub mod curves;
pub mod disk;
pub mod drawer;
pub mod drop;
pub mod figure_table;
pub mod figures;
pub mod finder;
pub mod history;
pub mod intent;
pub mod keys;
pub mod left;
pub mod menu;
pub mod messages;
pub mod names;
pub mod number_field;
pub mod part;
pub mod pictures;
pub mod print;
pub mod record;
pub mod results;
pub mod rods;
pub mod setups;
pub mod tour;
pub mod views;
pub mod widgets;

pub use curves::CurveChange;
pub use disk::{DiskAnswer, OverwriteAnswer};
pub use drawer::{Drawer, Drawers};
pub use intent::{GuardAnswer, Intent, Intents, car_change};
pub use left::LeftAnswer;
pub use results::Column;

use eframe::egui::{self, CentralPanel, Frame, Margin, Panel, Rect, Ui};

use crate::state::{Bench, CarEditing, CurveLayout, Preferences};
use crate::theme::{Metrics, Tokens};
use crate::units::Units;

/// What the window remembers that is no part of the document: where it looks and what is switched on.
#[derive(Debug, Default)]
pub struct ViewState {
    /// The drawings.
    pub views: views::Views,
    /// What the column on the right shows.
    pub column: Column,
    /// Which curves are shown, and how.
    pub curves: CurveLayout,
    /// The drawers below the drawings.
    pub drawers: Drawers,
    /// The adjustment used last; of several that move a pivot alike, a drag takes this one.
    pub last_adjustment: Option<usize>,
    /// The description of the car, while it is open in the place of the adjustments.
    pub car_editing: Option<CarEditing>,
    /// What is remembered from one start to the next.
    pub preferences: Preferences,
    /// The hint that is shown to who starts for the first time, if one is.
    pub tour: Option<tour::Hint>,
    /// How wide the panels are.
    pub widths: Widths,
}

/// Widths of the panels beside the drawings, points; none before they are first drawn.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Widths {
    /// Of the adjustments.
    pub adjustments: Option<f32>,
    /// Of the curves and figures.
    pub results: Option<f32>,
}

impl ViewState {
    /// Lets go of what belongs to a car that is no longer worked on.
    pub fn begin_anew(&mut self) {
        self.last_adjustment = None;
        if let Some(editing) = &mut self.car_editing {
            *editing = CarEditing::default();
        }
    }
}

/// Greatest shares of the window that the columns beside the drawings take.
const ADJUSTMENTS: f32 = 0.33;
const RESULTS: f32 = 0.34;

/// Draws everything between the menu and the lower edge, and says where its parts lie.
pub fn show(
    ui: &mut Ui,
    menu: Rect,
    bench: &Bench,
    view: &mut ViewState,
    intents: &mut Intents,
) -> tour::Places {
    let tokens = Tokens::of(ui.ctx());
    let width = ui.ctx().content_rect().width();
    Panel::bottom("figures")
        .frame(panel_frame(tokens))
        .show(ui, |ui| figures::show(ui, bench));
    drawer::show(ui, bench, view, intents);
    let adjustments = Panel::left("adjustments")
        .default_size(
            view.widths
                .adjustments
                .unwrap_or_else(|| share(width, 0.225, 240.0, 330.0))
                .min(width * 0.3),
        )
        .size_range(220.0_f32.min(width * 0.3)..=420.0_f32.min(width * ADJUSTMENTS))
        .frame(panel_frame(tokens))
        .show(ui, |ui| {
            if view.car_editing.is_some() {
                car::show(ui, bench, view, intents);
            } else {
                adjustments::show(ui, bench, view, intents);
            }
        });
    let adjustments = adjustments.response.rect;
    view.widths.adjustments = Some(adjustments.width());
    let results = Panel::right("results")
        .default_size(
            view.widths
                .results
                .unwrap_or_else(|| share(width, 0.285, 280.0, 520.0))
                .min(width * 0.3),
        )
        .size_range(240.0_f32.min(width * 0.3)..=760.0_f32.min(width * RESULTS))
        .frame(panel_frame(tokens))
        .show(ui, |ui| results::show(ui, bench, view, intents));
    let results = results.response.rect;
    view.widths.results = Some(results.width());
    let drawings = CentralPanel::no_frame()
        .frame(Frame::new().fill(tokens.canvas))
        .show(ui, |ui| centre(ui, bench, view, intents));
    tour::Places {
        drawings: drawings.response.rect,
        adjustments,
        results,
        menu,
    }
}

fn centre(ui: &mut Ui, bench: &Bench, view: &mut ViewState, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    Panel::bottom("cursors")
        .frame(panel_frame(tokens))
        .show(ui, |ui| cursors::show(ui, bench, intents));
    CentralPanel::no_frame()
        .frame(Frame::new().fill(tokens.canvas))
        .show(ui, |ui| {
            let area = ui.max_rect();
            views::show(ui, bench, view, intents);
            messages::trouble_banner(ui, bench, area);
        });
}

/// A share of the window's width within limits, points.
fn share(width: f32, share: f32, least: f32, most: f32) -> f32 {
    (width * share).round().clamp(least, most)
}

fn panel_frame(tokens: &Tokens) -> Frame {
    Frame::new()
        .fill(tokens.panel)
        .inner_margin(Margin::symmetric(Metrics::MARGIN, 8))
}

/// The unit of lengths that the window shows at present.
#[must_use]
pub fn units_of(ctx: &egui::Context) -> Units {
    ctx.data(|data| data.get_temp(units_id()))
        .unwrap_or_default()
}

/// Sets the unit of lengths that the window shows from now on.
pub fn show_units(ctx: &egui::Context, units: Units) {
    ctx.data_mut(|data| data.insert_temp(units_id(), units));
}

fn units_id() -> egui::Id {
    egui::Id::unique("units shown")
}

/// Shows a note when the pointer rests on a widget; nothing for an empty one.
pub(crate) fn note(response: egui::Response, text: &str) -> egui::Response {
    if text.is_empty() {
        response
    } else {
        response.on_hover_text(text)
    }
}
