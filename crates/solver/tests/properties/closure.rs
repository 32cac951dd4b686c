//! Every pose closes: each body is moved rigidly, each joint is together, and the wheel stands at its height, to
//! 1e-9 mm. Distances and turns are computed here from the geometry as drawn.

use proptest::prop_assert;
use proptest::test_runner::TestCaseError;
use steerloft_solver::axle::{Corner, Rod};
use steerloft_solver::drive::{Drive, InnerBallsOn, SwingArm, TwinCrank};
use steerloft_solver::figures::corner_figures;
use steerloft_solver::frame::Side;
use steerloft_solver::suspension::{Arm, Suspension};
use steerloft_solver::{Assembly, AxlePose, CornerPose, Point, Vector};

use super::trial::Trial;
use super::{Checked, Outcome};

/// What a joint may be apart, mm.
const TOGETHER: f64 = 1e-9;

type Closed = Result<(), TestCaseError>;

fn near(what: &str, actual: f64, expected: f64) -> Closed {
    let off = (actual - expected).abs();
    prop_assert!(
        off <= TOGETHER,
        "{what}: {actual} mm against {expected} mm, off by {off:e}"
    );
    Ok(())
}

fn together(what: &str, one: &Point, other: &Point) -> Closed {
    near(what, (one - other).norm(), 0.0)
}

/// A point turned about an axis: v cos + (k x v) sin + k (k . v) (1 - cos).
pub(crate) fn turned(point: &Point, axis_point: &Point, direction: &Vector, angle: f64) -> Point {
    let axis = direction / direction.norm();
    let arm = point - axis_point;
    let (sin, cos) = angle.sin_cos();
    axis_point + arm * cos + axis.cross(&arm) * sin + axis * (axis.dot(&arm) * (1.0 - cos))
}

fn distance_from_line(point: &Point, on_line: &Point, direction: &Vector) -> f64 {
    (point - on_line).cross(direction).norm() / direction.norm()
}

/// The ball of an arm keeps its distances from both hinge points.
fn on_arm(arm: &Arm, ball: &Point) -> Closed {
    for hinge in &arm.hinge {
        near("arm", (ball - hinge).norm(), (arm.ball - hinge).norm())?;
    }
    Ok(())
}

fn knuckle_is_carried(corner: &Corner, pose: &CornerPose) -> Closed {
    let drawn = &corner.knuckle;
    let lower = pose.knuckle * drawn.kingpin_lower;
    let upper = pose.knuckle * drawn.kingpin_upper;
    let axis = upper - lower;
    match &corner.suspension {
        Suspension::FixedKingpin => {
            together("lower end of the kingpin", &lower, &drawn.kingpin_lower)?;
            together("upper end of the kingpin", &upper, &drawn.kingpin_upper)
        }
        Suspension::SlidingKingpin => {
            let line = drawn.kingpin_upper - drawn.kingpin_lower;
            for end in [&lower, &upper] {
                let off = distance_from_line(end, &drawn.kingpin_lower, &line);
                near("slide along the kingpin", off, 0.0)?;
            }
            Ok(())
        }
        Suspension::SwingingUpperArm(arm) => {
            let off = distance_from_line(&drawn.kingpin_lower, &lower, &axis);
            near("kingpin through the fixed ball", off, 0.0)?;
            together("upper ball", &upper, &pose.kingpin_upper)?;
            on_arm(arm, &upper)
        }
        Suspension::DoubleWishbone {
            lower: lower_arm,
            upper: upper_arm,
        } => {
            together("lower ball", &lower, &pose.kingpin_lower)?;
            together("upper ball", &upper, &pose.kingpin_upper)?;
            on_arm(lower_arm, &lower)?;
            on_arm(upper_arm, &upper)
        }
        Suspension::Strut {
            lower: lower_arm,
            slide_direction,
        } => {
            together("lower ball", &lower, &pose.kingpin_lower)?;
            on_arm(lower_arm, &lower)?;
            let slide = pose.knuckle * slide_direction;
            let off = distance_from_line(&drawn.kingpin_upper, &upper, &slide);
            near("strut through the top mount", off, 0.0)
        }
    }
}

