//! A monkey at the window: seeded random clicks, drags, keys, wheel, resizes and dropped files through the application's
//! own code, without a window and without drawing. It must not panic, and undoing back to the start must restore the
//! setup exactly as it was opened.
//!
//! Two monkeys share the events, each with a seed of its own. `STEERLOFT_MONKEY_EVENTS=N` sets how many events there are,
//! `STEERLOFT_MONKEY_SEED=N` the seed of the first.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use eframe::App as _;
use eframe::egui::{
    self, Context, Event, Key, Modifiers, MouseWheelSource, MouseWheelUnit, PointerButton, Pos2,
    RawInput, Rect, TouchPhase, Vec2, pos2, vec2,
};
use steerloft::app::Steerloft;
use steerloft::commands::Command;
use steerloft::dialogs::{ScriptedAnswers, ScriptedDialogs};
use steerloft::state::{Document, OpenSetup, SetupId};
use steerloft::theme::ThemeChoice;
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::SUPPLIED;

/// Events in a normal run, of both monkeys.
const EVENTS: u64 = 3_000;

/// Events after which everything is undone and a car is opened anew: fewer steps than the history keeps.
const SEGMENT: u64 = 400;

/// Events in one frame at most.
const EVENTS_A_FRAME: u64 = 6;

#[test]
fn a_monkey_breaks_nothing_and_all_it_did_can_be_undone() {
    let_loose(0);
}

#[test]
fn another_monkey_breaks_nothing_either() {
    let_loose(1);
}

/// Lets a monkey do its half of the events.
fn let_loose(which: u64) {
    let events = number("STEERLOFT_MONKEY_EVENTS").unwrap_or(EVENTS) / 2;
    let seed = number("STEERLOFT_MONKEY_SEED").unwrap_or(1) + which;
    let folder = tempfile::tempdir().unwrap();
    let mut monkey = Monkey::new(seed, folder.path());
    let mut done = 0;
    while done < events {
        let segment = SEGMENT.min(events - done);
        monkey.play(segment);
        monkey.undo_everything();
        monkey.open_another_car();
        done += segment;
    }
    assert!(
        monkey.changes >= events / 500,
        "only {} changes: the monkey did not get at the controls",
        monkey.changes
    );
    assert!(
        monkey.unseen * 20 <= monkey.undone,
        "{} of {} starts never seen: too little was held against its start",
        monkey.unseen,
        monkey.undone
    );
}

fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok()?.parse().ok()
}

/// The monkey and the application it sits at.
struct Monkey {
    random: Random,
    seed: u64,
    frames: u64,
    /// Frames that changed a setup.
    changes: u64,
    /// Open setups that were undone to their start, and those of them that were opened and changed within one frame, so that
    /// their start was never seen.
    undone: u64,
    unseen: u64,
    ctx: Context,
    window: eframe::Frame,
    app: Steerloft,
    script: ScriptedAnswers,
    files: Vec<PathBuf>,
    folder: PathBuf,
    size: Vec2,
    pointer: Pos2,
    modifiers: Modifiers,
    /// Each open setup as it stood when its history was empty.
    starts: BTreeMap<SetupId, Setup>,
}

impl Monkey {
    fn new(seed: u64, folder: &Path) -> Self {
        let script = ScriptedAnswers::default();
        let dialogs = Box::new(ScriptedDialogs::new(script.clone()));
        let ctx = Context::default();
        ctx.enable_accesskit();
        let document = Document::unnamed(SUPPLIED[0].setup());
        let app = Steerloft::new(&ctx, document, dialogs, ThemeChoice::Light);
        Self {
            random: Random(seed),
            seed,
            frames: 0,
            changes: 0,
            undone: 0,
            unseen: 0,
            ctx,
            window: eframe::Frame::_new_kittest(),
            app,
            script,
            files: files(folder),
            folder: folder.to_owned(),
            size: vec2(1280.0, 800.0),
            pointer: pos2(400.0, 300.0),
            modifiers: Modifiers::NONE,
            starts: BTreeMap::new(),
        }
    }

    fn play(&mut self, events: u64) {
        let mut left = events;
        while left > 0 {
            let count = self.random.below(EVENTS_A_FRAME).min(left - 1) + 1;
            let mut input = RawInput::default();
            for _ in 0..count {
                self.event(&mut input);
            }
            self.frame(input);
            left -= count;
        }
        // What is held is let go of.
        self.modifiers = Modifiers::NONE;
        let mut input = RawInput::default();
        input
            .events
            .push(self.button(PointerButton::Primary, false));
        input.events.push(self.button(PointerButton::Middle, false));
        input.events.push(Event::PointerGone);
        self.frame(input);
        self.frame(RawInput::default());
    }

