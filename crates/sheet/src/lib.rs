//! Drawings of the front end as vector graphics, described once for the window and for paper.

pub mod drawing;
pub mod front_end;
pub mod page;
pub mod svg;

mod plane;
mod solid;
mod text;

pub use drawing::{Anchor, Bounds, Drawing, Outline, Role, Shape, Text, View};
pub use front_end::front_end;
pub use page::{Ink, Page, Placed, drawing_page};
