//! Items: a stem with its options and the key that names one of them, wherever the key stands.

use super::Choice;
use super::inline::keyed;
use super::lines::{
    Line, bare_label, key_value, numbered, option_label, options_in_line, question_number, row_of_answers,
    row_of_options,
};
use super::marked::{is_marked, without_mark};
use super::stems::{ASKING, asked_by_verb, whole_word, without_instructions};
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::lexicon;
use crate::text::{Mark, Plain, Span};
use std::collections::BTreeSet;

/// An exam item.
#[derive(Default)]
pub(super) struct Item {
    pub(super) number: Option<u64>,
    pub(super) stem: Plain,
    pub(super) options: Vec<Choice>,
    pub(super) blocks: Vec<BlockIx>,
    pub(super) key: Option<(Plain, BlockIx)>,
    /// The heading that it stands under, in lower case.
    pub(super) section: String,
    /// What stands behind the key in its block: an explanation.
    pub(super) rest: Vec<Plain>,
    /// It began with a list number, so nested numbers are options.
    pub(super) from_list: bool,
}

pub(super) fn items(lines: &[Line], blocks: &Blocks, taken: &BTreeSet<BlockIx>) -> Vec<Item> {
    let mut done: Vec<Item> = Vec::new();
    let mut open: Option<Item> = None;
    let mut in_answers = false;
    let mut section = String::new();
    let lines: Vec<&Line> = lines.iter().filter(|line| !taken.contains(&line.block)).collect();
    for (place, line) in lines.iter().enumerate() {
        let is_heading = matches!(blocks.list.get(line.block).map(|block| block.kind), Some(BlockKind::Heading(_)));
        let text = line.plain.text.as_str();
        if is_heading {
            finish(&mut open, &mut done);
            section = text.to_lowercase();
            in_answers = lexicon::is_heading_of_answers(text);
            if !in_answers && let Some(item) = question(line) {
                open = Some(Item { section: section.clone(), ..item });
            }
            continue;
        }
        if let Some((head, row)) = row_of_answers(&line.plain)
            && (in_answers || row.len() > 2 || text.starts_with('Q') || lexicon::is_heading_of_answers(head))
        {
            finish(&mut open, &mut done);
            take_row(&mut done, line, head, &row);
            continue;
        }
        if !in_answers && begins_answers(line, &done, open.as_ref()) {
            finish(&mut open, &mut done);
            in_answers = true;
        }
        if in_answers {
            let (number, value) = match (line.number, numbered(text)) {
                (Some(number), _) => (Some(number), line.plain.clone()),
                (None, Some((number, len))) => (Some(number), line.plain.slice(Span::new(len, text.len())).trimmed()),
                (None, None) => (None, line.plain.clone()),
            };
            let is_asked = |item: &Item| !item.options.is_empty() || item.stem.text.trim().contains(' ');
            let known = done
                .iter_mut()
                .find(|item| item.number.is_some() && item.number == number && item.key.is_none() && is_asked(item));
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
            let next = lines.get(place + 1).map_or("", |next| next.plain.text.as_str());
            let lettered = option_label(text)
                .or_else(|| bare_option(text, next, item.options.len()).filter(|_| line.number.is_none()));
            let by_number = line.number.filter(|_| {
                (item.from_list && line.nested)
                    || (!item.from_list && line.block != item.blocks.first().copied().unwrap_or(0))
            });
            if lettered.is_some() {
                item.options.extend(options_in_line(&line.plain));
                item.blocks.push(line.block);
                continue;
            }
            let bare = text.trim_matches(['(', ')', '.', '*']);
            if item.options.len() > 1 && is_emphasized(&line.plain) && item.options.iter().any(|own| own.label == bare)
            {
                item.key = Some((line.plain.clone(), line.block));
                item.blocks.push(line.block);
                finish(&mut open, &mut done);
                continue;
            }
            if let Some(number) = by_number {
                item.options.push(Choice { label: number.to_string(), plain: line.plain.clone() });
                item.blocks.push(line.block);
                continue;
            }
            let is_own = question_number(text).is_some();
            if item.options.is_empty() && item.blocks.contains(&line.block) && item.key.is_none() {
                if let Some((stem, key)) = filled_in(&line.plain) {
                    // One of several gaps below "Fill in the gaps".
                    let blocks = vec![line.block];
                    done.push(Item { stem, key: Some((key, line.block)), blocks, ..Item::default() });
                    continue;
                }
                if is_emphasized(&line.plain) && is_asked(&item.stem) {
                    item.key = Some((line.plain.clone(), line.block));
                    finish(&mut open, &mut done);
                    continue;
                }
            }
            if item.options.is_empty() && item.blocks.contains(&line.block) && !is_own {
                item.stem.push_as(
                    " ",
                    Span::new(line.plain.to_source(Span::new(0, 0)).start, line.plain.to_source(Span::new(0, 0)).start),
                );
                item.stem.append(&line.plain);
                continue;
            }
        }
        // Behind the key in its block an explanation may stand.
        let explained = done.last_mut().filter(|item| open.is_none() && item.key_block() == Some(line.block));
        if let Some(item) = question(line) {
            finish(&mut open, &mut done);
            open = Some(Item { section: section.clone(), ..item });
            if open.as_ref().is_some_and(|item| item.key.is_some()) {
                finish(&mut open, &mut done);
            }
        } else if let Some(item) = explained {
            item.rest.push(line.plain.clone());
        } else if open.as_ref().is_some_and(|item| !item.options.is_empty() || item.blocks.last() != Some(&line.block))
        {
            finish(&mut open, &mut done);
        }
    }
    finish(&mut open, &mut done);
    let mut done: Vec<Item> = done.into_iter().flat_map(judged_apart).collect();
    let is_empty = |item: &Item| without_instructions(&item.stem).text.trim().is_empty();
    done.retain(|item| item.key.is_some() || !is_empty(item));
    done.retain(|item| item.key.is_some() || (item.options.len() > 1 && (!item.from_list || asks(&item.stem))));
    done
}

