//! A car made one of another kind, and the edits of twin cranks.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use std::collections::BTreeMap;

use common::{base_car, car, cars, choose, index_of};
use steerloft_setup::adjustment::{Member, PointName, Scalar};
use steerloft_setup::car::{Drive, DrivenCrank, InnerBallsOn, Position, RightCorner, Suspension};
use steerloft_setup::check::check;
use steerloft_setup::edit::{CarEdit, DriveKind, EditError, SuspensionKind};
use steerloft_setup::layout::assemble;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_solver::Side;
use steerloft_solver::Sides;
use steerloft_solver::sweep::{SweepRange, bump_sweep, steer_sweep};

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() < 1e-12
}

/// A supplied car with every adjustment at its base.
fn at_base(setup: &Setup) -> Setup {
    Setup {
        chosen: BTreeMap::new(),
        ..setup.clone()
    }
}

fn in_solver_units(setup: &Setup, input: f64) -> f64 {
    match setup.car.drive {
        Drive::Slider { .. } => input,
        _ => input.to_radians(),
    }
}

/// How far the left inner ball goes to the left from rest to the greatest input, mm.
fn ball_travel(setup: &Setup) -> f64 {
    let assembly = assemble(setup).unwrap();
    let input = in_solver_units(setup, setup.car.ranges.input.1);
    let pose = assembly.pose(input, Sides::both(0.0)).unwrap();
    pose.drive.rod_inner.left.y - assembly.static_pose().drive.rod_inner.left.y
}

#[test]
fn every_car_becomes_one_of_every_kind_and_keeps_its_rods_and_toe() {
    for setup in cars() {
        let setup = at_base(&setup);
        let before = assemble(&setup).unwrap();
        for suspension in SuspensionKind::ALL {
            for drive in DriveKind::ALL {
                let told = format!(
                    "{} to {} and {}",
                    setup.car.name,
                    suspension.label(),
                    drive.label()
                );
                let other = setup.with_kinds(suspension, drive).expect(&told).setup;
                assert_eq!(check(&other), Ok(()), "{told}");
                assert_eq!(SuspensionKind::of(&other.car.left.suspension), suspension);
                assert_eq!(DriveKind::of(&other.car.drive), drive);
                for point in [
                    PointName::WheelCentre,
                    PointName::KingpinLower,
                    PointName::KingpinUpper,
                    PointName::SteeringArm,
                    PointName::RodInner,
                ] {
                    for side in Side::BOTH {
                        let of = |setup: &Setup| setup.car.point(point, side);
                        assert_eq!(of(&setup), of(&other), "{told}");
                    }
                }
                let after = assemble(&other).expect(&told);
                let (was, is) = (before.rod_lengths(), after.rod_lengths());
                assert!((was.left - is.left).abs() < 1e-9, "{told}");
                assert!((was.right - is.right).abs() < 1e-9, "{told}");
            }
        }
    }
}

#[test]
fn another_drive_steers_the_same_way_about_as_far_and_without_a_lock() {
    for setup in cars() {
        let setup = at_base(&setup);
        let was = ball_travel(&setup);
        for drive in DriveKind::ALL {
            let suspension = SuspensionKind::of(&setup.car.left.suspension);
            let other = setup.with_kinds(suspension, drive).unwrap().setup;
            let told = format!("{} to {}", setup.car.name, drive.label());
            let (from, to) = other.car.ranges.input;
            let range = SweepRange {
                from: in_solver_units(&other, from),
                to: in_solver_units(&other, to),
                count: 21,
            };
            let assembly = assemble(&other).unwrap();
            let sweep = steer_sweep(&assembly, range, Sides::both(0.0));
            assert_eq!(sweep.locks().count(), 0, "{told}");
            let is = ball_travel(&other);
            assert!(
                (0.6..1.6).contains(&(is / was)),
                "{told}: {was} and {is} mm"
            );
        }
    }
}

