//! Where the views stand on screen, and what they must have room for.

use eframe::egui::{Pos2, Rect, pos2, vec2};
use steerloft_sheet::{Bounds, View, front_end};
use steerloft_solver::figures::turn_centre;

use crate::state::Shown;

/// Share of the width that the side view takes.
const SIDE_SHARE: f32 = 0.36;

/// Where each view stands on screen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Layout {
    pub(super) area: Rect,
    pub(super) top: Rect,
    pub(super) front: Rect,
    pub(super) side: Option<Rect>,
}

impl Layout {
    pub(super) fn new(area: Rect, top_share: f32, side: bool) -> Self {
        let split = area.top() + (area.height() * top_share).round();
        let right = if side {
            area.right() - (area.width() * SIDE_SHARE).round()
        } else {
            area.right()
        };
        Self {
            area,
            top: Rect::from_min_max(area.min, pos2(right, split)),
            front: Rect::from_min_max(pos2(area.left(), split), pos2(right, area.bottom())),
            side: side.then(|| Rect::from_min_max(pos2(right, split), area.max)),
        }
    }

    pub(super) fn top_share(&self) -> f32 {
        self.top.height() / self.area.height().max(1.0)
    }

    /// Lower left corner of a key to the drawings: in the corner that the side view leaves free, if there is one.
    pub(super) fn place_of_key(&self) -> Pos2 {
        match self.side {
            Some(side) => side.left_top() + vec2(10.0, -8.0),
            None => self.top.left_bottom() + vec2(8.0, -6.0),
        }
    }

    pub(super) fn views(&self) -> impl Iterator<Item = (View, Rect)> {
        [(View::Top, self.top), (View::Front, self.front)]
            .into_iter()
            .chain(self.side.map(|area| (View::Side, area)))
    }
}

/// What a view shows of the car at rest and at both ends of its steering, so that nothing leaves the view on the way; the
/// room of a small car if it shows nothing.
pub(super) fn bounds_over_steering(shown: &Shown, view: View) -> Bounds {
    let at_rest = shown.assembly().static_pose();
    let poses = &shown.study.sweeps().steer().poses;
    let ends = [poses.first(), poses.last()];
    let steered = ends.into_iter().flatten().filter_map(|end| {
        let assembly = shown.assembly();
        assembly.pose(end.input, at_rest.travel).ok()
    });
    std::iter::once(*at_rest)
        .chain(steered)
        .filter_map(|pose| front_end(shown.layout(), &pose, view).bounds())
        .reduce(Bounds::union)
        .unwrap_or(Bounds {
            min: [-90.0, -40.0],
            max: [90.0, 40.0],
        })
}

/// Turn centres farther out than this are not given room, in wheelbases from the centre line: the car would be too small
/// to be seen.
const FARTHEST_SHOWN: f64 = 4.0;

/// What the construction of the turn takes in the top view: the rear axle, and the turn centres if they are not far out.
pub(super) fn bounds_of_turn(shown: &Shown) -> Bounds {
    let axle = shown.assembly().axle();
    let rear = axle.rear_axle_behind();
    let most = FARTHEST_SHOWN * axle.wheelbase;
    let centres = [&shown.pose.corners.left, &shown.pose.corners.right]
        .map(|corner| turn_centre(corner, &axle.road, rear));
    let mut bounds = Bounds {
        min: [0.0, -rear],
        max: [0.0, 0.0],
    };
    for centre in centres.into_iter().flatten() {
        if centre.lateral.abs() <= most {
            bounds.min[0] = bounds.min[0].min(-centre.lateral);
            bounds.max[0] = bounds.max[0].max(-centre.lateral);
        }
    }
    bounds
}
