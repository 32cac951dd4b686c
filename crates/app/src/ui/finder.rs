//! Finding a command by what it is called or does.

use eframe::egui::{
    Align, Button, Context, EventFilter, Key, Layout, Modifiers, RichText, ScrollArea, TextEdit,
    Ui, WidgetInfo, vec2,
};

use super::menu::Look;
use super::{Intent, Intents, messages};
use crate::command_search::search;
use crate::commands::Command;
use crate::theme::{Metrics, Tokens};

/// Size of the page.
const WIDTH: f32 = 420.0;
const HEIGHT: f32 = 320.0;

/// What has been typed, and which of the commands found is the one that Enter takes.
#[derive(Debug, Default)]
pub struct Finder {
    query: String,
    at: usize,
    /// Whether another command is the chosen one in this frame, so that it must come into sight.
    moved: bool,
}

/// Draws the page over everything else.
pub fn show(
    ctx: &Context,
    finder: &mut Finder,
    look: &impl Fn(Command) -> Look,
    intents: &mut Intents,
) {
    let room = ctx.content_rect().size() - vec2(60.0, 120.0);
    let modal = messages::question("find a command", ctx).show(ctx, |ui| {
        ui.set_width(WIDTH.min(room.x.max(120.0)));
        ui.heading("Find a command");
        ui.add_space(Metrics::GAP_SMALL);
        let enter = entry(ui, finder);
        let found = search(&finder.query);
        finder.at = finder.at.min(found.len().saturating_sub(1));
        ui.add_space(Metrics::GAP_SMALL);
        if found.is_empty() {
            ui.weak("No command is called so or does that.");
        }
        let mut asked = found.get(finder.at).copied().filter(|_| enter);
        ScrollArea::vertical()
            .max_height(HEIGHT.min(room.y.max(40.0)))
            .auto_shrink([false, false])
            .show(ui, |ui| {
                for (index, command) in found.iter().enumerate() {
                    if row(
                        ui,
                        *command,
                        &look(*command),
                        index == finder.at,
                        finder.moved,
                    ) {
                        asked = Some(*command);
                    }
                }
            });
        asked.filter(|command| look(*command).enabled)
    });
    if let Some(command) = modal.inner {
        intents.push(Intent::ClosePage);
        intents.push(Intent::Command(command));
    } else if modal.should_close() {
        intents.push(Intent::ClosePage);
    }
}

/// The field with the search; whether Enter was pressed in it. The arrow keys go through what was found.
fn entry(ui: &mut Ui, finder: &mut Finder) -> bool {
    let (down, up, enter) = ui.input_mut(|input| {
        (
            input.count_and_consume_key(Modifiers::NONE, Key::ArrowDown),
            input.count_and_consume_key(Modifiers::NONE, Key::ArrowUp),
            input.consume_key(Modifiers::NONE, Key::Enter),
        )
    });
    finder.at = (finder.at + down).saturating_sub(up);
    finder.moved = down != up;
    let field = TextEdit::singleline(&mut finder.query)
        .hint_text("What do you want to do?")
        .desired_width(f32::INFINITY);
    let response = ui.add(field).accessible_name("What do you want to do?");
    if response.changed() {
        finder.at = 0;
    }
    if !response.has_focus() && ui.memory(|memory| memory.focused().is_none()) {
        response.request_focus();
    }
    let arrows = EventFilter {
        vertical_arrows: true,
        horizontal_arrows: true,
        ..EventFilter::default()
    };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, arrows));
    enter && (response.has_focus() || response.lost_focus())
}

/// One command; whether it was asked for.
fn row(ui: &mut Ui, command: Command, look: &Look, chosen: bool, moved: bool) -> bool {
    let tokens = Tokens::of(ui.ctx());
    let mut text = look.text.clone();
    if look.ticked == Some(true) {
        text.push_str(" (on)");
    }
    let button = Button::selectable(chosen, text).right_text(
        RichText::new(command.key_names())
            .small()
            .color(tokens.text_weak),
    );
    let response = ui
        .with_layout(Layout::top_down_justified(Align::Min), |ui| {
            ui.add_enabled(look.enabled, button)
        })
        .inner;
    let name = command.text();
    response.widget_info(|| {
        WidgetInfo::selected(eframe::egui::Role::Button, look.enabled, chosen, name)
    });
    if chosen && moved {
        response.scroll_to_me(None);
    }
    response.on_hover_text(command.tooltip()).clicked()
}
