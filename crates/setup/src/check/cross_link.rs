//! Checks that adjustments leave inner balls on the cross link that carries them.

use solver::drive::{Drive as AxleDrive, InnerBallsOn as AxleBallsOn};
use solver::frame::Side;
use steerloft_solver as solver;

use super::links::beside_link;
use super::{Fault, Path};
use crate::adjustment::{Adjustment, Kind};
use crate::car::{Car, Drive, InnerBallsOn};
use crate::layout::axle_of;
use crate::setup::{Chosen, Rods};
use crate::values::short;

/// Checks each adjustment at the ends of what it can do, one at a time.
pub(super) fn check(at: &Path, car: &Car) -> Result<(), Fault> {
    let Drive::TwinCrank {
        inner_on: InnerBallsOn::CrossLink,
        ..
    } = car.drive
    else {
        return Ok(());
    };
    for (index, adjustment) in car.adjustments.iter().enumerate() {
        let kind_at = at.item(index).field("kind");
        for (step, value) in ends(adjustment).into_iter().enumerate() {
            let beside = beside_at(car, index, &value);
            if beside > 0.0 {
                let at = match &adjustment.kind {
                    Kind::Choice { .. } => kind_at.field("options").item(step),
                    Kind::Slide { .. } | Kind::Stack { .. } => kind_at,
                };
                return Err(Fault::new(
                    &at,
                    format!(
                        "this takes an inner tie-rod ball {} mm beside the cross link that carries it",
                        short(beside)
                    ),
                    "move `rod_inner` along the link only, or `cross_ball` with it",
                ));
            }
        }
    }
    Ok(())
}

/// Both ends of a slide or stack; every option of a choice, in its order.
fn ends(adjustment: &Adjustment) -> Vec<Chosen> {
    match &adjustment.kind {
        Kind::Slide { range, .. } => vec![Chosen::Slide(range.0), Chosen::Slide(range.1)],
        Kind::Stack { most, .. } => vec![Chosen::Stack(0.0), Chosen::Stack(*most)],
        Kind::Choice { options, .. } => {
            let names = options.iter().map(|option| option.name.clone());
            names.map(Chosen::Choice).collect()
        }
    }
}

/// How far the farther inner ball then lies beside the link, mm.
fn beside_at(car: &Car, adjustment: usize, value: &Chosen) -> f64 {
    let axle = axle_of(car, Rods::HoldToe(0.0), |index, _| {
        (index == adjustment).then_some(value)
    });
    match &axle.drive {
        AxleDrive::TwinCrank(drive) if drive.inner_on == AxleBallsOn::CrossLink => Side::BOTH
            .map(|side| {
                let joints = &drive.cross_balls;
                beside_link(drive.rod_inner.get(side), &joints.left, &joints.right)
            })
            .into_iter()
            .fold(0.0, f64::max),
        _ => 0.0,
    }
}
