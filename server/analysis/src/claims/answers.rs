//! Questions that a line or block below answers in a word or two: a heading that asks, an outer item, `Q: … A: …`. Question
//! and answer together are a statement, as the stem and the key of an exam item are.

use super::sentences::{self, Scope};
use super::{Claim, exam};
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::knowledge::Knowledge;
use crate::mentions;
use crate::text::{Plain, Span};

/// What stands before an answer.
const MARKS: [&str; 6] = ["answer:", "ans:", "ans.", "a:", "a.", "a)"];

/// What stands before a question.
const QUESTION_MARKS: [&str; 3] = ["question:", "q:", "q."];

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
    if question.text.contains('(') || sentences::is_sentence(&scope, 0, mentions.tokens.len()) {
        return Vec::new();
    }
    exam::answered(question, &answer, at, knowledge)
}

/// A text without the mark with which it begins.
fn without(plain: &Plain, marks: &[&str]) -> Plain {
    let lower = plain.text.to_lowercase();
    let start = lower.len() - lower.trim_start().len();
    let mark = marks.iter().find(|mark| lower.get(start..).is_some_and(|rest| rest.starts_with(**mark)));
    let from = mark.map_or(start, |mark| start + mark.len());
    plain.slice(Span::new(from.min(plain.text.len()), plain.text.len())).trimmed()
}
