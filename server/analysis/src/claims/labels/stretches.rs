//! How a block falls into stretches that can hold a statement each, and a stretch into pieces at its signs.

use fascicle_model::Kind;

use super::Sign;
use super::heads;
use crate::claims::sentences::Scope;
use crate::claims::{ClaimKind, segments};
use crate::lexicon::{self, Label};
use crate::text::{Mark, Span};

/// A run of tokens between signs.
#[derive(Clone, Copy, Debug)]
pub struct Piece {
    /// First token.
    pub from: usize,
    /// The token after the last.
    pub to: usize,
    /// What stands before it.
    pub sign: Sign,
}

fn word<'s>(scope: &Scope<'s>, at: usize) -> &'s str {
    scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text))
}

/// The stretches of a block: between semicolons, full stops and line ends, and before a dash that a label follows.
pub fn stretches(scope: &Scope<'_>) -> Vec<(usize, usize)> {
    let tokens = &scope.mentions.tokens;
    let mut list = Vec::new();
    let mut start = 0;
    let mut depth = 0_u32;
    for (at, token) in tokens.iter().enumerate() {
        let here = word(scope, at);
        match here {
            "(" | "[" => depth += 1,
            ")" | "]" => depth = depth.saturating_sub(1),
            _ => {}
        }
        let next = tokens.get(at + 1);
        let gap = next.map_or(Span::default(), |next| Span::new(token.span.end, next.span.start));
        let is_break = next.is_some() && is_line_end(scope, gap);
        let is_stop = here == "."
            && !gap.is_empty()
            && next.is_some_and(|next| next.span.of(&scope.plain.text).starts_with(char::is_uppercase))
            && at.checked_sub(1).is_some_and(|before| !ends_short(scope, before))
            && at + 1 > start + heads::tag(scope, start, at + 1);
        if (depth == 0 && (here == ";" || is_stop)) || is_break {
            list.push((start, if is_break && !is_stop && here != ";" { at + 1 } else { at }));
            start = at + 1;
            depth = if is_break { 0 } else { depth };
        }
    }
    if start < tokens.len() {
        list.push((start, tokens.len()));
    }
    list
}

/// Whether a full stop behind a token ends no sentence: "n.", "Ns.", "Dist."
fn ends_short(scope: &Scope<'_>, at: usize) -> bool {
    let here = word(scope, at);
    let has_digit = here.bytes().any(|c| c.is_ascii_digit()); // "L1." ends one
    here == "." || (here.len() <= 2 && !has_digit) || lexicon::is_short_word(&here.to_lowercase())
}

/// Whether a gap between two tokens holds the end of a line.
fn is_line_end(scope: &Scope<'_>, gap: Span) -> bool {
    let shown = gap.of(&scope.plain.text);
    shown.contains('\n') || (!shown.is_empty() && scope.plain.is_line_break(gap))
}

/// Whether a stretch begins a line of the source.
pub fn begins_line(scope: &Scope<'_>, from: usize) -> bool {
    let tokens = &scope.mentions.tokens;
    let (Some(before), Some(first)) = (from.checked_sub(1).and_then(|at| tokens.get(at)), tokens.get(from)) else {
        return true;
    };
    is_line_end(scope, Span::new(before.span.end, first.span.start))
}

/// Cuts a stretch at its signs, outside of brackets, names and segments.
pub fn pieces(scope: &Scope<'_>, from: usize, to: usize) -> Vec<Piece> {
    let bracket = label_in_brackets(scope, from, to);
    let from = if bracket.is_some() { from } else { from + heads::tag(scope, from, to) };
    let mut list = Vec::new();
    let mut start = from;
    let mut before = Sign::None;
    let mut at = from;
    if let Some(close) = bracket {
        // "(nerve) tibial", "[N] tibial"
        list.push(Piece { from: from + 1, to: close, sign: Sign::None });
        before = Sign::Colon;
        start = close + 1;
        at = start;
    }
    let mentions = &scope.mentions.list;
    let mut next_mention = mentions.partition_point(|mention| mention.tokens.0 < from);
    while at < to {
        if let Some(mention) = mentions.get(next_mention)
            && mention.tokens.0 == at
        {
            next_mention += 1;
            at = mention.tokens.1.max(at + 1);
            continue;
        }
        while mentions.get(next_mention).is_some_and(|mention| mention.tokens.0 < at) {
            next_mention += 1;
        }
        let here = word(scope, at);
        if matches!(here, "(" | "[")
            && let Some(close) = (at..to).find(|at| matches!(word(scope, *at), ")" | "]"))
        {
            at = close + 1;
            continue;
        }
        if here.len() <= 2
            && here.starts_with(|c: char| c.is_ascii_uppercase())
            && let Some(reading) =
                segments::read(&scope.plain.text, scope.mentions.tokens.get(..to).unwrap_or_default(), at)
        {
            at = reading.end.max(at + 1);
            continue;
        }
        if let Some((sign, end)) = sign_at(scope, at, to) {
            if let Some(comma) = label_behind_comma(scope, start, at) {
                list.push(Piece { from: start, to: comma, sign: before });
                list.push(Piece { from: comma + 1, to: at, sign: Sign::Colon });
            } else if at > start {
                list.push(Piece { from: start, to: at, sign: before });
            }
            before = sign;
            start = end;
            at = end;
            continue;
        }
        at += 1;
    }
    if start < to {
        list.push(Piece { from: start, to, sign: before });
    }
    list
}

