//! Small controls that several panels share.

use std::ops::RangeInclusive;

use eframe::egui::{
    self, Align, Button, Layout, Response, RichText, Slider, SliderClamping, Stroke, Ui,
    WidgetInfo, vec2,
};

use crate::theme::{Metrics, Tokens};
use crate::units::Units;

pub use super::number_field::NumberField;

/// A slider without writing that takes the width it is given.
pub fn slider(
    ui: &mut Ui,
    name: &str,
    value: &mut f64,
    range: RangeInclusive<f64>,
    width: f32,
) -> Response {
    ui.spacing_mut().slider_width = width;
    let slider = Slider::new(value, range)
        .clamping(SliderClamping::Edits)
        .show_value(false);
    ui.add(slider).accessible_name(name)
}

/// A button whose accessible name says more than its text.
pub fn named_button(ui: &mut Ui, enabled: bool, button: Button<'_>, name: &str) -> Response {
    let response = ui.add_enabled(enabled, button);
    response.widget_info(|| WidgetInfo::labeled(egui::Role::Button, enabled, name));
    response
}

/// A button that takes away what the name tells; whether it is pressed.
pub fn take_away(ui: &mut Ui, name: &str, hint: &str) -> bool {
    named_button(
        ui,
        true,
        Button::new("\u{d7}"),
        &format!("{name}: take away"),
    )
    .on_hover_text(hint)
    .clicked()
}

/// A box to be ticked, with an outline that shows it on every ground.
pub fn tick(ui: &mut Ui, ticked: &mut bool, text: impl Into<String>) -> Response {
    let text = text.into();
    outlined(ui, |ui| ui.checkbox(ticked, text))
}

/// One of several choices, with an outline that shows it on every ground.
pub fn radio<T: PartialEq>(ui: &mut Ui, chosen: &mut T, this: T, text: String) -> Response {
    outlined(ui, |ui| ui.radio_value(chosen, this, text))
}

fn outlined<R>(ui: &mut Ui, add: impl FnOnce(&mut Ui) -> R) -> R {
    ui.scope(|ui| {
        let tokens = Tokens::of(ui.ctx());
        let widgets = &mut ui.visuals_mut().widgets;
        widgets.inactive.bg_stroke = Stroke::new(1.0, tokens.text_weak);
        add(ui)
    })
    .inner
}

/// Heading of a group of controls.
pub fn group_heading(ui: &mut Ui, text: &str) {
    ui.add_space(Metrics::GAP);
    ui.label(RichText::new(text).heading().strong());
    ui.add_space(-1.0);
    let width = ui.available_width();
    let (rect, _) = ui.allocate_exact_size(vec2(width, 1.0), egui::Sense::hover());
    let stroke = ui.visuals().widgets.noninteractive.bg_stroke;
    ui.painter().hline(rect.x_range(), rect.center().y, stroke);
    ui.add_space(Metrics::GAP_SMALL);
}

/// A row with a name at its start and something at its end.
pub fn name_row<R>(
    ui: &mut Ui,
    add_name: impl FnOnce(&mut Ui),
    add_end: impl FnOnce(&mut Ui) -> R,
) -> R {
    ui.horizontal(|ui| {
        ui.set_min_height(Metrics::CONTROL_HEIGHT);
        let end_width = 52.0;
        ui.allocate_ui_with_layout(
            vec2(
                (ui.available_width() - end_width).max(0.0),
                Metrics::CONTROL_HEIGHT,
            ),
            Layout::left_to_right(Align::Center),
            |ui| {
                ui.set_min_width(ui.available_width());
                add_name(ui);
            },
        );
        ui.with_layout(Layout::right_to_left(Align::Center), add_end)
            .inner
    })
    .inner
}

/// A row of buttons of which one is chosen; the place of the one clicked.
pub fn segments<'a>(
    ui: &mut Ui,
    name: &str,
    options: impl Iterator<Item = &'a str>,
    chosen: Option<usize>,
) -> Option<usize> {
    let mut clicked = None;
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 2.0;
        for (index, option) in options.enumerate() {
            let selected = chosen == Some(index);
            let button = Button::selectable(selected, option).frame_when_inactive(true);
            let response = ui.add(button);
            response.widget_info(|| {
                WidgetInfo::selected(
                    egui::Role::RadioButton,
                    ui.is_enabled(),
                    selected,
                    format!("{name}: {option}"),
                )
            });
            if response.clicked() && !selected {
                clicked = Some(index);
            }
        }
    });
    clicked
}

/// The spacers of a stack, such as "2 \u{d7} 1 + 0.5 mm".
#[must_use]
pub fn spacers(spacers: Option<&[f64]>, units: Units) -> String {
    let Some(spacers) = spacers else {
        return String::new();
    };
    let mut runs: Vec<(f64, usize)> = Vec::new();
    for &thickness in spacers {
        match runs.last_mut() {
            Some((last, count)) if (*last - thickness).abs() < 1e-9 => *count += 1,
            _ => runs.push((thickness, 1)),
        }
    }
    if runs.is_empty() {
        return "no spacers".to_owned();
    }
    let runs: Vec<String> = runs
        .iter()
        .map(|&(thickness, count)| match count {
            1 => units.short(thickness, 3),
            count => format!("{count} \u{d7} {}", units.short(thickness, 3)),
        })
        .collect();
    format!("{} {}", runs.join(" + "), units.sign())
}

#[cfg(test)]
mod tests {
    use super::spacers;
    use crate::units::Units;

    #[test]
    fn equal_spacers_are_counted() {
        let mm = |pieces| spacers(pieces, Units::Millimetres);
        assert_eq!(mm(Some(&[1.0, 1.0, 0.5])), "2 \u{d7} 1 + 0.5 mm");
        assert_eq!(mm(Some(&[])), "no spacers");
        assert_eq!(mm(None), "");
        let pair = spacers(Some(&[12.7, 12.7]), Units::Inches);
        assert_eq!(pair, "2 \u{d7} 0.5 in");
    }
}
