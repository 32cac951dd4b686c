//! A monkey with a real mouse and keyboard at the real window, for as many minutes as `STEERLOFT_MONKEY_MINUTES` says.

use std::io::Write as _;
use std::process::{ChildStdin, Stdio};
use std::time::{Duration, Instant};

use crate::screen::{Process, Screen, is_asked_for, open, said};
use steerloft::memory::LeftBehind;
use steerloft_setup::supplied::SUPPLIED;

/// Events between two looks at the program.
const AT_ONCE: usize = 20;

const KEYS: [&str; 24] = [
    "Escape",
    "Escape",
    "Tab",
    "Return",
    "space",
    "Left",
    "Right",
    "Up",
    "Down",
    "BackSpace",
    "Delete",
    "Home",
    "End",
    "F1",
    "ctrl+z",
    "ctrl+shift+z",
    "ctrl+n",
    "ctrl+m",
    "ctrl+k",
    "ctrl+s",
    "ctrl+w",
    "ctrl+1",
    "ctrl+2",
    "ctrl+0",
];

const TEXTS: [&str; 6] = ["1", "2,5", "1/8 in", "-", "toe", "(3"];

/// The same numbers on every machine: `SplitMix64` by G. Steele, D. Lea and C. Flood, "Fast splittable pseudorandom number
/// generators", OOPSLA 2014.
struct Random(u64);

impl Random {
    fn below(&mut self, bound: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        let bound = bound as u64;
        usize::try_from((mixed ^ (mixed >> 31)) % bound).unwrap()
    }

    fn event(&mut self, window: &str) -> String {
        let place =
            |random: &mut Self| format!("mousemove {} {}", random.below(1280), random.below(800));
        match self.below(20) {
            0..5 => place(self),
            5..10 => format!("{} click 1", place(self)),
            10..12 => format!("{} click {}", place(self), 2 + self.below(4)),
            12..14 => {
                let (from, to) = (place(self), place(self));
                format!("{from} mousedown 1 sleep 0.03 {to} sleep 0.03 mouseup 1")
            }
            14..17 => format!("key {}", KEYS[self.below(KEYS.len())]),
            17..19 => format!("type \"{}\"", TEXTS[self.below(TEXTS.len())]),
            _ => {
                let (width, height) = (320 + self.below(1000), 200 + self.below(640));
                format!("windowsize {window} {width} {height}")
            }
        }
    }
}

/// A program of hands that is told what to do line by line.
fn hands(screen: &Screen) -> (Process, ChildStdin) {
    let mut hands = screen
        .command("xdotool")
        .arg("-")
        .stdin(Stdio::piped())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .expect("xdotool must be installed");
    let lines = hands.stdin.take().unwrap();
    (Process(hands), lines)
}

#[test]
fn a_monkey_at_the_real_window_breaks_nothing() {
    let minutes = std::env::var("STEERLOFT_MONKEY_MINUTES");
    let Some(minutes) = minutes.ok().and_then(|text| text.parse::<u64>().ok()) else {
        eprintln!("left out: set STEERLOFT_MONKEY_MINUTES to let a monkey at the real window");
        return;
    };
    if !is_asked_for() {
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("car.ron");
    let screen = Screen::start();
    let mut random = Random(minutes);
    let (mut events, mut starts) = (0, 0);
    let end = Instant::now() + Duration::from_mins(minutes);
    while Instant::now() < end {
        steerloft_setup::file::write(&file, &SUPPLIED[starts % SUPPLIED.len()].setup()).unwrap();
        starts += 1;
        let (mut program, window) = open(&screen, &file);
        let (mut worker, mut lines) = hands(&screen);
        while Instant::now() < end && program.0.try_wait().unwrap().is_none() {
            for _ in 0..AT_ONCE {
                writeln!(lines, "{}\nsleep 0.02", random.event(&window)).unwrap();
                events += 1;
            }
            std::thread::sleep(Duration::from_millis(800));
        }
        // It may have found how to close the window; anything else is a fault.
        if let Some(status) = program.0.try_wait().unwrap() {
            let said = said(&mut program);
            assert!(status.success(), "event {events}: {status}: {said}");
            assert!(!said.contains("panicked"), "event {events}: {said}");
        } else {
            program.0.kill().unwrap();
            program.0.wait().unwrap();
            let said = said(&mut program);
            assert!(!said.contains("panicked"), "event {events}: {said}");
        }
        let _ = worker.0.kill();
        let _ = worker.0.wait();
        for run in LeftBehind::find(&screen.memory.path().join("steerloft/unsaved")) {
            assert_eq!(run.fault, None);
            assert!(run.works.iter().all(|left| left.work.is_ok()), "{run:?}");
        }
    }
    eprintln!("{events} events, {starts} starts");
}
