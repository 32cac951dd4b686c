//! The colours of the bench, light and dark. Nothing else in the program names a colour.
//!
//! Colours that carry meaning (left and right, the direction of turn, a reference) are taken from the
//! colour-blind-safe palette of M. Okabe and K. Ito, "Color Universal Design (CUD): how to make figures and
//! presentations that are friendly to colorblind people", 2002, revised 2008. Light and dark use neighbours of the
//! same hue (blue and sky blue, vermillion and orange), so that a side keeps its hue in both.

use eframe::egui::Color32;

/// Colours of the palette of Okabe and Ito.
mod okabe_ito {
    use eframe::egui::Color32;

    pub(super) const ORANGE: Color32 = Color32::from_rgb(0xE6, 0x9F, 0x00);
    pub(super) const SKY_BLUE: Color32 = Color32::from_rgb(0x56, 0xB4, 0xE9);
    pub(super) const BLUISH_GREEN: Color32 = Color32::from_rgb(0x00, 0x9E, 0x73);
    pub(super) const BLUE: Color32 = Color32::from_rgb(0x00, 0x72, 0xB2);
    pub(super) const VERMILLION: Color32 = Color32::from_rgb(0xD5, 0x5E, 0x00);
    pub(super) const REDDISH_PURPLE: Color32 = Color32::from_rgb(0xCC, 0x79, 0xA7);
}

/// All colours of one theme.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tokens {
    /// Whether this is the dark theme.
    pub dark: bool,
    /// Background of panels and bars.
    pub panel: Color32,
    /// Background of drawings and curves.
    pub canvas: Color32,
    /// Background of buttons at rest.
    pub button: Color32,
    /// Background of buttons under the pointer.
    pub button_hovered: Color32,
    /// Background of pressed buttons.
    pub button_pressed: Color32,
    /// Background of text fields.
    pub field: Color32,
    /// Background of pop-ups, menus and tooltips.
    pub raised: Color32,
    /// Separators and frames.
    pub rule: Color32,
    /// Grid lines.
    pub grid: Color32,
    /// Text.
    pub text: Color32,
    /// Text of less weight: units, notes.
    pub text_weak: Color32,
    /// Headings and pressed controls.
    pub text_strong: Color32,
    /// What is chosen or being moved.
    pub accent: Color32,
    /// Background of what is chosen.
    pub accent_soft: Color32,
    /// A state that needs attention.
    pub warning: Color32,
    /// Background of a message that needs attention.
    pub warning_soft: Color32,
    /// Shadow under pop-ups.
    pub shadow: Color32,
    /// The left wheel and what belongs to it.
    pub left: Color32,
    /// The right wheel and what belongs to it.
    pub right: Color32,
    /// A turn to the left.
    pub turn_left: Color32,
    /// A turn to the right.
    pub turn_right: Color32,
    /// A line to compare with: ideal pair, parallel steering.
    pub reference: Color32,
    /// Fill of tyres.
    pub tyre: Color32,
    /// Fill of wheels.
    pub wheel: Color32,
    /// Fill of metal parts of the car.
    pub part: Color32,
    /// Outlines of the car's parts.
    pub part_line: Color32,
    /// Fill of the servo.
    pub servo: Color32,
    /// Fill of spacers.
    pub spacer: Color32,
    /// The chassis and the road.
    pub ground: Color32,
}

impl Tokens {
    /// The fill of a place in a map by its share of full ink: positive within a limit, negative beyond it.
    ///
    /// From the ground to blue within and to vermillion beyond, which who sees colours otherwise tells apart by hue and by
    /// how dark they are.
    #[must_use]
    pub fn margin(&self, share: f64) -> Color32 {
        #[allow(clippy::cast_possible_truncation, reason = "a share of a colour")]
        let share = share.clamp(-1.0, 1.0) as f32;
        let far = if share < 0.0 { self.right } else { self.left };
        self.canvas.lerp_to_gamma(far, share.abs() * 0.9)
    }

