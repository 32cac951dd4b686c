//! Where the spacers of a car's stacks sit.

use solver::axle::FrontAxle;
use solver::frame::Side;
use steerloft_solver as solver;

use super::{STILL, StackPlace, axle_with};
use crate::adjustment::{Kind, PointName};
use crate::points::point_of;
use crate::setup::{Chosen, Setup};

/// Points that a stack can carry, those nearest the chassis first.
const FROM_THE_CHASSIS: [&[PointName]; 10] = [
    &[PointName::DriveAxis],
    &[PointName::CrankAxis],
    &[PointName::LowerHingeFront, PointName::LowerHingeRear],
    &[PointName::UpperHingeFront, PointName::UpperHingeRear],
    &[PointName::KingpinLower],
    &[PointName::KingpinUpper],
    &[
        PointName::DragServo,
        PointName::DragCrank,
        PointName::CrossBall,
    ],
    &[PointName::RodInner],
    &[PointName::WheelCentre],
    &[PointName::SteeringArm],
];

/// The spacers of every stack, where they sit.
pub(super) fn stack_places(setup: &Setup, axle: &FrontAxle) -> Vec<StackPlace> {
    let adjustments = setup.car.adjustments.iter().enumerate();
    adjustments
        .flat_map(|(index, adjustment)| match &adjustment.kind {
            Kind::Stack { .. } => places_of_stack(setup, axle, index),
            Kind::Slide { .. } | Kind::Choice { .. } => Vec::new(),
        })
        .collect()
}

/// Where the stack of one adjustment sits: under the points it moves that are nearest the chassis, since what
/// else moves is carried by those.
fn places_of_stack(setup: &Setup, axle: &FrontAxle, index: usize) -> Vec<StackPlace> {
    let value = setup.value(index);
    let Chosen::Stack(total) = value else {
        return Vec::new();
    };
    let one_more = axle_with(setup, Some((index, &Chosen::Stack(total + 1.0))));
    let spacers = setup.car.adjustments[index]
        .spacers_for(total)
        .unwrap_or_default();
    for carriers in FROM_THE_CHASSIS {
        let places: Vec<StackPlace> = carriers
            .iter()
            .flat_map(|&point| Side::BOTH.map(|side| (point, side)))
            .filter(|(point, side)| !point.is_shared() || *side == Side::Left)
            .filter_map(|(point, side)| {
                let top = point_of(axle, point, side)?;
                let per_millimetre = point_of(&one_more, point, side)? - top;
                Some(StackPlace {
                    adjustment: index,
                    point,
                    side,
                    top,
                    direction: per_millimetre.try_normalize(STILL)?,
                    spacers: spacers.clone(),
                })
            })
            .collect();
        if !places.is_empty() {
            return places;
        }
    }
    Vec::new()
}
