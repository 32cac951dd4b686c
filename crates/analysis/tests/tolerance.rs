//! What build errors do, held against closed forms, the law of propagation, and plain random cars.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::assert_relative_eq;
use common::{car, cars, pan_car};
use steerloft_analysis::Study;
use steerloft_analysis::curves::CurveKind;
use steerloft_analysis::effects::{Effects, INNER};
use steerloft_analysis::find::{Gauge, Measure, Progress, Wheel};
use steerloft_analysis::tolerance::{Request, Source, Tolerance};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::car::{BuildErrors, PointError};
use steerloft_setup::dimension::{dimensions, with_rods_fixed, with_sides_apart};
use steerloft_setup::layout::assemble;
use steerloft_setup::setup::Setup;

const EXACT: BuildErrors = BuildErrors {
    points: 0.0,
    lengths: 0.0,
    angles: 0.0,
    hole_play: 0.0,
    own: Vec::new(),
};

fn of(setup: &Setup, request: &Request) -> Tolerance {
    Tolerance::of(setup, request, &Progress::default()).unwrap()
}

fn only(measure: Measure) -> Request {
    Request {
        curves: Vec::new(),
        measures: vec![measure],
        ..Request::usual(INNER)
    }
}

/// Camber against the road of a wheel on a level axle is that against the chassis plus the roll. Two errors of the same size
/// and any value as likely add up to a triangular distribution on twice that: its standard deviation is a sqrt(2/3), and one
/// in twenty lies beyond a (2 - sqrt(0.4)) (closed form, derived here).
#[test]
fn two_equal_errors_make_a_triangle() {
    // A toe set otherwise would turn the wheel about its leaned axis.
    let mut setup = with_rods_fixed(&car("kart.ron")).unwrap();
    let a = 0.25;
    setup.car.build_errors = BuildErrors { angles: a, ..EXACT };
    let tolerance = of(&setup, &only(Measure::Camber(Wheel::Left)));
    let spread = &tolerance.spreads[0];
    assert_relative_eq!(
        spread.deviation,
        a * (2.0_f64 / 3.0).sqrt(),
        max_relative = 0.01
    );
    let quantiles = spread.quantiles.unwrap();
    let exact = spread.exact.unwrap();
    let beyond = a * (2.0 - 0.4_f64.sqrt());
    assert_relative_eq!(quantiles.high - exact, beyond, max_relative = 0.02);
    assert_relative_eq!(exact - quantiles.low, beyond, max_relative = 0.02);
    assert_relative_eq!(quantiles.middle, exact, epsilon = 0.005);
    let named: Vec<String> = spread.shares[..2]
        .iter()
        .map(|share| tolerance.matters[share.source].source.to_string())
        .collect();
    assert!(
        named.contains(&"left camber against the chassis".to_owned()),
        "{named:?}"
    );
    assert!(
        named.contains(&"roll of the chassis".to_owned()),
        "{named:?}"
    );
    for share in &spread.shares[..2] {
        assert_relative_eq!(share.share, 0.5, epsilon = 0.03);
    }
}

/// The law of propagation of uncertainty (JCGM 100:2008, 5.1.2; cited from memory): for small independent errors the
/// variances add up, each times the square of the derivative.
#[test]
fn small_errors_add_up_by_the_law_of_propagation() {
    let bump_steer = Measure::BumpSteer(Wheel::Left);
    for setup in [pan_car(), car("touring-car.ron")] {
        let mut setup = with_sides_apart(&with_rods_fixed(&setup).unwrap());
        setup.car.build_errors = BuildErrors {
            points: 0.02,
            lengths: 0.02,
            angles: 0.05,
            ..EXACT
        };
        let value = |setup: &Setup| {
            let assembly = assemble(setup).unwrap();
            Gauge::of(setup).values(&assembly, std::slice::from_ref(&bump_steer))[0].unwrap()
        };
        let input = setup.car.drive.input_unit();
        let mut variance = 0.0;
        for dimension in dimensions(&setup) {
            let at = |by: f64| {
                let mut off = setup.clone();
                dimension.add(&mut off, by).unwrap();
                value(&off)
            };
            let step = 1e-3;
            let derivative = (at(step) - at(-step)) / (2.0 * step);
            let error = dimension.error(&setup.car.build_errors, input);
            variance += (derivative * error).powi(2) / 3.0;
        }
        let spread = &of(&setup, &only(bump_steer.clone())).spreads[0];
        assert_relative_eq!(spread.deviation, variance.sqrt(), max_relative = 0.03);
        let told: f64 = spread.shares.iter().map(|share| share.share).sum();
        assert!((0.8..1.05).contains(&told), "{told}");
    }
}

/// A plain generator for the other way of drawing cars (Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8(14),
/// 2003).
struct Random(u64);

impl Random {
    fn next(&mut self) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        #[allow(clippy::cast_precision_loss)]
        let share = (self.0 >> 11) as f64 / (1_u64 << 53) as f64;
        2.0 * share - 1.0
    }
}

