//! The curves that are switched on, one above the other.

mod panel;
mod plot;
mod readout;

use std::collections::BTreeSet;

use eframe::egui::{ScrollArea, Sense, Ui, UiBuilder, Vec2, vec2};

use super::{Intents, ViewState};
use crate::state::{Bench, CurveKind, Shown};
use crate::theme::{Metrics, Tokens};

/// Least height of a panel; where more of them are on than fit at it, the column scrolls. Points.
const LEAST_HEIGHT: f32 = 236.0;

/// Greatest height of a panel against its width: a single curve does not stand on end.
const TALLEST: f32 = 1.2;

/// Height of a panel that has nothing to plot, points.
const EMPTY_HEIGHT: f32 = 50.0;

/// Which curves are on, and how they fill their panels.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CurvesShown {
    kinds: BTreeSet<CurveKind>,
    /// Whether the curves fill their panels instead of keeping fixed ranges.
    pub fitted: bool,
}

impl Default for CurvesShown {
    fn default() -> Self {
        Self {
            kinds: [CurveKind::ToeTravel, CurveKind::OuterInner].into(),
            fitted: false,
        }
    }
}

impl CurvesShown {
    /// These curves, in panels of fixed ranges.
    #[must_use]
    pub fn of(kinds: impl Iterator<Item = CurveKind>) -> Self {
        Self {
            kinds: kinds.collect(),
            fitted: false,
        }
    }

    /// Titles of the curves that are on.
    #[must_use]
    pub fn titles(&self) -> Vec<String> {
        self.kinds
            .iter()
            .map(|kind| kind.title().to_owned())
            .collect()
    }

    /// Whether a curve is on.
    #[must_use]
    pub fn has(&self, kind: CurveKind) -> bool {
        self.kinds.contains(&kind)
    }

    /// Switches a curve on or off.
    pub fn toggle(&mut self, kind: CurveKind) {
        if !self.kinds.remove(&kind) {
            self.kinds.insert(kind);
        }
    }
}

/// Draws the panels that are on.
pub fn show(ui: &mut Ui, bench: &Bench, view: &ViewState, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    let Some(shown) = bench.derived().shown() else {
        ui.colored_label(tokens.text_weak, "No curves: the car cannot be assembled.");
        return;
    };
    if view.curves.kinds.is_empty() {
        ui.colored_label(tokens.text_weak, "No curves are chosen.");
        return;
    }
    let heights = heights(ui.available_size(), view, shown);
    ScrollArea::vertical()
        .auto_shrink([false, false])
        .show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = Metrics::GAP;
            let width = ui.available_width();
            for (kind, height) in view.curves.kinds.iter().zip(heights) {
                let (rect, _) = ui.allocate_exact_size(vec2(width, height), Sense::hover());
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

/// Heights of the panels: alike for all that plot something, so that they fill the column or keep their least height.
fn heights(room: Vec2, view: &ViewState, shown: &Shown) -> Vec<f32> {
    let kinds = &view.curves.kinds;
    let plotted: Vec<bool> = kinds
        .iter()
        .map(|kind| shown.curves.lines(*kind).is_some())
        .collect();
    let count = |plots: bool| plotted.iter().filter(|one| **one == plots).count();
    #[allow(clippy::cast_precision_loss, reason = "a handful of panels")]
    let (full, empty, all) = (
        count(true).max(1) as f32,
        count(false) as f32,
        kinds.len() as f32,
    );
    let free = room.y - Metrics::GAP * (all - 1.0) - EMPTY_HEIGHT * empty;
    let height = (free.max(0.0) / full).floor().min(room.x * TALLEST);
    let height = height.max(LEAST_HEIGHT);
    plotted
        .into_iter()
        .map(|plots| if plots { height } else { EMPTY_HEIGHT })
        .collect()
}

fn show_panel(
    ui: &mut Ui,
    bench: &Bench,
    shown: &Shown,
    view: &ViewState,
    intents: &mut Intents,
    kind: CurveKind,
) {
    let lines = shown.curves.lines(kind);
    let Some(lines) = lines else {
        panel::heading(ui, kind.title(), kind.meaning(), "", &[]);
        ui.weak(without_lines(shown));
        return;
    };
    plot::show(ui, bench, shown, view, intents, (kind, &lines));
}

/// Why there is nothing to plot.
fn without_lines(shown: &Shown) -> &'static str {
    if shown.assembly.has_travel() {
        "No pose with both tyres on the road."
    } else {
        "No wheel travel: fixed kingpin."
    }
}
