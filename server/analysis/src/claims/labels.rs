//! Claims of labels: `Innervation: axillary nerve (C5, C6)`, a heading `## Innervates` with a list below, `FCU -> ulnar n.`
//!
//! A label tells the relation, its value the other side; the subject stands before it in the same line (*Deltoid: origin …;
//! innervation …*) or above it.

use fascicle_model::{Kind, Vocabulary};

use super::sentences::{self, Scope, Side, side_of};
use super::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, Label};
use crate::mentions::Mention;
use crate::text::{Mark, Span};

/// Reads the labels in a block. `above` is the label of the heading or outer item that it stands under, if that is one.
pub fn read(scope: &Scope<'_>, above: Option<(Label, &str)>) -> Vec<Claim> {
    let tokens = &scope.mentions.tokens;
    let mut claims = Vec::new();
    let stretches = stretches(scope);
    let mut run_in = run_in(scope, 0, tokens.len());
    let mut labelled = false;
    let mut current: Option<(Label, String)> = None;
    for (from, to) in stretches {
        if from > 0 && begins_line(scope, from) {
            run_in = self::run_in(scope, from, tokens.len()).or(run_in);
        }
        let Some((label, word, value)) = label_in(scope, from, to) else {
            if !labelled
                && let Some((label, word)) = above
                && !sentences::is_sentence(scope, from, to)
            {
                claims.extend(value_claims(scope, from, to, label, word, &subjects(scope, label.subject, None)));
            } else if let Some((label, word)) =
                current.clone().filter(|_| continues(scope, from) && !sentences::is_sentence(scope, from, to))
            {
                let subjects = subjects(scope, label.subject, run_in.as_ref());
                claims.extend(value_claims(scope, from, to, label, &word, &subjects));
            } else if !labelled && above.is_none() {
                claims.extend(movers(scope, from, to));
                claims.extend(arrow(scope, from, to));
            }
            continue;
        };
        labelled = true;
        current = Some((label, word.to_owned()));
        let subjects = subjects(scope, label.subject, run_in.as_ref());
        claims.extend(value_claims(scope, value, to, label, word, &subjects));
    }
    claims
}

/// Whether a stretch goes on with the value before it: a semicolon stands between.
fn continues(scope: &Scope<'_>, from: usize) -> bool {
    from.checked_sub(1)
        .and_then(|before| scope.mentions.tokens.get(before))
        .is_some_and(|token| token.span.of(&scope.plain.text) == ";")
}

/// `Flexors: hamstrings, gastrocnemius` below the name of a joint.
fn movers(scope: &Scope<'_>, from: usize, to: usize) -> Vec<Claim> {
    let tokens = &scope.mentions.tokens;
    let words: Vec<String> = tokens
        .get(from..to)
        .unwrap_or_default()
        .iter()
        .map(|token| token.span.of(&scope.plain.text).to_lowercase())
        .collect();
    let word = |at: usize| words.get(at).map_or("", String::as_str);
    let Some((movement, end)) = scope.relations.movement_at(0, &word) else { return Vec::new() };
    if movement.form == super::phrases::MovementForm::Verb || !lexicon::is_value_sign(word(end)) {
        return Vec::new();
    }
    let joint = scope.subjects.iter().find_map(|subject| side_of(scope.vocabulary, subject, PartRole::Joint));
    let Some(joint) = joint else { return Vec::new() };
    let (Some(first), Some(last)) = (tokens.get(from), tokens.get(from + end - 1)) else { return Vec::new() };
    let movement_span = scope.plain.to_source(Span::new(first.span.start, last.span.end));
    sentences::values(scope, from + end + 1, to, PartRole::Muscle)
        .into_iter()
        .map(|muscle| {
            let parts = vec![
                Part { role: PartRole::Muscle, span: muscle.span, what: muscle.what },
                Part { role: PartRole::Movement, span: movement_span, what: What::Entry(vec![movement.movement]) },
                Part { role: PartRole::Joint, span: joint.span, what: joint.what.clone() },
            ];
            Claim {
                kind: ClaimKind::Action,
                span: muscle.span,
                parts,
                negated: false,
                hedged: false,
                all: false,
                block: scope.block,
                key: None,
            }
        })
        .collect()
}

