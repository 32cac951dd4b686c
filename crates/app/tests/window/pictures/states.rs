//! Pictures of what comes and goes: pages over the bench, banners, hints, lists, and the bench at twice its size.

use std::path::Path;
use std::time::Duration;

use super::{
    Look, MOST_STEPS, SHADES, SMALL, can_draw, picture, picture_as, picture_of, small_pictures,
    steer,
};
use crate::common::{App, adjustment, command_key, pan_car, press};
use eframe::egui::accesskit::Role;
use eframe::egui::{Event, Key, Modifiers, vec2};
use egui_kittest::SnapshotResults;
use egui_kittest::kittest::Queryable;
use steerloft::app::Steerloft;
use steerloft::dialogs::{ScriptedAnswers, ScriptedDialogs};
use steerloft::memory::{Memory, Places};
use steerloft::state::{Change, Document};
use steerloft::theme::ThemeChoice;
use steerloft::ui::tour::Hint;
use steerloft::ui::{Column, Drawer};
use steerloft::units::Units;
use steerloft_setup::setup::Chosen;
use steerloft_setup::supplied::SUPPLIED;

const COMMAND_SHIFT: Modifiers = Modifiers {
    shift: true,
    ..Modifiers::COMMAND
};

/// The car a little changed.
fn change(app: &mut App, spacers: f64) {
    let change = Change::Adjust {
        adjustment: adjustment(app, "Outer rod spacers"),
        value: Chosen::Stack(spacers),
    };
    app.state_mut().bench_mut().apply(change);
}

#[test]
fn a_sheet_to_be_printed() {
    small_pictures("print", |app| command_key(app, Key::P));
}

#[test]
fn a_new_car_to_be_chosen() {
    small_pictures("new-car", |app| {
        app.key_press_modifiers(COMMAND_SHIFT, Key::N);
    });
}

#[test]
fn another_kind_to_be_chosen() {
    small_pictures("another-kind", |app| {
        app.key_press_modifiers(COMMAND_SHIFT, Key::E);
        app.run();
        for kind in ["Double wishbone", "Twin crank"] {
            app.get_by_role_and_label(Role::RadioButton, kind).click();
            app.run();
        }
    });
}

#[test]
fn commands_to_be_found() {
    small_pictures("finder", |app| {
        command_key(app, Key::F);
        app.event(Event::Text("curve".to_owned()));
    });
}

#[test]
fn the_page_of_keys() {
    small_pictures("keys", |app| app.key_press(Key::F1));
}

#[test]
fn the_page_about_the_program() {
    small_pictures("about", |app| {
        app.key_press_modifiers(Modifiers::SHIFT, Key::F1);
    });
}

/// A hint for the first start.
fn hint(name: &str, hint: Hint) {
    small_pictures(name, |app| {
        app.state_mut().view_mut().tour = Some(hint);
    });
}

#[test]
fn the_hint_about_the_drawings() {
    hint("hint-drawings", Hint::Drawings);
}

#[test]
fn the_hint_about_the_adjustments() {
    hint("hint-adjustments", Hint::Adjustments);
}

#[test]
fn the_hint_about_the_results() {
    hint("hint-results", Hint::Results);
}

#[test]
fn the_hint_about_commands() {
    hint("hint-commands", Hint::Commands);
}

#[test]
fn a_menu_open() {
    small_pictures("menu", |app| {
        app.get_by_role_and_label(Role::Button, "View").click();
    });
}

#[test]
fn every_step_listed() {
    small_pictures("history", |app| {
        for spacers in [1.0, 1.5, 2.5, 3.5] {
            change(app, spacers);
        }
        let bench = app.state_mut().bench_mut();
        bench.undo();
        app.state_mut().view_mut().column = Column::History;
    });
}

#[test]
fn all_figures_in_the_dark() {
    picture("figures-dark", ThemeChoice::Dark, |app| {
        steer(app);
        app.view_mut().column = Column::Figures;
    });
}

#[test]
fn figures_beside_a_reference() {
    small_pictures("figures-reference", |app| {
        command_key(app, Key::M);
        change(app, 1.0);
        steer(app.state_mut());
        app.state_mut().view_mut().column = Column::Figures;
    });
}

#[test]
fn several_setups_and_one_of_them_behind() {
    small_pictures("tabs", |app| {
        change(app, 1.0);
        let first = app.state().bench().current().id();
        let bench = app.state_mut().bench_mut();
        bench.open(Document::unnamed(SUPPLIED[1].setup()));
        let mut changed = pan_car();
        changed.record.name = "Carpet, high grip".to_owned();
        bench.open(Document::unnamed(changed));
        bench.set_reference(first);
        steer(app.state_mut());
    });
}