#[test]
fn bands_are_those_of_plain_random_cars() {
    let setup = with_sides_apart(&with_rods_fixed(&pan_car()).unwrap());
    let travel = setup.car.ranges.travel.1;
    let measure = Measure::ToeAtBump(Wheel::Right);
    let request = Request {
        curves: vec![CurveKind::ToeTravel],
        ..only(measure.clone())
    };
    let tolerance = of(&setup, &request);
    let quantiles = tolerance.spreads[0].quantiles.unwrap();
    // The band of the curve at full bump is the spread of the figure.
    let line = &tolerance.bands[0].lines[1];
    let last = line.points.last().unwrap();
    assert_relative_eq!(last.at, travel);
    assert_relative_eq!(last.quantiles.low, quantiles.low, epsilon = 1e-9);
    assert_relative_eq!(last.quantiles.high, quantiles.high, epsilon = 1e-9);

    let mut random = Random(88_172_645_463_325_252);
    let all = dimensions(&setup);
    let input = setup.car.drive.input_unit();
    let mut values: Vec<f64> = (0..6_000)
        .map(|_| {
            let mut off = setup.clone();
            for dimension in &all {
                let error = dimension.error(&setup.car.build_errors, input);
                dimension.add(&mut off, error * random.next()).unwrap();
            }
            let assembly = assemble(&off).unwrap();
            Gauge::of(&setup).values(&assembly, std::slice::from_ref(&measure))[0].unwrap()
        })
        .collect();
    values.sort_by(f64::total_cmp);
    let width = values[values.len() * 95 / 100] - values[values.len() * 5 / 100];
    assert_relative_eq!(quantiles.width(), width, max_relative = 0.05);
    assert_relative_eq!(
        quantiles.middle,
        values[values.len() / 2],
        epsilon = 0.03 * width
    );
}

#[test]
fn the_answer_does_not_depend_on_threads() {
    let request = Request {
        samples: 301,
        ..Request::usual(INNER)
    };
    let on = |threads| Tolerance::of_on(threads, &pan_car(), &request, &Progress::default());
    assert_eq!(on(1).unwrap(), on(3).unwrap());
}

#[test]
fn an_exact_car_has_no_spread() {
    let mut setup = pan_car();
    setup.car.build_errors = EXACT;
    let request = Request {
        samples: 20,
        ..Request::usual(INNER)
    };
    let tolerance = of(&setup, &request);
    assert!(tolerance.matters.is_empty());
    for spread in &tolerance.spreads {
        assert!(spread.quantiles.unwrap().width().abs() < 1e-12);
    }
    let effects = Effects::of(&setup, INNER).unwrap();
    let hidden = tolerance.hidden(&effects);
    let is_idle = |row: &usize| {
        (0..effects.columns.len())
            .all(|column| effects.rows[*row].change(column).unwrap().abs() < 1e-12)
    };
    assert!(hidden.iter().all(is_idle));
}

#[test]
fn a_loose_point_matters_most() {
    let mut setup = pan_car();
    setup.car.build_errors.own = vec![PointError {
        point: PointName::SteeringArm,
        error: 1.0,
    }];
    let tolerance = of(&setup, &only(Measure::BumpSteer(Wheel::Left)));
    let Source::Dimension(first) = tolerance.matters[0].source else {
        panic!("a dimension matters most")
    };
    assert_eq!(first.to_string(), "left outer tie-rod ball, height");
    // A step of half a millimetre under the ball is then hidden by the car's own play.
    let effects = Effects::of(&setup, INNER).unwrap();
    let hidden = |setup: &Setup| {
        let hidden = of(setup, &Request::usual(INNER)).hidden(&effects);
        let mut steps = hidden.iter().map(|row| &effects.rows[*row].step);
        steps.any(|step| step.name == "Outer rod spacers")
    };
    assert!(hidden(&setup));
    setup.car.build_errors = BuildErrors {
        points: 0.01,
        lengths: 0.01,
        angles: 0.01,
        ..EXACT
    };
    assert!(!hidden(&setup));
}

#[test]
fn every_supplied_car_has_bands_and_spreads() {
    let request = Request {
        samples: 40,
        curves: CurveKind::ALL.to_vec(),
        ..Request::usual(INNER)
    };
    for setup in cars() {
        let tolerance = of(&setup, &request);
        let study = Study::new(&setup).unwrap();
        assert_eq!(tolerance.bands.len(), request.curves.len());
        for band in &tolerance.bands {
            let lines = study.curve(band.kind).of_setup().count();
            assert_eq!(
                band.lines.len(),
                lines,
                "{}: {:?}",
                setup.car.name,
                band.kind
            );
        }
        assert!(tolerance.is_complete);
        assert!(
            tolerance.apart < 4,
            "{}: {}",
            setup.car.name,
            tolerance.apart
        );
        for band in &tolerance.bands {
            for point in band.lines.iter().flat_map(|line| &line.points) {
                let quantiles = &point.quantiles;
                assert!(quantiles.least <= quantiles.low && quantiles.low <= quantiles.middle);
                assert!(quantiles.middle <= quantiles.high && quantiles.high <= quantiles.greatest);
            }
        }
        for spread in &tolerance.spreads {
            assert!(spread.exact.is_none() || spread.quantiles.is_some());
        }
    }
}

#[test]
fn a_stopped_tolerance_says_so() {
    let progress = Progress::default();
    progress.stop();
    let tolerance = Tolerance::of(&pan_car(), &Request::usual(INNER), &progress).unwrap();
    assert!(!tolerance.is_complete);
    assert_eq!(tolerance.samples, 0);
}
