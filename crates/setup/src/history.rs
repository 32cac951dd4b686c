//! Undo and redo: whole setups, named by what was done to them.

use crate::setup::Setup;

/// Steps kept.
const MOST_STEPS: usize = 500;

/// What was done and can be undone, and what was undone and can be done again.
///
/// It does not know about files, so undo reaches back over a save.
#[derive(Debug, Clone, Default)]
pub struct History {
    undo: Vec<Step>,
    redo: Vec<Step>,
    open: Option<Step>,
}

/// A change, named, with the setup on its other side.
#[derive(Debug, Clone)]
struct Step {
    label: String,
    setup: Setup,
}

impl History {
    /// An empty history.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Begins a change of `before`, named as a menu shows it after "Undo", such as "move servo station".
    /// A change still open goes on under its own name, so that one drag is one step.
    pub fn begin(&mut self, label: impl Into<String>, before: &Setup) {
        if self.open.is_none() {
            self.open = Some(Step {
                label: label.into(),
                setup: before.clone(),
            });
        }
    }

    /// Ends the open change, which left `after`. One that changed nothing leaves no step.
    pub fn commit(&mut self, after: &Setup) {
        let Some(step) = self.open.take() else {
            return;
        };
        if step.setup == *after {
            return;
        }
        self.redo.clear();
        self.undo.push(step);
        if self.undo.len() > MOST_STEPS {
            self.undo.remove(0);
        }
    }

    /// Gives the open change up and returns the setup from before it.
    pub fn cancel(&mut self) -> Option<Setup> {
        self.open.take().map(|step| step.setup)
    }

    /// Whether a change is open.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.open.is_some()
    }

    /// Undoes the last change of `current`: the setup from before it, and its name. An open change counts as
    /// the last one.
    pub fn undo(&mut self, current: &Setup) -> Option<(Setup, String)> {
        self.commit(current);
        take_step(&mut self.undo, &mut self.redo, current)
    }

    /// Does the last undone change again: the setup from after it, and its name. Nothing while a change that
    /// has changed something is open, since that leaves nothing to do again.
    pub fn redo(&mut self, current: &Setup) -> Option<(Setup, String)> {
        self.commit(current);
        take_step(&mut self.redo, &mut self.undo, current)
    }

    /// Name of the change that [`Self::undo`] would undo.
    #[must_use]
    pub fn undo_label(&self) -> Option<&str> {
        let step = self.open.as_ref().or(self.undo.last());
        step.map(|step| step.label.as_str())
    }

    /// Name of the change that [`Self::redo`] would do again.
    #[must_use]
    pub fn redo_label(&self) -> Option<&str> {
        self.redo.last().map(|step| step.label.as_str())
    }
}

impl History {
    /// The steps that can be undone, the oldest first: what each is called, and the setup from before it.
    pub fn done(&self) -> impl ExactSizeIterator<Item = (&str, &Setup)> {
        self.undo.iter().map(Step::named)
    }

    /// The steps that can be done again, the next one first: what each is called, and the setup from after it.
    pub fn undone(&self) -> impl ExactSizeIterator<Item = (&str, &Setup)> {
        self.redo.iter().rev().map(Step::named)
    }
}

impl Step {
    fn named(&self) -> (&str, &Setup) {
        (&self.label, &self.setup)
    }
}

