//! Claims of labels: `Innervation: axillary nerve (C5, C6)`, a heading `## Innervates` with a list below, `FCU -> ulnar n.`
//!
//! A block is cut into stretches at semicolons, full stops and line ends, and a stretch into pieces at colons, dashes and
//! arrows. Each piece is a head, which tells of whom and in which relation, or a value ([`heads`]). Of whom a value speaks is
//! told by the head before it, by the name with which its line begins, or by what the block stands under; in which relation,
//! by the label before it or above it, or else by the kinds of subject and value ([`relate`]).

mod heads;
mod relate;
mod stretches;
mod values;

pub use self::heads::{Head, nouns, read as head};
use self::relate::Who;
pub use self::relate::meanings;
use self::stretches::{Piece, begins_line, label_without_sign, pieces, stretches};
pub use self::values::{completed_values, value_claims};
use super::sentences::{self, Scope, Subject};
use super::subjects::Above;
use super::{Claim, ClaimKind};
use fascicle_model::Kind;

use crate::lexicon::{self, Label};
use crate::text::Mark;

/// The sign before a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// Nothing.
    None,
    /// A colon, a dash, an equals sign, dots.
    Colon,
    /// An arrow to the right.
    Right,
    /// An arrow to the left.
    Left,
}

/// What is known at a place of a line.
struct State {
    /// Of whom the lines speak, until another name leads one.
    lead: Who,
    /// Of whom the line speaks.
    who: Who,
    /// Words for the part that is meant.
    parts: Vec<String>,
    /// The label before, which holds until the line ends.
    label: Option<(Label, String)>,
    /// Something stood before that was not understood: only a label tells what a value is.
    unclear: bool,
}

/// Reads the labels in a block that stands under `above`.
pub fn read(scope: &Scope<'_>, above: &Above) -> Vec<Claim> {
    let mut claims = brackets(scope);
    let mut state = State { lead: Who::Above, who: Who::Above, parts: Vec::new(), label: None, unclear: false };
    let mut labelled = false;
    for (from, to) in stretches(scope) {
        if begins_line(scope, from) {
            state.who = state.lead.clone();
            state.label = None;
            state.parts.clear();
            state.unclear = false;
        }
        let pieces = pieces(scope, from, to);
        if is_legend(scope, &pieces) {
            continue;
        }
        if pieces.len() > 1 {
            claims.extend(chain(scope, above, &pieces, &mut state, labelled));
            // "**Shoulder.** … The rotator cuff blends with it: A above, B below. Nerves: …": a sentence with a colon in
            // the middle of the line does not change of whom the line speaks.
            if state.unclear && !begins_line(scope, from) {
                state.who = state.lead.clone();
            }
        } else if let Some((label, word, value)) = label_without_sign(scope, from, to) {
            state.label = Some((label, word.clone()));
            claims.extend(labelled_runs(scope, (value, to), (label, &word), &state));
        } else if let Some(cut) = set_off(scope, from, to) {
            let own = [Piece { from, to: cut, sign: Sign::None }, Piece { from: cut, to, sign: Sign::Colon }];
            claims.extend(chain(scope, above, &own, &mut state, labelled));
        } else if let Some(piece) = pieces.first() {
            claims.extend(single(scope, above, (from, piece), &mut state, labelled));
        }
        labelled |= state.label.is_some();
    }
    if above.silent {
        // Below a heading of vessels or neighbours, what supplies is no nerve.
        claims.retain(|claim| claim.kind != ClaimKind::Supply);
    }
    claims
}

/// What a text by itself tells under a label of what it stands under.
pub fn labelled_value(scope: &Scope<'_>, label: Label, word: &str) -> Vec<Claim> {
    relate::labelled(scope, (0, scope.mentions.tokens.len()), (label, word), &Who::Above, &[])
}

