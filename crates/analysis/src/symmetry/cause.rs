//! Single things that can be off on one side.

use steerloft_setup::adjustment::{Kind, Unit};
use steerloft_setup::car::Drive;
use steerloft_setup::dimension::{Dimension, Whose, dimensions};
use steerloft_setup::setup::{Chosen, Setup};

use crate::text;

/// A single thing that can be off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Cause {
    /// A dimension of the car.
    Dimension(Dimension),
    /// A slide, by its index in the car.
    Slide(usize),
}

impl Cause {
    /// Everything on a car whose change can make the sides alike or unlike. Of the two sides the left one stands for both:
    /// the right one changed as much the other way does nearly the same.
    pub(super) fn all(setup: &Setup) -> Vec<Self> {
        let adjustments = setup.car.adjustments.iter().enumerate();
        let slides = adjustments
            .filter(|(_, adjustment)| matches!(adjustment.kind, Kind::Slide { .. }))
            .map(|(index, _)| Self::Slide(index));
        let dimensions = dimensions(setup).into_iter().filter(|dimension| {
            let is_of_axle = matches!(
                dimension,
                Dimension::Wheelbase | Dimension::RideHeight | Dimension::Pitch
            );
            dimension.side() != Whose::Right && !is_of_axle
        });
        slides.chain(dimensions.map(Self::Dimension)).collect()
    }

    /// Whether a builder sets it, rather than it being made so.
    pub(super) const fn is_set(&self) -> bool {
        matches!(
            self,
            Self::Slide(_) | Self::Dimension(Dimension::Centre | Dimension::Rod { .. })
        )
    }

    /// The setup with this changed by so much; none where it cannot be.
    pub(super) fn changed(&self, setup: &Setup, by: f64) -> Option<Setup> {
        let mut changed = setup.clone();
        match *self {
            Self::Dimension(dimension) => dimension.add(&mut changed, by).ok()?,
            Self::Slide(index) => {
                let Chosen::Slide(now) = setup.value(index) else {
                    return None;
                };
                changed.set(index, Chosen::Slide(now + by)).ok()?;
            }
        }
        Some(changed)
    }

    /// What such a thing is usually off by, in its unit.
    pub(super) fn usual(&self, setup: &Setup) -> f64 {
        let errors = &setup.car.build_errors;
        let usual = match self {
            Self::Dimension(dimension) => dimension.error(errors, setup.car.drive.input_unit()),
            Self::Slide(index) => match setup.car.adjustments[*index].kind {
                Kind::Slide {
                    unit: Unit::Degrees,
                    ..
                } => errors.angles,
                _ => errors.lengths,
            },
        };
        usual.max(LEAST_USUAL)
    }

    /// That it is off by so much, in words: "servo arm off centre by 0.80°".
    pub(super) fn words(&self, setup: &Setup, off: f64) -> String {
        let input = setup.car.drive.input_unit();
        let amount = |unit: Unit| {
            let sign = match unit {
                Unit::Degrees => "\u{b0}",
                Unit::Millimetres => "mm",
            };
            text::with_unit(&text::signed(off, 2), sign)
        };
        match self {
            Self::Dimension(Dimension::Centre) => {
                let what = match setup.car.drive {
                    Drive::Slider { .. } => "rack",
                    Drive::SwingArm { .. } | Drive::TwinCrank { .. } => "servo arm",
                };
                format!("{what} off centre by {}", amount(input))
            }
            Self::Dimension(dimension) if dimension.side() == Whose::Left => format!(
                "{dimension} off by {}, or the right one by as much the other way",
                amount(dimension.unit(input))
            ),
            Self::Dimension(dimension) => {
                format!("{dimension} off by {}", amount(dimension.unit(input)))
            }
            Self::Slide(index) => {
                let adjustment = &setup.car.adjustments[*index];
                let unit = match adjustment.kind {
                    Kind::Slide { unit, .. } => unit,
                    _ => Unit::Millimetres,
                };
                format!("\"{}\" off by {}", adjustment.name, amount(unit))
            }
        }
    }
}

/// A build error counts as no smaller than this, mm or degrees, so that sizes can be compared where a file says that
/// something is exact.
const LEAST_USUAL: f64 = 0.01;
