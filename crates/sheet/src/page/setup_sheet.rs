//! The sheet of one setup: both views over one another, what is chosen, and the cautions.

use steerloft_setup::layout::Layout;
use steerloft_setup::setup::Setup;
use steerloft_solver::pose::AxlePose;

use crate::drawing::{Bounds, Drawing, View};
use crate::front_end::front_end;
use crate::page::adjustments::Group;
use crate::page::furniture::{Block, Writing, lines_height};
use crate::page::scale::Scale;
use crate::page::{Ink, Page, Placed, adjustments, columns, foot, scale, title_block};

/// A way to lay out a sheet of paper.
#[derive(Debug, Clone, Copy)]
struct Paper {
    /// Width and height, mm.
    size: [f64; 2],
    table: columns::Shape,
    /// Least height kept for the views, however long the table is, mm.
    least_views: f64,
}

/// A4 upright and across.
const UPRIGHT: Paper = Paper {
    size: [210.0, 297.0],
    table: columns::Shape {
        columns: 3,
        whole_groups_cost: 20.0,
    },
    least_views: 110.0,
};
const ACROSS: Paper = Paper {
    size: [297.0, 210.0],
    table: columns::Shape {
        columns: 4,
        whole_groups_cost: 0.0,
    },
    least_views: 80.0,
};

/// Margins of the writing and, narrower, of the views.
const MARGIN: f64 = 10.0;
const VIEW_MARGIN: f64 = 5.0;
/// Space between blocks.
const GAP: f64 = 4.0;
/// Font size of the views' titles.
const VIEW_TITLE: f64 = 2.7;

/// Draws the sheet of a setup on A4: title block, top view above front view on one lateral axis at the largest
/// usual scale that fits, scale bar, chosen values by place, cautions.
///
/// The sheet is upright unless it gives a larger scale across. `layout` is the setup laid out, `pose` a pose of
/// its axle, as a rule the one straight ahead.
#[must_use]
pub fn drawing_page(setup: &Setup, layout: &Layout, pose: &AxlePose) -> Page {
    let views = Views::of(layout, pose);
    let groups = adjustments::groups(setup, pose);
    let upright = Sheet::new(UPRIGHT, setup, &views, &groups);
    let across = Sheet::new(ACROSS, setup, &views, &groups);
    let sheet = if across.scale.ratio() > upright.scale.ratio() {
        across
    } else {
        upright
    };
    sheet.page(setup, views)
}

/// A sheet of which is known what goes where.
struct Sheet {
    paper: Paper,
    table: Block,
    /// Height left for the views, mm.
    room: f64,
    scale: Scale,
}

impl Sheet {
    fn new(paper: Paper, setup: &Setup, views: &Views, groups: &[Group]) -> Self {
        let width = paper.size[0] - 2.0 * MARGIN;
        // Every scale's label and bar are of one height, so any will do to find out what is left.
        let any_scale = Scale::ALL[0];
        let fixed = title_block::lay_out(setup, any_scale, width).height
            + scale::bar(any_scale).height
            + foot::lay_out(width).height;
        let free = paper.size[1] - 2.0 * MARGIN - fixed - 4.0 * GAP;
        let table = columns::lay_out(groups, paper.table, [width, free - paper.least_views]);
        let room = free - table.height;
        let scale = views.largest_scale([paper.size[0] - 2.0 * VIEW_MARGIN, room]);
        Self {
            paper,
            table,
            room,
            scale,
        }
    }

    fn page(self, setup: &Setup, views: Views) -> Page {
        let [page_width, page_height] = self.paper.size;
        let width = page_width - 2.0 * MARGIN;
        let mut column = Column {
            placed: Vec::new(),
            top: page_height - MARGIN,
        };
        column.add(title_block::lay_out(setup, self.scale, width));
        let placed = views.placed(self.scale, page_width / 2.0, column.top, self.room);
        column.placed.extend(placed);
        column.top -= self.room + GAP;
        column.add(scale::bar(self.scale));
        column.add(self.table);
        column.add(foot::lay_out(width));
        Page {
            size: self.paper.size,
            title: format!("{}, {}", title_block::name_of(setup), setup.car.name),
            placed: column.placed,
        }
    }
}

/// Blocks under one another along the left margin.
struct Column {
    placed: Vec<Placed>,
    top: f64,
}

impl Column {
    fn add(&mut self, block: Block) {
        let height = block.height;
        self.placed.push(block.placed([MARGIN, self.top]));
        self.top -= height + GAP;
    }
}

/// The views of the sheet, from above downwards, with the rectangles that hold them.
struct Views([(View, Drawing, Bounds); 2]);

impl Views {
    fn of(layout: &Layout, pose: &AxlePose) -> Self {
        Self([View::Top, View::Front].map(|view| {
            let drawing = front_end(layout, pose, view);
            let nothing = Bounds {
                min: [0.0; 2],
                max: [0.0; 2],
            };
            let bounds = drawing.bounds().unwrap_or(nothing);
            (view, drawing, bounds)
        }))
    }

    /// The lateral extent that both share: least and greatest u, mm.
    fn lateral(&self) -> [f64; 2] {
        let [(_, _, top), (_, _, front)] = &self.0;
        let both = top.union(*front);
        [both.min[0], both.max[0]]
    }

    /// Height on paper with a title over each view, mm.
    fn height(&self, scale: Scale) -> f64 {
        let drawn: f64 = self.0.iter().map(|(_, _, bounds)| bounds.height()).sum();
        drawn * scale.ratio() + 2.0 * title_height() + GAP
    }

    fn largest_scale(&self, room: [f64; 2]) -> Scale {
        let [left, right] = self.lateral();
        let fits = |scale: &Scale| {
            (right - left) * scale.ratio() <= room[0] && self.height(*scale) <= room[1]
        };
        Scale::ALL.into_iter().find(fits).unwrap_or(Scale::SMALLEST)
    }

    /// The views on the page around a vertical `middle` line, in a room that hangs from `top` and is `room` mm
    /// high.
    fn placed(self, scale: Scale, middle: f64, top: f64, room: f64) -> Vec<Placed> {
        let ratio = scale.ratio();
        let [left, right] = self.lateral();
        let across = middle - ratio * (left + right) / 2.0;
        let mut under = top - ((room - self.height(scale)) / 2.0).max(0.0);
        let mut placed = Vec::new();
        for (view, drawing, bounds) in self.0 {
            placed.push(title(view).placed([MARGIN, under]));
            under -= title_height();
            placed.push(Placed {
                drawing,
                ink: Ink::Current,
                scale: ratio,
                at: [across, under - ratio * bounds.max[1]],
            });
            under -= ratio * bounds.height() + GAP;
        }
        placed
    }
}

fn title(view: View) -> Block {
    let mut block = Block::default();
    let writing = Writing::caption(VIEW_TITLE).bold(true);
    block.write_lines(&[view.title().to_owned()], [0.0, 0.0], &writing);
    block
}

fn title_height() -> f64 {
    lines_height(1, VIEW_TITLE) + 1.0
}
