//! How each part looks on paper: widths in paper millimetres, fills that stay apart in a greyscale print.

use crate::drawing::Role;
use crate::page::Ink;

/// Fill, line and dash of a part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Style {
    pub(super) fill: Option<&'static str>,
    pub(super) stroke: Option<&'static str>,
    /// Line width, mm on paper.
    pub(super) width: f64,
    /// Dash pattern, mm on paper, as the attribute is written.
    pub(super) dashes: Option<&'static str>,
}

const INK: &str = "#20252b";
const GREY: &str = "#7b828b";
const PALE: &str = "#a4aab2";

/// Chain line: of axes and centre lines.
const CHAIN: &str = "5 1 0.8 1";
/// Finer chain line.
const FINE_CHAIN: &str = "3 0.8 0.5 0.8";
/// Dashes: of a reference.
const DASHES: &str = "1.6 1";

const fn solid(fill: &'static str, width: f64) -> Style {
    Style {
        fill: Some(fill),
        stroke: Some(INK),
        width,
        dashes: None,
    }
}

const fn line(stroke: &'static str, width: f64, dashes: Option<&'static str>) -> Style {
    Style {
        fill: None,
        stroke: Some(stroke),
        width,
        dashes,
    }
}

/// The style of a part.
pub(super) fn of(role: Role, ink: Ink) -> Style {
    let style = current(role);
    match (ink, style.stroke) {
        (Ink::Current, _) => style,
        (Ink::Reference, Some(_)) => line(GREY, style.width.min(0.2), Some(DASHES)),
        // Writing stays filled, or it would not be seen.
        (Ink::Reference, None) => Style {
            fill: Some(GREY),
            ..style
        },
    }
}

fn current(role: Role) -> Style {
    match role {
        Role::CentreLine => line(INK, 0.18, Some(CHAIN)),
        Role::AxleLine => line(GREY, 0.15, Some(CHAIN)),
        Role::Chassis => line(GREY, 0.5, None),
        Role::Road => line(INK, 0.4, None),
        Role::Tyre => Style {
            fill: Some("#e4e6e8"),
            stroke: Some(GREY),
            width: 0.25,
            dashes: None,
        },
        Role::Wheel => Style {
            fill: Some("#f8f8f8"),
            stroke: Some(PALE),
            width: 0.18,
            dashes: None,
        },
        Role::WheelLine => line(GREY, 0.13, Some(FINE_CHAIN)),
        Role::SpinAxle => solid("#e3e6e9", 0.18),
        Role::Knuckle => solid("#c2cad4", 0.25),
        Role::Kingpin => solid("#f4f5f6", 0.2),
        Role::KingpinAxis | Role::DriveAxis => line(INK, 0.13, Some(FINE_CHAIN)),
        Role::SteeringArm => solid("#a9b6c5", 0.25),
        Role::Arm => solid("#dfe7ef", 0.22),
        Role::Hinge => solid("#c2cad4", 0.18),
        Role::Bearing => solid("#dcdfe3", 0.2),
        Role::Rod => solid("#5f8dbf", 0.22),
        Role::Cup => solid("#93b4d8", 0.22),
        Role::Ball => solid("#fbfbfb", 0.22),
        Role::Pivot | Role::Bar => solid(INK, 0.1),
        Role::Stud => solid("#d7dade", 0.15),
        Role::DriveArm => solid("#e6c17a", 0.25),
        Role::DriveHub => solid("#f4e4c3", 0.2),
        Role::Servo => Style {
            fill: Some("#f1f2f3"),
            stroke: Some(GREY),
            width: 0.25,
            dashes: None,
        },
        Role::Spacer => solid("#e58a3c", 0.13),
        Role::Rule => line(INK, 0.18, None),
        Role::Caption => Style {
            fill: Some("#5b626b"),
            stroke: None,
            width: 0.0,
            dashes: None,
        },
        Role::Label => Style {
            fill: Some(INK),
            stroke: None,
            width: 0.0,
            dashes: None,
        },
    }
}
