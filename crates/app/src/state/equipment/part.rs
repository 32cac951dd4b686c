//! What a car may give or leave out.

use steerloft_setup::car::{
    BallJoints, Car, Clearances, Hands, Loads, Position, Pulse, Rim, Servo, ServoAction,
    ServoClass, ServoSaver, Spline, Thread, TieRodParts,
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
    /// The inside of the wheel.
    Rim,
    /// Ball joints.
    Joints,
    /// Thread of the tie rods.
    Thread,
}

impl Part {
    /// Every part.
    pub const ALL: [Self; 9] = [
        Self::Servo,
        Self::Spline,
        Self::Action,
        Self::Saver,
        Self::Loads,
        Self::Diameters,
        Self::Rim,
        Self::Joints,
        Self::Thread,
    ];

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
            Self::Rim => "inside of the wheel",
            Self::Joints => "ball joints",
            Self::Thread => "thread",
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
            Self::Diameters => {
                let clearances = car.clearances.unwrap_or_default();
                CarEdit::Clearances(Some(Clearances {
                    rod_diameter: clearances.rod_diameter.or(Some(5.0)),
                    knuckle_diameter: clearances.knuckle_diameter.or(Some(7.0)),
                    ..clearances
                }))
            }
            Self::Rim => CarEdit::Clearances(Some(Clearances {
                rim: Some(usual_rim(car)),
                ..car.clearances.unwrap_or_default()
            })),
            Self::Joints => CarEdit::Joints(Some(BallJoints {
                outer_stud: Position(0.0, 0.0, 1.0),
                outer_stud_right: None,
                // Along the axis that the inner balls turn about a stud swings least; a rack's stand upright.
                inner_stud: (car.drive.inner_axis_direction()).unwrap_or(Position(0.0, 0.0, 1.0)),
                inner_stud_right: None,
                most: 25.0,
            })),
            Self::Thread => CarEdit::TieRod(TieRodParts {
                thread: Some(usual_thread(&car.tie_rod)),
                ..car.tie_rod
            }),
        })
    }

    /// Whether a car gives it whole.
    #[must_use]
    pub fn is_given(self, car: &Car) -> bool {
        let clearances = car.clearances.unwrap_or_default();
        match self {
            Self::Servo => car.servo.is_some(),
            Self::Spline => car.servo.is_some_and(|servo| servo.spline.is_some()),
            Self::Action => car.servo.is_some_and(|servo| servo.action.is_some()),
            Self::Saver => car.saver.is_some(),
            Self::Loads => car.loads.is_some(),
            Self::Diameters => {
                clearances.rod_diameter.is_some() && clearances.knuckle_diameter.is_some()
            }
            Self::Rim => clearances.rim.is_some(),
            Self::Joints => car.joints.is_some(),
            Self::Thread => car.tie_rod.thread.is_some(),
        }
    }

    /// The edit that leaves it out; none where it is not given.
    #[must_use]
    pub fn left_out(self, car: &Car) -> Option<CarEdit> {
        let with_clearances = |change: fn(&mut Clearances)| {
            let mut clearances = car.clearances?;
            change(&mut clearances);
            let any = clearances != Clearances::default();
            Some(CarEdit::Clearances(any.then_some(clearances)))
        };
        Some(match self {
            Self::Servo => CarEdit::Servo(None),
            Self::Spline => CarEdit::Servo(Some(Servo {
                spline: None,
                ..car.servo?
            })),
            Self::Action => CarEdit::Servo(Some(Servo {
                action: None,
                ..car.servo?
            })),
            Self::Saver => CarEdit::Saver(None),
            Self::Loads => CarEdit::Loads(None),
            Self::Diameters => with_clearances(|clearances| {
                clearances.rod_diameter = None;
                clearances.knuckle_diameter = None;
            })?,
            Self::Rim => with_clearances(|clearances| clearances.rim = None)?,
            Self::Joints => CarEdit::Joints(None),
            Self::Thread => CarEdit::TieRod(TieRodParts {
                thread: None,
                ..car.tie_rod
            }),
        })
    }
}

/// The inside of a wheel to start from: the tyre's tread wide, its disc in the middle, and as large as a usual wheel of the
/// tyre (common practice, no source).
fn usual_rim(car: &Car) -> Rim {
    let tenth = |value: f64| (value * 10.0).round() / 10.0;
    Rim {
        inner_radius: tenth(car.left.tyre_radius * 0.75),
        inboard: tenth(car.left.tyre_width / 2.0),
        disc: 0.0,
    }
}

/// A thread to start from that allows just the lengths that the parts allow.
fn usual_thread(parts: &TieRodParts) -> Thread {
    let least_engagement = 2.5;
    let rod_length = parts.longest - 2.0 * parts.cup_length + 2.0 * least_engagement;
    Thread {
        pitch: 0.5,
        rod_length,
        thread_length: least_engagement + (parts.longest - parts.shortest) / 2.0,
        least_engagement,
        hands: Hands::Opposite,
    }
}
