//! Claims of exam items: what the keyed option says when it is put into the stem.
//!
//! Stems and options assert nothing; their blocks are taken out of the ordinary reading. Only the key asserts: the option
//! that it names takes the place of the question word, of the blank, or of the end of the stem. *EXCEPT* and *NOT* turn the
//! statement round, and so does a key *False*.

use std::collections::BTreeSet;

use super::labels;
use super::sentences::{self, Memory, Scope};
use super::subjects::Above;
use super::{Claim, Key, What};
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions;
use crate::text::{Plain, Span};

/// A line of a block.
struct Line {
    block: BlockIx,
    plain: Plain,
    /// The number of the list item that the line begins, if it begins one.
    number: Option<u64>,
    /// The block is nested in another item.
    nested: bool,
}

/// An option of an item.
struct Choice {
    label: String,
    plain: Plain,
}

/// An exam item.
#[derive(Default)]
struct Item {
    number: Option<u64>,
    stem: Plain,
    options: Vec<Choice>,
    blocks: Vec<BlockIx>,
    key: Option<(Plain, BlockIx)>,
    /// It began with a list number, so nested numbers are options.
    from_list: bool,
}

/// Reads the items of a document: the claims of their keys, and the blocks that they are made of.
pub fn read(blocks: &Blocks, knowledge: &Knowledge) -> (Vec<Claim>, BTreeSet<BlockIx>) {
    let items = items(blocks);
    let mut claims = Vec::new();
    let mut consumed = BTreeSet::default();
    for item in &items {
        consumed.extend(item.blocks.iter().copied());
        claims.extend(key_claims(item, knowledge));
    }
    (claims, consumed)
}

fn lines(blocks: &Blocks) -> Vec<Line> {
    let mut list = Vec::new();
    for (at, block) in blocks.list.iter().enumerate() {
        let number = match block.kind {
            BlockKind::Item(number) => number,
            BlockKind::Paragraph | BlockKind::Heading(_) => None,
            _ => continue,
        };
        for (count, plain) in block.plain.lines().into_iter().enumerate() {
            if !plain.text.trim().is_empty() {
                list.push(Line {
                    block: at,
                    plain: plain.trimmed(),
                    number: number.filter(|_| count == 0),
                    nested: block.parent.is_some(),
                });
            }
        }
    }
    list
}

fn items(blocks: &Blocks) -> Vec<Item> {
    let mut done: Vec<Item> = Vec::new();
    let mut open: Option<Item> = None;
    let mut in_answers = false;
    for line in lines(blocks) {
        let is_heading = matches!(blocks.list.get(line.block).map(|block| block.kind), Some(BlockKind::Heading(_)));
        let text = line.plain.text.as_str();
        if is_heading {
            finish(&mut open, &mut done);
            let lower = text.to_lowercase();
            in_answers =
                ["answer", "key", "solution"].iter().any(|word| lower.trim_start_matches("the ").starts_with(word));
            if !in_answers && let Some(item) = question(&line) {
                open = Some(item);
            }
            continue;
        }
        if in_answers {
            let (number, value) = match (line.number, numbered(text)) {
                (Some(number), _) => (Some(number), line.plain.clone()),
                (None, Some((number, len))) => (Some(number), line.plain.slice(Span::new(len, text.len())).trimmed()),
                (None, None) => (None, line.plain.clone()),
            };
            let known =
                done.iter_mut().find(|item| item.number.is_some() && item.number == number && item.key.is_none());
            if let Some(item) = known {
                item.key = Some((value, line.block));
                item.blocks.push(line.block);
            }
            continue;
        }
        if let Some(value) = key_value(text) {
            if let Some(item) = &mut open {
                item.key = Some((line.plain.slice(Span::new(value, text.len())).trimmed(), line.block));
                item.blocks.push(line.block);
                finish(&mut open, &mut done);
            }
            continue;
        }
        if let Some(item) = &mut open {
            let lettered = option_label(text);
            let by_number = line.number.filter(|_| {
                (item.from_list && line.nested)
                    || (!item.from_list && line.block != item.blocks.first().copied().unwrap_or(0))
            });
            if let Some((label, len)) = lettered {
                item.options.push(Choice { label, plain: line.plain.slice(Span::new(len, text.len())).trimmed() });
                item.blocks.push(line.block);
                continue;
            }
            if let Some(number) = by_number {
                item.options.push(Choice { label: number.to_string(), plain: line.plain.clone() });
                item.blocks.push(line.block);
                continue;
            }
            if item.options.is_empty() && item.blocks.contains(&line.block) {
                item.stem.push_as(
                    " ",
                    Span::new(line.plain.to_source(Span::new(0, 0)).start, line.plain.to_source(Span::new(0, 0)).start),
                );
                item.stem.append(&line.plain);
                continue;
            }
        }
        if let Some(item) = question(&line) {
            finish(&mut open, &mut done);
            open = Some(item);
        } else if open.as_ref().is_some_and(|item| !item.options.is_empty() || item.blocks.last() != Some(&line.block))
        {
            finish(&mut open, &mut done);
        }
    }
    finish(&mut open, &mut done);
    done.retain(|item| item.key.is_some() || (item.options.len() > 1 && (!item.from_list || asks(&item.stem))));
    done
}

