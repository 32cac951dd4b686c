//! What build errors do, for programs: every value as a number, in full precision.

use serde::Serialize;
use steerloft_analysis::figures::FigureKind;
use steerloft_analysis::tolerance::{Band, BandLine, Quantiles, Spread, Tolerance};
use steerloft_setup::adjustment::Unit;

use super::{Answer, ToleranceArguments};
use crate::format;

/// What build errors do, as JSON holds it.
#[derive(Serialize)]
pub(super) struct JsonTolerance {
    file: String,
    samples: usize,
    apart: usize,
    figures: Vec<JsonSpread>,
    dimensions: Vec<JsonMatter>,
    bands: Vec<JsonBand>,
    /// Steps that change every figure by less than the build errors may.
    hidden_steps: Vec<JsonStep>,
}

#[derive(Serialize)]
struct JsonSpread {
    name: &'static str,
    title: String,
    exact: Option<f64>,
    standard_deviation: f64,
    #[serde(flatten)]
    quantiles: Option<JsonQuantiles>,
    due_to: Vec<JsonShare>,
}

#[derive(Serialize)]
struct JsonQuantiles {
    least: f64,
    low_5: f64,
    middle: f64,
    high_95: f64,
    greatest: f64,
}

#[derive(Serialize)]
struct JsonShare {
    dimension: String,
    share: f64,
}

#[derive(Serialize)]
struct JsonMatter {
    dimension: String,
    unit: &'static str,
    error: f64,
    effect: f64,
}

#[derive(Serialize)]
struct JsonBand {
    curve: &'static str,
    lines: Vec<JsonLine>,
}

#[derive(Serialize)]
struct JsonLine {
    line: String,
    points: Vec<JsonPoint>,
}

#[derive(Serialize)]
struct JsonPoint {
    at: f64,
    exact: f64,
    #[serde(flatten)]
    quantiles: JsonQuantiles,
}

#[derive(Serialize)]
struct JsonStep {
    adjustment: String,
    from: String,
    to: String,
}

impl JsonTolerance {
    pub(super) fn of(arguments: &ToleranceArguments, answer: &Answer) -> Self {
        let tolerance = &answer.tolerance;
        let input = answer.setup.car.drive.input_unit();
        let matters = tolerance.matters.iter().map(|matter| JsonMatter {
            dimension: matter.source.to_string(),
            unit: match matter.source.unit(input) {
                Unit::Degrees => "deg",
                Unit::Millimetres => "mm",
            },
            error: matter.error,
            effect: matter.effect,
        });
        let hidden = tolerance.hidden(&answer.effects).into_iter().map(|row| {
            let step = &answer.effects.rows[row].step;
            JsonStep {
                adjustment: step.name.clone(),
                from: format::plain(&step.from),
                to: format::plain(&step.to),
            }
        });
        let spreads = tolerance.spreads.iter();
        Self {
            file: arguments.file.display().to_string(),
            samples: tolerance.samples,
            apart: tolerance.apart,
            figures: spreads
                .map(|spread| JsonSpread::of(spread, tolerance))
                .collect(),
            dimensions: matters.collect(),
            bands: tolerance.bands.iter().map(JsonBand::of).collect(),
            hidden_steps: hidden.collect(),
        }
    }
}

impl JsonSpread {
    fn of(spread: &Spread, tolerance: &Tolerance) -> Self {
        let facts = spread.measure.figure().map(FigureKind::facts);
        let shares = spread.shares.iter();
        Self {
            name: facts.map_or("", |facts| facts.name),
            title: format::plain(&spread.measure.label()),
            exact: spread.exact,
            standard_deviation: spread.deviation,
            quantiles: spread.quantiles.map(JsonQuantiles::of),
            due_to: shares
                .map(|share| JsonShare {
                    dimension: tolerance.matters[share.source].source.to_string(),
                    share: share.share,
                })
                .collect(),
        }
    }
}

impl JsonQuantiles {
    fn of(quantiles: Quantiles) -> Self {
        Self {
            least: quantiles.least,
            low_5: quantiles.low,
            middle: quantiles.middle,
            high_95: quantiles.high,
            greatest: quantiles.greatest,
        }
    }
}

impl JsonBand {
    fn of(band: &Band) -> Self {
        Self {
            curve: band.kind.name(),
            lines: band.lines.iter().map(JsonLine::of).collect(),
        }
    }
}

impl JsonLine {
    fn of(line: &BandLine) -> Self {
        let points = line.points.iter();
        Self {
            line: format!("{:?}", line.trace).to_lowercase(),
            points: points
                .map(|point| JsonPoint {
                    at: point.at,
                    exact: point.exact,
                    quantiles: JsonQuantiles::of(point.quantiles),
                })
                .collect(),
        }
    }
}
