//! The drawings of the front end: top view above front view on one lateral axis, and a side view on demand.

mod camera;
mod car_points;
mod drag;
mod extras;
mod grab;
mod grid;
mod handles;
mod ink;
mod layout;
mod measure;
mod moving;
mod obstacles;
mod outline;
mod paint;
mod pivot;
mod ring;
mod seen;
mod spacers;

use eframe::egui::{
    Align2, Color32, Id, Rect, Role, Sense, Stroke, TextStyle, Ui, WidgetInfo, pos2, vec2,
};
use steerloft_sheet::{View, front_end};

pub use camera::{Camera, Transform};
pub use handles::handle_name;
pub use measure::{Mark, Measured, Measuring};

use super::{Intent, Intents, ViewState, pictures};
use crate::state::{Bench, Overlay, Shown, Subject, Switches};
use crate::theme::{Metrics, Tokens};

use camera::Fit;
use car_points::PointDrag;
use drag::Drag;
use layout::{Layout, bounds_of_turn, bounds_over_steering};
use seen::Seen;

/// Bounds of the top view's share of the height.
const TOP_SHARES: (f64, f64) = (0.4, 0.68);

/// Where the drawings look, what they show and what is being done in them.
#[derive(Debug, Default)]
pub struct Views {
    camera: Camera,
    switches: Switches,
    /// What the views are fitted to.
    fits: Fits,
    /// Whether the user has moved the camera since it was last fitted.
    moved: bool,
    /// Whether turning the wheel moves the drawings, as two fingers on a touch pad do, instead of zooming.
    scroll_pans: bool,
    /// The area and the views last fitted to; none if they are to be fitted anew.
    fitted: Option<Layout>,
    drag: Option<Drag>,
    point_drag: Option<PointDrag>,
    measuring: Option<Measuring>,
}

/// What the views have room for when they are fitted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
enum Fits {
    /// The front end over its whole steering.
    #[default]
    FrontEnd,
    /// The construction of the turn as well.
    Turn,
}

impl Views {
    /// Shows the whole front end from the next frame on.
    pub fn fit(&mut self) {
        self.fits = Fits::FrontEnd;
        self.fit_anew();
    }

    /// Shows the car with its turn-centre lines down to the rear axle from the next frame on.
    pub fn fit_turn(&mut self) {
        self.switches.turn_lines = true;
        self.fits = Fits::Turn;
        self.fit_anew();
    }

    fn fit_anew(&mut self) {
        self.fitted = None;
        self.moved = false;
    }

    /// Lets go of what belongs to a car that is no longer on the bench: a pivot that is being dragged, places measured.
    pub fn let_go(&mut self) {
        self.drag = None;
        self.point_drag = None;
        if let Some(measuring) = &mut self.measuring {
            *measuring = Measuring::default();
        }
    }

    /// What is shown, to be remembered.
    #[must_use]
    pub fn switches(&self) -> Switches {
        self.switches
    }

    /// Shows what was remembered.
    pub fn set_switches(&mut self, switches: Switches) {
        self.switches = switches;
        self.fit();
    }

    /// Shows or hides the side view.
    pub fn toggle_side(&mut self) {
        self.switches.side = !self.switches.side;
        self.fit_anew();
    }

    /// Whether the side view is shown.
    #[must_use]
    pub fn has_side(&self) -> bool {
        self.switches.side
    }

    /// Shows or hides something in the drawings.
    pub fn toggle(&mut self, overlay: Overlay) {
        self.switches.toggle(overlay);
        if overlay == Overlay::TurnLines && self.fits == Fits::Turn {
            self.fit();
        }
    }

    /// Begins or ends measuring.
    pub fn toggle_measuring(&mut self) {
        self.drag = None;
        self.point_drag = None;
        self.measuring = match self.measuring {
            None => Some(Measuring::default()),
            Some(_) => None,
        };
    }

