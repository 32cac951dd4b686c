//! PDF documents: what a reader finds in them, embedded fonts, the same bytes each time.
//!
//! Read back with `pdftotext`, `pdffonts`, `pdfinfo` and `pdftoppm` of Poppler where they are installed; with
//! `STEERLOFT_REQUIRE_RENDER=1` they must be.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod cars;
mod paper;

use std::process::Command;

use steerloft_analysis::curves::CurveKind;
use steerloft_setup::supplied::SUPPLIED;
use steerloft_sheet::pdf::{self, PdfError};
use steerloft_sheet::{
    Anchor, Drawing, Ink, Outline, Page, Paper, Role, Shape, SheetRequest, Text, setup_sheet,
};

fn pages_of_pan_car() -> Vec<Page> {
    setup_sheet(&SheetRequest {
        setup: &cars::pan_car(),
        reference: None,
        paper: Paper::A4,
        curves: &CurveKind::ALL,
    })
    .unwrap()
}

/// A page with one line of writing.
fn page_with(content: &str, bold: bool) -> Page {
    let text = Text {
        at: [5.0, 5.0],
        anchor: Anchor::Start,
        size: 4.0,
        bold,
        content: content.to_owned(),
    };
    let drawing = Drawing {
        shapes: vec![Shape {
            role: Role::Label,
            side: None,
            outline: Outline::Text(text),
        }],
    };
    Page::around("Title", &[(&drawing, Ink::Current)], 1.0)
}

/// What a program of Poppler prints about a document; none if it is not installed.
fn poppler(program: &str, options: &[&str], document: &[u8]) -> Option<String> {
    let bytes = poppler_bytes(program, options, document)?;
    Some(String::from_utf8(bytes).unwrap())
}

fn poppler_bytes(program: &str, options: &[&str], document: &[u8]) -> Option<Vec<u8>> {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("document.pdf");
    std::fs::write(&file, document).unwrap();
    let mut command = Command::new(program);
    command.arg(&file).args(options);
    match command.output() {
        Ok(output) => {
            let errors = String::from_utf8_lossy(&output.stderr);
            assert!(
                output.status.success() && errors.is_empty(),
                "{program}: {errors}"
            );
            Some(output.stdout)
        }
        Err(error) => {
            let required =
                std::env::var("STEERLOFT_REQUIRE_RENDER").is_ok_and(|value| value == "1");
            assert!(!required, "{program} is required: {error}");
            println!("{program} is not installed; this test is skipped");
            None
        }
    }
}

#[test]
fn the_text_of_a_sheet_can_be_searched() {
    let pages = pages_of_pan_car();
    let document = pdf::document(&pages).unwrap();
    let Some(text) = poppler("pdftotext", &["-enc", "UTF-8", "-"], &document) else {
        return;
    };
    let on_pages: Vec<&str> = text.trim_end_matches('\u{c}').split('\u{c}').collect();
    assert_eq!(on_pages.len(), pages.len());
    for (page, text) in pages.iter().zip(on_pages) {
        let read: String = text.split_whitespace().collect();
        for (line, _) in paper::writing(page) {
            let wanted: String = line.split_whitespace().collect();
            assert!(read.contains(&wanted), "{wanted}");
        }
    }
}

#[test]
fn signs_and_letters_of_europe_come_back_as_they_were() {
    let content = "° µ ± · × − Δ – … ½ € Æ ß ç é ğ ı Ł ő ř ș ů ž Ω λ Я ї";
    for bold in [false, true] {
        let document = pdf::document(&[page_with(content, bold)]).unwrap();
        if let Some(text) = poppler("pdftotext", &["-enc", "UTF-8", "-"], &document) {
            // Evenly spaced letters are taken for one spaced-out word.
            let without_blanks = |text: &str| text.split_whitespace().collect::<String>();
            assert_eq!(without_blanks(&text), without_blanks(content));
        }
    }
}

#[test]
fn what_the_font_lacks_is_a_box() {
    let document = pdf::document(&[page_with("a前b🏁c\u{0}", false)]).unwrap();
    if let Some(text) = poppler("pdftotext", &["-enc", "UTF-8", "-"], &document) {
        assert_eq!(text.trim(), "a\u{fffd}b\u{fffd}c\u{fffd}");
    }
}

