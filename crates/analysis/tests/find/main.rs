//! The search against brute force.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod brute_force;

use brute_force::brute_force;
use steerloft_analysis::Study;
use steerloft_analysis::find::{
    Findings, Free, Limit, Measure, Progress, RangeError, Search, SearchError, Stock, StockSpacer,
    Target, Want, Wheel,
};
use steerloft_setup::adjustment::Kind;
use steerloft_setup::setup::{Chosen, Setup};
use steerloft_setup::supplied::SUPPLIED;
use steerloft_solver::figures::travel_gradient;

fn supplied(file: &str) -> Setup {
    let car = SUPPLIED.iter().find(|car| car.file_name == file);
    car.expect("a supplied car").setup()
}

fn index(setup: &Setup, name: &str) -> usize {
    let mut names = setup.car.adjustments.iter();
    names
        .position(|adjustment| adjustment.name == name)
        .unwrap_or_else(|| panic!("no adjustment {name}"))
}

fn free(setup: &Setup, names: &[&str]) -> Vec<Free> {
    names
        .iter()
        .map(|name| Free::all(setup, index(setup, name)).unwrap())
        .collect()
}

fn want(measure: Measure, value: f64, weight: f64) -> Want {
    Want {
        measure,
        target: Target::Value(value),
        weight,
    }
}

/// One of every kind of want.
fn wants(inner: f64) -> Vec<Want> {
    vec![
        want(Measure::BumpSteer(Wheel::Both), 0.0, 1.0),
        want(Measure::ToeAtBump(Wheel::Left), 0.02, 1.0),
        want(Measure::ToeAtDroop(Wheel::Right), -0.02, 1.0),
        want(
            Measure::Ackermann {
                turn: Wheel::Left,
                inner,
            },
            60.0,
            2.0,
        ),
        want(
            Measure::Ackermann {
                turn: Wheel::Right,
                inner,
            },
            60.0,
            2.0,
        ),
        Want {
            measure: Measure::LockLeft(Wheel::Left),
            target: Target::Range(22.0, 26.0),
            weight: 0.5,
        },
        want(Measure::LockRight(Wheel::Both), 24.0, 0.25),
        want(Measure::Camber(Wheel::Both), -1.0, 0.5),
        want(Measure::Caster(Wheel::Left), 5.0, 0.1),
        want(Measure::Ratio, 1.1, 0.5),
        want(Measure::RodLength(Wheel::Right), 40.0, 0.01),
        want(Measure::CupGap(Wheel::Left), 20.0, 0.01),
        want(
            Measure::ToeCurve {
                wheel: Wheel::Left,
                points: vec![[-0.5, 0.01], [0.5, 0.0], [1.0, -0.01]],
                tolerance: 0.0,
            },
            0.0,
            1.0,
        ),
        want(
            Measure::InnerOuterCurve {
                turn: Wheel::Left,
                points: vec![[0.5 * inner, 0.48 * inner], [inner, 0.9 * inner]],
                tolerance: 0.1,
            },
            0.0,
            1.0,
        ),
    ]
}

/// Holds the list and the front of a search against brute force.
fn assert_complete(search: &Search, may_be: impl Fn(&[Chosen]) -> bool) -> Findings {
    let tried = brute_force(search, may_be);
    assert!(tried.len() > 20, "{} combinations are no test", tried.len());
    let found = search.run_on(1, &Progress::default()).unwrap();
    let shared = search.run_on(3, &Progress::default()).unwrap();
    assert_eq!(found, shared, "threads change nothing");
    assert!(found.is_complete);
    assert_eq!(found.list.len(), search.keep.min(tried.len()));
    for (finding, tried) in found.list.iter().zip(&tried) {
        assert!(
            (finding.off - tried.off).abs() < 1e-6 * (1.0 + tried.off),
            "{} against {}",
            finding.off,
            tried.off
        );
        assert_eq!(
            finding.changes.len(),
            tried.changes,
            "{finding:?} {tried:?}"
        );
    }
    for finding in &found.list {
        let values: Vec<Chosen> = finding
            .values
            .iter()
            .map(|(_, value)| value.clone())
            .collect();
        let same = tried.iter().find(|tried| tried.values == values).unwrap();
        assert!((finding.off - same.off).abs() < 1e-6 * (1.0 + same.off));
    }
    let best_with = |changes: usize| {
        let of_count = tried.iter().filter(|tried| tried.changes == changes);
        of_count.map(|tried| tried.off).reduce(f64::min)
    };
    let mut least = f64::INFINITY;
    let mut front = found.front.iter();
    for changes in 0..=search.free.len() {
        if let Some(off) = best_with(changes)
            && off < least - 1e-7
        {
            least = off;
            let finding = front.next().unwrap();
            assert_eq!(finding.changes.len(), changes);
            assert!((finding.off - off).abs() < 1e-6 * (1.0 + off));
        }
    }
    assert!(front.next().is_none());
    found
}

