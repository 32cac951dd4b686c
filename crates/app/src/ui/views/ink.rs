//! How each part of a drawing looks on screen.

use eframe::egui::{Color32, Stroke};
use steerloft_sheet::{Role, Shape};

use crate::theme::Tokens;

/// How a shape is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Ink {
    /// Fill of closed shapes.
    pub(super) fill: Color32,
    /// Outline, or the line itself.
    pub(super) stroke: Stroke,
    /// Lengths of dashes and gaps, points; none for a full line.
    pub(super) dashes: Option<(&'static [f32], &'static [f32])>,
}

/// Long dash, gap, short dash, gap: a centre line.
const CHAIN: (&[f32], &[f32]) = (&[12.0, 3.0], &[4.0, 4.0]);

/// Short dashes: an axis through a part.
const DASHED: (&[f32], &[f32]) = (&[5.0], &[4.0]);

/// The look of a shape.
pub(super) fn ink(shape: &Shape, tokens: &Tokens) -> Ink {
    let side = shape
        .side
        .map_or(tokens.part_line, |side| tokens.side(side));
    let thin = Stroke::new(1.0, tokens.part_line);
    match shape.role {
        Role::CentreLine | Role::AxleLine => line(1.0, tokens.ground, Some(CHAIN)),
        Role::Chassis => line(2.0, tokens.ground, None),
        Role::Road => line(1.5, tokens.ground, None),
        Role::KingpinAxis | Role::DriveAxis => line(1.0, tokens.text_weak, Some(DASHED)),
        Role::Tyre => filled(tokens.tyre, Stroke::new(1.2, tokens.part_line)),
        Role::Wheel => filled(tokens.wheel, Stroke::new(0.8, tokens.part_line)),
        Role::WheelLine => line(1.0, side, Some(CHAIN)),
        Role::SpinAxle => filled(tokens.part, thin),
        Role::Knuckle | Role::SteeringArm | Role::Arm | Role::DriveArm => {
            filled(tokens.part, Stroke::new(1.2, tokens.part_line))
        }
        Role::Kingpin | Role::Hinge | Role::Bearing | Role::Stud | Role::DriveHub => {
            filled(tokens.wheel, thin)
        }
        Role::Rod => Ink {
            fill: side,
            stroke: Stroke::new(2.2, side),
            dashes: None,
        },
        Role::Cup => filled(tokens.wheel, Stroke::new(1.4, side)),
        Role::Ball => filled(tokens.canvas, Stroke::new(1.4, tokens.part_line)),
        Role::Pivot => filled(tokens.part_line, Stroke::NONE),
        Role::Servo => filled(tokens.servo, Stroke::new(1.0, tokens.ground)),
        Role::Spacer => filled(tokens.spacer, Stroke::new(0.8, tokens.part_line)),
        Role::Envelope => line(1.0, tokens.ground, None),
        Role::GroundPoint => line(1.4, side, None),
        Role::WheelAxis => line(1.2, side, Some(CHAIN)),
        Role::IdealAxis => line(1.2, tokens.reference, Some(DASHED)),
        Role::RearAxle => line(1.4, tokens.ground, Some(CHAIN)),
        Role::Rule => line(1.0, tokens.rule, None),
        Role::Bar => filled(tokens.text_weak, Stroke::NONE),
        Role::Label | Role::Caption => line(1.0, tokens.text, None),
    }
}

fn line(width: f32, color: Color32, dashes: Option<(&'static [f32], &'static [f32])>) -> Ink {
    Ink {
        fill: Color32::TRANSPARENT,
        stroke: Stroke::new(width, color),
        dashes,
    }
}

fn filled(fill: Color32, stroke: Stroke) -> Ink {
    Ink {
        fill,
        stroke,
        dashes: None,
    }
}

impl Ink {
    /// Outlines of something to compare with: thin dashes without fill.
    pub(super) fn reference(tokens: &Tokens) -> Self {
        line(1.0, tokens.reference, Some(DASHED))
    }

    /// The same, faded towards the ground it lies on.
    pub(super) fn dimmed(self, ground: Color32) -> Self {
        let fade = |color: Color32| {
            if color == Color32::TRANSPARENT {
                color
            } else {
                ground.lerp_to_gamma(color, 0.38)
            }
        };
        Self {
            fill: fade(self.fill),
            stroke: Stroke::new(self.stroke.width, fade(self.stroke.color)),
            dashes: self.dashes,
        }
    }
}