/// The stretches of a block that can hold a label each: between semicolons, full stops and line ends.
fn stretches(scope: &Scope<'_>) -> Vec<(usize, usize)> {
    let tokens = &scope.mentions.tokens;
    let text = &scope.plain.text;
    let mut list = Vec::new();
    let mut start = 0;
    let mut depth = 0_u32;
    for (at, token) in tokens.iter().enumerate() {
        let word = token.span.of(text);
        match word {
            "(" | "[" => depth += 1,
            ")" | "]" => depth = depth.saturating_sub(1),
            _ => {}
        }
        let next = tokens.get(at + 1);
        let gap = next.map_or(Span::default(), |next| Span::new(token.span.end, next.span.start));
        let is_break = next.is_some() && is_line_end(scope, gap);
        let is_stop = word == "."
            && next.is_some_and(|next| !gap.is_empty() && next.span.of(text).starts_with(char::is_uppercase))
            && at.checked_sub(1).and_then(|before| tokens.get(before)).is_some_and(|before| before.span.len() > 2);
        let is_dash = depth == 0
            && at > start
            && lexicon::separates_labels(word)
            && label_in(scope, at + 1, tokens.len()).is_some();
        if is_dash {
            list.push((start, at));
            start = at + 1;
            continue;
        }
        if (depth == 0 && (word == ";" || is_stop)) || is_break {
            list.push((start, if is_break && !is_stop && word != ";" { at + 1 } else { at }));
            start = at + 1;
        }
    }
    if start < tokens.len() {
        list.push((start, tokens.len()));
    }
    list
}

/// Whether a gap between two tokens holds the end of a line.
fn is_line_end(scope: &Scope<'_>, gap: Span) -> bool {
    let shown = gap.of(&scope.plain.text);
    shown.contains('\n') || (!shown.is_empty() && scope.plain.is_line_break(gap))
}

/// The label with which a stretch begins, and the token where its value begins.
fn label_in<'s>(scope: &Scope<'s>, from: usize, to: usize) -> Option<(Label, &'s str, usize)> {
    let tokens = &scope.mentions.tokens;
    let text = &scope.plain.text;
    let word = |at: usize| tokens.get(at).map_or("", |token| token.span.of(text));
    let mut begin = from;
    // A name with a colon or dash may stand before the first label; so may the name itself ("Deltoid innervation: …").
    let leading = scope.mentions.list.iter().find(|mention| mention.tokens.0 == from && mention.tokens.1 < to);
    for start in [Some(begin), leading.map(|mention| mention.tokens.1)].into_iter().flatten() {
        begin = start;
        while begin < to && lexicon::precedes_label(word(begin)) {
            begin += 1;
        }
        for len in (1..=3).rev() {
            let end = begin + len;
            if end > to {
                continue;
            }
            let span = Span::new(tokens.get(begin)?.span.start, tokens.get(end - 1)?.span.end);
            let strong = scope.plain.has_mark(span, Mark::Strong) || scope.plain.has_mark(span, Mark::Emphasis);
            let separator = lexicon::is_value_sign(word(end)) || word(end) == "→";
            if !(separator || strong || len == 1) {
                continue;
            }
            let Some(label) = lexicon::label_of(span.of(text)) else { continue };
            if separator && end < to {
                let arrow = usize::from(word(end) == "-" && word(end + 1) == ">");
                return Some((label, span.of(text), end + 1 + arrow));
            }
            let in_chain = len == 1
                && label.kind == Some(crate::claims::ClaimKind::Attachment)
                && scope.mentions.list.iter().any(|mention| {
                    mention.tokens.0 == end
                        || (mention.tokens.0 == end + 1 && lexicon::is_determiner(&word(end).to_lowercase()))
                })
                && end < to;
            if in_chain {
                return Some((label, span.of(text), end));
            }
            let marked_end = tokens.get(end).is_some_and(|next| !scope.plain.has_mark(next.span, Mark::Strong));
            if strong && marked_end && end < to && len <= 3 && span.of(text).starts_with(char::is_uppercase) {
                return Some((label, span.of(text), end));
            }
        }
    }
    None
}