    fn frame(&mut self, mut input: RawInput) {
        self.frames += 1;
        input.screen_rect = Some(Rect::from_min_size(Pos2::ZERO, self.size));
        #[allow(clippy::cast_precision_loss, reason = "a clock")]
        let time = self.frames as f64 / 20.0;
        input.time = Some(time);
        input.focused = true;
        input
            .events
            .insert(0, Event::ModifiersChanged(self.modifiers));
        let before = self.app.bench().setup().clone();
        let (app, window) = (&mut self.app, &mut self.window);
        let mut output = self.ctx.run_ui(input, |ui| {
            app.logic(ui.ctx(), window);
            app.ui(ui, window);
        });
        output.textures_delta.clear();
        let bench = self.app.bench();
        self.changes += u64::from(*bench.setup() != before);
        let fresh = bench.place() == 0 && bench.redo_label().is_none();
        if fresh && !bench.document().is_changed() {
            let id = bench.current().id();
            self.starts.insert(id, bench.setup().clone());
        }
    }

    /// Undoes everything that was done to any open setup.
    fn undo_everything(&mut self) {
        let bench = self.app.bench();
        let open: Vec<SetupId> = bench.open_setups().iter().map(OpenSetup::id).collect();
        for id in open {
            self.app.bench_mut().switch_to(id);
            self.undo_all();
        }
    }

    /// Undoes everything, step by step or by a jump, and does it again.
    fn undo_all(&mut self) {
        let at = format!("seed {}, frame {}", self.seed, self.frames);
        self.app.bench_mut().finish();
        // The setup on the bench may not have been seen at rest before.
        self.frame(RawInput::default());
        let (end, steps) = (self.app.bench().setup().clone(), self.app.bench().place());
        if self.random.below(2) == 0 {
            for _ in 0..steps {
                self.app.bench_mut().undo();
            }
        } else {
            self.app.bench_mut().jump(0);
        }
        assert_eq!(self.app.bench().place(), 0, "{at}");
        let bench = self.app.bench();
        self.undone += 1;
        match self.starts.get(&bench.current().id()) {
            Some(start) => assert!(
                start == bench.setup(),
                "undone, not as it was opened, by {:?}: {at}\n{start:#?}\n{:#?}",
                bench.redo_label(),
                bench.setup()
            ),
            None => self.unseen += 1,
        }
        self.frame(RawInput::default());
        for _ in 0..steps {
            self.app.bench_mut().redo();
        }
        assert!(
            *self.app.bench().setup() == end,
            "done again, not as it was: {at}"
        );
        self.frame(RawInput::default());
    }

    /// Puts a car on the bench and takes all others off, so that every history is short.
    fn open_another_car(&mut self) {
        let car = &SUPPLIED[self.random.index(SUPPLIED.len())];
        let bench = self.app.bench_mut();
        let others: Vec<SetupId> = bench.open_setups().iter().map(OpenSetup::id).collect();
        bench.open(Document::unnamed(car.setup()));
        for id in others {
            bench.close(id);
        }
        self.starts.clear();
        self.frame(RawInput::default());
    }

    /// One random event.
    fn event(&mut self, input: &mut RawInput) {
        match self.random.below(100) {
            0..30 => self.move_pointer(input),
            30..48 => {
                self.move_pointer(input);
                input.events.push(self.button(PointerButton::Primary, true));
                input
                    .events
                    .push(self.button(PointerButton::Primary, false));
            }
            48..58 => {
                // A drag begins at whatever is there and ends where the next release falls.
                self.move_pointer(input);
                input.events.push(self.button(PointerButton::Primary, true));
            }
            58..66 => input
                .events
                .push(self.button(PointerButton::Primary, false)),
            66..69 => self.other_button(input),
            69..74 => input.events.push(self.wheel()),
            74..76 => {
                let factor = 0.5 + self.random.share() * 1.5;
                input.events.push(Event::Zoom(factor));
            }
            76..83 => self.plain_key(input),
            83..88 => self.command_key(input),
            88..93 => input.events.push(Event::Text(self.text())),
            93..95 => self.modifiers = *self.random.one_of(&MODIFIERS),
            95..97 => {
                let (width, height) = (self.random.share(), self.random.share());
                self.size = vec2(
                    320.0 + width * width * 1600.0,
                    200.0 + height * height * 1000.0,
                );
            }
            97 => {
                let path = self.random.one_of(&self.files).clone();
                input.dropped_files = vec![Arc::new(Dropped(path))];
            }
            98 => {
                input.hovered_files = vec![egui::HoveredFile::default()];
            }
            _ => input.events.push(Event::PointerGone),
        }
    }

