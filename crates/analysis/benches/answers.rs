//! Prints how long a table of effects takes and a tolerance band of 2,000 cars, and what the same costs done the naive way in
//! the same run: every car a setup of its own, every pose closed afresh by a general Newton iteration on all bodies and joints
//! of the axle.
#![allow(clippy::expect_used)]

mod naive;

use std::hint::black_box;
use std::time::Instant;

use naive::general_newton::axle::{Division, GeneralAxle};
use steerloft_analysis::curves::CurveKind;
use steerloft_analysis::effects::{Effects, INNER, steps};
use steerloft_analysis::find::Progress;
use steerloft_analysis::symmetry::Symmetry;
use steerloft_analysis::tolerance::{Request, SAMPLES, Tolerance};
use steerloft_setup::dimension::{Dimension, dimensions, with_rods_fixed, with_sides_apart};
use steerloft_setup::layout::assemble;
use steerloft_setup::setup::Setup;

/// Places of a band, as the program takes them.
const PLACES: u32 = 25;

/// Cars of the naive way that are timed; more take proportionally longer.
const NAIVE: usize = 60;

/// Runs of which the quickest counts.
const RUNS: usize = 5;

fn main() {
    let measures = naive::measures();
    let (runs, samples, naive) = if measures {
        (RUNS, SAMPLES, NAIVE)
    } else {
        (1, 20, 2)
    };
    println!("| car | answer | time, ms | naive, ms | ratio |");
    println!("|---|---|---:|---:|---:|");
    for file in ["pan-car-swinging-arm.ron", "touring-car.ron"] {
        let setup = naive::supplied(file);
        let told = |answer: &str, time: f64, naive: f64| {
            println!(
                "| {file} | {answer} | {time:.2} | {naive:.0} | {:.0} |",
                naive / time
            );
        };
        let time = quickest(runs, || Effects::of(&setup, INNER).is_ok());
        told("one table of effects", time, naive_effects(&setup));
        let band = Request {
            samples,
            curves: vec![CurveKind::ToeTravel],
            measures: Vec::new(),
        };
        for threads in [1, 2] {
            let time = quickest(runs, || tolerance(threads, &setup, &band));
            told(
                &format!("band of {samples} cars, {threads} threads"),
                time,
                naive_band(&setup, naive) * scale(samples, naive),
            );
        }
        let usual = Request {
            samples,
            ..Request::usual(INNER)
        };
        let time = quickest(runs, || tolerance(2, &setup, &usual));
        println!(
            "| {file} | two bands and all figures of {samples} cars, 2 threads | {time:.2} | | |"
        );
        let mut off = setup.clone();
        Dimension::Centre
            .add(&mut off, 4.0)
            .expect("cars have a centre");
        let time = quickest(runs, || Symmetry::of(&off, INNER).is_ok());
        println!("| {file} | what makes the sides unlike | {time:.2} | | |");
    }
}

#[allow(clippy::cast_precision_loss, reason = "a few thousand cars")]
fn scale(samples: usize, timed: usize) -> f64 {
    samples as f64 / timed as f64
}

fn tolerance(threads: usize, setup: &Setup, request: &Request) -> bool {
    let progress = Progress::default();
    let tolerance = Tolerance::of_on(threads, setup, request, &progress);
    tolerance.expect("a sound car").is_complete
}

/// Milliseconds of the quickest of some runs.
fn quickest(runs: usize, mut work: impl FnMut() -> bool) -> f64 {
    let times = (0..runs).map(|_| {
        let start = Instant::now();
        black_box(work());
        start.elapsed().as_secs_f64() * 1_000.0
    });
    times.fold(f64::INFINITY, f64::min)
}

/// The poses of a table of effects, each closed by the general iteration: rest, bump, and a few to both ends of the steering,
/// for each step.
fn naive_effects(setup: &Setup) -> f64 {
    let steps = steps(setup);
    quickest(1, || {
        let setups = steps.iter().map(|step| &step.setup).chain([setup]);
        setups.map(closed_naively).sum::<usize>() > 0
    })
}

fn closed_naively(setup: &Setup) -> usize {
    naive::closed(setup, &[0.0, setup.car.ranges.travel.1])
}

/// The poses of a band over the travel, each closed by the general iteration, of some cars.
fn naive_band(setup: &Setup, cars: usize) -> f64 {
    let exact = with_sides_apart(&with_rods_fixed(setup).expect("a sound car"));
    let all = dimensions(&exact);
    let input = exact.car.drive.input_unit();
    quickest(1, || {
        let mut closed = 0;
        for car in 0..cars {
            let mut built = exact.clone();
            for (place, dimension) in all.iter().enumerate() {
                let error = dimension.error(&exact.car.build_errors, input);
                let sign = if (car + place) % 2 == 0 { 0.5 } else { -0.5 };
                dimension
                    .add(&mut built, sign * error)
                    .expect("the car has it");
            }
            closed += band_naively(&built);
        }
        closed > 0
    })
}

fn band_naively(setup: &Setup) -> usize {
    let Ok(assembly) = assemble(setup) else {
        return 0;
    };
    let drawn = GeneralAxle::new(&assembly, Division::Whole);
    let (droop, bump) = setup.car.ranges.travel;
    let places = (0..PLACES).map(|place| {
        let share = f64::from(place) / f64::from(PLACES - 1);
        drawn.clone().close(0.0, droop + (bump - droop) * share)
    });
    places.map(usize::from).sum()
}
