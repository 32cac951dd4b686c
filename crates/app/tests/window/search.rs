//! The search over the parts at hand, worked through its drawer.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::time::Duration;

use crate::common::{
    App, adjustment, click, command_key, press, setup, value, wait_while, window, words,
};
use eframe::egui::Key;
use eframe::egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft::state::Change;
use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::find::{Findings, Target};
use steerloft_setup::setup::Chosen;

/// Opens the drawer with nothing free but these adjustments.
fn with_free(app: &mut App, names: &[&str]) {
    app.key_press(Key::F3);
    app.run();
    click(app, "none");
    for name in names {
        tick(app, &format!("May change: {name}"));
    }
}

fn tick(app: &mut App, name: &str) {
    app.get_by_role_and_label(Role::CheckBox, name)
        .click_accesskit();
    app.run();
}

/// Starts the search and waits for its end.
fn search(app: &mut App) -> Findings {
    press(app, "Start the search");
    ended(app)
}

fn ended(app: &mut App) -> Findings {
    wait_while(app, |app| app.view().drawers.searching.progress().is_some());
    let found = app.state().view().drawers.searching.found().unwrap();
    found.outcome.clone().expect("a search that can be made")
}

fn adjust(app: &mut App, name: &str, value: Chosen) {
    let adjustment = adjustment(app, name);
    let change = Change::Adjust { adjustment, value };
    app.state_mut().bench_mut().apply(change);
    app.run();
}

#[test]
fn a_finding_is_put_on_the_setup_as_one_step() {
    let (mut app, _) = window();
    let before = setup(&app).clone();
    with_free(&mut app, &["Outer rod spacers", "Inner rod spacers"]);
    let findings = search(&mut app);
    assert!(findings.is_complete && findings.evaluated > 10);
    let best = &findings.list[0];
    assert!(best.off < findings.front[0].off && !best.changes.is_empty());
    assert!(words(&app).contains(&best.changes[0].words));
    let front = format!(
        "Closeness against changes: no change {:.2}",
        findings.front[0].off
    );
    assert!(app.query_by_label_contains(&front).is_some());
    press(&mut app, "Apply finding 1");
    assert_eq!(*setup(&app), best.applied_to(&before).unwrap());
    let name = app.state().bench().undo_label().unwrap();
    assert!(name.starts_with("Finding 1: "), "{name}");
    command_key(&mut app, Key::Z);
    assert_eq!(*setup(&app), before);
}

#[test]
fn a_finding_is_opened_beside_the_setup_or_shown_behind_it() {
    let (mut app, _) = window();
    let before = setup(&app).clone();
    with_free(&mut app, &["Outer rod spacers"]);
    let findings = search(&mut app);
    press(&mut app, "Show finding 1 behind");
    let reference = app.state().bench().reference().unwrap();
    let found = findings.list[0].applied_to(&before).unwrap();
    assert_eq!(reference.setup().chosen, found.chosen);
    assert_eq!(*setup(&app), before);
    adjust(&mut app, "Servo station", Chosen::Slide(1.0));
    press(&mut app, "Open finding 1");
    assert_eq!(app.state().bench().open_setups().len(), 2);
    assert_eq!(
        setup(&app).chosen["Outer rod spacers"],
        found.chosen["Outer rod spacers"]
    );
    assert_eq!(
        value(&app, "Servo station"),
        Chosen::Slide(1.0),
        "as it stands now"
    );
    assert!(setup(&app).record.name.ends_with("finding 1"));
}

#[test]
fn what_cannot_be_met_names_the_nearest_and_what_is_in_the_way() {
    let (mut app, _) = window();
    with_free(&mut app, &["Servo station"]);
    let want = &mut app.state_mut().view_mut().drawers.searching.form.wants[0];
    want.figure = FigureKind::Ackermann;
    want.target = Target::Value(500.0);
    app.run();
    let findings = search(&mut app);
    assert_eq!(findings.unmet.len(), 1);
    let told = words(&app);
    let told = told.iter().find(|text| text.contains("cannot be met"));
    let told = told.expect("it is said");
    assert!(told.contains("the nearest is "), "{told}");
    assert!(told.contains("in the way: Servo station ends at"), "{told}");
}

/// Common practice, no source: where the servo's arm sits 1 mm lower, 1 mm less of outer spacer brings the curves back.
#[test]
fn the_behaviour_of_the_reference_is_brought_back_after_a_part_was_changed() {
    let (mut app, _) = window();
    with_free(&mut app, &["Outer rod spacers", "Inner rod spacers"]);
    let name = "The reference's curves";
    let tick_box = app.get_by_role_and_label(Role::CheckBox, name);
    assert!(tick_box.accesskit_node().is_disabled(), "no reference yet");
    command_key(&mut app, Key::M);
    adjust(&mut app, "Servo height packing", Chosen::Stack(0.0));
    press(&mut app, "Want 1: take away");
    tick(&mut app, name);
    app.get_by_role_and_label(Role::RadioButton, "Changes at most: 1")
        .click_accesskit();
    app.run();
    let findings = search(&mut app);
    let best = &findings.list[0];
    let words: Vec<&str> = best.changes.iter().map(|one| one.words.as_str()).collect();
    assert_eq!(words.len(), 1, "{words:?}");
    assert!(
        words[0].starts_with("Outer rod spacers: 3 mm to 2 mm"),
        "{words:?}"
    );
    press(&mut app, "Apply finding 1");
    assert!(
        app.state().bench().compared().is_some(),
        "the reference stays behind"
    );
}

