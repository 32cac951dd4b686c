//! Views of a car with its measured points numbered.

use steerloft_setup::measuring::Measured;
use steerloft_solver::frame::Point;

use crate::drawing::{Anchor, Bounds, Drawing, Outline, Role, Text, View};
use crate::page::Ink;
use crate::page::furniture::{Block, Writing, lines_height};

/// Radius of a number's circle and font size in it, mm on paper.
const RADIUS: f64 = 2.3;
const SIZE: f64 = 2.7;
/// Least distance of two circles' centres, and of a row of them from the drawing, mm.
const APART: f64 = 5.4;
const AWAY: f64 = 5.0;
const TITLE: f64 = 2.7;
/// Radius of the dot at a point, mm.
const DOT: f64 = 0.55;

/// A view with a circled number for every point, in a row over the drawing and one under it, each with a line to its point.
///
/// `width` is the block's and `drawn` the drawing's extent, mm on paper; `scale` is paper mm per mm.
pub(super) fn view(
    view: View,
    drawing: Drawing,
    bounds: &Bounds,
    points: &[Measured],
    [scale, width]: [f64; 2],
) -> Block {
    let mut block = Block::default();
    let title = [view.title().to_owned()];
    block.write_lines(&title, [0.0, 0.0], &Writing::caption(TITLE).bold(true));
    let row = -lines_height(1, TITLE) - RADIUS - 1.0;
    let drawing_top = row - RADIUS - AWAY;
    let across = width / 2.0 - scale * f64::midpoint(bounds.min[0], bounds.max[0]);
    let at = [across, drawing_top - scale * bounds.max[1]];
    let on_paper = |point: &Point| {
        let [u, v] = view.project(point);
        [at[0] + scale * u, at[1] + scale * v]
    };
    block.draw(drawing, scale, at);
    let lower_row = drawing_top - scale * bounds.height() - AWAY - RADIUS;
    let middle = f64::midpoint(drawing_top, drawing_top - scale * bounds.height());
    let mut labels: Vec<Label> = points
        .iter()
        .enumerate()
        .map(|(index, point)| Label {
            number: index + 1,
            point: on_paper(&point.at),
        })
        .collect();
    labels.sort_by(|a, b| a.point[0].total_cmp(&b.point[0]));
    let (over, under): (Vec<Label>, Vec<Label>) = labels
        .into_iter()
        .partition(|label| label.point[1] >= middle);
    for (labels, height) in [(over, row), (under, lower_row)] {
        for (label, left) in labels.iter().zip(spread(&labels, width)) {
            label.add(&mut block, [left, height]);
        }
    }
    block.height = -lower_row + RADIUS;
    block
}

/// A number and where its point is on the block.
struct Label {
    number: usize,
    point: [f64; 2],
}

impl Label {
    fn add(&self, block: &mut Block, centre: [f64; 2]) {
        let [x, y] = self.point;
        let away = [centre[0] - x, centre[1] - y];
        let length = away[0].hypot(away[1]).max(f64::MIN_POSITIVE);
        let edge = [0, 1].map(|axis| centre[axis] - away[axis] / length * RADIUS);
        block.rule(self.point, edge);
        let dot = Outline::Circle {
            centre: self.point,
            radius: DOT,
        };
        block.push_inked(Ink::Current, Role::Pivot, dot);
        let circle = Outline::Circle {
            centre,
            radius: RADIUS,
        };
        block.push_inked(Ink::Current, Role::Rule, circle);
        let text = Text {
            // Half the height of a digit under the middle.
            at: [centre[0], centre[1] - 0.36 * SIZE],
            anchor: Anchor::Middle,
            size: SIZE,
            bold: true,
            content: self.number.to_string(),
        };
        block.write(Role::Label, text);
    }
}

/// Places along a row for labels in their order, as near to their points as their distance allows, within the width.
fn spread(labels: &[Label], width: f64) -> Vec<f64> {
    let mut places: Vec<f64> = labels.iter().map(|label| label.point[0]).collect();
    // To the right as far as needed, then back from the right edge.
    let mut least = RADIUS;
    for place in &mut places {
        *place = place.max(least);
        least = *place + APART;
    }
    let mut most = width - RADIUS;
    for place in places.iter_mut().rev() {
        *place = place.min(most);
        most = *place - APART;
    }
    places
}
