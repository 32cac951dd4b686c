//! Figures: what a pose means in the trade's terms, one question a file.
//!
//! Every angle is taken against the road, in radians; lengths are mm. `u` is a wheel's unit spin axis pointing
//! outboard, `n` the road normal.

pub mod ackermann;
pub mod camber;
pub mod contact;
pub mod corner;
pub mod gradient;
pub mod instant_centre;
pub mod linkage;
pub mod load;
pub mod road_contact;
pub mod roll;

pub mod steering_axis;
pub mod toe;
pub mod turning;

pub use ackermann::{
    ArmLines, InnerOuter, arm_lines, ideal_outer, inner_outer, kingpin_distance,
    straight_ahead_share,
};
pub use corner::{CornerFigures, corner_figures};
pub use gradient::{TravelGradient, steering_ratio, travel_gradient};
pub use linkage::{RodAngles, Transmission, rod_angles, transmission};
pub use roll::{RollGradient, roll_gradient};
pub use turning::{TurnCentre, Turning, turn_centre, turning};
