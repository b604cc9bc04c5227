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
    for [open, close] in [['[', ']'], ['(', ')']] {
        if text.get(..end).is_some_and(|text| text.trim_end().ends_with(close))
            && let Some(open) = text.get(..end).and_then(|text| text.rfind(open))
            && open > start
        {
            end = open;
        }
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

/// Where what is asked for begins in a stem that asks in the imperative: "Name two *muscles supplied by …*".
pub(super) fn asked_by_verb(stem: &str) -> Option<usize> {
    let lower = stem.to_lowercase();
    let verb = lexicon::ASKING_VERBS
        .iter()
        .find(|verb| lower.strip_prefix(**verb).is_some_and(|rest| rest.starts_with(' ')))?;
    let mut at = verb.len();
    loop {
        let rest = lower.get(at..)?.trim_start();
        at = lower.len() - rest.len();
        let word = rest.split(' ').next()?;
        if !lexicon::ASKED_FOR.contains(&word) {
            return (at < lower.len() && lower.len() == stem.len()).then_some(at);
        }
        at += word.len();
    }
}

/// Whether a stem is a question for one thing: "Which nerve supplies …?", not "Which muscles …?".
pub(super) fn asks_for_one(stem: &str) -> bool {
    let lower = stem.to_lowercase();
    let Some((at, len)) = asking(&lower).filter(|_| lower.trim_end().ends_with('?')) else { return false };
    let noun = lower.get(at + len..).and_then(|rest| rest.split_whitespace().next()).unwrap_or_default();
    lower.get(at..at + len).is_some_and(|word| word.starts_with("which"))
        && ASKED.contains(&noun)
        && (!noun.ends_with('s') || noun == "plexus")
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
    "how many",
    "which",
    "what",
    "where",
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
    if let Some(from) = asked_by_verb(text) {
        // "Name the nerve that supplies deltoid": the nerve that supplies deltoid is …
        let place = stem.to_source(Span::new(0, 0)).start;
        joined.push_as("The ", Span::new(place, place));
        joined.append(&part(from, text.len()));
        let is_many = asked_noun_is_plural(lower.get(from..).unwrap_or_default());
        joined.push_as(if is_many { " are " } else { " is " }, Span::new(place, place));
        joined.append(option);
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
    let asked = Span::new(at, at + len).of(&lower);
    let behind = lower.get(at + len..).unwrap_or_default();
    if at == 0
        && let Some((subject, verb, tail)) = turned_question(asked, behind)
    {
        // "How many heads does triceps have?": triceps have … heads
        let within = |span: Span| part(len + span.start, len + span.end).trimmed();
        joined.append(&within(subject));
        let place = option.to_source(Span::new(0, 0)).start;
        joined.push_as(&format!(" {verb} "), Span::new(place, place));
        joined.append(option);
        if !tail.is_empty() {
            gap(&mut joined, option);
            joined.append(&within(tail));
        }
        return joined;
    }
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
    let is_case = part(0, at).text.trim_end().ends_with(['.', ':']);
    if is_case && rest.is_empty() && part(at, end).text.to_lowercase().ends_with("nerve") {
        // "He cannot extend the wrist. Which nerve?"
        let place = option.to_source(Span::new(0, 0)).start;
        joined.push_as(" is injured", Span::new(place, place));
        return joined;
    }
    let is_turned = stem.text.contains(" NOT ")
        || lower.contains("of the following")
        || lexicon::verdict_asked(&stem.text) == Some(false);
    if is_turned && rest.trim_start_matches("is ").trim_start_matches("are ").starts_with("not ") {
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

/// What a question with its verb before its subject says: the place of the subject, the verb, and what stands behind the
/// option. `rest` is what stands behind the words that ask.
fn turned_question(asked: &str, rest: &str) -> Option<(Span, String, Span)> {
    let auxiliary = |word: &str| whole_word(rest, word).map(|at| (at, at + word.len()));
    let nothing = Span::new(rest.len(), rest.len());
    match asked {
        "how many" => {
            if let Some((at, end)) = auxiliary("has").filter(|(_, end)| *end < rest.trim_end().len()) {
                return Some((Span::new(end, rest.len()), "has".to_owned(), Span::new(0, at)));
            }
            let (at, end) = auxiliary("does").or_else(|| auxiliary("do"))?;
            let subject = rest.get(end..)?.trim_end();
            let subject = subject.strip_suffix(" have").or_else(|| subject.strip_suffix(" possess"))?;
            Some((Span::new(end, end + subject.len()), "has".to_owned(), Span::new(0, at)))
        }
        "where" => {
            let begins = |word: &str| rest.trim_start().strip_prefix(word).is_some_and(|rest| rest.starts_with(' '));
            let (_, end) = ["does", "do"].into_iter().find(|word| begins(word)).and_then(auxiliary)?;
            let subject = rest.get(end..)?.trim_end();
            let (_, verb) = subject.rsplit_once(' ')?;
            let way = match verb {
                "from" | "to" | "on" | "through" | "into" => "",
                "arise" | "originate" | "come" | "start" | "begin" | "spring" => "from",
                "insert" | "attach" | "end" => "on",
                _ => return None,
            };
            Some((Span::new(end, end + subject.len()), way.to_owned(), nothing))
        }
        "what" | "which" => {
            let kind = ["type", "kind", "sort", "class"].into_iter();
            let mut kind = kind;
            let kind = kind.find_map(|noun| rest.trim_start().strip_prefix(noun)?.strip_prefix(" of "))?;
            let from = rest.len() - kind.len();
            let verb = [" is ", " are "].into_iter().find_map(|verb| Some((kind.find(verb)?, verb)));
            let (at, verb) = verb?;
            let subject = from + at + verb.len();
            let is_named = rest.get(subject..).is_some_and(|subject| !subject.trim().is_empty());
            is_named.then(|| (Span::new(subject, rest.len()), verb.trim().to_owned(), nothing))
        }
        _ => None,
    }
}

/// Whether what is asked for begins with a noun in the plural: "muscles supplied by …", "roots of …".
fn asked_noun_is_plural(asked: &str) -> bool {
    let before = asked.split([',', ';']).next().unwrap_or_default();
    let noun = before.split(' ').find(|word| ASKED.contains(word));
    noun.is_some_and(|noun| noun.ends_with('s') && !noun.ends_with("us"))
}

pub(super) fn whole_word(text: &str, word: &str) -> Option<usize> {
    text.match_indices(word).map(|(at, _)| at).find(|at| {
        let before = text.get(..*at).and_then(|text| text.chars().next_back());
        let behind = text.get(at + word.len()..).and_then(|text| text.chars().next());
        !before.is_some_and(char::is_alphanumeric) && !behind.is_some_and(char::is_alphanumeric)
    })
}
