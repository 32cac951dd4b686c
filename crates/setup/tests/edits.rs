//! Editing the car: every edit gives a sound setup or an error that says what is wrong.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use common::{base_car, car, cars, choose, index_of};
use steerloft_setup::adjustment::{Kind, PointName, Scalar, Unit};
use steerloft_setup::car::{Drive, Position, RightCorner, ServoClass};
use steerloft_setup::check::check;
use steerloft_setup::edit::{CarEdit, DriveKind, EditError, SuspensionKind, new_car};
use steerloft_setup::file::{read_text, to_text};
use steerloft_setup::handles::point_of;
use steerloft_setup::layout::{assemble, layout};
use steerloft_setup::measuring::guide;
use steerloft_setup::servo::ServoPart;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_solver::sweep::{SweepRange, bump_sweep, steer_sweep};
use steerloft_solver::{Side, Sides};

fn point(point: PointName, side: Side, to: Position) -> CarEdit {
    CarEdit::Point { point, side, to }
}

#[test]
fn a_new_car_of_every_kind_steers_and_travels_at_once() {
    for suspension in SuspensionKind::ALL {
        for drive in DriveKind::ALL {
            let setup = new_car(suspension, drive);
            let name = &setup.car.name;
            assert_eq!(check(&setup), Ok(()), "{name}");
            assert_eq!(read_text(&to_text(&setup)).as_ref(), Ok(&setup), "{name}");
            let assembly = assemble(&setup).unwrap();
            let unit = |input: f64| match setup.car.drive {
                Drive::Slider { .. } => input,
                _ => input.to_radians(),
            };
            let (from, to) = setup.car.ranges.input;
            let range = SweepRange {
                from: unit(from),
                to: unit(to),
                count: 21,
            };
            let sweep = steer_sweep(&assembly, range, Sides::both(0.0));
            assert_eq!(sweep.locks().count(), 0, "{name}");
            if suspension != SuspensionKind::FixedKingpin {
                let (from, to) = setup.car.ranges.travel;
                let range = SweepRange {
                    from,
                    to,
                    count: 11,
                };
                assert_eq!(
                    bump_sweep(&assembly, range, 0.0).unwrap().locks().count(),
                    0
                );
            }
            let rods = assembly.rod_lengths();
            for rod in [rods.left, rods.right] {
                let parts = setup.car.tie_rod;
                assert!(
                    (parts.shortest..=parts.longest).contains(&rod),
                    "{name}: {rod}"
                );
            }
        }
    }
}

#[test]
fn every_point_that_is_drawn_can_be_read_and_set() {
    for setup in cars() {
        let drawn = layout(&Setup {
            chosen: std::collections::BTreeMap::new(),
            ..setup.clone()
        });
        for name in PointName::ALL {
            for side in Side::BOTH {
                let Some(place) = point_of(&drawn, name, side) else {
                    continue;
                };
                let held = setup.car.point(name, side).unwrap();
                assert!((held.point() - place).norm() < 1e-12, "{name:?} {side}");
                let to = Position(held.0 + 0.01, held.1, held.2);
                let edited = setup.edited(&point(name, side, to)).unwrap();
                assert_eq!(edited.car.point(name, side), Some(to));
            }
        }
    }
}

#[test]
fn a_right_hand_point_of_a_mirrored_corner_sets_the_left_one() {
    let setup = base_car();
    let to = Position(-11.0, -50.0, 22.0);
    let edited = setup
        .edited(&point(PointName::SteeringArm, Side::Right, to))
        .unwrap();
    assert_eq!(edited.car.left.steering_arm, Position(-11.0, 50.0, 22.0));
    let apart = edited.edited(&CarEdit::SeparateSides).unwrap();
    let moved = apart
        .edited(&point(
            PointName::SteeringArm,
            Side::Right,
            Position(-10.0, -50.0, 22.0),
        ))
        .unwrap();
    assert_eq!(moved.car.left, edited.car.left);
    assert!(
        matches!(&moved.car.right, RightCorner::Given(right) if right.steering_arm == Position(-10.0, -50.0, 22.0))
    );
    let again = moved.edited(&CarEdit::MirrorSides).unwrap();
    assert_eq!(again, edited);
}

#[test]
fn sides_given_separately_put_the_same_car_together() {
    for setup in cars() {
        let apart = setup.edited(&CarEdit::SeparateSides).unwrap();
        let (was, is) = (layout(&setup).axle, layout(&apart).axle);
        let gap = was.corners.right.knuckle.steering_arm - is.corners.right.knuckle.steering_arm;
        assert!(gap.norm() < 1e-12, "{}", setup.car.name);
        assert_eq!(apart.edited(&CarEdit::MirrorSides).unwrap(), setup);
    }
}

