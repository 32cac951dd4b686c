//! Which pivots can be dragged, and the values drags ask for.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use std::collections::BTreeSet;

use approx::assert_relative_eq;
use common::{base_car, car, cars, choose, choose_option, index_of, sliding_car, values_of};
use steerloft_setup::adjustment::PointName;
use steerloft_setup::handles::{Handle, displacement, handles, point_of, value_nearest};
use steerloft_setup::layout::layout;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_solver::frame::{Point, Side, Vector};

const TOP: [Vector; 2] = [Vector::new(0.0, 1.0, 0.0), Vector::new(1.0, 0.0, 0.0)];
const FRONT: [Vector; 2] = [Vector::new(0.0, 1.0, 0.0), Vector::new(0.0, 0.0, 1.0)];

fn names(setup: &Setup, handle: &Handle) -> Vec<String> {
    let indices = handle.adjustments.iter();
    indices
        .map(|&index| setup.car.adjustments[index].name.clone())
        .collect()
}

fn handle(setup: &Setup, point: PointName, side: Side) -> Handle {
    let mut found = handles(setup).into_iter();
    found
        .find(|handle| handle.point == point && handle.side == side)
        .unwrap()
}

fn place(setup: &Setup, point: PointName, side: Side) -> Point {
    point_of(&layout(setup), point, side).unwrap()
}

#[test]
fn every_pivot_knows_what_moves_it() {
    let setup = base_car();
    for side in Side::BOTH {
        assert_eq!(
            names(&setup, &handle(&setup, PointName::RodInner, side)),
            [
                "Servo station",
                "Servo sideways",
                "Servo height packing",
                "Servo-arm hole",
                "Inner rod spacers",
                "Ball studs"
            ]
        );
        assert_eq!(
            names(&setup, &handle(&setup, PointName::SteeringArm, side)),
            [
                "Front wheelbase",
                "Steering-arm hole",
                "Outer rod spacers",
                "Kingpin inclination insert",
                "Caster insert"
            ]
        );
        assert_eq!(
            names(&setup, &handle(&setup, PointName::KingpinUpper, side)),
            [
                "Front wheelbase",
                "Kingpin inclination insert",
                "Caster insert",
                "Upper arm length"
            ]
        );
        assert_eq!(
            names(&setup, &handle(&setup, PointName::WheelCentre, side)),
            [
                "Front wheelbase",
                "Kingpin inclination insert",
                "Caster insert"
            ]
        );
    }
    assert_eq!(
        names(&setup, &handle(&setup, PointName::DriveAxis, Side::Left)),
        ["Servo station", "Servo sideways", "Servo height packing"]
    );
}

#[test]
fn what_both_sides_share_and_what_a_car_lacks_have_no_second_handle() {
    let all = handles(&base_car());
    let axes = all
        .iter()
        .filter(|handle| handle.point == PointName::DriveAxis);
    assert_eq!(axes.count(), 1);
    assert!(all.iter().all(|handle| !handle.point.is_direction()));
    let sliding = handles(&sliding_car());
    assert!(
        sliding
            .iter()
            .all(|handle| handle.point != PointName::UpperHingeFront)
    );
}

#[test]
fn displacement_is_per_unit_and_honours_a_reflection() {
    let mut setup = base_car();
    let spacers = index_of(&setup, "Inner rod spacers");
    let by = displacement(&setup, spacers, PointName::RodInner, Side::Right);
    assert_relative_eq!(by, Vector::x(), epsilon = 1e-9);
    choose_option(&mut setup, "Ball studs", "rear face");
    let by = displacement(&setup, spacers, PointName::RodInner, Side::Right);
    assert_relative_eq!(by, -Vector::x(), epsilon = 1e-9);
    let none = displacement(&setup, spacers, PointName::WheelCentre, Side::Right);
    assert_relative_eq!(none, Vector::zeros());
}

