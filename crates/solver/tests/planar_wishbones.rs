//! A planar double wishbone against the classical front-view constructions: instant centre, swing arm, roll
//! centre, camber gain, and the tie rod that does not steer in bump.
//!
//! The corner is drawn in one cross plane, hinges along x, so that every construction on paper applies. The values
//! are elementary geometry, recomputed with Python's `math` by two routes; the constructions are those of Milliken
//! and Milliken, Race Car Vehicle Dynamics, chapter 17 (from memory).
#![allow(clippy::unwrap_used)]

use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod, spin_axis_at_camber};
use steerloft_solver::drive::{Drive, Slider};
use steerloft_solver::error::{Member, SolveError};
use steerloft_solver::figures::contact::contact_centre;
use steerloft_solver::figures::instant_centre::{
    front_view_instant_centre, instant_axis, roll_centre, side_view_instant_centre,
};
use steerloft_solver::figures::load::holding_effort;
use steerloft_solver::figures::{corner_figures, roll_gradient, travel_gradient};
use steerloft_solver::frame::{Road, Side, mirrored_point};
use steerloft_solver::suspension::{Arm, Suspension};
use steerloft_solver::{Assembly, CornerPose, Point, Sides, Vector};

/// Road at the height zero of the drawing.
const ROAD: Road = Road {
    ride_height: 0.0,
    pitch: 0.0,
    roll: 0.0,
};

/// How closely the values on paper describe the wheel in space. They take the rod's sideways mismatch over the
/// steering arm for the toe; in space the ball swings about a kingpin leaned 11 degrees, against a rod that slopes
/// by up to 5 degrees in bump, which changes the mismatch by up to tan 11 tan 5 = 1.7 %.
const ON_PAPER: f64 = 0.017;

/// What the rod's place, given to four decimals, may add to the toe: degrees per mm of travel.
const ROUNDED_ROD: f64 = 1e-5;

/// A point of the front-view drawing, at the axle's station.
fn drawn(y: f64, z: f64) -> Point {
    Point::new(0.0, y, z)
}

fn arm(inner: Point, ball: Point) -> Arm {
    let along = Vector::new(100.0, 0.0, 0.0);
    Arm {
        hinge: [inner + along, inner - along],
        ball,
    }
}

struct Planar {
    lower: [Point; 2],
    upper: [Point; 2],
    rod: [Point; 2],
}

/// Lower arm (300,200)-(700,180), upper arm (350,400)-(650,440), half track 750, and a rod from the given inner
/// point to the point at 30 % of the kingpin from its lower ball, drawn 100 mm behind the axle.
fn reference_corner(rod_inner: Point) -> Planar {
    Planar {
        lower: [drawn(300.0, 200.0), drawn(700.0, 180.0)],
        upper: [drawn(350.0, 400.0), drawn(650.0, 440.0)],
        rod: [rod_inner, drawn(685.0, 258.0)],
    }
}

/// The left corner with the given steering arm; travel is counted at `hub`.
fn left_corner(corner: &Planar, steering_arm: f64, hub: Point) -> Corner {
    Corner {
        knuckle: Knuckle {
            wheel_centre: hub,
            spin_axis: spin_axis_at_camber(Side::Left, 0.0),
            kingpin_lower: corner.lower[1],
            kingpin_upper: corner.upper[1],
            steering_arm: corner.rod[1] + behind(steering_arm),
            tyre_radius: 300.0,
            tyre_width: 200.0,
        },
        suspension: Suspension::DoubleWishbone {
            lower: arm(corner.lower[0], corner.lower[1]),
            upper: arm(corner.upper[0], corner.upper[1]),
        },
    }
}

fn behind(steering_arm: f64) -> Vector {
    Vector::new(-steering_arm, 0.0, 0.0)
}

/// The axle with the given corners and inner ends of the rods, on a rack.
fn on_rack(corners: &Sides<Corner>, rod_inner: Sides<Point>) -> Assembly {
    Assembly::new(&FrontAxle {
        corners: *corners,
        drive: Drive::Slider(Slider {
            direction: Vector::y(),
            rod_inner,
        }),
        rods: Sides::both(Rod::HoldToe(0.0)),
        wheelbase: 2500.0,
        station: 0.0,
        road: ROAD,
    })
    .unwrap()
}

