//! What build errors do, worked out while the window goes on.

use steerloft_analysis::curves::CurveKind;
use steerloft_analysis::effects::{Effects, INNER};
use steerloft_analysis::find::Progress;
use steerloft_analysis::tolerance::{Band, Request, SAMPLES, Tolerance};
use steerloft_setup::setup::Setup;

use super::{Bench, Moment, WorkedOut};

/// Cars drawn within the build errors of the setup that is worked on.
#[derive(Debug)]
pub struct Tolerances {
    /// How many cars are drawn.
    pub samples: usize,
    answers: WorkedOut<Question, Result<BuildErrorsAnswer, String>>,
}

/// What is asked: of which setup, how many cars, the bands of which curves.
type Question = (Moment, usize, Vec<CurveKind>);

/// What build errors do to a setup.
#[derive(Debug, Clone, PartialEq)]
pub struct BuildErrorsAnswer {
    /// The setup as it stood, and where.
    pub of: Moment,
    /// The setup.
    pub setup: Setup,
    /// Bands, spreads, and what matters.
    pub tolerance: Tolerance,
    /// What the steps of its adjustments do.
    pub effects: Effects,
}

impl Default for Tolerances {
    fn default() -> Self {
        Self {
            samples: SAMPLES,
            answers: WorkedOut::default(),
        }
    }
}

impl Tolerances {
    /// Has cars drawn for the setup as it stands with bands of these curves, if that is not done or under way, and wakes the
    /// window then.
    pub fn follow(
        &mut self,
        bench: &Bench,
        curves: &[CurveKind],
        wake: impl FnOnce() + Send + 'static,
    ) {
        let of = bench.moment();
        let setup = bench.setup().clone();
        let request = Request {
            samples: self.samples,
            curves: curves.to_vec(),
            ..Request::usual(INNER)
        };
        let question = (of, self.samples, curves.to_vec());
        let work = move || answer(of, setup, &request);
        self.answers.ask(question, wake, work);
    }

    /// The last answer, or why there is none.
    #[must_use]
    pub fn last(&self) -> Option<&Result<BuildErrorsAnswer, String>> {
        self.answers.last()
    }

    /// Whether a newer one is being worked out.
    #[must_use]
    pub const fn is_working(&self) -> bool {
        self.answers.is_working()
    }

    /// The band of a curve of the setup as it stands, if it is worked out.
    #[must_use]
    pub fn band(&self, bench: &Bench, kind: CurveKind) -> Option<&Band> {
        let answer = self.last()?.as_ref().ok()?;
        let mut bands = answer.tolerance.bands.iter();
        let band = bands.find(|band| band.kind == kind);
        band.filter(|_| answer.of == bench.moment())
    }
}

fn answer(of: Moment, setup: Setup, request: &Request) -> Result<BuildErrorsAnswer, String> {
    let tolerance = Tolerance::of(&setup, request, &Progress::default());
    let effects = Effects::of(&setup, INNER);
    match (tolerance, effects) {
        (Ok(tolerance), Ok(effects)) => Ok(BuildErrorsAnswer {
            of,
            setup,
            tolerance,
            effects,
        }),
        (Err(reason), _) | (_, Err(reason)) => Err(reason.to_string()),
    }
}
