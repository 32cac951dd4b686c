//! Every supplied car on the bench: opened, steered over its range, changed by its pivots, read off.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{
    App, SIZE, click, command_key, drag_and_drop, handle, set_slider, setup, window_on,
};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use steerloft::commands::Command;
use steerloft::state::{CurveKind, Document, InputUnit, Shown};
use steerloft::ui::views::handle_name;
use steerloft_analysis::figures::{FigureKind, Texts, Values};
use steerloft_setup::car::{Drive, Suspension};
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::{SUPPLIED, Supplied};
use steerloft_sheet::View;

fn open(car: &Supplied) -> App {
    window_on(Document::unnamed(car.setup()), SIZE).0
}

fn shown(app: &App) -> &Shown {
    app.state().bench().derived().shown().unwrap()
}

fn car_with(wanted: impl Fn(&Setup) -> bool) -> &'static Supplied {
    SUPPLIED
        .iter()
        .find(|car| wanted(&car.setup()))
        .expect("a supplied car of this kind")
}

fn kart() -> &'static Supplied {
    car_with(|setup| setup.car.left.suspension == Suspension::FixedKingpin)
}

fn car_with_rack() -> &'static Supplied {
    car_with(|setup| matches!(setup.car.drive, Drive::Slider { .. }))
}

/// Asserts that every figure on screen is a number or a dash, and says how many are numbers.
fn count_figures(app: &App, title: &str) -> usize {
    let mut numbers = 0;
    for figure in &shown(app).figures {
        let texts = match figure.texts() {
            Texts::Sides(sides) => vec![sides.left, sides.right],
            Texts::Axle(value) => vec![value],
        };
        for text in texts {
            if text != "\u{2013}" {
                let number: f64 = text.replace('\u{2212}', "-").parse().unwrap();
                assert!(number.is_finite(), "{title}: {:?} {text}", figure.kind);
                numbers += 1;
            }
        }
    }
    numbers
}

#[test]
fn steers_over_its_whole_range() {
    for car in SUPPLIED {
        let mut app = open(car);
        let range = setup(&app).car.ranges.input;
        for share in [0.0, 0.25, 0.5, 0.75, 1.0] {
            let input = range.0 + (range.1 - range.0) * share;
            set_slider(&mut app, "Steering input", input);
            let derived = app.state().bench().derived();
            assert_eq!(derived.trouble(), None, "{} at {input}", car.title);
            let unit = InputUnit::of(&setup(&app).car);
            let posed = unit.from_solver(shown(&app).pose.input);
            assert!((posed - input).abs() < 1e-9, "{}: {posed}", car.title);
            assert!(count_figures(&app, car.title) > 40, "{}", car.title);
        }
        assert!(!app.state().bench().document().is_changed());
    }
}

#[test]
fn travels_over_its_whole_range_if_it_travels() {
    for car in SUPPLIED {
        let mut app = open(car);
        if !shown(&app).assembly().has_travel() {
            continue;
        }
        let range = setup(&app).car.ranges.travel;
        for travel in [range.0, range.1] {
            set_slider(&mut app, "Wheel travel", travel);
            assert!((shown(&app).pose.travel.left - travel).abs() < 1e-9);
            count_figures(&app, car.title);
        }
        let shown = shown(&app);
        assert!(shown.curve(CurveKind::ToeTravel).ends.is_empty());
        let rolled = shown.study.sweeps().roll().len();
        assert!(rolled > 60, "{}: {rolled}", car.title);
    }
}

/// Pivots of each car that are dragged.
const DRAGGED: usize = 5;

