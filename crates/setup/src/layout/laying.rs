//! Laying a front axle out adjustment by adjustment, so that many values of the later ones can share the earlier ones.

use solver::axle::FrontAxle;
use solver::joints::JointLimits;
use solver::{Assembly, SolveError};
use steerloft_solver as solver;

use super::Laid;
use super::base::{align_slides, axle_at_base, joints_at_base};
use crate::adjustment::Adjustment;
use crate::car::Car;
use crate::effects::Adjusting;
use crate::setup::{Chosen, Rods};

/// A front axle with some of a car's adjustments applied.
///
/// Adjustments are to be applied in the car's order; copies go different ways from where they are taken.
#[derive(Debug, Clone, Copy)]
pub struct Laying {
    axle: FrontAxle,
    joints: Option<JointLimits>,
    /// What the drag link and the cross link are made longer by.
    longer_links: [f64; 2],
}

impl Laying {
    /// The car at base, none of its adjustments applied.
    #[must_use]
    pub fn at_base(car: &Car, rods: Rods) -> Self {
        Self {
            axle: axle_at_base(car, rods),
            joints: joints_at_base(car),
            longer_links: [0.0; 2],
        }
    }

    /// Applies an adjustment at a value. A value of another kind, or an option there is not, leaves it at base.
    pub fn apply(&mut self, adjustment: &Adjustment, value: &Chosen) {
        let joints = self.joints.as_mut();
        let mut adjusting = Adjusting::going_on(&mut self.axle, joints, self.longer_links);
        adjusting.apply(adjustment, value);
        self.longer_links = adjusting.longer_links();
    }

    /// The mechanism with what has been applied, made ready to pose: with every adjustment applied what
    /// [`super::assemble`] makes of the same values.
    ///
    /// # Errors
    /// As [`Assembly::new`].
    pub fn assemble(&self, car: &Car) -> Result<Assembly, SolveError> {
        let Laid { axle, joints } = self.laid(car);
        Assembly::within(&axle, joints)
    }

    /// The axle with what has been applied.
    pub(super) fn laid(&self, car: &Car) -> Laid {
        let Self {
            mut axle,
            mut joints,
            longer_links,
        } = *self;
        Adjusting::going_on(&mut axle, joints.as_mut(), longer_links).finish();
        align_slides(&mut axle, car);
        Laid { axle, joints }
    }
}
