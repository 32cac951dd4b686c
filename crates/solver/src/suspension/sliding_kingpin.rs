//! The knuckle turns about an axis fixed in the chassis and slides along it. The suspension coordinate is the
//! slide, mm, upward.

use super::Carriage;
use super::axis_frame::AxisFrame;
use crate::frame::Vector;
use crate::twist::Twist;

#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SlidingKingpin {
    drawn: AxisFrame,
}

impl SlidingKingpin {
    pub(super) fn new(drawn: AxisFrame) -> Self {
        Self { drawn }
    }

    #[inline]
    pub(super) fn carriage(&self, slide: f64) -> Carriage {
        let axis = self.drawn.axis;
        let frame = AxisFrame {
            origin: self.drawn.origin + axis * slide,
            ..self.drawn
        };
        Carriage {
            frame,
            motion: Twist {
                angular: Vector::zeros(),
                linear: axis,
                at: frame.origin,
            },
            axis_rate: Vector::zeros(),
            stay: f64::MAX,
        }
    }
}
