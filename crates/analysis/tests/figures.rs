//! Figures against the solver, against the curves, and against what a car's symmetry asks for.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use steerloft_analysis::Study;
use steerloft_analysis::curves::{CurveKind, Held, Trace, value_at};
use steerloft_analysis::figures::{FigureKind, Figures, Scope, Values};
use steerloft_setup::setup::{Rods, Setup};
use steerloft_setup::supplied::{SUPPLIED, Supplied};
use steerloft_solver::figures::corner_figures;
use steerloft_solver::frame::{Side, Sides};

fn supplied(file_name: &str) -> Setup {
    let car = SUPPLIED.iter().find(|car| car.file_name == file_name);
    car.unwrap().setup()
}

fn sides(figures: &Figures<'_>, kind: FigureKind) -> Sides<Option<f64>> {
    match figures.values(kind) {
        Values::Sides(sides) => sides,
        Values::Axle(value) => panic!("{kind:?} {value:?}"),
    }
}

fn axle(figures: &Figures<'_>, kind: FigureKind) -> Option<f64> {
    match figures.values(kind) {
        Values::Axle(value) => value,
        Values::Sides(sides) => panic!("{kind:?} {sides:?}"),
    }
}

#[test]
fn every_figure_of_every_car_is_finite_and_of_its_scope() {
    for setup in SUPPLIED.iter().map(Supplied::setup) {
        let study = Study::new(&setup).unwrap();
        let most = study.unit().to_solver(setup.car.ranges.input.1);
        for share in [0.0, 0.5, 1.0] {
            let travel = Sides::both(setup.car.ranges.travel.1 * share);
            let pose = study.assembly().pose(most * share, travel).unwrap();
            let figures = study.figures(&pose).all();
            for (figure, kind) in figures.into_iter().zip(FigureKind::ALL) {
                assert_eq!(figure.kind, kind);
                let is_of_axle = matches!(figure.values, Values::Axle(_));
                assert_eq!(is_of_axle, figure.facts().scope == Scope::Axle);
                let values = match figure.values {
                    Values::Axle(value) => [value, None],
                    Values::Sides(sides) => [sides.left, sides.right],
                };
                for value in values.into_iter().flatten() {
                    assert!(value.is_finite(), "{}: {:?}", setup.car.name, figure.kind);
                }
            }
        }
    }
}

#[test]
fn gains_are_the_slopes_of_their_curves() {
    for setup in SUPPLIED.iter().map(Supplied::setup) {
        let study = Study::new(&setup).unwrap();
        if !study.assembly().has_travel() {
            continue;
        }
        let figures = study.figures(study.rest());
        for (kind, curve) in [
            (FigureKind::BumpSteer, CurveKind::ToeTravel),
            (FigureKind::CamberGain, CurveKind::CamberTravel),
            (FigureKind::CasterGain, CurveKind::CasterTravel),
            (FigureKind::InclinationGain, CurveKind::InclinationTravel),
            (FigureKind::ContactGain, CurveKind::ContactTravel),
        ] {
            let gain = sides(&figures, kind);
            for (side, trace) in [(Side::Left, Trace::Left), (Side::Right, Trace::Right)] {
                let series = &study.curve(curve).series;
                let line = series.iter().find(|line| line.trace == trace).unwrap();
                let at = |travel| value_at(&line.points, travel).unwrap();
                let reach = 0.02 * setup.car.ranges.travel.1;
                let slope = (at(reach) - at(-reach)) / (2.0 * reach);
                let gain = gain.get(side).unwrap();
                assert!(
                    (gain - slope).abs() < 2e-4 + 0.02 * slope.abs(),
                    "{}: {kind:?} {gain} {slope}",
                    setup.car.name
                );
            }
        }
    }
}

#[test]
fn the_ends_of_the_toe_curve_are_toe_at_full_bump_and_droop() {
    let study = Study::new(&supplied("touring-car.ron")).unwrap();
    let figures = study.figures(study.rest());
    let series = &study.curve(CurveKind::ToeTravel).series;
    let left = &series
        .iter()
        .find(|line| line.trace == Trace::Left)
        .unwrap()
        .points;
    let (droop, bump) = (left.first().unwrap()[1], left.last().unwrap()[1]);
    let figure = |kind| sides(&figures, kind).left.unwrap();
    assert!((figure(FigureKind::ToeAtBump) - bump).abs() < 1e-6);
    assert!((figure(FigureKind::ToeAtDroop) - droop).abs() < 1e-6);
}

