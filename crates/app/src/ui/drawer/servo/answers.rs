//! Tooth and trim, end points, fit, saver, and the cautions.

use eframe::egui::{Button, Grid, RichText, ScrollArea, Ui};
use steerloft_analysis::saver::Blows;
use steerloft_analysis::servo::{
    Centring, EndPoint, Ends, Question, ServoFit, Survey, ToothChoice,
};
use steerloft_setup::car::{Servo, Spline};
use steerloft_setup::edit::CarEdit;
use steerloft_solver::frame::Side;

use crate::format::{number, signed, with_unit};
use crate::state::Bench;
use crate::theme::{Metrics, Tokens};
use crate::ui::drawer::equipment::heading;
use crate::ui::widgets::{NumberField, named_button, segments};
use crate::ui::{Intents, car_change, units_of};

/// What is asked, to be changed.
pub(super) struct Asked<'a> {
    pub(super) question: &'a mut Question,
    pub(super) blow: &'a mut Option<f64>,
}

/// What stands where there is no value.
const NONE: &str = "\u{2013}";

pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    survey: &Survey,
    blows: Option<&Blows>,
    asked: &mut Asked<'_>,
    intents: &mut Intents,
) {
    let tokens = Tokens::of(ui.ctx());
    let units = units_of(ui.ctx());
    for caution in survey.cautions() {
        let text = RichText::new(units.sentence(&caution)).strong();
        ui.colored_label(tokens.warning, text);
    }
    centring(ui, bench, survey, asked.question, intents);
    ends(ui, survey, asked.question);
    if let Some(load) = &survey.load {
        times(ui, load.unloaded_time, load.loaded_time);
    }
    if let Some(fit) = &survey.fit {
        body_fit(ui, fit);
    }
    if let Some(blows) = blows {
        saver(ui, blows, asked.blow);
    }
    ui.add_space(Metrics::GAP);
    ui.weak("Wheels off the ground and power off before you work on linkages: a servo can trap fingers. Check full lock by hand for binding before you power the steering.");
}

fn centring(
    ui: &mut Ui,
    bench: &Bench,
    survey: &Survey,
    question: &mut Question,
    intents: &mut Intents,
) {
    let Centring {
        throw,
        teeth,
        trimmed,
        equal_locks,
        ..
    } = &survey.centring;
    let sign = survey.unit.sign();
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("Centre").strong());
        ui.label("arm wanted at");
        let field = NumberField {
            name: "Arm wanted at",
            unit: sign,
            range: -90.0..=90.0,
            speed: 0.1,
            decimals: 2,
        };
        field.show(ui, &mut question.arm);
        if let Some(centre) = equal_locks {
            let text = format!("Equal locks at {}", amount(*centre, sign));
            let hint =
                "Ask for the arm angle from which the same throw each way gives the same lock";
            if ui.button(text).on_hover_text(hint).clicked() {
                question.arm = *centre;
            }
        }
    });
    if teeth.is_empty() {
        ui.weak("Give the spline to see the teeth.");
    }
    let heads = [
        "",
        "stands at",
        "left over",
        "trim",
        "pulse",
        "lock left",
        "right",
        "difference",
        "",
    ];
    let servo = bench.setup().car.servo;
    let table = |ui: &mut Ui| {
        for head in heads {
            ui.weak(head);
        }
        ui.end_row();
        for choice in teeth {
            tooth_row(ui, choice, servo, sign, intents);
        }
        ui.label("trimmed");
        ui.label(amount(survey.centring.wanted, sign));
        for _ in 0..3 {
            ui.label("");
        }
        locks(ui, *trimmed);
        ui.end_row();
    };
    ScrollArea::horizontal()
        .id_salt("teeth")
        .show(ui, |ui| Grid::new("teeth").striped(true).show(ui, table));
    ui.weak(format!(
        "Locks of the inner wheel with the arm turned {} each way, on the teeth without trim; none where the linkage locks before that",
        with_unit(&number(*throw, 1), sign)
    ));
}

fn amount(value: f64, sign: &str) -> String {
    with_unit(&signed(value, 2), sign)
}

fn tooth_row(
    ui: &mut Ui,
    choice: &ToothChoice,
    servo: Option<Servo>,
    sign: &str,
    intents: &mut Intents,
) {
    let tooth = &choice.tooth;
    let name = tooth.tooth.to_string().replace('-', "\u{2212}");
    ui.label(format!("tooth {name}"));
    for value in [tooth.stands_at, tooth.error, tooth.trim] {
        ui.label(amount(value, sign));
    }
    ui.label(tooth.trim_microseconds.map_or(NONE.to_owned(), |pulse| {
        format!("{} \u{b5}s", signed(pulse, 0))
    }));
    locks(ui, choice.untrimmed);
    let taken = servo.and_then(|servo| Some((servo, servo.spline?)));
    if let Some((servo, spline)) = taken {
        let is_set = spline.tooth == tooth.tooth && (spline.trim - tooth.trim).abs() < 1e-9;
        let button = named_button(
            ui,
            !is_set,
            Button::new("Take").small(),
            &format!("Take tooth {name} with its trim"),
        );
        if button.clicked() {
            let spline = Some(Spline {
                tooth: tooth.tooth,
                trim: tooth.trim,
                ..spline
            });
            intents.apply(car_change(CarEdit::Servo(Some(Servo { spline, ..servo }))));
        }
    }
    ui.end_row();
}

