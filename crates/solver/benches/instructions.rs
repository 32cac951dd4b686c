//! Counts the processor instructions of one corner's pose with its angles, which no other load on the machine
//! changes: runs itself under valgrind's cachegrind with two numbers of passes over a sweep and takes the difference.
//!
//! `cargo bench -p steerloft-solver --bench instructions`; needs `valgrind`.
#![allow(clippy::expect_used)]
#![allow(
    dead_code,
    reason = "cases and closures are shared with the other benches"
)]

mod cases;
#[path = "../tests/common/mod.rs"]
mod common;
mod general_newton;

use std::hint::black_box;
use std::process::Command;

use general_newton::axle::Division;

/// Which run this is, in the environment of the runs that are counted: case, closure and passes.
const COUNTED: &str = "STEERLOFT_COUNTED_RUN";

/// Passes of the two runs whose difference counts.
const PASSES: [u32; 2] = [1, 11];

/// The two closures.
#[derive(Clone, Copy)]
enum Closure {
    Solver,
    GeneralNewton,
}

fn main() {
    if let Ok(run) = std::env::var(COUNTED) {
        counted(&run);
        return;
    }
    let measures = std::env::args().any(|argument| argument == "--bench")
        && std::env::args().all(|argument| argument != "--test");
    if !measures || Command::new("valgrind").arg("--version").output().is_err() {
        println!("instructions are counted by `cargo bench` where valgrind is at hand");
        return;
    }
    println!("| axle | one corner's pose, instructions | general Newton, instructions | ratio |");
    println!("|---|---:|---:|---:|");
    for (index, case) in cases::cases().iter().enumerate() {
        let corners = 2.0 * f64::from(u32::try_from(case.inputs().len()).expect("a short sweep"));
        let per_corner = |closure: Closure| {
            let [few, many] = PASSES.map(|passes| instructions(index, closure, passes));
            (many - few) / f64::from(PASSES[1] - PASSES[0]) / corners
        };
        let ours = per_corner(Closure::Solver);
        let general = per_corner(Closure::GeneralNewton);
        println!(
            "| {} | {ours:.0} | {general:.0} | {:.0} |",
            case.name,
            general / ours
        );
    }
}

/// Instructions of a whole run with the given number of passes.
fn instructions(case: usize, closure: Closure, passes: u32) -> f64 {
    let output = Command::new("valgrind")
        .args([
            "--tool=cachegrind",
            "--cache-sim=no",
            "--cachegrind-out-file=/dev/null",
        ])
        .arg(std::env::current_exe().expect("this program has a path"))
        .env(COUNTED, format!("{case} {} {passes}", closure as u8))
        .output()
        .expect("valgrind runs");
    let told = String::from_utf8_lossy(&output.stderr);
    let line = told
        .lines()
        .find(|line| line.contains("I refs:") || line.contains("I   refs:"));
    let digits: String = line
        .and_then(|line| line.rsplit(':').next())
        .expect("valgrind tells the instructions")
        .chars()
        .filter(char::is_ascii_digit)
        .collect();
    digits.parse().expect("a count")
}

/// One run that is counted.
fn counted(run: &str) {
    let parts: Vec<usize> = run
        .split(' ')
        .map(|part| part.parse().expect("a number"))
        .collect();
    let [case, closure, passes] = parts[..] else {
        return;
    };
    let cases = cases::cases();
    let case = &cases[case];
    let inputs = case.inputs();
    let assembly = &case.assembly;
    if closure == Closure::Solver as usize {
        let mut near = case.first();
        for input in (0..passes).flat_map(|_| &inputs) {
            black_box(cases::pose_angles(assembly, &mut near, black_box(*input)));
        }
    } else {
        let mut general = case.general(Division::Whole);
        for input in (0..passes).flat_map(|_| &inputs) {
            black_box(cases::general_angles(
                assembly,
                &mut general,
                black_box(*input),
            ));
        }
    }
}