    fn move_pointer(&mut self, input: &mut RawInput) {
        // Near to where it is half of the time, so that drags are small and clicks double.
        self.pointer = if self.random.below(2) == 0 {
            let by = vec2(self.random.share() - 0.5, self.random.share() - 0.5) * 40.0;
            self.pointer + by
        } else {
            pos2(
                self.random.share() * self.size.x,
                self.random.share() * self.size.y,
            )
        };
        input.events.push(Event::PointerMoved(self.pointer));
    }

    fn button(&self, button: PointerButton, pressed: bool) -> Event {
        Event::PointerButton {
            pos: self.pointer,
            button,
            pressed,
            modifiers: self.modifiers,
        }
    }

    fn other_button(&mut self, input: &mut RawInput) {
        let buttons = [PointerButton::Secondary, PointerButton::Middle];
        let button = *self.random.one_of(&buttons);
        let pressed = self.random.below(2) == 0;
        input.events.push(self.button(button, pressed));
    }

    fn wheel(&mut self) -> Event {
        Event::MouseWheel {
            unit: MouseWheelUnit::Point,
            delta: vec2(0.0, (self.random.share() - 0.5) * 400.0),
            phase: TouchPhase::Move,
            source: MouseWheelSource::Wheel,
            modifiers: self.modifiers,
        }
    }

    fn plain_key(&mut self, input: &mut RawInput) {
        let key = *self.random.one_of(&KEYS);
        input.events.extend(press(key, self.modifiers));
    }

    /// The key of a command. A window that is asked to close stays: the test goes on.
    fn command_key(&mut self, input: &mut RawInput) {
        let keys = Command::keys();
        let (shortcut, command) = self.random.one_of(&keys);
        if matches!(command, Command::Save | Command::SaveAs | Command::Open) {
            let number = self.random.below(5);
            let answer = match command {
                Command::Open => Some(self.random.one_of(&self.files).clone()),
                _ if number == 0 => None,
                _ => Some(self.folder.join(format!("saved-{number}.ron"))),
            };
            self.script.push(answer);
        }
        input
            .events
            .extend(press(shortcut.logical_key, shortcut.modifiers));
    }

    fn text(&mut self) -> String {
        (*self.random.one_of(&TEXTS)).to_owned()
    }
}

const MODIFIERS: [Modifiers; 5] = [
    Modifiers::NONE,
    Modifiers::NONE,
    Modifiers::ALT,
    Modifiers::SHIFT,
    Modifiers::COMMAND,
];

const KEYS: [Key; 18] = [
    Key::Escape,
    Key::Escape,
    Key::Escape,
    Key::Escape,
    Key::Tab,
    Key::Enter,
    Key::Escape,
    Key::Space,
    Key::ArrowLeft,
    Key::ArrowRight,
    Key::ArrowUp,
    Key::ArrowDown,
    Key::Backspace,
    Key::Delete,
    Key::Home,
    Key::End,
    Key::PageDown,
    Key::F1,
];

const TEXTS: [&str; 12] = [
    "1",
    "2,5",
    "0.5",
    "+",
    "*",
    "-",
    "1/8 in",
    " deg",
    "(",
    ")",
    "\u{e9}\u{2212}x",
    "under",
];

fn press(key: Key, modifiers: Modifiers) -> [Event; 2] {
    [true, false].map(|pressed| Event::Key {
        key,
        physical_key: None,
        pressed,
        repeat: false,
        modifiers,
    })
}

/// Files to open and to drop: sound ones, a broken one, and one that does not exist.
fn files(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for car in SUPPLIED {
        let path = folder.join(car.file_name);
        std::fs::write(&path, car.text).unwrap();
        files.push(path);
    }
    let broken = folder.join("broken.ron");
    std::fs::write(&broken, &SUPPLIED[0].text[..200]).unwrap();
    files.extend([broken, folder.join("missing.ron"), folder.to_owned()]);
    files
}

/// A file as the desktop hands it over when it is dropped on a window.
#[derive(Debug)]
struct Dropped(PathBuf);

impl egui::DroppedFile for Dropped {
    fn path(&self) -> &Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|error| error.to_string())
    }
}

/// A small generator of random numbers, the same on every machine: `SplitMix64` by G. Steele, D. Lea and C. Flood, "Fast
/// splittable pseudorandom number generators", OOPSLA 2014.
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    fn below(&mut self, bound: u64) -> u64 {
        self.next() % bound
    }

    fn index(&mut self, length: usize) -> usize {
        usize::try_from(self.below(length as u64)).unwrap()
    }

    /// From 0 to 1.
    fn share(&mut self) -> f32 {
        f32::from(u16::try_from(self.below(10_001)).unwrap()) / 10_000.0
    }

    fn one_of<'a, T>(&mut self, choices: &'a [T]) -> &'a T {
        &choices[self.index(choices.len())]
    }
}
