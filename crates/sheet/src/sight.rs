//! From where a drawing is seen, and how finely.

use crate::drawing::View;

/// A view, and how far its polygons may stray from the round outlines that they stand for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sight {
    /// The view.
    pub view: View,
    /// How far inside a round outline the edges of its polygon may run, mm: what a screen cannot show need not be
    /// computed. None, and anything that is no length, asks for the finest outlines there are, as paper has them.
    pub deviation: f64,
}

impl From<View> for Sight {
    fn from(view: View) -> Self {
        Self {
            view,
            deviation: 0.0,
        }
    }
}