fn take_step(from: &mut Vec<Step>, to: &mut Vec<Step>, current: &Setup) -> Option<(Setup, String)> {
    let step = from.pop()?;
    to.push(Step {
        label: step.label.clone(),
        setup: current.clone(),
    });
    Some((step.setup, step.label))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::setup::Rods;
    use crate::supplied::SUPPLIED;

    fn with_toe(toe: f64) -> Setup {
        let mut setup = SUPPLIED[0].setup();
        setup.rods = Rods::HoldToe(toe);
        setup
    }

    fn change(history: &mut History, label: &str, from: f64, to: f64) -> Setup {
        history.begin(label, &with_toe(from));
        let after = with_toe(to);
        history.commit(&after);
        after
    }

    #[test]
    fn undo_and_redo_walk_the_same_way() {
        let mut history = History::new();
        change(&mut history, "one", 0.0, 1.0);
        let current = change(&mut history, "two", 1.0, 2.0);
        assert_eq!(history.undo_label(), Some("two"));
        let (current, label) = history.undo(&current).unwrap();
        assert_eq!((&current, label.as_str()), (&with_toe(1.0), "two"));
        let (current, label) = history.undo(&current).unwrap();
        assert_eq!((&current, label.as_str()), (&with_toe(0.0), "one"));
        assert_eq!(history.undo(&current), None);
        assert_eq!(history.redo_label(), Some("one"));
        let (current, label) = history.redo(&current).unwrap();
        assert_eq!((&current, label.as_str()), (&with_toe(1.0), "one"));
        let (current, _) = history.redo(&current).unwrap();
        assert_eq!(current, with_toe(2.0));
        assert_eq!(history.redo(&current), None);
    }

    #[test]
    fn a_drag_is_one_step_and_what_changes_nothing_is_none() {
        let mut history = History::new();
        history.begin("drag", &with_toe(0.0));
        history.begin("drag", &with_toe(0.4));
        history.commit(&with_toe(1.0));
        change(&mut history, "nothing", 1.0, 1.0);
        let (before, label) = history.undo(&with_toe(1.0)).unwrap();
        assert_eq!((before, label.as_str()), (with_toe(0.0), "drag"));
        assert_eq!(history.undo_label(), None);
    }

    #[test]
    fn cancel_gives_the_setup_from_before() {
        let mut history = History::new();
        history.begin("drag", &with_toe(0.0));
        assert!(history.is_open());
        assert_eq!(history.cancel(), Some(with_toe(0.0)));
        assert_eq!(history.cancel(), None);
        assert_eq!(history.undo(&with_toe(0.0)), None);
    }

    #[test]
    fn undo_takes_an_open_change_back() {
        let mut history = History::new();
        history.begin("drag", &with_toe(0.0));
        assert_eq!(history.undo_label(), Some("drag"));
        let (before, label) = history.undo(&with_toe(0.7)).unwrap();
        assert_eq!((before, label.as_str()), (with_toe(0.0), "drag"));
        assert_eq!(history.redo_label(), Some("drag"));
    }

    #[test]
    fn a_new_change_forgets_what_was_undone() {
        let mut history = History::new();
        let current = change(&mut history, "one", 0.0, 1.0);
        history.undo(&current).unwrap();
        change(&mut history, "other", 0.0, 3.0);
        assert_eq!(history.redo_label(), None);
    }

    #[test]
    fn the_steps_are_told_in_the_order_they_were_made() {
        let mut history = History::new();
        let mut current = with_toe(0.0);
        for (step, label) in ["one", "two", "three"].into_iter().enumerate() {
            let toe = f64::from(u32::try_from(step).unwrap());
            current = change(&mut history, label, toe, toe + 1.0);
        }
        (current, _) = history.undo(&current).unwrap();
        history.undo(&current).unwrap();
        let names = |steps: Vec<(&str, &Setup)>| -> Vec<String> {
            steps.iter().map(|(label, _)| (*label).to_owned()).collect()
        };
        assert_eq!(names(history.done().collect()), ["one"]);
        assert_eq!(history.done().next().unwrap().1, &with_toe(0.0));
        assert_eq!(names(history.undone().collect()), ["two", "three"]);
        assert_eq!(history.undone().next().unwrap().1, &with_toe(2.0));
    }

    #[test]
    fn the_oldest_steps_go_first() {
        let mut history = History::new();
        let count = MOST_STEPS + 3;
        let mut toe = 0.0;
        for step in 0..count {
            change(&mut history, &step.to_string(), toe, toe + 0.01);
            toe += 0.01;
        }
        let mut current = with_toe(toe);
        let mut last = String::new();
        let mut undone = 0;
        while let Some((setup, label)) = history.undo(&current) {
            (current, last) = (setup, label);
            undone += 1;
        }
        assert_eq!((undone, last.as_str()), (MOST_STEPS, "3"));
    }
}
