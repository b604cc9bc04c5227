//! Questions that a line or block below answers in a word or two: a heading that asks, an outer item, `Q: … A: …`; and
//! sentences that the items of a list end ("The following are supplied by the ulnar nerve:"). Question and answer together
//! are a statement, as the stem and the key of an exam item are.

use super::sentences::{self, Memory, Scope};
use super::{Claim, exam};
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions;
use crate::text::{Plain, Span};

/// What stands before an answer.
const MARKS: [&str; 4] = ["answer:", "ans:", "ans.", "a:"];

/// What stands before a question.
const QUESTION_MARKS: [&str; 3] = ["question:", "q:", "q."];

/// Words of a sentence for which the items of the list below it stand.
const STAND_FOR_ITEMS: [&str; 14] = [
    "the following muscles",
    "the following nerves",
    "the following branches",
    "the following",
    "all of the following",
    "each of the following",
    "all of these muscles",
    "all of these",
    "all these muscles",
    "all these",
    "these muscles",
    "these nerves",
    "these",
    "they",
];

/// The claims of the answers in a block.
pub fn read(blocks: &Blocks, at: BlockIx, knowledge: &Knowledge) -> Vec<Claim> {
    let Some(block) = blocks.list.get(at) else { return Vec::new() };
    let mut asked = question_above(blocks, at);
    let mut claims = Vec::new();
    for line in block.plain.lines() {
        let line = line.trimmed();
        let text = line.text.as_str();
        if let Some(end) = text.find('?').map(|end| end + 1) {
            let question = without(&line.slice(Span::new(0, end)), &QUESTION_MARKS);
            let behind = line.slice(Span::new(end, text.len())).trimmed();
            if behind.text.chars().any(char::is_alphanumeric) {
                claims.extend(answer_claims(&question, &behind, knowledge, at));
                asked = None;
            } else {
                asked = Some(question);
            }
        } else if let Some(question) = asked.take() {
            claims.extend(answer_claims(&question, &line, knowledge, at));
        }
    }
    claims
}

/// The question that a block may answer: the item that it is nested in, or its heading where nothing else stands between.
fn question_above(blocks: &Blocks, at: BlockIx) -> Option<Plain> {
    let block = blocks.list.get(at)?;
    let asks = |up: BlockIx| {
        let plain = &blocks.list.get(up)?.plain;
        let text = plain.text.trim_end();
        let from = text.rfind(['.', ':']).map_or(0, |at| at + 1);
        text.ends_with('?').then(|| plain.slice(Span::new(from, text.len())).trimmed())
    };
    if let Some(parent) = block.parent {
        return asks(parent);
    }
    let heading = block.heading?;
    let is_in_list = |at: BlockIx| {
        blocks.list.get(at).is_some_and(|block| matches!(block.kind, BlockKind::Item(_)) && block.parent.is_none())
    };
    let is_first = heading + 1 == at || (heading + 1..=at).all(is_in_list);
    if is_first { asks(heading) } else { None }
}

