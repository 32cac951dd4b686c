//! Looking at the car and reading it off: the views, what they show on demand, measuring, spacer buttons.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{
    App, click, command_key, drag, drag_and_drop, handle, release, set_slider, setup, value,
    window, window_on,
};
use eframe::egui::{
    Event, Key, Modifiers, MouseWheelSource, MouseWheelUnit, PointerButton, Pos2, Shape,
    TouchDeviceId, TouchId, TouchPhase, Vec2, pos2, vec2,
};
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft::commands::Command;
use steerloft::state::{Document, Overlay, Shown};
use steerloft::theme::Tokens;
use steerloft_setup::setup::Chosen;
use steerloft_setup::supplied::SUPPLIED;
use steerloft_sheet::View;

const SHAFT: &str = "Steering drive axis (top view)";
const OUTER: &str = "Outer tie-rod ball, left";
const INNER: &str = "Inner tie-rod ball, left";

fn shown(app: &App) -> &Shown {
    app.state().bench().derived().shown().unwrap()
}

/// Everything written in the window, painted writing included.
fn written(app: &App) -> Vec<String> {
    fn gather(shape: &Shape, texts: &mut Vec<String>) {
        match shape {
            Shape::Text(text) => texts.push(text.galley.text().to_owned()),
            Shape::Vec(shapes) => shapes.iter().for_each(|shape| gather(shape, texts)),
            _ => {}
        }
    }
    let mut texts = Vec::new();
    for clipped in &app.output().shapes {
        gather(&clipped.shape, &mut texts);
    }
    texts
}

fn turn_wheel(app: &mut App, at: Pos2, delta: Vec2, source: MouseWheelSource) {
    app.hover_at(at);
    app.run();
    app.event(Event::MouseWheel {
        unit: MouseWheelUnit::Point,
        delta,
        phase: TouchPhase::Move,
        source,
        modifiers: Modifiers::NONE,
    });
    app.run_steps(12);
    app.run();
}

fn click_at(app: &mut App, at: Pos2) {
    app.hover_at(at);
    app.run();
    app.drag_at(at);
    app.run();
    release(app, at);
}

fn touch(phase: TouchPhase, pos: Pos2) -> Event {
    Event::Touch {
        device_id: TouchDeviceId(1),
        id: TouchId(1),
        phase,
        pos,
        force: None,
    }
}

fn button(pos: Pos2, pressed: bool) -> Event {
    Event::PointerButton {
        pos,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::NONE,
    }
}

fn finger_down(app: &mut App, at: Pos2) {
    let events = &mut app.input_mut().events;
    events.extend([
        touch(TouchPhase::Start, at),
        Event::PointerMoved(at),
        button(at, true),
    ]);
    app.step();
}

fn finger_up(app: &mut App, at: Pos2) {
    let events = &mut app.input_mut().events;
    events.extend([
        touch(TouchPhase::End, at),
        button(at, false),
        Event::PointerGone,
    ]);
    app.run();
}

/// Puts a finger on the screen, moves it and lifts it.
fn finger(app: &mut App, from: Pos2, by: Vec2) {
    finger_down(app, from);
    for step in 1_u8..=8 {
        let at = from + by * (f32::from(step) / 8.0);
        let events = &mut app.input_mut().events;
        events.extend([touch(TouchPhase::Move, at), Event::PointerMoved(at)]);
        app.run();
    }
    finger_up(app, from + by);
}

/// Taps with a finger.
fn tap(app: &mut App, at: Pos2) {
    finger_down(app, at);
    finger_up(app, at);
}

fn fit_turn(app: &mut App) {
    app.key_press_modifiers(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::T);
    app.run();
}

/// How many dashes and lines of the reference's colour are painted.
fn strokes_of_reference(app: &App) -> usize {
    fn count(shape: &Shape) -> usize {
        match shape {
            Shape::Vec(shapes) => shapes.iter().map(count).sum(),
            Shape::LineSegment { stroke, .. } => {
                usize::from(stroke.color == Tokens::LIGHT.reference)
            }
            _ => 0,
        }
    }
    let shapes = app.output().shapes.iter();
    shapes.map(|clipped| count(&clipped.shape)).sum()
}

#[test]
fn the_reference_is_drawn_behind_the_car_where_it_stood() {
    let (mut app, _) = window();
    let before = strokes_of_reference(&app);
    command_key(&mut app, Key::M);
    let from = handle(&app, SHAFT);
    drag_and_drop(&mut app, from, vec2(0.0, -40.0));
    let with = strokes_of_reference(&app);
    assert!(with > before + 20, "{before} {with}");
    app.key_press_modifiers(Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::G);
    app.run();
    assert!(strokes_of_reference(&app) < with);
}

