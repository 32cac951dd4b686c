//! Files that other programs change while they are open.

use eframe::egui::Context;
use steerloft_setup::file::Standing;

use super::{Leave, Steerloft};
use crate::state::{OpenSetup, SetupId};
use crate::ui::messages::Message;
use crate::ui::{DiskAnswer, OverwriteAnswer};

/// A save that would write over what another program has put there.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Overwrite {
    pub(super) id: SetupId,
    pub(super) then: Option<Leave>,
}

impl Steerloft {
    /// Looks after the files of all open setups when the window comes to the front.
    pub(super) fn look_after_files(&mut self, ctx: &Context) {
        let in_front = ctx.input(|input| input.focused);
        if !in_front || std::mem::replace(&mut self.was_in_front, in_front) {
            self.was_in_front = in_front;
            return;
        }
        let open = self.bench.open_setups().iter();
        self.changed_files = open
            .map(|open| (open.id(), open.document().standing()))
            .filter(|(_, standing)| *standing != Standing::Same)
            .collect();
    }

    /// The setup whose file is to be asked about, and whether that file is gone.
    pub(super) fn changed_file(&self) -> Option<(&OpenSetup, bool)> {
        self.changed_files.iter().find_map(|(id, standing)| {
            let open = self.bench.get(*id)?;
            Some((open, *standing == Standing::Gone))
        })
    }

    pub(super) fn answer_disk(&mut self, id: SetupId, answer: DiskAnswer) {
        self.changed_files.retain(|(other, _)| *other != id);
        match answer {
            DiskAnswer::TakeFile => {
                if let Err(error) = self.bench.take_file(id) {
                    self.message = Some(Message::not_opened(&error));
                }
            }
            DiskAnswer::KeepBench => self.bench.keep_bench(id),
        }
    }

    /// Whether a save to the setup's own file would write over what another program has put there.
    pub(super) fn would_overwrite(&self, id: SetupId) -> bool {
        let open = self.bench.get(id);
        open.is_some_and(|open| open.document().standing() == Standing::Changed)
    }

    pub(super) fn answer_overwrite(
        &mut self,
        answer: OverwriteAnswer,
        ctx: &Context,
        window: &eframe::Frame,
    ) {
        let Some(Overwrite { id, then }) = self.overwrite.take() else {
            return;
        };
        match answer {
            OverwriteAnswer::Overwrite => {
                let open = self.bench.get(id);
                if let Some(path) = open.and_then(|open| open.document().path()) {
                    let path = path.to_owned();
                    self.save_to(id, &path, then, ctx);
                }
            }
            OverwriteAnswer::SaveAs => self.ask_where_to_save(id, then, ctx, window),
            OverwriteAnswer::Cancel => {}
        }
    }
}
