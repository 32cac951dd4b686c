//! Dragging pivots in the views.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{
    App, command_key, double_click, drag, drag_and_drop, handle, release, setup, value, window,
};
use eframe::egui::{Event, Key, Modifiers, vec2};
use steerloft_setup::setup::Chosen;
use steerloft_sheet::View;

const SERVO_SHAFT: &str = "Steering drive axis (top view)";
const INNER_BALL_FRONT: &str = "Inner tie-rod ball, left (front view)";
const OUTER_BALL_FRONT: &str = "Outer tie-rod ball, left (front view)";

/// Points on screen for one mm in a view.
fn scale(app: &App, view: View) -> f32 {
    #[allow(clippy::cast_possible_truncation, reason = "a scale on screen")]
    let scale = app.state().view().views.transform(view).unwrap().scale() as f32;
    scale
}

#[test]
fn a_pivot_dragged_in_the_top_view_moves_the_servo() {
    let (mut app, _) = window();
    let from = handle(&app, SERVO_SHAFT);
    let two = vec2(0.0, -2.1 * scale(&app, View::Top));
    drag_and_drop(&mut app, from, two);
    assert_eq!(
        value(&app, "Servo station"),
        Chosen::Slide(2.0),
        "it snaps to the holes"
    );
    assert_eq!(setup(&app).chosen.len(), 1, "nothing else moved");
    assert_eq!(
        app.state().bench().undo_label(),
        Some("Servo station: 0 to 2 mm"),
        "the drag is one step"
    );
    command_key(&mut app, Key::Z);
    assert!(setup(&app).chosen.is_empty());
    assert_eq!(app.state().bench().undo_label(), None);
}

#[test]
fn the_direction_of_the_drag_tells_which_adjustment_is_meant() {
    let (mut app, _) = window();
    let from = handle(&app, SERVO_SHAFT);
    let left = vec2(-1.6 * scale(&app, View::Top), 0.0);
    drag_and_drop(&mut app, from, left);
    assert_eq!(value(&app, "Servo sideways"), Chosen::Slide(1.5));
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(0.0));
}

#[test]
fn alt_frees_a_slide_from_its_steps() {
    let (mut app, _) = window();
    let from = handle(&app, SERVO_SHAFT);
    app.event(Event::ModifiersChanged(Modifiers::ALT));
    let by = vec2(0.0, -1.37 * scale(&app, View::Top));
    drag(&mut app, from, by);
    let Chosen::Slide(station) = value(&app, "Servo station") else {
        panic!("a slide")
    };
    assert!((station - 1.37).abs() < 0.02, "{station}");
    release(&mut app, from + by);
}

#[test]
fn escape_takes_a_drag_back() {
    let (mut app, _) = window();
    let before = setup(&app).clone();
    let from = handle(&app, SERVO_SHAFT);
    let by = vec2(0.0, -3.0 * scale(&app, View::Top));
    drag(&mut app, from, by);
    assert_ne!(*setup(&app), before);
    app.key_press(Key::Escape);
    app.run();
    assert_eq!(*setup(&app), before);
    app.hover_at(from + by * 1.5);
    app.run();
    release(&mut app, from + by * 1.5);
    assert_eq!(*setup(&app), before, "moving on after Escape does nothing");
    assert_eq!(app.state().bench().undo_label(), None);
}

#[test]
fn another_car_ends_a_drag() {
    let (mut app, _) = window();
    let from = handle(&app, SERVO_SHAFT);
    let by = vec2(0.0, -3.0 * scale(&app, View::Top));
    drag(&mut app, from, by);
    command_key(&mut app, Key::Z);
    command_key(&mut app, Key::N);
    if app.state().is_asking_to_save() {
        crate::common::click(&mut app, "Discard");
    }
    app.hover_at(from + by * 2.0);
    app.run();
    assert!(setup(&app).chosen.is_empty());
    release(&mut app, from + by * 2.0);
    assert_eq!(*setup(&app), crate::common::pan_car());
}

#[test]
fn spacers_under_the_outer_ball_follow_a_drag_in_the_front_view() {
    let (mut app, _) = window();
    let from = handle(&app, OUTER_BALL_FRONT);
    let down = vec2(0.0, 2.1 * scale(&app, View::Front));
    drag_and_drop(&mut app, from, down);
    assert_eq!(value(&app, "Outer rod spacers"), Chosen::Stack(1.0));
}

