//! A page as an SVG 1.1 document: real millimetres, real text in a font that goes with it, the same bytes for the same
//! page.

mod font_face;
mod xml;

use std::fmt::Write as _;

use crate::drawing::{Anchor, Drawing, Outline, Role, Shape, Text};
use crate::font::{FAMILY, legible};
use crate::page::{Ink, Page, Placed};
use crate::paint::is_drawn;
use crate::style::{self, Colour, Style};
use crate::text::width;

use self::xml::{escape, number, push, push_number};

/// Writes a page as an SVG document whose user unit is one millimetre of paper.
///
/// The font is embedded, and every line of writing states its length, so that a reader that takes another font still
/// keeps to the room there is. Shapes with a coordinate that is not finite are left out.
#[must_use]
pub fn document(page: &Page) -> String {
    let [width, height] = page.size.map(number);
    let mut document = format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
         <svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{width}mm\" height=\"{height}mm\" \
         viewBox=\"0 0 {width} {height}\" font-family=\"{FAMILY}, sans-serif\" stroke-linejoin=\"round\" \
         stroke-linecap=\"round\">\n\
         <title>{}</title>\n",
        escape(&page.title)
    );
    document.push_str(&font_face::rules(page));
    let _ = writeln!(
        document,
        "<rect width=\"{width}\" height=\"{height}\" fill=\"{}\"/>",
        hexadecimal(style::PAPER)
    );
    for placed in &page.placed {
        write_placed(&mut document, placed, page.size[1]);
    }
    document.push_str("</svg>\n");
    document
}

/// As [`document`].
#[must_use]
pub fn page(page: &Page) -> String {
    document(page)
}

/// Writes drawings that share one origin, each in its ink, to a scale: paper mm per drawing mm.
///
/// The document is as large as the drawings with a small margin.
#[must_use]
pub fn drawings(title: &str, drawings: &[(&Drawing, Ink)], scale: f64) -> String {
    document(&Page::around(title, drawings, scale))
}

/// From a drawing's plane (v up) to the document's (y down).
struct Placement {
    scale: f64,
    at: [f64; 2],
    height: f64,
}

impl Placement {
    fn point(&self, [u, v]: [f64; 2]) -> [f64; 2] {
        [
            self.at[0] + self.scale * u,
            self.height - self.at[1] - self.scale * v,
        ]
    }
}

fn write_placed(document: &mut String, placed: &Placed, height: f64) {
    let placement = Placement {
        scale: placed.scale,
        at: placed.at,
        height,
    };
    let mut shapes = placed.drawing.shapes.as_slice();
    while let Some(first) = shapes.first() {
        let alike = shapes
            .iter()
            .take_while(|shape| shape.role == first.role && shape.side == first.side);
        let (group, rest) = shapes.split_at(alike.count());
        write_group(document, group, first, placed.ink, &placement);
        shapes = rest;
    }
}

/// Writes shapes of one role and side, which share their style.
fn write_group(
    document: &mut String,
    group: &[Shape],
    first: &Shape,
    ink: Ink,
    placement: &Placement,
) {
    let mut open = "<g".to_owned();
    let side = first
        .side
        .map(|side| format!(" {side}"))
        .unwrap_or_default();
    push(&mut open, "class", &format!("{}{side}", class(first.role)));
    push_style(&mut open, &style::of(first.role, ink));
    let _ = writeln!(document, "{open}>");
    for shape in group {
        if let Some(element) = element(&shape.outline, placement) {
            let _ = writeln!(document, "{element}");
        }
    }
    document.push_str("</g>\n");
}

/// The role as a class name: `SteeringArm` as `steering-arm`.
fn class(role: Role) -> String {
    let mut name = String::new();
    for letter in format!("{role:?}").chars() {
        if letter.is_uppercase() && !name.is_empty() {
            name.push('-');
        }
        name.extend(letter.to_lowercase());
    }
    name
}

fn push_style(element: &mut String, style: &Style) {
    let fill = style.fill.map_or("none".to_owned(), hexadecimal);
    push(element, "fill", &fill);
    if let Some(stroke) = style.stroke {
        push(element, "stroke", &hexadecimal(stroke));
        push_number(element, "stroke-width", style.width);
    }
    if !style.dashes.is_empty() {
        let lengths: Vec<String> = style.dashes.iter().map(|&length| number(length)).collect();
        push(element, "stroke-dasharray", &lengths.join(" "));
        // Round ends would close the gaps.
        push(element, "stroke-linecap", "butt");
    }
}

fn hexadecimal(Colour(red, green, blue): Colour) -> String {
    format!("#{red:02x}{green:02x}{blue:02x}")
}

/// One shape; none if it has no points, or a coordinate that is not finite.
fn element(outline: &Outline, placement: &Placement) -> Option<String> {
    if !is_drawn(outline) {
        return None;
    }
    Some(match outline {
        Outline::Line([from, to]) => line(placement.point(*from), placement.point(*to)),
        Outline::Polyline(points) => points_element("polyline", points, placement),
        Outline::Polygon(points) => points_element("polygon", points, placement),
        Outline::Circle { centre, radius } => {
            circle(placement.point(*centre), radius * placement.scale)
        }
        Outline::Text(text) => text_element(text, placement),
    })
}

fn line(from: [f64; 2], to: [f64; 2]) -> String {
    let mut element = "<line".to_owned();
    for (name, value) in [
        ("x1", from[0]),
        ("y1", from[1]),
        ("x2", to[0]),
        ("y2", to[1]),
    ] {
        push_number(&mut element, name, value);
    }
    element.push_str("/>");
    element
}

fn circle(centre: [f64; 2], radius: f64) -> String {
    let mut element = "<circle".to_owned();
    for (name, value) in [("cx", centre[0]), ("cy", centre[1]), ("r", radius)] {
        push_number(&mut element, name, value);
    }
    element.push_str("/>");
    element
}

fn points_element(name: &str, points: &[[f64; 2]], placement: &Placement) -> String {
    let written: Vec<String> = points
        .iter()
        .map(|&point| placement.point(point).map(number).join(","))
        .collect();
    format!("<{name} points=\"{}\"/>", written.join(" "))
}

fn text_element(text: &Text, placement: &Placement) -> String {
    let mut element = "<text".to_owned();
    let [x, y] = placement.point(text.at);
    push_number(&mut element, "x", x);
    push_number(&mut element, "y", y);
    push_number(&mut element, "font-size", text.size * placement.scale);
    match text.anchor {
        Anchor::Start => {}
        Anchor::Middle => push(&mut element, "text-anchor", "middle"),
        Anchor::End => push(&mut element, "text-anchor", "end"),
    }
    if text.bold {
        push(&mut element, "font-weight", "bold");
    }
    let length = width(&text.content, text.size, text.bold) * placement.scale;
    if length > 0.0 {
        push_number(&mut element, "textLength", length);
        push(&mut element, "lengthAdjust", "spacingAndGlyphs");
    }
    format!("{element}>{}</text>", escape(&legible(&text.content)))
}
