//! A curve as vector graphics: title, legend, axes with round marks, grid, lines, notes.

mod legend;
mod ticks;

use self::ticks::Ticks;
use crate::drawing::{Anchor, Outline, Role, Text};
use crate::page::Ink;
use crate::page::furniture::{Block, Writing, lines_height};
use crate::text::{ASCENT, width, wrap};
use steerloft_analysis::Range;
use steerloft_analysis::curves::{Curve, Series};

const TITLE: f64 = 3.0;
const LABEL: f64 = 2.3;
const TICK: f64 = 2.2;
const NOTE: f64 = 2.1;
/// Lines that notes may take.
const MOST_NOTES: usize = 3;
/// From the marks' writing to the axis that runs up and to the one that runs to the right, mm. The latter is such that the
/// first marks of both do not touch.
const TO_AXIS: f64 = 1.2;
const UNDER_AXIS: f64 = 1.6;
/// Space between the parts of a chart, mm.
const GAP: f64 = 1.2;
/// Space between charts side by side, mm.
pub(crate) const BETWEEN: f64 = 6.0;
/// Least height of the plot itself, mm.
const LEAST_PLOT: f64 = 12.0;

/// What a chart shows of a curve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Shown {
    /// The lines.
    Lines,
    /// Axes and grid only, to draw on by hand.
    GridOnly,
}

/// Draws curves side by side into a room of width and height, mm, so that their plots are of one height if their notes are.
/// The block is as high as the room, or higher where that is too low for any plot.
pub(crate) fn side_by_side(curves: &[Curve], columns: u8, room: [f64; 2], shown: Shown) -> Block {
    let columns = f64::from(columns.max(1));
    let each = (room[0] + BETWEEN) / columns - BETWEEN;
    let legends = curves
        .iter()
        .map(|curve| legend::lay_out(&curve.series, each).height)
        .fold(0.0, f64::max);
    let mut block = Block::default();
    let mut left = 0.0;
    for curve in curves {
        let chart = lay_out(curve, [each, room[1]], shown, legends);
        block.height = block.height.max(chart.height);
        block.add(chart, [left, 0.0]);
        left += each + BETWEEN;
    }
    block
}

/// Draws a curve with its legend in a height of its own or more, mm.
fn lay_out(curve: &Curve, room: [f64; 2], shown: Shown, legend_height: f64) -> Block {
    let [across, height] = room;
    let mut block = Block::default();
    let title = wrap(curve.kind.title(), TITLE, true, across, 2);
    block.write_lines(&title, [0.0, 0.0], &Writing::plain(TITLE).bold(true));
    let mut top = -lines_height(title.len(), TITLE) - GAP / 2.0;
    let notes = |size: f64| wrap(&curve.notes.join(" "), size, false, across, MOST_NOTES);
    if curve.series.is_empty() {
        let notes = notes(LABEL);
        block.write_lines(&notes, [0.0, top], &Writing::caption(LABEL));
        block.height = height.max(lines_height(notes.len(), LABEL) - top);
        return block;
    }
    let notes = notes(NOTE);
    if shown == Shown::Lines {
        let legend = legend::lay_out(&curve.series, across);
        let below = top - legend.height.max(legend_height);
        block.add(legend, [0.0, top]);
        top = below - GAP;
    }
    let under = if shown == Shown::Lines {
        lines_height(notes.len(), NOTE)
    } else {
        0.0
    };
    let plot_height = (height + top - under).max(LEAST_PLOT + lines_height(3, LABEL));
    add_plot(&mut block, curve, [0.0, top], [across, plot_height], shown);
    if shown == Shown::Lines {
        block.write_lines(&notes, [0.0, top - plot_height], &Writing::caption(NOTE));
    }
    block.height = height.max(plot_height + under - top);
    block
}

/// Where the plot's field lies and how values map on it.
struct Plot {
    /// Left, bottom, right, top, mm.
    edges: [f64; 4],
    ranges: [Range; 2],
}

impl Plot {
    fn point(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let [left, bottom, right, top] = self.edges;
        let share = |value: f64, range: Range| (value - range.from) / range.length();
        [
            left + (right - left) * share(x, self.ranges[0]),
            bottom + (top - bottom) * share(y, self.ranges[1]),
        ]
    }
}

