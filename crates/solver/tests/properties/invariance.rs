//! A car mirrored, made larger, or drawn elsewhere is the same car.

use proptest::prop_assert;
use proptest::test_runner::TestCaseError;
use steerloft_solver::axle::FrontAxle;
use steerloft_solver::drive::Drive;
use steerloft_solver::figures::gradient::steer_per_input;
use steerloft_solver::figures::{CornerFigures, corner_figures, travel_gradient};
use steerloft_solver::frame::{Road, mirrored_point};
use steerloft_solver::{Assembly, AxlePose, CornerPose, Point, Sides, SolveError, Vector};

use super::trial::{Trial, refused};
use super::{Checked, Outcome, drives, geometry};

/// Greatest slope of steer by input at which figures are compared: nearer to a lock they magnify roundings.
const FAR_FROM_LOCK: f64 = 8.0;

/// A corner in figures that do not hang on where or how large it is drawn.
struct Shape {
    angles: [f64; 7],
    lengths: [f64; 4],
}

fn shape(figures: &CornerFigures, corner: &CornerPose, road: &Road, scale: f64) -> Shape {
    let gradient = travel_gradient(corner, road);
    let by_travel = gradient.map_or([0.0; 3], |gradient| {
        [gradient.toe, gradient.camber, gradient.caster].map(|rate| rate * scale)
    });
    Shape {
        angles: [
            figures.toe,
            figures.camber,
            figures.caster,
            figures.inclination,
            by_travel[0],
            by_travel[1],
            by_travel[2],
        ],
        lengths: [
            figures.scrub_radius / scale,
            figures.trail / scale,
            figures.axis_offset / scale,
            figures.castor_offset / scale,
        ],
    }
}

fn alike(one: &Shape, other: &Shape) -> Result<(), TestCaseError> {
    let pairs = one.angles.iter().zip(&other.angles);
    for (one, other) in pairs.chain(one.lengths.iter().zip(&other.lengths)) {
        let off = (one - other).abs();
        prop_assert!(
            off <= 1e-8 * (1.0 + one.abs()),
            "{one} against {other}, off by {off:e}"
        );
    }
    Ok(())
}

/// What a unit of input is worth: a length for a rack.
fn unit(trial: &Trial, scale: f64) -> f64 {
    match trial.axle.drive {
        Drive::Slider(_) => trial.scale * scale,
        _ => 1.0,
    }
}

/// The pose asked for, of an axle derived from the trial's.
fn posed(
    axle: &FrontAxle,
    input: f64,
    travel: Sides<f64>,
) -> Result<(Assembly, AxlePose), SolveError> {
    let assembly = Assembly::new(axle)?;
    let pose = assembly.pose(input, travel)?;
    Ok((assembly, pose))
}

/// Compares two poses corner by corner, or two refusals.
fn compare(
    trial: &Trial,
    derived: &Result<(Assembly, AxlePose), SolveError>,
    scale: f64,
    matching: impl Fn(&AxlePose) -> Sides<CornerPose>,
    sense: f64,
) -> Checked {
    let original = posed(&trial.axle, trial.input, trial.travel);
    let ((assembly, pose), (derived_assembly, derived_pose)) = match (original, derived) {
        (Ok(original), Ok(derived)) => (original, derived),
        (Err(error), Err(other)) => {
            if let (SolveError::OutOfReach(one), SolveError::OutOfReach(other)) = (error, other) {
                prop_assert!(one.member == other.member && one.miss == other.miss);
                let off = one.shortfall - other.shortfall / scale;
                prop_assert!(
                    off.abs() <= 2e-3 * trial.scale,
                    "{error} against {other}: {off:e}"
                );
            }
            return refused(&error);
        }
        (original, derived) => {
            let (original, derived) = (original.err(), derived.err());
            return Err(TestCaseError::fail(format!(
                "{original:?} against {derived:?}"
            )));
        }
    };
    let road = &assembly.axle().road;
    let derived_road = &derived_assembly.axle().road;
    let derived_corners = matching(derived_pose);
    for (corner, other) in [
        (pose.corners.left, derived_corners.left),
        (pose.corners.right, derived_corners.right),
    ] {
        let figures = corner_figures(&corner, road);
        let other_figures = corner_figures(&other, derived_road);
        let here = shape(&figures, &corner, road, trial.scale);
        let there = shape(&other_figures, &other, derived_road, trial.scale * scale);
        let rate = steer_per_input(&corner, road) * unit(trial, 1.0);
        if rate.abs() > FAR_FROM_LOCK {
            return Ok(Outcome::Refused);
        }
        alike(&here, &there)?;
        let off = (steer_per_input(&other, derived_road) * unit(trial, scale) - rate).abs();
        prop_assert!(
            off <= 1e-8 * (1.0 + rate.abs()),
            "steer per input is off by {off:e}"
        );
        let off = (figures.steer - other_figures.steer * sense).abs();
        prop_assert!(off <= 1e-8, "steer is off by {off:e}");
    }
    Ok(Outcome::Held)
}

fn mirror_image(trial: &Trial) -> Checked {
    let axle = &trial.axle;
    let image = FrontAxle {
        corners: Sides::new(axle.corners.right.mirrored(), axle.corners.left.mirrored()),
        drive: drives::mirrored(&axle.drive),
        rods: Sides::new(axle.rods.right, axle.rods.left),
        road: Road {
            roll: -axle.road.roll,
            ..axle.road
        },
        ..*axle
    };
    let travel = Sides::new(trial.travel.right, trial.travel.left);
    let derived = posed(&image, -trial.input, travel);
    let swapped = |pose: &AxlePose| Sides::new(pose.corners.right, pose.corners.left);
    if let (Ok((_, pose)), Ok((_, image))) = (posed(axle, trial.input, trial.travel), &derived) {
        let reflected = mirrored_point(&image.corners.right.wheel_centre);
        let off = (pose.corners.left.wheel_centre - reflected).norm();
        prop_assert!(
            off <= 1e-6 * trial.scale,
            "the mirrored wheel centre is off by {off:e} mm"
        );
    }
    compare(trial, &derived, 1.0, swapped, -1.0)
}

/// A car down to a hundred thousand times as small or up to a thousand times as large: from thousandths of a millimetre to a
/// hundred metres.
fn other_size(trial: &Trial) -> Checked {
    let scale = 10.0_f64.powf((3.0 * trial.input).sin() * 4.0 - 1.0) / trial.scale;
    let larger = geometry::scaled(&trial.axle, scale);
    let input = trial.input * unit(trial, scale) / unit(trial, 1.0);
    let derived = posed(&larger, input, trial.travel.map(|travel| travel * scale));
    compare(trial, &derived, scale, |pose| pose.corners, 1.0)
}

/// The origin moved along the car and, with the road, up or down.
fn other_place(trial: &Trial) -> Checked {
    let shift = Vector::new(37.0, 0.0, -11.0) * trial.scale;
    let moved = |point: Point| point + shift;
    let axle = &trial.axle;
    let image = FrontAxle {
        corners: axle
            .corners
            .map(|corner| geometry::mapped(&corner, &moved, 1.0)),
        drive: drives::mapped(&axle.drive, &moved, &|axis| axis, 1.0),
        ..*axle
    };
    let derived = posed(&image, trial.input, trial.travel);
    compare(trial, &derived, 1.0, |pose| pose.corners, 1.0)
}

mod mirrored {
    for_every_kind!(super::mirror_image, share 0.7);
}

mod scaled {
    for_every_kind!(super::other_size, share 0.7);
}

mod moved {
    for_every_kind!(super::other_place, share 0.7);
}
