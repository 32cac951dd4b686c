//! Drawers below the drawings: answers that need more room than a column has, one open at a time.
//!
//! A drawer is a variant of [`Drawer`] with its words and its key, a file here that draws it, an arm in `contents`, and,
//! if it holds anything from one frame to the next, a field of [`Drawers`]. Menu, finder, keys and settings follow.

mod binding;
mod changes;
mod effects;
mod equipment;
mod fit;
mod pit_table;
mod runs;
mod search;
mod servo;
mod setup_tree;
mod sides;
mod still_plot;
mod tolerance;

use eframe::egui::{
    Align, Button, Key, Layout, Modifiers, Panel, Rect, Role, ScrollArea, Ui, UiBuilder,
    WidgetInfo, pos2, vec2,
};

pub use binding::BindingDrawer;
pub use pit_table::PitTableDrawer;
pub use runs::RunsDrawer;
pub use servo::ServoDrawer;
pub use setup_tree::SetupTreeDrawer;

use steerloft_analysis::InputUnit;
use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::find::Measure;
use steerloft_analysis::text::NONE;

use super::{Intent, Intents, ViewState, names, panel_frame, units_of};
use crate::commands::Command;
use crate::format;
use crate::state::Bench;
use crate::state::effects::EffectsTable;
use crate::state::fitting::Fitting;
use crate::state::search::Searching;
use crate::state::sides::Sides;
use crate::state::tolerance::Tolerances;
use crate::theme::{Metrics, Tokens};
use crate::units::Units;

/// Share of the window's height that an open drawer takes at first, and at most.
const FIRST_SHARE: f32 = 0.36;
const MOST_SHARE: f32 = 0.62;

/// Least height of an open drawer, points.
const LEAST_HEIGHT: f32 = 120.0;

/// One of the drawers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Drawer {
    /// Which parts give what is wanted, or bring the reference's behaviour back.
    Search,
    /// What one step of each adjustment does to each figure.
    Effects,
    /// What build errors do.
    Tolerance,
    /// Left against right.
    Sides,
    /// The car that gauge readings tell of.
    Fit,
    /// What to change on the car to come from the reference to this setup.
    Changes,
    /// The servo: tooth, trim, end points, torque, fit.
    Servo,
    /// What binds over steering and travel.
    Binding,
    /// What is worth trying against what was felt.
    PitTable,
    /// The log of runs.
    Runs,
    /// The setups of the folder, and what was made from what.
    SetupTree,
}

/// Which drawer is open, how high, and what the drawers hold.
#[derive(Debug, Default)]
pub struct Drawers {
    /// The open one, if one is.
    pub open: Option<Drawer>,
    /// Height of the open one, points; none before it was first drawn.
    pub height: Option<f32>,
    /// What is searched for, and what was found.
    pub searching: Searching,
    /// What each step does.
    pub effects: EffectsTable,
    /// What is asked about the servo.
    pub servo: ServoDrawer,
    /// The binding map.
    pub binding: BindingDrawer,
    /// The pit table.
    pub pit_table: PitTableDrawer,
    /// The log of runs.
    pub runs: RunsDrawer,
    /// The folder's setups.
    pub setup_tree: SetupTreeDrawer,
    /// What build errors do.
    pub tolerances: Tolerances,
    /// The sides held against each other.
    pub sides: Sides,
    /// Gauge readings, and what came of them.
    pub fitting: Fitting,
}

impl Drawer {
    /// All, in the order of their fronts.
    pub const ALL: [Self; 11] = [
        Self::Search,
        Self::Effects,
        Self::Tolerance,
        Self::Sides,
        Self::Fit,
        Self::Changes,
        Self::Servo,
        Self::Binding,
        Self::PitTable,
        Self::Runs,
        Self::SetupTree,
    ];

