//! Effects, mirroring, stacks and the servo's case, on a supplied car and on cars changed for the purpose.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::assert_relative_eq;
use common::{base_car, cars, choose, index_of, with_adjustment};
use steerloft_setup::adjustment::{
    ChoiceOption, Effect, EffectSides, Kind, Member, PointName, Scalar, Spacer, Unit,
};
use steerloft_setup::car::Position;
use steerloft_setup::handles::point_of;
use steerloft_setup::layout::{Layout, front_axle, layout};
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_solver::frame::{Point, Side, Vector, mirrored_point};
use steerloft_solver::suspension::Suspension;

const TOLERANCE: f64 = 1e-12;

fn slide(effects: Vec<Effect>) -> Kind {
    Kind::Slide {
        unit: Unit::Millimetres,
        range: (-10.0, 10.0),
        step: None,
        base: 0.0,
        effects,
    }
}

fn moving(points: &[PointName], by: (f64, f64, f64), sides: EffectSides) -> Effect {
    Effect::Move {
        points: points.to_vec(),
        by: Position(by.0, by.1, by.2),
        sides,
    }
}

/// The setup laid out with one added adjustment at a value.
fn laid_out(kind: Kind, value: Chosen) -> Layout {
    let mut setup = with_adjustment(&base_car(), "added", kind);
    let index = index_of(&setup, "added");
    setup.set(index, value).unwrap();
    layout(&setup)
}

fn moved(before: &Layout, after: &Layout, point: PointName, side: Side) -> Vector {
    point_of(after, point, side).unwrap() - point_of(before, point, side).unwrap()
}

#[test]
fn at_base_the_points_are_those_of_the_file_and_their_mirror_image() {
    let setup = base_car();
    let layout = layout(&setup);
    for (point, given) in [
        (PointName::WheelCentre, setup.car.left.wheel_centre),
        (PointName::KingpinLower, setup.car.left.kingpin_lower),
        (PointName::KingpinUpper, setup.car.left.kingpin_upper),
        (PointName::SteeringArm, setup.car.left.steering_arm),
    ] {
        let left = point_of(&layout, point, Side::Left).unwrap();
        assert_eq!(left, Point::new(given.0, given.1, given.2));
        assert_eq!(
            point_of(&layout, point, Side::Right).unwrap(),
            mirrored_point(&left)
        );
    }
    let camber = setup.car.left.camber.to_radians();
    for side in Side::BOTH {
        let axis = layout.axle.corners.get(side).knuckle.spin_axis;
        assert_relative_eq!(axis.y, side.sign() * camber.cos(), epsilon = TOLERANCE);
        // Negative camber: the outboard end of the spin axis points up.
        assert_relative_eq!(axis.z, -camber.sin(), epsilon = TOLERANCE);
    }
}

#[test]
fn sides_decide_where_a_displacement_goes() {
    let before = layout(&base_car());
    let given = Vector::new(1.0, 2.0, 3.0);
    let mirrored = Vector::new(1.0, -2.0, 3.0);
    let cases = [
        (EffectSides::Mirrored, given, mirrored),
        (EffectSides::Together, given, given),
        (EffectSides::Left, given, Vector::zeros()),
        (EffectSides::Right, Vector::zeros(), mirrored),
    ];
    for (sides, left, right) in cases {
        let kind = slide(vec![moving(
            &[PointName::SteeringArm],
            (1.0, 2.0, 3.0),
            sides,
        )]);
        let after = laid_out(kind, Chosen::Slide(2.0));
        for (side, expected) in [(Side::Left, left), (Side::Right, right)] {
            let by = moved(&before, &after, PointName::SteeringArm, side);
            assert_relative_eq!(by, expected * 2.0, epsilon = TOLERANCE);
        }
    }
}

#[test]
fn the_upper_kingpin_point_moves_in_knuckle_and_arm_alike() {
    let before = layout(&base_car());
    let kind = slide(vec![moving(
        &[PointName::KingpinUpper],
        (0.0, -1.0, 0.5),
        EffectSides::Mirrored,
    )]);
    let after = laid_out(kind, Chosen::Slide(1.0));
    for side in Side::BOTH {
        let (was, is) = (before.axle.corners.get(side), after.axle.corners.get(side));
        let by = is.knuckle.kingpin_upper - was.knuckle.kingpin_upper;
        assert_relative_eq!(by, Vector::new(0.0, -side.sign(), 0.5), epsilon = TOLERANCE);
        let (Suspension::SwingingUpperArm(was), Suspension::SwingingUpperArm(is)) =
            (was.suspension, is.suspension)
        else {
            panic!("the car has swinging upper arms");
        };
        assert_relative_eq!(is.ball - was.ball, by, epsilon = TOLERANCE);
        assert_eq!(is.hinge, was.hinge);
    }
}

