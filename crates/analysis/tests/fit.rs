//! The car that gauge readings tell of: made-up readings with noise must lead back to the car they were made from.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::assert_relative_eq;
use common::{car, pan_car};
use steerloft_analysis::Study;
use steerloft_analysis::curves::{CurveKind, Trace, value_at};
use steerloft_analysis::find::Progress;
use steerloft_analysis::fit::{Fit, FitError, OUTLIER, fit};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::check::check;
use steerloft_setup::dimension::{Axis, Dimension, Whose, with_rods_fixed, with_sides_apart};
use steerloft_setup::readings::{AtHeight, Height, Readings, Turned};
use steerloft_setup::setup::Setup;

const fn point(point: PointName, side: Whose, axis: Axis) -> Dimension {
    Dimension::Point { point, side, axis }
}

const OUTER_LEFT: Dimension = point(PointName::SteeringArm, Whose::Left, Axis::Z);
const OUTER_RIGHT: Dimension = point(PointName::SteeringArm, Whose::Right, Axis::Z);
const ROD_LEFT: Dimension = Dimension::Rod { side: Whose::Left };
const ROD_RIGHT: Dimension = Dimension::Rod { side: Whose::Right };

/// Normal noise by Box and Muller's way ("A Note on the Generation of Random Normal Deviates", 1958) from Marsaglia's
/// xorshift generator.
struct Noise(u64);

impl Noise {
    fn share(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        #[allow(clippy::cast_precision_loss)]
        let share = ((self.0 >> 11) as f64 + 0.5) / (1_u64 << 53) as f64;
        share
    }

    fn next(&mut self) -> f64 {
        let (one, other) = (self.share(), self.share());
        (-2.0 * one.ln()).sqrt() * (std::f64::consts::TAU * other).cos()
    }
}

/// What the curves of a car say, as readings: an other way to the same numbers than the fit takes.
fn readings_of(setup: &Setup, uncertain: &[Dimension]) -> Readings {
    let study = Study::new(setup).unwrap();
    let value = |kind, trace, at| {
        let curve = study.curve(kind);
        let mut lines = curve.series.iter();
        value_at(&lines.find(|line| line.trace == trace)?.points, at)
    };
    let (droop, bump) = setup.car.ranges.travel;
    let at_heights = |kind, uncertainty| {
        [droop, 0.5 * droop, 0.0, 0.5 * bump, bump]
            .into_iter()
            .map(move |travel| (travel, kind, uncertainty))
    };
    let at_height = |(travel, kind, uncertainty)| AtHeight {
        at: Height::Travel(travel),
        left: value(kind, Trace::Left, travel),
        right: value(kind, Trace::Right, travel),
        uncertainty,
    };
    let (from, to) = setup.car.ranges.input;
    let inputs = [0.9 * from, 0.5 * from, 0.5 * to, 0.9 * to];
    let turned = inputs.into_iter().map(|input| {
        let turn = |trace| {
            Some(
                value(CurveKind::WheelAngles, trace, input)?
                    - value(CurveKind::WheelAngles, trace, 0.0)?,
            )
        };
        Turned {
            input,
            left: turn(Trace::Left),
            right: turn(Trace::Right),
            uncertainty: 0.25,
        }
    });
    Readings {
        notes: String::new(),
        toe: at_heights(CurveKind::ToeTravel, 0.1)
            .map(at_height)
            .collect(),
        camber: at_heights(CurveKind::CamberTravel, 0.1)
            .map(at_height)
            .collect(),
        turned: turned.collect(),
        uncertain: uncertain.to_vec(),
    }
}

fn noisy(readings: &Readings, noise: &mut Noise) -> Readings {
    let mut noisy = readings.clone();
    let mut shake = |value: &mut Option<f64>, uncertainty: f64| {
        if let Some(value) = value {
            *value += uncertainty * noise.next();
        }
    };
    for one in noisy.toe.iter_mut().chain(&mut noisy.camber) {
        shake(&mut one.left, one.uncertainty);
        shake(&mut one.right, one.uncertainty);
    }
    for one in &mut noisy.turned {
        shake(&mut one.left, one.uncertainty);
        shake(&mut one.right, one.uncertainty);
    }
    noisy
}

