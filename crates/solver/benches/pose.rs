//! One pose of each kind of axle with its angles, warm along a sweep, by the solver and by a general multibody
//! closure; and all curves on screen of one setup. `ratios` prints the two closures side by side.
#![allow(missing_docs, clippy::expect_used)]

mod cases;
#[path = "../tests/common/mod.rs"]
mod common;
mod general_newton;

use std::hint::black_box;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use general_newton::axle::Division;

/// A pose of a whole axle: two corners and the drive between them.
fn axle_pose(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("axle_pose");
    for case in cases::cases() {
        let inputs = case.inputs();
        let mut near = case.first();
        let mut turn = inputs.iter().cycle();
        group.bench_function(BenchmarkId::new("solver", case.name), |bencher| {
            bencher.iter(|| {
                let input = *turn.next().expect("a cycle has no end");
                cases::pose_angles(&case.assembly, &mut near, black_box(input))
            });
        });
        for (name, division) in [
            ("general_newton_in_pieces", Division::Pieces),
            ("general_newton", Division::Whole),
        ] {
            cases::agree(&case, division);
            let mut general = case.general(division);
            let mut turn = inputs.iter().cycle();
            group.bench_function(BenchmarkId::new(name, case.name), |bencher| {
                bencher.iter(|| {
                    let input = *turn.next().expect("a cycle has no end");
                    cases::general_angles(&case.assembly, &mut general, black_box(input))
                });
            });
        }
    }
    group.finish();
}

/// All curves on screen of one setup.
fn curves(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("curves_on_screen");
    for case in cases::cases() {
        assert!(
            cases::curves_on_screen(&case) > 1000,
            "the curves have their numbers"
        );
        group.bench_function(case.name, |bencher| {
            bencher.iter(|| cases::curves_on_screen(black_box(&case)));
        });
    }
    group.finish();
}

/// Making an axle ready, which every change of a setup does once.
fn assembly(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("assembly");
    for case in cases::cases() {
        group.bench_function(case.name, |bencher| {
            bencher.iter(|| steerloft_solver::Assembly::new(black_box(case.assembly.axle())));
        });
    }
    group.finish();
}

criterion_group!(benches, axle_pose, curves, assembly);
criterion_main!(benches);
