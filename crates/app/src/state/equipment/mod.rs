//! The numbers of the servo, its saver, the wheel loads and the sizes that could touch, each by a name of its own.

mod facts;
mod label;
mod part;

pub use part::Part;

pub(super) use label::label;

use steerloft_setup::car::{BallJoints, Car, Position, Servo, ServoAction, Spline};
use steerloft_setup::edit::CarEdit;
use steerloft_setup::servo::{ServoBody, ServoPart};

use super::Change;

/// A number of the equipment.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Equipment {
    /// A size of the servo's body.
    Body(BodySize),
    /// A coordinate of the middle of the servo's case: 0 for x, 1 for y, 2 for z.
    Case(u8),
    /// Teeth of the spline.
    Teeth,
    /// Tooth that the arm sits on.
    Tooth,
    /// Where the arm stands on tooth 0.
    StandsAt,
    /// Trim.
    Trim,
    /// Time for 60 degrees.
    Speed,
    /// Torque.
    Torque,
    /// Volts at which speed and torque are stated.
    Voltage,
    /// Throw each way.
    Throw,
    /// Pulse at the centre.
    PulseCentre,
    /// How much longer or shorter the pulse gets.
    PulseSide,
    /// Moment at which the saver opens.
    Breakaway,
    /// Its further moment for each degree.
    SaverRate,
    /// Weight on both front wheels.
    FrontAxle,
    /// Friction.
    Friction,
    /// Greatest swing of a ball joint.
    JointLimit,
    /// Diameter of the tie rod with its cups.
    RodDiameter,
    /// Diameter of the knuckle.
    KnuckleDiameter,
}

/// A size of the servo's body, as it lies on the bench.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[allow(missing_docs, reason = "they are those of the body")]
pub enum BodySize {
    Length,
    Width,
    Height,
    AxisFromEnd,
    LugHeight,
    ArmOverCase,
}

impl BodySize {
    fn of(self, body: &ServoBody) -> f64 {
        let mut body = *body;
        *self.place(&mut body)
    }

    fn place(self, body: &mut ServoBody) -> &mut f64 {
        match self {
            Self::Length => &mut body.length,
            Self::Width => &mut body.width,
            Self::Height => &mut body.height,
            Self::AxisFromEnd => &mut body.axis_from_end,
            Self::LugHeight => &mut body.lug_height,
            Self::ArmOverCase => &mut body.arm_over_case,
        }
    }
}

impl Equipment {
    /// The servo's body and place.
    pub const CASE: [Self; 9] = [
        Self::Body(BodySize::Length),
        Self::Body(BodySize::Width),
        Self::Body(BodySize::Height),
        Self::Body(BodySize::AxisFromEnd),
        Self::Body(BodySize::LugHeight),
        Self::Body(BodySize::ArmOverCase),
        Self::Case(0),
        Self::Case(1),
        Self::Case(2),
    ];
    /// How the arm sits.
    pub const SPLINE: [Self; 4] = [Self::Teeth, Self::Tooth, Self::StandsAt, Self::Trim];
    /// What the servo can do.
    pub const ACTION: [Self; 6] = [
        Self::Speed,
        Self::Torque,
        Self::Voltage,
        Self::Throw,
        Self::PulseCentre,
        Self::PulseSide,
    ];
    /// The saver.
    pub const SAVER: [Self; 2] = [Self::Breakaway, Self::SaverRate];
    /// The loads.
    pub const LOADS: [Self; 2] = [Self::FrontAxle, Self::Friction];
    /// Limits and sizes that could touch.
    pub const SIZES: [Self; 3] = [Self::JointLimit, Self::RodDiameter, Self::KnuckleDiameter];

