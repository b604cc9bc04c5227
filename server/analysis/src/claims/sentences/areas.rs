//! Claims of skin: which nerve feels which area. An area is described in words, not always named, so that it is read from
//! a stretch of words rather than from a group.

use super::atoms::AtomKind;
use super::objects::Object;
use super::sides::{Side, side_of};
use super::{Sentence, Subject};
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon::{self, RelationWord};
use crate::text::Span;

impl Sentence<'_, '_> {
    /// "supplies the skin of the lateral forearm"
    pub(super) fn skin_claims(
        &self,
        at: usize,
        before: usize,
        negated: bool,
        hedged: bool,
        relation: &RelationWord,
        last: &mut Vec<Side>,
    ) -> Vec<Claim> {
        if relation.left == PartRole::Skin {
            let object = self.object(at + 1);
            return object.map(|object| self.skin_supplied(at, before, &object, negated, hedged)).unwrap_or_default();
        }
        let nerves = self.subject(before, relation, last);
        if nerves.is_empty() {
            return Vec::new();
        }
        (*last).clone_from(&nerves);
        let Some(area) = self.area_of(at + 1, true) else { return Vec::new() };
        let hedged = hedged || self.clause_hedged(at);
        nerves
            .into_iter()
            .map(|nerve| {
                let span = self.claim_span(at, nerve.span, area.span);
                let parts = vec![
                    Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what },
                    Part { role: PartRole::Skin, span: area.span, what: area.what.clone() },
                ];
                Claim {
                    kind: ClaimKind::Skin,
                    span,
                    parts,
                    negated,
                    hedged,
                    all: false,
                    block: self.scope.block,
                    key: None,
                }
            })
            .collect()
    }

    /// "The skin of the upper lip is supplied by NERVE"
    pub(super) fn skin_supplied(
        &self,
        at: usize,
        before: usize,
        object: &Object,
        negated: bool,
        hedged: bool,
    ) -> Vec<Claim> {
        let nerves = match object {
            Object::Names(group) => self.sides(group, PartRole::Nerve),
            Object::Segments(reading, place) => {
                let what = What::Segments(reading.main, reading.lesser);
                vec![Side { what, span: self.source(*place, *place + 1) }]
            }
            Object::Meant(_) => return Vec::new(),
        };
        let Some(area) = self.area_to(before) else { return Vec::new() };
        let hedged = hedged || self.clause_hedged(at);
        nerves
            .into_iter()
            .map(|nerve| {
                let span = self.claim_span(at, nerve.span, area.span);
                let parts = vec![
                    Part { role: PartRole::Nerve, span: nerve.span, what: nerve.what },
                    Part { role: PartRole::Skin, span: area.span, what: area.what.clone() },
                ];
                Claim {
                    kind: ClaimKind::Skin,
                    span,
                    parts,
                    negated,
                    hedged,
                    all: false,
                    block: self.scope.block,
                    key: None,
                }
            })
            .collect()
    }

    /// The area of skin that the words from an atom on describe, up to a mark or a verb.
    /// `is_skin` tells that a verb or a label says that it is skin.
    pub(super) fn area_of(&self, at: usize, is_skin: bool) -> Option<Side> {
        let mut end = at;
        while end < self.atoms.len() && end < at + 12 {
            let word = self.word(end);
            let is_verb = matches!(&self.atoms.get(end).map(|atom| &atom.kind), Some(AtomKind::Relation(_)))
                || lexicon::is_auxiliary(word);
            if is_verb || lexicon::ends_area(word) {
                break;
            }
            end += 1;
        }
        (at + 1..=end).rev().find_map(|end| {
            let tokens = &self.scope.mentions.tokens;
            let (first, last) = (self.atoms.get(at)?, self.atoms.get(end - 1)?);
            let span = Span::new(tokens.get(first.from)?.span.start, tokens.get(last.to.checked_sub(1)?)?.span.end);
            let ends_well = end >= self.atoms.len()
                || !matches!(&self.atoms.get(end)?.kind, AtomKind::Word)
                || !self.word(end).chars().any(char::is_alphabetic)
                || lexicon::is_conjunction(self.word(end))
                || (is_skin && (lexicon::is_auxiliary(self.word(end)) || lexicon::is_condition(self.word(end))))
                || (is_skin && (lexicon::points_to(self.word(end)) || lexicon::is_contrast(self.word(end))))
                || (is_skin && lexicon::comes_of(self.word(end)));
            let written = span.of(&self.scope.plain.text);
            let areas = &self.scope.relations;
            let candidates = if is_skin { areas.areas_of_skin(written) } else { areas.areas(written) };
            let subject = Subject { candidates, span: self.scope.plain.to_source(span) };
            side_of(self.scope.vocabulary, &subject, PartRole::Skin).filter(|_| ends_well)
        })
    }

    /// The area of skin that the words right before an atom describe, from the beginning of their clause.
    pub(super) fn area_to(&self, end: usize) -> Option<Side> {
        let start = (0..end)
            .rev()
            .find(|place| lexicon::precedes_area(self.word(*place)) || lexicon::is_contrast(self.word(*place)))
            .map_or(0, |place| place + 1);
        let start =
            (start..end).find(|at| !lexicon::is_determiner(self.word(*at)) && !lexicon::is_adverb(self.word(*at)))?;
        let tokens = &self.scope.mentions.tokens;
        let (first, last) = (self.atoms.get(start)?, self.atoms.get(end.checked_sub(1)?)?);
        let span = Span::new(tokens.get(first.from)?.span.start, tokens.get(last.to.checked_sub(1)?)?.span.end);
        let candidates = self.scope.relations.areas_of_skin(span.of(&self.scope.plain.text));
        side_of(self.scope.vocabulary, &Subject { candidates, span: self.scope.plain.to_source(span) }, PartRole::Skin)
    }
}
