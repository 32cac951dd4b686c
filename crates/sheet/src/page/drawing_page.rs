//! A page for the two views as large as they go, with what is chosen and the cautions.

use steerloft_setup::layout::Layout;
use steerloft_setup::setup::Setup;
use steerloft_solver::pose::AxlePose;

use crate::page::adjustments::Group;
use crate::page::furniture::Block;
use crate::page::paper::{GAP, MARGIN};
use crate::page::scale::Scale;
use crate::page::views::Views;
use crate::page::{Page, Placed, adjustments, columns, foot, scale, title_block};

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
        least_size: 1.5,
    },
    least_views: 110.0,
};
const ACROSS: Paper = Paper {
    size: [297.0, 210.0],
    table: columns::Shape {
        columns: 4,
        whole_groups_cost: 0.0,
        least_size: 1.5,
    },
    least_views: 80.0,
};

/// Margin of the views, narrower than that of the writing.
const VIEW_MARGIN: f64 = 5.0;

/// Draws the sheet of a setup on A4: title block, top view above front view on one lateral axis at the largest
/// usual scale that fits, scale bar, chosen values by place, cautions.
///
/// The sheet is upright unless it gives a larger scale across. `layout` is the setup laid out, `pose` a pose of
/// its axle, as a rule the one straight ahead.
#[must_use]
pub fn drawing_page(setup: &Setup, layout: &Layout, pose: &AxlePose) -> Page {
    let views = Views::of(layout, pose);
    let groups = adjustments::groups(setup, None, pose, Vec::new());
    let upright = Sheet::new(UPRIGHT, setup, &views, &groups);
    let across = Sheet::new(ACROSS, setup, &views, &groups);
    let sheet = if across.scale.ratio() > upright.scale.ratio() {
        across
    } else {
        upright
    };
    sheet.page(setup, &views)
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
        let any_scale = Scale::SMALLEST;
        let rows = title_block::rows_of_drawing(setup, any_scale, width);
        let fixed = title_block::lay_out(&rows, width).height
            + scale::bar(any_scale, width).height
            + foot::lay_out(&notes(), foot::Cautions::InBrief, width).height;
        let free = paper.size[1] - 2.0 * MARGIN - fixed - 4.0 * GAP;
        let room = [width, free - paper.least_views];
        let table = columns::lay_out_all(groups, paper.table, room);
        let room = free - table.height;
        let room_of_views = [paper.size[0] - 2.0 * VIEW_MARGIN, room];
        let scale = views.largest_scale(&Scale::RECOMMENDED, room_of_views);
        Self {
            paper,
            table,
            room,
            scale,
        }
    }

    fn page(self, setup: &Setup, views: &Views) -> Page {
        let [page_width, page_height] = self.paper.size;
        let width = page_width - 2.0 * MARGIN;
        let mut column = Column {
            placed: Vec::new(),
            top: page_height - MARGIN,
        };
        let rows = title_block::rows_of_drawing(setup, self.scale, width);
        column.add(title_block::lay_out(&rows, width));
        let spare = self.room - views.height(self.scale);
        let drawn = views.block(self.scale, page_width, MARGIN);
        let top = column.top - (spare / 2.0).max(0.0);
        column.placed.extend(drawn.placed([0.0, top]));
        column.top -= self.room + GAP;
        column.add(scale::bar(self.scale, width));
        column.add(self.table);
        column.add(foot::lay_out(&notes(), foot::Cautions::InBrief, width));
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
        self.placed.extend(block.placed([MARGIN, self.top]));
        self.top -= height + GAP;
    }
}

fn notes() -> Vec<foot::Note> {
    vec![foot::Note::plain(
        "Values in bold differ from the car's base.",
    )]
}
