//! The construction of a turn, held against the geometry of the ideal pair.

#![allow(clippy::unwrap_used)]

use steerloft_setup::layout::layout;
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::SUPPLIED;
use steerloft_sheet::{
    Drawing, Outline, Role, View, front_end, stack_stands, turn_lines, wheel_outlines,
};
use steerloft_solver::assembly::Assembly;
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::pose::AxlePose;

fn assembled(setup: &Setup) -> Assembly {
    Assembly::new(&layout(setup).axle).unwrap()
}

fn steered(setup: &Setup, assembly: &Assembly) -> AxlePose {
    let most = setup.car.ranges.input.1 * 0.8;
    let input = match setup.car.drive.input_unit() {
        steerloft_setup::adjustment::Unit::Degrees => most.to_radians(),
        steerloft_setup::adjustment::Unit::Millimetres => most,
    };
    assembly.pose(input, Sides::both(0.0)).unwrap()
}

fn lines(drawing: &Drawing, role: Role, side: Option<Side>) -> Vec<[[f64; 2]; 2]> {
    let shapes = drawing.shapes.iter();
    shapes
        .filter(|shape| shape.role == role && shape.side == side)
        .filter_map(|shape| match shape.outline {
            Outline::Line(ends) => Some(ends),
            _ => None,
        })
        .collect()
}

fn same(a: [f64; 2], b: [f64; 2]) -> bool {
    (a[0] - b[0]).hypot(a[1] - b[1]) < 1e-9
}

/// Cotangent of the steer angle of a wheel whose axis is this line: way back over way across.
fn cotangent([from, to]: [[f64; 2]; 2]) -> f64 {
    (to[0] - from[0]).abs() / (from[1] - to[1])
}

#[test]
fn wheel_axes_end_on_the_rear_axle_and_the_ideal_one_at_the_inner_wheel_s_turn_centre() {
    for car in SUPPLIED {
        let setup = car.setup();
        let assembly = assembled(&setup);
        let pose = steered(&setup, &assembly);
        let drawing = turn_lines(&assembly, &pose, View::Top);
        let [rear] = lines(&drawing, Role::RearAxle, None)[..] else {
            panic!("{}: one rear axle", car.title)
        };
        let [ideal] = lines(&drawing, Role::IdealAxis, None)[..] else {
            panic!("{}: one ideal axis", car.title)
        };
        let axes = Side::BOTH.map(|side| lines(&drawing, Role::WheelAxis, Some(side))[0]);
        for axis in axes {
            assert!((axis[1][1] - rear[0][1]).abs() < 1e-9, "{}", car.title);
        }
        assert!(
            axes.iter().any(|axis| same(axis[1], ideal[1])),
            "{}: it meets the inner wheel's",
            car.title
        );
        let inner = *axes.iter().find(|axis| same(axis[1], ideal[1])).unwrap();
        let outer = *axes.iter().find(|axis| !same(axis[1], ideal[1])).unwrap();
        assert!(
            same(outer[0], ideal[0]),
            "{}: from the outer wheel",
            car.title
        );
        // The ideal pair (ISO 8855:2011, 7.1.9): cot(outer) - cot(inner) = B / L, here between the places where the
        // wheels stand; exact where both stand equally far in front of the rear axle.
        let back = inner[0][1] - rear[0][1];
        let across = (inner[0][0] - outer[0][0]).abs();
        let level = (inner[0][1] - outer[0][1]).abs() / back;
        let difference = cotangent(ideal) - cotangent(inner);
        let slack = 2.0 * level * cotangent(ideal) + 1e-9;
        assert!(
            (difference - across / back).abs() < slack,
            "{}: {difference} {}",
            car.title,
            across / back
        );
    }
}

