//! The curves as they are chosen, arranged, read off and compared; figures beside those of the reference.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{App, click, command_key, drag_and_drop, set_slider, window};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Rect, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft::commands::Command;
use steerloft::state::{CurveKind, PanelHeight};
use steerloft_analysis::figures::FigureKind;

fn plot(app: &App, kind: CurveKind) -> Rect {
    app.get_by_role_and_label(Role::Image, kind.title()).rect()
}

/// Opens the menu of a panel and takes an item.
fn arrange(app: &mut App, kind: CurveKind, item: &str) {
    app.get_by_label(&format!("Arrange: {}", kind.title()))
        .click();
    app.run();
    app.get_by_label(item).click();
    app.run();
}

fn choose(app: &mut App, label: &str) {
    app.get_by_role_and_label(Role::Button, "Choose curves")
        .click();
    app.run();
    app.get_by_label(label).click();
    app.run();
    app.key_press(Key::Escape);
    app.run();
}

/// What a screen reader says of a figure.
fn said(app: &App, start: &str) -> String {
    let label = app.get_by_label_contains(start);
    let node = label.accesskit_node();
    node.value().or(node.label()).unwrap_or_default()
}

fn keep_reference_and_change(app: &mut App) {
    click(app, "Keep as reference");
    set_slider(app, "Servo station", 2.0);
    app.run();
}

#[test]
fn panels_are_moved_and_hidden_by_their_menu() {
    let (mut app, _) = window();
    let [first, second] = [CurveKind::ToeTravel, CurveKind::InnerOuter];
    assert!(plot(&app, first).top() < plot(&app, second).top());
    arrange(&mut app, first, "Move after");
    assert!(plot(&app, first).top() > plot(&app, second).top());
    arrange(&mut app, first, "Move before");
    assert!(plot(&app, first).top() < plot(&app, second).top());
    arrange(&mut app, second, "Hide");
    assert!(!app.state().view().curves.has(second));
    assert!(
        app.query_by_role_and_label(Role::Image, second.title())
            .is_none()
    );
    assert!(!app.state().bench().document().is_changed());
}

#[test]
fn curves_stand_in_one_column_or_two_and_low_or_high() {
    let (mut app, _) = window();
    let [first, second] = [CurveKind::ToeTravel, CurveKind::InnerOuter];
    choose(&mut app, "Columns of curves: Two");
    assert!(app.state().view().curves.two_columns);
    let (left, right) = (plot(&app, first), plot(&app, second));
    assert!((left.top() - right.top()).abs() < 40.0, "{left} {right}");
    assert!(left.right() < right.left());
    choose(&mut app, "Columns of curves: One");
    choose(&mut app, "Height of curves: High");
    assert_eq!(app.state().view().curves.height, PanelHeight::High);
    let high = plot(&app, first).height();
    choose(&mut app, "Height of curves: Low");
    assert!(plot(&app, first).height() < 0.6 * high);
}

#[test]
fn toe_against_travel_is_taken_at_the_steering_input_typed_in() {
    let (mut app, _) = window();
    let kind = CurveKind::ToeTravelSteered;
    app.state_mut().view_mut().curves.toggle(kind);
    app.run();
    let curve = |app: &App| {
        let shown = app.state().bench().derived().shown().unwrap();
        shown.curve(kind).clone()
    };
    let before = curve(&app);
    let name = "Steering input of this curve";
    app.get_by_role_and_label(Role::SpinButton, name)
        .scroll_to_me();
    app.run();
    app.get_by_role_and_label(Role::SpinButton, name).click();
    app.run();
    app.get_by_role_and_label(Role::SpinButton, name)
        .type_text("6,5");
    app.key_press(Key::Enter);
    app.run_steps(3);
    assert_eq!(app.state().view().curves.held_input, Some(6.5));
    assert_ne!(curve(&app), before);
    let shown = app.state().bench().derived().shown().unwrap();
    assert!((shown.study.sweeps().held().input - 6.5).abs() < 1e-12);
    // The cursor line of this curve poses the car at that input.
    let at = plot(&app, kind);
    drag_and_drop(&mut app, at.center(), vec2(at.width() * 0.2, 0.0));
    let cursor = app.state().bench().cursor();
    assert!(
        (cursor.input - 6.5).abs() < 1e-12 && cursor.travel > 0.2,
        "{cursor:?}"
    );
}

#[test]
fn the_reference_is_drawn_and_held_to_the_same_input_and_travel() {
    let (mut app, _) = window();
    keep_reference_and_change(&mut app);
    set_slider(&mut app, "Wheel travel", 1.0);
    app.run();
    let bench = app.state().bench();
    let (own, other) = (bench.derived().shown().unwrap(), bench.compared().unwrap());
    for kind in [CurveKind::InnerOuter, CurveKind::ToeTravel] {
        let differ = own.curve(kind).series != other.curve(kind).series;
        assert!(differ, "{kind:?} of {:?}", bench.setup().chosen);
    }
    assert_eq!(own.study.sweeps().held(), other.study.sweeps().held());
}

#[test]
fn figures_stand_beside_their_difference_from_the_reference() {
    let (mut app, _) = window();
    let spoken = |app: &App| said(app, "Ackermann:");
    set_slider(&mut app, "Steering input", 15.0);
    let alone = spoken(&app);
    assert!(
        alone.ends_with('%') && !alone.contains("reference"),
        "{alone}"
    );
    keep_reference_and_change(&mut app);
    let text = spoken(&app);
    assert!(text.contains("against the reference"), "{text}");
    let bench = app.state().bench();
    let (own, other) = (bench.derived().shown().unwrap(), bench.compared().unwrap());
    let kind = FigureKind::Ackermann;
    let difference = own.figure(kind).differences(other.figure(kind));
    let steerloft_analysis::figures::Texts::Axle(difference) = difference else {
        panic!("{difference:?}");
    };
    assert!(text.ends_with(&difference), "{text} {difference}");
    command_key(&mut app, Key::Num2);
    let row = said(&app, "Total toe:");
    assert!(row.contains("against the reference"), "{row}");
}

#[test]
fn every_curve_has_a_command_that_says_what_it_means() {
    let (mut app, _) = window();
    for kind in CurveKind::ALL {
        assert_eq!(Command::Curve(kind).text(), kind.title());
        assert!(Command::Curve(kind).tooltip().len() > 40);
    }
    choose(&mut app, CurveKind::TrackTravel.title());
    assert!(app.state().view().curves.has(CurveKind::TrackTravel));
}
