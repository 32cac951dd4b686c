//! What the pointer reads off a curve.

use super::plot::name;
use crate::format;
use crate::state::{CurveKind, InputUnit, Line, Shown, Strand, Sweep, value_at};
use crate::units::Units;

/// What the pointer reads off at a place.
pub(super) fn readout(
    shown: &Shown,
    kind: CurveKind,
    unit: InputUnit,
    units: Units,
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
                let shown = units.unit(value_unit, decimals);
                let value = format::signed(value_at(line, place)? * shown.factor, shown.decimals);
                let value = if has_sign(kind) {
                    value
                } else {
                    value.trim_start_matches('+').to_owned()
                };
                Some(format!("{name} {}", format::with_unit(&value, shown.sign)))
            })
            .collect();
        let place = place_text(kind, unit, units, place);
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

fn place_text(kind: CurveKind, unit: InputUnit, units: Units, place: f64) -> String {
    match kind.sweep() {
        Sweep::Travel => format!("travel {}", units.signed_length(place, 2)),
        Sweep::Steer => {
            let shown = units.unit(unit.sign(), 1);
            let input = format::signed(place * shown.factor, shown.decimals);
            format!("input {}", format::with_unit(&input, shown.sign))
        }
        Sweep::InnerAngle => format!("inner {}\u{b0}", format::number(place, 1)),
        Sweep::Roll => format!("roll {}\u{b0}", format::signed(place, 2)),
    }
}

/// Unit and decimals of a value that is read off.
pub(super) fn precision(kind: CurveKind, unit: InputUnit) -> (&'static str, usize) {
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
