//! Commands: found by what they do, listed with their keys; scale; the hints for the first start.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{SIZE, click, command_key, pan_car, value, window, window_on};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft::commands::Command;
use steerloft::state::Document;
use steerloft::ui::Column;
use steerloft::ui::tour::Hint;
use steerloft_setup::setup::Chosen;

fn find(app: &mut crate::common::App, words: &str) {
    command_key(app, Key::F);
    app.get_by_role_and_label(Role::TextInput, "What do you want to do?")
        .type_text(words);
    app.run();
}

#[test]
fn a_command_is_found_by_what_it_does_and_taken_with_enter() {
    let (mut app, _) = window();
    find(&mut app, "every figure");
    app.key_press(Key::Enter);
    app.run();
    assert_eq!(app.state().view().column, Column::Figures);
    assert!(app.query_by_label("What do you want to do?").is_none());
}

#[test]
fn arrow_keys_go_through_what_was_found_and_escape_closes() {
    let (mut app, _) = window();
    let sides = app.state().view().views.has_side();
    find(&mut app, "side");
    app.get_by_role_and_label(Role::Button, "Side view").click();
    app.run();
    assert_ne!(app.state().view().views.has_side(), sides);
    find(&mut app, "fi");
    app.key_press(Key::ArrowDown);
    app.run();
    app.key_press(Key::Escape);
    app.run();
    assert!(app.query_by_label("What do you want to do?").is_none());
}

#[test]
fn what_cannot_be_done_is_not_done() {
    let (mut app, _) = window();
    find(&mut app, "undo");
    app.key_press(Key::Enter);
    app.run();
    assert!(!app.state().bench().document().is_changed());
    app.key_press(Key::Escape);
    app.run();
    find(&mut app, "no such thing at all");
    app.get_by_label("No command is called so or does that.");
}

#[test]
fn the_page_of_keys_lists_every_command() {
    let (mut app, _) = window();
    app.key_press(Key::F1);
    app.run();
    for command in Command::all() {
        let found = app.query_all_by_label(&command.key_names()).count();
        assert!(found > 0, "{command:?}: {}", command.key_names());
    }
    app.get_by_role_and_label(Role::Button, "Close")
        .click_accesskit();
    app.run();
    assert!(app.query_by_label("Drag a ring").is_none());
}

#[test]
fn the_page_of_keys_closes_under_the_pointer() {
    for size in [SIZE, vec2(1024.0, 700.0)] {
        let (mut app, _) = window_on(Document::unnamed(pan_car()), size);
        app.key_press(Key::F1);
        app.run();
        let close = app.get_by_role_and_label(Role::Button, "Close").rect();
        let screen = app.ctx.content_rect();
        assert!(screen.contains_rect(close), "{close:?} in {screen:?}");
        app.hover_at(close.center());
        app.run();
        app.drag_at(close.center());
        app.run();
        app.drop_at(close.center());
        app.run();
        assert!(app.query_by_label("Drag a ring").is_none(), "{size:?}");
    }
}

#[test]
fn the_scale_grows_to_twice_and_back_without_trouble() {
    let (mut app, _) = window();
    for _ in 0..12 {
        command_key(&mut app, Key::Plus);
    }
    assert_eq!(app.state().view().preferences.scale, 200);
    assert!((app.ctx.zoom_factor() - 2.0).abs() < 1e-6);
    app.get_by_label("Outer rod spacers: less").scroll_to_me();
    app.run();
    click(&mut app, "Outer rod spacers: less");
    assert_eq!(value(&app, "Outer rod spacers"), Chosen::Stack(2.5));
    command_key(&mut app, Key::Minus);
    assert_eq!(app.state().view().preferences.scale, 190);
    find(&mut app, "actual size");
    app.key_press(Key::Enter);
    app.run();
    assert!((app.ctx.zoom_factor() - 1.0).abs() < 1e-6);
}

#[test]
fn the_hints_are_walked_through_or_dismissed() {
    let (mut app, _) = window();
    assert!(
        app.query_by_label("1 of 4").is_none(),
        "only when asked for"
    );
    app.key_press(Key::F2);
    app.run();
    for hint in ["1 of 4", "2 of 4", "3 of 4"] {
        app.get_by_label(hint);
        click(&mut app, "Next hint");
    }
    assert_eq!(app.state().view().tour, Some(Hint::Commands));
    click(&mut app, "Start");
    assert_eq!(app.state().view().tour, None);
    assert!(app.state().view().preferences.hints_seen);
    app.key_press(Key::F2);
    app.run();
    click(&mut app, "No more hints");
    assert_eq!(app.state().view().tour, None);
}

#[test]
fn hints_do_not_stand_in_the_way_of_work() {
    let (mut app, _) = window();
    app.key_press(Key::F2);
    app.run();
    click(&mut app, "Outer rod spacers: less");
    assert_eq!(value(&app, "Outer rod spacers"), Chosen::Stack(2.5));
    assert_eq!(app.state().view().tour, Some(Hint::Drawings));
}

/// Sizes of the window, from the least that is offered down to what a tiling desktop may force on it.
#[test]
fn every_size_and_scale_is_borne() {
    for size in [vec2(1024.0, 700.0), vec2(640.0, 400.0), vec2(320.0, 200.0)] {
        for scale in [100, 150, 200] {
            let (mut app, _) = window_on(Document::unnamed(pan_car()), size);
            app.state_mut().view_mut().preferences.scale = scale;
            app.state_mut().view_mut().tour = Some(Hint::Drawings);
            app.run_steps(3);
            command_key(&mut app, Key::F);
            app.key_press(Key::Escape);
            app.run_steps(2);
            app.key_press(Key::F1);
            app.run_steps(3);
        }
    }
}

#[test]
fn nothing_is_cut_off_at_the_least_window() {
    let (app, _) = window_on(Document::unnamed(pan_car()), vec2(1024.0, 700.0));
    let screen = app.ctx.content_rect().expand(0.5);
    for role in [Role::Slider, Role::SpinButton, Role::CheckBox] {
        for node in app.query_all_by_role(role) {
            let rect = node.rect();
            assert!(
                rect.left() >= screen.left() && rect.right() <= screen.right(),
                "{:?} at {rect:?}",
                node.accesskit_node().label()
            );
        }
    }
}

#[test]
fn tab_reaches_menus_fields_and_rings() {
    let (mut app, _) = window_on(Document::unnamed(pan_car()), SIZE);
    let mut seen = std::collections::BTreeSet::new();
    for _ in 0..400 {
        app.key_press(Key::Tab);
        app.run();
        let focused = app.ctx.memory(eframe::egui::Memory::focused);
        let Some(id) = focused else { continue };
        if !seen.insert(format!("{id:?}")) && seen.len() > 60 {
            break;
        }
        let focused = egui_kittest::kittest::By::new()
            .predicate(|node| node.is_focused() && !node.is_disabled());
        let named = app
            .query_all(focused)
            .find_map(|node| node.accesskit_node().label());
        if let Some(name) = named {
            seen.insert(name);
        }
    }
    for name in [
        "Servo station",
        "Steering input",
        "Steering drive axis (top view)",
        "Choose curves",
    ] {
        assert!(seen.contains(name), "{name} in {seen:?}");
    }
}