#[test]
fn a_drag_in_a_steered_pose_follows_the_turned_knuckle() {
    let (mut app, _) = window();
    crate::common::set_slider(&mut app, "Steering input", 20.0);
    crate::common::set_slider(&mut app, "Wheel travel", 1.0);
    let from = handle(&app, OUTER_BALL_FRONT);
    let down = vec2(0.0, 2.1 * scale(&app, View::Front));
    drag_and_drop(&mut app, from, down);
    assert_eq!(value(&app, "Outer rod spacers"), Chosen::Stack(1.0));
}

#[test]
fn arrow_keys_nudge_the_pivot_that_was_clicked() {
    let (mut app, _) = window();
    let at = handle(&app, SERVO_SHAFT);
    app.hover_at(at);
    app.run();
    app.drag_at(at);
    app.run();
    release(&mut app, at);
    assert!(app.state().bench().selected().is_some());
    app.key_press(Key::ArrowUp);
    app.run();
    app.key_press(Key::ArrowUp);
    app.run();
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(2.0));
    app.key_press(Key::ArrowRight);
    app.run();
    assert_eq!(value(&app, "Servo sideways"), Chosen::Slide(-0.5));
}

#[test]
fn a_double_click_puts_a_pivot_back_to_base() {
    let (mut app, _) = window();
    let from = handle(&app, SERVO_SHAFT);
    let up = vec2(0.0, -3.0 * scale(&app, View::Top));
    drag_and_drop(&mut app, from, up);
    assert_eq!(value(&app, "Servo station"), Chosen::Slide(3.0));
    let at = handle(&app, SERVO_SHAFT);
    double_click(&mut app, at);
    assert!(setup(&app).chosen.is_empty());
}

#[test]
fn a_pivot_stands_over_itself_in_both_views() {
    let (mut app, _) = window();
    for name in [
        "Inner tie-rod ball, left",
        "Outer tie-rod ball, right",
        "Wheel centre, right",
    ] {
        let top = handle(&app, &format!("{name} (top view)"));
        let front = handle(&app, &format!("{name} (front view)"));
        assert!((top.x - front.x).abs() < 0.5, "{name}: {top:?} {front:?}");
    }
    app.get_scrolled();
    let top = handle(&app, "Wheel centre, right (top view)");
    let front = handle(&app, "Wheel centre, right (front view)");
    assert!(
        (top.x - front.x).abs() < 0.5,
        "after zooming: {top:?} {front:?}"
    );
}

/// Zooms with the wheel.
trait Scrolled {
    fn get_scrolled(&mut self);
}

impl Scrolled for App {
    fn get_scrolled(&mut self) {
        let at = handle(self, INNER_BALL_FRONT);
        let before = scale(self, View::Front);
        self.hover_at(at);
        self.run();
        self.event(Event::MouseWheel {
            unit: eframe::egui::MouseWheelUnit::Point,
            delta: vec2(0.0, 60.0),
            phase: eframe::egui::TouchPhase::Move,
            source: eframe::egui::MouseWheelSource::Wheel,
            modifiers: Modifiers::NONE,
        });
        self.run_steps(8);
        self.run();
        assert!(scale(self, View::Front) > before, "the wheel zooms");
        let after = handle(self, INNER_BALL_FRONT);
        assert!(
            (after - at).length() < 1.0,
            "the place under the pointer stays"
        );
    }
}

#[test]
fn empty_ground_is_dragged_to_pan_and_fit_brings_all_back() {
    let (mut app, _) = window();
    let before = handle(&app, SERVO_SHAFT);
    let ground = before + vec2(0.0, 120.0);
    drag_and_drop(&mut app, ground, vec2(25.0, 10.0));
    let after = handle(&app, SERVO_SHAFT);
    assert!(
        (after - before - vec2(25.0, 10.0)).length() < 1.5,
        "{before:?} {after:?}"
    );
    command_key(&mut app, Key::Num0);
    let fitted = handle(&app, SERVO_SHAFT);
    assert!((fitted - before).length() < 0.5);
    assert!(setup(&app).chosen.is_empty());
}