#[test]
fn a_search_is_stopped_and_keeps_what_it_found() {
    let (mut app, _) = window();
    app.key_press(Key::F3);
    app.run();
    app.get_by_role_and_label(Role::RadioButton, "Changes at most: 4")
        .click();
    app.run();
    press(&mut app, "Start the search");
    while app
        .state()
        .view()
        .drawers
        .searching
        .progress()
        .is_some_and(|(done, _)| done == 0)
    {
        std::thread::sleep(Duration::from_millis(5));
        app.step();
    }
    app.get_by_label("Progress of the search");
    press(&mut app, "Stop the search");
    let findings = ended(&mut app);
    assert!(!findings.is_complete);
    assert!(
        words(&app)
            .iter()
            .any(|text| text.ends_with("stopped early"))
    );
}

#[test]
fn a_whole_curve_is_wanted_point_by_point() {
    let (mut app, _) = window();
    with_free(&mut app, &["Outer rod spacers"]);
    press(&mut app, "Want 1: take away");
    press(&mut app, "Add a curve");
    click(&mut app, "Toe against travel");
    let form = |app: &App| app.state().view().drawers.searching.form.curves[0].clone();
    assert_eq!(form(&app).points.len(), 3);
    app.get_by_role_and_label(Role::SpinButton, "Curve 1, point 1: toe");
    press(&mut app, "Curve 1: add a point");
    assert_eq!(form(&app).points.len(), 4);
    press(&mut app, "Curve 1, point 4: take away");
    let other = app.state().bench().setup().clone();
    let place = adjustment(&app, "Outer rod spacers");
    let mut other = other;
    other.set(place, Chosen::Stack(2.0)).unwrap();
    let study = steerloft_analysis::Study::new(&other).unwrap();
    let toe = |travel: f64| {
        let pose = study
            .assembly()
            .pose(0.0, steerloft_solver::Sides::both(travel));
        let road = &study.assembly().axle().road;
        let corner = pose.unwrap().corners.left;
        let figures = steerloft_solver::figures::corner_figures(&corner, road);
        figures.toe.to_degrees()
    };
    let curve = &mut app.state_mut().view_mut().drawers.searching.form.curves[0];
    curve.points = vec![[-1.0, toe(-1.0)], [0.0, toe(0.0)], [2.0, toe(2.0)]];
    app.run();
    let findings = search(&mut app);
    let best = &findings.list[0];
    assert!(best.off < 1e-6, "{}", best.off);
    assert!(best.changes[0].words.contains("3 mm to 2 mm"));
    press(&mut app, "Curve 1: take away");
    assert!(app.state().view().drawers.searching.form.curves.is_empty());
}

#[test]
fn an_adjustment_is_kept_within_a_range() {
    let (mut app, _) = window();
    with_free(&mut app, &["Outer rod spacers"]);
    press(&mut app, "Keep within: Outer rod spacers");
    let ranges = |app: &App| app.state().view().drawers.searching.form.ranges.clone();
    assert_eq!(ranges(&app)["Outer rod spacers"], (0.0, 5.0));
    app.get_by_role_and_label(Role::SpinButton, "Outer rod spacers: least");
    let form = &mut app.state_mut().view_mut().drawers.searching.form;
    let range = form.ranges.get_mut("Outer rod spacers").unwrap();
    *range = (1.0, 2.0);
    app.run();
    let findings = search(&mut app);
    assert_eq!(findings.evaluated, 3);
    let form = &mut app.state_mut().view_mut().drawers.searching.form;
    *form.ranges.get_mut("Outer rod spacers").unwrap() = (1.1, 1.2);
    app.run();
    press(&mut app, "Start the search");
    let told = words(&app);
    assert!(
        told.iter()
            .any(|text| text.contains("can take no value from 1.1 to 1.2")),
        "{told:?}"
    );
    press(&mut app, "Outer rod spacers: whole range");
    assert!(ranges(&app).is_empty());
}

#[test]
fn wants_are_written_added_and_taken_away() {
    let (mut app, _) = window();
    app.key_press(Key::F3);
    app.run();
    press(&mut app, "Add a want");
    app.get_by_role_and_label(Role::RadioButton, "Want 2: lie in")
        .click_accesskit();
    app.run();
    app.get_by_role_and_label(Role::SpinButton, "Want 2: least");
    press(&mut app, "Want 1: take away");
    press(&mut app, "Want 1: take away");
    press(&mut app, "Start the search");
    let found = app.state().view().drawers.searching.found();
    assert!(found.is_none() || found.unwrap().outcome.is_err());
    wait_while(&mut app, |app| {
        app.view().drawers.searching.progress().is_some()
    });
    assert!(
        words(&app)
            .iter()
            .any(|text| text.starts_with("Nothing is wanted"))
    );
}
