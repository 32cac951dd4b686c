//! A sheet of paper with drawings placed on it.

mod adjustments;
mod assembled;
mod blank_sheet;
mod columns;
mod drawing_page;
mod figure_table;
mod foot;
pub(crate) mod furniture;
mod further_pages;
mod measuring_form;
mod paper;
mod picture;
mod runs;
mod scale;
mod servo_rows;
mod setup_sheet;
mod sheet_page;
mod title_block;
mod views;

use crate::drawing::{Bounds, Drawing};
use steerloft_analysis::curves::Trace;

pub use assembled::SheetError;
pub use blank_sheet::blank_sheet;
pub use drawing_page::drawing_page;
pub use measuring_form::measuring_form;
pub use paper::Paper;
pub use picture::{ViewPicture, picture_of_chart, picture_of_curve, picture_of_view};
pub use setup_sheet::{SheetRequest, setup_sheet};

/// Margin around drawings that make up a document of their own, mm on paper.
const MARGIN: f64 = 4.0;

/// A sheet of paper with what is on it. Paper millimetres, from its lower left corner, y up.
#[derive(Debug, Clone, PartialEq)]
pub struct Page {
    /// Width and height, mm.
    pub size: [f64; 2],
    /// Title of the document.
    pub title: String,
    /// What is on it; a later one lies over an earlier one.
    pub placed: Vec<Placed>,
}

/// A drawing on a page.
#[derive(Debug, Clone, PartialEq)]
pub struct Placed {
    /// The drawing.
    pub drawing: Drawing,
    /// How it is inked.
    pub ink: Ink,
    /// Paper mm per mm of the drawing.
    pub scale: f64,
    /// Where the drawing's origin lies on the page, mm.
    pub at: [f64; 2],
}

impl Placed {
    /// The rectangle on the page that holds the drawing, mm; none for an empty drawing.
    #[must_use]
    pub fn bounds(&self) -> Option<Bounds> {
        let bounds = self.drawing.bounds()?;
        Some(Bounds {
            min: self.point(bounds.min),
            max: self.point(bounds.max),
        })
    }

    /// A point of the drawing on the page, mm.
    pub(crate) fn point(&self, point: [f64; 2]) -> [f64; 2] {
        [0, 1].map(|axis| self.at[axis] + self.scale * point[axis])
    }
}

/// How a drawing is inked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ink {
    /// Filled shapes with solid outlines.
    Current,
    /// Dashed grey outlines without fill, to lie under or over the current state.
    Reference,
    /// Thin pale lines and pale fields, to lie under what is read.
    Faint,
    /// The line of a curve.
    Curve(Trace),
    /// The line of a reference's curve: thinner and grey.
    ReferenceCurve(Trace),
}

impl Page {
    /// A page just large enough for drawings that share one origin, at a scale (paper mm per drawing mm).
    #[must_use]
    pub fn around(title: &str, drawings: &[(&Drawing, Ink)], scale: f64) -> Self {
        let bounds = drawings
            .iter()
            .filter_map(|(drawing, _)| drawing.bounds())
            .reduce(Bounds::union)
            .unwrap_or(Bounds {
                min: [0.0; 2],
                max: [0.0; 2],
            });
        let at = bounds.min.map(|least| MARGIN - scale * least);
        Self {
            size: [bounds.width(), bounds.height()].map(|extent| scale * extent + 2.0 * MARGIN),
            title: title.to_owned(),
            placed: drawings
                .iter()
                .map(|&(drawing, ink)| Placed {
                    drawing: drawing.clone(),
                    ink,
                    scale,
                    at,
                })
                .collect(),
        }
    }
}
