//! What the reader says of texts that are wrong, word for word, at which line and column.
//!
//! Each case changes a supplied car's text in one place.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use common::wrong_text::{self, Case, assert_says, case, marked};
use steerloft_setup::file::{FileError, read_text};
use steerloft_setup::supplied::SUPPLIED;

fn check(cases: &[Case]) {
    wrong_text::check(SUPPLIED[0].text, cases);
}

#[test]
fn texts_that_are_no_setup() {
    for (text, says) in [
        (
            "§",
            "this file is empty; a setup file begins with `Setup(format: 2,`",
        ),
        (
            "  // only a note\n  §",
            "this file is empty; a setup file begins with `Setup(format: 2,`",
        ),
        (
            "§{\"json\": true}",
            "this is not a setup file; a setup file begins with `Setup(format: 2,`",
        ),
        (
            "/* note */\n §Scene(format: 1)",
            "this is not a setup file; a setup file begins with `Setup(format: 2,`",
        ),
        (
            "§GIF89a",
            "this is not a setup file; a setup file begins with `Setup(format: 2,`",
        ),
        (
            "Setup(\n    §car: (),\n)",
            "the format number is missing here; a setup file begins with `Setup(format: 2,`",
        ),
        (
            "(§)",
            "the format number is missing here; a setup file begins with `Setup(format: 2,`",
        ),
        (
            "(format: §one)",
            "the format is not a whole number; this program reads formats 1 to 2",
        ),
        (
            "(format: §-1)",
            "the format is not a whole number; this program reads formats 1 to 2",
        ),
        (
            "(format: §0)",
            "there is no format 0; this program reads formats 1 to 2",
        ),
        (
            "Setup(format: §99999999999)",
            "this file has format 99999999999, which is newer than this program; \
             this program reads formats 1 to 2: use a newer version of it",
        ),
        (
            "Setup(format: §7, anything: else)",
            "this file has format 7, which is newer than this program; \
             this program reads formats 1 to 2: use a newer version of it",
        ),
    ] {
        let (text, expected) = marked(text, says);
        assert_says(&text, &expected);
    }
}

#[test]
fn fields_and_names() {
    check(&[
        case(
            "wheelbase: 198.0,",
            "§wheel_base: 198.0,",
            "there is no field `wheel_base` here; the fields are `name`, `notes`, `left`, `right`, `drive`, \
             `servo`, `saver`, `wheelbase`, `ride_height`, `pitch`, `roll`, `ranges`, `tie_rod`, `joints`, \
             `loads`, `clearances`, `obstacles`, `build_errors`, `stock`, `adjustments`",
        ),
        case(
            "wheelbase: 198.0,",
            "wheelbase: 198.0, §wheelbase: 199.0,",
            "the field `wheelbase` is given twice; give it once",
        ),
        case(
            "right: Mirrored",
            "right: §Same",
            "there is no `Same` here; write one of `Mirrored`, `Given`",
        ),
        case(
            "points: [rod_inner]",
            "points: [§rod_outer]",
            "there is no `rod_outer` here; write one of `wheel_centre`, `spin_axis`, `kingpin_lower`, \
             `kingpin_upper`, `steering_arm`, `rod_inner`, `drive_axis`, `drive_direction`, \
             `upper_hinge_front`, `upper_hinge_rear`, `lower_hinge_front`, `lower_hinge_rear`, \
             `slide_direction`, `crank_axis`, `crank_direction`, `cross_ball`, `drag_servo`, `drag_crank`",
        ),
        case(
            "tie_rod: (",
            "tie_rod: §Rod(",
            "`Rod` does not belong here; write `TieRodParts(` or only `(`",
        ),
    ]);
}

#[test]
fn a_missing_point_is_missed_at_the_end_of_its_brackets() {
    let text = SUPPLIED[0].text;
    let without = text.replacen("            kingpin_upper: (-1.2, 52.0, 28.5),\n", "", 1);
    let (text, expected) = marked(
        &without.replacen("        ),\n        right", "        §),\n        right", 1),
        "the field `kingpin_upper` is missing here; add `kingpin_upper: (x, y, z)`",
    );
    assert_says(&text, &expected);
}

