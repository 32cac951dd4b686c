//! Drawing cars and measuring them.

use std::ops::Range;
use std::thread;

use steerloft_setup::dimension::with_sides_apart;
use steerloft_setup::setup::Setup;
use steerloft_solver::{Assembly, SolveError};

use super::band::{Band, Lines};
use super::car::{Builder, errors};
use super::quantiles::Quantiles;
use super::source::{Matter, Source, sources};
use super::spread::{Spread, greatest, shares};
use crate::curves::{Curve, CurveKind, Sweeps};
use crate::effects::{Effects, measures};
use crate::find::{Gauge, Measure, Progress};

/// Cars that are drawn where no other number is asked for.
pub const SAMPLES: usize = 2_000;

/// Most cars that the sequence has.
pub const MOST_SAMPLES: usize = 1 << 16;

/// Places of a curve at which its band is taken.
const PLACES: usize = 25;

/// After how many cars a thread tells how far it is and asks whether to stop.
const TELL_EVERY: usize = 50;

/// What is asked of a tolerance.
#[derive(Debug, Clone, PartialEq)]
pub struct Request {
    /// How many cars are drawn, at most [`MOST_SAMPLES`].
    pub samples: usize,
    /// The curves whose bands are wanted.
    pub curves: Vec<CurveKind>,
    /// The figures whose spreads are wanted.
    pub measures: Vec<Measure>,
}

impl Request {
    /// The figures of the table of effects with the Ackermann share at an angle of the inner wheel, degrees, and the two
    /// curves that are always looked at.
    #[must_use]
    pub fn usual(inner: f64) -> Self {
        Self {
            samples: SAMPLES,
            curves: vec![CurveKind::ToeTravel, CurveKind::InnerOuter],
            measures: measures(inner),
        }
    }
}

/// How much it matters that a car is not built exactly.
#[derive(Debug, Clone, PartialEq)]
pub struct Tolerance {
    /// What is off, what matters most first.
    pub matters: Vec<Matter>,
    /// The bands of the curves asked for.
    pub bands: Vec<Band>,
    /// The spreads of the figures asked for; their shares name places of [`Tolerance::matters`].
    pub spreads: Vec<Spread>,
    /// How many cars were drawn.
    pub samples: usize,
    /// How many of them cannot be assembled.
    pub apart: usize,
    /// Whether all cars were drawn that were asked for.
    pub is_complete: bool,
}

impl Tolerance {
    /// Of a setup, on all processors.
    ///
    /// # Errors
    /// Why the exact car cannot be assembled.
    pub fn of(setup: &Setup, request: &Request, progress: &Progress) -> Result<Self, SolveError> {
        let threads = thread::available_parallelism().map_or(1, usize::from);
        Self::of_on(threads, setup, request, progress)
    }

    /// As [`Tolerance::of`], on so many threads.
    ///
    /// # Errors
    /// As [`Tolerance::of`].
    pub fn of_on(
        threads: usize,
        setup: &Setup,
        request: &Request,
        progress: &Progress,
    ) -> Result<Self, SolveError> {
        let setup = with_sides_apart(setup);
        let sources = sources(&setup);
        let exact = Builder::new(&setup, &sources).build(&[])?;
        let gauge = Gauge::of(&setup);
        let draw = Draw {
            lines: Lines::of(&curves(&setup, &exact, &request.curves)),
            setup: &setup,
            sources: &sources,
            gauge: &gauge,
            measures: &request.measures,
            progress,
        };
        let samples = request.samples.min(MOST_SAMPLES);
        progress.begin(samples as u64);
        let cars = draw.all(samples, threads);
        let values = gauge.values(&exact, &request.measures);
        Ok(draw.tolerance(&cars, &values, samples))
    }

    /// Places of the steps of a table of effects whose every change the build errors hide: it is smaller than half the width
    /// of the band that nine in ten of the cars lie in.
    #[must_use]
    pub fn hidden(&self, effects: &Effects) -> Vec<usize> {
        let width = |measure: &Measure| {
            let own = |spread: &&Spread| {
                let of_both = spread.measure.with_wheel(crate::find::Wheel::Both);
                of_both == measure.with_wheel(crate::find::Wheel::Both)
            };
            let widths = self.spreads.iter().filter(own);
            widths
                .filter_map(|spread| Some(spread.quantiles?.width() / 2.0))
                .reduce(f64::max)
        };
        let is_hidden = |row: &usize| {
            let row = &effects.rows[*row];
            row.changes.is_ok()
                && effects.columns.iter().enumerate().all(|(index, column)| {
                    match (row.change(index), width(&column.measure)) {
                        (Some(change), Some(width)) => change.abs() < width,
                        _ => true,
                    }
                })
        };
        (0..effects.rows.len()).filter(is_hidden).collect()
    }
}

/// Curves with few places.
fn curves(setup: &Setup, assembly: &Assembly, kinds: &[CurveKind]) -> Vec<Curve> {
    if kinds.is_empty() {
        return Vec::new();
    }
    let sweeps = Sweeps::with_samples(assembly, &setup.car.ranges, PLACES);
    kinds.iter().map(|&kind| sweeps.curve(kind)).collect()
}