fn search(setup: Setup, names: &[&str], wants: Vec<Want>) -> Search {
    Search {
        free: free(&setup, names),
        setup,
        wants,
        stock: vec![],
        most_changes: None,
        keep: 12,
    }
}

#[test]
fn finds_what_brute_force_finds_on_a_mirrored_car() {
    let setup = supplied("pan-car-swinging-arm.ron");
    let names = [
        "Steering-arm hole",
        "Servo-arm hole",
        "Caster insert",
        "Outer rod spacers",
    ];
    assert_complete(&search(setup, &names, wants(15.0)), |_| true);
}

#[test]
fn finds_what_brute_force_finds_with_the_servo_off_centre() {
    let mut setup = supplied("pan-car-sliding-kingpin.ron");
    let sideways = index(&setup, "Servo sideways");
    setup.set(sideways, Chosen::Slide(1.5)).unwrap();
    let names = ["Servo sideways", "Inner rod spacers", "Steering-arm hole"];
    assert_complete(&search(setup, &names, wants(15.0)), |_| true);
}

#[test]
fn finds_what_brute_force_finds_with_twin_cranks() {
    let setup = supplied("touring-car.ron");
    let names = ["Crank station", "Inner rod spacers", "Outer rod spacers"];
    assert_complete(&search(setup, &names, wants(12.0)), |_| true);
}

#[test]
fn tries_no_more_changes_than_are_allowed() {
    let setup = supplied("pan-car-swinging-arm.ron");
    let names = [
        "Steering-arm hole",
        "Servo-arm hole",
        "Servo station",
        "Outer rod spacers",
    ];
    let mut search = search(setup, &names, wants(15.0));
    search.most_changes = Some(2);
    let found = assert_complete(&search, |_| true);
    assert!(found.list.iter().all(|finding| finding.changes.len() <= 2));
    // Only those are counted, and all of them are tried: none, one or two changed, the present value being one of each.
    let others: Vec<u64> = search
        .free
        .iter()
        .map(|free| free.values.len() as u64 - 1)
        .collect();
    let pairs = (0..others.len())
        .flat_map(|one| (0..one).map(move |other| (one, other)))
        .map(|(one, other)| others[one] * others[other]);
    let all = 1 + others.iter().sum::<u64>() + pairs.sum::<u64>();
    assert_eq!(search.combinations().unwrap(), all);
    assert_eq!(found.evaluated, all);
}

#[test]
fn a_whole_car_is_searched_by_few_changes() {
    let setup = supplied("touring-car.ron");
    let count = setup.car.adjustments.len();
    let free: Vec<Free> = (0..count)
        .map(|adjustment| Free::all(&setup, adjustment).unwrap())
        .collect();
    #[allow(clippy::cast_precision_loss, reason = "few values each")]
    let all_values: f64 = free.iter().map(|free| free.values.len() as f64).product();
    assert!(all_values > 1e12, "{all_values}");
    let mut search = Search {
        free,
        most_changes: Some(1),
        ..search(setup, &[], vec![want(Measure::Toe(Wheel::Both), 0.5, 1.0)])
    };
    let progress = Progress::default();
    let found = search.run(&progress).unwrap();
    assert!(found.is_complete && progress.done() == progress.all());
    assert_eq!(found.evaluated, search.combinations().unwrap());
    assert!(found.list.iter().all(|finding| finding.changes.len() <= 1));
    search.most_changes = None;
    assert!(matches!(
        search.run(&Progress::default()),
        Err(SearchError::TooMany(_))
    ));
}

