//! What the pointer reads off a curve.

use super::plot::name;
use crate::format;
use crate::state::{CurveKind, InputUnit, Line, Shown, Strand, Sweep, value_at};

/// What the pointer reads off at a place.
pub(super) fn readout(
    shown: &Shown,
    kind: CurveKind,
    unit: InputUnit,
    lines: &[(Strand, &Line)],
) -> impl Fn(f64) -> Option<String> + use<> {
    let mut read: Vec<(&'static str, Line)> = lines
        .iter()
        .map(|(strand, line)| (name(*strand), (*line).clone()))
        .collect();
    if kind == CurveKind::OuterInner {
        read.push(("ideal", shown.curves.steer.ideal.clone()));
    }
    move |place| {
        let (value_unit, decimals) = precision(kind, unit);
        let values: Vec<String> = read
            .iter()
            .filter_map(|(name, line)| {
                let value = format::signed(value_at(line, place)?, decimals);
                let value = if has_sign(kind) {
                    value
                } else {
                    value.trim_start_matches('+').to_owned()
                };
                Some(format!("{name} {}", format::with_unit(&value, value_unit)))
            })
            .collect();
        let place = place_text(kind, unit, place);
        (!values.is_empty()).then(|| format!("{place}\n{}", values.join("\n")))
    }
}

/// Whether a plus says something about the value.
fn has_sign(kind: CurveKind) -> bool {
    !matches!(
        kind,
        CurveKind::OuterInner | CurveKind::Ackermann | CurveKind::Ratio | CurveKind::Transmission
    )
}

fn place_text(kind: CurveKind, unit: InputUnit, place: f64) -> String {
    match kind.sweep() {
        Sweep::Travel => format!("travel {} mm", format::signed(place, 2)),
        Sweep::Steer => {
            let input = format::signed(place, 1);
            format!("input {}", format::with_unit(&input, unit.sign()))
        }
        Sweep::InnerAngle => format!("inner {}\u{b0}", format::number(place, 1)),
        Sweep::Roll => format!("roll {}\u{b0}", format::signed(place, 2)),
    }
}

/// Unit and decimals of a value that is read off.
fn precision(kind: CurveKind, unit: InputUnit) -> (&'static str, usize) {
    match kind {
        CurveKind::ToeTravel | CurveKind::RollSteer => ("\u{b0}", 3),
        CurveKind::OuterInner
        | CurveKind::CamberTravel
        | CurveKind::CamberSteer
        | CurveKind::CamberRoll
        | CurveKind::CasterTravel => ("\u{b0}", 2),
        CurveKind::Transmission => ("\u{b0}", 1),
        CurveKind::Ackermann => ("%", 1),
        CurveKind::Ratio => (unit.per_degree(), 3),
    }
}
