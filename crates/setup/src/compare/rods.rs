//! Differences of the tie rods.

use steerloft_solver::frame::Sides;

use crate::layout::assemble;
use crate::setup::{Rods, Setup};

/// Rod lengths closer than this are one, mm: what no gauge shows.
const SAME_LENGTH: f64 = 0.005;

/// How the tie rods of two setups differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RodsDifference {
    /// How the first setup sets them.
    pub from: Rods,
    /// How the second sets them.
    pub to: Rods,
    /// What to turn, where both setups can be assembled.
    pub lengths: Option<Sides<RodDifference>>,
}

/// What becomes of one rod.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RodDifference {
    /// Length in the first setup, centre to centre, mm.
    pub from: f64,
    /// Length in the second, mm.
    pub to: f64,
    /// Gap between the cups in the second setup, mm.
    pub gap: f64,
    /// Turns of the rod, lengthening positive, where the second car tells its thread.
    pub turns: Option<f64>,
}

/// How the rods differ; nothing where they are set alike and come out alike.
pub(super) fn difference(from: &Setup, to: &Setup) -> Option<RodsDifference> {
    let lengths = lengths(from, to);
    let turned = lengths.is_some_and(|rods| {
        [rods.left, rods.right]
            .iter()
            .any(|rod| (rod.to - rod.from).abs() > SAME_LENGTH)
    });
    (turned || from.rods != to.rods).then_some(RodsDifference {
        from: from.rods,
        to: to.rods,
        lengths,
    })
}

fn lengths(from: &Setup, to: &Setup) -> Option<Sides<RodDifference>> {
    let was = assemble(from).ok()?.rod_lengths();
    let is = assemble(to).ok()?.rod_lengths();
    let parts = &to.car.tie_rod;
    Some(Sides::from_fn(|side| {
        let (from, to) = (*was.get(side), *is.get(side));
        RodDifference {
            from,
            to,
            gap: parts.gap(to),
            turns: parts.turns(from, to),
        }
    }))
}
