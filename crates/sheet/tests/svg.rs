//! SVG documents: well formed, in real millimetres, the same bytes each time, whatever the names hold.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cars;

use steerloft_sheet::{
    Anchor, Drawing, Ink, Outline, Role, Shape, Text, View, drawing_page, front_end, svg,
};
use steerloft_solver::Side;

fn shape(role: Role, outline: Outline) -> Shape {
    Shape {
        role,
        side: None,
        outline,
    }
}

/// One shape of each form.
fn every_form() -> Drawing {
    Drawing {
        shapes: vec![
            shape(
                Role::Servo,
                Outline::Polygon(vec![[0.0, 0.0], [20.0, 0.0], [20.0, 10.0], [0.0, 10.0]]),
            ),
            Shape {
                role: Role::SteeringArm,
                side: Some(Side::Left),
                outline: Outline::Polyline(vec![[0.0, 0.0], [10.0 / 3.0, 5.0], [10.0, -0.0001]]),
            },
            Shape {
                role: Role::SteeringArm,
                side: Some(Side::Left),
                outline: Outline::Line([[1.0, 2.0], [3.0, 4.0]]),
            },
            shape(
                Role::CentreLine,
                Outline::Line([[10.0, -4.0], [10.0, 14.0]]),
            ),
            shape(
                Role::Ball,
                Outline::Circle {
                    centre: [5.0, 5.0],
                    radius: 2.25,
                },
            ),
            shape(
                Role::Label,
                Outline::Text(Text {
                    at: [10.0, 2.0],
                    anchor: Anchor::Middle,
                    size: 3.0,
                    bold: true,
                    content: "2 < 3 & \"so on\"".to_owned(),
                }),
            ),
        ],
    }
}

#[test]
fn the_document_is_as_it_was() {
    let drawing = every_form();
    let layers = [(&drawing, Ink::Reference), (&drawing, Ink::Current)];
    let document = svg::drawings("Every form <twice>", &layers, 2.0);
    insta::assert_snapshot!(without_font(&document));
}

/// The document with the font's data left out, which is the program's own file.
fn without_font(document: &str) -> String {
    let mut rest = document;
    let mut short = String::new();
    while let Some((before, after)) = rest.split_once("base64,") {
        let (data, after) = after.split_once(')').unwrap();
        assert!(data.len() > 10_000, "a font is embedded");
        short.push_str(before);
        short.push_str("base64,...)");
        rest = after;
    }
    short + rest
}

#[test]
fn a_drawing_is_as_large_on_paper_as_its_scale_says() {
    let car = cars::posed(cars::pan_car(), 20.0, 0.0);
    let drawing = front_end(&car.layout, &car.pose, View::Top);
    let bounds = drawing.bounds().unwrap();
    for scale in [0.5, 1.0, 2.0] {
        let text = svg::drawings("Top", &[(&drawing, Ink::Current)], scale);
        let document = roxmltree::Document::parse(&text).unwrap();
        let root = document.root_element();
        let millimetres = |name: &str| -> f64 {
            root.attribute(name)
                .unwrap()
                .strip_suffix("mm")
                .unwrap()
                .parse()
                .unwrap()
        };
        // A margin of 4 mm all round, and numbers to a thousandth.
        assert!((millimetres("width") - (scale * bounds.width() + 8.0)).abs() < 0.001);
        assert!((millimetres("height") - (scale * bounds.height() + 8.0)).abs() < 0.001);
    }
}

#[test]
fn every_document_is_well_formed_and_the_same_each_time() {
    for (setup, input) in [
        (cars::pan_car(), 0.0),
        (cars::pan_car(), 20.0),
        (cars::kart(), -15.0),
    ] {
        let car = cars::posed(setup, input, 0.0);
        let page = || svg::page(&drawing_page(&car.setup, &car.layout, &car.pose));
        check(&page());
        assert_eq!(page(), page());
        for view in View::ALL {
            let drawing = front_end(&car.layout, &car.pose, view);
            check(&svg::drawings(
                view.title(),
                &[(&drawing, Ink::Current)],
                1.0,
            ));
        }
    }
}

