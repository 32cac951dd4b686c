//! Cars as they may come out when they are built.

use sobol_burley::{NUM_DIMENSIONS, sample};
use steerloft_setup::dimension::put_back;
use steerloft_setup::layout::assemble_changed;
use steerloft_setup::setup::Setup;
use steerloft_solver::axle::Rod;
use steerloft_solver::frame::Sides;
use steerloft_solver::{Assembly, SolveError};

use super::source::Source;

/// Seed of the sequence.
const SEED: u32 = 20_260_401;

/// The errors of one car of the sequence, each from -1 to 1 times the most.
pub(super) fn errors(index: u32, count: usize) -> impl Iterator<Item = f64> {
    let dimensions = (0..NUM_DIMENSIONS).cycle().zip(seeds());
    dimensions
        .take(count)
        .map(move |(dimension, seed)| f64::from(sample(index, dimension, seed)) * 2.0 - 1.0)
}

/// A seed for each dimension: another one wherever the sequence's own dimensions are used up.
fn seeds() -> impl Iterator<Item = u32> {
    let all = NUM_DIMENSIONS as usize;
    (SEED..).flat_map(move |seed| std::iter::repeat_n(seed, all))
}

/// Makes cars that are off by errors.
pub(super) struct Builder<'a> {
    exact: &'a Setup,
    sources: &'a [(Source, f64)],
    built: Setup,
}

impl<'a> Builder<'a> {
    pub(super) fn new(exact: &'a Setup, sources: &'a [(Source, f64)]) -> Self {
        Self {
            exact,
            sources,
            built: exact.clone(),
        }
    }

    /// The car whose every source is off by a share of its error.
    pub(super) fn build(&mut self, shares: &[f64]) -> Result<Assembly, SolveError> {
        put_back(&mut self.built, self.exact);
        let mut toe = Sides::both(0.0);
        for ((source, error), share) in self.sources.iter().zip(shares) {
            let by = error * share;
            match source {
                Source::Dimension(dimension) => {
                    // The car has every dimension of its own list.
                    let _ = dimension.add(&mut self.built, by);
                }
                Source::Toe(side) => *toe.get_mut(*side) = by.to_radians(),
            }
        }
        assemble_changed(&self.built, |axle| {
            axle.rods = Sides::from_fn(|side| match *axle.rods.get(side) {
                Rod::HoldToe(held) => Rod::HoldToe(held + toe.get(side)),
                fixed @ Rod::FixedLength(_) => fixed,
            });
        })
    }
}
