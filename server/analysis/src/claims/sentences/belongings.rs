//! Clauses that name one group and muscles, and say in words that no list knows that these belong together ("among the
//! hypothenar muscles we find A", "A and B occupy the compartment", "A belongs with the hamstrings").

use std::ops::Range;

use fascicle_model::Kind;

use super::Sentence;
use super::sides::Side;
use crate::claims::{Claim, ClaimKind, Part, PartRole};
use crate::lexicon;

impl Sentence<'_, '_> {
    /// The claims of membership that other readings have not found.
    pub(super) fn typed_member_claims(&self, known: &[Claim]) -> Vec<Claim> {
        let mut claims = Vec::new();
        let mut start = 0;
        while start < self.atoms.len() {
            let (_, stop) = self.clause_around(start);
            let stop = stop.max(start);
            // What is read of the clause in another way, is not read in this one.
            let is_read = known
                .iter()
                .any(|claim| claim.kind != ClaimKind::Passage && self.source(start, stop).contains(claim.span));
            if stop > start && !is_read {
                claims.extend(self.member_clause(&(start..stop)));
            }
            start = stop + 1;
        }
        claims
    }

    fn member_clause(&self, clause: &Range<usize>) -> Vec<Claim> {
        let named: Vec<usize> = clause.clone().filter(|at| self.mention(*at).is_some()).collect();
        let is_group = |at: &&usize| self.class(**at) == Some(2) && self.has_muscles(**at);
        let groups: Vec<usize> = named.iter().filter(is_group).copied().collect();
        let muscles: Vec<usize> = named.iter().copied().filter(|at| self.class(*at) == Some(1)).collect();
        let [group] = groups.as_slice() else { return Vec::new() };
        let (Some(first), Some(last)) = (muscles.first(), muscles.last()) else { return Vec::new() };
        // The muscles stand on one side of the group, and nothing else is named.
        if muscles.len() + 1 != named.len() || (first < group && group < last) {
            return Vec::new();
        }
        let cue = clause.clone().find(|at| lexicon::tells_membership(&self.first_token(*at).to_lowercase()));
        let changes = clause.clone().any(|at| {
            let word = self.word(at);
            lexicon::is_negation(word)
                || lexicon::is_hedge(word)
                || lexicon::is_exception(word)
                || lexicon::only_likens(word)
                || lexicon::parts_from_group(word)
                || self.is_struck(at)
        });
        if cue.is_none() || changes {
            return Vec::new();
        }
        let Some(side) = self.side(*group, PartRole::Group) else { return Vec::new() };
        let claim = |muscle: Side| {
            let parts = vec![
                Part { role: PartRole::Muscle, span: muscle.span, what: muscle.what },
                Part { role: PartRole::Group, span: side.span, what: side.what.clone() },
            ];
            let span = self.claim_span(cue.unwrap_or(*group), muscle.span, side.span);
            Claim { span, parts, ..self.empty_claim(ClaimKind::Membership) }
        };
        muscles.into_iter().filter_map(|at| self.side(at, PartRole::Muscle)).map(claim).collect()
    }

    /// Whether the name at an atom is that of a group of muscles.
    fn has_muscles(&self, at: usize) -> bool {
        self.mention(at).is_some_and(|mention| {
            mention.candidates.iter().all(|id| {
                self.scope.vocabulary.kind(*id) == Kind::Group && !self.scope.vocabulary.members(*id).is_empty()
            })
        })
    }
}
