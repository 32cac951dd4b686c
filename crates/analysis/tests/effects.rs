//! What one step of each adjustment does.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use approx::assert_relative_eq;
use common::{cars, choose, pan_car};
use steerloft_analysis::Study;
use steerloft_analysis::effects::{Alike, Direction, Effects, INNER, LEAST, Row};
use steerloft_analysis::figures::{FigureKind, Values};
use steerloft_analysis::find::{Measure, Wheel};
use steerloft_setup::setup::{Chosen, Rods, Setup};

fn row<'a>(effects: &'a Effects, name: &str, direction: Direction) -> &'a Row {
    let mut rows = effects.rows.iter();
    rows.find(|row| row.step.name == name && row.step.direction == direction)
        .unwrap_or_else(|| panic!("{name} goes {direction:?}"))
}

fn column(effects: &Effects, measure: &Measure) -> usize {
    let mut columns = effects.columns.iter();
    columns
        .position(|column| column.measure == *measure)
        .unwrap_or_else(|| panic!("{measure:?} is in the table"))
}

/// A figure of a setup as the window shows it.
fn figure(setup: &Setup, kind: FigureKind, wheel: Option<Wheel>) -> Option<f64> {
    let study = Study::new(setup).unwrap();
    match study.figures(study.rest()).values(kind) {
        Values::Sides(sides) if wheel == Some(Wheel::Right) => sides.right,
        Values::Sides(sides) => sides.left,
        Values::Axle(value) => value,
    }
}

#[test]
fn changes_are_those_between_the_figures_of_two_setups() {
    for setup in cars() {
        let effects = Effects::of(&setup, INNER).unwrap();
        assert!(!effects.rows.is_empty());
        let mut compared = 0;
        for (index, column) in effects.columns.iter().enumerate() {
            // The share at an angle and the ratio without sign are held against figures in the tests of the search.
            if matches!(
                column.measure,
                Measure::Ackermann { .. } | Measure::Ratio | Measure::DriveEffort
            ) {
                continue;
            }
            let kind = column.measure.figure().unwrap();
            let wheel = column.measure.wheel();
            let now = figure(&setup, kind, wheel);
            for row in &effects.rows {
                let Some(change) = row.change(index) else {
                    continue;
                };
                let then = figure(&row.step.setup, kind, wheel).unwrap();
                assert_relative_eq!(then - now.unwrap(), change, epsilon = 1e-6);
                compared += 1;
            }
        }
        assert!(compared > 20, "{}: {compared}", setup.car.name);
    }
}

/// Gough's relation by hand (as texts on steering quote it, from memory), and the effort at the drive for each N m.
#[test]
fn the_servo_torque_is_there_where_the_car_is_loaded() {
    let mut setup = pan_car();
    let effects = Effects::of(&setup, INNER).unwrap();
    let torque = effects.columns[column(&effects, &Measure::ServoTorque)]
        .now
        .unwrap();
    let effort = effects.columns[column(&effects, &Measure::DriveEffort)]
        .now
        .unwrap();
    let loads = setup.car.loads.unwrap();
    let width: f64 = setup.car.left.tyre_width;
    let scrub = figure(&setup, FigureKind::ScrubRadius, Some(Wheel::Left)).unwrap();
    let arm = (width * width / 8.0 + scrub * scrub).sqrt();
    let moment = loads.friction * loads.front_axle / 2.0 * arm;
    assert_relative_eq!(torque, moment * effort, epsilon = 1e-9);
    let shown = figure(&setup, FigureKind::ServoTorque, None).unwrap();
    assert_relative_eq!(torque, shown, epsilon = 1e-9);
    setup.car.loads = None;
    let effects = Effects::of(&setup, INNER).unwrap();
    let mut columns = effects.columns.iter();
    assert!(columns.all(|column| column.measure != Measure::ServoTorque));
    assert_eq!(figure(&setup, FigureKind::ServoTorque, None), None);
}

