//! Curves against what they must show: the solver's figures, closed formulas, and one another.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use steerloft_analysis::curves::{Curve, CurveKind, Series, Sweeps, Trace, Turn};
use steerloft_setup::layout::layout;
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::{SUPPLIED, Supplied};
use steerloft_solver::figures::{
    corner_figures, kingpin_distance, roll_gradient, straight_ahead_share, travel_gradient,
};
use steerloft_solver::{Assembly, Side};

fn sweeps(setup: &Setup) -> Sweeps {
    let assembly = Assembly::new(&layout(setup).axle).unwrap();
    Sweeps::new(&assembly, &setup.car.ranges)
}

fn supplied(file_name: &str) -> Setup {
    let car = SUPPLIED.iter().find(|car| car.file_name == file_name);
    car.unwrap().setup()
}

fn series(curve: &Curve, trace: Trace) -> &Series {
    let own = curve.series.iter().find(|series| series.trace == trace);
    own.unwrap()
}

/// Value at a place between samples.
fn value(series: &Series, at: f64) -> f64 {
    let after = series.points.partition_point(|point| point[0] < at);
    let [low, high] = [series.points[after.max(1) - 1], series.points[after]];
    if high[0] <= low[0] {
        return high[1];
    }
    low[1] + (high[1] - low[1]) * (at - low[0]) / (high[0] - low[0])
}

/// Slope by central difference over one sample each way.
fn slope(series: &Series, at: f64) -> f64 {
    let after = series.points.partition_point(|point| point[0] < at - 1e-9);
    let [before, next] = [series.points[after - 1], series.points[after + 1]];
    (next[1] - before[1]) / (next[0] - before[0])
}

#[test]
fn every_curve_of_every_car_is_finite_ordered_and_within_its_range() {
    for setup in SUPPLIED.iter().map(Supplied::setup) {
        let sweeps = sweeps(&setup);
        for kind in CurveKind::ALL {
            let curve = sweeps.curve(kind);
            assert_eq!(curve.kind, kind);
            let exists = sweeps.travel().is_some() || !kind.needs_travel();
            assert_eq!(
                !curve.series.is_empty(),
                exists,
                "{kind:?} {}",
                setup.car.name
            );
            assert!(
                exists || !curve.notes.is_empty(),
                "it says why there is none"
            );
            let ranges = curve.ranges();
            for series in &curve.series {
                assert!(series.points.len() >= 2, "{kind:?} {}", series.name);
                assert!(
                    series
                        .points
                        .windows(2)
                        .all(|pair| pair[0][0] <= pair[1][0])
                );
                for point in &series.points {
                    for (value, range) in point.iter().zip(ranges) {
                        assert!(value.is_finite(), "{kind:?}");
                        assert!((range.from..=range.to).contains(value), "{kind:?}");
                    }
                }
            }
        }
    }
}

#[test]
fn curves_go_through_the_figures_at_rest_with_the_slope_of_their_derivatives() {
    for setup in [
        supplied("pan-car-swinging-arm.ron"),
        supplied("touring-car.ron"),
    ] {
        let sweeps = sweeps(&setup);
        let pose = sweeps.assembly().static_pose();
        let road = &sweeps.assembly().axle().road;
        for (side, trace) in [(Side::Left, Trace::Left), (Side::Right, Trace::Right)] {
            let corner = pose.corners.get(side);
            let figures = corner_figures(corner, road);
            let gain = travel_gradient(corner, road).unwrap();
            for (kind, at_rest, rate) in [
                (CurveKind::ToeTravel, figures.toe, gain.toe),
                (CurveKind::CamberTravel, figures.camber, gain.camber),
                (CurveKind::CasterTravel, figures.caster, gain.caster),
                (
                    CurveKind::InclinationTravel,
                    figures.inclination,
                    gain.inclination,
                ),
            ] {
                let curve = sweeps.curve(kind);
                let line = series(&curve, trace);
                assert!(
                    (value(line, 0.0) - at_rest.to_degrees()).abs() < 1e-3,
                    "{kind:?}"
                );
                let close = 1e-4 + 0.02 * rate.to_degrees().abs();
                assert!(
                    (slope(line, 0.0) - rate.to_degrees()).abs() < close,
                    "{kind:?}"
                );
            }
            let roll = sweeps.curve(CurveKind::RollSteer);
            let rate = roll_gradient(corner, road).unwrap().steer;
            assert!((slope(series(&roll, trace), 0.0) - rate).abs() < 1e-3 + 0.02 * rate.abs());
            assert!(value(series(&roll, trace), 0.0).abs() < 1e-9);
        }
    }
}

