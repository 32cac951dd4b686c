//! The construction of a turn: where the steering axes meet the road, and each wheel's axis drawn on to the line of the
//! rear axle.

use steerloft_solver::assembly::Assembly;
use steerloft_solver::figures::contact::contact_centre;
use steerloft_solver::figures::steering_axis::{axis_at_height_of, wheel_axes};
use steerloft_solver::figures::{inner_outer, turn_centre};
use steerloft_solver::frame::{Point, RoadAxes, Side, Sides};
use steerloft_solver::pose::{AxlePose, CornerPose};

use super::proportions::Proportions;
use crate::drawing::{Drawing, Outline, Role, Shape, View};

/// Wheelbases to either side of the car beyond which a turn centre is not drawn; the axes then run off the drawing.
const FARTHEST: f64 = 12.0;

/// Draws the construction for a pose of the assembly.
///
/// Every view shows the points where the steering axes meet the road. The top view also shows the line of the rear
/// axle, each wheel's axis to its turn centre there, and the axis that the outer wheel would need to have the inner
/// one's turn centre.
#[must_use]
pub fn turn_lines(assembly: &Assembly, pose: &AxlePose, view: View) -> Drawing {
    let construction = Construction {
        assembly,
        pose,
        view,
        axes: assembly.axle().road.axes(),
        sizes: Proportions::of(pose),
    };
    let mut shapes = Vec::new();
    if view == View::Top {
        construction.add_axes(&mut shapes);
    }
    for side in Side::BOTH {
        if view != View::Side || side == Side::Left {
            construction.add_ground_point(&mut shapes, side);
        }
    }
    Drawing { shapes }
}

struct Construction<'a> {
    assembly: &'a Assembly,
    pose: &'a AxlePose,
    view: View,
    axes: RoadAxes,
    sizes: Proportions,
}

impl Construction<'_> {
    fn corner(&self, side: Side) -> &CornerPose {
        self.pose.corners.get(side)
    }

    fn contact(&self, side: Side) -> Point {
        contact_centre(self.corner(side), &self.axes.up)
    }

    /// The point of the road at places along its level axes.
    fn on_road(&self, forward: f64, leftward: f64) -> Point {
        let axes = &self.axes;
        let height = -self.assembly.axle().road.ride_height * axes.up.z;
        Point::from(axes.forward * forward + axes.leftward * leftward + axes.up * height)
    }

    /// A circle with a cross where the steering axis meets the plane that the wheel stands on.
    fn add_ground_point(&self, shapes: &mut Vec<Shape>, side: Side) {
        let ground = axis_at_height_of(self.corner(side), &self.contact(side), &self.axes.up);
        let [u, v] = self.view.project(&ground);
        let radius = self.sizes.ball;
        let reach = 1.8 * radius;
        let outlines = [
            Outline::Circle {
                centre: [u, v],
                radius,
            },
            Outline::Line([[u - reach, v], [u + reach, v]]),
            Outline::Line([[u, v - reach], [u, v + reach]]),
        ];
        shapes.extend(outlines.map(|outline| Shape {
            role: Role::GroundPoint,
            side: Some(side),
            outline,
        }));
    }

    fn add_axes(&self, shapes: &mut Vec<Shape>) {
        let axle = self.assembly.axle();
        let rear = axle.rear_axle_behind();
        let centres = Sides::from_fn(|side| {
            turn_centre(self.corner(side), &axle.road, rear)
                .filter(|centre| centre.lateral.abs() < FARTHEST * axle.wheelbase)
                .map(|centre| self.on_road(-rear, centre.lateral))
        });
        self.add_rear_axle(shapes, rear, &centres);
        if let Some(turn) = inner_outer(self.assembly, self.pose)
            && let Some(centre) = centres.get(turn.inner_side)
        {
            let outer = turn.inner_side.other();
            self.add_line(
                shapes,
                Role::IdealAxis,
                None,
                [self.contact(outer), *centre],
            );
        }
        for side in Side::BOTH {
            let ends = match centres.get(side) {
                Some(centre) => [self.contact(side), *centre],
                None => self.straight_axis(side),
            };
            self.add_line(shapes, Role::WheelAxis, Some(side), ends);
        }
    }

    /// A wheel's axis to both sides, where it meets the line of the rear axle far away or never.
    fn straight_axis(&self, side: Side) -> [Point; 2] {
        let outboard = wheel_axes(self.corner(side), &self.axes.up).outboard;
        let reach = outboard * (FARTHEST * self.assembly.axle().wheelbase);
        [self.contact(side) - reach, self.contact(side) + reach]
    }

    /// The line of the rear axle as far as the turn centres, at least as wide as the front axle.
    fn add_rear_axle(&self, shapes: &mut Vec<Shape>, rear: f64, centres: &Sides<Option<Point>>) {
        let leftward = |point: &Point| point.coords.dot(&self.axes.leftward);
        let contacts = Side::BOTH.map(|side| leftward(&self.contact(side)));
        let met = [&centres.left, &centres.right].map(|centre| centre.as_ref().map(leftward));
        let places = contacts.into_iter().chain(met.into_iter().flatten());
        let (least, most) = places.fold((0.0_f64, 0.0_f64), |(least, most), place| {
            (least.min(place), most.max(place))
        });
        let overhang = self.sizes.overhang();
        let ends = [least - overhang, most + overhang].map(|place| self.on_road(-rear, place));
        self.add_line(shapes, Role::RearAxle, None, ends);
    }

    fn add_line(&self, shapes: &mut Vec<Shape>, role: Role, side: Option<Side>, ends: [Point; 2]) {
        shapes.push(Shape {
            role,
            side,
            outline: Outline::Line(ends.map(|end| self.view.project(&end))),
        });
    }
}