#[test]
fn toe_in_travel_stays_between_its_least_and_its_greatest() {
    for setup in SUPPLIED.iter().map(Supplied::setup) {
        let study = Study::new(&setup).unwrap();
        let figures = study.figures(study.rest());
        let [least, most, droop, bump] = [
            FigureKind::ToeLeast,
            FigureKind::ToeMost,
            FigureKind::ToeAtDroop,
            FigureKind::ToeAtBump,
        ]
        .map(|kind| sides(&figures, kind).left);
        assert_eq!(least.is_some(), study.assembly().has_travel());
        let (Some(least), Some(most), Some(droop), Some(bump)) = (least, most, droop, bump) else {
            continue;
        };
        assert!(least <= droop.min(bump) + 1e-9 && droop.max(bump) <= most + 1e-9);
        // Poses of its own, between those of the curve.
        let (from, to) = setup.car.ranges.travel;
        let bend = (most - least).max(1e-3);
        for step in 0..=50 {
            let travel = from + (to - from) * f64::from(step) / 50.0;
            let pose = study.assembly().pose(0.0, Sides::both(travel)).unwrap();
            let toe = corner_figures(&pose.corners.left, &study.assembly().axle().road).toe;
            let range = least - 1e-3 * bend..=most + 1e-3 * bend;
            assert!(
                range.contains(&toe.to_degrees()),
                "{}: {toe} at {travel}",
                setup.car.name
            );
        }
    }
}

#[test]
fn sides_that_are_alike_do_not_differ_and_rods_that_are_not_show() {
    let mut setup = supplied("pan-car-swinging-arm.ron");
    let study = Study::new(&setup).unwrap();
    let differences = |study: &Study| {
        let figures = study.figures(study.rest());
        [FigureKind::SteerDifference, FigureKind::ToeDifference]
            .map(|kind| axle(&figures, kind).unwrap())
    };
    for difference in differences(&study) {
        assert!(difference < 1e-6, "{difference}");
    }
    let length = study.assembly().rod_lengths().left;
    setup
        .set_rods(Rods::FixedLengths {
            left: length + 0.4,
            right: length,
        })
        .unwrap();
    for difference in differences(&Study::new(&setup).unwrap()) {
        assert!(difference > 0.05, "{difference}");
    }
}

#[test]
fn the_swept_circle_is_twice_the_swept_radius() {
    for setup in SUPPLIED.iter().map(Supplied::setup) {
        let study = Study::new(&setup).unwrap();
        let figures = study.figures(study.rest());
        let circle = sides(&figures, FigureKind::LockCircle);
        let radius = sides(&figures, FigureKind::LockRadius);
        for side in Side::BOTH {
            let (circle, radius) = (circle.get(side).unwrap(), radius.get(side).unwrap());
            assert!((circle - 2.0 * radius).abs() < 1e-9);
            assert!(radius > setup.car.wheelbase * 0.5, "{}", setup.car.name);
        }
    }
}

#[test]
fn figures_at_lock_go_with_the_travel_that_is_held() {
    let mut study = Study::new(&supplied("buggy-front-end.ron")).unwrap();
    let rest = *study.rest();
    let lock = |study: &Study| {
        sides(&study.figures(&rest), FigureKind::LockLeft)
            .left
            .unwrap()
    };
    let (before, camber) = (lock(&study), study.curve(CurveKind::CamberSteer).clone());
    let held = *study.sweeps().held();
    study.hold(Held {
        travel: Sides::both(study.ranges().travel.1),
        ..held
    });
    assert!((lock(&study) - before).abs() > 1e-3);
    assert_ne!(*study.curve(CurveKind::CamberSteer), camber);
    study.hold(held);
    assert!((lock(&study) - before).abs() < 1e-12);
    assert_eq!(*study.curve(CurveKind::CamberSteer), camber);
}

#[test]
fn a_rod_square_to_its_lever_passes_on_most() {
    // Virtual work: the share of the rod's pull that turns the wheel is the sine of the angle to the lever when both lie in
    // the plane square to the axis; in space it is no more.
    let study = Study::new(&supplied("kart.ron")).unwrap();
    let figures = study.figures(study.rest());
    let angle = sides(&figures, FigureKind::OuterTransmission).left.unwrap();
    let share = sides(&figures, FigureKind::OuterShare).left.unwrap();
    assert!(
        share <= angle.to_radians().sin() * 100.0 + 1e-9,
        "{angle} {share}"
    );
    assert!(share > 50.0);
}

#[test]
fn balls_have_no_misalignment_where_the_file_gives_no_studs() {
    let mut setup = supplied("kart.ron");
    setup.car.joints = None;
    let study = Study::new(&setup).unwrap();
    assert!(study.assembly().joint_limits().is_none());
    let figures = study.figures(study.rest());
    assert_eq!(sides(&figures, FigureKind::OuterBall), Sides::both(None));
    assert_eq!(sides(&figures, FigureKind::InnerBall), Sides::both(None));
}