/// The axle with the given steering arm; travel is counted at `hub`.
fn assemble_at(corner: &Planar, steering_arm: f64, hub: Point) -> Assembly {
    let left = left_corner(corner, steering_arm, hub);
    let inner = corner.rod[0] + behind(steering_arm);
    on_rack(
        &Sides::new(left, left.mirrored()),
        Sides::new(inner, mirrored_point(&inner)),
    )
}

/// The axle with its hub at 300 mm over the road.
fn assemble(corner: &Planar, steering_arm: f64) -> Assembly {
    assemble_at(corner, steering_arm, drawn(750.0, 300.0))
}

/// The axle with travel counted at another point than the wheel centre, as on paper.
fn assemble_on_paper(rod_inner: Point, counted_at: Point) -> Assembly {
    assemble_at(&reference_corner(rod_inner), 100.0, counted_at)
}

/// Where the tables of camber count travel: the contact.
fn contact() -> Point {
    drawn(750.0, 0.0)
}

/// Where the tables of the tie rod count travel: the lower ball.
fn lower_ball() -> Point {
    drawn(700.0, 180.0)
}

/// Inner end of the rod of no second-order bump steer, by the Euler-Savary relation (Hartenberg and Denavit,
/// Kinematic Synthesis of Linkages, from memory; computed here).
fn second_order_inner() -> Point {
    drawn(321.383_5, 256.668_2)
}

fn toe_degrees(assembly: &Assembly, travel: f64) -> f64 {
    let pose = assembly.pose(0.0, Sides::both(travel)).unwrap();
    corner_figures(&pose.corners.left, &ROAD).toe.to_degrees()
}

fn camber_degrees(assembly: &Assembly, travel: f64) -> f64 {
    let pose = assembly.pose(0.0, Sides::both(travel)).unwrap();
    corner_figures(&pose.corners.left, &ROAD)
        .camber
        .to_degrees()
}

#[test]
fn instant_centre_where_the_arm_lines_meet() {
    let assembly = assemble(&reference_corner(second_order_inner()), 100.0);
    let centre = front_view_instant_centre(&assembly.static_pose().corners.left, &ROAD).unwrap();
    // (-8300/11, 2780/11) in the drawing. The rod is placed to four decimals and turns the wheel by as much.
    assert!((centre.y + 8300.0 / 11.0).abs() < 1e-2, "{centre}");
    assert!((centre.z - 2780.0 / 11.0).abs() < 1e-2, "{centre}");
    // In a planar linkage it is where the axis of the knuckle's screw, which does not slide, goes through the drawing.
    let axis = instant_axis(&assembly.static_pose().corners.left).unwrap();
    assert!(axis.direction.x.abs() > 1.0 - 1e-9, "{axis:?}");
    assert!((axis.point.yz() - centre.yz()).norm() < 1e-2, "{axis:?}");
    assert!(axis.pitch.abs() < 1e-2, "{axis:?}");
}

/// The same construction in the side view: trailing arms on hinges across the car meet 1000 mm behind the axle at 200 mm.
#[test]
fn side_view_instant_centre_where_the_arm_lines_meet() {
    let meet = Point::new(-1000.0, 700.0, 200.0);
    let trailing = |ball: Point| {
        let hinge = ball + (meet - ball) * 0.3;
        let across = Vector::new(0.0, 100.0, 0.0);
        Arm {
            hinge: [hinge + across, hinge - across],
            ball,
        }
    };
    let (lower, upper) = (drawn(700.0, 180.0), drawn(700.0, 440.0));
    let left = Corner {
        knuckle: Knuckle {
            wheel_centre: drawn(750.0, 300.0),
            spin_axis: spin_axis_at_camber(Side::Left, 0.0),
            kingpin_lower: lower,
            kingpin_upper: upper,
            steering_arm: Point::new(-100.0, 700.0, 260.0),
            tyre_radius: 300.0,
            tyre_width: 200.0,
        },
        suspension: Suspension::DoubleWishbone {
            lower: trailing(lower),
            upper: trailing(upper),
        },
    };
    // A rod across the car does not turn the wheel at first: its ball moves in the plane of the side view.
    let inner = Point::new(-100.0, 300.0, 260.0);
    let assembly = on_rack(
        &Sides::new(left, left.mirrored()),
        Sides::new(inner, mirrored_point(&inner)),
    );
    let corner = assembly.static_pose().corners.left;
    let centre = side_view_instant_centre(&corner, &ROAD).unwrap();
    assert!((centre.xz() - meet.xz()).norm() < 1e-8, "{centre}");
    assert_eq!(front_view_instant_centre(&corner, &ROAD), None);
    // Bump turns the knuckle forward about it: caster grows by 1 mm over the arm's length for each mm.
    let gain = travel_gradient(&corner, &ROAD).unwrap();
    assert!((gain.caster.abs() - 1.0 / 1000.0).abs() < 1e-12, "{gain:?}");
}

