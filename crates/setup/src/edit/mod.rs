//! Changing the car itself: each edit gives a whole new setup that passes the checks, or says what it would break.

mod adjustments;
mod kinds;
mod links;
mod new_car;
mod points;
mod sides;

pub(crate) use points::{is_mirrored, place_of};
pub(crate) use sides::separate;

pub use kinds::OtherKinds;
pub use new_car::{DriveKind, SuspensionKind, new_car};

use steerloft_solver::frame::Side;

use crate::adjustment::{Adjustment, Member, PointName, Scalar};
use crate::car::{
    BallJoints, BuildErrors, Clearances, DrivenCrank, InnerBallsOn, Loads, Obstacle, Position,
    Ranges, Servo, ServoSaver, TieRodParts,
};
use crate::check::{Fault, check};
use crate::servo::{ServoError, ServoPart};
use crate::setup::Setup;
use crate::stock::Stock;

/// A change of the car.
#[derive(Debug, Clone, PartialEq)]
#[allow(
    clippy::large_enum_variant,
    reason = "edits come one at a time, from a hand"
)]
pub enum CarEdit {
    /// Its name.
    Name(String),
    /// Its notes.
    Notes(String),
    /// A point or direction at base. A right-hand point of a mirrored corner sets the left-hand one.
    Point {
        /// The point.
        point: PointName,
        /// Its side; either for what both sides share.
        side: Side,
        /// Where it goes, or the direction, chassis axes, mm.
        to: Position,
    },
    /// A number at base, mm or degrees; of both wheels where they are given by themselves.
    Number {
        /// Which number.
        scalar: Scalar,
        /// Its value.
        to: f64,
    },
    /// A number of one wheel, mm or degrees. On a mirrored right corner it sets the left one.
    WheelNumber {
        /// Camber, tyre radius or tyre width.
        scalar: Scalar,
        /// Which wheel.
        side: Side,
        /// Its value.
        to: f64,
    },
    /// The car made one of other kinds, as [`Setup::with_kinds`] does it.
    Kinds {
        /// Its suspension.
        suspension: SuspensionKind,
        /// Its drive.
        drive: DriveKind,
    },
    /// Which of twin cranks the drag link turns. The link's ball goes to the mirror image place on the other crank.
    DrivenCrank(DrivenCrank),
    /// What carries the inner balls of twin cranks. On the cross link they go to the nearest place on its line.
    InnerBallsOn(InnerBallsOn),
    /// How long the drag or cross link is, mm; as drawn if nothing is given.
    LinkLength {
        /// Which link.
        link: Member,
        /// Its length, ball to ball.
        to: Option<f64>,
    },
    /// Struts get slide lines of their own, along their steering axes at first, or slide along those.
    SlideLine {
        /// Whether they have lines of their own.
        own: bool,
    },
    /// How far input and travel go.
    Ranges(Ranges),
    /// The tie rod's parts.
    TieRod(TieRodParts),
    /// The ball joints, or none.
    Joints(Option<BallJoints>),
    /// The servo, or none.
    Servo(Option<Servo>),
    /// Another servo where the present one sits; the arm goes where the new one has it.
    FitServo(ServoPart),
    /// The servo saver, or none.
    Saver(Option<ServoSaver>),
    /// Wheel loads, or none.
    Loads(Option<Loads>),
    /// Sizes of parts that could touch, or none.
    Clearances(Option<Clearances>),
    /// What stands in the way.
    Obstacles(Vec<Obstacle>),
    /// Build errors.
    BuildErrors(BuildErrors),
    /// Stocks of spacers.
    Stock(Vec<Stock>),
    /// Another name for a stock; the stacks that take from it go along.
    RenameStock {
        /// Its index.
        index: usize,
        /// The new name.
        name: String,
    },
    /// A new adjustment, so that it stands at this index of the list.
    AddAdjustment {
        /// The index it gets.
        at: usize,
        /// The adjustment.
        adjustment: Adjustment,
    },
    /// Another name for an adjustment; what is chosen for it stays.
    RenameAdjustment {
        /// Its index.
        index: usize,
        /// The new name.
        name: String,
    },
    /// Place, notes, kind and effects of an adjustment; its name stays. What is chosen goes to the nearest value that
    /// the new kind allows.
    ReplaceAdjustment {
        /// Its index.
        index: usize,
        /// What it becomes.
        adjustment: Adjustment,
    },
    /// An adjustment elsewhere in the list, which is the order in which effects apply.
    MoveAdjustment {
        /// Its index.
        from: usize,
        /// The index it gets.
        to: usize,
    },
    /// An adjustment less. The car then stands as with the adjustment at its base.
    RemoveAdjustment {
        /// Its index.
        index: usize,
    },
    /// The right corner given by itself, from now on; at first it is the mirror image.
    SeparateSides,
    /// The right corner as the mirror image of the left one again.
    MirrorSides,
}

