//! The choices before a sheet is written.

use eframe::egui::{Context, Frame, Grid, Id, Margin, Modal, Ui};
use steerloft_sheet::Paper;
use steerloft_sheet::output::Format;

use super::widgets::{self, NumberField, segments};
use super::{Intent, Intents};
use crate::state::{Bench, FurtherCurves, PrintChoices, RESOLUTIONS, SheetKind};
use crate::theme::Metrics;

/// Width of the window of choices, points.
const WIDTH: f32 = 430.0;

const PAPERS: [(Paper, &str); 2] = [(Paper::A4, "A4"), (Paper::Letter, "Letter")];

const FORMATS: [(Format, &str); 3] = [
    (Format::Pdf, "PDF"),
    (Format::Svg, "SVG"),
    (Format::Png, "PNG"),
];

/// Draws the choices; what is changed in them is there in the next frame.
pub fn show(ctx: &Context, bench: &Bench, choices: PrintChoices, intents: &mut Intents) {
    let style = ctx.global_style();
    let modal = Modal::new(Id::unique("print"))
        .frame(Frame::window(&style).inner_margin(Margin::same(18)))
        .show(ctx, |ui| {
            ui.set_width(WIDTH);
            ui.heading("Print a setup sheet");
            ui.add_space(Metrics::GAP);
            let mut chosen = choices;
            Grid::new("print choices")
                .num_columns(2)
                .spacing([16.0, 8.0])
                .show(ui, |ui| rows(ui, bench, &mut chosen));
            if chosen != choices {
                intents.push(Intent::Print(chosen));
            }
            ui.add_space(Metrics::GAP_LARGE);
            ui.horizontal(|ui| {
                if ui.button("Save sheet\u{2026}").clicked() {
                    intents.push(Intent::WriteSheet(chosen));
                }
                if ui.button("Cancel").clicked() {
                    intents.push(Intent::ClosePage);
                }
            });
        });
    if modal.should_close() {
        intents.push(Intent::ClosePage);
    }
}

fn rows(ui: &mut Ui, bench: &Bench, chosen: &mut PrintChoices) {
    let kinds = SheetKind::ALL.map(|kind| (kind, kind.title()));
    row(ui, "Page", &kinds, &mut chosen.kind);
    row(ui, "Paper", &PAPERS, &mut chosen.paper);
    row(ui, "Written as", &FORMATS, &mut chosen.format);
    if chosen.format == Format::Png {
        ui.label("Resolution");
        let field = NumberField {
            name: "Resolution",
            unit: "dpi",
            range: RESOLUTIONS.0..=RESOLUTIONS.1,
            speed: 1.0,
            decimals: 0,
        };
        field.show(ui, &mut chosen.resolution);
        ui.end_row();
    }
    if chosen.kind != SheetKind::Setup {
        return;
    }
    let curves = FurtherCurves::ALL.map(|curves| (curves, curves.title()));
    row(ui, "Further curves", &curves, &mut chosen.curves);
    ui.label("Reference");
    match bench.reference() {
        Some(reference) => {
            let text = format!("Mark differences from {}", reference.name());
            widgets::tick(ui, &mut chosen.compared, text);
        }
        None => {
            ui.weak("None on the bench");
        }
    }
    ui.end_row();
}

/// A name with buttons of which one is chosen.
fn row<T: Copy + PartialEq>(ui: &mut Ui, name: &str, options: &[(T, &str)], chosen: &mut T) {
    ui.label(name);
    let at = options.iter().position(|(option, _)| option == chosen);
    let titles = options.iter().map(|(_, title)| *title);
    if let Some((option, _)) = segments(ui, name, titles, at).and_then(|index| options.get(index)) {
        *chosen = *option;
    }
    ui.end_row();
}
