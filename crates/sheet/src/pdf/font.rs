//! The letters that a document uses, cut out of the font and embedded, with what they mean for search and copying.

use std::collections::BTreeMap;

use miniz_oxide::deflate::compress_to_vec_zlib;
use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Filter, Finish as _, Name, Pdf, Rect, Ref, Str};
use subsetter::GlyphRemapper;
use ttf_parser::GlyphId;

use super::PdfError;
use crate::font::{FAMILY, Face, face};

const LEVEL: u8 = 9;

/// Letters are named by their place among those used.
const SYSTEM: SystemInfo<'static> = SystemInfo {
    registry: Str(b"Adobe"),
    ordering: Str(b"Identity"),
    supplement: 0,
};

/// One face of the font in the making.
pub(super) struct EmbeddedFont {
    bold: bool,
    number: Ref,
    used: GlyphRemapper,
    /// Characters and glyphs by the number that the document gives them.
    letters: BTreeMap<u16, (char, GlyphId)>,
}

impl EmbeddedFont {
    pub(super) fn new(bold: bool, number: Ref) -> Self {
        Self {
            bold,
            number,
            used: GlyphRemapper::new(),
            letters: BTreeMap::new(),
        }
    }

    /// Name under which pages use the font.
    pub(super) fn name(&self) -> &'static [u8] {
        if self.bold { b"Bold" } else { b"Regular" }
    }

    /// Number of the font's object.
    pub(super) fn number(&self) -> Ref {
        self.number
    }

    pub(super) fn is_used(&self) -> bool {
        !self.letters.is_empty()
    }

    /// Writing as the document's codes, two bytes a letter; the letters are noted as used.
    pub(super) fn codes(&mut self, writing: &str) -> Vec<u8> {
        let face = face(self.bold);
        let mut codes = Vec::with_capacity(2 * writing.len());
        for character in writing.chars() {
            let glyph = face.glyph(character);
            let code = self.used.remap(glyph.0);
            self.letters.entry(code).or_insert((character, glyph));
            codes.extend(code.to_be_bytes());
        }
        codes
    }

    /// Writes the font with its widths, its meaning and its outlines.
    pub(super) fn write(&self, pdf: &mut Pdf, numbers: [Ref; 4]) -> Result<(), PdfError> {
        let [cid_font, descriptor, meaning, program] = numbers;
        let face = face(self.bold);
        let name = self.subset_name();
        let subset = subsetter::subset(face.data, 0, &self.used)?;
        pdf.type0_font(self.number)
            .base_font(Name(&name))
            .encoding_predefined(Name(b"Identity-H"))
            .descendant_font(cid_font)
            .to_unicode(meaning);
        self.write_cid_font(pdf, [cid_font, descriptor], &name, face);
        self.write_descriptor(pdf, [descriptor, program], &name, face);
        let mut map = UnicodeCmap::new(Name(b"Letters"), SYSTEM);
        for (&code, &(character, _)) in &self.letters {
            map.pair(code, character);
        }
        let map = compress_to_vec_zlib(&map.finish(), LEVEL);
        pdf.cmap(meaning, &map).filter(Filter::FlateDecode);
        let length = i32::try_from(subset.len()).unwrap_or(i32::MAX);
        let subset = compress_to_vec_zlib(&subset, LEVEL);
        let mut stream = pdf.stream(program, &subset);
        stream.filter(Filter::FlateDecode);
        stream.pair(Name(b"Length1"), length);
        Ok(())
    }

    /// The face's name after a tag of six letters that tells one subset from another: here from the letters used.
    fn subset_name(&self) -> Vec<u8> {
        let mut sum: u32 = 0;
        for &(character, _) in self.letters.values() {
            // Fowler, Noll and Vo's hash (FNV-1a, 32 bit), a character at a time.
            sum = (sum ^ u32::from(character)).wrapping_mul(16_777_619);
        }
        let mut name: Vec<u8> = (0..6_u32)
            .map(|place| b'A' + u8::try_from((sum >> (5 * place)) % 26).unwrap_or_default())
            .collect();
        name.push(b'+');
        name.extend(FAMILY.bytes());
        name.push(b'-');
        name.extend(self.name());
        name
    }

    fn write_cid_font(&self, pdf: &mut Pdf, numbers: [Ref; 2], name: &[u8], face: &Face) {
        let [cid_font, descriptor] = numbers;
        let mut entry = pdf.cid_font(cid_font);
        entry
            .subtype(CidFontType::Type2)
            .base_font(Name(name))
            .system_info(SYSTEM)
            .font_descriptor(descriptor)
            .default_width(0.0)
            .cid_to_gid_map_predefined(Name(b"Identity"));
        let mut widths = entry.widths();
        for (&code, &(_, glyph)) in &self.letters {
            widths.consecutive(code, [thousandths(face.advance(glyph))]);
        }
        widths.finish();
    }

    fn write_descriptor(&self, pdf: &mut Pdf, numbers: [Ref; 2], name: &[u8], face: &Face) {
        let [descriptor, program] = numbers;
        let [left, bottom, right, top] = face.bounding_box().map(thousandths);
        let [ascent, descent, capitals] = face.heights().map(thousandths);
        pdf.font_descriptor(descriptor)
            .name(Name(name))
            .flags(FontFlags::NON_SYMBOLIC)
            .bbox(Rect::new(left, bottom, right, top))
            .italic_angle(0.0)
            .ascent(ascent)
            .descent(descent)
            .cap_height(capitals)
            // The font does not tell; usual for such faces (common practice, no source).
            .stem_v(if self.bold { 140.0 } else { 90.0 })
            .font_file2(program);
    }
}

/// Font sizes to the thousandths that a document counts in.
#[allow(
    clippy::cast_possible_truncation,
    reason = "a few thousand, rounded to a thousandth"
)]
fn thousandths(ems: f64) -> f32 {
    ((ems * 1e6).round() / 1e3) as f32
}