#[test]
fn shapes_of_values() {
    check(&[
        case(
            "wheel_centre: (0.0, 71.0, 17.2)",
            "wheel_centre: (0.0, 71.0§)",
            "there are too few values in these brackets; a point or direction is (x, y, z), a range (least, greatest)",
        ),
        case(
            "wheel_centre: (0.0, 71.0, 17.2)",
            "wheel_centre: (0,0, 71,§0, 17,2)",
            "this cannot be read; a closing `)` should stand here; decimals are written with a point",
        ),
        case(
            "wheelbase: 198.0",
            "wheelbase: §wide",
            "this cannot be read; a number such as 12.5 should stand here",
        ),
        case(
            "step: Some(0.1)",
            "step: §0.1",
            "this cannot be read; write `Some(...)` around the value, or `None`",
        ),
        case(
            "wheelbase: 198.0,",
            "wheelbase: 198.0 §ride_height",
            "this cannot be read; a comma or a closing bracket should stand here",
        ),
        case(
            "wheelbase: 198.0",
            "wheelbase §198.0",
            "this cannot be read; a colon should stand here, between a name and its value",
        ),
        case(
            "count: 2",
            "count: -§2",
            "this whole number is too large or negative; give a whole number from 0 on",
        ),
        case(
            "name: \"Ride height\"",
            "name: §Ride",
            "this cannot be read; a text in double quotes should stand here",
        ),
        case(
            "name: \"Ride height\"",
            "name: \"Ride \\q§height\"",
            r#"this escape in a text is unknown; write \\ for a backslash, \" for a quote, \n for a new line"#,
        ),
    ]);
}

#[test]
fn ends() {
    let text = SUPPLIED[0].text;
    let (open, expected) = marked(
        &text.replacen("right: Mirrored,", "right: /*§ Mirrored,", 1),
        "this comment has no end; close it with `*/`",
    );
    assert_says(&open, &expected);
    let whole = text.trim_end();
    let (longer, expected) = marked(
        &format!("{whole}§ )"),
        "something follows after the file's closing bracket; \
         remove it, or the bracket that closes the file too early",
    );
    assert_says(&longer, &expected);
    let cut = &text[..text.find("Front wheelbase").unwrap()];
    let (cut, expected) = marked(
        &format!("{}§", cut.trim_end_matches('"')),
        "the file ends here, in the middle of a value; \
         it may have been cut short: take it again from where it came",
    );
    assert_says(&cut, &expected);
    let deep = format!("Setup(format: 2, car: {}", "[".repeat(100_000));
    assert!(read_text(&deep).is_err());
}

#[test]
fn numbers() {
    check(&[
        case(
            "wheelbase: 198.0",
            "wheelbase: §NaN",
            "this is not a finite number; give 0.001 to 10000 mm",
        ),
        case(
            "wheel_centre: (0.0, 71.0, 17.2)",
            "wheel_centre: (0.0, 71.0, §inf)",
            "this is not a finite number; give -10000 to 10000 mm",
        ),
        case(
            "wheelbase: 198.0",
            "wheelbase: §198000.0",
            "198000 mm is not a sensible value here; give 0.001 to 10000 mm",
        ),
        case(
            "camber: -1.0",
            "camber: /* lots */ §-90.0",
            "-90 degrees is not a sensible value here; give -45 to 45 degrees",
        ),
        case(
            "size: (26.0, 34.0, 12.5)",
            "size: (26.0, §0.0, 12.5)",
            "0 mm is not a sensible value here; give 0.001 to 10000 mm",
        ),
        case(
            "input: (-22.0, 22.0)",
            "input: §(22.0, -22.0)",
            "the range from 22 to -22 degrees is not in order; give the least value first and the greatest after it",
        ),
        case(
            "travel: (-1.0, 2.0)",
            "travel: §(1.0, 2.0)",
            "this range leaves out 0, the reference height; give a range from below 0 to above it",
        ),
        case(
            "longest: 45.0",
            "longest: §20.0",
            "the longest tie rod is not longer than the shortest; give a length greater than `shortest`",
        ),
        case(
            "rods: HoldToe(0.0)",
            "rods: §HoldToe(99.0)",
            "a toe of 99° is not possible; it goes from -45° to 45°; give a value of that range",
        ),
    ]);
}