#[test]
fn roll_centre_height() {
    let assembly = assemble(&reference_corner(second_order_inner()), 100.0);
    let centre = roll_centre(assembly.static_pose(), &ROAD).unwrap();
    assert!((centre.height - 125.9819).abs() < 1e-3, "{centre:?}");
    assert!(centre.lateral.abs() < 1e-9);
}

/// With one wheel up and the other down the roll centre leaves the middle: it stays where the two lines meet.
#[test]
fn roll_centre_aside() {
    let assembly = assemble(&reference_corner(second_order_inner()), 100.0);
    let pose = assembly.pose(0.0, Sides::new(30.0, -12.0)).unwrap();
    let centre = roll_centre(&pose, &ROAD).unwrap();
    assert!(centre.lateral.abs() > 1.0, "{centre:?}");
    for corner in [&pose.corners.left, &pose.corners.right] {
        let contact = contact_centre(corner, &Vector::z());
        let to_centre = front_view_instant_centre(corner, &ROAD).unwrap() - contact;
        let aside =
            to_centre.y * (centre.height - contact.z) - to_centre.z * (centre.lateral - contact.y);
        assert!((aside / to_centre.norm()).abs() < 1e-7, "{aside}");
    }
}

#[test]
fn camber_gain_is_one_over_the_swing_arm() {
    let assembly = assemble(&reference_corner(second_order_inner()), 100.0);
    let gain = travel_gradient(&assembly.static_pose().corners.left, &ROAD).unwrap();
    // Per mm of the wheel centre, which here moves as the contact does: straight above it.
    let swing_arm = 1504.5455;
    assert!((gain.camber + 1.0 / swing_arm).abs() < 1e-8);
    assert!((gain.camber.to_degrees() + 0.038_081_8).abs() < 1e-6);
    let on_paper = assemble_on_paper(second_order_inner(), contact());
    assert!((camber_degrees(&on_paper, 20.0) + 0.787_40).abs() < 1e-5);
    assert!((camber_degrees(&on_paper, -20.0) - 0.736_96).abs() < 1e-5);
}

/// The contact moves outboard with bump as it swings about the instant centre: 0.1679758 at first, that centre's height over the
/// swing arm, and over 20 mm either way to y = 752.96797 and 746.24043.
#[test]
fn contact_moves_outboard() {
    let on_paper = assemble_on_paper(second_order_inner(), contact());
    let contact_at = |travel: f64| {
        let pose = on_paper.pose(0.0, Sides::both(travel)).unwrap();
        // The paper's contact is a point of the knuckle: its foot as drawn.
        pose.corners.left.knuckle * drawn(750.0, 0.0)
    };
    assert!((contact_at(20.0).y - 752.967_97).abs() < 1e-4);
    assert!((contact_at(-20.0).y - 746.240_43).abs() < 1e-4);
    let corner = on_paper.static_pose().corners.left;
    let rate = corner.per_travel.unwrap().velocity_of(&drawn(750.0, 0.0));
    assert!((rate.y - 0.167_975_8).abs() < 1e-7, "{rate}");
}

/// Camber against the road for each degree of roll: 1 - half track / swing arm = 0.695642 at a track of 250 mm and a swing
/// arm of 410.7 mm. Published: a snippet on camber in roll in a public code collection (name withheld).
#[test]
fn camber_in_roll() {
    let centre = drawn(125.0 - 410.7, 60.0);
    // Arms and rod on lines through the instant centre.
    let towards = |ball: Point, length: f64| {
        let line = (centre - ball).normalize();
        [ball + line * length, ball]
    };
    let corner = Planar {
        lower: towards(drawn(105.0, 20.0), 60.0),
        upper: towards(drawn(102.0, 70.0), 50.0),
        rod: towards(drawn(104.0, 40.0), 55.0),
    };
    let assembly = assemble_at(&corner, 20.0, drawn(125.0, 50.0));
    let found = front_view_instant_centre(&assembly.static_pose().corners.left, &ROAD).unwrap();
    assert!((found - centre).norm() < 1e-9, "{found}");
    let roll = |side: Side| {
        roll_gradient(assembly.static_pose().corners.get(side), &ROAD)
            .unwrap()
            .camber
    };
    // Rolled to the right, the right wheel's top leans out.
    assert!((roll(Side::Right) - 0.695_642).abs() < 5e-7);
    assert!((roll(Side::Left) + 0.695_642).abs() < 5e-7);
}

