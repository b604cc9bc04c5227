//! Spelling: every word of every name is known to the vocabulary.
//!
//! A word is known where two different names have it, or where a data file lists it under `words`. What is left is
//! either a slip or a word that its author should look at once and then list.

use std::collections::{BTreeMap, HashSet};

use super::Problems;
use crate::entry::Standing;
use crate::problem::did_you_mean;
use crate::{Entry, Name};

/// Shorter words are not looked at: a slip in one is rarer than an abbreviation.
const SHORTEST: usize = 4;

/// Words that occur in one name alone and are not listed.
pub(super) fn spelling(problems: &mut Problems<'_>) {
    let vocabulary = problems.vocabulary;
    let mut stock: BTreeMap<String, HashSet<&str>> = BTreeMap::new();
    for entry in vocabulary.entries() {
        for text in texts(entry) {
            for word in words(text) {
                stock.entry(word).or_default().insert(text);
            }
        }
    }
    let listed: HashSet<&str> = vocabulary.words().iter().map(String::as_str).collect();
    let known = |word: &str| listed.contains(word) || stock.get(word).is_some_and(|names| names.len() > 1);
    for entry in vocabulary.entries() {
        for text in texts(entry) {
            for word in words(text).filter(|word| !known(word)) {
                let candidates = stock.keys().map(String::as_str).filter(|other| known(other));
                let near = did_you_mean(&word, candidates);
                let what = format!(
                    "has \"{word}\" in the name \"{text}\", a word that no other name has; correct it, or list it \
                     under `words`{near}"
                );
                problems.say(entry, None, &what);
            }
        }
    }
}

/// The names of an entry as they are written, plurals included, abbreviations left out.
fn texts(entry: &Entry) -> impl Iterator<Item = &str> {
    let spelled = entry.names.iter().filter(|name| name.standing != Standing::Abbreviation);
    spelled.flat_map(|Name { text, plural, .. }| std::iter::once(text).chain(plural)).map(String::as_str)
}

/// The words of a name in lower case.
pub(crate) fn words(text: &str) -> impl Iterator<Item = String> {
    text.split(|c: char| !c.is_alphabetic()).filter(|word| word.chars().count() >= SHORTEST).map(str::to_lowercase)
}
