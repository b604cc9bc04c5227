//! Stems: what of them only instructs, what they ask for, and where the option stands in them.

use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions;
use crate::text::{Plain, Span};

/// The stem without what only instructs: `True or false:`, `Complete:`, `(1 = true, 0 = false)`, `EXCEPT`.
pub(super) fn without_instructions(stem: &Plain) -> Plain {
    let text = stem.text.as_str();
    let lower = text.to_lowercase();
    let mut start = 0;
    for head in lexicon::INSTRUCTIONS {
        if let Some(rest) = lower.strip_prefix(head) {
            let body = rest.trim_start_matches([':', '.', '?', ' ', '-', '–', '—']);
            start = text.len() - body.len();
        }
    }
    let mut end = text.len();
    if text.trim_end().ends_with(')')
        && let Some(open) = text.rfind('(')
        && open > start
    {
        end = open;
    }
    let body = text.get(start..end).unwrap_or_default();
    if let Some(at) = body.to_lowercase().rfind("except") {
        let tail = body.get(at + "except".len()..).unwrap_or_default();
        if tail.trim_matches([':', '?', '.', ' ', ',']).is_empty() {
            end = start + at;
        }
    }
    stem.slice(Span::new(start, end)).trimmed()
}

/// "Is the ulnar nerve mixed?" as "the ulnar nerve is mixed", "is the ulnar nerve motor or sensory?" as "the ulnar nerve is":
/// a question that begins with its verb, put as a statement. Any other is left as it is.
pub(super) fn declarative(stem: &Plain, knowledge: &Knowledge) -> Plain {
    let text = stem.text.trim_end_matches(['?', ' ']);
    let verb = text.split(' ').next().unwrap_or_default();
    let is_copula = matches!(&*verb.to_lowercase(), "is" | "are");
    if !is_copula && !matches!(&*verb.to_lowercase(), "does" | "do") {
        return stem.clone();
    }
    let mentions = mentions::mentions(text, &knowledge.vocabulary, &knowledge.names);
    let Some(subject) = mentions.list.first() else { return stem.clone() };
    let slice = |from: usize, to: usize| stem.slice(Span::new(from, to));
    let mut joined = slice(verb.len(), subject.span.end).trimmed();
    let rest = text.get(subject.span.end..).unwrap_or_default();
    let offers = rest.split(' ').any(|word| word == "or");
    if is_copula {
        let place = stem.to_source(Span::new(0, 0)).start;
        joined.push_as(" ", Span::new(place, place));
        joined.append(&slice(0, verb.len()));
    }
    if !(is_copula && offers) {
        joined.append(&slice(subject.span.end, text.len()));
    }
    joined
}

/// Words that ask for the option, longest first, and what may follow them of its noun.
pub(super) const ASKING: &[&str] = &[
    "which one of the following",
    "which of the following",
    "all of the following",
    "each of the following",
    "all of these",
    "which one of these",
    "which of these",
    "which one",
    "which",
    "what",
];
const ASKED: &[&str] = &[
    "muscles",
    "muscle",
    "nerves",
    "nerve",
    "spinal",
    "segments",
    "segment",
    "roots",
    "root",
    "joint",
    "joints",
    "structure",
    "structures",
    "branch",
    "branches",
    "movement",
    "cord",
    "trunk",
    "foramen",
    "landmark",
    "statements",
    "bone",
    "compartment",
    "opening",
    "canal",
    "plexus",
    "type",
    "kind",
];

/// The noun for which a stem asks, in the singular: "which *cord*".
pub(super) fn asked_noun(stem: &str) -> Option<String> {
    let lower = stem.to_lowercase();
    let (at, len) = asking(&lower)?;
    let rest = lower.get(at + len..)?.trim_start();
    let first = rest.split(|c: char| !c.is_alphabetic()).next().filter(|word| ASKED.contains(word))?;
    let one = if first == "plexus" { first } else { first.trim_end_matches('s') };
    Some(one.to_owned())
}