/// Well formed, every number finite and short, every point on the paper.
fn check(text: &str) {
    let document = roxmltree::Document::parse(text).unwrap();
    assert_eq!(document.root_element().tag_name().name(), "svg");
    assert!(!text.contains("NaN") && !text.contains("inf\""));
    let view_box: Vec<f64> = numbers(document.root_element().attribute("viewBox").unwrap());
    for node in document
        .descendants()
        .filter(|node| node.has_attribute("points"))
    {
        for pair in numbers(node.attribute("points").unwrap()).chunks(2) {
            assert!(
                (0.0..=view_box[2]).contains(&pair[0]) && (0.0..=view_box[3]).contains(&pair[1])
            );
        }
    }
    for number in
        text.split(|letter: char| !letter.is_ascii_digit() && letter != '.' && letter != '-')
    {
        assert_ne!(number, "-0");
        let decimals = number
            .split_once('.')
            .map_or(0, |(_, decimals)| decimals.len());
        assert!(decimals <= 3, "{number}");
    }
}

fn numbers(list: &str) -> Vec<f64> {
    list.split([' ', ','])
        .map(|number| number.parse().unwrap())
        .collect()
}

#[test]
fn writing_comes_back_as_it_was_and_what_xml_forbids_does_not_break_it() {
    let mut drawing = every_form();
    let content = "<b>&amp; \"quotes\" 'single' \u{0}\u{b}\u{1f}\u{fffe} 前輪 é 🏁 ]]>".to_owned();
    drawing.shapes.push(shape(
        Role::Label,
        Outline::Text(Text {
            at: [0.0, 0.0],
            anchor: Anchor::Start,
            size: 3.0,
            bold: false,
            content,
        }),
    ));
    let text = svg::drawings("title <&>", &[(&drawing, Ink::Current)], 1.0);
    let document = roxmltree::Document::parse(&text).unwrap();
    let mut written = document
        .descendants()
        .filter(|node| node.has_tag_name(("http://www.w3.org/2000/svg", "text")));
    assert_eq!(
        written.next_back().unwrap().text().unwrap(),
        // What the font lacks, as Japanese and pictures, is a box in every kind of document.
        "<b>&amp; \"quotes\" 'single' \u{fffd}\u{fffd}\u{fffd}\u{fffd} \u{fffd}\u{fffd} é \u{fffd} ]]>"
    );
}

#[test]
fn shapes_that_are_not_finite_are_left_out() {
    let mut drawing = every_form();
    drawing.shapes.push(shape(
        Role::Rod,
        Outline::Line([[f64::NAN, 0.0], [1.0, 1.0]]),
    ));
    drawing.shapes.push(shape(
        Role::Rod,
        Outline::Circle {
            centre: [0.0, 0.0],
            radius: f64::INFINITY,
        },
    ));
    drawing
        .shapes
        .push(shape(Role::Rod, Outline::Polygon(Vec::new())));
    let page = steerloft_sheet::Page {
        size: [100.0, 50.0],
        title: String::new(),
        placed: vec![steerloft_sheet::Placed {
            drawing,
            ink: Ink::Current,
            scale: 1.0,
            at: [20.0, 20.0],
        }],
    };
    check(&svg::page(&page));
}

#[test]
fn a_reference_is_dashed_and_not_filled() {
    let car = cars::posed(cars::pan_car(), 0.0, 0.0);
    let drawing = front_end(&car.layout, &car.pose, View::Top);
    let text = svg::drawings("Reference", &[(&drawing, Ink::Reference)], 1.0);
    let document = roxmltree::Document::parse(&text).unwrap();
    let groups: Vec<_> = document
        .descendants()
        .filter(|node| node.tag_name().name() == "g")
        .collect();
    assert!(groups.len() > 20);
    for group in groups {
        assert_eq!(group.attribute("fill"), Some("none"));
        assert!(group.has_attribute("stroke-dasharray"));
    }
}