fn locks(ui: &mut Ui, locks: Option<steerloft_analysis::servo::Asymmetry>) {
    let cells = locks.map_or([NONE; 3].map(str::to_owned), |locks| {
        [
            format!("{}\u{b0}", number(locks.left, 1)),
            format!("{}\u{b0}", number(locks.right, 1)),
            format!("{}\u{b0}", signed(locks.difference(), 1)),
        ]
    });
    for cell in cells {
        ui.label(cell);
    }
}

fn ends(ui: &mut Ui, survey: &Survey, question: &mut Question) {
    ui.add_space(Metrics::GAP_SMALL);
    ui.horizontal(|ui| {
        ui.label(RichText::new("End points").strong());
        let at = usize::from(question.ends != Ends::EqualCircles);
        let options = ["equal circles", "this lock"];
        if let Some(clicked) = segments(ui, "End points for", options.into_iter(), Some(at)) {
            let left = *survey.ends.get(Side::Left);
            let lock = left.map_or(20.0, |end| (end.lock * 10.0).floor() / 10.0);
            question.ends = [Ends::EqualCircles, Ends::Lock(lock)][clicked.min(1)];
        }
        if let Ends::Lock(lock) = &mut question.ends {
            let field = NumberField {
                name: "Lock wanted",
                unit: "\u{b0}",
                range: 0.0..=90.0,
                speed: 0.1,
                decimals: 1,
            };
            field.show(ui, lock);
        }
    });
    let units = units_of(ui.ctx());
    Grid::new("ends").striped(true).show(ui, |ui| {
        for head in ["", "arm", "of throw", "pulse", "lock", "circle's radius"] {
            ui.weak(head);
        }
        ui.end_row();
        for side in Side::BOTH {
            ui.label(side.to_string());
            let end = *survey.ends.get(side);
            let cells = end.map_or([NONE; 5].map(str::to_owned), |end| {
                end_cells(&end, survey.unit.sign(), |radius| units.length(radius, 0))
            });
            for cell in cells {
                ui.label(cell);
            }
            ui.end_row();
        }
    });
}

fn end_cells(end: &EndPoint, sign: &str, length: impl Fn(f64) -> String) -> [String; 5] {
    let or_none = |text: Option<String>| text.unwrap_or_else(|| NONE.to_owned());
    [
        amount(end.input, sign),
        or_none(end.share.map(|share| format!("{} %", number(share, 0)))),
        or_none(
            end.pulse
                .map(|pulse| format!("{} \u{b5}s", number(pulse, 0))),
        ),
        format!("{}\u{b0}", number(end.lock, 1)),
        or_none(end.swept_radius.map(length)),
    ]
}

fn times(ui: &mut Ui, unloaded: Option<f64>, loaded: Option<f64>) {
    let Some(unloaded) = unloaded else {
        return;
    };
    let loaded = loaded.map_or_else(
        || "it does not get there against the load of the standing car".to_owned(),
        |time| format!("{} s against the load of the standing car", number(time, 3)),
    );
    let text = format!(
        "From lock to lock {} s without load; {loaded}.",
        number(unloaded, 3)
    );
    ui.label(text);
}

fn body_fit(ui: &mut Ui, fit: &ServoFit) {
    let tokens = Tokens::of(ui.ctx());
    let units = units_of(ui.ctx());
    heading(ui, "Fit of the body");
    let line = if fit.centre_line < 0.0 {
        "over the chassis centre line by"
    } else {
        "beside the chassis centre line by"
    };
    ui.label(format!("{line} {}", units.length(fit.centre_line.abs(), 1)));
    let clearances = fit
        .obstacles
        .iter()
        .map(|one| (one.obstacle.as_str(), one.clearance))
        .chain([("underside of the chassis plate", fit.over_chassis)]);
    for (what, clearance) in clearances {
        if clearance < 0.0 {
            let text = format!("runs {} into {what}", units.length(-clearance, 1));
            ui.colored_label(tokens.warning, RichText::new(text).strong());
        } else {
            ui.label(format!("{} clear of {what}", units.length(clearance, 1)));
        }
    }
}

fn saver(ui: &mut Ui, blows: &Blows, blow: &mut Option<f64>) {
    heading(ui, "Servo saver");
    ui.horizontal(|ui| {
        ui.label("Blow about a kingpin");
        let mut moment = blow.unwrap_or(blows.moments.left);
        let field = NumberField {
            name: "Blow about a kingpin",
            unit: "N mm",
            range: 0.0..=1.0e6,
            speed: 2.0,
            decimals: 0,
        };
        if field.show(ui, &mut moment).changed() {
            *blow = Some(moment);
        }
    });
    for side in Side::BOTH {
        let opening = blows.openings.get(side);
        let lock = if opening.at_lock { ", to the lock" } else { "" };
        ui.label(format!(
            "{side} wheel struck: opens at {} N mm; under {} N mm the arm gives way by {}\u{b0}, the wheels by {}\u{b0} and {}\u{b0}{lock}",
            number(opening.opens_at, 0),
            number(*blows.moments.get(side), 0),
            number(opening.arm, 1),
            number(opening.wheels.left.abs(), 1),
            number(opening.wheels.right.abs(), 1),
        ));
    }
}