/// Why an edit cannot be made.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum EditError {
    /// The car would no longer pass its checks.
    #[error(transparent)]
    Check(#[from] Fault),
    /// There is no such adjustment.
    #[error("adjustment {index} of {count} does not exist; they count from 0")]
    NoSuchAdjustment {
        /// The index asked for.
        index: usize,
        /// How many there are.
        count: usize,
    },
    /// There is no such stock.
    #[error("stock {index} of {count} does not exist; they count from 0")]
    NoSuchStock {
        /// The index asked for.
        index: usize,
        /// How many there are.
        count: usize,
    },
    /// The car has no such point.
    #[error("this car has no {}; its suspension and drive tell which points it has", point.label())]
    NoSuchPoint {
        /// The point.
        point: PointName,
    },
    /// The car has no such link.
    #[error("this car's drive has no {}; twin cranks have a drag link and a cross link", link.label())]
    NoSuchLink {
        /// The link.
        link: Member,
    },
    /// The number is not one of a single wheel.
    #[error("the {} belongs to the whole car", scalar.label())]
    NotOfOneWheel {
        /// The number.
        scalar: Scalar,
    },
    /// The value is kept in another form.
    #[error("the spin axis is given by the camber; set that")]
    SpinAxisIsCamber,
    /// The front-axle station is the origin of a car's points.
    #[error(
        "the front-axle station is where the car's points are measured from and only an adjustment moves it"
    )]
    StationIsOrigin,
    /// Another servo cannot be fitted.
    #[error(transparent)]
    Servo(#[from] ServoError),
}

impl CarEdit {
    /// What is done, as a menu shows it after "Undo", such as "move outer tie-rod ball".
    #[must_use]
    pub fn label(&self) -> String {
        match self {
            Self::Name(_) => "rename car".to_owned(),
            Self::Notes(_) => "edit car notes".to_owned(),
            Self::Point { point, .. } if point.is_direction() => format!("turn {}", point.label()),
            Self::Point { point, .. } => format!("move {}", point.label()),
            Self::Number { scalar, .. } => format!("set {}", scalar.label()),
            Self::WheelNumber { scalar, side, .. } => format!("set {} {}", side, scalar.label()),
            Self::Kinds { suspension, drive } => {
                format!("make it {} and {}", suspension.label(), drive.label())
            }
            Self::DrivenCrank(_) => "drive the other crank".to_owned(),
            Self::InnerBallsOn(_) => "change what carries the inner balls".to_owned(),
            Self::LinkLength { link, .. } => format!("set length of {}", link.label()),
            Self::SlideLine { own: true } => "give struts a slide line of their own".to_owned(),
            Self::SlideLine { own: false } => "let struts slide along the steering axis".to_owned(),
            Self::Ranges(_) => "set ranges".to_owned(),
            Self::TieRod(_) => "edit tie rods".to_owned(),
            Self::Joints(_) => "edit ball joints".to_owned(),
            Self::Servo(_) => "edit servo".to_owned(),
            Self::FitServo(_) => "fit another servo".to_owned(),
            Self::Saver(_) => "edit servo saver".to_owned(),
            Self::Loads(_) => "edit wheel loads".to_owned(),
            Self::Clearances(_) => "edit clearances".to_owned(),
            Self::Obstacles(_) => "edit obstacles".to_owned(),
            Self::BuildErrors(_) => "edit build errors".to_owned(),
            Self::Stock(_) => "edit spacers at hand".to_owned(),
            Self::AddAdjustment { adjustment, .. } => format!("add {}", adjustment.name),
            Self::RenameStock { name, .. } | Self::RenameAdjustment { name, .. } => {
                format!("rename to {name}")
            }
            Self::ReplaceAdjustment { adjustment, .. } => format!("edit {}", adjustment.name),
            Self::MoveAdjustment { .. } => "reorder adjustments".to_owned(),
            Self::RemoveAdjustment { .. } => "remove adjustment".to_owned(),
            Self::SeparateSides => "give both sides separately".to_owned(),
            Self::MirrorSides => "mirror the left side".to_owned(),
        }
    }
}