/// What a muscle does, in brackets behind it: "fibularis longus (everts the foot)".
fn brackets(scope: &Scope<'_>) -> Vec<Claim> {
    let word = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    let mut claims = Vec::new();
    for mention in &scope.mentions.list {
        let mut open = mention.tokens.1;
        while matches!(word(open), "n" | "nn" | "." | "m" | "*") && !matches!(word(open), "(" | "[") {
            open += 1;
        }
        // A name with its bracket right behind it is read in sentences; here the shortened noun stands between.
        let is_shortened = open > mention.tokens.1;
        let is_muscle = mention.candidates.iter().all(|id| scope.vocabulary.kind(*id) == Kind::Muscle);
        if !matches!(word(open), "(" | "[") || !(is_muscle || is_shortened) {
            continue;
        }
        let close = (open..scope.mentions.tokens.len()).take(16).find(|at| matches!(word(*at), ")" | "]"));
        let Some(close) = close else { continue };
        let who = Who::Named(vec![Subject {
            candidates: mention.candidates.clone(),
            span: scope.plain.to_source(mention.span),
        }]);
        let inside = relate::bare(scope, (open + 1, close), Sign::Colon, &who, &[]);
        claims.extend(
            inside
                .into_iter()
                .filter(|claim| claim.kind == ClaimKind::Action || (is_shortened && claim.kind == ClaimKind::Roots)),
        );
    }
    claims
}

/// A stretch without a sign. "**Deltoid.** Nerve: …": the name leads the line, whatever it is to what stands above.
fn single(
    scope: &Scope<'_>,
    above: &Above,
    (start, piece): (usize, &Piece),
    state: &mut State,
    labelled: bool,
) -> Vec<Claim> {
    let leads = begins_line(scope, start) && is_strong(scope, piece.from) && piece.to < scope.mentions.tokens.len();
    let head = if leads { heads::read(scope, piece.from, piece.to, &above.nouns) } else { None };
    let claims = name_or_value(scope, above, (start, piece), state, labelled);
    if let Some(head) = head.filter(Head::is_only_names) {
        state.lead = Who::Named(head.names);
        state.who = state.lead.clone();
    }
    claims
}

/// A name or label that leads what follows it, or a value.
fn name_or_value(
    scope: &Scope<'_>,
    above: &Above,
    (start, piece): (usize, &Piece),
    state: &mut State,
    labelled: bool,
) -> Vec<Claim> {
    let (from, to) = (piece.from, piece.to);
    let lettered = lettered_part(scope, above, (from, to));
    if !lettered.is_empty() {
        return lettered;
    }
    // Whether it is a sentence costs a reading of it, and is asked for only where it matters.
    let mut known = None;
    let mut is_sentence = || *known.get_or_insert_with(|| sentences::is_sentence(scope, from, to));
    // "wrist drop" has a verb in it, and is a sign all the same.
    let tells_signs = |label: &Option<(Label, String)>| {
        label.as_ref().is_some_and(|(label, _)| label.kind == Some(ClaimKind::Deficit))
    };
    if continues(scope, from) && (state.label.is_some() || matches!(state.who, Who::Named(_))) && !is_sentence() {
        if let Some((label, word)) = &state.label {
            let claims = relate::labelled(scope, (from, to), (*label, word), &state.who, &state.parts);
            // "root value C5, C6; purely sensory": what does not fit the label is a value by itself.
            if !claims.is_empty() || label.kind != Some(ClaimKind::Roots) {
                return claims;
            }
        }
        if matches!(state.who, Who::Named(_)) && !state.unclear && !above.silent {
            return relate::bare(scope, (from, to), Sign::Colon, &state.who, &state.parts);
        }
    }
    if let Some(head) = above.movement.as_ref().filter(|_| !labelled && !above.silent)
        && matches!(state.who, Who::Above)
        && !is_sentence()
    {
        let claims = relate::movers(scope, (from, to), head);
        if !claims.is_empty() {
            return claims;
        }
    }
    let is_under = above.label.is_some() || above.names.is_some() || above.prose_names.is_some() || above.is_part;
    if !labelled && is_under && matches!(state.who, Who::Above) && (tells_signs(&above.label) || !is_sentence()) {
        if let Some((label, word)) = &above.label {
            let claims = relate::labelled(scope, (from, to), (*label, word), &Who::Above, &above.parts);
            if !claims.is_empty() {
                return claims;
            }
        } else if let Some(names) = above.names.as_ref().filter(|_| !above.silent) {
            let claims = below_place(scope, (from, to), names);
            if !claims.is_empty() {
                return claims;
            }
            let claims = relate::bare(scope, (from, to), Sign::None, &Who::Named(names.clone()), &[]);
            if !claims.is_empty() {
                return claims;
            }
        } else if let Some(names) = above.prose_names.as_ref().filter(|_| !above.silent) {
            let mut claims = relate::bare(scope, (from, to), Sign::None, &Who::Named(names.clone()), &[]);
            claims.retain(tells_by_itself);
            if !claims.is_empty() {
                return claims;
            }
        } else if above.is_part && !above.silent {
            return relate::bare(scope, (from, to), Sign::None, &Who::Above, &above.parts);
        }
    }
    if is_under && !labelled && !above.silent && matches!(state.who, Who::Above) && !is_sentence() {
        let claims = of_nerve_above(scope, (from, to));
        if !claims.is_empty() {
            return claims;
        }
    }
    let leads = begins_line(scope, start);
    if leads && !above.silent {
        // "Ulnar nerve C8, T1"
        if let Some(claims) = beside(scope, from, to, &above.nouns) {
            return claims;
        }
    }
    if !leads && !state.unclear && !above.silent && matches!(state.who, Who::Named(_)) && !is_sentence() {
        // "**Plantaris.** Tibial nerve."
        return relate::bare(scope, (from, to), Sign::Colon, &state.who, &state.parts);
    }
    if leads && let Some(head) = heads::read(scope, from, to, &above.nouns).filter(|head| !head.names.is_empty()) {
        // "**Deltoid.** Nerve: …": the name leads the line.
        if head.is_only_names() || is_strong(scope, from) {
            state.lead = Who::Named(head.names);
            state.who = state.lead.clone();
            state.unclear = !head.whole;
        }
    } else if leads && is_strong(scope, from) && !is_sentence() {
        state.lead = Who::Nobody;
        state.who = Who::Nobody;
    }
    Vec::new()
}

