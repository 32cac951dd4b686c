//! Mechanisms in which a textbook's case arises.

use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod};
use steerloft_solver::drive::{Drive, SwingArm};
use steerloft_solver::figures::toe::{leftward_axis, steer_of};
use steerloft_solver::frame::Road;
use steerloft_solver::suspension::Suspension;
use steerloft_solver::{Assembly, CornerPose, Point, Side, Sides, SolveError, Vector};

/// A level road through the chassis origin.
pub(crate) const LEVEL: Road = Road {
    ride_height: 0.0,
    pitch: 0.0,
    roll: 0.0,
};

/// Unit vector along a steering axis pointing up, of a wheel on the left, from caster and kingpin inclination in
/// degrees: tan(caster) = -kx / kz, tan(inclination) = -ky / kz.
pub(crate) fn steering_axis(caster: f64, inclination: f64) -> Vector {
    let tangents = (caster.to_radians().tan(), inclination.to_radians().tan());
    Vector::new(-tangents.0, -tangents.1, 1.0).normalize()
}

/// Spin axis of a left wheel pointing outboard at the given camber and toe-in, degrees.
pub(crate) fn spin_axis(camber: f64, toe: f64) -> Vector {
    let (sin_camber, cos_camber) = camber.to_radians().sin_cos();
    let (sin_toe, cos_toe) = toe.to_radians().sin_cos();
    Vector::new(cos_camber * sin_toe, cos_camber * cos_toe, -sin_camber)
}

/// A left knuckle with its steering axis through `ground_point`, the steering-arm ball still to be placed.
pub(crate) fn knuckle(
    ground_point: Point,
    axis: Vector,
    wheel_centre: Point,
    tyre_radius: f64,
) -> Knuckle {
    let kingpin_lower = ground_point + axis * (0.5 * tyre_radius);
    Knuckle {
        wheel_centre,
        spin_axis: Vector::y(),
        kingpin_lower,
        kingpin_upper: ground_point + axis * (1.5 * tyre_radius),
        steering_arm: kingpin_lower,
        tyre_radius,
        tyre_width: 0.2 * tyre_radius,
    }
}

/// A left knuckle on a turntable: the steering drive turns about the steering axis itself and its rod reaches a
/// quarter turn around it, so the knuckle turns by exactly the input. Both corners of the axle are this one.
pub(crate) fn turntable(knuckle: Knuckle) -> Assembly {
    let axis = (knuckle.kingpin_upper - knuckle.kingpin_lower).normalize();
    let across = axis.cross(&Vector::y()).normalize() * knuckle.tyre_radius;
    let inner = knuckle.kingpin_lower + axis.cross(&across);
    let left = Corner {
        knuckle: Knuckle {
            steering_arm: knuckle.kingpin_lower + across,
            ..knuckle
        },
        suspension: Suspension::FixedKingpin,
    };
    let axle = FrontAxle {
        corners: Sides::new(left, other_hand(&left)),
        drive: Drive::SwingArm(SwingArm {
            axis_point: knuckle.kingpin_lower,
            axis_direction: axis,
            rod_inner: Sides::both(inner),
        }),
        rods: Sides::both(Rod::FixedLength(2.0_f64.sqrt() * knuckle.tyre_radius)),
        wheelbase: 10.0 * knuckle.tyre_radius,
        station: 0.0,
        road: LEVEL,
    };
    Assembly::new(&axle).unwrap()
}

/// The same corner in the same place as the other side's: its wheel's outboard is the other way.
pub(crate) fn other_hand(corner: &Corner) -> Corner {
    Corner {
        knuckle: Knuckle {
            spin_axis: -corner.knuckle.spin_axis,
            ..corner.knuckle
        },
        suspension: corner.suspension,
    }
}

/// The left corner turned about its steering axis, degrees, right-handed about the axis pointing up.
pub(crate) fn turned(turntable: &Assembly, degrees: f64) -> CornerPose {
    turntable
        .pose(degrees.to_radians(), Sides::both(0.0))
        .unwrap()
        .corners
        .left
}

/// The left corner turned until its toe, seen from above, is the one given in degrees; and the turn it took.
pub(crate) fn at_toe(turntable: &Assembly, toe: f64) -> (CornerPose, f64) {
    let toe_at = |turn| {
        let corner = turned(turntable, turn);
        -steer_of(&leftward_axis(&corner), &LEVEL.axes()).to_degrees()
    };
    // Toe falls as the turn grows.
    let (mut low, mut high) = (-120.0, 120.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if toe_at(middle) > toe {
            low = middle;
        } else {
            high = middle;
        }
    }
    (turned(turntable, low), low)
}

