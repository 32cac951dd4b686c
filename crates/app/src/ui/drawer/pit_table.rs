//! The pit table: from what was felt to adjustments worth trying, with what a step of each does on this car.

use eframe::egui::{Button, Grid, RichText, Ui};
use steerloft_analysis::pit_table::{Advice, CAUTION, Symptom, Try, advice};

use super::columns;
use crate::format::{number, signed, with_unit};
use crate::state::{Bench, Change, Moment, WorkedOut};
use crate::theme::{Metrics, Tokens};
use crate::ui::names::sentence;
use crate::ui::widgets::named_button;
use crate::ui::{Intents, units_of};
use crate::units::Units;

/// How many adjustments are listed for each figure, the strongest first.
const MOST_TRIES: usize = 4;

/// What the drawer holds from one frame to the next.
#[derive(Debug)]
pub struct PitTableDrawer {
    /// What was felt.
    pub symptom: Symptom,
    answer: WorkedOut<(Moment, Symptom), Answer>,
}

/// What was asked about, and the advice for it.
type Answer = (Symptom, Result<Vec<Advice>, String>);

impl Default for PitTableDrawer {
    fn default() -> Self {
        Self {
            symptom: Symptom::PushesAtEntry,
            answer: WorkedOut::default(),
        }
    }
}

impl PitTableDrawer {
    /// Whether advice is being worked out.
    #[must_use]
    pub const fn is_working(&self) -> bool {
        self.answer.is_working()
    }

    /// The last advice for what was felt.
    #[must_use]
    pub fn advice(&self) -> Option<&[Advice]> {
        let (symptom, advice) = self.answer.last()?;
        advice.as_deref().ok().filter(|_| *symptom == self.symptom)
    }

    fn ask(&mut self, ui: &Ui, bench: &Bench) {
        let setup = bench.setup().clone();
        let symptom = self.symptom;
        let ctx = ui.ctx().clone();
        self.answer.ask(
            (bench.moment(), symptom),
            move || ctx.request_repaint(),
            move || {
                let advice = advice(&setup, symptom).map_err(|error| error.to_string());
                (symptom, advice)
            },
        );
    }
}

/// Draws the drawer.
pub(super) fn show(ui: &mut Ui, bench: &Bench, drawer: &mut PitTableDrawer, intents: &mut Intents) {
    drawer.ask(ui, bench);
    columns(ui, "pit table", [0.25, 0.75], |ui, column| {
        if column == 0 {
            symptoms(ui, &mut drawer.symptom);
        } else {
            answers(ui, drawer, intents);
        }
    });
}

fn symptoms(ui: &mut Ui, chosen: &mut Symptom) {
    ui.label(RichText::new("What was felt").strong());
    for symptom in Symptom::ALL {
        let text = sentence(symptom.label());
        if ui.selectable_label(*chosen == symptom, text).clicked() {
            *chosen = symptom;
        }
    }
}

fn answers(ui: &mut Ui, drawer: &PitTableDrawer, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    ui.colored_label(tokens.text_weak, CAUTION);
    ui.add_space(Metrics::GAP_SMALL);
    match drawer.answer.last() {
        Some((symptom, Ok(advice))) if *symptom == drawer.symptom => {
            // What was worked out for a setup that has changed meanwhile is not to be applied to it.
            ui.add_enabled_ui(!drawer.is_working(), |ui| {
                for (place, advice) in advice.iter().enumerate() {
                    one(ui, place + 1, advice, intents);
                }
            });
        }
        Some((symptom, Err(reason))) if *symptom == drawer.symptom => {
            ui.colored_label(tokens.warning, reason);
        }
        _ => {
            ui.colored_label(tokens.text_weak, "Being worked out\u{2026}");
        }
    }
}

fn one(ui: &mut Ui, place: usize, advice: &Advice, intents: &mut Intents) {
    let units = units_of(ui.ctx());
    let figure = advice.aim.figure;
    ui.horizontal_wrapped(|ui| {
        let aim = format!(
            "{place}. {} {}",
            sentence(advice.aim.direction.label()),
            figure.label()
        );
        ui.label(RichText::new(aim).strong());
        match advice.now {
            Some(now) => ui.weak(format!("now {}", amount(advice, now, false, units))),
            None => ui.weak("this car has none"),
        };
    });
    ui.label(advice.aim.tendency);
    if advice.now.is_some() && advice.tries.is_empty() {
        ui.weak("No step of an adjustment of this car does that.");
    }
    Grid::new(("tries", place)).striped(true).show(ui, |ui| {
        for step in advice.tries.iter().take(MOST_TRIES) {
            ui.label(&step.name);
            ui.label(units.sentence(&format!("{} to {}", step.from, step.to)));
            ui.label(amount(advice, step.effect, true, units));
            let name = format!("Apply {}: {} to {}", step.name, step.from, step.to);
            let button = named_button(ui, true, Button::new("Apply").small(), &name);
            if button
                .on_hover_text("Take this step; it can be undone")
                .clicked()
                && let Some(change) = change(step)
            {
                intents.apply(change);
            }
            ui.end_row();
        }
    });
    ui.add_space(Metrics::GAP);
}

/// A value of the figure that is aimed at, or a change of it.
fn amount(advice: &Advice, value: f64, is_change: bool, units: Units) -> String {
    let figure = advice.aim.figure;
    let unit = units.unit(figure.unit(), figure.decimals());
    let value = value * unit.factor;
    let text = if is_change {
        signed(value, unit.decimals)
    } else {
        number(value, unit.decimals)
    };
    with_unit(&text, unit.sign)
}

/// The change that a step is.
fn change(step: &Try) -> Option<Change> {
    match step.adjustment {
        Some(adjustment) => Some(Change::Adjust {
            adjustment,
            value: step
                .setup
                .car
                .adjustments
                .get(adjustment)
                .map(|one| step.setup.value_of(one))?,
        }),
        None => Some(Change::Rods(step.setup.rods)),
    }
}
