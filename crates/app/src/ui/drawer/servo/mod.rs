//! The servo: what it is, how its arm is centred, how far it may turn, what it must bring, and whether it fits.

mod answers;
mod curves;
mod parts;

use eframe::egui::Ui;
use steerloft_analysis::saver::{Blows, blows};
use steerloft_analysis::servo::{Question, Survey};

use super::columns;
use crate::state::{Bench, Moment, WorkedOut};
use crate::theme::Tokens;
use crate::ui::Intents;

/// What the drawer holds from one frame to the next.
#[derive(Debug, Default)]
pub struct ServoDrawer {
    /// What is asked about the servo.
    pub question: Question,
    /// Moment of the blow that the saver is tried with, N mm; half more than opens it where none is given.
    pub blow: Option<f64>,
    answer: WorkedOut<Asked, Answer>,
    /// Why the last servo could not be fitted.
    refused: Option<String>,
}

type Asked = (Moment, Question, Option<f64>);
type Answer = Result<(Survey, Option<Blows>), String>;

impl ServoDrawer {
    /// Whether an answer is being worked out.
    #[must_use]
    pub const fn is_working(&self) -> bool {
        self.answer.is_working()
    }

    /// The last answer.
    #[must_use]
    pub fn survey(&self) -> Option<&Survey> {
        let answer = self.answer.last()?.as_ref().ok()?;
        Some(&answer.0)
    }

    fn ask(&mut self, ui: &Ui, bench: &Bench) {
        let (question, blow) = (self.question, self.blow);
        let setup = bench.setup().clone();
        let ctx = ui.ctx().clone();
        self.answer.ask(
            (bench.moment(), question, blow),
            move || ctx.request_repaint(),
            move || {
                let survey = Survey::new(&setup, &question).map_err(|error| error.to_string())?;
                let blows = blows(&setup, blow).map_err(|error| error.to_string())?;
                Ok((survey, blows))
            },
        );
    }
}

/// Draws the drawer.
pub(super) fn show(ui: &mut Ui, bench: &Bench, drawer: &mut ServoDrawer, intents: &mut Intents) {
    drawer.ask(ui, bench);
    let tokens = Tokens::of(ui.ctx());
    columns(ui, "servo", [0.23, 0.45, 0.32], |ui, column| {
        if column == 0 {
            parts::show(ui, bench, &mut drawer.refused, intents);
            return;
        }
        let answer = drawer.answer.last();
        match (column, answer) {
            (_, None) => {
                ui.colored_label(tokens.text_weak, "Being worked out\u{2026}");
            }
            (1, Some(Err(reason))) => {
                ui.colored_label(tokens.warning, reason);
            }
            (1, Some(Ok((survey, blows)))) => {
                let mut asked = answers::Asked {
                    question: &mut drawer.question,
                    blow: &mut drawer.blow,
                };
                answers::show(ui, bench, survey, blows.as_ref(), &mut asked, intents);
            }
            (_, Some(Ok((survey, _)))) => curves::show(ui, bench, survey, intents),
            (_, Some(Err(_))) => {}
        }
    });
}
