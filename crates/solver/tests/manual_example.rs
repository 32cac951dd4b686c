//! The worked example of `docs/geometry.md`: every row of its three tables must be what the solver computes, to the
//! decimals printed there, and the intermediate steps by hand must hold.
#![allow(clippy::unwrap_used)]

use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod, spin_axis_at_camber};
use steerloft_solver::drive::{Drive, SwingArm};
use steerloft_solver::figures::linkage::outer_transmission;
use steerloft_solver::figures::{
    arm_lines, corner_figures, inner_outer, kingpin_distance, rod_angles, steering_ratio,
    straight_ahead_share, turning,
};
use steerloft_solver::frame::{Road, Side};
use steerloft_solver::suspension::Suspension;
use steerloft_solver::{Assembly, AxlePose, Point, Sides, Vector};

const MANUAL: &str = include_str!("../../../docs/geometry.md");

const LEVEL: Road = Road {
    ride_height: 0.0,
    pitch: 0.0,
    roll: 0.0,
};

/// A number as the manual prints it, with a true minus sign.
fn printed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}").replace('-', "\u{2212}");
    if text.chars().any(|c| ('1'..='9').contains(&c)) {
        text
    } else {
        text.replace('\u{2212}', "")
    }
}

#[track_caller]
fn in_manual(row: &str) {
    assert!(
        MANUAL.lines().any(|line| line == row),
        "the manual lacks the row {row}"
    );
}

/// A row of the manual with one value a side.
#[track_caller]
fn sides_row(label: &str, values: Sides<f64>, decimals: usize) {
    let Sides { left, right } = values.map(|value| printed(value, decimals));
    in_manual(&format!("| {label} | {left} | {right} |"));
}

/// A row of the manual with one value.
#[track_caller]
fn value_row(label: &str, value: f64, decimals: usize) {
    in_manual(&format!("| {label} | {} |", printed(value, decimals)));
}

/// A number by hand against one computed: within half of the last decimal printed.
#[track_caller]
fn agrees(computed: f64, by_hand: f64, decimals: i32) {
    let half = 0.5 * 10.0_f64.powi(-decimals) + 1e-12;
    assert!(
        (computed - by_hand).abs() <= half,
        "by hand {by_hand}, computed {computed}"
    );
}

/// The two corners, the left one as given, on a swing arm with an upright axis.
fn axle(knuckle: Knuckle) -> Assembly {
    let left = Corner {
        knuckle,
        suspension: Suspension::FixedKingpin,
    };
    Assembly::new(&FrontAxle {
        corners: Sides::new(left, left.mirrored()),
        drive: Drive::SwingArm(SwingArm {
            axis_point: Point::new(-3.0, 0.0, 0.0),
            axis_direction: Vector::z(),
            rod_inner: Sides::new(Point::new(-15.0, 2.0, 20.0), Point::new(-15.0, -2.0, 20.0)),
        }),
        rods: Sides::both(Rod::HoldToe(0.0)),
        wheelbase: 200.0,
        station: 0.0,
        road: LEVEL,
    })
    .unwrap()
}

fn planar() -> Assembly {
    axle(Knuckle {
        wheel_centre: Point::new(0.0, 60.0, 20.0),
        spin_axis: spin_axis_at_camber(Side::Left, 0.0),
        kingpin_lower: Point::new(0.0, 50.0, 10.0),
        kingpin_upper: Point::new(0.0, 50.0, 30.0),
        steering_arm: Point::new(-12.0, 46.0, 20.0),
        tyre_radius: 20.0,
        tyre_width: 16.0,
    })
}

fn steered(assembly: &Assembly) -> AxlePose {
    let input = 20.0_f64.to_radians();
    assembly.pose(input, Sides::both(0.0)).unwrap()
}

#[test]
fn table_of_the_steered_wheels() {
    let assembly = planar();
    let pose = steered(&assembly);
    let figures = pose.corners.map(|corner| corner_figures(&corner, &LEVEL));
    sides_row("inner ball x, mm", pose.corners.map(|c| c.rod_inner.x), 3);
    sides_row("inner ball y, mm", pose.corners.map(|c| c.rod_inner.y), 3);
    sides_row(
        "outer ball x, mm",
        pose.corners.map(|c| c.steering_arm.x),
        3,
    );
    sides_row(
        "outer ball y, mm",
        pose.corners.map(|c| c.steering_arm.y),
        3,
    );
    sides_row("steer angle, °", figures.map(|f| f.steer.to_degrees()), 3);
    sides_row("toe, °", figures.map(|f| f.toe.to_degrees()), 3);
    sides_row("scrub radius, mm", figures.map(|f| f.scrub_radius), 3);
    let top = pose.corners.map(|c| rod_angles(&c).top.to_degrees());
    sides_row("rod angle from above, °", top, 3);
    let outer = pose.corners.map(|c| outer_transmission(&c));
    let angle = outer.map(|joint| joint.angle.to_degrees());
    sides_row("transmission angle at the outer ball, °", angle, 3);
    let share = outer.map(|joint| joint.share);
    sides_row("effective share at the outer ball", share, 3);
    let turn = turning(&pose, &LEVEL, 200.0).unwrap();
    sides_row("turn centre, mm", turn.centres.map(|c| c.lateral), 3);
    sides_row("turning radius, mm", turn.centres.map(|c| c.radius), 3);
}

