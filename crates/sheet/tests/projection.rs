//! Projections against independent reasoning: signs of the views, wheels as rectangles and ellipses, balls and
//! spacers where the pose puts them, road and centre lines.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cars;

use std::f64::consts::TAU;

use steerloft_setup::supplied::SUPPLIED;
use steerloft_sheet::{Bounds, Drawing, Outline, Role, View, front_end};
use steerloft_solver::drive::Drive;
use steerloft_solver::pose::DrivePose;
use steerloft_solver::{Point, Side, Vector};

const TOLERANCE: f64 = 1e-9;

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= TOLERANCE * (1.0 + a.abs().max(b.abs()))
}

fn outlines(drawing: &Drawing, role: Role, side: Option<Side>) -> Vec<&Outline> {
    drawing
        .shapes
        .iter()
        .filter(|shape| shape.role == role && shape.side == side)
        .map(|shape| &shape.outline)
        .collect()
}

fn polygon(outline: &Outline) -> &[[f64; 2]] {
    match outline {
        Outline::Polygon(points) => points,
        other => panic!("{other:?} is no polygon"),
    }
}

fn line(outline: &Outline) -> [[f64; 2]; 2] {
    match outline {
        Outline::Line(ends) => *ends,
        other => panic!("{other:?} is no line"),
    }
}

fn area(points: &[[f64; 2]]) -> f64 {
    let next = points.iter().cycle().skip(1);
    points
        .iter()
        .zip(next)
        .map(|(a, b)| a[0] * b[1] - a[1] * b[0])
        .sum::<f64>()
        / 2.0
}

/// How far the polygon reaches along a direction from a centre.
fn reach(points: &[[f64; 2]], centre: [f64; 2], direction: [f64; 2]) -> f64 {
    points
        .iter()
        .map(|point| (point[0] - centre[0]) * direction[0] + (point[1] - centre[1]) * direction[1])
        .fold(f64::NEG_INFINITY, f64::max)
}

#[test]
fn each_view_is_seen_from_where_its_title_says() {
    for view in View::ALL {
        // Right, up and towards the eye make a right-handed frame, whatever the view.
        let [right, up] = [view.lift([1.0, 0.0]), view.lift([0.0, 1.0])];
        assert_eq!(right.cross(&up), view.towards_eye());
        check_point(view.project_vector(&view.lift([3.0, -5.0])), [3.0, -5.0]);
    }
    let left_front_high = Point::new(100.0, 50.0, 20.0);
    check_point(View::Top.project(&left_front_high), [-50.0, 100.0]);
    check_point(View::Front.project(&left_front_high), [-50.0, 20.0]);
    check_point(View::Side.project(&left_front_high), [-100.0, 20.0]);
}

fn check_point(point: [f64; 2], expected: [f64; 2]) {
    assert!(
        close(point[0], expected[0]) && close(point[1], expected[1]),
        "{point:?}"
    );
}

#[test]
fn an_upright_wheel_straight_ahead_is_a_rectangle_from_above_and_a_circle_from_the_side() {
    let car = cars::posed(cars::kart(), 0.0, 0.0);
    let corner = &car.pose.corners.left;
    let (radius, width) = (corner.tyre_radius, corner.tyre_width);
    let extent = |view: View| {
        let drawing = front_end(&car.layout, &car.pose, view);
        let tyre = outlines(&drawing, Role::Tyre, Some(Side::Left))[0].clone();
        (tyre.bounds().unwrap(), area(polygon(&tyre)))
    };
    let (top, top_area) = extent(View::Top);
    assert!(close(top.width(), width) && close(top.height(), 2.0 * radius));
    // The shoulders are rounded: the corners lack a little of the full rectangle.
    assert!((0.985..1.0).contains(&(top_area / (width * 2.0 * radius))));
    let (front, _) = extent(View::Front);
    assert!(close(front.width(), width) && close(front.height(), 2.0 * radius));
    let (side, side_area) = extent(View::Side);
    assert!(close(side.width(), 2.0 * radius) && close(side.height(), 2.0 * radius));
    assert!((0.998..1.0).contains(&(side_area / (TAU / 2.0 * radius * radius))));
    let centre = View::Top.project(&corner.wheel_centre);
    assert!(close(f64::midpoint(top.min[0], top.max[0]), centre[0]));
    assert!(centre[0] < 0.0, "the left wheel is drawn at the left");
}

