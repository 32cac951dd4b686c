//! The font of everything on paper: one family, a regular and a bold face, that goes with the program.

use std::sync::LazyLock;

use ttf_parser::{Face as Parsed, GlyphId};

/// Family name, as the font itself has it.
pub(crate) const FAMILY: &str = "Roboto";

/// Stands for a character that the font lacks: a box with a question mark.
const LACKING: char = '\u{fffd}';

static REGULAR: LazyLock<Face> =
    LazyLock::new(|| Face::new(include_bytes!("../../../assets/fonts/Roboto-Regular.ttf")));
static BOLD: LazyLock<Face> =
    LazyLock::new(|| Face::new(include_bytes!("../../../assets/fonts/Roboto-Bold.ttf")));

/// One face of the family.
pub(crate) struct Face {
    pub(crate) data: &'static [u8],
    parsed: Parsed<'static>,
}

/// The bold or the regular face.
pub(crate) fn face(bold: bool) -> &'static Face {
    if bold { &BOLD } else { &REGULAR }
}

impl Face {
    #[allow(
        clippy::expect_used,
        reason = "both faces are part of the program, and a test reads them"
    )]
    fn new(data: &'static [u8]) -> Self {
        let parsed = Parsed::parse(data, 0).expect("the program's own font is sound");
        Self { data, parsed }
    }

    /// The glyph of a character; that of the box for one that the font lacks.
    pub(crate) fn glyph(&self, character: char) -> GlyphId {
        let glyph = self.parsed.glyph_index(character);
        glyph
            .or_else(|| self.parsed.glyph_index(LACKING))
            .unwrap_or_default()
    }

    /// How far the pen goes on after a glyph, in font sizes.
    pub(crate) fn advance(&self, glyph: GlyphId) -> f64 {
        let units = self.parsed.glyph_hor_advance(glyph).unwrap_or_default();
        self.ems(units)
    }

    /// Draws a glyph's outline in font units, y up; nothing for a blank.
    pub(crate) fn outline(&self, glyph: GlyphId, pen: &mut dyn ttf_parser::OutlineBuilder) {
        // A blank has no outline.
        let _ = self.parsed.outline_glyph(glyph, pen);
    }

    /// Font units to font sizes.
    pub(crate) fn ems(&self, units: impl Into<f64>) -> f64 {
        units.into() / f64::from(self.parsed.units_per_em())
    }

    /// The rectangle that holds every glyph: left, bottom, right, top, in font sizes.
    pub(crate) fn bounding_box(&self) -> [f64; 4] {
        let all = self.parsed.global_bounding_box();
        [all.x_min, all.y_min, all.x_max, all.y_max].map(|units| self.ems(units))
    }

    /// Ascender, descender (negative) and height of capitals, in font sizes.
    pub(crate) fn heights(&self) -> [f64; 3] {
        let capitals = self.parsed.capital_height().unwrap_or_default();
        [self.parsed.ascender(), self.parsed.descender(), capitals].map(|units| self.ems(units))
    }
}

/// Whether the font has a character.
pub(crate) fn has(character: char) -> bool {
    REGULAR.parsed.glyph_index(character).is_some()
}

/// The writing with every character that the font lacks replaced by a box, so that nothing vanishes unseen and all
/// kinds of document show the same.
pub(crate) fn legible(content: &str) -> String {
    content
        .chars()
        .map(|character| if has(character) { character } else { LACKING })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::{BOLD, LACKING, REGULAR, has, legible};

    /// Letters of the languages of Europe beyond Latin-1, and the signs that sheets use.
    const NEEDED: &str = "°µ±·×−Δ–—…‘’‚“”„•≈≤≥√½¼¾²³€ĀāĄąČčĎďĐđĖėĘęĚěĞğĢģĪīİıĶķĹĺĻļŁłŃńŇňŐőŒœŔŕŘřŚśŞşŠšŢţŤťŪū\
        ŮůŰűŲųŴŵŶŷŸŹźŻżŽžȘșȚțẞΑΩαωάώАЯаяЁёЄєІіЇїҐґЂђЉљЊњЋћЏџ";

    #[test]
    fn both_faces_have_what_sheets_need() {
        let ascii = (' '..='~').chain('\u{a0}'..='\u{ff}');
        for character in ascii.chain(NEEDED.chars()).chain([LACKING]) {
            for face in [&REGULAR, &BOLD] {
                assert!(face.parsed.glyph_index(character).is_some(), "{character}");
            }
        }
    }

    #[test]
    fn digits_are_of_one_width_so_that_columns_align() {
        for face in [&REGULAR, &BOLD] {
            let zero = face.advance(face.glyph('0'));
            assert!(zero > 0.4);
            for digit in '1'..='9' {
                assert_eq!(face.advance(face.glyph(digit)).to_bits(), zero.to_bits());
            }
        }
    }

    #[test]
    fn what_the_font_lacks_becomes_a_box_that_can_be_seen() {
        assert_eq!(legible("a前🏁é\u{0}"), "a\u{fffd}\u{fffd}é\u{fffd}");
        assert!(!has('前') && has('é'));
        let face = &REGULAR;
        assert_eq!(face.glyph('前'), face.glyph(LACKING));
        assert!(face.advance(face.glyph('前')) > 0.4);
    }
}
