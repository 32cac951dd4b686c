//! Describing the car itself: from nothing to a curve, points typed and dragged, adjustments written, sides.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{
    App, click, command_key, drag, drag_and_drop, enter, handle, press, release, setup, value,
    window, write,
};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft::units::Units;
use steerloft_analysis::curves::CurveKind;
use steerloft_setup::adjustment::{Effect, Kind, PointName};
use steerloft_setup::car::{Drive, Position, RightCorner, Suspension};
use steerloft_setup::edit::{DriveKind, SuspensionKind};
use steerloft_setup::setup::Chosen;
use steerloft_sheet::View;
use steerloft_solver::frame::Side;

/// Complaints beside fields.
fn complaints(app: &App) -> Vec<String> {
    let labels = app.query_all_by_role(Role::Label);
    let texts = labels.filter_map(|label| label.accesskit_node().value());
    texts.filter(|text| text.contains(": ")).collect()
}

fn point(app: &App, point: PointName, side: Side) -> Position {
    setup(app).car.point(point, side).unwrap()
}

fn near(a: Position, b: Position) -> bool {
    (a.point() - b.point()).norm() < 1e-9
}

fn undo_label(app: &App) -> &str {
    app.state().bench().undo_label().unwrap_or_default()
}

fn describe() -> App {
    let (mut app, _) = window();
    command_key(&mut app, Key::E);
    app
}

fn new_car(app: &mut App, suspension: &str, drive: &str) {
    app.key_press_modifiers(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::N);
    app.run();
    for kind in [suspension, drive] {
        app.get_by_role_and_label(Role::RadioButton, kind).click();
        app.run();
    }
    click(app, "Create");
}

#[test]
fn a_car_from_nothing_comes_to_its_first_curve() {
    let (mut app, _) = window();
    new_car(&mut app, "Strut", "Rack");
    let car = &setup(&app).car;
    assert!(matches!(car.left.suspension, Suspension::Strut { .. }));
    assert!(matches!(car.drive, Drive::Slider { .. }));
    assert!(car.adjustments.is_empty());
    app.get_by_label("The car itself");
    enter(&mut app, "Car name", "Sand car");
    for (field, text) in [
        ("Wheel centre, left y", "84"),
        ("Outer tie-rod ball, left x", "-15,5"),
        ("Outer tie-rod ball, left y", "70+0.5"),
        ("Inner tie-rod ball, left y", "25"),
        ("Inner tie-rod ball, right y", "-25"),
        ("Wheelbase", "262"),
        ("Tyre radius", "32"),
    ] {
        enter(&mut app, field, text);
        let complained = complaints(&app);
        assert!(
            !complained.iter().any(|one| one.starts_with(field)),
            "{complained:?}"
        );
    }
    let ball = point(&app, PointName::SteeringArm, Side::Left);
    assert!(near(ball, Position(-15.5, 70.5, ball.2)), "{ball:?}");
    let bench = app.state().bench();
    assert_eq!(bench.derived().trouble(), None);
    assert_eq!(bench.setup().car.name, "Sand car");
    let shown = bench.derived().shown().unwrap();
    assert!((shown.assembly().axle().wheelbase - 262.0).abs() < 1e-9);
    for kind in [CurveKind::ToeTravel, CurveKind::WheelAngles] {
        let first = &shown.curve(kind).series[0];
        assert!(first.points.len() > 100, "{kind:?}");
    }
    click(&mut app, "Done");
    assert!(app.query_by_label("The car itself").is_none());
}

#[test]
fn every_suspension_with_every_drive_gives_curves_at_once() {
    let (mut app, _) = window();
    let capital = |text: &str| text[..1].to_uppercase() + &text[1..];
    for suspension in SuspensionKind::ALL {
        for drive in DriveKind::ALL {
            let names = [capital(suspension.label()), capital(drive.label())];
            new_car(&mut app, &names[0], &names[1]);
            let bench = app.state().bench();
            assert_eq!(bench.derived().trouble(), None, "{names:?}");
            let shown = bench.derived().shown().unwrap();
            let angles = &shown.curve(CurveKind::WheelAngles).series[0];
            assert!(angles.points.len() > 20, "{names:?}");
            command_key(&mut app, Key::W);
        }
    }
}

#[test]
fn a_point_typed_wrong_says_so_beside_its_field_until_it_is_corrected() {
    let mut app = describe();
    let before = setup(&app).clone();
    let field = "Outer tie-rod ball, left x";
    enter(&mut app, field, "twelve");
    assert_eq!(*setup(&app), before, "nothing is taken");
    let complaint = format!("{field}: ");
    app.get_by_label_contains(&complaint);
    enter(&mut app, field, "1e9");
    assert_eq!(*setup(&app), before, "nor what is no car");
    app.get_by_label_contains(&complaint);
    let Position(x, y, z) = point(&app, PointName::SteeringArm, Side::Left);
    write(&mut app, field, &format!("{}", x - 0.5));
    assert!(
        app.query_by_label_contains(&complaint).is_none(),
        "as it is typed"
    );
    app.key_press(Key::Enter);
    app.run();
    let now = point(&app, PointName::SteeringArm, Side::Left);
    assert!(near(now, Position(x - 0.5, y, z)), "{now:?}");
    assert!(
        undo_label(&app).starts_with("Outer tie-rod ball, left: ("),
        "{}",
        undo_label(&app)
    );
    command_key(&mut app, Key::Z);
    assert_eq!(*setup(&app), before);
    assert_eq!(
        app.state().bench().undo_label(),
        None,
        "typing was one step"
    );
}