impl Setup {
    /// The setup with its car edited; this one stays as it is.
    ///
    /// # Errors
    /// Where the edit names what is not there, or its result would not pass [`check`].
    pub fn edited(&self, edit: &CarEdit) -> Result<Self, EditError> {
        let mut setup = self.clone();
        let car = &mut setup.car;
        match edit.clone() {
            CarEdit::Name(name) => car.name = name,
            CarEdit::Notes(notes) => car.notes = notes,
            CarEdit::Point { point, side, to } => points::set(car, point, side, to)?,
            CarEdit::Number { scalar, to } => points::set_number(car, scalar, to)?,
            CarEdit::WheelNumber { scalar, side, to } => {
                points::set_wheel_number(car, scalar, side, to)?;
            }
            CarEdit::Kinds { suspension, drive } => {
                setup = self.with_kinds(suspension, drive)?.setup;
            }
            CarEdit::DrivenCrank(driven) => links::drive_crank(car, driven)?,
            CarEdit::InnerBallsOn(on) => links::carry_inner(car, on)?,
            CarEdit::LinkLength { link, to } => links::set_length(car, link, to)?,
            CarEdit::SlideLine { own } => kinds::set_slide_lines(car, own),
            CarEdit::Ranges(ranges) => car.ranges = ranges,
            CarEdit::TieRod(tie_rod) => car.tie_rod = tie_rod,
            CarEdit::Joints(joints) => car.joints = joints,
            CarEdit::Servo(servo) => car.servo = servo,
            CarEdit::FitServo(part) => *car = car.with_servo(&part)?.0,
            CarEdit::Saver(saver) => car.saver = saver,
            CarEdit::Loads(loads) => car.loads = loads,
            CarEdit::Clearances(clearances) => car.clearances = clearances,
            CarEdit::Obstacles(obstacles) => car.obstacles = obstacles,
            CarEdit::BuildErrors(errors) => car.build_errors = errors,
            CarEdit::Stock(stock) => car.stock = stock,
            CarEdit::RenameStock { index, name } => adjustments::rename_stock(car, index, &name)?,
            CarEdit::AddAdjustment { at, adjustment } => adjustments::add(car, at, adjustment),
            CarEdit::RenameAdjustment { index, name } => {
                adjustments::rename(&mut setup, index, name)?;
            }
            CarEdit::ReplaceAdjustment { index, adjustment } => {
                adjustments::replace(&mut setup, index, adjustment)?;
            }
            CarEdit::MoveAdjustment { from, to } => adjustments::reorder(car, from, to)?,
            CarEdit::RemoveAdjustment { index } => adjustments::remove(&mut setup, index)?,
            CarEdit::SeparateSides => sides::separate(car),
            CarEdit::MirrorSides => sides::mirror(car),
        }
        check(&setup)?;
        Ok(setup)
    }
}
