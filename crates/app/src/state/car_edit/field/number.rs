//! The numbers of a car that are no coordinates.

use steerloft_setup::adjustment::{Member, Scalar};
use steerloft_setup::car::{
    BallJoints, Car, Clearances, CornerPoints, Ranges, RightCorner, Rim, Thread, TieRodParts,
};
use steerloft_setup::edit::CarEdit;
use steerloft_solver::frame::Side;

use super::super::super::{InputUnit, Part};

/// A number of the car other than a coordinate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum NumberField {
    /// One that an adjustment can change too.
    Scalar(Scalar),
    /// Camber or a size of one wheel, where each has its own.
    OfWheel(Scalar, Side),
    /// Least steering input.
    LeastInput,
    /// Greatest steering input.
    GreatestInput,
    /// Full droop.
    Droop,
    /// Full bump.
    Bump,
    /// Length of the drag or cross link.
    Link(Member),
    /// Length of a rod's cup.
    Cup,
    /// Shortest rod.
    ShortestRod,
    /// Longest rod.
    LongestRod,
    /// Pitch of the rods' thread.
    ThreadPitch,
    /// Length of the threaded rod.
    ThreadedRod,
    /// Length of the thread at each end.
    ThreadLength,
    /// Least thread in a cup.
    LeastEngagement,
    /// Greatest swing of a ball joint.
    JointLimit,
    /// Radius of the wheel's bore.
    BoreRadius,
    /// How far the bore reaches inboard.
    BoreInboard,
    /// Where the wheel's disc lies.
    Disc,
    /// Diameter of the tie rod.
    RodDiameter,
    /// Diameter of the knuckle.
    KnuckleDiameter,
}

/// Numbers that are listed below one heading.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Group {
    /// The heading.
    pub heading: &'static str,
    /// What they belong to, if a car may leave that out.
    pub part: Option<Part>,
    /// The numbers, in order.
    pub numbers: Vec<NumberField>,
}

impl Group {
    fn new(heading: &'static str, numbers: &[NumberField]) -> Self {
        Self {
            heading,
            part: None,
            numbers: numbers.to_vec(),
        }
    }

    fn of_part(part: Part, heading: &'static str, numbers: &[NumberField]) -> Self {
        Self {
            part: Some(part),
            ..Self::new(heading, numbers)
        }
    }
}

/// What every car has, as listed.
#[must_use]
pub fn groups(car: &Car) -> Vec<Group> {
    let sizes = [Scalar::TyreRadius, Scalar::TyreWidth, Scalar::Camber];
    let wheels: Vec<NumberField> = match car.right {
        RightCorner::Mirrored => sizes.map(NumberField::Scalar).to_vec(),
        RightCorner::Given(_) => sizes
            .into_iter()
            .flat_map(|scalar| Side::BOTH.map(|side| NumberField::OfWheel(scalar, side)))
            .collect(),
    };
    vec![
        Group::new(
            "Chassis",
            &[
                Scalar::Wheelbase,
                Scalar::RideHeight,
                Scalar::Pitch,
                Scalar::Roll,
            ]
            .map(NumberField::Scalar),
        ),
        Group::new("Wheels", &wheels),
        Group::new(
            "How far things move",
            &[
                NumberField::LeastInput,
                NumberField::GreatestInput,
                NumberField::Droop,
                NumberField::Bump,
            ],
        ),
        Group::new(
            "Tie rods",
            &[
                NumberField::Cup,
                NumberField::ShortestRod,
                NumberField::LongestRod,
            ],
        ),
    ]
}

/// What a car may have or leave out, as listed.
#[must_use]
pub fn further_groups() -> Vec<Group> {
    vec![
        Group::of_part(
            Part::Thread,
            "Thread of the tie rods",
            &[
                NumberField::ThreadPitch,
                NumberField::ThreadedRod,
                NumberField::ThreadLength,
                NumberField::LeastEngagement,
            ],
        ),
        Group::of_part(Part::Joints, "Ball joints", &[NumberField::JointLimit]),
        Group::of_part(
            Part::Rim,
            "Inside of the wheel",
            &[
                NumberField::BoreRadius,
                NumberField::BoreInboard,
                NumberField::Disc,
            ],
        ),
        Group::of_part(
            Part::Diameters,
            "Rod and knuckle",
            &[NumberField::RodDiameter, NumberField::KnuckleDiameter],
        ),
    ]
}

impl NumberField {
    /// The links of twin cranks.
    pub const LINKS: [Self; 2] = [Self::Link(Member::DragLink), Self::Link(Member::CrossLink)];