/// A steering axis that leans back lowers the car on the outer wheel and lifts it on the inner one: Gillespie, Fundamentals
/// of Vehicle Dynamics, chapter 8 (from memory). The tyres do stand on the road.
#[test]
fn steered_on_the_road_caster_pushes_the_inner_wheel_up() {
    let sweeps = sweeps(&supplied("touring-car.ron"));
    let road = &sweeps.assembly().axle().road;
    let poses = sweeps.steer_on_road();
    assert!(poses.len() > 30);
    for pose in poses {
        for corner in [&pose.corners.left, &pose.corners.right] {
            let height = road.height_of(&corner_figures(corner, road).contact_centre);
            assert!(height.abs() < 1e-9, "{height}");
        }
    }
    let curve = sweeps.curve(CurveKind::RoadSteer);
    let (left, right) = (series(&curve, Trace::Left), series(&curve, Trace::Right));
    assert!(value(left, 0.0).abs() < 1e-9 && value(right, 0.0).abs() < 1e-9);
    let input = sweeps.ranges().input.1 * 0.5;
    let mirrored = value(left, input) - value(right, -input);
    // Between samples the lines are straight.
    assert!(mirrored.abs() < 1e-3, "{mirrored}");
    // Caster is the odd part: the inner wheel comes down at its axle, and the road pushes it up in the chassis.
    let turns_left = curve.x.sign == "turns left +";
    let inner = if turns_left {
        value(left, input)
    } else {
        value(left, -input)
    };
    let outer = if turns_left {
        value(right, input)
    } else {
        value(right, -input)
    };
    assert!(inner > outer, "{inner} {outer}");
}

/// The path of the wheel's centre leaves rest along the motion that the solver gives.
#[test]
fn the_path_of_the_centre_starts_along_the_motion() {
    for setup in [supplied("touring-car.ron"), supplied("strut-corner.ron")] {
        let sweeps = sweeps(&setup);
        let corner = sweeps.assembly().static_pose().corners.left;
        let axes = sweeps.assembly().axle().road.axes();
        let motion = corner.per_travel.unwrap().velocity_of(&corner.wheel_centre);
        for (kind, rate) in [
            (CurveKind::CentreTravel, motion.dot(&axes.leftward)),
            (CurveKind::StationTravel, motion.dot(&axes.forward)),
        ] {
            let curve = sweeps.curve(kind);
            let line = series(&curve, Trace::Left);
            assert!(value(line, 0.0).abs() < 1e-6, "{kind:?}");
            let found = slope(line, 0.0);
            assert!((found - rate).abs() < 1e-3, "{kind:?}: {found} {rate}");
        }
    }
}

#[test]
fn the_ideal_pair_keeps_its_rule_and_parallel_steering_is_parallel() {
    // cot(outer) - cot(inner) = B / L: ISO 8855:2011, 7.1.9.
    let sweeps = sweeps(&supplied("kart.ron"));
    let curve = sweeps.curve(CurveKind::InnerOuter);
    let distance = kingpin_distance(sweeps.assembly());
    let wheelbase = sweeps.assembly().axle().wheelbase;
    for point in series(&curve, Trace::Ideal).points.iter().skip(1) {
        let [inner, outer] = point.map(f64::to_radians);
        assert!((1.0 / outer.tan() - 1.0 / inner.tan() - distance / wheelbase).abs() < 1e-9);
    }
    for [inner, outer] in &series(&curve, Trace::Parallel).points {
        assert_eq!(inner.to_bits(), outer.to_bits());
    }
}

