//! Items: a stem with its options and the key that names one of them, wherever the key stands.

use super::Choice;
use super::lines::{
    Line, key_value, numbered, option_label, options_in_line, question_number, row_of_answers, row_of_options,
};
use super::stems::{ASKING, whole_word, without_instructions};
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::lexicon;
use crate::text::{Plain, Span};
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
    for line in lines.iter().filter(|line| !taken.contains(&line.block)) {
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
            && (in_answers || row.len() > 2 || text.starts_with('Q'))
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
            let lettered = option_label(text);
            let by_number = line.number.filter(|_| {
                (item.from_list && line.nested)
                    || (!item.from_list && line.block != item.blocks.first().copied().unwrap_or(0))
            });
            if lettered.is_some() {
                item.options.extend(options_in_line(&line.plain));
                item.blocks.push(line.block);
                continue;
            }
            if let Some(number) = by_number {
                item.options.push(Choice { label: number.to_string(), plain: line.plain.clone() });
                item.blocks.push(line.block);
                continue;
            }
            let is_own = question_number(text).is_some();
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
    let body = line.plain.slice(Span::new(from, text.len())).trimmed();
    if number.is_none() && !without_instructions(&body).text.chars().any(char::is_alphanumeric) {
        return None; // "True or false?" over a list of statements is no item
    }
    let cut = row_of_options(&body);
    let options = cut.map(|cut| options_in_line(&body.slice(Span::new(cut, body.text.len())))).unwrap_or_default();
    Some(Item {
        number,
        stem: cut.map_or_else(|| body.clone(), |cut| body.slice(Span::new(0, cut)).trimmed()),
        options,
        blocks: vec![line.block],
        key: filled_in(&body).map(|key| (key, line.block)),
        from_list: line.number.is_some(),
        ..Item::default()
    })
}

/// What fills the blank of a sentence, in brackets behind it: "… is the ______. (axillary nerve)".
fn filled_in(body: &Plain) -> Option<Plain> {
    let text = body.text.trim_end().trim_end_matches('.');
    let open = text.rfind('(').filter(|open| text.find("__").is_some_and(|blank| blank < *open))?;
    let inside = text.get(open + 1..)?.strip_suffix(')')?;
    let is_key = inside.contains(char::is_alphabetic) && !inside.contains("mark") && !inside.contains("point");
    is_key.then(|| body.slice(Span::new(open + 1, open + 1 + inside.len())).trimmed())
}
