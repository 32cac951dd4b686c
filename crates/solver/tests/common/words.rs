//! Figures in words, so that none that is no number is overlooked.

use steerloft_solver::figures::gradient::steer_per_input;
use steerloft_solver::figures::instant_centre::{
    front_view_instant_centre, instant_axis, roll_centre, side_view_instant_centre,
};
use steerloft_solver::figures::linkage::{inner_share, outer_transmission};
use steerloft_solver::figures::load::holding_effort;
use steerloft_solver::figures::{
    arm_lines, corner_figures, inner_outer, rod_angles, roll_gradient, steering_ratio,
    straight_ahead_share, travel_gradient, turning,
};
use steerloft_solver::{Assembly, AxlePose, Sides};

/// All figures of a pose in words, so that nothing in them is overlooked.
pub(crate) fn in_words(assembly: &Assembly, pose: &AxlePose) -> String {
    let axle = assembly.axle();
    let road = &axle.road;
    let corners = pose.corners.map(|corner| {
        format!(
            "{:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?} {:?}",
            corner_figures(&corner, road),
            travel_gradient(&corner, road),
            roll_gradient(&corner, road),
            steer_per_input(&corner, road),
            rod_angles(&corner),
            outer_transmission(&corner),
            inner_share(pose, &corner),
            instant_axis(&corner),
            front_view_instant_centre(&corner, road),
            side_view_instant_centre(&corner, road),
        )
    });
    format!(
        "{pose:?} {corners:?} {:?} {:?} {:?} {:?} {:?} {:?} {}",
        inner_outer(assembly, pose),
        steering_ratio(pose, road),
        turning(pose, road, axle.rear_axle_behind()),
        roll_centre(pose, road),
        straight_ahead_share(assembly),
        arm_lines(assembly),
        holding_effort(pose, &Sides::new(100.0, -40.0)),
    )
}

/// Whether everything in words is a number: Rust writes `NaN` and `inf` for what is none.
pub(crate) fn all_numbers(words: &str) -> bool {
    !words.contains("NaN") && !words.contains("inf")
}
