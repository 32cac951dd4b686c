//! What all plots have in common: how lines look, axes, ranges, the cursor.

use eframe::egui::{Color32, PointerButton, Response, RichText, TextStyle, Ui, WidgetInfo, vec2};
use egui_plot::{
    AxisHints, FilledArea, GridInput, GridMark, HoverPosition, Line, LineStyle, Plot, PlotBounds,
    PlotPoint, PlotUi, Points, VLine,
};

use steerloft_analysis::{Range, round_step};

use super::heading::width;
use crate::format;
use crate::theme::Tokens;

/// Least distance of marks along the axes, in units of the least spacing of the grid.
const X_MARKS: f64 = 2.4;
const Y_MARKS: f64 = 1.3;

/// What the axes and their marks take from the width and the height of a panel, points.
const MARGIN: f32 = 48.0;

/// Marks of an axis at most.
const MOST_MARKS: f64 = 200.0;

/// How a line is drawn: colour tells what it is, and so does its style.
#[derive(Debug, Clone, Copy)]
pub(in crate::ui) struct LineInk {
    pub(in crate::ui) color: Color32,
    pub(in crate::ui) width: f32,
    pub(in crate::ui) style: LineStyle,
}

impl LineInk {
    pub(in crate::ui) fn full(color: Color32) -> Self {
        Self {
            color,
            width: 2.0,
            style: LineStyle::Solid,
        }
    }

    pub(in crate::ui) fn dashed(color: Color32) -> Self {
        Self {
            color,
            width: 2.0,
            style: LineStyle::Dashed { length: 8.0 },
        }
    }

    /// A line to compare with that belongs to no setup.
    pub(in crate::ui) fn guide(color: Color32, style: LineStyle) -> Self {
        Self {
            color,
            width: 1.2,
            style,
        }
    }

    /// The same line of the reference: thin, faded, in short dashes.
    pub(super) fn ghost(self) -> Self {
        Self {
            color: self.color.gamma_multiply(0.75),
            width: 1.4,
            style: LineStyle::Dashed { length: 3.0 },
        }
    }

    pub(in crate::ui) fn line(self, name: &str, points: Vec<[f64; 2]>) -> Line<'static> {
        Line::new(name, points)
            .color(self.color)
            .width(self.width)
            .style(self.style)
            .allow_hover(false)
    }
}

/// The frame of a panel.
pub(in crate::ui) struct Axes<'a> {
    /// Name of the panel, for accessibility.
    pub(in crate::ui) name: &'a str,
    /// Text along the horizontal axis, with unit and sign.
    pub(in crate::ui) x: &'a str,
    /// Text along the vertical axis, with unit and sign.
    pub(in crate::ui) y: &'a str,
    /// What the horizontal axis shows.
    pub(in crate::ui) x_range: Range,
    /// What the vertical axis shows.
    pub(in crate::ui) y_range: Range,
    /// What a value along the horizontal axis is multiplied with to be shown.
    pub(in crate::ui) x_factor: f64,
    /// What a value along the vertical axis is multiplied with to be shown.
    pub(in crate::ui) y_factor: f64,
}

/// The cursor of a panel: where it stands, and the values of the lines there.
pub(in crate::ui) struct Cursor {
    pub(in crate::ui) at: f64,
    pub(in crate::ui) marks: Vec<(f64, f64, Color32)>,
}

/// What came of drawing a panel.
pub(in crate::ui) struct Drawn {
    /// Where on the horizontal axis the user put the cursor, if so.
    pub(in crate::ui) place: Option<f64>,
    /// What the pointer does on the plot.
    pub(in crate::ui) response: Response,
}

