//! What is missing where a corner has no pose: the member, and by how much it cannot reach.

use super::corner::{CornerClosure, Placed};
use super::edge::Edge;
use super::newton::{Demand, Row, Steering};
use super::path::{Bounds, Stall, StallCause, Waypoint};
use crate::error::{Member, Miss, OutOfReach, SolveError};
use crate::frame::Point;
use crate::pose::Coordinates;

/// Step of the search for an extreme, rad.
const SEARCH_STEP: f64 = 0.02;
/// A search goes once around at most.
const SEARCH_STEPS: usize = 315;
/// Halvings of a bracket: down to the rounding of an angle.
const HALVINGS: usize = 60;

/// How the height of the wheel is held from one place of a search to the next. The places lie so near to each other that nearly
/// always one step leads there.
const BETWEEN_PLACES: Bounds = Bounds {
    end: 1.0,
    steps: 12,
};

impl CornerClosure {
    /// Says why a path to `demand` stalled: at the `edge` of the suspension's range, or where the input or travel turned
    /// back. `input` is reported with it.
    pub(crate) fn explain(
        &self,
        stall: &Stall,
        edge: Option<&Edge>,
        demand: &Demand,
        input: f64,
    ) -> SolveError {
        if stall.why == StallCause::Steps {
            return SolveError::NotFollowed {
                side: self.side,
                input,
                travel: demand.travel,
                reached: stall.reached,
            };
        }
        let out_of_reach = |member, difference: f64| {
            SolveError::OutOfReach(OutOfReach {
                member,
                side: self.side,
                miss: Miss::of(difference),
                shortfall: difference.abs(),
                input,
                travel: demand.travel,
                reached: edge.map_or(stall.reached, |edge| edge.share.clamp(0.0, 1.0)),
            })
        };
        let at = edge.map_or(stall.at, |edge| edge.at);
        let rises = demand.travel - self.stands(&at).unwrap_or(demand.travel);
        if edge.is_some() || (rises.abs() > self.closed() && self.arm_turns_back(&at, demand)) {
            return out_of_reach(
                Member::Suspension,
                self.height_missing(&at, rises, edge, demand),
            );
        }
        let at_height = self.at_height(&at, demand.travel);
        match (demand.steering, at_height) {
            (Steering::Rod { inner, length }, at_height) => {
                // Where the wheel cannot come to its height with the knuckle held, the rod is measured as far as it comes.
                let (at, travel) = match at_height {
                    Ok(at) => (at, demand.travel),
                    Err(end) => (end.at, self.stands(&end.at).unwrap_or(demand.travel)),
                };
                let nearest = self.extreme_distance(&at, travel, &inner, length);
                out_of_reach(Member::TieRod, nearest - length)
            }
            (_, Err(end)) => {
                let shortfall = self.height_shortfall(&end.at, demand.travel);
                out_of_reach(Member::Suspension, shortfall)
            }
            (_, Ok(_)) => SolveError::NotClosed {
                side: self.side,
                input,
                travel: demand.travel,
                residual: self.lever * (1.0 - stall.reached),
            },
        }
    }

    /// Wheel travel at coordinates, mm.
    fn stands(&self, at: &Coordinates) -> Option<f64> {
        let placed = self.place_at_edge(at)?;
        Some(self.height_row(at, &placed, 0.0).residual)
    }

    /// Whether at the turning point of a path it is the suspension's arm that has stopped lifting the wheel, rather than
    /// the rod that has stopped turning it: whichever still moves less of what it could.
    fn arm_turns_back(&self, at: &Coordinates, demand: &Demand) -> bool {
        self.place(at).is_some_and(|placed| {
            let conditions = self.conditions(at, &placed, demand);
            let speed = placed
                .by_suspension
                .velocity_of(&placed.wheel_centre)
                .norm();
            let lifts = conditions.height.by_suspension.abs() / speed;
            lifts < conditions.steering.by_steering.abs() / self.lever
        })
    }

    /// By how much the wheel stays from its height at the end of what its suspension can do, mm.
    fn height_missing(
        &self,
        at: &Coordinates,
        rises: f64,
        edge: Option<&Edge>,
        demand: &Demand,
    ) -> f64 {
        if rises.abs() > self.closed() {
            return rises.abs();
        }
        edge.and_then(|edge| self.height_missing_at_edge(&edge.at, demand))
            .unwrap_or_else(|| self.height_shortfall(at, demand.travel))
    }

    /// The suspension coordinate that holds the height with the steering coordinate kept, led there from the height
    /// at which the wheel stands.
    fn at_height(&self, from: &Coordinates, travel: f64) -> Result<Coordinates, Stall> {
        let stands = self.stands(from).unwrap_or(travel);
        let waypoint = |share| {
            Some(Waypoint::still(Demand {
                travel: stands + (travel - stands) * share,
                steering: Steering::Turn(from.steering),
            }))
        };
        self.follow(from, waypoint, BETWEEN_PLACES)
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
