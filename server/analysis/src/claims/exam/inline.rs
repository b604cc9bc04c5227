//! The key that stands on the line of a statement: "The ulnar nerve supplies deltoid. (F)", "F – The ulnar nerve supplies
//! deltoid."

use crate::lexicon;
use crate::text::Span;

/// The key behind a statement and where it stands in the visible text. Without a frame over it only a bracket makes it one;
/// below a frame an explanation may follow it: "… False: it is supplied by the axillary nerve."
pub fn keyed(text: &str, in_frame: bool) -> Option<(bool, Span)> {
    let bare = text.trim_end_matches(['.', ' ', ')', ']', '*', '_']);
    let start = bare
        .rfind([' ', '(', '[', '—', '–', '→'])
        .map_or(0, |at| at + bare.get(at..).and_then(|rest| rest.chars().next()).map_or(1, char::len_utf8));
    let verdict = |word: &str| {
        let lower = word.to_lowercase();
        let is_word = !word.is_empty() && word.chars().all(char::is_alphabetic);
        let is = lexicon::is_true(&lower).then_some(true).or(lexicon::is_false(&lower).then_some(false));
        is.filter(|_| is_word)
    };
    let is_set_off =
        |before: &str| before.ends_with(['(', '[']) || before.trim_end().ends_with(['—', '–', '→', '.', ':', '?']);
    if let Some(is_true) = verdict(bare.get(start..)?) {
        let before = bare.get(..start)?;
        let is_key = is_set_off(before) && (in_frame || before.ends_with(['(', '[']));
        return is_key.then(|| (is_true, Span::new(start, bare.len())));
    }
    if !in_frame {
        return None;
    }
    let mut at = 0;
    text.split_inclusive(|c: char| !c.is_alphabetic()).find_map(|piece| {
        let from = at;
        at += piece.len();
        let word = piece.trim_end_matches(|c: char| !c.is_alphabetic());
        let is_capital = word.starts_with(char::is_uppercase);
        let is_true = verdict(word).filter(|_| is_capital && is_set_off(text.get(..from).unwrap_or_default()))?;
        let behind = text.get(from + word.len()..)?.trim_start_matches([')', ']', ' ']);
        let explains = behind.starts_with(['.', ',', ':', ';', '–', '—', '-', '(']);
        explains.then(|| (is_true, Span::new(from, from + word.len())))
    })
}

/// The key before a statement: `T – …`, `(F) …`, `False: …`. Words that point back explain another key, and of `T F …` one
/// is still to be struck out.
pub fn keyed_before(text: &str) -> Option<(bool, Span)> {
    let start = text.len() - text.trim_start_matches(['(', '[', ' ', '*', '_']).len();
    let body = text.get(start..)?;
    let word = body.split(|c: char| !c.is_alphabetic()).next().filter(|word| !word.is_empty())?;
    let lower = word.to_lowercase();
    let is_true = lexicon::is_true(&lower);
    let end = start + word.len();
    let behind = text.get(end..)?;
    let stated = behind.trim_start_matches([')', ']', '.', ':', ' ', '–', '—', '-', '→', '*', '_', '\t']);
    let is_set_off = behind.len() > stated.len() && word.starts_with(char::is_uppercase);
    let first = stated.split(|c: char| !c.is_alphabetic()).next().unwrap_or_default().to_lowercase();
    let explains = lexicon::is_conjunction(&first)
        || lexicon::is_pronoun(&first)
        || lexicon::begins_reason(&first)
        || lexicon::is_true(&first)
        || lexicon::is_false(&first)
        || first.is_empty();
    ((is_true || lexicon::is_false(&lower)) && is_set_off && !explains).then(|| (is_true, Span::new(start, end)))
}