#[test]
fn places() {
    check(&[
        case(
            "wheel_centre: (0.0, 71.0, 17.2)",
            "wheel_centre: (0.0, §-71.0, 17.2)",
            "this wheel centre is not on the left of the car; \
             y is to the left of the centre line: give a positive number",
        ),
        case(
            "kingpin_upper: (-1.2, 52.0, 28.5)",
            "kingpin_upper: §(1.1, 53.1, 7.0)",
            "the upper kingpin point coincides with the lower; place them at least 0.001 mm apart",
        ),
        case(
            "kingpin_upper: (-1.2, 52.0, 28.5)",
            "kingpin_upper: §(1.1, 83.1, 7.0)",
            "the steering axis leans 90 degrees from upright; \
             place the upper kingpin point above the lower, leaning at most 45 degrees",
        ),
        case(
            "upper_hinge_rear: (-11.0, 24.5, 27.2)",
            "upper_hinge_rear: §(11.0, 24.5, 28.4)",
            "the rear hinge point of the upper arm coincides with the front one; place them at least 0.001 mm apart",
        ),
        case(
            "axis_direction: (1.0, 0.0, 0.0)",
            "axis_direction: §(0.0, 0.0, 0.0)",
            "this direction has no length; give a vector such as (1.0, 0.0, 0.0)",
        ),
        case(
            "rod_inner_right: (-2.0, -9.4, 22.5)",
            "rod_inner_right: §(-2.0, 0.0, 7.5)",
            "this inner tie-rod ball lies on the axis of the arm that carries it; place them at least 0.001 mm apart",
        ),
        case(
            "rod_inner_left: (-2.0, 9.4, 22.5)",
            "rod_inner_left: §(-11.8, 50.2, 22.3)",
            "this inner tie-rod ball coincides with the outer ball; place them at least 0.001 mm apart",
        ),
        case(
            "upper_hinge_front: (11.0, 24.5, 28.4),",
            "upper_hinge_front: §(8.6, 79.5, 29.8),",
            "the upper kingpin point lies on the hinge axis of the arm that carries it; \
             place them at least 0.001 mm apart",
        ),
        case(
            "steering_arm: (-11.8, 50.2, 22.3)",
            "steering_arm: §(1.1, 53.1, 7.0)",
            "the outer tie-rod ball lies on the steering axis; place them at least 0.001 mm apart",
        ),
    ]);
}

#[test]
fn a_right_corner_given_by_itself() {
    let right = |wheel_centre: &str, suspension: &str| {
        format!(
            "right: Given(CornerPoints(
                wheel_centre: {wheel_centre},
                camber: -1.0,
                kingpin_lower: (1.1, -53.1, 7.0),
                kingpin_upper: (-1.2, -52.0, 28.5),
                steering_arm: (-11.8, -50.2, 22.3),
                tyre_radius: 21.2,
                tyre_width: 24.0,
                suspension: {suspension},
            ))"
        )
    };
    for (right, says) in [
        (
            right("(0.0, §71.0, 17.2)", "SlidingKingpin"),
            "this wheel centre is not on the right of the car; \
             y is to the left of the centre line: give a negative number",
        ),
        (
            right("(0.0, -71.0, 17.2)", "§FixedKingpin"),
            "the right corner has another kind of suspension than the left; give both corners the same kind",
        ),
    ] {
        let text = SUPPLIED[1].text.replacen("right: Mirrored", &right, 1);
        let (text, expected) = marked(&text, says);
        assert_says(&text, &expected);
    }
    let sound = right("(0.0, -71.0, 17.2)", "SlidingKingpin");
    assert!(read_text(&SUPPLIED[1].text.replacen("right: Mirrored", &sound, 1)).is_ok());
}

