//! What is chosen on the car, as rows grouped by place.

use steerloft_setup::adjustment::{Adjustment, Place};
use steerloft_setup::setup::{Chosen, Rods, Setup};
use steerloft_solver::frame::Side;
use steerloft_solver::pose::AxlePose;

/// Rows under one heading.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Group {
    pub(super) heading: &'static str,
    pub(super) rows: Vec<Row>,
}

/// One thing and how it is set.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    pub(super) name: String,
    pub(super) value: String,
    /// Whether it differs from the car's base.
    pub(super) changed: bool,
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

/// The rows of a setup; the tie rods' lengths are those of the pose. Places without rows are left out.
pub(super) fn groups(setup: &Setup, pose: &AxlePose) -> Vec<Group> {
    PLACES
        .iter()
        .map(|&(place, heading)| {
            let mut rows = if place == Place::TieRod {
                rod_rows(setup, pose)
            } else {
                Vec::new()
            };
            let here = setup
                .car
                .adjustments
                .iter()
                .filter(|adjustment| adjustment.place == place);
            rows.extend(here.map(|adjustment| row(setup, adjustment)));
            Group { heading, rows }
        })
        .filter(|group| !group.rows.is_empty())
        .collect()
}

fn row(setup: &Setup, adjustment: &Adjustment) -> Row {
    let value = setup.value_of(adjustment);
    Row {
        name: adjustment.name.clone(),
        value: value_with_parts(adjustment, &value),
        changed: value != adjustment.base(),
    }
}

/// The value in words; for a stack of several spacers with the parts to fit: "3 mm (2 + 1)".
fn value_with_parts(adjustment: &Adjustment, value: &Chosen) -> String {
    let label = adjustment.label_of(value);
    let Chosen::Stack(total) = value else {
        return label;
    };
    let spacers = adjustment.spacers_for(*total).unwrap_or_default();
    if spacers.len() < 2 {
        return label;
    }
    let parts: Vec<String> = spacers.iter().map(f64::to_string).collect();
    format!("{label} ({})", parts.join(" + "))
}

/// How the rods are set, and the lengths to dial in.
fn rod_rows(setup: &Setup, pose: &AxlePose) -> Vec<Row> {
    let plain = |name: String, value: String| Row {
        name,
        value,
        changed: false,
    };
    let (set, to) = match setup.rods {
        Rods::HoldToe(toe) => ("Set to toe-in, each wheel", format!("{toe:.2}°")),
        Rods::FixedLength(_) | Rods::FixedLengths { .. } => ("Set to", "fixed length".to_owned()),
    };
    let mut rows = vec![plain(set.to_owned(), to)];
    for side in Side::BOTH {
        let length = pose.corners.get(side).rod_length();
        let gap = length - 2.0 * setup.car.tie_rod.cup_length;
        rows.push(plain(
            format!("Ball to ball, {side}"),
            format!("{length:.2} mm"),
        ));
        rows.push(plain(
            format!("Between cups, {side}"),
            format!("{gap:.2} mm"),
        ));
    }
    rows
}
