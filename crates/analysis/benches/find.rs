//! Prints how many combinations a second the search tries on the supplied pan cars with all metrics, on one and on two
//! threads, and what the same costs done the naive way: every combination a setup of its own, every pose closed by a
//! general Newton iteration on all bodies and joints of the axle.
//!
//! Twice: with wants that nothing meets, so that every metric of every combination is measured; and with wants as a builder
//! has them, of which the dearer metrics need not be measured where the cheaper ones have ruled a combination out.
#![allow(clippy::expect_used)]

mod naive;

use std::hint::black_box;
use std::time::Instant;

use steerloft_analysis::find::{Free, Measure, Progress, Search, Target, Want, Wheel};
use steerloft_setup::setup::Setup;

/// Angle of the inner wheel at which the Ackermann share is wanted, degrees.
const INNER: f64 = 15.0;

/// Combinations of the naive way that are timed.
const NAIVE: usize = 400;

fn main() {
    let measures = naive::measures();
    println!(
        "| car | combinations | wants | one thread, 1/s | two threads, 1/s | naive, 1/s | ratio |"
    );
    println!("|---|---:|---|---:|---:|---:|---:|");
    for file in ["pan-car-swinging-arm.ron", "pan-car-sliding-kingpin.ron"] {
        let setup = naive::supplied(file);
        for (words, wants, frees) in [
            ("all measured", unmet_wants(), if measures { 8 } else { 2 }),
            (
                "as a builder asks",
                usual_wants(),
                if measures { 9 } else { 2 },
            ),
        ] {
            let search = search(setup.clone(), wants, &FREE[..frees]);
            let [one, two] = [1, 2].map(|threads| rate(&search, threads));
            let naive = naive_rate(&search, if measures { NAIVE } else { 2 });
            println!(
                "| {file} | {} | {words} | {one:.0} | {two:.0} | {naive:.0} | {:.0} |",
                search.combinations().expect("a sound search"),
                one / naive
            );
        }
    }
}

/// All metrics at what no car does.
fn unmet_wants() -> Vec<Want> {
    wants([-9.0; 10])
}

/// All metrics at what is usual.
fn usual_wants() -> Vec<Want> {
    wants([0.0, 0.0, 0.0, 60.0, 24.0, 24.0, -1.0, 5.0, 1.1, 20.0])
}

fn wants(values: [f64; 10]) -> Vec<Want> {
    let measures = [
        Measure::BumpSteer(Wheel::Both),
        Measure::ToeAtBump(Wheel::Both),
        Measure::ToeAtDroop(Wheel::Both),
        Measure::Ackermann {
            turn: Wheel::Both,
            inner: INNER,
        },
        Measure::LockLeft(Wheel::Left),
        Measure::LockRight(Wheel::Right),
        Measure::Camber(Wheel::Both),
        Measure::Caster(Wheel::Both),
        Measure::Ratio,
        Measure::CupGap(Wheel::Both),
    ];
    let pairs = measures.into_iter().zip(values);
    pairs
        .map(|(measure, value)| Want {
            measure,
            target: Target::Value(value),
            weight: 1.0,
        })
        .collect()
}

/// What may be free: everything that moves the linkage.
const FREE: [&str; 9] = [
    "Servo-arm hole",
    "Caster insert",
    "Servo height packing",
    "Inner rod spacers",
    "Ball studs",
    "Steering-arm hole",
    "Outer rod spacers",
    "Front wheelbase",
    "Servo station",
];

fn search(setup: Setup, wants: Vec<Want>, names: &[&str]) -> Search {
    let adjustments = setup.car.adjustments.iter().enumerate();
    let free = adjustments
        .filter(|(_, adjustment)| names.contains(&adjustment.name.as_str()))
        .filter_map(|(index, _)| Free::all(&setup, index))
        .collect();
    Search {
        setup,
        wants,
        free,
        stock: vec![],
        most_changes: None,
        keep: 20,
    }
}

/// Combinations a second.
#[allow(
    clippy::cast_precision_loss,
    reason = "far fewer than f64 has whole numbers"
)]
fn rate(search: &Search, threads: usize) -> f64 {
    let start = Instant::now();
    let found = search.run_on(threads, &Progress::default());
    let seconds = start.elapsed().as_secs_f64();
    found.expect("a sound search").evaluated as f64 / seconds
}

/// Combinations a second the naive way, over combinations spread evenly.
#[allow(clippy::cast_precision_loss, reason = "a few hundred")]
fn naive_rate(search: &Search, count: usize) -> f64 {
    let start = Instant::now();
    for number in 0..count {
        let mut setup = search.setup.clone();
        for (level, free) in search.free.iter().enumerate() {
            let pick = (number * (2 * level + 3)) % free.values.len();
            let value = free.values[pick].clone();
            setup
                .set(free.adjustment, value)
                .expect("values the car takes");
        }
        black_box(measured_naively(&setup));
    }
    count as f64 / start.elapsed().as_secs_f64()
}

/// Poses that the metrics need, each closed by the general iteration: rest, bump, droop, both ends of the steering, and a
/// few on the way to the inner angle either way.
fn measured_naively(setup: &Setup) -> usize {
    let (droop, bump) = setup.car.ranges.travel;
    naive::closed(setup, &[0.0, bump, droop])
}
