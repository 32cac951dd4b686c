//! How far each reading is from the fitted car.

use eframe::egui::{RichText, Role, Ui, WidgetInfo};
use egui_plot::{HLine, LineStyle, MarkerShape, PlotBounds, PlotUi, Points};
use steerloft_analysis::fit::{Fit, OUTLIER};

use crate::format;
use crate::state::fitting::Fitting;
use crate::theme::Tokens;
use crate::ui::drawer::still_plot::still_plot;

/// Draws the residuals of the last fit; nothing before there is one.
pub(super) fn show(ui: &mut Ui, fitting: &Fitting) {
    let Some(Ok(fit)) = fitting.last().map(|fitted| &fitted.outcome) else {
        return;
    };
    ui.label(RichText::new("What is left").strong()).on_hover_text(
        "Each reading less what the fitted car does, in units of its uncertainty, in the order of the table. A diamond does not go with the others.",
    );
    draw(ui, fit);
}

/// Place of each reading, and its residual in units of the uncertainty.
fn points(fit: &Fit) -> Vec<[f64; 2]> {
    let residuals = fit.residuals.iter().enumerate();
    residuals
        .map(|(place, one)| {
            #[allow(clippy::cast_precision_loss, reason = "a count of readings")]
            let place = (place + 1) as f64;
            [place, one.residual() / one.reading.uncertainty]
        })
        .collect()
}

fn draw(ui: &mut Ui, fit: &Fit) {
    let tokens = Tokens::of(ui.ctx());
    let all = points(fit);
    let right = all.last().map_or(1.0, |point| point[0]) + 0.5;
    let sizes = all.iter().map(|point| point[1].abs());
    let top = sizes.fold(OUTLIER, f64::max) * 1.15;
    let outliers = fit.outliers();
    let (bad, good): (Vec<_>, Vec<_>) = all
        .into_iter()
        .enumerate()
        .partition(|(place, _)| outliers.contains(place));
    let places = |list: Vec<(usize, [f64; 2])>| -> Vec<[f64; 2]> {
        list.into_iter().map(|(_, point)| point).collect()
    };
    let (good, bad) = (places(good), places(bad));
    let plot = still_plot(ui, "residuals", "reading", "off, uncertainties");
    let drawn = plot.show(ui, |plot| {
        plot.set_plot_bounds(PlotBounds::from_min_max([0.5, -top], [right, top]));
        rules(plot, tokens);
        let mark = |name: &'static str, points, shape, radius, ink| {
            let points = Points::new(name, points).shape(shape).radius(radius);
            points.color(ink)
        };
        plot.points(mark("read", good, MarkerShape::Circle, 3.5, tokens.accent));
        plot.points(mark(
            "outliers",
            bad,
            MarkerShape::Diamond,
            5.0,
            tokens.warning,
        ));
    });
    let spoken = spoken(fit);
    drawn
        .response
        .widget_info(|| WidgetInfo::labeled(Role::Image, true, &spoken));
}

/// Zero, and one uncertainty either way: two good readings in three lie between.
fn rules(plot: &mut PlotUi<'_>, tokens: &Tokens) {
    let ends = LineStyle::Dashed { length: 5.0 };
    for (at, style) in [(-1.0, ends), (0.0, LineStyle::Solid), (1.0, ends)] {
        let line = HLine::new("rule", at).color(tokens.text_weak).style(style);
        plot.hline(line.width(1.0).allow_hover(false));
    }
}

/// The residuals as a screen reader says them.
fn spoken(fit: &Fit) -> String {
    let residuals = fit.residuals.iter();
    let parts: Vec<String> = residuals
        .map(|one| {
            let off = format::signed(one.residual(), 3);
            format!("{} {off}\u{b0}", one.reading)
        })
        .collect();
    format!("What is left: {}", parts.join(", "))
}
