//! Reading a file that a newer version may have written: what stands in a field and is not understood counts as not given.
//!
//! It is for files in RON. What is not RON at all is still refused.

use ron::value::RawValue;
use serde::de::{Deserialize, DeserializeOwned, Deserializer};

/// A field's value, or the type's default where it is not understood.
pub(crate) fn or_default<'de, D, T>(deserializer: D) -> Result<T, D::Error>
where
    D: Deserializer<'de>,
    T: DeserializeOwned + Default,
{
    or_else(deserializer, T::default)
}

/// A field's value, or another one where it is not understood.
pub(crate) fn or_else<'de, D, T>(
    deserializer: D,
    otherwise: impl FnOnce() -> T,
) -> Result<T, D::Error>
where
    D: Deserializer<'de>,
    T: DeserializeOwned,
{
    let text = Box::<RawValue>::deserialize(deserializer)?;
    Ok(text.into_rust().unwrap_or_else(|_| otherwise()))
}
