//! Differences of two cars' descriptions, field by field.
//!
//! Both are taken as the file would hold them, so that no field can be forgotten.

use serde_json::{Map, Value};

use crate::car::Car;

/// A field of the car that differs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DataDifference {
    /// Where the file holds it, such as `left.wheel_centre` or `adjustments["Servo station"].kind.Slide.range`.
    pub at: String,
    /// Value in the first car; none where it has none.
    pub from: Option<String>,
    /// Value in the second car.
    pub to: Option<String>,
}

/// Every field of two cars that differs, in the order of their names. Adjustments are matched by name; their order
/// counts where both cars have the same ones.
#[must_use]
pub fn data_differences(from: &Car, to: &Car) -> Vec<DataDifference> {
    let mut found = Vec::new();
    if from == to {
        return found;
    }
    walk("", as_data(from).as_ref(), as_data(to).as_ref(), &mut found);
    let names = |car: &Car| -> Vec<String> {
        let names = car.adjustments.iter();
        names.map(|adjustment| adjustment.name.clone()).collect()
    };
    let (mut was, mut is) = (names(from), names(to));
    if was != is {
        let order = (was.join(", "), is.join(", "));
        was.sort();
        is.sort();
        if was == is {
            found.push(DataDifference {
                at: "adjustments".to_owned(),
                from: Some(order.0),
                to: Some(order.1),
            });
        }
    }
    found
}

/// The car as plain data, its adjustments by name.
fn as_data(car: &Car) -> Option<Value> {
    let mut data = serde_json::to_value(car).ok()?;
    let fields = data.as_object_mut()?;
    for list in ["adjustments", "obstacles", "stock"] {
        if let Some(Value::Array(items)) = fields.remove(list) {
            let named = items.into_iter().map(|mut item| {
                let name = item
                    .as_object_mut()
                    .and_then(|item| item.remove("name"))
                    .unwrap_or_default();
                (name.as_str().unwrap_or_default().to_owned(), item)
            });
            fields.insert(list.to_owned(), Value::Object(named.collect()));
        }
    }
    Some(data)
}

fn walk(at: &str, from: Option<&Value>, to: Option<&Value>, found: &mut Vec<DataDifference>) {
    match (from, to) {
        (Some(Value::Object(from)), Some(Value::Object(to))) => {
            for name in union_of_names(from, to) {
                walk(&step(at, name), from.get(name), to.get(name), found);
            }
        }
        (Some(Value::Array(from)), Some(Value::Array(to)))
            if from.len() == to.len() && !from.iter().all(is_plain) =>
        {
            for (index, (from, to)) in from.iter().zip(to).enumerate() {
                walk(&format!("{at}[{index}]"), Some(from), Some(to), found);
            }
        }
        (from, to) if from != to => found.push(DataDifference {
            at: at.to_owned(),
            from: from.map(words),
            to: to.map(words),
        }),
        _ => {}
    }
}

fn union_of_names<'a>(from: &'a Map<String, Value>, to: &'a Map<String, Value>) -> Vec<&'a String> {
    let only_in_second = to.keys().filter(|name| !from.contains_key(*name));
    from.keys().chain(only_in_second).collect()
}

fn step(at: &str, name: &str) -> String {
    let is_field = name
        .chars()
        .all(|letter| letter.is_ascii_alphanumeric() || letter == '_');
    match (is_field, at.is_empty()) {
        (true, true) => name.to_owned(),
        (true, false) => format!("{at}.{name}"),
        (false, _) => format!("{at}[{name:?}]"),
    }
}

fn is_plain(value: &Value) -> bool {
    !value.is_object() && !value.is_array()
}

/// A value in few words: points and ranges in brackets, texts as they are.
fn words(value: &Value) -> String {
    match value {
        Value::Null => "none".to_owned(),
        Value::String(text) => text.clone(),
        Value::Array(items) if items.iter().all(is_plain) => {
            let items: Vec<String> = items.iter().map(words).collect();
            format!("({})", items.join(", "))
        }
        other => other.to_string(),
    }
}
