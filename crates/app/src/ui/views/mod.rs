//! The drawings of the front end: top view above front view on one lateral axis, and a side view on demand.

mod camera;
mod drag;
mod grid;
mod handles;
mod ink;
mod layout;
mod outline;
mod paint;
mod pivot;

use eframe::egui::{
    Align2, Color32, Id, PointerButton, Rect, Response, Role, Sense, Stroke, TextStyle, Ui,
    WidgetInfo, pos2, vec2,
};
use steerloft_sheet::{View, front_end};

pub use camera::{Camera, Transform};
pub use handles::handle_name;

use super::{Intent, Intents, ViewState};
use crate::state::{Bench, Shown};
use crate::theme::Tokens;

use camera::Fit;
use drag::Drag;
use layout::{Layout, bounds_over_steering};

/// Bounds of the top view's share of the height.
const TOP_SHARES: (f64, f64) = (0.4, 0.68);

/// Zoom per point of the wheel.
const ZOOM_RATE: f64 = 0.004;

/// Where the drawings look and what is being dragged in them.
#[derive(Debug, Default)]
pub struct Views {
    camera: Camera,
    side: bool,
    /// Whether the user has moved the camera since it was last fitted.
    moved: bool,
    /// The area and the views last fitted to; none if they are to be fitted anew.
    fitted: Option<Layout>,
    drag: Option<Drag>,
}

impl Views {
    /// Shows the whole front end from the next frame on.
    pub fn fit(&mut self) {
        self.fitted = None;
        self.moved = false;
    }

    /// Lets go of a pivot that is being dragged: it belongs to a car that is no longer on the bench.
    pub fn let_go(&mut self) {
        self.drag = None;
    }

    /// Shows or hides the side view.
    pub fn toggle_side(&mut self) {
        self.side = !self.side;
        self.fit();
    }

    /// Whether the side view is shown.
    #[must_use]
    pub fn has_side(&self) -> bool {
        self.side
    }

    /// The transform of a view as it was last drawn.
    #[must_use]
    pub fn transform(&self, view: View) -> Option<Transform> {
        let layout = self.fitted?;
        let area = match view {
            View::Top => layout.top,
            View::Front => layout.front,
            View::Side => layout.side?,
        };
        Some(self.camera.transform(view, area))
    }

    /// Lays the views out, and fits the camera to them unless the user has moved it.
    fn lay_out(&mut self, area: Rect, shown: &Shown) -> Layout {
        match self.fitted {
            Some(layout) if layout.area == area => layout,
            // A drag goes on in the frame it began in.
            Some(old) if self.moved || self.drag.is_some() => {
                let layout = Layout::new(area, old.top_share(), self.side);
                self.fitted = Some(layout);
                layout
            }
            _ => {
                let layout = self.fit_to(area, shown);
                self.fitted = Some(layout);
                layout
            }
        }
    }

    fn fit_to(&mut self, area: Rect, shown: &Shown) -> Layout {
        let bounds = |view| bounds_over_steering(shown, view);
        let (top, front) = (bounds(View::Top), bounds(View::Front));
        let share = top.height() / (top.height() + front.height()).max(1.0);
        #[allow(clippy::cast_possible_truncation, reason = "a share between 0 and 1")]
        let layout = Layout::new(
            area,
            share.clamp(TOP_SHARES.0, TOP_SHARES.1) as f32,
            self.side,
        );
        let mut fits = vec![
            Fit {
                view: View::Top,
                bounds: top,
                area: layout.top,
            },
            Fit {
                view: View::Front,
                bounds: front,
                area: layout.front,
            },
        ];
        if let Some(area) = layout.side {
            fits.push(Fit {
                view: View::Side,
                bounds: bounds(View::Side),
                area,
            });
        }
        self.camera.fit(&fits);
        layout
    }
}

/// Draws the views in what room there is.
pub fn show(ui: &mut Ui, bench: &Bench, view: &mut ViewState, intents: &mut Intents) {
    let area = ui.available_rect_before_wrap();
    ui.allocate_rect(area, Sense::hover());
    let tokens = Tokens::of(ui.ctx());
    let Some(shown) = bench.derived().shown() else {
        let font = TextStyle::Body.resolve(ui.style());
        let text = "This car cannot be assembled, so there is nothing to draw.";
        ui.painter().text(
            area.center(),
            Align2::CENTER_CENTER,
            text,
            font,
            tokens.text_weak,
        );
        return;
    };
    let layout = view.views.lay_out(area, shown);
    for (which, area) in layout.views() {
        show_view(ui, bench, shown, view, intents, (which, area));
    }
    rules(ui, &layout, tokens);
    drag::follow(ui, bench, view, intents);
}

