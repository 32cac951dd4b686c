//! Pages as a PDF document: vector graphics, real text that can be searched and copied, the letters used embedded. The
//! same bytes for the same pages.

mod content;
mod font;

use pdf_writer::{Finish as _, Name, Pdf, Rect, Ref, TextStr};

use self::content::PageContent;
use self::font::EmbeddedFont;
use crate::page::Page;

/// Points of 1/72 inch in a millimetre.
const POINTS: f64 = 72.0 / 25.4;

/// Why no PDF could be made.
#[derive(Debug, thiserror::Error)]
pub enum PdfError {
    /// No pages were given.
    #[error("a document needs at least one page")]
    NoPages,
    /// More pages than a document is made for.
    #[error("{count} pages are more than the {most} that a document may have")]
    TooManyPages {
        /// How many were given.
        count: usize,
        /// How many there may be.
        most: usize,
    },
    /// The letters used could not be taken out of the font.
    #[error("the letters used could not be embedded: {0}")]
    Font(#[from] subsetter::Error),
}

/// Most pages of a document.
const MOST_PAGES: usize = 1000;

/// Numbers of the document's objects.
struct Numbers(i32);

impl Numbers {
    fn next(&mut self) -> Ref {
        self.0 += 1;
        Ref::new(self.0)
    }
}

/// Writes pages as one PDF document, titled as the first page.
///
/// Shapes with a coordinate that is not finite are left out.
///
/// # Errors
/// [`PdfError::NoPages`] or [`PdfError::TooManyPages`]; [`PdfError::Font`] if the font could not be cut down.
pub fn document(pages: &[Page]) -> Result<Vec<u8>, PdfError> {
    let first = pages.first().ok_or(PdfError::NoPages)?;
    if pages.len() > MOST_PAGES {
        return Err(PdfError::TooManyPages {
            count: pages.len(),
            most: MOST_PAGES,
        });
    }
    let mut numbers = Numbers(0);
    let mut pdf = Pdf::new();
    let [catalog, tree] = [(); 2].map(|()| numbers.next());
    let mut fonts = [false, true].map(|bold| EmbeddedFont::new(bold, numbers.next()));
    let contents: Vec<PageContent> = pages
        .iter()
        .map(|page| PageContent::of(page, &mut fonts))
        .collect();
    let page_numbers: Vec<Ref> = pages.iter().map(|_| numbers.next()).collect();
    write_catalog(&mut pdf, catalog, tree);
    pdf.pages(tree)
        .kids(page_numbers.iter().copied())
        .count(i32::try_from(pages.len()).unwrap_or(i32::MAX));
    for ((page, content), number) in pages.iter().zip(&contents).zip(page_numbers) {
        let stream = numbers.next();
        write_page(&mut pdf, page, [number, tree, stream], &fonts);
        content.write(&mut pdf, stream);
    }
    for font in &fonts {
        if font.is_used() {
            font.write(&mut pdf, [(); 4].map(|()| numbers.next()))?;
        }
    }
    pdf.document_info(numbers.next())
        .title(TextStr(&first.title))
        .producer(TextStr("Steerloft"));
    Ok(pdf.finish())
}

fn write_catalog(pdf: &mut Pdf, catalog: Ref, tree: Ref) {
    let mut entry = pdf.catalog(catalog);
    entry.pages(tree).lang(TextStr("en"));
    entry.viewer_preferences().display_doc_title(true);
}

fn write_page(
    pdf: &mut Pdf,
    page: &Page,
    [number, tree, stream]: [Ref; 3],
    fonts: &[EmbeddedFont; 2],
) {
    let [width, height] = page.size.map(points);
    let mut entry = pdf.page(number);
    entry
        .parent(tree)
        .media_box(Rect::new(0.0, 0.0, width, height))
        .contents(stream);
    let mut resources = entry.resources();
    let mut named = resources.fonts();
    for font in fonts.iter().filter(|font| font.is_used()) {
        named.pair(Name(font.name()), font.number());
    }
    named.finish();
    resources.finish();
    entry.finish();
}

/// Millimetres to points.
#[allow(
    clippy::cast_possible_truncation,
    reason = "a document's numbers are single floats; paper is far within their range"
)]
fn points(millimetres: f64) -> f32 {
    // To a thousandth of a point, so that numbers are short.
    ((millimetres * POINTS * 1000.0).round() / 1000.0) as f32
}
