//! How each part looks on paper: widths in paper millimetres, fills that stay apart in a greyscale print.

use crate::drawing::Role;
use crate::page::Ink;
use steerloft_analysis::curves::Trace;

/// A colour: red, green and blue of sRGB.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Colour(pub(crate) u8, pub(crate) u8, pub(crate) u8);

/// Fill, line and dash of a part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Style {
    pub(crate) fill: Option<Colour>,
    pub(crate) stroke: Option<Colour>,
    /// Line width, mm on paper.
    pub(crate) width: f64,
    /// Lengths of dashes and gaps in turn, mm on paper; none for a full line.
    pub(crate) dashes: &'static [f64],
}

/// The colour of paper.
pub(crate) const PAPER: Colour = Colour(0xff, 0xff, 0xff);

const INK: Colour = Colour(0x20, 0x25, 0x2b);
const SLATE: Colour = Colour(0x5b, 0x62, 0x6b);
const GREY: Colour = Colour(0x7b, 0x82, 0x8b);
const PALE: Colour = Colour(0xa4, 0xaa, 0xb2);
const FAINT: Colour = Colour(0xd3, 0xd7, 0xdb);
const FAINTEST: Colour = Colour(0xee, 0xf0, 0xf2);

/// Blue and vermillion of the colour-blind-safe palette of M. Okabe and K. Ito, "Color Universal Design (CUD)", 2002,
/// revised 2008.
const BLUE: Colour = Colour(0x00, 0x72, 0xb2);
const VERMILLION: Colour = Colour(0xd5, 0x5e, 0x00);

const FULL: &[f64] = &[];
/// Chain line: of axes and centre lines.
const CHAIN: &[f64] = &[5.0, 1.0, 0.8, 1.0];
/// Finer chain line.
const FINE_CHAIN: &[f64] = &[3.0, 0.8, 0.5, 0.8];
/// Dashes: of a reference.
const DASHES: &[f64] = &[1.6, 1.0];
/// Longer dashes: of the right wheel and of turns to the right.
const LONG_DASHES: &[f64] = &[2.6, 1.1];
/// Dots: of the ideal pair.
const DOTS: &[f64] = &[0.4, 0.8];

const fn solid(fill: Colour, width: f64) -> Style {
    Style {
        fill: Some(fill),
        stroke: Some(INK),
        width,
        dashes: FULL,
    }
}

const fn line(stroke: Colour, width: f64, dashes: &'static [f64]) -> Style {
    Style {
        fill: None,
        stroke: Some(stroke),
        width,
        dashes,
    }
}

const fn writing(fill: Colour) -> Style {
    Style {
        fill: Some(fill),
        stroke: None,
        width: 0.0,
        dashes: FULL,
    }
}

/// The style of a part.
pub(crate) fn of(role: Role, ink: Ink) -> Style {
    let style = current(role);
    let is_writing = style.stroke.is_none();
    match ink {
        Ink::Current => style,
        // Writing stays filled, or it would not be seen.
        Ink::Reference if is_writing => writing(GREY),
        Ink::Reference => line(GREY, style.width.min(0.2), DASHES),
        Ink::Faint => faint(role, style),
        Ink::Curve(trace) => curve(trace),
        Ink::ReferenceCurve(trace) => reference_curve(trace),
    }
}

fn faint(role: Role, style: Style) -> Style {
    match role {
        Role::Bar => Style {
            fill: Some(FAINTEST),
            stroke: None,
            ..style
        },
        _ if style.stroke.is_none() => writing(SLATE),
        _ => line(FAINT, style.width.min(0.15), FULL),
    }
}

/// Lines of a curve differ in dashes and width as well as in colour, so that they stay apart on a greyscale print.
fn curve(trace: Trace) -> Style {
    match trace {
        Trace::Left => line(BLUE, 0.55, FULL),
        Trace::Right => line(VERMILLION, 0.55, LONG_DASHES),
        Trace::Axle => line(INK, 0.5, FULL),
        Trace::Ideal => line(INK, 0.35, DOTS),
        Trace::Parallel => line(GREY, 0.25, FINE_CHAIN),
    }
}

fn reference_curve(trace: Trace) -> Style {
    match trace {
        Trace::Left | Trace::Axle => line(GREY, 0.3, FULL),
        Trace::Right => line(GREY, 0.3, DASHES),
        Trace::Ideal => line(GREY, 0.25, DOTS),
        Trace::Parallel => line(GREY, 0.2, FINE_CHAIN),
    }
}

