//! The history of the car: the setups of the file's folder as a tree with differences, search, and a way to open them.

use std::path::PathBuf;

use eframe::egui::{Button, RichText, ScrollArea, TextEdit, Ui};

use crate::commands::Command;
use crate::state::{Bench, SetupTree, TreeRow, WorkedOut};
use crate::theme::{Metrics, Tokens};
use crate::ui::widgets::named_button;
use crate::ui::{Intent, Intents, units_of};

/// How far a setup stands in from that which it was made from, points.
const INDENT: f32 = 22.0;

/// What the drawer holds from one frame to the next.
#[derive(Debug, Default)]
pub struct SetupTreeDrawer {
    /// What is searched for.
    pub words: String,
    /// How often it was asked to read the folder again.
    readings: u64,
    answer: WorkedOut<Question, Result<SetupTree, String>>,
}

/// What the folder's contents depend on, as far as this window knows: saving turns "changed" off.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Question {
    folder: PathBuf,
    readings: u64,
    file: Option<PathBuf>,
    is_changed: bool,
}

impl SetupTreeDrawer {
    /// Whether the folder is being read.
    #[must_use]
    pub const fn is_working(&self) -> bool {
        self.answer.is_working()
    }

    /// The tree as it was read last.
    #[must_use]
    pub fn tree(&self) -> Option<&SetupTree> {
        self.answer.last()?.as_ref().ok()
    }

    fn ask(&mut self, ui: &Ui, bench: &Bench, folder: PathBuf) {
        let ctx = ui.ctx().clone();
        let question = Question {
            folder: folder.clone(),
            readings: self.readings,
            file: bench.document().path().map(PathBuf::from),
            is_changed: bench.document().is_changed(),
        };
        self.answer.ask(
            question,
            move || ctx.request_repaint(),
            move || SetupTree::read(&folder).map_err(|error| error.to_string()),
        );
    }
}

/// Draws the drawer.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench,
    drawer: &mut SetupTreeDrawer,
    intents: &mut Intents,
) {
    let tokens = Tokens::of(ui.ctx());
    let folder = bench.document().path().and_then(|path| {
        let folder = path.parent()?;
        Some(if folder.as_os_str().is_empty() {
            PathBuf::from(".")
        } else {
            folder.to_owned()
        })
    });
    ui.horizontal(|ui| {
        let command = Command::Continue;
        if ui
            .button(command.text())
            .on_hover_text(command.tooltip())
            .clicked()
        {
            intents.push(Intent::Command(command));
        }
        if folder.is_some() {
            let words = TextEdit::singleline(&mut drawer.words)
                .hint_text("Search names, notes, runs and parts")
                .desired_width(260.0);
            ui.add(words).accessible_name("Search the setups");
            if ui.button("Read again").clicked() {
                drawer.readings += 1;
            }
        }
    });
    let Some(folder) = folder else {
        ui.colored_label(
            tokens.text_weak,
            "This setup is in no file yet. Save the setups of a car in one folder, and they stand here as a tree.",
        );
        return;
    };
    drawer.ask(ui, bench, folder.clone());
    match drawer.answer.last() {
        None => {
            ui.colored_label(tokens.text_weak, "Being read\u{2026}");
        }
        Some(Err(reason)) => {
            ui.colored_label(tokens.warning, reason);
        }
        Some(Ok(tree)) => {
            ui.weak(folder.display().to_string());
            ScrollArea::vertical()
                .auto_shrink([false, false])
                .show(ui, |ui| rows(ui, bench, tree, &drawer.words, intents));
        }
    }
}

fn rows(ui: &mut Ui, bench: &Bench, tree: &SetupTree, words: &str, intents: &mut Intents) {
    let tokens = Tokens::of(ui.ctx());
    if words.trim().is_empty() {
        for row in tree.rows() {
            entry(ui, bench, row, row.depth, &row.lines(), intents);
        }
    } else {
        let hits = tree.search(words);
        if hits.is_empty() {
            ui.weak("No setup of this folder holds all these words.");
        }
        for (row, hit) in hits {
            let passages = hit.passages.iter();
            let lines: Vec<String> = passages
                .map(|passage| format!("{}: {}", passage.place, passage.line))
                .collect();
            entry(ui, bench, row, 0, &lines, intents);
        }
    }
    for skipped in &tree.held().skipped {
        ui.colored_label(tokens.warning, format!("Left out: {}", skipped.error));
    }
    if tree.held().is_cut {
        let text =
            "The folder holds more files than are looked at; move older ones to another folder.";
        ui.colored_label(tokens.warning, text);
    }
}

fn entry(
    ui: &mut Ui,
    bench: &Bench,
    row: &TreeRow,
    depth: usize,
    lines: &[String],
    intents: &mut Intents,
) {
    let units = units_of(ui.ctx());
    let is_open = bench.document().path() == Some(&row.file);
    ui.horizontal(|ui| {
        #[allow(clippy::cast_precision_loss, reason = "a tree is a few setups deep")]
        ui.add_space(INDENT * depth.min(20) as f32);
        let name = row.file_name();
        let open = named_button(
            ui,
            !is_open,
            Button::new("Open").small(),
            &format!("Open {name}"),
        );
        if open.clicked() {
            intents.push(Intent::OpenFile(row.file.clone()));
        }
        ui.vertical(|ui| {
            ui.horizontal(|ui| {
                let title = RichText::new(&row.title).strong();
                ui.label(title);
                ui.weak(if is_open {
                    format!("{name}, on the bench")
                } else {
                    name
                });
            });
            ui.spacing_mut().item_spacing.y = 1.0;
            for line in lines {
                ui.label(RichText::new(units.sentence(line)).small());
            }
        });
    });
    ui.add_space(Metrics::GAP_SMALL);
}