#[test]
fn the_side_view_comes_and_goes_and_zooms_about_the_pointer() {
    let (mut app, _) = window();
    assert!(app.query_by_label("Side view, left side").is_none());
    command_key(&mut app, Key::Num3);
    let name = "Outer tie-rod ball, left (side view)";
    let before = handle(&app, name);
    let scale = |app: &App| {
        let views = &app.state().view().views;
        views.transform(View::Side).unwrap().scale()
    };
    let scale_before = scale(&app);
    turn_wheel(&mut app, before, vec2(0.0, 50.0), MouseWheelSource::Wheel);
    assert!(scale(&app) > scale_before);
    assert!((handle(&app, name) - before).length() < 1.0);
    assert!(
        app.query_by_label("Outer tie-rod ball, right (side view)")
            .is_none(),
        "the near corner hides the far one"
    );
    command_key(&mut app, Key::Num3);
    assert!(app.query_by_label("Side view, left side").is_none());
}

#[test]
fn two_fingers_on_a_touch_pad_move_the_drawing_and_do_not_zoom() {
    let (mut app, _) = window();
    let before = handle(&app, SHAFT);
    let at = before + vec2(0.0, 90.0);
    turn_wheel(&mut app, at, vec2(30.0, -20.0), MouseWheelSource::Trackpad);
    let after = handle(&app, SHAFT);
    assert!(
        (after - before - vec2(30.0, -20.0)).length() < 1.0,
        "{before:?} {after:?}"
    );
}

#[test]
fn a_view_with_the_focus_is_moved_and_zoomed_by_keys() {
    let (mut app, _) = window();
    let before = handle(&app, SHAFT);
    app.get_by_label("Top view").focus();
    app.run();
    app.key_press(Key::ArrowRight);
    app.run();
    let moved = handle(&app, SHAFT);
    assert!(moved.x < before.x - 20.0, "{before:?} {moved:?}");
    let scale = |app: &App| {
        let views = &app.state().view().views;
        views.transform(View::Top).unwrap().scale()
    };
    let scale_before = scale(&app);
    app.key_press(Key::Plus);
    app.run();
    assert!(scale(&app) > scale_before * 1.2);
    command_key(&mut app, Key::Num0);
    assert!((handle(&app, SHAFT) - before).length() < 0.5);
}

#[test]
fn every_overlay_is_switched_by_its_key_and_its_menu_entry_on_every_car() {
    for car in SUPPLIED {
        let (mut app, _) = window_on(Document::unnamed(car.setup()), vec2(1024.0, 700.0));
        let input = setup(&app).car.ranges.input.1;
        set_slider(&mut app, "Steering input", input * 0.6);
        for overlay in Overlay::ALL {
            let key = Command::Show(overlay).shortcut().unwrap();
            let before = app.state().view().views.switches().has(overlay);
            app.key_press_modifiers(key.modifiers, key.logical_key);
            app.run();
            let after = app.state().view().views.switches().has(overlay);
            assert_ne!(before, after, "{}: {overlay:?}", car.title);
        }
        assert_eq!(app.state().bench().derived().trouble(), None);
    }
    let (mut app, _) = window();
    app.get_by_label("View").click();
    app.run();
    app.get_by_label_contains("Show in the views").click();
    app.run();
    app.get_by_label_contains(Overlay::TurnLines.title())
        .click();
    app.run();
    assert!(app.state().view().views.switches().turn_lines);
}

#[test]
fn turn_centre_lines_are_named_and_fitted_down_to_the_rear_axle() {
    let (mut app, _) = window();
    assert!(!written(&app).contains(&"rear axle".to_owned()));
    fit_turn(&mut app);
    let texts = written(&app);
    for text in ["rear axle", "axis of a wheel", "steering axis on the road"] {
        assert!(texts.contains(&text.to_owned()), "{text}: {texts:?}");
    }
    assert!(
        !texts.contains(&"ideal axis of the outer wheel".to_owned()),
        "straight ahead there is no outer wheel"
    );
    let rear = shown(&app).assembly().axle().rear_axle_behind();
    let transform = app.state().view().views.transform(View::Top).unwrap();
    let area = app.get_by_label("Top view").rect();
    assert!(area.contains(transform.to_screen([0.0, -rear])));
    set_slider(&mut app, "Steering input", 20.0);
    assert!(written(&app).contains(&"ideal axis of the outer wheel".to_owned()));
    command_key(&mut app, Key::T);
    assert!(!written(&app).contains(&"rear axle".to_owned()));
    let transform = app.state().view().views.transform(View::Top).unwrap();
    let area = app.get_by_label("Top view").rect();
    assert!(
        !area.contains(transform.to_screen([0.0, -rear])),
        "without the lines the car has the room again"
    );
}

