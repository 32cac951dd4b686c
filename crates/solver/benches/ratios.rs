//! Prints what one corner's pose with its angles costs, by the solver and by a general multibody closure in the
//! same run, and what all curves on screen of one setup cost.
//!
//! The general closure is measured as a general program does it, the whole axle in one system, and cut into pieces by
//! someone who knows that drive and corners can be solved one after another. All run along the same sweep, each pose
//! from the one before, in turn, so that whatever else the machine does meets all alike; medians over many passes are
//! compared. A pose is that of a whole axle, halved.
#![allow(clippy::expect_used)]

mod cases;
#[path = "../tests/common/mod.rs"]
mod common;
mod general_newton;

use std::hint::black_box;
use std::time::Instant;

use cases::{Angles, Case};
use general_newton::axle::Division;
use steerloft_solver::Sides;

/// Passes over the sweep.
const PASSES: usize = 201;

fn main() {
    // Cargo passes `--bench` when it measures; anything else is a trial run.
    let measures = std::env::args().any(|argument| argument == "--bench")
        && std::env::args().all(|argument| argument != "--test");
    let passes = if measures { PASSES } else { 1 };
    println!(
        "| axle | one corner's pose, ns | general Newton, ns | ratio | in pieces, ns | ratio | curves on screen, ms |"
    );
    println!("|---|---:|---:|---:|---:|---:|---:|");
    for case in cases::cases() {
        cases::agree(&case, Division::Whole);
        cases::agree(&case, Division::Pieces);
        let Times {
            ours,
            whole,
            pieces,
        } = corner_pose(&case, passes);
        let curves = curves_on_screen(&case, passes);
        println!(
            "| {} | {:.0} | {:.0} | {:.0} | {:.0} | {:.0} | {:.3} |",
            case.name,
            ours * 1e9,
            whole * 1e9,
            whole / ours,
            pieces * 1e9,
            pieces / ours,
            curves * 1e3,
        );
    }
}

/// Median times of one corner's pose, s.
struct Times {
    ours: f64,
    whole: f64,
    pieces: f64,
}

fn corner_pose(case: &Case, passes: usize) -> Times {
    let inputs = case.inputs();
    let mut near = case.first();
    let mut whole = case.general(Division::Whole);
    let mut pieces = case.general(Division::Pieces);
    let corners = 2.0 * f64::from(u32::try_from(inputs.len()).expect("a sweep is short"));
    let timed = |pose: &mut dyn FnMut(f64) -> Sides<Angles>| {
        let start = Instant::now();
        for input in &inputs {
            black_box(pose(black_box(*input)));
        }
        start.elapsed().as_secs_f64() / corners
    };
    let mut times: [Vec<f64>; 3] = std::array::from_fn(|_| Vec::with_capacity(passes));
    for _ in 0..passes {
        let assembly = &case.assembly;
        times[0].push(timed(&mut |input| {
            cases::pose_angles(assembly, &mut near, input)
        }));
        times[1].push(timed(&mut |input| {
            cases::general_angles(assembly, &mut whole, input)
        }));
        times[2].push(timed(&mut |input| {
            cases::general_angles(assembly, &mut pieces, input)
        }));
    }
    let [ours, whole, pieces] = times.map(median);
    Times {
        ours,
        whole,
        pieces,
    }
}

/// Median time of all curves on screen, s.
fn curves_on_screen(case: &Case, passes: usize) -> f64 {
    let times = (0..passes)
        .map(|_| {
            let start = Instant::now();
            black_box(cases::curves_on_screen(black_box(case)));
            start.elapsed().as_secs_f64()
        })
        .collect();
    median(times)
}

fn median(mut times: Vec<f64>) -> f64 {
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}
