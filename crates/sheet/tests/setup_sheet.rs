//! The setup sheet: what it says, and that nothing overlaps whatever the contents.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cars;
mod paper;

use paper::{EXTREME_LETTERS, all_words, all_writing, check_nothing_overlaps, extreme, views};
use steerloft_analysis::curves::CurveKind;
use steerloft_setup::setup::{Chosen, Felt, Laps, Rods, Run, Setup};
use steerloft_setup::supplied::{SUPPLIED, Supplied};
use steerloft_sheet::{Page, Paper, SheetError, SheetRequest, setup_sheet, svg};
use steerloft_solver::figures::corner_figures;

const PAPERS: [Paper; 2] = [Paper::A4, Paper::Letter];

fn sheet(setup: &Setup) -> Vec<Page> {
    setup_sheet(&SheetRequest {
        setup,
        reference: None,
        paper: Paper::A4,
        curves: &[],
    })
    .unwrap()
}

#[test]
fn one_page_holds_every_supplied_car_and_nothing_overlaps() {
    for setup in SUPPLIED.iter().map(Supplied::setup) {
        for paper in PAPERS {
            let pages = setup_sheet(&SheetRequest {
                setup: &setup,
                reference: None,
                paper,
                curves: &CurveKind::ALL,
            })
            .unwrap();
            let size = paper.size();
            // Every curve once more: eight a page.
            assert_eq!(
                pages.len(),
                1 + CurveKind::ALL.len().div_ceil(8),
                "{}",
                setup.car.name
            );
            for page in &pages {
                assert!((page.size[0] - size[0]).abs() + (page.size[1] - size[1]).abs() < 1e-9);
                check_nothing_overlaps(page);
            }
            assert_eq!(views(&pages[0]).len(), 2);
        }
    }
}

#[test]
fn the_sheet_says_what_to_fit_and_what_comes_of_it() {
    let setup = cars::pan_car();
    let text = all_words(&sheet(&setup));
    for expected in [
        "Carpet, first run",
        "1:12 pan car",
        "2026-11-21",
        "Club evening",
        "Surface",
        "Grip",
        "Top view",
        "Front view, looking forward",
        "Scale 1:2",
        "1 mm (1 spacer)",
        "rear hole",
        "3 mm (2 + 1)",
        "Ball to ball, left",
        "Between cups, right",
        "toe-in 0.25° each",
        "Kingpin inclination",
        "Ackermann share",
        "Toe against travel",
        "toe, deg (toe-in +)",
        "wheel travel, mm (bump +)",
        "Outer against inner angle",
        "ideal pair",
        "parallel",
        "Wheels off the ground and power off",
        "a servo can trap fingers",
        "Check full lock by hand for binding before you power the steering.",
        "anything that carries a person",
        "local rules and scrutineering",
        "not a promise of handling",
    ] {
        assert!(text.contains(expected), "{expected} in {text}");
    }
}

#[test]
fn figures_on_the_sheet_are_the_solvers() {
    let car = cars::posed(cars::pan_car(), 0.0, 0.0);
    let road = &car.layout.axle.road;
    let left = corner_figures(&car.pose.corners.left, road);
    let text = all_writing(&sheet(&car.setup)[0]);
    let lines: Vec<&str> = text.lines().collect();
    let after = |name: &str| {
        let at = lines.iter().position(|line| *line == name).unwrap();
        // The unit stands between a name and its values.
        lines[at + 2].replace('\u{2212}', "-")
    };
    for (name, value) in [
        ("Caster (top back +)", left.caster.to_degrees()),
        ("Camber (top out +)", left.camber.to_degrees()),
        ("Scrub radius", left.scrub_radius),
        ("Toe (in +)", 0.25),
    ] {
        assert_eq!(after(name), format!("{value:+.2}"), "{name}");
    }
}

#[test]
fn a_car_without_travel_says_so() {
    let kart = SUPPLIED
        .iter()
        .find(|car| car.file_name == "kart.ron")
        .unwrap();
    let text = all_words(&sheet(&kart.setup()));
    assert!(text.contains("there is no wheel travel"), "{text}");
    assert!(text.contains("Ackermann share against inner angle"));
    assert!(!text.contains("Toe against travel"));
}

#[test]
fn a_rack_is_given_in_millimetres() {
    let rack = SUPPLIED
        .iter()
        .find(|car| car.file_name == "formula-corner.ron")
        .unwrap();
    let pages = setup_sheet(&SheetRequest {
        setup: &rack.setup(),
        reference: None,
        paper: Paper::A4,
        curves: &[CurveKind::WheelAngles, CurveKind::SteeringRatio],
    })
    .unwrap();
    let text = all_words(&pages);
    assert!(text.contains("steering input, mm"), "{text}");
    assert!(text.contains("mm/°") && text.contains("mm/deg"), "{text}");
}

#[test]
fn rods_that_cannot_be_made_are_pointed_out() {
    let mut setup = cars::pan_car();
    assert!(!all_words(&sheet(&setup)).contains("cannot be made"));
    setup.car.tie_rod.longest = 30.0;
    let text = all_words(&sheet(&setup));
    assert!(text.contains("The left tie rod of"), "{text}");
    assert!(text.contains("which give 28.0 to 30.0 mm."));
}