#[test]
fn another_suspension_travels_at_once() {
    for setup in cars() {
        let setup = at_base(&setup);
        for suspension in SuspensionKind::ALL {
            let drive = DriveKind::of(&setup.car.drive);
            let other = setup.with_kinds(suspension, drive).unwrap();
            let (from, to) = other.setup.car.ranges.travel;
            let has_travel = suspension != SuspensionKind::FixedKingpin;
            assert_eq!(to > from, has_travel);
            if !has_travel {
                continue;
            }
            let range = SweepRange {
                from: from / 2.0,
                to: to / 2.0,
                count: 5,
            };
            let assembly = assemble(&other.setup).unwrap();
            let sweep = bump_sweep(&assembly, range, 0.0).unwrap();
            assert_eq!(
                sweep.locks().count(),
                0,
                "{} to {}",
                setup.car.name,
                suspension.label()
            );
        }
    }
}

#[test]
fn the_same_kinds_change_nothing() {
    for setup in cars() {
        let (suspension, drive) = (
            SuspensionKind::of(&setup.car.left.suspension),
            DriveKind::of(&setup.car.drive),
        );
        let same = setup.with_kinds(suspension, drive).unwrap();
        assert_eq!(same.setup, setup);
        let said = [same.given_up, same.guessed, same.to_check];
        assert!(said.iter().all(Vec::is_empty), "{said:?}");
    }
}

#[test]
fn what_goes_and_what_is_a_guess_is_told() {
    let mut setup = car("touring-car.ron");
    let arm = setup.car.adjustments.iter().position(|adjustment| {
        let of_drive = format!("{:?}", adjustment.kind);
        of_drive.contains("DragLink")
    });
    let name = setup.car.adjustments[arm.unwrap()].name.clone();
    let index = index_of(&setup, &name);
    let further = setup.car.adjustments[index].step_from(&setup.value(index), 1);
    choose(&mut setup, &name, further);
    let other = setup
        .with_kinds(SuspensionKind::Strut, DriveKind::Slider)
        .unwrap();
    for gone in [
        "front hinge point of the upper arm",
        "rear hinge point of the upper arm",
        "crank axis",
        "drag-link ball on the crank",
        "steering drive axis",
        "servo",
    ] {
        assert!(
            other.given_up.iter().any(|told| told == gone),
            "{gone}: {:?}",
            other.given_up
        );
    }
    assert!(other.given_up.iter().any(|told| told.contains(&name)));
    assert!(
        other
            .guessed
            .iter()
            .any(|told| told.contains("steering input from"))
    );
    assert!(
        other
            .to_check
            .iter()
            .any(|told| told.contains("the strut's mount above"))
    );
    assert!(!other.setup.chosen.contains_key(&name));
    assert_eq!(other.setup.car.servo, None);
    let kept = &other.setup.car;
    assert!(same(kept.wheelbase, setup.car.wheelbase));
    assert_eq!(kept.stock, setup.car.stock);
    assert_eq!(kept.notes, setup.car.notes);
    assert_eq!(other.setup.record, setup.record);
    assert!(
        kept.adjustments.iter().any(|one| one.name.contains("Ride")),
        "what touches neither stays"
    );
}

#[test]
fn hinges_that_both_kinds_have_stay() {
    let setup = car("touring-car.ron");
    let drive = DriveKind::TwinCrank;
    let strut = setup.with_kinds(SuspensionKind::Strut, drive).unwrap();
    let swinging = setup
        .with_kinds(SuspensionKind::SwingingUpperArm, drive)
        .unwrap();
    let point = |setup: &Setup, point| setup.car.point(point, Side::Left);
    for name in [PointName::LowerHingeFront, PointName::LowerHingeRear] {
        assert_eq!(point(&strut.setup, name), point(&setup, name));
    }
    for name in [PointName::UpperHingeFront, PointName::UpperHingeRear] {
        assert_eq!(point(&swinging.setup, name), point(&setup, name));
    }
    assert_eq!(
        swinging.guessed,
        Vec::<String>::new(),
        "nothing has to be invented"
    );
}

