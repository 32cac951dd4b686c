//! What a fit has found, what the readings leave open, and adopting the fitted car.

use eframe::egui::{Button, RichText, Ui};
use steerloft_analysis::fit::Fit;
use steerloft_setup::adjustment::Unit;

use crate::format;
use crate::state::Bench;
use crate::state::fitting::{Fitted, Fitting};
use crate::theme::{Metrics, Tokens};
use crate::ui::{Intent, Intents, names, widgets};
use crate::units::Units;

/// The button that starts a fit.
pub(super) fn start(ui: &mut Ui, bench: &Bench, fitting: &mut Fitting, units: Units) {
    let tokens = Tokens::of(ui.ctx());
    ui.horizontal(|ui| {
        let enabled = !fitting.is_working();
        let button = widgets::named_button(ui, enabled, Button::new("Fit"), "Start the fit");
        let hint =
            "Change the uncertain dimensions until the car does what was read, as closely as it can";
        if button.on_hover_text(hint).clicked() {
            let ctx = ui.ctx().clone();
            fitting.start(bench, units, move || ctx.request_repaint());
            ui.ctx().request_repaint();
        }
        if fitting.is_working() {
            ui.weak("Fitting\u{2026}");
        }
    });
    if let Some(why) = fitting.refused() {
        ui.colored_label(tokens.warning, format!("{}.", names::sentence(why)));
    }
    ui.add_space(Metrics::GAP_SMALL);
}

/// Draws what the last fit came to.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    fitting: &Fitting,
    units: Units,
    intents: &mut Intents,
) {
    let tokens = Tokens::of(ui.ctx());
    let Some(Fitted { setup, outcome }) = fitting.last() else {
        ui.colored_label(tokens.text_weak, "Nothing has been fitted yet.");
        return;
    };
    let fit = match outcome {
        Ok(fit) => fit,
        Err(reason) => {
            let reason = names::sentence(&units.sentence(reason));
            ui.colored_label(tokens.warning, format!("{reason}."));
            return;
        }
    };
    let adopt = ui
        .add_enabled(setup == bench.setup(), Button::new("Adopt the fitted car"))
        .on_hover_text("Put it in the place of this one; one step of undo")
        .on_disabled_hover_text("The setup has changed since; fit it again");
    if adopt.clicked() {
        let name = format!("Fit to {} readings", fit.residuals.len());
        intents.push(Intent::Adopt(Box::new(fit.setup.clone()), name));
    }
    found(ui, fit, setup.car.drive.input_unit(), units);
    open(ui, fit);
    told_apart(ui, fit);
}

fn found(ui: &mut Ui, fit: &Fit, input: Unit, units: Units) {
    let misfit = fit.misfit().map_or_else(
        || "There is no reading to spare, so nothing shows how good the fit is.".to_owned(),
        |misfit| {
            format!(
                "What is left is {misfit:.2} times what the stated uncertainties lead to expect, with {} readings to spare.",
                fit.redundancy
            )
        },
    );
    ui.label(misfit);
    for one in &fit.found {
        let sign = match one.dimension.unit(input) {
            Unit::Degrees => "\u{b0}",
            Unit::Millimetres => "mm",
        };
        let unit = units.unit(sign, 3);
        let change = format::signed(one.change * unit.factor, unit.decimals);
        let uncertainty = format::number(one.uncertainty * unit.factor, unit.decimals);
        let amount = format::with_unit(&format!("{change} \u{b1} {uncertainty}"), unit.sign);
        let name = names::sentence(&one.dimension.to_string());
        ui.label(RichText::new(format!("{name}: {amount}")).strong());
        if let Some(open) = fit.depends_on(one.dimension) {
            ui.weak(format!("if the {open} is as the file says"));
        }
    }
}

/// What the readings leave open: named, not guessed.
fn open(ui: &mut Ui, fit: &Fit) {
    let tokens = Tokens::of(ui.ctx());
    for open in &fit.undetermined {
        let name = names::sentence(&open.dimension.to_string());
        let why = open.reason();
        let text = format!("{name} is left open, and as the file says: {why}.");
        ui.colored_label(tokens.warning, text);
    }
}

/// Dimensions that are hardly told apart, and the reading that goes least with the others.
fn told_apart(ui: &mut Ui, fit: &Fit) {
    let tokens = Tokens::of(ui.ctx());
    for pair in &fit.correlated {
        let [one, other] = pair.pair;
        ui.label(format!(
            "Hardly told apart: {one}, and {other} (correlation {}).",
            format::number(pair.correlation, 2)
        ));
    }
    // One bad reading drags others along: they may be good once it is gone.
    let first = fit.outliers().first().copied();
    if let Some(residual) = first.and_then(|place| fit.residuals.get(place)) {
        let text = format!(
            "The {} does not go with the others: it is off by {}\u{b0}. Take it again first, or leave it out.",
            residual.reading,
            format::signed(residual.residual(), 3)
        );
        ui.colored_label(tokens.warning, text);
    }
}
