//! The program itself in a real window on a virtual screen, worked with real mouse and key events.
//!
//! Runs where `STEERLOFT_REAL_WINDOW=1` is set, and then needs `Xvfb` and `xdotool`; elsewhere it says that it was
//! left out. `STEERLOFT_WINDOW_PICTURES=FOLDER` keeps a picture of the screen (with the `import` program).

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stderr
)]

#[path = "../window/common.rs"]
mod common;

mod drag;
mod evening;
mod monkey;
mod no_driver;
mod screen;
