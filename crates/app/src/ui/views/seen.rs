//! A view as it is drawn.

use eframe::egui::{Pos2, Rect};
use steerloft_sheet::View;
use steerloft_solver::frame::{Point, Side};

use super::camera::Transform;

/// A view, where it is drawn, and how.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seen {
    pub(super) view: View,
    pub(super) area: Rect,
    pub(super) transform: Transform,
}

impl Seen {
    /// Where a point of the car is on screen.
    pub(super) fn at(&self, point: &Point) -> Pos2 {
        self.transform.to_screen(self.view.project(point))
    }

    /// Whether what belongs to a side can be worked on here: from the left the near corner hides the far one.
    pub(super) fn shows(&self, side: Side) -> bool {
        self.view != View::Side || side == Side::Left
    }
}
