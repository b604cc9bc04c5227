//! The row of atoms that a sentence is, and what can be asked of one atom: its word, its name, its place in the source.

use super::{Scope, Sentence};
use crate::claims::phrases::MovementWord;
use crate::claims::segments;
use crate::lexicon::{self, RelationWord};
use crate::mentions::{Mention, is_bare_adjective};
use crate::text::{Mark, Span};

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

pub(super) fn atoms(scope: &Scope<'_>, from: usize, to: usize) -> Vec<Atom> {
    atoms_where(scope, from, to, &|mention| is_usable(mention, scope))
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
    let lower: Vec<String> =
        tokens.get(from..to).unwrap_or_default().iter().map(|token| token.span.of(text).to_lowercase()).collect();
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
        if named.get(place).copied().unwrap_or(true) { "" } else { lower.get(place).map_or("", String::as_str) }
    };
    let mut list = Vec::new();
    let mut at = from;
    while at < to {
        let mention = begins.get(at - from).copied().flatten();
        let (kind, end) = if let Some(place) = mention {
            (AtomKind::Name(place), mentions.get(place).map_or(at + 1, |mention| mention.tokens.1))
        } else if let Some(reading) = segments::read(text, tokens.get(..to).unwrap_or_default(), at) {
            let end = reading.end;
            (AtomKind::Segments(reading), end)
        } else {
            let phrase = scope.relations.phrase_at(at, &word);
            let movement = scope.relations.movement_at(at, &word);
            match (phrase, movement) {
                (Some((relation, end)), movement) if movement.as_ref().is_none_or(|(_, other)| end >= *other) => {
                    (AtomKind::Relation(relation), end)
                }
                (_, Some((movement, end))) => (AtomKind::Movement(movement), end),
                _ => (AtomKind::Word, at + 1),
            }
        };
        let word = if matches!(kind, AtomKind::Word) {
            lower.get(at - from).cloned().unwrap_or_default()
        } else {
            String::new()
        };
        list.push(Atom { kind, from: at, to: end, word });
        at = end.max(at + 1);
    }
    list
}

/// Adjectives such as "radial" are short names of nerves; in running text they are adjectives.
pub(super) fn is_usable(mention: &Mention, scope: &Scope<'_>) -> bool {
    let next = scope.mentions.tokens.get(mention.tokens.1).map_or("", |token| token.span.of(&scope.plain.text));
    lexicon::is_nerve_noun(next) || !is_bare_adjective(mention, scope.vocabulary)
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
        let tokens = &self.scope.mentions.tokens;
        self.atoms
            .get(at)
            .and_then(|atom| tokens.get(atom.from))
            .is_some_and(|token| self.scope.plain.has_mark(token.span, Mark::Struck))
    }
}
