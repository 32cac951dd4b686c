//! Properties that hold for every plausible front axle: random geometries of the sizes in use, from pan cars to
//! full-size cars, over every suspension kind with every drive.
//!
//! Each property is tried on 10,000 axles a kind. The environment variable `STEERLOFT_PROPERTY_CASES` multiplies
//! that number; the axles are the same in every run, and a longer run goes on where a shorter one ends.
#![allow(clippy::unwrap_used, clippy::panic)]

/// One test of a property for each suspension kind.
macro_rules! for_every_kind {
    ($property:expr, share $share:expr) => {
        #[test]
        fn fixed_kingpin() {
            $crate::hold($crate::geometry::Kind::FixedKingpin, $share, $property);
        }

        #[test]
        fn sliding_kingpin() {
            $crate::hold($crate::geometry::Kind::SlidingKingpin, $share, $property);
        }

        #[test]
        fn swinging_upper_arm() {
            $crate::hold($crate::geometry::Kind::SwingingUpperArm, $share, $property);
        }

        #[test]
        fn double_wishbone() {
            $crate::hold($crate::geometry::Kind::DoubleWishbone, $share, $property);
        }

        #[test]
        fn strut() {
            $crate::hold($crate::geometry::Kind::Strut, $share, $property);
        }
    };
}

mod branch;
mod closure;
mod derivatives;
mod drives;
mod end_of_steering;
mod figures;
mod geometry;
mod hostile;
mod invariance;
mod locks;
#[path = "../common/numbers.rs"]
mod numbers;
mod trial;
#[path = "../common/words.rs"]
mod words;

use std::cell::Cell;

use proptest::test_runner::{Config, RngSeed, TestCaseError, TestRunner};

use geometry::Kind;
use trial::Trial;

/// What a property came to on one axle.
pub(crate) enum Outcome {
    /// It was put to the test.
    Held,
    /// The axle or the pose asked for does not exist, and the solver said so properly.
    Refused,
}

pub(crate) type Checked = Result<Outcome, TestCaseError>;

/// Axles a kind and property in a run of ordinary length.
const CASES: u32 = 10_000;

fn cases() -> u32 {
    let factor = std::env::var("STEERLOFT_PROPERTY_CASES")
        .ok()
        .and_then(|factor| factor.parse::<f64>().ok())
        .unwrap_or(1.0);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "the cast saturates, which is meant"
    )]
    let cases = (f64::from(CASES) * factor) as u32;
    cases.max(1)
}

/// Tries a property on random axles of one kind; at least the given share of them must put it to the test.
#[track_caller]
pub(crate) fn hold(kind: Kind, share: f64, property: impl Fn(&Trial) -> Checked) {
    let config = Config {
        cases: cases(),
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(0x5EED),
        ..Config::default()
    };
    let tried = Cell::new(0_u32);
    let held = Cell::new(0_u32);
    let result = TestRunner::new(config).run(&trial::trials(kind), |trial| {
        tried.set(tried.get() + 1);
        if matches!(property(&trial)?, Outcome::Held) {
            held.set(held.get() + 1);
        }
        Ok(())
    });
    if let Err(error) = result {
        panic!("{error}");
    }
    let least = f64::from(tried.get()) * share;
    assert!(
        f64::from(held.get()) >= least,
        "only {} of {} axles put the property to the test",
        held.get(),
        tried.get()
    );
}
