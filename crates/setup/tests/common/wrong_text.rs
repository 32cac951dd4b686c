//! Texts that are wrong in one place, and what the reader must say of them.
//!
//! `§` in a text marks where the complaint must point; the place is counted here by itself.

use steerloft_setup::file::read_text;

/// A change to a sound text, with the complaint that must follow.
pub(crate) struct Case {
    find: &'static str,
    replace: &'static str,
    says: &'static str,
}

/// Replaces the first `find` by `replace`, which holds the mark.
pub(crate) const fn case(find: &'static str, replace: &'static str, says: &'static str) -> Case {
    Case {
        find,
        replace,
        says,
    }
}

/// The text without its mark, and the message expected of it.
pub(crate) fn marked(text: &str, says: &str) -> (String, String) {
    let Some(at) = text.find('§') else {
        panic!("the case marks its place");
    };
    let line = text[..at].split('\n').count();
    let column = text[..at].chars().rev().take_while(|c| *c != '\n').count() + 1;
    (
        text.replacen('§', "", 1),
        format!("{line}:{column}: {says}"),
    )
}

/// Asserts that a text is refused with this message.
pub(crate) fn assert_says(text: &str, expected: &str) {
    match read_text(text) {
        Ok(_) => panic!("was read, but should say: {expected}"),
        Err(error) => assert_eq!(error.to_string(), expected),
    }
}

/// Asserts the complaint of each case, as a change to a sound text.
pub(crate) fn check(text: &str, cases: &[Case]) {
    for case in cases {
        assert!(
            text.contains(case.find),
            "the car's text has {:?}",
            case.find
        );
        let (text, expected) = marked(&text.replacen(case.find, case.replace, 1), case.says);
        assert_says(&text, &expected);
    }
}
