//! Paths: where in a document a value stands.

use std::fmt;

/// The way from the document's root to a value.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Path(Vec<Step>);

/// One step into a value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Step {
    /// To a field by its name; an enum's variant is passed through without a step of its own.
    Field(&'static str),
    /// To an element of a list or a tuple, counted from 0.
    Item(usize),
    /// To the value of a map's key.
    Key(String),
}

impl Path {
    /// The document itself.
    #[must_use]
    pub fn root() -> Self {
        Self::default()
    }

    /// The steps from the root.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.0
    }

    /// This value's field.
    #[must_use]
    pub fn field(&self, name: &'static str) -> Self {
        self.then(Step::Field(name))
    }

    /// This value's element, counted from 0.
    #[must_use]
    pub fn item(&self, index: usize) -> Self {
        self.then(Step::Item(index))
    }

    /// The value of this map's key.
    #[must_use]
    pub fn key(&self, key: &str) -> Self {
        self.then(Step::Key(key.to_owned()))
    }

    /// The same way without the steps to a field of this name, for a text that holds its value one level higher up.
    #[must_use]
    pub(crate) fn without(mut self, name: &str) -> Self {
        self.0
            .retain(|step| !matches!(step, Step::Field(field) if *field == name));
        self
    }

    fn then(&self, step: Step) -> Self {
        let mut steps = self.0.clone();
        steps.push(step);
        Self(steps)
    }
}

/// As in `car.adjustments[3].name`, elements counted from 0.
impl fmt::Display for Path {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, step) in self.0.iter().enumerate() {
            match step {
                Step::Field(name) if index == 0 => f.write_str(name)?,
                Step::Field(name) => write!(f, ".{name}")?,
                Step::Item(item) => write!(f, "[{item}]")?,
                Step::Key(key) => write!(f, "[{key:?}]")?,
            }
        }
        Ok(())
    }
}
