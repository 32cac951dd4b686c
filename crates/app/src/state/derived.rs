//! Everything that is computed from the setup and the cursor, computed once for each of their values.

use steerloft_analysis::Study;
use steerloft_analysis::curves::{Curve, CurveKind, FixedRanges, Held, Turn};
use steerloft_analysis::figures::{Figure, FigureKind};
use steerloft_setup::car::Car;
use steerloft_setup::handles::{Handle, handles};
use steerloft_setup::layout::Layout;
use steerloft_setup::setup::{Rods, Setup};
use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::{InnerOuter, corner_figures, inner_outer};
use steerloft_solver::frame::Sides;
use steerloft_solver::pose::AxlePose;

use super::{Cursor, Document};

/// What follows from the setup and the cursor.
///
/// What cannot be assembled leaves the last pose that could be on screen, with the reason beside it.
#[derive(Debug)]
pub struct Derived {
    revision: u64,
    cursor: Cursor,
    /// The car that the ranges are of.
    car: Car,
    ranges: FixedRanges,
    held_input: Option<f64>,
    shown: Option<Shown>,
    trouble: Option<Trouble>,
}

/// A car that could be assembled, in one pose.
#[derive(Debug)]
pub struct Shown {
    /// The setup assembled.
    pub study: Study,
    /// The pose on screen.
    pub pose: AxlePose,
    /// The pivots that can be dragged.
    pub handles: Vec<Handle>,
    /// Every figure of the pose, in the order in which they are listed.
    pub figures: [Figure; FigureKind::ALL.len()],
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
            car: document.setup().car.clone(),
            ranges: FixedRanges::of(&document.setup().car),
            held_input: None,
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

    /// The fixed ranges of the curves' axes. They follow from the car alone: no adjustment alters them.
    #[must_use]
    pub fn fixed_ranges(&self) -> &FixedRanges {
        &self.ranges
    }

    /// Holds a steering input in the curve over the travel with the wheels turned, in the unit of the car's drive; half of
    /// what the car steers if none is given. Costs nothing when it is held already.
    pub(super) fn hold_input(&mut self, input: Option<f64>) {
        self.held_input = input;
        if let Some(shown) = &mut self.shown {
            shown.hold_input(input);
        }
    }

    /// Follows the document and the cursor; costs nothing when neither has changed.
    pub(super) fn update(&mut self, document: &Document, cursor: Cursor) {
        let new_setup = self.revision != document.revision();
        if new_setup || self.cursor != cursor {
            self.revision = document.revision();
            self.cursor = cursor;
            if self.car != document.setup().car {
                self.car = document.setup().car.clone();
                self.ranges = FixedRanges::of(&self.car);
            }
            self.compute(document.setup(), cursor, new_setup);
        }
    }

    fn compute(&mut self, setup: &Setup, cursor: Cursor, new_setup: bool) {
        // While the setup cannot be assembled, the cursor has nothing to pose.
        let sound = !matches!(self.trouble, Some(Trouble::Setup(_)));
        match &mut self.shown {
            Some(shown) if !new_setup => {
                if sound {
                    self.trouble = shown.pose_again(cursor).err().map(Trouble::Pose);
                }
            }
            _ => match Shown::new(setup, cursor) {
                Ok((mut shown, trouble)) => {
                    shown.hold_input(self.held_input);
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
        let mut study = Study::new(setup).map_err(|error| error.to_string())?;
        let assembly = study.assembly();
        let input = study.unit().to_solver(cursor.input);
        let (pose, trouble) = match assembly.pose(input, cursor.solver_travel()) {
            Ok(pose) => (pose, None),
            Err(error) => (*assembly.static_pose(), Some(error.to_string())),
        };
        let held = Held {
            travel: pose.travel,
            ..*study.sweeps().held()
        };
        study.hold(held);
        let figures = study.figures(&pose).all();
        let shown = Self {
            study,
            pose,
            handles: handles(setup),
            figures,
        };
        Ok((shown, trouble))
    }

    /// The axle ready to pose.
    #[must_use]
    pub const fn assembly(&self) -> &Assembly {
        self.study.assembly()
    }

    /// The car's points.
    #[must_use]
    pub const fn layout(&self) -> &Layout {
        self.study.layout()
    }

    /// A curve; those over the steering are taken at the travel of the pose.
    #[must_use]
    pub fn curve(&self, kind: CurveKind) -> &Curve {
        self.study.curve(kind)
    }

    /// A figure of the pose.
    #[must_use]
    pub const fn figure(&self, kind: FigureKind) -> &Figure {
        &self.figures[kind as usize]
    }

    /// Inner and outer wheel in the pose; none straight ahead.
    #[must_use]
    pub fn turn(&self) -> Option<InnerOuter> {
        inner_outer(self.assembly(), &self.pose)
    }

    /// The direction in which the car turns in the pose; left when it goes straight.
    #[must_use]
    pub fn present_turn(&self) -> Turn {
        let turn = self.turn();
        turn.map_or(Turn::Left, |turn| Turn::with_inner(turn.inner_side))
    }

    /// Toe of each wheel at rest with the steering straight ahead, degrees, toe-in positive.
    #[must_use]
    pub fn static_toe(&self) -> Sides<f64> {
        let corners = &self.study.rest().corners;
        let road = &self.assembly().axle().road;
        Sides::from_fn(|side| corner_figures(corners.get(side), road).toe.to_degrees())
    }

    /// Poses the same car anew; on an error it stays where it is.
    fn pose_again(&mut self, cursor: Cursor) -> Result<(), String> {
        let input = self.study.unit().to_solver(cursor.input);
        let travel = cursor.solver_travel();
        let pose = self.assembly().pose_near(&self.pose, input, travel);
        self.pose = pose.map_err(|error| error.to_string())?;
        self.study.hold(Held {
            travel: self.pose.travel,
            ..*self.study.sweeps().held()
        });
        self.figures = self.study.figures(&self.pose).all();
        Ok(())
    }

    /// Holds a steering input in the curve over the travel with the wheels turned; half of what the car steers if none is
    /// given.
    fn hold_input(&mut self, input: Option<f64>) {
        let (least, most) = self.study.ranges().input;
        let half = 0.5 * most;
        self.study.hold(Held {
            input: input.unwrap_or(half).max(least).min(most),
            ..*self.study.sweeps().held()
        });
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