    /// What stands on its front.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Search => "Search",
            Self::Effects => "Effects",
            Self::Tolerance => "Tolerance",
            Self::Sides => "Sides",
            Self::Fit => "Fit",
            Self::Changes => "Changes",
            Self::Servo => "Servo",
            Self::Binding => "Binding",
            Self::PitTable => "Pit table",
            Self::Runs => "Runs",
            Self::SetupTree => "Setup tree",
        }
    }

    /// What it answers, in a sentence.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Search => {
                "Find the parts that give what is wanted, or that bring the curves of the reference back"
            }
            Self::Effects => {
                "What one step of each adjustment does to each figure, and which adjustments do nearly the same"
            }
            Self::Tolerance => {
                "What build errors do: bands on the curves, how far figures spread, and which dimensions matter"
            }
            Self::Sides => {
                "Which figures differ from left to right, and what single change would explain it"
            }
            Self::Fit => {
                "Find uncertain dimensions from gauge readings taken on the car, and see what the readings leave open"
            }
            Self::Changes => {
                "What to change on the car to come from the reference to this setup, part by part"
            }
            Self::Servo => {
                "Which tooth and trim, end points, torque and speed over the throw, whether the body fits, and what the servo saver does"
            }
            Self::Binding => {
                "What binds over the whole field of steering and wheel travel: ball joints, dead centres, rim, chassis, thread"
            }
            Self::PitTable => {
                "What is usually tried against what was felt on the track, with what a step of it does on this car"
            }
            Self::Runs => {
                "The log of runs: conditions, what was felt, lap figures, and what to try next"
            }
            Self::SetupTree => {
                "The setups of this file's folder: which was made from which, what each changed, and search in them"
            }
        }
    }

    /// The key that opens and shuts it.
    #[must_use]
    pub const fn key(self) -> (Modifiers, Key) {
        match self {
            Self::Search => (Modifiers::NONE, Key::F3),
            Self::Effects => (Modifiers::NONE, Key::F4),
            Self::Tolerance => (Modifiers::NONE, Key::F5),
            Self::Sides => (Modifiers::NONE, Key::F6),
            Self::Fit => (Modifiers::NONE, Key::F7),
            Self::Changes => (Modifiers::NONE, Key::F8),
            Self::Servo => (Modifiers::SHIFT, Key::F3),
            Self::Binding => (Modifiers::SHIFT, Key::F4),
            Self::PitTable => (Modifiers::SHIFT, Key::F5),
            Self::Runs => (Modifiers::SHIFT, Key::F6),
            Self::SetupTree => (Modifiers::SHIFT, Key::F7),
        }
    }
}

impl Drawers {
    /// Opens a drawer, or shuts it if it is the open one.
    pub fn toggle(&mut self, drawer: Drawer) {
        self.open = (self.open != Some(drawer)).then_some(drawer);
    }
}

/// Draws the fronts of all drawers, and the open one below them.
pub fn show(ui: &mut Ui, bench: &Bench, view: &mut ViewState, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    let frame = panel_frame(tokens);
    let Some(open) = view.drawers.open else {
        Panel::bottom("drawer fronts")
            .frame(frame)
            .show(ui, |ui| fronts(ui, None, intents));
        return;
    };
    let window = ui.ctx().content_rect().height();
    let first = (window * FIRST_SHARE).round();
    let most = (window * MOST_SHARE).max(1.0);
    let panel = Panel::bottom("drawer")
        .resizable(true)
        .default_size(view.drawers.height.unwrap_or(first).min(most))
        .size_range(LEAST_HEIGHT.min(most)..=most)
        .frame(frame)
        .show(ui, |ui| {
            fronts(ui, Some(open), intents);
            ui.add_space(Metrics::GAP_SMALL);
            contents(ui, open, bench, view, intents);
            // The height is the user's, whatever is in it.
            ui.take_available_space();
        });
    view.drawers.height = Some(panel.response.rect.height());
}

/// What is in a drawer.
fn contents(
    ui: &mut Ui,
    drawer: Drawer,
    bench: &Bench,
    view: &mut ViewState,
    intents: &mut Intents,
) {
    match drawer {
        Drawer::Search => search::show(ui, bench, &mut view.drawers.searching, intents),
        Drawer::Effects => effects::show(ui, bench, &mut view.drawers.effects, intents),
        Drawer::Tolerance => {
            let curves = view.curves.kinds();
            tolerance::show(ui, bench, &mut view.drawers.tolerances, curves, intents);
        }
        Drawer::Sides => sides::show(ui, bench, &mut view.drawers.sides),
        Drawer::Fit => fit::show(ui, bench, &mut view.drawers.fitting, intents),
        Drawer::Changes => changes::show(ui, bench),
        Drawer::Servo => servo::show(ui, bench, &mut view.drawers.servo, intents),
        Drawer::Binding => binding::show(ui, bench, &mut view.drawers.binding, intents),
        Drawer::PitTable => pit_table::show(ui, bench, &mut view.drawers.pit_table, intents),
        Drawer::Runs => runs::show(ui, bench, &mut view.drawers.runs, intents),
        Drawer::SetupTree => setup_tree::show(ui, bench, &mut view.drawers.setup_tree, intents),
    }
}