/// Level parallel arms: instant centre at infinity, roll centre on the road, no camber gain.
#[test]
fn level_parallel_arms() {
    let assembly = assemble(
        &Planar {
            lower: [drawn(300.0, 200.0), drawn(700.0, 200.0)],
            upper: [drawn(300.0, 400.0), drawn(700.0, 400.0)],
            rod: [drawn(300.0, 260.0), drawn(700.0, 260.0)],
        },
        100.0,
    );
    let pose = assembly.static_pose();
    assert_eq!(front_view_instant_centre(&pose.corners.left, &ROAD), None);
    assert!(roll_centre(pose, &ROAD).unwrap().height.abs() < 1e-9);
    let gain = travel_gradient(&pose.corners.left, &ROAD).unwrap();
    assert!(gain.camber.abs() < 1e-12 && gain.toe.abs() < 1e-12);
    // A parallelogram with a parallel rod of the same length never steers.
    for travel in [-30.0, -10.0, 20.0, 40.0] {
        assert!(toe_degrees(&assembly, travel).abs() < 1e-9);
    }
}

/// Level arms on both sides, of which the right ones are longer: the roll centre is meant in the middle between the contacts.
#[test]
fn level_arms_of_unequal_length() {
    let side = |out: f64| Planar {
        lower: [drawn(300.0, 200.0), drawn(700.0 + out, 200.0)],
        upper: [drawn(300.0, 400.0), drawn(700.0 + out, 400.0)],
        rod: [drawn(300.0, 260.0), drawn(700.0 + out, 260.0)],
    };
    let corner = |out: f64| left_corner(&side(out), 100.0, drawn(750.0 + out, 300.0));
    let inner = drawn(300.0, 260.0) + behind(100.0);
    let assembly = on_rack(
        &Sides::new(corner(0.0), corner(40.0).mirrored()),
        Sides::new(inner, mirrored_point(&inner)),
    );
    let centre = roll_centre(assembly.static_pose(), &ROAD).unwrap();
    assert!(centre.height.abs() < 1e-9, "{centre:?}");
    assert!((centre.lateral + 20.0).abs() < 1e-9, "{centre:?}");
}

/// Parallel arms at 5 degrees rising inboard: the roll centre stands at half track times the slope.
#[test]
fn inclined_parallel_arms() {
    let slope = 5.0_f64.to_radians().tan();
    let line = |z: f64| [drawn(300.0, z + 400.0 * slope), drawn(700.0, z)];
    let assembly = assemble(
        &Planar {
            lower: line(200.0),
            upper: line(400.0),
            rod: line(260.0),
        },
        100.0,
    );
    let centre = roll_centre(assembly.static_pose(), &ROAD).unwrap();
    assert!((centre.height - 65.6165).abs() < 1e-4, "{centre:?}");
}

/// First order: a rod whose line passes through the instant centre does not steer at first.
#[test]
fn rod_line_through_the_instant_centre() {
    // By the workshop rule the rod ends on the line of the inner pivots: (314.1604, 256.6417).
    let assembly = assemble_on_paper(drawn(314.160_4, 256.641_7), lower_ball());
    assert!((assembly.rod_lengths().left - 370.8421).abs() < 1e-4);
    let corner = assembly.static_pose().corners.left;
    let centre = front_view_instant_centre(&corner, &ROAD).unwrap();
    let line = corner.steering_arm - centre;
    assert!((line.z / line.y - 0.003_662_6).abs() < 1e-5);
    let gradient = travel_gradient(&corner, &ROAD).unwrap();
    assert!(
        gradient.toe.to_degrees().abs() < ROUNDED_ROD,
        "{}",
        gradient.toe
    );
    // What is left is of second order: even in travel. Toe-in, for a rod behind the axle.
    for (travel, expected) in [
        (-30.0_f64, 0.012_90),
        (-20.0, 0.005_82),
        (-10.0, 0.001_48),
        (10.0, 0.001_53),
        (20.0, 0.006_25),
        (30.0, 0.014_36),
    ] {
        let toe = toe_degrees(&assembly, travel);
        assert!(
            (toe.abs() - expected).abs() < ON_PAPER * expected + ROUNDED_ROD * travel.abs(),
            "{travel}: {toe}"
        );
    }
}

