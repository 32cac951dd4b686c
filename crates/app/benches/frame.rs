//! Processor time of a frame while a pivot is dragged, and of everything that is computed for one setup.
//!
//! `cargo bench -p steerloft --bench frame` prints both for every supplied car; `-- start`, `-- computations` and
//! `-- frames` print a part of it, `-- frames touring` that of the cars so called. Of frames the mean is printed, of that round
//! of a hundred which the machine disturbed least. Frames are run through the program's own
//! widgets in a window without a screen: state, layout and tessellation count, the graphics adapter does not;
//! the first frame, the frames drawn at rest and the memory held are printed too. There is no screen reader, so that no
//! accessibility tree is built. Times are the processor's where the system tells them (Unix), the clock's elsewhere. `-- --test` runs everything once.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a bench on supplied cars, which are known to be sound"
)]

use std::hint::black_box;
use std::time::{Duration, Instant};

use eframe::App as _;
use eframe::egui::{
    Context, Event, FullOutput, Modifiers, PointerButton, Pos2, RawInput, Rect, Theme, Vec2,
    ViewportId, vec2,
};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use steerloft::app::Steerloft;
use steerloft::dialogs::{ScriptedAnswers, ScriptedDialogs};
use steerloft::heap::keep_freed_memory;
use steerloft::state::{CurveKind, Document};
use steerloft::theme::ThemeChoice;
use steerloft::ui::views::handle_name;
use steerloft_analysis::Study;
use steerloft_analysis::curves::{FixedRanges, Sweeps};
use steerloft_setup::adjustment::Kind;
use steerloft_setup::handles::handles;
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::{SUPPLIED, Supplied};
use steerloft_sheet::View;

const SIZE: Vec2 = vec2(1280.0, 800.0);

/// The parts of the bench.
const PARTS: [&str; 3] = ["start", "computations", "frames"];

/// How often things are done.
#[derive(Debug, Clone, Copy)]
struct Counts {
    /// Rounds of frames, of which the quickest counts.
    rounds: u16,
    /// Frames of a round.
    frames: u16,
    /// Frames of a drag that is tried to see what it changes.
    probe: u16,
    /// Time to be spent on each computation.
    least: Duration,
}

fn main() {
    keep_freed_memory();
    let once = std::env::args().any(|argument| argument == "--test");
    let counts = if once {
        Counts {
            rounds: 1,
            frames: 2,
            probe: 1,
            least: Duration::ZERO,
        }
    } else {
        Counts {
            rounds: 15,
            frames: 100,
            probe: 12,
            least: Duration::from_millis(300),
        }
    };
    if wanted("start") {
        print_start_and_rest(once);
    }
    if wanted("computations") {
        print_computations(counts);
    }
    if wanted("frames") {
        print_frames(counts);
    }
    print_memory();
}

/// Whether a part of the bench is asked for: all are where none is named.
fn wanted(part: &str) -> bool {
    let mut named = words().filter(|word| PARTS.contains(&word.as_str()));
    let first = named.next();
    first.is_none_or(|first| first == part || named.any(|word| word == part))
}

/// The supplied cars that are asked for by a part of their title: all where none is.
fn cars() -> impl Iterator<Item = &'static Supplied> {
    let named: Vec<String> = words()
        .filter(|word| !PARTS.contains(&word.as_str()))
        .collect();
    SUPPLIED.iter().filter(move |car| {
        named.is_empty() || named.iter().any(|word| car.title.contains(word.as_str()))
    })
}

fn words() -> impl Iterator<Item = String> {
    let words = std::env::args().skip(1);
    words.filter(|word| !word.starts_with('-'))
}

/// The first frame, and what is drawn while nothing happens.
fn print_start_and_rest(once: bool) {
    let (clock, start) = (Instant::now(), processor_time());
    let mut stage = Stage::new(SUPPLIED[0].setup());
    let first = stage.frame(Vec::new());
    black_box(stage.ctx.tessellate(first.shapes, first.pixels_per_point));
    let (clock, spent) = (clock.elapsed(), since(start));
    println!(
        "first frame from reading the car to triangles: {:.0} ms by the clock, {:.0} ms of processor time",
        millis(clock),
        millis(spent)
    );
    let settling = (0..20)
        .take_while(|_| stage.frame_asks_for_another())
        .count();
    let rest = if once { 5 } else { 200 };
    let asked = (0..rest).filter(|_| stage.frame_asks_for_another()).count();
    println!(
        "frames until the window rests: {}; further frames asked for in {rest} at rest: {asked}\n",
        settling + 1
    );
}

/// The application without a window, and without the accessibility tree that tests read.
struct Stage {
    ctx: Context,
    app: Steerloft,
    window: eframe::Frame,
    frames: u32,
}