#[test]
fn a_side_of_its_own_gets_hinges_of_its_own() {
    let setup = base_car().edited(&CarEdit::SeparateSides).unwrap();
    let to = Position(1.0, -46.0, 9.0);
    let setup = setup
        .edited(&CarEdit::Point {
            point: PointName::KingpinLower,
            side: Side::Right,
            to,
        })
        .unwrap();
    let other = setup
        .edited(&CarEdit::Kinds {
            suspension: SuspensionKind::DoubleWishbone,
            drive: DriveKind::SwingArm,
        })
        .unwrap();
    let RightCorner::Given(right) = &other.car.right else {
        panic!("the right corner was given by itself");
    };
    let Suspension::DoubleWishbone {
        lower_hinge_front, ..
    } = right.suspension
    else {
        panic!("both corners become wishbones");
    };
    assert!(lower_hinge_front.1 < 0.0 && lower_hinge_front.1 > to.1);
}

#[test]
fn the_servo_goes_where_the_new_arm_is() {
    let setup = base_car();
    let suspension = SuspensionKind::of(&setup.car.left.suspension);
    let cranks = setup.with_kinds(suspension, DriveKind::TwinCrank).unwrap();
    let (was, is) = (setup.car.servo.unwrap(), cranks.setup.car.servo.unwrap());
    assert_eq!(is.class, was.class);
    assert_eq!(is.action, was.action);
    assert_ne!(is.case, was.case);
    assert!(cranks.guessed.contains(&"place of the servo".to_owned()));
    let index = index_of(&setup, "Servo station");
    let mut moved = setup.clone();
    moved.set(index, Chosen::Slide(2.0)).unwrap();
    let cranks = moved.with_kinds(suspension, DriveKind::TwinCrank).unwrap();
    let told = "adjustment \u{201c}Servo station\u{201d}, which stood away from its base";
    assert!(
        cranks.given_up.contains(&told.to_owned()),
        "{:?}",
        cranks.given_up
    );
}

#[test]
fn links_are_as_long_as_set_or_as_drawn() {
    let setup = car("touring-car.ron");
    let drawn = setup.car.link_length(Member::DragLink).unwrap();
    let ball = |point| setup.car.point(point, Side::Left).unwrap().point();
    let apart = (ball(PointName::DragCrank) - ball(PointName::DragServo)).norm();
    assert!((drawn - apart).abs() < 1e-12);
    let set = |link, to| setup.edited(&CarEdit::LinkLength { link, to });
    let longer = set(Member::DragLink, Some(drawn + 1.0)).unwrap();
    assert_eq!(longer.car.link_length(Member::DragLink), Some(drawn + 1.0));
    let again = longer
        .edited(&CarEdit::LinkLength {
            link: Member::DragLink,
            to: None,
        })
        .unwrap();
    assert_eq!(again, setup);
    assert!(matches!(
        set(Member::CrossLink, Some(-1.0)),
        Err(EditError::Check(_))
    ));
    assert_eq!(
        set(Member::UpperArm, None),
        Err(EditError::NoSuchLink {
            link: Member::UpperArm
        })
    );
    assert_eq!(base_car().car.link_length(Member::DragLink), None);
}

#[test]
fn the_other_crank_is_driven_and_back_again() {
    let setup = car("touring-car.ron");
    let drive = |setup: &Setup, crank| setup.edited(&CarEdit::DrivenCrank(crank));
    let ball = |setup: &Setup| setup.car.point(PointName::DragCrank, Side::Left).unwrap();
    let other = drive(&setup, DrivenCrank::Right).unwrap();
    assert!((ball(&other).1 + ball(&setup).1).abs() < 1e-12);
    assert_eq!(drive(&other, DrivenCrank::Left).unwrap(), setup);
    assert_eq!(drive(&setup, DrivenCrank::Left).unwrap(), setup);
    let refused = drive(&base_car(), DrivenCrank::Left);
    assert!(matches!(refused, Err(EditError::NoSuchPoint { .. })));
}

