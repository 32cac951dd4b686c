//! What binds over the whole field of steering and wheel travel, as a map.

mod map;

use eframe::egui::{Button, Grid, RichText, Ui};
use steerloft_analysis::InputUnit;
use steerloft_analysis::binding::{BindingMap, Concern, ThreadCheck, WorstPoint, binding_map};
use steerloft_solver::frame::Side;

use super::columns;
use super::equipment::{fields, heading};
use crate::format::{number, signed, with_unit};
use crate::state::{Bench, Cursor, Equipment, Moment, Part, WorkedOut};
use crate::theme::{Metrics, Tokens};
use crate::ui::part::give_or_leave_out;
use crate::ui::widgets::{named_button, segments};
use crate::ui::{Intent, Intents, units_of};
use crate::units::Units;

/// Poses of the map over steering and travel.
const COLUMNS: usize = 31;
const ROWS: usize = 13;

/// What the drawer holds from one frame to the next.
#[derive(Debug)]
pub struct BindingDrawer {
    /// What the map shows.
    pub concern: Concern,
    answer: WorkedOut<Moment, Result<BindingMap, String>>,
}

impl Default for BindingDrawer {
    fn default() -> Self {
        Self {
            concern: Concern::BallJoint,
            answer: WorkedOut::default(),
        }
    }
}

impl BindingDrawer {
    /// Whether a map is being worked out.
    #[must_use]
    pub const fn is_working(&self) -> bool {
        self.answer.is_working()
    }

    /// The last map.
    #[must_use]
    pub fn map(&self) -> Option<&BindingMap> {
        self.answer.last()?.as_ref().ok()
    }

    fn ask(&mut self, ui: &Ui, bench: &Bench) {
        let setup = bench.setup().clone();
        let ctx = ui.ctx().clone();
        self.answer.ask(
            bench.moment(),
            move || ctx.request_repaint(),
            move || binding_map(&setup, COLUMNS, ROWS).map_err(|error| error.to_string()),
        );
    }
}

/// What a concern is called where it is chosen.
fn title(concern: Concern) -> &'static str {
    match concern {
        Concern::BallJoint => "Ball joints",
        Concern::DeadCentre => "Dead centre",
        Concern::Rim => "Rim",
        Concern::Chassis => "Chassis",
    }
}

/// A concern's value with its unit.
fn amount(concern: Concern, value: f64, units: Units) -> String {
    match concern {
        Concern::BallJoint => format!("{}\u{b0}", number(value, 1)),
        Concern::DeadCentre => number(value, 2),
        Concern::Rim | Concern::Chassis => units.length(value, 2),
    }
}

/// Draws the drawer.
pub(super) fn show(ui: &mut Ui, bench: &Bench, drawer: &mut BindingDrawer, intents: &mut Intents) {
    drawer.ask(ui, bench);
    let tokens = Tokens::of(ui.ctx());
    let BindingDrawer { concern, answer } = drawer;
    let map = match answer.last() {
        None => {
            ui.colored_label(tokens.text_weak, "Being worked out\u{2026}");
            return;
        }
        Some(Err(reason)) => {
            ui.colored_label(tokens.warning, reason);
            return;
        }
        Some(Ok(map)) => map,
    };
    columns(
        ui,
        "binding",
        [0.32, 0.42, 0.26],
        |ui, column| match column {
            0 => worst_points(ui, bench, map, concern, intents),
            1 => {
                let titles = Concern::ALL.map(title);
                let at = Concern::ALL.iter().position(|one| one == concern);
                let clicked = segments(ui, "Map of", titles.into_iter(), at);
                if let Some(chosen) = clicked.and_then(|index| Concern::ALL.get(index)) {
                    *concern = *chosen;
                }
                map::show(ui, bench, map, *concern, intents);
            }
            _ => {
                rods(ui, map);
                sizes(ui, bench, intents);
            }
        },
    );
}