/// Adds axes, grid and lines in a room below and right of a corner.
fn add_plot(block: &mut Block, curve: &Curve, corner: [f64; 2], room: [f64; 2], shown: Shown) {
    let [left, top] = corner;
    let label_height = lines_height(1, LABEL);
    let [x_range, y_range] = curve.ranges();
    let upright = room[1] - 3.0 * label_height;
    let finer = match shown {
        Shown::Lines => 1.0,
        Shown::GridOnly => 0.55,
    };
    let y_ticks = Ticks::over(y_range, marks(upright, 9.0 * finer));
    let widest = y_ticks
        .values
        .iter()
        .map(|&value| width(&y_ticks.label(value), TICK, false))
        .fold(0.0, f64::max);
    let field_left = left + widest + TO_AXIS;
    let x_ticks = Ticks::over(x_range, marks(left + room[0] - field_left, 14.0 * finer));
    // Room for half of the last mark's writing.
    let last = x_ticks.values.last().copied().unwrap_or_default();
    let field_right = left + room[0] - width(&x_ticks.label(last), TICK, false) / 2.0;
    let plot = Plot {
        edges: [
            field_left,
            top - room[1] + 2.0 * label_height + UNDER_AXIS,
            field_right,
            top - label_height - GAP / 2.0,
        ],
        ranges: [x_ticks.range(), y_ticks.range()],
    };
    let up = wrap(&curve.y.label(), LABEL, false, room[0], 1);
    block.write_lines(&up, [left, top], &Writing::plain(LABEL));
    add_grid(block, &plot, [&x_ticks, &y_ticks]);
    if shown == Shown::Lines {
        for series in &curve.series {
            add_line(block, &plot, series);
        }
    }
    add_marks(block, &plot, [&x_ticks, &y_ticks]);
    let along = wrap(&curve.x.label(), LABEL, false, room[0], 1);
    let label_top = top - room[1] + label_height;
    let writing = Writing::plain(LABEL).to_the_right();
    block.write_lines(&along, [left + room[0], label_top], &writing);
}

/// How many marks go along a length when each takes so much, mm.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held between two and twelve"
)]
fn marks(length: f64, each: f64) -> u32 {
    (length / each).clamp(2.0, 12.0) as u32
}

/// Grid lines, the zero lines stronger, and the frame.
fn add_grid(block: &mut Block, plot: &Plot, [x_ticks, y_ticks]: [&Ticks; 2]) {
    let [left, bottom, right, top] = plot.edges;
    let upright = |x: f64| {
        let [x, _] = plot.point([x, 0.0]);
        Outline::Line([[x, bottom], [x, top]])
    };
    let level = |y: f64| {
        let [_, y] = plot.point([0.0, y]);
        Outline::Line([[left, y], [right, y]])
    };
    for &x in &x_ticks.values {
        block.push_inked(Ink::Faint, Role::Rule, upright(x));
    }
    for &y in &y_ticks.values {
        block.push_inked(Ink::Faint, Role::Rule, level(y));
    }
    let inside = |range: Range| range.from < 0.0 && range.to > 0.0;
    if inside(plot.ranges[0]) {
        block.push_inked(Ink::Current, Role::Rule, upright(0.0));
    }
    if inside(plot.ranges[1]) {
        block.push_inked(Ink::Current, Role::Rule, level(0.0));
    }
    block.rectangle(Role::Rule, [left, bottom], [right, top]);
}

fn add_line(block: &mut Block, plot: &Plot, series: &Series) {
    let points = series.points.iter().map(|&point| plot.point(point));
    let line = Outline::Polyline(points.collect());
    block.push_inked(legend::ink(series), Role::Rule, line);
}

/// The numbers along both axes.
fn add_marks(block: &mut Block, plot: &Plot, [x_ticks, y_ticks]: [&Ticks; 2]) {
    let [left, bottom, ..] = plot.edges;
    let mut write = |at: [f64; 2], anchor: Anchor, content: String| {
        let text = Text {
            at,
            anchor,
            size: TICK,
            bold: false,
            content,
        };
        block.write(Role::Caption, text);
    };
    for &x in &x_ticks.values {
        let [at, _] = plot.point([x, 0.0]);
        let base = bottom - UNDER_AXIS - ASCENT * TICK;
        write([at, base], Anchor::Middle, x_ticks.label(x));
    }
    for &y in &y_ticks.values {
        let [_, at] = plot.point([0.0, y]);
        // Half the height of a digit under the line.
        let base = at - 0.36 * TICK;
        write([left - TO_AXIS, base], Anchor::End, y_ticks.label(y));
    }
}