/// A car that was drawn.
struct Drawn {
    errors: Vec<f64>,
    /// The measures, then the curves at all places; not a number where the car does not get there. None for a car that
    /// cannot be assembled.
    values: Option<Vec<f64>>,
}

/// What cars are drawn from and measured by.
struct Draw<'a> {
    setup: &'a Setup,
    sources: &'a [(Source, f64)],
    gauge: &'a Gauge,
    measures: &'a [Measure],
    lines: Lines,
    progress: &'a Progress,
}

impl Draw<'_> {
    /// All cars in the order of the sequence, shared out between threads in stretches; fewer if it is stopped.
    fn all(&self, samples: usize, threads: usize) -> Vec<Drawn> {
        let threads = threads.clamp(1, samples.max(1));
        let stretch = samples.div_ceil(threads);
        let stretches = (0..threads)
            .map(|thread| (thread * stretch).min(samples)..((thread + 1) * stretch).min(samples));
        if threads == 1 {
            return self.some(0..samples);
        }
        thread::scope(|scope| {
            let handles: Vec<_> = stretches
                .map(|stretch| scope.spawn(|| self.some(stretch)))
                .collect();
            let drawn = handles.into_iter().filter_map(|handle| handle.join().ok());
            drawn.flatten().collect()
        })
    }

    fn some(&self, stretch: Range<usize>) -> Vec<Drawn> {
        let mut builder = Builder::new(self.setup, self.sources);
        let mut drawn = Vec::with_capacity(stretch.len());
        for index in stretch {
            if drawn.len() % TELL_EVERY == 0 {
                if self.progress.is_stopped() {
                    break;
                }
                self.progress.advance(drawn.len().min(TELL_EVERY) as u64);
            }
            drawn.push(self.one(&mut builder, index));
        }
        drawn
    }

    fn one(&self, builder: &mut Builder<'_>, index: usize) -> Drawn {
        let index = u32::try_from(index).unwrap_or(u32::MAX);
        let errors: Vec<f64> = errors(index, self.sources.len()).collect();
        let values = builder.build(&errors).ok().map(|assembly| {
            let measured = self.gauge.values(&assembly, self.measures);
            let mut values = Vec::with_capacity(measured.len() + self.lines.places());
            values.extend(measured.into_iter().map(|value| value.unwrap_or(f64::NAN)));
            let curves = curves(self.setup, &assembly, &self.lines.kinds);
            self.lines.read(&curves, &mut values);
            values
        });
        Drawn { errors, values }
    }

    fn tolerance(&self, cars: &[Drawn], exact: &[Option<f64>], samples: usize) -> Tolerance {
        let count = self.measures.len();
        let mut all_shares = Vec::with_capacity(count);
        let mut spreads = Vec::with_capacity(count);
        for (index, measure) in self.measures.iter().enumerate() {
            let (mut values, errors) = at(cars, index);
            let (deviation, shares) = shares(&values, &errors, self.sources.len());
            spreads.push(Spread {
                measure: measure.clone(),
                exact: exact[index],
                quantiles: Quantiles::of(&mut values),
                deviation,
                shares: Vec::new(),
            });
            all_shares.push(shares);
        }
        let effects = self.effects(&spreads, &all_shares);
        let mut order: Vec<usize> = (0..self.sources.len()).collect();
        order.sort_by(|a, b| effects[*b].total_cmp(&effects[*a]));
        for (spread, shares) in spreads.iter_mut().zip(&all_shares) {
            let ordered: Vec<f64> = order.iter().map(|source| shares[*source]).collect();
            spread.shares = greatest(&ordered);
        }
        let matter = |source: &usize| {
            let (what, error) = self.sources[*source];
            Matter {
                source: what,
                error,
                effect: effects[*source],
            }
        };
        Tolerance {
            matters: order.iter().map(matter).collect(),
            bands: self.lines.bands(|place| at(cars, count + place).0),
            spreads,
            samples: cars.len(),
            apart: cars.iter().filter(|car| car.values.is_none()).count(),
            is_complete: cars.len() == samples,
        }
    }

    /// What each source moves all figures by, in noticeable differences.
    fn effects(&self, spreads: &[Spread], shares: &[Vec<f64>]) -> Vec<f64> {
        let of_source = |source: usize| {
            let parts = spreads.iter().zip(shares);
            let squares = parts.map(|(spread, shares)| {
                let deviation = spread.deviation / spread.measure.noticeable();
                shares[source] * deviation * deviation
            });
            squares.sum::<f64>().sqrt()
        };
        (0..self.sources.len()).map(of_source).collect()
    }
}

/// The values of all cars that have one at a place, with their errors.
fn at(cars: &[Drawn], place: usize) -> (Vec<f64>, Vec<&[f64]>) {
    let there = cars.iter().filter_map(|car| {
        let value = *car.values.as_ref()?.get(place)?;
        value.is_finite().then_some((value, car.errors.as_slice()))
    });
    there.unzip()
}
