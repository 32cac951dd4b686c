//! What a search answers, in words.

use steerloft_analysis::find::{Limit, Search, Unmet, Want};

use crate::format;

/// A number of changes.
#[must_use]
pub fn changes_in_words(changes: usize) -> String {
    match changes {
        0 => "no change".to_owned(),
        1 => "1 change".to_owned(),
        more => format!("{more} changes"),
    }
}

/// What is the nearest to a want that nothing meets, and what stands in the way. `value` writes a value of the want.
#[must_use]
pub fn unmet_in_words(
    search: &Search,
    unmet: &Unmet,
    value: impl Fn(&Want, f64) -> String,
) -> String {
    let want = search.wants.get(unmet.want);
    let title = want.map_or("A want", |want| want.measure.title());
    let nearest = match (&unmet.nearest, want) {
        (Some(values), Some(want)) => {
            let values: Vec<String> = values.iter().map(|number| value(want, *number)).collect();
            format!("the nearest is {}", values.join(" and "))
        }
        _ => "no combination has a value".to_owned(),
    };
    let limits: Vec<String> = unmet
        .limits
        .iter()
        .map(|limit| limit_in_words(search, limit))
        .collect();
    let way = if limits.is_empty() {
        "no neighbour comes nearer".to_owned()
    } else {
        format!("in the way: {}", limits.join("; "))
    };
    format!("{title} cannot be met: {nearest}; {way}.")
}

/// What stands in the way of a want.
#[must_use]
pub fn limit_in_words(search: &Search, limit: &Limit) -> String {
    let name = |index: usize| {
        let adjustment = search.setup.car.adjustments.get(index);
        adjustment.map_or(String::new(), |adjustment| adjustment.name.clone())
    };
    match limit {
        Limit::End { words, .. } => words.clone(),
        Limit::PartsAtHand { adjustment, .. } => {
            format!("too few spacers at hand for {}", name(*adjustment))
        }
        Limit::MostChanges(most) => format!("no more than {} allowed", changes_in_words(*most)),
        Limit::Apart(because) => because.to_string(),
        Limit::RodLength(length) => format!(
            "a tie rod of {} mm cannot be made from its parts",
            format::number(*length, 2)
        ),
        Limit::NotReached => "the axle does not get there".to_owned(),
    }
}