    /// Its name.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Scalar(Scalar::Wheelbase) => "Wheelbase",
            Self::Scalar(Scalar::FrontStation) => "Front-axle station",
            Self::Scalar(Scalar::RideHeight) => "Ride height",
            Self::Scalar(Scalar::TyreRadius) => "Tyre radius",
            Self::Scalar(Scalar::TyreWidth) => "Tyre width",
            Self::Scalar(Scalar::Camber) => "Camber",
            Self::Scalar(Scalar::Pitch) => "Chassis pitch",
            Self::Scalar(Scalar::Roll) => "Chassis roll",
            Self::OfWheel(Scalar::TyreRadius, Side::Left) => "Tyre radius, left",
            Self::OfWheel(Scalar::TyreRadius, Side::Right) => "Tyre radius, right",
            Self::OfWheel(Scalar::TyreWidth, Side::Left) => "Tyre width, left",
            Self::OfWheel(Scalar::TyreWidth, Side::Right) => "Tyre width, right",
            Self::OfWheel(_, Side::Left) => "Camber, left",
            Self::OfWheel(_, Side::Right) => "Camber, right",
            Self::LeastInput => "Least steering input",
            Self::GreatestInput => "Greatest steering input",
            Self::Droop => "Full droop",
            Self::Bump => "Full bump",
            Self::Link(Member::CrossLink) => "Cross-link length",
            Self::Link(_) => "Drag-link length",
            Self::Cup => "Cup length",
            Self::ShortestRod => "Shortest rod",
            Self::LongestRod => "Longest rod",
            Self::ThreadPitch => "Thread pitch",
            Self::ThreadedRod => "Threaded rod",
            Self::ThreadLength => "Thread at each end",
            Self::LeastEngagement => "Least thread in a cup",
            Self::JointLimit => "Ball joint limit",
            Self::BoreRadius => "Bore radius",
            Self::BoreInboard => "Bore reaches inboard",
            Self::Disc => "Disc lies inboard",
            Self::RodDiameter => "Rod diameter",
            Self::KnuckleDiameter => "Knuckle diameter",
        }
    }

    /// From where to where it is measured, or what it means and which way is more.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Scalar(Scalar::Wheelbase) => {
                "From the design front-axle station back to the rear axle."
            }
            Self::Scalar(Scalar::FrontStation) => {
                "Where the front-axle station lies ahead of the origin."
            }
            Self::Scalar(Scalar::RideHeight) => {
                "From the road up to the underside of the chassis plate at the front axle, ready to run."
            }
            Self::Scalar(Scalar::TyreRadius) | Self::OfWheel(Scalar::TyreRadius, _) => {
                "From the road up to the wheel centre, with the tyre loaded."
            }
            Self::Scalar(Scalar::TyreWidth) | Self::OfWheel(Scalar::TyreWidth, _) => {
                "Across the tread."
            }
            Self::Scalar(Scalar::Camber) | Self::OfWheel(..) => {
                "Lean of the wheel against the chassis, steering straight; positive with the top outboard."
            }
            Self::Scalar(Scalar::Pitch) => {
                "Tilt of the chassis against the road; nose down positive."
            }
            Self::Scalar(Scalar::Roll) => {
                "Tilt of the chassis against the road; right side down positive."
            }
            Self::LeastInput => "Where the steering input ends in the negative direction.",
            Self::GreatestInput => "Where the steering input ends in the positive direction.",
            Self::Droop => {
                "Wheel travel down to where the suspension hangs, negative; 0 without travel."
            }
            Self::Bump => "Wheel travel up to where it strikes, positive; 0 without travel.",
            Self::Link(_) => {
                "Ball centre to ball centre. As drawn, it is as long as its points are apart; a length of its own turns the cranks at rest."
            }
            Self::Cup => "From a ball's centre to the open end of its cup.",
            Self::ShortestRod => {
                "Shortest tie rod, ball centre to ball centre, that the parts can be screwed to."
            }
            Self::LongestRod => "Longest tie rod that the thread still holds.",
            Self::ThreadPitch => "Length of one turn of the thread.",
            Self::ThreadedRod => "Length of the whole threaded rod between the cups.",
            Self::ThreadLength => "Length of the thread at each end: a cup goes on no farther.",
            Self::LeastEngagement => "Least length of thread that must sit in a cup.",
            Self::JointLimit => "Greatest angle of a rod from the plane square to a ball's stud.",
            Self::BoreRadius => {
                "Radius of the inside of the wheel, round which the rod's end swings."
            }
            Self::BoreInboard => "How far that inside reaches inboard of the wheel centre.",
            Self::Disc => {
                "How far the inner face of the wheel's disc lies inboard of the wheel centre; outboard of it negative."
            }
            Self::RodDiameter => "Greatest diameter of the tie rod with its cups.",
            Self::KnuckleDiameter => {
                "Diameter of the round body that the knuckle is taken for, along the steering axis and its arm."
            }
        }
    }

    /// Whether it is an angle, whatever the car: the steering input is one or a length.
    #[must_use]
    pub const fn is_angle(self) -> bool {
        matches!(
            self,
            Self::Scalar(Scalar::Camber | Scalar::Pitch | Scalar::Roll)
                | Self::OfWheel(Scalar::Camber, _)
                | Self::JointLimit
        )
    }

    pub(super) fn unit(self, car: &Car) -> &'static str {
        match self {
            _ if self.is_angle() => "\u{b0}",
            Self::LeastInput | Self::GreatestInput => InputUnit::of(car).sign(),
            _ => "mm",
        }
    }

    pub(super) fn value(self, car: &Car) -> Option<f64> {
        let rim = || car.clearances?.rim;
        Some(match self {
            Self::Scalar(scalar) => of_car(car, scalar),
            Self::OfWheel(scalar, side) => of_corner(corner(car, side), scalar)?,
            Self::LeastInput => car.ranges.input.0,
            Self::GreatestInput => car.ranges.input.1,
            Self::Droop => car.ranges.travel.0,
            Self::Bump => car.ranges.travel.1,
            Self::Link(link) => car.link_length(link)?,
            Self::Cup => car.tie_rod.cup_length,
            Self::ShortestRod => car.tie_rod.shortest,
            Self::LongestRod => car.tie_rod.longest,
            Self::ThreadPitch => car.tie_rod.thread?.pitch,
            Self::ThreadedRod => car.tie_rod.thread?.rod_length,
            Self::ThreadLength => car.tie_rod.thread?.thread_length,
            Self::LeastEngagement => car.tie_rod.thread?.least_engagement,
            Self::JointLimit => car.joints?.most,
            Self::BoreRadius => rim()?.inner_radius,
            Self::BoreInboard => rim()?.inboard,
            Self::Disc => rim()?.disc,
            Self::RodDiameter => car.clearances?.rod_diameter?,
            Self::KnuckleDiameter => car.clearances?.knuckle_diameter?,
        })
    }

    pub(super) fn edit(self, car: &Car, value: f64) -> Option<CarEdit> {
        let Ranges { input, travel } = car.ranges;
        let ranges = |input, travel| CarEdit::Ranges(Ranges { input, travel });
        Some(match self {
            Self::Scalar(scalar) => CarEdit::Number { scalar, to: value },
            Self::OfWheel(scalar, side) => CarEdit::WheelNumber {
                scalar,
                side,
                to: value,
            },
            Self::LeastInput => ranges((value, input.1), travel),
            Self::GreatestInput => ranges((input.0, value), travel),
            Self::Droop => ranges(input, (value, travel.1)),
            Self::Bump => ranges(input, (travel.0, value)),
            Self::Link(link) => CarEdit::LinkLength {
                link,
                to: Some(value),
            },
            Self::Cup => rods(car, |parts| parts.cup_length = value),
            Self::ShortestRod => rods(car, |parts| parts.shortest = value),
            Self::LongestRod => rods(car, |parts| parts.longest = value),
            Self::ThreadPitch => thread(car, |thread| thread.pitch = value)?,
            Self::ThreadedRod => thread(car, |thread| thread.rod_length = value)?,
            Self::ThreadLength => thread(car, |thread| thread.thread_length = value)?,
            Self::LeastEngagement => thread(car, |thread| thread.least_engagement = value)?,
            Self::JointLimit => CarEdit::Joints(Some(BallJoints {
                most: value,
                ..car.joints?
            })),
            Self::BoreRadius => rim(car, |rim| rim.inner_radius = value)?,
            Self::BoreInboard => rim(car, |rim| rim.inboard = value)?,
            Self::Disc => rim(car, |rim| rim.disc = value)?,
            Self::RodDiameter => CarEdit::Clearances(Some(Clearances {
                rod_diameter: Some(value),
                ..car.clearances?
            })),
            Self::KnuckleDiameter => CarEdit::Clearances(Some(Clearances {
                knuckle_diameter: Some(value),
                ..car.clearances?
            })),
        })
    }
}

