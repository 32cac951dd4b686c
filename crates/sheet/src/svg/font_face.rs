//! The faces that a document uses, embedded in it.

use std::fmt::Write as _;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;

use crate::font::{FAMILY, face};
use crate::page::Page;
use crate::paint::faces_used;

/// A style element with a rule for each face that the page uses; nothing for a page without writing.
pub(super) fn rules(page: &Page) -> String {
    let used = faces_used(page.placed.iter().map(|placed| &placed.drawing));
    let mut rules = String::new();
    for (bold, weight) in [(false, "normal"), (true, "bold")] {
        if used[usize::from(bold)] {
            let data = STANDARD.encode(face(bold).data);
            // Writing to a string cannot fail.
            let _ = writeln!(
                rules,
                "@font-face{{font-family:\"{FAMILY}\";font-weight:{weight};\
                 src:url(data:font/ttf;base64,{data})}}"
            );
        }
    }
    if rules.is_empty() {
        rules
    } else {
        format!("<style>\n{rules}</style>\n")
    }
}