#[test]
fn the_gap_between_the_cups_is_written_on_each_rod() {
    let (mut app, _) = window();
    let gap = |app: &App| {
        let rod = shown(app).study.tie_rods().left;
        steerloft::format::number(rod.gap, 1)
    };
    let count = |app: &App, text: &str| written(app).iter().filter(|one| *one == text).count();
    let at_first = gap(&app);
    let with = count(&app, &at_first);
    assert!(with >= 2, "one on each side of a mirrored car");
    command_key(&mut app, Key::G);
    assert_eq!(count(&app, &at_first), with - 2);
    command_key(&mut app, Key::G);
    let from = handle(&app, SHAFT);
    drag_and_drop(&mut app, from, vec2(0.0, -40.0));
    let after = gap(&app);
    assert_ne!(after, at_first);
    assert!(count(&app, &after) >= 2, "it follows the setup");
}

#[test]
fn two_clicked_joints_give_their_true_distance_which_follows_the_pose() {
    let (mut app, _) = window();
    command_key(&mut app, Key::D);
    app.get_by_label_contains("Click a joint");
    let from = handle(&app, &format!("Measure at {INNER} (front view)"));
    click_at(&mut app, from + vec2(3.0, 2.0));
    app.get_by_label_contains("click where to");
    let to = handle(&app, &format!("Measure at {OUTER} (top view)"));
    click_at(&mut app, to);
    let expected = |app: &App| {
        let corner = shown(app).pose.corners.left;
        let by = corner.steering_arm - corner.rod_inner;
        let number = |value: f64| steerloft::format::signed(value, 2);
        format!(
            "{INNER} \u{2013} {OUTER}: {} mm   dx {}   dy {}   dz {}",
            steerloft::format::number(by.norm(), 2),
            number(by.x),
            number(by.y),
            number(by.z)
        )
    };
    let straight = expected(&app);
    app.get_by_label(&straight);
    set_slider(&mut app, "Steering input", 15.0);
    let steered = expected(&app);
    assert_ne!(straight, steered, "the ball moves");
    app.get_by_label(&steered);
    assert!(setup(&app).chosen.is_empty(), "measuring changes nothing");
}

#[test]
fn places_that_are_no_joints_are_measured_within_the_plane_of_their_view() {
    let (mut app, _) = window();
    command_key(&mut app, Key::D);
    let scale = app
        .state()
        .view()
        .views
        .transform(View::Front)
        .unwrap()
        .scale();
    let area = app.get_by_label("Front view, looking forward").rect();
    let from = pos2(area.left() + 30.0, area.top() + 30.0);
    click_at(&mut app, from);
    click_at(&mut app, from + vec2(30.0, 40.0));
    let distance = steerloft::format::number(50.0 / scale, 2);
    app.get_by_label_contains(&format!("{distance} mm in the plane of the front view"));
    app.key_press(Key::Escape);
    app.run();
    app.get_by_label_contains("Click a joint");
    app.key_press(Key::Escape);
    app.run();
    assert!(app.state().view().views.measuring().is_none());
    command_key(&mut app, Key::D);
    click(&mut app, "End measuring");
    assert!(app.state().view().views.measuring().is_none());
}

#[test]
fn a_joint_is_measured_from_by_keyboard() {
    let (mut app, _) = window();
    command_key(&mut app, Key::D);
    for place in ["Tyre on the road, left", "Wheel centre, left"] {
        let name = format!("Measure at {place} (front view)");
        app.get_by_label(&name).focus();
        app.run();
        app.key_press(Key::Enter);
        app.run();
    }
    let radius = setup(&app).car.left.tyre_radius;
    let radius = steerloft::format::number(radius, 2);
    app.get_by_label_contains(&format!("Wheel centre, left: {radius} mm"));
}

