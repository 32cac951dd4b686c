//! The solver against tables made by general numerical solvers that share no method with it: one nonlinear
//! system over rigid-body poses, complex-step derivatives, branch by continuation. Cases and rows lie in
//! `tests/reference`; its README says how they were made.
#![allow(clippy::unwrap_used, clippy::panic)]

mod common;

use common::{front_axle, input, number, numbers, point, table};
use serde_json::Value;
use steerloft_solver::error::Miss;
use steerloft_solver::figures::gradient::steer_per_input;
use steerloft_solver::figures::linkage::{inner_share, outer_transmission};
use steerloft_solver::figures::{
    arm_lines, corner_figures, inner_outer, kingpin_distance, rod_angles, roll_gradient,
    steering_ratio, straight_ahead_share, travel_gradient, turn_centre, turning,
};
use steerloft_solver::frame::Road;
use steerloft_solver::sweep::{SweepRange, steer_sweep};
use steerloft_solver::{Assembly, AxlePose, Point, Side, Sides, SolveError};

/// Agreement asked for, mm and degrees. The tables carry nine decimals.
const TOLERANCE: f64 = 1e-6;

/// Agreement of the Ackermann share near straight ahead, percentage points: there it is a quotient of small
/// differences.
const SHARE_TOLERANCE: f64 = 1e-5;

/// Compares numbers and counts how many were held against the table.
struct Check<'a> {
    case: &'a str,
    /// Whether the input is a displacement.
    rack: bool,
    compared: usize,
}

