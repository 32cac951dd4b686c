//! The ends of a suspension's range: an arm that lines up with the kingpin, or a steering axis that leans to its limit.
//!
//! A path ends there although both conditions keep their hold. Where an arm lines up, the suspension coordinate turns
//! back and rounding hides the last stretch from Newton's iteration, so the end is found the other way round: where the
//! members come apart hangs on the suspension coordinate alone, and with that coordinate held the knuckle's turn and
//! the share of the path follow from the two conditions, whose derivatives by these two are plain numbers.

use super::corner::{CornerClosure, Placed};
use super::newton::{Demand, Steering};
use super::path::{Stall, Waypoint};
use crate::pose::Coordinates;

/// Where a path meets the end of a suspension's range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Edge {
    /// Share of the path; past 1 where the goal lies just before the end.
    pub(crate) share: f64,
    /// Coordinates there.
    pub(crate) at: Coordinates,
}

/// How near to the end of the range a path stalls that is stopped by it, rad: rounding hides no more of it.
const NEAR: f64 = 1e-3;

/// First step towards the end of the range, rad.
const FIRST_STEP: f64 = 1e-13;

/// Halvings of a bracket: down to the rounding of an angle.
const HALVINGS: usize = 64;

/// How often the turn and the share are corrected. Each correction about squares the error.
const MOST_STEPS: usize = 20;

/// Farthest turn of the knuckle from where the path stalled to the end, rad.
const FARTHEST_TURN: f64 = 0.2;

impl CornerClosure {
    /// The end of the suspension's range at which a path stalled, or nothing where something else stopped it.
    pub(crate) fn edge(
        &self,
        stall: &Stall,
        waypoint: impl Fn(f64) -> Option<Waypoint>,
    ) -> Option<Edge> {
        let suspension = self.edge_near(stall.at.suspension)?;
        let mut at = Coordinates {
            suspension,
            ..stall.at
        };
        let mut share = stall.reached;
        for _ in 0..MOST_STEPS {
            let to = waypoint(share)?;
            let placed = self.place_at_edge(&at)?;
            let conditions = self.conditions(&at, &placed, &to.demand);
            let (height, rod) = (conditions.height, conditions.steering);
            if conditions.residual() <= self.closed() {
                // A path that turned back before would meet the end at an earlier share.
                let ahead = share >= stall.reached - 1e-9;
                return ahead.then_some(Edge { share, at });
            }
            let Steering::Rod { inner, .. } = to.demand.steering else {
                return None;
            };
            let along = (placed.steering_arm - inner).normalize();
            let height_by_share = -to.rate.travel;
            let rod_by_share = -along.dot(&to.rate.inner);
            let determinant = height.by_steering * rod_by_share - height_by_share * rod.by_steering;
            at.steering +=
                (rod.residual * height_by_share - height.residual * rod_by_share) / determinant;
            share += (height.residual * rod.by_steering - rod.residual * height.by_steering)
                / determinant;
            // Put so that not-a-number fails it.
            let near = (at.steering - stall.at.steering).abs() <= FARTHEST_TURN;
            if !near {
                return None;
            }
        }
        None
    }

    /// How far from the height asked for the wheel stands at the end of the suspension's range when the rod is where a
    /// demand has it, mm; nothing where the rod does not reach there.
    pub(crate) fn height_missing_at_edge(
        &self,
        edge: &Coordinates,
        demand: &Demand,
    ) -> Option<f64> {
        let mut at = *edge;
        for _ in 0..MOST_STEPS {
            let placed = self.place_at_edge(&at)?;
            let conditions = self.conditions(&at, &placed, demand);
            if conditions.steering.residual.abs() <= self.closed() {
                return Some(conditions.height.residual.abs());
            }
            at.steering -= conditions.steering.residual / conditions.steering.by_steering;
        }
        None
    }

    /// The knuckle placed at the very end of the suspension's range. Only its place counts there, not its motion with the
    /// suspension, which may be without bound.
    pub(crate) fn place_at_edge(&self, at: &Coordinates) -> Option<Placed> {
        match self.kinematics.lined_up(at.suspension) {
            Some(carriage) => self.place_on(&carriage, at),
            None => self.place(at),
        }
    }

    /// The last suspension coordinate at which the members are together, if it lies next to one at which they are.
    fn edge_near(&self, inside: f64) -> Option<f64> {
        let apart = |suspension: f64| !self.kinematics.together(suspension);
        let mut step = FIRST_STEP;
        while step <= NEAR {
            for step in [step, -step] {
                if apart(inside + step) {
                    return Some(last_inside(inside, inside + step, apart));
                }
            }
            step *= 2.0;
        }
        None
    }
}

fn last_inside(inside: f64, outside: f64, apart: impl Fn(f64) -> bool) -> f64 {
    let (mut inside, mut outside) = (inside, outside);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (inside + outside);
        if apart(middle) {
            outside = middle;
        } else {
            inside = middle;
        }
    }
    inside
}
