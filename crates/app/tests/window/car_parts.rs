//! Describing the parts of a car beside its points: links, spacers at hand, joints, thread, sizes, obstacles, and its kind.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{App, click, command_key, enter, press, setup, window, window_on, write};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft::state::{Bench, Change, Cursor, Document};
use steerloft::units::Units;
use steerloft_analysis::curves::CurveKind;
use steerloft_setup::adjustment::{Kind, Member};
use steerloft_setup::car::{
    Drive, DrivenCrank, Hands, InnerBallsOn, RightCorner, Shape, Suspension,
};
use steerloft_setup::edit::{CarEdit, DriveKind, SuspensionKind};
use steerloft_setup::supplied::SUPPLIED;

/// A supplied car, being described.
fn describe(file_name: &str) -> App {
    let mut cars = SUPPLIED.iter();
    let car = cars.find(|car| car.file_name == file_name).unwrap();
    let (mut app, _) = window_on(Document::unnamed(car.setup()), vec2(1280.0, 800.0));
    command_key(&mut app, Key::E);
    app
}

/// What stands in a field.
fn shown(app: &App, name: &str) -> String {
    let field = app.get_by_role_and_label(Role::TextInput, name);
    field.accesskit_node().value().unwrap_or_default()
}

fn radio(app: &mut App, name: &str) {
    app.get_by_role_and_label(Role::RadioButton, name)
        .click_accesskit();
    app.run();
}

fn undo_label(app: &App) -> &str {
    app.state().bench().undo_label().unwrap_or_default()
}

fn undo(app: &mut App) {
    command_key(app, Key::Z);
}

fn is_enabled(app: &App, button: &str) -> bool {
    !app.get_by_role_and_label(Role::Button, button)
        .accesskit_node()
        .is_disabled()
}

#[test]
fn a_link_gets_a_length_of_its_own_and_is_drawn_again() {
    let mut app = describe("touring-car.ron");
    let before = setup(&app).clone();
    let drawn = before.car.link_length(Member::DragLink).unwrap();
    assert!(!is_enabled(&app, "Drag-link length as drawn"));
    enter(&mut app, "Drag-link length", "51.5");
    let length = setup(&app).car.link_length(Member::DragLink);
    assert_eq!(length, Some(51.5));
    assert!(
        undo_label(&app).starts_with("Drag-link length: 51")
            && undo_label(&app).ends_with(" to 51.5 mm"),
        "{}",
        undo_label(&app)
    );
    enter(&mut app, "Drag-link length", "-3");
    app.get_by_label_contains("Drag-link length: ");
    assert_eq!(setup(&app).car.link_length(Member::DragLink), length);
    press(&mut app, "Drag-link length as drawn");
    assert_eq!(setup(&app).car, before.car);
    enter(&mut app, "Cross-link length", "54,2");
    let crossed = setup(&app).car.link_length(Member::CrossLink);
    assert_eq!(crossed, Some(54.2));
    assert!(drawn > 1.0);
}

#[test]
fn the_driven_crank_and_what_carries_the_inner_balls_are_chosen() {
    let mut app = describe("touring-car.ron");
    radio(&mut app, "Driven crank: right");
    let driven = |app: &App| match setup(app).car.drive {
        Drive::TwinCrank {
            driven, inner_on, ..
        } => (driven, inner_on),
        _ => panic!("the touring car has twin cranks"),
    };
    assert_eq!(driven(&app).0, DrivenCrank::Right);
    assert_eq!(undo_label(&app), "Driven crank: left to right");
    undo(&mut app);
    let before = setup(&app).clone();
    radio(&mut app, "Inner balls on: cross link");
    assert_eq!(*setup(&app), before, "adjustments would take them off it");
    app.get_by_label_contains("beside the cross link");
    let mut app = describe("buggy-front-end.ron");
    radio(&mut app, "Inner balls on: cranks");
    assert_eq!(driven(&app).1, InnerBallsOn::Cranks);
    assert_eq!(undo_label(&app), "Inner balls on the cranks");
    let app = describe("kart.ron");
    assert!(app.query_by_label("Cranks and links").is_none());
}