/// What an item claims together with the sentence that leads in its list and ends with a colon.
pub fn led_in(blocks: &Blocks, at: BlockIx, knowledge: &Knowledge) -> Vec<Claim> {
    let Some(block) = blocks.list.get(at).filter(|block| matches!(block.kind, BlockKind::Item(_))) else {
        return Vec::new();
    };
    let before = (0..at).rev().find_map(|up| {
        let other = blocks.list.get(up)?;
        let is_in_list = matches!(other.kind, BlockKind::Item(_)) && other.parent.is_some();
        let is_sibling = matches!(other.kind, BlockKind::Item(_)) && other.parent == block.parent;
        if is_in_list && block.parent.is_none() || is_sibling { None } else { Some(other) }
    });
    let lead_in = block.parent.and_then(|parent| blocks.list.get(parent)).or(before);
    let Some(lead_in) = lead_in.filter(|lead_in| {
        matches!(lead_in.kind, BlockKind::Paragraph | BlockKind::Item(_))
            && lead_in.plain.text.trim_end().ends_with(':')
    }) else {
        return Vec::new();
    };
    let text = lead_in.plain.text.trim_end();
    let from = text.rfind(['.', '?']).map_or(0, |at| at + 1);
    let stem = lead_in.plain.slice(Span::new(from, text.len())).trimmed();
    let lower = stem.text.to_ascii_lowercase();
    let stands_for = STAND_FOR_ITEMS.iter().filter_map(|words| Some((lower.find(words)?, words.len())));
    let item = block.plain.slice(Span::new(0, block.plain.text.trim_end_matches(['.', ';', ',', ' ']).len()));
    let mut joined = Plain::default();
    let end = stem.text.len() - 1;
    if let Some((place, len)) = stands_for.min_by_key(|(at, len)| (*at, usize::MAX - len)) {
        joined.append(&stem.slice(Span::new(0, place)));
        joined.append(&item);
        joined.append(&stem.slice(Span::new(place + len, end)));
    } else {
        joined.append(&stem.slice(Span::new(0, end)));
        let place = item.to_source(Span::new(0, 0)).start;
        joined.push_as(" ", Span::new(place, place));
        joined.append(&item);
    }
    let own = mentions::mentions(&item.text, &knowledge.vocabulary, &knowledge.names);
    if sentences::is_sentence(&Scope::new(knowledge, &item, &own, at), 0, own.tokens.len()) {
        return Vec::new();
    }
    let mentions = mentions::mentions(&joined.text, &knowledge.vocabulary, &knowledge.names);
    let mut claims = sentences::read(&Scope::new(knowledge, &joined, &mentions, at), 0, &mut Memory::default());
    let place = item.to_source(Span::new(0, item.text.len()));
    claims.retain(|claim| claim.parts.iter().any(|part| place.contains(part.span)));
    for claim in &mut claims {
        let own = claim.parts.iter().map(|part| part.span).filter(|span| place.contains(*span));
        claim.span = own.reduce(Span::cover).unwrap_or(place);
    }
    claims
}

/// What a question and the first words behind it claim; nothing where these are a sentence of their own.
fn answer_claims(question: &Plain, answer: &Plain, knowledge: &Knowledge, at: BlockIx) -> Vec<Claim> {
    let answer = without(answer, &MARKS);
    let text = answer.text.as_str();
    let is_end = |at: &usize| text.get(at + 1..).is_some_and(|rest| rest.trim_start().starts_with(char::is_uppercase));
    let end = text
        .match_indices(['.', ';'])
        .map(|(at, _)| at)
        .find(is_end)
        .unwrap_or(text.trim_end_matches(['.', ' ']).len());
    let answer = answer.slice(Span::new(0, end)).trimmed();
    let mentions = mentions::mentions(&answer.text, &knowledge.vocabulary, &knowledge.names);
    let scope = Scope::new(knowledge, &answer, &mentions, at);
    // "Not the femoral nerve" is no answer, and "B. the femoral nerve" an option.
    let is_denial = answer.text.split_whitespace().count() > 1
        && answer.text.split_whitespace().any(|word| lexicon::is_negation(&word.to_lowercase()));
    if is_denial || exam::is_option(&answer.text) {
        return Vec::new();
    }
    if question.text.contains('(') || sentences::is_sentence(&scope, 0, mentions.tokens.len()) {
        return Vec::new();
    }
    exam::answered(question, &answer, at, knowledge)
}

/// A text without the mark with which it begins.
fn without(plain: &Plain, marks: &[&str]) -> Plain {
    let lower = plain.text.to_ascii_lowercase();
    let start = lower.len() - lower.trim_start().len();
    let mark = marks.iter().find(|mark| lower.get(start..).is_some_and(|rest| rest.starts_with(**mark)));
    let from = mark.map_or(start, |mark| start + mark.len());
    plain.slice(Span::new(from.min(plain.text.len()), plain.text.len())).trimmed()
}
