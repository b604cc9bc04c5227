//! Signs of lesions in a sentence: by their names, or by what a clause says happens.

use super::Sentence;
use crate::claims::signs::{Found, without_genitive};
use crate::claims::{Part, PartRole, What};
use crate::lexicon;

/// How many words behind a sign may tell its side.
const SIDE_WITHIN: usize = 9;

/// How many words of the text are looked at from the first word of a sign on.
const LONGEST_SIGN: usize = 10;

impl Sentence<'_, '_> {
    /// The sign of a lesion that begins at an atom.
    pub(super) fn sign_at(&self, at: usize) -> Option<Found> {
        let from = self.atoms.get(at)?.from;
        let signs = self.scope.relations.signs();
        let first = self.scope.mentions.tokens.get(from)?.span.of(&self.scope.plain.text);
        if !signs.may_begin(first) {
            return None;
        }
        let words = self.words_from(from, LONGEST_SIGN);
        let word = |at: usize| words.get(at).map_or("", String::as_str);
        // The loss of taste is judged by the nerves that carry it.
        let is_of_taste = |found: &Found| found.sign.split(' ').any(|word| lexicon::carried(word).is_some());
        if (at..at + 3).any(|place| lexicon::carried(self.word(place)).is_some()) {
            return signs.named_at(0, &word).filter(|found| !is_of_taste(found));
        }
        let told = || {
            let clause: Vec<&str> =
                words.iter().map(String::as_str).take_while(|word| !lexicon::ends_phrase(word)).collect();
            signs.told_in(&clause, &|| self.tells_loss(at))
        };
        // One word is a sign where no more of them tell one.
        let named = signs.named_at(0, &word);
        let named = if named.as_ref().is_none_or(|found| found.len == 1) { told().or(named) } else { named };
        let found = named?;
        // A reflex is a sign only where it is lost.
        let is_reflex = found.sign.starts_with("loss of ") && word(0) != "loss";
        let is_lost = || (0..self.atoms.len()).any(|at| lexicon::is_loss(self.word(at)));
        (!is_reflex || is_lost()).then_some(found)
    }

    /// The parts of a claim that a sign is: its name, and on which side of the body it shows, where that is told.
    pub(super) fn sign_parts(&self, at: usize, found: Found) -> Vec<Part> {
        let span = self.source(at, at + 1).cover(self.source_of_tokens(at, found.len));
        let mut parts = vec![Part { role: PartRole::Sign, span, what: What::Sign(found.sign) }];
        let from = self.atoms.get(at).map_or(0, |atom| atom.from);
        let words = self.words_from(from, found.len + SIDE_WITHIN);
        // "when standing on the affected side" tells when it shows, not where
        let ends = |word: &&String| {
            !matches!(word.as_str(), "." | ";" | ":" | "when" | "while" | "as" | "if" | "standing" | "stands" | "stand")
        };
        let text: Vec<&str> = words.iter().take_while(ends).map(String::as_str).collect();
        if let Some(side) = lexicon::body_side(&text.join(" ")) {
            parts.push(Part { role: PartRole::Role, span, what: What::Word(side.word()) });
        }
        parts
    }

    /// The first atom that lies behind so many words from one on.
    pub(super) fn behind_words(&self, at: usize, len: usize) -> usize {
        let end = self.atoms.get(at).map_or(0, |atom| atom.from) + len;
        (at + 1..self.atoms.len())
            .find(|at| self.atoms.get(*at).is_some_and(|atom| atom.from >= end))
            .unwrap_or(self.atoms.len())
    }

    /// The first atom that stands behind a stretch of the source.
    pub(super) fn behind_source(&self, span: crate::text::Span) -> usize {
        let is_behind = |at: &usize| self.source(*at, *at + 1).start >= span.end;
        (0..self.atoms.len()).find(is_behind).unwrap_or(self.atoms.len())
    }

    /// Words of the sentence from a token on, in lower case, without the mark of the genitive.
    fn words_from(&self, from: usize, count: usize) -> Vec<String> {
        let to = self.atoms.last().map_or(0, |atom| atom.to);
        let tokens = self.scope.mentions.tokens.get(from..to.min(from + count)).unwrap_or_default();
        let word = |span: crate::text::Span| span.of(&self.scope.plain.text).to_lowercase();
        tokens.iter().map(|token| without_genitive(&word(token.span)).to_owned()).collect()
    }

    /// Whether the clause of an atom tells of a loss, or says that something is not done.
    fn tells_loss(&self, at: usize) -> bool {
        let ends = |place: &usize| lexicon::ends_phrase(self.word(*place));
        let tells = |place: usize| {
            self.loss_at(place) > 0
                || lexicon::is_hard(self.word(place))
                || (lexicon::is_negation(self.word(place))
                    && place.checked_sub(1).is_some_and(|before| lexicon::may_fail(self.word(before))))
                || matches!(self.word(place), "won't" | "won’t" | "doesn't" | "doesn’t")
        };
        (0..at).rev().take_while(|place| !ends(place)).any(tells)
            || (at..self.atoms.len()).take_while(|place| !ends(place)).any(tells)
    }
}