#[test]
fn lengthening_takes_the_arms_ball_straight_from_its_hinge() {
    let before = layout(&base_car());
    let kind = slide(vec![Effect::Lengthen {
        member: Member::UpperArm,
        by: 1.0,
        sides: EffectSides::Mirrored,
    }]);
    let after = laid_out(kind, Chosen::Slide(0.7));
    for side in Side::BOTH {
        let (was, is) = (before.axle.corners.get(side), after.axle.corners.get(side));
        assert_eq!(is.knuckle, was.knuckle);
        let (Suspension::SwingingUpperArm(was), Suspension::SwingingUpperArm(is)) =
            (was.suspension, is.suspension)
        else {
            panic!("the car has swinging upper arms");
        };
        let hinge = (was.hinge[1] - was.hinge[0]).normalize();
        let radius = |ball: Point| (ball - was.hinge[0]).cross(&hinge).norm();
        assert_relative_eq!(radius(is.ball) - radius(was.ball), 0.7, epsilon = TOLERANCE);
        let by = is.ball - was.ball;
        assert_relative_eq!(by.dot(&hinge), 0.0, epsilon = TOLERANCE);
        assert_relative_eq!(by.norm(), 0.7, epsilon = TOLERANCE);
    }
}

#[test]
fn a_turn_is_right_handed_on_the_left_and_its_mirror_image_on_the_right() {
    let before = layout(&base_car());
    let kind = slide(vec![Effect::Turn {
        points: vec![PointName::WheelCentre, PointName::SpinAxis],
        through: PointName::KingpinLower,
        about: Position(2.0, 0.0, 0.0),
        degrees: 9.0,
        sides: EffectSides::Mirrored,
    }]);
    let after = laid_out(kind, Chosen::Slide(10.0));
    let pivot = point_of(&before, PointName::KingpinLower, Side::Left).unwrap();
    let lever = point_of(&before, PointName::WheelCentre, Side::Left).unwrap() - pivot;
    // A quarter turn about x takes y to z and z to -y.
    let expected = pivot + Vector::new(lever.x, -lever.z, lever.y);
    let left = point_of(&after, PointName::WheelCentre, Side::Left).unwrap();
    assert_relative_eq!(left, expected, epsilon = 1e-11);
    let right = point_of(&after, PointName::WheelCentre, Side::Right).unwrap();
    assert_relative_eq!(right, mirrored_point(&expected), epsilon = 1e-11);
    let axis = after.axle.corners.left.knuckle.spin_axis;
    assert_relative_eq!(
        axis.z,
        before.axle.corners.left.knuckle.spin_axis.y,
        epsilon = TOLERANCE
    );
}

#[test]
fn a_reflection_goes_through_the_point_where_it_now_stands() {
    let mut setup = base_car();
    choose(&mut setup, "Servo station", Chosen::Slide(3.0));
    choose(&mut setup, "Inner rod spacers", Chosen::Stack(1.5));
    let front = layout(&setup);
    choose(
        &mut setup,
        "Ball studs",
        Chosen::Choice("rear face".to_owned()),
    );
    let rear = layout(&setup);
    let middle = point_of(&front, PointName::DriveAxis, Side::Left)
        .unwrap()
        .x;
    for side in Side::BOTH {
        let before = point_of(&front, PointName::RodInner, side).unwrap();
        let after = point_of(&rear, PointName::RodInner, side).unwrap();
        assert_relative_eq!(after.x - middle, middle - before.x, epsilon = TOLERANCE);
        assert_relative_eq!(after.y, before.y, epsilon = TOLERANCE);
        assert_relative_eq!(after.z, before.z, epsilon = TOLERANCE);
    }
}