fn fitted(setup: &Setup, readings: &Readings) -> Fit {
    fit(setup, readings, &Progress::default()).unwrap()
}

fn built(setup: &Setup, off: &[(Dimension, f64)]) -> Setup {
    let mut built = with_sides_apart(&with_rods_fixed(setup).unwrap());
    for (dimension, by) in off {
        dimension.add(&mut built, *by).unwrap();
    }
    built
}

const OFF: [(Dimension, f64); 5] = [
    (OUTER_LEFT, 0.4),
    (OUTER_RIGHT, -0.3),
    (ROD_LEFT, 0.15),
    (ROD_RIGHT, -0.1),
    (Dimension::Camber { side: Whose::Left }, 0.5),
];

fn uncertain() -> Vec<Dimension> {
    OFF.iter().map(|(dimension, _)| *dimension).collect()
}

#[test]
fn exact_readings_lead_back_to_the_very_car() {
    for setup in [pan_car(), car("touring-car.ron")] {
        let truth = built(&setup, &OFF);
        let fit = fitted(&setup, &readings_of(&truth, &uncertain()));
        assert!(fit.undetermined.is_empty(), "{:?}", fit.undetermined);
        for (found, (dimension, by)) in fit.found.iter().zip(OFF) {
            assert_eq!(found.dimension, dimension);
            // The curves are read between their points.
            assert_relative_eq!(found.change, by, epsilon = 2e-3);
        }
        assert!(fit.misfit().unwrap() < 0.02);
        assert!(fit.outliers().is_empty());
        assert_eq!(check(&fit.setup), Ok(()));
    }
}

/// Of an estimate that is normal with the standard deviation stated, 68.3 % lie within once and 95.4 % within twice it.
#[test]
fn noise_leads_to_the_truth_within_the_stated_uncertainty_at_the_stated_rate() {
    let setup = pan_car();
    let exact = readings_of(&built(&setup, &OFF), &uncertain());
    let (mut once, mut twice, mut all) = (0.0, 0.0, 0.0);
    let mut misfits = 0.0;
    let seeds = 240_u64;
    for seed in 1..=seeds {
        let mut noise = Noise(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15));
        let fit = fitted(&setup, &noisy(&exact, &mut noise));
        for (found, (_, by)) in fit.found.iter().zip(OFF) {
            let off = (found.change - by).abs() / found.uncertainty;
            once += f64::from(off <= 1.0);
            twice += f64::from(off <= 2.0);
            all += 1.0;
        }
        misfits += fit.misfit().unwrap().powi(2);
    }
    // 1,200 estimates: three standard deviations of a share of them.
    let within = |share: f64, wanted: f64| {
        let slack = 3.0 * (wanted * (1.0 - wanted) / all).sqrt();
        assert!((share - wanted).abs() < slack, "{share} for {wanted}");
    };
    within(once / all, 0.6827);
    within(twice / all, 0.9545);
    #[allow(clippy::cast_precision_loss)]
    let mean = misfits / seeds as f64;
    assert_relative_eq!(mean, 1.0, epsilon = 0.06);
}

#[test]
fn a_reading_taken_wrongly_stands_out() {
    let setup = pan_car();
    let exact = readings_of(&built(&setup, &OFF), &uncertain());
    let mut readings = noisy(&exact, &mut Noise(77));
    let place = 2 * 3 + 1;
    readings.toe[3].right = readings.toe[3].right.map(|toe| toe + 1.0);
    let fit = fitted(&setup, &readings);
    assert_eq!(fit.outliers().first(), Some(&place));
    assert!(fit.residuals[place].normalised.unwrap() > OUTLIER);
    assert!(fit.misfit().unwrap() > 1.5);
}