/// "a purely sensory nerve", "C5 and C6": what nothing but a nerve can be or have, below whatever label the line stands.
fn of_nerve_above(scope: &Scope<'_>, value: (usize, usize)) -> Vec<Claim> {
    let above = scope
        .subjects
        .first()
        .filter(|subject| subject.candidates.iter().all(|id| scope.vocabulary.kind(*id) == Kind::Nerve));
    let Some(nerve) = above else { return Vec::new() };
    let mut claims = relate::bare(scope, value, Sign::None, &Who::Named(vec![nerve.clone()]), &[]);
    claims.retain(|claim| matches!(claim.kind, ClaimKind::Modality | ClaimKind::Roots));
    claims
}

/// Whether a value tells its relation by what it is: segments, a movement, a kind. A name does not.
const fn tells_by_itself(claim: &Claim) -> bool {
    use ClaimKind as K;
    matches!(claim.kind, K::Roots | K::Modality | K::Action | K::Joint | K::Count)
}

/// Muscles below a place below a nerve ("Ulnar nerve", "Forearm"): the nerve supplies them there.
fn below_place(scope: &Scope<'_>, value: (usize, usize), names: &[Subject]) -> Vec<Claim> {
    let kind_is = |subject: &Subject, is: &dyn Fn(Kind) -> bool| {
        subject.candidates.iter().all(|id| is(scope.vocabulary.kind(*id)))
    };
    let is_place = |subject: &Subject| {
        kind_is(subject, &|kind| matches!(kind, Kind::Landmark | Kind::Joint | Kind::Skin | Kind::Group))
    };
    if !names.iter().all(is_place) {
        return Vec::new();
    }
    let above = scope.subjects.iter().find(|subject| !is_place(subject));
    let Some(nerve) = above.filter(|subject| subject.candidates.iter().all(|id| scope.vocabulary.is_neural(*id)))
    else {
        return Vec::new();
    };
    let mut claims = relate::bare(scope, value, Sign::None, &Who::Named(vec![nerve.clone()]), &[]);
    claims.retain(|claim| claim.kind == ClaimKind::Supply);
    claims
}

