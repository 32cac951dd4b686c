//! What the reader says of suspensions and drives that are no mechanism, word for word, at which line and column.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use common::text_of;
use common::wrong_text::{case, check};
use steerloft_setup::file::read_text;

const TOURING_CAR: &str = "touring-car.ron";
const BUGGY: &str = "buggy-front-end.ron";
const KART: &str = "kart.ron";
const FORMULA_CAR: &str = "formula-corner.ron";
const STRUT: &str = "strut-corner.ron";

#[test]
fn arms() {
    check(
        text_of(TOURING_CAR),
        &[
            case(
                "lower_hinge_rear: (-20.0, 22.0, 9.0)",
                "lower_hinge_rear: §(24.0, 22.0, 9.0)",
                "the rear hinge point of the lower arm coincides with the front one; \
                 place them at least 0.001 mm apart",
            ),
            case(
                "lower_hinge_front: (24.0, 22.0, 9.0),\n                lower_hinge_rear: (-20.0, 22.0, 9.0)",
                "lower_hinge_front: §(24.0, 78.2, 10.0),\n                lower_hinge_rear: (-20.0, 78.2, 10.0)",
                "the lower kingpin point lies on the hinge axis of the arm that carries it; \
                 place them at least 0.001 mm apart",
            ),
            case(
                "upper_hinge_front: (8.0, 34.0, 38.5),\n                upper_hinge_rear: (-10.0, 34.0, 38.5)",
                "upper_hinge_front: §(8.0, 75.4, 41.0),\n                upper_hinge_rear: (-10.0, 75.4, 41.0)",
                "the upper kingpin point lies on the hinge axis of the arm that carries it; \
                 place them at least 0.001 mm apart",
            ),
            case(
                "lower_hinge_front: (24.0, 22.0, 9.0),\n                lower_hinge_rear: (-20.0, 22.0, 9.0)",
                "lower_hinge_front: §(24.0, 78.2, -30.0),\n                lower_hinge_rear: (-20.0, 78.2, -30.0)",
                "the lower arm swings its ball straight sideways, so the wheel has no travel; \
                 place the hinge inboard of the ball",
            ),
            // Half the kingpin below its upper point, on its line in the front view.
            case(
                "upper_hinge_front: (8.0, 34.0, 38.5),\n                upper_hinge_rear: (-10.0, 34.0, 38.5)",
                "upper_hinge_front: §(8.0, 76.8, 25.5),\n                upper_hinge_rear: (-10.0, 76.8, 25.5)",
                "the upper arm lies in line with the steering axis and cannot hold it; \
                 place the hinge beside the steering axis",
            ),
            case(
                "lower_hinge_front: (24.0, 22.0, 9.0)",
                "lower_hinge_front: (24.0, 22.0, §99000.0)",
                "99000 mm is not a sensible value here; give -10000 to 10000 mm",
            ),
        ],
    );
}

#[test]
fn struts() {
    check(
        text_of(STRUT),
        &[
            case(
                "slide_direction: Some((-0.07, -0.14, 1.0))",
                "slide_direction: Some(§(0.0, 0.0, 0.0))",
                "this direction has no length; give a vector such as (1.0, 0.0, 0.0)",
            ),
            case(
                "slide_direction: Some((-0.07, -0.14, 1.0))",
                "slide_direction: Some(§(0.0, 1.0, 0.0))",
                "the strut's slide line leans 78 degrees from the steering axis; \
                 give a direction at most 45 degrees from it",
            ),
            case(
                "slide_direction: Some((-0.07, -0.14, 1.0))",
                "slide_direction: §(-0.07, -0.14, 1.0)",
                "this cannot be read; write `Some(...)` around the value, or `None`",
            ),
            case(
                "lower_hinge_rear: (-240.0, 345.0, 62.0)",
                "lower_hinge_rear: §(40.0, 335.0, 70.0)",
                "the rear hinge point of the lower arm coincides with the front one; \
                 place them at least 0.001 mm apart",
            ),
        ],
    );
    // Which way along the line the direction points does not matter.
    let down = text_of(STRUT).replacen("Some((-0.07, -0.14, 1.0))", "Some((0.07, 0.14, -1.0))", 1);
    assert!(read_text(&down).is_ok());
}

