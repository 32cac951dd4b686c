//! A new car of each kind to measure and correct: plausible points of a small car, nothing to adjust yet.

use std::collections::BTreeMap;

use crate::car::{
    BuildErrors, Car, CornerPoints, Crank, Drive, DrivenCrank, InnerBallsOn, Position, Ranges,
    RightCorner, Suspension, TieRodParts,
};
use crate::setup::{Record, Rods, Setup};

/// A kind of suspension.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SuspensionKind {
    /// The knuckle turns about an axis fixed in the chassis; no travel.
    FixedKingpin,
    /// The knuckle turns about an axis fixed in the chassis and slides along it.
    SlidingKingpin,
    /// The kingpin slides through a ball in the chassis; an arm carries its upper ball.
    SwingingUpperArm,
    /// Two arms carry the kingpin's balls.
    DoubleWishbone,
    /// A lower arm and a strut that slides through a top mount.
    Strut,
}

/// A kind of steering drive.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DriveKind {
    /// One arm carries both inner balls.
    SwingArm,
    /// Two cranks, a cross link and a drag link.
    TwinCrank,
    /// A rack.
    Slider,
}

impl SuspensionKind {
    /// Every kind.
    pub const ALL: [Self; 5] = [
        Self::FixedKingpin,
        Self::SlidingKingpin,
        Self::SwingingUpperArm,
        Self::DoubleWishbone,
        Self::Strut,
    ];

    /// In plain words.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::FixedKingpin => "fixed kingpin",
            Self::SlidingKingpin => "sliding kingpin",
            Self::SwingingUpperArm => "swinging upper arm",
            Self::DoubleWishbone => "double wishbone",
            Self::Strut => "strut",
        }
    }

    /// That of a suspension.
    #[must_use]
    pub const fn of(suspension: &Suspension) -> Self {
        match suspension {
            Suspension::FixedKingpin => Self::FixedKingpin,
            Suspension::SlidingKingpin => Self::SlidingKingpin,
            Suspension::SwingingUpperArm { .. } => Self::SwingingUpperArm,
            Suspension::DoubleWishbone { .. } => Self::DoubleWishbone,
            Suspension::Strut { .. } => Self::Strut,
        }
    }

    /// Points of the size of a 1:10 car.
    fn suspension(self) -> Suspension {
        let lower_hinge_front = Position(22.0, 24.0, 11.0);
        let lower_hinge_rear = Position(-22.0, 24.0, 11.0);
        let upper_hinge_front = Position(12.0, 34.0, 37.5);
        let upper_hinge_rear = Position(-12.0, 34.0, 37.5);
        match self {
            Self::FixedKingpin => Suspension::FixedKingpin,
            Self::SlidingKingpin => Suspension::SlidingKingpin,
            Self::SwingingUpperArm => Suspension::SwingingUpperArm {
                upper_hinge_front,
                upper_hinge_rear,
            },
            Self::DoubleWishbone => Suspension::DoubleWishbone {
                lower_hinge_front,
                lower_hinge_rear,
                upper_hinge_front,
                upper_hinge_rear,
            },
            Self::Strut => Suspension::Strut {
                lower_hinge_front,
                lower_hinge_rear,
                slide_direction: None,
            },
        }
    }
}

impl DriveKind {
    /// Every kind.
    pub const ALL: [Self; 3] = [Self::SwingArm, Self::TwinCrank, Self::Slider];

