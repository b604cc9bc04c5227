//! Values: the claims that what stands behind a label, or in a cell, makes of its subjects.

use fascicle_model::{EntryId, Kind, Relation, Vocabulary};

use super::heads;
use crate::claims::sentences::{self, Scope, Side, side_of};
use crate::claims::{Claim, ClaimKind, Part, PartRole, What, segments};
use crate::lexicon::{self, Label};
use crate::text::{Mark, Span};
use crate::verdicts::can_pass;

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
    if let Some((part, behind)) = part_prefix(scope, from, to) {
        // "anterior belly: NERVE, posterior belly: NERVE"
        let cut = (behind..to).find(|at| part_prefix(scope, *at, to).is_some()).unwrap_or(to);
        claims.extend(value_claims(scope, behind, cut, label, word, &[part]));
        if cut < to {
            claims.extend(value_claims(scope, cut, to, label, word, subjects));
        }
        return claims;
    }
    for subject in subjects {
        let role = if kind == ClaimKind::Roots { PartRole::Structure } else { label.subject };
        let own = Part { role, span: subject.span, what: subject.what.clone() };
        let claim = |kind: ClaimKind, own: Part, mut parts: Vec<Part>| {
            let span = parts.iter().map(|part| part.span).reduce(Span::cover).unwrap_or_default();
            parts.insert(0, own);
            Claim { kind, span, parts, negated: false, hedged: false, all: false, block: scope.block, key: None }
        };
        match label.value {
            PartRole::Movement => {
                for (movement, target, is_everyday) in sentences::movement_values(scope, from, to) {
                    let everyday = Part { role: PartRole::Role, span: movement.span, what: What::Word("everyday") };
                    let everyday = Some(everyday).filter(|_| is_everyday && kind == ClaimKind::Action);
                    let mut parts = vec![Part { role: PartRole::Movement, span: movement.span, what: movement.what }];
                    let target = target.filter(|_| kind != ClaimKind::Joint);
                    parts.extend(target.map(|target| Part {
                        role: PartRole::Joint,
                        span: target.span,
                        what: target.what,
                    }));
                    parts.extend(everyday);
                    claims.push(claim(kind, own.clone(), parts));
                }
            }
            PartRole::Sign => {
                // "Movement lost": what stands there is lost altogether.
                let is_lost = word.to_lowercase().split(' ').any(lexicon::is_whole_loss);
                // "Deformity: hip flexion": how the limb stands is not what it cannot do.
                let is_posture = lexicon::tells_posture(word);
                for effect in sentences::effects(scope, from, to) {
                    if is_posture && effect.parts.iter().any(|part| part.role == PartRole::Movement) {
                        continue;
                    }
                    claims.push(Claim { all: effect.whole || is_lost, ..claim(kind, own.clone(), effect.parts) });
                }
            }
            PartRole::Modality | PartRole::JointKind => {
                let words = scope.mentions.tokens.get(from..to).unwrap_or_default();
                let is_only = |span: Span| lexicon::means_only(&span.of(&scope.plain.text).to_lowercase());
                let purely = words.iter().any(|token| is_only(token.span));
                let part = word_value(scope, from, to, label.value);
                claims.extend(part.map(|part| Claim { all: purely, ..claim(kind, own.clone(), vec![part]) }));
            }
            PartRole::Landmark if kind == ClaimKind::Attachment => {
                let end = lexicon::end_of_attachment(word);
                if is_neural(scope.vocabulary, &subject.what) {
                    let label =
                        Label { kind: Some(ClaimKind::Branching), value: PartRole::Parent, subject: PartRole::Nerve };
                    claims.extend(value_claims(scope, from, to, label, word, std::slice::from_ref(subject)));
                    continue;
                }
                for value in sentences::values(scope, from, to, PartRole::Landmark) {
                    let end = match far_end(scope, from, value.span) {
                        Some(Far::Arrow) if end == Some("origin") => Some("insertion"),
                        Some(Far::To) => None,
                        Some(Far::Beside("")) => continue,
                        Some(Far::Beside(side)) => Some(side),
                        _ => end,
                    };
                    let mut parts = vec![Part { role: PartRole::Landmark, span: value.span, what: value.what }];
                    parts.extend(end.map(|end| Part { role: PartRole::Role, span: value.span, what: What::Word(end) }));
                    claims.push(claim(kind, own.clone(), parts));
                }
            }
            PartRole::Number => {
                let parts = number(scope, from, to, word);
                claims.extend(parts.map(|parts| Claim { all: true, ..claim(kind, own.clone(), parts) }));
            }
            role => {
                let nouns = heads::nouns(word);
                // "Buccal" below *Branch of the facial nerve* is a branch, though a nerve has that name too.
                let is_branch = nouns.iter().any(|noun| noun.starts_with("branch"));
                // "Recurrent (thenar muscles)": what is in brackets is no part of the name.
                let text =
                    |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
                let close =
                    if text(to.saturating_sub(1)) == ")" { (from..to).find(|at| text(*at) == "(") } else { None };
                let end = close.unwrap_or(to);
                let mut values = if is_branch { completed_values(scope, from, end, role, &nouns) } else { Vec::new() };
                if values.is_empty() {
                    values = sentences::values(scope, from, to, role);
                }
                if values.is_empty() {
                    values = completed_values(scope, from, to, role, &nouns);
                }
                if kind == ClaimKind::Passage && role == PartRole::Nerve {
                    add_passers(scope, from, to, &mut values);
                }
                if values.is_empty() && kind == ClaimKind::Membership && role == PartRole::Group {
                    values.extend(beside_own_groups(scope, from, to, &subject.what));
                }
                for value in values {
                    let mut role = role;
                    if kind == ClaimKind::Passage && role == PartRole::Nerve {
                        role = sentences::passer_role(scope.vocabulary, &value.what).unwrap_or(role);
                    }
                    let mut parts = vec![Part { role, span: value.span, what: value.what }];
                    let mut through = false;
                    if kind == ClaimKind::Passage {
                        // What stands before the place tells how it is passed, or else the label.
                        let way =
                            if role == PartRole::Landmark { way_to(scope, from, value.span) } else { String::new() };
                        let told = word.to_lowercase();
                        through = lexicon::goes_through(&way) || lexicon::goes_through(&told);
                        let side = lexicon::side_of_passage(&way).or_else(|| lexicon::side_of_passage(&told));
                        parts.extend(side.map(|side| Part {
                            role: PartRole::Role,
                            span: value.span,
                            what: What::Word(side),
                        }));
                    }
                    claims.push(Claim { all: through, ..claim(kind, own.clone(), parts) });
                }
            }
        }
    }
    claims
}