#[test]
fn twin_cranks() {
    check(
        text_of(TOURING_CAR),
        &[
            case(
                "crank_left: (axis_point: (-27.0, 27.0, 14.0), axis_direction: (0.0, 0.0, 1.0))",
                "crank_left: (axis_point: (-27.0, 27.0, 14.0), axis_direction: §(0.0, 0.0, 0.0))",
                "this direction has no length; give a vector such as (1.0, 0.0, 0.0)",
            ),
            case(
                "cross_right: (-15.0, -27.0, 14.5)",
                "cross_right: §(-27.0, -27.0, 14.5)",
                "this ball of the cross link lies on the axis of the crank that carries it; \
                 place them at least 0.001 mm apart",
            ),
            case(
                "rod_inner_left: (-13.0, 26.5, 18.6)",
                "rod_inner_left: §(-27.0, 27.0, 18.6)",
                "this inner tie-rod ball lies on the axis of the crank that carries it; \
                 place them at least 0.001 mm apart",
            ),
            case(
                "drag_servo: (-39.0, -24.0, 24.5)",
                "drag_servo: §(-30.0, -24.0, 12.5)",
                "this ball of the drag link lies on the axis of the servo arm; \
                 place them at least 0.001 mm apart",
            ),
            case(
                "drag_crank: (-39.0, 27.0, 22.0)",
                "drag_crank: §(-27.0, 27.0, 22.0)",
                "this ball of the drag link lies on the axis of the crank that carries it; \
                 place them at least 0.001 mm apart",
            ),
            case(
                "drag_crank: (-39.0, 27.0, 22.0)",
                "drag_crank: §(-39.0, -24.0, 24.5)",
                "the two balls of the drag link coincide; place them at least 0.001 mm apart",
            ),
            // The crank's lever points straight at the servo arm's ball.
            case(
                "drag_crank: (-39.0, 27.0, 22.0)",
                "drag_crank: §(-30.0, 14.25, 22.0)",
                "the drag link points straight at the axis of the driven crank and cannot turn it; \
                 place its balls so that the link passes beside that axis",
            ),
            case(
                "cross_right: (-15.0, -27.0, 14.5)",
                "cross_right: §(-24.0, -13.5, 14.5)",
                "the cross link points straight at the axis of the crank that it should turn; \
                 place its balls so that the link passes beside that axis",
            ),
            case(
                "driven: Left,",
                "driven: Left,\n            drag_length: Some(§-5.0),",
                "-5 mm is not a sensible value here; give 0.001 to 10000 mm",
            ),
            case(
                "driven: Left",
                "driven: §Middle",
                "there is no `Middle` here; write one of `Left`, `Right`",
            ),
            case(
                "            driven: Left,\n        ),",
                "        §),",
                "the field `driven` is missing here; add `driven: Left`",
            ),
        ],
    );
    check(
        text_of(BUGGY),
        &[case(
            "rod_inner_right: (-21.0, -26.0, 21.8)",
            "rod_inner_right: §(-21.0, -26.0, 23.3)",
            "this inner tie-rod ball lies 1.5 mm beside the cross link that carries it; \
                 place it on the straight line between the cross link's two balls, about which the link may spin",
        )],
    );
}

#[test]
fn racks_and_fixed_kingpins() {
    check(
        text_of(FORMULA_CAR),
        &[
            case(
                "direction: (0.0, -1.0, 0.0)",
                "direction: §(0.0, 0.0, 0.0)",
                "this direction has no length; give a vector such as (1.0, 0.0, 0.0)",
            ),
            case(
                "rod_inner_left: (-70.0, 210.0, 147.0)",
                "rod_inner_left: §(-76.0, 546.0, 150.0)",
                "this inner tie-rod ball coincides with the outer ball; place them at least 0.001 mm apart",
            ),
            // The lower kingpin point is a point of the steering axis.
            case(
                "rod_inner_left: (-70.0, 210.0, 147.0)",
                "rod_inner_left: §(8.5, 560.5, 100.0)",
                "the tie rod points straight at the steering axis and cannot turn the wheel; \
                 place this ball beside the line from the steering axis to the outer ball",
            ),
            case(
                "rod_inner_right: (-70.0, -210.0, 147.0)",
                "rod_inner_right: §(8.5, -560.5, 100.0)",
                "the tie rod points straight at the steering axis and cannot turn the wheel; \
                 place this ball beside the line from the steering axis to the outer ball",
            ),
            case(
                "wheelbase: 1560.0",
                "servo: §Some((case: (size: (1.0, 1.0, 1.0), centre: (0.0, 0.0, 0.0)))),\n        wheelbase: 1560.0",
                "a rack has no servo arm that the servo's case could go with; leave `servo` out",
            ),
            case(
                "input: (-36.0, 36.0)",
                "input: (-36.0, §20000.0)",
                "20000 mm is not a sensible value here; give -10000 to 10000 mm",
            ),
        ],
    );
    check(
        text_of(KART),
        &[
            case(
                "travel: (0.0, 0.0)",
                "travel: §(-1.0, 0.0)",
                "a wheel on a fixed kingpin has no travel; give (0.0, 0.0)",
            ),
            case(
                "input: (-36.0, 36.0)",
                "input: (-36.0, §360.0)",
                "360 degrees is not a sensible value here; give -180 to 180 degrees",
            ),
        ],
    );
}

