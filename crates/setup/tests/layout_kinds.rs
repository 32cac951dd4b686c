//! What is laid out for every kind of suspension and drive: the file's points in their places, members that keep
//! or change their length, what moves together.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::assert_relative_eq;
use common::{car, cars, choose, choose_option, index_of, one_change_each, with_adjustment};
use steerloft_setup::adjustment::{Effect, EffectSides, Kind, Member, PointName, Unit};
use steerloft_setup::car::{Drive, DrivenCrank, Position, Suspension};
use steerloft_setup::check::check;
use steerloft_setup::handles::point_of;
use steerloft_setup::layout::{Layout, front_axle, layout};
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_solver::drive::{self, TwinCrank};
use steerloft_solver::frame::{Point, Side, Vector, mirrored_point};
use steerloft_solver::suspension::{self, Arm};

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

fn lengthening(member: Member) -> Effect {
    Effect::Lengthen {
        member,
        by: 1.0,
        sides: EffectSides::Mirrored,
    }
}

/// The setup with one adjustment added, at a value.
fn with_added(setup: &Setup, effects: Vec<Effect>, value: f64) -> Setup {
    let mut setup = with_adjustment(setup, "added", slide(effects));
    assert_eq!(check(&setup), Ok(()));
    let index = index_of(&setup, "added");
    setup.set(index, Chosen::Slide(value)).unwrap();
    setup
}

fn moved(before: &Layout, after: &Layout, point: PointName, side: Side) -> Vector {
    point_of(after, point, side).unwrap() - point_of(before, point, side).unwrap()
}

fn arms(setup: &Setup, side: Side) -> [Option<Arm>; 2] {
    match front_axle(setup).corners.get(side).suspension {
        suspension::Suspension::DoubleWishbone { lower, upper } => [Some(lower), Some(upper)],
        suspension::Suspension::Strut { lower, .. } => [Some(lower), None],
        suspension::Suspension::SwingingUpperArm(upper) => [None, Some(upper)],
        _ => [None, None],
    }
}

fn twin_crank(setup: &Setup) -> TwinCrank {
    match front_axle(setup).drive {
        drive::Drive::TwinCrank(drive) => drive,
        _ => panic!("the car has twin cranks"),
    }
}

#[test]
fn at_base_hinges_and_drives_are_those_of_the_file() {
    for setup in cars() {
        let layout = layout(&setup);
        let mut given = Vec::new();
        match &setup.car.left.suspension {
            Suspension::FixedKingpin | Suspension::SlidingKingpin => {}
            Suspension::SwingingUpperArm {
                upper_hinge_front,
                upper_hinge_rear,
            } => given.extend([
                (PointName::UpperHingeFront, *upper_hinge_front),
                (PointName::UpperHingeRear, *upper_hinge_rear),
            ]),
            Suspension::DoubleWishbone {
                lower_hinge_front,
                lower_hinge_rear,
                upper_hinge_front,
                upper_hinge_rear,
            } => given.extend([
                (PointName::LowerHingeFront, *lower_hinge_front),
                (PointName::LowerHingeRear, *lower_hinge_rear),
                (PointName::UpperHingeFront, *upper_hinge_front),
                (PointName::UpperHingeRear, *upper_hinge_rear),
            ]),
            Suspension::Strut {
                lower_hinge_front,
                lower_hinge_rear,
                ..
            } => given.extend([
                (PointName::LowerHingeFront, *lower_hinge_front),
                (PointName::LowerHingeRear, *lower_hinge_rear),
            ]),
        }
        for (point, position) in given {
            let left = point_of(&layout, point, Side::Left).unwrap();
            assert_eq!(left, position.point(), "{point:?}");
            let right = point_of(&layout, point, Side::Right).unwrap();
            assert_eq!(right, mirrored_point(&left), "{point:?}");
        }
        let (left, right) = setup.car.drive.rod_inner();
        for (side, ball) in [(Side::Left, left), (Side::Right, right)] {
            assert_eq!(
                point_of(&layout, PointName::RodInner, side),
                Some(ball.point())
            );
        }
        if let Drive::TwinCrank {
            crank_left,
            crank_right,
            cross_left,
            cross_right,
            servo_arm,
            drag_servo,
            drag_crank,
            ..
        } = &setup.car.drive
        {
            for (point, side, position) in [
                (PointName::CrankAxis, Side::Left, crank_left.axis_point),
                (PointName::CrankAxis, Side::Right, crank_right.axis_point),
                (PointName::CrossBall, Side::Left, *cross_left),
                (PointName::CrossBall, Side::Right, *cross_right),
                (PointName::DriveAxis, Side::Left, servo_arm.axis_point),
                (PointName::DragServo, Side::Left, *drag_servo),
                (PointName::DragCrank, Side::Left, *drag_crank),
            ] {
                assert_eq!(point_of(&layout, point, side), Some(position.point()));
            }
        }
    }
}