#[test]
fn what_no_reading_depends_on_is_left_open() {
    let setup = pan_car();
    let mut readings = readings_of(
        &setup,
        &[
            OUTER_LEFT,
            Dimension::TyreRadius { side: Whose::Left },
            ROD_LEFT,
        ],
    );
    readings.camber.clear();
    let fit = fitted(&setup, &readings);
    assert_eq!(fit.undetermined.len(), 1);
    let open = &fit.undetermined[0];
    assert_eq!(open.dimension, Dimension::TyreRadius { side: Whose::Left });
    assert!(open.with.is_empty());
    assert_eq!(fit.found.len(), 2);
}

/// A car whose balls at both ends of the rods all move alike keeps the rods' slope: their heights can only be told against
/// each other.
#[test]
fn what_cannot_be_told_apart_is_named_and_not_guessed() {
    let setup = pan_car();
    let inner = point(PointName::RodInner, Whose::Both, Axis::Z);
    let outer = point(PointName::SteeringArm, Whose::Both, Axis::Z);
    let axis = point(PointName::DriveAxis, Whose::Both, Axis::Z);
    let truth = built(&setup, &[(outer, 0.5)]);
    let mut readings = readings_of(&truth, &[outer, inner, axis]);
    // From the toe alone, nobody knows which of the balls sits higher.
    readings.turned.clear();
    readings.camber.clear();
    let fit = fitted(&setup, &readings);
    assert!(!fit.undetermined.is_empty());
    let named = |dimension: Dimension| {
        fit.undetermined
            .iter()
            .any(|open| open.dimension == dimension || open.with.contains(&dimension))
    };
    assert!(named(inner) && named(outer), "{:?}", fit.undetermined);
    for open in &fit.undetermined {
        assert!(
            fit.found
                .iter()
                .all(|found| found.dimension != open.dimension)
        );
    }
    // What is found explains the readings.
    assert!(fit.misfit().unwrap() < 0.2);
}

#[test]
fn toe_held_stays_held_where_no_rod_is_uncertain() {
    let setup = pan_car();
    let readings = readings_of(&setup, &[OUTER_LEFT]);
    let fit = fitted(&setup, &readings);
    assert_eq!(fit.setup.rods, setup.rods);
    assert_relative_eq!(fit.found[0].change, 0.0, epsilon = 1e-3);
    let both = point(PointName::SteeringArm, Whose::Both, Axis::Z);
    let fit = fitted(&setup, &readings_of(&setup, &[both]));
    assert_eq!(
        fit.setup.car.right, setup.car.right,
        "a mirrored car stays mirrored"
    );
}

#[test]
fn a_ride_height_is_a_travel_of_both_wheels() {
    let setup = pan_car();
    let mut readings = readings_of(&built(&setup, &OFF), &uncertain());
    let by_travel = fitted(&setup, &readings);
    for one in readings.toe.iter_mut().chain(&mut readings.camber) {
        if let Height::Travel(travel) = one.at {
            one.at = Height::RideHeight(setup.car.ride_height - travel);
        }
    }
    let by_height = fitted(&setup, &readings);
    for (one, other) in by_travel.found.iter().zip(&by_height.found) {
        assert_relative_eq!(one.change, other.change, epsilon = 1e-7);
    }
}

#[test]
fn what_cannot_be_fitted_says_why() {
    let setup = pan_car();
    let readings = readings_of(&setup, &[OUTER_LEFT]);
    let of = |readings: &Readings| fit(&setup, readings, &Progress::default());
    let nothing = Readings {
        uncertain: vec![OUTER_LEFT],
        ..Readings::default()
    };
    assert_eq!(of(&nothing), Err(FitError::NoReading));
    let certain = Readings {
        uncertain: Vec::new(),
        ..readings.clone()
    };
    assert_eq!(of(&certain), Err(FitError::NothingUncertain));
    let mut far = readings.clone();
    far.turned[0].input = 179.0;
    assert!(matches!(of(&far), Err(FitError::NotReached { .. })));
    let absent = Readings {
        uncertain: vec![Dimension::DragLink],
        ..readings.clone()
    };
    assert!(matches!(of(&absent), Err(FitError::Dimension(_))));
    let progress = Progress::default();
    progress.stop();
    assert_eq!(fit(&setup, &readings, &progress), Err(FitError::Stopped));
}