#[test]
fn adjustments() {
    check(&[
        case(
            "name: \"Ride height\"",
            "name: §\"Front wheelbase\"",
            "the name \"Front wheelbase\" is used twice, by adjustments 1 and 2; give each its own name",
        ),
        case(
            "name: \"Ride height\"",
            "name: §\"\"",
            "this name is empty; give a name of 1 to 80 characters on one line",
        ),
        case(
            "name: \"Ride height\"",
            "name: §\" Ride height\"",
            "this name has blanks around it; give a name of 1 to 80 characters on one line",
        ),
        case(
            "range: (3.0, 5.0)",
            "range: §(5.0, 3.0)",
            "the range from 5 to 3 mm is not in order; give the least value first and the greatest after it",
        ),
        case(
            "step: Some(0.1)",
            "step: Some(§0.0)",
            "0 mm is not a sensible value here; give 0 to 2 mm",
        ),
        case(
            "base: 4.0",
            "base: §6.0",
            "6 mm is not a sensible value here; give 3 to 5 mm",
        ),
        case(
            "most: 3.0,\n                    base: 1.0",
            "most: 3.0,\n                    base: §0.75",
            "the spacers cannot make a base of 0.75 mm; the nearest they make is 0.5 mm",
        ),
        case(
            "(thickness: 0.5, count: 2), (thickness: 1.0, count: 3)",
            "(thickness: 0.5, count: 2), (thickness: §0.5, count: 3)",
            "spacers of 0.5 mm are listed twice; list each thickness once, with its count",
        ),
        case(
            "(thickness: 0.5, count: 2), (thickness: 1.0, count: 3)",
            "(thickness: §0.5004, count: 2), (thickness: 1.0, count: 3)",
            "a thickness of 0.5004 mm is finer than spacers are made; give a whole multiple of 0.001 mm",
        ),
        case(
            "(thickness: 0.5, count: 2), (thickness: 1.0, count: 3)",
            "(thickness: 0.5, count: §4000000000), (thickness: 1.0, count: 3)",
            "4000000000 spacers of one size are at hand; give 1 to 50",
        ),
        case(
            "parts: [(thickness: 0.5, count: 2), (thickness: 1.0, count: 3)],\n                    most: 3.0",
            "parts: §[(thickness: 0.001, count: 50), (thickness: 0.051, count: 50)],\n                    most: 3.0",
            "these spacers make more than 1000 different totals; list fewer spacers, or give a smaller `most`",
        ),
        case(
            "base: \"middle hole\"",
            "base: §\"centre hole\"",
            "the base \"centre hole\" names no option; choose one of \"lower hole\", \"middle hole\", \"upper hole\"",
        ),
        case(
            "(name: \"front face\")",
            "(name: \"front face\", effects: §[Add(scalar: roll, by: 1.0)])",
            "the base option has effects, but the car's points are given with it chosen; \
             leave its effects out and give the other options what they change against it",
        ),
        case(
            "(name: \"front face\"),",
            "(name: \"front face\"), (name: §\"front face\"),",
            "the name \"front face\" is used twice, by options 1 and 2; give each its own name",
        ),
    ]);
}

#[test]
fn effects() {
    check(&[
        case(
            "Move(points: [rod_inner], by: (0.0, 0.0, -1.5))",
            "Move(points: [rod_inner, §drive_direction], by: (0.0, 0.0, -1.5))",
            "the direction of the steering drive axis is a direction and cannot be moved; \
             directions can only be turned",
        ),
        case(
            "effects: [Add(scalar: ride_height, by: 1.0)]",
            "effects: [§Reflect(points: [rod_inner], through: drive_axis, normal: (1.0, 0.0, 0.0))]",
            "a reflection applies whole, so a slide or stack cannot hold it; put it into an option of a `Choice`",
        ),
        case(
            "effects: [Add(scalar: ride_height, by: 1.0)]",
            "effects: §[]",
            "this adjustment has no effect; say what one unit of it does",
        ),
        case(
            "Move(points: [rod_inner], by: (0.0, 0.0, -1.5))",
            "Move(points: §[], by: (0.0, 0.0, -1.5))",
            "no points are named; name at least one point",
        ),
        case(
            "Move(points: [rod_inner], by: (0.0, 0.0, -1.5))",
            "Move(points: [rod_inner, §rod_inner], by: (0.0, 0.0, -1.5))",
            "this point is named twice; name each point once",
        ),
        case(
            "through: drive_axis",
            "through: §spin_axis",
            "the spin axis is a direction and has no place; name a point",
        ),
        case(
            "Move(points: [drive_axis, rod_inner], by: (0.0, 1.0, 0.0), sides: Together)",
            "§Move(points: [drive_axis, rod_inner], by: (0.0, 1.0, 0.0))",
            "the steering drive axis belongs to both sides and cannot go two ways; write `sides: Together`",
        ),
        case(
            "Move(points: [rod_inner], by: (0.0, 0.0, -1.5))",
            "§Turn(points: [drive_axis], through: drive_axis, about: (1.0, 0.0, 0.0), degrees: 5.0)",
            "the steering drive axis belongs to both sides and cannot go two ways; write `sides: Together`",
        ),
        case(
            "Move(points: [rod_inner], by: (0.0, 0.0, -1.5))",
            "§Turn(points: [drive_axis], through: rod_inner, about: (0.0, 1.0, 0.0), degrees: 5.0)",
            "the steering drive axis belongs to both sides and cannot go two ways; write `sides: Together`",
        ),
    ]);
    let tilted = SUPPLIED[0].text.replacen(
        "Move(points: [rod_inner], by: (0.0, 0.0, -1.5))",
        "Turn(points: [drive_direction], through: drive_axis, about: (0.0, 1.0, 0.0), degrees: 5.0)",
        1,
    );
    assert!(
        read_text(&tilted).is_ok(),
        "a turn about the car's own y is its own mirror image"
    );
    let text = SUPPLIED[1].text;
    for (find, replace, says) in [
        (
            "points: [rod_inner]",
            "points: [§upper_hinge_rear]",
            "this car's suspension has no rear hinge point of the upper arm; name a point that the suspension has",
        ),
        (
            "Add(scalar: camber, by: 1.0)",
            "Lengthen(member: §upper_arm, by: 1.0)",
            "this car's suspension has no upper arm; name a member that the suspension has",
        ),
    ] {
        let (text, expected) = marked(&text.replacen(find, replace, 1), says);
        assert_says(&text, &expected);
    }
}

