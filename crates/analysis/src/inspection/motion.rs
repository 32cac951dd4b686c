//! What is found while the linkage moves: locks, joints, dead centres, touching parts.

use steerloft_setup::setup::Setup;

use super::{Finding, FindingKind};
use crate::binding::{BindingMap, Concern, LEAST_SHARE, WorstPoint, binding_map};
use crate::curves::{CurveKind, End, Swept};
use crate::text::{number, signed};
use crate::{InputUnit, Study};

/// Steering inputs and wheel travels in the field of both.
const FIELD: (usize, usize) = (17, 9);

/// What is wrong with the motion of an assembled setup.
pub(super) fn findings(setup: &Setup, study: &Study) -> Vec<Finding> {
    let ends: Vec<End> = study
        .sweeps()
        .steering_ends()
        .into_iter()
        .chain(study.curve(CurveKind::ToeTravel).ends.clone())
        .collect();
    let mut findings: Vec<Finding> = ends.iter().map(of_end).collect();
    let (inputs, travels) = FIELD;
    if let Ok(map) = binding_map(setup, inputs, travels) {
        if ends.is_empty() {
            findings.extend(unreached(&map, study.unit()));
        }
        let beyond = Concern::ALL.into_iter().filter_map(|concern| {
            let worst = map.worst(concern)?;
            (worst.margin < 0.0).then(|| of_concern(concern, &worst, study.unit()))
        });
        findings.extend(beyond);
    }
    findings
}

fn of_end(end: &End) -> Finding {
    match end.swept {
        Swept::Steering => Finding::new(
            FindingKind::SteeringRange,
            format!(
                "steering locks at {} {} of input: {}",
                signed(end.at, 1),
                end.unit,
                end.cause
            ),
        )
        .at_input(end.at)
        .at_travel(0.0),
        Swept::Travel => Finding::new(
            FindingKind::TravelRange,
            format!(
                "the suspension locks at {} mm of travel: {}",
                signed(end.at, 2),
                end.cause
            ),
        )
        .at_input(0.0)
        .at_travel(end.at),
    }
}

/// The pose of the field nearest to its middle that is not reached.
fn unreached(map: &BindingMap, unit: InputUnit) -> Option<Finding> {
    let columns = map.inputs.len();
    let cells = map.cells.iter().enumerate();
    let missed = cells.filter_map(|(index, cell)| {
        let cause = cell.as_ref().err()?;
        Some((
            *map.inputs.get(index % columns)?,
            *map.travels.get(index / columns)?,
            cause,
        ))
    });
    let (input, travel, cause) = missed.min_by(|a, b| a.0.abs().total_cmp(&b.0.abs()))?;
    let text = format!("does not move to {}: {cause}", place(input, travel, unit));
    Some(
        Finding::new(FindingKind::Field, text)
            .at_input(input)
            .at_travel(travel),
    )
}

fn of_concern(concern: Concern, worst: &WorstPoint, unit: InputUnit) -> Finding {
    let at = place(worst.input, worst.travel, unit);
    let finding = match concern {
        Concern::BallJoint => {
            let limit = worst.value + worst.margin;
            let swing = number(worst.value, 1);
            let text = format!(
                "a tie rod's ball joint swings {swing} deg at {at}, and {} deg is its limit",
                number(limit, 1)
            );
            Finding::new(FindingKind::BallJoint, text).measured(worst.value, limit, "deg")
        }
        Concern::DeadCentre => {
            let text = format!(
                "a rod is near its dead centre at {at}: {} of its pull turns what it holds, and {} is the least",
                number(worst.value, 2),
                number(LEAST_SHARE, 2)
            );
            Finding::new(FindingKind::DeadCentre, text).measured(worst.value, LEAST_SHARE, "")
        }
        Concern::Rim => {
            let text = format!(
                "a tie rod stands {} mm in the rim at {at}",
                number(-worst.value, 2)
            );
            Finding::new(FindingKind::Rim, text).measured(worst.value, 0.0, "mm")
        }
        Concern::Chassis => {
            let text = format!(
                "a tie rod or a knuckle stands {} mm in what is fixed in the chassis at {at}",
                number(-worst.value, 2)
            );
            Finding::new(FindingKind::Chassis, text).measured(worst.value, 0.0, "mm")
        }
    };
    finding.at_input(worst.input).at_travel(worst.travel)
}

fn place(input: f64, travel: f64, unit: InputUnit) -> String {
    format!(
        "{} {} of input and {} mm of travel",
        signed(input, 1),
        unit.word(),
        signed(travel, 2)
    )
}
