//! Writing and lines on paper, gathered block by block.

use crate::drawing::{Anchor, Drawing, Outline, Role, Shape, Text};
use crate::page::{Ink, Placed};

/// Distance of base lines, in font sizes.
pub(super) const LEADING: f64 = 1.35;

/// A block of writing and lines. Paper mm, origin at its upper left corner, v up (so its contents have v < 0).
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Block {
    pub(super) height: f64,
    drawing: Drawing,
}

impl Block {
    /// An empty block of a height, mm.
    pub(super) fn of_height(height: f64) -> Self {
        Self {
            height,
            drawing: Drawing::default(),
        }
    }

    /// The block with its upper left corner at a point of the page.
    pub(super) fn placed(self, at: [f64; 2]) -> Placed {
        Placed {
            drawing: self.drawing,
            ink: Ink::Current,
            scale: 1.0,
            at,
        }
    }

    pub(super) fn write(&mut self, role: Role, text: Text) {
        self.push(role, Outline::Text(text));
    }

    /// Writes lines under one another; the first base line lies one ascent under `at`.
    pub(super) fn write_lines(&mut self, lines: &[String], at: [f64; 2], style: &Writing) {
        let mut base = at[1] - crate::text::ASCENT * style.size;
        for line in lines {
            let text = Text {
                at: [at[0], base],
                anchor: style.anchor,
                size: style.size,
                bold: style.bold,
                content: line.clone(),
            };
            self.write(style.role, text);
            base -= LEADING * style.size;
        }
    }

    pub(super) fn rule(&mut self, from: [f64; 2], to: [f64; 2]) {
        self.push(Role::Rule, Outline::Line([from, to]));
    }

    /// Adds a rectangle from its lower left to its upper right corner.
    pub(super) fn rectangle(
        &mut self,
        role: Role,
        [left, bottom]: [f64; 2],
        [right, top]: [f64; 2],
    ) {
        let corners = vec![[left, bottom], [right, bottom], [right, top], [left, top]];
        self.push(role, Outline::Polygon(corners));
    }

    fn push(&mut self, role: Role, outline: Outline) {
        self.drawing.shapes.push(Shape {
            role,
            side: None,
            outline,
        });
    }
}

/// How lines are written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Writing {
    pub(super) role: Role,
    pub(super) anchor: Anchor,
    /// Font size, mm.
    pub(super) size: f64,
    pub(super) bold: bool,
}

impl Writing {
    /// Plain writing from the left.
    pub(super) const fn plain(size: f64) -> Self {
        Self {
            role: Role::Label,
            anchor: Anchor::Start,
            size,
            bold: false,
        }
    }

    /// Small grey writing from the left.
    pub(super) const fn caption(size: f64) -> Self {
        Self {
            role: Role::Caption,
            ..Self::plain(size)
        }
    }

    pub(super) const fn bold(self, bold: bool) -> Self {
        Self { bold, ..self }
    }

    pub(super) const fn to_the_right(self) -> Self {
        Self {
            anchor: Anchor::End,
            ..self
        }
    }
}

/// Height of lines under one another, from the ascent of the first to the descent of the last, mm.
#[allow(
    clippy::cast_precision_loss,
    reason = "a page holds far fewer lines than a float counts exactly"
)]
pub(super) fn lines_height(count: usize, size: f64) -> f64 {
    count as f64 * LEADING * size
}
