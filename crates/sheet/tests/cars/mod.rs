//! Invented cars to draw.
#![allow(dead_code, reason = "each test file uses some of these")]

use std::collections::BTreeMap;

use steerloft_setup::adjustment::{
    Adjustment, ChoiceOption, Effect, EffectSides, Kind, Place, PointName, Scalar, Spacer, Unit,
};
use steerloft_setup::car::{
    BuildErrors, Car, CornerPoints, Drive, Position, Ranges, RightCorner, Servo, ServoCase,
    Suspension, TieRodParts,
};
use steerloft_setup::layout::{Layout, ServoBox, layout};
use steerloft_setup::setup::{Chosen, Record, Rods, Setup};
use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod, spin_axis_at_camber};
use steerloft_solver::drive::{self, Crank, InnerBallsOn, Slider, TwinCrank};
use steerloft_solver::frame::Road;
use steerloft_solver::pose::AxlePose;
use steerloft_solver::suspension::{self, Arm};
use steerloft_solver::{Assembly, Point, Side, Sides, Vector};

/// A setup laid out and posed.
pub(crate) struct Posed {
    pub(crate) setup: Setup,
    pub(crate) layout: Layout,
    pub(crate) pose: AxlePose,
}

/// Lays a setup out and poses it at an input (degrees, or mm of a rack) and a travel (mm) of both wheels.
pub(crate) fn posed(setup: Setup, input: f64, travel: f64) -> Posed {
    let layout = layout(&setup);
    let assembly = Assembly::new(&layout.axle).unwrap();
    let input = match setup.car.drive.input_unit() {
        Unit::Degrees => input.to_radians(),
        Unit::Millimetres => input,
    };
    let pose = assembly.pose(input, Sides::both(travel)).unwrap();
    Posed {
        setup,
        layout,
        pose,
    }
}

/// A 1:12 pan car: transverse servo, swinging upper arm, spacers at both ends of the rods and under the servo.
pub(crate) fn pan_car() -> Setup {
    let car = Car {
        name: "1:12 pan car".to_owned(),
        notes: String::new(),
        left: CornerPoints {
            wheel_centre: Position(0.0, 71.5, 17.5),
            camber: -1.5,
            kingpin_lower: Position(1.2, 55.0, 7.0),
            kingpin_upper: Position(-1.4, 52.5, 31.0),
            steering_arm: Position(-13.0, 51.0, 20.0),
            tyre_radius: 21.5,
            tyre_width: 22.0,
            suspension: Suspension::SwingingUpperArm {
                upper_hinge_front: Position(9.0, 27.0, 30.5),
                upper_hinge_rear: Position(-11.0, 27.0, 29.5),
            },
        },
        right: RightCorner::Mirrored,
        drive: Drive::SwingArm {
            axis_point: Position(-16.0, 0.0, 9.0),
            axis_direction: Position(1.0, 0.0, 0.0),
            rod_inner_left: Position(-12.0, 8.5, 23.0),
            rod_inner_right: Position(-12.0, -8.5, 23.0),
        },
        servo: Some(Servo::from(ServoCase {
            size: Position(26.0, 40.0, 20.0),
            centre: Position(-34.0, 10.0, 11.5),
        })),
        saver: None,
        wheelbase: 200.0,
        ride_height: 4.0,
        pitch: 0.0,
        roll: 0.0,
        ranges: Ranges {
            input: (-35.0, 35.0),
            travel: (-1.0, 2.0),
        },
        tie_rod: TieRodParts {
            cup_length: 9.0,
            shortest: 28.0,
            longest: 52.0,
            thread: None,
        },
        joints: None,
        loads: None,
        clearances: None,
        obstacles: Vec::new(),
        build_errors: BuildErrors::default(),
        stock: Vec::new(),
        adjustments: pan_car_adjustments(),
    };
    Setup {
        car,
        chosen: BTreeMap::from([("Outer ball spacers".to_owned(), Chosen::Stack(3.0))]),
        rods: Rods::HoldToe(0.25),
        record: Record {
            name: "Carpet, first run".to_owned(),
            date: "2026-11-21".to_owned(),
            event: "Club evening".to_owned(),
            ..Record::default()
        },
    }
}