impl Check<'_> {
    /// A rate of an angle by the input, in the table's unit: degrees per degree, or degrees per mm of a rack.
    fn input_rate(&self, radians: f64) -> f64 {
        if self.rack {
            radians.to_degrees()
        } else {
            radians
        }
    }

    fn near(&mut self, what: &str, expected: &Value, actual: f64, tolerance: f64) {
        if expected.is_null() {
            return;
        }
        self.compared += 1;
        let expected = number(expected);
        assert!(
            (expected - actual).abs() <= tolerance,
            "{}: {what}: expected {expected}, got {actual}",
            self.case
        );
    }

    fn length(&mut self, what: &str, expected: &Value, actual: f64) {
        self.near(what, expected, actual, TOLERANCE);
    }

    fn angle(&mut self, what: &str, expected: &Value, radians: f64) {
        self.near(what, expected, radians.to_degrees(), TOLERANCE);
    }

    fn place(&mut self, what: &str, expected: &Value, actual: &Point) {
        if expected.is_null() {
            return;
        }
        self.compared += 1;
        let off = (point(expected) - actual).norm();
        assert!(off <= TOLERANCE, "{}: {what} is off by {off} mm", self.case);
    }

    fn corner(
        &mut self,
        what: &str,
        row: &Value,
        assembly: &Assembly,
        pose: &AxlePose,
        side: Side,
    ) {
        let road = &assembly.axle().road;
        let corner = pose.corners.get(side);
        let figures = corner_figures(corner, road);
        let name = |key: &str| format!("{what} {side} {key}");
        self.angle(&name("steer"), &row["steer"], figures.steer);
        self.angle(&name("toe"), &row["toe"], figures.toe);
        self.angle(&name("camber"), &row["camber"], figures.camber);
        self.angle(&name("caster"), &row["caster"], figures.caster);
        self.angle(&name("kpi"), &row["kpi"], figures.inclination);
        self.place(&name("contact"), &row["contact"], &figures.contact_centre);
        self.place(
            &name("wheel_centre"),
            &row["wheel_centre"],
            &corner.wheel_centre,
        );
        self.place(
            &name("ground_point"),
            &row["ground_point"],
            &figures.ground_point,
        );
        self.place(
            &name("outer_ball"),
            &row["outer_ball"],
            &corner.steering_arm,
        );
        self.length(&name("scrub"), &row["scrub"], figures.scrub_radius);
        self.length(&name("trail"), &row["trail"], figures.trail);
        self.length(
            &name("axis_offset"),
            &row["axis_offset"],
            figures.axis_offset,
        );
        self.length(
            &name("castor_offset"),
            &row["castor_offset"],
            figures.castor_offset,
        );
        let outer = outer_transmission(corner);
        self.angle(&name("mu_outer"), &row["mu_outer"], outer.angle);
        self.length(&name("sin_outer"), &row["sin_outer"], outer.share);
        if let Some(share) = inner_share(pose, corner) {
            self.length(&name("sin_inner"), &row["sin_inner"], share);
        }
        let rod = rod_angles(corner);
        self.angle(&name("rod_top"), &row["rod_top"], rod.top);
        self.angle(&name("rod_front"), &row["rod_front"], rod.front);
        if let Some(centre) = turn_centre(corner, road, assembly.axle().rear_axle_behind()) {
            // Near straight ahead the centre runs off to where a rounding of the angle is millimetres.
            let tolerance = TOLERANCE.max(1e-11 * centre.radius * centre.radius);
            self.near(&name("turn_y"), &row["turn_y"], centre.lateral, tolerance);
            self.near(&name("radius"), &row["radius"], centre.radius, tolerance);
        }
    }

    fn row(&mut self, what: &str, row: &Value, assembly: &Assembly, pose: &AxlePose) {
        for side in Side::BOTH {
            self.corner(what, &row[side.to_string()], assembly, pose, side);
        }
        if let Some(pair) = inner_outer(assembly, pose) {
            self.angle(&format!("{what} inner"), &row["inner"], pair.inner);
            self.angle(&format!("{what} outer"), &row["outer"], pair.outer);
            self.angle(
                &format!("{what} ideal_outer"),
                &row["ideal_outer"],
                pair.ideal_outer,
            );
            if let Some(share) = pair.ackermann_share {
                let what = format!("{what} ackermann");
                self.near(&what, &row["ackermann"], share, SHARE_TOLERANCE);
            }
        }
        if let Some(turn) = turning(
            pose,
            &assembly.axle().road,
            assembly.axle().rear_axle_behind(),
        ) {
            let radius = turn.swept_radius;
            let tolerance = TOLERANCE.max(1e-11 * radius * radius);
            let what = format!("{what} turn_spread");
            self.near(&what, &row["turn_spread"], turn.spread, tolerance);
        }
        if let Some(ratio) = steering_ratio(pose, &assembly.axle().road) {
            let ratio = 1.0 / self.input_rate(1.0 / ratio);
            self.length(&format!("{what} ratio"), &row["ratio"], ratio);
        }
    }

    fn on_road(&mut self, row: &Value, assembly: &Assembly, input: f64, road: &Road) {
        let pose = assembly
            .pose_on_road(assembly.static_pose(), input, road)
            .unwrap_or_else(|error| panic!("{}: on road, input {input}: {error}", self.case));
        for side in Side::BOTH {
            let name = side.to_string();
            let figures = corner_figures(pose.corners.get(side), road);
            self.angle("on road steer", &row[&name]["steer"], figures.steer);
            self.angle("on road camber", &row[&name]["camber"], figures.camber);
            self.place(
                "on road contact",
                &row[&name]["contact"],
                &figures.contact_centre,
            );
            self.length(
                "on road travel",
                &row[&name]["travel"],
                *pose.travel.get(side),
            );
        }
    }

    fn statics(&mut self, row: &Value, assembly: &Assembly) {
        let pose = assembly.static_pose();
        let road = &assembly.axle().road;
        self.row("static", row, assembly, pose);
        self.length("B", &row["B"], kingpin_distance(assembly));
        let limit = straight_ahead_share(assembly);
        let expected = &row["ackermann_limit_straight"];
        assert_eq!(
            limit.is_some(),
            !expected.is_null(),
            "{}: {limit:?}",
            self.case
        );
        self.near("limit", expected, limit.unwrap_or(0.0), SHARE_TOLERANCE);
        if let Some(lines) = arm_lines(assembly) {
            let behind = &row["arm_lines_meet_x_behind_origin"];
            self.length("arm lines meet", behind, lines.behind);
            self.length("arm lines share", &row["arm_lines_share"], lines.share);
        }
        for side in Side::BOTH {
            let name = side.to_string();
            let corner = pose.corners.get(side);
            let length = *assembly.rod_lengths().get(side);
            self.length("rod_length", &row[&name]["rod_length"], length);
            let rate = steer_per_input(corner, road);
            let rate = self.input_rate(rate);
            self.length("steer_per_input", &row["steer_per_input"][&name], rate);
            let on_road = assembly.pose_on_road(pose, 0.0, road);
            if let Some(gradient) = on_road
                .ok()
                .and_then(|pose| roll_gradient(pose.corners.get(side), road))
            {
                let rates = &row["roll_gradient"][&name];
                self.length("roll_gradient steer", &rates["steer"], gradient.steer);
                self.length("roll_gradient camber", &rates["camber"], gradient.camber);
                let travel = gradient.travel.to_radians();
                self.length("roll_gradient travel", &rates["travel"], travel);
            }
            if let Some(gradient) = travel_gradient(corner, road) {
                let rates = &row["bump_gradient"][&name];
                self.angle("bump_gradient toe", &rates["toe"], gradient.toe);
                self.angle("bump_gradient camber", &rates["camber"], gradient.camber);
                self.angle("bump_gradient caster", &rates["caster"], gradient.caster);
                self.angle("bump_gradient kpi", &rates["kpi"], gradient.inclination);
            }
        }
    }
}