/// The touring car described, scrolled down to something.
fn described(name: &str, down_to: &str) {
    let mut cars = SUPPLIED.iter();
    let touring = cars.find(|car| car.file_name == "touring-car.ron");
    let touring = touring.expect("a supplied car").setup();
    let mut results = SnapshotResults::new();
    for (theme, shade) in SHADES {
        let look = (theme, SMALL);
        let name = format!("{name}-{shade}");
        picture_of(&mut results, touring.clone(), &name, look, |app| {
            command_key(app, Key::E);
            app.run();
            app.get_by_label(down_to).scroll_to_me();
            app.run();
        });
    }
}

#[test]
fn cranks_and_links_described() {
    described("describing-links", "Cross-link length as drawn");
}

#[test]
fn spacers_described() {
    described("describing-spacers", "Add a box of spacers");
}

#[test]
fn obstacles_described() {
    described("describing-obstacles", "Add an obstacle");
}

#[test]
fn an_adjustment_written_in_inches() {
    small_pictures("writing-adjustment", |app| {
        app.state_mut().view_mut().preferences.units = Units::Inches;
        command_key(app, Key::E);
        app.run();
        press(app, "Edit Servo station");
        app.get_by_label("Step").scroll_to_me();
        app.run();
    });
}

#[test]
fn a_question_about_unsaved_changes() {
    small_pictures("unsaved", |app| {
        change(app, 1.0);
        command_key(app, Key::W);
    });
}

#[test]
fn drawer_of_the_fit() {
    small_pictures("fit", |app| {
        app.state_mut().view_mut().drawers.open = Some(Drawer::Fit);
    });
}

#[test]
fn drawer_of_changes() {
    small_pictures("changes", |app| {
        command_key(app, Key::M);
        change(app, 1.0);
        app.state_mut().view_mut().drawers.open = Some(Drawer::Changes);
    });
}

#[test]
fn a_file_that_another_program_changed() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("car.ron");
    let mut results = SnapshotResults::new();
    for (theme, shade) in SHADES {
        std::fs::write(&path, SUPPLIED[0].text).unwrap();
        let make = |ctx: &eframe::egui::Context| {
            let dialogs = Box::new(ScriptedDialogs::new(ScriptedAnswers::default()));
            Steerloft::new(ctx, Document::read(&path).unwrap(), dialogs, theme)
        };
        let look = Look {
            theme,
            size: SMALL,
            scale: 1.0,
        };
        picture_as(
            &mut results,
            &format!("file-changed-{shade}"),
            look,
            make,
            |app| {
                std::fs::write(&path, SUPPLIED[1].text).unwrap();
                app.input_mut().focused = false;
                app.run();
                app.input_mut().focused = true;
                app.run();
            },
        );
    }
}

/// A window that remembers in a folder.
fn remembering(ctx: &eframe::egui::Context, folder: &Path, theme: ThemeChoice) -> Steerloft {
    let dialogs = Box::new(ScriptedDialogs::new(ScriptedAnswers::default()));
    let memory = Memory::at(Places::within(folder));
    let mut app = Steerloft::new(ctx, Document::unnamed(pan_car()), dialogs, theme).remember(
        memory,
        Duration::ZERO,
        ctx,
    );
    app.choose_theme(theme, ctx);
    app
}

#[test]
fn unsaved_work_that_was_left() {
    if !can_draw() {
        return;
    }
    let mut results = SnapshotResults::new();
    for (theme, shade) in SHADES {
        let folder = tempfile::tempdir().unwrap();
        let mut before = egui_kittest::Harness::builder()
            .with_max_steps(MOST_STEPS)
            .build_eframe(|context| remembering(&context.egui_ctx, folder.path(), theme));
        before.run();
        change(&mut before, 1.0);
        before.run();
        command_key(&mut before, Key::N);
        change(&mut before, 2.0);
        before.run();
        drop(before);
        let look = Look {
            theme,
            size: SMALL,
            scale: 1.0,
        };
        let make = |ctx: &eframe::egui::Context| remembering(ctx, folder.path(), theme);
        picture_as(
            &mut results,
            &format!("left-behind-{shade}"),
            look,
            make,
            |_| {},
        );
    }
}

#[test]
fn the_bench_on_a_screen_of_twice_the_points() {
    let mut results = SnapshotResults::new();
    let look = Look {
        theme: ThemeChoice::Light,
        size: SMALL,
        scale: 2.0,
    };
    let make = |ctx: &eframe::egui::Context| {
        let dialogs = Box::new(ScriptedDialogs::new(ScriptedAnswers::default()));
        Steerloft::new(
            ctx,
            Document::unnamed(pan_car()),
            dialogs,
            ThemeChoice::Light,
        )
    };
    picture_as(&mut results, "double-density", look, make, |app| {
        steer(app.state_mut());
    });
}

#[test]
fn the_bench_drawn_twice_as_large() {
    let mut results = SnapshotResults::new();
    let look = (ThemeChoice::Light, vec2(2048.0, 1400.0));
    picture_of(&mut results, pan_car(), "double-size", look, |app| {
        steer(app.state_mut());
        app.state_mut().view_mut().preferences.scale = 200;
        app.run();
    });
}