#[test]
fn spacers_at_hand_are_written_checked_and_taken_from() {
    let mut app = describe("pan-car-swinging-arm.ron");
    let boxes = setup(&app).car.stock.len();
    press(&mut app, "Add a box of spacers");
    assert_eq!(setup(&app).car.stock.len(), boxes + 1);
    let owner = format!("Box {}", boxes + 1);
    let name = format!("{owner} name");
    enter(&mut app, &name, "Thin shims");
    assert_eq!(setup(&app).car.stock[boxes].name, "Thin shims");
    assert!(undo_label(&app).ends_with("renamed Thin shims"));
    let spacers = format!("{owner} spacers");
    write(&mut app, &spacers, "4 x 0.2, many");
    app.get_by_label_contains("is no spacer");
    enter(&mut app, &spacers, "4 x 0,25; 6 x 0.5+0.5");
    let parts = &setup(&app).car.stock[boxes].parts;
    let held: Vec<(u32, f64)> = parts
        .iter()
        .map(|part| (part.count, part.thickness))
        .collect();
    assert_eq!(held, [(4, 0.25), (6, 1.0)]);
    assert_eq!(undo_label(&app), "Spacers in Thin shims");
    app.state_mut().view_mut().preferences.units = Units::Inches;
    app.run();
    app.run();
    assert_eq!(shown(&app, &spacers), "4 x 0.00984, 6 x 0.03937");
    enter(&mut app, &spacers, "4 x 1/32");
    let part = setup(&app).car.stock[boxes].parts[0];
    assert!((part.thickness - 0.794).abs() < 1e-9, "{part:?}");
    press(&mut app, &format!("Remove {owner}"));
    assert_eq!(setup(&app).car.stock.len(), boxes);
    assert!(undo_label(&app).ends_with("Thin shims removed"));
}

#[test]
fn a_stack_takes_from_a_box_and_the_box_then_stays() {
    let mut app = describe("pan-car-swinging-arm.ron");
    let stack = setup(&app).car.adjustments.iter().find_map(|adjustment| {
        let Kind::Stack { parts, .. } = &adjustment.kind else {
            return None;
        };
        Some((adjustment.name.clone(), parts.clone()))
    });
    let (name, parts) = stack.unwrap();
    let boxes = setup(&app).car.stock.len();
    press(&mut app, "Add a box of spacers");
    let text: Vec<String> = parts
        .iter()
        .map(|part| format!("{} x {}", part.count * 2, part.thickness))
        .collect();
    enter(
        &mut app,
        &format!("Box {} spacers", boxes + 1),
        &text.join(", "),
    );
    press(&mut app, &format!("Edit {name}"));
    app.get_by_label("Box of spacers").click_accesskit();
    app.run();
    let added = setup(&app).car.stock[boxes].name.clone();
    app.get_all_by_label(&added)
        .last()
        .unwrap()
        .click_accesskit();
    app.run();
    write(&mut app, "Places of the stack", "none");
    app.get_by_label_contains("is no number of places");
    write(&mut app, "Places of the stack", "2");
    press(&mut app, "Take over");
    let taken = setup(&app).car.adjustments.iter().any(|adjustment| {
        matches!(&adjustment.kind, Kind::Stack { stock: Some(from), .. }
            if from.name == added && from.places == 2)
    });
    assert!(taken);
    assert!(!is_enabled(&app, &format!("Remove Box {}", boxes + 1)));
    enter(&mut app, &format!("Box {} name", boxes + 1), "Washers");
    let renamed = setup(&app).car.adjustments.iter().any(|adjustment| {
        matches!(&adjustment.kind, Kind::Stack { stock: Some(from), .. } if from.name == "Washers")
    });
    assert!(renamed, "the stack goes along");
}