#[test]
fn the_servo_and_its_arm_move_as_one() {
    let mut setup = base_car();
    let before = layout(&setup);
    choose(&mut setup, "Servo station", Chosen::Slide(-2.0));
    choose(&mut setup, "Servo sideways", Chosen::Slide(1.0));
    choose(&mut setup, "Servo height packing", Chosen::Stack(2.0));
    let after = layout(&setup);
    let base = match &setup.car.adjustments[index_of(&setup, "Servo height packing")].kind {
        Kind::Stack { base, .. } => *base,
        _ => panic!("packing is a stack"),
    };
    let by = Vector::new(-2.0, 1.0, 2.0 - base);
    for side in Side::BOTH {
        let ball = moved(&before, &after, PointName::RodInner, side);
        assert_relative_eq!(ball, by, epsilon = TOLERANCE);
    }
    let axis = moved(&before, &after, PointName::DriveAxis, Side::Left);
    assert_relative_eq!(axis, by, epsilon = TOLERANCE);
    let case = after.servo.unwrap().centre - before.servo.unwrap().centre;
    assert_relative_eq!(case, by, epsilon = TOLERANCE);
}

/// A number read from a layout.
type Figure = fn(&Layout) -> f64;

#[test]
fn scalars_are_added_to() {
    let cases: [(Scalar, Figure, f64); 8] = [
        (Scalar::Wheelbase, |layout| layout.axle.wheelbase, 1.0),
        (Scalar::FrontStation, |layout| layout.axle.station, 1.0),
        (
            Scalar::RideHeight,
            |layout| layout.axle.road.ride_height,
            1.0,
        ),
        (
            Scalar::Pitch,
            |layout| layout.axle.road.pitch,
            1_f64.to_radians(),
        ),
        (
            Scalar::Roll,
            |layout| layout.axle.road.roll,
            1_f64.to_radians(),
        ),
        (
            Scalar::TyreRadius,
            |layout| layout.axle.corners.right.knuckle.tyre_radius,
            1.0,
        ),
        (
            Scalar::TyreWidth,
            |layout| layout.axle.corners.right.knuckle.tyre_width,
            1.0,
        ),
        (
            Scalar::Camber,
            |layout| -layout.axle.corners.right.knuckle.spin_axis.z.asin(),
            1_f64.to_radians(),
        ),
    ];
    let before = layout(&base_car());
    for (scalar, value, expected) in cases {
        let kind = slide(vec![Effect::Add { scalar, by: 0.5 }]);
        let after = laid_out(kind, Chosen::Slide(2.0));
        assert_relative_eq!(
            value(&after) - value(&before),
            expected,
            epsilon = TOLERANCE
        );
    }
}

#[test]
fn moving_the_front_axle_changes_the_wheelbase_by_as_much() {
    let name = "Front wheelbase";
    let has_it = |setup: &Setup| setup.car.adjustments.iter().any(|a| a.name == name);
    let movable: Vec<Setup> = cars().filter(has_it).collect();
    assert_eq!(movable.len(), 3);
    for mut setup in movable {
        let before = layout(&setup);
        choose(&mut setup, name, Chosen::Choice("long".to_owned()));
        let after = layout(&setup);
        let forward = after.axle.wheelbase - before.axle.wheelbase;
        assert!(forward > 0.0);
        assert_relative_eq!(after.axle.station, before.axle.station + forward);
        assert_relative_eq!(
            after.axle.rear_axle_behind(),
            before.axle.rear_axle_behind()
        );
        for (point, side) in points_of(&before) {
            let by = moved(&before, &after, point, side);
            let with_drive = matches!(
                point,
                PointName::RodInner
                    | PointName::DriveAxis
                    | PointName::CrankAxis
                    | PointName::CrossBall
                    | PointName::DragServo
                    | PointName::DragCrank
            );
            let expected = if with_drive { 0.0 } else { forward };
            assert_relative_eq!(by, Vector::new(expected, 0.0, 0.0), epsilon = TOLERANCE);
        }
    }
}

/// The points that a car has, by side.
fn points_of(layout: &Layout) -> impl Iterator<Item = (PointName, Side)> {
    let named = PointName::ALL.into_iter();
    let sided = named.flat_map(|point| Side::BOTH.map(|side| (point, side)));
    sided.filter(|&(point, side)| point_of(layout, point, side).is_some())
}