fn current(role: Role) -> Style {
    match role {
        Role::CentreLine => line(INK, 0.18, CHAIN),
        Role::AxleLine | Role::RearAxle => line(GREY, 0.15, CHAIN),
        Role::Chassis => line(GREY, 0.5, FULL),
        Role::Road => line(INK, 0.4, FULL),
        Role::Tyre => Style {
            fill: Some(Colour(0xe4, 0xe6, 0xe8)),
            stroke: Some(GREY),
            width: 0.25,
            dashes: FULL,
        },
        Role::Wheel => Style {
            fill: Some(Colour(0xf8, 0xf8, 0xf8)),
            stroke: Some(PALE),
            width: 0.18,
            dashes: FULL,
        },
        Role::WheelLine => line(GREY, 0.13, FINE_CHAIN),
        Role::SpinAxle => solid(Colour(0xe3, 0xe6, 0xe9), 0.18),
        Role::Knuckle => solid(Colour(0xc2, 0xca, 0xd4), 0.25),
        Role::Kingpin => solid(Colour(0xf4, 0xf5, 0xf6), 0.2),
        Role::KingpinAxis | Role::DriveAxis | Role::WheelAxis => line(INK, 0.13, FINE_CHAIN),
        Role::SteeringArm => solid(Colour(0xa9, 0xb6, 0xc5), 0.25),
        Role::Arm => solid(Colour(0xdf, 0xe7, 0xef), 0.22),
        Role::Hinge => solid(Colour(0xc2, 0xca, 0xd4), 0.18),
        Role::Bearing => solid(Colour(0xdc, 0xdf, 0xe3), 0.2),
        Role::Rod => solid(Colour(0x5f, 0x8d, 0xbf), 0.22),
        Role::Cup => solid(Colour(0x93, 0xb4, 0xd8), 0.22),
        Role::Ball => solid(Colour(0xfb, 0xfb, 0xfb), 0.22),
        Role::Pivot | Role::Bar => solid(INK, 0.1),
        Role::Stud => solid(Colour(0xd7, 0xda, 0xde), 0.15),
        Role::DriveArm => solid(Colour(0xe6, 0xc1, 0x7a), 0.25),
        Role::DriveHub => solid(Colour(0xf4, 0xe4, 0xc3), 0.2),
        Role::Servo => Style {
            fill: Some(Colour(0xf1, 0xf2, 0xf3)),
            stroke: Some(GREY),
            width: 0.25,
            dashes: FULL,
        },
        Role::Spacer => solid(Colour(0xe5, 0x8a, 0x3c), 0.13),
        Role::Envelope => line(PALE, 0.13, FULL),
        Role::IdealAxis => line(GREY, 0.18, DASHES),
        Role::GroundPoint | Role::Rule => line(INK, 0.18, FULL),
        Role::Caption => writing(SLATE),
        Role::Label => writing(INK),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Relative luminance of a colour (WCAG 2.1, from memory): what a greyscale print keeps of it.
    fn luminance(Colour(red, green, blue): Colour) -> f64 {
        let linear = |part: u8| {
            let share = f64::from(part) / 255.0;
            if share <= 0.040_45 {
                share / 12.92
            } else {
                ((share + 0.055) / 1.055).powf(2.4)
            }
        };
        0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue)
    }

    /// Contrast ratio of two colours (WCAG 2.1, from memory): 1 alike, 21 black on white.
    fn contrast(a: Colour, b: Colour) -> f64 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    const TRACES: [Trace; 5] = [
        Trace::Left,
        Trace::Right,
        Trace::Axle,
        Trace::Ideal,
        Trace::Parallel,
    ];

    #[test]
    fn writing_can_be_read_in_greyscale() {
        // 4.5 is what WCAG 2.1 asks of text (from memory).
        for role in [Role::Label, Role::Caption] {
            for ink in [Ink::Current, Ink::Faint] {
                let fill = of(role, ink).fill.unwrap_or(PAPER);
                assert!(contrast(fill, PAPER) > 4.5, "{role:?} {ink:?}");
                assert!(contrast(fill, FAINTEST) > 4.5, "{role:?} on a band");
            }
        }
    }

    #[test]
    fn lines_of_curves_can_be_seen_in_greyscale_and_no_two_have_the_same_dashes_and_width() {
        let mut looks: Vec<(Trace, Style)> = Vec::new();
        for trace in TRACES {
            for ink in [Ink::Curve(trace), Ink::ReferenceCurve(trace)] {
                let style = of(Role::Rule, ink);
                // 3 is what WCAG 2.1 asks of graphics (from memory).
                assert!(
                    contrast(style.stroke.unwrap_or(PAPER), PAPER) > 3.0,
                    "{ink:?}"
                );
            }
            looks.push((trace, curve(trace)));
        }
        for (index, (trace, style)) in looks.iter().enumerate() {
            for (other, beside) in &looks[index + 1..] {
                let one_axle_only = *trace == Trace::Left && *other == Trace::Axle;
                let differ = style.dashes != beside.dashes
                    || (style.width - beside.width).abs() > 0.15
                    || one_axle_only;
                assert!(differ, "{trace:?} and {other:?}");
            }
        }
    }

    #[test]
    fn a_reference_is_thinner_than_what_is_compared_with_it() {
        for trace in TRACES {
            assert!(
                reference_curve(trace).width < curve(trace).width,
                "{trace:?}"
            );
        }
    }

    #[test]
    fn parts_that_touch_stay_apart_in_greyscale() {
        for (part, beside) in [
            (Role::Rod, Role::Cup),
            (Role::Rod, Role::Ball),
            (Role::Spacer, Role::DriveArm),
            (Role::Tyre, Role::Knuckle),
            (Role::SteeringArm, Role::Ball),
        ] {
            let fill = |role| of(role, Ink::Current).fill.unwrap_or(PAPER);
            let ratio = contrast(fill(part), fill(beside));
            assert!(ratio > 1.2, "{part:?} beside {beside:?}: {ratio}");
        }
    }
}