    /// In plain words.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::SwingArm => "swing arm",
            Self::TwinCrank => "twin crank",
            Self::Slider => "rack",
        }
    }

    /// That of a drive.
    #[must_use]
    pub const fn of(drive: &Drive) -> Self {
        match drive {
            Drive::SwingArm { .. } => Self::SwingArm,
            Drive::TwinCrank { .. } => Self::TwinCrank,
            Drive::Slider { .. } => Self::Slider,
        }
    }

    fn drive(self) -> Drive {
        let upright = |y: f64| Crank {
            axis_point: Position(-27.0, y, 14.0),
            axis_direction: Position(0.0, 0.0, 1.0),
        };
        match self {
            Self::SwingArm => Drive::SwingArm {
                axis_point: Position(-18.0, 0.0, 7.5),
                axis_direction: Position(1.0, 0.0, 0.0),
                rod_inner_left: Position(-13.0, 10.0, 22.0),
                rod_inner_right: Position(-13.0, -10.0, 22.0),
            },
            Self::TwinCrank => Drive::TwinCrank {
                crank_left: upright(27.0),
                crank_right: upright(-27.0),
                cross_left: Position(-15.0, 27.0, 14.5),
                cross_right: Position(-15.0, -27.0, 14.5),
                rod_inner_left: Position(-13.0, 26.5, 20.0),
                rod_inner_right: Position(-13.0, -26.5, 20.0),
                inner_on: InnerBallsOn::Cranks,
                servo_arm: Crank {
                    axis_point: Position(-39.0, -24.0, 12.5),
                    axis_direction: Position(-1.0, 0.0, 0.0),
                },
                drag_servo: Position(-39.0, -24.0, 24.5),
                drag_crank: Position(-39.0, 27.0, 22.0),
                driven: DrivenCrank::Left,
                drag_length: None,
                cross_length: None,
            },
            Self::Slider => Drive::Slider {
                direction: Position(0.0, -1.0, 0.0),
                rod_inner_left: Position(-13.0, 24.0, 20.0),
                rod_inner_right: Position(-13.0, -24.0, 20.0),
            },
        }
    }

    /// Range of the input and length of the rods that go with it.
    const fn input_and_rods(self) -> ((f64, f64), (f64, f64)) {
        match self {
            Self::SwingArm => ((-20.0, 20.0), (40.0, 75.0)),
            Self::TwinCrank => ((-22.0, 22.0), (30.0, 60.0)),
            Self::Slider => ((-6.0, 6.0), (30.0, 60.0)),
        }
    }
}

/// A car of the given kinds with plausible points of the size of a 1:10 car, to be measured and corrected. It can be
/// assembled and steered as it is, and has no adjustments.
#[must_use]
pub fn new_car(suspension: SuspensionKind, drive: DriveKind) -> Setup {
    let (input, (shortest, longest)) = drive.input_and_rods();
    let travel = match suspension {
        SuspensionKind::FixedKingpin => (0.0, 0.0),
        _ => (-2.0, 3.0),
    };
    let kingpin_upper = match suspension {
        SuspensionKind::Strut => Position(-4.0, 64.0, 72.0),
        _ => Position(-1.0, 70.0, 40.0),
    };
    Setup {
        car: Car {
            name: format!("New car, {} and {}", suspension.label(), drive.label()),
            notes: "Every point is a guess to start from: measure your car and set them."
                .to_owned(),
            left: CornerPoints {
                wheel_centre: Position(0.0, 81.0, 26.0),
                camber: -1.0,
                kingpin_lower: Position(1.0, 73.0, 12.0),
                kingpin_upper,
                steering_arm: Position(-14.0, 68.0, 21.0),
                tyre_radius: 31.5,
                tyre_width: 25.0,
                suspension: suspension.suspension(),
            },
            right: RightCorner::Mirrored,
            drive: drive.drive(),
            servo: None,
            saver: None,
            wheelbase: 257.0,
            ride_height: 5.5,
            pitch: 0.0,
            roll: 0.0,
            ranges: Ranges { input, travel },
            tie_rod: TieRodParts {
                cup_length: 8.0,
                shortest,
                longest,
                thread: None,
            },
            joints: None,
            loads: None,
            clearances: None,
            obstacles: Vec::new(),
            build_errors: BuildErrors::default(),
            stock: Vec::new(),
            adjustments: Vec::new(),
        },
        chosen: BTreeMap::new(),
        rods: Rods::HoldToe(0.0),
        record: Record {
            name: "First measurement".to_owned(),
            ..Record::default()
        },
    }
}
