//! What is chosen on the car, as rows grouped by place.

use steerloft_setup::adjustment::{Adjustment, Kind, Place, Unit};
use steerloft_setup::setup::{Chosen, Rods, Setup};
use steerloft_solver::frame::{Side, Sides};
use steerloft_solver::pose::AxlePose;

use steerloft_analysis::text::number;

/// Rows under one heading.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Group {
    pub(crate) heading: &'static str,
    pub(crate) rows: Vec<Row>,
}

/// One thing and how it is set.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Row {
    pub(crate) name: String,
    pub(crate) value: Value,
    /// What stands under the value in small letters: an old value, or what can be chosen.
    pub(crate) under: Option<String>,
    /// Whether it differs from what it is compared with.
    pub(crate) changed: bool,
    /// Whether it is about how the tie rods are set, not an adjustment of the car.
    pub(crate) is_of_rods: bool,
}

/// What stands beside a name.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Value {
    /// A value in words.
    Written(String),
    /// A box to be filled in by hand.
    Box,
}

/// A setup to compare with, and its pose at rest.
#[derive(Clone, Copy)]
pub(crate) struct Reference<'a> {
    pub(crate) setup: &'a Setup,
    pub(crate) pose: &'a AxlePose,
}

/// The places in the order in which they are listed, with their headings.
const PLACES: [(Place, &str); 7] = [
    (Place::Servo, "Servo"),
    (Place::SteeringDrive, "Steering drive"),
    (Place::TieRod, "Tie rods"),
    (Place::Knuckle, "Knuckle"),
    (Place::Suspension, "Suspension"),
    (Place::Chassis, "Chassis"),
    (Place::Wheel, "Wheel and tyre"),
];

/// The rows of a setup, with those of its servo; the tie rods' lengths are those of the pose. What differs from the reference, or without one from
/// the car's base, is marked. Places without rows are left out.
pub(crate) fn groups(
    setup: &Setup,
    reference: Option<Reference<'_>>,
    pose: &AxlePose,
    servo: Vec<Row>,
) -> Vec<Group> {
    let given = Given {
        servo,
        rods: rod_rows(setup, reference, pose),
    };
    by_place(setup, given, |adjustment| {
        row(
            setup,
            reference.map(|reference| reference.setup),
            adjustment,
        )
    })
}

/// The same rows with boxes to be filled in by hand, and what can be chosen under each.
pub(crate) fn blank_groups(setup: &Setup) -> Vec<Group> {
    let blank = |name: &str, under: Option<String>| Row {
        name: name.to_owned(),
        value: Value::Box,
        changed: false,
        is_of_rods: under.is_none(),
        under,
    };
    let rods = ROD_ROWS
        .iter()
        .flat_map(|name| Side::BOTH.map(|side| blank(&format!("{name}, {side}"), None)));
    let given = Given {
        servo: Vec::new(),
        rods: rods.collect(),
    };
    by_place(setup, given, |adjustment| {
        blank(&adjustment.name, Some(possible(adjustment)))
    })
}

/// Rows that are no adjustments of the car.
struct Given {
    /// After the adjustments of the servo.
    servo: Vec<Row>,
    /// Before those of the tie rods.
    rods: Vec<Row>,
}

fn by_place(setup: &Setup, mut given: Given, row: impl Fn(&Adjustment) -> Row) -> Vec<Group> {
    let groups = PLACES.iter().map(|&(place, heading)| {
        let mut rows = match place {
            Place::TieRod => std::mem::take(&mut given.rods),
            _ => Vec::new(),
        };
        let adjustments = setup.car.adjustments.iter();
        rows.extend(adjustments.filter(|one| one.place == place).map(&row));
        if place == Place::Servo {
            rows.append(&mut given.servo);
        }
        Group { heading, rows }
    });
    groups.filter(|group| !group.rows.is_empty()).collect()
}

fn row(setup: &Setup, reference: Option<&Setup>, adjustment: &Adjustment) -> Row {
    let value = setup.value_of(adjustment);
    let shown = value_with_parts(adjustment, &value);
    let (changed, under) = match reference {
        None => (value != adjustment.base(), None),
        Some(reference) => {
            let old = old_value(reference, adjustment);
            let changed = old.as_ref() != Some(&shown);
            let was = old.map_or("not on the reference".to_owned(), |old| {
                format!("was {old}")
            });
            (changed, changed.then_some(was))
        }
    };
    Row {
        name: adjustment.name.clone(),
        value: Value::Written(shown),
        under,
        changed,
        is_of_rods: false,
    }
}

/// The value of the adjustment of the same name and kind on the reference, in words; none if there is no such.
fn old_value(reference: &Setup, adjustment: &Adjustment) -> Option<String> {
    let mut theirs = reference.car.adjustments.iter();
    let same = theirs.find(|other| {
        let same_kind =
            std::mem::discriminant(&other.kind) == std::mem::discriminant(&adjustment.kind);
        other.name == adjustment.name && same_kind
    })?;
    Some(value_with_parts(same, &reference.value_of(same)))
}

