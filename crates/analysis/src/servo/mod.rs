//! Servo choice and centring: the tooth to take, trim, end points, and whether the body fits.

mod centre;
mod centring;
mod end_points;
mod fit;
mod spline;
mod survey;

pub use centre::{Asymmetry, equal_lock_centre, lock_asymmetry};
pub use centring::{Centring, ToothChoice, centring};
pub use end_points::{EndPoint, EndPoints, end_points_for_equal_circles, end_points_for_lock};
pub use fit::{BodyFit, ServoFit, servo_fit};
pub use spline::{Tooth, teeth_near};
pub use survey::{Ends, Question, Survey};
