//! The key that stands behind a statement on its own line: "The ulnar nerve supplies deltoid. (F)".

use crate::lexicon;
use crate::text::Span;

/// The key behind a statement and where it stands in the visible text. Without a frame over it only a bracket makes it one.
pub fn keyed(text: &str, in_frame: bool) -> Option<(bool, Span)> {
    let bare = text.trim_end_matches(['.', ' ', ')', ']', '*', '_']);
    let word = bare.rsplit([' ', '(', '[', '—', '–', '→']).next()?;
    let before = bare.strip_suffix(word).filter(|_| word.chars().all(char::is_alphabetic))?;
    let is_true = if lexicon::is_true(&word.to_lowercase()) {
        true
    } else if lexicon::is_false(&word.to_lowercase()) {
        false
    } else {
        return None;
    };
    let is_set_off = before.ends_with(['(', '[']) || before.trim_end().ends_with(['—', '–', '→', '.']);
    (is_set_off && (in_frame || before.ends_with(['(', '[']))).then(|| (is_true, Span::new(before.len(), bare.len())))
}