#[test]
fn inner_balls_go_onto_the_line_of_the_cross_link() {
    let setup = car("touring-car.ron");
    let edit = |on| CarEdit::InnerBallsOn(on);
    let on_link = setup.edited(&edit(InnerBallsOn::CrossLink));
    // Adjustments of this car move the balls off the link; that is refused with its place.
    assert!(matches!(on_link, Err(EditError::Check(_))), "{on_link:?}");
    let mut bare = setup.clone();
    bare.car.adjustments.clear();
    bare.chosen.clear();
    let on_link = bare.edited(&edit(InnerBallsOn::CrossLink)).unwrap();
    let point = |point| on_link.car.point(point, Side::Left).unwrap();
    assert!(same(
        point(PointName::RodInner).2,
        point(PointName::CrossBall).2
    ));
    let back = on_link.edited(&edit(InnerBallsOn::Cranks)).unwrap();
    assert_eq!(
        back.car.point(PointName::RodInner, Side::Left),
        on_link.car.point(PointName::RodInner, Side::Left)
    );
}

#[test]
fn each_wheel_has_numbers_of_its_own_once_the_sides_are_apart() {
    let apart = base_car().edited(&CarEdit::SeparateSides).unwrap();
    let camber = |side, to| CarEdit::WheelNumber {
        scalar: Scalar::Camber,
        side,
        to,
    };
    let left = apart.car.left.camber;
    let edited = apart.edited(&camber(Side::Right, left - 0.5)).unwrap();
    assert!(same(edited.car.left.camber, left));
    assert!(
        matches!(&edited.car.right, RightCorner::Given(right) if same(right.camber, left - 0.5))
    );
    let mirrored = base_car().edited(&camber(Side::Right, -2.0)).unwrap();
    assert!(same(mirrored.car.left.camber, -2.0));
    let wheelbase = CarEdit::WheelNumber {
        scalar: Scalar::Wheelbase,
        side: Side::Left,
        to: 1.0,
    };
    assert!(matches!(
        apart.edited(&wheelbase),
        Err(EditError::NotOfOneWheel { .. })
    ));
}

#[test]
fn a_strut_takes_a_slide_line_and_lets_it_go() {
    let mut setup = car("strut-corner.ron");
    let line = |own| CarEdit::SlideLine { own };
    let refused = setup.edited(&line(false));
    assert!(
        matches!(refused, Err(EditError::Check(_))),
        "an adjustment turns the line"
    );
    setup.car.adjustments.clear();
    let slide = |setup: &Setup, side| setup.car.point(PointName::SlideDirection, side);
    let along = setup.edited(&line(false)).unwrap();
    assert_eq!(slide(&along, Side::Left), None);
    let given = along.edited(&line(true)).unwrap();
    let axis = given.car.left.kingpin_upper.point() - given.car.left.kingpin_lower.point();
    let own = slide(&given, Side::Left).unwrap().vector();
    assert!(own.cross(&axis).norm() < 1e-9 * axis.norm());
    assert_eq!(
        setup.edited(&line(true)).unwrap(),
        setup,
        "its own line stays"
    );
    let apart = along.edited(&CarEdit::SeparateSides).unwrap();
    let given = apart.edited(&line(true)).unwrap();
    assert!(slide(&given, Side::Right).unwrap().1 * own.y < 0.0);
}

#[test]
fn a_stock_is_renamed_with_the_stacks_that_take_from_it() {
    let setup = cars().find(|setup| !setup.car.stock.is_empty()).unwrap();
    let before = setup.car.stock[0].name.clone();
    let rename = |index, name: &str| CarEdit::RenameStock {
        index,
        name: name.to_owned(),
    };
    let renamed = setup.edited(&rename(0, "Shim box")).unwrap();
    assert_eq!(renamed.car.stock[0].name, "Shim box");
    assert_eq!(renamed.edited(&rename(0, &before)).unwrap(), setup);
    assert!(matches!(
        setup.edited(&rename(99, "Shim box")),
        Err(EditError::NoSuchStock { index: 99, .. })
    ));
}
