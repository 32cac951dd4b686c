//! What one step of each adjustment does, worked out while the window goes on.

use steerloft_analysis::effects::{Alike, Effects, INNER, Row, Step};
use steerloft_analysis::loads::LoadError;
use steerloft_setup::setup::Setup;

use super::{Bench, Change, Moment, WorkedOut};

/// The table of effects of the setup that is worked on.
#[derive(Debug)]
pub struct EffectsTable {
    /// Angle of the inner wheel at which the Ackermann share is taken, degrees.
    pub inner: f64,
    answers: WorkedOut<(Moment, f64), Table>,
}

/// A table, or why there is none.
type Table = Result<(Setup, Effects), String>;

impl Default for EffectsTable {
    fn default() -> Self {
        Self {
            inner: INNER,
            answers: WorkedOut::default(),
        }
    }
}

impl EffectsTable {
    /// Has the table worked out for the setup as it stands, if that is not done or under way, and wakes the window then.
    pub fn follow(&mut self, bench: &Bench, wake: impl FnOnce() + Send + 'static) {
        let inner = self.inner;
        let setup = bench.setup().clone();
        let work = move || match Effects::of(&setup, inner) {
            Ok(effects) => Ok((setup, effects)),
            Err(reason) => Err(reason.to_string()),
        };
        self.answers.ask((bench.moment(), inner), wake, work);
    }

    /// The last table with the setup it is of, or why that has none.
    #[must_use]
    pub fn last(&self) -> Option<Result<(&Setup, &Effects), &str>> {
        Some(match self.answers.last()? {
            Ok((setup, effects)) => Ok((setup, effects)),
            Err(reason) => Err(reason),
        })
    }

    /// Whether a newer table is being worked out.
    #[must_use]
    pub const fn is_working(&self) -> bool {
        self.answers.is_working()
    }
}

/// The change that takes a step.
#[must_use]
pub fn change_of_step(step: &Step) -> Change {
    match step.adjustment {
        Some(adjustment) => Change::Adjust {
            adjustment,
            value: step.setup.value(adjustment),
        },
        None => Change::Rods(step.setup.rods),
    }
}

/// A step in words.
#[must_use]
pub fn step_in_words(step: &Step) -> String {
    let words = format!("{}: {} to {}", step.name, step.from, step.to);
    words.replace(" -", " \u{2212}")
}

/// What the table of a setup lacks, and what would give it; none where it has all.
#[must_use]
pub fn missing_in_words(setup: &Setup) -> Option<String> {
    let has_loads = setup.car.loads.is_some();
    (!has_loads).then(|| format!("No servo torque: {}.", LoadError::NoLoads))
}

/// How two adjustments are alike, in words.
#[must_use]
pub fn alike_in_words(alike: &Alike, rows: &[Row]) -> String {
    let [one, other] = alike.rows.map(|row| {
        rows.get(row)
            .map_or(String::new(), |row| step_in_words(&row.step))
    });
    let what = if alike.cancels() {
        "undoes"
    } else {
        "does nearly the same as"
    };
    format!(
        "{one} {what} {:.1} such steps of {other} (likeness {:.2})",
        alike.ratio,
        alike.likeness.abs()
    )
}
