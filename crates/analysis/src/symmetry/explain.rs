//! Which single change takes the differences away.

use steerloft_setup::layout::assemble;
use steerloft_setup::setup::Setup;

use super::cause::Cause;
use super::difference::{Difference, differences};
use crate::find::{Gauge, Measure, Progress};

/// Least share of the differences (of the sum of their squares, in noticeable differences) that a change must take away to
/// count as an explanation.
pub const LEAST_SHARE: f64 = 0.9;

/// Least share that a change promises by its first derivative to be worth solving for.
const PROMISING: f64 = 0.6;

/// Step of a derivative, as a share of a usual build error.
const STEP: f64 = 0.05;

/// Steps of Gauss and Newton's iteration: it converges within a few where the differences are nearly linear.
const MOST_STEPS: usize = 8;

/// What is left counts as nothing below this, in noticeable differences.
const NOTHING: f64 = 0.1;

/// Most explanations that are told.
const MOST: usize = 5;

/// A single change that explains the differences.
#[derive(Debug, Clone, PartialEq)]
pub struct Explanation {
    /// What is off.
    pub cause: Cause,
    /// By how much it is off, in its unit: taken away, the sides are as alike as it can make them.
    pub off: f64,
    /// The same in build errors that are usual for it.
    pub size: f64,
    /// Share of the differences that it explains, up to 1.
    pub share: f64,
    /// The greatest difference that is left without it, in noticeable differences.
    pub left: f64,
    /// In words: "servo arm off centre by 0.80°".
    pub words: String,
}

/// The changes that explain differences.
pub(super) fn explanations(
    setup: &Setup,
    gauge: &Gauge,
    pairs: &[[Measure; 2]],
    now: &[Difference],
    progress: &Progress,
) -> Vec<Explanation> {
    let compared = Compared {
        setup,
        gauge,
        pairs,
        now: vector(now),
    };
    let causes = Cause::all(setup);
    progress.begin(causes.len() as u64);
    let explanation = |cause: Cause| {
        progress.advance(1);
        compared.explanation(cause)
    };
    let causes = causes.into_iter().take_while(|_| !progress.is_stopped());
    let mut found: Vec<Explanation> = causes.filter_map(explanation).collect();
    let class = |one: &Explanation| one.left > NOTHING;
    found.sort_by(|a, b| {
        let what = class(a).cmp(&class(b));
        // What a builder sets comes before what is made so.
        let set = b.cause.is_set().cmp(&a.cause.is_set());
        what.then(set).then(a.size.total_cmp(&b.size))
    });
    found.truncate(MOST);
    found
}

/// A setup whose sides are compared.
struct Compared<'a> {
    setup: &'a Setup,
    gauge: &'a Gauge,
    pairs: &'a [[Measure; 2]],
    /// The differences now, in noticeable ones.
    now: Vec<f64>,
}

impl Compared<'_> {
    /// The differences with something changed; none where the car cannot be assembled.
    fn with(&self, cause: Cause, by: f64) -> Option<Vec<f64>> {
        let assembly = assemble(&cause.changed(self.setup, by)?).ok()?;
        Some(vector(&differences(self.gauge, &assembly, self.pairs)))
    }

    /// Derivative of the differences at a change where they are known, per unit. A slide may stand at its end, where there is
    /// only one way.
    fn slope(&self, cause: Cause, at: f64, known: &[f64], step: f64) -> Option<Vec<f64>> {
        let mut ways = [step, -step].into_iter();
        let (step, there) = ways.find_map(|step| Some((step, self.with(cause, at + step)?)))?;
        let pairs = there.iter().zip(known);
        Some(pairs.map(|(there, known)| (there - known) / step).collect())
    }

    fn explanation(&self, cause: Cause) -> Option<Explanation> {
        let usual = cause.usual(self.setup);
        let step = usual * STEP;
        let slope = self.slope(cause, 0.0, &self.now, step)?;
        let (along, steep) = (dot(&self.now, &slope), dot(&slope, &slope));
        let all = dot(&self.now, &self.now);
        if steep == 0.0 || along * along < PROMISING * all * steep {
            return None;
        }
        let (by, rest) = self.solved(cause, step, slope)?;
        let share = 1.0 - dot(&rest, &rest) / all;
        (share >= LEAST_SHARE).then(|| Explanation {
            cause,
            off: -by,
            size: by.abs() / usual,
            share,
            left: rest.iter().map(|rest| rest.abs()).fold(0.0, f64::max),
            words: cause.words(self.setup, -by),
        })
    }

    /// The change that makes the differences least, with what is left of them.
    fn solved(&self, cause: Cause, step: f64, first: Vec<f64>) -> Option<(f64, Vec<f64>)> {
        let (mut by, mut rest, mut slope) = (0.0, self.now.clone(), first);
        for _ in 0..MOST_STEPS {
            let next = by - dot(&rest, &slope) / dot(&slope, &slope);
            let Some(then) = self.with(cause, next) else {
                break;
            };
            let is_settled = (next - by).abs() < step * 1e-6;
            if dot(&then, &then) > dot(&rest, &rest) {
                break;
            }
            (by, rest) = (next, then);
            if is_settled {
                break;
            }
            slope = self.slope(cause, by, &rest, step)?;
        }
        by.is_finite().then_some((by, rest))
    }
}

fn vector(differences: &[Difference]) -> Vec<f64> {
    differences.iter().map(Difference::in_noticeable).collect()
}

fn dot(one: &[f64], other: &[f64]) -> f64 {
    one.iter().zip(other).map(|(one, other)| one * other).sum()
}
