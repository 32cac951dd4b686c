//! The bench's style in the terms of the user-interface library.

use eframe::egui::style::{HandleShape, Selection, WidgetVisuals, Widgets};
use eframe::egui::{
    self, Color32, Context, CornerRadius, FontFamily, FontId, Margin, Shadow, Stroke, Style,
    TextStyle, Vec2, Visuals, vec2,
};

use super::{Metrics, Tokens};

/// Installs both themes in a context.
pub fn install(ctx: &Context) {
    ctx.set_style_of(egui::Theme::Light, style(&Tokens::LIGHT));
    ctx.set_style_of(egui::Theme::Dark, style(&Tokens::DARK));
}

fn style(tokens: &Tokens) -> Style {
    let mut style = Style {
        visuals: visuals(tokens),
        ..Style::default()
    };
    let proportional = |size| FontId::new(size, FontFamily::Proportional);
    style.text_styles = [
        (TextStyle::Small, proportional(Metrics::TEXT_SMALL)),
        (TextStyle::Body, proportional(Metrics::TEXT)),
        (TextStyle::Button, proportional(Metrics::TEXT)),
        (TextStyle::Heading, proportional(Metrics::TEXT_HEADING)),
        (
            TextStyle::Monospace,
            FontId::new(Metrics::TEXT, FontFamily::Monospace),
        ),
    ]
    .into();
    let spacing = &mut style.spacing;
    spacing.item_spacing = vec2(Metrics::GAP, Metrics::GAP_SMALL);
    spacing.button_padding = vec2(8.0, 3.0);
    spacing.interact_size = vec2(40.0, Metrics::CONTROL_HEIGHT);
    spacing.window_margin = Margin::same(14);
    spacing.menu_margin = Margin::same(6);
    spacing.slider_rail_height = 4.0;
    spacing.combo_width = 60.0;
    // Room for the scroll bar, so that it does not lie on what it scrolls.
    spacing.scroll.floating_allocated_width = 8.0;
    style.interaction.selectable_labels = false;
    style.interaction.tooltip_delay = 0.35;
    style
}

fn visuals(tokens: &Tokens) -> Visuals {
    let base = if tokens.dark {
        Visuals::dark()
    } else {
        Visuals::light()
    };
    Visuals {
        widgets: widgets(tokens),
        selection: Selection {
            bg_fill: tokens.accent_soft,
            stroke: Stroke::new(1.0, tokens.accent),
        },
        weak_text_color: Some(tokens.text_weak),
        hyperlink_color: tokens.accent,
        faint_bg_color: tokens.grid,
        extreme_bg_color: tokens.canvas,
        text_edit_bg_color: Some(tokens.field),
        code_bg_color: tokens.grid,
        warn_fg_color: tokens.warning,
        error_fg_color: tokens.warning,
        window_fill: tokens.raised,
        window_stroke: Stroke::new(1.0, tokens.rule),
        window_shadow: shadow(tokens, 18),
        popup_shadow: shadow(tokens, 10),
        window_corner_radius: CornerRadius::same(8),
        menu_corner_radius: CornerRadius::same(6),
        panel_fill: tokens.panel,
        slider_trailing_fill: true,
        handle_shape: HandleShape::Circle,
        indent_has_left_vline: false,
        ..base
    }
}

fn shadow(tokens: &Tokens, blur: u8) -> Shadow {
    Shadow {
        offset: [0, 4],
        blur,
        spread: 0,
        color: tokens.shadow,
    }
}

fn widgets(tokens: &Tokens) -> Widgets {
    let plain = |fill: Color32, frame: Color32, ink: Color32| WidgetVisuals {
        weak_bg_fill: fill,
        bg_fill: fill,
        bg_stroke: Stroke::new(1.0, frame),
        fg_stroke: Stroke::new(1.0, ink),
        corner_radius: CornerRadius::same(Metrics::CORNER),
        expansion: 0.0,
    };
    Widgets {
        noninteractive: plain(tokens.panel, tokens.rule, tokens.text),
        inactive: plain(tokens.button, Color32::TRANSPARENT, tokens.text),
        hovered: plain(tokens.button_hovered, tokens.rule, tokens.text_strong),
        active: plain(tokens.button_pressed, tokens.accent, tokens.text_strong),
        open: plain(tokens.button_hovered, tokens.rule, tokens.text_strong),
    }
}

/// The size of a square button as high as a control.
#[must_use]
pub fn square() -> Vec2 {
    Vec2::splat(Metrics::CONTROL_HEIGHT)
}