#[test]
fn every_font_is_embedded_and_cut_down() {
    let document = pdf::document(&pages_of_pan_car()).unwrap();
    // Both faces alone are 70 kB.
    assert!(document.len() < 120_000, "{}", document.len());
    let Some(fonts) = poppler("pdffonts", &[], &document) else {
        return;
    };
    let rows: Vec<&str> = fonts.lines().skip(2).collect();
    assert_eq!(rows.len(), 2);
    for row in rows {
        // Embedded, a subset, and with a map to Unicode.
        assert!(row.contains("yes yes yes"), "{row}");
        assert!(row.contains("+Roboto-"), "{row}");
    }
}

#[test]
fn pages_are_of_the_size_of_their_paper_and_no_date_is_in_them() {
    for (paper, points) in [
        (Paper::A4, "595.276 x 841.89 pts (A4)"),
        (Paper::Letter, "612 x 792 pts (letter)"),
    ] {
        let pages = setup_sheet(&SheetRequest {
            setup: &cars::pan_car(),
            reference: None,
            paper,
            curves: &[],
        })
        .unwrap();
        let document = pdf::document(&pages).unwrap();
        let Some(info) = poppler("pdfinfo", &[], &document) else {
            return;
        };
        assert!(info.contains(points), "{info}");
        assert!(info.contains("Carpet, first run, 1:12 pan car"), "{info}");
        assert!(
            !info.contains("CreationDate") && !info.contains("ModDate"),
            "{info}"
        );
    }
}

#[test]
fn the_same_bytes_come_out_each_time() {
    let document = || pdf::document(&pages_of_pan_car()).unwrap();
    assert_eq!(document(), document());
}

/// The least and the greatest shade of a greyscale picture in the portable format, and the share of its darker half.
fn shades(picture: &[u8]) -> (u8, u8, f64) {
    // Magic, width, height, greatest value, each ended by one blank.
    let head = picture
        .iter()
        .enumerate()
        .filter(|(_, byte)| byte.is_ascii_whitespace());
    let (end, _) = head.clone().nth(3).unwrap();
    let pixels = &picture[end + 1..];
    let dark = pixels.iter().filter(|shade| **shade < 128).count();
    #[allow(clippy::cast_precision_loss)]
    let share = dark as f64 / pixels.len() as f64;
    (
        *pixels.iter().min().unwrap(),
        *pixels.iter().max().unwrap(),
        share,
    )
}

#[test]
fn every_supplied_car_is_drawn_by_a_reader_in_greyscale() {
    for supplied in SUPPLIED {
        let pages = setup_sheet(&SheetRequest {
            setup: &supplied.setup(),
            reference: None,
            paper: Paper::A4,
            curves: &[],
        })
        .unwrap();
        let document = pdf::document(&pages).unwrap();
        let options = ["-r", "60", "-gray"];
        let Some(picture) = poppler_bytes("pdftoppm", &options, &document) else {
            return;
        };
        let (least, greatest, dark) = shades(&picture);
        assert!(least < 70 && greatest == 255, "{least} {greatest}");
        assert!((0.002..0.2).contains(&dark), "{dark}");
    }
}

#[test]
fn numbers_that_are_not_finite_do_not_get_into_a_document() {
    let mut page = page_with("good", false);
    let bad = [
        Outline::Line([[f64::NAN, 0.0], [1.0, 1.0]]),
        Outline::Polygon(vec![[0.0, 0.0], [f64::INFINITY, 0.0], [0.0, 1.0]]),
        Outline::Circle {
            centre: [0.0, 0.0],
            radius: 1e300,
        },
        Outline::Polyline(Vec::new()),
    ];
    let good = pdf::document(std::slice::from_ref(&page)).unwrap();
    for outline in bad {
        page.placed[0].drawing.shapes.push(Shape {
            role: Role::Rod,
            side: None,
            outline,
        });
    }
    assert_eq!(pdf::document(&[page]).unwrap(), good);
}

#[test]
fn a_document_has_at_least_one_page() {
    assert!(matches!(pdf::document(&[]), Err(PdfError::NoPages)));
    let many = vec![page_with("a", false); 1001];
    let error = pdf::document(&many).unwrap_err();
    assert!(matches!(
        error,
        PdfError::TooManyPages {
            count: 1001,
            most: 1000
        }
    ));
}