impl Stage {
    fn new(setup: Setup) -> Self {
        let ctx = Context::default();
        let dialogs = Box::new(ScriptedDialogs::new(ScriptedAnswers::default()));
        let document = Document::unnamed(setup);
        let app = Steerloft::new(&ctx, document, dialogs, ThemeChoice::Light);
        Self {
            ctx,
            app,
            window: eframe::Frame::_new_kittest(),
            frames: 0,
        }
    }

    fn frame(&mut self, events: Vec<Event>) -> FullOutput {
        self.frames += 1;
        let input = RawInput {
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, SIZE)),
            time: Some(f64::from(self.frames) / 60.0),
            focused: true,
            events,
            ..RawInput::default()
        };
        let (app, window) = (&mut self.app, &mut self.window);
        let mut output = self.ctx.run_ui(input, |ui| {
            app.logic(ui.ctx(), window);
            app.ui(ui, window);
        });
        // No graphics adapter takes them.
        output.textures_delta.clear();
        output
    }

    /// Draws a frame; whether another one is wanted within a second.
    fn frame_asks_for_another(&mut self) -> bool {
        let output = self.frame(Vec::new());
        let root = output.viewport_output.get(&ViewportId::ROOT);
        root.is_some_and(|root| root.repaint_delay < Duration::from_secs(1))
    }
}

/// The most memory this process has held, where the system tells it (Linux).
fn print_memory() {
    let told = std::fs::read_to_string("/proc/self/status").ok();
    let line = told.as_deref().and_then(|text| {
        let mut lines = text.lines();
        lines.find_map(|line| line.strip_prefix("VmHWM:").map(str::trim))
    });
    println!(
        "most memory held by this bench, all windows above included (VmHWM): {}",
        line.unwrap_or("not told by this system")
    );
}

fn print_computations(counts: Counts) {
    println!("computed for one setup, \u{b5}s");
    println!(
        "{:<36} {:>8} {:>8} {:>8} {:>8} {:>8} {:>8} {:>8}",
        "", "all", "steer", "travel", "roll", "figures", "pivots", "axes"
    );
    for car in cars() {
        let setup = car.setup();
        let study = Study::new(&setup).expect("a sound car");
        let sweeps = || Sweeps::new(study.assembly(), &setup.car.ranges);
        let all = mean(counts.least, || {
            let study = Study::new(&setup).expect("a sound car");
            for kind in CurveKind::ALL {
                black_box(study.curve(kind));
            }
            black_box(study.figures(study.rest()).all());
        });
        let steer = mean(counts.least, || {
            black_box(sweeps().steer());
        });
        let travel = mean(counts.least, || {
            black_box(sweeps().travel());
        });
        let roll = mean(counts.least, || {
            black_box(sweeps().roll());
        });
        let figures = mean(counts.least, || {
            black_box(study.figures(study.rest()).all());
        });
        let pivots = mean(counts.least, || {
            black_box(handles(&setup));
        });
        let axes = mean(counts.least, || {
            black_box(FixedRanges::of(&setup.car));
        });
        println!(
            "{:<36} {:>8.1} {:>8.1} {:>8.1} {:>8.1} {:>8.1} {:>8.1} {:>8.1}",
            car.title,
            micros(all),
            micros(steer),
            micros(travel),
            micros(roll),
            micros(figures),
            micros(pivots),
            micros(axes)
        );
    }
    println!();
}

fn print_frames(counts: Counts) {
    println!(
        "a frame while a pivot is dragged, ms: state and widgets + tessellation, and share of frames that change"
    );
    println!("{:<36} {:>20} {:>20}", "", "two curves", "all curves on");
    for car in cars() {
        let setup = car.setup();
        let grip = liveliest(&setup, counts.probe);
        let [two, all] = [false, true].map(|all| {
            let spent = drag_frames(&setup, &grip, all, [counts.rounds, counts.frames]);
            let share = 100.0 * f64::from(spent.changes) / f64::from(counts.frames);
            let (ui, mesh) = (millis(spent.ui), millis(spent.mesh));
            format!("{ui:.2} + {mesh:.2}, {share:.0} %")
        });
        println!("{:<36} {two:>20} {all:>20}", car.title);
    }
}

/// What frames took.
#[derive(Debug, Default)]
struct Spent {
    /// State and widgets.
    ui: Duration,
    /// Turning shapes into triangles.
    mesh: Duration,
    /// Frames in which the setup changed, so that all was computed anew.
    changes: u16,
}

/// A pivot and the direction on screen in which it is dragged.
#[derive(Debug, Clone)]
struct Grip {
    pivot: String,
    along: Vec2,
}

