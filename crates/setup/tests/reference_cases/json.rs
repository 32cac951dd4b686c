//! Case files as text, and where two of them differ.

use serde::Serialize;
use serde_json::Value;
use serde_json::ser::{PrettyFormatter, Serializer};

/// Largest difference of two numbers that are the same, mm or degrees.
const TOLERANCE: f64 = 1e-9;

/// JSON with one key a line and lists of numbers kept on one line.
pub(crate) fn text(value: &impl Serialize) -> String {
    let mut bytes = Vec::new();
    let mut serializer = Serializer::with_formatter(&mut bytes, PrettyFormatter::with_indent(b" "));
    value.serialize(&mut serializer).unwrap();
    let mut rest = std::str::from_utf8(&bytes).unwrap();
    let mut text = String::new();
    while let Some(start) = rest.find('[') {
        let (before, list) = rest.split_at(start + 1);
        text.push_str(before);
        rest = list;
        let end = list.find(['[', ']', '{']).unwrap();
        if list[end..].starts_with(']') {
            let numbers: Vec<&str> = list[..end].split_whitespace().collect();
            text.push_str(&numbers.join(" "));
            rest = &list[end..];
        }
    }
    text + rest + "\n"
}

/// The first place where two files differ, in words.
pub(crate) fn difference(fresh: &Value, kept: &Value) -> Option<String> {
    difference_at("", fresh, kept)
}

fn difference_at(at: &str, fresh: &Value, kept: &Value) -> Option<String> {
    match (fresh, kept) {
        (Value::Object(new), Value::Object(old)) => {
            let keys = new.keys().chain(old.keys());
            keys.into_iter()
                .find_map(|key| difference_at(&format!("{at}/{key}"), &fresh[key], &kept[key]))
        }
        (Value::Array(new), Value::Array(old)) if new.len() == old.len() => {
            let pairs = new.iter().zip(old).enumerate();
            pairs
                .into_iter()
                .find_map(|(index, (new, old))| difference_at(&format!("{at}/{index}"), new, old))
        }
        (Value::Number(new), Value::Number(old)) => {
            let apart = (new.as_f64().unwrap() - old.as_f64().unwrap()).abs();
            (apart > TOLERANCE).then(|| format!("{at}: the car has {new}, the file {old}"))
        }
        _ => (fresh != kept).then(|| format!("{at}: the car has {fresh}, the file {kept}")),
    }
}