/// "(a) abductor hallucis, medial plantar nerve": a part of a picture with what it is told of.
fn lettered_part(scope: &Scope<'_>, above: &Above, (from, to): (usize, usize)) -> Vec<Claim> {
    let word = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    if above.silent || word(from) != "(" || word(from + 2) != ")" || word(from + 1).len() != 1 {
        return Vec::new();
    }
    let Some(comma) = (from..to).find(|at| word(*at) == ",") else { return Vec::new() };
    let head =
        heads::read(scope, from + 3, comma, &above.nouns).filter(|head| head.is_only_names() && head.names.len() == 1);
    let Some(head) = head.filter(|_| !sentences::is_sentence(scope, from, to)) else { return Vec::new() };
    relate::bare(scope, (comma + 1, to), Sign::Colon, &Who::Named(head.names), &[])
}

/// Names with their segments right behind them, and nothing else.
fn beside(scope: &Scope<'_>, from: usize, to: usize, nouns: &[String]) -> Option<Vec<Claim>> {
    let last = scope.mentions.list.iter().rfind(|mention| mention.tokens.0 >= from && mention.tokens.1 < to)?;
    let cut = last.tokens.1;
    let has_brackets = (from..to).any(|at| {
        matches!(scope.mentions.tokens.get(at).map(|token| token.span.of(&scope.plain.text)), Some("(" | "["))
    });
    let head = heads::read(scope, from, cut, nouns).filter(|head| head.is_only_names() && !has_brackets)?;
    let value = heads::read(scope, cut, to, &[])
        .filter(|value| value.whole && value.names.is_empty() && value.label.is_none())?;
    value.segments.as_ref()?;
    let claims = relate::bare(scope, (cut, to), Sign::Colon, &Who::Named(head.names), &[]);
    (!claims.is_empty()).then_some(claims)
}

/// Names each with its segments right behind it, and commas between them.
fn each_beside(scope: &Scope<'_>, (from, to): (usize, usize)) -> Vec<Claim> {
    let tokens = &scope.mentions.tokens;
    let word = |at: usize| tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    let is_segment = |at: usize| crate::claims::segments::read(&scope.plain.text, tokens, at).is_some();
    let (mut claims, mut start, mut at) = (Vec::new(), from, from);
    while at < to {
        if !is_segment(at) || at == start {
            at += 1;
            continue;
        }
        let end = crate::claims::segments::read(&scope.plain.text, tokens, at).map_or(at + 1, |reading| reading.end);
        let Some(head) = heads::read(scope, start, at, &["nerve".to_owned()])
            .filter(|head| head.is_only_names() && head.names.len() == 1)
        else {
            return Vec::new();
        };
        claims.extend(relate::bare(scope, (at, end.min(to)), Sign::Colon, &Who::Named(head.names), &[]));
        at = end;
        while at < to && matches!(word(at), "," | "and" | ";" | ".") {
            at += 1;
        }
        start = at;
    }
    if start < to { Vec::new() } else { claims }
}

