//! Servo choice and centring: the tooth to take, trim, end points, and whether the body fits.

mod centre;
mod end_points;
mod fit;
mod spline;

pub use centre::{Asymmetry, equal_lock_centre, lock_asymmetry};
pub use end_points::{EndPoint, EndPoints, end_points_for_equal_circles, end_points_for_lock};
pub use fit::{BodyFit, ServoFit, servo_fit};
pub use spline::{Tooth, teeth_near};
