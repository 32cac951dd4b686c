//! Every key and what the pointer does, read from the table of commands.

use eframe::egui::{Context, Grid, RichText, ScrollArea, Ui, vec2};

use super::{Intent, Intents, messages};
use crate::commands::{Command, Group};
use crate::theme::{Metrics, Tokens};

/// What keys and pointer do beside the commands: where, how, what.
const HANDS: [(&str, &str); 14] = [
    (
        "Drag a ring",
        "move that pivot along what its adjustments allow",
    ),
    ("Alt while dragging", "go between the steps of a slide"),
    ("Escape while dragging", "take the drag back"),
    (
        "Arrow keys on a ring",
        "one step of the adjustment that moves it that way",
    ),
    ("Double-click a ring", "put the pivot back to base"),
    ("Drag an empty place", "move the drawing"),
    ("Middle button, anywhere", "move the drawing"),
    (
        "Wheel or pinch",
        "come nearer to the place under the pointer",
    ),
    ("Double-click an empty place", "fit the views"),
    ("Drag in a curve", "pose the car there"),
    (
        "Tab, Shift+Tab",
        "to the next or last control, rings included",
    ),
    ("Arrow keys on a slider or number", "one step more or less"),
    ("Enter in a number", "take what was typed"),
    ("Escape in a number", "leave it as it was"),
];

/// Draws the page over everything else.
pub fn show(ctx: &Context, intents: &mut Intents) {
    let room = ctx.content_rect().size() - vec2(60.0, 140.0);
    let modal = messages::question("keys", ctx).show(ctx, |ui| {
        ui.set_width(520.0_f32.min(room.x.max(140.0)));
        ui.heading("Keys");
        let height = 520.0_f32.min(room.y.max(40.0));
        ScrollArea::vertical()
            .max_height(height)
            // Else the page would grow frame by frame, and its button run away from the pointer.
            .min_scrolled_height(height)
            .show(ui, |ui| {
                for group in Group::ALL {
                    commands(ui, group);
                }
                hands(ui);
            });
        ui.add_space(Metrics::GAP);
        ui.button("Close").clicked()
    });
    if modal.inner || modal.should_close() {
        intents.push(Intent::ClosePage);
    }
}

fn commands(ui: &mut Ui, group: Group) {
    heading(ui, group.title());
    Grid::new(("keys", group.title()))
        .num_columns(2)
        .min_col_width(KEY_WIDTH)
        .show(ui, |ui| {
            for command in Command::all().filter(|command| command.group() == group) {
                row(ui, &command.key_names(), command.text());
            }
        });
}

fn hands(ui: &mut Ui) {
    heading(ui, "Hands");
    Grid::new("hands")
        .num_columns(2)
        .min_col_width(KEY_WIDTH)
        .show(ui, |ui| {
            for (how, what) in HANDS {
                row(ui, how, what);
            }
        });
}

/// Least width of the column with the keys, points.
const KEY_WIDTH: f32 = 170.0;

fn heading(ui: &mut Ui, text: &str) {
    ui.add_space(Metrics::GAP);
    ui.label(RichText::new(text).strong());
}

fn row(ui: &mut Ui, how: &str, what: &str) {
    let tokens = Tokens::of(ui.ctx());
    ui.colored_label(tokens.text_strong, how);
    ui.label(what);
    ui.end_row();
}
