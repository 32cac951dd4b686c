//! Fitting another servo: which way a case lies, and where the arm of another one would sit in its place.

use solver::frame::Vector;
use steerloft_solver as solver;

use crate::car::{Car, Drive, Position, Servo, ServoAction, ServoCase, ServoClass, Spline};

/// A servo as it lies on the bench: its body without lugs, and where arm and lugs sit on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ServoBody {
    /// Along the longer side across the arm's axis, mm.
    pub length: f64,
    /// Along the shorter side across the arm's axis, mm.
    pub width: f64,
    /// Along the arm's axis, mm.
    pub height: f64,
    /// From the nearer end of the length to the arm's axis, mm.
    pub axis_from_end: f64,
    /// From the bottom, the end away from the arm, to the seat of the lugs, mm.
    pub lug_height: f64,
    /// From the top to the middle plane of the arm, mm.
    pub arm_over_case: f64,
}

/// A servo to be fitted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ServoPart {
    /// Size class.
    pub class: ServoClass,
    /// Its body.
    pub body: ServoBody,
    /// Teeth of its output spline, if known.
    pub teeth: Option<u32>,
    /// What it can do, if known.
    pub action: Option<ServoAction>,
}

/// Why another servo cannot be fitted by calculation.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum ServoError {
    /// The car has none.
    #[error("this car has no servo that another could take the place of; give `servo` first")]
    NoServo,
    /// The arm's axis is not along the case.
    #[error(
        "the arm's axis does not lie along an edge of the servo's case; move the servo's points by hand"
    )]
    CaseLiesAskew,
    /// The seat of the lugs is not known.
    #[error("it is not known where the servo's lugs sit; give `lug_height` of the one in the car")]
    NoLugs,
    /// A size is nonsense.
    #[error("{what} of {value} thousandths of a millimetre is no size of a servo")]
    BadSize {
        /// What the size is of.
        what: &'static str,
        /// Its value, thousandths of a mm.
        value: i64,
    },
}

impl ServoClass {
    /// Every class of which a usual body can be told.
    pub const USUAL: [Self; 3] = [Self::Standard, Self::LowProfile, Self::Small];

    /// In plain words.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Standard => "standard",
            Self::LowProfile => "low-profile",
            Self::Small => "small",
            Self::Other => "other",
        }
    }

    /// A body typical of the class, to start from; measure your own. Sizes are common practice, no source.
    #[must_use]
    pub const fn typical_body(self) -> Option<ServoBody> {
        let (length, width, height, lug_height) = match self {
            Self::Standard => (40.0, 20.0, 38.0, 28.0),
            Self::LowProfile => (40.0, 20.0, 26.0, 16.0),
            Self::Small => (34.0, 12.5, 26.0, 16.0),
            Self::Other => return None,
        };
        Some(ServoBody {
            length,
            width,
            height,
            axis_from_end: 10.0,
            lug_height,
            arm_over_case: 5.0,
        })
    }
}

impl ServoBody {
    /// The body of the servo in a car, where the arm's axis lies along its case and its lugs are known.
    pub fn of(servo: &Servo, drive: &Drive) -> Result<Self, ServoError> {
        let frame = ServoFrame::of(servo, drive).ok_or(ServoError::CaseLiesAskew)?;
        let lug_height = servo.lug_height.ok_or(ServoError::NoLugs)?;
        let size = servo.case.size.vector();
        let (length, height) = (size[frame.length], size[frame.height]);
        Ok(Self {
            length,
            width: size[frame.width],
            height,
            axis_from_end: length / 2.0 - frame.to_axis[frame.length].abs(),
            lug_height,
            arm_over_case: frame.to_axis[frame.height].abs() - height / 2.0,
        })
    }

