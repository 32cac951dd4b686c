//! The solver through arbitrary finite points: a supplied car with some of its numbers overwritten. Every answer is a pose of
//! numbers or an error.
#![no_main]

use libfuzzer_sys::arbitrary::{Result, Unstructured};
use libfuzzer_sys::fuzz_target;
use steerloft_fuzz::{bounded, bounded_for};
use steerloft_setup::layout::front_axle;
use steerloft_setup::supplied::SUPPLIED;
use steerloft_solver::axle::FrontAxle;
use steerloft_solver::sweep::{SweepRange, bump_sweep, steer_sweep};
use steerloft_solver::{Assembly, Sides};

#[path = "../../../crates/solver/tests/common/numbers.rs"]
mod numbers;
#[path = "../../../crates/solver/tests/common/words.rs"]
mod words;

/// Poses of a sweep.
const SWEPT: u32 = 5;

/// What is asked of an axle.
struct Question {
    axle: FrontAxle,
    input: f64,
    travel: Sides<f64>,
}

fuzz_target!(|bytes: &[u8]| {
    let mut bytes = Unstructured::new(bytes);
    if let Ok(question) = question(&mut bytes) {
        answer(&question);
    }
});

fn question(bytes: &mut Unstructured<'_>) -> Result<Question> {
    let car = bytes.choose(SUPPLIED)?.setup();
    let mut axle = front_axle(&car);
    let input = number(bytes, 0.0)?;
    let travel = Sides::new(number(bytes, 0.0)?, number(bytes, 0.0)?);
    let mut numbers = numbers::numbers(&mut axle);
    while !bytes.is_empty() {
        let which = bytes.choose_index(numbers.len())?;
        *numbers[which] = number(bytes, *numbers[which])?;
    }
    Ok(Question {
        axle,
        input,
        travel,
    })
}

/// A finite number: near to what is there, of a car's size, or anything at all.
fn number(bytes: &mut Unstructured<'_>, there: f64) -> Result<f64> {
    let hundredths =
        |bytes: &mut Unstructured<'_>| Ok(f64::from(bytes.arbitrary::<i16>()?) / 100.0);
    let number = match bytes.int_in_range(0..=3)? {
        0 => there + hundredths(bytes)?,
        1 => hundredths(bytes)?,
        2 => f64::from(bytes.int_in_range(-2..=2)?),
        _ => bytes.arbitrary()?,
    };
    Ok(if number.is_finite() { number } else { there })
}

fn answer(question: &Question) {
    let Question {
        axle,
        input,
        travel,
    } = question;
    let Ok(assembly) = bounded(|| Assembly::new(axle)) else {
        return;
    };
    let rest = assembly.static_pose();
    let poses = [
        Ok(*rest),
        bounded(|| assembly.pose(*input, *travel)),
        bounded(|| assembly.pose_on_road(rest, *input, &axle.road)),
    ];
    for pose in poses.into_iter().flatten() {
        let words = words::in_words(&assembly, &pose);
        assert!(words::all_numbers(&words), "{words}");
    }
    let range = SweepRange {
        from: -input,
        to: *input,
        count: SWEPT as usize,
    };
    let steered = bounded_for(SWEPT, || steer_sweep(&assembly, range, *travel));
    let bumped = bounded_for(SWEPT, || bump_sweep(&assembly, range, 0.0));
    for sweep in [Some(steered), bumped.ok()].into_iter().flatten() {
        let words = format!("{sweep:?}");
        assert!(words::all_numbers(&words), "{words}");
    }
}