/// Whether a stem asks: a numbered list within a numbered list is an exam item only then.
fn asks(stem: &Plain) -> bool {
    let lower = stem.text.to_lowercase();
    let lower = lower.trim_end();
    lower.ends_with(['?', ':'])
        || lower.contains("__")
        || lower.contains("following")
        || ASKING.iter().any(|word| whole_word(lower, word).is_some())
        || lower.split_whitespace().count() > 5
}

/// Keeps an item that has options or a key; anything else was no item.
fn finish(open: &mut Option<Item>, done: &mut Vec<Item>) {
    done.extend(open.take());
}

/// A line that may begin an item: `Q12: …`, `3. …`.
fn question(line: &Line) -> Option<Item> {
    let text = line.plain.text.as_str();
    let (number, from) = match (line.number, question_number(text)) {
        (_, Some((number, len))) => (Some(number), len),
        (Some(number), None) if !line.nested => (Some(number), 0),
        _ if numbered(text).is_some_and(|(_, len)| len < text.len()) => {
            let (number, len) = numbered(text)?;
            (Some(number), len)
        }
        _ => {
            // `3. The nerve arises from the:` is a question as `The nerve arises from ____` is.
            let (number, from) = numbered(text).map_or((None, 0), |(number, len)| (Some(number), len));
            let stem = text.get(from..).unwrap_or_default().trim_end();
            let is_question = stem.ends_with('?')
                || stem.to_lowercase().starts_with("true or false")
                || stem.contains("____")
                || (number.is_some() && stem.ends_with(':'));
            if !is_question {
                return None;
            }
            (number, from)
        }
    };
    Some(Item {
        number,
        stem: line.plain.slice(Span::new(from, text.len())).trimmed(),
        blocks: vec![line.block],
        from_list: line.number.is_some(),
        ..Item::default()
    })
}

/// `Q12:`, `Question 3.`, `Item 4:`; the number and the length.
fn question_number(text: &str) -> Option<(u64, usize)> {
    let lower = text.to_ascii_lowercase();
    let head = ["question", "item", "q"].iter().find(|head| lower.starts_with(*head))?;
    let (number, len) = numbered(text.get(head.len()..)?)?;
    Some((number, head.len() + len))
}

/// A number with its punctuation at the beginning of a text; the number and the length.
fn numbered(text: &str) -> Option<(u64, usize)> {
    let start = text.len() - text.trim_start_matches([' ', '.', '#']).len();
    let digits = text.get(start..)?.chars().take_while(char::is_ascii_digit).count();
    let number = text.get(start..start + digits)?.parse().ok()?;
    let rest = text.get(start + digits..)?;
    let len = rest.len() - rest.trim_start_matches([':', '.', ')', ' ', '-', '–']).len();
    (len > 0 || rest.is_empty()).then_some((number, start + digits + len))
}

