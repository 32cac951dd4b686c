//! Ways to leave open setups, and what is asked before that.

use crate::state::{Bench, SetupId};

/// What is left.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Leave {
    /// One setup is taken off the bench.
    Close(SetupId),
    /// The window closes. The changes of these setups are to be let go.
    Quit {
        /// Those about which the user has said so.
        let_go: Vec<SetupId>,
    },
}

impl Leave {
    /// The window closes, and nothing has been asked yet.
    pub(super) fn quit() -> Self {
        Self::Quit { let_go: Vec::new() }
    }

    /// The setup about whose changes must be asked next, if there is one.
    pub(super) fn unsaved(&self, bench: &Bench) -> Option<SetupId> {
        let mut open = bench.open_setups().iter();
        open.find(|open| {
            let concerned = match self {
                Self::Close(id) => open.id() == *id,
                Self::Quit { let_go } => !let_go.contains(&open.id()),
            };
            concerned && open.document().is_changed()
        })
        .map(crate::state::OpenSetup::id)
    }

    /// Notes that the changes of a setup are to be let go.
    pub(super) fn let_go(&mut self, id: SetupId) {
        if let Self::Quit { let_go } = self {
            let_go.push(id);
        }
    }
}
