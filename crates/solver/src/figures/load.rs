//! What the steering drive must hold against moments at the kingpins.

use crate::frame::Sides;
use crate::pose::{AxlePose, CornerPose};

/// Effort at the input that balances a moment about each kingpin, by virtual work: N mm at an arm for N mm at the
/// kingpins, N at a rack. A moment is positive when it would turn its wheel to the left.
///
/// Derived here: at balance the work of the moments over the knuckles' turn per unit of input is the effort's own.
/// The knuckle's turn about its kingpin is the component of its rotation along the steering axis.
#[must_use]
pub fn holding_effort(pose: &AxlePose, moments: &Sides<f64>) -> f64 {
    let work = |corner: &CornerPose, moment: f64| {
        corner.per_input.angular.dot(&corner.kingpin_axis()) * moment
    };
    -(work(&pose.corners.left, moments.left) + work(&pose.corners.right, moments.right))
}