/// The value in words; for a stack with the parts to fit, as in "3 mm (2 + 1)". A value that the parts do not allow says
/// what is nearest.
fn value_with_parts(adjustment: &Adjustment, value: &Chosen) -> String {
    let label = label(adjustment, value);
    if !adjustment.is_buildable(value) {
        let nearest = self::label(adjustment, &adjustment.nearest(value));
        return format!("{label} (nearest possible {nearest})");
    }
    let Chosen::Stack(total) = value else {
        return label;
    };
    let spacers = adjustment.spacers_for(*total).unwrap_or_default();
    match spacers.len() {
        0 => format!("{label} (no spacer)"),
        1 => format!("{label} (1 spacer)"),
        2..=5 => format!("{label} ({})", joined(&spacers, " + ")),
        _ => format!("{label} ({})", joined_with_counts(&spacers)),
    }
}

/// A value in words, a number with a true minus sign.
fn label(adjustment: &Adjustment, value: &Chosen) -> String {
    let label = adjustment.label_of(value);
    match (value, label.strip_prefix('-')) {
        (Chosen::Slide(_) | Chosen::Stack(_), Some(digits)) => format!("\u{2212}{digits}"),
        _ => label,
    }
}

fn joined(thicknesses: &[f64], by: &str) -> String {
    let parts: Vec<String> = thicknesses.iter().map(f64::to_string).collect();
    parts.join(by)
}

/// Spacers, thickest first, as "3 × 2 + 4 × 0.5".
fn joined_with_counts(spacers: &[f64]) -> String {
    let alike = spacers.chunk_by(|a, b| a.to_bits() == b.to_bits());
    let parts: Vec<String> = alike
        .map(|alike| format!("{} × {}", alike.len(), joined(&alike[..1], "")))
        .collect();
    parts.join(" + ")
}

/// What can be chosen, in words.
fn possible(adjustment: &Adjustment) -> String {
    match &adjustment.kind {
        Kind::Slide {
            unit, range, step, ..
        } => {
            let unit = match unit {
                Unit::Millimetres => " mm",
                Unit::Degrees => "°",
            };
            let steps = step.map_or(String::new(), |step| format!(", steps of {step}"));
            let [least, greatest] =
                [range.0, range.1].map(|end| end.to_string().replace('-', "\u{2212}"));
            format!("{least} to {greatest}{unit}{steps}")
        }
        Kind::Stack { parts, most, .. } => {
            let parts: Vec<String> = parts
                .iter()
                .map(|part| format!("{} × {}", part.count, part.thickness))
                .collect();
            format!("up to {most} mm of {}", parts.join(", "))
        }
        Kind::Choice { options, .. } => {
            let names: Vec<&str> = options.iter().map(|option| option.name.as_str()).collect();
            names.join(" / ")
        }
    }
}

const ROD_ROWS: [&str; 2] = ["Ball to ball", "Between cups"];

/// Lengths of a pose's tie rods to dial in, ball to ball and between the open ends of the cups, mm.
fn rod_lengths(setup: &Setup, pose: &AxlePose) -> [Sides<f64>; 2] {
    let balls = pose.corners.map(|corner| corner.rod_length());
    let cups = balls.map(|length| length - 2.0 * setup.car.tie_rod.cup_length);
    [balls, cups]
}

/// How the rods are set, and the lengths to dial in.
fn rod_rows(setup: &Setup, reference: Option<Reference<'_>>, pose: &AxlePose) -> Vec<Row> {
    let set = rods_set(setup.rods);
    let old = reference.map(|reference| rods_set(reference.setup.rods));
    let mut rows = vec![compared("Tie rods set to", set, old)];
    let old = reference.map(|reference| rod_lengths(reference.setup, reference.pose));
    let shown = |length: f64| format!("{} mm", number(length, 2));
    for (kind, lengths) in rod_lengths(setup, pose).into_iter().enumerate() {
        for side in Side::BOTH {
            let old = old.map(|old| shown(*old[kind].get(side)));
            let name = format!("{}, {side}", ROD_ROWS[kind]);
            rows.push(compared(&name, shown(*lengths.get(side)), old));
        }
    }
    rows
}

fn rods_set(rods: Rods) -> String {
    match rods {
        Rods::HoldToe(toe) => format!("toe-in {}° each", number(toe, 2)),
        Rods::FixedLength(_) | Rods::FixedLengths { .. } => "fixed length".to_owned(),
    }
}

/// A row that is no adjustment, marked where its value was another.
pub(crate) fn compared(name: &str, value: String, old: Option<String>) -> Row {
    let was = old.filter(|old| *old != value);
    Row {
        name: name.to_owned(),
        changed: was.is_some(),
        value: Value::Written(value),
        under: was.map(|old| format!("was {old}")),
        is_of_rods: true,
    }
}

/// Rods that cannot be screwed to their length, in sentences.
pub(crate) fn rod_warnings(setup: &Setup, pose: &AxlePose) -> Vec<String> {
    let parts = &setup.car.tie_rod;
    let [lengths, _] = rod_lengths(setup, pose);
    Side::BOTH
        .into_iter()
        .filter(|side| !(parts.shortest..=parts.longest).contains(lengths.get(*side)))
        .map(|side| {
            format!(
                "The {side} tie rod of {} mm cannot be made of its parts, which give {} to {} mm.",
                number(*lengths.get(side), 2),
                number(parts.shortest, 1),
                number(parts.longest, 1)
            )
        })
        .collect()
}