/// The wishbone's and the strut's lower ball, and the wishbone's upper one.
#[test]
fn kingpin_points_move_in_knuckle_and_arm_alike() {
    let wishbone = car("touring-car.ron");
    let strut = car("strut-corner.ron");
    for (before, point, arm) in [
        (&wishbone, PointName::KingpinLower, 0),
        (&wishbone, PointName::KingpinUpper, 1),
        (&strut, PointName::KingpinLower, 0),
    ] {
        let effect = moving(&[point], (0.5, -1.0, 0.25), EffectSides::Mirrored);
        let after = with_added(before, vec![effect], 2.0);
        for side in Side::BOTH {
            let expected = Vector::new(1.0, -2.0 * side.sign(), 0.5);
            let by = moved(&layout(before), &layout(&after), point, side);
            assert_relative_eq!(by, expected, epsilon = TOLERANCE);
            let knuckle = |setup: &Setup| {
                let knuckle = front_axle(setup).corners.get(side).knuckle;
                [knuckle.kingpin_lower, knuckle.kingpin_upper][arm]
            };
            let by = knuckle(&after) - knuckle(before);
            assert_relative_eq!(by, expected, epsilon = TOLERANCE);
            let (was, is) = (arms(before, side)[arm], arms(&after, side)[arm]);
            assert_eq!(was.unwrap().hinge, is.unwrap().hinge);
        }
    }
}

#[test]
fn lengthening_an_arm_moves_its_ball_only() {
    for (name, member, arm) in [
        ("touring-car.ron", Member::LowerArm, 0),
        ("touring-car.ron", Member::UpperArm, 1),
        ("strut-corner.ron", Member::LowerArm, 0),
    ] {
        let before = car(name);
        let after = with_added(&before, vec![lengthening(member)], 1.5);
        for side in Side::BOTH {
            let corner = |setup: &Setup| front_axle(setup).corners.get(side).knuckle;
            assert_eq!(corner(&before), corner(&after));
            let (was, is) = (arms(&before, side), arms(&after, side));
            let (changed, from) = (is[arm].unwrap(), was[arm].unwrap());
            let hinge = (from.hinge[1] - from.hinge[0]).normalize();
            let radius = |ball: Point| (ball - from.hinge[0]).cross(&hinge).norm();
            let longer = radius(changed.ball) - radius(from.ball);
            assert_relative_eq!(longer, 1.5, epsilon = 1e-11);
            assert_eq!(was[1 - arm], is[1 - arm]);
        }
    }
}

#[test]
fn links_of_the_drive_are_longer_by_what_is_said() {
    let setup = car("touring-car.ron");
    assert_eq!(twin_crank(&setup).drag_length, None);
    let as_drawn = |drive: &TwinCrank| {
        (
            (drive.drag_crank - drive.drag_servo).norm(),
            (drive.cross_balls.right - drive.cross_balls.left).norm(),
        )
    };
    let drawn = as_drawn(&twin_crank(&setup));
    let drag = twin_crank(&with_added(
        &setup,
        vec![lengthening(Member::DragLink)],
        0.75,
    ));
    assert_relative_eq!(drag.drag_length.unwrap(), drawn.0 + 0.75);
    assert_eq!(drag.cross_length, None);
    let cross = twin_crank(&with_added(
        &setup,
        vec![lengthening(Member::CrossLink)],
        -0.25,
    ));
    assert_relative_eq!(cross.cross_length.unwrap(), drawn.1 - 0.25);
    assert_eq!(cross.drag_length, None);
}

