//! Claims of fibres that are neither motor nor sensory to skin: taste, and those of the autonomic system. "The chorda tympani
//! conveys taste from the front of the tongue", "secretomotor fibres for the parotid gland come from NERVE", "the gland gets its
//! parasympathetic supply from NERVE".
//!
//! The words for such fibres and the one nerve of the clause tell enough, whatever verb joins them; where the fibres go, or come
//! from, is a gland or an area that the clause names.

use fascicle_model::Kind;

use super::atoms::AtomKind;
use super::sides::Side;
use super::{Sentence, Subject};
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon;

impl Sentence<'_, '_> {
    /// The claims of the fibres that a word names.
    pub(super) fn carried_claims(&self, at: usize) -> Vec<Claim> {
        let Some(fibres) = lexicon::carried(self.word(at)) else { return Vec::new() };
        let is_again = at.checked_sub(1).is_some_and(|before| lexicon::carried(self.word(before)).is_some());
        if is_again || lexicon::is_behind_carried(self.word(at + 1)) {
            return Vec::new();
        }
        let (start, end) = self.clause_of(at);
        let is_lost = (start..end).any(|place| self.loss_at(place) > 0 || lexicon::is_cut(self.word(place)));
        let is_other = |place: usize| {
            let word = self.word(place);
            lexicon::is_exception(word)
                || matches!(word, "unlike" | "than" | "ganglion" | "relay" | "synapse" | "respectively")
        };
        // Of sympathetic fibres only what a nerve is made of is told: most nerves have some.
        let before = (start..at).rev().find(|place| !lexicon::is_adverb(self.word(*place)));
        let is_made = before.is_some_and(|place| {
            matches!(self.word(place), "is" | "are")
                || (self.word(place) == "of" && place > start && lexicon::has_fibres(self.word(place - 1)))
        });
        let ends = matches!(self.word(at + 1), "nerve" | "nerves" | "fibres" | "fibers") || self.ends_clause(at + 1);
        if is_lost || (fibres == "sympathetic" && !(is_made && ends)) || (start..end).any(is_other) {
            return Vec::new();
        }
        let negated = (start..end).any(|place| lexicon::is_negation(self.word(place)));
        let nerves = self.nerves_of_clause(start, end, at);
        let place = self.place_of_fibres(start, end);
        let hedged = self.clause_hedged(at);
        let claim = |nerve: Side| {
            let told = self.source(at, at + 1);
            let mut parts = vec![
                Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what },
                Part { role: PartRole::Modality, span: told, what: What::Word(fibres) },
            ];
            parts.extend(place.clone().map(|side| Part {
                role: PartRole::Structure,
                span: side.span,
                what: side.what,
            }));
            let span = self.claim_span(at, nerve.span, told);
            Claim { span, parts, negated, hedged, ..self.empty_claim(ClaimKind::Modality) }
        };
        nerves.into_iter().map(claim).collect()
    }

    /// Where the clause of an atom begins and ends: at a semicolon, a colon or a word of contrast.
    fn clause_of(&self, at: usize) -> (usize, usize) {
        let ends =
            |place: &usize| matches!(self.word(*place), ";" | ":" | ".") || lexicon::is_contrast(self.word(*place));
        let start = (0..at).rev().find(ends).map_or(0, |place| place + 1);
        let end = (at..self.atoms.len()).find(ends).unwrap_or(self.atoms.len());
        (start, end)
    }

    /// The nerves of the one group of nerves that a clause names, or of which it speaks without naming it.
    fn nerves_of_clause(&self, start: usize, end: usize, at: usize) -> Vec<Side> {
        let mut groups = Vec::new();
        let mut place = start;
        while place < end {
            if self.class(place) == Some(0)
                && let Some(group) = self.group_from(place, false)
            {
                place = group.end.max(place + 1);
                groups.push(group);
            } else {
                place += 1;
            }
        }
        match groups.as_slice() {
            [] => {
                let verb = (start..at).rev().find(|place| lexicon::has_fibres(&self.written(*place)));
                let Some(verb) = verb else { return Vec::new() };
                let (before, ..) = self.before_verb(verb);
                let relation = super::RelationWord {
                    kind: ClaimKind::Modality,
                    left: PartRole::Nerve,
                    ..super::actions::action_relation()
                };
                self.subject(before, &relation, &[])
            }
            [only] => {
                let first = only.members.first().copied().unwrap_or(start);
                let is_beside = first.checked_sub(1).is_some_and(|before| {
                    let before =
                        if lexicon::is_determiner(self.word(before)) { before.saturating_sub(1) } else { before };
                    matches!(self.word(before), "with" | "beside" | "near" | "behind" | "joins" | "to")
                });
                if is_beside { Vec::new() } else { self.sides(only, PartRole::Nerve) }
            }
            _ => Vec::new(),
        }
    }

    /// The gland, or the area, that a clause of fibres names: where they go, or what is tasted with.
    pub(super) fn place_of_fibres(&self, start: usize, end: usize) -> Option<Side> {
        let vocabulary = self.scope.vocabulary;
        let is_gland = |at: &usize| {
            self.mention(*at).is_some_and(|mention| {
                mention.candidates.iter().all(|id| vocabulary.kind(*id) == Kind::Landmark)
                    && self.written(*at).trim_end_matches('s').ends_with("gland")
            })
        };
        if let Some(at) = (start..end).find(is_gland) {
            return self.side(at, PartRole::Structure);
        }
        // "for the parotid": a gland without its noun
        let bare = (start..end).filter(|at| {
            self.word(*at).len() > 4 && matches!(self.atoms.get(*at).map(|a| &a.kind), Some(AtomKind::Word))
        });
        let mut bare = bare.filter_map(|at| {
            let names = self.scope.names.lookup(&format!("{} gland", self.word(at)));
            let candidates: Vec<_> = names.iter().map(|name| name.entry).collect();
            let subject = Subject { candidates, span: self.source(at, at + 1) };
            super::side_of(vocabulary, &subject, PartRole::Structure)
        });
        if let Some(side) = bare.next() {
            return Some(side);
        }
        let from = (start..end).find(|at| matches!(self.word(*at), "from" | "of" | "over" | "on"))?;
        let first = (from + 1..end).find(|at| !lexicon::is_determiner(self.word(*at)))?;
        self.areas_of(first, true).into_iter().next()
    }

    /// "has no skin to supply", "supplies no skin", "supplies no muscle": what a nerve lacks tells what it is.
    pub(super) fn lacking_claims(&self, at: usize) -> Vec<Claim> {
        let mut noun = at + 1;
        while matches!(self.word(noun), "area" | "of" | "the" | "skeletal" | "any") {
            noun += 1;
        }
        let is = match self.word(noun) {
            "skin" => "motor",
            "muscle" | "muscles" => "sensory",
            _ => return Vec::new(),
        };
        let is_to_supply = self.word(noun + 1) == "to";
        let verb = at.checked_sub(1).filter(|verb| {
            let written = self.written(*verb);
            (is_to_supply && matches!(&*written, "has" | "have"))
                || written.starts_with("suppl")
                || written.starts_with("innervate")
        });
        let (Some(verb), true) = (verb, self.ends_clause(noun + 1 + if is_to_supply { 2 } else { 0 })) else {
            return Vec::new();
        };
        let relation = super::RelationWord {
            kind: ClaimKind::Modality,
            left: PartRole::Nerve,
            ..super::actions::action_relation()
        };
        let (before, negated, hedged) = self.before_verb(verb);
        if negated {
            return Vec::new();
        }
        let hedged = hedged || self.clause_hedged(at);
        let claim = |nerve: Side| {
            let told = self.source(at, noun + 1);
            let parts = vec![
                Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what },
                Part { role: PartRole::Modality, span: told, what: What::Word(is) },
            ];
            let span = self.claim_span(at, nerve.span, told);
            Claim { span, parts, hedged, all: true, ..self.empty_claim(ClaimKind::Modality) }
        };
        self.subject(before, &relation, &[]).into_iter().map(claim).collect()
    }
}