#[test]
fn takes_no_more_spacers_than_there_are() {
    let setup = supplied("pan-car-swinging-arm.ron");
    let names = ["Inner rod spacers", "Outer rod spacers"];
    let mut search = search(setup, &names, wants(15.0));
    let [inner, outer] = names.map(|name| index(&search.setup, name));
    search.stock = vec![Stock {
        spacers: vec![
            StockSpacer {
                thickness: 1.0,
                count: 6,
            },
            StockSpacer {
                thickness: 0.5,
                count: 4,
            },
        ],
        stacks: vec![(inner, 2), (outer, 2)],
    }];
    // Two places each: a pair of 1.0 for three stacks' worth, a pair of 0.5 for two.
    let found = assert_complete(&search, |values| {
        let [Chosen::Stack(inner), Chosen::Stack(outer)] = values else {
            return false;
        };
        // 3 whole mm and two halves: whatever the split, the sum counts, up to 4 mm, and halves go in twos or singly.
        let alone = |total: f64| total <= 4.0;
        alone(*inner) && alone(*outer) && inner + outer <= 4.0
    });
    assert!(found.list.iter().all(|finding| {
        let total: f64 = finding
            .values
            .iter()
            .map(|(_, value)| match value {
                Chosen::Stack(total) => *total,
                _ => 0.0,
            })
            .sum();
        total <= 4.0
    }));
}

#[test]
fn a_finding_is_a_setup_that_does_what_it_says() {
    let setup = supplied("pan-car-swinging-arm.ron");
    let search = search(setup, &["Outer rod spacers", "Servo-arm hole"], wants(15.0));
    let found = search.run(&Progress::default()).unwrap();
    let finding = &found.list[0];
    let changed = finding.applied_to(&search.setup).unwrap();
    let study = Study::new(&changed).unwrap();
    let gradient = travel_gradient(&study.rest().corners.left, &study.assembly().axle().road);
    let bump_steer = gradient.unwrap().toe.to_degrees();
    assert!((finding.results[0].values[0] - bump_steer).abs() < 1e-9);
    for change in &finding.changes {
        let name = &search.setup.car.adjustments[change.adjustment].name;
        assert!(change.words.starts_with(name.as_str()), "{}", change.words);
        assert_eq!(changed.value(change.adjustment), change.to);
        assert_eq!(search.setup.value(change.adjustment), change.from);
    }
}

#[test]
fn a_range_narrows_the_values_that_are_tried() {
    let setup = supplied("pan-car-sliding-kingpin.ron");
    let spacers = index(&setup, "Outer rod spacers");
    let within = |least, most| Free::within(&setup, spacers, least, most).unwrap();
    let kept = within(1.0, 2.0).unwrap().values;
    assert_eq!(kept, [1.0, 1.5, 2.0].map(Chosen::Stack));
    for (least, most) in [(2.0, 1.0), (f64::NAN, 2.0), (0.0, f64::INFINITY)] {
        let refused = within(least, most).unwrap_err();
        assert!(matches!(refused, RangeError::NoRange { .. }), "{refused}");
    }
    let refused = within(5.5, 9.0).unwrap_err();
    assert!(
        matches!(refused, RangeError::NoneWithin { .. }),
        "{refused}"
    );
    let hole = index(&setup, "Servo-arm hole");
    let refused = Free::within(&setup, hole, 0.0, 1.0).unwrap().unwrap_err();
    assert!(refused.to_string().contains("middle hole"), "{refused}");
    assert!(Free::within(&setup, 99, 0.0, 1.0).is_none());
}

/// A slide without steps is tried on as fine a grid however narrow the range, both ends included, and refined within it only.
#[test]
fn a_narrowed_slide_without_steps_stays_within() {
    let mut setup = supplied("pan-car-sliding-kingpin.ron");
    let station = index(&setup, "Servo station");
    if let Kind::Slide { step, .. } = &mut setup.car.adjustments[station].kind {
        *step = None;
    }
    let free = Free::within(&setup, station, 0.5, 1.5).unwrap().unwrap();
    assert_eq!(free.values.len(), 9);
    assert_eq!(free.values.first(), Some(&Chosen::Slide(0.5)));
    assert_eq!(free.values.last(), Some(&Chosen::Slide(1.5)));
    let turn = Wheel::Both;
    let wants = vec![want(Measure::Ackermann { turn, inner: 15.0 }, -500.0, 1.0)];
    let search = Search {
        free: vec![free],
        setup,
        wants,
        stock: vec![],
        most_changes: None,
        keep: 3,
    };
    let found = search.run(&Progress::default()).unwrap();
    for finding in &found.list {
        let Chosen::Slide(value) = finding.values[0].1 else {
            panic!("a slide")
        };
        assert!((0.5..=1.5).contains(&value), "{value}");
    }
}

