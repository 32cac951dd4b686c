//! The curves that are shown, each in a panel, in the order and size that the user gave them.

mod arrange;
mod axis;
mod heading;
pub(super) mod panel;
mod plot;
mod readout;

use eframe::egui::{Rect, ScrollArea, Sense, Ui, UiBuilder, Vec2, pos2, vec2};
use steerloft_analysis::curves::CurveKind;

use super::{Intents, ViewState};
use crate::state::{Bench, CurveLayout, PanelHeight, Shown};
use crate::theme::{Metrics, Tokens};

pub use arrange::{CurveChange, chooser};

/// Least height of a panel; where more of them are on than fit at it, the column scrolls. Points.
const LEAST_HEIGHT: f32 = 236.0;

/// Height of a low panel and of a high one, points.
const LOW: f32 = 190.0;
const HIGH: f32 = 420.0;

/// Greatest height of a panel against its width: a single curve does not stand on end.
const TALLEST: f32 = 1.2;

/// Height of a panel that has nothing to plot, points.
const EMPTY_HEIGHT: f32 = 50.0;

/// Draws the panels.
pub fn show(ui: &mut Ui, bench: &Bench, view: &ViewState, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    let Some(shown) = bench.derived().shown() else {
        ui.colored_label(tokens.text_weak, "No curves: the car cannot be assembled.");
        return;
    };
    let kinds = view.curves.kinds();
    if kinds.is_empty() {
        ui.colored_label(tokens.text_weak, "No curves are chosen.");
        return;
    }
    let room = ui.available_size();
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            let width = ui.available_width();
            let panels = Panels::new(&view.curves, shown, vec2(width, room.y));
            let (area, _) = ui.allocate_exact_size(vec2(width, panels.height()), Sense::hover());
            for (kind, place) in kinds.iter().zip(panels.places()) {
                let rect = place.translate(area.min.to_vec2());
                // What is scrolled out of sight costs nothing.
                if ui.is_rect_visible(rect) {
                    let builder = UiBuilder::new().id_salt(kind.title()).max_rect(rect);
                    ui.scope_builder(builder, |ui| {
                        ui.spacing_mut().item_spacing.y = Metrics::GAP_SMALL;
                        show_panel(ui, bench, shown, view, intents, *kind);
                    });
                }
            }
        });
}

/// Where the panels stand, row by row; those of a row are of one height.
struct Panels {
    columns: usize,
    width: f32,
    rows: Vec<f32>,
    count: usize,
}

impl Panels {
    fn new(layout: &CurveLayout, shown: &Shown, room: Vec2) -> Self {
        let kinds = layout.kinds();
        let columns = if layout.two_columns { 2 } else { 1 };
        #[allow(clippy::cast_precision_loss, reason = "one or two columns")]
        let width = (room.x + Metrics::GAP) / columns as f32 - Metrics::GAP;
        let plots: Vec<bool> = kinds
            .chunks(columns)
            .map(|row| row.iter().any(|kind| has_lines(shown, *kind)))
            .collect();
        let full = height_of_rows(layout.height, &plots, vec2(width, room.y));
        let height = |plots: &bool| if *plots { full } else { EMPTY_HEIGHT };
        Self {
            columns,
            width,
            rows: plots.iter().map(height).collect(),
            count: kinds.len(),
        }
    }

    fn height(&self) -> f32 {
        let gaps = self.rows.len().saturating_sub(1);
        #[allow(clippy::cast_precision_loss, reason = "a handful of rows")]
        let gaps = gaps as f32 * Metrics::GAP;
        self.rows.iter().sum::<f32>() + gaps
    }

    /// The rectangles of the panels, from the upper left corner of all.
    fn places(&self) -> impl Iterator<Item = Rect> {
        let mut top = 0.0;
        let tops = self.rows.iter().map(move |height| {
            let row = (top, *height);
            top += height + Metrics::GAP;
            row
        });
        let (columns, width) = (self.columns, self.width);
        let all = tops.flat_map(move |(top, height)| {
            (0..columns).map(move |column| {
                #[allow(clippy::cast_precision_loss, reason = "one or two columns")]
                let left = column as f32 * (width + Metrics::GAP);
                Rect::from_min_size(pos2(left, top), vec2(width, height))
            })
        });
        all.take(self.count)
    }
}

/// Height of the rows that plot something: alike, so that they fill the room or keep their least height.
fn height_of_rows(height: PanelHeight, plots: &[bool], room: Vec2) -> f32 {
    let count = |wanted: bool| plots.iter().filter(|plots| **plots == wanted).count();
    #[allow(clippy::cast_precision_loss, reason = "a handful of rows")]
    let (full, empty, all) = (
        count(true).max(1) as f32,
        count(false) as f32,
        plots.len() as f32,
    );
    match height {
        PanelHeight::Low => LOW,
        PanelHeight::High => HIGH,
        PanelHeight::Shared => {
            let free = room.y - Metrics::GAP * (all - 1.0) - EMPTY_HEIGHT * empty;
            let shared = (free.max(0.0) / full).floor().min(room.x * TALLEST);
            shared.max(LEAST_HEIGHT)
        }
    }
}

/// Whether a car has a curve; what a suspension without travel has not need not be computed to know it.
fn has_lines(shown: &Shown, kind: CurveKind) -> bool {
    !kind.needs_travel() || shown.assembly().has_travel()
}

fn show_panel(
    ui: &mut Ui,
    bench: &Bench,
    shown: &Shown,
    view: &ViewState,
    intents: &mut Intents,
    kind: CurveKind,
) {
    let curve = shown.curve(kind);
    if curve.series.is_empty() {
        let heading = heading::Heading {
            kind,
            note: "",
            warning: "",
            is_cut: false,
            keys: &[],
        };
        heading.show(ui, view, intents);
        ui.weak(without_lines(shown));
        return;
    }
    plot::show(ui, bench, shown, view, intents, curve);
}

/// Why there is nothing to plot.
fn without_lines(shown: &Shown) -> &'static str {
    if shown.assembly().has_travel() {
        "No pose with both tyres on the road."
    } else {
        "No wheel travel: fixed kingpin."
    }
}