/// The nouns of a stem that an option may leave out, in the singular: "The *nerve* that leaves above piriformis is the".
pub(super) fn nouns_in(stem: &str) -> impl Iterator<Item = String> {
    let words = stem.split(|c: char| !c.is_alphabetic()).map(str::to_lowercase);
    words.filter(|word| ASKED.contains(&&**word)).map(|word| match &*word {
        "plexus" => word,
        _ => word.trim_end_matches('s').to_owned(),
    })
}

/// The words of a stem that ask for the option: where they begin, and how long they are.
fn asking(lower: &str) -> Option<(usize, usize)> {
    ASKING
        .iter()
        .filter_map(|word| whole_word(lower, word).map(|at| (at, word.len())))
        .min_by_key(|(at, len)| (*at, usize::MAX - len))
}

/// The stem with the option in the place of the question word, of the blank, or at the end.
pub(super) fn join(stem: &Plain, option: &Plain) -> Plain {
    let text = stem.text.trim_end_matches(['?', ':', ' ', '.']);
    let lower = text.to_lowercase();
    let part = |from: usize, to: usize| stem.slice(Span::new(from, to));
    let gap = |plain: &mut Plain, at: &Plain| {
        let place = at.to_source(Span::new(0, 0)).start;
        plain.push_as(" ", Span::new(place, place));
    };
    let mut joined = Plain::default();
    if let Some(blank) = lower.find("__").or_else(|| lower.find("----")) {
        let end =
            text.get(blank..).map_or(text.len(), |rest| blank + rest.len() - rest.trim_start_matches(['_', '-']).len());
        joined.append(&part(0, blank));
        joined.append(option);
        joined.append(&part(end, text.len()));
        return joined;
    }
    let Some((at, len)) = asking(&lower) else {
        joined.append(&part(0, text.len()));
        if stem.text.trim_end().ends_with('?') {
            // "Plantaris: nerve?"
            let place = option.to_source(Span::new(0, 0)).start;
            joined.push_as(":", Span::new(place, place));
        }
        gap(&mut joined, option);
        joined.append(option);
        return joined;
    };
    let mut end = at + len;
    while let Some(rest) = lower.get(end..).map(str::trim_start)
        && let Some(noun) = ASKED
            .iter()
            .find(|noun| rest.strip_prefix(**noun).is_some_and(|rest| !rest.starts_with(char::is_alphabetic)))
    {
        end = lower.len() - rest.len() + noun.len();
    }
    let rest = lower.get(end..).unwrap_or_default().trim_start();
    let auxiliary =
        ["does", "do", "did"].iter().find(|word| rest.strip_prefix(**word).is_some_and(|rest| rest.starts_with(' ')));
    if let Some(auxiliary) = auxiliary {
        // "Which muscle does the nerve supply": the option is the object.
        joined.append(&part(lower.len() - rest.len() + auxiliary.len(), text.len()));
        gap(&mut joined, option);
        joined.append(option);
        return joined;
    }
    joined.append(&part(0, at));
    joined.append(option);
    if rest.trim_start_matches("is ").trim_start_matches("are ").starts_with("not ") {
        // The denial is told by the item's turn, not by the sentence.
        let verb = rest.split(' ').next().unwrap_or_default();
        let from = lower.len() - rest.len();
        gap(&mut joined, option);
        joined.append(&part(from, from + verb.len()));
        joined.append(&part(from + verb.len() + " not".len(), text.len()));
    } else {
        gap(&mut joined, option);
        joined.append(&part(end, text.len()));
    }
    joined
}

pub(super) fn whole_word(text: &str, word: &str) -> Option<usize> {
    text.match_indices(word).map(|(at, _)| at).find(|at| {
        let before = text.get(..*at).and_then(|text| text.chars().next_back());
        let behind = text.get(at + word.len()..).and_then(|text| text.chars().next());
        !before.is_some_and(char::is_alphanumeric) && !behind.is_some_and(char::is_alphanumeric)
    })
}
