//! Measuring between two clicked places: pivots in space, or any place within the plane of a view.

use eframe::egui::{
    Button, Frame, Id, Key, Margin, Modifiers, Painter, Pos2, Rect, Response, Role, Sense, Stroke,
    Ui, UiBuilder, Vec2, WidgetInfo, vec2,
};
use steerloft_setup::adjustment::PointName;
use steerloft_sheet::View;
use steerloft_solver::figures::contact::contact_centre;
use steerloft_solver::frame::{Point, Side, Vector};

use super::extras::label;
use super::grab::{Pointer, nearest};
use super::pivot::posed;
use super::seen::Seen;
use crate::commands::Command;
use crate::format;
use crate::state::Shown;
use crate::theme::{Metrics, Tokens};
use crate::ui::{Intent, Intents, ViewState, names, units_of};
use crate::units::Units;

/// The measuring that goes on: which places have been clicked.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Measuring {
    /// From where.
    pub from: Option<Mark>,
    /// To where.
    pub to: Option<Mark>,
}

/// A place that is measured from or to. It goes along with the car.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Mark {
    /// A pivot.
    Pivot(PointName, Side),
    /// Where a tyre touches the road: the lowest point of the wheel circle.
    Contact(Side),
    /// A place of the drawing plane of a view, mm; how far away from the eye it is is not known.
    Free(View, [f64; 2]),
}

/// What lies between two marks, mm in chassis axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// From the first to the second: forward, left, up.
    pub by: Vector,
    /// The view in whose plane alone the distance is known; none for a distance in space.
    pub in_view: Option<View>,
}

impl Measuring {
    /// Takes the next place: the first or the second one, or the first one of another measurement.
    fn mark(&mut self, mark: Mark) {
        let goes_on = self.to.is_none() && self.from.is_some_and(|from| from.compares_with(&mark));
        if goes_on {
            self.to = Some(mark);
        } else {
            *self = Self {
                from: Some(mark),
                to: None,
            };
        }
    }

    /// What lies between the two marks in the pose on screen.
    #[must_use]
    pub fn measured(&self, shown: &Shown) -> Option<Measured> {
        let (from, to) = (self.from?, self.to?);
        let plane = match (from, to) {
            (Mark::Free(view, _), _) | (_, Mark::Free(view, _)) => Some(view),
            _ => None,
        };
        let by = match plane {
            None => to.place(shown)? - from.place(shown)?,
            Some(view) => {
                let (a, b) = (from.in_plane(shown, view)?, to.in_plane(shown, view)?);
                view.lift([b[0] - a[0], b[1] - a[1]])
            }
        };
        Some(Measured { by, in_view: plane })
    }
}

impl Mark {
    /// Whether something can be said about the way from this to another.
    fn compares_with(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Free(one, _), Self::Free(two, _)) => one == two,
            _ => true,
        }
    }

    /// Where it is in space, chassis axes, mm.
    fn place(&self, shown: &Shown) -> Option<Point> {
        match *self {
            Self::Pivot(point, side) => Some(posed(shown, point, side)?.place),
            Self::Contact(side) => {
                let up = shown.assembly().axle().road.normal();
                Some(contact_centre(shown.pose.corners.get(side), &up))
            }
            Self::Free(..) => None,
        }
    }

    /// Where it is in the plane of a view, mm.
    fn in_plane(&self, shown: &Shown, view: View) -> Option<[f64; 2]> {
        match *self {
            Self::Free(other, place) => (other == view).then_some(place),
            _ => Some(view.project(&self.place(shown)?)),
        }
    }

    /// Its name within a text.
    fn name(&self) -> String {
        match *self {
            Self::Pivot(point, side) => names::pivot(point, side),
            Self::Contact(side) => format!("Tyre on the road, {side}"),
            Self::Free(view, _) => format!("a place in the {}", names::view(view)),
        }
    }

    /// Accessible name of the place to click in a view.
    fn accessible_name(&self, view: View) -> String {
        format!("Measure at {} ({})", self.name(), names::view(view))
    }
}

/// A mark that a click may choose.
struct Spot {
    mark: Mark,
    at: Pos2,
}

/// Offers every joint of the car to be clicked, and takes clicks; a free place is where no joint is in reach.
pub(super) fn take(ui: &Ui, shown: &Shown, state: &mut ViewState, seen: &Seen, ground: &Response) {
    let spots = spots(shown, seen);
    let reach = Pointer::of(ui).reach();
    let responses: Vec<Response> = spots.iter().map(|spot| interact(ui, seen, spot)).collect();
    let Some(measuring) = &mut state.views.measuring else {
        return;
    };
    let touched = responses.iter().chain([ground]);
    for clicked in touched.filter(|response| response.clicked()) {
        let at = clicked.interact_pointer_pos();
        let by_key = responses
            .iter()
            .position(|response| response.id == clicked.id);
        let index = match at {
            Some(at) => nearest(spots.iter().map(|spot| spot.at), at, reach),
            None => by_key,
        };
        match (index, at) {
            (Some(index), _) => measuring.mark(spots[index].mark),
            (None, Some(at)) => {
                measuring.mark(Mark::Free(seen.view, seen.transform.to_plane(at)));
            }
            (None, None) => {}
        }
    }
    let painter = ui.painter_at(seen.area);
    let tokens = Tokens::of(ui.ctx());
    for (spot, response) in spots.iter().zip(&responses) {
        let active = response.hovered() || response.has_focus();
        let radius = if active { 5.0 } else { 3.0 };
        let fill = if active { tokens.accent } else { tokens.canvas };
        painter.circle(spot.at, radius, fill, Stroke::new(1.4, tokens.accent));
        if active {
            let at = spot.at + vec2(0.0, -16.0);
            label(ui, &painter, at, &spot.mark.name(), tokens.accent);
        }
    }
}

