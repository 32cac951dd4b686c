//! Adjustments written back, what is wrong told at its place, and lengths in inches.

#![allow(clippy::unwrap_used)]

use super::*;
use crate::state::EffectKind;
use steerloft_setup::supplied::SUPPLIED;

const MM: Units = Units::Millimetres;

#[test]
fn every_adjustment_of_every_supplied_car_is_written_back_as_it_was() {
    for car in SUPPLIED {
        let setup = car.setup();
        let adjustments = setup.car.adjustments.iter().enumerate();
        for ((index, adjustment), units) in
            adjustments.flat_map(|one| Units::ALL.map(|units| (one, units)))
        {
            let draft = AdjustmentDraft::of(index, adjustment, units);
            assert_eq!(draft.build().as_ref(), Ok(adjustment), "{}", car.title);
            let edits = draft.edits(&setup).unwrap();
            let mut edited = setup.clone();
            for edit in &edits {
                edited = edited.edited(edit).unwrap();
            }
            assert_eq!(edited, setup);
        }
    }
}

#[test]
fn what_is_wrong_is_told_at_its_place() {
    let setup = SUPPLIED[0].setup();
    let fault = |change: fn(&mut AdjustmentDraft)| {
        let mut draft = AdjustmentDraft::of(0, &setup.car.adjustments[0], MM);
        draft.index = None;
        draft.name = "Another name".to_owned();
        change(&mut draft);
        draft.edits(&setup).unwrap_err()
    };
    let other = setup.car.adjustments[1].name.clone();
    assert_eq!(fault(|draft| draft.name.clear()).part, DraftPart::Name);
    let mut twice = AdjustmentDraft::of(0, &setup.car.adjustments[0], MM);
    twice.name = other;
    assert_eq!(twice.edits(&setup).unwrap_err().part, DraftPart::Name);
    let slide = |change: fn(&mut AdjustmentDraft)| {
        let mut draft = AdjustmentDraft {
            name: "Another name".to_owned(),
            ..AdjustmentDraft::new(MM)
        };
        draft.effects[0].points = vec![steerloft_setup::adjustment::PointName::RodInner];
        assert!(draft.edits(&setup).is_ok());
        change(&mut draft);
        draft.edits(&setup).unwrap_err()
    };
    assert_eq!(
        slide(|draft| draft.least = "9".into()).part,
        DraftPart::Range
    );
    assert_eq!(
        slide(|draft| draft.step = "-1".into()).part,
        DraftPart::Step
    );
    assert_eq!(slide(|draft| draft.base = "a".into()).part, DraftPart::Base);
    let none = slide(|draft| draft.effects[0].points.clear());
    assert_eq!(none.part, DraftPart::Effects(Some(0)));
    assert_eq!(none.text, "choose at least one point");
}

#[test]
fn a_slide_written_in_inches_is_held_in_millimetres() {
    use steerloft_setup::adjustment::{EffectSides, PointName, Scalar};
    use steerloft_setup::car::Position;

    let mut draft = AdjustmentDraft::new(Units::Inches);
    assert_eq!(draft.step.text, "0.019685");
    draft.name = "Another name".to_owned();
    draft.least = "-1/8".into();
    draft.most = "3 mm".into();
    draft.effects[0].points = vec![PointName::RodInner];
    let turning = |amount: &str| EffectDraft {
        kind: EffectKind::Add,
        scalar: Scalar::Camber,
        amount: amount.into(),
        ..EffectDraft::default()
    };
    draft.effects.push(turning("2.54"));
    let built = |draft: &AdjustmentDraft| match draft.build().unwrap().kind {
        Kind::Slide {
            range,
            step,
            effects,
            ..
        } => (range, step, effects),
        other => panic!("{other:?}"),
    };
    let (range, step, effects) = built(&draft);
    assert_eq!((range, step), ((-3.175, 3.0), Some(0.5)));
    // A length per length is the same in any unit; a degree for each inch is less for each millimetre.
    let moved = Position(1.0, 0.0, 0.0);
    assert!(
        matches!(effects[0], Effect::Move { by, sides: EffectSides::Mirrored, .. } if by == moved)
    );
    assert!(matches!(effects[1], Effect::Add { by, .. } if (by - 0.1).abs() < 1e-12));
    // Of a slide in degrees, the points go so many inches for each.
    draft.unit = Unit::Degrees;
    draft.least = "-3".into();
    draft.most = "4 deg".into();
    draft.step = "0.5".into();
    let (range, step, effects) = built(&draft);
    assert_eq!((range, step), ((-3.0, 4.0), Some(0.5)));
    let moved = Position(25.4, 0.0, 0.0);
    assert!(matches!(effects[0], Effect::Move { by, .. } if by == moved));
    assert!(matches!(effects[1], Effect::Add { by, .. } if (by - 2.54).abs() < 1e-12));
}
