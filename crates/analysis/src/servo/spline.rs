//! Which tooth of the spline brings the arm nearest to where it is wanted, and what trim takes out the rest.

use steerloft_setup::car::{ServoAction, Spline};

/// The arm on one tooth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tooth {
    /// The tooth, counted as the setup counts them.
    pub tooth: i32,
    /// Steering input at which the arm stands at the centre pulse without trim, degrees.
    pub stands_at: f64,
    /// That less the wanted angle, degrees: what is left to trim away.
    pub error: f64,
    /// The trim that takes it out, degrees of the arm.
    pub trim: f64,
    /// The same as a change of the centre pulse, microseconds, where the servo's pulses are known.
    pub trim_microseconds: Option<f64>,
}

/// The tooth nearest to a wanted steering input at the centre pulse (degrees) first, and so many next ones after it, by
/// what they leave.
///
/// Derived here: N teeth step 360/N degrees, so the nearest leaves at most half a step.
#[must_use]
pub fn teeth_near(
    spline: &Spline,
    action: Option<&ServoAction>,
    wanted: f64,
    next_ones: usize,
) -> Vec<Tooth> {
    let step = spline.step();
    if !step.is_finite() || !wanted.is_finite() {
        return Vec::new();
    }
    #[allow(
        clippy::cast_possible_truncation,
        reason = "a spline turned by whole turns stands the same, so the tooth is within one turn"
    )]
    let nearest = ((wanted - spline.stands_at) / step)
        .round()
        .clamp(-f64::from(spline.teeth), f64::from(spline.teeth)) as i32;
    let reach = i32::try_from(next_ones).unwrap_or(i32::MAX / 2).min(100);
    let mut teeth: Vec<Tooth> = (nearest - reach..=nearest + reach)
        .map(|tooth| {
            let stands_at = spline.stands_at + f64::from(tooth) * step;
            let error = stands_at - wanted;
            Tooth {
                tooth,
                stands_at,
                error,
                trim: -error,
                trim_microseconds: action.map(|action| -error * action.microseconds_per_degree()),
            }
        })
        .collect();
    teeth.sort_by(|a, b| a.error.abs().total_cmp(&b.error.abs()));
    teeth.truncate(next_ones + 1);
    teeth
}
