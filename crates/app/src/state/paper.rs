//! What of the bench goes on paper: single views and curves as pictures, and the sheets to print.

use steerloft_analysis::curves::CurveKind;
use steerloft_sheet::output::Format;
use steerloft_sheet::{
    Page, Paper, SheetError, SheetRequest, View, ViewPicture, blank_sheet, measuring_form,
    picture_of_curve, picture_of_view, setup_sheet,
};

use super::{Bench, Reference};

/// A view or a curve that can be had as a picture of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Subject {
    /// A view of the car in the pose on screen.
    View(View),
    /// A curve.
    Curve(CurveKind),
}

impl Subject {
    /// Every view, then every curve.
    pub fn all() -> impl Iterator<Item = Self> {
        let views = View::ALL.into_iter().map(Self::View);
        views.chain(CurveKind::ALL.into_iter().map(Self::Curve))
    }

    /// What it is, in a few words.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::View(view) => view.title(),
            Self::Curve(kind) => kind.title(),
        }
    }
}

/// What is put on paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum SheetKind {
    /// The setup with everything to fit and its figures.
    #[default]
    Setup,
    /// The same car with boxes to fill in by hand.
    Blank,
    /// A form to measure the car with.
    Measuring,
}

impl SheetKind {
    /// All, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Setup, Self::Blank, Self::Measuring];

    /// Plain name.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Setup => "Setup sheet",
            Self::Blank => "Blank sheet",
            Self::Measuring => "Measuring form",
        }
    }
}

/// Which curves go on a page of their own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum FurtherCurves {
    /// None.
    #[default]
    None,
    /// Those that are on screen.
    OnScreen,
    /// Every one.
    All,
}

impl FurtherCurves {
    /// All, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::None, Self::OnScreen, Self::All];

    /// Plain name.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::None => "None",
            Self::OnScreen => "Those on screen",
            Self::All => "All",
        }
    }
}

/// Resolutions of a picture, dots per inch.
pub const RESOLUTIONS: (f64, f64) = (50.0, 600.0);

/// What is asked of a sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PrintChoices {
    /// What is put on paper.
    pub kind: SheetKind,
    /// Size of the paper.
    pub paper: Paper,
    /// What it is written as.
    pub format: Format,
    /// Resolution of a picture, dots per inch.
    pub resolution: f64,
    /// Which curves go on a page of their own.
    pub curves: FurtherCurves,
    /// Whether differences from the reference are marked, where there is one.
    pub compared: bool,
}

impl Default for PrintChoices {
    fn default() -> Self {
        Self {
            kind: SheetKind::Setup,
            paper: Paper::A4,
            format: Format::Pdf,
            resolution: 200.0,
            curves: FurtherCurves::None,
            compared: true,
        }
    }
}

impl Bench {
    /// A view or a curve as it is on screen, with the reference, as a page with title, axes, legend and the setup's name;
    /// none while the setup cannot be assembled.
    #[must_use]
    pub fn picture(&self, subject: Subject) -> Option<Page> {
        if self.derived().trouble().is_some() {
            return None;
        }
        let shown = self.derived().shown()?;
        match subject {
            Subject::View(view) => {
                let reference = self.reference().and_then(Reference::shown);
                Some(picture_of_view(&ViewPicture {
                    setup: self.setup(),
                    layout: shown.layout(),
                    pose: &shown.pose,
                    reference: reference.map(|shown| (shown.layout(), &shown.pose)),
                    view,
                }))
            }
            Subject::Curve(kind) => {
                let reference = self.reference();
                let mut curve = shown.study.curve(kind).clone();
                if let Some(reference) = reference.and_then(Reference::shown) {
                    curve.add_reference(reference.study.curve(kind).clone());
                }
                let compared = reference.map(Reference::setup);
                Some(picture_of_curve(self.setup(), compared, &curve))
            }
        }
    }

    /// The pages of a sheet of the setup on the bench; `on_screen` are the curves that are shown.
    ///
    /// # Errors
    /// [`SheetError`] where the setup or the reference cannot be assembled.
    pub fn sheet(
        &self,
        choices: &PrintChoices,
        on_screen: &[CurveKind],
    ) -> Result<Vec<Page>, SheetError> {
        let reference = self.reference().filter(|_| choices.compared);
        match choices.kind {
            SheetKind::Setup => setup_sheet(&SheetRequest {
                setup: self.setup(),
                reference: reference.map(Reference::setup),
                paper: choices.paper,
                curves: match choices.curves {
                    FurtherCurves::None => &[],
                    FurtherCurves::OnScreen => on_screen,
                    FurtherCurves::All => &CurveKind::ALL,
                },
            }),
            SheetKind::Blank => blank_sheet(self.setup(), choices.paper),
            SheetKind::Measuring => measuring_form(self.setup(), choices.paper),
        }
    }
}
