//! Closing one corner: from rod, inner ball and travel to the knuckle's place.
//!
//! A corner has two coordinates (suspension and steering) and two conditions: the wheel centre stands at its
//! height, and the rod's balls are a rod length apart. Newton's iteration with the exact derivatives closes
//! them from a pose nearby; [`path`] leads it there from any distance without leaving the branch; [`reach`]
//! says what is missing where there is no pose, and [`edge`] where a suspension's range ends. Where the steering axis is fixed in the chassis, [`fixed_axis`]
//! closes the corner with less work; [`dead_centre`] finds where the input turns back by the turn of the knuckle.

pub(crate) mod circle;
pub(crate) mod corner;
pub(crate) mod corner_pose;
pub(crate) mod dead_centre;
pub(crate) mod edge;
pub(crate) mod fixed_axis;
pub(crate) mod newton;
pub(crate) mod path;
pub(crate) mod reach;
pub(crate) mod reserve;
pub(crate) mod rod_setting;
pub(crate) mod second_order;