/// Points of a circle fixed in the wheel, straight ahead about the y axis, carried along by the knuckle.
fn carried_circle(car: &cars::Posed, side: Side, radius: f64, offset: f64) -> Vec<Point> {
    let drawn = &car.layout.axle.corners.get(side).knuckle;
    let corner = car.pose.corners.get(side);
    let outward = drawn.spin_axis.normalize();
    let across = outward.cross(&Vector::x()).normalize();
    (0..720)
        .map(|step| {
            let (sin, cos) = (TAU * f64::from(step) / 720.0).sin_cos();
            let place =
                drawn.wheel_centre + outward * offset + (Vector::x() * cos + across * sin) * radius;
            corner.knuckle * place
        })
        .collect()
}

#[test]
fn a_steered_tyre_holds_every_carried_point_of_it_and_no_more() {
    for (setup, input, travel) in [
        (cars::pan_car(), 20.0, 0.0),
        (cars::pan_car(), -25.0, 1.5),
        (cars::kart(), 25.0, 0.0),
    ] {
        let car = cars::posed(setup, input, travel);
        for view in View::ALL {
            let drawing = front_end(&car.layout, &car.pose, view);
            for side in Side::BOTH {
                let corner = car.pose.corners.get(side);
                let tyre = polygon(outlines(&drawing, Role::Tyre, Some(side))[0]);
                let centre = view.project(&corner.wheel_centre);
                let half = corner.tyre_width / 2.0;
                let rims: Vec<[f64; 2]> = [-half, half]
                    .into_iter()
                    .flat_map(|offset| carried_circle(&car, side, corner.tyre_radius, offset))
                    .map(|point| view.project(&point))
                    .collect();
                for step in 0..36 {
                    let (sin, cos) = (TAU * f64::from(step) / 36.0).sin_cos();
                    let sharp = reach(&rims, centre, [cos, sin]);
                    let drawn = reach(tyre, centre, [cos, sin]);
                    // Rounding a square edge by r takes off (sqrt 2 - 1) r across the corner; the shoulders' radius
                    // is 0.16 of half the width, and they are drawn with a few facets.
                    let rounding = 0.16 * half;
                    assert!(drawn <= sharp + 1e-6, "{view:?} {side} {step}");
                    assert!(drawn >= sharp - 0.46 * rounding, "{view:?} {side} {step}");
                }
            }
        }
    }
}

#[test]
fn the_face_of_a_steered_wheel_is_an_ellipse_as_wide_as_the_sine_of_its_steer() {
    let car = cars::posed(cars::kart(), 25.0, 0.0);
    let drawing = front_end(&car.layout, &car.pose, View::Front);
    for side in Side::BOTH {
        let corner = car.pose.corners.get(side);
        // Seen along x, the share of the spin axis along x is the sine of the steer angle against the chassis.
        let carried = corner.knuckle.rotation * car.layout.axle.corners.get(side).knuckle.spin_axis;
        let sine = (carried.x / carried.norm()).abs();
        assert!(sine > 0.1, "the wheel is steered");
        let face = polygon(outlines(&drawing, Role::Tyre, Some(side))[1]);
        let centre = {
            let bounds = Bounds::of(face).unwrap();
            [
                f64::midpoint(bounds.min[0], bounds.max[0]),
                f64::midpoint(bounds.min[1], bounds.max[1]),
            ]
        };
        let slant = View::Front.project_vector(&corner.spin_axis);
        let length = slant[0].hypot(slant[1]);
        let along = [slant[0] / length, slant[1] / length];
        let minor = reach(face, centre, along);
        let major = reach(face, centre, [-along[1], along[0]]);
        assert!(
            close(minor / major, sine),
            "{side}: {} for {sine}",
            minor / major
        );
        assert!((0.85..1.0).contains(&(major / corner.tyre_radius)));
    }
}

#[test]
fn balls_stand_at_the_projected_joints_in_every_view() {
    let car = cars::posed(cars::pan_car(), 18.0, 1.0);
    for view in View::ALL {
        let drawing = front_end(&car.layout, &car.pose, view);
        for side in Side::BOTH {
            let corner = car.pose.corners.get(side);
            let centres: Vec<[f64; 2]> = outlines(&drawing, Role::Pivot, Some(side))
                .into_iter()
                .map(|outline| match outline {
                    Outline::Circle { centre, .. } => *centre,
                    other => panic!("{other:?} is no circle"),
                })
                .collect();
            for joint in [
                corner.rod_inner,
                corner.steering_arm,
                corner.kingpin_lower,
                corner.kingpin_upper,
            ] {
                assert!(centres.contains(&view.project(&joint)), "{view:?} {side}");
            }
        }
    }
}

