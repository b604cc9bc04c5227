//! Questions that the next sentence answers in a word or two: "Which nerve supplies deltoid? The axillary nerve does." A
//! question claims nothing; the answer claims what was asked, of what it names.

use super::Sentence;
use super::atoms::AtomKind;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole, What};
use crate::lexicon;

/// What a sentence asks.
#[derive(Clone, Debug)]
pub(super) struct Asked {
    kind: ClaimKind,
    /// The role of what the question names, and what it names.
    named: (PartRole, Vec<Side>),
    /// The role of what it asks for.
    wanted: PartRole,
}

impl Sentence<'_, '_> {
    /// What a question asks that names one row of nerves or of muscles and has one word of supply or of roots.
    pub(super) fn asked(&self) -> Option<Asked> {
        if self.atoms.last()?.word != "?" || !self.atoms.iter().any(|atom| lexicon::asks(&atom.word)) {
            return None;
        }
        let mut kinds = self.atoms.iter().filter_map(|atom| match &atom.kind {
            AtomKind::Relation(relation) => Some(relation.kind),
            _ => lexicon::is_supply_noun(&atom.word).then_some(ClaimKind::Supply).filter(|_| atom.word != "nerve"),
        });
        let kind = kinds.next().filter(|kind| matches!(kind, ClaimKind::Supply | ClaimKind::Roots))?;
        let first = (0..self.atoms.len()).find(|at| self.mention(*at).is_some())?;
        let group = self.group_from(first, false)?;
        if (group.end..self.atoms.len()).any(|at| self.mention(at).is_some()) || kinds.any(|other| other != kind) {
            return None;
        }
        let (role, wanted) = match (kind, self.class(first)?) {
            (ClaimKind::Roots, 0 | 1) => (PartRole::Structure, PartRole::Segments),
            (ClaimKind::Supply, 0) => (PartRole::Nerve, PartRole::Muscle),
            (ClaimKind::Supply, 1 | 2) => (PartRole::Muscle, PartRole::Nerve),
            _ => return None,
        };
        Some(Asked { kind, named: (role, self.sides(&group, role)), wanted })
    }

    /// The claims of an answer: a sentence that is hardly more than a name or segments.
    pub(super) fn answers(&self, asked: &Asked) -> Vec<Claim> {
        let mut at = 0;
        while lexicon::is_determiner(self.word(at))
            || lexicon::is_adverb(self.word(at))
            || lexicon::opens_answer(self.word(at))
        {
            at += 1;
        }
        let (answer, mut end): (Vec<Side>, usize) = match self.atoms.get(at).map(|atom| &atom.kind) {
            Some(AtomKind::Segments(reading)) if asked.wanted == PartRole::Segments => {
                let what = What::Segments(reading.main, reading.lesser);
                (vec![Side { what, span: self.source(at, at + 1) }], at + 1)
            }
            Some(AtomKind::Name(_)) if asked.wanted != PartRole::Segments => {
                let Some(group) = self.group_from(at, true) else { return Vec::new() };
                (self.sides(&group, asked.wanted), group.end)
            }
            _ => return Vec::new(),
        };
        if lexicon::stands_for_verb(self.word(end)) {
            end += 1;
        }
        if !self.ends_clause(end) {
            return Vec::new();
        }
        let hedged = self.clause_hedged(at);
        let mut claims = Vec::new();
        for named in &asked.named.1 {
            for answer in &answer {
                let parts = vec![
                    Part { role: asked.wanted, span: answer.span, what: answer.what.clone() },
                    Part { role: asked.named.0, span: named.span, what: named.what.clone() },
                ];
                let span = self.source(at, end);
                claims.push(Claim { span, parts, hedged, ..self.empty_claim(asked.kind) });
            }
        }
        claims
    }
}
