//! One step of an adjustment from where it stands.

use steerloft_setup::setup::{Rods, Setup};

/// Step of the toe that the rods are set to, degrees.
const TOE_STEP: f64 = 0.25;

/// Which way a step goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Direction {
    /// To a greater value, the next total, the next option.
    Up,
    /// To a smaller value, the total or the option before.
    Down,
}

impl Direction {
    const BOTH: [Self; 2] = [Self::Up, Self::Down];

    /// +1 or -1.
    const fn sign(self) -> i32 {
        match self {
            Self::Up => 1,
            Self::Down => -1,
        }
    }
}

/// A setup one step away.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Index of the adjustment; none for the toe that the rods are set to.
    pub adjustment: Option<usize>,
    /// Its name.
    pub name: String,
    /// Which way it goes.
    pub direction: Direction,
    /// The value now, in words.
    pub from: String,
    /// The value after the step.
    pub to: String,
    /// The setup with the step taken.
    pub setup: Setup,
}

impl Step {
    /// One step of an adjustment; none where it stands at that end or there is no such adjustment.
    #[must_use]
    pub fn of(setup: &Setup, index: usize, direction: Direction) -> Option<Self> {
        let adjustment = setup.car.adjustments.get(index)?;
        let from = setup.value(index);
        let to = adjustment.step_from(&from, direction.sign());
        if to == from {
            return None;
        }
        let labels = [&from, &to].map(|value| adjustment.label_of(value));
        let mut stepped = setup.clone();
        stepped.set(index, to).ok()?;
        let [from, to] = labels;
        Some(Self {
            adjustment: Some(index),
            name: adjustment.name.clone(),
            direction,
            from,
            to,
            setup: stepped,
        })
    }

    /// One step of the toe that the rods are set to; none where their lengths are fixed.
    fn of_toe(setup: &Setup, direction: Direction) -> Option<Self> {
        let Rods::HoldToe(toe) = setup.rods else {
            return None;
        };
        let to = toe + TOE_STEP * f64::from(direction.sign());
        let mut stepped = setup.clone();
        stepped.set_rods(Rods::HoldToe(to)).ok()?;
        Some(Self {
            adjustment: None,
            name: "Toe".to_owned(),
            direction,
            from: format!("{toe:.2}°"),
            to: format!("{to:.2}°"),
            setup: stepped,
        })
    }
}

/// Every adjustment one step up and one step down, in the car's order, then the toe that the rods are set to.
#[must_use]
pub fn steps(setup: &Setup) -> Vec<Step> {
    let adjustments = 0..setup.car.adjustments.len();
    let of_adjustments = adjustments
        .flat_map(|index| Direction::BOTH.map(|direction| Step::of(setup, index, direction)));
    let of_toe = Direction::BOTH.map(|direction| Step::of_toe(setup, direction));
    of_adjustments.chain(of_toe).flatten().collect()
}