/// Whether a stretch begins a line of the source.
fn begins_line(scope: &Scope<'_>, from: usize) -> bool {
    let tokens = &scope.mentions.tokens;
    let (Some(before), Some(first)) = (from.checked_sub(1).and_then(|at| tokens.get(at)), tokens.get(from)) else {
        return true;
    };
    is_line_end(scope, Span::new(before.span.end, first.span.start))
}

/// What the labels of a line speak of.
enum RunIn {
    /// The name with which the line begins.
    Name(Side),
    /// A head in bold that is no name of the vocabulary: nothing that it speaks of is known.
    Unknown,
}

/// The head with which a line begins, if it has one.
fn run_in(scope: &Scope<'_>, from: usize, to: usize) -> Option<RunIn> {
    let tokens = &scope.mentions.tokens;
    let text = &scope.plain.text;
    let first = tokens.get(from)?;
    let mention = scope
        .mentions
        .list
        .iter()
        .find(|mention| (from..=from + 1).contains(&mention.tokens.0) && mention.tokens.1 < to);
    let Some(mention) = mention else {
        let strong = (from..to)
            .take_while(|at| tokens.get(*at).is_some_and(|token| scope.plain.has_mark(token.span, Mark::Strong)))
            .count();
        let last = tokens.get(from + strong.checked_sub(1)?)?;
        let head = Span::new(first.span.start, last.span.end).of(text);
        return lexicon::label_of(head).is_none().then_some(RunIn::Unknown);
    };
    let next = tokens.get(mention.tokens.1)?.span.of(text);
    let is_head = lexicon::ends_head(next)
        || lexicon::label_of(next).is_some()
        || scope.plain.has_mark(mention.span, Mark::Strong)
        || is_line_end(scope, Span::new(mention.span.end, tokens.get(mention.tokens.1)?.span.start));
    if !is_head {
        return None;
    }
    let subject =
        sentences::Subject { candidates: mention.candidates.clone(), span: scope.plain.to_source(mention.span) };
    side_of(scope.vocabulary, &subject, PartRole::Structure).map(RunIn::Name)
}

fn subjects(scope: &Scope<'_>, role: PartRole, run_in: Option<&RunIn>) -> Vec<Side> {
    let fit = |side: &Side| -> Option<Side> {
        let What::Entry(ids) = &side.what else { return None };
        side_of(scope.vocabulary, &sentences::Subject { candidates: ids.clone(), span: side.span }, role)
    };
    match run_in {
        Some(RunIn::Name(side)) => return fit(side).into_iter().collect(),
        Some(RunIn::Unknown) => return Vec::new(),
        None => {}
    }
    let roles: &[PartRole] = if role == PartRole::Structure { &[PartRole::Muscle, PartRole::Nerve] } else { &[role] };
    scope
        .subjects
        .iter()
        .find_map(|subject| roles.iter().find_map(|role| side_of(scope.vocabulary, subject, *role)))
        .into_iter()
        .collect()
}

