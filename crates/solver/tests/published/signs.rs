//! Signs and names, clause by clause. ISO 8855:2011 clauses were read in published previews; axis directions of ISO
//! 8855 and of SAE J670 (January 2008), and J670's inclination and offset, are from memory.

use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod, spin_axis_at_camber};
use steerloft_solver::drive::{Drive, SwingArm};
use steerloft_solver::figures::gradient::steer_per_input;
use steerloft_solver::figures::toe::{leftward_axis, steer_of, total_toe_length};
use steerloft_solver::figures::{CornerFigures, corner_figures, steering_ratio, turn_centre};
use steerloft_solver::frame::{Road, Side};
use steerloft_solver::suspension::Suspension;
use steerloft_solver::{Assembly, AxlePose, Point, Sides, Vector};

use super::near;
use super::rig::LEVEL;

/// An ordinary small front axle: caster, inclination, negative camber, arms behind, servo axis upright and
/// pointing down, so that a positive input steers to the left.
fn axle(toe: f64) -> Assembly {
    let left = Corner {
        knuckle: Knuckle {
            wheel_centre: Point::new(0.0, 72.0, 21.0),
            spin_axis: spin_axis_at_camber(Side::Left, -0.03),
            kingpin_lower: Point::new(1.0, 58.0, 10.0),
            kingpin_upper: Point::new(-1.0, 55.0, 30.0),
            steering_arm: Point::new(-12.0, 54.0, 18.0),
            tyre_radius: 21.0,
            tyre_width: 20.0,
        },
        suspension: Suspension::SlidingKingpin,
    };
    Assembly::new(&FrontAxle {
        corners: Sides::new(left, left.mirrored()),
        drive: Drive::SwingArm(SwingArm {
            axis_point: Point::new(-26.0, 0.0, 18.0),
            axis_direction: -Vector::z(),
            rod_inner: Sides::new(Point::new(-14.0, 6.0, 18.0), Point::new(-14.0, -6.0, 18.0)),
        }),
        rods: Sides::both(Rod::HoldToe(toe)),
        wheelbase: 200.0,
        station: 0.0,
        road: LEVEL,
    })
    .unwrap()
}

fn figures(pose: &AxlePose) -> Sides<CornerFigures> {
    pose.corners.map(|corner| corner_figures(&corner, &LEVEL))
}

/// ISO 8855:2011, 2.3 note: axis systems are right-handed, Z = X x Y; x forward, y left, z up (from memory; J670
/// allows the same beside its older z-down system).
#[test]
fn axes_are_right_handed() {
    for (pitch, roll) in [(0.0, 0.0), (0.1, -0.2), (-0.3, 0.05)] {
        let axes = Road {
            ride_height: 5.0,
            pitch,
            roll,
        }
        .axes();
        near(
            (axes.forward.cross(&axes.leftward) - axes.up).norm(),
            0.0,
            1e-15,
        );
        assert!(axes.forward.x > 0.9 && axes.leftward.y > 0.9 && axes.up.z > 0.9);
    }
    assert!(axle(0.0).axle().corners.left.knuckle.wheel_centre.y > 0.0);
}

/// ISO 8855:2011, 7.1.6: toe-in counts positive, toe-out negative; with z up, so, toe-in is a negative steer angle of
/// the left wheel and a positive one of the right. 7.1.7: total toe is the sum over the axle.
#[test]
fn toe_in_is_positive() {
    for toe in [0.02, -0.02] {
        let axle = axle(toe);
        let both = figures(axle.static_pose());
        near(both.left.toe, toe, 1e-12);
        near(both.right.toe, toe, 1e-12);
        near(both.left.steer, -toe, 1e-12);
        near(both.right.steer, toe, 1e-12);
        // Toed in, the front of the left rim lies to the right of its rear, and so the gap in front is smaller.
        let front = axle.static_pose().corners.map(|corner| {
            let heading = corner.spin_axis.cross(&Vector::z()) * corner.side.sign();
            corner.wheel_centre.y + heading.y
        });
        let rear = axle.static_pose().corners.map(|corner| {
            let heading = corner.spin_axis.cross(&Vector::z()) * corner.side.sign();
            corner.wheel_centre.y - heading.y
        });
        let narrowing = (rear.left - rear.right) - (front.left - front.right);
        assert!(narrowing * toe > 0.0);
        assert!(total_toe_length(&both.map(|corner| corner.toe), 40.0) * toe > 0.0);
    }
}

