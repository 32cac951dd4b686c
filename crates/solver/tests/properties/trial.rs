//! A random axle and a pose asked of it.

use proptest::strategy::Strategy;
use steerloft_solver::axle::{FrontAxle, Rod};
use steerloft_solver::drive::Drive;
use steerloft_solver::frame::{Road, Side};
use steerloft_solver::{Assembly, AxlePose, Sides, SolveError};

use super::geometry::{Kind, corner};
use super::{Checked, Outcome, drives};

/// A random axle with an input and wheel travels to pose it at.
#[derive(Debug, Clone)]
pub(crate) struct Trial {
    pub(crate) axle: FrontAxle,
    /// Input, rad or mm.
    pub(crate) input: f64,
    /// Wheel travels, mm; zero where there is none.
    pub(crate) travel: Sides<f64>,
    /// Size against a 1:12 pan car.
    pub(crate) scale: f64,
}

/// How many numbers a trial is made of.
const NUMBERS: usize = 140;

/// Random trials of one suspension kind. Zero in every number is a plain car in the middle of what is usual, which
/// is where shrinking leads.
pub(crate) fn trials(kind: Kind) -> impl Strategy<Value = Trial> {
    proptest::collection::vec(-1.0..1.0_f64, NUMBERS)
        .prop_map(move |numbers| Trial::new(kind, &mut Draw { numbers, next: 0 }))
}

/// Hands out numbers from -1 to 1.
pub(crate) struct Draw {
    numbers: Vec<f64>,
    next: usize,
}

impl Draw {
    pub(crate) fn number(&mut self) -> f64 {
        let number = self.numbers[self.next];
        self.next += 1;
        number
    }

    /// A number between two bounds.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        0.5 * (low + high) + 0.5 * (high - low) * self.number()
    }

    pub(crate) fn flip(&mut self) -> bool {
        self.number() > 0.0
    }

    /// Something like a normal number: mostly small, now and then up to the bound.
    pub(crate) fn about_zero(&mut self, most: f64) -> f64 {
        let number = self.number();
        most * number * number.abs()
    }
}

impl Trial {
    fn new(kind: Kind, draw: &mut Draw) -> Self {
        let scale = 25.0_f64.powf(draw.between(0.0, 1.0));
        let left = corner(kind, draw);
        let right = if draw.flip() {
            corner(kind, draw)
        } else {
            left
        }
        .mirrored();
        let corners = Sides::new(left, right);
        let drive = drives::drive(&corners, draw);
        let input = if matches!(drive, Drive::Slider(_)) {
            scale * draw.between(-6.0, 6.0)
        } else {
            draw.between(-0.8, 0.8)
        };
        let has_travel = left.suspension.has_travel();
        let mut wheel_travel = || {
            let travel = scale * draw.between(-4.0, 4.0);
            if has_travel { travel } else { 0.0 }
        };
        let travel = Sides::new(wheel_travel(), wheel_travel());
        let rod = |side: Side, draw: &mut Draw| {
            let gap = corners.get(side).knuckle.steering_arm - drives::rod_inner(&drive).get(side);
            let toe = draw.about_zero(0.08);
            let longer = draw.about_zero(1.5);
            if draw.flip() {
                Rod::FixedLength(gap.norm() + longer)
            } else {
                Rod::HoldToe(toe)
            }
        };
        let rods = Sides::new(rod(Side::Left, draw), rod(Side::Right, draw));
        let axle = FrontAxle {
            corners,
            drive,
            rods,
            wheelbase: draw.between(180.0, 290.0),
            station: 0.0,
            road: Road {
                ride_height: draw.between(2.0, 8.0),
                pitch: draw.about_zero(0.2),
                roll: draw.about_zero(0.2),
            },
        };
        Self {
            axle: super::geometry::scaled(&axle, scale),
            input,
            travel,
            scale,
        }
    }

    /// Assembles the axle and poses it, and tries a property of both. Refusals must say properly what is wrong.
    pub(crate) fn posed(&self, property: impl Fn(&Assembly, &AxlePose) -> Checked) -> Checked {
        let assembly = match Assembly::new(&self.axle) {
            Ok(assembly) => assembly,
            Err(error) => return refused(&error),
        };
        match assembly.pose(self.input, self.travel) {
            Ok(pose) => property(&assembly, &pose),
            Err(error) => refused(&error),
        }
    }
}

/// A refusal is good if it names a member that misses by a number, or a fault of the geometry.
pub(crate) fn refused(error: &SolveError) -> Checked {
    match error {
        SolveError::OutOfReach(miss) => {
            proptest::prop_assert!(
                miss.shortfall > 0.0 && miss.shortfall.is_finite(),
                "a member that misses by {} mm: {error:?}",
                miss.shortfall
            );
            proptest::prop_assert!((0.0..=1.0).contains(&miss.reached), "{error:?}");
        }
        SolveError::Degenerate { .. } => {}
        _ => {
            return Err(proptest::test_runner::TestCaseError::fail(format!(
                "{error:?}"
            )));
        }
    }
    Ok(Outcome::Refused)
}
