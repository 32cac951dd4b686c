//! A sheet of a car to be filled in by hand at the track.

use std::collections::BTreeMap;

use steerloft_setup::setup::Setup;

use crate::chart::Shown;
use crate::figures::key_figures;
use crate::page::Page;
use crate::page::adjustments::blank_groups;
use crate::page::assembled::{Assembled, SheetError};
use crate::page::figure_table::Contents;
use crate::page::foot::Note;
use crate::page::further_pages::Sheet;
use crate::page::paper::Paper;
use crate::page::setup_sheet::front_curves;
use crate::page::sheet_page::Front;
use crate::page::title_block::blank_rows;
use crate::page::views::Views;
use steerloft_analysis::figures::Figure;

/// The setup of the same car with every adjustment at its base.
pub(crate) fn at_base(setup: &Setup) -> Setup {
    Setup {
        chosen: BTreeMap::new(),
        ..setup.clone()
    }
}

/// Draws the sheet of a car with boxes instead of values, laid out as a setup sheet: what can be chosen stands beside each
/// box, and the charts are grids to draw gauge readings on. Further pages hold the boxes for which the front page has no
/// room.
///
/// # Errors
/// [`SheetError::Setup`] where the car cannot be assembled with every adjustment at its base.
pub fn blank_sheet(setup: &Setup, paper: Paper) -> Result<Vec<Page>, SheetError> {
    let base = at_base(setup);
    let car = Assembled::new(&base).map_err(SheetError::Setup)?;
    let figures: Vec<Figure> = key_figures(&car.study)
        .into_iter()
        .filter(|figure| figure.facts().is_gauged)
        .collect();
    let title = format!("Blank sheet, {}", setup.car.name);
    let front = Front {
        paper,
        title: title.clone(),
        fields: blank_rows(setup),
        views: Views::of(car.study.layout(), car.pose()),
        figures: &figures,
        contents: Contents::Blank,
        groups: blank_groups(setup),
        charts: front_curves(&car, None),
        shown: Shown::GridOnly,
        notes: vec![Note::plain(
            "Drawn with every adjustment at the car's base.",
        )],
    };
    let (page, rest) = front.lay_out();
    let mut pages = vec![page];
    let sheet = Sheet {
        paper,
        title: &title,
    };
    pages.extend(sheet.of_adjustments(rest));
    Ok(pages)
}
