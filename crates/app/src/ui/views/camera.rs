//! Where the drawings are looked at: one scale and one lateral place for the top and the front view.

use eframe::egui::{Pos2, Rect, pos2};
use steerloft_sheet::{Bounds, View};

/// Least and greatest scale, points per mm.
const SCALES: (f64, f64) = (0.05, 120.0);

/// Share of the room that a fitted drawing fills.
const FILLED: f64 = 0.94;

/// What the drawings show: the scale, and the place of the drawing plane in the middle of each view.
///
/// Top and front share the lateral coordinate, front and side the vertical one, as drawings are laid out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Camera {
    /// Points per mm.
    scale: f64,
    /// Lateral coordinate in the middle of the top and front view, mm.
    lateral: f64,
    /// Longitudinal coordinate in the middle of the top view, mm forward.
    forward: f64,
    /// Height in the middle of the front and side view, mm.
    height: f64,
    /// Coordinate along the car in the middle of the side view, mm rearward.
    rearward: f64,
}

impl Default for Camera {
    fn default() -> Self {
        Self {
            scale: 3.0,
            lateral: 0.0,
            forward: 0.0,
            height: 0.0,
            rearward: 0.0,
        }
    }
}

/// Room and contents of one view to be fitted.
#[derive(Debug, Clone, Copy)]
pub struct Fit {
    /// The view.
    pub view: View,
    /// What it is to show, mm.
    pub bounds: Bounds,
    /// Where on screen.
    pub area: Rect,
}

impl Camera {
    /// Shows all contents in their views at one scale.
    pub fn fit(&mut self, views: &[Fit]) {
        let scales = views.iter().flat_map(|fit| {
            [
                f64::from(fit.area.width()) / fit.bounds.width().max(1.0),
                f64::from(fit.area.height()) / fit.bounds.height().max(1.0),
            ]
        });
        let scale = scales.fold(SCALES.1, f64::min) * FILLED;
        self.scale = scale.max(SCALES.0);
        for fit in views {
            let middle = [
                f64::midpoint(fit.bounds.min[0], fit.bounds.max[0]),
                f64::midpoint(fit.bounds.min[1], fit.bounds.max[1]),
            ];
            self.centre_on(fit.view, middle);
        }
    }

    /// The transform of a view drawn in an area of the screen.
    #[must_use]
    pub fn transform(&self, view: View, area: Rect) -> Transform {
        Transform {
            middle: self.middle(view),
            scale: self.scale,
            centre: area.center(),
        }
    }

    /// Moves what is seen of a view by a distance on screen, points.
    pub fn pan(&mut self, view: View, by: [f64; 2]) {
        let middle = self.middle(view);
        self.centre_on(
            view,
            [
                middle[0] - by[0] / self.scale,
                middle[1] + by[1] / self.scale,
            ],
        );
    }

    /// Changes the scale by a factor; the place of a view under the pointer stays there.
    pub fn zoom(&mut self, view: View, area: Rect, pointer: Pos2, factor: f64) {
        let fixed = self.transform(view, area).to_plane(pointer);
        self.scale = (self.scale * factor).clamp(SCALES.0, SCALES.1);
        let moved = self.transform(view, area).to_plane(pointer);
        let middle = self.middle(view);
        self.centre_on(
            view,
            [
                middle[0] + fixed[0] - moved[0],
                middle[1] + fixed[1] - moved[1],
            ],
        );
    }

    fn middle(&self, view: View) -> [f64; 2] {
        match view {
            View::Top => [self.lateral, self.forward],
            View::Front => [self.lateral, self.height],
            View::Side => [self.rearward, self.height],
        }
    }

    fn centre_on(&mut self, view: View, middle: [f64; 2]) {
        match view {
            View::Top => [self.lateral, self.forward] = middle,
            View::Front => [self.lateral, self.height] = middle,
            View::Side => [self.rearward, self.height] = middle,
        }
    }
}

/// Between the drawing plane (mm, v up) and the screen (points, y down).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Transform {
    middle: [f64; 2],
    scale: f64,
    centre: Pos2,
}

impl Transform {
    /// Points per mm.
    #[must_use]
    pub fn scale(&self) -> f64 {
        self.scale
    }

    /// A place of the drawing plane on screen.
    #[must_use]
    #[allow(
        clippy::cast_possible_truncation,
        reason = "screen coordinates are single precision"
    )]
    pub fn to_screen(&self, place: [f64; 2]) -> Pos2 {
        let right = (place[0] - self.middle[0]) * self.scale;
        let up = (place[1] - self.middle[1]) * self.scale;
        pos2(self.centre.x + right as f32, self.centre.y - up as f32)
    }

    /// A place on screen in the drawing plane.
    #[must_use]
    pub fn to_plane(&self, place: Pos2) -> [f64; 2] {
        let right = f64::from(place.x) - f64::from(self.centre.x);
        let down = f64::from(place.y) - f64::from(self.centre.y);
        [
            self.middle[0] + right / self.scale,
            self.middle[1] - down / self.scale,
        ]
    }

    /// A length on screen, points.
    #[must_use]
    #[allow(
        clippy::cast_possible_truncation,
        reason = "screen coordinates are single precision"
    )]
    pub fn length(&self, mm: f64) -> f32 {
        (mm * self.scale) as f32
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use eframe::egui::vec2;

    const AREA: Rect = Rect {
        min: Pos2::new(100.0, 50.0),
        max: Pos2::new(500.0, 350.0),
    };

    fn near(a: [f64; 2], b: [f64; 2]) -> bool {
        (a[0] - b[0]).hypot(a[1] - b[1]) < 1e-4
    }

    #[test]
    fn zoom_keeps_the_place_under_the_pointer() {
        let mut camera = Camera::default();
        let pointer = AREA.min + vec2(37.0, 201.0);
        let before = camera.transform(View::Front, AREA).to_plane(pointer);
        camera.zoom(View::Front, AREA, pointer, 1.7);
        let after = camera.transform(View::Front, AREA).to_plane(pointer);
        assert!(near(before, after), "{before:?} {after:?}");
    }

    #[test]
    fn a_pivot_stands_over_itself_after_any_move() {
        let mut camera = Camera::default();
        camera.zoom(View::Front, AREA, AREA.min, 2.0);
        camera.pan(View::Top, [31.0, -12.0]);
        let below = AREA.translate(vec2(0.0, 400.0));
        let top = camera.transform(View::Top, AREA).to_screen([12.0, 5.0]);
        let front = camera
            .transform(View::Front, below)
            .to_screen([12.0, -40.0]);
        assert!((top.x - front.x).abs() < 1e-4);
    }

    #[test]
    fn a_fitted_drawing_lies_inside_its_view() {
        let mut camera = Camera::default();
        let bounds = Bounds {
            min: [-90.0, -30.0],
            max: [90.0, 60.0],
        };
        camera.fit(&[Fit {
            view: View::Top,
            bounds,
            area: AREA,
        }]);
        let transform = camera.transform(View::Top, AREA);
        assert!(AREA.contains(transform.to_screen(bounds.min)));
        assert!(AREA.contains(transform.to_screen(bounds.max)));
    }

    #[test]
    fn pan_follows_the_pointer() {
        let mut camera = Camera::default();
        let before = camera.transform(View::Top, AREA).to_screen([1.0, 2.0]);
        camera.pan(View::Top, [10.0, 4.0]);
        let after = camera.transform(View::Top, AREA).to_screen([1.0, 2.0]);
        assert!((after - before - vec2(10.0, 4.0)).length() < 1e-3);
    }
}
