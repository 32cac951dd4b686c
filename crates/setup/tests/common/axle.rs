//! What the wheels of a setup do.

use steerloft_setup::layout::front_axle;
use steerloft_setup::setup::Setup;
use steerloft_solver::drive::Drive;
use steerloft_solver::figures::{
    CornerFigures, InnerOuter, TravelGradient, corner_figures, inner_outer, rod_angles,
    travel_gradient,
};
use steerloft_solver::{Assembly, AxlePose, Side, Sides};

/// The setup's axle, assembled.
pub(crate) fn assembled(setup: &Setup) -> Assembly {
    match Assembly::new(&front_axle(setup)) {
        Ok(assembly) => assembly,
        Err(error) => panic!("{}: {error}", setup.car.name),
    }
}

/// A steering input in the drive's unit, degrees or mm, as the solver takes it.
pub(crate) fn solver_input(assembly: &Assembly, input: f64) -> f64 {
    match assembly.axle().drive {
        Drive::SwingArm(_) | Drive::TwinCrank(_) => input.to_radians(),
        Drive::Slider(_) => input,
    }
}

/// The pose at a steering input in the drive's unit and zero travel.
pub(crate) fn pose_at(assembly: &Assembly, input: f64) -> AxlePose {
    match assembly.pose(solver_input(assembly, input), Sides::both(0.0)) {
        Ok(pose) => pose,
        Err(error) => panic!("at an input of {input} {error}"),
    }
}

/// Inner and outer angle at a steering input in the drive's unit; it must not be straight ahead.
pub(crate) fn angles_at(assembly: &Assembly, input: f64) -> InnerOuter {
    let angles = inner_outer(assembly, &pose_at(assembly, input));
    angles.unwrap_or_else(|| panic!("an input of {input} steers"))
}

/// Inner and outer angle where their mean has the given amount in degrees, turning left.
pub(crate) fn angles_at_mean(assembly: &Assembly, mean: f64) -> InnerOuter {
    let mean_at = |input: f64| {
        let angles = angles_at(assembly, input);
        f64::midpoint(angles.inner, angles.outer).to_degrees()
    };
    let (mut low, mut high) = (0.01, 1.6 * mean);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if mean_at(middle) < mean {
            low = middle;
        } else {
            high = middle;
        }
    }
    angles_at(assembly, low)
}

/// Inner less outer angle in degrees, at a mean steer in degrees.
pub(crate) fn difference_at_mean(setup: &Setup, mean: f64) -> f64 {
    let angles = angles_at_mean(&assembled(setup), mean);
    (angles.inner - angles.outer).to_degrees()
}

/// What travel does to the left wheel at a steering input in the drive's unit.
pub(crate) fn gradient_at(setup: &Setup, input: f64) -> TravelGradient {
    let assembly = assembled(setup);
    let pose = pose_at(&assembly, input);
    let gradient = travel_gradient(&pose.corners.left, &assembly.axle().road);
    gradient.unwrap_or_else(|| panic!("the car has travel"))
}

/// Bump steer of the left wheel at a steering input in the drive's unit, degrees per mm.
pub(crate) fn bump_steer_at(setup: &Setup, input: f64) -> f64 {
    gradient_at(setup, input).toe.to_degrees()
}

/// Camber gain of the left wheel straight ahead, degrees per mm.
pub(crate) fn camber_gain(setup: &Setup) -> f64 {
    gradient_at(setup, 0.0).camber.to_degrees()
}

/// The figures of the left corner straight ahead.
pub(crate) fn left_figures(setup: &Setup) -> CornerFigures {
    let assembly = assembled(setup);
    corner_figures(&assembly.static_pose().corners.left, &assembly.axle().road)
}

/// Bump steer of the left wheel straight ahead, degrees per mm.
pub(crate) fn bump_steer(setup: &Setup) -> f64 {
    bump_steer_at(setup, 0.0)
}

/// Steer angle of a wheel in degrees, positive to the left.
pub(crate) fn steer(assembly: &Assembly, pose: &AxlePose, side: Side) -> f64 {
    let figures = corner_figures(pose.corners.get(side), &assembly.axle().road);
    figures.steer.to_degrees()
}

/// Angle in the top view between the left tie rod and straight across the car, degrees.
pub(crate) fn sweep_of_rod(setup: &Setup) -> f64 {
    let assembly = assembled(setup);
    rod_angles(&assembly.static_pose().corners.left)
        .top
        .to_degrees()
}
