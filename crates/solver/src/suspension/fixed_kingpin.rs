//! The knuckle turns about an axis fixed in the chassis. No travel.

use super::Carriage;
use super::axis_frame::AxisFrame;
use crate::frame::Vector;
use crate::twist::Twist;

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct FixedKingpin {
    drawn: AxisFrame,
}

impl FixedKingpin {
    pub(super) fn new(drawn: AxisFrame) -> Self {
        Self { drawn }
    }

    #[inline]
    pub(super) fn carriage(&self) -> Carriage {
        Carriage {
            frame: self.drawn,
            motion: Twist {
                angular: Vector::zeros(),
                linear: Vector::zeros(),
                at: self.drawn.origin,
            },
            axis_rate: Vector::zeros(),
            stay: f64::MAX,
        }
    }
}
