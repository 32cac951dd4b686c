//! A plus and a minus beside each stack of spacers: one more of the spacers at hand, or one less.

use eframe::egui::{
    Align2, CornerRadius, Id, Pos2, Rect, Response, Role, Sense, Stroke, StrokeKind, TextStyle, Ui,
    Vec2, WidgetInfo, vec2,
};
use steerloft_setup::adjustment::{Adjustment, PointName};
use steerloft_setup::setup::Chosen;
use steerloft_sheet::{StackStand, stack_stands};
use steerloft_solver::frame::Side;

use super::seen::Seen;
use crate::state::{Bench, Change, Shown};
use crate::theme::{Metrics, Tokens};
use crate::ui::{Intents, ViewState, names, units_of, widgets};
use crate::units::Units;

/// A stack is seen from its side where this share of its direction lies in the drawing plane.
const SEEN_FROM_SIDE: f64 = 0.5;

/// Distance of the buttons from the stack, points.
const BESIDE: f32 = 24.0;

/// Distance of the pointer from the buttons within which they show, points.
const NEAR: f32 = 56.0;

/// The two buttons of a stack in a view.
struct Pair {
    adjustment: usize,
    side: Side,
    /// Middle of the stack on screen.
    stack: Pos2,
    /// Middle of both buttons.
    at: Pos2,
    /// Side of a button, points.
    size: f32,
}

/// One of the two buttons.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Way {
    More,
    Less,
}

impl Pair {
    fn rect(&self, way: Way) -> Rect {
        let off = match way {
            Way::More => -0.5,
            Way::Less => 0.5,
        };
        Rect::from_center_size(
            self.at + vec2(0.0, off * (self.size + 1.0)),
            Vec2::splat(self.size),
        )
    }

    fn both(&self) -> Rect {
        self.rect(Way::More).union(self.rect(Way::Less))
    }
}

/// Shows the buttons of a view near the pointer, and takes clicks.
pub(super) fn show(
    ui: &Ui,
    bench: &Bench,
    shown: &Shown,
    state: &mut ViewState,
    intents: &mut Intents,
    seen: &Seen,
) {
    let pointer = ui.input(|input| input.pointer.latest_pos());
    for pair in pairs(ui, shown, seen) {
        let Some(adjustment) = bench.setup().car.adjustments.get(pair.adjustment) else {
            continue;
        };
        let ways = [Way::More, Way::Less];
        let buttons = ways.map(|way| button(ui, bench, seen, &pair, adjustment, way));
        let is_near = pointer.is_some_and(|at| {
            seen.area.contains(at)
                && pair
                    .both()
                    .union(Rect::from_pos(pair.stack))
                    .distance_to_pos(at)
                    < NEAR
        });
        let shows = is_near || buttons.iter().any(|(response, _)| response.has_focus());
        for (way, (response, next)) in ways.into_iter().zip(buttons) {
            if shows {
                paint(ui, seen, &pair, way, &response, next.is_some());
            }
            let Some(next) = next else {
                continue;
            };
            if response.clicked() {
                state.last_adjustment = Some(pair.adjustment);
                intents.apply(Change::Adjust {
                    adjustment: pair.adjustment,
                    value: next,
                });
            }
        }
    }
}

/// The buttons of every stack seen from its side, none over another.
fn pairs(ui: &Ui, shown: &Shown, seen: &Seen) -> Vec<Pair> {
    let size = if ui.input(eframe::egui::InputState::has_touch_screen) {
        Metrics::FINGER_BUTTON
    } else {
        Metrics::PART_BUTTON
    };
    let mut pairs: Vec<Pair> = Vec::new();
    for stand in stack_stands(shown.layout(), &shown.pose) {
        let known = pairs
            .iter()
            .any(|pair| pair.adjustment == stand.adjustment && pair.side == stand.side);
        if known || !seen.shows(stand.side) {
            continue;
        }
        if let Some(pair) = pair(seen, &stand, size, &pairs) {
            pairs.push(pair);
        }
    }
    pairs
}