#[test]
fn a_wheel_s_axis_is_square_to_its_heading() {
    for car in SUPPLIED {
        let setup = car.setup();
        let assembly = assembled(&setup);
        let pose = steered(&setup, &assembly);
        let drawing = turn_lines(&assembly, &pose, View::Top);
        let road = assembly.axle().road;
        if road.pitch.abs() + road.roll.abs() > 0.0 {
            continue;
        }
        for side in Side::BOTH {
            let [from, to] = lines(&drawing, Role::WheelAxis, Some(side))[0];
            let spin = View::Top.project_vector(&pose.corners.get(side).spin_axis);
            let along = [to[0] - from[0], to[1] - from[1]];
            let off = (spin[0] * along[1] - spin[1] * along[0]) / along[0].hypot(along[1]);
            assert!(off.abs() < 1e-9, "{}: {off}", car.title);
        }
    }
}

#[test]
fn ground_points_lie_on_the_drawn_steering_axes() {
    for car in SUPPLIED {
        let setup = car.setup();
        let assembly = assembled(&setup);
        let pose = *assembly.static_pose();
        for view in [View::Front, View::Side] {
            let marks = turn_lines(&assembly, &pose, view);
            let car_drawing = front_end(&layout(&setup), &pose, view);
            let side = Side::Left;
            let [from, to] = lines(&car_drawing, Role::KingpinAxis, Some(side))[0];
            let centre = marks.shapes.iter().find_map(|shape| match shape.outline {
                Outline::Circle { centre, .. } if shape.side == Some(side) => Some(centre),
                _ => None,
            });
            let [u, v] = centre.unwrap();
            let along = [to[0] - from[0], to[1] - from[1]];
            let off = (u - from[0]) * along[1] - (v - from[1]) * along[0];
            let off = off / along[0].hypot(along[1]);
            assert!(off.abs() < 1e-9, "{} {view:?}: {off}", car.title);
        }
    }
}

#[test]
fn straight_ahead_there_is_no_ideal_axis_and_nothing_is_infinite() {
    for car in SUPPLIED {
        let setup = car.setup();
        let assembly = assembled(&setup);
        for view in View::ALL {
            let drawing = turn_lines(&assembly, assembly.static_pose(), view);
            assert!(drawing.shapes.iter().all(|shape| shape.outline.is_finite()));
            assert!(lines(&drawing, Role::IdealAxis, None).is_empty());
        }
    }
}

#[test]
fn wheels_at_full_bump_stand_higher_by_their_travel() {
    for car in SUPPLIED {
        let setup = car.setup();
        let assembly = assembled(&setup);
        if !assembly.has_travel() {
            continue;
        }
        let travel = setup.car.ranges.travel.1;
        let bump = assembly.pose(0.0, Sides::both(travel)).unwrap();
        let middle = |pose: &AxlePose| {
            let drawing = wheel_outlines(pose, View::Side);
            let bounds = drawing.bounds().unwrap();
            f64::midpoint(bounds.min[1], bounds.max[1])
        };
        let risen = middle(&bump) - middle(assembly.static_pose());
        assert!((risen - travel).abs() < 1e-6, "{}: {risen}", car.title);
    }
}

#[test]
fn stacks_stand_where_their_spacers_are_drawn() {
    for car in SUPPLIED {
        let setup = car.setup();
        let laid_out = layout(&setup);
        let pose = steered(&setup, &assembled(&setup));
        let drawing = front_end(&laid_out, &pose, View::Front);
        let spacers: Vec<_> = drawing
            .shapes
            .iter()
            .filter(|shape| shape.role == Role::Spacer)
            .filter_map(|shape| shape.outline.bounds())
            .collect();
        for stand in stack_stands(&laid_out, &pose) {
            if (stand.top - stand.foot).norm() < 1e-9 {
                continue;
            }
            let middle = View::Front.project(&(stand.foot + (stand.top - stand.foot) * 0.5));
            let inside = spacers.iter().any(|bounds| {
                (0..2).all(|axis| {
                    (bounds.min[axis] - 1e-6..=bounds.max[axis] + 1e-6).contains(&middle[axis])
                })
            });
            assert!(inside, "{}: {stand:?}", car.title);
        }
    }
}