impl Item {
    fn key_block(&self) -> Option<BlockIx> {
        self.key.as_ref().map(|(_, block)| *block)
    }
}

/// Gives the items their keys from a row of answers: those of the section that the words before the row name, else the
/// first of each number that have none.
fn take_row(done: &mut [Item], line: &Line, head: &str, row: &[(u64, Span)]) {
    let head = head.to_lowercase();
    let is_of_head = |item: &Item| {
        let rest = item.section.strip_prefix(&*head).filter(|_| !head.is_empty());
        rest.is_some_and(|rest| !rest.starts_with(char::is_alphanumeric))
    };
    let is_named = done.iter().any(is_of_head);
    for (number, value) in row {
        let item = done
            .iter_mut()
            .find(|item| item.number == Some(*number) && item.key.is_none() && (!is_named || is_of_head(item)));
        if let Some(item) = item {
            item.key = Some((line.plain.slice(*value), line.block));
            item.blocks.push(line.block);
        }
    }
}

/// Whether a list of answers begins with a line that no heading announces: its number is that of a question further up which
/// has no key yet, and its value is nothing but a letter, or "true" or "false".
fn begins_answers(line: &Line, done: &[Item], open: Option<&Item>) -> bool {
    let text = line.plain.text.as_str();
    let (number, value) = match (line.number, numbered(text)) {
        (Some(number), _) => (number, text),
        (None, Some((number, len))) => (number, text.get(len..).unwrap_or_default()),
        (None, None) => return false,
    };
    let value = value.trim().trim_end_matches(['.', ')']).trim_start_matches('(');
    let is_key = (value.len() == 1 && value.starts_with(|c: char| c.is_ascii_alphabetic()))
        || matches!(&*value.to_lowercase(), "true" | "false");
    is_key
        && !line.nested
        && open.is_none_or(|item| item.number != Some(number) && item.number.is_some_and(|last| last > number))
        && done.iter().any(|item| item.number == Some(number) && item.key.is_none())
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
    if let Some(item) = open.as_mut().filter(|item| item.key.is_none() && item.options.len() > 1) {
        let mut marked = item.options.iter().filter(|choice| is_marked(&choice.plain));
        if let (Some(only), None) = (marked.next(), marked.next()) {
            let key = without_mark(&only.plain);
            item.key = item.blocks.last().map(|block| (key, *block));
            item.options.clear();
        }
    }
    done.extend(open.take());
}