#[test]
fn effects_apply_in_the_order_of_the_list() {
    let flip = Kind::Choice {
        options: vec![
            ChoiceOption {
                name: "as drawn".to_owned(),
                effects: vec![],
            },
            ChoiceOption {
                name: "flipped".to_owned(),
                effects: vec![Effect::Reflect {
                    points: vec![PointName::SteeringArm],
                    through: PointName::WheelCentre,
                    normal: Position(0.0, 0.0, 1.0),
                    sides: EffectSides::Mirrored,
                }],
            },
        ],
        base: "as drawn".to_owned(),
    };
    let raise = slide(vec![moving(
        &[PointName::SteeringArm],
        (0.0, 0.0, 1.0),
        EffectSides::Mirrored,
    )]);
    let height = |setup: &Setup| front_axle(setup).corners.left.knuckle.steering_arm.z;
    let place = |first: (&str, &Kind), second: (&str, &Kind)| {
        let setup = with_adjustment(&base_car(), first.0, first.1.clone());
        let mut setup = with_adjustment(&setup, second.0, second.1.clone());
        choose(&mut setup, "flip", Chosen::Choice("flipped".to_owned()));
        let flipped = height(&setup);
        choose(&mut setup, "raise", Chosen::Slide(1.0));
        height(&setup) - flipped
    };
    let raised_first = place(("raise", &raise), ("flip", &flip));
    assert_relative_eq!(raised_first, -1.0, epsilon = TOLERANCE);
    let raised_last = place(("flip", &flip), ("raise", &raise));
    assert_relative_eq!(raised_last, 1.0, epsilon = TOLERANCE);
}

#[test]
fn a_stack_sits_under_its_point_and_follows_a_reflection() {
    let mut setup = base_car();
    choose(&mut setup, "Inner rod spacers", Chosen::Stack(1.5));
    choose(&mut setup, "Outer rod spacers", Chosen::Stack(2.5));
    let stack_of = |setup: &Setup, name: &str, side: Side| {
        let index = index_of(setup, name);
        let places = layout(setup).stacks;
        let mut found = places
            .into_iter()
            .filter(|place| place.adjustment == index && place.side == side);
        (found.next().unwrap(), found.next())
    };
    let (outer, none) = stack_of(&setup, "Outer rod spacers", Side::Right);
    assert_eq!(none, None);
    assert_eq!(outer.point, PointName::SteeringArm);
    assert_eq!(outer.spacers, [1.0, 1.0, 0.5]);
    assert_relative_eq!(outer.direction, Vector::z(), epsilon = TOLERANCE);
    assert_eq!(
        Some(outer.top),
        point_of(&layout(&setup), PointName::SteeringArm, Side::Right)
    );
    let (inner, _) = stack_of(&setup, "Inner rod spacers", Side::Left);
    assert_relative_eq!(inner.direction, Vector::x(), epsilon = TOLERANCE);
    choose(
        &mut setup,
        "Ball studs",
        Chosen::Choice("rear face".to_owned()),
    );
    let (inner, _) = stack_of(&setup, "Inner rod spacers", Side::Left);
    assert_relative_eq!(inner.direction, -Vector::x(), epsilon = TOLERANCE);
    assert_eq!(
        Some(inner.top),
        point_of(&layout(&setup), PointName::RodInner, Side::Left)
    );
}

#[test]
fn packing_under_the_servo_is_there_once() {
    let setup = base_car();
    let index = index_of(&setup, "Servo height packing");
    let places = layout(&setup).stacks;
    let packing: Vec<_> = places
        .iter()
        .filter(|place| place.adjustment == index)
        .collect();
    assert_eq!(packing.len(), 1);
    assert_eq!(packing[0].point, PointName::DriveAxis);
    assert_relative_eq!(packing[0].direction, Vector::z(), epsilon = TOLERANCE);
}

#[test]
fn a_stack_that_moves_nothing_has_no_place() {
    let kind = Kind::Stack {
        parts: vec![Spacer {
            thickness: 1.0,
            count: 2,
        }],
        stock: None,
        most: 2.0,
        base: 0.0,
        effects: vec![Effect::Add {
            scalar: Scalar::RideHeight,
            by: 1.0,
        }],
    };
    let setup = with_adjustment(&base_car(), "added", kind);
    let index = index_of(&setup, "added");
    assert!(
        layout(&setup)
            .stacks
            .iter()
            .all(|place| place.adjustment != index)
    );
}