#[test]
fn chosen_values() {
    let before = "    rods: HoldToe(0.0),";
    for (chosen, says) in [
        (
            "\"Ride height\": Slide(4.2), \"Ridge height\": §Slide(4.2)",
            "a value is chosen for \"Ridge height\", which is no adjustment of this car; \
             choose one of \"Front wheelbase\", \"Ride height\", \"Servo station\", \"Servo sideways\", \
             \"Servo height packing\", \"Servo-arm hole\", \"Inner rod spacers\", \"Ball studs\", \
             \"Steering-arm hole\", \"Outer rod spacers\", \"Kingpin inclination insert\", \"Caster insert\", \
             \"Upper arm length\", \"Tyre radius\"",
        ),
        (
            "\"Ride height\": §Slide(9.0)",
            "\"Ride height\" goes from 3 mm to 5 mm; 9 mm is outside; give a value of that range",
        ),
        (
            "\"Ride height\": §Slide(NaN)",
            "\"Ride height\" goes from 3 mm to 5 mm; NaN mm is outside; give a value of that range",
        ),
        (
            "\"Ride height\": §Stack(4.0)",
            "\"Ride height\" takes a slide's value, not a stack's total; give a slide's value",
        ),
        (
            "\"Outer rod spacers\": §Stack(2.25)",
            "the spacers of \"Outer rod spacers\" cannot make 2.25 mm; the nearest they make is 2 mm; \
             give 2 mm, or list more spacers",
        ),
        (
            "\"Ball studs\": §Choice(\"side face\")",
            "\"Ball studs\" has no option \"side face\"; it has \"front face\", \"rear face\"; choose one of those",
        ),
        (
            "\"Ball studs\": Choice(\"rear face\"), §r\"Ball studs\": Choice(\"front face\")",
            "a value for \"Ball studs\" is chosen twice; choose it once",
        ),
        (
            "\"Ride height\": §4.0",
            "`4.0` is no name; write a name such as `Slide(1.0)` or `Stack(1.0)`",
        ),
    ] {
        let chosen = format!("    chosen: {{ {chosen} }},\n{before}");
        let (text, expected) = marked(&SUPPLIED[0].text.replacen(before, &chosen, 1), says);
        assert_says(&text, &expected);
    }
}

#[test]
fn records() {
    let record = "record: (";
    let long = format!("record: (grip: §\"{}\",", "x".repeat(20_001));
    let many = format!("record: (runs: §[{}],", "(),".repeat(2_001));
    for (replace, says) in [
        (long, "this text has 20001 characters; keep it to 20000"),
        (many, "there are more than 2000 runs here; keep it to 2000"),
    ] {
        let (text, expected) = marked(&SUPPLIED[0].text.replacen(record, &replace, 1), says);
        assert_says(&text, &expected);
    }
}

#[test]
fn a_text_too_large_is_refused_before_it_is_read() {
    let text = format!("{}{}", SUPPLIED[0].text, " ".repeat(1_000_000));
    let error = read_text(&text).unwrap_err();
    assert!(
        matches!(&error, FileError::Text { wrong, .. } if wrong.contains("more than the 1000000")),
        "{error}"
    );
}