#[test]
fn thread_joints_and_sizes_are_given_written_and_left_out() {
    let (mut app, _) = window();
    app.key_press_modifiers(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::N);
    app.run();
    click(&mut app, "Create");
    press(&mut app, "Give the thread");
    assert_eq!(undo_label(&app), "Thread given");
    enter(&mut app, "Thread pitch", "0.7");
    assert_eq!(undo_label(&app), "Thread pitch: 0.5 to 0.7 mm");
    radio(&mut app, "Hands of the thread: alike");
    let thread = setup(&app).car.tie_rod.thread.unwrap();
    assert_eq!((thread.pitch, thread.hands), (0.7, Hands::Same));
    assert_eq!(undo_label(&app), "Hands of the thread");
    enter(&mut app, "Threaded rod", "20");
    app.get_by_label_contains("Threaded rod: ");
    press(&mut app, "Leave out the thread");
    assert_eq!(undo_label(&app), "Thread left out");
    press(&mut app, "Give the ball joints");
    enter(&mut app, "Ball joint limit", "22");
    assert_eq!(undo_label(&app), "Ball joint limit: 25 to 22\u{b0}");
    radio(&mut app, "Right studs: their own");
    assert_eq!(undo_label(&app), "Right studs given separately");
    enter(&mut app, "Inner stud, right x", "0.1");
    assert_eq!(undo_label(&app), "Inner stud turned");
    let joints = setup(&app).car.joints.unwrap();
    assert!((joints.inner_stud_right.unwrap().0 - 0.1).abs() < 1e-12);
    assert!((joints.most - 22.0).abs() < 1e-12);
    press(&mut app, "Give the inside of the wheel");
    enter(&mut app, "Bore reaches inboard", "11");
    enter(&mut app, "Disc lies inboard", "12");
    app.get_by_label_contains("Disc lies inboard: ");
    enter(&mut app, "Disc lies inboard", "-2");
    press(&mut app, "Give the diameters");
    enter(&mut app, "Rod diameter", "1/4 in");
    let clearances = setup(&app).car.clearances.unwrap();
    let rim = clearances.rim.unwrap();
    assert!((rim.inboard - 11.0).abs() < 1e-12 && (rim.disc + 2.0).abs() < 1e-12);
    assert!((clearances.rod_diameter.unwrap() - 6.35).abs() < 1e-12);
    press(&mut app, "Leave out the inside of the wheel");
    press(&mut app, "Leave out the diameters");
    assert_eq!(setup(&app).car.clearances, None);
    undo(&mut app);
    undo(&mut app);
    assert_eq!(setup(&app).car.clearances, Some(clearances));
}

#[test]
fn obstacles_are_added_measured_and_taken_away() {
    let mut app = describe("kart.ron");
    let count = setup(&app).car.obstacles.len();
    press(&mut app, "Add an obstacle");
    let owner = format!("Obstacle {}", count + 1);
    enter(&mut app, &format!("{owner} name"), "tank");
    assert!(
        undo_label(&app).ends_with("renamed tank"),
        "{}",
        undo_label(&app)
    );
    enter(&mut app, &format!("{owner} centre x"), "-120");
    assert_eq!(
        undo_label(&app),
        "Obstacle tank, place x: \u{2212}60 to \u{2212}120 mm"
    );
    enter(&mut app, &format!("{owner} size z"), "0");
    app.get_by_label_contains(&format!("{owner} size z: "));
    enter(&mut app, &format!("{owner} size z"), "40");
    radio(&mut app, &format!("{owner} shape: plane"));
    let shape = setup(&app).car.obstacles[count].shape;
    assert!(matches!(shape, Shape::Plane { point, .. } if (point.0 + 120.0).abs() < 1e-12));
    enter(&mut app, &format!("{owner} free to y"), "0,5");
    app.get_by_label(&format!("{owner} on both sides"))
        .click_accesskit();
    app.run();
    let obstacle = &setup(&app).car.obstacles[count];
    assert!(obstacle.mirrored);
    assert!(matches!(obstacle.shape, Shape::Plane { free, .. } if (free.1 - 0.5).abs() < 1e-12));
    press(&mut app, "Add an obstacle");
    enter(&mut app, &format!("Obstacle {} name", count + 2), "tank");
    app.get_by_label_contains("used twice");
    press(&mut app, &format!("Remove {owner}"));
    assert_eq!(setup(&app).car.obstacles.len(), count + 1);
    assert_eq!(undo_label(&app), "Obstacle tank removed");
    assert!(
        app.query_by_label_contains("used twice").is_none(),
        "what was typed belonged to the list before"
    );
}

#[test]
fn wheels_have_numbers_of_their_own_once_the_sides_are_apart() {
    let mut app = describe("pan-car-swinging-arm.ron");
    assert!(app.query_by_label("Camber, right").is_none());
    radio(&mut app, "Right corner: its own points");
    enter(&mut app, "Camber, right", "-1.75");
    let RightCorner::Given(right) = &setup(&app).car.right else {
        panic!("the sides are apart");
    };
    assert!((right.camber + 1.75).abs() < 1e-12);
    assert!((setup(&app).car.left.camber + 1.75).abs() > 1e-3);
    assert!(undo_label(&app).starts_with("Camber, right: "));
}

