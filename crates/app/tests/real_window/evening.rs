//! An evening's work: a pivot dragged, fifty steps beside a kept reference undone and some made again, the process killed
//! with a change that is in no file, and that change restored.
//!
//! Each step is waited for until the program has kept it on the disk, so that nothing depends on the pace of hands or frames.

use std::path::{Path, PathBuf};
use std::time::Duration;

use crate::common::{App, SIZE, adjustment, command_key, window_on};
use crate::screen::{Process, Screen, drag_on_screen, is_asked_for, open, read, wait_for};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, Modifiers, Theme};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use steerloft::app::Steerloft;
use steerloft::dialogs::{ScriptedAnswers, ScriptedDialogs};
use steerloft::memory::{Memory, Places, Unsaved};
use steerloft::state::Document;
use steerloft::theme::ThemeChoice;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;

/// Steps made beside the reference.
const STEPS: usize = 50;

/// Steps made again after all of them were undone.
const MADE_AGAIN: usize = 8;

const PACKING: &str = "Servo height packing";

/// Thinnest and thickest packing, and what a click adds or takes, mm.
const PACKING_RANGE: [f64; 2] = [0.0, 3.0];
const PACKING_STEP: f64 = 0.5;

/// The program in its real window, beside a double without a screen that tells where its buttons are.
struct Bench<'a> {
    screen: &'a Screen,
    program: Process,
    window: String,
    double: App,
}

impl<'a> Bench<'a> {
    fn open(screen: &'a Screen, file: &Path, double: App) -> Self {
        let (program, window) = open(screen, file);
        Self {
            screen,
            program,
            window,
            double,
        }
    }

    /// Clicks the button of this name in the real window and in its double.
    fn click(&mut self, name: &str) {
        let button = self.double.get_by_role_and_label(Role::Button, name);
        let at = button.rect().center();
        button.click();
        self.double.run();
        self.screen.move_to((at.x, at.y));
        self.screen.hand(&["click", "1"]);
    }

    /// Waits until this, and nothing else, is kept as unsaved work.
    fn wait_until_kept(&self, what: &str, expected: Option<&Setup>) {
        wait_for(what, || {
            (kept(self.screen).iter().eq(expected)).then_some(())
        });
    }

    /// Saves, and waits until the file holds this.
    fn save(&self, file: &Path, expected: &Setup) {
        self.screen.press("ctrl+s", 1);
        wait_for("the saved file", || (read(file) == *expected).then_some(()));
        self.wait_until_kept("no unsaved work", None);
    }
}

fn memory(screen: &Screen) -> PathBuf {
    screen.memory.path().join("steerloft")
}

/// All unsaved work that lies on the disk.
fn kept(screen: &Screen) -> Vec<Setup> {
    let entries = |folder: PathBuf| std::fs::read_dir(folder).into_iter().flatten().flatten();
    entries(memory(screen).join("unsaved"))
        .flat_map(|run| entries(run.path()))
        .map(|entry| entry.path())
        .filter(|path| path.extension().is_some_and(|end| end == "ron"))
        .filter_map(|path| Unsaved::read(&path).ok())
        .map(|work| work.setup)
        .collect()
}

/// Drags the pivot until its new place is kept as unsaved work; the button is let go only then, or where it was pressed.
fn drag(bench: &Bench<'_>, dragged: &Setup) {
    let pause = || std::thread::sleep(Duration::from_millis(100));
    let [from, to] = drag_on_screen();
    let screen = bench.screen;
    wait_for("the dragged pivot", || {
        screen.move_to(from);
        (0..5).for_each(|_| pause());
        screen.hand(&["mousedown", "1"]);
        (0..5).for_each(|_| pause());
        for step in 1_u8..=10 {
            let share = f32::from(step) / 10.0;
            screen.move_to((
                from.0 + (to.0 - from.0) * share,
                from.1 + (to.1 - from.1) * share,
            ));
            pause();
        }
        let arrived = (0..150).find(|_| {
            pause();
            kept(screen).iter().eq([dragged])
        });
        if arrived.is_none() {
            screen.move_to(from);
            (0..5).for_each(|_| pause());
        }
        screen.hand(&["mouseup", "1"]);
        arrived
    });
}

/// Keeps the reference, and shows the figures too: that they are shown is remembered on the disk, and so tells that both keys
/// have arrived.
fn keep_reference(bench: &mut Bench<'_>) {
    let shows_figures = |screen: &Screen| {
        let settings = std::fs::read_to_string(memory(screen).join("settings.ron"));
        settings.is_ok_and(|text| text.contains("\"Figures\""))
    };
    assert!(!shows_figures(bench.screen));
    bench.screen.press("ctrl+m", 1);
    bench.screen.press("ctrl+2", 1);
    command_key(&mut bench.double, Key::M);
    command_key(&mut bench.double, Key::Num2);
    wait_for("the reference", || {
        shows_figures(bench.screen).then_some(())
    });
}