/// Draws the panel.
///
/// `readout` gives the text shown beside the pointer for a place on the horizontal axis.
pub(in crate::ui) fn show<'a>(
    ui: &mut Ui,
    axes: &Axes<'_>,
    bands: Vec<FilledArea>,
    lines: Vec<Line<'a>>,
    cursor: Option<Cursor>,
    readout: impl Fn(f64) -> Option<String> + 'a,
) -> Drawn {
    let tokens = Tokens::of(ui.ctx());
    let small = TextStyle::Small.resolve(ui.style());
    let (x_factor, y_factor) = (axes.x_factor, axes.y_factor);
    let room = ui.available_size() - vec2(MARGIN, MARGIN);
    let x_label = fitting(ui, axes.x, room.x);
    let y_label = fitting(ui, axes.y, room.y);
    let axis = |hints: AxisHints<'a>, label: &str, factor: f64| {
        hints
            .label(RichText::new(label).small().color(tokens.text_weak))
            .formatter(move |mark, _| format::short(mark.value * factor, 3))
            .tick_label_color(tokens.text_weak)
            .tick_label_font(small.clone())
    };
    let plot = Plot::new(axes.name)
        .allow_drag(false)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .allow_axis_zoom_drag(false)
        .allow_double_click_reset(false)
        .show_crosshair(false)
        .grid_color(tokens.rule)
        .grid_spacing(eframe::egui::Rangef::new(16.0, 220.0))
        .x_grid_spacer(move |input| marks_between(&input, X_MARKS, x_factor))
        .y_grid_spacer(move |input| marks_between(&input, Y_MARKS, y_factor))
        .set_margin_fraction(vec2(0.0, 0.0))
        .custom_x_axes(vec![
            axis(AxisHints::new_x(), x_label, x_factor)
                .label_spacing(eframe::egui::Rangef::new(28.0, 44.0)),
        ])
        .custom_y_axes(vec![
            axis(AxisHints::new_y(), y_label, y_factor)
                .min_thickness(36.0)
                .label_spacing(eframe::egui::Rangef::new(13.0, 20.0)),
        ])
        .label_formatter(move |hover| match hover {
            HoverPosition::NearDataPoint { position, .. }
            | HoverPosition::Elsewhere { position } => readout(position.x),
        });
    let bounds = PlotBounds::from_min_max(
        [axes.x_range.from, axes.y_range.from],
        [axes.x_range.to, axes.y_range.to],
    );
    let cursor_ink = tokens.accent;
    let ground = tokens.canvas;
    let shown = plot.show(ui, move |plot| {
        plot.set_plot_bounds(bounds);
        for band in bands {
            plot.add(band);
        }
        zero_lines(plot, tokens);
        for line in lines {
            plot.line(line);
        }
        if let Some(cursor) = cursor {
            let line = VLine::new("cursor", cursor.at);
            plot.vline(line.color(cursor_ink).width(1.2).allow_hover(false));
            for (x, y, color) in cursor.marks {
                mark(plot, [x, y], color, ground);
            }
        }
    });
    let response = shown.response;
    response.widget_info(|| WidgetInfo::labeled(eframe::egui::Role::Image, true, axes.name));
    let pointer = response.interact_pointer_pos();
    let is_put =
        response.dragged_by(PointerButton::Primary) || response.clicked_by(PointerButton::Primary);
    let place = pointer.filter(|_| is_put).map(|pointer| {
        let place = shown.transform.value_from_position(pointer);
        place.x.max(axes.x_range.from).min(axes.x_range.to)
    });
    Drawn { place, response }
}

/// The text along an axis, without the words in brackets at its end where there is no room for them; a sign stays.
fn fitting<'t>(ui: &Ui, label: &'t str, room: f32) -> &'t str {
    if width(ui, RichText::new(label).small()) <= room {
        return label;
    }
    let words = label
        .rsplit_once(" (")
        .filter(|(_, words)| !words.contains('+'));
    words.map_or(label, |(start, _)| start)
}

fn zero_lines(plot: &mut PlotUi<'_>, tokens: &Tokens) {
    plot.vline(
        VLine::new("zero", 0.0)
            .color(tokens.rule)
            .width(1.4)
            .allow_hover(false),
    );
    plot.hline(
        egui_plot::HLine::new("zero", 0.0)
            .color(tokens.rule)
            .width(1.4)
            .allow_hover(false),
    );
}

fn mark(plot: &mut PlotUi<'_>, at: [f64; 2], color: Color32, ground: Color32) {
    let place = PlotPoint::new(at[0], at[1]);
    let dot = |radius: f32, ink: Color32| {
        Points::new("mark", vec![[place.x, place.y]])
            .radius(radius)
            .color(ink)
            .filled(true)
            .allow_hover(false)
    };
    plot.points(dot(5.0, color));
    plot.points(dot(2.6, ground));
}

/// Marks at a step that is round as it is shown, at least so many times the least spacing apart.
fn marks_between(input: &GridInput, spacings: f64, factor: f64) -> Vec<GridMark> {
    let step_size = round_step(input.base_step_size * spacings * factor) / factor;
    let (low, high) = input.bounds;
    let first = (low / step_size).ceil();
    let count = ((high / step_size).floor() - first).clamp(-1.0, MOST_MARKS) + 1.0;
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped just above"
    )]
    let count = count as u32;
    (0..count)
        .map(|index| GridMark {
            value: (first + f64::from(index)) * step_size,
            step_size,
        })
        .collect()
}

/// A range of values with a margin, so that the outermost do not lie on the frame.
pub(super) fn with_margin(range: Range) -> Range {
    range.widened((range.length() * 0.08).max(0.02))
}
