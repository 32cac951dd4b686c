//! A setup put together, with all that is known of it.

use std::array;
use std::sync::OnceLock;

use steerloft_setup::car::{Loads, Ranges, TieRodParts};
use steerloft_setup::layout::{Layout, layout};
use steerloft_setup::setup::Setup;
use steerloft_solver::assembly::Assembly;
use steerloft_solver::error::SolveError;
use steerloft_solver::frame::Sides;
use steerloft_solver::pose::AxlePose;

use crate::curves::{Along, Curve, CurveKind, Held, Sweeps};
use crate::figures::Figures;
use crate::{InputUnit, TieRod};

/// A setup assembled: its points, its pose at rest, and its sweeps, curves and figures when they are asked for.
///
/// Nothing is computed twice. Sweeps over the steering are taken at a wheel travel that can be held ([`Study::hold`]), and
/// so is the one curve over the travel with the wheels turned at a steering input.
#[derive(Debug, Clone)]
pub struct Study {
    layout: Layout,
    rod_parts: TieRodParts,
    loads: Option<Loads>,
    sweeps: Sweeps,
    curves: [OnceLock<Curve>; CurveKind::ALL.len()],
}

impl Study {
    /// Lays a setup out and assembles it.
    ///
    /// # Errors
    /// Why it cannot be assembled, with the member and by how much it misses.
    pub fn new(setup: &Setup) -> Result<Self, SolveError> {
        let layout = layout(setup);
        let assembly = layout.assemble()?;
        Ok(Self {
            rod_parts: setup.car.tie_rod,
            loads: setup.car.loads,
            sweeps: Sweeps::new(&assembly, &setup.car.ranges),
            curves: array::from_fn(|_| OnceLock::new()),
            layout,
        })
    }

    /// The setup's points with every adjustment applied.
    #[must_use]
    pub const fn layout(&self) -> &Layout {
        &self.layout
    }

    /// The axle ready to pose.
    #[must_use]
    pub const fn assembly(&self) -> &Assembly {
        self.sweeps.assembly()
    }

    /// The pose at rest with the steering straight ahead.
    #[must_use]
    pub const fn rest(&self) -> &AxlePose {
        self.assembly().static_pose()
    }

    /// The tie rods as they are to be built.
    #[must_use]
    pub fn tie_rods(&self) -> Sides<TieRod> {
        let lengths = self.assembly().rod_lengths();
        lengths.map(|length| TieRod::new(length, &self.rod_parts))
    }

    /// How the front wheels are loaded, where the car says so.
    #[must_use]
    pub const fn loads(&self) -> Option<&Loads> {
        self.loads.as_ref()
    }

    /// How far the car's parts go.
    #[must_use]
    pub const fn ranges(&self) -> &Ranges {
        self.sweeps.ranges()
    }

    /// Unit of the steering input.
    #[must_use]
    pub const fn unit(&self) -> InputUnit {
        self.sweeps.unit()
    }

    /// The poses that curves are read off.
    #[must_use]
    pub const fn sweeps(&self) -> &Sweeps {
        &self.sweeps
    }

    /// A curve.
    #[must_use]
    pub fn curve(&self, kind: CurveKind) -> &Curve {
        self.curves[kind.index()].get_or_init(|| self.sweeps.curve(kind))
    }

    /// The figures of a pose of this setup.
    #[must_use]
    pub fn figures<'a>(&'a self, pose: &'a AxlePose) -> Figures<'a> {
        Figures::new(self, pose)
    }

    /// Holds another wheel travel and steering input in the sweeps that are taken at one.
    pub fn hold(&mut self, held: Held) {
        let before = *self.sweeps.held();
        if held == before {
            return;
        }
        self.sweeps.hold(held);
        for kind in CurveKind::ALL {
            let stale = match kind.along() {
                Along::Steer | Along::InnerAngle => held.travel != before.travel,
                Along::SteeredTravel => held.input.to_bits() != before.input.to_bits(),
                Along::Travel | Along::Roll => false,
            };
            if stale {
                self.curves[kind.index()] = OnceLock::new();
            }
        }
    }
}