#[test]
fn a_link_is_longer_than_drawn_whichever_is_done_first() {
    let mut setup = car("touring-car.ron");
    choose(&mut setup, "Drag link length", Chosen::Slide(0.4));
    // The servo's station is listed before the link's length, the crank's after it.
    choose(&mut setup, "Servo station", Chosen::Slide(2.0));
    choose_option(&mut setup, "Crank station", "front holes");
    let drive = twin_crank(&setup);
    let drawn = (drive.drag_crank - drive.drag_servo).norm();
    assert_relative_eq!(drive.drag_length.unwrap(), drawn + 0.4);
    let Drive::TwinCrank { drag_length, .. } = &mut setup.car.drive else {
        panic!("the car has twin cranks");
    };
    *drag_length = Some(51.0);
    assert_relative_eq!(twin_crank(&setup).drag_length.unwrap(), 51.4);
}

#[test]
fn what_both_sides_share_moves_once() {
    let before = car("touring-car.ron");
    let points = [
        PointName::DriveAxis,
        PointName::DragServo,
        PointName::DragCrank,
        PointName::CrankAxis,
    ];
    let effect = moving(&points, (0.5, 0.25, 1.0), EffectSides::Together);
    let after = with_added(&before, vec![effect], 2.0);
    let (was, is) = (layout(&before), layout(&after));
    for point in points {
        for side in Side::BOTH {
            let by = moved(&was, &is, point, side);
            assert_relative_eq!(by, Vector::new(1.0, 0.5, 2.0), epsilon = TOLERANCE);
        }
    }
    let case = is.servo.unwrap().centre - was.servo.unwrap().centre;
    assert_relative_eq!(case, Vector::new(1.0, 0.5, 2.0), epsilon = TOLERANCE);
}

/// A quarter turn of each crank with all it carries, about its own axis.
#[test]
fn a_crank_turns_with_what_it_carries_about_its_own_axis() {
    for driven in [DrivenCrank::Left, DrivenCrank::Right] {
        let mut setup = car("touring-car.ron");
        let Drive::TwinCrank {
            driven: side,
            drag_crank,
            ..
        } = &mut setup.car.drive
        else {
            panic!("the car has twin cranks");
        };
        *side = driven;
        if driven == DrivenCrank::Right {
            drag_crank.1 = -drag_crank.1;
        }
        let effect = Effect::Turn {
            points: vec![
                PointName::CrossBall,
                PointName::DragCrank,
                PointName::CrankDirection,
            ],
            through: PointName::CrankAxis,
            about: Position(1.0, 0.0, 0.0),
            degrees: 9.0,
            sides: EffectSides::Together,
        };
        let after = twin_crank(&with_added(&setup, vec![effect], 10.0));
        let before = twin_crank(&setup);
        // A quarter turn about x takes y to z and z to -y.
        let turned = |lever: Vector| Vector::new(lever.x, -lever.z, lever.y);
        for side in Side::BOTH {
            let axis = before.cranks.get(side).axis_point;
            let lever = before.cross_balls.get(side) - axis;
            let is = after.cross_balls.get(side) - axis;
            assert_relative_eq!(is, turned(lever), epsilon = 1e-11);
            let direction = after.cranks.get(side).axis_direction;
            assert_relative_eq!(direction, -Vector::y(), epsilon = 1e-11);
        }
        let axis = before.cranks.get(before.driven).axis_point;
        let is = after.drag_crank - axis;
        assert_relative_eq!(is, turned(before.drag_crank - axis), epsilon = 1e-11);
    }
}

fn slide_direction(setup: &Setup, side: Side) -> Vector {
    match front_axle(setup).corners.get(side).suspension {
        suspension::Suspension::Strut {
            slide_direction, ..
        } => slide_direction,
        _ => panic!("the car has struts"),
    }
}

