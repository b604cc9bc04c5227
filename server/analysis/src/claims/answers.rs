//! Questions that a line or block below answers in a word or two: a heading that asks, an outer item, `Q: … A: …`; and
//! sentences that the items of a list end ("The following are supplied by the ulnar nerve:"). Question and answer together
//! are a statement, as the stem and the key of an exam item are.

use super::sentences::{self, Memory, Scope};
use super::{Claim, exam};
use crate::blocks::{BlockIx, BlockKind, Blocks};
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions;
use crate::resolve;
use crate::text::{Plain, Span};

/// What stands before an answer.
const MARKS: [&str; 5] = ["answer:", "ans:", "ans.", "a:", "back:"];

/// What stands before an answer to a question with a mark of its own; elsewhere it is an option.
const MARK_BESIDE_QUESTION: [&str; 1] = ["a."];

/// What stands before a question.
const QUESTION_MARKS: [&str; 5] = ["question:", "q:", "q.", "front:", "prompt:"];

/// How many blocks before it may hold the question that a block answers, or the one of which its own is a rest.
const QUESTION_REACH: usize = 8;

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

/// The claims of the answers in a block, and where the backs of cards stand, which are read no other way.
pub fn read(blocks: &Blocks, at: BlockIx, knowledge: &Knowledge) -> (Vec<Claim>, Vec<Span>) {
    let Some(block) = blocks.list.get(at) else { return Default::default() };
    let mut talk = Talk::default();
    for before in blocks_before(blocks, at) {
        for line in blocks.list.get(before).map(|block| block.plain.lines()).unwrap_or_default() {
            talk.hear(&line.trimmed(), knowledge);
        }
    }
    talk.asked = talk.asked.take().filter(|asked| asked.is_marked);
    if let Some(question) = question_above(blocks, at) {
        talk.asked = Some(Asked { question, is_marked: false, is_card: false });
    }
    let (mut claims, mut backs) = (Vec::new(), Vec::new());
    for line in block.plain.lines() {
        if let Some((asked, answer)) = talk.hear(&line.trimmed(), knowledge) {
            claims.extend(if asked.is_card {
                backs.push(line.to_source(Span::new(0, line.text.len())));
                exam::paired(&asked.question, &answer, at, knowledge)
            } else {
                answer_claims(&asked.question, &answer, knowledge, at)
            });
        }
    }
    (claims, backs)
}

/// The blocks of the same kind and place right before one, in their order.
fn blocks_before(blocks: &Blocks, at: BlockIx) -> Vec<BlockIx> {
    let Some(own) = blocks.list.get(at).filter(|block| block.kind == BlockKind::Paragraph) else { return Vec::new() };
    let is_beside = |up: &BlockIx| {
        let other = blocks.list.get(*up);
        other.is_some_and(|other| {
            other.kind == own.kind && other.parent == own.parent && other.heading == own.heading && !other.quoted
        })
    };
    let mut list: Vec<BlockIx> = (0..at).rev().take(QUESTION_REACH).take_while(is_beside).collect();
    list.reverse();
    list
}

/// A question that waits for its answer.
#[derive(Clone, Debug)]
struct Asked {
    question: Plain,
    /// A mark or a speaker stands before it, so that what answers it may stand in another block.
    is_marked: bool,
    /// It is the front of a card, which asks by naming.
    is_card: bool,
}

/// What has been asked so far.
#[derive(Default)]
struct Talk {
    asked: Option<Asked>,
    /// The last question that was a whole one.
    whole: Option<Plain>,
}

