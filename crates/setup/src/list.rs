//! Lists of a file that may be far longer than is allowed.

use std::fmt;
use std::marker::PhantomData;

use serde::Deserialize;
use serde::de::{Deserializer, SeqAccess, Visitor};

/// Reads a list and keeps one more than `MOST` of it, from which the check knows that there are too many. A file of very many
/// short entries takes no more memory than one that is sound.
pub(crate) fn at_most<'de, const MOST: usize, T, D>(deserializer: D) -> Result<Vec<T>, D::Error>
where
    T: Deserialize<'de>,
    D: Deserializer<'de>,
{
    deserializer.deserialize_seq(AtMost::<MOST, T>(PhantomData))
}

struct AtMost<const MOST: usize, T>(PhantomData<T>);

impl<'de, const MOST: usize, T: Deserialize<'de>> Visitor<'de> for AtMost<MOST, T> {
    type Value = Vec<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a list")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut entries: A) -> Result<Vec<T>, A::Error> {
        let mut kept = Vec::new();
        while let Some(entry) = entries.next_element()? {
            if kept.len() <= MOST {
                kept.push(entry);
            }
        }
        Ok(kept)
    }
}
