//! Setting a corner's rod: by the toe wanted or by its length.

use super::corner::CornerClosure;
use super::newton::{Demand, Steering};
use super::path::{Bounds, DemandRate, Waypoint};
use crate::error::{Fault, SolveError};
use crate::figures::toe::{steer_of, toe_of};
use crate::frame::{Point, RoadAxes};
use crate::pose::Coordinates;

/// A rod that has been set: its length and the corner's coordinates at input 0 and travel 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SetRod {
    pub(crate) length: f64,
    pub(crate) at: Coordinates,
}

impl CornerClosure {
    /// Coordinates and rod length that give the toe wanted (rad, toe-in positive) at input 0 and travel 0.
    pub(crate) fn set_by_toe(
        &mut self,
        inner: &Point,
        toe: f64,
        road: &RoadAxes,
    ) -> Result<SetRod, SolveError> {
        let drawn = self.drawn()?;
        // Steer is toe with the sign of the side, and the other way round.
        let steer = toe_of(self.side, toe);
        let drawn_steer = self.steer(&drawn, road);
        let demand = |share: f64| Demand {
            travel: 0.0,
            steering: Steering::Heading {
                steer: drawn_steer + (steer - drawn_steer) * share,
                road: *road,
            },
        };
        let at = self
            .follow(
                &drawn,
                |share| Some(Waypoint::still(demand(share))),
                Bounds::WHOLE,
            )
            .map_err(|stall| self.explain(&stall, None, &demand(1.0), 0.0))?;
        let length = self.distance(&at, inner);
        self.choose_branch(&at, inner, length)?;
        Ok(SetRod { length, at })
    }

    /// Coordinates at input 0 and travel 0 with a rod of the given length, on the branch of the pose as drawn.
    pub(crate) fn set_by_length(
        &mut self,
        inner: &Point,
        length: f64,
    ) -> Result<SetRod, SolveError> {
        let drawn = self.drawn()?;
        let drawn_length = self.distance(&drawn, inner);
        self.choose_branch(&drawn, inner, drawn_length)?;
        let demand = |share: f64| rod_demand(inner, drawn_length + (length - drawn_length) * share);
        let at = self
            .follow(
                &drawn,
                |share| {
                    Some(Waypoint {
                        demand: demand(share),
                        speed: (length - drawn_length).abs(),
                        rate: DemandRate::NONE,
                    })
                },
                Bounds::WHOLE,
            )
            .map_err(|stall| self.explain(&stall, None, &demand(1.0), 0.0))?;
        Ok(SetRod { length, at })
    }

    /// As the mirror image of the other side's corner is set. The branch is turned round with what the coordinates' signs
    /// make of the determinant.
    pub(crate) fn set_as_mirrored(&mut self, other: &Self, set: &SetRod) -> SetRod {
        let suspension = self.kinematics.mirrored_sign();
        self.branch = -suspension * other.branch;
        SetRod {
            length: set.length,
            at: Coordinates {
                suspension: suspension * set.at.suspension,
                steering: -set.at.steering,
            },
        }
    }

    /// The coordinates with the knuckle unturned and its wheel at its height.
    fn drawn(&self) -> Result<Coordinates, SolveError> {
        let demand = |_| Demand {
            travel: 0.0,
            steering: Steering::Turn(0.0),
        };
        self.follow(
            &Coordinates::default(),
            |share| Some(Waypoint::still(demand(share))),
            Bounds::WHOLE,
        )
        .map_err(|stall| self.explain(&stall, None, &demand(1.0), 0.0))
    }

    /// Steer angle at coordinates that [`CornerClosure::drawn`] has found.
    fn steer(&self, at: &Coordinates, road: &RoadAxes) -> f64 {
        self.place(at).map_or(0.0, |placed| {
            let leftward = self.spin_axis(at, &placed) * self.side.sign();
            steer_of(&leftward, road)
        })
    }

    fn distance(&self, at: &Coordinates, inner: &Point) -> f64 {
        self.place(at)
            .map_or(0.0, |placed| (placed.steering_arm - inner).norm())
    }

    /// Fixes the branch as the one that the corner is on at these coordinates.
    fn choose_branch(
        &mut self,
        at: &Coordinates,
        inner: &Point,
        length: f64,
    ) -> Result<(), SolveError> {
        let degenerate = |fault| SolveError::Degenerate {
            side: Some(self.side),
            fault,
        };
        if length <= self.tolerance {
            return Err(degenerate(Fault::RodHasNoLength));
        }
        let determinant = self.place(at).map_or(0.0, |placed| {
            self.conditions(at, &placed, &rod_demand(inner, length))
                .determinant()
        });
        if determinant.abs() <= 1e-9 * self.lever {
            return Err(degenerate(Fault::RodAtDeadCentre));
        }
        self.branch = determinant.signum();
        Ok(())
    }
}

/// The demand at zero travel with a rod of the given length.
fn rod_demand(inner: &Point, length: f64) -> Demand {
    Demand {
        travel: 0.0,
        steering: Steering::Rod {
            inner: *inner,
            length,
        },
    }
}
