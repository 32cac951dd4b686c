//! A pivot dragged with the mouse and saved.

use std::time::Duration;

use crate::screen::{Screen, drag_on_screen, is_asked_for, open, read, wait_for};
use steerloft_setup::setup::Chosen;
use steerloft_setup::supplied::SUPPLIED;

#[test]
fn a_pivot_dragged_with_the_mouse_changes_just_its_adjustment_in_the_saved_file() {
    if !is_asked_for() {
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("car.ron");
    steerloft_setup::file::write(&file, &SUPPLIED[0].setup()).unwrap();
    let before = read(&file);

    let screen = Screen::start();
    let (mut program, _) = open(&screen, &file);
    screen.picture("real-window-opened.png");

    let [from, to] = drag_on_screen();
    let place = |(x, y): (f32, f32)| [x.round().to_string(), y.round().to_string()];
    let move_to = |at: (f32, f32)| {
        let [x, y] = place(at);
        screen.hand(&["mousemove", &x, &y]);
        std::thread::sleep(Duration::from_millis(80));
    };
    move_to(from);
    screen.hand(&["mousedown", "1"]);
    for step in 1_u8..=10 {
        let share = f32::from(step) / 10.0;
        move_to((from.0, from.1 + (to.1 - from.1) * share));
    }
    screen.hand(&["mouseup", "1"]);
    std::thread::sleep(Duration::from_millis(300));
    screen.picture("real-window-dragged.png");

    screen.hand(&["key", "--clearmodifiers", "ctrl+s"]);
    let after = wait_for("the saved file", || {
        Some(read(&file)).filter(|now| *now != before)
    });
    let mut expected = before;
    expected
        .chosen
        .insert("Servo station".to_owned(), Chosen::Slide(2.0));
    assert_eq!(after, expected, "just the dragged adjustment differs");

    screen.hand(&["key", "--clearmodifiers", "ctrl+q"]);
    let status = wait_for("the program's end", || program.0.try_wait().unwrap());
    assert!(status.success(), "{status}");
}