/// How a stretch leads from one place to another.
#[derive(Clone, Copy)]
enum Far {
    /// "ischial spine → sacrum": what stands behind the arrow is the other end.
    Arrow,
    /// "from the sphenoid to the mandible": it may be the other end, or how far the same end reaches.
    To,
    /// "the line below the lesser trochanter": it only helps to find the place; the word that says on which side.
    Beside(&'static str),
}

/// Whether a place is one to which a line leads from another place.
fn far_end(scope: &Scope<'_>, from: usize, place: Span) -> Option<Far> {
    let tokens = &scope.mentions.tokens;
    let text = |at: usize| tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    let mention = scope.mentions.list.iter().find(|mention| scope.plain.to_source(mention.span).overlaps(place))?;
    let is_place = |at: usize| {
        let before = scope.mentions.list.iter().rev().find(|mention| mention.tokens.1 <= at);
        before.is_some_and(|mention| {
            mention.candidates.iter().all(|id| matches!(scope.vocabulary.kind(*id), Kind::Landmark | Kind::Joint))
        })
    };
    // "medial lip of the groove": the words that were read as a name are only its beginning
    let is_cut = !mention.span.of(&scope.plain.text).contains(" of ") && text(mention.tokens.1) == "of";
    if is_cut {
        return Some(Far::Beside(""));
    }
    let before = (from..mention.tokens.0).rev().find(|at| !lexicon::is_determiner(text(*at)));
    match before.map_or("", text) {
        "above" => return Some(Far::Beside("above")),
        "below" => return Some(Far::Beside("below")),
        word if lexicon::is_beside_place(word) => return Some(Far::Beside("")),
        _ => {}
    }
    if lexicon::is_arrow(text(from.checked_sub(1)?)) {
        if is_place(from - 1) || ends_segments(scope, from - 1) {
            return Some(Far::Arrow);
        }
        // "A: origin → insertion. B → insertion.": where arrows lead from end to end, one behind a name tells neither.
        let leads_on = |at: &usize| lexicon::is_arrow(text(*at)) && is_place(*at);
        return (0..scope.mentions.tokens.len()).any(|at| leads_on(&at)).then_some(Far::To);
    }
    before.filter(|before| text(*before) == "to" && is_place(*before)).map(|_| Far::To)
}

/// "C7–T1 →": whether segments stand right before a token, so that they tell levels of the spine.
pub fn ends_segments(scope: &Scope<'_>, at: usize) -> bool {
    let tokens = scope.mentions.tokens.get(..at).unwrap_or_default();
    let from = at.saturating_sub(LONGEST_SEGMENTS);
    (from..at).any(|first| segments::read(&scope.plain.text, tokens, first).is_some_and(|read| read.end == at))
}

/// No range of segments has more tokens.
const LONGEST_SEGMENTS: usize = 6;

/// Adds the muscles and vessels of a value that pass something, in the order of the text.
fn add_passers(scope: &Scope<'_>, from: usize, to: usize, values: &mut Vec<Side>) {
    let is_known = |side: &Side| match &side.what {
        What::Entry(ids) => ids.iter().all(|id| can_pass(scope.vocabulary, *id)),
        _ => false,
    };
    for side in sentences::values(scope, from, to, PartRole::Structure) {
        if is_known(&side) && !values.iter().any(|value| value.span.overlaps(side.span)) {
            values.push(side);
        }
    }
    values.sort_by_key(|side| side.span);
}

/// The words of a stretch before the place to which they lead ("behind the"), each with a space before it.
fn way_to(scope: &Scope<'_>, from: usize, place: Span) -> String {
    let before = scope.mentions.tokens.get(from..).unwrap_or_default().iter();
    let before = before.take_while(|token| !scope.plain.to_source(token.span).overlaps(place));
    before.fold(String::new(), |mut way, token| {
        way.push(' ');
        way.push_str(&token.span.of(&scope.plain.text).to_lowercase());
        way
    })
}

/// The part of a muscle with which a stretch begins, if a colon or dash follows it, or its nerve at once or behind a
/// comma; and where its value begins.
fn part_prefix(scope: &Scope<'_>, from: usize, to: usize) -> Option<(Side, usize)> {
    let tokens = &scope.mentions.tokens;
    let list = &scope.mentions.list;
    let place = list.iter().position(|mention| mention.tokens.0 == from && mention.tokens.1 < to)?;
    let mention = list.get(place)?;
    let next = mention.tokens.1;
    let sign = tokens.get(next)?.span.of(&scope.plain.text);
    let is_part = mention
        .candidates
        .iter()
        .all(|id| scope.vocabulary.kind(*id) == Kind::Muscle && scope.vocabulary.entry(*id).part_of.is_some());
    let behind = next + usize::from(sign == "," || lexicon::is_value_sign(sign));
    let follows = list.get(place + 1).is_some_and(|nerve| {
        nerve.tokens.0 == behind && nerve.candidates.iter().all(|id| scope.vocabulary.is_neural(*id))
    });
    if !is_part || !(lexicon::is_value_sign(sign) || follows) {
        return None;
    }
    let subject =
        sentences::Subject { candidates: mention.candidates.clone(), span: scope.plain.to_source(mention.span) };
    side_of(scope.vocabulary, &subject, PartRole::Muscle).map(|side| (side, behind))
}

/// Whether a stretch asks, denies or doubts, so that a word in it tells nothing.
fn is_doubtful(scope: &Scope<'_>, from: usize, to: usize) -> bool {
    scope.mentions.tokens.get(from..to).unwrap_or_default().iter().any(|token| {
        let word = token.span.of(&scope.plain.text);
        let lower = word.to_lowercase();
        word == "?"
            || lexicon::is_negation(&lower)
            || lexicon::is_hedge(&lower)
            || lexicon::asserts_nothing(&lower)
            || scope.plain.has_mark(token.span, Mark::Struck)
    })
}

fn word_value(scope: &Scope<'_>, from: usize, to: usize, role: PartRole) -> Option<Part> {
    if is_doubtful(scope, from, to) {
        return None;
    }
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
    // "both", of motor and sensory
    let both = || {
        let [only] = scope.mentions.tokens.get(from..to)? else { return None };
        let is_both = matches!(&*only.span.of(&scope.plain.text).to_lowercase(), "both" | "m+s" | "b");
        (is_both && role == PartRole::Modality).then_some(("mixed", only.span))
    };
    found.or_else(both).map(|(is, span)| Part { role, span: scope.plain.to_source(span), what: What::Word(is) })
}

/// Whether it is a nerve, a plexus or a root, whichever is meant.
pub fn is_neural(vocabulary: &Vocabulary, what: &What) -> bool {
    matches!(what, What::Entry(ids) if ids.iter().all(|id| vocabulary.is_neural(*id)))
}

/// Names of a value that leave out the noun which its label or header has: "medial" below *Cord*.
pub fn completed_values(scope: &Scope<'_>, from: usize, to: usize, role: PartRole, nouns: &[String]) -> Vec<Side> {
    if nouns.is_empty() {
        return Vec::new();
    }
    let tokens = &scope.mentions.tokens;
    let mut sides = Vec::new();
    let mut at = from;
    while at < to {
        let found = (1..=4).rev().filter(|len| at + len <= to).find_map(|len| {
            let span = Span::new(tokens.get(at)?.span.start, tokens.get(at + len - 1)?.span.end);
            let written = span.of(&scope.plain.text);
            // "Carpometacarpal of the thumb" for the carpometacarpal joint of the thumb
            let within = written.split_once(' ').map(|(first, rest)| {
                let names = nouns.iter().map(|noun| scope.names.lookup(&format!("{first} {noun} {rest}")));
                names.flatten().map(|name| name.entry).collect::<Vec<_>>()
            });
            let candidates =
                within.filter(|ids| !ids.is_empty()).unwrap_or_else(|| heads::completed(scope, written, nouns));
            let subject = sentences::Subject { candidates, span: scope.plain.to_source(span) };
            side_of(scope.vocabulary, &subject, role).map(|side| (side, at + len))
        });
        if let Some((side, end)) = found {
            sides.push(side);
            at = end;
            continue;
        }
        let word = tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
        let joins =
            !word.chars().any(char::is_alphanumeric) || lexicon::is_conjunction(word) || lexicon::is_determiner(word);
        if !joins {
            return Vec::new();
        }
        at += 1;
    }
    sides
}

/// "Posterior" below *Compartment*, "First" below *Layer*: the group that lies beside one to which the muscle belongs and that
/// the adjective tells from it.
fn beside_own_groups(scope: &Scope<'_>, from: usize, to: usize, muscle: &What) -> Option<Side> {
    let tokens = &scope.mentions.tokens;
    let span = Span::new(tokens.get(from)?.span.start, tokens.get(to.checked_sub(1)?)?.span.end);
    let written = span.of(&scope.plain.text).trim().to_lowercase();
    let first = written.split(' ').next()?;
    if written.split(' ').count() > 2 || lexicon::contrast_of(first).is_none() {
        return None;
    }
    let vocabulary = scope.vocabulary;
    let mut own: Vec<EntryId> = Vec::new();
    for id in muscle.entries().iter().flat_map(|id| std::iter::once(*id).chain(vocabulary.wholes(*id))) {
        for fact in &vocabulary.entry(id).facts {
            if let Relation::Member { of } = fact.relation {
                own.push(of);
                own.extend(vocabulary.wholes(of));
            }
        }
    }
    let class = |id: EntryId| vocabulary.entry(id).class.as_deref();
    let tail = |name: &str| name.split_once(" of ").map(|(_, tail)| tail.to_owned());
    let is_beside = |id: EntryId, other: EntryId| {
        let (entry, beside) = (vocabulary.entry(id), vocabulary.entry(other));
        matches!(class(id), Some("compartment" | "layer"))
            && class(id) == class(other)
            && (id == other
                || (entry.part_of.is_some() && entry.part_of == beside.part_of)
                || (tail(entry.name()).is_some() && tail(entry.name()) == tail(beside.name())))
    };
    let is_called = |id: EntryId| {
        vocabulary.entry(id).names.iter().any(|name| {
            let rest = name.text.strip_prefix(&*written).and_then(|rest| rest.strip_prefix(' '));
            let noun = rest.and_then(|rest| rest.split(' ').next());
            matches!(noun, Some("compartment" | "layer" | "part"))
        })
    };
    let ids: Vec<EntryId> = vocabulary
        .iter()
        .map(|(id, _)| id)
        .filter(|id| {
            vocabulary.kind(*id) == Kind::Group && own.iter().any(|own| is_beside(*own, *id)) && is_called(*id)
        })
        .collect();
    (!ids.is_empty()).then(|| Side { what: What::Entry(ids), span: scope.plain.to_source(span) })
}

/// A value that is a number, with what is counted: "four", "three heads".
fn number(scope: &Scope<'_>, from: usize, to: usize, word: &str) -> Option<Vec<Part>> {
    if is_doubtful(scope, from, to) {
        return None;
    }
    let tokens = scope.mentions.tokens.get(from..to)?;
    let mut words = tokens.iter().filter(|token| token.is_word);
    let first = words.next()?;
    let lower = |span: Span| span.of(&scope.plain.text).to_lowercase();
    let number = lexicon::count(&lower(first.span))?;
    let rest: Vec<Span> = words.map(|token| token.span).collect();
    let written: Vec<String> = rest.iter().map(|span| lower(*span)).collect();
    let counted = |noun: &str| lexicon::counted_noun(noun).map(|counted| counted.noun);
    let label = word.to_lowercase();
    let label = label.strip_suffix(" of").unwrap_or(&label);
    let words: Vec<&str> = written.iter().map(String::as_str).collect();
    let noun_len = (0..words.len()).find(|at| lexicon::said_of_each(words.get(*at..).unwrap_or_default()) > 0);
    let noun_len = noun_len.unwrap_or(words.len());
    let each = words.get(noun_len..).unwrap_or_default();
    if lexicon::said_of_each(each) != each.len() {
        return None;
    }
    let written = words.get(..noun_len).unwrap_or_default();
    let noun = if written.is_empty() {
        let of_label = label.strip_prefix("number of ").or_else(|| label.strip_prefix("no of ")).unwrap_or(label);
        counted(of_label).or_else(|| counted(of_label.rsplit(' ').next().unwrap_or_default())).unwrap_or("named")
    } else {
        counted(&written.join(" "))?
    };
    let span = scope.plain.to_source(first.span);
    let whole = scope.plain.to_source(rest.last().map_or(first.span, |last| first.span.cover(*last)));
    Some(vec![
        Part { role: PartRole::Number, span, what: What::Number(number) },
        Part { role: PartRole::Role, span: whole, what: What::Word(noun) },
    ])
}
