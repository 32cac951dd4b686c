//! Poses with both tyres kept on the road: the chassis rolls or heaves, or the wheels are steered, and each
//! wheel's travel follows.

use crate::assembly::Assembly;
use crate::error::SolveError;
use crate::figures::road_contact::{tyre_height, tyre_height_rate};
use crate::frame::{Road, Side, Sides};
use crate::pose::AxlePose;

/// Height over the road that counts as on it, mm.
const ON_ROAD: f64 = 1e-11;

/// How often the travels are corrected. Each correction about squares the error.
const MOST_CORRECTIONS: usize = 30;

impl Assembly {
    /// The pose at a steering input with both contact centres on the given road plane, led from a known pose.
    ///
    /// The rods keep their lengths. Figures of the result are to be taken against the same road.
    ///
    /// # Errors
    /// [`SolveError::NoTravel`] for a fixed kingpin; [`SolveError::OutOfReach`] where a wheel cannot come down or
    /// up to the road.
    pub fn pose_on_road(
        &self,
        near: &AxlePose,
        input: f64,
        road: &Road,
    ) -> Result<AxlePose, SolveError> {
        if let Some(side) = self.side_without_travel() {
            return Err(SolveError::NoTravel { side });
        }
        let up = road.normal();
        let mut pose = self.pose_near(near, input, near.travel)?;
        for _ in 0..MOST_CORRECTIONS {
            let heights = pose.corners.map(|corner| tyre_height(&corner, road));
            let off = heights.left.abs().max(heights.right.abs());
            let rounding = 2048.0 * f64::EPSILON * pose.corners.left.wheel_centre.coords.amax();
            if off <= ON_ROAD.max(rounding) {
                return Ok(pose);
            }
            let travel = Sides::from_fn(|side: Side| {
                let corner = pose.corners.get(side);
                let rate = corner
                    .per_travel
                    .map_or(1.0, |motion| tyre_height_rate(corner, &motion, &up));
                pose.travel.get(side) - heights.get(side) / rate
            });
            pose = self.pose_near(&pose, input, travel)?;
        }
        let heights = pose.corners.map(|corner| tyre_height(&corner, road).abs());
        let side = if heights.left > heights.right {
            Side::Left
        } else {
            Side::Right
        };
        Err(SolveError::NotClosed {
            side,
            input,
            travel: *pose.travel.get(side),
            residual: *heights.get(side),
        })
    }
}