#[test]
fn a_value_that_the_parts_do_not_allow_names_the_nearest() {
    let mut setup = cars::pan_car();
    let name = "Ride height".to_owned();
    setup.chosen.insert(name, Chosen::Slide(0.7));
    let text = all_words(&sheet(&setup));
    assert!(text.contains("0.7 mm (nearest possible 0.5 mm)"), "{text}");
}

#[test]
fn extreme_contents_do_not_overlap() {
    for letters in EXTREME_LETTERS {
        for adjustments in [0, 1, 20, 64] {
            let setup = extreme(cars::pan_car(), letters, adjustments);
            let reference = cars::pan_car();
            for (reference, paper) in [(None, Paper::A4), (Some(&reference), Paper::Letter)] {
                let pages = setup_sheet(&SheetRequest {
                    setup: &setup,
                    reference,
                    paper,
                    curves: &[CurveKind::InnerOuter],
                })
                .unwrap();
                for page in &pages {
                    check_nothing_overlaps(page);
                    roxmltree::Document::parse(&svg::document(page)).unwrap();
                }
                // Not one adjustment is lost, however many pages they take.
                let words = all_words(&pages);
                for index in 0..adjustments {
                    assert!(
                        words.contains(&format!("#{index}")),
                        "{index} of {adjustments}"
                    );
                }
            }
        }
    }
}

#[test]
fn what_cannot_be_assembled_has_no_sheet() {
    let mut broken = cars::pan_car();
    broken.rods = Rods::FixedLength(500.0);
    let good = cars::pan_car();
    let error = |setup: &Setup, reference: Option<&Setup>| {
        setup_sheet(&SheetRequest {
            setup,
            reference,
            paper: Paper::A4,
            curves: &[],
        })
        .unwrap_err()
    };
    assert!(matches!(error(&broken, None), SheetError::Setup(_)));
    let of_reference = error(&good, Some(&broken));
    assert!(matches!(of_reference, SheetError::Reference(_)));
    assert!(
        of_reference
            .to_string()
            .starts_with("the reference setup cannot be assembled: ")
    );
}

#[test]
fn the_servo_is_on_the_sheet_with_its_spline_and_end_points() {
    let mut setup = SUPPLIED[0].setup();
    let servo = setup.car.servo.as_mut().unwrap();
    let spline = servo.spline.as_mut().unwrap();
    (spline.tooth, spline.trim) = (-1, 2.4);
    let text = all_words(&sheet(&setup));
    for expected in [
        "small, 900 N mm, 0.08 s/60°",
        "25 teeth, tooth \u{2212}1",
        // 450 microseconds for 50 degrees are 9 a degree.
        "+2.40° (+22 µs)",
        "End point, left",
        "End point, right",
    ] {
        assert!(text.contains(expected), "{expected} in {text}");
    }
    setup.car.servo = None;
    let text = all_words(&sheet(&setup));
    assert!(!text.contains("Spline") && !text.contains("End point"));
}

#[test]
fn a_servo_that_stalls_is_cautioned_of_on_the_sheet() {
    let mut setup = SUPPLIED[0].setup();
    let servo = setup.car.servo.as_mut().unwrap();
    servo.action.as_mut().unwrap().torque = 1.0;
    let text = all_words(&sheet(&setup));
    assert!(text.contains("the servo stalls on the way"), "{text}");
}

#[test]
fn runs_have_pages_of_their_own_and_only_if_there_are_any() {
    let mut setup = SUPPLIED[0].setup();
    assert_eq!(sheet(&setup).len(), 1);
    setup.record.runs = vec![
        Run {
            date: "Friday".to_owned(),
            surface: "carpet".to_owned(),
            grip: "high".to_owned(),
            temperature: Some(21.5),
            tyres: "soft, cut to 42 mm".to_owned(),
            felt: Felt {
                entry: "pushes wide".to_owned(),
                middle: "grips".to_owned(),
                exit: "steady".to_owned(),
            },
            laps: Laps {
                count: Some(24),
                best: Some(12.345),
                mean: None,
            },
            notes: "front tyres warm".to_owned(),
            next_idea: "half a millimetre less outside".to_owned(),
        },
        Run::default(),
    ];
    let pages = sheet(&setup);
    assert_eq!(pages.len(), 2);
    check_nothing_overlaps(&pages[1]);
    let text = all_words(&pages[1..]);
    for expected in [
        "Run 1 Friday, carpet, grip high, 21.5 °C",
        "soft, cut to 42 mm",
        "pushes wide",
        "24 laps, best 12.345 s",
        "half a millimetre less outside",
        "Run 2",
    ] {
        assert!(
            text.replace("  ", " ").contains(expected),
            "{expected} in {text}"
        );
    }
}

#[test]
fn many_long_runs_go_on_as_many_pages_as_they_need() {
    let mut setup = SUPPLIED[0].setup();
    for letters in EXTREME_LETTERS {
        let long = letters.chars().cycle().take(5_000).collect::<String>();
        setup.record.runs = (0..9)
            .map(|_| Run {
                date: long.clone(),
                tyres: long.clone(),
                felt: Felt {
                    entry: long.clone(),
                    middle: long.clone(),
                    exit: long.clone(),
                },
                notes: long.clone(),
                next_idea: long.clone(),
                ..Run::default()
            })
            .collect();
        let pages = sheet(&setup);
        pages.iter().for_each(check_nothing_overlaps);
        let text = all_words(&pages);
        for place in 1..=9 {
            assert!(text.contains(&format!("Run {place}")), "{place}");
        }
    }
}
