//! The make-up of a front page, shared by the setup sheet and the blank one: title block; views beside figures; table of
//! adjustments; two charts; foot.

use crate::chart::{self, Shown};
use crate::drawing::Role;
use crate::page::adjustments::Group;
use crate::page::columns::{self, Laid, Shape};
use crate::page::figure_table::{self, Contents};
use crate::page::foot::{self, Cautions, Note};
use crate::page::furniture::{Block, Writing};
use crate::page::paper::{GAP, MARGIN, Paper};
use crate::page::scale::{self, Scale};
use crate::page::title_block::{self, Field};
use crate::page::views::Views;
use crate::page::{Page, Placed};
use steerloft_analysis::curves::Curve;
use steerloft_analysis::figures::Figure;

/// Space between views and figures, mm.
const BETWEEN: f64 = 6.0;
/// Least and greatest height of the charts, mm.
const CHARTS: (f64, f64) = (44.0, 74.0);
/// Greatest heights of the views, mm: the first with which every adjustment goes on the page, else the first.
const MOST_VIEWS: [f64; 3] = [88.0, 78.0, 62.0];
/// The table of adjustments.
pub(crate) const TABLE: Shape = Shape {
    columns: 3,
    whole_groups_cost: 8.0,
    least_size: 2.1,
};

/// What a front page shows.
pub(crate) struct Front<'a> {
    pub(crate) paper: Paper,
    pub(crate) title: String,
    pub(crate) fields: Vec<Vec<Field>>,
    pub(crate) views: Views,
    pub(crate) figures: &'a [Figure],
    pub(crate) contents: Contents<'a>,
    pub(crate) groups: Vec<Group>,
    pub(crate) charts: [Curve; 2],
    pub(crate) shown: Shown,
    pub(crate) notes: Vec<Note>,
}

impl Front<'_> {
    /// The page, and the adjustments that did not go on it.
    pub(crate) fn lay_out(self) -> (Page, Vec<Group>) {
        let [page_width, page_height] = self.paper.size();
        let width = page_width - 2.0 * MARGIN;
        let title = title_block::lay_out(&self.fields, width);
        let foot = foot::lay_out(&self.notes, Cautions::Listed, width);
        let free = page_height - 2.0 * MARGIN - title.height - foot.height - 4.0 * GAP;
        let (middle, Laid { block: table, rest }) = self.middle_and_table(width, free);
        let left_over = free - middle.height - table.height;
        let room = [width, left_over.min(CHARTS.1)];
        let charts = chart::side_by_side(&self.charts, 2, room, self.shown);
        // What is still left goes between the blocks.
        let spare = ((left_over - charts.height) / 4.0).max(0.0);
        let mut column = Column::new(page_height);
        for block in [title, middle, table, charts] {
            column.add(block, GAP + spare);
        }
        column.add_at_bottom(foot);
        let page = Page {
            size: self.paper.size(),
            title: self.title,
            placed: column.placed,
        };
        (page, rest)
    }

    /// The views beside the figures, and the table of adjustments.
    fn middle_and_table(&self, width: f64, free: f64) -> (Block, Laid) {
        let with_views = |most: f64| {
            let middle = middle(&self.views, self.figures, self.contents, [width, most]);
            let room = [width, free - middle.height - CHARTS.0];
            (middle, columns::lay_out(&self.groups, TABLE, room))
        };
        let [largest, smaller @ ..] = MOST_VIEWS;
        let first = with_views(largest);
        if first.1.rest.is_empty() {
            return first;
        }
        let mut others = smaller.into_iter().map(with_views);
        others
            .find(|(_, table)| table.rest.is_empty())
            .unwrap_or(first)
    }
}

/// The views with their scale, at most so high, the figures to their right.
fn middle(
    views: &Views,
    figures: &[Figure],
    contents: Contents<'_>,
    [width, most_high]: [f64; 2],
) -> Block {
    let most = width - figure_table::least_width(contents) - BETWEEN;
    let scale = views.largest_scale(&Scale::CLOSE, [most, most_high]);
    let views_width = views.width(scale).max(0.5 * width - BETWEEN).min(most);
    let table_width = width - views_width - BETWEEN;
    let table = figure_table::lay_out(figures, contents, table_width);
    let bar = scale::bar(scale, views_width);
    let drawn = views.block(scale, views_width, 0.0);
    let together = drawn.height + GAP + bar.height;
    let height = table.height.max(together);
    let mut block = Block::of_height(height);
    let spare = (block.height - together).max(0.0);
    let under_views = -drawn.height - GAP - spare;
    block.add(drawn, [0.0, -spare / 2.0]);
    block.add(bar, [0.0, under_views]);
    let left = views_width + BETWEEN;
    if let Contents::Blank = contents {
        let top = -table.height - GAP;
        add_runs(&mut block, [left, top], [width, -height]);
    }
    block.add(table, [left, 0.0]);
    block
}

/// Font size of a caption in a box, mm.
const CAPTION: f64 = 2.1;
/// Least height of a box for notes, mm.
const LEAST_NOTES: f64 = 14.0;

/// A box for notes on runs between an upper left and a lower right corner, where there is room for it.
fn add_runs(block: &mut Block, [left, top]: [f64; 2], [right, bottom]: [f64; 2]) {
    if top - bottom < LEAST_NOTES {
        return;
    }
    block.rectangle(Role::Rule, [left, bottom], [right, top]);
    let caption = ["Runs: what was changed, what was found".to_owned()];
    block.write_lines(
        &caption,
        [left + 1.4, top - 1.4],
        &Writing::caption(CAPTION),
    );
}

/// Blocks under one another along the left margin.
pub(crate) struct Column {
    pub(crate) placed: Vec<Placed>,
    top: f64,
}

impl Column {
    /// An empty column on a page of a height, mm.
    pub(crate) fn new(page_height: f64) -> Self {
        Self {
            placed: Vec::new(),
            top: page_height - MARGIN,
        }
    }

    /// Adds a block, and a gap under it, mm.
    pub(crate) fn add(&mut self, block: Block, gap: f64) {
        let height = block.height;
        self.placed.extend(block.placed([MARGIN, self.top]));
        self.top -= height + gap;
    }

    /// Adds a block whose lower edge lies on the margin.
    pub(crate) fn add_at_bottom(&mut self, block: Block) {
        let top = MARGIN + block.height;
        self.placed.extend(block.placed([MARGIN, top]));
    }

    /// Height left over a block of a height at the bottom, mm.
    pub(crate) fn room_over(&self, bottom: &Block) -> f64 {
        self.top - MARGIN - bottom.height - GAP
    }
}