/// The end of the bracket with which a stretch begins, if it holds a label and a value stands behind it.
fn label_in_brackets(scope: &Scope<'_>, from: usize, to: usize) -> Option<usize> {
    let open = word(scope, from);
    let end = match open {
        "(" => ")",
        "[" => "]",
        _ => return None,
    };
    let close = (from + 1..(from + 6).min(to)).find(|at| word(scope, *at) == end)?;
    let tokens = &scope.mentions.tokens;
    let span = Span::new(tokens.get(from + 1)?.span.start, tokens.get(close.checked_sub(1)?)?.span.end);
    let written = span.of(&scope.plain.text);
    // "(a)" is a part of a picture; "[A]" tells the action.
    let is_letter = written.len() == 1 && !(open == "[" && written.bytes().all(|c| c.is_ascii_uppercase()));
    let is_label = lexicon::label_of(written).is_some_and(|label| label.kind.is_some());
    (is_label && !is_letter && close + 1 < to && word(scope, close + 1) != ":").then_some(close)
}

/// The comma behind which a piece is nothing but a label: "axillary nerve, action".
fn label_behind_comma(scope: &Scope<'_>, from: usize, to: usize) -> Option<usize> {
    let comma = (from..to).rev().take(5).find(|at| word(scope, *at) == ",").filter(|comma| *comma > from)?;
    let tokens = &scope.mentions.tokens;
    // "Deltoid, nerve:" is a head; only behind a value does a comma end it.
    if !is_sign_before(scope, from) {
        return None;
    }
    let span = Span::new(tokens.get(comma + 1)?.span.start, tokens.get(to.checked_sub(1)?)?.span.end);
    let is_label = lexicon::label_of(span.of(&scope.plain.text)).is_some_and(|label| label.kind.is_some());
    let is_part = || {
        let mut named = scope.mentions.list.iter().filter(|mention| mention.tokens == (comma + 1, to));
        named.next().is_some_and(|mention| {
            mention
                .candidates
                .iter()
                .all(|id| scope.vocabulary.kind(*id) == Kind::Muscle && scope.vocabulary.entry(*id).part_of.is_some())
        })
    };
    (is_label || is_part()).then_some(comma)
}

fn is_sign_before(scope: &Scope<'_>, from: usize) -> bool {
    from.checked_sub(1).is_some_and(|before| lexicon::is_value_sign(word(scope, before)))
}

/// The sign that stands at a token, and the token behind it.
fn sign_at(scope: &Scope<'_>, at: usize, to: usize) -> Option<(Sign, usize)> {
    let tokens = &scope.mentions.tokens;
    let touches = |at: usize| match (tokens.get(at), tokens.get(at + 1)) {
        (Some(here), Some(next)) => here.span.end == next.span.start,
        _ => false,
    };
    let here = word(scope, at);
    let next = if touches(at) && at + 1 < to { word(scope, at + 1) } else { "" };
    // A shaft of any length with a point: "-->", "===>"; the point may stand before it.
    let shaft = |from: usize| (from..to).take_while(|at| matches!(word(scope, *at), "-" | "=" | "–")).count();
    let length = shaft(at);
    let is_joined = |from: usize, end: usize| (from..end).all(touches);
    if length > 1 && word(scope, at + length) == ">" && is_joined(at, at + length) {
        return Some((Sign::Right, at + length + 1));
    }
    if here == "<" && shaft(at + 1) > 1 && is_joined(at, at + shaft(at + 1)) {
        return Some((Sign::Left, at + 1 + shaft(at + 1)));
    }
    let sign = match (here, next) {
        ("-" | "=" | "–", ">") => (Sign::Right, at + 2),
        ("<", "-") => (Sign::Left, at + 2),
        // "Nerve? Tibial.": a label that asks
        ("?", "") if at > 0 && at + 1 < to && !is_asked_in_words(scope, at) => (Sign::Colon, at + 1),
        ("→" | "⟶" | "⇒" | "➔" | "►" | "▶", _) => (Sign::Right, at + 1),
        ("←" | "⟵" | "⇐", _) => (Sign::Left, at + 1),
        (":" | "=" | "—" | "…" | "|", _) => (Sign::Colon, at + 1),
        (".", ".") => {
            let dots = (at..to).take_while(|at| word(scope, *at) == ".").count();
            if dots < 3 {
                return None;
            }
            (Sign::Colon, at + dots)
        }
        // A dash or hyphen stands by itself; one between words joins them.
        ("–" | "-" | "·" | "•", _) if at > 0 && !touches(at - 1) || (here == "–" && !touches(at)) => {
            (Sign::Colon, at + 1)
        }
        _ => return None,
    };
    // "**Nerve:** –": a colon and a dash make one sign.
    match sign_at_once(scope, sign.1, to) {
        Some(end) => Some((sign.0, end)),
        None => Some(sign),
    }
}

