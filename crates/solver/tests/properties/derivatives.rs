//! Figures that are called rates are the derivatives of the figures they belong to, by central differences.

use proptest::prop_assert;
use proptest::test_runner::TestCaseError;
use steerloft_solver::drive::Drive;
use steerloft_solver::figures::gradient::steer_per_input;
use steerloft_solver::figures::{
    corner_figures, inner_outer, roll_gradient, straight_ahead_share, travel_gradient,
};
use steerloft_solver::frame::{Road, Side};
use steerloft_solver::{Assembly, AxlePose, CornerPose, Sides};

use super::trial::{Trial, refused};
use super::{Checked, Outcome};

/// A derivative by central differences over two spans, or nothing where they do not settle: too near a lock.
fn difference<const N: usize>(
    span: f64,
    values: impl Fn(f64) -> Option<[f64; N]>,
) -> Option<[f64; N]> {
    let central = |step: f64| {
        let (ahead, behind) = (values(step)?, values(-step)?);
        Some(std::array::from_fn(|index| {
            (ahead[index] - behind[index]) / (2.0 * step)
        }))
    };
    let (narrow, wide): ([f64; N], [f64; N]) = (central(span)?, central(2.0 * span)?);
    let mut refined = narrow;
    for index in 0..N {
        let correction = (narrow[index] - wide[index]) / 3.0;
        if correction.abs() > 1e-4 * (1.0 + narrow[index].abs()) {
            return None;
        }
        refined[index] += correction;
    }
    Some(refined)
}

fn equal(what: &str, rates: &[f64], differences: &[f64]) -> Result<(), TestCaseError> {
    for (rate, difference) in rates.iter().zip(differences) {
        let off = (rate - difference).abs();
        let allowed = 2e-6 * (1.0 + difference.abs());
        prop_assert!(
            off <= allowed,
            "{what}: {rates:?} against differences {differences:?}"
        );
    }
    Ok(())
}

/// Places and directions of a knuckle: wheel centre, outer ball, spin axis; lengths against the car's size.
fn place(corner: &CornerPose, scale: f64) -> [f64; 9] {
    let mut place = [0.0; 9];
    for axis in 0..3 {
        place[axis] = corner.wheel_centre[axis] / scale;
        place[3 + axis] = corner.steering_arm[axis] / scale;
        place[6 + axis] = corner.spin_axis[axis];
    }
    place
}

/// The same rates from the knuckle's motion.
fn motion(corner: &CornerPose, twist: &steerloft_solver::twist::Twist, scale: f64) -> [f64; 9] {
    let mut rates = [0.0; 9];
    let centre = twist.velocity_of(&corner.wheel_centre) / scale;
    let ball = twist.velocity_of(&corner.steering_arm) / scale;
    let spin = twist.angular.cross(&corner.spin_axis);
    for axis in 0..3 {
        rates[axis] = centre[axis];
        rates[3 + axis] = ball[axis];
        rates[6 + axis] = spin[axis];
    }
    rates
}

/// Toe, camber, caster, inclination.
fn angles(corner: &CornerPose, road: &Road) -> [f64; 4] {
    let figures = corner_figures(corner, road);
    [
        figures.toe,
        figures.camber,
        figures.caster,
        figures.inclination,
    ]
}

fn by_travel(assembly: &Assembly, pose: &AxlePose, side: Side, scale: f64) -> Checked {
    let corner = pose.corners.get(side);
    let road = &assembly.axle().road;
    let (Some(twist), Some(gradient)) = (corner.per_travel, travel_gradient(corner, road)) else {
        return Ok(Outcome::Refused);
    };
    let at = |step: f64| {
        let mut travel = pose.travel;
        *travel.get_mut(side) += step * scale;
        let near = assembly.pose_near(pose, pose.input, travel).ok()?;
        Some(*near.corners.get(side))
    };
    let places = difference(2e-3, |step| Some(place(&at(step)?, scale)));
    let turns = difference(2e-3, |step| Some(angles(&at(step)?, road)));
    let (Some(places), Some(turns)) = (places, turns) else {
        return Ok(Outcome::Refused);
    };
    let rates = motion(corner, &twist, scale).map(|rate| rate * scale);
    equal("motion by travel", &rates, &places)?;
    let rates = [
        gradient.toe,
        gradient.camber,
        gradient.caster,
        gradient.inclination,
    ];
    equal("angles by travel", &rates.map(|rate| rate * scale), &turns)?;
    Ok(Outcome::Held)
}

fn by_input(assembly: &Assembly, pose: &AxlePose, side: Side, scale: f64) -> Checked {
    let corner = pose.corners.get(side);
    let road = &assembly.axle().road;
    let unit = match assembly.axle().drive {
        Drive::Slider(_) => 10.0 * scale,
        _ => 1.0,
    };
    let at = |step: f64| {
        assembly
            .pose_near(pose, pose.input + step * unit, pose.travel)
            .ok()
    };
    let places = difference(3e-4, |step| Some(place(at(step)?.corners.get(side), scale)));
    let steer = difference(3e-4, |step| {
        Some([corner_figures(at(step)?.corners.get(side), road).steer])
    });
    let balls = difference(3e-4, |step| {
        let ball = at(step)?.drive.rod_inner.get(side).coords / scale;
        Some([ball.x, ball.y, ball.z])
    });
    let (Some(places), Some(steer), Some(balls)) = (places, steer, balls) else {
        return Ok(Outcome::Refused);
    };
    let rates = motion(corner, &corner.per_input, scale).map(|rate| rate * unit);
    equal("motion by input", &rates, &places)?;
    equal(
        "steer by input",
        &[steer_per_input(corner, road) * unit],
        &steer,
    )?;
    let ball = pose.drive.rod_inner_rate.get(side) * (unit / scale);
    equal("inner ball by input", &[ball.x, ball.y, ball.z], &balls)?;
    Ok(Outcome::Held)
}

