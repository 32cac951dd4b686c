//! The values an adjustment can take.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

use steerloft_setup::adjustment::{Adjustment, ChoiceOption, Kind, Place, Spacer, Unit};
use steerloft_setup::setup::Chosen;

fn adjustment(kind: Kind) -> Adjustment {
    Adjustment {
        name: "test".to_owned(),
        place: Place::Chassis,
        notes: String::new(),
        kind,
    }
}

fn slide(range: (f64, f64), step: Option<f64>, base: f64) -> Adjustment {
    adjustment(Kind::Slide {
        unit: Unit::Degrees,
        range,
        step,
        base,
        effects: vec![],
    })
}

fn stack() -> Adjustment {
    adjustment(Kind::Stack {
        parts: vec![
            Spacer {
                thickness: 1.0,
                count: 2,
            },
            Spacer {
                thickness: 0.5,
                count: 1,
            },
        ],
        stock: None,
        most: 9.0,
        base: 1.0,
        effects: vec![],
    })
}

fn choice() -> Adjustment {
    let options = ["front", "middle", "rear"];
    adjustment(Kind::Choice {
        options: options
            .map(|name| ChoiceOption {
                name: name.to_owned(),
                effects: vec![],
            })
            .to_vec(),
        base: "middle".to_owned(),
    })
}

fn option(name: &str) -> Chosen {
    Chosen::Choice(name.to_owned())
}

#[test]
fn stepped_values_are_whole_steps_from_base() {
    let values = slide((-0.25, 0.5), Some(0.1), 0.1).values().unwrap();
    let expected = [-0.2, -0.1, 0.0, 0.1, 0.2, 0.3, 0.4, 0.5];
    assert_eq!(values, expected.map(Chosen::Slide));
    assert_eq!(slide((0.0, 1.0), None, 0.0).values(), None);
    // 0.3 / 0.1 falls just short of 3 in binary fractions; the end of the range is a step all the same.
    let values = slide((0.0, 0.3), Some(0.1), 0.0).values().unwrap();
    assert_eq!(values.last(), Some(&Chosen::Slide(0.3)));
}

#[test]
fn nearest_keeps_to_range_and_steps() {
    let stepped = slide((-0.25, 0.5), Some(0.1), 0.1);
    assert_eq!(stepped.nearest(&Chosen::Slide(0.26)), Chosen::Slide(0.3));
    assert_eq!(stepped.nearest(&Chosen::Slide(-9.0)), Chosen::Slide(-0.2));
    assert_eq!(
        stepped.nearest(&Chosen::Slide(f64::NAN)),
        Chosen::Slide(0.1)
    );
    let free = slide((-1.0, 1.0), None, 0.0);
    assert_eq!(free.nearest(&Chosen::Slide(0.123)), Chosen::Slide(0.123));
    assert_eq!(free.nearest(&Chosen::Slide(7.0)), Chosen::Slide(1.0));
    assert_eq!(stack().nearest(&Chosen::Stack(2.3)), Chosen::Stack(2.5));
    assert_eq!(choice().nearest(&option("rear")), option("rear"));
    assert_eq!(choice().nearest(&option("side")), option("middle"));
    assert_eq!(choice().nearest(&Chosen::Slide(1.0)), option("middle"));
}

#[test]
fn steps_stop_at_the_ends() {
    let stepped = slide((-0.25, 0.5), Some(0.1), 0.1);
    assert_eq!(
        stepped.step_from(&Chosen::Slide(0.1), 2),
        Chosen::Slide(0.3)
    );
    assert_eq!(
        stepped.step_from(&Chosen::Slide(0.1), -9),
        Chosen::Slide(-0.2)
    );
    let free = slide((-1.0, 1.0), None, 0.0);
    assert_eq!(free.step_from(&Chosen::Slide(0.5), 1), Chosen::Slide(0.6));
    assert_eq!(
        stack().step_from(&Chosen::Stack(1.0), 1),
        Chosen::Stack(1.5)
    );
    assert_eq!(
        stack().step_from(&Chosen::Stack(1.0), i32::MIN),
        Chosen::Stack(0.0)
    );
    assert_eq!(choice().step_from(&option("front"), -1), option("front"));
    assert_eq!(
        choice().step_from(&option("front"), i32::MAX),
        option("rear")
    );
}

#[test]
fn values_off_the_steps_are_accepted_but_not_buildable() {
    let stepped = slide((-0.25, 0.5), Some(0.1), 0.1);
    assert_eq!(stepped.accepts(&Chosen::Slide(0.17)), Ok(()));
    assert!(!stepped.is_buildable(&Chosen::Slide(0.17)));
    assert!(stepped.is_buildable(&Chosen::Slide(0.2)));
}

#[test]
fn refusals_say_what_would_be_right() {
    let message =
        |adjustment: Adjustment, value: Chosen| adjustment.accepts(&value).unwrap_err().to_string();
    assert_eq!(
        message(slide((-1.0, 2.5), None, 0.0), Chosen::Slide(3.0)),
        "\"test\" goes from -1° to 2.5°; 3° is outside"
    );
    assert_eq!(
        message(slide((-1.0, 2.5), None, 0.0), Chosen::Slide(f64::NAN)),
        "\"test\" goes from -1° to 2.5°; NaN° is outside"
    );
    assert_eq!(
        message(stack(), Chosen::Stack(2.25)),
        "the spacers of \"test\" cannot make 2.25 mm; the nearest they make is 2 mm"
    );
    assert_eq!(
        message(choice(), option("side")),
        "\"test\" has no option \"side\"; it has \"front\", \"middle\", \"rear\""
    );
    assert_eq!(
        message(choice(), Chosen::Stack(1.0)),
        "\"test\" takes an option's name, not a stack's total"
    );
}

#[test]
fn labels_carry_the_unit() {
    assert_eq!(
        slide((0.0, 1.0), None, 0.0).label_of(&Chosen::Slide(-1.5)),
        "-1.5°"
    );
    assert_eq!(stack().label_of(&Chosen::Stack(2.0)), "2 mm");
    assert_eq!(choice().label_of(&option("rear")), "rear");
    assert_eq!(stack().label_of(&Chosen::Stack(-0.0001)), "0 mm");
}
