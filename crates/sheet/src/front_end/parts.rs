//! Parts gathered for one view and put into painter's order.

use steerloft_solver::frame::{Point, Side};

use crate::drawing::{Bounds, Drawing, Outline, Role, Shape, View};
use crate::sight::Sight;

/// What lies over what, whatever the depth: the linkage is what the drawing is about, so nothing hides it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Layer {
    /// Road and chassis.
    Ground,
    /// Wheels with their tyres.
    Wheels,
    /// Case of the servo, with its packing.
    Case,
    /// Arms, knuckles, rods and drive, by depth.
    Linkage,
    /// Balls of the joints.
    Joints,
    /// Axes and centre lines.
    Axes,
}

/// Shapes that are painted together, at one depth.
struct Part {
    /// Whether it belongs to the corner that the near one hides.
    hidden: bool,
    layer: Layer,
    /// How near to the eye it is, mm.
    depth: f64,
    shapes: Vec<Shape>,
}

/// The parts of a drawing in the making.
pub(super) struct Parts {
    pub(super) sight: Sight,
    parts: Vec<Part>,
}

impl Parts {
    pub(super) fn new(sight: Sight) -> Self {
        Self {
            sight,
            parts: Vec::new(),
        }
    }

    /// Adds shapes that belong together, painted in the order given, as deep as `near` is.
    pub(super) fn add(
        &mut self,
        layer: Layer,
        near: &Point,
        side: Option<Side>,
        shapes: impl IntoIterator<Item = (Role, Outline)>,
    ) {
        let shapes = shapes
            .into_iter()
            .map(|(role, outline)| Shape {
                role,
                side,
                outline,
            })
            .collect();
        // In side view the left wheel hides the right corner.
        let hidden = self.sight.view == View::Side && side == Some(Side::Right);
        self.parts.push(Part {
            hidden,
            layer,
            depth: near.coords.dot(&self.sight.view.towards_eye()),
            shapes,
        });
    }

    /// The rectangle that holds all shapes so far.
    pub(super) fn bounds(&self) -> Option<Bounds> {
        self.parts
            .iter()
            .flat_map(|part| &part.shapes)
            .filter_map(|shape| shape.outline.bounds())
            .reduce(Bounds::union)
    }

    /// The drawing: ground, then a hidden corner, then the rest; far parts under near ones within each layer.
    pub(super) fn into_drawing(mut self) -> Drawing {
        let group = |part: &Part| (part.layer != Layer::Ground, !part.hidden, part.layer);
        // A stable sort: parts at the same depth stay in the order in which they were added.
        self.parts
            .sort_by(|a, b| group(a).cmp(&group(b)).then(a.depth.total_cmp(&b.depth)));
        Drawing {
            shapes: self
                .parts
                .into_iter()
                .flat_map(|part| part.shapes)
                .collect(),
        }
    }
}