fn corner_closes(assembly: &Assembly, pose: &AxlePose, side: Side) -> Closed {
    let corner = assembly.axle().corners.get(side);
    let posed = pose.corners.get(side);
    let drawn = &corner.knuckle;
    knuckle_is_carried(corner, posed)?;
    let spin_axis = drawn.spin_axis / drawn.spin_axis.norm();
    near("length of the spin axis", posed.spin_axis.norm(), 1.0)?;
    near(
        "spin axis",
        (pose.corners.get(side).knuckle * spin_axis - posed.spin_axis).norm(),
        0.0,
    )?;
    together(
        "wheel centre",
        &(posed.knuckle * drawn.wheel_centre),
        &posed.wheel_centre,
    )?;
    together(
        "outer ball",
        &(posed.knuckle * drawn.steering_arm),
        &posed.steering_arm,
    )?;
    if corner.suspension.has_travel() {
        let rise = posed.wheel_centre.z - drawn.wheel_centre.z;
        near("height of the wheel centre", rise, *pose.travel.get(side))?;
    }
    together(
        "inner ball",
        &posed.rod_inner,
        pose.drive.rod_inner.get(side),
    )?;
    let length = *assembly.rod_lengths().get(side);
    near(
        "tie rod",
        (posed.steering_arm - posed.rod_inner).norm(),
        length,
    )?;
    match *assembly.axle().rods.get(side) {
        Rod::FixedLength(given) => near("length of the tie rod", length, given),
        Rod::HoldToe(toe) => {
            let posed = assembly.static_pose().corners.get(side);
            let figures = corner_figures(posed, &assembly.axle().road);
            prop_assert!(
                (figures.toe - toe).abs() <= 1e-11,
                "toe {} held at {toe}",
                figures.toe
            );
            Ok(())
        }
    }
}

fn drive_closes(drive: &Drive, pose: &AxlePose) -> Closed {
    let inner = &pose.drive.rod_inner;
    for side in Side::BOTH {
        let ball = inner.get(side);
        match drive {
            Drive::SwingArm(SwingArm {
                axis_point,
                axis_direction,
                rod_inner,
            }) => {
                let place = turned(rod_inner.get(side), axis_point, axis_direction, pose.input);
                together("inner ball on the arm", ball, &place)?;
            }
            Drive::Slider(slider) => {
                let shift = slider.direction / slider.direction.norm() * pose.input;
                together(
                    "inner ball on the rack",
                    ball,
                    &(slider.rod_inner.get(side) + shift),
                )?;
            }
            Drive::TwinCrank(_) => {}
        }
    }
    if let Drive::TwinCrank(drive) = drive {
        cranks_close(drive, pose)?;
    }
    Ok(())
}

/// A ball keeps its place on a crank: its distance along and from the axis.
fn on_crank(what: &str, point: &Point, direction: &Vector, drawn: &Point, ball: &Point) -> Closed {
    let axis = direction / direction.norm();
    near(what, axis.dot(&(ball - drawn)), 0.0)?;
    near(
        what,
        distance_from_line(ball, point, &axis),
        distance_from_line(drawn, point, &axis),
    )
}

fn cranks_close(drive: &TwinCrank, pose: &AxlePose) -> Closed {
    let links: Vec<_> = Drive::TwinCrank(*drive).links(&pose.drive).collect();
    let (drag, cross) = (links[0], links[1]);
    let drawn_drag = (drive.drag_crank - drive.drag_servo).norm();
    let drawn_cross = (drive.cross_balls.left - drive.cross_balls.right).norm();
    near(
        "drag link",
        (drag.to - drag.from).norm(),
        drive.drag_length.unwrap_or(drawn_drag),
    )?;
    near(
        "cross link",
        (cross.to - cross.from).norm(),
        drive.cross_length.unwrap_or(drawn_cross),
    )?;
    let servo = &drive.servo;
    let arm = turned(
        &drive.drag_servo,
        &servo.axis_point,
        &servo.axis_direction,
        pose.input,
    );
    together("servo arm", &drag.from, &arm)?;
    for (side, cross_ball) in [(Side::Left, cross.from), (Side::Right, cross.to)] {
        let crank = drive.cranks.get(side);
        let axis = &crank.axis_direction;
        let drawn = drive.cross_balls.get(side);
        on_crank("cross ball", &crank.axis_point, axis, drawn, &cross_ball)?;
        let inner = pose.drive.rod_inner.get(side);
        let drawn_inner = drive.rod_inner.get(side);
        if drive.inner_on == InnerBallsOn::Cranks {
            on_crank("inner ball", &crank.axis_point, axis, drawn_inner, inner)?;
            near(
                "crank",
                (inner - cross_ball).norm(),
                (drawn_inner - drawn).norm(),
            )?;
        } else {
            near(
                "ball on the cross link",
                distance_from_line(inner, &cross.from, &(cross.to - cross.from)),
                0.0,
            )?;
        }
        if side == drive.driven {
            on_crank(
                "drag ball",
                &crank.axis_point,
                axis,
                &drive.drag_crank,
                &drag.to,
            )?;
            near(
                "crank",
                (drag.to - cross_ball).norm(),
                (drive.drag_crank - drawn).norm(),
            )?;
        }
    }
    Ok(())
}

/// Static pose and the pose asked for close.
fn closes(trial: &Trial) -> Checked {
    trial.posed(|assembly, pose| {
        for pose in [assembly.static_pose(), pose] {
            drive_closes(&assembly.axle().drive, pose)?;
            for side in Side::BOTH {
                corner_closes(assembly, pose, side)?;
            }
        }
        Ok(Outcome::Held)
    })
}

for_every_kind!(closes, share 0.8);