#[test]
fn a_strut_without_its_own_slide_line_slides_along_the_steering_axis_as_adjusted() {
    let mut setup = car("strut-corner.ron");
    let own = slide_direction(&setup, Side::Left);
    assert_relative_eq!(own, Vector::new(-0.07, -0.14, 1.0));
    let effect = moving(
        &[PointName::KingpinUpper],
        (0.0, -5.0, 0.0),
        EffectSides::Mirrored,
    );
    let leaned = with_added(&setup, vec![effect.clone()], 2.0);
    assert_relative_eq!(slide_direction(&leaned, Side::Left), own);
    // Without plates that turn the slide line, the direction can be left out.
    setup.car.adjustments.retain(|a| !a.name.ends_with("plate"));
    let Suspension::Strut {
        slide_direction: own,
        ..
    } = &mut setup.car.left.suspension
    else {
        panic!("the car has struts");
    };
    *own = None;
    let leaned = with_added(&setup, vec![effect], 2.0);
    for setup in [&setup, &leaned] {
        for side in Side::BOTH {
            let knuckle = front_axle(setup).corners.get(side).knuckle;
            let axis = knuckle.kingpin_upper - knuckle.kingpin_lower;
            let slide = slide_direction(setup, side);
            assert_relative_eq!(slide.cross(&axis).norm(), 0.0, epsilon = 1e-9);
        }
    }
}

#[test]
fn a_slide_line_turns_where_it_is_named() {
    let mut setup = car("strut-corner.ron");
    let before = slide_direction(&setup, Side::Right);
    choose(&mut setup, "Camber plate", Chosen::Slide(10.0));
    let after = slide_direction(&setup, Side::Right);
    // One degree, its top inboard: to the left on the right-hand side.
    assert_relative_eq!(before.angle(&after).to_degrees(), 1.0, epsilon = 0.02);
    assert!(after.y > before.y);
    assert_relative_eq!(after.x, before.x, epsilon = TOLERANCE);
}

#[test]
fn a_rack_has_no_servo_and_its_balls_move_together() {
    let mut setup = car("formula-corner.ron");
    let before = layout(&setup);
    assert_eq!(before.servo, None);
    assert_eq!(point_of(&before, PointName::DriveAxis, Side::Left), None);
    choose(&mut setup, "Rack height packing", Chosen::Stack(6.0));
    let after = layout(&setup);
    for side in Side::BOTH {
        let by = moved(&before, &after, PointName::RodInner, side);
        assert_relative_eq!(by, Vector::new(0.0, 0.0, 2.0), epsilon = TOLERANCE);
    }
}

#[test]
fn a_racks_direction_can_be_turned() {
    let setup = car("formula-corner.ron");
    let effect = Effect::Turn {
        points: vec![PointName::DriveDirection],
        through: PointName::RodInner,
        about: Position(0.0, 0.0, 1.0),
        degrees: 3.0,
        sides: EffectSides::Together,
    };
    let turned = with_added(&setup, vec![effect], 10.0);
    let drive::Drive::Slider(rack) = front_axle(&turned).drive else {
        panic!("the car has a rack");
    };
    let (sin, cos) = 30_f64.to_radians().sin_cos();
    assert_relative_eq!(rack.direction, Vector::new(sin, -cos, 0.0), epsilon = 1e-12);
}

#[test]
fn every_stack_of_every_car_sits_at_a_point_it_moves() {
    for setup in cars() {
        for (change, setup) in one_change_each(&setup) {
            let laid_out = layout(&setup);
            for (index, adjustment) in setup.car.adjustments.iter().enumerate() {
                let Chosen::Stack(total) = setup.value(index) else {
                    continue;
                };
                let places: Vec<_> = laid_out
                    .stacks
                    .iter()
                    .filter(|place| place.adjustment == index)
                    .collect();
                assert!(
                    (1..=4).contains(&places.len()),
                    "{change}: {} places of \"{}\"",
                    places.len(),
                    adjustment.name
                );
                for place in places {
                    assert_eq!(
                        Some(place.top),
                        point_of(&laid_out, place.point, place.side)
                    );
                    assert_relative_eq!(place.direction.norm(), 1.0, epsilon = TOLERANCE);
                    let pieces: f64 = place.spacers.iter().sum();
                    assert_relative_eq!(pieces, total, epsilon = 1e-9);
                }
            }
        }
    }
}
