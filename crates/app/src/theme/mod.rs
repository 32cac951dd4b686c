//! The look of the bench: colours, type sizes and spacing, each with one home.

mod metrics;
mod palette;
mod style;

pub use metrics::Metrics;
pub use palette::Tokens;
pub use style::{install, square as style_square};

use eframe::egui;
use steerloft_solver::frame::Side;

/// Which theme the user wants.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum ThemeChoice {
    /// Dark ink on light paper.
    Light,
    /// Light ink on dark ground.
    Dark,
    /// As the desktop says.
    #[default]
    System,
}

impl ThemeChoice {
    /// The choice in the terms of the user-interface library.
    #[must_use]
    pub fn preference(self) -> egui::ThemePreference {
        match self {
            Self::Light => egui::ThemePreference::Light,
            Self::Dark => egui::ThemePreference::Dark,
            Self::System => egui::ThemePreference::System,
        }
    }
}

impl Tokens {
    /// The colours of the theme shown at present.
    #[must_use]
    pub fn of(ctx: &egui::Context) -> &'static Self {
        match ctx.theme() {
            egui::Theme::Light => &Self::LIGHT,
            egui::Theme::Dark => &Self::DARK,
        }
    }

    /// The colour of a side of the car.
    #[must_use]
    pub fn side(&self, side: Side) -> egui::Color32 {
        match side {
            Side::Left => self.left,
            Side::Right => self.right,
        }
    }
}
