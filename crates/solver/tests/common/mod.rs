//! Reads the tables of independent solvers: cases as points, expected rows as figures.
#![allow(clippy::unwrap_used, clippy::panic, dead_code, unreachable_pub)]

use std::path::PathBuf;

use serde_json::Value;
use steerloft_solver::axle::{Corner, FrontAxle, Knuckle, Rod, spin_axis_at_camber};
use steerloft_solver::drive::{Crank, Drive, InnerBallsOn, Slider, SwingArm, TwinCrank};
use steerloft_solver::frame::{Road, Side};
use steerloft_solver::suspension::{Arm, Suspension};
use steerloft_solver::{Point, Sides, Vector};

/// Folder of the reference tables.
pub fn reference_folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference")
}

/// A table by folder and name.
pub fn table(folder: &str, name: &str) -> Value {
    let path = reference_folder().join(folder).join(name);
    let text = std::fs::read_to_string(&path)
        .unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// A number of a table.
pub fn number(value: &Value) -> f64 {
    value
        .as_f64()
        .unwrap_or_else(|| panic!("not a number: {value}"))
}

/// A number of a table, or what stands for it where it is left out.
fn given_or(value: &Value, otherwise: f64) -> f64 {
    if value.is_null() {
        otherwise
    } else {
        number(value)
    }
}

/// A case's steering input in the solver's unit: degrees to rad, a rack's mm as they are.
pub fn input(case: &Value, shown: f64) -> f64 {
    if case["drive"]["kind"] == "Slider" {
        shown
    } else {
        shown.to_radians()
    }
}

/// A position of a table.
pub fn point(value: &Value) -> Point {
    Point::new(number(&value[0]), number(&value[1]), number(&value[2]))
}

/// A direction of a table.
pub fn vector(value: &Value) -> Vector {
    point(value).coords
}

/// Numbers of a table.
pub fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(number).collect()
}

/// The front axle that a case describes.
pub fn front_axle(case: &Value) -> FrontAxle {
    let suspension = &case["suspension"];
    let kind = suspension["kind"].as_str().unwrap();
    let left = corner(kind, &suspension["left"], Side::Left);
    let right = if suspension["right"].is_null() {
        left.mirrored()
    } else {
        corner(kind, &suspension["right"], Side::Right)
    };
    FrontAxle {
        corners: Sides::new(left, right),
        drive: drive(&case["drive"]),
        rods: rods(&case["rods"]),
        wheelbase: number(&case["wheelbase"]),
        station: given_or(&case["station"], 0.0),
        road: Road {
            ride_height: number(&case["ride_height"]),
            pitch: number(&case["pitch"]).to_radians(),
            roll: number(&case["roll"]).to_radians(),
        },
    }
}

fn corner(kind: &str, given: &Value, side: Side) -> Corner {
    let kingpin_lower = point(&given["kingpin_lower"]);
    let kingpin_upper = point(&given["kingpin_upper"]);
    // An arm made longer or shorter than drawn has its ball away from the knuckle's own point.
    let arm = |hinge: &str, ball: &str, drawn| Arm {
        hinge: [point(&given[hinge][0]), point(&given[hinge][1])],
        ball: if given[ball].is_null() {
            drawn
        } else {
            point(&given[ball])
        },
    };
    let upper_arm = || arm("upper_hinge", "upper_ball", kingpin_upper);
    let lower_arm = || arm("lower_hinge", "lower_ball", kingpin_lower);
    Corner {
        knuckle: Knuckle {
            wheel_centre: point(&given["wheel_centre"]),
            spin_axis: if given["spin_axis"].is_null() {
                spin_axis_at_camber(side, number(&given["camber"]).to_radians())
            } else {
                vector(&given["spin_axis"])
            },
            kingpin_lower,
            kingpin_upper,
            steering_arm: point(&given["steering_arm"]),
            tyre_radius: number(&given["tyre_radius"]),
            tyre_width: number(&given["tyre_width"]),
        },
        suspension: match kind {
            "FixedKingpin" => Suspension::FixedKingpin,
            "SlidingKingpin" => Suspension::SlidingKingpin,
            "SwingingUpperArm" => Suspension::SwingingUpperArm(upper_arm()),
            "DoubleWishbone" => Suspension::DoubleWishbone {
                lower: lower_arm(),
                upper: upper_arm(),
            },
            "Strut" => Suspension::Strut {
                lower: lower_arm(),
                slide_direction: if given["slide_dir"].is_null() {
                    kingpin_upper - kingpin_lower
                } else {
                    vector(&given["slide_dir"])
                },
            },
            other => panic!("unknown suspension kind {other}"),
        },
    }
}

fn drive(given: &Value) -> Drive {
    let inner = &given["rod_inner"];
    let rod_inner = Sides::new(point(&inner["left"]), point(&inner["right"]));
    match given["kind"].as_str().unwrap() {
        "SwingArm" => Drive::SwingArm(SwingArm {
            axis_point: point(&given["axis_point"]),
            axis_direction: vector(&given["axis_dir"]),
            rod_inner,
        }),
        "Slider" => Drive::Slider(Slider {
            direction: vector(&given["direction"]),
            rod_inner,
        }),
        "TwinCrank" => Drive::TwinCrank(TwinCrank {
            cranks: Sides::new(crank(&given["crank_left"]), crank(&given["crank_right"])),
            cross_balls: Sides::new(point(&given["cross_left"]), point(&given["cross_right"])),
            rod_inner,
            inner_on: if given["inner_on"] == "cross_link" {
                InnerBallsOn::CrossLink
            } else {
                InnerBallsOn::Cranks
            },
            servo: crank(&given["servo"]),
            drag_servo: point(&given["drag_servo"]),
            drag_crank: point(&given["drag_crank"]),
            driven: if given["driven"] == "left" {
                Side::Left
            } else {
                Side::Right
            },
            drag_length: given["drag_length"].as_f64(),
            cross_length: given["cross_length"].as_f64(),
        }),
        other => panic!("unknown drive {other}"),
    }
}

fn crank(given: &Value) -> Crank {
    Crank {
        axis_point: point(&given["axis_point"]),
        axis_direction: vector(&given["axis_dir"]),
    }
}

fn rods(given: &Value) -> Sides<Rod> {
    match given["kind"].as_str().unwrap() {
        "HoldToe" => Sides::both(Rod::HoldToe(number(&given["angle"]).to_radians())),
        "FixedLength" => Sides::new(
            Rod::FixedLength(number(&given["left"])),
            Rod::FixedLength(number(&given["right"])),
        ),
        other => panic!("unknown rod setting {other}"),
    }
}
