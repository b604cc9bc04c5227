//! The sides of a claim: what an entry can be in a claim (a nerve, a muscle, an area …), and the names of a sentence as
//! sides.

use fascicle_model::{EntryId, Kind, Vocabulary};

use super::groups::Group;
use super::{Sentence, Subject};
use crate::claims::{PartRole, What};
use crate::lexicon;
use crate::text::Span;
use crate::words::lower;

/// One side of a claim: what it is and where it stands in the source.
#[derive(Clone, Debug)]
pub struct Side {
    /// What it is.
    pub what: What,
    /// Where it stands in the source.
    pub span: Span,
}

/// A subject as a side of a claim, as far as it fits the role.
pub fn side_of(vocabulary: &Vocabulary, subject: &Subject, role: PartRole) -> Option<Side> {
    let ids: Vec<EntryId> = subject.candidates.iter().copied().filter(|id| fits(vocabulary, role, *id)).collect();
    (!ids.is_empty()).then_some(Side { what: What::Entry(ids), span: subject.span })
}

/// Whether an entry can play a role.
pub fn fits(vocabulary: &Vocabulary, role: PartRole, id: EntryId) -> bool {
    let kind = vocabulary.kind(id);
    match role {
        PartRole::Nerve => matches!(kind, Kind::Nerve | Kind::Plexus | Kind::Root),
        PartRole::Parent => matches!(kind, Kind::Nerve | Kind::Plexus | Kind::Root | Kind::Landmark),
        PartRole::Muscle => kind == Kind::Muscle || (kind == Kind::Group && !vocabulary.members(id).is_empty()),
        PartRole::Structure => true,
        PartRole::Joint => kind == Kind::Joint
            || vocabulary
                .entry(id)
                .facts
                .iter()
                .any(|fact| matches!(fact.relation, fascicle_model::Relation::MovedAt { .. }))
            || (kind == Kind::Landmark
                && vocabulary.pointing_at(id).any(
                    |(_, fact)| matches!(fact.relation, fascicle_model::Relation::Acts { target, .. } if target == id),
                )),
        PartRole::Skin => kind == Kind::Skin,
        PartRole::Landmark => matches!(kind, Kind::Landmark | Kind::Muscle),
        PartRole::Group => kind == Kind::Group || (kind == Kind::Muscle && vocabulary.parts(id).len() > 1),
        PartRole::Movement => kind == Kind::Movement,
        PartRole::Segments
        | PartRole::Role
        | PartRole::Modality
        | PartRole::Number
        | PartRole::JointKind
        | PartRole::Sign
        | PartRole::Except => false,
    }
}

impl Sentence<'_, '_> {
    pub(super) fn fits(&self, role: PartRole, candidates: &[EntryId]) -> bool {
        candidates.iter().any(|id| fits(self.scope.vocabulary, role, *id))
    }

    pub(super) fn subject_at(&self, at: usize) -> Option<Subject> {
        let mention = self.mention(at)?;
        Some(Subject { candidates: mention.candidates.clone(), span: self.scope.plain.to_source(mention.span) })
    }

    pub(super) fn side(&self, at: usize, role: PartRole) -> Option<Side> {
        let subject = self.numbered_parts(at).or_else(|| self.subject_at(at))?;
        side_of(self.scope.vocabulary, &subject, role)
    }

    /// "the first two lumbricals", "the third and fourth lumbricals", "the lateral two lumbricals": those of the numbered
    /// parts of what a name at an atom names, any of which is meant.
    fn numbered_parts(&self, at: usize) -> Option<Subject> {
        let vocabulary = self.scope.vocabulary;
        let before = |back: usize| at.checked_sub(back).map_or("", |place| self.word(place));
        let (first, second) = if before(1) == "of" { (before(3), before(2)) } else { (before(2), before(1)) };
        let two = |word: &str| lexicon::number(word) == Some(2);
        let of_side = if two(second) {
            first
        } else if two(first) {
            second
        } else {
            return None;
        };
        let mention = self.mention(at)?;
        let mut meant: Vec<EntryId> = Vec::new();
        for whole in &mention.candidates {
            let mut numbered: Vec<(usize, EntryId)> = vocabulary
                .parts(*whole)
                .iter()
                .filter_map(|part| {
                    let word = vocabulary.name(*part).split(' ').next()?;
                    Some((lexicon::ORDINALS.iter().position(|ordinal| *ordinal == word)?, *part))
                })
                .collect();
            numbered.sort_unstable();
            let region = vocabulary.entry(*whole).region.word();
            let from_first = match of_side {
                "first" | "upper" => true,
                "last" => false,
                side => lexicon::counts_from(region, side)?,
            };
            if numbered.len() < 4 {
                return None;
            }
            let of_two: Vec<EntryId> = numbered.into_iter().map(|(_, part)| part).collect();
            let end = of_two.len();
            meant.extend(if from_first { of_two.get(..2)? } else { of_two.get(end - 2..)? });
        }
        (!meant.is_empty()).then(|| Subject { candidates: meant, span: self.scope.plain.to_source(mention.span) })
    }

    /// The members of a group as sides of a claim, those that fit the role.
    pub(super) fn sides(&self, group: &Group, role: PartRole) -> Vec<Side> {
        group.members.iter().filter(|at| !self.is_struck(**at)).filter_map(|at| self.side(*at, role)).collect()
    }

    /// Words that are the name of a nerve without the noun: "facial", "deep fibular".
    pub(super) fn bare_nerve(&self, at: usize) -> Option<(Side, usize)> {
        let first = self.written(at);
        if !first.starts_with(char::is_alphanumeric) || lexicon::is_determiner(&first) {
            return None;
        }
        (1..=4).rev().find_map(|len| {
            let end = at + len;
            let is_number = || len == 1 && lexicon::is_cranial_number(&self.written(at).to_uppercase());
            if !self.word(end - 1).ends_with(char::is_alphabetic) && !is_number() {
                return None;
            }
            let tokens = &self.scope.mentions.tokens;
            let (first, last) = (self.atoms.get(at)?, self.atoms.get(end - 1)?);
            let span = Span::new(tokens.get(first.from)?.span.start, tokens.get(last.to.checked_sub(1)?)?.span.end);
            let written = span.of(&self.scope.plain.text);
            let word = lower(written);
            if lexicon::contrast_of(&word).is_some() || lexicon::ordinal(&word).is_some() {
                return None; // "First" in a column of layers is no cranial nerve, "intermediate" none either
            }
            let name =
                if lexicon::is_cranial_number(written) { format!("CN {written}") } else { format!("{written} nerve") };
            let names = self.scope.names.lookup(&name);
            let candidates: Vec<EntryId> = names.iter().map(|name| name.entry).collect();
            let subject = Subject { candidates, span: self.scope.plain.to_source(span) };
            side_of(self.scope.vocabulary, &subject, PartRole::Nerve).map(|side| (side, end))
        })
    }

    pub(super) fn class(&self, at: usize) -> Option<u8> {
        let mention = self.mention(at)?;
        let kind = self.scope.vocabulary.kind(*mention.candidates.first()?);
        Some(match kind {
            Kind::Nerve | Kind::Plexus | Kind::Root => 0,
            Kind::Muscle => 1,
            Kind::Group => 2,
            Kind::Joint => 3,
            Kind::Landmark => 4,
            Kind::Skin => 5,
            Kind::Movement => 6,
        })
    }
}
