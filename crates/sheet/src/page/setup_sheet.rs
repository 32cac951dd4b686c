//! The sheet of one setup: what it is of, the car drawn, the figures, every adjustment with its parts, the curves, the
//! cautions.

use steerloft_setup::setup::Setup;

use crate::chart::Shown;
use crate::figures::key_figures;
use crate::page::Page;
use crate::page::adjustments::{Reference, groups, rod_warnings};
use crate::page::assembled::{Assembled, SheetError};
use crate::page::figure_table::Contents;
use crate::page::foot::Note;
use crate::page::further_pages::Sheet;
use crate::page::paper::Paper;
use crate::page::servo_rows::ServoSheet;
use crate::page::sheet_page::Front;
use crate::page::title_block::{name_of, rows_of_sheet};
use crate::page::views::Views;
use steerloft_analysis::curves::{Curve, CurveKind};

/// What is asked of a setup sheet.
#[derive(Debug, Clone, Copy)]
pub struct SheetRequest<'a> {
    /// The setup.
    pub setup: &'a Setup,
    /// A setup to compare with: what differs from it is marked.
    pub reference: Option<&'a Setup>,
    /// The paper.
    pub paper: Paper,
    /// Curves on further pages, beside the two on the front page.
    pub curves: &'a [CurveKind],
}

/// Draws the sheet of a setup: a front page with all that is needed at the track, and further pages for the log of runs, for
/// more curves, and for adjustments that do not go on the front page in letters that can be read.
///
/// # Errors
/// [`SheetError`] where the setup or the reference cannot be assembled.
pub fn setup_sheet(request: &SheetRequest<'_>) -> Result<Vec<Page>, SheetError> {
    let own = Assembled::new(request.setup).map_err(SheetError::Setup)?;
    let reference = request.reference.map(Assembled::new).transpose();
    let reference = reference.map_err(SheetError::Reference)?;
    let setup = own.setup;
    let title = format!("{}, {}", name_of(setup), setup.car.name);
    let figures = key_figures(&own.study);
    let old_figures = reference.as_ref().map(|other| key_figures(&other.study));
    let compared = reference.as_ref().map(|other| Reference {
        setup: other.setup,
        pose: other.pose(),
    });
    let servo = ServoSheet::of(setup);
    let old_servo = request.reference.map(ServoSheet::of);
    let curve = |kind| curve_of(&own, reference.as_ref(), kind);
    let front = Front {
        paper: request.paper,
        title: title.clone(),
        fields: rows_of_sheet(setup, request.reference),
        views: Views::of(own.study.layout(), own.pose()),
        figures: &figures,
        contents: old_figures
            .as_deref()
            .map_or(Contents::Own, Contents::Compared),
        groups: groups(setup, compared, own.pose(), servo.rows(old_servo.as_ref())),
        charts: front_curves(&own, reference.as_ref()),
        shown: Shown::Lines,
        notes: notes(&own, request.reference, &servo.cautions),
    };
    let (page, rest) = front.lay_out();
    let sheet = Sheet {
        paper: request.paper,
        title: &title,
    };
    let curves: Vec<Curve> = request.curves.iter().map(|&kind| curve(kind)).collect();
    let mut pages = vec![page];
    pages.extend(sheet.of_adjustments(rest));
    pages.extend(sheet.of_runs(&setup.record.runs));
    pages.extend(sheet.of_curves(&curves));
    Ok(pages)
}

/// The curves of the front page. A car without travel has its Ackermann share instead of toe against travel.
pub(crate) fn front_curves(own: &Assembled<'_>, reference: Option<&Assembled<'_>>) -> [Curve; 2] {
    let inner_outer = curve_of(own, reference, CurveKind::InnerOuter);
    let first = if own.study.assembly().has_travel() {
        curve_of(own, reference, CurveKind::ToeTravel)
    } else {
        let mut curve = curve_of(own, reference, CurveKind::AckermannShare);
        curve.notes.insert(0, NO_TRAVEL.to_owned());
        curve
    };
    [first, inner_outer]
}

/// A curve with that of the reference under it.
pub(crate) fn curve_of(
    own: &Assembled<'_>,
    reference: Option<&Assembled<'_>>,
    kind: CurveKind,
) -> Curve {
    let mut curve = own.study.curve(kind).clone();
    if let Some(reference) = reference {
        curve.add_reference(reference.study.curve(kind).clone());
    }
    curve
}

fn notes(car: &Assembled<'_>, reference: Option<&Setup>, cautions: &[String]) -> Vec<Note> {
    let mut notes: Vec<Note> = rod_warnings(car.setup, car.pose())
        .into_iter()
        .chain(cautions.iter().cloned())
        .map(Note::warning)
        .collect();
    notes.push(Note::plain(if reference.is_some() {
        "Bold: differs from the reference; its value stands below or beside."
    } else {
        "Bold: differs from the car's base."
    }));
    notes.push(Note::plain(MEANINGS));
    notes
}

const NO_TRAVEL: &str = "The kingpins are fixed in the chassis: there is no wheel travel, and no curve of toe against it.";

const MEANINGS: &str = "Ackermann share: 0 % both wheels turn alike, 100 % the ideal pair; at lock it and the swept radius are those of a left and a right turn. Angles are against the road.";
