//! Keys: which option a key names, and what it says when that option is put into the stem.

use super::super::labels;
use super::super::sentences::{self, Memory, Scope, Subject};
use super::super::subjects::Above;
use super::super::{Claim, Key, PartRole, What};
use super::Choice;
use super::items::Item;
use super::lines::{numbered, option_label};
use super::stems::{asked_noun, join, nouns_in, without_instructions};
use crate::blocks::BlockIx;
use crate::knowledge::Knowledge;
use crate::lexicon;
use crate::mentions;
use crate::resolve;
use crate::text::{Plain, Span};

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

pub(super) fn key_claims(item: &Item, knowledge: &Knowledge) -> Vec<Claim> {
    let Some((whole, block)) = &item.key else { return Vec::new() };
    let (key, explanation) = without_explanation(item, whole);
    let mut claims = Vec::new();
    let subjects = subjects(item, &key, knowledge);
    for rest in explanation.iter().chain(&item.rest) {
        let mentions = mentions::mentions(&rest.text, &knowledge.vocabulary, &knowledge.names);
        let scope = Scope::new(knowledge, rest, &mentions, *block).under(&subjects);
        claims.extend(sentences::read(&scope, 0, &mut Memory::default()));
    }
    claims.extend(keyed_claims(item, (&key, *block), knowledge));
    claims
}

/// Of whom an explanation may speak without naming it: of what the key names, else of what the stem names.
fn subjects(item: &Item, key: &Plain, knowledge: &Knowledge) -> Vec<Subject> {
    let option = match answer(item, key) {
        Some(Answer::Option(choice)) => Some(choice.plain.clone()),
        Some(Answer::Text(text)) => Some(text),
        _ => None,
    };
    let named = |plain: &Plain| -> Vec<Subject> {
        let mentions = mentions::mentions(&plain.text, &knowledge.vocabulary, &knowledge.names);
        let subject = |mention: mentions::Mention| {
            let span = plain.to_source(mention.span);
            Subject { candidates: mention.candidates, span }
        };
        mentions.list.into_iter().map(subject).collect()
    };
    option.iter().chain([&item.stem]).flat_map(named).collect()
}

/// A key and what is explained behind it: "B) Phrenic nerve *Explanation: …*", "B – it arises from …", "False: it is …".
fn without_explanation(item: &Item, key: &Plain) -> (Plain, Option<Plain>) {
    let text = key.text.as_str();
    let lower = text.to_ascii_lowercase();
    let word = lexicon::EXPLANATIONS.iter().filter_map(|word| lower.find(word)).min();
    match word.or_else(|| end_of_answer(item, text)) {
        Some(cut) => {
            let is_mark =
                |c: char| c.is_whitespace() || matches!(c, '.' | ',' | ':' | ';' | '–' | '—' | '-' | ')' | '*');
            let rest = text.get(cut..).unwrap_or_default();
            let from = text.len() - rest.trim_start_matches(is_mark).len();
            let rest = key.slice(Span::new(from, text.len())).trimmed();
            (key.slice(Span::new(0, cut)).trimmed(), Some(rest))
        }
        None => (key.clone(), None),
    }
}

/// Where a key ends behind which something is explained: a label, with its option or without, or "true" or "false".
fn end_of_answer(item: &Item, text: &str) -> Option<usize> {
    let bare = text.trim_start_matches(['(', ' ', '*']);
    let start = text.len() - bare.len();
    let word = bare.split(|c: char| !c.is_alphabetic()).next().filter(|word| !word.is_empty())?;
    let behind = bare.get(word.len()..)?.trim_start_matches([')', '*']);
    let end = start + bare.len() - behind.len();
    let is_set_off = behind.starts_with(['.', ',', ':', ';', '–', '—'])
        || behind.starts_with([' ', '(']) && behind.trim_start().starts_with(['–', '—', '-', '(']);
    let says_more = |from: usize| text.get(from..).is_some_and(|rest| rest.split_whitespace().count() > 1);
    if item.options.len() < 2 {
        let lower = word.to_lowercase();
        let is_verdict = lexicon::is_true(&lower) || lexicon::is_false(&lower);
        return (is_verdict && is_set_off && says_more(end)).then_some(end);
    }
    let choice = item.options.iter().find(|choice| choice.label.eq_ignore_ascii_case(word))?;
    let body = behind.trim_start_matches([' ', '.', ':', '–', '—', '-']);
    let told = choice.plain.text.trim();
    let is_option = body.get(..told.len()).is_some_and(|first| first.eq_ignore_ascii_case(told));
    if is_option {
        // "B. Phrenic nerve. It arises from …", but "B. Phrenic nerve arises from …"
        let rest = body.get(told.len()..)?;
        let end = text.len() - rest.len();
        let goes_on = rest.trim_start().starts_with(char::is_lowercase);
        let end = if goes_on { text.len() - body.len() } else { end };
        return says_more(end).then_some(end);
    }
    (is_set_off && says_more(end)).then_some(end)
}

