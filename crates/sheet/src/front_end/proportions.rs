//! Sizes of parts that a setup does not give: balls, pins, rods and bosses, drawn to suit the car.

use steerloft_solver::pose::{AxlePose, CornerPose};

/// Sizes of schematic parts, mm.
#[derive(Debug, Clone, Copy)]
pub(super) struct Proportions {
    /// Radius of a joint's ball; the other sizes go with it.
    pub(super) ball: f64,
}

impl Proportions {
    /// Sizes that suit the car.
    ///
    /// Ball joints grow less than in proportion from a model car to a kart: balls of 4.5 mm under tyres of 42 mm,
    /// of 14 mm under tyres of 260 mm (common practice, no source). The power law through both keeps either
    /// looking right. A rod shorter than usual keeps its two ends apart.
    pub(super) fn of(pose: &AxlePose) -> Self {
        let corners = [&pose.corners.left, &pose.corners.right];
        let tyre = corners
            .map(|corner| corner.tyre_radius)
            .into_iter()
            .fold(0.0, f64::max);
        let rod = corners
            .map(CornerPose::rod_length)
            .into_iter()
            .fold(f64::INFINITY, f64::min);
        let ball = 0.36 * tyre.max(0.0).powf(0.61);
        Self {
            ball: ball.min(rod / 9.0),
        }
    }

    /// From a ball's centre to the face that its stud stands on.
    pub(super) fn stand_off(self) -> f64 {
        1.25 * self.ball
    }

    /// Radius of a stud.
    pub(super) fn stud(self) -> f64 {
        0.55 * self.ball
    }

    /// Radius of a spacer.
    pub(super) fn spacer(self) -> f64 {
        1.15 * self.ball
    }

    /// Radius of the kingpin.
    pub(super) fn kingpin(self) -> f64 {
        0.65 * self.ball
    }

    /// Thickness of a flat lever.
    pub(super) fn lever(self) -> f64 {
        0.9 * self.ball
    }

    /// How far axes are drawn on beyond a part.
    pub(super) fn overhang(self) -> f64 {
        3.0 * self.ball
    }
}
