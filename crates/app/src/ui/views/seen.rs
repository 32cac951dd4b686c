//! A view as it is drawn.

use eframe::egui::{Pos2, Rect};
use steerloft_sheet::{Sight, View};
use steerloft_solver::frame::{Point, Side};

use super::camera::Transform;

/// How far the edge of a polygon may run inside the round outline that it stands for, pixels: less than can be seen.
const DEVIATION: f64 = 0.1;

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

    /// How finely this view is drawn on a screen with so many pixels per point.
    pub(super) fn sight(&self, pixels_per_point: f32) -> Sight {
        Sight {
            view: self.view,
            deviation: DEVIATION / (self.transform.scale() * f64::from(pixels_per_point)),
        }
    }

    /// Whether what belongs to a side can be worked on here: from the left the near corner hides the far one.
    pub(super) fn shows(&self, side: Side) -> bool {
        self.view != View::Side || side == Side::Left
    }
}
