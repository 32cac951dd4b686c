//! A plot that stands still: nothing in it is dragged, scrolled or zoomed.

use eframe::egui::{RichText, TextStyle, Ui};
use egui_plot::{AxisHints, Plot};

/// Least height of the plot, points.
const LEAST_HEIGHT: f32 = 90.0;

/// A plot as high as there is room, with what its axes show.
pub(super) fn still_plot<'a>(ui: &Ui, name: &'static str, x: &str, y: &str) -> Plot<'a> {
    let small = TextStyle::Small.resolve(ui.style());
    let label = |text: &str| RichText::new(text).font(small.clone());
    Plot::new(name)
        .show_x(false)
        .show_y(false)
        .allow_drag(false)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .custom_x_axes(vec![AxisHints::new_x().label(label(x))])
        .custom_y_axes(vec![AxisHints::new_y().label(label(y))])
        .height((ui.available_height() - 6.0).max(LEAST_HEIGHT))
}