/// The claims that a value makes of its subjects.
pub fn value_claims(
    scope: &Scope<'_>,
    from: usize,
    to: usize,
    label: Label,
    word: &str,
    subjects: &[Side],
) -> Vec<Claim> {
    let Some(kind) = label.kind else { return Vec::new() };
    let mut claims = Vec::new();
    if let Some((part, sign)) = part_prefix(scope, from, to) {
        // "anterior belly: NERVE, posterior belly: NERVE"
        let cut =
            (sign + 1..to).find(|at| part_prefix(scope, *at, to).is_some_and(|(_, sign)| sign > *at)).unwrap_or(to);
        claims.extend(value_claims(scope, sign + 1, cut, label, word, &[part]));
        if cut < to {
            claims.extend(value_claims(scope, cut, to, label, word, subjects));
        }
        return claims;
    }
    for subject in subjects {
        let own = Part { role: label.subject, span: subject.span, what: subject.what.clone() };
        let claim = |kind: ClaimKind, own: Part, mut parts: Vec<Part>| {
            let span = parts.iter().map(|part| part.span).reduce(Span::cover).unwrap_or_default();
            parts.insert(0, own);
            Claim { kind, span, parts, negated: false, hedged: false, all: false, block: scope.block, key: None }
        };
        match label.value {
            PartRole::Movement => {
                for (movement, target) in sentences::movement_values(scope, from, to) {
                    let mut parts = vec![Part { role: PartRole::Movement, span: movement.span, what: movement.what }];
                    let target = target.filter(|_| kind != ClaimKind::Joint);
                    parts.extend(target.map(|target| Part {
                        role: PartRole::Joint,
                        span: target.span,
                        what: target.what,
                    }));
                    claims.push(claim(kind, own.clone(), parts));
                }
            }
            PartRole::Sign => {
                for effect in sentences::effects(scope, from, to) {
                    claims.push(Claim { all: effect.whole, ..claim(kind, own.clone(), effect.parts) });
                }
            }
            PartRole::Modality | PartRole::JointKind => {
                let words = scope.mentions.tokens.get(from..to).unwrap_or_default();
                let purely = words
                    .iter()
                    .any(|token| matches!(token.span.of(&scope.plain.text), "only" | "purely" | "entirely"));
                let part = word_value(scope, from, to, label.value);
                claims.extend(part.map(|part| Claim { all: purely, ..claim(kind, own.clone(), vec![part]) }));
            }
            PartRole::Landmark if kind == ClaimKind::Attachment => {
                let end = if lexicon::is_insertion(word) { "insertion" } else { "origin" };
                if is_neural(scope.vocabulary, subject) {
                    let label =
                        Label { kind: Some(ClaimKind::Branching), value: PartRole::Parent, subject: PartRole::Nerve };
                    claims.extend(value_claims(scope, from, to, label, word, std::slice::from_ref(subject)));
                    continue;
                }
                for value in sentences::values(scope, from, to, PartRole::Landmark) {
                    let parts = vec![
                        Part { role: PartRole::Landmark, span: value.span, what: value.what },
                        Part { role: PartRole::Role, span: value.span, what: What::Word(end) },
                    ];
                    claims.push(claim(kind, own.clone(), parts));
                }
            }
            role => {
                for value in sentences::values(scope, from, to, role) {
                    let parts = vec![Part { role, span: value.span, what: value.what }];
                    claims.push(claim(kind, own.clone(), parts));
                }
            }
        }
    }
    claims
}

/// An item that is nothing but a muscle, below a heading that names a nerve.
pub fn bare_muscle(scope: &Scope<'_>, nerve: &sentences::Subject) -> Vec<Claim> {
    let [only] = scope.mentions.list.as_slice() else { return Vec::new() };
    let words = scope.mentions.tokens.iter().filter(|token| token.is_word).count();
    let is_muscle = only.candidates.iter().all(|id| scope.vocabulary.kind(*id) == Kind::Muscle);
    if !is_muscle || words > only.tokens.1 - only.tokens.0 {
        return Vec::new();
    }
    let label = Label { kind: Some(ClaimKind::Supply), value: PartRole::Muscle, subject: PartRole::Nerve };
    let side = side_of(scope.vocabulary, nerve, PartRole::Nerve);
    value_claims(scope, 0, scope.mentions.tokens.len(), label, "", side.as_slice())
}

