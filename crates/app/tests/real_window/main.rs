//! The program itself in a real window on a virtual screen, worked with real mouse and key events.
//!
//! Runs where `STEERLOFT_REAL_WINDOW=1` is set, and then needs `Xvfb` and `xdotool`; elsewhere it says that it was
//! left out. `STEERLOFT_WINDOW_PICTURES=FOLDER` keeps a picture of the screen (with the `import` program).

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stderr)]

#[path = "../window/common.rs"]
mod common;

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use common::{SIZE, handle, window};
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;
use steerloft_sheet::View;

/// How long anything may take before the test gives up. Nothing is measured by it.
const PATIENCE: Duration = Duration::from_mins(1);

/// A child process that ends with the test.
struct Process(Child);

impl Drop for Process {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

/// A virtual screen.
struct Screen {
    _server: Process,
    display: String,
    /// What the program remembers is apart from what the user's own remembers.
    memory: tempfile::TempDir,
}

impl Screen {
    fn start() -> Self {
        let mut server = Command::new("Xvfb")
            .args([
                "-displayfd",
                "1",
                "-screen",
                "0",
                "1400x900x24",
                "-nolisten",
                "tcp",
            ])
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("Xvfb must be installed");
        let mut number = String::new();
        let output = server.stdout.take().expect("piped above");
        BufReader::new(output)
            .read_line(&mut number)
            .expect("Xvfb says its display");
        let memory = tempfile::tempdir().expect("a temporary folder");
        let settings = memory.path().join("steerloft");
        std::fs::create_dir(&settings).expect("a folder for settings");
        // Not the first start, so that no hint lies over the drawing.
        let seen = "(preferences: (hints_seen: true))";
        std::fs::write(settings.join("settings.ron"), seen).expect("settings");
        Self {
            _server: Process(server),
            display: format!(":{}", number.trim()),
            memory,
        }
    }

    /// A command on this screen.
    fn command(&self, program: &str) -> Command {
        let mut command = Command::new(program);
        command
            .env("DISPLAY", &self.display)
            .env_remove("WAYLAND_DISPLAY")
            .env("XDG_CONFIG_HOME", self.memory.path())
            .env("XDG_DATA_HOME", self.memory.path())
            .env("LIBGL_ALWAYS_SOFTWARE", "1");
        command
    }

    /// Runs `xdotool` and returns what it prints.
    fn hand(&self, arguments: &[&str]) -> String {
        let output = self
            .command("xdotool")
            .args(arguments)
            .output()
            .expect("xdotool must be installed");
        String::from_utf8_lossy(&output.stdout).trim().to_owned()
    }

    fn picture(&self, name: &str) {
        if let Some(folder) = std::env::var_os("STEERLOFT_WINDOW_PICTURES") {
            let file = PathBuf::from(folder).join(name);
            let _ = self
                .command("import")
                .args(["-window", "root"])
                .arg(file)
                .status();
        }
    }
}

/// Waits until something is there.
fn wait_for<T>(what: &str, mut look: impl FnMut() -> Option<T>) -> T {
    let start = Instant::now();
    loop {
        if let Some(found) = look() {
            return found;
        }
        assert!(start.elapsed() < PATIENCE, "waited in vain for {what}");
        std::thread::sleep(Duration::from_millis(100));
    }
}

/// Where the servo's shaft is in the top view, and where it is 2.1 mm farther ahead, in a window of the same size.
fn drag_on_screen() -> [(f32, f32); 2] {
    let (app, _) = window();
    let from = handle(&app, "Steering drive axis (top view)");
    #[allow(clippy::cast_possible_truncation, reason = "a scale on screen")]
    let scale = app
        .state()
        .view()
        .views
        .transform(View::Top)
        .unwrap()
        .scale() as f32;
    [(from.x, from.y), (from.x, from.y - 2.1 * scale)]
}

fn read(file: &Path) -> Setup {
    steerloft_setup::file::read(file).expect("a setup file")
}

#[test]
fn a_pivot_dragged_with_the_mouse_changes_just_its_adjustment_in_the_saved_file() {
    if std::env::var_os("STEERLOFT_REAL_WINDOW").is_none_or(|value| value != "1") {
        eprintln!(
            "left out: set STEERLOFT_REAL_WINDOW=1 to run the real window on a virtual screen"
        );
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("car.ron");
    steerloft_setup::file::write(&file, &SUPPLIED[0].setup()).unwrap();
    let before = read(&file);

    let screen = Screen::start();
    let program = screen
        .command(env!("CARGO_BIN_EXE_steerloft"))
        .args([
            "--size",
            &format!("{}x{}", SIZE.x, SIZE.y),
            "--theme",
            "light",
        ])
        .arg(&file)
        .spawn()
        .expect("the program starts");
    let mut program = Process(program);
    let id = wait_for("the window", || {
        let ids = screen.hand(&["search", "--onlyvisible", "--name", "Steerloft"]);
        ids.lines().next().map(str::to_owned)
    });
    screen.hand(&["windowmove", "--sync", &id, "0", "0"]);
    screen.hand(&["windowfocus", "--sync", &id]);
    std::thread::sleep(Duration::from_secs(2));
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
