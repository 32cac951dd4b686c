//! The steering servo and its saver as a car's file gives them.

use serde::{Deserialize, Serialize};

use super::Position;

/// The steering servo: its case in the car, the arm on its spline and what it can do.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Servo {
    /// Size class, for a reader; nothing is computed from it.
    #[serde(default)]
    pub class: ServoClass,
    /// The case, where it sits with every adjustment at its base.
    pub case: ServoCase,
    /// From the case's bottom, the end away from the arm, to the seat of its lugs, mm. It says what stays in place
    /// when another servo is fitted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lug_height: Option<f64>,
    /// How the arm sits on the output spline.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub spline: Option<Spline>,
    /// Speed, torque, throw and pulses.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub action: Option<ServoAction>,
}

impl From<ServoCase> for Servo {
    /// A servo of which only the case is known.
    fn from(case: ServoCase) -> Self {
        Self {
            class: ServoClass::Other,
            case,
            lug_height: None,
            spline: None,
            action: None,
        }
    }
}

/// Size class of a servo.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum ServoClass {
    /// A body of about 40 x 20 x 38 mm.
    Standard,
    /// A body of about 40 x 20 x 26 mm.
    LowProfile,
    /// A body of about 34 x 13 x 26 mm.
    Small,
    /// Anything else.
    #[default]
    Other,
}

/// The servo's case as a box along chassis axes; it goes where the servo arm's axis point goes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ServoCase {
    /// Size along x, y and z, mm.
    pub size: Position,
    /// Centre of the box, chassis axes, mm.
    pub centre: Position,
}

/// How the arm sits on the servo's output spline.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spline {
    /// Teeth of the spline; 23, 24 and 25 are in common use.
    pub teeth: u32,
    /// Which tooth the arm sits on, counted right-handed about the arm's axis from the one of `stands_at`.
    #[serde(default)]
    pub tooth: i32,
    /// Steering input at which the arm stands on tooth 0, at the centre pulse and without trim, degrees: a reading
    /// taken on the car.
    #[serde(default)]
    pub stands_at: f64,
    /// Trim at the transmitter, degrees of the arm.
    #[serde(default)]
    pub trim: f64,
}

impl Spline {
    /// Angle between neighbouring teeth, degrees.
    #[must_use]
    pub fn step(&self) -> f64 {
        360.0 / f64::from(self.teeth)
    }

    /// Steering input at which the arm stands at the centre pulse: tooth and trim together, degrees.
    #[must_use]
    pub fn centre_input(&self) -> f64 {
        self.stands_at + f64::from(self.tooth) * self.step() + self.trim
    }
}

/// What a servo can do.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ServoAction {
    /// Seconds for 60 degrees at `voltage`, without load.
    pub speed: f64,
    /// Torque at `voltage`, N mm.
    pub torque: f64,
    /// Volts at which speed and torque are stated.
    pub voltage: f64,
    /// Throw each way from the centre pulse, degrees.
    pub throw: f64,
    /// Pulses that give that throw.
    pub pulse: Pulse,
}

/// Pulses a servo answers to, microseconds.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pulse {
    /// Pulse at the centre.
    pub centre: f64,
    /// How much longer or shorter it gets for the full throw one way.
    pub side: f64,
}

impl ServoAction {
    /// Microseconds of pulse for a degree of the arm.
    #[must_use]
    pub fn microseconds_per_degree(&self) -> f64 {
        self.pulse.side / self.throw
    }

    /// Greatest angular speed without load, degrees a second.
    #[must_use]
    pub fn degrees_per_second(&self) -> f64 {
        60.0 / self.speed
    }
}

/// A servo saver: a sprung arm that gives way before the servo's gears do.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ServoSaver {
    /// Moment at the arm at which the saver begins to open, N mm.
    pub breakaway: f64,
    /// Further moment for each degree that it opens, N mm.
    pub rate: f64,
}
