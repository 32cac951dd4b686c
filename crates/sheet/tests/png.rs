//! PNG pictures: size, resolution, the same bytes each time, and that they show what they should.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cars;
mod paper;

use steerloft_sheet::png::{self as picture, PngError};
use steerloft_sheet::{
    Anchor, Drawing, Ink, Outline, Page, Paper, Role, Shape, SheetRequest, Text, setup_sheet,
};

fn sheet() -> Page {
    let setup = cars::pan_car();
    let pages = setup_sheet(&SheetRequest {
        setup: &setup,
        reference: None,
        paper: Paper::A4,
        curves: &[],
    });
    pages.unwrap().remove(0)
}

struct Picture {
    width: u32,
    height: u32,
    per_metre: u32,
    pixels: Vec<u8>,
}

fn read(bytes: &[u8]) -> Picture {
    let mut reader = png::Decoder::new(std::io::Cursor::new(bytes))
        .read_info()
        .unwrap();
    let mut pixels = vec![0; reader.output_buffer_size().unwrap()];
    let frame = reader.next_frame(&mut pixels).unwrap();
    assert_eq!(frame.color_type, png::ColorType::Rgb);
    let dimensions = reader.info().pixel_dims.unwrap();
    assert!(matches!(dimensions.unit, png::Unit::Meter));
    assert_eq!(dimensions.xppu, dimensions.yppu);
    Picture {
        width: frame.width,
        height: frame.height,
        per_metre: dimensions.xppu,
        pixels,
    }
}

impl Picture {
    /// Darkness from 0 to 255 of a pixel.
    fn darkness(&self, x: u32, y: u32) -> u8 {
        let at = 3 * (y * self.width + x) as usize;
        255 - self.pixels[at + 1]
    }
}

fn page_with(role: Role, outline: Outline) -> Page {
    Page {
        size: [25.4, 12.7],
        title: String::new(),
        placed: vec![steerloft_sheet::Placed {
            drawing: Drawing {
                shapes: vec![Shape {
                    role,
                    side: None,
                    outline,
                }],
            },
            ink: Ink::Current,
            scale: 1.0,
            at: [0.0; 2],
        }],
    }
}

#[test]
fn a_page_is_as_many_pixels_as_its_resolution_says() {
    let page = sheet();
    // A4 is 8.268 by 11.693 inches.
    for (dpi, width, height, per_metre) in [
        (72.0, 595, 842, 2835),
        (100.0, 827, 1169, 3937),
        (150.0, 1240, 1754, 5906),
    ] {
        let read = read(&picture::document(&page, dpi).unwrap());
        assert_eq!((read.width, read.height), (width, height));
        assert_eq!(read.per_metre, per_metre);
    }
}

#[test]
fn shapes_stand_where_they_should() {
    // A filled square from 5.08 to 7.62 mm: pixels 20 to 30 from the left and, at 100 dpi, of 50, 20 to 30 from above.
    let square = vec![[5.08, 5.08], [7.62, 5.08], [7.62, 7.62], [5.08, 7.62]];
    let page = page_with(Role::Pivot, Outline::Polygon(square));
    let read = read(&picture::document(&page, 100.0).unwrap());
    assert_eq!((read.width, read.height), (100, 50));
    for (x, y, dark) in [
        (25, 25, true),
        (21, 21, true),
        (28, 28, true),
        (17, 25, false),
        (33, 25, false),
        (25, 17, false),
        (25, 33, false),
    ] {
        assert_eq!(read.darkness(x, y) > 128, dark, "{x} {y}");
    }
}

#[test]
fn letters_reach_from_the_base_line_to_their_height_and_as_far_as_their_widths_say() {
    // An H of 10 mm: its stems are 0.711 font sizes high (1456 of 2048 units, read from the font file).
    let text = Text {
        at: [5.0, 2.0],
        anchor: Anchor::Start,
        size: 10.0,
        bold: true,
        content: "H".to_owned(),
    };
    let page = page_with(Role::Label, Outline::Text(text));
    let read = read(&picture::document(&page, 254.0).unwrap());
    let mut rows = Vec::new();
    let mut columns = Vec::new();
    for y in 0..read.height {
        for x in 0..read.width {
            if read.darkness(x, y) > 128 {
                rows.push(y);
                columns.push(x);
            }
        }
    }
    // Ten pixels a millimetre, from above; the base line is 10.7 mm from the upper edge.
    let near = |found: u32, wanted: f64| (f64::from(found) - wanted).abs() < 1.6;
    assert!(near(*rows.iter().max().unwrap(), 106.0));
    assert!(near(*rows.iter().min().unwrap(), 107.0 - 71.1));
    assert!(*columns.iter().min().unwrap() > 50);
    let width = f64::from(columns.iter().max().unwrap() - columns.iter().min().unwrap());
    assert!((45.0..72.0).contains(&width), "{width}");
}

#[test]
fn the_same_bytes_come_out_each_time() {
    let page = sheet();
    assert_eq!(
        picture::document(&page, 60.0).unwrap(),
        picture::document(&page, 60.0).unwrap()
    );
}

#[test]
fn what_is_not_possible_is_refused_with_what_would_be() {
    let page = sheet();
    for dpi in [0.0, -5.0, 19.9, 1201.0, f64::NAN, f64::INFINITY] {
        let error = picture::document(&page, dpi).unwrap_err();
        assert!(matches!(error, PngError::Resolution { .. }), "{error}");
        assert!(error.to_string().contains("from 20 to 1200"), "{error}");
    }
    for size in [[0.0, 10.0], [10.0, f64::NAN], [1e6, 1e6]] {
        let page = Page {
            size,
            ..page.clone()
        };
        let error = picture::document(&page, 300.0).unwrap_err();
        assert!(matches!(error, PngError::Size { .. }), "{error}");
    }
}
