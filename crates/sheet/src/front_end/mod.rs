//! The front end of a car at one pose, drawn in one view.
//!
//! Points and axes are true projections of the pose. What a setup does not give (balls, bosses, bodies) is
//! schematic and sized to suit the car.

mod arms;
mod datum;
mod drive;
mod joint;
mod kingpin;
mod knuckle;
mod linkage;
mod parts;
mod proportions;
mod rods;
mod shaft;
mod stacks;
mod swing_arm;
mod turn_lines;
mod wheel;

use steerloft_setup::adjustment::PointName;
use steerloft_setup::layout::Layout;
use steerloft_solver::frame::Side;
use steerloft_solver::pose::AxlePose;

use self::knuckle::Kingpin;
use self::parts::Parts;
use self::proportions::Proportions;
use self::stacks::Seat;
use crate::drawing::Drawing;
use crate::sight::Sight;

pub use stacks::{StackStand, stack_stands};
pub use turn_lines::turn_lines;
pub use wheel::wheel_outlines;

/// Draws both front corners, the steering drive between them, and the lines they are measured from, as a view shows
/// them, as finely as paper needs, or no finer than a [`Sight`] asks for.
///
/// `pose` is a pose of `layout`'s axle. Millimetres, in the plane of the view; every coordinate is finite for
/// a solved pose.
#[must_use]
pub fn front_end(layout: &Layout, pose: &AxlePose, sight: impl Into<Sight>) -> Drawing {
    let sizes = Proportions::of(pose);
    let mut parts = Parts::new(sight.into());
    drive::add(&mut parts, layout, pose, sizes);
    stacks::add_under_points(&mut parts, layout, pose, sizes);
    // The far corner first, so that the near one lies over it at equal depth.
    for side in [Side::Right, Side::Left] {
        add_corner(&mut parts, layout, pose, side, sizes);
    }
    if let Some(extent) = parts.bounds() {
        datum::add(&mut parts, &layout.axle, pose, &extent, sizes);
    }
    parts.into_drawing()
}

fn add_corner(parts: &mut Parts, layout: &Layout, pose: &AxlePose, side: Side, sizes: Proportions) {
    let corner = pose.corners.get(side);
    let stacked = Seat::with_stacks(
        layout,
        (PointName::SteeringArm, side),
        corner.steering_arm,
        &corner.knuckle,
        sizes.stand_off(),
    );
    let seat = stacked.unwrap_or_else(|| {
        Seat::plain(
            corner.steering_arm,
            corner.kingpin_axis(),
            sizes.stand_off(),
        )
    });
    let suspension = &layout.axle.corners.get(side).suspension;
    let kingpin = Kingpin::of(corner);
    wheel::add(parts, corner, sizes);
    knuckle::add(parts, corner, &kingpin, suspension, &seat, sizes);
    kingpin::add(parts, corner, &kingpin, suspension, sizes);
    stacks::add_seat(parts, &seat, side, sizes);
    arms::add(parts, suspension, corner, sizes);
    rods::add(parts, corner, layout.cup_length, sizes);
    let ground = datum::ground_point(corner, &layout.axle.road);
    kingpin::add_axis(parts, corner, &kingpin, ground, sizes);
}
