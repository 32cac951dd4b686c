//! Top view over front view on one lateral axis.

use steerloft_setup::layout::Layout;
use steerloft_solver::pose::AxlePose;

use crate::drawing::{Bounds, Drawing, View};
use crate::front_end::front_end;
use crate::page::furniture::{Block, Writing, lines_height};
use crate::page::paper::GAP;
use crate::page::scale::Scale;

/// Font size of the views' titles, mm.
const TITLE: f64 = 2.7;

/// The views, from above downwards, with the rectangles that hold them.
pub(crate) struct Views([(View, Drawing, Bounds); 2]);

impl Views {
    pub(crate) fn of(layout: &Layout, pose: &AxlePose) -> Self {
        Self([View::Top, View::Front].map(|view| {
            let drawing = front_end(layout, pose, view);
            let nothing = Bounds {
                min: [0.0; 2],
                max: [0.0; 2],
            };
            let bounds = drawing.bounds().unwrap_or(nothing);
            (view, drawing, bounds)
        }))
    }

    /// The lateral extent that both share: least and greatest u, mm.
    fn lateral(&self) -> [f64; 2] {
        let [(_, _, top), (_, _, front)] = &self.0;
        let both = top.union(*front);
        [both.min[0], both.max[0]]
    }

    /// Width on paper, mm.
    pub(crate) fn width(&self, scale: Scale) -> f64 {
        let [left, right] = self.lateral();
        (right - left) * scale.ratio()
    }

    /// Height on paper with a title over each view, mm.
    pub(crate) fn height(&self, scale: Scale) -> f64 {
        let drawn: f64 = self.0.iter().map(|(_, _, bounds)| bounds.height()).sum();
        drawn * scale.ratio() + 2.0 * title_height() + GAP
    }

    /// The first of the scales, which go from large to small, at which the views go into a room of width and height, mm.
    pub(crate) fn largest_scale(&self, scales: &[Scale], room: [f64; 2]) -> Scale {
        let fits =
            |scale: &&Scale| self.width(**scale) <= room[0] && self.height(**scale) <= room[1];
        scales.iter().find(fits).copied().unwrap_or(Scale::SMALLEST)
    }

    /// The views around the middle of a width, mm; their titles begin at `title_left`.
    pub(crate) fn block(&self, scale: Scale, width: f64, title_left: f64) -> Block {
        let ratio = scale.ratio();
        let [left, right] = self.lateral();
        let across = width / 2.0 - ratio * (left + right) / 2.0;
        let mut block = Block::of_height(self.height(scale));
        let mut under = 0.0;
        for (view, drawing, bounds) in &self.0 {
            let writing = Writing::caption(TITLE).bold(true);
            block.write_lines(&[view.title().to_owned()], [title_left, under], &writing);
            under -= title_height();
            block.draw(
                drawing.clone(),
                ratio,
                [across, under - ratio * bounds.max[1]],
            );
            under -= ratio * bounds.height() + GAP;
        }
        block
    }
}

fn title_height() -> f64 {
    lines_height(1, TITLE) + 1.0
}