impl Talk {
    /// Takes a line; a question together with what the line answers to it, if it does.
    fn hear(&mut self, line: &Plain, knowledge: &Knowledge) -> Option<(Asked, Plain)> {
        let text = line.text.as_str();
        let marked = without(line, &QUESTION_MARKS);
        let is_marked = marked.text.len() < text.trim().len();
        let (spoken, is_spoken) = without_speaker(&marked);
        if let Some(end) = spoken.text.find('?').map(|end| end + 1) {
            let question = spoken.slice(Span::new(0, end));
            let question = self.completed(&question, knowledge).unwrap_or(question);
            self.whole = Some(question.clone());
            let asked = Asked { question, is_marked: is_marked || is_spoken, is_card: false };
            let rest = spoken.text.get(end..).unwrap_or_default();
            let from = spoken.text.len() - rest.trim_start_matches([' ', '–', '—', '-', '→', '=', ':', '⇒']).len();
            let behind = spoken.slice(Span::new(from, spoken.text.len())).trimmed();
            if behind.text.chars().any(char::is_alphanumeric) {
                self.asked = None;
                return Some((asked, behind));
            }
            self.asked = Some(asked);
            return None;
        }
        let said = said_by(&marked);
        if (is_marked || said.text.len() < marked.text.len()) && exam::asks_by_verb(&said.text) {
            self.whole = Some(said.clone());
            self.asked = Some(Asked { question: said, is_marked: true, is_card: false });
            return None;
        }
        if is_marked && !is_spoken {
            self.asked = Some(Asked { question: marked, is_marked, is_card: true });
            return None;
        }
        let asked = self.asked.take()?;
        let is_beside = asked.is_marked && without(line, &MARK_BESIDE_QUESTION).text.len() < text.trim().len();
        let line = if is_beside { &without(line, &MARK_BESIDE_QUESTION) } else { line };
        let has_mark = is_beside || without(line, &MARKS).text.len() < text.trim().len();
        if asked.is_card && !has_mark {
            return None;
        }
        let line = if asked.is_marked && !has_mark { said_by(line) } else { line.clone() };
        Some((asked, without(&line, &MARKS)))
    }

    /// "And the masseter?", "What about masseter?": the question before, asked of what is named.
    fn completed(&self, question: &Plain, knowledge: &Knowledge) -> Option<Plain> {
        let whole = self.whole.as_ref()?;
        let lower = question.text.to_lowercase();
        let head = ["and ", "what about ", "how about ", "and what about ", "and how about "];
        head.into_iter().find(|head| lower.starts_with(*head))?;
        let own = mentions::mentions(&question.text, &knowledge.vocabulary, &knowledge.names);
        let [only] = own.list.as_slice() else { return None };
        let kind = |mention: &mentions::Mention| mention.candidates.first().map(|id| knowledge.vocabulary.kind(*id));
        let rest = lower.get(only.span.end..)?.trim_matches(['?', ' ', '.']);
        let known = mentions::mentions(&whole.text, &knowledge.vocabulary, &knowledge.names);
        let mut same = known.list.iter().filter(|mention| kind(mention) == kind(only));
        let replaced = same.next().filter(|_| rest.is_empty())?;
        if same.next().is_some() {
            return None;
        }
        let mut plain = whole.slice(Span::new(0, replaced.span.start));
        plain.append(&question.slice(only.span));
        plain.append(&whole.slice(Span::new(replaced.span.end, whole.text.len())));
        Some(plain)
    }
}

/// A question without the speaker before it ("Tutor: What supplies …?"), and whether there was one.
fn without_speaker(line: &Plain) -> (Plain, bool) {
    let said = said_by(line);
    let first = said.text.split(|c: char| !c.is_alphabetic()).next().unwrap_or_default().to_lowercase();
    let asks = lexicon::asks_for(&first) || matches!(&*first, "which" | "what" | "how" | "where" | "who" | "and");
    let is_spoken = said.text.len() < line.text.len() && asks;
    (if is_spoken { said } else { line.clone() }, is_spoken)
}

/// A line without one or two words and a colon before it.
fn said_by(line: &Plain) -> Plain {
    let text = line.text.as_str();
    let colon = text.find(": ").filter(|colon| {
        text.get(..*colon)
            .is_some_and(|head| head.split_whitespace().count() <= 2 && head.starts_with(char::is_uppercase))
    });
    line.slice(Span::new(colon.map_or(0, |colon| colon + 1), text.len())).trimmed()
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
    let mentions = resolve::mentions_of(&joined, knowledge);
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