/// A stretch of several pieces.
fn chain(scope: &Scope<'_>, above: &Above, pieces: &[Piece], state: &mut State, labelled: bool) -> Vec<Claim> {
    let mut claims = Vec::new();
    let mut own = false;
    for (at, piece) in pieces.iter().enumerate() {
        let is_last = at + 1 == pieces.len();
        let nouns = state.label.as_ref().map_or_else(|| above.nouns.clone(), |(_, word)| nouns(word));
        let head = if is_last { None } else { heads::read(scope, piece.from, piece.to, &nouns) };
        match head {
            Some(head) if at == 0 => {
                own = head.label.is_some();
                let next = pieces.get(1);
                if let Some(next) = next.filter(|_| head.whole && pieces.len() == 2 && !own) {
                    let value = (next.from, next.to);
                    if let Some(segments) = head.segments.as_ref().filter(|_| head.names.is_empty()) {
                        return relate::segments_first(scope, value, segments, &nouns);
                    }
                    if head.movement.is_some() {
                        return if above.silent { Vec::new() } else { relate::movers(scope, value, &head) };
                    }
                }
                if let Some((label, word)) = above.label.as_ref().filter(|_| above.is_of_names && !labelled)
                    && head.is_only_names()
                    && matches!(label.kind, Some(ClaimKind::Supply | ClaimKind::Branching | ClaimKind::Membership))
                    && !above.silent
                {
                    // "thoracodorsal nerve → latissimus dorsi" below *Branches of the posterior cord*
                    let own =
                        relate::labelled(scope, (piece.from, piece.to), (*label, word), &Who::Above, &above.parts);
                    claims.extend(own);
                }
                state.unclear = !head.whole;
                state.parts = head.parts;
                if !head.names.is_empty() {
                    state.who = Who::Named(head.names);
                }
                state.label = head.label;
                continue;
            }
            Some(head) if head.is_only_label() => {
                own = true;
                if at == 1 && begins_line(scope, pieces.first().map_or(0, |first| first.from)) {
                    // "**Deltoid**: N: …": what stands in the lines below may go on with it.
                    state.lead = state.who.clone();
                }
                state.label = head.label;
                if !head.parts.is_empty() {
                    state.parts = head.parts;
                }
                continue;
            }
            // "Digastric: anterior belly: …"
            Some(head) if head.is_only_parts() => {
                state.parts = head.parts;
                continue;
            }
            Some(head) if head.is_only_names() && head.names.iter().all(|name| is_part(scope, name)) => {
                state.who = Who::Named(head.names);
                continue;
            }
            None if at == 0 && !is_last => {
                state.unclear = true;
                state.label = None;
                state.parts.clear();
                let last = piece.to.checked_sub(1).and_then(|at| scope.mentions.tokens.get(at));
                let last = last.map_or("", |token| token.span.of(&scope.plain.text));
                if is_strong(scope, piece.from) && begins_line(scope, piece.from) {
                    state.lead = Who::Nobody;
                    state.who = Who::Nobody;
                } else if matches!(last, "one" | "ones" | "other" | "others") {
                    // "The medial one: …" is not the one that was named before.
                    state.who = Who::Nobody;
                }
                continue;
            }
            _ => {}
        }
        if let Some((label, word, from)) = label_without_sign(scope, piece.from, piece.to) {
            // "Deltoid: origin the acromion"
            own = true;
            state.label = Some((label, word));
            let behind = Piece { from, ..*piece };
            claims.extend(value(scope, above, &behind, state, labelled, own));
            continue;
        }
        claims.extend(value(scope, above, piece, state, labelled, own));
    }
    claims
}

/// Whether a name is that of a part of a muscle.
fn is_part(scope: &Scope<'_>, name: &Subject) -> bool {
    name.candidates
        .iter()
        .all(|id| scope.vocabulary.kind(*id) == Kind::Muscle && scope.vocabulary.entry(*id).part_of.is_some())
}

/// Whether a stretch tells what its abbreviations stand for: "MN = median nerve, UN = ulnar nerve".
fn is_legend(scope: &Scope<'_>, pieces: &[Piece]) -> bool {
    let named = |piece: &Piece, last: bool| {
        let mut inside = scope.mentions.list.iter().filter(|m| m.tokens.0 >= piece.from && m.tokens.1 <= piece.to);
        if last { inside.next_back() } else { inside.next() }
    };
    pieces.windows(2).any(|pair| match pair {
        [a, b] if b.sign == Sign::Colon => match (named(a, true), named(b, false)) {
            (Some(a), Some(b)) => a.candidates.iter().any(|id| b.candidates.contains(id)),
            _ => false,
        },
        _ => false,
    })
}

/// A value with its label, and with the labels of ends of a muscle that stand in it behind commas: "origin: manubrium and
/// clavicle, *insertion* mastoid process".
fn labelled_runs(
    scope: &Scope<'_>,
    (from, to): (usize, usize),
    (label, word): (Label, &str),
    state: &State,
) -> Vec<Claim> {
    let of = |place: (usize, usize), label: Label, word: &str| {
        relate::labelled(scope, place, (label, word), &state.who, &state.parts)
    };
    let is_comma =
        |at: &usize| scope.mentions.tokens.get(*at).is_some_and(|token| token.span.of(&scope.plain.text) == ",");
    let next = (from..to).filter(is_comma).find_map(|comma| {
        let (label, word, value) = label_without_sign(scope, comma + 1, to)?;
        (label.kind == Some(ClaimKind::Attachment)).then_some((comma, label, word, value))
    });
    match next.filter(|_| label.kind == Some(ClaimKind::Attachment)) {
        Some((comma, next, next_word, value)) => {
            let mut claims = of((from, comma), label, word);
            claims.extend(labelled_runs(scope, (value, to), (next, &next_word), state));
            claims
        }
        None => of((from, to), label, word),
    }
}