#[test]
fn pivots_of_every_car_can_be_dragged() {
    for car in SUPPLIED {
        let mut app = open(car);
        let before = setup(&app).clone();
        let pivots = &shown(&app).handles;
        assert!(pivots.len() >= DRAGGED, "{}: {pivots:?}", car.title);
        let some = pivots.iter().step_by(pivots.len().div_ceil(DRAGGED));
        let names: Vec<String> = some
            .zip([View::Front, View::Top].into_iter().cycle())
            .map(|(pivot, view)| handle_name(pivot.point, pivot.side, view))
            .collect();
        let mut moved = 0;
        for name in &names {
            let from = handle(&app, name);
            app.hover_at(from);
            app.run();
            app.drag_at(from);
            for by in [vec2(5.0, -5.0), vec2(28.0, -30.0), vec2(40.0, 34.0)] {
                app.hover_at(from + by);
                app.run();
                count_figures(&app, car.title);
                moved += usize::from(*setup(&app) != before);
            }
            crate::common::release(&mut app, from + vec2(40.0, 34.0));
            if app.state().bench().undo_label().is_some() {
                command_key(&mut app, Key::Z);
            }
            assert_eq!(*setup(&app), before, "{}: {name} is taken back", car.title);
        }
        assert!(moved >= names.len(), "{}: {moved} of {names:?}", car.title);
    }
}

#[test]
fn every_curve_can_be_shown_of_every_car() {
    for car in SUPPLIED {
        let mut app = open(car);
        for kind in CurveKind::ALL {
            if app.state().view().curves.has(kind) {
                app.state_mut().view_mut().curves.toggle(kind);
            }
        }
        for kind in CurveKind::ALL {
            app.state_mut().view_mut().curves.toggle(kind);
            app.run();
            let curve = shown(&app).curve(kind);
            let plots = app
                .query_by_role_and_label(Role::Image, kind.title())
                .is_some();
            assert_eq!(plots, !curve.series.is_empty(), "{}: {kind:?}", car.title);
            for series in curve.of_setup() {
                let line = &series.points;
                assert!(line.len() > 50, "{}: {kind:?} {}", car.title, line.len());
                assert!(line.iter().flatten().all(|value| value.is_finite()));
                assert!(
                    line.is_sorted_by(|a, b| a[0] <= b[0]),
                    "{}: {kind:?}",
                    car.title
                );
            }
            app.state_mut().view_mut().curves.toggle(kind);
        }
    }
}

#[test]
fn a_rack_is_moved_in_millimetres() {
    let mut app = open(car_with_rack());
    set_slider(&mut app, "Steering input", 10.0);
    assert!(
        (shown(&app).pose.input - 10.0).abs() < 1e-12,
        "mm go to the solver as they are"
    );
    let rack = shown(&app).pose.drive.rod_inner.left;
    let at_rest = shown(&app).assembly().static_pose().drive.rod_inner.left;
    assert!(((rack - at_rest).norm() - 10.0).abs() < 1e-9);
    let field = app.get_by_role_and_label(Role::SpinButton, "Steering input");
    let value = field.value().unwrap_or_default();
    assert!(value.ends_with("mm"), "{value}");
    let last = shown(&app).study.sweeps().turns().last().unwrap().input;
    let most = setup(&app).car.ranges.input.1;
    assert!(
        (last - most).abs() < 1e-9,
        "the curve goes to {last} of {most} mm"
    );
}

#[test]
fn the_steering_is_dragged_in_a_curve_of_a_rack() {
    let mut app = open(car_with_rack());
    app.state_mut()
        .view_mut()
        .curves
        .toggle(CurveKind::SteeringRatio);
    app.run();
    let title = CurveKind::SteeringRatio.title();
    let plot = app.get_by_role_and_label(Role::Image, title);
    plot.scroll_to_me();
    app.run();
    let plot = app.get_by_role_and_label(Role::Image, title).rect();
    drag_and_drop(&mut app, plot.center(), vec2(plot.width() * 0.2, 0.0));
    let input = app.state().bench().cursor().input;
    let most = setup(&app).car.ranges.input.1;
    assert!(
        input > most * 0.3 && input < most * 0.7,
        "{input} of {most} mm"
    );
}

