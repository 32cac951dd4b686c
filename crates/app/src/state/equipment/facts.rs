//! What each number of the equipment is called and means, and how it is shown.

use std::ops::RangeInclusive;

use super::{BodySize, Equipment};

impl Equipment {
    /// Its name, which tells it from every other.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Body(BodySize::Length) => "Body length",
            Self::Body(BodySize::Width) => "Body width",
            Self::Body(BodySize::Height) => "Body height",
            Self::Body(BodySize::AxisFromEnd) => "Axis from end",
            Self::Body(BodySize::LugHeight) => "Lug height",
            Self::Body(BodySize::ArmOverCase) => "Arm over case",
            Self::Case(0) => "Case middle x",
            Self::Case(1) => "Case middle y",
            Self::Case(_) => "Case middle z",
            Self::Teeth => "Spline teeth",
            Self::Tooth => "Tooth",
            Self::StandsAt => "Stands at on tooth 0",
            Self::Trim => "Servo trim",
            Self::Speed => "Time for 60\u{b0}",
            Self::Torque => "Torque",
            Self::Voltage => "Voltage",
            Self::Throw => "Throw each way",
            Self::PulseCentre => "Centre pulse",
            Self::PulseSide => "Pulse each way",
            Self::Breakaway => "Saver breakaway",
            Self::SaverRate => "Saver rate",
            Self::FrontAxle => "Front axle load",
            Self::Friction => "Friction",
            Self::JointLimit => "Ball joint limit",
            Self::RodDiameter => "Rod diameter",
            Self::KnuckleDiameter => "Knuckle diameter",
        }
    }

    /// From where to where it is measured, or what it means.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Body(BodySize::Length | BodySize::Width | BodySize::Height) => {
                "Of the case without its lugs, as it lies on the bench; height along the arm's axis. The mounts stay, and the arm moves to where such a servo has it."
            }
            Self::Body(BodySize::AxisFromEnd) => {
                "From the nearer end of the case's length to the arm's axis. The arm moves with it."
            }
            Self::Body(BodySize::LugHeight) => {
                "From the case's bottom, the end away from the arm, to the seat of the lugs. The seat stays, and the arm moves."
            }
            Self::Body(BodySize::ArmOverCase) => {
                "From the case's top to the middle plane of the arm. The arm moves with it."
            }
            Self::Case(_) => {
                "Middle of the case in the car, with every adjustment at its base. The arm stays."
            }
            Self::Teeth => "Teeth of the output spline; 23, 24 and 25 are in common use.",
            Self::Tooth => {
                "Which tooth the arm sits on, counted right-handed about the arm's axis."
            }
            Self::StandsAt => {
                "Steering input at which the arm stands on tooth 0, at the centre pulse without trim: read on the car."
            }
            Self::Trim => "Trim at the transmitter, degrees of the arm.",
            Self::Speed => "Seconds for 60 degrees without load, at the voltage.",
            Self::Torque => "At the voltage.",
            Self::Voltage => "Volts at which speed and torque are stated.",
            Self::Throw => "From the centre pulse to either end.",
            Self::PulseCentre => "Pulse at the centre.",
            Self::PulseSide => "How much longer or shorter the pulse gets for the full throw.",
            Self::Breakaway => "Moment at the arm at which the saver begins to open.",
            Self::SaverRate => "Further moment for each degree that it opens.",
            Self::FrontAxle => "Weight on both front wheels together.",
            Self::Friction => "Coefficient of friction between tyre and road.",
            Self::JointLimit => "Greatest angle of a rod from the plane square to a ball's stud.",
            Self::RodDiameter => "Greatest diameter of the tie rod with its cups.",
            Self::KnuckleDiameter => {
                "Diameter of the round body that the knuckle is taken for, along the steering axis and its arm."
            }
        }
    }

    /// The unit in which it is held.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Body(_) | Self::Case(_) | Self::RodDiameter | Self::KnuckleDiameter => "mm",
            Self::StandsAt | Self::Trim | Self::Throw | Self::JointLimit => "\u{b0}",
            Self::Speed => "s",
            Self::Torque | Self::Breakaway => "N mm",
            Self::SaverRate => "N mm/\u{b0}",
            Self::Voltage => "V",
            Self::PulseCentre | Self::PulseSide => "\u{b5}s",
            Self::FrontAxle => "N",
            Self::Teeth | Self::Tooth | Self::Friction => "",
        }
    }

    /// Least and greatest value that a field takes; the car's own checks are stricter where numbers hang together.
    #[must_use]
    pub const fn range(self) -> RangeInclusive<f64> {
        match self {
            Self::Body(BodySize::Length | BodySize::Width | BodySize::Height) => 1.0..=1000.0,
            Self::Body(BodySize::AxisFromEnd | BodySize::LugHeight) => 0.0..=1000.0,
            Self::Body(BodySize::ArmOverCase) => -100.0..=1000.0,
            Self::Case(_) => -5000.0..=5000.0,
            Self::Teeth => 10.0..=60.0,
            Self::Tooth => -60.0..=60.0,
            Self::StandsAt | Self::Trim => -90.0..=90.0,
            Self::Speed => 0.001..=100.0,
            Self::Torque => 0.1..=1.0e6,
            Self::Voltage => 0.1..=1000.0,
            Self::Throw => 1.0..=180.0,
            Self::PulseCentre | Self::PulseSide => 1.0..=5000.0,
            Self::Breakaway => 0.0..=1.0e6,
            Self::SaverRate => 0.001..=1.0e6,
            Self::FrontAxle => 0.1..=1.0e5,
            Self::Friction => 0.01..=5.0,
            Self::JointLimit => 1.0..=90.0,
            Self::RodDiameter | Self::KnuckleDiameter => 0.1..=200.0,
        }
    }

    /// Decimals shown at most.
    #[must_use]
    pub const fn decimals(self) -> usize {
        match self {
            Self::Teeth | Self::Tooth => 0,
            Self::PulseCentre | Self::PulseSide => 1,
            Self::Speed => 3,
            _ => 2,
        }
    }

    /// Change for each point of dragging.
    #[must_use]
    pub const fn speed(self) -> f64 {
        match self {
            Self::Teeth | Self::Tooth => 0.05,
            Self::Speed => 0.001,
            Self::Torque | Self::Breakaway => 5.0,
            Self::PulseCentre | Self::PulseSide => 1.0,
            Self::Friction => 0.01,
            _ => 0.1,
        }
    }
}