#[test]
fn displacement_of_a_choice_goes_to_its_farthest_option() {
    let mut setup = base_car();
    let hole = index_of(&setup, "Servo-arm hole");
    choose_option(&mut setup, "Servo-arm hole", "upper hole");
    let upper = place(&setup, PointName::RodInner, Side::Left);
    let by = displacement(&setup, hole, PointName::RodInner, Side::Left);
    choose_option(&mut setup, "Servo-arm hole", "lower hole");
    let lower = place(&setup, PointName::RodInner, Side::Left);
    assert_relative_eq!(by, lower - upper, epsilon = 1e-9);
}

#[test]
fn a_dragged_slide_snaps_unless_freed_and_stops_at_its_ends() {
    let setup = base_car();
    let station = index_of(&setup, "Servo station");
    let from = place(&setup, PointName::DriveAxis, Side::Left);
    let drag = |by: Vector, free: bool| {
        value_nearest(
            &setup,
            station,
            PointName::DriveAxis,
            Side::Left,
            from + by,
            &TOP,
            free,
        )
    };
    assert_eq!(drag(Vector::new(1.7, 5.0, 0.0), false), Chosen::Slide(2.0));
    let Chosen::Slide(free) = drag(Vector::new(1.7, 5.0, 0.0), true) else {
        panic!("a slide has a slide's value");
    };
    assert_relative_eq!(free, 1.7, epsilon = 1e-9);
    assert_eq!(
        drag(Vector::new(-99.0, 0.0, 0.0), false),
        Chosen::Slide(-5.0)
    );
}

#[test]
fn what_the_view_does_not_show_moving_keeps_its_value() {
    let mut setup = base_car();
    choose(&mut setup, "Servo station", Chosen::Slide(2.0));
    let station = index_of(&setup, "Servo station");
    let from = place(&setup, PointName::DriveAxis, Side::Left);
    let wanted = from + Vector::new(3.0, 3.0, 3.0);
    let value = value_nearest(
        &setup,
        station,
        PointName::DriveAxis,
        Side::Left,
        wanted,
        &FRONT,
        false,
    );
    assert_eq!(value, Chosen::Slide(2.0));
}

#[test]
fn a_choice_that_the_view_does_not_show_keeps_its_option() {
    let mut setup = base_car();
    let hole = index_of(&setup, "Servo-arm hole");
    for option in ["lower hole", "middle hole", "upper hole"] {
        choose_option(&mut setup, "Servo-arm hole", option);
        let wanted = place(&setup, PointName::RodInner, Side::Left) + Vector::new(3.0, 3.0, 3.0);
        let value = value_nearest(
            &setup,
            hole,
            PointName::RodInner,
            Side::Left,
            wanted,
            &TOP,
            false,
        );
        assert_eq!(value, Chosen::Choice(option.to_owned()));
    }
}

#[test]
fn a_dragged_stack_and_choice_take_the_candidate_nearest() {
    let setup = base_car();
    let spacers = index_of(&setup, "Outer rod spacers");
    let from = place(&setup, PointName::SteeringArm, Side::Right);
    let base = setup.value(spacers);
    let Chosen::Stack(base_total) = base else {
        panic!("spacers are a stack");
    };
    let value = value_nearest(
        &setup,
        spacers,
        PointName::SteeringArm,
        Side::Right,
        from + Vector::new(4.0, 0.0, -1.2),
        &FRONT,
        true,
    );
    assert_eq!(value, Chosen::Stack(base_total - 1.0));
    let hole = index_of(&setup, "Steering-arm hole");
    let drag = |by: Vector| {
        value_nearest(
            &setup,
            hole,
            PointName::SteeringArm,
            Side::Right,
            from + by,
            &TOP,
            false,
        )
    };
    assert_eq!(
        drag(Vector::new(-2.5, 4.0, 0.0)),
        Chosen::Choice("rearward hole".to_owned())
    );
    assert_eq!(
        drag(Vector::new(2.5, -4.0, 0.0)),
        Chosen::Choice("forward hole".to_owned())
    );
}