/// `B) …`, `b. …`, `(b) …`; the label and the length.
fn option_label(text: &str) -> Option<(String, usize)> {
    let bare = text.strip_prefix('(').unwrap_or(text);
    let letter = bare.chars().next().filter(|c| c.is_ascii_alphabetic() && c.to_ascii_lowercase() <= 'h')?;
    let rest = bare.get(1..)?;
    let rest = rest.strip_prefix([')', '.'])?;
    let body = rest.trim_start();
    (rest.len() > body.len() && !body.is_empty()).then(|| (letter.to_string(), text.len() - body.len()))
}

/// Where the value of a key line begins: `Answer: B`.
fn key_value(text: &str) -> Option<usize> {
    let lower = text.to_lowercase();
    let head = lexicon::KEY_HEADS.iter().find(|head| lower.starts_with(*head))?;
    let rest = text.get(head.len()..)?;
    let value = rest.trim_start_matches([' ', '.']).strip_prefix([':', '=', '–', '—', '-'])?;
    Some(text.len() - value.len())
}

/// How a key answers.
enum Answer<'i> {
    Option(&'i Choice),
    Text(Plain),
    True,
    False,
}

fn answer<'i>(item: &'i Item, key: &Plain) -> Option<Answer<'i>> {
    let text = key.text.trim();
    if text.is_empty() || text.starts_with('[') {
        return None;
    }
    // "1 (1 = true, 0 = false)": what stands in brackets explains the key.
    let told = if item.options.is_empty() { text.split_once(" (").map_or(text, |(told, _)| told) } else { text };
    let bare = told.trim_end_matches(['.', ')', ' ']).trim_start_matches('(');
    if item.options.len() > 1 {
        let by_label = |label: &str| item.options.iter().find(|choice| choice.label.eq_ignore_ascii_case(label));
        if let Some(choice) = by_label(bare) {
            return Some(Answer::Option(choice));
        }
        if let Some((label, _)) = option_label(text)
            && let Some(choice) = by_label(&label)
        {
            return Some(Answer::Option(choice));
        }
        if let Some((number, len)) = numbered(text)
            && len < text.len()
            && let Some(choice) = by_label(&number.to_string())
        {
            return Some(Answer::Option(choice));
        }
        return item
            .options
            .iter()
            .find(|choice| choice.plain.text.trim().eq_ignore_ascii_case(bare))
            .map(Answer::Option);
    }
    match &*bare.to_lowercase() {
        word if lexicon::is_true(word) => Some(Answer::True),
        word if lexicon::is_false(word) => Some(Answer::False),
        "a" | "b" | "c" | "d" | "e" => None,
        _ => Some(Answer::Text(key.clone())),
    }
}