/// Second order: with the rod's length from the Euler-Savary relation only a third-order rest is left.
#[test]
fn rod_of_the_right_length_too() {
    let assembly = assemble_on_paper(second_order_inner(), lower_ball());
    assert!((assembly.rod_lengths().left - 363.6190).abs() < 1e-4);
    for (travel, expected) in [
        (-30.0, -0.000_71),
        (-20.0, -0.000_21),
        (20.0, 0.000_23),
        (30.0, 0.000_79),
    ] {
        let toe = toe_degrees(&assembly, travel);
        assert!(
            (toe.abs() - f64::abs(expected)).abs() < 1e-4,
            "{travel}: {toe}"
        );
    }
    let (up, down) = (toe_degrees(&assembly, 30.0), toe_degrees(&assembly, -30.0));
    assert!(up * down < 0.0, "{up} {down} should be of odd order");
}

/// Raising the inner end by 5 mm brings bump steer of the first order: odd in travel.
#[test]
fn inner_end_raised() {
    let raised = second_order_inner() + Vector::new(0.0, 0.0, 5.0);
    let assembly = assemble_on_paper(raised, lower_ball());
    for (travel, expected) in [
        (-30.0, -0.235_72),
        (-10.0, -0.078_06),
        (10.0, 0.077_99),
        (30.0, 0.235_14),
    ] {
        let toe = toe_degrees(&assembly, travel);
        assert!((toe / expected - 1.0).abs() < ON_PAPER, "{travel}: {toe}");
    }
}

/// What the rack must push with to hold a moment at each kingpin does the moments' work, taken over a small way of the rack.
#[test]
fn holding_effort_does_the_moments_work() {
    let assembly = assemble(&reference_corner(second_order_inner()), 100.0);
    let (from, way) = (8.0, 1e-3);
    let pose = |input: f64| assembly.pose(input, Sides::both(0.0)).unwrap();
    let (before, after) = (pose(from - way / 2.0), pose(from + way / 2.0));
    let moments = Sides::new(900.0, -250.0);
    let work = |before: &CornerPose, after: &CornerPose, moment: f64| {
        let turn = (after.knuckle.rotation * before.knuckle.rotation.inverse()).scaled_axis();
        moment * turn.dot(&before.kingpin_axis())
    };
    let done = work(&before.corners.left, &after.corners.left, moments.left)
        + work(&before.corners.right, &after.corners.right, moments.right);
    let effort = holding_effort(&pose(from), &moments);
    assert!(effort.abs() > 1.0, "{effort}");
    assert!(
        (effort * way + done).abs() < 1e-6 * done.abs(),
        "{effort} over {way}, {done}"
    );
}

/// Level arms of equal length carry the knuckle without turning it, and with a kingpin that stands upright steering does not
/// lift the wheel: it rises and falls by the arms' length and no farther.
#[test]
fn level_parallel_arms_lift_the_wheel_by_their_length() {
    const ARM: f64 = 100.0;
    for rod_inner in [385.0, 370.0] {
        let corner = Planar {
            lower: [drawn(400.0, 200.0), drawn(400.0 + ARM, 200.0)],
            upper: [drawn(400.0, 300.0), drawn(400.0 + ARM, 300.0)],
            rod: [drawn(rod_inner, 250.0), drawn(400.0 + ARM, 250.0)],
        };
        let car = assemble_at(&corner, 100.0, drawn(550.0, 250.0));
        for sign in [1.0, -1.0] {
            let at = |travel: f64| car.pose(0.0, Sides::both(sign * travel));
            assert!(at(ARM - 1e-4).is_ok());
            for past in [0.001, 3.0, 40.0] {
                let SolveError::OutOfReach(miss) = at(ARM + past).unwrap_err() else {
                    unreachable!("the arms are too short");
                };
                assert_eq!(miss.member, Member::Suspension, "{miss:?}");
                assert!((miss.shortfall - past).abs() < 1e-5, "{miss:?}");
            }
        }
    }
}