fn pan_car_adjustments() -> Vec<Adjustment> {
    let spacers = |thicknesses: &[f64]| {
        let spacer = |&thickness: &f64| Spacer {
            thickness,
            count: 2,
        };
        thicknesses.iter().map(spacer).collect::<Vec<_>>()
    };
    let moves = |points: &[PointName], by: Position| Effect::Move {
        points: points.to_vec(),
        by,
        sides: EffectSides::Mirrored,
    };
    let adjustment = |name: &str, place: Place, kind: Kind| Adjustment {
        name: name.to_owned(),
        place,
        notes: String::new(),
        kind,
    };
    let stack = |parts: &[f64], base: f64, effect: Effect| Kind::Stack {
        parts: spacers(parts),
        stock: None,
        most: 6.0,
        base,
        effects: vec![effect],
    };
    let drive = [PointName::DriveAxis, PointName::RodInner];
    vec![
        adjustment(
            "Servo packing",
            Place::Servo,
            stack(
                &[0.5, 1.0, 2.0],
                1.0,
                moves(&drive, Position(0.0, 0.0, 1.0)),
            ),
        ),
        adjustment(
            "Servo station",
            Place::Servo,
            Kind::Slide {
                unit: Unit::Millimetres,
                range: (-5.0, 5.0),
                step: None,
                base: 0.0,
                effects: vec![moves(&drive, Position(1.0, 0.0, 0.0))],
            },
        ),
        adjustment(
            "Inner ball spacers",
            Place::SteeringDrive,
            stack(
                &[0.5, 1.0],
                1.0,
                moves(&[PointName::RodInner], Position(1.0, 0.0, 0.0)),
            ),
        ),
        adjustment(
            "Outer ball spacers",
            Place::TieRod,
            stack(
                &[0.5, 1.0, 2.0],
                2.0,
                moves(&[PointName::SteeringArm], Position(0.0, 0.0, 1.0)),
            ),
        ),
        adjustment(
            "Steering-arm hole",
            Place::Knuckle,
            Kind::Choice {
                options: vec![
                    ChoiceOption {
                        name: "front hole".to_owned(),
                        effects: vec![moves(&[PointName::SteeringArm], Position(3.0, 1.0, 0.0))],
                    },
                    ChoiceOption {
                        name: "rear hole".to_owned(),
                        effects: Vec::new(),
                    },
                ],
                base: "rear hole".to_owned(),
            },
        ),
        adjustment(
            "Ride height",
            Place::Chassis,
            Kind::Slide {
                unit: Unit::Millimetres,
                range: (-1.0, 2.0),
                step: Some(0.5),
                base: 0.0,
                effects: vec![Effect::Add {
                    scalar: Scalar::RideHeight,
                    by: 1.0,
                }],
            },
        ),
    ]
}

/// A kart: fixed kingpins, a lever on a raked steering column, no servo.
pub(crate) fn kart() -> Setup {
    let car = Car {
        name: "Sprint kart".to_owned(),
        notes: String::new(),
        left: CornerPoints {
            wheel_centre: Position(0.0, 575.0, 97.0),
            camber: 0.0,
            kingpin_lower: Position(12.0, 497.0, 50.0),
            kingpin_upper: Position(-10.0, 480.0, 145.0),
            steering_arm: Position(-98.0, 462.0, 88.0),
            tyre_radius: 129.0,
            tyre_width: 125.0,
            suspension: Suspension::FixedKingpin,
        },
        right: RightCorner::Mirrored,
        drive: Drive::SwingArm {
            axis_point: Position(-64.0, 0.0, 110.0),
            axis_direction: Position(-0.8, 0.0, 0.6),
            rod_inner_left: Position(-100.0, 22.0, 62.0),
            rod_inner_right: Position(-100.0, -22.0, 62.0),
        },
        servo: None,
        saver: None,
        wheelbase: 1050.0,
        ride_height: 32.0,
        pitch: 0.0,
        roll: 0.0,
        ranges: Ranges {
            input: (-35.0, 35.0),
            travel: (0.0, 0.0),
        },
        tie_rod: TieRodParts {
            cup_length: 40.0,
            shortest: 300.0,
            longest: 480.0,
            thread: None,
        },
        joints: None,
        loads: None,
        clearances: None,
        obstacles: Vec::new(),
        build_errors: BuildErrors::default(),
        stock: Vec::new(),
        adjustments: Vec::new(),
    };
    Setup {
        car,
        chosen: BTreeMap::new(),
        rods: Rods::HoldToe(0.0),
        record: Record::default(),
    }
}

/// Poses a layout at an input (rad, or mm of a rack) and a travel (mm) of both wheels.
pub(crate) fn pose(layout: &Layout, input: f64, travel: f64) -> AxlePose {
    let assembly = Assembly::new(&layout.axle).unwrap();
    assembly.pose(input, Sides::both(travel)).unwrap()
}

