//! The content stream of a page.

use miniz_oxide::deflate::compress_to_vec_zlib;
use pdf_writer::types::{LineCapStyle, LineJoinStyle};
use pdf_writer::{Content, Filter, Name, Pdf, Ref, Str};

use super::font::EmbeddedFont;
use super::points;
use crate::page::Page;
use crate::paint::{Form, each_form};
use crate::style::{Colour, Style};

/// Level of compression.
const LEVEL: u8 = 8;

/// A quarter circle as a cubic curve: handles of this share of the radius keep within 0.03 % of it (common practice:
/// 4/3 (sqrt 2 - 1)).
const QUARTER: f64 = 0.552_284_749_830_793_6;

/// The drawing commands of one page, compressed.
pub(super) struct PageContent(Vec<u8>);

impl PageContent {
    /// The content of a page; its letters are noted in the fonts.
    pub(super) fn of(page: &Page, fonts: &mut [EmbeddedFont; 2]) -> Self {
        let mut content = Content::new();
        content.set_line_join(LineJoinStyle::RoundJoin);
        let mut inked: Option<Style> = None;
        each_form(page, |form, style| {
            if inked.as_ref() != Some(style) {
                set_style(&mut content, style);
                inked = Some(*style);
            }
            draw(&mut content, form, style, fonts);
        });
        Self(compress_to_vec_zlib(&content.finish(), LEVEL))
    }

    /// Writes the stream.
    pub(super) fn write(&self, pdf: &mut Pdf, number: Ref) {
        pdf.stream(number, &self.0).filter(Filter::FlateDecode);
    }
}

fn set_style(content: &mut Content, style: &Style) {
    if let Some(fill) = style.fill {
        let [red, green, blue] = shares(fill);
        content.set_fill_rgb(red, green, blue);
    }
    if let Some(stroke) = style.stroke {
        let [red, green, blue] = shares(stroke);
        content.set_stroke_rgb(red, green, blue);
        content.set_line_width(points(style.width));
        content.set_dash_pattern(style.dashes.iter().map(|&length| points(length)), 0.0);
        // Round ends would close the gaps of dashes.
        content.set_line_cap(if style.dashes.is_empty() {
            LineCapStyle::RoundCap
        } else {
            LineCapStyle::ButtCap
        });
    }
}

fn shares(Colour(red, green, blue): Colour) -> [f32; 3] {
    // To a thousandth, which tells 256 steps apart.
    [red, green, blue].map(|part| (f32::from(part) / 255.0 * 1000.0).round() / 1000.0)
}

fn draw(content: &mut Content, form: &Form, style: &Style, fonts: &mut [EmbeddedFont; 2]) {
    match form {
        Form::Path { points, closed } => {
            add_path(content, points, *closed);
            paint(content, style, *closed);
        }
        Form::Circle { centre, radius } => {
            add_circle(content, *centre, *radius);
            paint(content, style, true);
        }
        Form::Letters {
            start,
            size,
            bold,
            content: letters,
        } => {
            let font = &mut fonts[usize::from(*bold)];
            let codes = font.codes(letters);
            content
                .begin_text()
                .set_font(Name(font.name()), points(*size))
                .next_line(points(start[0]), points(start[1]))
                .show(Str(&codes))
                .end_text();
        }
    }
}

fn add_path(content: &mut Content, corners: &[[f64; 2]], closed: bool) {
    for (index, &[x, y]) in corners.iter().enumerate() {
        if index == 0 {
            content.move_to(points(x), points(y));
        } else {
            content.line_to(points(x), points(y));
        }
    }
    if closed {
        content.close_path();
    }
}

fn add_circle(content: &mut Content, [x, y]: [f64; 2], radius: f64) {
    let at = |along: f64, up: f64| [points(x + radius * along), points(y + radius * up)];
    let [from_x, from_y] = at(1.0, 0.0);
    content.move_to(from_x, from_y);
    // Quarter by quarter, counter-clockwise.
    for (cos, sin) in [(1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0)] {
        let [x1, y1] = at(cos - QUARTER * sin, sin + QUARTER * cos);
        let [x2, y2] = at(QUARTER * cos - sin, QUARTER * sin + cos);
        let [x3, y3] = at(-sin, cos);
        content.cubic_to(x1, y1, x2, y2, x3, y3);
    }
    content.close_path();
}

fn paint(content: &mut Content, style: &Style, closed: bool) {
    match (style.fill.filter(|_| closed), style.stroke) {
        (Some(_), Some(_)) => content.fill_nonzero_and_stroke(),
        (Some(_), None) => content.fill_nonzero(),
        (None, Some(_)) => content.stroke(),
        (None, None) => content.end_path(),
    };
}