#[test]
fn escape_puts_a_field_back() {
    let mut app = describe();
    let before = setup(&app).clone();
    write(&mut app, "Wheelbase", "300");
    assert!((setup(&app).car.wheelbase - 300.0).abs() < 1e-9);
    app.key_press(Key::Escape);
    app.run();
    assert_eq!(*setup(&app), before);
}

#[test]
fn a_point_is_dragged_in_a_view_and_nudged_by_keys() {
    let mut app = describe();
    let name = "Outer tie-rod ball, left (top view)";
    let before = point(&app, PointName::SteeringArm, Side::Left);
    let views = &app.state().view().views;
    let scale = views.transform(View::Top).unwrap().scale();
    #[allow(clippy::cast_possible_truncation, reason = "a place on screen")]
    let by = vec2(0.0, (-1.52 * scale) as f32);
    let from = handle(&app, name);
    drag_and_drop(&mut app, from, by);
    let now = point(&app, PointName::SteeringArm, Side::Left);
    assert!((now.0 - before.0 - 1.5).abs() < 0.06, "{before:?} {now:?}");
    assert!(
        (now.0 * 10.0 - (now.0 * 10.0).round()).abs() < 1e-9,
        "whole tenths"
    );
    assert_eq!(
        (now.1.to_bits(), now.2.to_bits()),
        (before.1.to_bits(), before.2.to_bits())
    );
    let right = point(&app, PointName::SteeringArm, Side::Right);
    assert!(
        near(right, Position(now.0, -now.1, now.2)),
        "the other mirrors it"
    );
    assert!(setup(&app).chosen.is_empty(), "no adjustment is driven");
    app.get_by_label(name).focus();
    app.run();
    app.key_press(Key::ArrowUp);
    app.run();
    let nudged = point(&app, PointName::SteeringArm, Side::Left);
    assert!((nudged.0 - now.0 - 0.1).abs() < 1e-9);
    command_key(&mut app, Key::Z);
    command_key(&mut app, Key::Z);
    assert!(near(
        point(&app, PointName::SteeringArm, Side::Left),
        before
    ));
    let from = handle(&app, name);
    drag(&mut app, from, by);
    app.key_press(Key::Escape);
    app.run();
    assert!(near(
        point(&app, PointName::SteeringArm, Side::Left),
        before
    ));
    release(&mut app, from + by);
}

#[test]
fn the_guide_says_from_where_to_where_a_point_is_measured() {
    let mut app = describe();
    assert!(
        app.query_by_label_contains("From the centre line to the left")
            .is_none()
    );
    press(&mut app, "How to measure: Outer tie-rod ball");
    app.get_by_label_contains(
        "From the centre line to the left to the centre of the ball on the steering arm",
    );
    app.get_by_label_contains("From the underside of the chassis plate up");
    press(&mut app, "How to measure: Outer tie-rod ball");
    assert!(
        app.query_by_label_contains("From the centre line to the left")
            .is_none()
    );
}

#[test]
fn an_adjustment_is_written_added_and_used() {
    let mut app = describe();
    let count = setup(&app).car.adjustments.len();
    press(&mut app, "Add an adjustment");
    assert!(
        app.get_by_role_and_label(Role::Button, "Add to the car")
            .accesskit_node()
            .is_disabled(),
        "it has no name yet"
    );
    write(&mut app, "Adjustment name", "Servo station");
    app.get_by_label_contains("give each its own name");
    write(&mut app, "Adjustment name", "Arm slot");
    choose(
        &mut app,
        "Adjustment effect 1: add a point",
        "Outer tie-rod ball",
    );
    write(&mut app, "Least value", "4");
    app.run();
    assert!(
        app.get_by_role_and_label(Role::Button, "Add to the car")
            .accesskit_node()
            .is_disabled(),
        "the range does not hold the base"
    );
    write(&mut app, "Least value", "-2");
    write(&mut app, "Greatest value", "2");
    press(&mut app, "Add to the car");
    assert_eq!(setup(&app).car.adjustments.len(), count + 1);
    assert_eq!(undo_label(&app), "Arm slot added");
    click(&mut app, "Done");
    crate::common::set_slider(&mut app, "Arm slot", 1.5);
    assert_eq!(value(&app, "Arm slot"), Chosen::Slide(1.5));
    let shown = app.state().bench().derived().shown().unwrap();
    let base = point(&app, PointName::SteeringArm, Side::Left).0;
    let moved = shown.layout().axle.corners.left.knuckle.steering_arm.x;
    assert!(
        (moved - base - 1.5).abs() < 1e-9,
        "it moves the ball forward"
    );
    command_key(&mut app, Key::E);
    press(&mut app, "Edit Arm slot");
    write(&mut app, "Adjustment name", "Arm groove");
    press(&mut app, "Take over");
    assert_eq!(
        value(&app, "Arm groove"),
        Chosen::Slide(1.5),
        "what is chosen stays"
    );
    assert_eq!(undo_label(&app), "Arm slot renamed Arm groove");
    press(&mut app, "Remove Arm groove");
    assert_eq!(setup(&app).car.adjustments.len(), count);
    assert_eq!(undo_label(&app), "Arm groove removed");
    command_key(&mut app, Key::Z);
    assert_eq!(value(&app, "Arm groove"), Chosen::Slide(1.5));
}

