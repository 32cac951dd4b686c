//! Answers that take longer than a frame: worked out on a thread of their own, and kept until the question changes.

use std::sync::mpsc::{Receiver, TryRecvError, channel};

use super::SetupId;

/// What most answers are about: an open setup as it stands. It changes with everything that may move a point of the car.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Moment {
    /// The open setup.
    pub setup: SetupId,
    /// The revision of its document.
    pub revision: u64,
}

/// The answer to a question, worked out away from the window.
///
/// One question is worked on at a time: while it changes faster than it can be answered, the answer follows behind.
#[derive(Debug)]
pub struct WorkedOut<Q, A> {
    /// The last answer with its question; no answer if a fault of the program's own prevented it.
    last: Option<(Q, Option<A>)>,
    asked: Option<(Q, Receiver<A>)>,
}

impl<Q, A> Default for WorkedOut<Q, A> {
    fn default() -> Self {
        Self {
            last: None,
            asked: None,
        }
    }
}

impl<Q: PartialEq, A: Send + 'static> WorkedOut<Q, A> {
    /// Asks a question unless it is answered or being worked on, and takes the answer that has come meanwhile. The work is
    /// done on another thread, which then wakes the window.
    pub fn ask(
        &mut self,
        question: Q,
        wake: impl FnOnce() + Send + 'static,
        work: impl FnOnce() -> A + Send + 'static,
    ) {
        self.take();
        let is_answered = self.last.as_ref().is_some_and(|(of, _)| *of == question);
        if is_answered || self.asked.is_some() {
            return;
        }
        let (sender, receiver) = channel();
        let worker = std::thread::Builder::new().name("answer".to_owned());
        let started = worker.spawn(move || {
            // Nobody waits any more if the window has been closed.
            let _ = sender.send(work());
            wake();
        });
        match started {
            Ok(_) => self.asked = Some((question, receiver)),
            Err(_) => self.last = Some((question, None)),
        }
    }

    /// The last answer, be it to the question asked last or to one before.
    #[must_use]
    pub fn last(&self) -> Option<&A> {
        self.last.as_ref()?.1.as_ref()
    }

    /// Whether a question is being worked on.
    #[must_use]
    pub const fn is_working(&self) -> bool {
        self.asked.is_some()
    }

    /// Takes the answer that has come meanwhile, without asking anything.
    pub fn take(&mut self) {
        let Some((_, receiver)) = &self.asked else {
            return;
        };
        let answer = match receiver.try_recv() {
            Ok(answer) => Some(answer),
            Err(TryRecvError::Disconnected) => None,
            Err(TryRecvError::Empty) => return,
        };
        self.last = self.asked.take().map(|(question, _)| (question, answer));
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::panic)]

    use super::*;

    /// Asks until the answer has come, and gives it.
    fn answer(answers: &mut WorkedOut<u32, u32>, question: u32) -> Option<u32> {
        let (sender, receiver) = channel();
        loop {
            let wake = sender.clone();
            let wake = move || wake.send(()).unwrap();
            answers.ask(question, wake, move || question * 2);
            if !answers.is_working() {
                return answers.last().copied();
            }
            receiver.recv().unwrap();
        }
    }

    #[test]
    fn an_answer_is_worked_out_once_for_each_question() {
        let mut answers = WorkedOut::default();
        assert_eq!(answers.last(), None);
        assert_eq!(answer(&mut answers, 4), Some(8));
        answers.ask(4, || {}, || panic!("answered before"));
        assert!(!answers.is_working());
        assert_eq!(answer(&mut answers, 5), Some(10));
    }

    #[test]
    fn a_fault_gives_no_answer_and_is_not_asked_for_again() {
        let mut answers: WorkedOut<u32, u32> = WorkedOut::default();
        answers.ask(1, || {}, || panic!("a fault, on purpose"));
        while answers.is_working() {
            std::thread::yield_now();
            answers.ask(1, || {}, || 3);
        }
        assert_eq!(answers.last(), None);
        answers.ask(1, || {}, || 3);
        assert!(!answers.is_working());
    }
}