/// A line that may begin an item: `Q12: …`, `3. …`.
fn question(line: &Line) -> Option<Item> {
    let text = line.plain.text.as_str();
    let number_of_outline = text.split(' ').next().unwrap_or_default().trim_end_matches('.');
    if number_of_outline.contains('.') && number_of_outline.split('.').all(|part| part.parse::<u8>().is_ok()) {
        return None; // "1.2 Deep flexors"
    }
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
    let body = line.plain.slice(Span::new(from, text.len())).trimmed();
    if number.is_none() && !without_instructions(&body).text.chars().any(char::is_alphanumeric) {
        return None; // "True or false?" over a list of statements is no item
    }
    let (body, key) = match filled_in(&body) {
        Some((stem, key)) => (stem, Some((key, line.block))),
        None => (body, None),
    };
    let cut = row_of_options(&body);
    let options = cut.map(|cut| options_in_line(&body.slice(Span::new(cut, body.text.len())))).unwrap_or_default();
    Some(Item {
        number,
        stem: cut.map_or_else(|| body.clone(), |cut| body.slice(Span::new(0, cut)).trimmed()),
        options,
        blocks: vec![line.block],
        key,
        from_list: line.number.is_some(),
        ..Item::default()
    })
}

/// A sentence with a blank and what fills it, behind it on the same line: "… is the ______. (axillary nerve)",
/// "… is the ______. Answer: axillary nerve".
fn filled_in(body: &Plain) -> Option<(Plain, Plain)> {
    let text = body.text.trim_end();
    let blank = text.rfind("__")?;
    let by_word = || {
        let heads = text.char_indices().filter(|(at, _)| *at > blank);
        let is_apart =
            |at: usize| text.get(..at).is_some_and(|before| before.ends_with(|c: char| !c.is_alphanumeric()));
        heads.filter(|(at, _)| is_apart(*at)).find_map(|(at, _)| Some((at, at + key_value(text.get(at..)?)?)))
    };
    if let Some((head, value)) = by_word() {
        let key = body.slice(Span::new(value, text.len())).trimmed();
        let stem = body.slice(Span::new(0, head)).trimmed();
        return key.text.contains(char::is_alphabetic).then_some((stem, key));
    }
    let text = text.trim_end_matches('.');
    let open = text.rfind('(').filter(|open| blank < *open)?;
    let inside = text.get(open + 1..)?.strip_suffix(')')?;
    let is_key = inside.contains(char::is_alphabetic) && !inside.contains("mark") && !inside.contains("point");
    let key = body.slice(Span::new(open + 1, open + 1 + inside.len())).trimmed();
    is_key.then(|| (body.slice(Span::new(0, open)).trimmed(), key))
}

/// `B the ulnar nerve` as one of options that stand below one another, each behind its capital: the next in order, of which
/// more follow or have come before.
fn bare_option(text: &str, next: &str, count: usize) -> Option<(String, usize)> {
    let letter = |number: usize| u8::try_from(number).ok().and_then(|number| b'A'.checked_add(number)).map(char::from);
    let own = bare_label(text).filter(|(label, _)| letter(count).is_some_and(|letter| label.starts_with(letter)))?;
    let follows = || bare_label(next).is_some_and(|(label, _)| label.starts_with('B'));
    (count > 0 || follows()).then_some(own)
}

/// "a. The obturator nerve supplies gracilis. T", "b. …": lettered statements with a key behind each are items of their own.
fn judged_apart(item: Item) -> Vec<Item> {
    let judged = |choice: &Choice| {
        let (_, at) = keyed(&choice.plain.text, true)?;
        let stem = choice.plain.slice(Span::new(0, at.start)).trimmed();
        let end = stem.text.trim_end_matches(['(', '[', '–', '—', '→', ' ', '.', ':']).len();
        let key = choice.plain.slice(at);
        let block = *item.blocks.last()?;
        Some(Item { stem: stem.slice(Span::new(0, end)), key: Some((key, block)), ..Item::default() })
    };
    let stems: Option<Vec<Item>> = item.options.iter().map(judged).collect();
    match stems.filter(|stems| stems.len() > 1 && item.key.is_none()) {
        Some(mut stems) => {
            if let Some(first) = stems.first_mut() {
                first.blocks.clone_from(&item.blocks);
            }
            stems
        }
        None => vec![item],
    }
}

/// Whether a stem asks, by its mark or by its verb.
fn is_asked(stem: &Plain) -> bool {
    without_instructions(stem).text.trim_end().ends_with('?') || asked_by_verb(&stem.text).is_some()
}

/// Whether all words of a line are set off by their type.
pub(super) fn is_emphasized(line: &Plain) -> bool {
    let text = line.text.as_str();
    let is_set_off = |mark: Mark| {
        let letters = text.char_indices().filter(|(_, c)| c.is_alphanumeric());
        letters.map(|(at, c)| Span::new(at, at + c.len_utf8())).all(|span| line.has_mark(span, mark))
    };
    text.contains(char::is_alphabetic) && (is_set_off(Mark::Emphasis) || is_set_off(Mark::Strong))
}
