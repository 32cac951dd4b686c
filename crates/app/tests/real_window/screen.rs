//! The virtual screen, the program on it, and the hands that work it.

use std::io::{BufRead, BufReader, Read as _};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use crate::common::{SIZE, handle, window};
use steerloft_setup::setup::Setup;
use steerloft_sheet::View;

/// How long anything may take before the test gives up. Nothing is measured by it.
const PATIENCE: Duration = Duration::from_mins(1);

/// A child process that ends with the test.
pub(crate) struct Process(pub(crate) Child);

impl Drop for Process {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

/// A virtual screen.
pub(crate) struct Screen {
    _server: Process,
    display: String,
    /// What the program remembers is apart from what the user's own remembers.
    pub(crate) memory: tempfile::TempDir,
}

impl Screen {
    pub(crate) fn start() -> Self {
        let mut server = Command::new("Xvfb")
            .args([
                // A key held down by a hand that is kept waiting is still one press.
                "-r",
                // It stays up when the first hand lets go of it: starting anew it would turn the program away.
                "-noreset",
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
    pub(crate) fn command(&self, program: &str) -> Command {
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
    pub(crate) fn hand(&self, arguments: &[&str]) -> String {
        let output = self
            .command("xdotool")
            .args(arguments)
            .output()
            .expect("xdotool must be installed");
        String::from_utf8_lossy(&output.stdout).trim().to_owned()
    }

    /// Presses a key so often.
    pub(crate) fn press(&self, key: &str, times: usize) {
        let mut arguments = vec!["key", "--clearmodifiers"];
        arguments.extend(std::iter::repeat_n(key, times));
        self.hand(&arguments);
    }

    pub(crate) fn move_to(&self, (x, y): (f32, f32)) {
        let [x, y] = [x, y].map(|place| place.round().to_string());
        self.hand(&["mousemove", &x, &y]);
    }

    pub(crate) fn title(&self, window: &str) -> String {
        self.hand(&["getwindowname", window])
    }

    pub(crate) fn picture(&self, name: &str) {
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
pub(crate) fn wait_for<T>(what: &str, mut look: impl FnMut() -> Option<T>) -> T {
    let start = Instant::now();
    loop {
        if let Some(found) = look() {
            return found;
        }
        assert!(start.elapsed() < PATIENCE, "waited in vain for {what}");
        std::thread::sleep(Duration::from_millis(100));
    }
}

/// Whether the real window is asked for; says so if it is not.
pub(crate) fn is_asked_for() -> bool {
    let asked = std::env::var_os("STEERLOFT_REAL_WINDOW").is_some_and(|value| value == "1");
    if !asked {
        eprintln!(
            "left out: set STEERLOFT_REAL_WINDOW=1 to run the real window on a virtual screen"
        );
    }
    asked
}

/// What a program that has ended said on its error output.
pub(crate) fn said(program: &mut Process) -> String {
    let mut said = String::new();
    if let Some(mut errors) = program.0.stderr.take() {
        let _ = errors.read_to_string(&mut said);
    }
    said
}

/// The program with a file in a window of the usual size at the screen's corner, ready to be worked.
pub(crate) fn open(screen: &Screen, file: &Path) -> (Process, String) {
    let program = screen
        .command(env!("CARGO_BIN_EXE_steerloft"))
        .args([
            "--size",
            &format!("{}x{}", SIZE.x, SIZE.y),
            "--theme",
            "light",
        ])
        .arg(file)
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    let mut program = Process(program);
    let id = wait_for("the window", || {
        if let Some(status) = program.0.try_wait().unwrap() {
            panic!("no window, but {status}: {}", said(&mut program));
        }
        let ids = screen.hand(&["search", "--onlyvisible", "--name", "Steerloft"]);
        ids.lines().next().map(str::to_owned)
    });
    let name = file.file_name().unwrap().to_string_lossy().into_owned();
    wait_for("the file in the window", || {
        screen.title(&id).starts_with(&name).then_some(())
    });
    screen.hand(&["windowmove", "--sync", &id, "0", "0"]);
    screen.hand(&["windowfocus", "--sync", &id]);
    std::thread::sleep(Duration::from_secs(2));
    (program, id)
}

/// Where the servo's shaft is in the top view, and where it is 2.1 mm farther ahead, in a window of the same size.
pub(crate) fn drag_on_screen() -> [(f32, f32); 2] {
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

pub(crate) fn read(file: &Path) -> Setup {
    steerloft_setup::file::read(file).expect("a setup file")
}
