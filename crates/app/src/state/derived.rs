//! Everything that is computed from the setup and the cursor, computed once for each of their values.

use steerloft_setup::handles::{Handle, handles};
use steerloft_setup::layout::{Layout, layout};
use steerloft_setup::setup::{Rods, Setup};
use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::corner_figures;
use steerloft_solver::frame::Sides;
use steerloft_solver::pose::AxlePose;

use super::{Cursor, Curves, Document, Figures, InputUnit, Scales, Sweeps};

/// What follows from the setup and the cursor.
///
/// What cannot be assembled leaves the last pose that could be on screen, with the reason beside it.
#[derive(Debug)]
pub struct Derived {
    revision: u64,
    cursor: Cursor,
    scales: Scales,
    shown: Option<Shown>,
    trouble: Option<Trouble>,
}

/// A car that could be assembled, in one pose.
#[derive(Debug)]
pub struct Shown {
    /// The car's points.
    pub layout: Layout,
    /// The axle ready to pose.
    pub assembly: Assembly,
    /// The pose on screen.
    pub pose: AxlePose,
    /// The pivots that can be dragged.
    pub handles: Vec<Handle>,
    /// The curves.
    pub curves: Curves,
    /// The figures of the pose.
    pub figures: Figures,
}

/// Why what is on screen is not what the setup and the cursor ask for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Trouble {
    /// The setup cannot be assembled at all; the text names the member and by how much it misses.
    Setup(String),
    /// The setup is sound, but it cannot be posed where the cursor stands.
    Pose(String),
}

impl Trouble {
    /// The reason in plain words.
    #[must_use]
    pub fn reason(&self) -> &str {
        match self {
            Self::Setup(reason) | Self::Pose(reason) => reason,
        }
    }
}

impl Derived {
    /// What follows from a document just opened.
    ///
    /// If it cannot be assembled, the car is shown as its file gives it before any adjustment, if that can be.
    #[must_use]
    pub fn new(document: &Document, cursor: Cursor) -> Self {
        let mut derived = Self {
            revision: document.revision(),
            cursor,
            scales: Scales::of(&document.setup().car),
            shown: shown_at_base(document.setup()),
            trouble: None,
        };
        derived.compute(document.setup(), cursor, true);
        derived
    }

    /// The car on screen, if there is one that could be assembled.
    #[must_use]
    pub fn shown(&self) -> Option<&Shown> {
        self.shown.as_ref()
    }

    /// Why the car on screen is not the one asked for, if so.
    #[must_use]
    pub fn trouble(&self) -> Option<&Trouble> {
        self.trouble.as_ref()
    }

    /// The fixed ranges of the curves' axes. They follow from the car as it was opened, which no change of a setup alters.
    #[must_use]
    pub fn scales(&self) -> &Scales {
        &self.scales
    }

    /// Follows the document and the cursor; costs nothing when neither has changed.
    pub(super) fn update(&mut self, document: &Document, cursor: Cursor) {
        let new_setup = self.revision != document.revision();
        if new_setup || self.cursor != cursor {
            self.revision = document.revision();
            self.cursor = cursor;
            self.compute(document.setup(), cursor, new_setup);
        }
    }

    fn compute(&mut self, setup: &Setup, cursor: Cursor, new_setup: bool) {
        // While the setup cannot be assembled, the cursor has nothing to pose.
        let sound = !matches!(self.trouble, Some(Trouble::Setup(_)));
        match &mut self.shown {
            Some(shown) if !new_setup => {
                if sound {
                    self.trouble = shown.pose_again(setup, cursor).err().map(Trouble::Pose);
                }
            }
            _ => match Shown::new(setup, cursor) {
                Ok((shown, trouble)) => {
                    self.shown = Some(shown);
                    self.trouble = trouble.map(Trouble::Pose);
                }
                Err(reason) => self.trouble = Some(Trouble::Setup(reason)),
            },
        }
    }
}

impl Shown {
    /// A setup assembled and at rest, or why it cannot be.
    pub fn at_rest(setup: &Setup) -> Result<Self, Trouble> {
        Self::new(setup, Cursor::STATIC)
            .map(|(shown, _)| shown)
            .map_err(Trouble::Setup)
    }

    /// Assembles a setup and poses it, at rest if it cannot be posed where the cursor stands.
    fn new(setup: &Setup, cursor: Cursor) -> Result<(Self, Option<String>), String> {
        let layout = layout(setup);
        let assembly = layout.assemble().map_err(|error| error.to_string())?;
        let sweeps = Sweeps::of(&setup.car);
        let input = sweeps.unit.to_solver(cursor.input);
        let posed = assembly.pose(input, cursor.solver_travel());
        let (pose, trouble) = match posed {
            Ok(pose) => (pose, None),
            Err(error) => (*assembly.static_pose(), Some(error.to_string())),
        };
        let curves = Curves::new(&assembly, &sweeps, pose.travel);
        let tie_rod = &setup.car.tie_rod;
        let figures = Figures::new(&assembly, &pose, &curves, tie_rod, sweeps.unit);
        let shown = Self {
            layout,
            assembly,
            pose,
            handles: handles(setup),
            curves,
            figures,
        };
        Ok((shown, trouble))
    }

    /// Toe of each wheel at rest with the steering straight ahead, degrees, toe-in positive.
    #[must_use]
    pub fn static_toe(&self) -> Sides<f64> {
        let corners = &self.assembly.static_pose().corners;
        let road = &self.assembly.axle().road;
        Sides::from_fn(|side| corner_figures(corners.get(side), road).toe.to_degrees())
    }

    /// Poses the same car anew; on an error it stays where it is.
    fn pose_again(&mut self, setup: &Setup, cursor: Cursor) -> Result<(), String> {
        let input = InputUnit::of(&setup.car).to_solver(cursor.input);
        let pose = self
            .assembly
            .pose_near(&self.pose, input, cursor.solver_travel())
            .map_err(|error| error.to_string())?;
        let travelled = pose.travel != self.pose.travel;
        if travelled {
            let sweeps = Sweeps::of(&setup.car);
            self.curves
                .steer_again(&self.assembly, &sweeps, pose.travel);
        }
        self.pose = pose;
        self.figures
            .pose_again(&self.assembly, &self.pose, &self.curves, travelled);
        Ok(())
    }
}

/// The car before any adjustment, wheels straight, at rest.
fn shown_at_base(setup: &Setup) -> Option<Shown> {
    let base = Setup {
        chosen: std::collections::BTreeMap::new(),
        rods: Rods::HoldToe(0.0),
        ..setup.clone()
    };
    Shown::new(&base, Cursor::STATIC)
        .ok()
        .map(|(shown, _)| shown)
}
