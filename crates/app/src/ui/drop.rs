//! Files dropped on the window.

use std::path::PathBuf;

use eframe::egui::{Align2, Context, CornerRadius, FontId, Id, LayerId, Order, Stroke, StrokeKind};

use crate::theme::{Metrics, Tokens};

/// The file just dropped on the window; of several, the first.
#[must_use]
pub fn dropped_file(ctx: &Context) -> Option<PathBuf> {
    ctx.input(|input| {
        input
            .raw
            .dropped_files
            .first()
            .map(|file| file.path().to_owned())
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
        "Drop the setup file here to open it",
        FontId::proportional(20.0),
        tokens.text_strong,
    );
}