#[test]
fn table_of_the_axle() {
    let assembly = planar();
    let pose = steered(&assembly);
    let pair = inner_outer(&assembly, &pose).unwrap();
    let turn = turning(&pose, &LEVEL, 200.0).unwrap();
    let lines = arm_lines(&assembly).unwrap();
    assert_eq!(pair.inner_side, Side::Left);
    value_row("rod length, mm", assembly.rod_lengths().left, 3);
    value_row("kingpin distance, mm", kingpin_distance(&assembly), 3);
    let ideal = pair.ideal_outer.to_degrees();
    value_row("ideal outer angle at 20°, °", ideal, 3);
    let share = pair.ackermann_share.unwrap();
    value_row("Ackermann share at 20°, %", share, 2);
    value_row("spread at 20°, mm", turn.spread, 3);
    value_row("swept radius at 20°, mm", turn.swept_radius, 3);
    let ratio = steering_ratio(assembly.static_pose(), &LEVEL).unwrap();
    value_row("steering ratio straight ahead", ratio, 4);
    let limit = straight_ahead_share(&assembly).unwrap();
    value_row("limit of the share straight ahead, %", limit, 2);
    value_row(
        "meeting point of the arm lines behind the axle, mm",
        lines.behind,
        3,
    );
    value_row("aim of the steering arms, %", lines.share, 2);
}

/// The rod equation of one side, solved as on paper: circle about the kingpin against the sphere about the inner ball.
struct ByHand {
    alpha: f64,
    beta: f64,
    gamma: f64,
    root: f64,
    /// Degrees.
    turn: f64,
}

fn by_hand(side: Side) -> ByHand {
    let (sin, cos) = 20.0_f64.to_radians().sin_cos();
    let sign = side.sign();
    let (arm_x, arm_y) = (-12.0, 2.0 * sign);
    let inner = (-3.0 + arm_x * cos - arm_y * sin, arm_x * sin + arm_y * cos);
    let offset = (-inner.0, 50.0 * sign - inner.1);
    let (x, y) = (-12.0, -4.0 * sign);
    let alpha = offset.0 * x + offset.1 * y;
    let beta = -offset.0 * y + offset.1 * x;
    let gamma = 0.5 * (1945.0 - offset.0 * offset.0 - offset.1 * offset.1 - 160.0);
    let square = alpha * alpha + beta * beta;
    let root = (square - gamma * gamma).sqrt();
    let branch = -sign;
    let cos = (alpha * gamma + branch * beta * root) / square;
    let sin = (beta * gamma - branch * alpha * root) / square;
    ByHand {
        alpha,
        beta,
        gamma,
        root,
        turn: sin.atan2(cos).to_degrees(),
    }
}

#[test]
fn steps_by_hand() {
    let left = by_hand(Side::Left);
    for (computed, step) in [
        (left.alpha, -388.42),
        (left.beta, -566.86),
        (left.gamma, -583.12),
        (left.root, 363.55),
    ] {
        agrees(computed, step, 2);
    }
    let right = by_hand(Side::Right);
    for (computed, step) in [
        (right.alpha, -339.17),
        (right.beta, 473.83),
        (right.gamma, -168.60),
        (right.root, 557.79),
    ] {
        agrees(computed, step, 2);
    }
    let pose = steered(&planar());
    for (corner, turn) in [
        (pose.corners.left, left.turn),
        (pose.corners.right, right.turn),
    ] {
        let steer = corner_figures(&corner, &LEVEL).steer.to_degrees();
        assert!(
            (steer - turn).abs() < 1e-12,
            "{steer} by the solver, {turn} by hand"
        );
    }
}

/// First and second derivative of the turn by the input, from the integers of the page.
#[test]
fn derivatives_by_hand() {
    let rate = 534.0_f64 / 516.0;
    let bend = (200.0 - 2.0 * 136.0 * rate + 372.0 * rate * rate) / 516.0;
    agrees(rate, 1.034_884, 6);
    agrees(bend, 0.614_182, 6);
    let assembly = planar();
    let ratio = steering_ratio(assembly.static_pose(), &LEVEL).unwrap();
    assert!((ratio * rate - 1.0).abs() < 1e-12);
    let limit = straight_ahead_share(&assembly).unwrap();
    assert!((limit - 100.0 * bend / (0.5 * rate * rate)).abs() < 1e-9);
}

#[test]
fn table_of_the_leaning_axis() {
    let assembly = axle(Knuckle {
        wheel_centre: Point::new(0.0, 72.0, 17.0),
        spin_axis: spin_axis_at_camber(Side::Left, -2.0_f64.to_radians()),
        kingpin_lower: Point::new(2.0, 53.0, 6.0),
        kingpin_upper: Point::new(-2.0, 51.0, 28.0),
        steering_arm: Point::new(-12.0, 48.0, 20.0),
        tyre_radius: 21.0,
        tyre_width: 16.0,
    });
    let figures = corner_figures(&assembly.static_pose().corners.left, &LEVEL);
    value_row("caster, °", figures.caster.to_degrees(), 3);
    let inclination = figures.inclination.to_degrees();
    value_row("kingpin inclination, °", inclination, 3);
    value_row("camber, °", figures.camber.to_degrees(), 3);
    value_row("scrub radius, mm", figures.scrub_radius, 3);
    value_row("trail, mm", figures.trail, 3);
    value_row("axis offset, mm", figures.axis_offset, 3);
    value_row("castor offset, mm", figures.castor_offset, 3);
    agrees(figures.contact_centre.y, 72.733, 3);
    agrees(figures.contact_centre.z, -3.987, 3);
    agrees(figures.ground_point.x, 3.816, 3);
    agrees(figures.ground_point.y, 53.908, 3);
}
