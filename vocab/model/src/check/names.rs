//! Names: two entries may share one only where both say so, and only where another has it.

use std::collections::{HashMap, HashSet};

use super::Problems;
use crate::EntryId;
use crate::entry::Standing;

/// One use of a name: who has it, whether it is marked, and how it is written.
struct Use<'v> {
    owner: EntryId,
    marked: bool,
    text: &'v str,
    standing: Standing,
}

/// Names that two entries share without a mark, marks without a partner, and names that an entry has twice.
pub(super) fn clashes(problems: &mut Problems<'_>) {
    let vocabulary = problems.vocabulary;
    let mut uses: HashMap<String, Vec<Use<'_>>> = HashMap::new();
    for (owner, entry) in vocabulary.iter() {
        for name in &entry.names {
            let here = Use { owner, marked: name.ambiguous, text: &name.text, standing: name.standing };
            uses.entry(plain(&name.text)).or_default().push(here);
        }
    }
    // A part is called by its short name wherever its whole is known from context.
    let shorts: HashSet<String> =
        vocabulary.entries().iter().filter_map(|entry| entry.short.as_deref()).map(plain).collect();
    for list in uses.values() {
        for (number, here) in list.iter().enumerate() {
            let entry = vocabulary.entry(here.owner);
            let same = list.iter().filter(|other| other.owner == here.owner);
            let others: Vec<&str> = list
                .iter()
                .filter(|other| other.owner != here.owner)
                .map(|other| &*vocabulary.entry(other.owner).id)
                .collect();
            if !others.is_empty() && !same.clone().any(|other| other.marked) {
                let what =
                    format!("shares the name \"{}\" with {} without `ambiguous = true`", here.text, others.join(", "));
                problems.say(entry, None, &what);
            }
            if others.is_empty() && here.marked && !shorts.contains(&plain(here.text)) {
                let what = format!("marks the name \"{}\" as ambiguous, and no other entry has it", here.text);
                problems.say(entry, None, &what);
            }
            let again = |other: &Use<'_>| {
                let latin = (other.standing == Standing::Latin) != (here.standing == Standing::Latin);
                other.owner == here.owner && other.text == here.text && !latin
            };
            if list.iter().take(number).any(again) {
                problems.say(entry, None, &format!("has the name \"{}\" twice", here.text));
            }
        }
    }
}

/// A name without letter case, articles and punctuation.
pub(crate) fn plain(name: &str) -> String {
    let words: Vec<String> = name
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty() && !word.eq_ignore_ascii_case("the"))
        .map(str::to_lowercase)
        .collect();
    words.join(" ")
}
