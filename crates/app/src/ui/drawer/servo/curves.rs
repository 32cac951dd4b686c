//! The margin of torque and the mechanical advantage over the steering.

use eframe::egui::{RichText, Ui, vec2};
use egui_plot::LineStyle;
use steerloft_analysis::curves::value_at;
use steerloft_analysis::loads::LoadPoint;
use steerloft_analysis::servo::Survey;
use steerloft_analysis::{InputUnit, Range};

use crate::format::{number, signed, with_unit};
use crate::state::{Bench, Cursor};
use crate::theme::{Metrics, Tokens};
use crate::ui::curves::panel::{self, Axes, LineInk};
use crate::ui::{Intent, Intents};

/// A curve over the steering.
struct Plotted<'a> {
    title: &'a str,
    meaning: &'a str,
    y: &'a str,
    decimals: usize,
    points: Vec<[f64; 2]>,
    /// A value that the curve is held against.
    limit: Option<f64>,
}

pub(super) fn show(ui: &mut Ui, bench: &Bench, survey: &Survey, intents: &mut Intents) {
    let Some(load) = &survey.load else {
        ui.weak("Give the wheel loads to see what the steering asks for.");
        return;
    };
    let of = |value: fn(&LoadPoint) -> Option<f64>| -> Vec<[f64; 2]> {
        let points = load.points.iter();
        points
            .filter_map(|point| Some([point.input, value(point)?]))
            .collect()
    };
    let arm = survey.unit.word() == "deg";
    let advantage = Plotted {
        title: "Mechanical advantage",
        meaning: "Moment at both kingpins together for each unit of what the drive brings, by virtual work.",
        y: if arm { "N mm per N mm" } else { "N mm per N" },
        decimals: 2,
        points: of(|point| Some(point.advantage)),
        limit: None,
    };
    let margins = of(|point| point.margin);
    let torque = if margins.is_empty() {
        Plotted {
            title: "Asked of the drive",
            meaning: "What turns both wheels of the standing car: static moments by Gough's relation, M = \u{b5} W \u{221a}(b\u{b2}/8 + e\u{b2}), over the linkage.",
            y: if arm { "N mm" } else { "N" },
            decimals: 0,
            points: of(|point| Some(point.effort)),
            limit: None,
        }
    } else {
        Plotted {
            title: "Margin of torque",
            meaning: "The servo's torque over what turns both wheels of the standing car: static moments by Gough's relation, M = \u{b5} W \u{221a}(b\u{b2}/8 + e\u{b2}), over the linkage. Below 1 the servo stalls.",
            y: "times",
            decimals: 2,
            points: margins,
            limit: Some(1.0),
        }
    };
    let height = ((ui.available_height() - 2.0 * 22.0) / 2.0).max(110.0);
    for plotted in [torque, advantage] {
        ui.horizontal(|ui| {
            ui.label(RichText::new(plotted.title).strong())
                .on_hover_text(plotted.meaning);
            ui.weak(plotted.y);
        });
        ui.allocate_ui(vec2(ui.available_width(), height - Metrics::GAP), |ui| {
            plotted.show(ui, bench, survey.unit, intents);
        });
    }
}

impl Plotted<'_> {
    fn show(self, ui: &mut Ui, bench: &Bench, unit: InputUnit, intents: &mut Intents) {
        let tokens = Tokens::of(ui.ctx());
        let (from, to) = bench.setup().car.ranges.input;
        let values = self.points.iter().map(|point| point[1]);
        let greatest = values.chain(self.limit).fold(0.0, f64::max);
        let x = format!("steering input, {}", unit.sign());
        let axes = Axes {
            name: self.title,
            x: &x,
            y: "",
            x_range: Range { from, to },
            y_range: Range {
                from: 0.0,
                to: (1.1 * greatest).max(0.1),
            },
            x_factor: 1.0,
            y_factor: 1.0,
        };
        let at = bench.cursor().input;
        let ink = LineInk::full(tokens.accent);
        let cursor = value_at(&self.points, at).map(|value| panel::Cursor {
            at,
            marks: vec![(at, value, ink.color)],
        });
        let mut lines = Vec::new();
        if let Some(limit) = self.limit {
            let guide = LineInk::guide(tokens.warning, LineStyle::Dashed { length: 5.0 });
            lines.push(guide.line("limit", vec![[from, limit], [to, limit]]));
        }
        lines.push(ink.line(self.title, self.points.clone()));
        let points = self.points;
        let (y, decimals) = (self.y.to_owned(), self.decimals);
        let readout = move |at: f64| {
            let value = value_at(&points, at)?;
            let place = with_unit(&signed(at, 1), unit.sign());
            Some(format!("{place}: {} {y}", number(value, decimals)))
        };
        let drawn = panel::show(ui, &axes, Vec::new(), lines, cursor, readout);
        if let Some(input) = drawn.place {
            intents.push(Intent::Cursor(Cursor {
                input,
                ..bench.cursor()
            }));
        }
    }
}
