//! The ideal pair of wheel angles, cot(outer) - cot(inner) = B / L, and the Ackermann share. Angles in degrees.

use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod};
use steerloft_solver::drive::{Drive, SwingArm};
use steerloft_solver::figures::{ideal_outer, inner_outer, kingpin_distance, turn_centre};
use steerloft_solver::suspension::Suspension;
use steerloft_solver::{Assembly, Point, Side, Sides, Vector};

use super::near;
use super::rig::{LEVEL, Pair, knuckle};

fn outer(inner: f64, kingpins: f64, wheelbase: f64) -> f64 {
    ideal_outer(inner.to_radians(), kingpins, wheelbase).to_degrees()
}

/// B / L = 0.44, inner 18: outer 15.869. S. S. Rattan, Theory of Machines, chapter on lower pairs, worked example
/// (wording and 15.9 from memory; formula published at examveda.com, question 198449).
#[test]
fn worked_example_of_a_textbook() {
    near(outer(18.0, 0.44, 1.0), 15.869, 0.001);
}

/// L = 2.6 m, distance 1.5 m, inner 28. Question published at askfilo.com ("An Ackermann Steering gear wheelbase is
/// 2.6m and track width is 1.5m"), answer computed here.
#[test]
fn question_with_wheelbase_and_track() {
    near(outer(28.0, 1.5, 2.6), 22.141, 0.001);
}

/// The same relation without cotangents: sin(i - o) = (B / L) sin i sin o. Algebra; computed here.
#[test]
fn sine_identity() {
    let outer = outer(30.0, 0.5, 1.0);
    near(outer, 24.1333, 1e-4);
    let (i, o) = (30.0_f64.to_radians(), outer.to_radians());
    near((i - o).sin(), 0.102_215, 1e-6);
    near((i - o).sin(), 0.5 * i.sin() * o.sin(), 1e-15);
}

/// The axes of ideal wheels meet in one point on the rear-axle line: the definition itself, ISO 8855:2011, 7.1.9
/// (published). Beyond a quarter turn the cotangents go on. Computed here.
#[test]
fn axes_of_ideal_wheels_meet_on_the_rear_axle_line() {
    for inner in [1.0, 10.0, 25.0, 40.0, 55.0] {
        let pair = Pair {
            kingpins: 1230.0,
            track: 1230.0,
            wheelbase: 2743.0,
            steer: Sides::new(inner, outer(inner, 1230.0, 2743.0)),
        };
        let assembly = pair.assemble();
        near(kingpin_distance(&assembly), 1230.0, 1e-9);
        let centre = assembly
            .static_pose()
            .corners
            .map(|corner| turn_centre(&corner, &LEVEL, 2743.0).unwrap().lateral);
        near(centre.left, centre.right, 1e-9 * centre.left.abs());
    }
    near(outer(100.0, 0.5, 1.0), 72.0643, 1e-3);
}

/// The Davis gear, a sliding cross rod in slots of the steering arms, is ideal at every shift x: tan(outer) =
/// a x / (a^2 + d^2 + d x) and tan(inner) with - d x, d = a tan(alpha), tan(alpha) = c / (2 b). With c = 1.2 m, b = 2.7 m,
/// a = 0.150 m at 20, 50 and 80 mm. Derivation published: ellenow.com, 15316420371; angles computed here.
#[test]
fn davis_gear() {
    let (kingpins, wheelbase, reach) = (1.2, 2.7, 0.15);
    let offset = reach * kingpins / (2.0 * wheelbase);
    for (shift, outer_angle, inner_angle) in [
        (0.020, 7.0443, 7.4492),
        (0.050, 16.5258, 18.8690),
        (0.080, 24.5443, 29.8103),
    ] {
        let angle = |sign: f64| {
            let along = reach * reach + offset * offset + sign * offset * shift;
            (reach * shift / along).atan().to_degrees()
        };
        near(angle(1.0), outer_angle, 1e-4);
        near(angle(-1.0), inner_angle, 1e-4);
        near(outer(angle(-1.0), kingpins, wheelbase), angle(1.0), 1e-12);
    }
}