#[test]
fn arrow_keys_nudge_the_field_that_has_the_focus() {
    let mut app = describe("pan-car-swinging-arm.ron");
    let before = setup(&app).clone();
    let field = "Wheelbase";
    app.get_by_role_and_label(Role::TextInput, field).focus();
    app.run();
    for key in [Key::ArrowUp, Key::ArrowUp, Key::ArrowUp, Key::ArrowDown] {
        app.key_press(key);
        app.run();
    }
    let by = setup(&app).car.wheelbase - before.car.wheelbase;
    assert!((by - 0.2).abs() < 1e-9, "{by}");
    app.key_press(Key::Enter);
    app.run();
    assert!(undo_label(&app).starts_with("Wheelbase: "));
    undo(&mut app);
    assert_eq!(*setup(&app), before, "one step");
    app.state_mut().view_mut().preferences.units = Units::Inches;
    app.run();
    app.get_by_role_and_label(Role::TextInput, field).focus();
    app.run();
    app.key_press(Key::ArrowUp);
    app.run();
    let by = setup(&app).car.wheelbase - before.car.wheelbase;
    assert!((by - 0.127).abs() < 1e-6, "{by}");
}

#[test]
fn another_kind_is_told_first_taken_and_undone() {
    let mut app = describe("touring-car.ron");
    let before = setup(&app).clone();
    press(&mut app, "Another kind\u{2026}");
    app.get_by_label_contains("This is what the car is.");
    assert!(!is_enabled(&app, "Change"));
    for kind in ["Strut", "Rack"] {
        radio(&mut app, kind);
    }
    app.get_by_label_contains("ront hinge point of the upper arm; rear");
    app.get_by_label("Given up");
    assert_eq!(*setup(&app), before, "nothing is done yet");
    click(&mut app, "Change");
    let car = &setup(&app).car;
    assert!(matches!(car.left.suspension, Suspension::Strut { .. }));
    assert!(matches!(car.drive, Drive::Slider { .. }));
    assert_eq!(
        undo_label(&app),
        "Suspension: double wishbone to strut, twin crank to rack"
    );
    app.get_by_label("The car is of another kind now");
    assert_eq!(app.state().bench().derived().trouble(), None);
    app.state_mut().bench_mut().set_cursor(Cursor {
        input: 3.0,
        travel: 0.0,
    });
    undo(&mut app);
    assert_eq!(*setup(&app), before);
    assert_eq!(app.state().bench().derived().trouble(), None);
}

#[test]
fn every_supplied_car_shows_curves_as_every_kind() {
    for car in SUPPLIED {
        for suspension in SuspensionKind::ALL {
            for drive in DriveKind::ALL {
                let mut bench = Bench::new(Document::unnamed(car.setup()));
                let edit = CarEdit::Kinds { suspension, drive };
                bench.apply(Change::Car(Box::new(edit)));
                let kinds = [suspension.label(), drive.label()];
                let derived = bench.derived();
                assert_eq!(derived.trouble(), None, "{}: {kinds:?}", car.title);
                let shown = derived.shown().unwrap();
                let angles = &shown.curve(CurveKind::WheelAngles).series[0];
                assert!(angles.points.len() > 20, "{}: {kinds:?}", car.title);
                bench.undo();
                assert_eq!(*bench.setup(), car.setup());
            }
        }
    }
}

#[test]
fn a_strut_gets_a_slide_line_in_the_window() {
    let (mut app, _) = window();
    app.key_press_modifiers(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::N);
    app.run();
    app.get_by_role_and_label(Role::RadioButton, "Strut")
        .click();
    app.run();
    click(&mut app, "Create");
    radio(&mut app, "The strut slides: along its own line");
    assert_eq!(undo_label(&app), "Slide line of its own");
    enter(
        &mut app,
        "Direction of the strut's slide line, left y",
        "-0.2",
    );
    let given = match setup(&app).car.left.suspension {
        Suspension::Strut {
            slide_direction, ..
        } => slide_direction,
        _ => None,
    };
    assert!((given.unwrap().1 + 0.2).abs() < 1e-12);
    radio(&mut app, "The strut slides: along the steering axis");
    assert_eq!(undo_label(&app), "Slide line along the steering axis");
}