#[test]
fn a_kart_has_no_travel_and_says_so() {
    let mut app = open(kart());
    app.get_by_label("No wheel travel: fixed kingpin.");
    let slider = app.get_by_role_and_label(Role::Slider, "Wheel travel");
    assert!(slider.accesskit_node().is_disabled());
    let shown = shown(&app);
    for kind in [FigureKind::BumpSteer, FigureKind::RollCentreHeight] {
        match shown.figure(kind).values {
            Values::Sides(sides) => assert_eq!((sides.left, sides.right), (None, None)),
            Values::Axle(value) => assert_eq!(value, None),
        }
    }
    let centre = shown.figure(FigureKind::StraightAckermann).values;
    assert!(matches!(centre, Values::Axle(Some(_))), "{centre:?}");
    set_slider(&mut app, "Steering input", 20.0);
    assert_eq!(app.state().bench().derived().trouble(), None);
}

#[test]
fn a_step_effect_is_known_of_every_adjustment_of_every_car() {
    for car in SUPPLIED {
        let setup = car.setup();
        for (index, adjustment) in setup.car.adjustments.iter().enumerate() {
            let effect = steerloft::state::step_effect(&setup, index);
            let effect = effect.unwrap_or_else(|| panic!("{}: {}", car.title, adjustment.name));
            assert!(
                effect.ackermann_share.is_some(),
                "{}: {}",
                car.title,
                adjustment.name
            );
        }
    }
}

#[test]
fn curves_are_chosen_from_their_list() {
    let mut app = open(&SUPPLIED[0]);
    let kind = CurveKind::CamberTravel;
    assert!(
        app.query_by_role_and_label(Role::Image, kind.title())
            .is_none()
    );
    click(&mut app, "Choose curves");
    for chosen in [kind, CurveKind::RollSteer] {
        app.get_by_role_and_label(Role::CheckBox, chosen.title())
            .click();
        app.run();
        assert!(app.state().view().curves.has(chosen), "the list stays open");
    }
    app.key_press(Key::Escape);
    app.run();
    app.get_by_role_and_label(Role::Image, kind.title());
    assert!(!app.state().bench().document().is_changed());
}

#[test]
fn the_table_of_figures_takes_the_place_of_the_curves() {
    let mut app = open(&SUPPLIED[0]);
    assert!(app.query_by_label_contains("Least toe:").is_none());
    command_key(&mut app, Key::Num2);
    app.get_by_label_contains("Least toe:");
    assert!(
        app.query_by_role_and_label(Role::Image, CurveKind::ToeTravel.title())
            .is_none()
    );
    app.get_by_label("Show: Curves").click();
    app.run();
    app.get_by_role_and_label(Role::Image, CurveKind::ToeTravel.title());
}

#[test]
fn fitted_views_hold_the_car_at_full_lock() {
    for car in SUPPLIED {
        let mut app = open(car);
        for input in [
            setup(&app).car.ranges.input.0,
            setup(&app).car.ranges.input.1,
        ] {
            set_slider(&mut app, "Steering input", input);
            for view in [View::Top, View::Front] {
                let transform = app.state().view().views.transform(view).unwrap();
                let shown = shown(&app);
                let drawing = steerloft_sheet::front_end(shown.layout(), &shown.pose, view);
                let bounds = drawing.bounds().unwrap();
                let middle = app.get_by_label(view.title());
                let area = middle.rect();
                for corner in [bounds.min, bounds.max] {
                    let at = transform.to_screen(corner);
                    assert!(
                        area.contains(at),
                        "{}: {view:?} {at:?} in {area:?}",
                        car.title
                    );
                }
            }
        }
    }
}

#[test]
fn every_supplied_car_is_in_the_menu_and_opens_from_it() {
    let mut app = open(&SUPPLIED[0]);
    for (index, car) in SUPPLIED.iter().enumerate().rev() {
        app.get_by_label("File").click();
        app.run();
        app.get_by_label_contains("New from supplied car").click();
        app.run();
        app.get_by_label_contains(Command::New(index).text())
            .click();
        app.run();
        assert_eq!(setup(&app).car.name, car.setup().car.name);
    }
}