fn worst_points(
    ui: &mut Ui,
    bench: &Bench,
    map: &BindingMap,
    shown: &mut Concern,
    intents: &mut Intents,
) {
    let tokens = Tokens::of(ui.ctx());
    if map.is_free() {
        ui.label(RichText::new("Nothing binds, with the sizes that are given").strong());
    } else {
        let text = RichText::new("Something binds, or a rod cannot be made").strong();
        ui.colored_label(tokens.warning, text);
    }
    let apart = map.cells.iter().filter(|cell| cell.is_err()).count();
    if apart > 0 {
        let text = format!("{apart} of {} poses are out of reach", map.cells.len());
        ui.colored_label(tokens.warning, text);
    }
    ui.add_space(Metrics::GAP_SMALL);
    for concern in Concern::ALL {
        if let Some(worst) = map.worst(concern) {
            worst_point(ui, bench, map, (concern, worst), shown, intents);
        } else {
            ui.label(title(concern)).on_hover_text(concern.meaning());
            ui.weak("not given, or never near");
        }
    }
    ui.add_space(Metrics::GAP);
    ui.weak("Check full lock by hand, over the whole wheel travel, before you power the steering.");
}

fn worst_point(
    ui: &mut Ui,
    bench: &Bench,
    map: &BindingMap,
    (concern, worst): (Concern, WorstPoint),
    shown: &mut Concern,
    intents: &mut Intents,
) {
    let tokens = Tokens::of(ui.ctx());
    let units = units_of(ui.ctx());
    let binds = worst.margin < 0.0;
    ui.horizontal(|ui| {
        let name = RichText::new(title(concern)).strong();
        let name = if binds {
            name.color(tokens.warning)
        } else {
            name
        };
        ui.label(name).on_hover_text(concern.meaning());
        let button = named_button(
            ui,
            true,
            Button::new("Worst point").small(),
            &format!("Worst point: {}", title(concern)),
        );
        if button.on_hover_text("Pose the car there").clicked() {
            *shown = concern;
            intents.push(Intent::Cursor(Cursor {
                input: worst.input,
                travel: worst.travel,
            }));
        }
    });
    let sign = InputUnit::of(&bench.setup().car).sign();
    let limit = match concern {
        Concern::BallJoint => map.joint_limit.map_or(String::new(), |limit| {
            format!(" of {}\u{b0}", number(limit, 1))
        }),
        _ => String::new(),
    };
    let left = amount(concern, worst.margin.abs(), units);
    let margin = if binds {
        format!("{left} beyond the limit")
    } else {
        format!("{left} to the limit")
    };
    let text = format!(
        "{}{limit}, {margin}, at {} of steering and {} of travel",
        amount(concern, worst.value, units),
        with_unit(&signed(worst.input, 1), sign),
        units.signed_length(worst.travel, 1)
    );
    if binds {
        ui.colored_label(tokens.warning, text);
    } else {
        ui.label(text);
    }
}

/// Reads a value of a rod.
type Read = fn(&ThreadCheck) -> Option<f64>;

fn rods(ui: &mut Ui, map: &BindingMap) {
    let tokens = Tokens::of(ui.ctx());
    let units = units_of(ui.ctx());
    ui.label(RichText::new("Tie rods").strong());
    let threads = Side::BOTH.map(|side| *map.threads.get(side));
    let rows: [(&str, Read); 5] = [
        ("ball to ball", |thread| Some(thread.length)),
        ("to the longest", |thread| Some(thread.to_longest)),
        ("to the shortest", |thread| Some(thread.to_shortest)),
        ("thread in each cup", |thread| thread.engagement),
        ("of that to spare", |thread| thread.spare_engagement),
    ];
    Grid::new("rods of the map").striped(true).show(ui, |ui| {
        for head in ["", "left", "right"] {
            ui.weak(head);
        }
        ui.end_row();
        for (name, value) in rows {
            ui.label(name);
            for thread in &threads {
                match value(thread) {
                    Some(value) if value < 0.0 => {
                        ui.colored_label(tokens.warning, units.length(value, 2));
                    }
                    Some(value) => {
                        ui.label(units.length(value, 2));
                    }
                    None => {
                        ui.label("\u{2013}");
                    }
                }
            }
            ui.end_row();
        }
    });
    if threads.iter().any(|thread| !thread.holds()) {
        ui.colored_label(
            tokens.warning,
            "A rod cannot be made of its parts, or its cup may come off.",
        );
    }
}

fn sizes(ui: &mut Ui, bench: &Bench, intents: &mut Intents) {
    heading(ui, "Limits and sizes");
    fields(ui, bench, &Equipment::SIZES, intents);
    if !Part::Diameters.is_given(&bench.setup().car) {
        give_or_leave_out(ui, bench, Part::Diameters, intents);
    }
    ui.weak("Studs, the inside of the wheel and obstacles are described with the car (Ctrl+E).");
}