#[test]
fn what_breaks_the_car_is_refused_and_names_the_place() {
    let setup = base_car();
    let on_axis = setup.car.left.kingpin_lower;
    let error = setup
        .edited(&point(PointName::SteeringArm, Side::Left, on_axis))
        .unwrap_err();
    assert_eq!(
        error.to_string(),
        "car.left.steering_arm: the outer tie-rod ball lies on the steering axis; place them at least 0.001 mm apart"
    );
    let error = setup
        .edited(&point(PointName::CrankAxis, Side::Left, on_axis))
        .unwrap_err();
    assert_eq!(
        error.to_string(),
        "this car has no crank axis; its suspension and drive tell which points it has"
    );
    let spin = point(PointName::SpinAxis, Side::Left, on_axis);
    assert_eq!(setup.edited(&spin), Err(EditError::SpinAxisIsCamber));
    let station = CarEdit::Number {
        scalar: Scalar::FrontStation,
        to: 1.0,
    };
    assert_eq!(setup.edited(&station), Err(EditError::StationIsOrigin));
    let camber = CarEdit::Number {
        scalar: Scalar::Camber,
        to: f64::NAN,
    };
    assert!(matches!(setup.edited(&camber), Err(EditError::Check(_))));
}

#[test]
fn adjustments_are_renamed_with_their_value() {
    let mut setup = base_car();
    choose(&mut setup, "Servo station", Chosen::Slide(2.0));
    let index = index_of(&setup, "Servo station");
    let rename = |name: &str| CarEdit::RenameAdjustment {
        index,
        name: name.to_owned(),
    };
    let renamed = setup.edited(&rename("Servo place")).unwrap();
    assert_eq!(renamed.value(index), Chosen::Slide(2.0));
    assert_eq!(renamed.edited(&rename("Servo station")).unwrap(), setup);
    let error = setup.edited(&rename("Ride height")).unwrap_err();
    assert!(error.to_string().contains("is used twice"), "{error}");
}

#[test]
fn adjustments_are_added_replaced_moved_and_removed() {
    let mut setup = base_car();
    choose(&mut setup, "Servo station", Chosen::Slide(4.0));
    let index = index_of(&setup, "Servo station");
    let mut narrower = setup.car.adjustments[index].clone();
    if let Kind::Slide { range, unit, .. } = &mut narrower.kind {
        *range = (-3.0, 3.0);
        assert_eq!(*unit, Unit::Millimetres);
    }
    narrower.name = "is not taken over".to_owned();
    let replaced = setup
        .edited(&CarEdit::ReplaceAdjustment {
            index,
            adjustment: narrower.clone(),
        })
        .unwrap();
    assert_eq!(replaced.value(index), Chosen::Slide(3.0));
    assert_eq!(replaced.car.adjustments[index].name, "Servo station");
    let removed = setup.edited(&CarEdit::RemoveAdjustment { index }).unwrap();
    assert!(!removed.chosen.contains_key("Servo station"));
    let added = removed
        .edited(&CarEdit::AddAdjustment {
            at: index,
            adjustment: setup.car.adjustments[index].clone(),
        })
        .unwrap();
    assert_eq!(added.car, setup.car);
    let last = setup.car.adjustments.len() - 1;
    let moved = setup
        .edited(&CarEdit::MoveAdjustment {
            from: index,
            to: usize::MAX,
        })
        .unwrap();
    assert_eq!(moved.car.adjustments[last].name, "Servo station");
    assert_eq!(
        setup.edited(&CarEdit::RemoveAdjustment { index: 99 }),
        Err(EditError::NoSuchAdjustment {
            index: 99,
            count: last + 1
        })
    );
}

#[test]
fn another_servo_is_one_edit() {
    let setup = base_car();
    let body = ServoClass::LowProfile.typical_body().unwrap();
    let edit = CarEdit::FitServo(ServoPart::of_body(ServoClass::LowProfile, body));
    assert_eq!(edit.label(), "fit another servo");
    let fitted = setup.edited(&edit).unwrap();
    // 7.5 mm wider on its side, so the arm stands 3.75 mm higher; as high over its lugs, so no farther forward.
    let rise = fitted.car.drive.servo_axis().unwrap().vector()
        - setup.car.drive.servo_axis().unwrap().vector();
    assert!(
        (rise.z - 3.75).abs() < 1e-9 && rise.xy().norm() < 1e-9,
        "{rise}"
    );
    let kart = car("kart.ron");
    assert!(matches!(kart.edited(&edit), Err(EditError::Servo(_))));
}

#[test]
fn the_guide_measures_every_point_from_its_datum() {
    for setup in cars() {
        let points = guide(&setup);
        for name in PointName::ALL
            .into_iter()
            .filter(|name| !name.is_direction())
        {
            let is_there = setup.car.point(name, Side::Left).is_some();
            let is_measured = points.iter().any(|point| point.point == Some(name));
            assert_eq!(is_there, is_measured, "{}: {name:?}", setup.car.name);
        }
    }
    let steps = guide(&base_car())[0].steps();
    assert_eq!(
        steps[1].text,
        "From the centre line to the left to the middle of the tyre's width, on the axis of the axle; right of the line −."
    );
}