/// Drags a pivot to and fro, free of steps, for some rounds of some frames; the mean of the quickest round.
fn drag_frames(setup: &Setup, grip: &Grip, all_curves: bool, [rounds, frames]: [u16; 2]) -> Spent {
    let at = place_of(setup, &grip.pivot);
    let mut stage = Stage::new(setup.clone());
    for kind in CurveKind::ALL {
        let curves = &mut stage.app.view_mut().curves;
        if all_curves && !curves.has(kind) {
            curves.toggle(kind);
        }
    }
    stage.frame(vec![Event::ModifiersChanged(Modifiers::ALT)]);
    for _ in 0..4 {
        stage.frame(vec![Event::PointerMoved(at)]);
    }
    stage.frame(vec![press(at)]);
    (0..rounds)
        .map(|_| drag_round(&mut stage, at, grip, frames))
        .min_by_key(|spent| spent.ui + spent.mesh)
        .unwrap_or_default()
}

fn drag_round(stage: &mut Stage, at: Pos2, grip: &Grip, frames: u16) -> Spent {
    let mut spent = Spent::default();
    let mut before = stage.app.bench().setup().clone();
    for frame in 0..frames {
        let to_and_fro = 10.0 * (f32::from(frame) * 0.37 + 1.0).sin();
        let place = at + grip.along * to_and_fro;
        let start = processor_time();
        let output = stage.frame(vec![Event::PointerMoved(place)]);
        spent.ui += since(start);
        let start = processor_time();
        black_box(stage.ctx.tessellate(output.shapes, output.pixels_per_point));
        spent.mesh += since(start);
        let now = stage.app.bench().setup();
        spent.changes += u16::from(*now != before);
        before = now.clone();
    }
    Spent {
        ui: spent.ui / u32::from(frames),
        mesh: spent.mesh / u32::from(frames),
        changes: spent.changes,
    }
}

/// The drag that changes the setup in most of its frames: a slide moves freely, a choice from hole to hole.
fn liveliest(setup: &Setup, probe: u16) -> Grip {
    let slides = |index: &usize| {
        let kind = &setup.car.adjustments[*index].kind;
        matches!(kind, Kind::Slide { .. } | Kind::Stack { .. })
    };
    let grips = handles(setup)
        .into_iter()
        .filter(|handle| handle.adjustments.iter().any(slides))
        .flat_map(|handle| {
            [View::Top, View::Front].map(|view| handle_name(handle.point, handle.side, view))
        })
        .flat_map(|pivot| {
            [vec2(1.0, 0.0), vec2(0.0, 1.0)].map(|along| Grip {
                pivot: pivot.clone(),
                along,
            })
        });
    grips
        .max_by_key(|grip| drag_frames(setup, grip, false, [1, probe]).changes)
        .expect("something to drag")
}

/// Where a pivot is on screen, by the name that a screen reader gives it.
fn place_of(setup: &Setup, pivot: &str) -> Pos2 {
    let setup = setup.clone();
    let mut app = Harness::builder()
        .with_size(SIZE)
        .with_theme(Theme::Light)
        .build_eframe(move |context| {
            let dialogs = Box::new(ScriptedDialogs::new(ScriptedAnswers::default()));
            let document = Document::unnamed(setup);
            Steerloft::new(&context.egui_ctx, document, dialogs, ThemeChoice::Light)
        });
    app.run_steps(4);
    app.get_by_label(pivot).rect().center()
}

fn press(at: Pos2) -> Event {
    Event::PointerButton {
        pos: at,
        button: PointerButton::Primary,
        pressed: true,
        modifiers: Modifiers::ALT,
    }
}

/// Mean processor time of a computation, repeated until `least` is spent on it.
fn mean(least: Duration, mut compute: impl FnMut()) -> Duration {
    compute();
    let (start, mut times, mut batch) = (processor_time(), 0, 1);
    loop {
        for _ in 0..batch {
            compute();
        }
        times += batch;
        let spent = since(start);
        if spent >= least {
            return spent / times;
        }
        batch = times;
    }
}

/// Processor time that this thread has used.
#[cfg(unix)]
fn processor_time() -> Duration {
    use rustix::time::{ClockId, clock_gettime};
    Duration::try_from(clock_gettime(ClockId::ThreadCPUTime)).unwrap_or_default()
}

/// Time by the clock, where the system does not tell the processor's.
#[cfg(not(unix))]
fn processor_time() -> Duration {
    thread_local! {
        static START: Instant = Instant::now();
    }
    START.with(Instant::elapsed)
}

/// Processor time that this thread has used since then.
fn since(start: Duration) -> Duration {
    processor_time().saturating_sub(start)
}

fn micros(duration: Duration) -> f64 {
    duration.as_secs_f64() * 1e6
}

fn millis(duration: Duration) -> f64 {
    duration.as_secs_f64() * 1e3
}
