//! The log of runs: what was driven on, what was felt, what it took, and what to try next.

use eframe::egui::{Align, Button, Grid, Id, Layout, Response, TextEdit, Ui, vec2};
use steerloft_setup::check::check;
use steerloft_setup::setup::{Record, Run, Setup};

use super::columns;
use crate::entry::{self, Measure};
use crate::format;
use crate::state::{Bench, Change};
use crate::theme::{Metrics, Tokens};
use crate::ui::names::sentence;
use crate::ui::{Intent, Intents, units_of};

/// What the drawer holds from one frame to the next.
#[derive(Debug, Default)]
pub struct RunsDrawer {
    /// Place of the run that is shown.
    pub chosen: usize,
}

/// A text of a run: what it is called, how many lines it has room for at first, none for one that stays on its line, and
/// where it is.
type Text = (&'static str, usize, fn(&mut Run) -> &mut String);

const CONDITIONS: [Text; 4] = [
    ("When", 0, |run| &mut run.date),
    ("Surface", 0, |run| &mut run.surface),
    ("Grip", 0, |run| &mut run.grip),
    ("Tyres", 1, |run| &mut run.tyres),
];

const FELT: [Text; 5] = [
    ("Turning in", 1, |run| &mut run.felt.entry),
    ("Mid-corner", 1, |run| &mut run.felt.middle),
    ("Coming out", 1, |run| &mut run.felt.exit),
    ("Found", 2, |run| &mut run.notes),
    ("Next idea", 2, |run| &mut run.next_idea),
];

/// A number of a run that may be left out: what it is called, its unit, its range, and where it is read and written.
struct Number {
    name: &'static str,
    unit: &'static str,
    range: (f64, f64),
    decimals: usize,
    get: fn(&Run) -> Option<f64>,
    set: fn(&mut Run, Option<f64>),
}

const NUMBERS: [Number; 4] = [
    Number {
        name: "Temperature",
        unit: "\u{b0}C",
        range: (-60.0, 100.0),
        decimals: 1,
        get: |run| run.temperature,
        set: |run, value| run.temperature = value,
    },
    Number {
        name: "Laps",
        unit: "",
        range: (0.0, 100_000.0),
        decimals: 0,
        get: |run| run.laps.count.map(f64::from),
        set: |run, value| run.laps.count = value.map(whole),
    },
    Number {
        name: "Best lap",
        unit: "s",
        range: (0.001, 100_000.0),
        decimals: 3,
        get: |run| run.laps.best,
        set: |run, value| run.laps.best = value,
    },
    Number {
        name: "Mean lap",
        unit: "s",
        range: (0.001, 100_000.0),
        decimals: 3,
        get: |run| run.laps.mean,
        set: |run, value| run.laps.mean = value,
    },
];

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "within the number's range"
)]
fn whole(value: f64) -> u32 {
    value.round() as u32
}

/// Width of the names of texts, points.
const NAMES: f32 = 82.0;

/// Draws the drawer.
pub(super) fn show(ui: &mut Ui, bench: &Bench, drawer: &mut RunsDrawer, intents: &mut Intents) {
    let record = &bench.setup().record;
    drawer.chosen = drawer.chosen.min(record.runs.len().saturating_sub(1));
    let chosen = &mut drawer.chosen;
    columns(ui, "runs", [0.26, 0.34, 0.4], |ui, column| {
        if column == 0 {
            list(ui, record, chosen, intents);
            return;
        }
        let Some(run) = record.runs.get(*chosen) else {
            if column == 1 {
                ui.weak("No run is noted yet. What is noted here is kept in the setup's file.");
            }
            return;
        };
        let place = Place {
            setup: bench.setup(),
            index: *chosen,
        };
        if column == 1 {
            conditions(ui, place, run, intents);
        } else {
            texts(ui, place, &FELT, intents);
        }
    });
}

fn list(ui: &mut Ui, record: &Record, chosen: &mut usize, intents: &mut Intents) {
    ui.horizontal(|ui| {
        if ui.button("Add a run").clicked() {
            let mut edited = record.clone();
            // Conditions seldom change from one run to the next.
            let before = record.runs.last();
            edited
                .runs
                .push(before.map_or_else(Run::default, |before| Run {
                    date: before.date.clone(),
                    surface: before.surface.clone(),
                    grip: before.grip.clone(),
                    temperature: before.temperature,
                    tyres: before.tyres.clone(),
                    ..Run::default()
                }));
            *chosen = record.runs.len();
            intents.apply(Change::Record(Box::new(edited)));
        }
        let number = *chosen + 1;
        let can = !record.runs.is_empty();
        let remove = Button::new(format!("Remove run {number}"));
        if can && ui.add(remove).clicked() {
            let mut edited = record.clone();
            edited.runs.remove(*chosen);
            intents.apply(Change::Record(Box::new(edited)));
        }
    });
    ui.add_space(Metrics::GAP_SMALL);
    for (index, run) in record.runs.iter().enumerate() {
        let row = Button::selectable(*chosen == index, title(index, run)).truncate();
        if ui.add(row).clicked() {
            *chosen = index;
        }
    }
}

