//! Four short hints for who starts for the first time. They block nothing and are dismissed at any time.

use eframe::egui::{
    Align2, Area, Context, CornerRadius, Id, Margin, Order, Rect, RichText, Stroke, StrokeKind, Ui,
    pos2,
};

use super::{ViewState, panel_frame};
use crate::theme::{Metrics, Tokens};

/// One of the hints.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hint {
    /// The drawings and their rings.
    Drawings,
    /// The adjustments on the left.
    Adjustments,
    /// The column on the right.
    Results,
    /// Undo, and finding commands.
    Commands,
}

/// Where the parts of the window that hints point at lie.
#[derive(Debug, Clone, Copy)]
pub struct Places {
    /// The drawings.
    pub drawings: Rect,
    /// The panel on the left.
    pub adjustments: Rect,
    /// The column on the right.
    pub results: Rect,
    /// The menu.
    pub menu: Rect,
}

/// Widest a hint gets, points.
const WIDTH: f32 = 300.0;

/// Distance of a hint with its frame from the column that it stands beside, points.
const BESIDE: f32 = 24.0;

impl Hint {
    /// All, in their order.
    pub const ALL: [Self; 4] = [
        Self::Drawings,
        Self::Adjustments,
        Self::Results,
        Self::Commands,
    ];

    /// The hint after this one.
    #[must_use]
    pub fn next(self) -> Option<Self> {
        let at = Self::ALL.iter().position(|hint| *hint == self)?;
        Self::ALL.get(at + 1).copied()
    }

    fn number(self) -> usize {
        let at = Self::ALL.iter().position(|hint| *hint == self);
        at.map_or(1, |at| at + 1)
    }

    fn title(self) -> &'static str {
        match self {
            Self::Drawings => "Drag a ring",
            Self::Adjustments => "Or type it",
            Self::Results => "See what it does",
            Self::Commands => "Nothing is lost",
        }
    }

    fn text(self) -> &'static str {
        match self {
            Self::Drawings => {
                "Every pivot with a ring can be moved: drag it, and it goes from hole to hole and spacer to spacer. The sliders below steer the wheels and move the suspension."
            }
            Self::Adjustments => {
                "Everything that can be changed on the car stands here. Type 2,5 or 2+0.5 or 1/8 in. Rest the pointer on a name to read what one step does."
            }
            Self::Results => {
                "The curves follow at once. Point at one to read it off, drag in it to pose the car there. Figures has every number with what it means."
            }
            Self::Commands => {
                "Ctrl+Z takes anything back, and History shows it all. Ctrl+F finds a command by what it does, F1 lists every key. F2 shows these hints again."
            }
        }
    }

    fn place(self, places: &Places) -> Rect {
        match self {
            Self::Drawings => places.drawings,
            Self::Adjustments => places.adjustments,
            Self::Results => places.results,
            Self::Commands => places.menu,
        }
    }
}

/// Draws the hint that is due, and goes on to the next or ends when asked to.
pub fn show(ctx: &Context, view: &mut ViewState, places: &Places) {
    let Some(hint) = view.tour else {
        return;
    };
    let place = hint.place(places).intersect(ctx.content_rect());
    outline(ctx, place);
    let (next, done) = card(ctx, hint, beside(hint, places));
    if done || (next && hint.next().is_none()) {
        view.tour = None;
        view.preferences.hints_seen = true;
        ctx.request_repaint();
    } else if next {
        view.tour = hint.next();
        ctx.request_repaint();
    }
}

/// A line around the part of the window that the hint is about.
fn outline(ctx: &Context, place: Rect) {
    let tokens = Tokens::of(ctx);
    // Over the panels, and under the hint.
    let painter = ctx.layer_painter(eframe::egui::LayerId::new(
        Order::Middle,
        Id::unique("hint outline"),
    ));
    painter.rect_stroke(
        place.shrink(1.0),
        CornerRadius::same(Metrics::CORNER),
        Stroke::new(2.0, tokens.accent),
        StrokeKind::Inside,
    );
}

/// Where a hint goes so that what it is about can be seen: those about the columns stand in the drawings, beside them.
fn beside(hint: Hint, places: &Places) -> Rect {
    let drawings = places.drawings;
    match hint {
        Hint::Adjustments => drawings.with_max_x(drawings.left() + WIDTH + 2.0 * BESIDE),
        Hint::Results => drawings.with_min_x(drawings.right() - WIDTH - 2.0 * BESIDE),
        Hint::Drawings | Hint::Commands => hint.place(places),
    }
}

/// The hint itself; whether the next one is wanted, and whether no more are.
fn card(ctx: &Context, hint: Hint, place: Rect) -> (bool, bool) {
    let tokens = Tokens::of(ctx);
    let screen = ctx.content_rect();
    let width = WIDTH.min(screen.width() - 32.0).max(80.0);
    let middle = pos2(
        place.center().x.clamp(
            screen.left() + width / 2.0 + 16.0,
            (screen.right() - width / 2.0 - 16.0).max(screen.left() + width / 2.0 + 16.0),
        ),
        place.top() + (place.height() * 0.2).max(34.0),
    );
    let frame = panel_frame(tokens)
        .fill(tokens.raised)
        .stroke(Stroke::new(1.0, tokens.accent))
        .corner_radius(Metrics::CORNER)
        .inner_margin(Margin::same(14));
    Area::new(Id::unique("hint"))
        .order(Order::Foreground)
        .pivot(Align2::CENTER_TOP)
        .fixed_pos(middle)
        .constrain_to(screen)
        .show(ctx, |ui| {
            frame.show(ui, |ui| content(ui, hint, width)).inner
        })
        .inner
}

fn content(ui: &mut Ui, hint: Hint, width: f32) -> (bool, bool) {
    ui.set_width(width);
    ui.weak(RichText::new(format!("{} of {}", hint.number(), Hint::ALL.len())).small());
    ui.label(RichText::new(hint.title()).heading().strong());
    ui.label(hint.text());
    ui.add_space(Metrics::GAP);
    ui.horizontal(|ui| {
        let onward = if hint.next().is_some() {
            "Next hint"
        } else {
            "Start"
        };
        let next = ui.button(onward).clicked();
        let done = hint.next().is_some() && ui.button("No more hints").clicked();
        (next, done)
    })
    .inner
}
