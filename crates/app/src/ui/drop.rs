//! Files dropped on the window.

use std::path::PathBuf;

use eframe::egui::{Align2, Context, CornerRadius, FontId, Id, LayerId, Order, Stroke, StrokeKind};

use crate::theme::{Metrics, Tokens};

/// The files just dropped on the window.
#[must_use]
pub fn dropped_files(ctx: &Context) -> Vec<PathBuf> {
    ctx.input(|input| {
        let dropped = input.raw.dropped_files.iter();
        dropped.map(|file| file.path().to_owned()).collect()
    })
}

/// Says what will happen while a file hovers over the window.
pub fn overlay(ctx: &Context) {
    if ctx.input(|input| input.raw.hovered_files.is_empty()) {
        return;
    }
    let tokens = Tokens::of(ctx);
    let painter = ctx.layer_painter(LayerId::new(Order::Foreground, Id::unique("drop overlay")));
    let area = ctx.content_rect();
    painter.rect_filled(area, 0.0, tokens.canvas.gamma_multiply(0.88));
    painter.rect_stroke(
        area.shrink(24.0),
        CornerRadius::same(Metrics::CORNER),
        Stroke::new(2.0, tokens.accent),
        StrokeKind::Inside,
    );
    painter.text(
        area.center(),
        Align2::CENTER_CENTER,
        "Drop setup files here to open them",
        FontId::proportional(20.0),
        tokens.text_strong,
    );
}