/// The claims of a key alone.
pub(super) fn keyed_claims(item: &Item, (key, block): (&Plain, BlockIx), knowledge: &Knowledge) -> Vec<Claim> {
    let Some(answer) = answer(item, key) else { return Vec::new() };
    let stem = without_instructions(&item.stem);
    let noun = asked_noun(&stem.text);
    // "Which cord? – medial": the option leaves out the noun that was asked for.
    let named = |option: &Plain| -> Plain {
        let mut option = option.clone();
        let bare = option.text.trim_end_matches(['.', ' ']).to_owned();
        let is_name = |text: &str| !knowledge.names.lookup(text).is_empty();
        let others = nouns_in(&stem.text).chain(["nerve".to_owned()]);
        let mut nouns = noun.iter().cloned().chain(others.filter(|_| !is_name(&bare)));
        let is_list = bare.contains([',', ';']) || bare.contains(char::is_numeric);
        if let Some(noun) = nouns.find(|noun| !is_list && is_name(&format!("{bare} {noun}"))) {
            let end = option.to_source(Span::new(0, option.text.len())).end;
            option.push_as(&format!(" {noun}"), Span::new(end, end));
        }
        option
    };
    // "Which statement is not correct?": the option says all.
    let verdict = stem.text.split(['.', '?', ':']).find_map(lexicon::verdict_asked);
    let is_statement = |plain: &Plain| verdict.is_some() && plain.text.split_whitespace().count() > 3;
    let (statement, option, mut turned) = match &answer {
        Answer::True => (stem.clone(), None, false),
        Answer::False => (stem.clone(), None, true),
        Answer::Option(Choice { plain, .. }) | Answer::Text(plain) if is_statement(plain) => {
            (plain.clone(), Some(plain), false)
        }
        Answer::Option(choice) => (join(&stem, &named(&choice.plain)), Some(&choice.plain), false),
        Answer::Text(plain) => (join(&stem, &named(plain)), Some(plain), false),
    };
    let lower = item.stem.text.to_lowercase();
    let is_except = lower.split(|c: char| !c.is_alphabetic()).any(|word| word == "except")
        || item.stem.text.contains(" NOT ")
        || verdict == Some(false)
        || lexicon::asks_for_wrong(&item.stem.text)
        || lower.contains("which of the following is not")
        || lower.contains("which of the following are not");
    // A statement that is keyed true or false says itself what it takes out.
    turned ^= is_except && !matches!(answer, Answer::True | Answer::False);
    let mentions = resolve::mentions_of(&statement, knowledge);
    let scope = Scope::new(knowledge, &statement, &mentions, block);
    let key_span = key.to_source(Span::new(0, key.text.len()));
    let option_span = option.map(|plain| plain.to_source(Span::new(0, plain.text.len())));
    let mut claims = sentences::read(&scope, 0, &mut Memory::default());
    if claims.is_empty() {
        // "Heads of quadriceps femoris: four", "Elbow joint: hinge"
        claims = labels::read(&scope, &Above::default());
    }
    claims.retain(|claim| option_span.is_none_or(|span| claim.parts.iter().any(|part| span.contains(part.span))));
    for claim in &mut claims {
        // A name of which the option is one half and the stem the other stands at the option.
        for part in claim.parts.iter_mut().filter(|part| part.span.is_empty()) {
            part.span = option_span.unwrap_or(part.span);
        }
        claim.negated ^= turned;
        claim.span = key_span;
        let part = option_span.and_then(|span| claim.parts.iter().position(|part| span.contains(part.span)));
        let role = part.and_then(|part| claim.parts.get(part)).map(|part| part.role);
        let options = role.map(|role| options(&item.options, role, key.text.trim().len() <= 2, &scope, knowledge));
        claim.key = Some(Box::new(Key { span: key_span, options: options.unwrap_or_default(), part }));
    }
    claims
}

/// The options, each as a key would name it and as what it is in a role; `brief` for keys that are a letter alone.
pub(super) fn options(
    choices: &[Choice],
    role: PartRole,
    brief: bool,
    scope: &Scope<'_>,
    knowledge: &Knowledge,
) -> Vec<(String, What)> {
    let known = |choice: &Choice| {
        let mentions = mentions::mentions(&choice.plain.text, &knowledge.vocabulary, &knowledge.names);
        let scope = Scope { plain: &choice.plain, mentions: &mentions, ..*scope };
        let [side] = sentences::values(&scope, 0, mentions.tokens.len(), role).try_into().ok()?;
        let sentences::Side { what, .. } = side;
        let shown =
            if brief { choice.label.clone() } else { format!("{}) {}", choice.label, choice.plain.text.trim()) };
        Some((shown, what))
    };
    choices.iter().filter_map(known).collect()
}
