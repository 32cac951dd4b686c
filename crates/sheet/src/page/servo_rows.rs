//! The servo as rows of the sheet: what it is, how its arm sits, and how far the transmitter may turn it.

use steerloft_analysis::servo::{EndPoint, Question, Survey};
use steerloft_analysis::text::{number, short, signed};
use steerloft_setup::car::{Servo, ServoClass};
use steerloft_setup::setup::Setup;
use steerloft_solver::frame::Side;

use crate::page::adjustments::{Row, compared};

/// A setup's servo, as far as it is given.
pub(crate) struct ServoSheet {
    named: Vec<(String, String)>,
    /// What must not be overlooked.
    pub(crate) cautions: Vec<String>,
}

impl ServoSheet {
    /// What a sheet says of a setup's servo; the end points are those for equal turning circles.
    pub(crate) fn of(setup: &Setup) -> Self {
        let survey = Survey::new(setup, &Question::default()).ok();
        let named = setup
            .car
            .servo
            .as_ref()
            .map(|servo| named(servo, survey.as_ref()));
        Self {
            named: named.unwrap_or_default(),
            cautions: survey.map(|survey| survey.cautions()).unwrap_or_default(),
        }
    }

    /// The rows, marked where they differ from those of a reference.
    pub(crate) fn rows(&self, reference: Option<&Self>) -> Vec<Row> {
        let old = |name: &str| {
            let theirs = reference?.named.iter().find(|(other, _)| other == name)?;
            Some(theirs.1.clone())
        };
        let rows = self.named.iter();
        rows.map(|(name, value)| compared(name, value.clone(), old(name)))
            .collect()
    }
}

fn named(servo: &Servo, survey: Option<&Survey>) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    let mut add = |name: &str, value: String| rows.push((name.to_owned(), value));
    let class = servo.class.label();
    match &servo.action {
        Some(action) => {
            let torque = short(action.torque, 1);
            let speed = short(action.speed, 3);
            add("Class", format!("{class}, {torque} N mm, {speed} s/60°"));
        }
        None if servo.class == ServoClass::Other => {}
        None => add("Class", class.to_owned()),
    }
    if let Some(spline) = &servo.spline {
        let tooth = spline.tooth.to_string().replace('-', "\u{2212}");
        add("Spline", format!("{} teeth, tooth {tooth}", spline.teeth));
        let pulse = servo.action.map_or(String::new(), |action| {
            let pulse = spline.trim * action.microseconds_per_degree();
            format!(" ({} µs)", signed(pulse, 0))
        });
        add("Trim", format!("{}°{pulse}", signed(spline.trim, 2)));
    }
    for side in Side::BOTH {
        if let Some(end) = survey.and_then(|survey| *survey.ends.get(side)) {
            add(&format!("End point, {side}"), end_in_words(&end));
        }
    }
    rows
}

fn end_in_words(end: &EndPoint) -> String {
    let arm = format!("{}°", number(end.throw, 1));
    match (end.share, end.pulse) {
        (Some(share), Some(pulse)) => {
            format!("{arm}, {} %, {} µs", number(share, 0), number(pulse, 0))
        }
        _ => arm,
    }
}