/// Two upright kingpins with wheels standing at given steer angles (degrees, left positive) straight ahead.
pub(crate) struct Pair {
    /// Distance of the kingpins.
    pub(crate) kingpins: f64,
    /// Distance of the contact centres with the wheels straight.
    pub(crate) track: f64,
    pub(crate) wheelbase: f64,
    pub(crate) steer: Sides<f64>,
}

impl Pair {
    /// The axle, its rods set so that each wheel stands at its angle.
    pub(crate) fn assemble(&self) -> Assembly {
        let unit = 0.02 * self.wheelbase;
        let corner = |side: Side| {
            let kingpin = Point::new(0.0, 0.5 * self.kingpins * side.sign(), 0.0);
            let wheel_centre = Point::new(0.0, 0.5 * self.track * side.sign(), 3.0 * unit);
            Corner {
                knuckle: Knuckle {
                    spin_axis: Vector::y() * side.sign(),
                    steering_arm: kingpin + Vector::new(-2.0 * unit, 0.0, unit),
                    ..knuckle(kingpin, Vector::z(), wheel_centre, 3.0 * unit)
                },
                suspension: Suspension::FixedKingpin,
            }
        };
        let axle = FrontAxle {
            corners: Sides::from_fn(corner),
            drive: Drive::SwingArm(SwingArm {
                axis_point: Point::new(-3.0 * unit, 0.0, 0.0),
                axis_direction: Vector::z(),
                rod_inner: Sides::new(
                    Point::new(-2.0 * unit, 0.5 * unit, unit),
                    Point::new(-2.0 * unit, -0.5 * unit, unit),
                ),
            }),
            rods: Sides::new(
                Rod::HoldToe(-self.steer.left.to_radians()),
                Rod::HoldToe(self.steer.right.to_radians()),
            ),
            wheelbase: self.wheelbase,
            station: 0.0,
            road: LEVEL,
        };
        Assembly::new(&axle).unwrap()
    }
}

/// Two levers joined by a rod: the drive's crank, and a rocker that is a knuckle's steering arm. Left and right
/// corner are the same rocker, drawn on the linkage's two branches.
pub(crate) struct Levers {
    pub(crate) crank_pivot: Point,
    pub(crate) crank_axis: Vector,
    /// The crank's ball at input 0.
    pub(crate) crank_ball: Point,
    pub(crate) rocker_pivot: Point,
    /// Unit vector; within 53 degrees of upright.
    pub(crate) rocker_axis: Vector,
    /// From the pivot to the rocker's ball at rocker angle 0.
    pub(crate) rocker_arm: Vector,
    /// Rocker angles as drawn, degrees, near those of the two branches.
    pub(crate) drawn: Sides<f64>,
    pub(crate) rod: f64,
}

impl Levers {
    /// The rocker's ball at an angle in degrees.
    fn rocker_ball(&self, degrees: f64) -> Point {
        let (sin, cos) = degrees.to_radians().sin_cos();
        let ahead = self.rocker_axis.cross(&self.rocker_arm);
        self.rocker_pivot + self.rocker_arm * cos + ahead * sin
    }

    pub(crate) fn assemble(&self) -> Result<Assembly, SolveError> {
        let size = self.rocker_arm.norm();
        let outward = self.rocker_axis.cross(&Vector::x()).normalize();
        let corner = |side: Side| Corner {
            knuckle: Knuckle {
                wheel_centre: self.rocker_pivot + outward * (size * side.sign()),
                spin_axis: outward * side.sign(),
                kingpin_lower: self.rocker_pivot - self.rocker_axis * size,
                kingpin_upper: self.rocker_pivot + self.rocker_axis * size,
                steering_arm: self.rocker_ball(*self.drawn.get(side)),
                tyre_radius: size,
                tyre_width: size,
            },
            suspension: Suspension::FixedKingpin,
        };
        Assembly::new(&FrontAxle {
            corners: Sides::from_fn(corner),
            drive: Drive::SwingArm(SwingArm {
                axis_point: self.crank_pivot,
                axis_direction: self.crank_axis,
                rod_inner: Sides::both(self.crank_ball),
            }),
            rods: Sides::both(Rod::FixedLength(self.rod)),
            wheelbase: 10.0 * size,
            station: 0.0,
            road: LEVEL,
        })
    }

    /// Rocker angles of both branches at a crank input, degrees from -180 to 180.
    pub(crate) fn rocker_angles(&self, assembly: &Assembly, input: f64) -> Sides<f64> {
        let pose = assembly.pose(input.to_radians(), Sides::both(0.0)).unwrap();
        pose.corners.map(|corner| {
            let arm = corner.steering_arm - self.rocker_pivot;
            let ahead = self.rocker_axis.cross(&self.rocker_arm);
            arm.dot(&ahead)
                .atan2(arm.dot(&self.rocker_arm))
                .to_degrees()
        })
    }
}