/// Whichever of several checks was put to the test.
fn either(one: Outcome, other: Outcome) -> Outcome {
    match (one, other) {
        (Outcome::Refused, Outcome::Refused) => Outcome::Refused,
        _ => Outcome::Held,
    }
}

fn rates_of_a_pose(trial: &Trial) -> Checked {
    trial.posed(|assembly, pose| {
        let mut outcome = Outcome::Refused;
        for side in Side::BOTH {
            outcome = either(outcome, by_travel(assembly, pose, side, trial.scale)?);
            outcome = either(outcome, by_input(assembly, pose, side, trial.scale)?);
        }
        Ok(outcome)
    })
}

/// Rates by roll, both tyres on the road.
fn rates_in_roll(trial: &Trial) -> Checked {
    let assembly = match Assembly::new(&trial.axle) {
        Ok(assembly) => assembly,
        Err(error) => return refused(&error),
    };
    // A road just under the wheels, tilted a little: arms have no more travel than that on some axles.
    let knuckle = &assembly.axle().corners.left.knuckle;
    let road = Road {
        ride_height: knuckle.tyre_radius - knuckle.wheel_centre.z,
        pitch: assembly.axle().road.pitch,
        roll: 0.1 * assembly.axle().road.roll,
    };
    let on_road = |roll: f64| {
        let tilted = Road {
            roll: road.roll + roll,
            ..road
        };
        let pose = assembly
            .pose_on_road(assembly.static_pose(), 0.0, &tilted)
            .ok()?;
        Some((pose, tilted))
    };
    let Some((pose, _)) = on_road(0.0) else {
        return Ok(Outcome::Refused);
    };
    for side in Side::BOTH {
        let differences = difference(1e-3, |roll| {
            let (pose, road) = on_road(roll)?;
            let figures = corner_figures(pose.corners.get(side), &road);
            Some([
                figures.steer,
                figures.camber,
                *pose.travel.get(side) / trial.scale,
            ])
        });
        let (Some(differences), Some(rates)) =
            (differences, roll_gradient(pose.corners.get(side), &road))
        else {
            return Ok(Outcome::Refused);
        };
        let rates = [rates.steer, rates.camber, rates.travel / trial.scale];
        equal("by roll", &rates, &differences)?;
    }
    Ok(Outcome::Held)
}

/// The Ackermann share straight ahead is the limit of the share, on mirror-symmetrical axles with a symmetrical
/// drive. Both ways alike, the share has a first power of the turn in it, so two powers are taken out.
fn share_straight_ahead(trial: &Trial) -> Checked {
    let Some(axle) = super::drives::symmetrical(&trial.axle) else {
        return Ok(Outcome::Refused);
    };
    let assembly = match Assembly::new(&axle) {
        Ok(assembly) => assembly,
        Err(error) => return refused(&error),
    };
    let unit = match axle.drive {
        Drive::Slider(_) => 10.0 * trial.scale,
        _ => 1.0,
    };
    let share = |input: f64| {
        let pose = assembly.pose(input * unit, Sides::both(0.0)).ok()?;
        inner_outer(&assembly, &pose)?.ackermann_share
    };
    let shares = [share(0.001), share(0.002), share(0.004), share(-0.004)];
    let [Some(first), Some(second), Some(fourth), Some(mirrored)] = shares else {
        return Ok(Outcome::Refused);
    };
    prop_assert!(
        (fourth - mirrored).abs() <= 1e-6 * (1.0 + fourth.abs()),
        "{fourth}, {mirrored}"
    );
    let (near, far) = (2.0 * first - second, 2.0 * second - fourth);
    let extrapolated = near + (near - far) / 3.0;
    if (near - far).abs() > 0.01 {
        return Ok(Outcome::Refused);
    }
    let limit = straight_ahead_share(&assembly);
    prop_assert!(limit.is_some(), "no limit on a symmetrical car");
    let off = limit.map_or(f64::INFINITY, |limit| (limit - extrapolated).abs());
    prop_assert!(
        off <= 0.01 + (near - far).abs(),
        "{limit:?} against {extrapolated}"
    );
    Ok(Outcome::Held)
}

mod of_a_pose {
    for_every_kind!(super::rates_of_a_pose, share 0.7);
}

mod in_roll {
    use crate::geometry::Kind;

    #[test]
    fn sliding_kingpin() {
        crate::hold(Kind::SlidingKingpin, 0.6, super::rates_in_roll);
    }

    #[test]
    fn swinging_upper_arm() {
        crate::hold(Kind::SwingingUpperArm, 0.5, super::rates_in_roll);
    }

    #[test]
    fn double_wishbone() {
        crate::hold(Kind::DoubleWishbone, 0.7, super::rates_in_roll);
    }

    #[test]
    fn strut() {
        crate::hold(Kind::Strut, 0.7, super::rates_in_roll);
    }
}

mod straight_ahead {
    for_every_kind!(super::share_straight_ahead, share 0.3);
}
