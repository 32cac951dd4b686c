//! What is found when the setup is held against its parts: rods, servo, spacers.

use steerloft_setup::car::{Car, TieRodParts};
use steerloft_setup::setup::Setup;
use steerloft_setup::stock::{Supply, supply};
use steerloft_solver::frame::Side;

use super::{Finding, FindingKind};
use crate::Study;
use crate::binding::thread_check;
use crate::text::{number, short, signed};

/// How far a servo's turn may be over its throw, degrees: rounding.
const ROUNDING: f64 = 1e-9;

/// Tie rods that their parts do not make, or do not hold.
pub(super) fn rods(study: &Study, parts: &TieRodParts) -> Vec<Finding> {
    let lengths = study.assembly().rod_lengths();
    let of_side = |side: Side| {
        let length = *lengths.get(side);
        [
            rod_length(side, length, parts),
            rod_thread(side, length, parts),
        ]
    };
    Side::BOTH.into_iter().flat_map(of_side).flatten().collect()
}

fn rod_length(side: Side, length: f64, parts: &TieRodParts) -> Option<Finding> {
    let (shortest, longest) = (parts.shortest, parts.longest);
    let limit = if length < shortest {
        shortest
    } else if length > longest {
        longest
    } else {
        return None;
    };
    let text = format!(
        "the {side} tie rod would be {} mm long, which its parts cannot be screwed to; they make {} to {} mm",
        number(length, 2),
        short(shortest, 2),
        short(longest, 2)
    );
    Some(
        Finding::new(FindingKind::RodLength, text)
            .on(side)
            .measured(length, limit, "mm"),
    )
}

fn rod_thread(side: Side, length: f64, parts: &TieRodParts) -> Option<Finding> {
    let least = parts.thread?.least_engagement;
    let engagement = thread_check(parts, length).engagement?;
    (engagement < least).then(|| {
        let text = format!(
            "{} mm of thread would sit in each cup of the {side} tie rod, and {} mm is the least",
            number(engagement, 2),
            short(least, 2)
        );
        Finding::new(FindingKind::RodThread, text)
            .on(side)
            .measured(engagement, least, "mm")
    })
}

/// Ends of the steering range that lie beyond the servo's throw.
pub(super) fn servo_throw(car: &Car) -> Vec<Finding> {
    let Some(servo) = car.servo else {
        return Vec::new();
    };
    let Some(action) = servo.action else {
        return Vec::new();
    };
    let centre = servo.spline.map_or(0.0, |spline| spline.centre_input());
    let (least, greatest) = car.ranges.input;
    [least, greatest]
        .into_iter()
        .filter_map(|end| {
            let turn = (end - centre).abs();
            (turn > action.throw + ROUNDING).then(|| {
                let text = format!(
                    "the steering's end at {} deg turns the servo {} deg from its centre, and {} deg is its throw",
                    signed(end, 1),
                    number(turn, 1),
                    short(action.throw, 1)
                );
                Finding::new(FindingKind::ServoThrow, text)
                    .at_input(end)
                    .measured(turn, action.throw, "deg")
            })
        })
        .collect()
}

/// Boxes of spacers that do not serve all the stacks that take from them.
pub(super) fn spacers(setup: &Setup) -> Vec<Finding> {
    let boxes = setup.car.stock.iter();
    boxes
        .filter_map(|stock| {
            let text = match supply(setup, stock) {
                Supply::Enough(_) => return None,
                Supply::Short(adjustments) => format!(
                    "the spacers \"{}\" at hand do not make {} at once",
                    stock.name,
                    names(setup, &adjustments)
                ),
                Supply::Unsure => format!(
                    "there are too many ways to share out the spacers \"{}\" to tell whether they suffice",
                    stock.name
                ),
            };
            Some(Finding::new(FindingKind::Spacers, text))
        })
        .collect()
}

/// The names of adjustments as a list in words.
fn names(setup: &Setup, adjustments: &[usize]) -> String {
    let quoted: Vec<String> = adjustments
        .iter()
        .filter_map(|&index| setup.car.adjustments.get(index))
        .map(|adjustment| format!("\"{}\"", adjustment.name))
        .collect();
    match quoted.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, others)) => format!("{} and {last}", others.join(", ")),
        None => String::new(),
    }
}