/// Common practice, no source: fewer spacers at the outer balls make the wheel toe out more in bump.
#[test]
fn outer_spacers_rule_bump_steer_of_a_pan_car() {
    let effects = Effects::of(&pan_car(), INNER).unwrap();
    let bump_steer = column(&effects, &Measure::BumpSteer(Wheel::Left));
    let fewer = row(&effects, "Outer rod spacers", Direction::Down);
    let more = row(&effects, "Outer rod spacers", Direction::Up);
    assert!(fewer.change(bump_steer).unwrap() * more.change(bump_steer).unwrap() < 0.0);
    assert_eq!(
        (fewer.step.from.as_str(), fewer.step.to.as_str()),
        ("3 mm", "2.5 mm")
    );
}

#[test]
fn the_strongest_step_has_the_greatest_change() {
    for setup in cars() {
        let effects = Effects::of(&setup, INNER).unwrap();
        for (index, column) in effects.columns.iter().enumerate() {
            let sizes = effects.rows.iter().filter_map(|row| row.change(index));
            let greatest = sizes.map(f64::abs).fold(0.0, f64::max);
            let strongest = column
                .strongest
                .map_or(0.0, |row| effects.rows[row].change(index).unwrap().abs());
            assert_relative_eq!(strongest, greatest, epsilon = 1e-5);
        }
    }
}

/// A servo raised and outer balls raised by as much leave the rods' slope: what one does to bump steer the other undoes.
#[test]
fn packing_under_the_servo_undoes_outer_spacers() {
    let effects = Effects::of(&pan_car(), INNER).unwrap();
    let name = |index: usize| effects.rows[index].step.name.as_str();
    let pair = |alike: &&Alike| {
        alike.rows.map(name) == ["Servo height packing", "Outer rod spacers"]
            || alike.rows.map(name) == ["Outer rod spacers", "Servo height packing"]
    };
    let alike = effects.alike.iter().find(pair).unwrap();
    assert!(alike.cancels());
    assert!(alike.ratio > 0.5 && alike.ratio < 4.0, "{}", alike.ratio);
}

#[test]
fn pairs_are_of_two_adjustments_that_do_something() {
    for setup in cars() {
        let effects = Effects::of(&setup, INNER).unwrap();
        for alike in &effects.alike {
            let [one, other] = alike.rows.map(|row| &effects.rows[row]);
            assert_ne!(one.step.adjustment, other.step.adjustment);
            assert!(alike.likeness.abs() <= 1.0 + 1e-12);
            for row in [one, other] {
                let size: f64 = (0..effects.columns.len())
                    .filter_map(|index| {
                        let measure = &effects.columns[index].measure;
                        Some(row.change(index)? / measure.noticeable())
                    })
                    .map(|part| part * part)
                    .sum();
                assert!(size.sqrt() >= LEAST);
            }
        }
    }
}

#[test]
fn fixed_rods_have_no_step_of_toe() {
    let mut setup = pan_car();
    let toe = |effects: &Effects| effects.rows.iter().any(|row| row.step.name == "Toe");
    assert!(toe(&Effects::of(&setup, INNER).unwrap()));
    let rods = Study::new(&setup).unwrap().tie_rods();
    setup.set_rods(Rods::FixedLength(rods.left.length)).unwrap();
    assert!(!toe(&Effects::of(&setup, INNER).unwrap()));
}

#[test]
fn sides_that_do_not_do_the_same_have_columns_of_their_own() {
    let camber = Measure::Camber(Wheel::Both);
    let has = |setup: &Setup, measure: &Measure| {
        let effects = Effects::of(setup, INNER).unwrap();
        effects.columns.iter().any(|one| one.measure == *measure)
    };
    let mut setup = pan_car();
    assert!(has(&setup, &camber));
    setup.car.roll = 1.0;
    assert!(!has(&setup, &camber));
    for wheel in [Wheel::Left, Wheel::Right] {
        assert!(has(&setup, &camber.with_wheel(wheel)));
    }
}

#[test]
fn an_adjustment_at_its_end_has_one_step() {
    let mut setup = pan_car();
    choose(&mut setup, "Servo height packing", Chosen::Stack(0.0));
    let effects = Effects::of(&setup, INNER).unwrap();
    let mut rows = effects.rows.iter();
    assert!(!rows.any(|row| {
        row.step.name == "Servo height packing" && row.step.direction == Direction::Down
    }));
}
