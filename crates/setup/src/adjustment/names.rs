//! The names by which effects refer to the car: points, members, numbers.

use serde::{Deserialize, Serialize};

/// A named point or direction of the car.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PointName {
    /// Centre of the wheel plane on the spin axis.
    WheelCentre,
    /// Direction of the spin axis; can be turned, not moved.
    SpinAxis,
    /// Lower point of the steering axis.
    KingpinLower,
    /// Upper point of the steering axis.
    KingpinUpper,
    /// Outer tie-rod ball.
    SteeringArm,
    /// Inner tie-rod ball.
    RodInner,
    /// A point of the axis of the swing arm or servo arm; the servo's case goes with it.
    DriveAxis,
    /// Direction of that axis, or of the rack; can be turned, not moved.
    DriveDirection,
    /// Front point of the upper arm's hinge.
    UpperHingeFront,
    /// Rear point of the upper arm's hinge.
    UpperHingeRear,
    /// Front point of the lower arm's hinge.
    LowerHingeFront,
    /// Rear point of the lower arm's hinge.
    LowerHingeRear,
    /// Direction of a strut's own slide line; can be turned, not moved.
    SlideDirection,
    /// A point of the crank's axis.
    CrankAxis,
    /// Direction of the crank's axis; can be turned, not moved.
    CrankDirection,
    /// The cross link's ball on the crank.
    CrossBall,
    /// The drag link's ball on the servo arm.
    DragServo,
    /// The drag link's ball on the driven crank.
    DragCrank,
}

/// A member whose length can be set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Member {
    /// The upper arm, hinge axis to ball.
    UpperArm,
    /// The lower arm, hinge axis to ball.
    LowerArm,
    /// The drag link, servo arm to driven crank.
    DragLink,
    /// The cross link, crank to crank.
    CrossLink,
}

/// A number of the car that is not a point.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Scalar {
    /// Front-axle station to rear axle, mm.
    Wheelbase,
    /// Where the front-axle station lies, mm ahead of the origin: a front axle moved against the chassis takes its
    /// points, this and the wheelbase along, so that the rear axle stays where it is.
    FrontStation,
    /// Chassis underside over the road, mm.
    RideHeight,
    /// Loaded tyre radius, both sides, mm.
    TyreRadius,
    /// Tread width, both sides, mm.
    TyreWidth,
    /// Camber of both wheels against the chassis, degrees.
    Camber,
    /// Chassis pitch against the road, degrees.
    Pitch,
    /// Chassis roll against the road, degrees.
    Roll,
}

impl PointName {
    /// Every name, in the order of the definition.
    pub const ALL: [Self; 18] = [
        Self::WheelCentre,
        Self::SpinAxis,
        Self::KingpinLower,
        Self::KingpinUpper,
        Self::SteeringArm,
        Self::RodInner,
        Self::DriveAxis,
        Self::DriveDirection,
        Self::UpperHingeFront,
        Self::UpperHingeRear,
        Self::LowerHingeFront,
        Self::LowerHingeRear,
        Self::SlideDirection,
        Self::CrankAxis,
        Self::CrankDirection,
        Self::CrossBall,
        Self::DragServo,
        Self::DragCrank,
    ];

    /// Whether this names a direction, which has no place.
    #[must_use]
    pub const fn is_direction(self) -> bool {
        matches!(
            self,
            Self::SpinAxis | Self::DriveDirection | Self::SlideDirection | Self::CrankDirection
        )
    }

    /// Whether both sides share it; it then counts as the left side's.
    #[must_use]
    pub const fn is_shared(self) -> bool {
        matches!(
            self,
            Self::DriveAxis | Self::DriveDirection | Self::DragServo | Self::DragCrank
        )
    }

    /// Whether it belongs to a corner, which the other side may mirror, and not to the steering drive.
    #[must_use]
    pub const fn is_of_corner(self) -> bool {
        match self {
            Self::WheelCentre
            | Self::SpinAxis
            | Self::KingpinLower
            | Self::KingpinUpper
            | Self::SteeringArm
            | Self::UpperHingeFront
            | Self::UpperHingeRear
            | Self::LowerHingeFront
            | Self::LowerHingeRear
            | Self::SlideDirection => true,
            Self::RodInner
            | Self::DriveAxis
            | Self::DriveDirection
            | Self::CrankAxis
            | Self::CrankDirection
            | Self::CrossBall
            | Self::DragServo
            | Self::DragCrank => false,
        }
    }

    /// The name in plain words, such as "outer tie-rod ball".
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::WheelCentre => "wheel centre",
            Self::SpinAxis => "spin axis",
            Self::KingpinLower => "lower kingpin point",
            Self::KingpinUpper => "upper kingpin point",
            Self::SteeringArm => "outer tie-rod ball",
            Self::RodInner => "inner tie-rod ball",
            Self::DriveAxis => "steering drive axis",
            Self::DriveDirection => "direction of the steering drive axis",
            Self::UpperHingeFront => "front hinge point of the upper arm",
            Self::UpperHingeRear => "rear hinge point of the upper arm",
            Self::LowerHingeFront => "front hinge point of the lower arm",
            Self::LowerHingeRear => "rear hinge point of the lower arm",
            Self::SlideDirection => "direction of the strut's slide line",
            Self::CrankAxis => "crank axis",
            Self::CrankDirection => "direction of the crank axis",
            Self::CrossBall => "cross-link ball",
            Self::DragServo => "drag-link ball on the servo arm",
            Self::DragCrank => "drag-link ball on the crank",
        }
    }
}

impl Scalar {
    /// The name in plain words, such as "ride height".
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Wheelbase => "wheelbase",
            Self::FrontStation => "front-axle station",
            Self::RideHeight => "ride height",
            Self::TyreRadius => "tyre radius",
            Self::TyreWidth => "tyre width",
            Self::Camber => "camber",
            Self::Pitch => "pitch",
            Self::Roll => "roll",
        }
    }
}

impl Member {
    /// Whether both sides share it.
    #[must_use]
    pub const fn is_shared(self) -> bool {
        matches!(self, Self::DragLink | Self::CrossLink)
    }

    /// The name in plain words, such as "upper arm".
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::UpperArm => "upper arm",
            Self::LowerArm => "lower arm",
            Self::DragLink => "drag link",
            Self::CrossLink => "cross link",
        }
    }
}
