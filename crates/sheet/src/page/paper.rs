//! Sizes of paper.

/// A sheet of paper, upright.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Paper {
    /// 210 by 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 by 11 inches.
    Letter,
}

impl Paper {
    /// Width and height, mm.
    #[must_use]
    pub const fn size(self) -> [f64; 2] {
        match self {
            Self::A4 => [210.0, 297.0],
            Self::Letter => [215.9, 279.4],
        }
    }
}

/// Margin around what is written on paper, mm.
pub(crate) const MARGIN: f64 = 10.0;

/// Space between blocks, mm.
pub(crate) const GAP: f64 = 4.0;
