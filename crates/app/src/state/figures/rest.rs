//! Figures of a setup straight ahead at rest.

use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::instant_centre::{
    RollCentre, front_view_instant_centre, roll_centre, side_view_instant_centre,
};
use steerloft_solver::figures::{
    ArmLines, RollGradient, TravelGradient, arm_lines, corner_figures, kingpin_distance,
    roll_gradient, straight_ahead_share, travel_gradient,
};
use steerloft_solver::frame::{Point, Sides, Vector};
use steerloft_solver::pose::{AxlePose, CornerPose};

/// Instant centres farther away than this are as good as at infinity, mm.
const FAR: f64 = 1e5;

/// An instant centre as seen from the tyre's contact with the road.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InstantCentre {
    /// Length of the arm on which the wheel seems to swing, mm: inboard of the contact in front view, behind it in side
    /// view.
    pub arm: f64,
    /// Height over the road, mm.
    pub height: f64,
}

/// Figures of a setup straight ahead at rest: angles in rad, lengths in mm.
#[derive(Debug, Clone, PartialEq)]
pub struct RestFigures {
    /// Rates by wheel travel; none without travel.
    pub travel: Sides<Option<TravelGradient>>,
    /// Rates by roll of the chassis, both tyres on the road; none without travel.
    pub roll: Sides<Option<RollGradient>>,
    /// Roll centre; none without travel.
    pub roll_centre: Option<RollCentre>,
    /// Front-view instant centres; none without travel, and where the wheel seems to move without turning.
    pub front_centre: Sides<Option<InstantCentre>>,
    /// Side-view instant centres, likewise.
    pub side_centre: Sides<Option<InstantCentre>>,
    /// Limit of the Ackermann share straight ahead, percent; none for a car whose sides differ.
    pub straight_share: Option<f64>,
    /// Where the lines of the steering arms meet; none where they are parallel.
    pub arm_lines: Option<ArmLines>,
    /// Distance of the points where the steering axes meet the road.
    pub kingpin_distance: f64,
}

impl RestFigures {
    pub(super) fn new(assembly: &Assembly) -> Self {
        let pose = assembly.static_pose();
        let road = &assembly.axle().road;
        let on_road = assembly.pose_on_road(pose, 0.0, road).ok();
        let axes = road.axes();
        let gradient = |pose: &AxlePose| pose.corners.map(|corner| roll_gradient(&corner, road));
        Self {
            travel: pose.corners.map(|corner| travel_gradient(&corner, road)),
            roll: on_road.as_ref().map_or(Sides::both(None), gradient),
            roll_centre: on_road.as_ref().and_then(|pose| roll_centre(pose, road)),
            front_centre: pose.corners.map(|corner| {
                let centre = front_view_instant_centre(&corner, road)?;
                let inboard = axes.leftward * -corner.side.sign();
                seen_from_contact(assembly, &corner, &centre, &inboard)
            }),
            side_centre: pose.corners.map(|corner| {
                let centre = side_view_instant_centre(&corner, road)?;
                seen_from_contact(assembly, &corner, &centre, &-axes.forward)
            }),
            straight_share: straight_ahead_share(assembly),
            arm_lines: arm_lines(assembly),
            kingpin_distance: kingpin_distance(assembly),
        }
    }
}

fn seen_from_contact(
    assembly: &Assembly,
    corner: &CornerPose,
    centre: &Point,
    along: &Vector,
) -> Option<InstantCentre> {
    let road = &assembly.axle().road;
    let contact = corner_figures(corner, road).contact_centre;
    let seen = InstantCentre {
        arm: (centre - contact).dot(along),
        height: road.height_of(centre),
    };
    (seen.arm.abs() < FAR && seen.height.abs() < FAR).then_some(seen)
}
