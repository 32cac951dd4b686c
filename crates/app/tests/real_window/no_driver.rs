//! A machine with a display and no graphics driver.

use std::process::Stdio;

use crate::screen::{Process, Screen, is_asked_for, said, wait_for};

/// Mesa is pointed at a folder without drivers, as on a machine that has none.
#[test]
fn without_a_graphics_driver_one_line_says_what_to_install() {
    if !is_asked_for() {
        return;
    }
    let screen = Screen::start();
    let program = screen
        .command(env!("CARGO_BIN_EXE_steerloft"))
        .env("LIBGL_DRIVERS_PATH", "/nonexistent")
        .env("__EGL_VENDOR_LIBRARY_FILENAMES", "/nonexistent")
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    let mut program = Process(program);
    let status = wait_for("the program's end", || program.0.try_wait().unwrap());
    let said = said(&mut program);
    assert_eq!(status.code(), Some(2), "{said}");
    // The driver's own library speaks as well.
    let ours: Vec<&str> = said
        .lines()
        .filter(|line| !line.starts_with("libGL") && !line.starts_with("libEGL"))
        .collect();
    assert_eq!(ours.len(), 1, "{said}");
    assert!(
        ours[0].starts_with("No window: no graphics driver offers OpenGL"),
        "{said}"
    );
    assert!(ours[0].contains("install one"), "{said}");
    assert!(ours[0].contains("steerloft report FILE"), "{said}");
}
