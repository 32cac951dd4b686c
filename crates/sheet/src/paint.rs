//! What is on a page as one run of forms with their styles: what every kind of document is written from.

use crate::drawing::{Anchor, Bounds, Drawing, Outline, Text};
use crate::font::legible;
use crate::page::{Page, Placed};
use crate::style::{self, Style};
use crate::text::width;

/// A form on the page, mm from its lower left corner, y up.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Form {
    /// A run of straight lines, open or closed.
    Path {
        points: Vec<[f64; 2]>,
        closed: bool,
    },
    Circle {
        centre: [f64; 2],
        radius: f64,
    },
    /// A line of letters that the font has, from its left end.
    Letters {
        start: [f64; 2],
        size: f64,
        bold: bool,
        content: String,
    },
}

/// Calls `paint` for every form of a page in painter's order. Shapes with a coordinate that is not finite or without
/// points are left out.
pub(crate) fn each_form(page: &Page, mut paint: impl FnMut(&Form, &Style)) {
    for placed in &page.placed {
        for shape in &placed.drawing.shapes {
            if is_drawn(&shape.outline) {
                let style = style::of(shape.role, placed.ink);
                paint(&on_page(&shape.outline, placed), &style);
            }
        }
    }
}

/// Farthest that a coordinate may lie for its shape to be drawn, mm: far beyond any car, and well within what every kind
/// of document can hold.
const FARTHEST: f64 = 1e7;

/// Whether a form can be drawn: it has points, all of them finite and on this side of the horizon.
pub(crate) fn is_drawn(outline: &Outline) -> bool {
    let near = |bounds: Bounds| {
        let corners = bounds.min.into_iter().chain(bounds.max);
        corners.into_iter().all(|value| value.abs() <= FARTHEST)
    };
    outline.is_finite() && outline.bounds().is_some_and(near)
}

fn on_page(outline: &Outline, placed: &Placed) -> Form {
    let path = |points: &[[f64; 2]], closed: bool| Form::Path {
        points: points.iter().map(|&point| placed.point(point)).collect(),
        closed,
    };
    match outline {
        Outline::Line(ends) => path(ends, false),
        Outline::Polyline(points) => path(points, false),
        Outline::Polygon(points) => path(points, true),
        Outline::Circle { centre, radius } => Form::Circle {
            centre: placed.point(*centre),
            radius: radius * placed.scale,
        },
        Outline::Text(text) => letters(text, placed),
    }
}

fn letters(text: &Text, placed: &Placed) -> Form {
    let size = text.size * placed.scale;
    let [x, y] = placed.point(text.at);
    let long = width(&text.content, size, text.bold);
    let left = match text.anchor {
        Anchor::Start => x,
        Anchor::Middle => x - long / 2.0,
        Anchor::End => x - long,
    };
    Form::Letters {
        start: [left, y],
        size,
        bold: text.bold,
        content: legible(&text.content),
    }
}

/// Which faces a page needs: regular, bold.
pub(crate) fn faces_used<'a>(drawings: impl Iterator<Item = &'a Drawing>) -> [bool; 2] {
    let mut used = [false; 2];
    for shape in drawings.flat_map(|drawing| &drawing.shapes) {
        if let Outline::Text(text) = &shape.outline {
            used[usize::from(text.bold)] = true;
        }
    }
    used
}
