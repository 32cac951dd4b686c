//! What was found: the ranked list, what cannot be met, and what can be done with a finding.

use eframe::egui::{Button, RichText, Ui};
use steerloft_analysis::InputUnit;
use steerloft_analysis::find::{Finding, Findings, Search, Want};
use steerloft_setup::setup::Setup;

use super::super::value;
use super::grouped;
use crate::format;
use crate::state::Bench;
use crate::state::search::{Found, Searching, changes_in_words, unmet_in_words, with_finding};
use crate::theme::{Metrics, Tokens};
use crate::ui::{Intent, Intents, names, units_of, widgets};
use crate::units::Units;

/// Draws what the last search came to.
pub(super) fn show(ui: &mut Ui, bench: &Bench, searching: &Searching, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    let Some(Found { search, outcome }) = searching.found() else {
        ui.colored_label(tokens.text_weak, "Nothing has been searched for yet.");
        return;
    };
    let units = units_of(ui.ctx());
    match (outcome, search) {
        (Err(reason), _) => {
            let reason = format!("{}.", names::sentence(reason));
            ui.colored_label(tokens.warning, reason);
        }
        (Ok(findings), Some(search)) => {
            let list = List {
                search,
                findings,
                bench,
                units,
            };
            list.show(ui, intents);
        }
        (Ok(_), None) => {}
    }
}

/// A search with its findings, as they are listed.
struct List<'a> {
    search: &'a Search,
    findings: &'a Findings,
    bench: &'a Bench,
    units: Units,
}

impl List<'_> {
    fn show(&self, ui: &mut Ui, intents: &mut Intents) {
        let tokens = Tokens::of(ui.ctx());
        ui.weak(RichText::new(self.count()).small());
        for unmet in &self.findings.unmet {
            let value = |want: &Want, value: f64| value_text(self.search, want, value, self.units);
            let words = unmet_in_words(self.search, unmet, value);
            ui.colored_label(tokens.warning, self.units.sentence(&words));
        }
        if self.findings.list.is_empty() {
            ui.label("No combination has a value for every want.");
        }
        for (index, finding) in self.findings.list.iter().enumerate() {
            ui.separator();
            self.finding(ui, &format!("finding {}", index + 1), finding, intents);
        }
        if self.findings.front.len() > 1 {
            ui.separator();
            ui.label(RichText::new("Closest with so many changes").strong());
        }
        for finding in self
            .findings
            .front
            .iter()
            .filter(|_| self.findings.front.len() > 1)
        {
            let changes = finding.changes.len();
            let name = format!("the closest with {}", changes_in_words(changes));
            ui.separator();
            self.finding(ui, &name, finding, intents);
        }
    }

    /// How many combinations were tried.
    fn count(&self) -> String {
        let found = self.findings;
        let mut words = vec![format!("{} combinations tried", grouped(found.evaluated))];
        for (count, why) in [
            (found.apart, "cannot be assembled"),
            (found.misfits, "need another tie rod"),
        ] {
            if count > 0 {
                words.push(format!("{} {why}", grouped(count)));
            }
        }
        if !found.is_complete {
            words.push("stopped early".to_owned());
        }
        words.join("; ")
    }

    fn finding(&self, ui: &mut Ui, name: &str, finding: &Finding, intents: &mut Intents) {
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().item_spacing.x = Metrics::GAP;
            let title = format!(
                "{}: off by {}",
                names::sentence(name),
                format::number(finding.off, 2)
            );
            ui.label(RichText::new(title).strong()).on_hover_text(
                "How far off on average over the wants, in differences that a builder just notices; 0 is exactly as wanted",
            );
            ui.label(changes_in_words(finding.changes.len()));
            self.buttons(ui, name, finding, intents);
        });
        for change in &finding.changes {
            ui.label(self.units.sentence(&change.words));
        }
        for (want, result) in self.search.wants.iter().zip(&finding.results) {
            let values: Vec<String> = result
                .values
                .iter()
                .map(|value| value_text(self.search, want, *value, self.units))
                .collect();
            let text = format!("{}: {}", want.measure.label(), values.join(" and "));
            ui.weak(RichText::new(text).small());
        }
    }

    /// What can be done with a finding.
    fn buttons(&self, ui: &mut Ui, name: &str, finding: &Finding, intents: &mut Intents) {
        let base = self.bench.setup();
        let fitted = with_finding(self.search, finding, base);
        let enabled = fitted.is_some();
        let mut button = |text: &str, what: &str, hint: &str| {
            let button = Button::new(text).small();
            widgets::named_button(ui, enabled, button, what)
                .on_hover_text(hint)
                .on_disabled_hover_text("It was searched for another car than the one on the bench")
                .clicked()
        };
        let apply = button(
            "Apply",
            &format!("Apply {name}"),
            "Change the parts of this setup; one step of undo",
        );
        let open = button(
            "Open",
            &format!("Open {name}"),
            "Put it on the bench as a setup of its own, in no file yet",
        );
        let refer = button(
            "Ghost",
            &format!("Show {name} behind"),
            "Compare with it: outlines and curves behind this setup",
        );
        let Some(fitted) = fitted else {
            return;
        };
        if apply {
            intents.push(Intent::Adopt(Box::new(fitted), step_name(name, finding)));
        } else if open {
            intents.push(Intent::OpenSetup(Box::new(named(&fitted, name))));
        } else if refer {
            intents.push(Intent::ReferToSetup(Box::new(named(&fitted, name))));
        }
    }
}

/// What the step is called that puts a finding on the setup.
fn step_name(name: &str, finding: &Finding) -> String {
    let changes: Vec<&str> = finding
        .changes
        .iter()
        .map(|change| change.words.as_str())
        .collect();
    format!("{}: {}", names::sentence(name), changes.join(", "))
}

/// The setup under a name of its own, made from the one that was searched.
fn named(setup: &Setup, name: &str) -> Setup {
    let of = setup.record.name.trim();
    let of = if of.is_empty() { &setup.car.name } else { of };
    setup.child(&format!("{of}, {name}"))
}

/// A value of a want with its unit; of a whole curve what is left on average.
fn value_text(search: &Search, want: &Want, number: f64, units: Units) -> String {
    let input = InputUnit::of(&search.setup.car);
    let text = value(&want.measure, Some(number), input, units);
    match want.measure.figure() {
        Some(_) => text,
        None => format!("{text} off"),
    }
}
