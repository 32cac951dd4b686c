//! Random steering drives between two corners of a 1:12 pan car, and a drive moved or mirrored.

use steerloft_solver::axle::{Corner, FrontAxle};
use steerloft_solver::drive::{Crank, Drive, InnerBallsOn, Slider, SwingArm, TwinCrank};
use steerloft_solver::frame::{Road, Side, mirrored_point};
use steerloft_solver::{Point, Sides, Vector};

use super::trial::Draw;

/// A random drive, each kind as often as the others.
pub(crate) fn drive(corners: &Sides<Corner>, draw: &mut Draw) -> Drive {
    let outer = corners.left.knuckle.steering_arm;
    let kind = draw.number();
    if kind < -0.33 {
        Drive::Slider(slider(&outer, draw))
    } else if kind < 0.33 {
        Drive::SwingArm(swing_arm(&outer, draw))
    } else {
        Drive::TwinCrank(twin_crank(&outer, draw))
    }
}

/// Inner balls as drawn.
pub(crate) fn rod_inner(drive: &Drive) -> &Sides<Point> {
    match drive {
        Drive::SwingArm(drive) => &drive.rod_inner,
        Drive::TwinCrank(drive) => &drive.rod_inner,
        Drive::Slider(drive) => &drive.rod_inner,
    }
}

/// A left inner ball about level with the outer one, `inboard` from the centre line.
fn inner_ball(outer: &Point, inboard: (f64, f64), draw: &mut Draw) -> Point {
    Point::new(
        outer.x + draw.between(-5.0, 5.0),
        draw.between(inboard.0, inboard.1),
        outer.z + draw.between(-5.0, 5.0),
    )
}

fn slider(outer: &Point, draw: &mut Draw) -> Slider {
    let left = inner_ball(outer, (6.0, 22.0), draw);
    let right = mirrored_point(&left) + Vector::new(0.0, draw.about_zero(4.0), 0.0);
    Slider {
        direction: Vector::new(draw.about_zero(0.2), 1.0, draw.about_zero(0.2)),
        rod_inner: Sides::new(left, right),
    }
}

/// A servo across the car, an upright servo, or anything between, as a column.
fn swing_arm(outer: &Point, draw: &mut Draw) -> SwingArm {
    let left = inner_ball(outer, (3.0, 11.0), draw);
    let right =
        mirrored_point(&left) + Vector::new(0.0, draw.about_zero(4.0), draw.about_zero(2.0));
    let lean = draw.between(-1.6, 1.6);
    let axis_direction = Vector::new(lean.cos(), draw.about_zero(0.2), lean.sin());
    let length = draw.between(8.0, 15.0);
    let side = if draw.flip() { 1.0 } else { -1.0 };
    let middle = Point::new(left.x, draw.about_zero(8.0), left.z);
    SwingArm {
        axis_point: middle + axis_direction.cross(&Vector::y()).normalize() * (side * length),
        axis_direction: axis_direction * draw.between(0.5, 2.0),
        rod_inner: Sides::new(left, right),
    }
}

/// Two cranks whose levers point forward or back, a servo behind or ahead of them.
fn twin_crank(outer: &Point, draw: &mut Draw) -> TwinCrank {
    let way = if draw.flip() { 1.0 } else { -1.0 };
    let left_pivot = Point::new(
        outer.x - way * draw.between(7.0, 12.0),
        draw.between(12.0, 22.0),
        outer.z + draw.between(-4.0, 4.0),
    );
    let lever = |pivot: Point, draw: &mut Draw| {
        pivot
            + Vector::new(
                way * draw.between(7.0, 12.0),
                draw.between(-3.0, 3.0),
                draw.between(-2.0, 2.0),
            )
    };
    let left_cross = lever(left_pivot, draw);
    let left_inner = lever(left_pivot, draw);
    let pivots = Sides::new(left_pivot, mirrored_point(&left_pivot));
    let uneven = Vector::new(
        draw.about_zero(1.0),
        draw.about_zero(1.0),
        draw.about_zero(1.0),
    );
    let cross_balls = Sides::new(left_cross, mirrored_point(&left_cross) + uneven);
    let on_link = draw.flip();
    let link = cross_balls.right - cross_balls.left;
    let share = draw.between(-0.1, 0.4);
    let rod_inner = if on_link {
        Sides::new(
            cross_balls.left + link * share,
            cross_balls.right - link * share,
        )
    } else {
        Sides::new(left_inner, mirrored_point(&left_inner))
    };
    let driven = if draw.flip() { Side::Left } else { Side::Right };
    let crank = |side: Side, draw: &mut Draw| Crank {
        axis_point: *pivots.get(side),
        axis_direction: Vector::new(draw.about_zero(0.2), draw.about_zero(0.2), 1.0),
    };
    let cranks = Sides::new(crank(Side::Left, draw), crank(Side::Right, draw));
    // The drag link runs lengthwise from the servo's arm to a lever that stands across.
    let drag_crank = pivots.get(driven)
        + Vector::new(
            draw.between(-2.0, 2.0),
            driven.sign() * draw.between(7.0, 11.0),
            draw.between(-2.0, 2.0),
        );
    let drag_servo = drag_crank
        + Vector::new(
            -way * draw.between(18.0, 30.0),
            draw.between(-4.0, 4.0),
            draw.between(-4.0, 4.0),
        );
    let upright = draw.flip();
    let length = draw.between(8.0, 13.0);
    let servo = if upright {
        Crank {
            axis_point: drag_servo
                + Vector::new(draw.between(-2.0, 2.0), -driven.sign() * length, 0.0),
            axis_direction: Vector::new(draw.about_zero(0.2), draw.about_zero(0.2), 1.0),
        }
    } else {
        Crank {
            axis_point: drag_servo + Vector::new(draw.between(-2.0, 2.0), 0.0, -length),
            axis_direction: Vector::new(draw.about_zero(0.2), 1.0, draw.about_zero(0.2)),
        }
    };
    let mut set = |drawn: f64| {
        let length = drawn + draw.about_zero(0.5);
        draw.flip().then_some(length)
    };
    TwinCrank {
        cranks,
        cross_balls,
        rod_inner,
        inner_on: if on_link {
            InnerBallsOn::CrossLink
        } else {
            InnerBallsOn::Cranks
        },
        servo,
        drag_servo,
        drag_crank,
        driven,
        drag_length: set((drag_crank - drag_servo).norm()),
        cross_length: set(link.norm()),
    }
}

