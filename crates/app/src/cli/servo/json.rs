//! The servo of a setup for programs: every value as a number, in full precision.

use std::path::Path;

use serde::Serialize;
use steerloft_analysis::loads::{LoadCurve, LoadPoint};
use steerloft_analysis::saver::Blows;
use steerloft_analysis::servo::{Asymmetry, Centring, EndPoint, ServoFit};
use steerloft_setup::car::Servo;
use steerloft_solver::frame::Side;

use super::Answer;

/// The answer as JSON holds it. Angles in degrees, lengths in mm; `input` in the unit told.
#[derive(Serialize)]
pub(super) struct JsonServo {
    file: String,
    car: String,
    input_unit: &'static str,
    servo: Option<Servo>,
    centre: JsonCentre,
    end_points: JsonSides<Option<JsonEnd>>,
    load: Option<JsonLoad>,
    fit: Option<JsonFit>,
    saver: Option<JsonSaver>,
    cautions: Vec<String>,
}

#[derive(Serialize)]
struct JsonSides<T> {
    left: T,
    right: T,
}

#[derive(Serialize)]
struct JsonCentre {
    wanted: f64,
    throw: f64,
    teeth: Vec<JsonTooth>,
    trimmed: Option<JsonLocks>,
    equal_locks_at: Option<f64>,
}

#[derive(Serialize)]
struct JsonTooth {
    tooth: i32,
    stands_at_deg: f64,
    left_over_deg: f64,
    trim_deg: f64,
    trim_us: Option<f64>,
    untrimmed: Option<JsonLocks>,
}

#[derive(Serialize)]
#[allow(
    clippy::struct_field_names,
    reason = "a name that programs read ends in its unit"
)]
struct JsonLocks {
    left_deg: f64,
    right_deg: f64,
    difference_deg: f64,
}

#[derive(Serialize)]
struct JsonEnd {
    input: f64,
    throw: f64,
    share_of_throw_percent: Option<f64>,
    pulse_us: Option<f64>,
    lock_deg: f64,
    swept_radius_mm: Option<f64>,
}

#[derive(Serialize)]
struct JsonLoad {
    least_margin: Option<f64>,
    unloaded_time_s: Option<f64>,
    loaded_time_s: Option<f64>,
    points: Vec<JsonLoadPoint>,
}

#[derive(Serialize)]
struct JsonLoadPoint {
    input: f64,
    moment_left_nmm: f64,
    moment_right_nmm: f64,
    /// N mm at an arm, N at a rack.
    effort: f64,
    advantage: f64,
    margin: Option<f64>,
    speed_deg_per_s: Option<f64>,
}

#[derive(Serialize)]
struct JsonFit {
    beside_centre_line_mm: f64,
    over_chassis_mm: f64,
    obstacles: Vec<JsonObstacle>,
}

#[derive(Serialize)]
struct JsonObstacle {
    name: String,
    clearance_mm: f64,
}

#[derive(Serialize)]
struct JsonSaver {
    breakaway_nmm: f64,
    rate_nmm_per_deg: f64,
    struck: JsonSides<JsonBlow>,
}

#[derive(Serialize)]
struct JsonBlow {
    opens_at_nmm: f64,
    moment_nmm: f64,
    arm_deg: f64,
    left_wheel_deg: f64,
    right_wheel_deg: f64,
    at_lock: bool,
}

impl JsonServo {
    pub(super) fn of(file: &Path, answer: &Answer) -> Self {
        let survey = &answer.survey;
        let end = |side: Side| survey.ends.get(side).as_ref().map(JsonEnd::of);
        Self {
            file: file.display().to_string(),
            car: answer.setup.car.name.clone(),
            input_unit: survey.unit.word(),
            servo: answer.setup.car.servo,
            centre: JsonCentre::of(&survey.centring),
            end_points: JsonSides {
                left: end(Side::Left),
                right: end(Side::Right),
            },
            load: survey.load.as_ref().map(JsonLoad::of),
            fit: survey.fit.as_ref().map(JsonFit::of),
            saver: answer.blows.as_ref().map(JsonSaver::of),
            cautions: survey.cautions(),
        }
    }
}

impl JsonCentre {
    fn of(centring: &Centring) -> Self {
        let teeth = centring.teeth.iter().map(|choice| JsonTooth {
            tooth: choice.tooth.tooth,
            stands_at_deg: choice.tooth.stands_at,
            left_over_deg: choice.tooth.error,
            trim_deg: choice.tooth.trim,
            trim_us: choice.tooth.trim_microseconds,
            untrimmed: choice.untrimmed.map(JsonLocks::of),
        });
        Self {
            wanted: centring.wanted,
            throw: centring.throw,
            teeth: teeth.collect(),
            trimmed: centring.trimmed.map(JsonLocks::of),
            equal_locks_at: centring.equal_locks,
        }
    }
}

impl JsonLocks {
    fn of(locks: Asymmetry) -> Self {
        Self {
            left_deg: locks.left,
            right_deg: locks.right,
            difference_deg: locks.difference(),
        }
    }
}

impl JsonEnd {
    fn of(end: &EndPoint) -> Self {
        Self {
            input: end.input,
            throw: end.throw,
            share_of_throw_percent: end.share,
            pulse_us: end.pulse,
            lock_deg: end.lock,
            swept_radius_mm: end.swept_radius,
        }
    }
}

impl JsonLoad {
    fn of(load: &LoadCurve) -> Self {
        Self {
            least_margin: load.least_margin(),
            unloaded_time_s: load.unloaded_time,
            loaded_time_s: load.loaded_time,
            points: load.points.iter().map(JsonLoadPoint::of).collect(),
        }
    }
}

impl JsonLoadPoint {
    fn of(point: &LoadPoint) -> Self {
        Self {
            input: point.input,
            moment_left_nmm: point.moments.left,
            moment_right_nmm: point.moments.right,
            effort: point.effort,
            advantage: point.advantage,
            margin: point.margin,
            speed_deg_per_s: point.speed,
        }
    }
}

impl JsonFit {
    fn of(fit: &ServoFit) -> Self {
        let obstacles = fit.obstacles.iter().map(|one| JsonObstacle {
            name: one.obstacle.clone(),
            clearance_mm: one.clearance,
        });
        Self {
            beside_centre_line_mm: fit.centre_line,
            over_chassis_mm: fit.over_chassis,
            obstacles: obstacles.collect(),
        }
    }
}

impl JsonSaver {
    fn of(blows: &Blows) -> Self {
        let blow = |side: Side| {
            let opening = blows.openings.get(side);
            JsonBlow {
                opens_at_nmm: opening.opens_at,
                moment_nmm: *blows.moments.get(side),
                arm_deg: opening.arm,
                left_wheel_deg: opening.wheels.left,
                right_wheel_deg: opening.wheels.right,
                at_lock: opening.at_lock,
            }
        };
        Self {
            breakaway_nmm: blows.saver.breakaway,
            rate_nmm_per_deg: blows.saver.rate,
            struck: JsonSides {
                left: blow(Side::Left),
                right: blow(Side::Right),
            },
        }
    }
}