fn of_car(car: &Car, scalar: Scalar) -> f64 {
    match scalar {
        Scalar::Wheelbase => car.wheelbase,
        Scalar::FrontStation => 0.0,
        Scalar::RideHeight => car.ride_height,
        Scalar::Pitch => car.pitch,
        Scalar::Roll => car.roll,
        Scalar::TyreRadius => car.left.tyre_radius,
        Scalar::TyreWidth => car.left.tyre_width,
        Scalar::Camber => car.left.camber,
    }
}

fn corner(car: &Car, side: Side) -> &CornerPoints {
    match (&car.right, side) {
        (RightCorner::Given(right), Side::Right) => right,
        _ => &car.left,
    }
}

fn of_corner(corner: &CornerPoints, scalar: Scalar) -> Option<f64> {
    match scalar {
        Scalar::TyreRadius => Some(corner.tyre_radius),
        Scalar::TyreWidth => Some(corner.tyre_width),
        Scalar::Camber => Some(corner.camber),
        _ => None,
    }
}

fn rods(car: &Car, change: impl FnOnce(&mut TieRodParts)) -> CarEdit {
    let mut parts = car.tie_rod;
    change(&mut parts);
    CarEdit::TieRod(parts)
}

fn thread(car: &Car, change: impl FnOnce(&mut Thread)) -> Option<CarEdit> {
    let mut thread = car.tie_rod.thread?;
    change(&mut thread);
    Some(rods(car, |parts| parts.thread = Some(thread)))
}

fn rim(car: &Car, change: impl FnOnce(&mut Rim)) -> Option<CarEdit> {
    let mut clearances = car.clearances?;
    change(clearances.rim.as_mut()?);
    Some(CarEdit::Clearances(Some(clearances)))
}
