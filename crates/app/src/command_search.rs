//! Looking for a command by what it is called or does.

use crate::commands::Command;

/// Marks of a word of the search that is nowhere in a command.
const NOWHERE: u32 = u32::MAX;

/// The commands that have every word of the search in them, the best match first; all of them for an empty search.
///
/// A word may start a word of the command's text, lie within it, stand in the sentence that says what the command does,
/// or be its letters in their order with others between.
#[must_use]
pub fn search(query: &str) -> Vec<Command> {
    let words: Vec<String> = query.split_whitespace().map(str::to_lowercase).collect();
    let mut found: Vec<(u32, Command)> = Command::all()
        .filter_map(|command| {
            let marks = words.iter().map(|word| marks(word, command));
            let total = marks.fold(0, u32::saturating_add);
            (total < NOWHERE).then_some((total, command))
        })
        .collect();
    found.sort_by_key(|(marks, _)| *marks);
    found.into_iter().map(|(_, command)| command).collect()
}

/// How far a word is from a command: less is nearer.
fn marks(word: &str, command: Command) -> u32 {
    let text = command.text().to_lowercase();
    let sentence = format!("{} {}", command.group().title(), command.tooltip()).to_lowercase();
    if text.starts_with(word) {
        0
    } else if starts_a_word(&text, word) {
        1
    } else if text.contains(word) {
        2
    } else if starts_a_word(&sentence, word) {
        4
    } else if sentence.contains(word) {
        6
    } else if has_in_order(&text, word) {
        9
    } else {
        NOWHERE
    }
}

fn starts_a_word(text: &str, word: &str) -> bool {
    text.split(|c: char| !c.is_alphanumeric())
        .any(|part| part.starts_with(word))
}

fn has_in_order(text: &str, word: &str) -> bool {
    let mut letters = text.chars();
    word.chars().all(|wanted| letters.any(|c| c == wanted))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theme::ThemeChoice;

    #[test]
    fn an_empty_search_finds_all() {
        assert_eq!(search(" ").len(), Command::all().count());
    }

    #[test]
    fn what_it_is_called_comes_before_what_it_does() {
        assert_eq!(search("undo").first(), Some(&Command::Undo));
        assert_eq!(
            search("dark").first(),
            Some(&Command::Theme(ThemeChoice::Dark))
        );
        assert_eq!(search("save as").first(), Some(&Command::SaveAs));
        let back = search("last change back");
        assert_eq!(back.first(), Some(&Command::Undo), "{back:?}");
    }

    #[test]
    fn letters_in_their_order_are_enough() {
        assert!(search("ftvw").contains(&Command::FitViews));
        assert!(search("zzzz").is_empty());
    }
}