#[test]
fn effects_on_what_the_car_lacks() {
    check(
        text_of(FORMULA_CAR),
        &[
            case(
                "points: [rod_inner], by: (0.0, 0.0, 1.0), sides: Together",
                "points: [rod_inner, §drive_axis], by: (0.0, 0.0, 1.0), sides: Together",
                "this car's drive has no steering drive axis; name a point that the drive has",
            ),
            case(
                "points: [rod_inner], by: (0.0, 0.0, 1.0), sides: Together",
                "points: [§cross_ball], by: (0.0, 0.0, 1.0), sides: Together",
                "this car's drive has no cross-link ball; name a point that the drive has",
            ),
            case(
                "Lengthen(member: upper_arm, by: 1.0)",
                "Lengthen(member: §drag_link, by: 1.0)",
                "this car's drive has no drag link; name a member that the drive has",
            ),
            case(
                "points: [kingpin_upper, wheel_centre, steering_arm, spin_axis],",
                "points: [kingpin_upper, wheel_centre, steering_arm, spin_axis, §slide_direction],",
                "this car's suspension has no direction of the strut's slide line; \
                 name a point that the suspension has",
            ),
        ],
    );
    check(
        text_of(KART),
        &[
            case(
                "points: [rod_inner], by: (5.66, 0.0, 5.66)",
                "points: [§lower_hinge_front], by: (5.66, 0.0, 5.66)",
                "this car's suspension has no front hinge point of the lower arm; \
                 name a point that the suspension has",
            ),
            case(
                "Move(points: [rod_inner], by: (5.66, 0.0, 5.66))",
                "Lengthen(member: §lower_arm, by: 1.0)",
                "this car's suspension has no lower arm; name a member that the suspension has",
            ),
        ],
    );
    check(
        &text_of(STRUT).replacen("slide_direction: Some((-0.07, -0.14, 1.0)),", "", 1),
        &[case(
            "points: [kingpin_upper, wheel_centre, steering_arm, spin_axis, slide_direction],",
            "points: [kingpin_upper, wheel_centre, steering_arm, spin_axis, §slide_direction],",
            "this car's struts slide along the steering axis and turn with it; \
             give the strut a `slide_direction` of its own, or leave this name out",
        )],
    );
}

#[test]
fn effects_on_what_both_sides_share() {
    check(
        text_of(TOURING_CAR),
        &[
            case(
                "Lengthen(member: drag_link, by: 1.0)",
                "§Lengthen(member: drag_link, by: 1.0, sides: Left)",
                "the drag link belongs to both sides; leave `sides` out",
            ),
            case(
                "Move(points: [drag_servo], by: (0.0, 0.0, -1.5), sides: Together)",
                "§Move(points: [drag_servo], by: (0.0, 1.0, -1.5))",
                "the drag-link ball on the servo arm belongs to both sides and cannot go two ways; \
                 write `sides: Together`",
            ),
            case(
                "Move(points: [drag_servo], by: (0.0, 0.0, -1.5), sides: Together)",
                "§Turn(points: [drag_crank], through: crank_axis, about: (0.0, 1.0, 0.0), degrees: 5.0)",
                "the drag-link ball on the crank belongs to both sides and cannot go two ways; \
                 write `sides: Together`",
            ),
            case(
                "Move(points: [drag_servo], by: (0.0, 0.0, -1.5), sides: Together)",
                "Move(points: [§crank_direction], by: (0.0, 0.0, -1.5), sides: Together)",
                "the direction of the crank axis is a direction and cannot be moved; directions can only be turned",
            ),
        ],
    );
}

#[test]
fn adjustments_that_take_an_inner_ball_off_the_cross_link() {
    check(
        text_of(BUGGY),
        &[
            case(
                "kind: Stack(
                    parts: [(thickness: 0.5, count: 2), (thickness: 1.0, count: 1)],
                    stock: Some((name: \"M3 washers\", places: 2)),
                    most: 2.0,
                    base: 1.0,
                    effects: [Move(points: [cross_ball, rod_inner], by: (0.0, 0.0, 1.0))]",
                "kind: §Stack(
                    parts: [(thickness: 0.5, count: 2), (thickness: 1.0, count: 1)],
                    stock: Some((name: \"M3 washers\", places: 2)),
                    most: 2.0,
                    base: 1.0,
                    effects: [Move(points: [rod_inner], by: (0.0, 0.0, 1.0))]",
                "this takes an inner tie-rod ball 1 mm beside the cross link that carries it; \
                 move `rod_inner` along the link only, or `cross_ball` with it",
            ),
            case(
                "(
                            name: \"outer holes\",
                            effects: [Move(points: [rod_inner], by: (0.0, 2.0, 0.0))]",
                "§(
                            name: \"outer holes\",
                            effects: [Move(points: [rod_inner], by: (0.75, 2.0, 0.0))]",
                "this takes an inner tie-rod ball 0.75 mm beside the cross link that carries it; \
                 move `rod_inner` along the link only, or `cross_ball` with it",
            ),
        ],
    );
}
