//! Sheets and pictures out of the window.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{App, click, command_key, set_slider, window};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, OutputCommand, PointerButton, Pos2};
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft::dialogs::FileRequest;
use steerloft::state::Subject;
use steerloft_analysis::curves::CurveKind;
use steerloft_sheet::View;

/// Chooses one of several buttons.
fn choose(app: &mut App, name: &str) {
    app.get_by_role_and_label(Role::RadioButton, name).click();
    app.run();
}

fn secondary_click(app: &mut App, at: Pos2) {
    app.hover_at(at);
    app.run();
    for pressed in [true, false] {
        app.input_mut()
            .events
            .push(eframe::egui::Event::PointerButton {
                pos: at,
                button: PointerButton::Secondary,
                pressed,
                modifiers: eframe::egui::Modifiers::NONE,
            });
        app.run();
    }
}

/// Carries out a command and gives what it put on the clipboard.
fn copied(app: &mut App, menu: &str) -> OutputCommand {
    app.get_by_label(menu).click();
    // The clipboard is set by the frame that takes the click or the next one.
    for _ in 0..4 {
        app.step();
        if let Some(command) = app.output().platform_output.commands.first() {
            return command.clone();
        }
    }
    panic!("nothing was copied");
}

#[test]
fn a_sheet_is_printed_with_the_choices_made() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("sheet.svg");
    let (mut app, script) = window();
    command_key(&mut app, Key::P);
    choose(&mut app, "Paper: Letter");
    choose(&mut app, "Written as: SVG");
    choose(&mut app, "Further curves: Those on screen");
    script.push(Some(path.clone()));
    click(&mut app, "Save sheet\u{2026}");
    app.run();
    assert_eq!(app.state().message(), None);
    let asked = script.asked();
    assert!(
        matches!(&asked[0], FileRequest::SavePage { name, .. } if name.ends_with("-setup-sheet.svg")),
        "{asked:?}"
    );
    let page = std::fs::read_to_string(&path).unwrap();
    assert!(page.contains("width=\"215.9mm\""), "Letter");
    assert!(
        folder.path().join("sheet-2.svg").exists(),
        "curves on the next page"
    );
    command_key(&mut app, Key::P);
    assert!(
        app.get_by_role_and_label(Role::RadioButton, "Paper: Letter")
            .accesskit_node()
            .toggled()
            == Some(eframe::egui::accesskit::Toggled::True),
        "the choices stay"
    );
}

#[test]
fn every_page_can_be_had_in_every_format() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, script) = window();
    for page in ["Setup sheet", "Blank sheet", "Measuring form"] {
        for (format, magic) in [
            ("PDF", &b"%PDF"[..]),
            ("SVG", b"<?xml"),
            ("PNG", b"\x89PNG"),
        ] {
            let path = folder
                .path()
                .join(format!("{page}.{}", format.to_lowercase()));
            command_key(&mut app, Key::P);
            choose(&mut app, &format!("Page: {page}"));
            choose(&mut app, &format!("Written as: {format}"));
            script.push(Some(path.clone()));
            click(&mut app, "Save sheet\u{2026}");
            app.run();
            assert_eq!(app.state().message(), None);
            assert!(
                std::fs::read(&path).unwrap().starts_with(magic),
                "{page} {format}"
            );
        }
    }
}

#[test]
fn escape_and_cancel_write_nothing() {
    let (mut app, script) = window();
    command_key(&mut app, Key::P);
    app.key_press(Key::Escape);
    app.run();
    assert!(app.query_by_label("Print a setup sheet").is_none());
    command_key(&mut app, Key::P);
    click(&mut app, "Cancel");
    assert!(script.asked().is_empty());
}

#[test]
fn a_page_that_cannot_be_written_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, script) = window();
    for name in ["sheet.doc", "no-such-folder/sheet.pdf"] {
        command_key(&mut app, Key::P);
        script.push(Some(folder.path().join(name)));
        click(&mut app, "Save sheet\u{2026}");
        app.run();
        let message = app.state().message().expect("there is a message");
        assert!(message.detail.contains(name), "{message:?}");
        click(&mut app, "Dismiss");
    }
}

#[test]
fn a_reference_is_marked_unless_that_is_not_wanted() {
    let folder = tempfile::tempdir().unwrap();
    let (mut app, script) = window();
    command_key(&mut app, Key::M);
    set_slider(&mut app, "Servo station", 2.0);
    for (file, is_marked) in [("marked.svg", true), ("plain.svg", false)] {
        command_key(&mut app, Key::P);
        if !is_marked {
            app.get_by_label_contains("Mark differences from").click();
            app.run();
        }
        let path = folder.path().join(file);
        script.push(Some(path.clone()));
        click(&mut app, "Save sheet\u{2026}");
        app.run();
        let page = std::fs::read_to_string(path).unwrap();
        assert_eq!(page.contains("Compared with"), is_marked, "{file}");
    }
}

#[test]
fn a_view_and_a_curve_are_copied_from_their_own_menus() {
    let (mut app, _) = window();
    for subject in [
        Subject::View(View::Front),
        Subject::Curve(CurveKind::ToeTravel),
    ] {
        let place = app
            .get_by_role_and_label(Role::Image, subject.title())
            .rect();
        // Away from the handles in the middle.
        let at = place.left_top() + (place.size() * 0.12);
        secondary_click(&mut app, at);
        let command = copied(&mut app, "Copy picture");
        let OutputCommand::CopyImage(image) = command else {
            panic!("{command:?}");
        };
        assert!(
            image.width() > 800 && image.height() > 300,
            "{:?}",
            image.size
        );
        app.run();
        secondary_click(&mut app, at);
        let OutputCommand::CopyText(drawing) = copied(&mut app, "Copy as SVG") else {
            panic!("text");
        };
        assert!(drawing.contains("<svg") && drawing.contains(subject.title()));
        app.run();
    }
}

#[test]
fn every_view_and_curve_can_be_saved_with_title_and_setup() {
    let folder = tempfile::tempdir().unwrap();
    let (app, _) = window();
    let name = &app.state().bench().setup().record.name;
    for (index, subject) in Subject::all().enumerate() {
        let page = app.state().bench().picture(subject).unwrap();
        let path = folder.path().join(format!("{index}.svg"));
        std::fs::write(&path, steerloft_sheet::svg::document(&page)).unwrap();
        let text = std::fs::read_to_string(path).unwrap();
        assert!(text.contains(name.as_str()), "{subject:?}");
        assert!(text.contains(subject.title()), "{subject:?}");
    }
}

#[test]
fn a_picture_is_saved_through_the_menu() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("view.png");
    let (mut app, script) = window();
    let place = app.get_by_role_and_label(Role::Image, "Top view").rect();
    secondary_click(&mut app, place.left_top() + place.size() * 0.12);
    script.push(Some(path.clone()));
    app.get_by_label("Save picture\u{2026}").click();
    app.run();
    assert_eq!(app.state().message(), None);
    assert!(std::fs::read(path).unwrap().starts_with(b"\x89PNG"));
    let asked = script.asked();
    assert!(
        matches!(&asked[0], FileRequest::SavePage { name, .. } if name.ends_with("-top-view.png"))
    );
}