#[test]
fn an_adjustment_is_written_in_inches_where_they_are_shown() {
    let mut app = describe();
    app.state_mut().view_mut().preferences.units = Units::Inches;
    app.run();
    press(&mut app, "Add an adjustment");
    app.get_by_label("by, in per inch");
    write(&mut app, "Adjustment name", "Arm slot");
    choose(
        &mut app,
        "Adjustment effect 1: add a point",
        "Outer tie-rod ball",
    );
    write(&mut app, "Least value", "-1/8");
    write(&mut app, "Greatest value", "0.25");
    press(&mut app, "Add to the car");
    let slide = |app: &App| {
        let added = setup(app).car.adjustments.last().unwrap();
        match &added.kind {
            Kind::Slide {
                range,
                step,
                effects,
                ..
            } => (*range, *step, effects.clone()),
            other => panic!("{other:?}"),
        }
    };
    let written = slide(&app);
    assert_eq!((written.0, written.1), ((-3.175, 6.35), Some(0.5)));
    assert!(matches!(
        written.2[0],
        Effect::Move { by, .. } if by == Position(1.0, 0.0, 0.0)
    ));
    // Opened and taken over it is what it was, to the last digit.
    press(&mut app, "Edit Arm slot");
    press(&mut app, "Take over");
    assert_eq!(slide(&app), written);
}

/// Opens a list and clicks one of it.
fn choose(app: &mut App, list: &str, entry: &str) {
    app.get_by_label(list).click_accesskit();
    app.run();
    app.get_all_by_label(entry)
        .last()
        .unwrap()
        .click_accesskit();
    app.run();
}

#[test]
fn sides_are_separated_and_mirrored_again() {
    let mut app = describe();
    let field = "Outer tie-rod ball, right y";
    assert!(app.query_by_label(field).is_none());
    let radio = |app: &mut App, name: &str| {
        app.get_by_role_and_label(Role::RadioButton, name).click();
        app.run();
    };
    radio(&mut app, "Right corner: its own points");
    assert!(matches!(setup(&app).car.right, RightCorner::Given(_)));
    assert_eq!(undo_label(&app), "Right side given separately");
    let left = point(&app, PointName::SteeringArm, Side::Left);
    enter(&mut app, field, &format!("{}", -left.1 - 0.4));
    let right = point(&app, PointName::SteeringArm, Side::Right);
    assert!((right.1 + left.1 + 0.4).abs() < 1e-9);
    assert!(near(point(&app, PointName::SteeringArm, Side::Left), left));
    let shown = app.state().bench().derived().shown().unwrap();
    let lengths = shown.assembly().rod_lengths();
    assert!(
        (lengths.left - lengths.right).abs() > 0.01,
        "the sides differ"
    );
    radio(&mut app, "Right corner: mirrors the left");
    assert_eq!(setup(&app).car.right, RightCorner::Mirrored);
    let right = point(&app, PointName::SteeringArm, Side::Right);
    assert!(near(right, Position(left.0, -left.1, left.2)));
    command_key(&mut app, Key::Z);
    assert!(matches!(setup(&app).car.right, RightCorner::Given(_)));
}

#[test]
fn every_supplied_car_is_described_with_all_its_points() {
    for car in steerloft_setup::supplied::SUPPLIED {
        let document = steerloft::state::Document::unnamed(car.setup());
        let (mut app, _) = crate::common::window_on(document, vec2(1024.0, 700.0));
        command_key(&mut app, Key::E);
        for measured in steerloft_setup::measuring::guide(setup(&app)) {
            if measured.point.is_some() {
                app.get_by_label(&format!("How to measure: {}", measured.name));
            }
        }
        let adjustments: Vec<String> = setup(&app)
            .car
            .adjustments
            .iter()
            .map(|adjustment| adjustment.name.clone())
            .collect();
        for name in adjustments {
            press(&mut app, &format!("Edit {name}"));
            let before = setup(&app).clone();
            press(&mut app, "Take over");
            assert_eq!(*setup(&app), before, "{}: {name}", car.title);
        }
    }
}