#[test]
fn the_ackermann_share_tells_where_the_pair_lies_between_parallel_and_ideal() {
    let sweeps = sweeps(&supplied("kart.ron"));
    let pairs = sweeps.curve(CurveKind::InnerOuter);
    let shares = sweeps.curve(CurveKind::AckermannShare);
    for trace in [Trace::Left, Trace::Right] {
        for [inner, share] in &series(&shares, trace).points {
            if *inner < 5.0 {
                continue;
            }
            let outer = value(series(&pairs, trace), *inner);
            let ideal = value(series(&pairs, Trace::Ideal), *inner);
            let between = 100.0 * (inner - outer) / (inner - ideal);
            assert!((between - share).abs() < 0.5, "{inner}: {between} {share}");
        }
    }
    // A mirror-symmetrical car has a limit straight ahead, which the curve starts from.
    let limit = straight_ahead_share(sweeps.assembly()).unwrap();
    let first = series(&shares, Trace::Left).points[0];
    assert!(first[0].abs() < 1e-12 && (first[1] - limit).abs() < 1e-12);
    let next = series(&shares, Trace::Left).points[1];
    assert!((next[1] - limit).abs() < 2.0, "{next:?} {limit}");
}

#[test]
fn the_ratio_is_the_slope_of_the_wheel_angles() {
    for setup in [
        supplied("pan-car-swinging-arm.ron"),
        supplied("formula-corner.ron"),
    ] {
        let sweeps = sweeps(&setup);
        let ratio = sweeps.curve(CurveKind::SteeringRatio);
        let angles = sweeps.curve(CurveKind::WheelAngles);
        let mean = |at: f64| {
            [Trace::Left, Trace::Right]
                .map(|trace| slope(series(&angles, trace), at))
                .iter()
                .sum::<f64>()
                / 2.0
        };
        let shown = value(series(&ratio, Trace::Axle), 0.0);
        assert!(
            (shown - 1.0 / mean(0.0).abs()).abs() < 0.005 * shown,
            "{shown}"
        );
    }
}

#[test]
fn the_unit_of_the_input_is_that_of_the_drive() {
    let of = |setup: &Setup| sweeps(setup).curve(CurveKind::WheelAngles).x;
    assert!(
        of(&supplied("pan-car-swinging-arm.ron"))
            .label()
            .starts_with("steering input, deg")
    );
    let rack = supplied("formula-corner.ron");
    let axis = of(&rack);
    assert!(axis.label().starts_with("steering input, mm"));
    let ends = sweeps(&rack).curve(CurveKind::WheelAngles).ranges()[0];
    assert!((ends.to - rack.car.ranges.input.1).abs() < 1e-9);
}

#[test]
fn the_sign_of_the_input_says_which_way_it_turns() {
    for setup in SUPPLIED.iter().map(Supplied::setup) {
        let sweeps = sweeps(&setup);
        let curve = sweeps.curve(CurveKind::WheelAngles);
        let last = series(&curve, Trace::Left).points.last().unwrap();
        let way = if last[1] > 0.0 {
            "turns left +"
        } else {
            "turns right +"
        };
        assert_eq!(curve.x.sign, way, "{}", setup.car.name);
    }
}

#[test]
fn locks_are_told_with_what_locks() {
    let mut setup = supplied("pan-car-swinging-arm.ron");
    setup.car.ranges.input = (-120.0, 120.0);
    let sweeps = sweeps(&setup);
    assert!(sweeps.steer().locks().count() > 0);
    let curve = sweeps.curve(CurveKind::InnerOuter);
    assert!(
        curve
            .notes
            .iter()
            .any(|note| note.starts_with("Steering ends at "))
    );
    for turn in Turn::BOTH {
        assert!(sweeps.full_lock(turn).is_some());
    }
}

#[test]
fn a_reference_adds_its_own_lines_under_the_others() {
    let setup = supplied("pan-car-swinging-arm.ron");
    let mut curve = sweeps(&setup).curve(CurveKind::InnerOuter);
    let before = curve.series.len();
    curve.add_reference(sweeps(&setup).curve(CurveKind::InnerOuter));
    // The two turns; ideal and parallel are there already.
    assert_eq!(curve.series.len(), before + 2);
    assert!(curve.series[..2].iter().all(|series| series.is_reference));
    assert!(curve.series[2..].iter().all(|series| !series.is_reference));
    assert_eq!(curve.series[0].name, "ref. left turn");
}