fn key_claims(item: &Item, knowledge: &Knowledge) -> Vec<Claim> {
    let Some((key, block)) = &item.key else { return Vec::new() };
    let Some(answer) = answer(item, key) else { return Vec::new() };
    let stem = without_instructions(&item.stem);
    let noun = asked_noun(&stem.text);
    // "Which cord? – medial": the option leaves out the noun that was asked for.
    let named = |option: &Plain| -> Plain {
        let mut option = option.clone();
        if let Some(noun) = &noun
            && !knowledge.names.lookup(&format!("{} {noun}", option.text.trim_end_matches(['.', ' ']))).is_empty()
        {
            let end = option.to_source(Span::new(0, option.text.len())).end;
            option.push_as(&format!(" {noun}"), Span::new(end, end));
        }
        option
    };
    let (statement, option, mut turned) = match &answer {
        Answer::True => (stem.clone(), None, false),
        Answer::False => (stem.clone(), None, true),
        Answer::Option(choice) => (join(&stem, &named(&choice.plain)), Some(&choice.plain), false),
        Answer::Text(plain) => (join(&stem, &named(plain)), Some(plain), false),
    };
    let lower = item.stem.text.to_lowercase();
    let is_except = lower.split(|c: char| !c.is_alphabetic()).any(|word| word == "except")
        || item.stem.text.contains(" NOT ")
        || lower.contains("which of the following is not")
        || lower.contains("which of the following are not");
    turned ^= is_except;
    let mentions = mentions::mentions(&statement.text, &knowledge.vocabulary, &knowledge.names);
    let scope = Scope {
        vocabulary: &knowledge.vocabulary,
        names: &knowledge.names,
        relations: &knowledge.relations,
        plain: &statement,
        mentions: &mentions,
        block: *block,
        subjects: &[],
        of_vessels: false,
    };
    let key_span = key.to_source(Span::new(0, key.text.len()));
    let option_span = option.map(|plain| plain.to_source(Span::new(0, plain.text.len())));
    let mut claims = sentences::read(&scope, 0, &mut Memory::default());
    if claims.is_empty() {
        // "Heads of quadriceps femoris: four", "Elbow joint: hinge"
        claims = labels::read(&scope, &Above::default());
    }
    claims.retain(|claim| option_span.is_none_or(|span| claim.parts.iter().any(|part| span.contains(part.span))));
    for claim in &mut claims {
        claim.negated ^= turned;
        claim.span = key_span;
        let part = option_span.and_then(|span| claim.parts.iter().position(|part| span.contains(part.span)));
        let role = part.and_then(|part| claim.parts.get(part)).map(|part| part.role);
        let options = item
            .options
            .iter()
            .filter_map(|choice| {
                let mentions = mentions::mentions(&choice.plain.text, &knowledge.vocabulary, &knowledge.names);
                let scope = Scope { plain: &choice.plain, mentions: &mentions, ..scope };
                let [side] = sentences::values(&scope, 0, mentions.tokens.len(), role?).try_into().ok()?;
                let sentences::Side { what, .. } = side;
                let shown = if key.text.trim().len() <= 2 {
                    choice.label.clone()
                } else {
                    format!("{}) {}", choice.label, choice.plain.text.trim())
                };
                Some((shown, what))
            })
            .collect::<Vec<(String, What)>>();
        claim.key = Some(Box::new(Key { span: key_span, options, part }));
    }
    claims
}

/// The stem without what only instructs: `True or false:`, `Complete:`, `(1 = true, 0 = false)`, `EXCEPT`.
fn without_instructions(stem: &Plain) -> Plain {
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

/// Words that ask for the option, longest first, and what may follow them of its noun.
const ASKING: &[&str] = &[
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
fn asked_noun(stem: &str) -> Option<String> {
    let lower = stem.to_lowercase();
    let (at, len) = asking(&lower)?;
    let rest = lower.get(at + len..)?.trim_start();
    let first = rest.split(|c: char| !c.is_alphabetic()).next().filter(|word| ASKED.contains(word))?;
    let one = if first == "plexus" { first } else { first.trim_end_matches('s') };
    Some(one.to_owned())
}

/// The words of a stem that ask for the option: where they begin, and how long they are.
fn asking(lower: &str) -> Option<(usize, usize)> {
    ASKING
        .iter()
        .filter_map(|word| whole_word(lower, word).map(|at| (at, word.len())))
        .min_by_key(|(at, len)| (*at, usize::MAX - len))
}

/// The stem with the option in the place of the question word, of the blank, or at the end.
fn join(stem: &Plain, option: &Plain) -> Plain {
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

fn whole_word(text: &str, word: &str) -> Option<usize> {
    text.match_indices(word).map(|(at, _)| at).find(|at| {
        let before = text.get(..*at).and_then(|text| text.chars().next_back());
        let behind = text.get(at + word.len()..).and_then(|text| text.chars().next());
        !before.is_some_and(char::is_alphanumeric) && !behind.is_some_and(char::is_alphanumeric)
    })
}