fn travel_of(row: &Value) -> f64 {
    if row["travel"].is_null() {
        0.0
    } else {
        number(&row["travel"])
    }
}

/// Holds a case's every row against the solver and returns how many numbers were compared.
fn compare(folder: &str, name: &str) -> usize {
    let table = table(folder, name);
    let expected = &table["expected"];
    let assembly = Assembly::new(&front_axle(&table)).unwrap();
    let mut check = Check {
        case: name,
        rack: table["drive"]["kind"] == "Slider",
        compared: 0,
    };
    check.statics(&expected["static"], &assembly);
    for sweep in ["steer_sweep", "bump_sweep", "bump_sweep_at_input"] {
        for row in expected[sweep].as_array().into_iter().flatten() {
            let shown = number(&row["input"]);
            let travel = travel_of(row);
            let what = format!("{sweep} input {shown} travel {travel}");
            let pose = assembly
                .pose(input(&table, shown), Sides::both(travel))
                .unwrap_or_else(|error| panic!("{name}: {what}: {error}"));
            check.row(&what, row, &assembly, &pose);
        }
    }
    for row in expected["steer_sweep_on_road"]
        .as_array()
        .into_iter()
        .flatten()
    {
        let input = input(&table, number(&row["input"]));
        check.on_road(row, &assembly, input, &assembly.axle().road);
    }
    for row in expected["roll_sweep"].as_array().into_iter().flatten() {
        let road = Road {
            roll: number(&row["roll"]).to_radians(),
            ..assembly.axle().road
        };
        check.on_road(row, &assembly, 0.0, &road);
    }
    check.compared
}

/// Holds the locks of a case's steering sweep against the solver.
fn compare_locks(name: &str, table: &Value, assembly: &Assembly) {
    let shown = numbers(&table["input_sweep"]);
    let range = SweepRange {
        from: input(table, shown[0]),
        to: input(table, *shown.last().unwrap()),
        count: shown.len(),
    };
    let sweep = steer_sweep(assembly, range, Sides::both(0.0));
    for lock in table["expected"]["lock"].as_array().into_iter().flatten() {
        if lock["sweep"] != "steer_sweep" {
            continue;
        }
        let found = if lock["direction"] == "negative" {
            sweep.lower_lock
        } else {
            sweep.upper_lock
        };
        let found = found.unwrap_or_else(|| panic!("{name}: no lock where {lock}"));
        let off = found.at.to_degrees() - number(&lock["input"]);
        assert!(
            off.abs() <= TOLERANCE,
            "{name}: lock off by {off} degrees: {lock}"
        );
        let SolveError::OutOfReach(miss) = found.cause else {
            panic!("{name}: {lock} is said to be {}", found.cause);
        };
        assert_eq!(miss.member.to_string(), lock["member"].as_str().unwrap());
        if let Some(side) = lock["side"].as_str() {
            assert_eq!(miss.side.to_string(), side);
        }
    }
}

/// Holds the error of a case that cannot be assembled against the solver.
fn compare_error(name: &str, table: &Value) {
    let expected = &table["expected"]["error"][0];
    let Err(SolveError::OutOfReach(miss)) = Assembly::new(&front_axle(table)) else {
        panic!("{name} was assembled");
    };
    assert_eq!(
        miss.member.to_string(),
        expected["member"].as_str().unwrap()
    );
    assert_eq!(miss.side.to_string(), expected["side"].as_str().unwrap());
    assert!((miss.shortfall - number(&expected["shortfall"])).abs() < TOLERANCE);
    let too_short = expected["reach_max"].is_null();
    assert_eq!(miss.miss == Miss::TooShort, too_short);
}

/// Every table of a folder. At least so many numbers must have been compared in all.
fn compare_folder(folder: &str, least: usize) {
    let mut compared = 0;
    let mut tables = 0;
    let files = std::fs::read_dir(common::reference_folder().join(folder)).unwrap();
    for file in files {
        let path = file.unwrap().path();
        if path.extension().is_none_or(|extension| extension != "json") {
            continue;
        }
        let name = path.file_name().unwrap().to_str().unwrap().to_owned();
        tables += 1;
        let case = table(folder, &name);
        if case["expected"]["error"].is_array() {
            compare_error(&name, &case);
        } else {
            let assembly = Assembly::new(&front_axle(&case)).unwrap();
            compare_locks(&name, &case, &assembly);
            compared += compare(folder, &name);
        }
    }
    assert!(tables >= 8, "only {tables} tables in {folder}");
    assert!(
        compared >= least,
        "only {compared} numbers compared in {folder}"
    );
}

#[test]
fn tables_of_an_independent_solver() {
    compare_folder("independent", 10_000);
}

#[test]
fn tables_of_our_general_solver() {
    compare_folder("tables", 15_000);
}
