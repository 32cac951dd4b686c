//! What is missing where a corner has no pose: the member, and by how much it cannot reach.

use super::corner::{CornerClosure, Placed};
use super::newton::{Demand, Row, Steering};
use super::path::{Stall, Waypoint};
use crate::error::{Member, Miss, OutOfReach, SolveError};
use crate::frame::Point;
use crate::pose::Coordinates;

/// Step of the search for an extreme, rad.
const SEARCH_STEP: f64 = 0.02;
/// A search goes once around at most.
const SEARCH_STEPS: usize = 315;
/// Halvings of a bracket: down to the rounding of an angle.
const HALVINGS: usize = 60;

impl CornerClosure {
    /// Says why a path to `demand` stalled. `input` is reported with it.
    pub(crate) fn explain(&self, stall: &Stall, demand: &Demand, input: f64) -> SolveError {
        let out_of_reach = |member, difference: f64| {
            SolveError::OutOfReach(OutOfReach {
                member,
                side: self.side,
                miss: Miss::of(difference),
                shortfall: difference.abs(),
                input,
                travel: demand.travel,
                reached: stall.reached,
            })
        };
        let at_height = match self.at_height(&stall.at, demand.travel) {
            Ok(at_height) => at_height,
            Err(end) => {
                let shortfall = self.height_shortfall(&end.at, demand.travel);
                return out_of_reach(Member::Suspension, shortfall);
            }
        };
        match demand.steering {
            Steering::Rod { inner, length } => {
                let nearest = self.extreme_distance(&at_height, demand.travel, &inner, length);
                out_of_reach(Member::TieRod, nearest - length)
            }
            Steering::Heading { .. } | Steering::Turn(_) => SolveError::NotClosed {
                side: self.side,
                input,
                travel: demand.travel,
                residual: self.lever * (1.0 - stall.reached),
            },
        }
    }

    /// The suspension coordinate that holds the height with the steering coordinate kept, led there from the height
    /// at which the wheel stands.
    fn at_height(&self, from: &Coordinates, travel: f64) -> Result<Coordinates, Stall> {
        let stands = self.place(from).map_or(travel, |placed| {
            self.height_row(from, &placed, 0.0).residual
        });
        self.follow(from, |share| {
            Some(Waypoint::still(Demand {
                travel: stands + (travel - stands) * share,
                steering: Steering::Turn(from.steering),
            }))
        })
    }

    /// How far the wheel centre stays from its height however the suspension swings, mm; positive.
    fn height_shortfall(&self, from: &Coordinates, travel: f64) -> f64 {
        let row = |suspension: f64| -> Option<Row> {
            let at = Coordinates {
                suspension,
                ..*from
            };
            Some(self.height_row(&at, &self.place(&at)?, travel))
        };
        let slope =
            |suspension: f64| row(suspension).map(|row| row.by_suspension * -row.residual.signum());
        let start = from.suspension;
        let direction = slope(start).map_or(1.0, f64::signum);
        let extreme = climb(start, direction, slope);
        row(extreme).map_or(0.0, |row| row.residual.abs())
    }

    /// The distance of the rod's balls that comes closest to its length, going from a pose the way in which
    /// the distance approaches it, while the wheel's height is held.
    fn extreme_distance(&self, from: &Coordinates, travel: f64, inner: &Point, length: f64) -> f64 {
        let demand = Demand {
            travel,
            steering: Steering::Rod {
                inner: *inner,
                length,
            },
        };
        let mut at = *from;
        let mut best = self
            .place(&at)
            .map_or(f64::INFINITY, |placed| distance(&placed, inner));
        let wanted = if best > length { -1.0 } else { 1.0 };
        let slope = |steering: f64| {
            at = self
                .at_height(
                    &Coordinates {
                        suspension: at.suspension,
                        steering,
                    },
                    travel,
                )
                .ok()?;
            let placed = self.place(&at)?;
            best = distance(&placed, inner);
            let conditions = self.conditions(&at, &placed, &demand);
            // Rate of the distance by the turn, height held.
            Some(wanted * conditions.determinant() / conditions.height.by_suspension)
        };
        let mut slope = slope;
        let direction = slope(from.steering).map_or(1.0, f64::signum);
        climb(from.steering, direction, &mut slope);
        best
    }
}

fn distance(placed: &Placed, inner: &Point) -> f64 {
    (placed.steering_arm - inner).norm()
}

/// Goes from `start` uphill until the slope changes its sign or can go no farther, and halves the last step
/// down to rounding. Returns where that is.
fn climb(start: f64, direction: f64, mut slope: impl FnMut(f64) -> Option<f64>) -> f64 {
    let mut uphill = |value: f64| slope(value).is_some_and(|slope| slope * direction > 0.0);
    let mut low = start;
    let mut high = start;
    for _ in 0..SEARCH_STEPS {
        high = low + direction * SEARCH_STEP;
        if !uphill(high) {
            break;
        }
        low = high;
    }
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if uphill(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    uphill(low);
    low
}