    /// Its value in a car; none where the car does not give it.
    #[must_use]
    pub fn value(self, car: &Car) -> Option<f64> {
        let servo = car.servo.as_ref();
        let spline = servo.and_then(|servo| servo.spline);
        let action = servo.and_then(|servo| servo.action);
        match self {
            Self::Body(size) => {
                let body = ServoBody::of(servo?, &car.drive).ok()?;
                Some(size.of(&body))
            }
            Self::Case(axis) => {
                let Position(x, y, z) = servo?.case.centre;
                [x, y, z].get(usize::from(axis)).copied()
            }
            Self::Teeth => spline.map(|spline| spline.teeth.into()),
            Self::Tooth => spline.map(|spline| spline.tooth.into()),
            Self::StandsAt => spline.map(|spline| spline.stands_at),
            Self::Trim => spline.map(|spline| spline.trim),
            Self::Speed => action.map(|action| action.speed),
            Self::Torque => action.map(|action| action.torque),
            Self::Voltage => action.map(|action| action.voltage),
            Self::Throw => action.map(|action| action.throw),
            Self::PulseCentre => action.map(|action| action.pulse.centre),
            Self::PulseSide => action.map(|action| action.pulse.side),
            Self::Breakaway => car.saver.map(|saver| saver.breakaway),
            Self::SaverRate => car.saver.map(|saver| saver.rate),
            Self::FrontAxle => car.loads.map(|loads| loads.front_axle),
            Self::Friction => car.loads.map(|loads| loads.friction),
            Self::JointLimit => car.joints.map(|joints| joints.most),
            Self::RodDiameter => car.clearances?.rod_diameter,
            Self::KnuckleDiameter => car.clearances?.knuckle_diameter,
        }
    }

    /// The change that gives it another value; none where the car has nothing that it could belong to.
    #[must_use]
    pub fn change(self, car: &Car, value: f64) -> Option<Change> {
        let edit = match self {
            Self::Body(size) => return body_change(car, size, value),
            Self::Breakaway | Self::SaverRate => {
                let mut saver = car.saver?;
                match self {
                    Self::Breakaway => saver.breakaway = value,
                    _ => saver.rate = value,
                }
                CarEdit::Saver(Some(saver))
            }
            Self::FrontAxle | Self::Friction => {
                let mut loads = car.loads?;
                match self {
                    Self::FrontAxle => loads.front_axle = value,
                    _ => loads.friction = value,
                }
                CarEdit::Loads(Some(loads))
            }
            Self::JointLimit => CarEdit::Joints(Some(BallJoints {
                most: value,
                ..car.joints?
            })),
            Self::RodDiameter | Self::KnuckleDiameter => {
                let mut clearances = car.clearances?;
                match self {
                    Self::RodDiameter => clearances.rod_diameter = Some(value),
                    _ => clearances.knuckle_diameter = Some(value),
                }
                CarEdit::Clearances(Some(clearances))
            }
            _ => CarEdit::Servo(Some(self.in_servo(car.servo?, value)?)),
        };
        Some(Change::Car(Box::new(edit)))
    }

    fn in_servo(self, mut servo: Servo, value: f64) -> Option<Servo> {
        match self {
            Self::Case(axis) => {
                let centre = &mut servo.case.centre;
                match axis {
                    0 => centre.0 = value,
                    1 => centre.1 = value,
                    _ => centre.2 = value,
                }
            }
            Self::Teeth | Self::Tooth | Self::StandsAt | Self::Trim => {
                in_spline(self, servo.spline.as_mut()?, value);
            }
            _ => in_action(self, servo.action.as_mut()?, value),
        }
        Some(servo)
    }
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the fields are whole and bounded, and a conversion saturates"
)]
fn in_spline(number: Equipment, spline: &mut Spline, value: f64) {
    match number {
        Equipment::Teeth => spline.teeth = value.round() as u32,
        Equipment::Tooth => spline.tooth = value.round() as i32,
        Equipment::StandsAt => spline.stands_at = value,
        _ => spline.trim = value,
    }
}

fn in_action(number: Equipment, action: &mut ServoAction, value: f64) {
    match number {
        Equipment::Speed => action.speed = value,
        Equipment::Torque => action.torque = value,
        Equipment::Voltage => action.voltage = value,
        Equipment::Throw => action.throw = value,
        Equipment::PulseCentre => action.pulse.centre = value,
        _ => action.pulse.side = value,
    }
}

fn body_change(car: &Car, size: BodySize, value: f64) -> Option<Change> {
    let servo = car.servo.as_ref()?;
    let mut body = ServoBody::of(servo, &car.drive).ok()?;
    *size.place(&mut body) = value;
    Some(Change::ServoBody(Box::new(ServoPart {
        class: servo.class,
        body,
        teeth: servo.spline.map(|spline| spline.teeth),
        action: servo.action,
    })))
}
