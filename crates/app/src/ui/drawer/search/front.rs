//! The trade-off between closeness and number of changes.

use eframe::egui::{RichText, Ui, WidgetInfo};
use egui_plot::{GridInput, GridMark, Line, MarkerShape, PlotBounds, Points};
use steerloft_analysis::find::Findings;

use crate::format;
use crate::state::search::{Searching, changes_in_words};
use crate::theme::Tokens;
use crate::ui::drawer::still_plot::still_plot;

/// Draws the front of the last search; nothing before there is one.
pub(super) fn show(ui: &mut Ui, searching: &Searching) {
    let Some(Ok(findings)) = searching.found().map(|found| &found.outcome) else {
        return;
    };
    if findings.front.is_empty() {
        return;
    }
    ui.label(RichText::new("Closeness against changes").strong())
        .on_hover_text("The closest combination for each number of changes, as far as it is closer than all with fewer");
    draw(ui, &points(findings));
}

/// Number of changes, and how far off.
fn points(findings: &Findings) -> Vec<[f64; 2]> {
    let front = findings.front.iter();
    front
        .map(|finding| {
            #[allow(clippy::cast_precision_loss, reason = "a few changes")]
            let changes = finding.changes.len() as f64;
            [changes, finding.off]
        })
        .collect()
}

fn draw(ui: &mut Ui, points: &[[f64; 2]]) {
    let tokens = Tokens::of(ui.ctx());
    let right = points.iter().map(|point| point[0]).fold(1.0, f64::max) + 0.5;
    let top = points.iter().map(|point| point[1]).fold(0.1, f64::max) * 1.15;
    let plot = still_plot(ui, "front", "changes", "off by").x_grid_spacer(|input| whole(&input));
    let drawn = plot.show(ui, |plot| {
        plot.set_plot_bounds(PlotBounds::from_min_max([-0.5, 0.0], [right, top]));
        plot.line(
            Line::new("front", points.to_vec())
                .color(tokens.accent)
                .width(1.5),
        );
        plot.points(
            Points::new("front", points.to_vec())
                .shape(MarkerShape::Circle)
                .radius(4.0)
                .color(tokens.accent),
        );
    });
    let spoken = spoken(points);
    drawn
        .response
        .widget_info(|| WidgetInfo::labeled(eframe::egui::Role::Image, true, &spoken));
}

/// Whole numbers only: there is no half a change.
fn whole(input: &GridInput) -> Vec<GridMark> {
    let (least, most) = input.bounds;
    #[allow(clippy::cast_possible_truncation, reason = "a few changes")]
    let (first, last) = (least.ceil() as i32, most.floor() as i32);
    (first.max(0)..=last.min(first.saturating_add(100)))
        .map(|value| GridMark {
            value: f64::from(value),
            step_size: 1.0,
        })
        .collect()
}

/// The front as a screen reader says it.
fn spoken(points: &[[f64; 2]]) -> String {
    let parts: Vec<String> = points
        .iter()
        .map(|[changes, off]| {
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "it was a count"
            )]
            let changes = changes_in_words(*changes as usize);
            format!("{changes} {}", format::number(*off, 2))
        })
        .collect();
    format!("Closeness against changes: {}", parts.join(", "))
}
