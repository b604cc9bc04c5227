//! The row of atoms that a sentence is, and what can be asked of one atom: its word, its name, its place in the source.

use std::borrow::Cow;

use fascicle_model::{Kind, Segments, Vocabulary};

use super::{Scope, Sentence};
use crate::claims::phrases::{MovementForm, MovementWord};
use crate::claims::segments;
use crate::lexicon::{self, RelationWord};
use crate::mentions::{Mention, is_bare_adjective};
use crate::text::{Mark, Span};
use crate::words::{lower, without_possessive};

#[derive(Clone, Debug)]
pub(super) enum AtomKind {
    Name(usize),
    Segments(segments::Reading),
    Relation(&'static RelationWord),
    Movement(MovementWord),
    Word,
}

#[derive(Clone, Debug)]
pub(super) struct Atom {
    pub(super) kind: AtomKind,
    /// First token and the token after the last.
    pub(super) from: usize,
    pub(super) to: usize,
    /// Lower-case text of a word or mark; empty for the rest.
    pub(super) word: String,
}

impl Atom {
    /// Words that change nothing, as one that says so.
    fn passed_over(from: usize, to: usize) -> Self {
        Self { kind: AtomKind::Word, from, to, word: PASSED_OVER.to_owned() }
    }
}

/// The adverb for which words stand that change nothing.
const PASSED_OVER: &str = "however";

/// How many atoms a stretch between commas may have that is passed over.
const LONGEST_ASIDE: usize = 16;

pub(super) fn atoms(scope: &Scope<'_>, from: usize, to: usize) -> Vec<Atom> {
    let mut list = atoms_where(scope, from, to, &|mention| is_usable(mention, scope) || leads(mention, scope, from));
    take_out_before(&mut list);
    take_in(&mut list);
    pass_over_asides(&mut list);
    list
}

/// "the strap muscles, thyrohyoid *excepted*, are": what is taken out stands before the word that says so; it is read as if
/// it stood behind it.
fn take_out_before(list: &mut [Atom]) {
    for at in 2..list.len() {
        let word = |at: usize| list.get(at).map_or("", |atom| &*atom.word);
        let ends = matches!(word(at), "excepted" | "excluded" | "exempted")
            || (matches!(word(at), "apart" | "aside") && matches!(word(at + 1), "," | "." | ""));
        let is_name = |at: usize| matches!(list.get(at).map(|atom| &atom.kind), Some(AtomKind::Name(_)));
        let joins = |at: usize| lexicon::is_determiner(word(at)) || matches!(word(at), "and" | "&");
        let Some(open) = (0..at).rev().find(|place| !is_name(*place) && !joins(*place)) else { continue };
        if !ends || word(open) != "," || open + 1 == at || word(at + 1) != "," {
            continue;
        }
        if let Some(atom) = list.get_mut(open) {
            "except".clone_into(&mut atom.word);
        }
        for place in at..at + 2 {
            if let Some(atom) = list.get_mut(place) {
                PASSED_OVER.clone_into(&mut atom.word);
            }
        }
    }
}

/// "the thenar muscles, *including* adductor pollicis, are", "the glutei, piriformis *included*, are": what is said of the
/// muscles is said of those that are named of them.
fn take_in(list: &mut [Atom]) {
    let is_name = |list: &[Atom], at: usize| matches!(list.get(at).map(|atom| &atom.kind), Some(AtomKind::Name(_)));
    let set = |list: &mut [Atom], at: usize, word: &str| {
        if let Some(atom) = list.get_mut(at) {
            word.clone_into(&mut atom.word);
        }
    };
    for at in 1..list.len() {
        let word = |list: &[Atom], at: usize| list.get(at).map(|atom| atom.word.clone()).unwrap_or_default();
        let open = if word(list, at - 1) == "," { at - 1 } else { at };
        if open == 0 || !is_name(list, open - 1) && word(list, open - 1) != ")" {
            continue;
        }
        let mut end = at + 1;
        while is_name(list, end) || lexicon::is_determiner(&word(list, end)) || matches!(&*word(list, end), "and" | "&")
        {
            end += 1;
        }
        let closes = |list: &[Atom], at: usize| matches!(&*word(list, at), "," | "." | ";" | ")" | "");
        if matches!(&*word(list, at), "including" | "notably") && is_name(list, end - 1) && closes(list, end) {
            if open < at {
                set(list, open, "and");
            }
            set(list, at, "and");
            if word(list, end) == "," {
                set(list, end, PASSED_OVER);
            }
        } else if word(list, at) == ","
            && word(list, end) == "included"
            && is_name(list, end - 1)
            && word(list, end + 1) == ","
        {
            set(list, at, "and");
            set(list, end, PASSED_OVER);
            set(list, end + 1, PASSED_OVER);
        }
    }
}

/// "Tibial: …": an adjective before a colon, with which a sentence begins, is a name.
fn leads(mention: &Mention, scope: &Scope<'_>, from: usize) -> bool {
    let token = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    let begins = mention.tokens.0 == from || (mention.tokens.0 == from + 1 && lexicon::is_bullet(token(from)));
    begins && token(mention.tokens.1) == ":" && !token(mention.tokens.1 + 1).is_empty() && !scope.of_vessels
}

/// Passes over what stands between two commas, names nothing and joins nothing: "the nerve*, as I said,* supplies".
fn pass_over_asides(list: &mut Vec<Atom>) {
    let mut at = 1;
    while at + 2 < list.len() {
        if let Some(close) = aside_end(list, at) {
            let (from, to) = (list.get(at).map_or(0, |atom| atom.from), list.get(close).map_or(0, |atom| atom.to));
            list.splice(at..=close, [Atom::passed_over(from, to)]);
        }
        at += 1;
    }
}

/// The comma that closes the aside which the comma at an atom opens.
fn aside_end(list: &[Atom], open: usize) -> Option<usize> {
    let word = |at: usize| list.get(at).map_or("", |atom| &*atom.word);
    let is_plain = |at: usize| matches!(list.get(at).map(|atom| &atom.kind), Some(AtomKind::Word));
    if word(open) != "," {
        return None;
    }
    let before = open.checked_sub(1)?;
    let is_verb = lexicon::is_auxiliary(word(before));
    let is_name = matches!(list.get(before).map(|atom| &atom.kind), Some(AtomKind::Name(_)))
        || word(before) == ")"
        || lexicon::is_pronoun(word(before));
    let is_relation = matches!(list.get(before).map(|atom| &atom.kind), Some(AtomKind::Relation(relation)) if relation.form == lexicon::Form::Verb);
    if !is_verb && !is_name && !is_relation {
        return None;
    }
    let close = (open + 1..(open + LONGEST_ASIDE).min(list.len())).find(|at| word(*at) == "," || !is_plain(*at))?;
    if word(close) != "," || close == open + 1 {
        return None;
    }
    let changes_much = (open + 1..close).any(|at| {
        let word = word(at);
        lexicon::is_weighty(word)
            || lexicon::is_hedge(word)
            || lexicon::is_cut(word)
            || lexicon::is_loss(word)
            || matches!(word, ";" | ":" | "(" | ")" | "." | "which" | "who")
            || (lexicon::asserts_nothing(word) && !matches!(word, "would" | "could" | "should"))
            || lexicon::number(word).is_some()
    });
    let is_named = |at: usize| matches!(list.get(at).map(|atom| &atom.kind), Some(AtomKind::Name(_)));
    let goes_on = is_verb
        || (is_relation && (is_named(close + 1) || lexicon::is_determiner(word(close + 1)) && is_named(close + 2)))
        || match list.get(close + 1).map(|atom| &atom.kind) {
            Some(AtomKind::Relation(relation)) => relation.form != lexicon::Form::Noun,
            Some(AtomKind::Movement(_)) => true,
            _ if is_relation => false,
            _ => lexicon::is_auxiliary(word(close + 1)) || lexicon::does(word(close + 1)),
        };
    (!changes_much && goes_on).then_some(close)
}

pub(super) fn atoms_where(
    scope: &Scope<'_>,
    from: usize,
    to: usize,
    is_usable: &dyn Fn(&Mention) -> bool,
) -> Vec<Atom> {
    let text = &scope.plain.text;
    let tokens = &scope.mentions.tokens;
    let mentions = &scope.mentions.list;
    let lower: Vec<Cow<'_, str>> =
        tokens.get(from..to).unwrap_or_default().iter().map(|token| lower(token.span.of(text))).collect();
    // Mentions stand in order and none within another: those of the stretch are one run of the list.
    let first = mentions.partition_point(|mention| mention.tokens.1 <= from);
    let mut named = vec![false; to.saturating_sub(from)];
    let mut begins: Vec<Option<usize>> = vec![None; named.len()];
    for (place, mention) in mentions.iter().enumerate().skip(first).take_while(|(_, mention)| mention.tokens.0 < to) {
        if !is_usable(mention) {
            continue;
        }
        for at in mention.tokens.0.max(from)..mention.tokens.1.min(to) {
            if let Some(slot) = named.get_mut(at - from) {
                *slot = true;
            }
        }
        if let Some(slot) = mention.tokens.0.checked_sub(from).and_then(|at| begins.get_mut(at)) {
            *slot = Some(place);
        }
    }
    let word = |at: usize| -> &str {
        let place = at.wrapping_sub(from);
        if named.get(place).copied().unwrap_or(true) { "" } else { lower.get(place).map_or("", |word| word) }
    };
    let mut list = Vec::new();
    let mut at = from;
    let lower_at = |at: usize| lower.get(at.wrapping_sub(from)).map_or("", |word| word);
    while at < to {
        if let Some(len) = lexicon::aside_at(at, &lower_at) {
            list.push(Atom::passed_over(at, at + len));
            at += len;
            continue;
        }
        let mention = begins.get(at - from).copied().flatten();
        let name_end = mention.and_then(|place| mentions.get(place)).map_or(at, |mention| mention.tokens.1);
        let sentence = tokens.get(..to).unwrap_or_default();
        let named_segments = mention.and_then(|place| mentions.get(place)).and_then(|mention| {
            let (main, lesser) = dermatome(scope.vocabulary, mention)?;
            Some(segments::Reading { main, lesser, span: mention.span, end: name_end })
        });
        let segments = if named_segments.is_some() {
            named_segments
        } else if lexicon::is_ramus_word(lower_at(at)) {
            segments::read_rami(text, sentence, at).filter(|reading| reading.end > name_end)
        } else if mention.is_none() {
            segments::read(text, sentence, at)
        } else {
            None
        };
        let (kind, end) = if let Some(reading) = segments {
            let end = reading.end;
            (AtomKind::Segments(reading), end)
        } else if let Some(place) = mention {
            (AtomKind::Name(place), name_end)
        } else {
            // "on *the left* it hooks under": no verb
            let is_side = lower_at(at) == "left" && at.checked_sub(1).is_some_and(|before| lower_at(before) == "the");
            let phrase = if is_side { None } else { scope.relations.phrase_at(at, &word) };
            let movement = scope.relations.movement_at(at, &word);
            match (phrase, movement) {
                (Some((relation, end)), movement) if movement.as_ref().is_none_or(|(_, other)| end >= *other) => {
                    (AtomKind::Relation(relation), end)
                }
                // "compression" is what hurts a nerve more often than what a muscle does
                (_, Some((movement, end))) if end > at + 1 || !lexicon::is_lesion(word(at)) => {
                    (AtomKind::Movement(movement), end)
                }
                _ => (AtomKind::Word, at + 1),
            }
        };
        let word = if matches!(kind, AtomKind::Word) { lower_at(at).to_owned() } else { String::new() };
        list.push(Atom { kind, from: at, to: end, word });
        at = end.max(at + 1);
    }
    list
}

/// The segments of which a name is the dermatome: what is said of the dermatome is said of them.
fn dermatome(vocabulary: &Vocabulary, mention: &Mention) -> Option<(Segments, Segments)> {
    let [only] = mention.candidates.as_slice() else { return None };
    let is_dermatome = vocabulary.entry(*only).class.as_deref() == Some("dermatome");
    let reading = vocabulary.roots_of(*only).into_iter().next().filter(|_| is_dermatome)?;
    Some((reading.main, reading.lesser))
}

/// Adjectives such as "radial" are short names of nerves; in running text they are adjectives, unless they stand as nouns
/// do: "the radial supplies", "by the radial and the ulnar".
pub(super) fn is_usable(mention: &Mention, scope: &Scope<'_>) -> bool {
    if is_part_or_agent(mention, scope) || is_side_of_another(mention, scope) {
        return false;
    }
    if !is_bare_adjective(mention, scope.vocabulary) {
        return true;
    }
    let next = scope.mentions.tokens.get(mention.tokens.1).map_or("", |token| token.span.of(&scope.plain.text));
    lexicon::is_nerve_noun(next) || (!scope.of_vessels && stands_as_noun(mention, scope))
}

/// "the *muscles of the back* of the arm" are not those of the back.
fn is_side_of_another(mention: &Mention, scope: &Scope<'_>) -> bool {
    let token = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    let last = mention.tokens.1.checked_sub(1).map_or("", token);
    matches!(last, "back" | "front" | "side") && token(mention.tokens.1) == "of"
}

/// "both *heads* of gastrocnemius" speaks of no head, "a strong *adductor of the thigh*" of no group of muscles.
fn is_part_or_agent(mention: &Mention, scope: &Scope<'_>) -> bool {
    let vocabulary = scope.vocabulary;
    // "the chief *supinator of* the forearm", though a muscle has that name
    let is_agent_of = |mention: &Mention| {
        let token = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
        let name = token(mention.tokens.0).to_lowercase();
        let word = |at: usize| if at == 0 { &*name } else { "" };
        let before = mention.tokens.0.checked_sub(1).map_or("", token);
        mention.tokens.1 == mention.tokens.0 + 1
            && token(mention.tokens.1) == "of"
            && (lexicon::tells_role(before) || matches!(before, "a" | "an" | "strongest"))
            && scope.relations.movement_at(0, &word).is_some_and(|(movement, _)| movement.form == MovementForm::Agent)
    };
    if !mention.candidates.iter().all(|id| vocabulary.kind(*id) == Kind::Group) {
        return mention.candidates.iter().all(|id| vocabulary.kind(*id) == Kind::Muscle) && is_agent_of(mention);
    }
    let token = |at: usize| scope.mentions.tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    let first = token(mention.tokens.0).to_lowercase();
    let second = token(mention.tokens.0 + 1);
    if mention.tokens.1 == mention.tokens.0 + 1 && lexicon::is_part_noun(&first) {
        return mention.plural || second == "of";
    }
    let word = |at: usize| if at == 0 { &*first } else { "" };
    let before = mention.tokens.0.checked_sub(1).map_or("", token);
    // "the *chief* adductors" tells what they do as well
    let is_role = lexicon::tells_role(before);
    if is_role
        && mention.tokens.1 == mention.tokens.0 + 1
        && scope.relations.movement_at(0, &word).is_some_and(|(movement, _)| movement.form == MovementForm::Agent)
    {
        return true;
    }
    // "the *adductor* is ulnar", after one of the hand was named: one muscle is no group.
    let is_one = !mention.plural && !first.ends_with('s') && mention.tokens.1 == mention.tokens.0 + 1;
    let names_group = matches!(second, "muscle" | "muscles" | "group" | "compartment" | "compartments");
    (second == "of" || (is_one && !names_group))
        && scope.relations.movement_at(0, &word).is_some_and(|(movement, _)| movement.form == MovementForm::Agent)
        && !first.ends_with('s')
}

/// Whether an adjective, or the row of adjectives in which it stands, has an article before it and no noun behind it.
fn stands_as_noun(mention: &Mention, scope: &Scope<'_>) -> bool {
    let tokens = &scope.mentions.tokens;
    let word = |at: usize| tokens.get(at).map_or("", |token| token.span.of(&scope.plain.text));
    let bare = |at: usize| {
        let list = &scope.mentions.list;
        let place = list.partition_point(|mention| mention.tokens.1 <= at);
        list.get(place)
            .filter(|mention| mention.tokens.0 <= at && is_bare_adjective(mention, scope.vocabulary))
            .map(|mention| mention.tokens)
    };
    let (mut first, mut last) = mention.tokens;
    while let Some(joint) = first.checked_sub(1).filter(|at| lexicon::is_conjunction(word(*at))) {
        let joint = joint.checked_sub(1).filter(|at| word(*at) == ",").unwrap_or(joint);
        let Some(before) = joint.checked_sub(1).and_then(bare) else { break };
        first = before.0;
    }
    while lexicon::is_conjunction(word(last)) {
        let mut next = last + 1;
        while lexicon::is_conjunction(word(next)) || word(next) == "the" {
            next += 1;
        }
        let Some(behind) = bare(next) else { break };
        last = behind.1;
    }
    let article = first.checked_sub(1).map_or("", word);
    if !matches!(article, "the" | "The") {
        return false;
    }
    // "the *intermediate* and largest of": such an adjective tells one of several things, whatever they are.
    if lexicon::contrast_of(&lower(word(mention.tokens.0))).is_some() {
        return false;
    }
    // "The muscles are the *glossopalatine*, palatoglossus and …": among muscles it is one.
    let is_muscle = |mention: &&Mention| {
        !mention.candidates.is_empty() && mention.candidates.iter().all(|id| scope.vocabulary.kind(*id) == Kind::Muscle)
    };
    let behind = scope.mentions.list.iter().find(|mention| mention.tokens.0 == last + 1).filter(is_muscle);
    if word(last) == "," && behind.is_some() {
        return false;
    }
    lexicon::ends_noun(word(last))
}

impl<'a> Sentence<'a, '_> {
    pub(super) fn word(&self, at: usize) -> &'a str {
        self.atoms.get(at).map_or("", |atom| &*atom.word)
    }

    /// The first word of an atom, if it is in lower case; articles may begin a sentence.
    pub(super) fn first_word(&self, at: usize) -> &'a str {
        let tokens = &self.scope.mentions.tokens;
        let text = &self.scope.plain.text;
        match self.atoms.get(at).and_then(|atom| tokens.get(atom.from)).map_or("", |token| token.span.of(text)) {
            "The" => "the",
            "A" => "a",
            "An" => "an",
            word => word,
        }
    }

    /// The words of an atom as they are written, in lower case.
    pub(super) fn written(&self, at: usize) -> String {
        let tokens = &self.scope.mentions.tokens;
        let Some(atom) = self.atoms.get(at) else { return String::new() };
        let (Some(first), Some(last)) =
            (tokens.get(atom.from), atom.to.checked_sub(1).and_then(|last| tokens.get(last)))
        else {
            return String::new();
        };
        Span::new(first.span.start, last.span.end).of(&self.scope.plain.text).to_lowercase()
    }

    pub(super) fn mention(&self, at: usize) -> Option<&'a Mention> {
        match self.atoms.get(at)?.kind {
            AtomKind::Name(place) => self.scope.mentions.list.get(place),
            _ => None,
        }
    }

    /// Whether a name stands at an atom as what has something: "the *nerve's* branch".
    pub(super) fn is_possessive(&self, at: usize) -> bool {
        let tokens = &self.scope.mentions.tokens;
        let last = self.atoms.get(at).and_then(|atom| tokens.get(atom.to.checked_sub(1)?));
        let written = last.map_or("", |token| token.span.of(&self.scope.plain.text));
        self.mention(at).is_some() && without_possessive(written) < written.len()
    }

    pub(super) fn source(&self, from: usize, to: usize) -> Span {
        let tokens = &self.scope.mentions.tokens;
        let first = self.atoms.get(from).and_then(|atom| tokens.get(atom.from));
        let last = to
            .checked_sub(1)
            .and_then(|last| self.atoms.get(last))
            .and_then(|atom| tokens.get(atom.to.checked_sub(1)?));
        match (first, last) {
            (Some(first), Some(last)) => self.scope.plain.to_source(Span::new(first.span.start, last.span.end)),
            _ => Span::default(),
        }
    }

    pub(super) fn source_of_tokens(&self, at: usize, len: usize) -> Span {
        let tokens = &self.scope.mentions.tokens;
        let from = self.atoms.get(at).map_or(0, |atom| atom.from);
        let (Some(first), Some(last)) = (tokens.get(from), tokens.get(from + len - 1)) else { return Span::default() };
        self.scope.plain.to_source(Span::new(first.span.start, last.span.end))
    }

    pub(super) fn is_struck(&self, at: usize) -> bool {
        self.has_mark(at, Mark::Struck)
    }

    pub(super) fn is_strong(&self, at: usize) -> bool {
        self.has_mark(at, Mark::Strong)
    }

    fn has_mark(&self, at: usize, mark: Mark) -> bool {
        let token = self.atoms.get(at).and_then(|atom| self.scope.mentions.tokens.get(atom.from));
        token.is_some_and(|token| self.scope.plain.has_mark(token.span, mark))
    }
}
