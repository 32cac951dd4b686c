//! Dialogs that answer from a script, for tests and for making pictures.

use std::collections::VecDeque;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};

use super::{FileAnswer, FileDialogs, FileRequest, Wake};

/// The script: answers still to be given, and questions asked so far.
#[derive(Debug, Clone, Default)]
pub struct ScriptedAnswers(Arc<Mutex<Script>>);

#[derive(Debug, Default)]
struct Script {
    answers: VecDeque<Option<PathBuf>>,
    asked: Vec<FileRequest>,
}

impl ScriptedAnswers {
    /// Adds the answer to the next question that has none yet: a file, or none to close the question.
    pub fn push(&self, answer: Option<PathBuf>) {
        self.script().answers.push_back(answer);
    }

    /// Every question asked so far.
    #[must_use]
    pub fn asked(&self) -> Vec<FileRequest> {
        self.script().asked.clone()
    }

    fn script(&self) -> std::sync::MutexGuard<'_, Script> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Answers each question with the next answer of the script; a question beyond its end is closed without one.
#[derive(Debug, Default)]
pub struct ScriptedDialogs {
    script: ScriptedAnswers,
    answer: Option<FileAnswer>,
}

impl ScriptedDialogs {
    /// Dialogs that follow a script.
    #[must_use]
    pub fn new(script: ScriptedAnswers) -> Self {
        Self {
            script,
            answer: None,
        }
    }
}

impl FileDialogs for ScriptedDialogs {
    fn ask(&mut self, request: FileRequest, _window: &eframe::Frame, wake: Wake) {
        let mut script = self.script.script();
        script.asked.push(request);
        let chosen = script.answers.pop_front().flatten();
        self.answer = Some(chosen.map_or(FileAnswer::Closed, FileAnswer::Chosen));
        wake();
    }

    fn answer(&mut self) -> Option<FileAnswer> {
        self.answer.take()
    }

    fn is_open(&self) -> bool {
        self.answer.is_some()
    }
}
