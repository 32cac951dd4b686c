//! What one step of each adjustment does to the figures of the pit table.

use steerloft_setup::setup::Setup;
use steerloft_solver::SolveError;
use steerloft_solver::figures::{corner_figures, inner_outer, steering_ratio, travel_gradient};
use steerloft_solver::frame::Side;

use super::symptoms::{Aim, Symptom};
use crate::effects::{Step, steps};
use crate::wheels::{Wheels, input_where};

/// A figure that the pit table aims at; of the left wheel where there are two.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PitFigure {
    /// Amount of bump steer straight ahead, degrees per mm, without sign.
    BumpSteer,
    /// Ackermann share at a mean turn of 15 degrees to the left, percent.
    AckermannShare,
    /// Lock of the inner wheel at the end of the car's range, degrees.
    Lock,
    /// Static toe of one wheel, degrees, toe-in positive.
    Toe,
    /// Static camber, degrees.
    Camber,
    /// Caster, degrees.
    Caster,
    /// Scrub radius, mm, without sign.
    ScrubRadius,
    /// Steering ratio straight ahead, input per degree of the wheels, without sign.
    Ratio,
}

/// Mean turn at which the Ackermann share is taken, degrees.
const SHARE_AT: f64 = 15.0;

/// Changes smaller than this share of a figure's own grain are none.
const NOTHING: f64 = 1e-6;

impl PitFigure {
    /// In plain words.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::BumpSteer => "bump steer",
            Self::AckermannShare => "Ackermann share",
            Self::Lock => "lock",
            Self::Toe => "toe",
            Self::Camber => "camber",
            Self::Caster => "caster",
            Self::ScrubRadius => "scrub radius",
            Self::Ratio => "steering ratio",
        }
    }

    /// Its unit.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::BumpSteer => "°/mm",
            Self::AckermannShare => "%",
            Self::Lock | Self::Toe | Self::Camber | Self::Caster => "°",
            Self::ScrubRadius => "mm",
            Self::Ratio => "per °",
        }
    }

    /// Decimals with which it is written: a builder just notices the last one.
    #[must_use]
    pub const fn decimals(self) -> usize {
        match self {
            Self::BumpSteer => 3,
            Self::AckermannShare | Self::Lock => 1,
            Self::Toe | Self::Camber | Self::Caster | Self::ScrubRadius | Self::Ratio => 2,
        }
    }

    /// Its value for a setup; nothing where the car has none.
    ///
    /// # Errors
    /// Where the setup cannot be assembled.
    pub fn of(self, setup: &Setup) -> Result<Option<f64>, SolveError> {
        Ok(self.value(&Wheels::new(setup)?))
    }

    fn value(self, wheels: &Wheels) -> Option<f64> {
        let assembly = &wheels.assembly;
        let road = &assembly.axle().road;
        let rest = assembly.static_pose();
        let left = corner_figures(&rest.corners.left, road);
        match self {
            Self::BumpSteer => travel_gradient(&rest.corners.left, road)
                .map(|gradient| gradient.toe.to_degrees().abs()),
            Self::AckermannShare => share(wheels),
            Self::Lock => {
                let pose = wheels.pose(wheels.end(Side::Left)).ok()?;
                Some(wheels.inner_turn(&pose, Side::Left))
            }
            Self::Toe => Some(left.toe.to_degrees()),
            Self::Camber => Some(left.camber.to_degrees()),
            Self::Caster => Some(left.caster.to_degrees()),
            Self::ScrubRadius => Some(left.scrub_radius.abs()),
            Self::Ratio => {
                let ratio = steering_ratio(rest, road)?;
                Some(wheels.unit.ratio(ratio))
            }
        }
    }
}

/// Ackermann share where the mean turn to the left is [`SHARE_AT`].
fn share(wheels: &Wheels) -> Option<f64> {
    let end = wheels.end(Side::Left);
    let mean = |input: f64| {
        let pose = wheels.pose(input).ok()?;
        let turns = Side::BOTH.map(|side| wheels.turn(&pose, side));
        Some(f64::midpoint(turns[0], turns[1]))
    };
    let input = input_where((0.0, end), SHARE_AT, mean)?;
    inner_outer(&wheels.assembly, &wheels.pose(input).ok()?)?.ackermann_share
}

/// A step worth trying.
#[derive(Debug, Clone, PartialEq)]
pub struct Try {
    /// Index of the adjustment; none for the toe that the rods are set to.
    pub adjustment: Option<usize>,
    /// Its name.
    pub name: String,
    /// Its value now, in words.
    pub from: String,
    /// Its value after the step.
    pub to: String,
    /// Change of the figure by that, in its unit.
    pub effect: f64,
    /// The setup with the step taken.
    pub setup: Setup,
}

/// Advice for one aim.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice {
    /// What is aimed at, with the usual tendency.
    pub aim: Aim,
    /// The figure now, in its unit; none where this car has none.
    pub now: Option<f64>,
    /// Steps that take it the way it should go on this car, the strongest first.
    pub tries: Vec<Try>,
}

/// Advice for a symptom on this very car, in the order in which things are usually tried.
///
/// Every adjustment is taken one step up and one step down and the setup solved anew; steps that cannot be assembled are
/// left out.
///
/// # Errors
/// Where the setup itself cannot be assembled.
pub fn advice(setup: &Setup, symptom: Symptom) -> Result<Vec<Advice>, SolveError> {
    let now = Wheels::new(setup)?;
    let steps: Vec<Stepped> = steps(setup)
        .into_iter()
        .filter_map(|step| {
            let wheels = Wheels::new(&step.setup).ok()?;
            Some(Stepped { step, wheels })
        })
        .collect();
    let advice = symptom.aims().iter().map(|aim| {
        let value = aim.figure.value(&now);
        Advice {
            aim: *aim,
            now: value,
            tries: value.map_or_else(Vec::new, |value| tries(&steps, aim, value)),
        }
    });
    Ok(advice.collect())
}

/// A setup one step on, assembled.
struct Stepped {
    step: Step,
    wheels: Wheels,
}

fn tries(steps: &[Stepped], aim: &Aim, now: f64) -> Vec<Try> {
    let wanted = aim.direction.sign();
    let mut tries: Vec<Try> = steps
        .iter()
        .filter_map(|Stepped { step, wheels }| {
            let effect = aim.figure.value(wheels)? - now;
            (effect * wanted > NOTHING).then(|| Try {
                adjustment: step.adjustment,
                name: step.name.clone(),
                from: step.from.clone(),
                to: step.to.clone(),
                effect,
                setup: step.setup.clone(),
            })
        })
        .collect();
    tries.sort_by(|a, b| b.effect.abs().total_cmp(&a.effect.abs()));
    tries
}