#[test]
fn a_finger_takes_a_handle_from_farther_off_than_a_mouse_does() {
    let off = vec2(0.0, 20.0);
    let by = vec2(0.0, -60.0);
    let (mut app, _) = window();
    let at = handle(&app, SHAFT);
    drag_and_drop(&mut app, at + off, by);
    assert!(setup(&app).chosen.is_empty(), "a mouse moves the drawing");
    assert!((handle(&app, SHAFT) - at).length() > 20.0);

    let (mut app, _) = window();
    let at = handle(&app, SHAFT);
    finger(&mut app, at + off, by);
    let Chosen::Slide(station) = value(&app, "Servo station") else {
        panic!("a slide")
    };
    assert!(station > 1.0, "a finger takes the servo: {station}");
}

#[test]
fn of_two_handles_under_the_pointer_the_nearer_one_is_taken() {
    let (mut app, _) = window();
    let names: Vec<String> = shown(&app)
        .handles
        .iter()
        .map(|handle| steerloft::ui::views::handle_name(handle.point, handle.side, View::Front))
        .filter(|name| app.query_by_label(name).is_some())
        .collect();
    let places: Vec<Pos2> = names.iter().map(|name| handle(&app, name)).collect();
    let mut tried = 0;
    for (index, at) in places.iter().enumerate() {
        for other in places
            .iter()
            .enumerate()
            .filter(|(other, _)| *other != index)
        {
            let apart = other.1.distance(*at);
            if !(6.0..20.0).contains(&apart) {
                continue;
            }
            // Just on this side of the middle.
            let press = *at + (*other.1 - *at) * 0.42;
            let nearest = places
                .iter()
                .min_by(|a, b| a.distance(press).total_cmp(&b.distance(press)));
            if nearest != Some(at) {
                continue;
            }
            tap(&mut app, press);
            let (point, side) = app.state().bench().selected().unwrap();
            let selected = steerloft::ui::views::handle_name(point, side, View::Front);
            assert_eq!(selected, names[index]);
            tried += 1;
        }
    }
    assert!(tried > 0, "no two handles overlap");
}

#[test]
fn spacers_are_added_and_taken_beside_their_stack_as_far_as_there_are_parts() {
    let (mut app, _) = window();
    let name = |word: &str| format!("Outer rod spacers, left: {word} (front view)");
    let at_first = value(&app, "Outer rod spacers");
    let more = handle(&app, &name("one more"));
    click_at(&mut app, more);
    let Chosen::Stack(thicker) = value(&app, "Outer rod spacers") else {
        panic!("a stack")
    };
    assert_ne!(Chosen::Stack(thicker), at_first);
    assert!(
        app.state()
            .bench()
            .undo_label()
            .unwrap()
            .starts_with("Outer rod spacers"),
        "each click is a step"
    );
    let less = handle(&app, &name("one less"));
    click_at(&mut app, less);
    assert_eq!(value(&app, "Outer rod spacers"), at_first);
    for _ in 0..40 {
        if app
            .get_by_label(&name("one more"))
            .accesskit_node()
            .is_disabled()
        {
            break;
        }
        app.get_by_label(&name("one more")).click_accesskit();
        app.run();
    }
    let index = crate::common::adjustment(&app, "Outer rod spacers");
    let adjustment = &setup(&app).car.adjustments[index];
    let thickest = adjustment.values().unwrap().pop().unwrap();
    assert_eq!(value(&app, "Outer rod spacers"), thickest);
    assert!(
        app.get_by_label(&name("one more"))
            .accesskit_node()
            .is_disabled()
    );
}

#[test]
fn every_stack_of_every_car_has_its_buttons_in_some_view() {
    for car in SUPPLIED {
        let (mut app, _) = window_on(Document::unnamed(car.setup()), vec2(1280.0, 800.0));
        command_key(&mut app, Key::Num3);
        let stacks: Vec<String> = setup(&app)
            .car
            .adjustments
            .iter()
            .filter(|adjustment| matches!(adjustment.base(), Chosen::Stack(_)))
            .map(|adjustment| adjustment.name.clone())
            .collect();
        for stack in stacks {
            let found = ["top view", "front view", "side view"].iter().any(|view| {
                let name = format!("{stack}, left: one more ({view})");
                app.query_by_label(&name).is_some()
            });
            assert!(found, "{}: {stack}", car.title);
        }
    }
}

#[test]
fn measuring_ends_a_drag() {
    let (mut app, _) = window();
    let from = handle(&app, SHAFT);
    drag(&mut app, from, vec2(0.0, -30.0));
    command_key(&mut app, Key::D);
    let before = setup(&app).clone();
    app.hover_at(from + vec2(0.0, -60.0));
    app.run();
    assert_eq!(*setup(&app), before);
    release(&mut app, from + vec2(0.0, -60.0));
}