    fn check(&self) -> Result<(), ServoError> {
        let sizes = [
            ("a length", self.length, 1.0),
            ("a width", self.width, 1.0),
            ("a height", self.height, 1.0),
            ("an axis distance", self.axis_from_end, 0.0),
            ("a lug height", self.lug_height, 0.0),
            ("an arm height", self.arm_over_case, -self.height),
        ];
        for (what, value, least) in sizes {
            if !(least..=1000.0).contains(&value) {
                #[allow(
                    clippy::cast_possible_truncation,
                    reason = "the conversion saturates, and the number is only shown"
                )]
                let value = (value * 1000.0).round() as i64;
                return Err(ServoError::BadSize { what, value });
            }
        }
        Ok(())
    }
}

/// Which chassis axes a servo's case lies along: 0 for x, 1 for y, 2 for z.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct ServoFrame {
    length: usize,
    width: usize,
    height: usize,
    /// From the case's centre to the arm's axis point, mm.
    to_axis: Vector,
}

/// Most that the arm's axis may lean from an edge of the case: what rounded decimals leave.
const ALONG_EDGE: f64 = 1e-3;

impl ServoFrame {
    /// How the case lies; nothing where the arm's axis lies along none of its edges, or for a rack.
    pub(crate) fn of(servo: &Servo, drive: &Drive) -> Option<Self> {
        let (point, direction) = arm_axis(drive)?;
        let direction = direction.vector();
        let height = direction.iamax();
        let across = (0..3).filter(|axis| *axis != height);
        if across
            .clone()
            .any(|axis| direction[axis].abs() > ALONG_EDGE * direction[height].abs())
        {
            return None;
        }
        let size = servo.case.size.vector();
        let across: Vec<usize> = across.collect();
        let (length, width) = if size[across[0]] >= size[across[1]] {
            (across[0], across[1])
        } else {
            (across[1], across[0])
        };
        Some(Self {
            length,
            width,
            height,
            to_axis: point.point() - servo.case.centre.point(),
        })
    }

    /// Height of the case along the arm's axis, mm.
    pub(crate) fn height(&self, case: &ServoCase) -> f64 {
        case.size.vector()[self.height]
    }
}

impl ServoPart {
    /// A part of which only the body is known.
    #[must_use]
    pub const fn of_body(class: ServoClass, body: ServoBody) -> Self {
        Self {
            class,
            body,
            teeth: None,
            action: None,
        }
    }
}

impl Car {
    /// The car with another servo where its servo sits, and how far the arm moves by that, mm.
    ///
    /// Its mounts stay: the seat of the lugs keeps its place along the arm's axis, a side that rests near the chassis
    /// plate keeps its height, a case that stands free sideways keeps its middle, and lengthwise the servo is set so
    /// that the arm's axis keeps its place. Where length lies upright it rests like a side. With the arm's axis go the
    /// balls that the servo arm carries.
    pub fn with_servo(&self, part: &ServoPart) -> Result<(Self, Vector), ServoError> {
        part.body.check()?;
        let old = self.servo.ok_or(ServoError::NoServo)?;
        let frame = ServoFrame::of(&old, &self.drive).ok_or(ServoError::CaseLiesAskew)?;
        let old_body = ServoBody::of(&old, &self.drive)?;
        let body = &part.body;
        let mut size = Vector::zeros();
        size[frame.length] = body.length;
        size[frame.width] = body.width;
        size[frame.height] = body.height;
        let sign = |axis: usize| frame.to_axis[axis].signum();
        let old_centre = old.case.centre.vector();
        let old_size = old.case.size.vector();
        let mut centre = old_centre;
        let up = sign(frame.height);
        centre[frame.height] += up
            * ((old_body.lug_height - old_body.height / 2.0)
                - (body.lug_height - body.height / 2.0));
        let axis_off_middle = sign(frame.length) * (body.length / 2.0 - body.axis_from_end);
        centre[frame.length] += frame.to_axis[frame.length] - axis_off_middle;
        let mut to_axis = frame.to_axis;
        to_axis[frame.height] = up * (body.height / 2.0 + body.arm_over_case);
        to_axis[frame.length] = axis_off_middle;
        for axis in [frame.length, frame.width] {
            if axis == UP {
                centre[axis] = old_centre[axis] + (size[axis] - old_size[axis]) / 2.0;
            }
        }
        let shift = (centre + to_axis) - (old_centre + frame.to_axis);
        let mut car = self.clone();
        car.drive.shift_servo_arm(&shift);
        car.servo = Some(Servo {
            class: part.class,
            case: ServoCase {
                size: rounded(&size),
                centre: rounded(&centre),
            },
            lug_height: Some(body.lug_height),
            spline: part.teeth.map(|teeth| Spline {
                teeth,
                tooth: 0,
                stands_at: 0.0,
                trim: 0.0,
            }),
            action: part.action,
        });
        Ok((car, shift))
    }
}