#[test]
fn spacers_are_as_thick_as_chosen_and_lie_between_ball_and_arm() {
    let car = cars::posed(cars::pan_car(), 0.0, 0.0);
    let front = front_end(&car.layout, &car.pose, View::Front);
    let stacked = car
        .layout
        .stacks
        .iter()
        .filter(|stack| stack.side == Side::Right);
    let chosen: Vec<f64> = stacked.flat_map(|stack| stack.spacers.clone()).collect();
    let slices = outlines(&front, Role::Spacer, Some(Side::Right));
    assert_eq!(slices.len(), chosen.len());
    let outer: Vec<Bounds> = slices
        .iter()
        .filter_map(|slice| slice.bounds())
        .filter(|bounds| bounds.min[0] > 25.0)
        .collect();
    assert_eq!(outer.len(), 2, "3 mm are made up of 2 and 1");
    let ball = View::Front.project(&car.pose.corners.right.steering_arm);
    let arm = outlines(&front, Role::SteeringArm, Some(Side::Right))[0]
        .bounds()
        .unwrap();
    let stack = outer.iter().copied().reduce(Bounds::union).unwrap();
    // Upright within the knuckle's turn to its toe: the height is the thickness within its cosine.
    assert!((stack.height() - 3.0).abs() < 0.05, "{}", stack.height());
    let radius = outlines(&front, Role::Ball, Some(Side::Right))[0]
        .bounds()
        .unwrap()
        .width()
        / 2.0;
    assert!(
        stack.max[1] < ball[1] - radius,
        "the stack begins under the ball"
    );
    assert!(
        (arm.min[1]..arm.max[1]).contains(&stack.min[1]),
        "the lowest spacer lies on the arm"
    );
}

#[test]
fn packing_lies_under_the_servo_by_its_thickness() {
    let car = cars::posed(cars::pan_car(), 0.0, 0.0);
    let front = front_end(&car.layout, &car.pose, View::Front);
    let servo = outlines(&front, Role::Servo, None)[0].bounds().unwrap();
    let packing = outlines(&front, Role::Spacer, None)[0].bounds().unwrap();
    assert!(close(servo.width(), 40.0) && close(servo.height(), 20.0));
    assert!(close(packing.height(), 1.0) && close(packing.max[1], servo.min[1]));
}

#[test]
fn a_symmetrical_car_straight_ahead_is_drawn_symmetrically() {
    let car = cars::posed(cars::kart(), 0.0, 0.0);
    for view in [View::Top, View::Front] {
        let drawing = front_end(&car.layout, &car.pose, view);
        for role in [
            Role::Tyre,
            Role::Rod,
            Role::SteeringArm,
            Role::Knuckle,
            Role::Kingpin,
            Role::Cup,
        ] {
            let side = |side| {
                let shapes = outlines(&drawing, role, Some(side));
                shapes
                    .iter()
                    .filter_map(|shape| shape.bounds())
                    .reduce(Bounds::union)
                    .unwrap()
            };
            let (left, right) = (side(Side::Left), side(Side::Right));
            assert!(
                (left.min[0] + right.max[0]).abs() < 1e-6,
                "{view:?} {role:?}"
            );
            assert!(
                (left.max[0] + right.min[0]).abs() < 1e-6,
                "{view:?} {role:?}"
            );
            assert!(
                (left.min[1] - right.min[1]).abs() < 1e-6,
                "{view:?} {role:?}"
            );
        }
    }
}

#[test]
fn the_road_touches_the_tyres_and_tilts_as_the_chassis_does_not() {
    let mut setup = cars::kart();
    let level = cars::posed(setup.clone(), 0.0, 0.0);
    let drawing = front_end(&level.layout, &level.pose, View::Front);
    let [from, to] = line(outlines(&drawing, Role::Road, None)[0]);
    let tyre = outlines(&drawing, Role::Tyre, Some(Side::Left))[0]
        .bounds()
        .unwrap();
    assert!(close(from[1], -32.0) && close(to[1], -32.0) && close(tyre.min[1], -32.0));
    assert!(from[0] < tyre.min[0], "the road goes on beyond the tyre");

    setup.car.roll = 3.0;
    setup.car.pitch = 2.0;
    let tilted = cars::posed(setup, 0.0, 0.0);
    let slope = |view: View| {
        let drawing = front_end(&tilted.layout, &tilted.pose, view);
        let [from, to] = line(outlines(&drawing, Role::Road, None)[0]);
        (to[1] - from[1]) / (to[0] - from[0])
    };
    // Right side down: seen from the chassis, the road rises to the right by the roll angle.
    assert!(close(slope(View::Front), 3.0_f64.to_radians().tan()));
    // Nose down: seen from the chassis, the road rises towards the front, which is at the left.
    let rise = 2.0_f64.to_radians().tan() / 3.0_f64.to_radians().cos();
    assert!(close(slope(View::Side), -rise));
}

