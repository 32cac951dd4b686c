//! Drawers: opened by their fronts, the menu and keys, remembered, and what is in them.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{SIZE, click, command_key, pan_car, window, window_on};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft::state::Document;
use steerloft::ui::Drawer;

#[test]
fn a_drawer_is_opened_and_shut_by_its_front_and_its_key() {
    let (mut app, _) = window();
    assert_eq!(app.state().view().drawers.open, None);
    click(&mut app, "Drawer: Changes");
    assert_eq!(app.state().view().drawers.open, Some(Drawer::Changes));
    click(&mut app, "Shut the drawer");
    assert_eq!(app.state().view().drawers.open, None);
    for drawer in Drawer::ALL {
        let (modifiers, key) = drawer.key();
        app.key_press_modifiers(modifiers, key);
        app.run_steps(4);
        assert_eq!(app.state().view().drawers.open, Some(drawer));
    }
}

#[test]
fn every_drawer_fits_into_every_window() {
    for size in [
        vec2(1920.0, 1080.0),
        vec2(1024.0, 700.0),
        vec2(320.0, 200.0),
    ] {
        for drawer in Drawer::ALL {
            let (mut app, _) = window_on(Document::unnamed(pan_car()), size);
            app.state_mut().view_mut().drawers.open = Some(drawer);
            app.run_steps(6);
            let screen = app.ctx.content_rect().expand(0.5);
            let shut = app.get_by_role_and_label(Role::Button, "Shut the drawer");
            assert!(screen.contains_rect(shut.rect()), "{drawer:?} at {size:?}");
            if size.x < 1000.0 {
                continue;
            }
            for role in [Role::Slider, Role::SpinButton] {
                for node in app.query_all_by_role(role) {
                    let rect = node.rect();
                    assert!(
                        rect.left() >= screen.left() && rect.right() <= screen.right(),
                        "{drawer:?}: {:?} at {rect:?}",
                        node.accesskit_node().label()
                    );
                }
            }
        }
    }
}

#[test]
fn the_changes_from_the_reference_are_listed_part_by_part() {
    let (mut app, _) = window_on(Document::unnamed(pan_car()), SIZE);
    click(&mut app, "Drawer: Changes");
    let hint = "There is no other setup to compare with.";
    assert!(app.query_by_label_contains(hint).is_some());
    command_key(&mut app, Key::M);
    assert!(app.query_by_label_contains("Nothing to change").is_some());
    app.get_by_label("Outer rod spacers: less").scroll_to_me();
    app.run();
    click(&mut app, "Outer rod spacers: less");
    let how = "from 3 mm to 2.5 mm, put in 0.5 mm, take out 1 mm";
    let lists: Vec<String> = app
        .query_all_by_role(Role::Label)
        .filter_map(|node| node.accesskit_node().value())
        .collect();
    assert!(lists.iter().any(|row| row.contains(how)), "{lists:?}");
    assert!(app.query_by_label("Rod, left").is_some());
}
