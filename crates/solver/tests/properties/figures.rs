//! Every figure of every pose is a number.

use proptest::prop_assert;

use super::trial::Trial;
use super::words::{all_numbers, in_words};
use super::{Checked, Outcome};

fn figures_are_numbers(trial: &Trial) -> Checked {
    trial.posed(|assembly, pose| {
        let words = in_words(assembly, pose);
        prop_assert!(all_numbers(&words), "{words}");
        Ok(Outcome::Held)
    })
}

for_every_kind!(figures_are_numbers, share 0.8);