/// Says why there is no answer for a setup.
fn cannot_be_assembled(ui: &mut Ui, reason: &str) {
    let reason = names::sentence(&units_of(ui.ctx()).sentence(reason));
    let ink = Tokens::of(ui.ctx()).warning;
    ui.colored_label(ink, format!("Cannot be assembled. {reason}."));
}

/// A value of a figure with its unit as it is shown, a dash for none; angles that whole curves are off count as degrees.
fn value(measure: &Measure, value: Option<f64>, input: InputUnit, units: Units) -> String {
    let facts = measure.figure().map(FigureKind::facts);
    let (sign, decimals) = facts.map_or(("\u{b0}", 3), |facts| (facts.unit(input), facts.decimals));
    let unit = units.unit(sign, decimals);
    let Some(value) = value.map(|value| value * unit.factor) else {
        return NONE.to_owned();
    };
    let text = match facts {
        Some(facts) if facts.is_signed => format::signed(value, unit.decimals),
        _ => format::number(value, unit.decimals),
    };
    format::with_unit(&text, unit.sign)
}

/// Divides a drawer into columns of these shares of its width, each of which scrolls by itself.
fn columns<const N: usize>(
    ui: &mut Ui,
    name: &str,
    shares: [f32; N],
    mut add: impl FnMut(&mut Ui, usize),
) {
    let area = ui.available_rect_before_wrap();
    let gaps: f32 = shares.iter().map(|_| 1.0).sum();
    let room = (area.width() - Metrics::GAP_LARGE * gaps).max(0.0);
    let mut left = area.left();
    for (index, share) in shares.into_iter().enumerate() {
        let corner = pos2(left, area.top());
        let place = Rect::from_min_size(corner, vec2(room * share, area.height()));
        ui.scope_builder(
            UiBuilder::new().id_salt((name, index)).max_rect(place),
            |ui| {
                ui.set_clip_rect(ui.clip_rect().intersect(place.expand(2.0)));
                let bar = ui.spacing().scroll.allocated_width();
                ScrollArea::both()
                    .auto_shrink([false, false])
                    .show(ui, |ui| {
                        // Text keeps to the column; a table that is wider can be scrolled to.
                        ui.set_max_width(place.width() - bar);
                        add(ui, index);
                    });
            },
        );
        left += room * share + Metrics::GAP_LARGE;
    }
}

/// A button for each drawer; the open one is shut by its own.
fn fronts(ui: &mut Ui, open: Option<Drawer>, intents: &mut Intents) {
    let size = vec2(ui.available_width(), Metrics::CONTROL_HEIGHT);
    ui.allocate_ui_with_layout(size, Layout::right_to_left(Align::Center), |ui| {
        if let Some(open) = open
            && super::widgets::named_button(ui, true, Button::new("Shut"), "Shut the drawer")
                .clicked()
        {
            intents.push(Intent::Command(Command::Drawer(open)));
        }
        ui.with_layout(Layout::left_to_right(Align::Center), |ui| {
            ScrollArea::horizontal()
                .id_salt("drawer fronts")
                .auto_shrink([false, true])
                .show(ui, |ui| {
                    ui.horizontal(|ui| {
                        ui.spacing_mut().item_spacing.x = Metrics::GAP_SMALL;
                        for drawer in Drawer::ALL {
                            front(ui, drawer, open == Some(drawer), intents);
                        }
                    });
                });
        });
    });
}

fn front(ui: &mut Ui, drawer: Drawer, is_open: bool, intents: &mut Intents) {
    let command = Command::Drawer(drawer);
    let button = Button::selectable(is_open, drawer.title()).frame_when_inactive(true);
    let response =
        ui.add(button)
            .on_hover_text(format!("{} ({})", drawer.meaning(), command.key_names()));
    response.widget_info(|| {
        let name = format!("Drawer: {}", drawer.title());
        WidgetInfo::selected(Role::Button, true, is_open, name)
    });
    if response.clicked() {
        intents.push(Intent::Command(command));
    }
}