/// A 1:10 touring car: double wishbones, two cranks with a cross link, and an upright servo with a drag link.
pub(crate) fn touring_car() -> Layout {
    let corner = Corner {
        knuckle: Knuckle {
            wheel_centre: Point::new(0.0, 81.0, 26.0),
            spin_axis: spin_axis_at_camber(Side::Left, (-1.5_f64).to_radians()),
            kingpin_lower: Point::new(1.0, 76.0, 13.0),
            kingpin_upper: Point::new(-2.0, 73.0, 41.0),
            steering_arm: Point::new(-15.0, 72.0, 24.0),
            tyre_radius: 31.5,
            tyre_width: 25.0,
        },
        suspension: suspension::Suspension::DoubleWishbone {
            lower: Arm {
                hinge: [Point::new(16.0, 24.0, 11.0), Point::new(-22.0, 24.0, 11.0)],
                ball: Point::new(1.0, 76.0, 13.0),
            },
            upper: Arm {
                hinge: [Point::new(6.0, 33.0, 38.0), Point::new(-10.0, 33.0, 38.0)],
                ball: Point::new(-2.0, 73.0, 41.0),
            },
        },
    };
    let crank = |y: f64| Crank {
        axis_point: Point::new(-30.0, y, 8.0),
        axis_direction: Vector::z(),
    };
    let drive = drive::Drive::TwinCrank(TwinCrank {
        cranks: Sides::new(crank(20.0), crank(-20.0)),
        cross_balls: Sides::new(
            Point::new(-17.0, 14.0, 24.0),
            Point::new(-17.0, -14.0, 24.0),
        ),
        rod_inner: Sides::new(
            Point::new(-19.0, 26.0, 24.0),
            Point::new(-19.0, -26.0, 24.0),
        ),
        inner_on: InnerBallsOn::Cranks,
        servo: Crank {
            axis_point: Point::new(-58.0, 30.0, 26.0),
            axis_direction: Vector::z(),
        },
        drag_servo: Point::new(-58.0, 44.0, 30.0),
        drag_crank: Point::new(-31.0, 34.0, 28.0),
        driven: Side::Left,
        drag_length: None,
        cross_length: None,
    });
    let servo = ServoBox {
        centre: Point::new(-58.0, 40.0, 12.0),
        size: Vector::new(20.0, 40.0, 24.0),
    };
    symmetrical(&corner, &drive, 257.0, 5.5, Some(servo))
}

/// A small formula car: struts, and a rack behind the axle.
pub(crate) fn rack_car() -> Layout {
    let corner = Corner {
        knuckle: Knuckle {
            wheel_centre: Point::new(0.0, 590.0, 210.0),
            spin_axis: spin_axis_at_camber(Side::Left, (-1.0_f64).to_radians()),
            kingpin_lower: Point::new(5.0, 560.0, 110.0),
            kingpin_upper: Point::new(-25.0, 500.0, 560.0),
            steering_arm: Point::new(-75.0, 545.0, 150.0),
            tyre_radius: 250.0,
            tyre_width: 180.0,
        },
        suspension: suspension::Suspension::Strut {
            lower: Arm {
                hinge: [
                    Point::new(140.0, 220.0, 115.0),
                    Point::new(-160.0, 220.0, 115.0),
                ],
                ball: Point::new(5.0, 560.0, 110.0),
            },
            slide_direction: Vector::new(-30.0, -40.0, 450.0),
        },
    };
    let drive = drive::Drive::Slider(Slider {
        direction: Vector::y(),
        rod_inner: Sides::new(
            Point::new(-85.0, 210.0, 155.0),
            Point::new(-85.0, -210.0, 155.0),
        ),
    });
    symmetrical(&corner, &drive, 1600.0, 40.0, None)
}

fn symmetrical(
    left: &Corner,
    drive: &drive::Drive,
    wheelbase: f64,
    ride_height: f64,
    servo: Option<ServoBox>,
) -> Layout {
    Layout {
        joints: None,
        axle: FrontAxle {
            corners: Sides::new(*left, left.mirrored()),
            drive: *drive,
            rods: Sides::both(Rod::HoldToe(0.0)),
            wheelbase,
            station: 0.0,
            road: Road {
                ride_height,
                pitch: 0.0,
                roll: 0.0,
            },
        },
        servo,
        stacks: Vec::new(),
        cup_length: 0.1 * left.knuckle.tyre_radius,
    }
}