/// ISO 8855:2011, 7.1.8: steering to the left is positive; 7.1.3: the mean steer angle is the mean of left and right.
#[test]
fn left_turn_is_positive() {
    let axle = axle(0.0);
    let at = |input: f64| figures(&axle.pose(input, Sides::both(0.0)).unwrap());
    let left_turn = at(0.3);
    assert!(left_turn.left.steer > 0.0 && left_turn.right.steer > 0.0);
    let pose = axle.pose(0.3, Sides::both(0.0)).unwrap();
    for corner in [pose.corners.left, pose.corners.right] {
        let heading = leftward_axis(&corner).cross(&Vector::z());
        assert!(
            heading.x > 0.0 && heading.y > 0.0,
            "heads forward and to the left"
        );
        near(
            steer_of(&leftward_axis(&corner), &LEVEL.axes()),
            heading.y.atan2(heading.x),
            1e-15,
        );
        let centre = turn_centre(&corner, &LEVEL, 200.0).unwrap();
        assert!(centre.lateral > 0.0, "turns about a point on the left");
    }
    let mean_rate = Side::BOTH
        .map(|side| steer_per_input(pose.corners.get(side), &LEVEL))
        .iter()
        .sum::<f64>()
        / 2.0;
    near(
        steering_ratio(&pose, &LEVEL).unwrap() * mean_rate,
        1.0,
        1e-14,
    );
    let step = 1e-5;
    let (ahead, behind) = (at(0.3 + step), at(0.3 - step));
    let mean = |both: &Sides<CornerFigures>| 0.5 * (both.left.steer + both.right.steer);
    near(
        (mean(&ahead) - mean(&behind)) / (2.0 * step),
        mean_rate,
        1e-8,
    );
}

/// SAE J670e, 6.2.1, as quoted in SAE 850219 (published): caster is positive when the steering axis leans rearward
/// going up. Camber is positive with the top outward (published: many texts). Inclination is positive with the top
/// inward, the offset positive when the axis meets the ground inboard of the contact centre (from memory).
#[test]
fn leans() {
    let both = figures(axle(0.0).static_pose());
    for corner in [both.left, both.right] {
        assert!(corner.caster > 0.0, "the top of the axis is 2 mm behind");
        assert!(
            corner.inclination > 0.0,
            "the top of the axis is 3 mm inboard"
        );
        assert!(
            corner.scrub_radius > 0.0,
            "the contact lies outboard of the axis"
        );
        assert!(corner.trail > 0.0, "the contact lies behind the axis");
        near(corner.camber, -0.03, 1e-12);
        near(
            corner.contact_centre.y.abs() - 72.0,
            21.0 * 0.03_f64.sin(),
            1e-12,
        );
    }
    near(both.left.caster, (2.0_f64 / 20.0).atan(), 1e-12);
    near(both.left.inclination, (3.0_f64 / 20.0).atan(), 1e-12);
}

/// With positive caster the outer wheel gains negative camber and the inner positive, and the two wheels rise and
/// fall oppositely. Published: an online glossary of suspension terms (address withheld).
#[test]
fn caster_leans_both_wheels_into_the_turn() {
    let axle = axle(0.0);
    let straight = figures(axle.static_pose());
    let slight_left = figures(&axle.pose(0.05, Sides::both(0.0)).unwrap());
    assert!(slight_left.left.camber > straight.left.camber);
    assert!(slight_left.right.camber < straight.right.camber);
    let drop =
        |side: Side| straight.get(side).contact_centre.z - slight_left.get(side).contact_centre.z;
    assert!(drop(Side::Left) > 0.0 && drop(Side::Right) < 0.0);
}

/// Chassis attitude: pitch positive nose down, roll positive right side down, against the road. A nose-down car has
/// less caster; rolled right side down, everything's top leans to the right: outward there, inward on the left.
#[test]
fn chassis_attitude() {
    let level = axle(0.0);
    let tilted = |pitch: f64, roll: f64| {
        let road = Road {
            ride_height: 0.0,
            pitch,
            roll,
        };
        level
            .static_pose()
            .corners
            .map(|corner| corner_figures(&corner, &road))
    };
    let straight = tilted(0.0, 0.0);
    let nose_down = tilted(0.04, 0.0);
    near(nose_down.left.caster, straight.left.caster - 0.04, 1e-12);
    let rolled = tilted(0.0, 0.04);
    near(rolled.right.camber, straight.right.camber + 0.04, 1e-12);
    near(rolled.left.camber, straight.left.camber - 0.04, 1e-12);
    near(
        rolled.left.inclination,
        straight.left.inclination + 0.04,
        1e-12,
    );
    near(
        rolled.right.inclination,
        straight.right.inclination - 0.04,
        1e-12,
    );
}