#[test]
fn a_slide_without_steps_is_refined() {
    let setup = supplied("pan-car-swinging-arm.ron");
    let wants = vec![want(Measure::Camber(Wheel::Both), -1.234, 1.0)];
    let search = search(setup, &["Upper arm length"], wants);
    let found = search.run(&Progress::default()).unwrap();
    let best = &found.list[0];
    let camber = best.results[0].values[0];
    assert!((camber + 1.234).abs() < 0.01, "{camber}");
    assert!(found.unmet.is_empty());
}

#[test]
fn a_want_that_nothing_meets_names_its_limit() {
    let setup = supplied("pan-car-swinging-arm.ron");
    let station = index(&setup, "Servo station");
    // Far more Ackermann than moving the servo can give.
    let measure = Measure::Ackermann {
        turn: Wheel::Left,
        inner: 15.0,
    };
    let search = search(setup, &["Servo station"], vec![want(measure, 500.0, 1.0)]);
    let found = search.run(&Progress::default()).unwrap();
    let [unmet] = &found.unmet[..] else {
        panic!("{:?}", found.unmet);
    };
    assert_eq!(unmet.want, 0);
    assert_eq!(
        unmet.nearest.as_ref().unwrap(),
        &found.list[0].results[0].values
    );
    let at_end =
        |limit: &Limit| matches!(limit, Limit::End { adjustment, .. } if *adjustment == station);
    assert!(unmet.limits.iter().any(at_end), "{:?}", unmet.limits);
}

#[test]
fn an_angle_that_is_not_reached_is_said_so() {
    let setup = supplied("pan-car-swinging-arm.ron");
    let measure = Measure::Ackermann {
        turn: Wheel::Both,
        inner: 80.0,
    };
    let search = search(setup, &["Servo station"], vec![want(measure, 50.0, 1.0)]);
    let found = search.run(&Progress::default()).unwrap();
    assert!(found.list.is_empty());
    assert_eq!(found.unmet[0].nearest, None);
    assert_eq!(found.unmet[0].limits, [Limit::NotReached]);
}

#[test]
fn a_stopped_search_keeps_what_it_has() {
    let setup = supplied("pan-car-swinging-arm.ron");
    let names = ["Servo station", "Outer rod spacers", "Servo-arm hole"];
    let search = search(setup, &names, wants(15.0));
    let progress = Progress::default();
    progress.stop();
    let found = search.run(&progress).unwrap();
    assert!(!found.is_complete);
    assert_eq!(found.evaluated, 0);
    assert!(found.list.is_empty());
    let progress = Progress::default();
    let found = search.run(&progress).unwrap();
    assert!(found.is_complete);
    assert_eq!(progress.done(), progress.all());
    assert_eq!(progress.all(), search.combinations().unwrap());
}

#[test]
fn senseless_searches_are_refused() {
    let setup = supplied("kart.ron");
    let sound = search(
        setup,
        &["Outer rod spacers"],
        vec![want(Measure::Ratio, 1.0, 1.0)],
    );
    let refused = |change: fn(&mut Search)| {
        let mut search = sound.clone();
        change(&mut search);
        search.run(&Progress::default()).unwrap_err()
    };
    assert_eq!(
        refused(|search| search.wants.clear()),
        SearchError::NothingWanted
    );
    assert_eq!(
        refused(|search| search.free.clear()),
        SearchError::NothingFree
    );
    assert!(matches!(
        refused(|search| search.free.push(search.free[0].clone())),
        SearchError::FreeTwice(_)
    ));
    assert_eq!(
        refused(|search| search.free[0].adjustment = 99),
        SearchError::NoSuchAdjustment(99)
    );
    assert!(matches!(
        refused(|search| search.free[0].values.clear()),
        SearchError::NoValues(_)
    ));
    assert!(matches!(
        refused(|search| search.free[0].values.push(Chosen::Slide(1.0))),
        SearchError::BadValue(_)
    ));
    assert!(matches!(
        refused(|search| search.wants[0].weight = f64::NAN),
        SearchError::BadWant { .. }
    ));
    assert!(matches!(
        refused(|search| search.wants[0].target = Target::Range(2.0, 1.0)),
        SearchError::BadWant { .. }
    ));
}
