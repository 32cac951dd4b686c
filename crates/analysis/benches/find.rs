//! Prints how many combinations a second the search settles on supplied cars with all metrics, on one and on two threads,
//! and what the same costs done the naive way: every combination a setup of its own, every pose closed by a general Newton
//! iteration on all bodies and joints of the axle.
//!
//! Twice: with wants that nothing meets, so that every metric of every combination is measured; and with wants as a builder
//! has them, of which the dearer metrics need not be measured where the cheaper ones have ruled a combination out. How many were
//! measured whole is printed beside.
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

/// Most combinations that are tried: of those that are measured whole, and of those that need not be.
const MOST: [usize; 2] = [50_000, 500_000];

/// What may be free: everything that moves the linkage, as far as there is room.
const PAN_CAR: &[&str] = &[
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

/// Likewise of the touring car.
const TOURING_CAR: &[&str] = &[
    "Servo-arm hole",
    "Caster",
    "Crank rod hole",
    "Crank station",
    "Inner rod spacers",
    "Steering-arm hole",
    "Outer rod spacers",
    "Upper arm mount hole",
    "Servo height packing",
];

fn main() {
    let most = if naive::measures() { MOST } else { [10; 2] };
    println!(
        "| car | wants | combinations | one thread, 1/s | measured whole, 1/s | two threads, 1/s | measured whole, 1/s | \
         naive, 1/s | ratio |"
    );
    println!("|---|---|---:|---:|---:|---:|---:|---:|---:|");
    for (file, names) in [
        ("pan-car-swinging-arm.ron", PAN_CAR),
        ("pan-car-sliding-kingpin.ron", PAN_CAR),
        ("touring-car.ron", TOURING_CAR),
    ] {
        let setup = naive::supplied(file);
        for (words, wants, most) in [
            ("all measured", unmet_wants(), most[0]),
            ("as a builder asks", usual_wants(), most[1]),
        ] {
            let search = search(setup.clone(), wants, names, most);
            let [one, two] = [1, 2].map(|threads| rates(&search, threads));
            let naive = naive_rate(&search, NAIVE.min(most));
            println!(
                "| {file} | {words} | {} | {:.0} | {:.0} | {:.0} | {:.0} | {naive:.0} | {:.0} |",
                search.combinations().expect("a sound search"),
                one.settled,
                one.whole,
                two.settled,
                two.whole,
                one.settled / naive
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

/// A search over the first of the adjustments named, as many as make no more combinations than that.
fn search(setup: Setup, wants: Vec<Want>, names: &[&str], most: usize) -> Search {
    let adjustments = &setup.car.adjustments;
    let index = |name: &str| adjustments.iter().position(|one| one.name == name);
    let mut combinations = 1;
    let free = names
        .iter()
        .filter_map(|name| Free::all(&setup, index(name).expect("an adjustment of the car")))
        .take_while(|free| {
            combinations *= free.values.len();
            combinations <= most
        })
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
struct Rates {
    /// Tried, or known not to be worth it.
    settled: f64,
    /// Held against every want.
    whole: f64,
}

#[allow(
    clippy::cast_precision_loss,
    reason = "far fewer than f64 has whole numbers"
)]
fn rates(search: &Search, threads: usize) -> Rates {
    let progress = Progress::default();
    let start = Instant::now();
    let found = search.run_on(threads, &progress);
    let seconds = start.elapsed().as_secs_f64();
    Rates {
        settled: found.expect("a sound search").evaluated as f64 / seconds,
        whole: progress.whole() as f64 / seconds,
    }
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
