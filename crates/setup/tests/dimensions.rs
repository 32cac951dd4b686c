//! Dimensions of cars, listed and changed.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

use approx::assert_relative_eq;
use steerloft_setup::adjustment::PointName;
use steerloft_setup::car::RightCorner;
use steerloft_setup::dimension::{
    Axis, Dimension, DimensionError, Whose, dimensions, put_back, with_rods_fixed, with_sides_apart,
};
use steerloft_setup::layout::{assemble, front_axle};
use steerloft_setup::setup::{Rods, Setup};
use steerloft_setup::supplied::{SUPPLIED, Supplied};
use steerloft_solver::frame::Side;

const OUTER_HEIGHT: Dimension = Dimension::Point {
    point: PointName::SteeringArm,
    side: Whose::Left,
    axis: Axis::Z,
};

fn cars() -> impl Iterator<Item = Setup> {
    SUPPLIED.iter().map(Supplied::setup)
}

#[test]
fn every_dimension_listed_can_be_changed_and_put_back() {
    for setup in cars() {
        let exact = with_sides_apart(&with_rods_fixed(&setup).unwrap());
        let all = dimensions(&exact);
        assert!(all.len() > 30, "{}: {}", exact.car.name, all.len());
        let mut changed = exact.clone();
        for dimension in all {
            dimension.add(&mut changed, 0.05).unwrap();
            let is_turn_about_itself = matches!(dimension, Dimension::Direction { .. });
            assert!(is_turn_about_itself || changed != exact, "{dimension}");
            put_back(&mut changed, &exact);
            assert_eq!(changed, exact, "{dimension}");
        }
    }
}

#[test]
fn sides_apart_and_rods_fixed_are_the_same_car() {
    for setup in cars() {
        let apart = with_sides_apart(&setup);
        assert!(matches!(apart.car.right, RightCorner::Given(_)));
        assert_eq!(front_axle(&apart), front_axle(&setup));
        let fixed = with_rods_fixed(&setup).unwrap();
        let lengths = |setup: &Setup| assemble(setup).unwrap().rod_lengths();
        for side in Side::BOTH {
            assert_relative_eq!(
                lengths(&fixed).get(side),
                lengths(&setup).get(side),
                epsilon = 1e-9
            );
        }
    }
}

#[test]
fn one_side_leaves_the_other_and_both_are_mirror_images() {
    let setup = SUPPLIED[0].setup();
    let height = |setup: &Setup, side| setup.car.point(PointName::SteeringArm, side).unwrap();
    let mut one = setup.clone();
    OUTER_HEIGHT.add(&mut one, 0.5).unwrap();
    assert_relative_eq!(
        height(&one, Side::Left).2,
        height(&setup, Side::Left).2 + 0.5
    );
    assert_eq!(height(&one, Side::Right), height(&setup, Side::Right));

    let sideways = Dimension::Point {
        point: PointName::SteeringArm,
        side: Whose::Both,
        axis: Axis::Y,
    };
    for exact in [setup.clone(), with_sides_apart(&setup)] {
        let mut both = exact.clone();
        sideways.add(&mut both, 0.5).unwrap();
        let [left, right] = Side::BOTH.map(|side| height(&both, side));
        assert_relative_eq!(left.1, height(&setup, Side::Left).1 + 0.5);
        assert_relative_eq!(right.1, -left.1);
    }
}

#[test]
fn a_centre_turned_is_the_steering_input_turned() {
    for setup in cars() {
        let exact = with_rods_fixed(&setup).unwrap();
        let is_arm = exact.car.drive.input_unit() == steerloft_setup::adjustment::Unit::Degrees;
        let by = 2.0_f64;
        let mut off = exact.clone();
        Dimension::Centre.add(&mut off, by).unwrap();
        let drawn = assemble(&exact).unwrap();
        let input = if is_arm { by.to_radians() } else { by };
        let turned = drawn
            .pose(input, steerloft_solver::frame::Sides::both(0.0))
            .unwrap();
        // Of twin cranks the links stay as long as they are drawn, so the cranks stand where they were.
        if matches!(off.car.drive, steerloft_setup::car::Drive::TwinCrank { .. }) {
            continue;
        }
        let off = assemble(&off).unwrap();
        for side in Side::BOTH {
            let [ball, wanted] =
                [off.static_pose(), &turned].map(|pose| pose.corners.get(side).rod_inner);
            assert_relative_eq!(ball, wanted, epsilon = 1e-9);
            let [ball, wanted] =
                [off.static_pose(), &turned].map(|pose| pose.corners.get(side).steering_arm);
            assert_relative_eq!(ball, wanted, epsilon = 1e-8);
        }
    }
}

#[test]
fn what_a_car_does_not_have_is_refused() {
    let mut setup = SUPPLIED[0].setup();
    assert_eq!(
        Dimension::Rod { side: Whose::Left }.add(&mut setup, 0.1),
        Err(DimensionError::RodsHoldToe)
    );
    assert_eq!(
        Dimension::DragLink.add(&mut setup, 0.1),
        Err(DimensionError::Absent(Dimension::DragLink))
    );
    let crank = Dimension::Point {
        point: PointName::CrankAxis,
        side: Whose::Both,
        axis: Axis::X,
    };
    assert_eq!(
        crank.add(&mut setup, 0.1),
        Err(DimensionError::Absent(crank))
    );
    setup.rods = Rods::FixedLength(42.0);
    Dimension::Rod { side: Whose::Right }
        .add(&mut setup, 0.5)
        .unwrap();
    let (left, right) = (42.0, 42.5);
    assert_eq!(setup.rods, Rods::FixedLengths { left, right });
}

#[test]
fn names_tell_side_part_and_axis() {
    assert_eq!(OUTER_HEIGHT.to_string(), "left outer tie-rod ball, height");
    assert_eq!(
        Dimension::Rod { side: Whose::Both }.to_string(),
        "tie-rod length"
    );
}
