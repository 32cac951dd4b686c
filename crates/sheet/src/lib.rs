//! Drawings of the front end, curves and setup sheets as vector graphics: described once, for the window and for paper.
//!
//! A [`Page`] is a sheet of paper with what is on it; [`svg::document`], [`pdf::document`] and [`png::document`] write it.

pub mod drawing;
pub mod front_end;
pub mod output;
pub mod page;
pub mod pdf;
pub mod png;
pub mod svg;

mod chart;
mod figures;
mod font;
mod paint;
mod plane;
mod sight;
mod solid;
mod style;
mod text;

pub use drawing::{Anchor, Bounds, Drawing, Outline, Role, Shape, Text, View};
pub use front_end::{StackStand, front_end, stack_stands, turn_lines, wheel_outlines};
pub use page::{
    Ink, Page, Paper, Placed, SheetError, SheetRequest, ViewPicture, blank_sheet, drawing_page,
    measuring_form, picture_of_chart, picture_of_curve, picture_of_view, setup_sheet,
};
pub use sight::Sight;