/// A run in a line.
fn title(index: usize, run: &Run) -> String {
    let best = run.laps.best.map_or(String::new(), |best| {
        format!("{} s", format::number(best, 3))
    });
    let words = [
        run.date.clone(),
        run.surface.clone(),
        run.grip.clone(),
        best,
    ];
    let words: Vec<String> = words
        .into_iter()
        .filter(|word| !word.trim().is_empty())
        .collect();
    format!("Run {}   {}", index + 1, words.join(", "))
}

/// Which run of which setup is edited.
#[derive(Clone, Copy)]
struct Place<'a> {
    setup: &'a Setup,
    index: usize,
}

impl Place<'_> {
    /// The record with the run edited.
    fn edited(&self, edit: impl FnOnce(&mut Run)) -> Record {
        let mut record = self.setup.record.clone();
        if let Some(run) = record.runs.get_mut(self.index) {
            edit(run);
        }
        record
    }

    /// The change to a record, or why a file could not hold it.
    fn checked(&self, record: Record) -> Result<Change, String> {
        let mut setup = self.setup.clone();
        setup.record = record;
        check(&setup).map_err(|fault| format!("{}; {}", fault.wrong, fault.right))?;
        Ok(Change::Record(Box::new(setup.record)))
    }
}

fn conditions(ui: &mut Ui, place: Place<'_>, run: &Run, intents: &mut Intents) {
    texts(ui, place, &CONDITIONS, intents);
    ui.add_space(Metrics::GAP_SMALL);
    Grid::new("numbers of the run")
        .num_columns(3)
        .show(ui, |ui| {
            for number in &NUMBERS {
                number_row(ui, place, run, number, intents);
            }
        });
}

fn texts(ui: &mut Ui, place: Place<'_>, texts: &[Text], intents: &mut Intents) {
    for (name, rows, of) in texts {
        let mut record = place.setup.record.clone();
        let Some(run) = record.runs.get_mut(place.index) else {
            continue;
        };
        let text = of(run);
        let id = Id::unique(("run", place.index, *name));
        let response = ui
            .horizontal_top(|ui| {
                let label = vec2(NAMES, Metrics::CONTROL_HEIGHT);
                ui.allocate_ui_with_layout(label, Layout::left_to_right(Align::Center), |ui| {
                    ui.set_min_width(NAMES);
                    ui.label(*name);
                });
                let field = match rows {
                    0 => TextEdit::singleline(text),
                    rows => TextEdit::multiline(text).desired_rows(*rows),
                };
                ui.add(field.id(id).desired_width(f32::INFINITY))
            })
            .inner
            .accessible_name(format!("Run {}: {}", place.index + 1, name.to_lowercase()));
        let change = Change::Record(Box::new(record));
        follow(&response, response.changed().then_some(change), intents);
    }
}

fn number_row(ui: &mut Ui, place: Place<'_>, run: &Run, number: &Number, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    ui.label(number.name);
    let id = Id::unique(("run", place.index, number.name));
    let held =
        (number.get)(run).map_or(String::new(), |value| format::short(value, number.decimals));
    // What is typed stays as it is until the field is left, with what is wrong with it.
    let typed: Option<Typed> = ui.data(|data| data.get_temp(id));
    let (mut text, wrong) = typed.map_or((held, None), |typed| (typed.text, typed.wrong));
    let field = TextEdit::singleline(&mut text)
        .id(id)
        .text_color_opt(wrong.is_some().then_some(tokens.warning));
    let name = number.name.to_lowercase();
    let size = vec2(Metrics::FIELD_WIDTH, Metrics::CONTROL_HEIGHT);
    let response = ui
        .add_sized(size, field)
        .accessible_name(format!("Run {}: {name}", place.index + 1));
    match &wrong {
        None => ui.weak(number.unit),
        Some(wrong) => ui.colored_label(tokens.warning, sentence(wrong)),
    };
    ui.end_row();
    let mut change = None;
    if response.changed() {
        let taken = number.read(&text, ui).and_then(|value| {
            let edited = place.edited(|run| (number.set)(run, value));
            place.checked(edited)
        });
        let wrong = taken.as_ref().err().cloned();
        change = taken.ok();
        ui.data_mut(|data| data.insert_temp(id, Typed { text, wrong }));
    }
    if response.lost_focus() {
        ui.data_mut(|data| data.remove::<Typed>(id));
    }
    follow(&response, change, intents);
}

/// What is typed in a field, and what is wrong with it.
#[derive(Debug, Clone, Default)]
struct Typed {
    text: String,
    wrong: Option<String>,
}

impl Number {
    /// The number that a text says, none for an empty one.
    fn read(&self, text: &str, ui: &Ui) -> Result<Option<f64>, String> {
        if text.trim().is_empty() {
            return Ok(None);
        }
        let units = units_of(ui.ctx());
        let value = entry::read(text, Measure::Plain(self.unit), units)
            .map_err(|error| error.to_string())?;
        let (least, most) = self.range;
        if (least..=most).contains(&value) {
            Ok(Some(value))
        } else {
            Err(format!("{least} to {most}"))
        }
    }
}

/// While a text is edited, the change goes on; leaving the field ends it.
fn follow(response: &Response, change: Option<Change>, intents: &mut Intents) {
    if let Some(change) = change {
        intents.push(Intent::Preview(change));
    }
    if response.lost_focus() {
        intents.push(Intent::Finish);
    }
}
