//! The window, the sheet and the command line show the same number for the same thing: what stands on screen is read from
//! the widgets, what stands on paper from the page's text, and both are held against what the program tells a script.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;
use std::process::Command;

use crate::common::{App, command_key, window_on};
use eframe::egui::accesskit::Role;
use eframe::egui::{Key, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use serde_json::Value;
use steerloft::state::Document;
use steerloft_analysis::figures::FigureKind;
use steerloft_setup::supplied::SUPPLIED;

/// So high that every row of the table is on screen.
const HIGH: eframe::egui::Vec2 = vec2(1280.0, 3000.0);

/// Figures that a sheet lists.
const ON_PAPER: usize = 18;

/// Runs the program as a shell does; what it wrote.
fn steerloft(folder: &Path, arguments: &[&str]) -> Vec<u8> {
    let mut program = Command::new(env!("CARGO_BIN_EXE_steerloft"));
    let output = program
        .args(arguments)
        .current_dir(folder)
        .output()
        .unwrap();
    assert!(output.status.success(), "{arguments:?}: {output:?}");
    output.stdout
}

/// The values of a figure as they stand on screen: left and right, or one of the axle.
fn on_screen(app: &App, kind: FigureKind) -> Vec<String> {
    let name = kind.facts().brief;
    let start = format!("{name}: ");
    let said = app
        .query_all_by_role(Role::Label)
        .filter_map(|label| {
            let node = label.accesskit_node();
            node.value().or(node.label())
        })
        .find(|said| said.starts_with(&start))
        .unwrap_or_else(|| panic!("{name} stands on screen"));
    let words: Vec<&str> = said[start.len()..].split_whitespace().collect();
    match words[..] {
        ["left", left, .., "right", right] | ["left", left, .., "right", right, _] => {
            vec![left.to_owned(), right.to_owned()]
        }
        [value, ..] => vec![value.to_owned()],
        [] => panic!("{said}"),
    }
}

/// The values of a figure as a script is told them; none where there is none.
fn told(report: &Value, kind: FigureKind) -> Vec<Option<f64>> {
    let name = kind.facts().name;
    let figures = report[0]["figures"].as_array().unwrap();
    let figure = figures.iter().find(|figure| figure["name"] == name);
    let figure = figure.unwrap_or_else(|| panic!("{name} in the report"));
    let sides = ["left", "right"].map(|side| figure.get(side));
    match sides {
        [Some(left), Some(right)] => vec![left.as_f64(), right.as_f64()],
        _ => vec![figure["value"].as_f64()],
    }
}

/// Whether a text is a number to its own last place, or the dash for none.
fn says(text: &str, value: Option<f64>) -> bool {
    let Some(value) = value else {
        return text == "\u{2013}";
    };
    let plain = text.replace('\u{2212}', "-");
    let decimals = plain.split_once('.').map_or(0, |(_, after)| after.len());
    let half = 0.5 * 10_f64.powi(-i32::try_from(decimals).unwrap());
    plain
        .parse::<f64>()
        .is_ok_and(|shown| (shown - value).abs() <= half * (1.0 + 1e-9))
}

/// What is written on an SVG page, in its order.
fn written(page: &str) -> String {
    let document = roxmltree::Document::parse(page).unwrap();
    let texts = document
        .descendants()
        .filter(|node| node.has_tag_name("text"))
        .map(|node| {
            let parts = node.descendants().filter(roxmltree::Node::is_text);
            let parts = parts.filter_map(|part| part.text());
            parts.collect::<String>()
        });
    texts.collect::<Vec<_>>().join(" ")
}

#[test]
fn window_sheet_and_command_line_show_the_same_numbers() {
    for car in SUPPLIED {
        let folder = tempfile::tempdir().unwrap();
        let folder = folder.path();
        std::fs::write(folder.join("car.ron"), car.text).unwrap();
        let report = steerloft(folder, &["report", "--json", "car.ron"]);
        let report: Value = serde_json::from_slice(&report).unwrap();
        steerloft(folder, &["sheet", "car.ron", "-o", "car.svg"]);
        let paper = written(&std::fs::read_to_string(folder.join("car.svg")).unwrap());
        let document = Document::read(&folder.join("car.ron")).unwrap();
        let (mut app, _) = window_on(document, HIGH);
        command_key(&mut app, Key::Num2);

        let mut on_paper = 0;
        for kind in FigureKind::ALL {
            let shown = on_screen(&app, kind);
            let told = told(&report, kind);
            let title = format!("{}: {}", car.title, kind.facts().title);
            assert_eq!(shown.len(), told.len(), "{title}: {shown:?} {told:?}");
            for (text, value) in shown.iter().zip(&told) {
                assert!(says(text, *value), "{title}: {text} is not {value:?}");
            }
            let shown_figure = app.state().bench().derived().shown().unwrap().figure(kind);
            let (title, unit) = (kind.facts().title_with_sign(), shown_figure.unit);
            let row = format!("{title} {unit} {}", shown.join(" "));
            on_paper += usize::from(paper.contains(&row));
        }
        assert!(on_paper >= ON_PAPER, "{}: {on_paper} in {paper}", car.title);
    }
}