/// Makes the steps beside the reference, and returns the setup before them and after each.
///
/// The second one takes the reference's value over by the line that shows the difference. The others take the packing up and
/// down between its ends.
fn make_steps(bench: &mut Bench<'_>, before: &Setup) -> Vec<Setup> {
    let packing = adjustment(&bench.double, PACKING);
    let with = |thickness: f64| {
        let mut setup = before.clone();
        setup.set(packing, Chosen::Stack(thickness)).unwrap();
        setup
    };
    let mut states = vec![before.clone()];
    let mut arrive = |bench: &mut Bench<'_>, button: &str, setup: Setup| {
        bench.click(button);
        bench.wait_until_kept(&format!("step {}", states.len()), Some(&setup));
        states.push(setup);
    };
    arrive(bench, &format!("{PACKING}: more"), with(1.5));
    bench.screen.picture("evening-differs.png");
    arrive(bench, &format!("{PACKING}: reference 1 mm"), with(1.0));
    let (mut thickness, mut by) = (1.0, -PACKING_STEP);
    for _ in 2..STEPS {
        thickness += by;
        let button = if by > 0.0 { "more" } else { "less" };
        arrive(bench, &format!("{PACKING}: {button}"), with(thickness));
        if PACKING_RANGE.contains(&thickness) {
            by = -by;
        }
    }
    states
}

/// Undoes all steps, looks whether it was just them, and makes some again.
fn undo_and_make_again(bench: &mut Bench<'_>, file: &Path, first: &Setup, states: &[Setup]) {
    bench.screen.press("ctrl+z", STEPS);
    bench.wait_until_kept("the steps undone", Some(&states[0]));
    bench.save(file, &states[0]);
    bench.screen.press("ctrl+z", 1);
    bench.wait_until_kept("the drag undone", Some(first));
    bench.screen.press("ctrl+shift+z", 1);
    bench.wait_until_kept("the drag made again", None);
    bench.screen.press("ctrl+shift+z", MADE_AGAIN);
    bench.wait_until_kept("steps made again", Some(&states[MADE_AGAIN]));
    for _ in 0..STEPS {
        command_key(&mut bench.double, Key::Z);
    }
    for _ in 0..MADE_AGAIN {
        let modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);
        bench.double.key_press_modifiers(modifiers, Key::Z);
        bench.double.run();
    }
}

/// A double of the window that finds what was left, from a copy, so that nothing in it is touched.
fn double_after_the_end(screen: &Screen, file: &Path, folder: &Path) -> App {
    copy(&memory(screen), folder);
    let places = Places::within(folder);
    let document = Document::read(file).unwrap();
    let mut double = Harness::builder()
        .with_size(SIZE)
        .with_theme(Theme::Light)
        .with_max_steps(12)
        .build_eframe(move |context| {
            let ctx = &context.egui_ctx;
            let dialogs = Box::new(ScriptedDialogs::new(ScriptedAnswers::default()));
            Steerloft::new(ctx, document, dialogs, ThemeChoice::Light).remember(
                Memory::at(places),
                Duration::ZERO,
                ctx,
            )
        });
    double.run();
    double
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap().map(Result::unwrap) {
        let target = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            copy(&entry.path(), &target);
        } else {
            std::fs::copy(entry.path(), target).unwrap();
        }
    }
}

#[test]
fn an_evenings_work_is_undone_made_again_and_outlives_a_hard_end() {
    if !is_asked_for() {
        return;
    }
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("car.ron");
    let first = SUPPLIED[0].setup();
    steerloft_setup::file::write(&file, &first).unwrap();
    let mut dragged = first.clone();
    let station = Chosen::Slide(2.0);
    dragged.chosen.insert("Servo station".to_owned(), station);

    let screen = Screen::start();
    let (double, _) = window_on(Document::unnamed(dragged.clone()), SIZE);
    let mut bench = Bench::open(&screen, &file, double);
    drag(&bench, &dragged);
    keep_reference(&mut bench);
    let states = make_steps(&mut bench, &dragged);
    assert_eq!(states.len(), 1 + STEPS);
    assert_eq!(read(&file), first, "nothing is saved unasked");
    screen.picture("evening-steps.png");
    undo_and_make_again(&mut bench, &file, &first, &states);

    // A step that differs from the one that could be made again.
    bench.click(&format!("{PACKING}: less"));
    let last = bench.double.state().bench().setup().clone();
    assert_ne!(last, states[MADE_AGAIN]);
    assert_ne!(last, states[MADE_AGAIN + 1]);
    bench.wait_until_kept("the last change", Some(&last));
    screen.picture("evening-unsaved.png");
    // On unix this is SIGKILL, which cannot be caught.
    bench.program.0.kill().unwrap();
    bench.program.0.wait().unwrap();
    drop(bench);
    assert_eq!(read(&file), dragged, "the file is as it was saved");
    assert_eq!(kept(&screen), std::slice::from_ref(&last));

    let copied = tempfile::tempdir().unwrap();
    let double = double_after_the_end(&screen, &file, copied.path());
    let mut bench = Bench::open(&screen, &file, double);
    assert_eq!(read(&file), dragged, "nothing comes back unasked");
    screen.picture("evening-left.png");
    bench.click("Open what was left of car.ron");
    wait_for("the restored work", || {
        let title = screen.title(&bench.window);
        title.starts_with("car.ron (changed)").then_some(())
    });
    assert_eq!(read(&file), dragged, "the file is not touched by it");
    screen.picture("evening-restored.png");
    bench.save(&file, &last);
    screen.press("ctrl+q", 1);
    let status = wait_for("the program's end", || bench.program.0.try_wait().unwrap());
    assert!(status.success(), "{status}");
}