/// A drive with every point and direction mapped and every length multiplied. Sides stay; directions are mapped as
/// the rotation axes of levers and as they are for a rack.
pub(crate) fn mapped(
    drive: &Drive,
    point: &dyn Fn(Point) -> Point,
    axis: &dyn Fn(Vector) -> Vector,
    scale: f64,
) -> Drive {
    let crank = |crank: Crank| Crank {
        axis_point: point(crank.axis_point),
        axis_direction: axis(crank.axis_direction),
    };
    match *drive {
        Drive::SwingArm(drive) => Drive::SwingArm(SwingArm {
            axis_point: point(drive.axis_point),
            axis_direction: axis(drive.axis_direction),
            rod_inner: drive.rod_inner.map(point),
        }),
        Drive::Slider(drive) => Drive::Slider(Slider {
            direction: axis(drive.direction),
            rod_inner: drive.rod_inner.map(point),
        }),
        Drive::TwinCrank(drive) => Drive::TwinCrank(TwinCrank {
            cranks: drive.cranks.map(crank),
            cross_balls: drive.cross_balls.map(point),
            rod_inner: drive.rod_inner.map(point),
            servo: crank(drive.servo),
            drag_servo: point(drive.drag_servo),
            drag_crank: point(drive.drag_crank),
            drag_length: drive.drag_length.map(|length| length * scale),
            cross_length: drive.cross_length.map(|length| length * scale),
            ..drive
        }),
    }
}

/// The drive's mirror image, to be moved by the negated input: a left turn becomes a right turn.
pub(crate) fn mirrored(drive: &Drive) -> Drive {
    let flipped = |vector: Vector| Vector::new(vector.x, -vector.y, vector.z);
    // A turn about a reflected axis the other way round, or a shift along a reflected direction negated.
    let image = match drive {
        Drive::Slider(_) => mapped(
            drive,
            &|point| mirrored_point(&point),
            &|way| -flipped(way),
            1.0,
        ),
        _ => mapped(drive, &|point| mirrored_point(&point), &flipped, 1.0),
    };
    let swapped = |balls: Sides<Point>| Sides::new(balls.right, balls.left);
    match image {
        Drive::SwingArm(drive) => Drive::SwingArm(SwingArm {
            rod_inner: swapped(drive.rod_inner),
            ..drive
        }),
        Drive::Slider(drive) => Drive::Slider(Slider {
            rod_inner: swapped(drive.rod_inner),
            ..drive
        }),
        Drive::TwinCrank(drive) => Drive::TwinCrank(TwinCrank {
            cranks: Sides::new(drive.cranks.right, drive.cranks.left),
            cross_balls: swapped(drive.cross_balls),
            rod_inner: swapped(drive.rod_inner),
            driven: drive.driven.other(),
            ..drive
        }),
    }
}

/// The axle made mirror-symmetrical by its left half, or nothing for twin cranks, which a drag link turns unevenly.
pub(crate) fn symmetrical(axle: &FrontAxle) -> Option<FrontAxle> {
    let left = axle.corners.left;
    let both = |balls: Sides<Point>| Sides::new(balls.left, mirrored_point(&balls.left));
    let drive = match axle.drive {
        Drive::SwingArm(drive) => Drive::SwingArm(SwingArm {
            axis_point: Point::new(drive.axis_point.x, 0.0, drive.axis_point.z),
            axis_direction: Vector::new(drive.axis_direction.x, 0.0, drive.axis_direction.z),
            rod_inner: both(drive.rod_inner),
        }),
        Drive::Slider(drive) => Drive::Slider(Slider {
            direction: Vector::y(),
            rod_inner: both(drive.rod_inner),
        }),
        Drive::TwinCrank(_) => return None,
    };
    Some(FrontAxle {
        corners: Sides::new(left, left.mirrored()),
        drive,
        rods: Sides::both(axle.rods.left),
        road: Road {
            roll: 0.0,
            ..axle.road
        },
        ..*axle
    })
}