fn spots(shown: &Shown, seen: &Seen) -> Vec<Spot> {
    let pivots = PointName::ALL.into_iter().flat_map(|point| {
        let sides = Side::BOTH.into_iter();
        sides
            .filter(move |side| !point.is_shared() || *side == Side::Left)
            .map(move |side| (side, Mark::Pivot(point, side)))
    });
    let contacts = Side::BOTH.map(|side| (side, Mark::Contact(side)));
    pivots
        .chain(contacts)
        .filter(|(side, _)| seen.shows(*side))
        .filter_map(|(_, mark)| {
            let at = seen.at(&mark.place(shown)?);
            seen.area.contains(at).then_some(Spot { mark, at })
        })
        .collect()
}

fn interact(ui: &Ui, seen: &Seen, spot: &Spot) -> Response {
    let name = spot.mark.accessible_name(seen.view);
    let size = Vec2::splat(2.0 * Pointer::Fine.reach());
    let reach = Rect::from_center_size(spot.at, size).intersect(seen.area);
    let response = ui.interact(reach, Id::unique(("measure", &name)), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
    response
}

/// Draws what is measured into a view.
pub(super) fn paint(ui: &Ui, painter: &Painter, shown: &Shown, measuring: &Measuring, seen: &Seen) {
    let tokens = Tokens::of(ui.ctx());
    let place = |mark: &Option<Mark>| {
        let plane = mark.as_ref()?.in_plane(shown, seen.view)?;
        Some(seen.transform.to_screen(plane))
    };
    let stroke = Stroke::new(1.6, tokens.accent);
    let (from, to) = (place(&measuring.from), place(&measuring.to));
    for at in [from, to].into_iter().flatten() {
        painter.circle(at, 4.0, tokens.accent, stroke);
    }
    let (Some(from), Some(to), Some(measured)) = (from, to, measuring.measured(shown)) else {
        return;
    };
    let only_here = measured.in_view.is_none_or(|view| view == seen.view);
    if only_here {
        painter.line_segment([from, to], stroke);
        let unit = units_of(ui.ctx()).unit("mm", 2);
        let text = format::number(measured.by.norm() * unit.factor, unit.decimals);
        label(ui, painter, from + (to - from) * 0.5, &text, tokens.accent);
    }
}

/// A strip over the drawings that says what to do, or what was measured.
pub(super) fn strip(
    ui: &mut Ui,
    shown: &Shown,
    measuring: &Measuring,
    area: Rect,
    intents: &mut Intents,
) {
    let tokens = Tokens::of(ui.ctx());
    let place = Rect::from_min_size(
        area.left_top() + vec2(8.0, 26.0),
        vec2(area.width() - 16.0, 40.0),
    );
    ui.scope_builder(UiBuilder::new().max_rect(place), |ui| {
        Frame::new()
            .fill(tokens.raised)
            .stroke(Stroke::new(1.0, tokens.accent))
            .corner_radius(Metrics::CORNER)
            .inner_margin(Margin::symmetric(Metrics::MARGIN, 5))
            .show(ui, |ui| {
                ui.horizontal_wrapped(|ui| {
                    ui.label(readout(shown, measuring, units_of(ui.ctx())));
                    if ui.add(Button::new("End measuring").small()).clicked() {
                        intents.push(Intent::Command(Command::Measure));
                    }
                });
            });
    });
}

/// What was measured, in words and numbers, or what to click next.
fn readout(shown: &Shown, measuring: &Measuring, units: Units) -> String {
    let (Some(from), Some(to)) = (measuring.from, measuring.to) else {
        return match measuring.from {
            None => "Click a joint, or any place, to measure from.".to_owned(),
            Some(from) => format!("From {}: click where to.", from.name()),
        };
    };
    let Some(measured) = measuring.measured(shown) else {
        return "The car no longer has these points.".to_owned();
    };
    let unit = units.unit("mm", 2);
    let number = |value: f64| format::signed(value * unit.factor, unit.decimals);
    let Measured { by, in_view } = measured;
    let distance = units.length(by.norm(), 2);
    let (distance, parts) = match in_view {
        None => (
            distance,
            format!(
                "dx {}   dy {}   dz {}",
                number(by.x),
                number(by.y),
                number(by.z)
            ),
        ),
        Some(view) => (
            format!("{distance} in the plane of the {}", names::view(view)),
            match view {
                View::Top => format!("dx {}   dy {}", number(by.x), number(by.y)),
                View::Front => format!("dy {}   dz {}", number(by.y), number(by.z)),
                View::Side => format!("dx {}   dz {}", number(by.x), number(by.z)),
            },
        ),
    };
    format!(
        "{} \u{2013} {}: {distance}   {parts}",
        from.name(),
        to.name()
    )
}

/// Escape lets go of the places clicked, and then ends measuring.
pub(super) fn take_escape(ui: &Ui, state: &mut ViewState) {
    let Some(measuring) = &mut state.views.measuring else {
        return;
    };
    if ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape)) {
        if measuring.from.is_some() {
            *measuring = Measuring::default();
        } else {
            state.views.measuring = None;
        }
    }
}