/// Whether the stretch before a question mark is no label.
fn is_asked_in_words(scope: &Scope<'_>, at: usize) -> bool {
    let tokens = &scope.mentions.tokens;
    let begins = |from: usize| (from..at).all(|place| !matches!(word(scope, place), ":" | "?" | "."));
    let from = (0..at).rev().take_while(|from| begins(*from) && !is_break_behind(scope, *from, at)).last();
    let Some(from) = from else { return true };
    let span = tokens.get(from).zip(tokens.get(at - 1)).map(|(a, b)| Span::new(a.span.start, b.span.end));
    let label = span.and_then(|span| lexicon::label_of(span.of(&scope.plain.text)));
    label.is_none_or(|label| label.kind.is_none())
}

/// Whether a line ends between a token and another one.
fn is_break_behind(scope: &Scope<'_>, from: usize, to: usize) -> bool {
    let tokens = &scope.mentions.tokens;
    let gap = tokens.get(from).zip(tokens.get(to)).map(|(a, b)| Span::new(a.span.end, b.span.start));
    gap.is_some_and(|gap| gap.of(&scope.plain.text).contains('\n') || scope.plain.is_line_break(gap))
}

fn sign_at_once(scope: &Scope<'_>, at: usize, to: usize) -> Option<usize> {
    (at < to && matches!(word(scope, at), ":" | "–" | "—" | "=")).then_some(at + 1)
}

/// A label with which a stretch begins though no sign follows it: it is set off by its type (*Origin* coracoid process), or
/// the value fits it and nothing else stands there (N. median). With the label's words and the token where the value begins.
pub fn label_without_sign(scope: &Scope<'_>, from: usize, to: usize) -> Option<(Label, String, usize)> {
    let tokens = &scope.mentions.tokens;
    let mut begin = from + heads::tag(scope, from, to);
    while begin < to && lexicon::precedes_label(word(scope, begin)) {
        begin += 1;
    }
    if begin >= to || !lexicon::may_begin_label(word(scope, begin)) {
        return None;
    }
    // "**A** Ulnar nerve": a name takes what stands for an article in.
    let named_to = scope.mentions.list.iter().find(|mention| mention.tokens.0 == begin).map(|mention| mention.tokens.1);
    (1..=4).rev().filter(|len| begin + len < to).find_map(|len| {
        let end = begin + len;
        if named_to.is_some_and(|named| named > end) {
            return None;
        }
        let span = Span::new(tokens.get(begin)?.span.start, tokens.get(end - 1)?.span.end);
        let written = span.of(&scope.plain.text);
        let label = lexicon::label_of(written).filter(|label| label.kind.is_some())?;
        let end = if word(scope, end) == "." && !written.ends_with('.') { end + 1 } else { end };
        let dotted = end > begin + len || written.ends_with('.');
        let first = tokens.get(end).filter(|_| end < to)?;
        let set_off = [Mark::Strong, Mark::Emphasis]
            .into_iter()
            .any(|mark| scope.plain.has_mark(span, mark) != scope.plain.has_mark(first.span, mark));
        let is_capital = written.starts_with(char::is_uppercase);
        // In a chain of attachments the name follows at once: "origin the coracoid process".
        let named = |at: usize| scope.mentions.list.iter().any(|mention| mention.tokens.0 == at);
        let follows = named(end) || (lexicon::is_determiner(&word(scope, end).to_lowercase()) && named(end + 1));
        // "Proximal phalanx": an adjective right before a name belongs to it.
        let is_adjective = lexicon::ways::is_direction(&written.to_lowercase()) && named(end);
        let in_chain = label.kind == Some(ClaimKind::Attachment)
            && !lexicon::is_verb_label(written)
            && follows
            && written.len() > 2
            && !is_adjective;
        let is_count = label.kind == Some(ClaimKind::Count) && end + 1 == to;
        // "Root value C5, C6": segments cannot be anything else.
        let is_of_segments = label.kind == Some(ClaimKind::Roots)
            && segments::read(&scope.plain.text, tokens.get(..to).unwrap_or_default(), end)
                .is_some_and(|reading| reading.end >= to || matches!(word(scope, reading.end), "." | "," | "(" | ";"));
        let is_value = dotted && is_capital && (follows || written.len() > 2 || end + 3 > to);
        (in_chain || is_count || is_of_segments || is_value || (set_off && is_capital))
            .then(|| (label, written.to_owned(), end))
    })
}