    /// The light theme: ink on warm paper.
    pub const LIGHT: Self = Self {
        dark: false,
        panel: Color32::from_rgb(0xF3, 0xF2, 0xEE),
        canvas: Color32::from_rgb(0xFD, 0xFC, 0xFA),
        button: Color32::from_rgb(0xE6, 0xE4, 0xDE),
        button_hovered: Color32::from_rgb(0xDB, 0xD9, 0xD2),
        button_pressed: Color32::from_rgb(0xCD, 0xCB, 0xC3),
        field: Color32::from_rgb(0xFF, 0xFF, 0xFF),
        raised: Color32::from_rgb(0xFB, 0xFA, 0xF8),
        rule: Color32::from_rgb(0xD5, 0xD2, 0xCA),
        grid: Color32::from_rgb(0xEC, 0xEA, 0xE4),
        text: Color32::from_rgb(0x2B, 0x35, 0x3E),
        text_weak: Color32::from_rgb(0x5E, 0x68, 0x71),
        text_strong: Color32::from_rgb(0x10, 0x18, 0x20),
        accent: Color32::from_rgb(0x1B, 0x6E, 0x79),
        accent_soft: Color32::from_rgb(0xC4, 0xE0, 0xE2),
        warning: Color32::from_rgb(0x9A, 0x3B, 0x00),
        warning_soft: Color32::from_rgb(0xFB, 0xE6, 0xD5),
        shadow: Color32::from_black_alpha(28),
        left: okabe_ito::BLUE,
        right: okabe_ito::VERMILLION,
        turn_left: okabe_ito::BLUISH_GREEN,
        turn_right: okabe_ito::REDDISH_PURPLE,
        reference: Color32::from_rgb(0x6B, 0x74, 0x7C),
        tyre: Color32::from_rgb(0xDD, 0xDF, 0xDF),
        wheel: Color32::from_rgb(0xEE, 0xEF, 0xEE),
        part: Color32::from_rgb(0xC9, 0xD1, 0xD6),
        part_line: Color32::from_rgb(0x4A, 0x56, 0x60),
        servo: Color32::from_rgb(0xE2, 0xE0, 0xD8),
        spacer: Color32::from_rgb(0xB9, 0xA9, 0x84),
        ground: Color32::from_rgb(0xA9, 0xA5, 0x9B),
    };

    /// The dark theme: chalk on slate.
    pub const DARK: Self = Self {
        dark: true,
        panel: Color32::from_rgb(0x1F, 0x24, 0x29),
        canvas: Color32::from_rgb(0x17, 0x1B, 0x1F),
        button: Color32::from_rgb(0x2F, 0x36, 0x3D),
        button_hovered: Color32::from_rgb(0x3A, 0x43, 0x4B),
        button_pressed: Color32::from_rgb(0x48, 0x53, 0x5D),
        field: Color32::from_rgb(0x14, 0x18, 0x1B),
        raised: Color32::from_rgb(0x27, 0x2D, 0x33),
        rule: Color32::from_rgb(0x38, 0x41, 0x49),
        grid: Color32::from_rgb(0x25, 0x2B, 0x31),
        text: Color32::from_rgb(0xD3, 0xD9, 0xDE),
        text_weak: Color32::from_rgb(0x97, 0xA2, 0xAC),
        text_strong: Color32::from_rgb(0xF2, 0xF5, 0xF7),
        accent: Color32::from_rgb(0x62, 0xBE, 0xC8),
        accent_soft: Color32::from_rgb(0x24, 0x4F, 0x57),
        warning: Color32::from_rgb(0xFF, 0xB0, 0x74),
        warning_soft: Color32::from_rgb(0x4A, 0x31, 0x20),
        shadow: Color32::from_black_alpha(110),
        left: okabe_ito::SKY_BLUE,
        right: okabe_ito::ORANGE,
        turn_left: okabe_ito::BLUISH_GREEN,
        turn_right: okabe_ito::REDDISH_PURPLE,
        reference: Color32::from_rgb(0x98, 0xA2, 0xAB),
        tyre: Color32::from_rgb(0x35, 0x3C, 0x42),
        wheel: Color32::from_rgb(0x2A, 0x30, 0x35),
        part: Color32::from_rgb(0x4A, 0x56, 0x60),
        part_line: Color32::from_rgb(0xA9, 0xB5, 0xBE),
        servo: Color32::from_rgb(0x2C, 0x31, 0x35),
        spacer: Color32::from_rgb(0x9C, 0x8B, 0x62),
        ground: Color32::from_rgb(0x63, 0x6D, 0x75),
    };
}
