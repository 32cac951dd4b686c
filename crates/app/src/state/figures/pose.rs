//! Figures of one pose.

use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::linkage::{inner_share, outer_transmission};
use steerloft_solver::figures::load::holding_effort;
use steerloft_solver::figures::toe::total_toe_length;
use steerloft_solver::figures::{
    CornerFigures, InnerOuter, RodAngles, Transmission, Turning, corner_figures, inner_outer,
    rod_angles, steering_ratio, turning,
};
use steerloft_solver::frame::Sides;
use steerloft_solver::pose::AxlePose;

/// Radii beyond this say no more than that the car goes straight, mm.
const STRAIGHT: f64 = 1e6;

/// Figures of the pose on screen: angles in rad, lengths in mm.
#[derive(Debug, Clone, PartialEq)]
pub struct PoseFigures {
    /// Of each corner.
    pub corners: Sides<CornerFigures>,
    /// Toe of each wheel straight ahead at the travel of the pose, toe-in positive.
    pub toe: Sides<f64>,
    /// Total toe straight ahead at that travel: rim gap behind less rim gap in front, at the diameter of the tyres.
    pub toe_length: f64,
    /// From contact centre to contact centre across the car.
    pub track: f64,
    /// Inner and outer wheel; none straight ahead.
    pub turn: Option<InnerOuter>,
    /// Where both wheels' axes meet the rear-axle line; none straight ahead.
    pub turning: Option<Turning>,
    /// Input (rad or mm) for each rad of the wheels' mean steer; none where the wheels stand still.
    pub ratio: Option<f64>,
    /// Slopes of the tie rods.
    pub rod_angles: Sides<RodAngles>,
    /// How the rods pass on at their outer balls.
    pub outer: Sides<Transmission>,
    /// How the rods take up the motion of their inner balls, 0 to 1; none where a ball stands still.
    pub inner: Sides<Option<f64>>,
    /// Effort at the input that holds a moment of 1 N mm at each kingpin in one sense: N mm at an arm, N at a rack.
    pub effort: f64,
}

impl PoseFigures {
    pub(super) fn new(assembly: &Assembly, pose: &AxlePose) -> Self {
        let road = &assembly.axle().road;
        let at_rest = assembly.static_pose();
        let straight = assembly
            .pose_near(at_rest, 0.0, pose.travel)
            .unwrap_or(*at_rest);
        let corners = pose.corners.map(|corner| corner_figures(&corner, road));
        let toe = straight
            .corners
            .map(|corner| corner_figures(&corner, road).toe);
        let across = corners.left.contact_centre - corners.right.contact_centre;
        Self {
            corners,
            toe,
            toe_length: total_toe_length(&toe, 2.0 * pose.corners.left.tyre_radius),
            track: across.dot(&road.axes().leftward),
            turn: inner_outer(assembly, pose),
            turning: turning_of(assembly, pose),
            ratio: steering_ratio(pose, road),
            rod_angles: pose.corners.map(|corner| rod_angles(&corner)),
            outer: pose.corners.map(|corner| outer_transmission(&corner)),
            inner: pose.corners.map(|corner| inner_share(pose, &corner)),
            effort: holding_effort(pose, &Sides::both(1.0)),
        }
    }
}

/// How the axle turns; none where it goes as good as straight.
fn turning_of(assembly: &Assembly, pose: &AxlePose) -> Option<Turning> {
    let axle = assembly.axle();
    turning(pose, &axle.road, axle.rear_axle_behind())
        .filter(|turning| turning.swept_radius < STRAIGHT)
}

/// Diameter of the circle that the outer tyre sweeps, mm.
pub(super) fn swept_circle(assembly: &Assembly, pose: &AxlePose) -> Option<f64> {
    Some(2.0 * turning_of(assembly, pose)?.swept_radius)
}