impl Servo {
    /// A servo with the typical body of a class, its arm where a drive has it: to start from, and to be measured. Nothing
    /// for a rack, for an arm's axis along no chassis axis, and for a class without a typical body.
    ///
    /// The case lies behind an arm that turns about a lengthwise axis, below one about an upright axis, and inboard of one
    /// about a transverse axis.
    #[must_use]
    pub fn typical(class: ServoClass, drive: &Drive) -> Option<Self> {
        Self::lying(class.typical_body()?, class, drive)
    }

    /// As [`Servo::typical`], with a body of one's own.
    pub(crate) fn lying(body: ServoBody, class: ServoClass, drive: &Drive) -> Option<Self> {
        let (point, direction) = arm_axis(drive)?;
        let (point, direction) = (point.vector(), direction.vector());
        let height = direction.iamax();
        let (length, width) = match height {
            0 => (1, 2),
            1 => (0, 2),
            _ => (0, 1),
        };
        let inboard = if height == 1 { -point.y.signum() } else { -1.0 };
        let mut size = Vector::zeros();
        (size[length], size[width], size[height]) = (body.length, body.width, body.height);
        let mut centre = point;
        centre[height] += inboard * (body.height / 2.0 + body.arm_over_case);
        centre[length] -= body.length / 2.0 - body.axis_from_end;
        let servo = Self {
            class,
            case: ServoCase {
                size: rounded(&size),
                centre: rounded(&centre),
            },
            lug_height: Some(body.lug_height),
            spline: None,
            action: None,
        };
        ServoFrame::of(&servo, drive).map(|_| servo)
    }
}

/// A point of the arm's axis and its direction; nothing for a rack.
fn arm_axis(drive: &Drive) -> Option<(&Position, &Position)> {
    match drive {
        Drive::SwingArm {
            axis_point,
            axis_direction,
            ..
        } => Some((axis_point, axis_direction)),
        Drive::TwinCrank { servo_arm, .. } => {
            Some((&servo_arm.axis_point, &servo_arm.axis_direction))
        }
        Drive::Slider { .. } => None,
    }
}

/// Index of the upright chassis axis.
const UP: usize = 2;

impl Drive {
    /// Takes the servo arm with the balls it carries along.
    fn shift_servo_arm(&mut self, by: &Vector) {
        let shift = |position: &mut Position| *position = rounded(&(position.vector() + by));
        match self {
            Self::SwingArm {
                axis_point,
                rod_inner_left,
                rod_inner_right,
                ..
            } => {
                shift(axis_point);
                shift(rod_inner_left);
                shift(rod_inner_right);
            }
            Self::TwinCrank {
                servo_arm,
                drag_servo,
                ..
            } => {
                shift(&mut servo_arm.axis_point);
                shift(drag_servo);
            }
            Self::Slider { .. } => {}
        }
    }
}

/// A position without the dust that decimals leave in binary fractions, to a millionth of a mm.
fn rounded(vector: &Vector) -> Position {
    let grain = |value: f64| (value * 1e6).round() / 1e6;
    Position(grain(vector.x), grain(vector.y), grain(vector.z))
}
