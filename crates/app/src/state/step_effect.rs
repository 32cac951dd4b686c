//! What one step of an adjustment does to the two figures that steering is set up by.

use steerloft_setup::layout::front_axle;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::{inner_outer, travel_gradient};
use steerloft_solver::frame::Sides;

use super::InputUnit;

/// Share of the car's greatest steering input at which the Ackermann share is compared.
const INPUT_SHARE: f64 = 2.0 / 3.0;

/// Differences that one step makes.
#[derive(Debug, Clone, PartialEq)]
pub struct StepEffect {
    /// The value after the step.
    pub to: Chosen,
    /// Change of the left wheel's bump steer at rest, rad/mm; none without travel.
    pub bump_steer: Option<f64>,
    /// Change of the Ackermann share, percent, at [`Self::input`].
    pub ackermann_share: Option<f64>,
    /// The steering input at which the Ackermann shares are compared, in the unit of the car's drive.
    pub input: f64,
}

/// What one step more of an adjustment does, or one step less at its end; none where it has no other value or where
/// either setup cannot be assembled.
#[must_use]
pub fn step_effect(setup: &Setup, adjustment: usize) -> Option<StepEffect> {
    let car_adjustment = setup.car.adjustments.get(adjustment)?;
    let from = setup.value(adjustment);
    let to = [1, -1]
        .map(|steps| car_adjustment.step_from(&from, steps))
        .into_iter()
        .find(|to| *to != from)?;
    let mut stepped = setup.clone();
    stepped.set(adjustment, to.clone()).ok()?;
    let input = setup.car.ranges.input.1 * INPUT_SHARE;
    let before = Headline::of(setup, input)?;
    let after = Headline::of(&stepped, input)?;
    let difference = |after: Option<f64>, before: Option<f64>| Some(after? - before?);
    Some(StepEffect {
        to,
        bump_steer: difference(after.bump_steer, before.bump_steer),
        ackermann_share: difference(after.ackermann_share, before.ackermann_share),
        input,
    })
}

/// The two figures of one setup.
struct Headline {
    bump_steer: Option<f64>,
    ackermann_share: Option<f64>,
}

impl Headline {
    fn of(setup: &Setup, input: f64) -> Option<Self> {
        let assembly = Assembly::new(&front_axle(setup)).ok()?;
        let road = &assembly.axle().road;
        let at_rest = assembly.static_pose();
        let input = InputUnit::of(&setup.car).to_solver(input);
        let steered = assembly.pose(input, Sides::both(0.0)).ok();
        Some(Self {
            bump_steer: travel_gradient(&at_rest.corners.left, road).map(|gradient| gradient.toe),
            ackermann_share: steered
                .and_then(|pose| inner_outer(&assembly, &pose))
                .and_then(|turn| turn.ackermann_share),
        })
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::expect_used)]

    use super::*;
    use steerloft_setup::supplied::SUPPLIED;

    #[test]
    fn a_step_at_the_upper_end_goes_down() {
        let mut setup = SUPPLIED[0].setup();
        let all = &setup.car.adjustments;
        let station = all
            .iter()
            .position(|adjustment| adjustment.name == "Servo station")
            .unwrap();
        assert_eq!(step_effect(&setup, station).unwrap().to, Chosen::Slide(1.0));
        setup.set(station, Chosen::Slide(5.0)).unwrap();
        assert_eq!(step_effect(&setup, station).unwrap().to, Chosen::Slide(4.0));
    }

    #[test]
    fn the_effect_is_the_difference_of_the_figures() {
        let setup = SUPPLIED[0].setup();
        let all = &setup.car.adjustments;
        let spacers = all
            .iter()
            .position(|adjustment| adjustment.name == "Outer rod spacers")
            .unwrap();
        let effect = step_effect(&setup, spacers).unwrap();
        let mut stepped = setup.clone();
        stepped.set(spacers, effect.to.clone()).unwrap();
        let bump = |setup: &Setup| Headline::of(setup, 10.0).unwrap().bump_steer.unwrap();
        let difference = bump(&stepped) - bump(&setup);
        assert!((effect.bump_steer.unwrap() - difference).abs() < 1e-12);
        assert!(difference.abs() > 1e-4, "spacers change bump steer");
    }
}
