//! What a car may give or leave out.

use steerloft_setup::car::{
    Car, Clearances, Loads, Pulse, Servo, ServoAction, ServoClass, ServoSaver, Spline,
};
use steerloft_setup::edit::CarEdit;

/// Something that a car may give or leave out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// The servo.
    Servo,
    /// Its spline.
    Spline,
    /// Its speed, torque, throw and pulses.
    Action,
    /// The servo saver.
    Saver,
    /// The loads.
    Loads,
    /// Diameters of rod and knuckle.
    Diameters,
}

impl Part {
    /// What it is called.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Servo => "servo",
            Self::Spline => "spline",
            Self::Action => "speed and torque",
            Self::Saver => "servo saver",
            Self::Loads => "wheel loads",
            Self::Diameters => "diameters",
        }
    }

    /// The edit that gives it, with round values to start from; none where it has no place in the car.
    #[must_use]
    pub fn given(self, car: &Car) -> Option<CarEdit> {
        Some(match self {
            Self::Servo => CarEdit::Servo(Some(Servo::typical(ServoClass::Standard, &car.drive)?)),
            Self::Spline => CarEdit::Servo(Some(Servo {
                spline: Some(Spline {
                    teeth: 25,
                    tooth: 0,
                    stands_at: 0.0,
                    trim: 0.0,
                }),
                ..car.servo?
            })),
            Self::Action => CarEdit::Servo(Some(Servo {
                action: Some(ServoAction {
                    speed: 0.1,
                    torque: 1000.0,
                    voltage: 6.0,
                    throw: 50.0,
                    pulse: Pulse {
                        centre: 1500.0,
                        side: 450.0,
                    },
                }),
                ..car.servo?
            })),
            Self::Saver => CarEdit::Saver(Some(ServoSaver {
                breakaway: 300.0,
                rate: 30.0,
            })),
            Self::Loads => CarEdit::Loads(Some(Loads {
                front_axle: 5.0,
                friction: 1.0,
            })),
            Self::Diameters => CarEdit::Clearances(Some(Clearances {
                rod_diameter: Some(5.0),
                knuckle_diameter: Some(7.0),
                ..car.clearances.unwrap_or_default()
            })),
        })
    }
}