/// The part of a muscle with which a stretch begins, if a colon or dash follows it, and where that stands.
fn part_prefix(scope: &Scope<'_>, from: usize, to: usize) -> Option<(Side, usize)> {
    let tokens = &scope.mentions.tokens;
    let mention = scope.mentions.list.iter().find(|mention| mention.tokens.0 == from && mention.tokens.1 < to)?;
    let sign = tokens.get(mention.tokens.1)?.span.of(&scope.plain.text);
    let is_part = mention
        .candidates
        .iter()
        .all(|id| scope.vocabulary.kind(*id) == Kind::Muscle && scope.vocabulary.entry(*id).part_of.is_some());
    if !is_part || !lexicon::is_value_sign(sign) {
        return None;
    }
    let subject =
        sentences::Subject { candidates: mention.candidates.clone(), span: scope.plain.to_source(mention.span) };
    side_of(scope.vocabulary, &subject, PartRole::Muscle).map(|side| (side, mention.tokens.1))
}

fn word_value(scope: &Scope<'_>, from: usize, to: usize, role: PartRole) -> Option<Part> {
    let words = if role == PartRole::Modality { lexicon::MODALITIES } else { lexicon::JOINT_KINDS };
    let mut found: Option<(&'static str, Span)> = None;
    for token in scope.mentions.tokens.get(from..to)? {
        let word = token.span.of(&scope.plain.text).to_lowercase();
        if let Some((_, is)) = words.iter().find(|(known, _)| *known == word) {
            found = match found {
                Some((was, span)) if was != *is => (role == PartRole::Modality).then_some(("mixed", span)),
                _ => Some((is, token.span)),
            };
        }
    }
    found.map(|(is, span)| Part { role, span: scope.plain.to_source(span), what: What::Word(is) })
}

fn is_neural(vocabulary: &Vocabulary, side: &Side) -> bool {
    matches!(&side.what, What::Entry(ids) if ids.iter().all(|id| vocabulary.is_neural(*id)))
}

/// `S1-S3 -> pudendal nerve`, `C5, C6 = axillary nerve`
fn segments_first(scope: &Scope<'_>, from: usize, first: &Mention, to: usize) -> Option<Vec<Claim>> {
    let tokens = &scope.mentions.tokens;
    let text = &scope.plain.text;
    let reading = super::segments::read(text, tokens.get(..to)?, from)?;
    let word = |at: usize| tokens.get(at).map_or("", |token| token.span.of(text));
    let between: Vec<&str> = (reading.end..first.tokens.0).map(word).collect();
    let is_sign = between.iter().all(|word| lexicon::is_value_sign(word) || matches!(*word, ">" | "→" | "the"))
        && between.len() > usize::from(between.contains(&"the"));
    let rest =
        (first.tokens.1..to).all(|at| !word(at).chars().any(char::is_alphabetic) || matches!(word(at), "n" | "nerve"));
    if !is_sign || !rest {
        return None;
    }
    let subject = sentences::Subject { candidates: first.candidates.clone(), span: scope.plain.to_source(first.span) };
    let side = side_of(scope.vocabulary, &subject, PartRole::Nerve)
        .or_else(|| side_of(scope.vocabulary, &subject, PartRole::Muscle))?;
    let segments = scope.plain.to_source(reading.span);
    let parts = vec![
        Part { role: PartRole::Structure, span: side.span, what: side.what },
        Part { role: PartRole::Segments, span: segments, what: What::Segments(reading.main, reading.lesser) },
    ];
    let span = segments.cover(side.span);
    Some(vec![Claim {
        kind: ClaimKind::Roots,
        span,
        parts,
        negated: false,
        hedged: false,
        all: false,
        block: scope.block,
        key: None,
    }])
}

/// `FCU -> ulnar n.`, `Axillary nerve: deltoid, teres minor`: a muscle and a nerve with nothing but a sign between them.
fn arrow(scope: &Scope<'_>, from: usize, to: usize) -> Vec<Claim> {
    let tokens = &scope.mentions.tokens;
    let text = &scope.plain.text;
    let word = |at: usize| tokens.get(at).map_or("", |token| token.span.of(text));
    let Some(first) = scope.mentions.list.iter().find(|mention| mention.tokens.0 >= from && mention.tokens.1 <= to)
    else {
        return Vec::new();
    };
    if let Some(claims) = segments_first(scope, from, first, to) {
        return claims;
    }
    if (from..first.tokens.0)
        .any(|at| word(at).chars().any(char::is_alphanumeric) && !lexicon::is_determiner(&word(at).to_lowercase()))
    {
        return Vec::new();
    }
    let mut sign = first.tokens.1;
    while sign < to
        && (matches!(word(sign), "n" | "." | "m")
            || lexicon::is_part_noun(&word(sign).to_lowercase())
            || matches!(word(sign), "medial" | "lateral"))
    {
        sign += 1;
    }
    if word(sign) == "(" {
        sign = (sign..to).find(|at| word(*at) == ")").map_or(to, |close| close + 1);
    }
    let is_sign =
        lexicon::is_value_sign(word(sign)) || word(sign) == "→" || (word(sign) == "-" && word(sign + 1) == ">");
    if !is_sign || sentences::is_sentence(scope, sign + 1, to) {
        return Vec::new();
    }
    // Anything but names, segments and what joins them is a sentence of another kind.
    let mut at = sign + 1;
    while at < to {
        if let Some(mention) = scope.mentions.list.iter().find(|mention| mention.tokens.0 == at) {
            at = mention.tokens.1;
            continue;
        }
        if let Some(reading) = super::segments::read(text, tokens.get(..to).unwrap_or_default(), at) {
            at = reading.end;
            continue;
        }
        let lower = word(at).to_lowercase();
        let joins = !lower.chars().any(char::is_alphabetic)
            || lexicon::is_conjunction(&lower)
            || lexicon::is_determiner(&lower)
            || lexicon::is_part_noun(&lower)
            || lexicon::joins_values(&lower);
        if word(at) == "(" {
            at = (at..to).find(|at| word(*at) == ")").map_or(to, |close| close + 1);
            continue;
        }
        if !joins {
            return Vec::new();
        }
        at += 1;
    }
    let subject = sentences::Subject { candidates: first.candidates.clone(), span: scope.plain.to_source(first.span) };
    if let Some(side) = side_of(scope.vocabulary, &subject, PartRole::Nerve)
        .or_else(|| side_of(scope.vocabulary, &subject, PartRole::Muscle))
    {
        let label = Label { kind: Some(ClaimKind::Roots), value: PartRole::Segments, subject: PartRole::Structure };
        let claims = value_claims(scope, sign + 1, to, label, "", std::slice::from_ref(&side));
        let names = scope.mentions.list.iter().any(|mention| mention.tokens.0 > sign && mention.tokens.1 <= to);
        if !claims.is_empty() && !names {
            return claims;
        }
        let is_arrow = word(sign) == "→" || word(sign + 1) == ">";
        if is_arrow && is_neural(scope.vocabulary, &side) {
            let label = Label { kind: Some(ClaimKind::Branching), value: PartRole::Nerve, subject: PartRole::Parent };
            let has_muscles = !sentences::values(scope, sign + 1, to, PartRole::Muscle).is_empty();
            if !has_muscles {
                return value_claims(scope, sign + 1, to, label, "", std::slice::from_ref(&side));
            }
        }
    }
    let pairs = [(PartRole::Muscle, PartRole::Nerve), (PartRole::Nerve, PartRole::Muscle)];
    for (own, other) in pairs {
        let Some(side) = side_of(scope.vocabulary, &subject, own) else { continue };
        let is_group =
            matches!(&side.what, What::Entry(ids) if ids.iter().any(|id| scope.vocabulary.kind(*id) == Kind::Group));
        let values = sentences::values(scope, sign + 1, to, other);
        if values.is_empty() || is_group {
            continue;
        }
        let label = Label { kind: Some(ClaimKind::Supply), value: other, subject: own };
        return value_claims(scope, sign + 1, to, label, "", &[side]);
    }
    Vec::new()
}