fn pair(seen: &Seen, stand: &StackStand, size: f32, others: &[Pair]) -> Option<Pair> {
    let [right, up] = seen.view.project_vector(&stand.direction);
    if right.hypot(up) < SEEN_FROM_SIDE {
        return None;
    }
    let (top, foot) = (seen.at(&stand.top), seen.at(&stand.foot));
    let stack = top + (foot - top) * 0.5;
    let away = vec2(away_from_rod(stand), 0.0);
    let mut pair = Pair {
        adjustment: stand.adjustment,
        side: stand.side,
        stack,
        at: stack + away * BESIDE,
        size,
    };
    while others
        .iter()
        .any(|other| other.both().intersects(pair.both().shrink(0.5)))
    {
        pair.at += away * (size + 2.0);
    }
    seen.area.contains_rect(pair.both()).then_some(pair)
}

/// Direction on screen, +1 to the right, in which no rod leaves a stack: the left of the car is at the left.
fn away_from_rod(stand: &StackStand) -> f32 {
    let outboard = match stand.side {
        Side::Left => -1.0,
        Side::Right => 1.0,
    };
    match stand.point {
        PointName::RodInner
        | PointName::DragServo
        | PointName::DragCrank
        | PointName::CrossBall => -outboard,
        _ => outboard,
    }
}

/// Registers a button; the value it leads to, if there is one.
fn button(
    ui: &Ui,
    bench: &Bench,
    seen: &Seen,
    pair: &Pair,
    adjustment: &Adjustment,
    way: Way,
) -> (Response, Option<Chosen>) {
    let now = bench.setup().value(pair.adjustment);
    let (steps, word) = match way {
        Way::More => (1, "one more"),
        Way::Less => (-1, "one less"),
    };
    let next = adjustment.step_from(&now, steps);
    let next = (next != now).then_some(next);
    let name = format!(
        "{}, {}: {word} ({})",
        adjustment.name,
        pair.side,
        names::view(seen.view)
    );
    let response = ui.interact(
        pair.rect(way),
        Id::unique(("spacer", &name)),
        Sense::click(),
    );
    let enabled = next.is_some();
    response.widget_info(|| WidgetInfo::labeled(Role::Button, enabled, &name));
    let response = response.on_hover_ui(|ui| {
        let units = units_of(ui.ctx());
        ui.label(hint(adjustment, &now, next.as_ref(), way, units));
    });
    (response, next)
}

/// What a click does, or why it does nothing.
fn hint(
    adjustment: &Adjustment,
    now: &Chosen,
    next: Option<&Chosen>,
    way: Way,
    units: Units,
) -> String {
    let name = &adjustment.name;
    let now = units.value(adjustment, now);
    match (next, way) {
        (Some(next), _) => {
            let fit = match next {
                Chosen::Stack(total) => {
                    widgets::spacers(adjustment.spacers_for(*total).as_deref(), units)
                }
                _ => String::new(),
            };
            format!("{name}: {now} to {} ({fit})", units.value(adjustment, next))
        }
        (None, Way::More) => format!("{name}: {now}, and the parts at hand make no thicker stack"),
        (None, Way::Less) => format!("{name}: no spacer to take away"),
    }
}

fn paint(ui: &Ui, seen: &Seen, pair: &Pair, way: Way, response: &Response, enabled: bool) {
    let tokens = Tokens::of(ui.ctx());
    let painter = ui.painter_at(seen.area);
    let place = pair.rect(way);
    let active = enabled && (response.hovered() || response.has_focus());
    let (fill, line, ink) = match (enabled, active) {
        (false, _) => (tokens.panel, tokens.rule, tokens.rule),
        (true, true) => (tokens.accent_soft, tokens.accent, tokens.text_strong),
        (true, false) => (tokens.raised, tokens.part_line, tokens.text),
    };
    if way == Way::More {
        let to = place.center_bottom();
        painter.line_segment([pair.stack, to], Stroke::new(0.8, tokens.rule));
    }
    let corner = CornerRadius::same(Metrics::CORNER);
    let stroke = Stroke::new(1.0, line);
    painter.rect(place, corner, fill, stroke, StrokeKind::Inside);
    let text = match way {
        Way::More => "+",
        Way::Less => "\u{2212}",
    };
    let font = TextStyle::Body.resolve(ui.style());
    painter.text(place.center(), Align2::CENTER_CENTER, text, font, ink);
}