#[test]
fn the_steering_axis_is_drawn_down_to_the_road() {
    let car = cars::posed(cars::kart(), 0.0, 0.0);
    let drawing = front_end(&car.layout, &car.pose, View::Front);
    let [ground, top] = line(outlines(&drawing, Role::KingpinAxis, Some(Side::Left))[0]);
    // From (y, z) = (497, 50) to (480, 145): 17 outboard on 95 down, and 82 more down to the road at -32.
    assert!(close(ground[1], -32.0));
    assert!(close(ground[0], -(497.0 + 82.0 * 17.0 / 95.0)));
    assert!(top[1] > 145.0);
}

#[test]
fn every_shape_is_finite_and_every_polygon_is_convex() {
    let supplied = SUPPLIED.iter().map(|car| {
        let setup = car.setup();
        let travels = setup.car.ranges.travel != (0.0, 0.0);
        (setup, travels)
    });
    let setups = supplied.chain([(cars::pan_car(), true), (cars::kart(), false)]);
    for (setup, travels) in setups {
        for input in [-20.0, -5.0, 0.0, 12.0, 20.0] {
            for travel in if travels {
                vec![-1.0, 0.0, 2.0]
            } else {
                vec![0.0]
            } {
                let car = cars::posed(setup.clone(), input, travel);
                for view in View::ALL {
                    check_shapes(&front_end(&car.layout, &car.pose, view));
                }
            }
        }
    }
}

#[test]
fn every_kind_of_suspension_and_drive_is_drawn() {
    for (layout, inputs) in [
        (cars::touring_car(), [-0.25, 0.0, 0.25]),
        (cars::rack_car(), [-40.0, 0.0, 40.0]),
    ] {
        for input in inputs {
            for travel in [-2.0, 0.0, 2.0] {
                let pose = cars::pose(&layout, input, travel);
                for view in View::ALL {
                    let drawing = front_end(&layout, &pose, view);
                    check_shapes(&drawing);
                    check_drive(&drawing, &layout.axle.drive, &pose.drive, view);
                }
            }
        }
    }
}

/// Every lever's and link's end has a ball or lies on a part of the drive.
fn check_drive(drawing: &Drawing, drive: &Drive, pose: &DrivePose, view: View) {
    let parts = drawing
        .shapes
        .iter()
        .filter(|shape| matches!(shape.role, Role::DriveArm | Role::Cup));
    let bounds: Vec<Bounds> = parts.filter_map(|shape| shape.outline.bounds()).collect();
    let link_ends = drive.links(pose).flat_map(|link| [link.from, link.to]);
    let joints: Vec<Point> = drive
        .levers(pose)
        .flat_map(|lever| lever.balls())
        .chain(link_ends)
        .collect();
    assert!(joints.len() > 1);
    for joint in joints {
        let [u, v] = view.project(&joint);
        let holds = |bounds: &Bounds| {
            (bounds.min[0]..=bounds.max[0]).contains(&u)
                && (bounds.min[1]..=bounds.max[1]).contains(&v)
        };
        assert!(bounds.iter().any(holds), "{view:?} {joint}");
    }
}

fn check_shapes(drawing: &Drawing) {
    assert!(drawing.shapes.len() > 40);
    let whole = drawing.bounds().unwrap();
    assert!(whole.width() > 0.0 && whole.width() < 3000.0);
    for shape in &drawing.shapes {
        let bounds = shape.outline.bounds().unwrap();
        assert!(
            [bounds.min, bounds.max]
                .iter()
                .flatten()
                .all(|number| number.is_finite()),
            "{shape:?}"
        );
        assert_eq!(whole.union(bounds), whole, "the bounds hold every shape");
        if let Outline::Polygon(points) = &shape.outline {
            assert!(points.len() > 2, "{shape:?}");
            let turns = (0..points.len()).map(|index| {
                let [a, b, c] = [0, 1, 2].map(|ahead| points[(index + ahead) % points.len()]);
                (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
            });
            assert!(turns.into_iter().all(|turn| turn > -1e-9), "{shape:?}");
        }
    }
}

#[test]
fn parts_scale_with_the_car() {
    let ball = |setup| {
        let car = cars::posed(setup, 0.0, 0.0);
        let drawing = front_end(&car.layout, &car.pose, View::Top);
        let ball = outlines(&drawing, Role::Ball, Some(Side::Left))[0]
            .bounds()
            .unwrap();
        ball.width()
    };
    // Usual diameters of ball joints in mm (common practice, no source).
    assert!((4.0..5.5).contains(&ball(cars::pan_car())));
    assert!((12.0..17.0).contains(&ball(cars::kart())));
}