#[test]
fn a_dragged_turn_follows_its_arc() {
    use steerloft_setup::adjustment::{Effect, EffectSides, Kind, Unit};
    use steerloft_setup::car::Position;
    let kind = Kind::Slide {
        unit: Unit::Degrees,
        range: (-40.0, 40.0),
        step: None,
        base: 0.0,
        effects: vec![Effect::Turn {
            points: vec![PointName::KingpinUpper],
            through: PointName::KingpinLower,
            about: Position(1.0, 0.0, 0.0),
            degrees: 1.0,
            sides: EffectSides::Mirrored,
        }],
    };
    let setup = common::with_adjustment(&base_car(), "turn", kind);
    let turn = index_of(&setup, "turn");
    let mut there = setup.clone();
    there.set(turn, Chosen::Slide(33.0)).unwrap();
    let wanted = place(&there, PointName::KingpinUpper, Side::Right);
    let value = value_nearest(
        &setup,
        turn,
        PointName::KingpinUpper,
        Side::Right,
        wanted,
        &FRONT,
        true,
    );
    let Chosen::Slide(degrees) = value else {
        panic!("a slide has a slide's value");
    };
    assert_relative_eq!(degrees, 33.0, epsilon = 1e-6);
}

/// The chosen values that differ from where an adjustment stands.
fn other_values(setup: &Setup, index: usize) -> Vec<Chosen> {
    let mut values = values_of(&setup.car.adjustments[index]);
    values.retain(|value| *value != setup.value(index));
    values
}

#[test]
fn every_handle_of_every_car_leads_where_its_adjustment_takes_it() {
    for setup in cars() {
        let handles = handles(&setup);
        assert!(!handles.is_empty());
        for Handle {
            point,
            side,
            adjustments,
        } in &handles
        {
            for &index in adjustments {
                let by = displacement(&setup, index, *point, *side);
                assert!(by.norm() > 1e-6, "{point:?}");
                for value in other_values(&setup, index) {
                    let mut there = setup.clone();
                    there.set(index, value).unwrap();
                    let wanted = place(&there, *point, *side);
                    let found = value_nearest(&setup, index, *point, *side, wanted, &[], false);
                    let mut dragged = setup.clone();
                    dragged.set(index, found).unwrap();
                    let miss = (place(&dragged, *point, *side) - wanted).norm();
                    assert!(
                        miss < 1e-6,
                        "{}, {}: {point:?} of the {side} is {miss} mm off",
                        setup.car.name,
                        setup.car.adjustments[index].name
                    );
                }
            }
        }
    }
}

#[test]
fn every_adjustment_of_points_has_a_handle() {
    for setup in cars() {
        let moved: BTreeSet<usize> = handles(&setup)
            .into_iter()
            .flat_map(|handle| handle.adjustments)
            .collect();
        for (index, adjustment) in setup.car.adjustments.iter().enumerate() {
            // Numbers of the car and lengths of the drive's links move no pivot as drawn.
            let moves_nothing = matches!(
                adjustment.name.as_str(),
                "Ride height" | "Rake" | "Camber" | "Tyre radius" | "Drag link length"
            );
            assert_eq!(
                moved.contains(&index),
                !moves_nothing,
                "{}",
                adjustment.name
            );
        }
    }
}

#[test]
fn handles_of_twin_cranks_are_those_of_their_joints() {
    let setup = car("touring-car.ron");
    for side in Side::BOTH {
        assert_eq!(
            names(&setup, &handle(&setup, PointName::CrankAxis, side)),
            ["Crank station"]
        );
        assert_eq!(
            names(&setup, &handle(&setup, PointName::CrossBall, side)),
            ["Crank station", "Cross-link hole"]
        );
        assert_eq!(
            names(&setup, &handle(&setup, PointName::LowerHingeRear, side)),
            ["Front wheelbase", "Lower hinge packing, rear"]
        );
    }
    let shared = [
        PointName::DragServo,
        PointName::DragCrank,
        PointName::DriveAxis,
    ];
    for point in shared {
        let all = handles(&setup);
        assert_eq!(all.iter().filter(|handle| handle.point == point).count(), 1);
    }
    assert_eq!(
        names(&setup, &handle(&setup, PointName::DragServo, Side::Left)),
        ["Servo station", "Servo height packing", "Servo-arm hole"]
    );
}
