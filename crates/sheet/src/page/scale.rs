//! Drawing scales and the bar that shows one.

use crate::drawing::{Anchor, Role, Text};
use crate::page::furniture::{Block, Writing, lines_height};
use crate::text;

/// A scale: so many paper mm for so many real mm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Scale {
    paper: u32,
    real: u32,
}

impl Scale {
    /// From large to small: the recommended scales of ISO 5455 (from memory), as far as a front end needs them.
    pub(crate) const RECOMMENDED: [Self; 11] = [
        Self::new(2, 1),
        Self::new(1, 1),
        Self::new(1, 2),
        Self::new(1, 5),
        Self::new(1, 10),
        Self::new(1, 20),
        Self::new(1, 50),
        Self::new(1, 100),
        Self::new(1, 200),
        Self::new(1, 500),
        Self::SMALLEST,
    ];

    /// Likewise with steps between them, for a drawing that shares its page.
    pub(crate) const CLOSE: [Self; 17] = [
        Self::new(2, 1),
        Self::new(1, 1),
        Self::new(1, 2),
        Self::new(1, 3),
        Self::new(1, 4),
        Self::new(1, 5),
        Self::new(1, 8),
        Self::new(1, 10),
        Self::new(1, 15),
        Self::new(1, 20),
        Self::new(1, 30),
        Self::new(1, 40),
        Self::new(1, 50),
        Self::new(1, 100),
        Self::new(1, 200),
        Self::new(1, 500),
        Self::SMALLEST,
    ];

    /// The last resort.
    pub(crate) const SMALLEST: Self = Self::new(1, 1000);

    const fn new(paper: u32, real: u32) -> Self {
        Self { paper, real }
    }

    /// Paper mm per real mm.
    pub(crate) fn ratio(self) -> f64 {
        f64::from(self.paper) / f64::from(self.real)
    }

    /// As written on a drawing, such as "1:2".
    pub(crate) fn label(self) -> String {
        format!("{}:{}", self.paper, self.real)
    }

    /// Real length shown by the scale bar, mm: 50 mm on paper, 40 mm at 2:1 so that its fields are round.
    fn bar_length(self) -> u32 {
        if self.paper > self.real {
            20
        } else {
            50 * self.real
        }
    }
}

/// Fields of the scale bar.
const FIELDS: u32 = 5;
const BAR_HEIGHT: f64 = 1.6;
const SIZE: f64 = 2.4;
/// From the left edge to the bar, mm: room for the scale in words.
const TO_BAR: f64 = 22.0;

/// The scale in words and as a bar of fields, with its real lengths written under it. What the bar is good for stands
/// beside it where the width, mm, allows, else under it.
pub(crate) fn bar(scale: Scale, width: f64) -> Block {
    let mut block = Block::default();
    let length = scale.bar_length();
    let field = f64::from(length / FIELDS) * scale.ratio();
    let heading = format!("Scale {}", scale.label());
    block.write_lines(&[heading], [0.0, 0.0], &Writing::plain(3.2).bold(true));
    let top = -0.4;
    for index in 0..FIELDS {
        let start = TO_BAR + f64::from(index) * field;
        let role = if index % 2 == 0 {
            Role::Bar
        } else {
            Role::Rule
        };
        block.rectangle(role, [start, top - BAR_HEIGHT], [start + field, top]);
    }
    let base = top - BAR_HEIGHT - SIZE;
    for index in [0, FIELDS] {
        block.write(
            Role::Caption,
            Text {
                at: [TO_BAR + f64::from(index) * field, base],
                anchor: Anchor::Middle,
                size: SIZE,
                bold: false,
                content: format!("{}", length / FIELDS * index),
            },
        );
    }
    let paper = f64::from(length) * scale.ratio();
    let check = format!("mm; the bar is {paper:.0} mm long on paper printed at full size");
    let beside = TO_BAR + f64::from(FIELDS) * field + 4.0;
    block.height = 0.4 + BAR_HEIGHT + 1.3 * SIZE;
    let writing = Writing::caption(SIZE);
    if beside + text::width(&check, SIZE, false) <= width {
        block.write_lines(&[check], [beside, -0.2], &writing);
    } else {
        let lines = text::wrap(&check, SIZE, false, width, 3);
        block.write_lines(&lines, [0.0, -block.height], &writing);
        block.height += lines_height(lines.len(), SIZE);
    }
    block
}

#[cfg(test)]
mod tests {
    use super::Scale;

    #[test]
    fn scales_descend_and_their_bars_fit_a_column() {
        for scales in [&Scale::RECOMMENDED[..], &Scale::CLOSE] {
            assert!(
                scales
                    .windows(2)
                    .all(|pair| pair[0].ratio() > pair[1].ratio())
            );
            for scale in scales {
                let paper = f64::from(scale.bar_length()) * scale.ratio();
                assert!((40.0..=50.0).contains(&paper), "{}", scale.label());
            }
        }
    }
}