/// A value behind a sign.
fn value(scope: &Scope<'_>, above: &Above, piece: &Piece, state: &State, labelled: bool, own: bool) -> Vec<Claim> {
    let place = (piece.from, piece.to);
    // "long head: A; short head: B → C · NERVE; NERVE": behind a dot the muscle as a whole goes on, not its last part.
    let before = piece.from.checked_sub(1).and_then(|at| scope.mentions.tokens.get(at));
    let has_dot = before.is_some_and(|token| token.span.of(&scope.plain.text) == "·");
    let is_of_part = !state.parts.is_empty()
        || matches!(&state.who, Who::Named(names) if names.iter().any(|name| is_part(scope, name)));
    if has_dot && is_of_part {
        return Vec::new();
    }
    let lettered = lettered_part(scope, above, place);
    if !lettered.is_empty() {
        return lettered;
    }
    if let Some((label, word)) = &state.label {
        if label.kind == Some(ClaimKind::Roots) && !matches!(state.who, Who::Named(_)) {
            // "Root values: musculocutaneous C5–7, axillary C5, C6"
            let own = each_beside(scope, place);
            if !own.is_empty() {
                return own;
            }
        }
        return labelled_runs(scope, place, (*label, word), state);
    }
    let tells_signs = above.label.as_ref().is_some_and(|(label, _)| label.kind == Some(ClaimKind::Deficit));
    if own || (!tells_signs && sentences::is_sentence(scope, piece.from, piece.to)) {
        return Vec::new();
    }
    let is_between_nerves = matches!(piece.sign, Sign::Left | Sign::Right)
        && above.label.as_ref().is_some_and(|(label, _)| label.kind == Some(ClaimKind::Branching));
    if let Some((label, word)) = above.label.as_ref().filter(|_| !labelled && !is_between_nerves) {
        let has_own = matches!(state.who, Who::Named(_)) || !state.parts.is_empty();
        if has_own {
            let parts = if state.parts.is_empty() { &above.parts } else { &state.parts };
            let claims = relate::labelled(scope, place, (*label, word), &state.who, parts);
            if !claims.is_empty() {
                return claims;
            }
        }
    }
    let is_told = matches!(state.who, Who::Named(_)) || !state.parts.is_empty();
    if state.unclear || above.silent || !is_told {
        return Vec::new();
    }
    relate::bare(scope, place, piece.sign, &state.who, &state.parts)
}

/// Where the emphasis ends with which a stretch begins, if what is emphasized is a head that tells a relation:
/// "*Origin, long head* supraglenoid tubercle".
fn set_off(scope: &Scope<'_>, from: usize, to: usize) -> Option<usize> {
    let tokens = &scope.mentions.tokens;
    let first = tokens.get(from)?;
    let mark = [Mark::Strong, Mark::Emphasis].into_iter().find(|mark| scope.plain.has_mark(first.span, *mark))?;
    let cut = (from..to).find(|at| tokens.get(*at).is_some_and(|token| !scope.plain.has_mark(token.span, mark)))?;
    if cut <= from + heads::tag(scope, from, to) {
        return None; // the letter of a plate
    }
    heads::read(scope, from, cut, &[]).filter(|head| head.whole && head.label.is_some()).map(|_| cut)
}

/// Whether a stretch goes on with the value before it: a semicolon stands between.
fn continues(scope: &Scope<'_>, from: usize) -> bool {
    from.checked_sub(1)
        .and_then(|before| scope.mentions.tokens.get(before))
        .is_some_and(|token| token.span.of(&scope.plain.text) == ";")
}

/// Whether a stretch begins in bold.
fn is_strong(scope: &Scope<'_>, from: usize) -> bool {
    let first = scope.mentions.tokens.iter().skip(from).find(|token| token.is_word);
    first.is_some_and(|token| scope.plain.has_mark(token.span, Mark::Strong))
        && lexicon::label_of(first.map_or("", |token| token.span.of(&scope.plain.text))).is_none()
}