    /// The measuring that goes on.
    #[must_use]
    pub fn measuring(&self) -> Option<&Measuring> {
        self.measuring.as_ref()
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

    /// Whether a handle is being dragged.
    pub(super) fn is_dragging(&self) -> bool {
        self.drag.is_some() || self.point_drag.is_some()
    }

    fn seen(&self, view: View, area: Rect) -> Seen {
        Seen {
            view,
            area,
            transform: self.camera.transform(view, area),
        }
    }

    /// Lays the views out, and fits the camera to them unless the user has moved it.
    fn lay_out(&mut self, area: Rect, shown: &Shown) -> Layout {
        match self.fitted {
            Some(layout) if layout.area == area => layout,
            // A drag goes on in the frame it began in.
            Some(old) if self.moved || self.is_dragging() => {
                let layout = Layout::new(area, old.top_share(), self.switches.side);
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
        let bounds = |view| {
            let front_end = bounds_over_steering(shown, view);
            match (self.fits, view) {
                (Fits::Turn, View::Top) => front_end.union(bounds_of_turn(shown)),
                _ => front_end,
            }
        };
        let (top, front) = (bounds(View::Top), bounds(View::Front));
        let share = top.height() / (top.height() + front.height()).max(1.0);
        #[allow(clippy::cast_possible_truncation, reason = "a share between 0 and 1")]
        let layout = Layout::new(
            area,
            share.clamp(TOP_SHARES.0, TOP_SHARES.1) as f32,
            self.switches.side,
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
    measure::take_escape(ui, view);
    let layout = view.views.lay_out(area, shown);
    for (which, area) in layout.views() {
        show_view(ui, bench, shown, view, intents, (which, area));
    }
    rules(ui, &layout, tokens);
    if view.views.switches.turn_lines {
        extras::turn_key(ui, shown, layout.place_of_key());
    }
    if let Some(measuring) = view.views.measuring {
        measure::strip(ui, shown, &measuring, layout.top, intents);
    }
    drag::follow(ui, bench, view, intents);
    car_points::follow(ui, view, intents);
}

fn show_view(
    ui: &mut Ui,
    bench: &Bench,
    shown: &Shown,
    state: &mut ViewState,
    intents: &mut Intents,
    (view, area): (View, Rect),
) {
    let ground = ui.interact(
        area,
        Id::unique(("view", view.title())),
        Sense::click_and_drag(),
    );
    ground.widget_info(|| WidgetInfo::labeled(Role::Image, true, view.title()));
    pictures::context_menu(&ground, Subject::View(view), intents);
    let seen = state.views.seen(view, area);
    let describing = state.car_editing.is_some();
    let on_handle = if describing {
        car_points::is_on_point(ui, bench, shown, &seen)
    } else {
        handles::meant(ui, &handles::rings(ui, shown, &seen)).is_some()
    };
    let on_handle = on_handle && state.views.measuring.is_none();
    moving::take(ui, &ground, &mut state.views, &seen, on_handle);
    let seen = state.views.seen(view, area);
    paint_view(ui, bench, shown, &state.views, &seen);
    if state.views.measuring.is_some() {
        measure::take(ui, shown, state, &seen, &ground);
        return;
    }
    if !on_handle && ground.double_clicked() {
        state.views.fit();
    }
    if !on_handle && ground.clicked() {
        ground.request_focus();
        intents.push(Intent::Select(None));
    }
    if describing {
        obstacles::paint(ui, &ui.painter_at(seen.area), bench, &seen);
        car_points::show(ui, bench, shown, state, intents, &seen);
        return;
    }
    // While something is dragged nobody can press them.
    if state.views.switches.spacer_buttons && !state.views.is_dragging() {
        spacers::show(ui, bench, shown, state, intents, &seen);
    }
    let rings = handles::rings(ui, shown, &seen);
    let responses = handles::take(ui, bench, state, intents, &seen, &rings, &ground);
    handles::paint(ui, bench, state, &seen, &rings, responses);
}

/// Paints all of a view but what can be taken in it.
fn paint_view(ui: &Ui, bench: &Bench, shown: &Shown, views: &Views, seen: &Seen) {
    let tokens = Tokens::of(ui.ctx());
    let painter = ui.painter_at(seen.area);
    let dimmed = bench.derived().trouble().is_some();
    let switches = &views.switches;
    grid::paint(&painter, seen.area, &seen.transform, tokens);
    if switches.reference {
        extras::reference(&painter, bench, seen);
    }
    if switches.envelope {
        extras::envelope(&painter, bench, shown, seen);
    }
    let sight = seen.sight(painter.pixels_per_point());
    let drawing = front_end(shown.layout(), &shown.pose, sight);
    paint::paint(&painter, &drawing, &seen.transform, tokens, dimmed);
    if switches.turn_lines {
        extras::turn(&painter, shown, seen);
    }
    if switches.rod_gaps && seen.view == View::Top && views.measuring.is_none() {
        extras::rod_gaps(ui, &painter, shown, seen);
    }
    if let Some(measuring) = &views.measuring {
        measure::paint(ui, &painter, shown, measuring, seen);
    }
    grid::scale_bar(ui, &painter, seen.area, &seen.transform, tokens);
    let font = TextStyle::Small.resolve(ui.style());
    let corner = seen.area.left_top() + vec2(12.0, 8.0);
    let title = painter.layout_no_wrap(seen.view.title().to_owned(), font, tokens.text_weak);
    let ground = Rect::from_min_size(corner, title.size()).expand2(vec2(3.0, 1.0));
    painter.rect_filled(ground, Metrics::CORNER, tokens.canvas.gamma_multiply(0.85));
    painter.galley(corner, title, tokens.text_weak);
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