fn show_view(
    ui: &mut Ui,
    bench: &Bench,
    shown: &Shown,
    state: &mut ViewState,
    intents: &mut Intents,
    (view, area): (View, Rect),
) {
    let tokens = Tokens::of(ui.ctx());
    let ground = ui.interact(
        area,
        Id::unique(("view", view.title())),
        Sense::click_and_drag(),
    );
    ground.widget_info(|| WidgetInfo::labeled(Role::Image, true, view.title()));
    move_camera(ui, &ground, &mut state.views, view, area);
    if ground.double_clicked() {
        state.views.fit();
    }
    if ground.clicked() {
        intents.push(Intent::Select(None));
    }
    let transform = state.views.camera.transform(view, area);
    let painter = ui.painter_at(area);
    let dimmed = bench.derived().trouble().is_some();
    grid::paint(&painter, area, &transform, tokens);
    let drawing = front_end(&shown.layout, &shown.pose, view);
    paint::paint(&painter, &drawing, &transform, tokens, dimmed);
    grid::scale_bar(ui, &painter, area, &transform, tokens);
    let font = TextStyle::Small.resolve(ui.style());
    let corner = area.left_top() + vec2(12.0, 8.0);
    painter.text(
        corner,
        Align2::LEFT_TOP,
        view.title(),
        font,
        tokens.text_weak,
    );
    let seen = handles::Seen {
        view,
        area,
        transform,
    };
    handles::show(ui, bench, shown, state, intents, &seen);
}

fn move_camera(ui: &Ui, ground: &Response, views: &mut Views, view: View, area: Rect) {
    for button in [PointerButton::Primary, PointerButton::Middle] {
        if !ground.dragged_by(button) {
            continue;
        }
        let mut by = ground.drag_delta();
        if ground.drag_started_by(button)
            && let (Some(press), Some(pointer)) =
                ui.input(|input| (input.pointer.press_origin(), input.pointer.interact_pos()))
        {
            // What the pointer moved before the press was known for a drag counts too.
            by = pointer - press;
        }
        if by != eframe::egui::Vec2::ZERO {
            views.camera.pan(view, [f64::from(by.x), f64::from(by.y)]);
            views.moved = true;
        }
    }
    if !ui.rect_contains_pointer(area) {
        return;
    }
    let (scroll, pinch, pointer) = ui.input(|input| {
        (
            input.smooth_scroll_delta.y,
            input.zoom_delta(),
            input.pointer.hover_pos(),
        )
    });
    let factor = (f64::from(scroll) * ZOOM_RATE).exp() * f64::from(pinch);
    if let Some(pointer) = pointer
        && (factor - 1.0).abs() > f64::from(f32::EPSILON)
    {
        views.camera.zoom(view, area, pointer, factor);
        views.moved = true;
    }
}

/// Lines between the views.
fn rules(ui: &Ui, layout: &Layout, tokens: &Tokens) {
    let stroke = Stroke::new(1.0, tokens.rule);
    let painter = ui.painter();
    painter.hline(layout.area.x_range(), layout.front.top(), stroke);
    if let Some(side) = layout.side {
        painter.vline(side.left(), layout.area.y_range(), stroke);
        legend(
            ui,
            Rect::from_min_max(pos2(side.left(), layout.area.top()), side.right_top()),
            tokens,
        );
    }
}

/// Names the sides' colours in the corner that the side view leaves free.
fn legend(ui: &Ui, area: Rect, tokens: &Tokens) {
    let font = TextStyle::Small.resolve(ui.style());
    let entries: [(Color32, &str); 2] = [
        (tokens.left, "left side of the car"),
        (tokens.right, "right side of the car"),
    ];
    let mut at = area.left_top() + vec2(16.0, 18.0);
    for (color, text) in entries {
        ui.painter()
            .hline(at.x..=at.x + 22.0, at.y, Stroke::new(3.0, color));
        ui.painter().text(
            at + vec2(30.0, 0.0),
            Align2::LEFT_CENTER,
            text,
            font.clone(),
            tokens.text_weak,
        );
        at.y += 18.0;
    }
}
