//! A page as a PNG picture at a chosen resolution.

use tiny_skia::{
    Color, FillRule, LineCap, LineJoin, Paint, Path, PathBuilder, Pixmap, Stroke, StrokeDash,
    Transform,
};
use ttf_parser::OutlineBuilder;

use crate::font::face;
use crate::page::Page;
use crate::paint::{Form, each_form};
use crate::style::{Colour, PAPER, Style};

/// Lowest and highest resolution, dots per inch.
pub const RESOLUTIONS: (f64, f64) = (20.0, 1200.0);

/// Most pixels along a side.
const MOST_PIXELS: f64 = 20_000.0;

const MILLIMETRES_PER_INCH: f64 = 25.4;

/// Why no picture could be made.
#[derive(Debug, thiserror::Error)]
pub enum PngError {
    /// The resolution is not one of those possible.
    #[error(
        "a resolution of {dpi} dots per inch is not possible; it goes from {least} to {greatest}"
    )]
    Resolution {
        /// What was asked for.
        dpi: f64,
        /// The lowest.
        least: f64,
        /// The highest.
        greatest: f64,
    },
    /// The page has no area, or the picture would be too large.
    #[error(
        "a page of {width} by {height} mm makes no picture at {dpi} dots per inch: it must have from 1 to {most} \
         pixels a side; choose another resolution"
    )]
    Size {
        /// Width of the page, mm.
        width: f64,
        /// Height of the page, mm.
        height: f64,
        /// The resolution.
        dpi: f64,
        /// Most pixels of a side.
        most: f64,
    },
    /// The picture could not be written.
    #[error("the picture could not be written: {0}")]
    Write(#[from] png::EncodingError),
}

/// Draws a page at a resolution, dots per inch, and writes it as a PNG picture that states its resolution.
///
/// Shapes with a coordinate that is not finite are left out.
///
/// # Errors
/// [`PngError::Resolution`] outside [`RESOLUTIONS`]; [`PngError::Size`] for a page that is too large or has no area.
pub fn document(page: &Page, dpi: f64) -> Result<Vec<u8>, PngError> {
    encode(&pixels(page, dpi)?, dpi / MILLIMETRES_PER_INCH)
}

/// A picture in memory.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pixels {
    /// Width and height.
    pub size: [usize; 2],
    /// Red, green and blue of each pixel, row by row from the upper left corner.
    pub colours: Vec<u8>,
}

/// Draws a page at a resolution, dots per inch, as [`document`] does, without writing it.
///
/// # Errors
/// As [`document`].
pub fn pixels(page: &Page, dpi: f64) -> Result<Pixels, PngError> {
    let (least, greatest) = RESOLUTIONS;
    if !(least..=greatest).contains(&dpi) {
        return Err(PngError::Resolution {
            dpi,
            least,
            greatest,
        });
    }
    let scale = dpi / MILLIMETRES_PER_INCH;
    let mut pixels = pixmap(page, scale).ok_or(PngError::Size {
        width: page.size[0],
        height: page.size[1],
        dpi,
        most: MOST_PIXELS,
    })?;
    let Colour(red, green, blue) = PAPER;
    pixels.fill(Color::from_rgba8(red, green, blue, 255));
    let canvas = Canvas {
        scale,
        height: page.size[1],
    };
    each_form(page, |form, style| canvas.draw(&mut pixels, form, style));
    // Paper has no transparency.
    let colours = pixels
        .pixels()
        .iter()
        .flat_map(|pixel| [pixel.red(), pixel.green(), pixel.blue()])
        .collect();
    Ok(Pixels {
        size: [pixels.width() as usize, pixels.height() as usize],
        colours,
    })
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "checked to be from 1 to some thousands"
)]
fn pixmap(page: &Page, scale: f64) -> Option<Pixmap> {
    let [width, height] = page.size.map(|extent| (extent * scale).round());
    let possible = 1.0..=MOST_PIXELS;
    if !(possible.contains(&width) && possible.contains(&height)) {
        return None;
    }
    Pixmap::new(width as u32, height as u32)
}

/// From page millimetres to pixels, y down.
struct Canvas {
    /// Pixels per mm.
    scale: f64,
    /// Height of the page, mm.
    height: f64,
}

impl Canvas {
    fn pixel(&self, [x, y]: [f64; 2]) -> [f32; 2] {
        [x * self.scale, (self.height - y) * self.scale].map(single)
    }

