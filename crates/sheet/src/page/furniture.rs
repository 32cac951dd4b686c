//! Writing and lines on paper, gathered block by block.

use crate::drawing::{Anchor, Drawing, Outline, Role, Shape, Text};
use crate::page::{Ink, Placed};

/// Distance of base lines, in font sizes.
pub(crate) const LEADING: f64 = 1.35;

/// A block of writing, lines and drawings. Paper mm, origin at its upper left corner, v up (so its contents have v < 0).
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Block {
    pub(crate) height: f64,
    placed: Vec<Placed>,
}

impl Block {
    /// An empty block of a height, mm.
    pub(crate) fn of_height(height: f64) -> Self {
        Self {
            height,
            placed: Vec::new(),
        }
    }

    /// The block's contents with its upper left corner at a point of the page.
    pub(crate) fn placed(self, at: [f64; 2]) -> impl Iterator<Item = Placed> {
        self.placed.into_iter().map(move |placed| Placed {
            at: [0, 1].map(|axis| placed.at[axis] + at[axis]),
            ..placed
        })
    }

    /// Adds the contents of another block, its upper left corner at a point of this one. The height stays.
    pub(crate) fn add(&mut self, block: Self, at: [f64; 2]) {
        self.placed.extend(block.placed(at));
    }

    /// Adds a drawing at a scale, its origin at a point of this block.
    pub(crate) fn draw(&mut self, drawing: Drawing, scale: f64, at: [f64; 2]) {
        self.place(Placed {
            drawing,
            ink: Ink::Current,
            scale,
            at,
        });
    }

    /// Adds a drawing placed on this block.
    pub(crate) fn place(&mut self, placed: Placed) {
        self.placed.push(placed);
    }

    pub(crate) fn write(&mut self, role: Role, text: Text) {
        self.push(role, Outline::Text(text));
    }

    /// Writes lines under one another; the first base line lies one ascent under `at`.
    pub(crate) fn write_lines(&mut self, lines: &[String], at: [f64; 2], style: &Writing) {
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

    pub(crate) fn rule(&mut self, from: [f64; 2], to: [f64; 2]) {
        self.push(Role::Rule, Outline::Line([from, to]));
    }

    /// Adds a rectangle from its lower left to its upper right corner.
    pub(crate) fn rectangle(
        &mut self,
        role: Role,
        [left, bottom]: [f64; 2],
        [right, top]: [f64; 2],
    ) {
        let corners = vec![[left, bottom], [right, bottom], [right, top], [left, top]];
        self.push(role, Outline::Polygon(corners));
    }

    fn push(&mut self, role: Role, outline: Outline) {
        self.push_inked(Ink::Current, role, outline);
    }

    /// Adds a shape in an ink.
    pub(crate) fn push_inked(&mut self, ink: Ink, role: Role, outline: Outline) {
        let shape = Shape {
            role,
            side: None,
            outline,
        };
        // Shapes of one ink that follow one another make one drawing.
        let last = self.placed.last_mut();
        match last.filter(|placed| placed.ink == ink && placed.is_on_block()) {
            Some(placed) => placed.drawing.shapes.push(shape),
            None => self.placed.push(Placed {
                drawing: Drawing {
                    shapes: vec![shape],
                },
                ink,
                scale: 1.0,
                at: [0.0; 2],
            }),
        }
    }

    /// Adds a pale field to lie under what follows, from its lower left to its upper right corner.
    pub(crate) fn band(&mut self, [left, bottom]: [f64; 2], [right, top]: [f64; 2]) {
        let corners = vec![[left, bottom], [right, bottom], [right, top], [left, top]];
        self.push_inked(Ink::Faint, Role::Bar, Outline::Polygon(corners));
    }
}

impl Placed {
    /// Whether the drawing is in the block's own coordinates.
    fn is_on_block(&self) -> bool {
        let values = [self.at[0], self.at[1], self.scale];
        values.map(f64::to_bits) == [0.0, 0.0, 1.0].map(f64::to_bits)
    }
}

/// How lines are written.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Writing {
    pub(crate) role: Role,
    pub(crate) anchor: Anchor,
    /// Font size, mm.
    pub(crate) size: f64,
    pub(crate) bold: bool,
}

impl Writing {
    /// Plain writing from the left.
    pub(crate) const fn plain(size: f64) -> Self {
        Self {
            role: Role::Label,
            anchor: Anchor::Start,
            size,
            bold: false,
        }
    }

    /// Small grey writing from the left.
    pub(crate) const fn caption(size: f64) -> Self {
        Self {
            role: Role::Caption,
            ..Self::plain(size)
        }
    }

    pub(crate) const fn bold(self, bold: bool) -> Self {
        Self { bold, ..self }
    }

    pub(crate) const fn in_the_middle(self) -> Self {
        Self {
            anchor: Anchor::Middle,
            ..self
        }
    }

    pub(crate) const fn to_the_right(self) -> Self {
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
pub(crate) fn lines_height(count: usize, size: f64) -> f64 {
    count as f64 * LEADING * size
}