/// Two upright knuckles in the class of a small car, 120 apart. The swing arm is coaxial with the left one, so that
/// the left wheel turns by the input; the right rod's inner ball is placed so that the right wheel stands at
/// `right` degrees when the input is `left` degrees.
fn axle_with_pair_of_angles(left: f64, right: f64) -> Assembly {
    let arm = |y| Point::new(-12.0, y, 10.0);
    let corner = |side: Side| {
        let kingpin = Point::new(0.0, 60.0 * side.sign(), 0.0);
        Corner {
            knuckle: Knuckle {
                spin_axis: Vector::y() * side.sign(),
                steering_arm: arm(kingpin.y),
                ..knuckle(
                    kingpin,
                    Vector::z(),
                    kingpin + Vector::new(0.0, 0.0, 20.0),
                    20.0,
                )
            },
            suspension: Suspension::FixedKingpin,
        }
    };
    // From the swing arm's axis: the right outer ball straight ahead, and turned by `right`.
    let turn = |degrees: f64, x: f64| {
        let (sin, cos) = degrees.to_radians().sin_cos();
        (x * cos, x * sin)
    };
    let straight = (-12.0, -120.0);
    let turned_ball = turn(right, -12.0);
    let turned = (turned_ball.0, turned_ball.1 - 120.0);
    // The inner ball b keeps its distance: |R b - turned| = |b - straight|, which is linear in b.
    let (sin, cos) = left.to_radians().sin_cos();
    let back = (
        cos * turned.0 + sin * turned.1,
        cos * turned.1 - sin * turned.0,
    );
    let normal = (straight.0 - back.0, straight.1 - back.1);
    let squares = |p: (f64, f64)| p.0 * p.0 + p.1 * p.1;
    let inner_y = -6.0;
    let inner_x = (0.5 * (squares(straight) - squares(turned)) - normal.1 * inner_y) / normal.0;
    let axle = FrontAxle {
        corners: Sides::from_fn(corner),
        drive: Drive::SwingArm(SwingArm {
            axis_point: Point::new(0.0, 60.0, 10.0),
            axis_direction: Vector::z(),
            rod_inner: Sides::new(
                Point::new(0.0, 48.0, 10.0),
                Point::new(inner_x, 60.0 + inner_y, 10.0),
            ),
        }),
        rods: Sides::both(Rod::HoldToe(0.0)),
        wheelbase: 200.0,
        station: 0.0,
        road: LEVEL,
    };
    Assembly::new(&axle).unwrap()
}

fn share(left: f64, right: f64) -> f64 {
    let assembly = axle_with_pair_of_angles(left, right);
    let pose = assembly.pose(left.to_radians(), Sides::both(0.0)).unwrap();
    let pair = inner_outer(&assembly, &pose).unwrap();
    assert_eq!(pair.inner_side, Side::Left);
    near(pair.inner.to_degrees(), left, 1e-9);
    near(pair.outer.to_degrees(), right, 1e-9);
    near(
        pair.ideal_outer.to_degrees(),
        outer(left, 120.0, 200.0),
        1e-9,
    );
    pair.ackermann_share.unwrap()
}

/// The ends of the scale: 0 with the wheels parallel, 100 with the ideal pair, negative when the outer wheel turns
/// more. Common usage, e.g. W. F. and D. L. Milliken, Race Car Vehicle Dynamics, chapter 19 (from memory). Other
/// definitions are in use; this one is by the inner angle.
#[test]
fn ends_of_the_share() {
    for inner in [5.0, 15.0, 30.0] {
        let ideal = outer(inner, 120.0, 200.0);
        near(share(inner, inner), 0.0, 1e-7);
        near(share(inner, ideal), 100.0, 1e-7);
        near(share(inner, 0.5 * (inner + ideal)), 50.0, 1e-7);
        near(share(inner, 2.0 * inner - ideal), -100.0, 1e-7);
    }
}

/// Which wheel is the inner one follows from the turn, and the share does not hang on it.
#[test]
fn share_of_a_mirrored_turn() {
    let assembly = axle_with_pair_of_angles(20.0, 17.0);
    let straight = assembly.pose(0.0, Sides::both(0.0)).unwrap();
    assert!(inner_outer(&assembly, &straight).is_none());
    let right_turn = assembly.pose(-0.3, Sides::both(0.0)).unwrap();
    let pair = inner_outer(&assembly, &right_turn).unwrap();
    assert_eq!(pair.inner_side, Side::Right);
    near(pair.outer, 0.3, 1e-12);
}