    fn draw(&self, pixels: &mut Pixmap, form: &Form, style: &Style) {
        let (path, closed) = match form {
            Form::Path { points, closed } => (self.path(points, *closed), *closed),
            Form::Circle { centre, radius } => {
                let [x, y] = self.pixel(*centre);
                (
                    PathBuilder::from_circle(x, y, single(radius * self.scale)),
                    true,
                )
            }
            Form::Letters {
                start,
                size,
                bold,
                content,
            } => (self.letters(*start, *size, *bold, content), true),
        };
        // A form without extent has no path.
        let Some(path) = path else {
            return;
        };
        if let Some(fill) = style.fill.filter(|_| closed) {
            let rule = FillRule::Winding;
            pixels.fill_path(&path, &paint(fill), rule, Transform::identity(), None);
        }
        if let Some(stroke) = style.stroke {
            let line = self.line(style);
            pixels.stroke_path(&path, &paint(stroke), &line, Transform::identity(), None);
        }
    }

    fn path(&self, points: &[[f64; 2]], closed: bool) -> Option<Path> {
        let mut path = PathBuilder::new();
        for (index, &point) in points.iter().enumerate() {
            let [x, y] = self.pixel(point);
            if index == 0 {
                path.move_to(x, y);
            } else {
                path.line_to(x, y);
            }
        }
        if closed {
            path.close();
        }
        path.finish()
    }

    fn letters(&self, start: [f64; 2], size: f64, bold: bool, content: &str) -> Option<Path> {
        let face = face(bold);
        let [mut left, base] = start;
        let mut path = PathBuilder::new();
        for character in content.chars() {
            let glyph = face.glyph(character);
            let [x, y] = self.pixel([left, base]);
            let mut pen = Pen {
                path: &mut path,
                x,
                y,
                scale: single(face.ems(1) * size * self.scale),
            };
            face.outline(glyph, &mut pen);
            left += face.advance(glyph) * size;
        }
        path.finish()
    }

    fn line(&self, style: &Style) -> Stroke {
        let lengths: Vec<f32> = style
            .dashes
            .iter()
            .map(|length| single(length * self.scale))
            .collect();
        Stroke {
            width: single(style.width * self.scale),
            line_join: LineJoin::Round,
            // Round ends would close the gaps of dashes.
            line_cap: if lengths.is_empty() {
                LineCap::Round
            } else {
                LineCap::Butt
            },
            dash: StrokeDash::new(lengths, 0.0),
            ..Stroke::default()
        }
    }
}

fn paint(Colour(red, green, blue): Colour) -> Paint<'static> {
    let mut paint = Paint::default();
    paint.set_color_rgba8(red, green, blue, 255);
    paint.anti_alias = true;
    paint
}

/// Takes a glyph's outline, in font units with y up, to its place.
struct Pen<'a> {
    path: &'a mut PathBuilder,
    x: f32,
    y: f32,
    scale: f32,
}

impl Pen<'_> {
    fn at(&self, x: f32, y: f32) -> [f32; 2] {
        [self.x + x * self.scale, self.y - y * self.scale]
    }
}

impl OutlineBuilder for Pen<'_> {
    fn move_to(&mut self, x: f32, y: f32) {
        let [x, y] = self.at(x, y);
        self.path.move_to(x, y);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        let [x, y] = self.at(x, y);
        self.path.line_to(x, y);
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        let ([x1, y1], [x, y]) = (self.at(x1, y1), self.at(x, y));
        self.path.quad_to(x1, y1, x, y);
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        let ([x1, y1], [x2, y2], [x, y]) = (self.at(x1, y1), self.at(x2, y2), self.at(x, y));
        self.path.cubic_to(x1, y1, x2, y2, x, y);
    }

    fn close(&mut self) {
        self.path.close();
    }
}

/// `scale` is pixels per mm.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "at most some thousands of pixels, and at most 47244 a metre"
)]
fn encode(pixels: &Pixels, scale: f64) -> Result<Vec<u8>, PngError> {
    let per_metre = (scale * 1000.0).round() as u32;
    let [width, height] = pixels.size.map(|extent| extent as u32);
    let mut written = Vec::new();
    let mut encoder = png::Encoder::new(&mut written, width, height);
    encoder.set_color(png::ColorType::Rgb);
    encoder.set_depth(png::BitDepth::Eight);
    encoder.set_pixel_dims(Some(png::PixelDimensions {
        xppu: per_metre,
        yppu: per_metre,
        unit: png::Unit::Meter,
    }));
    let mut writer = encoder.write_header()?;
    writer.write_image_data(&pixels.colours)?;
    writer.finish()?;
    Ok(written)
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "pixels are drawn with single floats; a page has far fewer than they tell apart"
)]
fn single(value: f64) -> f32 {
    value as f32
}
